"""Mass and its centre, the loads on tongue, axle and wheels, and how weighing finds them.

Stations are behind the ball centre, offsets from the centre line are positive towards the curb side,
heights are above the road. Loads are in kilograms, as a scale shows them.
"""

from numpy import tan

from curbwright.figures import equation
from curbwright.quantities import KilogramMetres, Kilograms, KilogramSquareMetres, Metres, Number, Radians


@equation("statics:first moment of mass")
def moment(mass: Kilograms, station: Metres) -> KilogramMetres:
    """Moment of a mass about the point its station is measured from.

    >>> moment(mass=50, station=3)
    150
    """
    return mass * station


@equation("statics:centre of gravity")
def centre(moment: KilogramMetres, gross: Kilograms) -> Metres:
    """Centre of gravity from the sum of moments and the sum of masses.

    >>> centre(moment=3000, gross=1200)
    2.5
    """
    return moment / gross


@equation("statics:moments about the ball")
def axle_load(*, gross: Kilograms, centre: Metres, axle: Metres) -> Kilograms:
    """Load on the axle, from moments about the ball.

    Valid for one axle, or for an equalised pair taken at its middle, standing level.

    >>> axle_load(gross=1000, centre=2.7, axle=3.0)
    900.0
    """
    return gross * centre / axle


@equation("statics:moments about the axle")
def tongue_load(*, gross: Kilograms, centre: Metres, axle: Metres) -> Kilograms:
    """Load on the ball, from moments about the axle; negative where the tongue lifts.

    >>> tongue_load(gross=1000, centre=2.75, axle=3.125)
    120.0
    """
    return gross * (1 - centre / axle)


@equation("statics:moments about the axle")
def tongue_share(centre: Metres, axle: Metres) -> Number:
    """Share of the gross mass that the ball carries.

    >>> tongue_share(centre=2.75, axle=3.125)
    0.12
    """
    return 1 - centre / axle


@equation("statics:moments about the axle")
def weighed_share(tongue_load: Kilograms, gross: Kilograms) -> Number:
    """Share of the gross mass on the ball, from two readings of a scale.

    >>> weighed_share(tongue_load=120, gross=1000)
    0.12
    """
    return tongue_load / gross


@equation("statics:moments about the axle")
def axle_for_share(centre: Metres, share: Number) -> Metres:
    """Axle station that gives a wanted tongue share.

    The axle's own mass is taken to stay where it is: work the roll-up again after moving it.

    >>> axle_for_share(centre=2.64, share=0.12)
    3.0
    """
    return centre / (1 - share)


@equation("statics:moments about the other wheel")
def right_wheels(*, axle_load: Kilograms, gross: Kilograms, across: Metres, track: Metres) -> Kilograms:
    """Load on the curb-side wheels; the ball carries no roll, so the whole offset goes to the wheels.

    >>> right_wheels(axle_load=900, gross=1000, across=0.03, track=1.5)
    470.0
    """
    return axle_load / 2 + gross * across / track


@equation("statics:moments about the other wheel")
def left_wheels(*, axle_load: Kilograms, gross: Kilograms, across: Metres, track: Metres) -> Kilograms:
    """Load on the street-side wheels; the ball carries no roll, so the whole offset goes to the wheels.

    >>> left_wheels(axle_load=900, gross=1000, across=0.03, track=1.5)
    430.0
    """
    return axle_load / 2 - gross * across / track


@equation("statics:moments about the axle", uncited=True)
def tongue_change_when_moved(*, mass: Kilograms, moved: Metres, axle: Metres) -> Kilograms:
    """Change of tongue load when a mass is moved back.

    The derivative of the tongue load by the station of one mass.

    >>> tongue_change_when_moved(mass=60, moved=0.5, axle=3)
    -10.0
    """
    return -mass * moved / axle


@equation("statics:moments about the axle")
def tongue_change_when_added(*, mass: Kilograms, station: Metres, axle: Metres) -> Kilograms:
    """Change of tongue load when a mass is added: ahead of the axle it presses, behind it lifts.

    >>> tongue_change_when_added(mass=100, station=3.75, axle=3)
    -25.0
    """
    return mass * (1 - station / axle)


@equation("statics:moments about the axle", uncited=True)
def tongue_on_lever(*, reading: Kilograms, board: Metres, tongue_from_pivot: Metres) -> Kilograms:
    """Tongue load from a small scale under the far end of a board that the tongue rests on.

    ``board`` runs from the pivot to the scale. Take the board's own reading off first.

    >>> tongue_on_lever(reading=50, board=1.2, tongue_from_pivot=0.4)
    150.0
    """
    return reading * board / tongue_from_pivot


@equation("statics:moments about the axle, tongue raised")
def centre_height(
    *, axle_height: Metres, centre_ahead: Metres, raised_tongue: Kilograms, gross: Kilograms, axle: Metres,
    ball_height: Metres, angle: Radians,
) -> Metres:  # fmt: skip
    """Height of the centre of gravity, from the tongue load with the tongue raised by an angle.

    ``centre_ahead`` is the distance of the centre ahead of the axle, level; heights are of the level trailer.
    Valid with the wheels free to roll, brakes off, and tanks empty or brim-full.

    >>> float(centre_height(axle_height=0.3, centre_ahead=0.3, raised_tongue=0, gross=1000, axle=3,
    ...                     ball_height=0.5, angle=0.3))
    1.270
    """
    return axle_height + (
        centre_ahead - raised_tongue * (axle - (ball_height - axle_height) * tan(angle)) / gross
    ) / tan(angle)


@equation("statics:parallel axes, uniform box")
def yaw_inertia_term(
    *, mass: Kilograms, station: Metres, centre: Metres, across: Metres, across_centre: Metres,
    length: Metres, width: Metres,
) -> KilogramSquareMetres:  # fmt: skip
    """What one item adds to the yaw inertia about the centre of gravity, taken as a uniform box.

    >>> yaw_inertia_term(mass=12, station=4, centre=3, across=0, across_centre=0, length=1, width=1)
    14.0
    """
    return mass * ((station - centre) ** 2 + (across - across_centre) ** 2 + (length**2 + width**2) / 12)


@equation("statics:radius of gyration")
def yaw_radius(inertia: KilogramSquareMetres, gross: Kilograms) -> Metres:
    """Radius at which the whole mass would have the same yaw inertia.

    >>> yaw_radius(inertia=1440, gross=1000)
    1.2
    """
    return (inertia / gross) ** 0.5
