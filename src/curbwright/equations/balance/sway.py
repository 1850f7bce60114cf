"""Swaying: four models of a trailer's yaw, from one rule of thumb to a tow vehicle with three freedoms.

Stations are behind the ball centre. Stiffness is side force per radian of slip, all tires of an axle or of
the trailer together. Every speed worked here is a limit of a model: none of them is a safe speed.

The three-freedom model has the states v (side speed of the tow vehicle), r (its yaw rate), t (angle of the
trailer to it) and the rate of t. With A, the side acceleration of the trailer's centre of gravity,

    tow_mass (v' + V r) + mass A                = F_front + F_rear + F_trailer
    tow_inertia r' - ball_behind mass A         = front F_front - rear F_rear - ball_behind F_trailer
    inertia (r' + t'') - centre mass A          = -axle F_trailer
    A = v' + V r - (ball_behind + centre) r' - centre t''

and each F is minus a stiffness times the slip angle of its tires.
"""

from typing import Any

from numpy import pi

from curbwright.figures import equation, procedure
from curbwright.quantities import (
    Hertz,
    Kilograms,
    KilogramSquareMetres,
    Metres,
    MetresPerSecond,
    NewtonsPerMetre,
    NewtonsPerRadian,
    Number,
)

FASTEST = 120.0
"""Metres per second: critical speeds are looked for below it; far beyond any road."""


@equation("car-trailer-2dof:Routh's rule")
def yaw_radius_limit(axle: Metres, share: Number) -> Metres:
    """Yaw radius up to which a trailer on a ball that gives sideways decays at every speed.

    Derived by Routh's rule from the two-freedom equations: inertia below mass times the distances from the
    centre of gravity to the ball and to the axle. Many good trailers exceed it: a gauge, not a limit.

    >>> round(yaw_radius_limit(axle=3, share=0.1), 9)
    0.9
    """
    return axle * (share * (1 - share)) ** 0.5


@equation("car-trailer-2dof:Routh's rule", uncited=True)
def balance_index(yaw_radius: Metres, limit: Metres) -> Number:
    """Yaw radius against the radius up to which any hitch will do; smaller is steadier.

    >>> balance_index(yaw_radius=1.2, limit=0.96)
    1.25
    """
    return yaw_radius / limit


@equation("car-trailer-2dof:Routh's rule")
def hitch_stiffness_needed(
    *,
    stiffness: NewtonsPerRadian,
    inertia: KilogramSquareMetres,
    mass: Kilograms,
    centre: Metres,
    axle: Metres,
) -> NewtonsPerMetre:
    """Sideways stiffness the tow vehicle must offer at the ball so that sway decays at every speed.

    Valid where the yaw radius is above its limit; below it the result is negative and any hitch will do.

    >>> round(hitch_stiffness_needed(stiffness=60e3, inertia=1645.6, mass=1360, centre=2.7, axle=3.0))
    65000
    """
    return (
        stiffness
        * (inertia + mass * (axle - centre) ** 2)
        / (axle * (inertia - mass * centre * (axle - centre)))
    )


@procedure("car-trailer-2dof:equations of motion")
def soft_hitch_damping(
    *, speed: MetresPerSecond, hitch_stiffness: NewtonsPerMetre, stiffness: NewtonsPerRadian,
    inertia: KilogramSquareMetres, mass: Kilograms, centre: Metres, axle: Metres,
) -> Number:  # fmt: skip
    """Least damping ratio of a trailer whose ball can give sideways: minus real part over size of its roots.

    Its freedoms are its yaw and the side movement of the ball, on a spring; negative where a motion grows.

    >>> soft_hitch_damping(
    ...     speed=25, hitch_stiffness=65e3, stiffness=60e3, inertia=1645.6, mass=1360, centre=2.7, axle=3.0)
    0.000
    """
    from numpy import array, block, eye, linalg, zeros

    carried = array([[inertia + mass * centre**2, mass * centre], [mass * centre, mass]])
    damping = stiffness / speed * array([[axle**2, axle], [axle, 1]])
    spring = array([[stiffness * axle, 0], [stiffness, hitch_stiffness]])
    roots = linalg.eigvals(
        block([[zeros((2, 2)), eye(2)], [-_solved(carried, spring), -_solved(carried, damping)]])
    )
    return float((-roots.real / abs(roots)).min())


@equation("statics:parallel axes")
def inertia_about_ball(
    *, inertia: KilogramSquareMetres, mass: Kilograms, centre: Metres
) -> KilogramSquareMetres:
    """Yaw inertia about the ball from the one about the centre of gravity.

    >>> inertia_about_ball(inertia=1000, mass=1000, centre=3)
    10000
    """
    return inertia + mass * centre**2


