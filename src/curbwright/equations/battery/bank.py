"""The bank: batteries in series and parallel, what cold and age leave of them, how long they last."""

from numpy import log, maximum

from curbwright.figures import equation, procedure
from curbwright.quantities import (
    Amperes,
    Coulombs,
    Joules,
    Kelvins,
    Number,
    Ohms,
    Seconds,
    TemperatureDifference,
    Volts,
)


@procedure("convention:cells by the nominal voltage", uncited=True)
def cells_of(voltage: Volts, cell: Volts) -> Number:
    """Cells in a battery: its voltage over that of one cell, to the nearest whole number.

    >>> cells_of(voltage=12.0, cell=2.0), cells_of(voltage=12.0, cell=3.2)
    (6.0, 4.0)
    """
    return float(max(1, round(voltage / cell)))


@equation("ohm-law:in series", uncited=True)
def series_voltage(voltage: Volts, series: Number) -> Volts:
    """Voltage of equal batteries in series.

    >>> series_voltage(voltage=6.0, series=2)
    12.0
    """
    return voltage * series


@equation("ohm-law:in parallel", uncited=True)
def parallel_charge(capacity: Coulombs, strings: Number) -> Coulombs:
    """Capacity of equal strings in parallel; batteries in series add none.

    >>> parallel_charge(capacity=360000.0, strings=2)
    720000.0
    """
    return capacity * strings


@equation("ohm-law:in series and parallel", uncited=True)
def bank_resistance(*, resistance: Ohms, series: Number, strings: Number) -> Ohms:
    """Inside resistance of equal batteries in series, such strings in parallel.

    >>> bank_resistance(resistance=0.004, series=2, strings=4)
    0.002
    """
    return resistance * series / strings


@equation("trade-practice:resistance by size", uncited=True)
def resistance_by_size(
    *, resistance: Ohms, full: Coulombs, capacity: Coulombs, cells: Number, counted: Number
) -> Ohms:
    """Typical resistance of a battery from that of one of 12 V and another capacity: more plates, less of it.

    >>> resistance_by_size(resistance=0.004, full=360000.0, capacity=720000.0, cells=3, counted=6)
    0.001
    """
    return resistance * full / capacity * cells / counted


@equation("ohm-law:cells in series", uncited=True)
def of_cells(*, voltage: Volts, cells: Number, counted: Number) -> Volts:
    """Voltage of a bank from that of a 12 V battery, by their cells in series.

    >>> of_cells(voltage=12.7, cells=12, counted=6)
    25.4
    """
    return voltage * cells / counted


@equation("kinetic-battery-papers:capacity at a rate, solved for the full charge", uncited=True)
def full_from_capacity(*, capacity: Coulombs, over: Coulombs, full: Coulombs) -> Coulombs:
    """Charge of a full battery from its capacity at a rate: the same share is left behind at any size.

    ``over`` is what a battery of charge ``full`` and the same wells gives up in the same time.

    >>> full_from_capacity(capacity=90.0, over=45.0, full=60.0)
    120.0
    """
    return capacity * full / over


@equation("linear-interpolation", uncited=True)
def factor_between(
    *, temperature: Kelvins, cold: Kelvins, warm: Kelvins, at_cold: Number, at_warm: Number
) -> Number:
    """Factor at a temperature on the straight line through two rows of a table.

    >>> factor_between(temperature=275.65, cold=273.15, warm=278.15, at_cold=0.84, at_warm=0.88)
    0.86
    """
    return at_cold + (at_warm - at_cold) * (temperature - cold) / (warm - cold)


@equation("flooded-temperature:cold needs a larger bank")
def bank_when_cold(capacity: Coulombs, multiplier: Number) -> Coulombs:
    """Capacity to install so that the cold leaves a wanted capacity.

    >>> bank_when_cold(capacity=100.0, multiplier=1.25)
    125.0
    """
    return capacity * multiplier


@equation("flooded-temperature:what the cold leaves", uncited=True)
def cold_factor(multiplier: Number) -> Number:
    """Share of its capacity that a battery gives, from how much larger a bank the cold asks for.

    >>> cold_factor(1.25)
    0.8
    """
    return 1 / multiplier


@equation("trade-practice:cold and age leave less", uncited=True)
def charge_left(*, charge: Coulombs, temperature: Number, age: Number) -> Coulombs:
    """Charge that temperature and age leave of a new warm battery's, both as shares.

    >>> charge_left(charge=1000.0, temperature=0.9, age=0.8)
    720.0
    """
    return charge * temperature * age


@equation("trade-practice:usable share", uncited=True)
def usable_energy(*, charge: Coulombs, share: Number, voltage: Volts) -> Joules:
    """Energy of the share of its charge that a bank should give in a day, at its nominal voltage.

    >>> usable_energy(charge=360000.0, share=0.5, voltage=12.0)
    2160000.0
    """
    return charge * share * voltage


@equation("trade-practice:capacity to install", uncited=True)
def capacity_wanted(
    *, energy: Joules, margin: Number, voltage: Volts, share: Number, temperature: Number, age: Number
) -> Coulombs:
    """Rated capacity to install for a day's energy with a margin, after the usable share, cold and age.

    >>> capacity_wanted(energy=7920.0, margin=0.0, voltage=12.5, share=0.8, temperature=1.0, age=1.0)
    792.0
    """
    return energy * (1 + margin) / (voltage * share * temperature * age)


@equation("trade-practice:what is left in it", uncited=True)
def depth_of(*, energy: Joules, charge: Coulombs, voltage: Volts) -> Number:
    """Share of its charge that an energy takes out of a bank.

    >>> depth_of(energy=2160000.0, charge=360000.0, voltage=12.0)
    0.5
    """
    return energy / (charge * voltage)


@equation("coulomb-counting:charge")
def charge_drawn(current: Amperes, time: Seconds) -> Coulombs:
    """Charge that a steady current carries in a time.

    >>> charge_drawn(current=5.0, time=7200.0)
    36000.0
    """
    return current * time


@equation("coulomb-counting:state of charge")
def state_after(*, current: Amperes, time: Seconds, charge: Coulombs) -> Number:
    """State of charge of a full battery after a steady current for a while, every ampere counted once.

    >>> state_after(current=5.0, time=36000.0, charge=360000.0)
    0.5
    """
    return 1 - current * time / charge


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
