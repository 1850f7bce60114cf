"""Pump: amperes and energy, how its pressure switch cycles it, and what an accumulator does about that."""

from collections.abc import Callable

from curbwright.figures import equation, procedure
from curbwright.quantities import (
    Amperes,
    CubicMetres,
    CubicMetresPerSecond,
    Joules,
    Number,
    Pascals,
    PerSecond,
    Seconds,
    Volts,
    Watts,
)

STEPS = 200
"""Steps of the integral over the switch's band."""


@equation("pump-model:straight line between two rows")
def current_on_curve(
    *, low_pressure: Pascals, low_current: Amperes, high_pressure: Pascals, high_current: Amperes,
    pressure: Pascals,
) -> Amperes:  # fmt: skip
    """Current of a pump at a pressure, on the straight line between two rows of its curve.

    >>> round(current_on_curve(low_pressure=1e5, low_current=4.0, high_pressure=2e5, high_current=6.0,
    ...     pressure=1.5e5), 6)
    5.0
    """
    return low_current + (high_current - low_current) * (pressure - low_pressure) / (
        high_pressure - low_pressure
    )


@equation("energy:volts times amperes", uncited=True)
def pump_power(voltage: Volts, current: Amperes) -> Watts:
    """Electricity that the pump draws while it runs.

    >>> pump_power(voltage=12.0, current=5.0)
    60.0
    """
    return voltage * current


@equation("energy:power over the time that a volume takes", uncited=True)
def pump_energy(*, volume: CubicMetres, flow: CubicMetresPerSecond, power: Watts) -> Joules:
    """Electricity that pumping a volume takes.

    >>> pump_energy(volume=0.1, flow=0.0001, power=60.0)
    60000.0
    """
    return volume / flow * power


@equation("energy:pressure times flow over power", uncited=True)
def pump_efficiency(*, pressure: Pascals, flow: CubicMetresPerSecond, power: Watts) -> Number:
    """Share of the pump's electricity that ends in the water.

    >>> round(pump_efficiency(pressure=2e5, flow=1e-4, power=60.0), 4)
    0.3333
    """
    return pressure * flow / power


@equation("pump-cycling:the middle of the switch's band", uncited=True)
def middle_of_band(cut_in: Pascals, cut_out: Pascals) -> Pascals:
    """Pressure midway between start and stop, which a cycling pump keeps on average.

    >>> middle_of_band(cut_in=2e5, cut_out=3e5)
    250000.0
    """
    return (cut_in + cut_out) / 2


@equation("convention:over a limit", uncited=True)
def pressure_over(pressure: Pascals, limit: Pascals) -> Pascals:
    """Pressure over a limit; less than nothing where it stays below.

    >>> pressure_over(pressure=3e5, limit=3.8e5)
    -80000.0
    """
    return pressure - limit


@equation("boyle:drawdown of a pre-charged tank")
def drawdown(
    *, volume: CubicMetres, charge: Pascals, cut_in: Pascals, cut_out: Pascals, atmosphere: Pascals
) -> CubicMetres:  # fmt: skip
    """Water that an accumulator gives between the switch's two pressures.

    >>> round(drawdown(volume=0.004, charge=2e5, cut_in=2e5, cut_out=3e5, atmosphere=1e5), 6)
    0.001
    """
    return volume * (
        (charge + atmosphere) / (cut_in + atmosphere) - (charge + atmosphere) / (cut_out + atmosphere)
    )


@equation("boyle:drawdown of a pre-charged tank")
def drawdown_share(*, charge: Pascals, cut_in: Pascals, cut_out: Pascals, atmosphere: Pascals) -> Number:
    """Share of an accumulator's volume that it gives between the switch's two pressures.

    >>> drawdown_share(charge=2e5, cut_in=2e5, cut_out=3e5, atmosphere=1e5)
    0.25
    """
    return (charge + atmosphere) / (cut_in + atmosphere) - (charge + atmosphere) / (cut_out + atmosphere)


@equation("boyle:drawdown of a pre-charged tank", uncited=True)
def accumulator_for(volume: CubicMetres, share: Number) -> CubicMetres:
    """Accumulator that gives a volume without a start of the pump.

    >>> accumulator_for(volume=0.001, share=0.25)
    0.004
    """
    return volume / share


