"""Standing at the pitch: wind, people at the rear, snow, jacks and the ground below them."""

from numpy import cos, sin

from curbwright.figures import equation
from curbwright.quantities import (
    Kilograms,
    KilogramsPerSquareMetre,
    Metres,
    MetresPerSecond,
    MetresPerSecondSquared,
    NewtonMetres,
    Newtons,
    Number,
    Pascals,
    Radians,
    SquareMetres,
)


@equation("asce-7-course-page:velocity pressure", empirical=True)
def velocity_pressure(
    *, speed: MetresPerSecond, exposure: Number, terrain: Number, direction: Number
) -> Pascals:
    """Wind pressure of a gust, after the form of ASCE 7; its 0.613 holds in m/s and Pa.

    ``exposure`` is Kz, ``terrain`` Kzt, ``direction`` Kd. The constant is half
    the density of air; in mph and psf it is 0.00256.

    >>> round(velocity_pressure(speed=20, exposure=1.0, terrain=1.0, direction=1.0), 6)
    245.2
    """
    return 0.613 * exposure * terrain * direction * speed**2


@equation("asce-7-course-page:force on other structures")
def wind_force(
    *, pressure: Pascals, gust_factor: Number, force_coefficient: Number, area: SquareMetres
) -> Newtons:
    """Wind force on a face.

    >>> wind_force(pressure=250, gust_factor=1.0, force_coefficient=1.4, area=4)
    1400.0
    """
    return pressure * gust_factor * force_coefficient * area


@equation("statics:lever arm")
def wind_arm(underside: Metres, height: Metres) -> Metres:
    """Height above the ground of the middle of a face.

    >>> wind_arm(underside=0.5, height=2.0)
    1.5
    """
    return underside + height / 2


@equation("statics:moment of a force")
def overturning_moment(force: Newtons, arm: Metres) -> NewtonMetres:
    """Moment of a force about the wheels or stabilisers on the far side.

    >>> overturning_moment(force=1400, arm=1.5)
    2100.0
    """
    return force * arm


@equation("statics:moment of a weight")
def resisting_moment(*, mass: Kilograms, track: Metres, gravity: MetresPerSecondSquared) -> NewtonMetres:
    """Moment of the trailer's own weight that holds it down, its centre on the centre line.

    ``track`` is the span between the feet on the two sides: wheels, or stabilisers where they are down.

    >>> resisting_moment(mass=1000, track=1.5, gravity=10)
    7500.0
    """
    return mass * gravity * track / 2


@equation("statics:moments about the line from tongue jack to wheel", uncited=True)
def standing_span(*, track: Metres, across: Metres, centre: Metres, axle: Metres) -> Metres:
    """Span between two feet that would hold as much as a trailer on its wheels and tongue jack.

    It tips about the line from the jack to the far wheel, which passes nearer to the centre of gravity than
    the wheel does, and towards the side on which that centre stands.

    >>> round(standing_span(track=1.5, across=-0.05, centre=2.7, axle=3.0), 9)
    1.25
    """
    return track * centre / axle - 2 * abs(across)


@equation("asce-7-course-page:pressure grows with the square of speed")
def tipping_speed(
    *, speed: MetresPerSecond, overturning: NewtonMetres, resisting: NewtonMetres
) -> MetresPerSecond:
    """Gust that would tip the parked trailer, from its overturning moment at another speed.

    Rigid and without a margin: it is never a wind to stand in.

    >>> tipping_speed(speed=20, overturning=2000, resisting=8000)
    40.0
    """
    return speed * (resisting / overturning) ** 0.5


@equation("statics:moments about the axle")
def rear_load_that_tips(*, tongue_load: Kilograms, axle: Metres, behind: Metres) -> Kilograms:
    """Load behind the axle that lifts the tongue of an uncoupled trailer without rear stabilisers.

    >>> rear_load_that_tips(tongue_load=80, axle=3.0, behind=1.2)
    200.0
    """
    return tongue_load * axle / behind


@equation("statics:pressure under a pad", uncited=True)
def ground_pressure(*, load: Kilograms, area: SquareMetres, gravity: MetresPerSecondSquared) -> Pascals:
    """Pressure under the pad of a jack or stabiliser.

    >>> ground_pressure(load=300, area=0.1, gravity=10)
    30000.0
    """
    return load * gravity / area


@equation("asce-7-course-page:flat roof snow", uncited=True)
def roof_snow(
    *, ground_snow: KilogramsPerSquareMetre, exposure: Number, thermal: Number, importance: Number
) -> KilogramsPerSquareMetre:
    """Snow on a flat roof from the snow on the ground.

    ``exposure`` is Ce, ``thermal`` Ct. Minimum roof loads and drifts are not in it.

    >>> roof_snow(ground_snow=100, exposure=1.0, thermal=1.2, importance=1.0)
    84.0
    """
    return 0.7 * exposure * thermal * importance * ground_snow


@equation("statics:load on an area", uncited=True)
def snow_on_roof(roof_snow: KilogramsPerSquareMetre, area: SquareMetres) -> Kilograms:
    """Mass of snow on a roof.

    >>> snow_on_roof(roof_snow=80, area=5)
    400
    """
    return roof_snow * area


@equation("statics:flap on the windward side", uncited=True)
def hatch_moment(
    *, pressure: Pascals, coefficient: Number, area: SquareMetres, depth: Metres, angle: Radians,
    hinge: Metres, track: Metres, half_width: Metres,
) -> NewtonMetres:  # fmt: skip
    """Overturning moment of the wind on a hatch held open on the windward side.

    Drag on its upright share acts at the middle of the flap, uplift on its flat share at its reach beyond the
    far wheels. ``angle`` is its rise above the horizontal, ``half_width`` the wall it hinges on.

    >>> float(hatch_moment(
    ...     pressure=100, coefficient=1.0, area=2.0, depth=1.0, angle=0.0, hinge=2.0, track=1.5,
    ...     half_width=0.8))
    410.0
    """
    return pressure * coefficient * area * (
        sin(angle) * (hinge + depth / 2 * sin(angle))
        + cos(angle) * (track / 2 + half_width + depth / 2 * cos(angle))
    )  # fmt: skip


@equation("statics:what is left of a moment", uncited=True)
def moment_reserve(overturning: NewtonMetres, resisting: NewtonMetres) -> Number:
    """Share of the holding moment that a gust leaves over; negative where it tips.

    >>> moment_reserve(overturning=400.0, resisting=1000.0)
    0.6
    """
    return 1 - overturning / resisting
