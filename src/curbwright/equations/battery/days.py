"""A day on the bank: what it has to give, how long that lasts, how many such days it stands."""

from numpy import log, maximum, minimum

from curbwright.figures import equation
from curbwright.quantities import (
    Coulombs,
    Joules,
    Kelvins,
    Number,
    Seconds,
    TemperatureDifference,
    Volts,
    Watts,
)


@equation("trade-practice:capacity to install", uncited=True)
def capacity_wanted(
    *, energy: Joules, margin: Number, voltage: Volts, share: Number, temperature: Number, age: Number
) -> Coulombs:
    """Rated capacity to install for a day's energy with a margin, after the usable share, cold and age.

    >>> capacity_wanted(energy=7920.0, margin=0.0, voltage=12.5, share=0.8, temperature=1.0, age=1.0)
    792.0
    """
    return energy * (1 + margin) / (voltage * share * temperature * age)


@equation("energy:less what the sun gives", uncited=True)
def net_need(need: Joules, sun: Joules) -> Joules:
    """Energy that a bank has to give when the sun gives some of it.

    >>> float(net_need(need=7200000.0, sun=3600000.0))
    3600000.0
    """
    return maximum(need - sun, 0 * need)


@equation("energy:days on what is stored", uncited=True)
def days_on(usable: Joules, need: Joules) -> Number:
    """Days that the usable energy lasts with nothing coming in.

    >>> days_on(usable=7200000.0, need=3600000.0)
    2.0
    """
    return usable / need


@equation("trade-practice:a day's energy drawn while away", uncited=True)
def power_away(*, energy: Joules, away: Seconds, day: Seconds) -> Watts:
    """Mean power if a whole day's energy is drawn while the cart is away, a day at most at a time.

    >>> float(power_away(energy=7200000.0, away=36000.0, day=86400.0))
    200.0
    """
    return energy / minimum(away, day)


@equation("energy:time at a power", uncited=True)
def time_on(energy: Joules, power: Watts) -> Seconds:
    """Time that an energy lasts at a steady power.

    >>> time_on(energy=3600000.0, power=100.0) / 3600
    10.0
    """
    return energy / power


@equation("trade-practice:a heavier or a lighter day", uncited=True)
def power_scaled(power: Watts, factor: Number) -> Watts:
    """Power of a day that is heavier or lighter than planned.

    >>> power_scaled(power=100.0, factor=1.25)
    125.0
    """
    return power * factor


@equation("trade-practice:what is left in it", uncited=True)
def depth_of(*, energy: Joules, charge: Coulombs, voltage: Volts) -> Number:
    """Share of its charge that an energy takes out of a bank.

    >>> depth_of(energy=2160000.0, charge=360000.0, voltage=12.0)
    0.5
    """
    return energy / (charge * voltage)


@equation("agm-cycles:power law through two points")
def life_exponent(*, shallow: Number, deep: Number, shallow_cycles: Number, deep_cycles: Number) -> Number:
    """How fast the cycles fall with their depth, from two rows of a maker's table.

    >>> float(life_exponent(shallow=0.25, deep=0.5, shallow_cycles=2000, deep_cycles=1000))
    1.0
    """
    return log(shallow_cycles / deep_cycles) / log(deep / shallow)


@equation("agm-cycles:power law")
def cycles_at(*, depth: Number, counted: Number, cycles: Number, exponent: Number) -> Number:
    """Cycles that a battery lasts at a depth, from those at another; a guide only outside the two rows.

    >>> cycles_at(depth=0.25, counted=0.5, cycles=1000, exponent=1.0)
    2000.0
    """
    return cycles * (depth / counted) ** -exponent


@equation("flooded-temperature:life halves for each 10 °C above 25 °C", uncited=True)
def life_in_heat(
    *, cycles: Number, temperature: Kelvins, reference: Kelvins, halving: TemperatureDifference
) -> Number:
    """Cycles left of a battery that lives hotter than the temperature its life was counted at.

    >>> float(life_in_heat(cycles=1000, temperature=308.15, reference=298.15, halving=10.0))
    500.0
    """
    return cycles * 0.5 ** (maximum(temperature, reference) / halving - reference / halving)
