"""Pipe and hose: what a size carries at a drop of pressure, what it loses at a load, what size a load needs.

The two pipe equations are the fuel-gas code's, in feet, inches and cubic feet an hour; the constants that
turn them from SI stand in the expressions.
"""

from numpy import maximum, pi

from curbwright.figures import equation
from curbwright.quantities import (
    CubicMetres,
    CubicMetresPerSecond,
    JoulesPerCubicMetre,
    Metres,
    Number,
    Pascals,
    Watts,
)


@equation("ifgc-402-4:402.4.1, below 1.5 psi", empirical=True)
def low_pressure_flow(*, bore: Metres, drop: Pascals, length: Metres, factor: Number) -> CubicMetresPerSecond:
    """Gas that a pipe carries at a drop of pressure, at less than 1.5 psi.

    ``factor`` is the code's Cr: 1.2462 for propane, 0.6094 for natural gas.

    >>> round(low_pressure_flow(bore=0.0158, drop=124.5, length=3.048, factor=1.2462) * 3600, 2)
    3.33
    """
    return 7.86579072e-06 * (
        19.17 * bore / 0.0254 * (drop / 249.08891 / (factor * length / 0.3048)) ** 0.206
    ) ** (1 / 0.381)


@equation("ifgc-402-4:402.4.1, below 1.5 psi", empirical=True, uncited=True)
def low_pressure_drop(*, flow: CubicMetresPerSecond, bore: Metres, length: Metres, factor: Number) -> Pascals:
    """Pressure that a flow loses in a pipe, at less than 1.5 psi: the same equation, solved for the drop.

    >>> round(low_pressure_drop(flow=0.000925, bore=0.0158, length=3.048, factor=1.2462), 1)
    124.7
    """
    return (
        249.08891
        * factor
        * length
        / 0.3048
        * ((flow / 7.86579072e-06) ** 0.381 / (19.17 * bore / 0.0254)) ** (1 / 0.206)
    )


@equation("ifgc-402-4:402.4.1, below 1.5 psi", empirical=True)
def low_pressure_bore(*, flow: CubicMetresPerSecond, drop: Pascals, length: Metres, factor: Number) -> Metres:
    """Bore that a flow needs at a drop of pressure, at less than 1.5 psi: the equation as the code prints it.

    >>> round(low_pressure_bore(flow=0.000925, drop=124.5, length=3.048, factor=1.2462), 4)
    0.0158
    """
    return (
        0.0254
        * (flow / 7.86579072e-06) ** 0.381
        / (19.17 * (drop / 249.08891 / (factor * length / 0.3048)) ** 0.206)
    )


@equation("ifgc-402-4:402.4.2, from 1.5 psi", empirical=True)
def high_pressure_flow(
    *, bore: Metres, upstream: Pascals, downstream: Pascals, length: Metres, factor: Number, expansion: Number
) -> CubicMetresPerSecond:  # fmt: skip
    """Gas that a pipe carries between two absolute pressures, at 1.5 psi and more.

    ``factor`` is the code's Cr, ``expansion`` its Y: 0.9910 for propane, 0.9992 for natural gas.

    >>> round(high_pressure_flow(bore=0.0158, upstream=170300.0, downstream=163400.0, length=9.144,
    ...     factor=1.2462, expansion=0.991) * 3600)
    21
    """
    return 7.86579072e-06 * (
        18.93
        * bore
        / 0.0254
        * (
            ((upstream / 6894.757293) ** 2 - (downstream / 6894.757293) ** 2)
            * expansion
            / (factor * length / 0.3048)
        )
        ** 0.206
    ) ** (1 / 0.381)


@equation("energy:heat carried by a flow of gas")
def capacity_of(flow: CubicMetresPerSecond, heat: JoulesPerCubicMetre) -> Watts:
    """Burners that a flow of gas feeds.

    >>> capacity_of(flow=0.001, heat=93e6)
    93000.0
    """
    return flow * heat


@equation("upc-longest-length:no size below the smallest")
def at_least(needed: Metres, smallest: Metres) -> Metres:
    """Bore to choose where a code lists no smaller size.

    >>> float(at_least(needed=0.010, smallest=0.0158))
    0.0158
    """
    return maximum(needed, smallest)


@equation("trade-practice:an elbow as 30 bores of pipe, a tee's branch as 60", uncited=True)
def equivalent_length(
    *, length: Metres, bore: Metres, elbows: Number, each_elbow: Number, tees: Number, each_tee: Number
) -> Metres:  # fmt: skip
    """Length of a run with its fittings counted as so many bores of pipe each.

    >>> equivalent_length(length=2.0, bore=0.02, elbows=2, each_elbow=30, tees=1, each_tee=60)
    4.4
    """
    return length + bore * (elbows * each_elbow + tees * each_tee)


@equation("ifgc-402-4:402.4.1, drop goes with flow to the power 0.381 / 0.206", uncited=True)
def drop_by_capacity(*, load: Watts, capacity: Watts, drop: Pascals) -> Pascals:
    """Pressure that a load loses in a hose or connector whose maker says what it carries at a drop.

    >>> round(drop_by_capacity(load=10000.0, capacity=20000.0, drop=124.5), 1)
    34.5
    """
    return drop * (load / capacity) ** (0.381 / 0.206)


@equation("geometry", uncited=True)
def pipe_volume(bore: Metres, length: Metres) -> CubicMetres:
    """Volume inside a run of pipe.

    >>> round(float(pipe_volume(bore=0.02, length=3.0)), 6)
    0.000942
    """
    return pi * bore**2 / 4 * length


@equation("energy:pressure left", uncited=True)
def left_of(line: Pascals, drop: Pascals) -> Pascals:
    """Pressure at the end of the pipe while gas flows.

    >>> left_of(line=2740.0, drop=100.0)
    2640.0
    """
    return line - drop


@equation("convention:room to spare", uncited=True)
def pressure_spare(pressure: Pascals, least: Pascals) -> Pascals:
    """Pressure over what is needed.

    >>> pressure_spare(pressure=2640.0, least=2490.0)
    150.0
    """
    return pressure - least


@equation("convention:room to spare", uncited=True)
def spare(capacity: Watts, load: Watts) -> Number:
    """Share of a capacity that a load leaves over; less than nothing where it is too small.

    >>> spare(capacity=20000.0, load=15000.0)
    0.25
    """
    return 1 - load / capacity