@equation("pump-cycling:volume between stop and start over the draw", uncited=True)
def rest_time(drawdown: CubicMetres, draw: CubicMetresPerSecond) -> Seconds:
    """Time that the accumulator feeds a draw while the pump rests.

    >>> rest_time(drawdown=0.001, draw=5e-5)
    20.0
    """
    return drawdown / draw


@equation("pump-cycling:volume between start and stop over what is left of the flow", uncited=True)
def run_time(*, drawdown: CubicMetres, flow: CubicMetresPerSecond, draw: CubicMetresPerSecond) -> Seconds:
    """Time that the pump runs to fill the accumulator against a draw.

    >>> run_time(drawdown=0.001, flow=1.5e-4, draw=5e-5)
    10.0
    """
    return drawdown / (flow - draw)


@equation("pump-cycling:one start in a rest and a run", uncited=True)
def starts(rest: Seconds, run: Seconds) -> PerSecond:
    """How often the pump starts against a steady draw.

    >>> starts(rest=15.0, run=10.0)
    0.04
    """
    return 1 / (rest + run)


@equation("pump-cycling:the draw of half the flow", uncited=True)
def worst_starts(flow: CubicMetresPerSecond, drawdown: CubicMetres) -> PerSecond:
    """How often the pump starts at worst: where the draw is half its flow.

    >>> worst_starts(flow=2e-4, drawdown=0.001)
    0.05
    """
    return flow / (4 * drawdown)


def _cycle(
    *, volume: float, charge: float, cut_in: float, cut_out: float, atmosphere: float,
    rate: Callable[[float], float],
) -> float:  # fmt: skip
    """Time over the band: volume by pressure, over the rate at that pressure, by Simpson's rule."""
    step = (cut_out - cut_in) / STEPS
    total = 0.0
    for index in range(STEPS + 1):
        pressure = cut_in + index * step
        weight = 1 if index in (0, STEPS) else 4 if index % 2 else 2
        total += weight * volume * (charge + atmosphere) / (pressure + atmosphere) ** 2 / rate(pressure)
    return total * step / 3


@procedure("pump-cycling:volume by pressure over the net flow, integrated over the band", uncited=True)
def exact_run_time(
    *, volume: CubicMetres, charge: Pascals, cut_in: Pascals, cut_out: Pascals, atmosphere: Pascals,
    flow_in: CubicMetresPerSecond, flow_out: CubicMetresPerSecond, rated_flow: CubicMetresPerSecond,
    rated_pressure: Pascals,
) -> Seconds:  # fmt: skip
    """Time the pump runs against an open tap, its flow falling and the tap's rising with the pressure.

    ``flow_in`` and ``flow_out`` are the pump's at the two pressures of its switch; the integral is Simpson's.

    >>> round(exact_run_time(volume=0.004, charge=2.6e5, cut_in=2.8e5, cut_out=3.8e5, atmosphere=1e5,
    ...     flow_in=1.15e-4, flow_out=8.2e-5, rated_flow=3.2e-5, rated_pressure=4.1e5), 1)
    11.3
    """

    def net(pressure: float) -> float:
        given = flow_in + (flow_out - flow_in) * (pressure - cut_in) / (cut_out - cut_in)
        return given - rated_flow * (pressure / rated_pressure) ** 0.5

    if net(cut_out) <= 0.0:
        raise ZeroDivisionError("the tap draws all that the pump gives: it never stops")
    return _cycle(
        volume=volume, charge=charge, cut_in=cut_in, cut_out=cut_out, atmosphere=atmosphere, rate=net
    )


@procedure("pump-cycling:volume by pressure over the draw, integrated over the band", uncited=True)
def exact_rest_time(
    *, volume: CubicMetres, charge: Pascals, cut_in: Pascals, cut_out: Pascals, atmosphere: Pascals,
    rated_flow: CubicMetresPerSecond, rated_pressure: Pascals,
) -> Seconds:  # fmt: skip
    """Time the pump rests while an open tap empties the accumulator, by Simpson's integral over the band.

    >>> round(exact_rest_time(volume=0.004, charge=2.6e5, cut_in=2.8e5, cut_out=3.8e5, atmosphere=1e5,
    ...     rated_flow=3.2e-5, rated_pressure=4.1e5), 1)
    27.7
    """

    def draw(pressure: float) -> float:
        return rated_flow * (pressure / rated_pressure) ** 0.5

    return _cycle(
        volume=volume, charge=charge, cut_in=cut_in, cut_out=cut_out, atmosphere=atmosphere, rate=draw
    )
