"""The tow vehicle and tires as the sway model takes them, from masses and lengths a builder can read off."""

from curbwright.figures import equation
from curbwright.quantities import (
    Kilograms,
    KilogramSquareMetres,
    Metres,
    MetresPerSecondSquared,
    NewtonsPerRadian,
    Number,
)


@equation("sway-models:tire stiffness grows with load", uncited=True)
def cornering_stiffness(
    *, load: Kilograms, per_load: Number, gravity: MetresPerSecondSquared
) -> NewtonsPerRadian:
    """Side stiffness of the tires of an axle per radian of slip, as so many times the load they carry.

    ``per_load`` is 5 to 8 for trailer tires and 8 to 10 for a tow vehicle's (common practice).

    >>> cornering_stiffness(load=1000.0, per_load=6.0, gravity=10.0)
    60000.0
    """
    return load * per_load * gravity


@equation("geometry", uncited=True)
def vehicle_centre(wheelbase: Metres, front_share: Number) -> Metres:
    """Centre of gravity of a vehicle behind its front axle.

    >>> vehicle_centre(wheelbase=3.0, front_share=0.6)
    1.2
    """
    return wheelbase * (1 - front_share)


@equation("geometry", uncited=True)
def centre_to_rear_axle(wheelbase: Metres, front_share: Number) -> Metres:
    """Rear axle of a vehicle behind its centre of gravity.

    >>> centre_to_rear_axle(wheelbase=3.0, front_share=0.6)
    1.8
    """
    return wheelbase * front_share


@equation("geometry", uncited=True)
def centre_to_ball(rear: Metres, overhang: Metres) -> Metres:
    """Ball behind the tow vehicle's centre of gravity.

    >>> centre_to_ball(rear=1.8, overhang=1.2)
    3.0
    """
    return rear + overhang


@equation("sway-models:yaw inertia of a road vehicle", uncited=True)
def vehicle_yaw_inertia(*, mass: Kilograms, front: Metres, rear: Metres) -> KilogramSquareMetres:
    """Yaw inertia of a road vehicle from its mass and where its axles stand (common practice).

    >>> vehicle_yaw_inertia(mass=2000.0, front=1.2, rear=1.8)
    4320.0
    """
    return mass * front * rear


@equation("statics:moments about an axle", uncited=True)
def rear_axle_of_vehicle(*, mass: Kilograms, front_share: Number, tongue: Kilograms) -> Kilograms:
    """Load on the tow vehicle's rear axle; the tongue's lever over the axle is left out, which errs low.

    >>> rear_axle_of_vehicle(mass=2000.0, front_share=0.6, tongue=100.0)
    900.0
    """
    return mass * (1 - front_share) + tongue


@equation("statics:moments about an axle", uncited=True)
def front_axle_of_vehicle(mass: Kilograms, front_share: Number) -> Kilograms:
    """Load on the tow vehicle's front axle without a trailer.

    >>> front_axle_of_vehicle(mass=2000.0, front_share=0.6)
    1200.0
    """
    return mass * front_share


@equation("sway-models:band of tire stiffness", uncited=True)
def scaled_stiffness(stiffness: NewtonsPerRadian, times: Number) -> NewtonsPerRadian:
    """Side stiffness at one end of the band it may lie in.

    >>> scaled_stiffness(stiffness=60000.0, times=0.75)
    45000.0
    """
    return stiffness * times
