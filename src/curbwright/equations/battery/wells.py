"""The kinetic battery: one well of charge at hand, one that is bound and follows.

Charge in coulombs, current in amperes (discharge positive), times in seconds. ``share`` is the part of all
charge that the well at hand holds when full (c), ``rate`` the speed at which the two level out (k', the
exponent; the conductance between the wells, k' c (1 - c), is the other convention in use).
"""

from numpy import exp

from curbwright.figures import equation
from curbwright.quantities import Amperes, Coulombs, Number, PerSecond, Seconds


@equation("kinetic-battery-papers:step of the charge at hand")
def at_hand_after(
    *, at_hand: Coulombs, charge: Coulombs, current: Amperes, time: Seconds, share: Number, rate: PerSecond
) -> Coulombs:
    """Charge at hand after a steady current for a while, exactly.

    ``charge`` is all charge at the start, at hand and bound.

    >>> float(at_hand_after(at_hand=100.0, charge=1000.0, current=0.0, time=1e9, share=0.1, rate=1e-3))
    100.0
    """
    return (
        at_hand * exp(-rate * time)
        + (charge * rate * share - current) * (1 - exp(-rate * time)) / rate
        - current * share * (rate * time - 1 + exp(-rate * time)) / rate
    )


@equation("kinetic-battery-papers:step of the bound charge")
def bound_after(
    *, bound: Coulombs, charge: Coulombs, current: Amperes, time: Seconds, share: Number, rate: PerSecond
) -> Coulombs:
    """Bound charge after a steady current for a while, exactly.

    >>> float(bound_after(bound=900.0, charge=1000.0, current=0.0, time=1e9, share=0.1, rate=1e-3))
    900.0
    """
    return (
        bound * exp(-rate * time)
        + charge * (1 - share) * (1 - exp(-rate * time))
        - current * (1 - share) * (rate * time - 1 + exp(-rate * time)) / rate
    )


@equation("kinetic-battery-papers:largest discharge current")
def largest_discharge(
    *, at_hand: Coulombs, charge: Coulombs, time: Seconds, share: Number, rate: PerSecond
) -> Amperes:
    """Largest steady current for a while: the charge at hand is gone at its end.

    >>> at_hand = {"at_hand": 45.5, "charge": 130.0, "share": 0.35}
    >>> round(float(largest_discharge(**at_hand, time=3600.0, rate=1.2 / 3600)) * 3600, 6)
    62.455406
    """
    return (rate * at_hand * exp(-rate * time) + charge * rate * share * (1 - exp(-rate * time))) / (
        1 - exp(-rate * time) + share * (rate * time - 1 + exp(-rate * time))
    )


@equation("kinetic-battery-papers:largest charge current", uncited=True)
def largest_charge(
    *, at_hand: Coulombs, charge: Coulombs, full: Coulombs, time: Seconds, share: Number, rate: PerSecond
) -> Amperes:
    """Largest steady charging current for a while, negative: the well at hand is full at its end.

    >>> float(largest_charge(at_hand=35.0, charge=100.0, full=100.0, time=60.0, share=0.35, rate=1e-3))
    0.0
    """
    return (
        -rate * share * full
        + rate * at_hand * exp(-rate * time)
        + charge * rate * share * (1 - exp(-rate * time))
    ) / (1 - exp(-rate * time) + share * (rate * time - 1 + exp(-rate * time)))


@equation("kinetic-battery-papers:capacity at a rate")
def capacity_over(*, full: Coulombs, time: Seconds, share: Number, rate: PerSecond) -> Coulombs:
    """Charge a full battery gives up at the steady current that empties it in a time.

    Three of its rows settle ``full``, ``share`` and ``rate``.

    >>> round(float(capacity_over(full=468000.0, time=3600.0, share=0.35, rate=1.2 / 3600)) / 3600, 4)
    62.4554
    """
    return (
        full * rate * share * time / (1 - exp(-rate * time) + share * (rate * time - 1 + exp(-rate * time)))
    )


@equation("kinetic-battery-papers:capacity at a rate", uncited=True)
def row_miss(*, full: Coulombs, time: Seconds, share: Number, rate: PerSecond, capacity: Coulombs) -> Number:
    """Share by which the kinetic battery misses a row of the maker's table.

    >>> round(float(row_miss(full=130.0, time=3600.0, share=0.35, rate=1.2 / 3600, capacity=50.0)), 4)
    0.2491
    """
    return abs(
        full
        * rate
        * share
        * time
        / (1 - exp(-rate * time) + share * (rate * time - 1 + exp(-rate * time)))
        / capacity
        - 1
    )


@equation("kinetic-battery-code:two conventions of the rate")
def rate_from_conductance(conductance: PerSecond, share: Number) -> PerSecond:
    """Rate (k') from the conductance between the wells, the other convention in use.

    >>> rate_from_conductance(conductance=0.125, share=0.5)
    0.5
    """
    return conductance / (share * (1 - share))
