"""How long a kinetic battery lasts on a load that repeats, such as a pump that comes and goes."""

from collections.abc import Sequence

from curbwright.equations.battery.wells import at_hand_after
from curbwright.figures import procedure
from curbwright.quantities import Amperes, Coulombs, Number, PerSecond, Seconds

MOST_ROUNDS = 100_000


@procedure("kinetic-battery-papers:lifetimes of test loads")
def life_on_pattern(
    *, charge: Coulombs, share: Number, rate: PerSecond, first_current: Amperes, first_time: Seconds,
    second_current: Amperes, second_time: Seconds, third_current: Amperes, third_time: Seconds,
    fourth_current: Amperes, fourth_time: Seconds,
) -> Seconds:  # fmt: skip
    """Time until the charge at hand is gone under steady currents that repeat in turn, by exact steps.

    Currents are discharges or rests; a step that takes no time is left out. Raises ArithmeticError for a
    load of nothing.

    >>> life_on_pattern(charge=100.0, share=1.0, rate=0.1, first_current=2.0, first_time=5.0,
    ...     second_current=0.0, second_time=5.0, third_current=0.0, third_time=0.0,
    ...     fourth_current=0.0, fourth_time=0.0)
    95.0
    """
    steps = [
        (float(first_current), float(first_time)),
        (float(second_current), float(second_time)),
        (float(third_current), float(third_time)),
        (float(fourth_current), float(fourth_time)),
    ]
    return life_on(steps, charge=float(charge), share=float(share), rate=float(rate))


def life_on(steps: Sequence[tuple[float, float]], *, charge: float, share: float, rate: float) -> float:
    """Seconds until the charge at hand is gone under repeated steps of amperes and seconds.

    Under a steady discharge the charge at hand may rise from what is bound and then falls for good, so an
    end of a step at nothing or below has one crossing before it.
    """
    steps = [(current, time) for current, time in steps if time > 0]
    if not any(current > 0 for current, _ in steps) or any(current < 0 for current, _ in steps):
        raise ArithmeticError("the load takes nothing out, or puts something in")
    at_hand, total, passed = share * charge, charge, 0.0
    for _ in range(MOST_ROUNDS):
        for current, time in steps:
            state = {"at_hand": at_hand, "charge": total, "current": current, "share": share, "rate": rate}
            after = float(at_hand_after(time=time, **state))
            if after <= 0:
                return passed + _crossing(time, state)
            at_hand, total, passed = after, total - current * time, passed + time
    raise ArithmeticError("the battery outlasts the count")


def _crossing(time: float, state: dict[str, float]) -> float:
    """When within a step the charge at hand is gone, to the last bit."""
    low, high = 0.0, time
    while True:
        middle = (low + high) / 2
        if middle in (low, high):
            return middle
        if float(at_hand_after(time=middle, **state)) > 0:
            low = middle
        else:
            high = middle
