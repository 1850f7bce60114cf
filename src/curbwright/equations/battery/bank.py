"""The bank: batteries in series and parallel, what cold and age leave of them, what a short draws."""

from curbwright.figures import equation, procedure
from curbwright.quantities import (
    Amperes,
    Coulombs,
    Joules,
    Kelvins,
    Number,
    Ohms,
    Seconds,
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
def cells_in_string(cells: Number, series: Number) -> Number:
    """Cells in series in a string of batteries.

    >>> cells_in_string(cells=3, series=2)
    6
    """
    return cells * series


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


@equation("trade-practice:resistance of a cold or nearly empty bank", uncited=True)
def working_resistance(resistance: Ohms, rise: Number) -> Ohms:
    """Inside resistance when it matters: nearly empty, or cold.

    >>> working_resistance(resistance=0.004, rise=1.5)
    0.006
    """
    return resistance * rise


@equation("ohm-law:a dead short", uncited=True)
def short_current(voltage: Volts, resistance: Ohms) -> Amperes:
    """Current of the full bank into a dead short at its posts.

    >>> short_current(voltage=12.8, resistance=0.004)
    3200.0
    """
    return voltage / resistance


@equation("ohm-law:from the fault current", uncited=True)
def short_resistance(voltage: Volts, fault_current: Amperes) -> Ohms:
    """Inside resistance of the full bank in a dead short.

    >>> short_resistance(voltage=13.6, fault_current=6800.0)
    0.002
    """
    return voltage / fault_current


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


@equation("coulomb-counting:current of a row", uncited=True)
def row_current(charge: Coulombs, time: Seconds) -> Amperes:
    """Steady current that gives a charge in a time.

    >>> row_current(charge=360000.0, time=72000.0)
    5.0
    """
    return charge / time


@equation("coulomb-counting:what is left", uncited=True)
def rest_of(share: Number) -> Number:
    """State of charge when a share has been taken.

    >>> rest_of(0.75)
    0.25
    """
    return 1 - share


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
