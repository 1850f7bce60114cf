"""The box a moment at a time: how fast each part of it warms, for a loop that steps through a day.

The parts are the liner with the inner half of the wall, the food, the evaporator plate and the ice. The air
is too light to step: it takes the temperature at which the heat flowing into it vanishes. Everything may be
an array, one cell a box or a day. Steps of a minute are stable while each part's heat capacity over the sum
of its conductances stays above it.
"""

from typing import Any

from numpy import maximum

from curbwright.figures import equation, procedure
from curbwright.quantities import (
    Joules,
    JoulesPerKelvin,
    JoulesPerKilogram,
    JoulesPerKilogramKelvin,
    Kelvins,
    KelvinsPerSecond,
    Kilograms,
    KilogramsPerSecond,
    Number,
    Seconds,
    TemperatureDifference,
    Watts,
    WattsPerKelvin,
)


@equation("box-states:outside the liner", uncited=True)
def outer_conductance(whole: WattsPerKelvin, liner: WattsPerKelvin) -> WattsPerKelvin:
    """Conductance from the surroundings to the liner: what the whole wall has, without the step to the air.

    >>> round(outer_conductance(whole=0.684, liner=8.0), 4)
    0.748
    """
    return 1 / (1 / whole - 1 / liner)


@equation("box-states:air", uncited=True)
def air_temperature(
    *, food_contact: WattsPerKelvin, food: Kelvins, liner_contact: WattsPerKelvin, liner: Kelvins,
    plate_contact: WattsPerKelvin, plate: Kelvins, ice_contact: WattsPerKelvin, melting: Kelvins, heat: Watts,
) -> Kelvins:  # fmt: skip
    """Temperature of the box air: the one at which all heat that flows into it adds up to nothing.

    ``ice_contact`` is zero where no ice is left. ``heat`` is what openings, fan and light bring in.

    >>> round(air_temperature(food_contact=3, food=276, liner_contact=8, liner=277, plate_contact=4,
    ...                       plate=268, ice_contact=0, melting=273, heat=6), 2)
    274.8
    """
    return (
        food_contact * food + liner_contact * liner + plate_contact * plate + ice_contact * melting + heat
    ) / (food_contact + liner_contact + plate_contact + ice_contact)


@equation("box-states:liner", uncited=True)
def liner_rate(
    *, outer: WattsPerKelvin, surroundings: Kelvins, liner_contact: WattsPerKelvin, air: Kelvins,
    liner: Kelvins, capacity: JoulesPerKelvin,
) -> KelvinsPerSecond:  # fmt: skip
    """How fast the liner warms.

    >>> liner_rate(outer=0.75, surroundings=308, liner_contact=8, air=275, liner=278, capacity=3000)
    -0.0005
    """
    return (outer * (surroundings - liner) + liner_contact * (air - liner)) / capacity


@equation("box-states:food", uncited=True)
def food_heat_rate(*, food_contact: WattsPerKelvin, air: Kelvins, food: Kelvins) -> Watts:
    """Heat the food takes up from the air; heat of food put in or taken out comes on top.

    >>> food_heat_rate(food_contact=3, air=275, food=276)
    -3
    """
    return food_contact * (air - food)


@equation("box-states:food", uncited=True)
def food_temperature(
    *, base: Kelvins, heat: Joules, mass: Kilograms, specific_heat: JoulesPerKilogramKelvin
) -> Kelvins:
    """Temperature of unfrozen food from the heat in it, counted from a base temperature.

    >>> food_temperature(base=273.15, heat=216000, mass=20, specific_heat=3600)
    276.15
    """
    return base + heat / (mass * specific_heat)


@procedure("box-states:food that freezes", uncited=True)
def freezing_food_temperature(
    *, heat: JoulesPerKilogram, freezing: Kelvins, latent: JoulesPerKilogram,
    above: JoulesPerKilogramKelvin, below: JoulesPerKilogramKelvin,
) -> Kelvins:  # fmt: skip
    """Temperature of food from the heat in a kilogram of it, counted from where it has just frozen through.

    Frozen and thawed food follow their specific heats; in between it stays at its freezing point.

    >>> food = dict(freezing=271.0, latent=240000, above=3500, below=2000)
    >>> float(freezing_food_temperature(heat=-20000.0, **food))
    261.0
    >>> float(freezing_food_temperature(heat=247000.0, **food))
    273.0
    """
    from numpy import minimum

    return freezing + minimum(heat, 0 * heat) / below + maximum(heat - latent, 0 * heat) / above


