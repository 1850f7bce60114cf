"""Duct, filter, fan and the openings that the air comes in by."""

from numpy import log10, pi, sqrt

from curbwright.figures import equation
from curbwright.quantities import (
    CubicMetresPerSecond,
    KilogramsPerCubicMetre,
    Metres,
    MetresPerSecond,
    Number,
    Pascals,
    SquareMetres,
    SquareMetresPerSecond,
    Watts,
    WattsPerSquareMetre,
)


@equation("geometry:circle", uncited=True)
def round_area(diameter: Metres) -> SquareMetres:
    """Area of a round duct.

    >>> round(round_area(diameter=0.3), 5)
    0.07069
    """
    return pi / 4 * diameter**2


@equation("flow-is-area-times-speed", uncited=True)
def speed_through(flow: CubicMetresPerSecond, area: SquareMetres) -> MetresPerSecond:
    """Mean speed of a flow through an area.

    >>> speed_through(flow=0.5, area=0.1)
    5.0
    """
    return flow / area


@equation("flow-is-area-times-speed:round duct")
def largest_round_duct(flow: CubicMetresPerSecond, speed: MetresPerSecond) -> Metres:
    """Largest round duct in which air keeps a speed.

    >>> round(float(largest_round_duct(flow=0.3, speed=2.5)), 3)
    0.391
    """
    return 2 * sqrt(flow / (pi * speed))


@equation("duct-friction:Reynolds number", uncited=True)
def reynolds_number(*, speed: MetresPerSecond, diameter: Metres, viscosity: SquareMetresPerSecond) -> Number:
    """Reynolds number of a flow in a duct.

    >>> round(reynolds_number(speed=8.0, diameter=0.3, viscosity=1.6e-5))
    150000
    """
    return speed * diameter / viscosity


@equation("duct-friction:Swamee and Jain", uncited=True)
def friction_factor(*, reynolds: Number, roughness: Metres, diameter: Metres) -> Number:
    """Darcy's friction factor of a turbulent flow, within 3 % of the implicit one.

    >>> round(float(friction_factor(reynolds=150000.0, roughness=0.00009, diameter=0.3)), 4)
    0.0185
    """
    return 0.25 / log10(roughness / (3.7 * diameter) + 5.74 / reynolds**0.9) ** 2


@equation("duct-friction:velocity pressure", uncited=True)
def velocity_pressure(density: KilogramsPerCubicMetre, speed: MetresPerSecond) -> Pascals:
    """Pressure that stopping the air would give.

    >>> velocity_pressure(density=1.2, speed=10.0)
    60.0
    """
    return density / 2 * speed**2


@equation("duct-friction:Darcy's equation and fittings", uncited=True)
def duct_loss(
    *, velocity_pressure: Pascals, friction: Number, length: Metres, diameter: Metres, fittings: Number
) -> Pascals:
    """Pressure lost in a duct and its fittings.

    ``fittings`` is the sum of their losses in velocity heads, what is lost at the outlet included.

    >>> duct_loss(velocity_pressure=60.0, friction=0.02, length=3.0, diameter=0.3, fittings=0.8)
    60.0
    """
    return velocity_pressure * (friction * length / diameter + fittings)


@equation("duct-friction:a loss that is known at one speed", uncited=True)
def loss_at(*, drop: Pascals, speed: MetresPerSecond, known_speed: MetresPerSecond) -> Pascals:
    """Pressure lost in a filter at a speed, from its loss at another: it grows with the square.

    >>> loss_at(drop=50.0, speed=3.0, known_speed=1.5)
    200.0
    """
    return drop * (speed / known_speed) ** 2


@equation("orifice-law:turned round", uncited=True)
def opening_loss(*, density: KilogramsPerCubicMetre, discharge: Number, speed: MetresPerSecond) -> Pascals:
    """Pressure under that of outdoors that draws air in by an opening at a mean speed.

    >>> opening_loss(density=1.2, discharge=0.5, speed=1.0)
    2.4
    """
    return density / 2 * (speed / discharge) ** 2


@equation("duct-friction:several alike", uncited=True)
def heads_of(count: Number, each: Number) -> Number:
    """Velocity heads that several fittings alike lose.

    >>> heads_of(count=2, each=0.25)
    0.5
    """
    return count * each


@equation("duct-friction:what the fan works against", uncited=True)
def system_pressure(
    *, loss: Pascals, design: CubicMetresPerSecond, flow: CubicMetresPerSecond, margin: Pascals
) -> Pascals:
    """Pressure a fan works against at a flow, from the loss at the design flow and what grease adds.

    >>> system_pressure(loss=100.0, design=0.5, flow=0.25, margin=50.0)
    75.0
    """
    return loss * (flow / design) ** 2 + margin


@equation("linear-interpolation:fan curve less the system's", uncited=True)
def fan_surplus(
    *, flow: CubicMetresPerSecond, low_flow: CubicMetresPerSecond, high_flow: CubicMetresPerSecond,
    low_pressure: Pascals, high_pressure: Pascals, loss: Pascals, design: CubicMetresPerSecond,
    margin: Pascals,
) -> Pascals:  # fmt: skip
    """Pressure a fan has left between two rows of its curve; nothing where it works.

    >>> round(fan_surplus(flow=0.5, low_flow=0.4, high_flow=0.6, low_pressure=150.0, high_pressure=110.0,
    ...                   loss=100.0, design=0.5, margin=30.0), 6)
    0.0
    """
    return (
        low_pressure
        + (high_pressure - low_pressure) * (flow - low_flow) / (high_flow - low_flow)
        - loss * (flow / design) ** 2
        - margin
    )


@equation("linear-interpolation:power between two rows", uncited=True)
def power_between(
    *, flow: CubicMetresPerSecond, low_flow: CubicMetresPerSecond, high_flow: CubicMetresPerSecond,
    low_power: Watts, high_power: Watts,
) -> Watts:  # fmt: skip
    """Electricity a fan draws between two rows of its curve.

    >>> round(power_between(flow=0.5, low_flow=0.4, high_flow=0.6, low_power=220.0, high_power=200.0), 6)
    210.0
    """
    return low_power + (high_power - low_power) * (flow - low_flow) / (high_flow - low_flow)


@equation("orifice-law:speed")
def opening_speed(
    *, pressure: Pascals, discharge: Number, density: KilogramsPerCubicMetre
) -> MetresPerSecond:
    """Mean speed of air through an opening that a pressure drives.

    >>> round(float(opening_speed(pressure=6.0, discharge=0.5, density=1.2)), 3)
    1.581
    """
    return discharge * sqrt(2 * pressure / density)


@equation("orifice-law:area")
def opening_area(flow: CubicMetresPerSecond, speed: MetresPerSecond) -> SquareMetres:
    """Free area that a flow needs at a mean speed.

    >>> opening_area(flow=0.5, speed=2.0)
    0.25
    """
    return flow / speed


@equation("trade-practice:what a cover leaves free", uncited=True)
def free_area(area: SquareMetres, share: Number) -> SquareMetres:
    """Area of an opening that its screen or louvre leaves free.

    >>> free_area(area=0.5, share=0.5)
    0.25
    """
    return area * share


@equation("combustion-air-manual:free area")
def combustion_opening(load: Watts, heat: WattsPerSquareMetre) -> SquareMetres:
    """Free area of each opening to outdoors for the air that burners take.

    >>> combustion_opening(load=20000.0, heat=2000000.0)
    0.01
    """
    return load / heat
