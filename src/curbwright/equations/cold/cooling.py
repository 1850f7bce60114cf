"""Compressors: how well they do, what they take out, how long they run, what a box settles at."""

from numpy import exp, log

from curbwright.figures import equation
from curbwright.quantities import (
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


@equation("carnot")
def carnot_performance(evaporating: Kelvins, condensing: Kelvins) -> Number:
    """Heat an ideal machine moves for each unit of work between two temperatures.

    >>> round(carnot_performance(evaporating=268, condensing=308), 3)
    6.7
    """
    return evaporating / (condensing - evaporating)


@equation("steady-flow:temperatures of a small compressor", uncited=True)
def evaporating_temperature(box: Kelvins, below: TemperatureDifference) -> Kelvins:
    """Temperature of the evaporator plate from that of the air in the box.

    >>> evaporating_temperature(box=276, below=10)
    266
    """
    return box - below


@equation("steady-flow:temperatures of a small compressor", uncited=True)
def condensing_temperature(
    *, air: Kelvins, recirculated: TemperatureDifference, above: TemperatureDifference
) -> Kelvins:
    """Temperature in the condenser: the air around, the rise of its own breath drawn in again, its own rise.

    >>> condensing_temperature(air=308, recirculated=3, above=15)
    326
    """
    return air + recirculated + above


@equation("carnot:a share of it", uncited=True)
def performance(*, share: Number, evaporating: Kelvins, condensing: Kelvins) -> Number:
    """Heat taken out for each unit of electricity, as a share of what an ideal machine would.

    Small compressors with their electronics reach 0.33 to 0.40 of it.

    >>> round(performance(share=0.36, evaporating=263.15, condensing=323.15), 3)
    1.579
    """
    return share * evaporating / (condensing - evaporating)


@equation("compressor-fit", uncited=True, empirical=True)
def rated_capacity_at(
    *, rated: Watts, rated_evaporating: Kelvins, rated_condensing: Kelvins,
    evaporating: Kelvins, condensing: Kelvins,
) -> Watts:  # fmt: skip
    """Capacity away from the rating point, by a fit to a cycle of R134a at one speed.

    Evaporating -25 to 0 °C, condensing 40 to 55 °C, good to 15 %; a maker's own table beats it.

    >>> round(float(rated_capacity_at(rated=74, rated_evaporating=263.15, rated_condensing=323.15,
    ...                               evaporating=268.15, condensing=323.15)), 2)
    96.45
    """
    return (
        rated * exp(0.053 * (evaporating - rated_evaporating))
        * (1 - 0.0135 * (condensing - 323.15)) / (1 - 0.0135 * (rated_condensing - 323.15))
    )  # fmt: skip


@equation("linear-interpolation", uncited=True)
def between(*, low: Kelvins, high: Kelvins, at: Kelvins, from_low: Watts, from_high: Watts) -> Watts:
    """Value between two rows of a maker's table, on the straight line.

    >>> between(low=263, high=273, at=268, from_low=50, from_high=80)
    65.0
    """
    return from_low + (from_high - from_low) * (at - low) / (high - low)


@equation("steady-flow:balance of a box whose machine never stops")
def floating_temperature(
    *, surroundings: Kelvins, capacity: Watts, steady: Watts, conductance: WattsPerKelvin
) -> Kelvins:
    """Temperature a box settles at when its machine runs all the time.

    ``steady`` is the heat that comes in by other ways than the walls.

    >>> floating_temperature(surroundings=308, capacity=70, steady=10, conductance=1.5)
    268.0
    """
    return surroundings - (capacity - steady) / conductance


@equation("steady-flow:heat a product gives up", uncited=True)
def load_conductance(*, load: Watts, warm: Kelvins, kept: Kelvins) -> WattsPerKelvin:
    """Heat a day's loading gives up for each degree it is warmer than the box.

    >>> load_conductance(load=20, warm=285, kept=275)
    2.0
    """
    return load / (warm - kept)


@equation("steady-flow:balance of a box whose machine never stops", uncited=True)
def floating_while_loaded(
    *, surroundings: Kelvins, conductance: WattsPerKelvin, loaded: Kelvins, load_conductance: WattsPerKelvin,
    steady: Watts, capacity: Watts,
) -> Kelvins:  # fmt: skip
    """Temperature a box settles at when its machine runs all the time, food being put in warm.

    ``steady`` is the heat that comes in by other ways than walls and food.

    >>> floating_while_loaded(surroundings=308, conductance=1.5, loaded=285, load_conductance=0.5, steady=8,
    ...                       capacity=70)
    271.25
    """
    return (conductance * surroundings + load_conductance * loaded + steady - capacity) / (
        conductance + load_conductance
    )


@equation("lumped-box:running")
def time_running(
    *, capacity: JoulesPerKelvin, conductance: WattsPerKelvin, high: Kelvins, low: Kelvins, floating: Kelvins
) -> Seconds:
    """Time a running machine needs to bring a box from a high to a low temperature; pull-down too.

    ``capacity`` is the heat capacity of box and contents, one lump; ``floating`` what the box would settle
    at if the machine never stopped, below ``low``.

    >>> float(time_running(capacity=41600, conductance=0.684, high=277.15, low=275.15, floating=205.81))
    1729.
    """
    return capacity / conductance * log((high - floating) / (low - floating))


@equation("lumped-box:standing")
def time_warming(
    *, capacity: JoulesPerKelvin, conductance: WattsPerKelvin, low: Kelvins, high: Kelvins, settles: Kelvins
) -> Seconds:
    """Time a box takes to warm from a low to a high temperature with its machine off; hold-over too.

    ``settles`` is what it would end at, above ``high``: the air around, or more where heat comes in
    otherwise.

    >>> float(time_warming(capacity=41600, conductance=0.684, low=275.15, high=277.15, settles=308.15))
    3802.
    """
    return capacity / conductance * log((settles - low) / (settles - high))


@equation("steady-flow:freezing water")
def freezing_power(
    *, rate: KilogramsPerSecond, specific_heat: JoulesPerKilogramKelvin, cooled_by: TemperatureDifference,
    latent: JoulesPerKilogram,
) -> Watts:  # fmt: skip
    """Heat to be taken out to cool water and freeze it, so much a second.

    >>> freezing_power(rate=0.001, specific_heat=4187, cooled_by=20, latent=334000)
    417.74
    """
    return rate * (specific_heat * cooled_by + latent)


@equation("steady-flow:temperatures of a small compressor", uncited=True)
def air_at_condenser(air: Kelvins, recirculated: TemperatureDifference) -> Kelvins:
    """Temperature of the air a condenser draws in.

    >>> air_at_condenser(air=308, recirculated=3)
    311
    """
    return air + recirculated


@equation("steady-flow:heat a product gives up", uncited=True)
def contents_heat_capacity(mass: Kilograms, specific_heat: JoulesPerKilogramKelvin) -> JoulesPerKelvin:
    """Heat that warms the contents by a degree.

    >>> contents_heat_capacity(mass=10, specific_heat=3600)
    36000
    """
    return mass * specific_heat