@equation("sway-models:one freedom")
def sway_frequency_alone(
    *, stiffness: NewtonsPerRadian, axle: Metres, inertia_about_ball: KilogramSquareMetres
) -> Hertz:
    """Undamped frequency of a trailer that yaws about a ball running straight.

    >>> sway_frequency_alone(stiffness=60e3, axle=3, inertia_about_ball=12212.8)
    0.611
    """
    return (stiffness * axle / inertia_about_ball) ** 0.5 / (2 * pi)


@equation("sway-models:one freedom")
def sway_damping_alone(
    *,
    speed: MetresPerSecond,
    stiffness: NewtonsPerRadian,
    axle: Metres,
    inertia_about_ball: KilogramSquareMetres,
) -> Number:
    """Damping ratio of a trailer that yaws about a ball running straight: falls as one over the speed.

    It never goes below zero, so it ranks layouts and says nothing of a limit.

    >>> sway_damping_alone(speed=24.587, stiffness=60e3, axle=3, inertia_about_ball=12212.8)
    0.234
    """
    return axle / (2 * speed) * (stiffness * axle / inertia_about_ball) ** 0.5


@procedure("car-trailer-1p5dof:Routh's rule")
def critical_speed_sideways(
    *, rear_mass: Kilograms, rear_stiffness: NewtonsPerRadian,
    mass: Kilograms, inertia: KilogramSquareMetres, centre: Metres, axle: Metres, stiffness: NewtonsPerRadian,
) -> MetresPerSecond:  # fmt: skip
    """Speed at which sway stops decaying if the tow vehicle's rear can only move sideways, by Routh's rule.

    ``rear_mass`` and ``rear_stiffness`` stand for the rear of the tow vehicle. Without the overhang of a real
    hitch it is optimistic: a check of the larger model. Infinite where no speed brings it about.

    >>> critical_speed_sideways(
    ...     rear_mass=300, rear_stiffness=50e3, mass=1360, inertia=5440, centre=2.95, axle=3, stiffness=60e3)
    32.45
    """
    about_ball = inertia + mass * centre**2
    cubic = (rear_mass + mass) * about_ball - (mass * centre) ** 2
    damped = (
        (rear_mass + mass) * stiffness * axle**2
        + (rear_stiffness + stiffness) * about_ball
        - 2 * mass * centre * stiffness * axle
    )
    short = cubic * rear_stiffness * axle - damped * ((rear_mass + mass) * axle - mass * centre)
    return float((damped * rear_stiffness * axle**2 / short) ** 0.5) if short > 0 else float("inf")


@procedure("sway-models:three freedoms")
def least_damping(
    *, speed: MetresPerSecond, tow_mass: Kilograms, tow_inertia: KilogramSquareMetres,
    front: Metres, rear: Metres, ball_behind: Metres,
    front_stiffness: NewtonsPerRadian, rear_stiffness: NewtonsPerRadian,
    mass: Kilograms, inertia: KilogramSquareMetres, centre: Metres, axle: Metres, stiffness: NewtonsPerRadian,
) -> Number:  # fmt: skip
    """Least damping ratio of the three-freedom yaw model's roots at a speed: minus real part over size.

    Negative where a motion grows; minus one where it grows without swinging, as in a jackknife. ``front``,
    ``rear`` and ``ball_behind`` are distances from the tow vehicle's centre of gravity.

    >>> least_damping(
    ...     speed=18.0, tow_mass=1730, tow_inertia=3508, front=1.289, rear=1.596, ball_behind=2.7,
    ...     front_stiffness=80e3, rear_stiffness=80e3, mass=2000, inertia=3000, centre=2.9, axle=3.0,
    ...     stiffness=80e3)
    0.009
    """
    roots = _roots(speed, tow_mass, tow_inertia, front, rear, ball_behind, front_stiffness, rear_stiffness,
                   mass, inertia, centre, axle, stiffness)  # fmt: skip
    return float((-roots.real / abs(roots)).min())


