"""Voltage at the posts: what a load that keeps its power draws, and when it drops out."""

from numpy import maximum

from curbwright.equations.battery.wells import at_hand_after
from curbwright.figures import equation, procedure
from curbwright.quantities import Amperes, Coulombs, Number, Ohms, PerSecond, Seconds, Volts, Watts

STEPS = 1000
"""Steps from full to empty: the current is steady within one, which is 0.05 % of the time at most."""


@equation("ohm-law:a load that keeps its power")
def constant_power_current(*, open_voltage: Volts, resistance: Ohms, power: Watts) -> Amperes:
    """Current of a load that keeps its power, through the resistance inside the bank and of its leads.

    Past the most that the bank can give, what it gives at that most.

    >>> float(constant_power_current(open_voltage=12.0, resistance=0.01, power=575.0))
    50.0
    """
    return (
        open_voltage - (maximum(open_voltage**2, 4 * resistance * power) - 4 * resistance * power) ** 0.5
    ) / (2 * resistance)


@equation("ohm-law:voltage under load", uncited=True)
def loaded_voltage(*, open_voltage: Volts, resistance: Ohms, current: Amperes) -> Volts:
    """Voltage at the posts while a current flows.

    >>> loaded_voltage(open_voltage=12.5, resistance=0.01, current=50.0)
    12.0
    """
    return open_voltage - resistance * current


@equation("ohm-law:most power", uncited=True)
def most_power(open_voltage: Volts, resistance: Ohms) -> Watts:
    """Most power that a bank can give at all: past it the voltage collapses.

    >>> most_power(open_voltage=12.0, resistance=0.01)
    3600.0
    """
    return open_voltage**2 / (4 * resistance)


@equation("ohm-law:power", uncited=True)
def load_power(current: Amperes, voltage: Volts) -> Watts:
    """Power of a load from its current at a voltage.

    >>> load_power(current=50.0, voltage=10.5)
    525.0
    """
    return current * voltage


@procedure("rested-voltages:two straight lines", uncited=True)
def open_voltage_at(
    *, state: Number, open_full: Volts, open_knee: Volts, open_empty: Volts, knee: Number
) -> Volts:
    """Rested voltage at a state of charge, on straight lines from empty to the knee and from there to full.

    >>> open_voltage_at(state=0.75, open_full=12.7, open_knee=12.3, open_empty=11.9, knee=0.5)
    12.5
    """
    if state >= knee:
        return open_knee + (open_full - open_knee) * (state - knee) / (1 - knee)
    return open_empty + (open_knee - open_empty) * state / knee


@procedure("kinetic-battery-papers:stepped", uncited=True)
def time_to_cut_off(
    *, charge: Coulombs, share: Number, rate: PerSecond, power: Watts, open_full: Volts, open_knee: Volts,
    open_empty: Volts, knee: Number, resistance: Ohms, cut_off: Volts,
) -> Seconds:  # fmt: skip
    """Time a full bank carries a steady power until its loaded voltage or charge at hand runs out, stepped.

    The rested voltage follows the level of the charge at hand. A share of 1 counts every ampere once.

    >>> round(time_to_cut_off(charge=360000.0, share=1.0, rate=1e-3, power=60.0, open_full=12.0,
    ...     open_knee=12.0, open_empty=12.0, knee=0.5, resistance=1e-9, cut_off=10.5) / 3600, 2)
    20.0
    """
    full = float(share) * float(charge)
    time_step = float(charge) * float(open_full) / float(power) / STEPS
    at_hand, total = full, float(charge)

    def drawn_at(left: float) -> tuple[float, float]:
        state = max(left, 0.0) / full
        rested = open_voltage_at(
            state=state, open_full=open_full, open_knee=open_knee, open_empty=open_empty, knee=knee
        )
        current = float(constant_power_current(open_voltage=rested, resistance=resistance, power=power))
        return current, float(loaded_voltage(open_voltage=rested, resistance=resistance, current=current))

    def stepped(time: float, current: float) -> float:
        return float(
            at_hand_after(at_hand=at_hand, charge=total, current=current, time=time, share=share, rate=rate)
        )

    for step in range(2 * STEPS):
        current, voltage = drawn_at(at_hand)
        if voltage < cut_off or at_hand <= 0:
            return step * time_step
        after = stepped(time_step, current)
        if after <= 0 or drawn_at(after)[1] < cut_off:
            low, high = 0.0, 1.0
            for _ in range(60):
                middle = (low + high) / 2
                left = stepped(middle * time_step, current)
                low, high = (low, middle) if left <= 0 or drawn_at(left)[1] < cut_off else (middle, high)
            return (step + low) * time_step
        at_hand, total = after, total - current * time_step
    raise ArithmeticError("the bank never runs down")
