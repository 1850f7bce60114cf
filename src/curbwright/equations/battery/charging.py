"""Charging: how long until it is full again, and what that takes from the wall, the car or the sun."""

from numpy import exp, log, maximum, minimum

from curbwright.figures import equation
from curbwright.quantities import Amperes, Coulombs, Joules, Number, PerSecond, Seconds, Volts, Watts


@equation("charging-practice:current of a charge rate", uncited=True)
def rated_current(charge: Coulombs, rate: PerSecond) -> Amperes:
    """Current that is a share of the capacity in an hour, as charge limits and end currents are given.

    >>> rated_current(charge=720000.0, rate=0.1 / 3600)
    20.0
    """
    return charge * rate


@equation("charging-practice:charge taken out", uncited=True)
def charge_of(energy: Joules, voltage: Volts) -> Coulombs:
    """Charge that an energy takes at a voltage.

    >>> charge_of(energy=4320000.0, voltage=12.0)
    360000.0
    """
    return energy / voltage


@equation("charging-practice:bulk", uncited=True)
def bulk_charge(*, missing: Coulombs, charge: Coulombs, bulk_until: Number) -> Coulombs:
    """Charge put in at the full current: what is missing but for the last part, which tapers.

    >>> float(bulk_charge(missing=360000.0, charge=720000.0, bulk_until=0.8))
    216000.0
    """
    return maximum(missing - (1 - bulk_until) * charge, 0 * missing)


@equation("charging-practice:bulk", uncited=True)
def bulk_time(*, charge: Coulombs, current: Amperes, efficiency: Number) -> Seconds:
    """Time to put a charge in at a steady current, of which a share is lost.

    >>> bulk_time(charge=216000.0, current=40.0, efficiency=1.0) / 3600
    1.5
    """
    return charge / (current * efficiency)


@equation("charging-practice:absorption", uncited=True)
def absorption_time(
    *, missing: Coulombs, charge: Coulombs, bulk_until: Number, current: Amperes, end_current: Amperes
) -> Seconds:
    """Time at the held voltage, while the current tapers exponentially from the full one to its end.

    >>> round(float(absorption_time(missing=360000.0, charge=720000.0, bulk_until=0.8, current=40.0,
    ...     end_current=4.0)) / 3600, 2)
    2.3
    """
    return (
        (1 - bulk_until)
        * charge
        / current
        * log(
            maximum(
                minimum(missing, (1 - bulk_until) * charge)
                / ((1 - bulk_until) * charge)
                * current
                / end_current,
                1,
            )
        )
    )


@equation("lead-acid-charging:efficiency by state of charge")
def charge_efficiency(state: Number, current_ratio: Number) -> Number:
    """Share of the charging current that a lead-acid battery keeps; the rest splits water.

    ``current_ratio`` is the current over that of a ten-hour charge.

    >>> round(float(charge_efficiency(state=0.9, current_ratio=1.0)), 4)
    0.7375
    """
    return 1 - exp(20.73 * (state - 1) / (current_ratio + 0.55))


@equation("charging-practice:through a converter", uncited=True)
def input_current(*, voltage: Volts, current: Amperes, efficiency: Number, input_voltage: Volts) -> Amperes:
    """Current that a charger takes from a direct-current supply for the current it gives.

    >>> round(input_current(voltage=14.4, current=30.0, efficiency=0.9, input_voltage=13.0), 2)
    36.92
    """
    return voltage * current / (efficiency * input_voltage)


@equation("charging-practice:from the wall", uncited=True)
def wall_power(*, voltage: Volts, current: Amperes, efficiency: Number) -> Watts:
    """Power that a charger takes from the wall for the current it gives.

    >>> wall_power(voltage=14.4, current=40.0, efficiency=0.9)
    640.0
    """
    return voltage * current / efficiency


@equation("charging-practice:from the wall", uncited=True)
def wall_current(*, power: Watts, power_factor: Number, voltage: Volts) -> Amperes:
    """Current that a charger takes from the wall, its poor power factor counted.

    >>> wall_current(power=640.0, power_factor=0.8, voltage=120.0)
    6.6667
    """
    return power / (power_factor * voltage)


@equation("charging-practice:what comes back out", uncited=True)
def energy_back(*, energy: Joules, nominal: Volts, voltage: Volts, efficiency: Number) -> Joules:
    """Energy that comes back out of what the sun put in: it goes in at a higher voltage, and some is lost.

    >>> energy_back(energy=5184000.0, nominal=12.0, voltage=14.4, efficiency=0.9)
    3888000.0
    """
    return energy * nominal / voltage * efficiency


@equation("charging-practice:charge in a time", uncited=True)
def energy_in(*, current: Amperes, time: Seconds, efficiency: Number, voltage: Volts) -> Joules:
    """Energy that comes back out of what a charger puts in over a time, at the nominal voltage.

    >>> energy_in(current=12.0, time=5400.0, efficiency=1.0, voltage=12.0)
    777600.0
    """
    return current * time * efficiency * voltage