@procedure("sway-models:three freedoms")
def sway_frequency(
    *, speed: MetresPerSecond, tow_mass: Kilograms, tow_inertia: KilogramSquareMetres,
    front: Metres, rear: Metres, ball_behind: Metres,
    front_stiffness: NewtonsPerRadian, rear_stiffness: NewtonsPerRadian,
    mass: Kilograms, inertia: KilogramSquareMetres, centre: Metres, axle: Metres, stiffness: NewtonsPerRadian,
) -> Hertz:  # fmt: skip
    """Frequency of the least damped swinging root of the three-freedom yaw model at a speed.

    Not a number where nothing swings.

    >>> sway_frequency(
    ...     speed=18.4, tow_mass=1730, tow_inertia=3508, front=1.289, rear=1.596, ball_behind=2.7,
    ...     front_stiffness=80e3, rear_stiffness=80e3, mass=2000, inertia=3000, centre=2.9, axle=3.0,
    ...     stiffness=80e3)
    0.47
    """
    roots = _roots(speed, tow_mass, tow_inertia, front, rear, ball_behind, front_stiffness, rear_stiffness,
                   mass, inertia, centre, axle, stiffness)  # fmt: skip
    swinging = roots[abs(roots.imag) > 1e-9 * abs(roots)]
    if not len(swinging):
        return float("nan")
    return float(abs(swinging[(-swinging.real / abs(swinging)).argmin()].imag) / (2 * pi))


@procedure("sway-models:three freedoms")
def critical_speed(
    *, tow_mass: Kilograms, tow_inertia: KilogramSquareMetres,
    front: Metres, rear: Metres, ball_behind: Metres,
    front_stiffness: NewtonsPerRadian, rear_stiffness: NewtonsPerRadian,
    mass: Kilograms, inertia: KilogramSquareMetres, centre: Metres, axle: Metres, stiffness: NewtonsPerRadian,
) -> MetresPerSecond:  # fmt: skip
    """Lowest speed at which a root of the three-freedom yaw model stops decaying, found by halving.

    Looked for up to 120 m/s; infinite where every motion decays to there. It is never a safe speed.

    >>> critical_speed(
    ...     tow_mass=1730, tow_inertia=3508, front=1.289, rear=1.596, ball_behind=2.7,
    ...     front_stiffness=80e3, rear_stiffness=80e3, mass=2000, inertia=3000, centre=2.9, axle=3.0,
    ...     stiffness=80e3)
    18.40
    """
    from numpy import arange

    trailer_and_tow = (tow_mass, tow_inertia, front, rear, ball_behind, front_stiffness, rear_stiffness,
                       mass, inertia, centre, axle, stiffness)  # fmt: skip
    speeds = arange(1.0, FASTEST + 1.0)
    growing = (_roots(speeds, *trailer_and_tow).real >= 0).any(axis=-1)
    if not growing.any():
        return float("inf")
    high = float(speeds[growing.argmax()])
    low = high - 1.0
    while low < (middle := (low + high) / 2) < high:
        if (_roots(middle, *trailer_and_tow).real >= 0).any():
            high = middle
        else:
            low = middle
    return high


def _roots(
    speed: Any, tow_mass: float, tow_inertia: float, front: float, rear: float, ball_behind: float,
    front_stiffness: float, rear_stiffness: float, mass: float, inertia: float, centre: float, axle: float,
    stiffness: float,
) -> Any:  # fmt: skip
    """Return the four roots of the three-freedom model, for one speed or along the last axis for many."""
    from numpy import array, asarray, eye, linalg, zeros

    if not asarray(speed).all():
        raise ZeroDivisionError("nothing sways that stands still")
    at = 1 / asarray(speed, dtype=float)
    swept = ball_behind + centre
    carried = array([
        [tow_mass + mass, -mass * swept, 0, -mass * centre],
        [-ball_behind * mass, tow_inertia + ball_behind * mass * swept, 0, ball_behind * mass * centre],
        [-centre * mass, inertia + centre * mass * swept, 0, inertia + centre**2 * mass],
        [0, 0, 1, 0],
    ])  # fmt: skip
    # Side force of each axle per unit of each state: minus stiffness times slip, the slip over the speed.
    front_force = -front_stiffness * array([1, front, 0, 0])
    rear_force = -rear_stiffness * array([1, -rear, 0, 0])
    trailer_force = -stiffness * array([1, -(ball_behind + axle), 0, -axle])
    slips = array([
        front_force + rear_force + trailer_force,
        front * front_force - rear * rear_force - ball_behind * trailer_force,
        -axle * trailer_force,
        zeros(4),
    ])  # fmt: skip
    turning = zeros((4, 4))
    turning[:3, 1] = [-(tow_mass + mass), ball_behind * mass, centre * mass]
    angle = zeros((4, 4))
    angle[:3, 2] = stiffness * array([1, -ball_behind, -axle])
    angle[3] = eye(4)[3]
    over_speed = at[..., None, None]
    return linalg.eigvals(_solved(carried, slips * over_speed + turning / over_speed + angle))


def _solved(carried: Any, forces: Any) -> Any:
    """Return the accelerations that forces give; raises ZeroDivisionError where there is no mass to turn."""
    from numpy import linalg

    try:
        return linalg.solve(carried, forces)
    except linalg.LinAlgError:
        raise ZeroDivisionError("a mass or an inertia is nothing") from None
