"""Fault current: what a bank delivers into a short, at its posts and at the end of a run."""

from numpy import maximum

from curbwright.figures import equation
from curbwright.quantities import Amperes, Number, Ohms, Seconds, Volts


@equation("dc-fault-thread:resistance from the short-circuit current")
def source_resistance(voltage: Volts, fault_current: Amperes) -> Ohms:
    """Inside resistance of a source from the current its maker gives for a dead short.

    >>> source_resistance(voltage=12, fault_current=3000)
    0.004
    """
    return voltage / fault_current


@equation("dc-fault-thread:parallel strings add")
def parallel_fault_current(fault_current: Amperes, strings: Number) -> Amperes:
    """Fault current of equal strings in parallel; strings in series add none.

    >>> parallel_fault_current(fault_current=2000, strings=3)
    6000
    """
    return fault_current * strings


@equation("ohm-law:a short at the end of a run")
def fault_current(*, voltage: Volts, source: Ohms, run: Ohms, contacts: Ohms) -> Amperes:
    """Fault current at the end of a run from the open-circuit voltage and every resistance on the way.

    >>> fault_current(voltage=12, source=0.004, run=0.003, contacts=0.001)
    1500.0
    """
    return voltage / (source + run + contacts)


@equation("ohm-law:a short at the end of a run", uncited=True)
def fault_further(*, fault_current: Amperes, source: Ohms, run: Ohms, contacts: Ohms) -> Amperes:
    """Fault current at the end of a run from that at the posts of the bank.

    >>> fault_further(fault_current=3000, source=0.004, run=0.003, contacts=0.001)
    1500.0
    """
    return fault_current * source / (source + run + contacts)


@equation("trade-practice:a quarter over", uncited=True)
def interrupt_wanted(fault_current: Amperes) -> Amperes:
    """Interrupt rating wanted of a main fuse: the fault current at the posts and a quarter more.

    >>> interrupt_wanted(2000)
    2500.0
    """
    return 1.25 * fault_current


@equation("trade-practice:let-through energy goes with the square of the rating", uncited=True)
def clearing_time(
    *, let_through: Seconds, rating: Amperes, fault_current: Amperes, fastest: Seconds
) -> Seconds:
    """Time that a fuse or breaker takes to clear a fault of ten times its rating or more.

    ``let_through`` is its I²t over the square of its rating; nothing clears faster than ``fastest``.

    >>> float(clearing_time(let_through=3.0, rating=20, fault_current=400, fastest=0.001))
    0.0075
    """
    return maximum(let_through * (rating / fault_current) ** 2, fastest)
