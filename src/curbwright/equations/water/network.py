"""Network: what a tap draws, what the pump gives, where the two meet; one tee, a branch to each tap."""

from collections.abc import Callable

from numpy import pi

from curbwright.equations.water.pipes import friction_factor
from curbwright.figures import equation, procedure
from curbwright.quantities import (
    CubicMetresPerSecond,
    KilogramsPerCubicMetre,
    Metres,
    Number,
    Pascals,
    SquareMetresPerSecond,
)

CLOSE = 1e-13
ABOVE = 1 + 1e-9
"""A hair over the highest flow there can be, where a residual is surely under nothing."""


@equation("tap-law")
def outlet_flow(
    *, rated_flow: CubicMetresPerSecond, rated_pressure: Pascals, pressure: Pascals
) -> CubicMetresPerSecond:  # fmt: skip
    """Flow of a tap, a coil or a filter at a pressure, from its rating at another.

    >>> outlet_flow(rated_flow=0.0001, rated_pressure=400000.0, pressure=100000.0)
    5e-05
    """
    return rated_flow * (pressure / rated_pressure) ** 0.5


@equation("tap-law", uncited=True)
def outlet_pressure(
    *, rated_flow: CubicMetresPerSecond, rated_pressure: Pascals, flow: CubicMetresPerSecond
) -> Pascals:  # fmt: skip
    """Pressure at a tap, a coil or a filter from what it passes and its rating.

    >>> outlet_pressure(rated_flow=0.0001, rated_pressure=400000.0, flow=0.00005)
    100000.0
    """
    return rated_pressure * (flow / rated_flow) ** 2


@equation("convention:over what is asked", uncited=True)
def flow_over(flow: CubicMetresPerSecond, least: CubicMetresPerSecond) -> CubicMetresPerSecond:
    """Flow over a least one; less than nothing where it falls short.

    >>> round(flow_over(flow=0.0001, least=0.00006), 8)
    4e-05
    """
    return flow - least


@equation("tap-law", uncited=True)
def in_series(
    *, rated_flow: CubicMetresPerSecond, rated_pressure: Pascals, other_flow: CubicMetresPerSecond,
    other_pressure: Pascals,
) -> CubicMetresPerSecond:  # fmt: skip
    """Rating at the first pressure of two things that the same water runs through, such as a coil and a tap.

    >>> round(in_series(rated_flow=3e-5, rated_pressure=1e5, other_flow=4e-5, other_pressure=1e5) * 1e6, 6)
    24.0
    """
    return 1 / (1 / rated_flow**2 + other_pressure / (rated_pressure * other_flow**2)) ** 0.5


@equation("pump-model:straight line between two rows")
def flow_on_curve(
    *, low_pressure: Pascals, low_flow: CubicMetresPerSecond, high_pressure: Pascals,
    high_flow: CubicMetresPerSecond, pressure: Pascals,
) -> CubicMetresPerSecond:  # fmt: skip
    """Flow of a pump at a pressure, on the straight line between two rows of its curve.

    >>> round(flow_on_curve(low_pressure=1e5, low_flow=2e-4, high_pressure=2e5, high_flow=1e-4,
    ...     pressure=1.5e5), 8)
    0.00015
    """
    return low_flow + (high_flow - low_flow) * (pressure - low_pressure) / (high_pressure - low_pressure)


@equation("pump-model:straight line between two rows")
def pressure_on_curve(
    *, low_pressure: Pascals, low_flow: CubicMetresPerSecond, high_pressure: Pascals,
    high_flow: CubicMetresPerSecond, flow: CubicMetresPerSecond,
) -> Pascals:  # fmt: skip
    """Pressure of a pump at a flow, on the straight line between two rows of its curve, or on past them.

    >>> round(pressure_on_curve(low_pressure=1e5, low_flow=2e-4, high_pressure=2e5, high_flow=1e-4,
    ...     flow=1.5e-4))
    150000
    """
    return low_pressure + (high_pressure - low_pressure) * (low_flow - flow) / (low_flow - high_flow)


def _loss(
    *, flow: float, bore: float, length: float, fittings: float, roughness: float, density: float,
    viscosity: float,
) -> float:  # fmt: skip
    """Pressure that a run of pipe with its fittings takes."""
    if flow <= 0.0:
        return 0.0
    speed = flow / (pi * bore**2 / 4)
    friction = friction_factor(reynolds=speed * bore / viscosity, roughness=roughness / bore)
    return float((friction * length / bore + fittings) * density * speed**2 / 2)


def _root(residual: Callable[[float], float], high: float) -> float:
    """The flow between nothing and ``high`` at which a falling residual is nothing, by Brent's method."""
    from fluids import numerics

    brent: Callable[..., float] = numerics.brenth
    # The unknown is a share of the highest flow, so that the tolerance suits flows of any size.
    return high * float(brent(lambda part: residual(part * high), 0.0, 1.0, xtol=CLOSE, rtol=4 * CLOSE))


