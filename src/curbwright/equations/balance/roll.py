"""Rolling over: how much side pull tips the trailer, on what curve, and what water in a tank adds.

A threshold is the side acceleration at which the inner wheels lift, as a share of gravity. All of them are
for a rigid trailer; springs and tires take 10 to 30 % off.
"""

from numpy import arctan, pi, tanh

from curbwright.figures import equation
from curbwright.quantities import Hertz, Metres, MetresPerSecond, MetresPerSecondSquared, Number, Radians


@equation("roll-threshold:rigid vehicle")
def stability_factor(track: Metres, height: Metres) -> Number:
    """Static stability factor: half the track over the height of the centre of gravity.

    >>> stability_factor(track=1.5, height=1.0)
    0.75
    """
    return track / (2 * height)


@equation("roll-threshold:rigid vehicle", uncited=True)
def stability_factor_off_centre(*, track: Metres, across: Metres, height: Metres) -> Number:
    """Static stability factor of a trailer whose centre of gravity stands off the centre line.

    >>> stability_factor_off_centre(track=1.5, across=-0.05, height=1.0)
    0.7
    """
    return (track / 2 - abs(across)) / height


@equation("roll-threshold:coupled single axle")
def coupled_roll_threshold(
    *, track: Metres, centre: Metres, axle: Metres, height: Metres, ball_height: Metres
) -> Number:
    """Side pull that tips a coupled single-axle trailer, about the line from the ball to the outer tire.

    Derived from moments about that line with a ball that carries no roll. With no tongue load it is the
    static stability factor.

    >>> coupled_roll_threshold(track=1.5, centre=3.0, axle=3.0, height=1.0, ball_height=0.45)
    0.75
    """
    return (track / 2) * (centre / axle) / (height - ball_height * (1 - centre / axle))


@equation("roll-threshold:coupled single axle", uncited=True)
def coupled_roll_threshold_off_centre(
    *, track: Metres, across: Metres, centre: Metres, axle: Metres, height: Metres, ball_height: Metres
) -> Number:
    """Side pull that tips a coupled single-axle trailer whose centre of gravity stands off the centre line.

    Towards the side it stands on. On the centre line it is the coupled threshold.

    >>> round(coupled_roll_threshold_off_centre(
    ...     track=1.5, across=-0.05, centre=3.0, axle=3.0, height=1.0, ball_height=0.45), 6)
    0.7
    """
    return ((track / 2) * (centre / axle) - abs(across)) / (height - ball_height * (1 - centre / axle))


@equation("roll-practice-note:real against rigid")
def derated_threshold(threshold: Number, factor: Number) -> Number:
    """Threshold of a real trailer, whose springs and tires give.

    >>> derated_threshold(threshold=0.75, factor=0.8)
    0.6
    """
    return threshold * factor


@equation("roll-threshold:banked curve", uncited=True)
def banked_threshold(threshold: Number, bank: Number) -> Number:
    """Side acceleration that tips on a curve banked inwards by a slope.

    >>> banked_threshold(threshold=0.6, bank=0.0)
    0.6
    """
    return (threshold + bank) / (1 - bank * threshold)


@equation("roll-threshold:flat curve")
def tip_speed(*, radius: Metres, threshold: Number, gravity: MetresPerSecondSquared) -> MetresPerSecond:
    """Steady speed on a flat curve at which the inner wheels lift. It is never a safe speed.

    >>> tip_speed(radius=20, threshold=0.5, gravity=10)
    10.0
    """
    return (radius * threshold * gravity) ** 0.5


@equation("roll-threshold:flat curve")
def tip_radius(*, speed: MetresPerSecond, threshold: Number, gravity: MetresPerSecondSquared) -> Metres:
    """Radius of the flat curve on which the inner wheels lift at a steady speed.

    >>> tip_radius(speed=10, threshold=0.5, gravity=10)
    20.0
    """
    return speed**2 / (threshold * gravity)


@equation("roll-threshold:tilt table")
def tilt_angle(factor: Number) -> Radians:
    """Sideways tilt at which the trailer, standing still, goes over.

    >>> float(tilt_angle(factor=1.0))
    0.7854
    """
    return arctan(factor)


@equation("slosh:quasi-static, rectangular tank")
def slosh_shift(*, width: Metres, depth: Metres, side_pull: Number) -> Metres:
    """Sideways shift of the centre of the water in a rectangular tank under a side pull (share of gravity).

    ``width`` is the width across the cart of one compartment. Valid while half the width times the side
    pull is no more than the depth and no more than the headroom.

    >>> slosh_shift(width=0.6, depth=0.15, side_pull=0.3)
    0.06
    """
    return width**2 * side_pull / (12 * depth)


@equation("slosh:quasi-static, rectangular tank")
def slosh_rise(*, width: Metres, depth: Metres, side_pull: Number) -> Metres:
    """Rise of the centre of the water in a rectangular tank under a side pull (share of gravity).

    Valid as the shift is.

    >>> slosh_rise(width=0.6, depth=0.15, side_pull=0.3)
    0.009
    """
    return width**2 * side_pull**2 / (24 * depth)


@equation("slosh:first mode, rectangular tank")
def slosh_frequency(*, width: Metres, depth: Metres, gravity: MetresPerSecondSquared) -> Hertz:
    """Frequency at which water swings from side to side in a rectangular tank.

    >>> float(slosh_frequency(width=0.6096, depth=0.1524, gravity=9.80665))
    0.92
    """
    return (gravity * pi / width * tanh(pi * depth / width)) ** 0.5 / (2 * pi)