@equation("box-states:plate", uncited=True)
def plate_rate(
    *, plate_contact: WattsPerKelvin, air: Kelvins, plate: Kelvins, frost: KilogramsPerSecond,
    freezing_out: JoulesPerKilogram, running: Number, taken_out: Watts, capacity: JoulesPerKelvin,
) -> KelvinsPerSecond:  # fmt: skip
    """How fast the evaporator plate warms, frost settling on it and the compressor taking heat out.

    ``running`` is 1 while the compressor runs, else 0; ``freezing_out`` the heat vapour gives up as frost.

    >>> plate_rate(plate_contact=4, air=275, plate=268, frost=0.0, freezing_out=2.83e6, running=1,
    ...            taken_out=70, capacity=1500)
    -0.028
    """
    return (plate_contact * (air - plate) + freezing_out * frost - running * taken_out) / capacity


@equation("box-states:frost", uncited=True)
def frost_rate(
    *, carried: KilogramsPerSecond, air_moisture: Number, plate_moisture: Number
) -> KilogramsPerSecond:
    """Moisture that settles on the plate, from the humidity ratios of the air and at the plate.

    ``carried`` is the dry air that passes the plate in a second, mixed through. A plate drier than the air
    takes frost; a moister one gives none back.

    >>> float(frost_rate(carried=0.002, air_moisture=0.004, plate_moisture=0.0025))
    3e-06
    """
    return maximum(0 * carried, carried * (air_moisture - plate_moisture))


@equation("box-states:ice", uncited=True)
def ice_rate(
    *, ice_contact: WattsPerKelvin, air: Kelvins, melting: Kelvins, latent: JoulesPerKilogram
) -> KilogramsPerSecond:
    """How fast ice grows: negative while it melts; on a cold plate it freezes again.

    ``ice_contact`` is zero where no ice is left to melt.

    >>> ice_rate(ice_contact=2, air=277, melting=273, latent=320000)
    -2.5e-05
    """
    return ice_contact * (melting - air) / latent


@equation("box-states:condenser", uncited=True)
def condenser_temperature(*, air: Kelvins, rejected: Watts, conductance: WattsPerKelvin) -> Kelvins:
    """Temperature in the condenser from the heat it gives off, where its conductance is known.

    >>> condenser_temperature(air=308, rejected=120, conductance=8)
    323.0
    """
    return air + rejected / conductance


@equation("box-states:power", uncited=True)
def power_drawn(*, running: Number, compressor: Watts, fans: Watts, control: Watts) -> Watts:
    """Electricity drawn at a moment.

    >>> power_drawn(running=1, compressor=50, fans=3, control=1)
    54
    """
    return running * (compressor + fans) + control


@procedure("box-states:thermostat", uncited=True)
def thermostat(
    *, running: Number, sensed: Kelvins, middle: Kelvins, swing: TemperatureDifference,
    since: Seconds, rest: Seconds,
) -> Number:  # fmt: skip
    """Whether the compressor runs: on above the swing and rested long enough, off below it, else as it was.

    ``since`` is the time since it last stopped, ``rest`` how long it must stand before it may start again.
    Power that is cut off is the loop's matter.

    >>> float(thermostat(running=0, sensed=278.2, middle=276.0, swing=4.0, since=600, rest=180))
    1.0
    >>> float(thermostat(running=0, sensed=278.2, middle=276.0, swing=4.0, since=60, rest=180))
    0.0
    >>> float(thermostat(running=1, sensed=276.5, middle=276.0, swing=4.0, since=0, rest=180))
    1.0
    """
    from numpy import where

    warm, cold = sensed > middle + swing / 2, sensed < middle - swing / 2
    starts: Any = where((since >= rest) & warm, 1.0, 0.0)
    runs: Any = where(running > 0, where(cold, 0.0, 1.0), starts)
    return runs
