"""Compressors: what they take out, what they draw, how long they run."""

from numpy import exp, log, maximum, minimum

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


@equation("carnot:a share of it")
def performance(*, share: Number, evaporating: Kelvins, condensing: Kelvins) -> Number:
    """Heat taken out for each unit of electricity, as a share of what an ideal machine would.

    Small compressors with their electronics reach 0.33 to 0.40 of it.

    >>> round(performance(share=0.36, evaporating=263.15, condensing=323.15), 3)
    1.579
    """
    return share * evaporating / (condensing - evaporating)


@equation("steady-flow:electricity and heat", uncited=True)
def capacity_from_power(power: Watts, performance: Number) -> Watts:
    """Heat a compressor takes out while it runs, from the electricity it draws.

    >>> capacity_from_power(power=50, performance=1.5)
    75.0
    """
    return power * performance


@equation("steady-flow:electricity and heat")
def power_from_capacity(capacity: Watts, performance: Number) -> Watts:
    """Electricity a compressor draws while it runs, from the heat it takes out.

    >>> power_from_capacity(capacity=75, performance=1.5)
    50.0
    """
    return capacity / performance


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


@equation("steady-flow:share of the time", uncited=True)
def duty(gain: Watts, capacity: Watts) -> Number:
    """Share of the time a compressor has to run; more than one is more than it can.

    >>> duty(gain=30, capacity=75)
    0.4
    """
    return gain / capacity


@equation("steady-flow:share of the time", uncited=True)
def duty_within(gain: Watts, capacity: Watts) -> Number:
    """Share of the time a compressor does run: none on a cold night, all of it when that is not enough.

    >>> float(duty_within(gain=30, capacity=75)), float(duty_within(gain=90, capacity=75))
    (0.4, 1.0)
    """
    return maximum(0, minimum(1, gain / capacity))


@equation("steady-flow:share of the time", uncited=True)
def mean_power(*, duty: Number, running: Watts, standby: Watts) -> Watts:
    """Electricity drawn on average by a compressor that runs part of the time, its controller always on.

    >>> mean_power(duty=0.4, running=50, standby=1)
    21.0
    """
    return duty * running + standby


@equation("trade-practice:more heat the warmer, and each watt moves less", uncited=True)
def mean_power_at(
    *, rated: Watts, rated_air: Kelvins, surroundings: Kelvins, inside: Kelvins, condenser_air: Kelvins,
    lift: TemperatureDifference, evaporating: Kelvins,
) -> Watts:  # fmt: skip
    """Mean electricity of a shut box in other air than its maker's: by the heat let in and the lift.

    ``lift`` is how far a condenser stands above the air round the box.

    >>> round(float(mean_power_at(rated=16, rated_air=305, surroundings=313, inside=275, condenser_air=313,
    ...                           lift=18, evaporating=265)), 2)
    23.06
    """
    return maximum(
        0 * rated,
        rated
        * (surroundings - inside) / (rated_air - inside)
        * (condenser_air + lift - evaporating) / (rated_air + lift - evaporating),
    )  # fmt: skip


@equation("steady-flow:energy", uncited=True)
def energy(power: Watts, time: Seconds) -> Joules:
    """Energy of a power over a time.

    >>> energy(power=20, time=3600)
    72000
    """
    return power * time


@equation("steady-flow:energy")
def electricity_for(heat: Joules, performance: Number) -> Joules:
    """Electricity to take out an amount of heat.

    >>> electricity_for(heat=300, performance=1.5)
    200.0
    """
    return heat / performance


@equation("steady-flow:energy", uncited=True)
def hourly_share(total: Number, hours: Number) -> Number:
    """Mean over hours of a share that was added up.

    >>> hourly_share(total=6.0, hours=24)
    0.25
    """
    return total / hours


@equation("steady-flow:what is left", uncited=True)
def capacity_left(capacity: Watts, gain: Watts) -> Watts:
    """Capacity left over; negative where it is missing.

    >>> capacity_left(capacity=75, gain=30)
    45
    """
    return capacity - gain


@equation("steady-flow:balance of a box whose machine never stops", uncited=True)
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


@equation("lumped-box:share of a cycle")
def cycle_duty(running: Seconds, standing: Seconds) -> Number:
    """Share of a cycle that the machine runs.

    >>> round(cycle_duty(running=1729.4, standing=3802.4), 4)
    0.3126
    """
    return running / (running + standing)


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


@equation("steady-flow:drive")
def motor_power(power: Watts, efficiency: Number) -> Watts:
    """Power a motor draws for a power at its shaft.

    >>> motor_power(power=90, efficiency=0.9)
    100.0
    """
    return power / efficiency


@equation("steady-flow:energy", uncited=True)
def energy_served(*, power: Watts, served: Number, hour: Seconds) -> Joules:
    """Energy of a power over the part of an hour in serving time.

    >>> energy_served(power=20, served=0.5, hour=3600)
    36000.0
    """
    return power * served * hour


@equation("steady-flow:electricity and heat", uncited=True)
def performance_of(capacity: Watts, power: Watts) -> Number:
    """Heat taken out for each unit of electricity, from both.

    >>> performance_of(capacity=75, power=50)
    1.5
    """
    return capacity / power


@equation("steady-flow:electricity and heat", uncited=True)
def heat_rejected(gain: Watts, power: Watts) -> Watts:
    """Heat a machine gives off to the air: what it took out and what it drew.

    >>> heat_rejected(gain=30, power=20)
    50
    """
    return gain + power


@equation("steady-flow:temperatures of a small compressor", uncited=True)
def air_at_condenser(air: Kelvins, recirculated: TemperatureDifference) -> Kelvins:
    """Temperature of the air a condenser draws in.

    >>> air_at_condenser(air=308, recirculated=3)
    311
    """
    return air + recirculated


@equation("steady-flow:energy")
def heat_in_time(heat: Joules, time: Seconds) -> Watts:
    """Power of an energy spread over a time: heat to be gone by then, or the mean of a day.

    >>> heat_in_time(heat=198000, time=3600)
    55.0
    """
    return heat / time


@equation("steady-flow:heat a product gives up", uncited=True)
def contents_heat_capacity(mass: Kilograms, specific_heat: JoulesPerKilogramKelvin) -> JoulesPerKelvin:
    """Heat that warms the contents by a degree.

    >>> contents_heat_capacity(mass=10, specific_heat=3600)
    36000
    """
    return mass * specific_heat
