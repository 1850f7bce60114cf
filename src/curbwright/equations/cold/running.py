"""Running: the share of the time, the electricity, the energy of a day."""

from numpy import maximum, minimum

from curbwright.figures import equation
from curbwright.quantities import (
    Joules,
    Kelvins,
    Number,
    Seconds,
    TemperatureDifference,
    Watts,
)


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


@equation("steady-flow:energy")
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


@equation("lumped-box:share of a cycle")
def cycle_duty(running: Seconds, standing: Seconds) -> Number:
    """Share of a cycle that the machine runs.

    >>> round(cycle_duty(running=1729.4, standing=3802.4), 4)
    0.3126
    """
    return running / (running + standing)


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


@equation("steady-flow:energy")
def heat_in_time(heat: Joules, time: Seconds) -> Watts:
    """Power of an energy spread over a time: heat to be gone by then, or the mean of a day.

    >>> heat_in_time(heat=198000, time=3600)
    55.0
    """
    return heat / time
