"""Holding without power: what ice gives, how long it lasts, how warm a box gets beside it."""

from numpy import exp

from curbwright.figures import equation
from curbwright.quantities import (
    Joules,
    JoulesPerKelvin,
    JoulesPerKilogram,
    JoulesPerKilogramKelvin,
    Kelvins,
    Kilograms,
    KilogramsPerSecond,
    Number,
    Seconds,
    TemperatureDifference,
    Watts,
    WattsPerKelvin,
)


@equation("heat-of-melting")
def melting_time(*, mass: Kilograms, latent: JoulesPerKilogram, gain: Watts) -> Seconds:
    """Time ice lasts against a steady gain of heat.

    >>> melting_time(mass=3, latent=334000, gain=20)
    50100.0
    """
    return mass * latent / gain


@equation("heat-of-melting")
def melted_in(*, gain: Watts, time: Seconds, latent: JoulesPerKilogram) -> Kilograms:
    """Ice that melts in a time against a steady gain of heat.

    >>> melted_in(gain=20, time=3600, latent=360000)
    0.2
    """
    return gain * time / latent


@equation("heat-of-melting", uncited=True)
def melting_rate(gain: Watts, latent: JoulesPerKilogram) -> KilogramsPerSecond:
    """Ice that melts in a second.

    >>> melting_rate(gain=33.4, latent=334000)
    0.0001
    """
    return gain / latent


@equation("heat-of-melting")
def ice_to_cool(
    *, mass: Kilograms, specific_heat: JoulesPerKilogramKelvin, cooled_by: TemperatureDifference,
    latent: JoulesPerKilogram,
) -> Kilograms:  # fmt: skip
    """Ice that cools food by so much in melting, the water from it staying at its melting point.

    >>> round(ice_to_cool(mass=65, specific_heat=3480, cooled_by=35, latent=334000), 3)
    23.704
    """
    return mass * specific_heat * cooled_by / latent


@equation("lumped-box:beside ice", uncited=True)
def together(walls: WattsPerKelvin, contact: WattsPerKelvin) -> WattsPerKelvin:
    """Conductance of the walls and of the contact with the ice, side by side.

    >>> together(walls=0.7, contact=2.0)
    2.7
    """
    return walls + contact


@equation("lumped-box:beside ice", uncited=True)
def temperature_beside_ice(
    *, walls: WattsPerKelvin, surroundings: Kelvins, steady: Watts, contact: WattsPerKelvin, melting: Kelvins
) -> Kelvins:
    """Temperature a box settles at between warm surroundings and ice that melts in it.

    ``contact`` is the conductance from the air of the box to the ice; ``steady`` the heat that comes in by
    other ways than the walls.

    >>> temperature_beside_ice(walls=1.0, surroundings=308, steady=5, contact=4.0, melting=273)
    281.0
    """
    return (walls * surroundings + steady + contact * melting) / (walls + contact)


@equation("lumped-box:beside ice", uncited=True)
def settles_at(*, surroundings: Kelvins, steady: Watts, conductance: WattsPerKelvin) -> Kelvins:
    """Temperature a box ends at with nothing to cool it.

    >>> settles_at(surroundings=308, steady=7, conductance=0.7)
    318.0
    """
    return surroundings + steady / conductance


@equation("lumped-box:beside ice", uncited=True)
def temperature_after(
    *, start: Kelvins, settles: Kelvins, time: Seconds, capacity: JoulesPerKelvin, conductance: WattsPerKelvin
) -> Kelvins:
    """Temperature of a box, one lump, some time after its surroundings changed.

    >>> round(float(temperature_after(start=276, settles=308, time=3600, capacity=36000, conductance=0.7)), 3)
    278.164
    """
    return settles + (start - settles) * exp(-conductance * time / capacity)


@equation("lumped-box:beside ice", uncited=True)
def ice_unmelted(
    *, time: Seconds, mass: Kilograms, latent: JoulesPerKilogram, contact: WattsPerKelvin, melting: Kelvins,
    start: Kelvins, settles: Kelvins, capacity: JoulesPerKelvin, conductance: WattsPerKelvin,
) -> Joules:  # fmt: skip
    """Heat that ice can still take up, some time after the box was left to it; none is left at zero.

    The box runs from ``start`` towards ``settles``; ``conductance`` is walls and contact together.

    >>> round(float(ice_unmelted(time=36000, mass=3, latent=334000, contact=2.0, melting=273.15, start=276.15,
    ...       settles=280, capacity=36000, conductance=2.7)))
    604567
    """
    return mass * latent - contact * (
        (settles - melting) * time
        + (start - settles) * capacity / conductance * (1 - exp(-conductance * time / capacity))
    )


@equation("lumped-box:beside ice", uncited=True)
def ice_power(*, contact: WattsPerKelvin, limit: Kelvins, melting: Kelvins) -> Watts:
    """Heat ice takes up at most while the food is still within its limit: what it cannot take warms the food.

    >>> round(ice_power(contact=2.0, limit=278.15, melting=273.15), 6)
    10.0
    """
    return contact * (limit - melting)


@equation("trade-practice:heat reaches ice by other ways too", uncited=True)
def ice_needed(*, gain: Watts, time: Seconds, latent: JoulesPerKilogram, allowance: Number) -> Kilograms:
    """Ice to hold a box through a time without power.

    >>> round(ice_needed(gain=20, time=36000, latent=334000, allowance=1.5), 4)
    3.2335
    """
    return allowance * gain * time / latent


@equation("trade-practice:the warmest corner is warmer than the air on average", uncited=True)
def warmest_food(*, air: Kelvins, ripple: TemperatureDifference, warm_spot: TemperatureDifference) -> Kelvins:
    """Temperature of the warmest food: the air on average, half its swing, and the warmest place above it.

    >>> warmest_food(air=276.0, ripple=2.0, warm_spot=1.5)
    278.5
    """
    return air + ripple / 2 + warm_spot


@equation("convention:half the swing above the mean", uncited=True)
def top_of_swing(air: Kelvins, ripple: TemperatureDifference) -> Kelvins:
    """Air temperature at which the thermostat starts the machine.

    >>> top_of_swing(air=276.0, ripple=2.0)
    277.0
    """
    return air + ripple / 2