@procedure("pipe-friction:root of the pressures along the way", uncited=True)
def run_loss(
    *, flow: CubicMetresPerSecond, bore: Metres, length: Metres, fittings: Number, roughness: Metres,
    density: KilogramsPerCubicMetre, viscosity: SquareMetresPerSecond,
) -> Pascals:  # fmt: skip
    """Pressure that a run of pipe with its fittings takes: Darcy and Weisbach with Colebrook's factor.

    >>> round(run_loss(flow=1e-4, bore=0.012, length=3.0, fittings=3.0, roughness=1.5e-6, density=998.0,
    ...     viscosity=1.004e-6))
    4158
    """
    return _loss(
        flow=flow, bore=bore, length=length, fittings=fittings, roughness=roughness, density=density,
        viscosity=viscosity,
    )  # fmt: skip


@procedure("pipe-friction:root of the pressures along the way")
def tap_flow(
    *, pressure: Pascals, static: Pascals, bore: Metres, length: Metres, fittings: Number, roughness: Metres,
    rated_flow: CubicMetresPerSecond, rated_pressure: Pascals, density: KilogramsPerCubicMetre,
    viscosity: SquareMetresPerSecond,
) -> CubicMetresPerSecond:  # fmt: skip
    """Flow of an open tap at a pressure at the tee: that at which height, friction and outlet use it up.

    ``static`` is the pressure that the height of the tap over the pump takes.

    >>> round(tap_flow(pressure=2.8e5, static=7.3e3, bore=0.009, length=1.8, fittings=2.4, roughness=1.5e-6,
    ...     rated_flow=1.4e-4, rated_pressure=4.1e5, density=998.0, viscosity=1.004e-6) * 1e6, 2)
    111.59
    """
    over = pressure - static
    if over <= 0.0:
        return 0.0
    along = {
        "bore": bore, "length": length, "fittings": fittings, "roughness": roughness, "density": density,
        "viscosity": viscosity,
    }  # fmt: skip
    return _root(
        lambda flow: over - _loss(flow=flow, **along) - rated_pressure * (flow / rated_flow) ** 2,
        ABOVE * rated_flow * (over / rated_pressure) ** 0.5,
    )


@procedure("pipe-friction:root of the pressures along the way")
def supply_flow(
    *, pressure: Pascals, low_pressure: Pascals, low_flow: CubicMetresPerSecond, high_pressure: Pascals,
    high_flow: CubicMetresPerSecond, static: Pascals, suction_bore: Metres, suction_length: Metres,
    suction_fittings: Number, trunk_bore: Metres, trunk_length: Metres, trunk_fittings: Number,
    roughness: Metres, density: KilogramsPerCubicMetre, viscosity: SquareMetresPerSecond,
) -> CubicMetresPerSecond:  # fmt: skip
    """Flow that the pump gives at a pressure at the tee: that at which its curve pays for the pipes to there.

    ``static`` is the pressure that the water in the tank adds by standing higher than the pump. The two rows
    of the pump's curve are prolonged on a straight line.

    >>> round(supply_flow(pressure=2e5, low_pressure=0.0, low_flow=2e-4, high_pressure=4e5, high_flow=8e-5,
    ...     static=0.0, suction_bore=0.012, suction_length=1.2, suction_fittings=4.0, trunk_bore=0.012,
    ...     trunk_length=3.7, trunk_fittings=3.3, roughness=1.5e-6, density=998.0,
    ...     viscosity=1.004e-6) * 1e6, 2)
    135.92
    """
    slope = (high_pressure - low_pressure) / (low_flow - high_flow)
    shut = low_pressure + slope * low_flow + static - pressure
    if not (slope > 0.0 and shut > 0.0):
        return 0.0
    common = {"roughness": roughness, "density": density, "viscosity": viscosity}
    suction = {"bore": suction_bore, "length": suction_length, "fittings": suction_fittings}
    trunk = {"bore": trunk_bore, "length": trunk_length, "fittings": trunk_fittings}

    def left(flow: float) -> float:
        lost = _loss(flow=flow, **suction, **common) + _loss(flow=flow, **trunk, **common)
        return shut - slope * flow - lost

    return _root(left, ABOVE * shut / slope)


@equation("network-trials:where two straight lines cross", uncited=True)
def where_they_meet(
    *, low: Pascals, high: Pascals, drawn_low: CubicMetresPerSecond, given_low: CubicMetresPerSecond,
    drawn_high: CubicMetresPerSecond, given_high: CubicMetresPerSecond,
) -> Pascals:  # fmt: skip
    """Pressure between two trials at which what the taps draw is what the pump gives.

    At the low trial the pump gives more, at the high one the taps draw more.

    >>> where_they_meet(low=1e5, high=2e5, drawn_low=1e-4, given_low=2e-4, drawn_high=2e-4, given_high=1e-4)
    150000.0
    """
    return low + (high - low) * (given_low - drawn_low) / (
        (given_low - drawn_low) + (drawn_high - given_high)
    )
