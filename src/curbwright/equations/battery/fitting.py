"""The kinetic battery from a maker's table of capacity by discharge time."""

from functools import cache
from typing import Any

from curbwright.equations.battery.wells import capacity_over
from curbwright.figures import procedure
from curbwright.quantities import Coulombs, Number, PerSecond, Seconds

STARTS = ((0.3, 30.0), (0.6, 5.0), (0.15, 100.0))
"""Shares and rates (by the longest time) that the search starts from; the best end counts."""
TIGHT = 1e-15


@procedure("kinetic-battery-papers:fit to rows of capacity by time", uncited=True)
def fitted_charge(
    *, first_time: Seconds, first_capacity: Coulombs, second_time: Seconds, second_capacity: Coulombs,
    third_time: Seconds, third_capacity: Coulombs, fourth_time: Seconds, fourth_capacity: Coulombs,
    fifth_time: Seconds, fifth_capacity: Coulombs,
) -> Coulombs:  # fmt: skip
    """Full charge of the kinetic battery nearest to rows of a maker's table, each counted by its share.

    A row of no time is left out; three are the fewest that settle it. Raises ArithmeticError for fewer, and
    for rows that give less over a longer time.

    >>> round(fitted_charge(first_time=72000.0, first_capacity=360000.0, second_time=36000.0,
    ...     second_capacity=334800.0, third_time=18000.0, third_capacity=306000.0, fourth_time=10800.0,
    ...     fourth_capacity=280800.0, fifth_time=3600.0, fifth_capacity=216000.0) / 3600, 1)
    104.2
    """
    rows = _rows(
        (first_time, first_capacity), (second_time, second_capacity), (third_time, third_capacity),
        (fourth_time, fourth_capacity), (fifth_time, fifth_capacity),
    )  # fmt: skip
    return _fit(rows)[0] * rows[-1][1]


@procedure("kinetic-battery-papers:fit to rows of capacity by time", uncited=True)
def fitted_share(
    *, first_time: Seconds, first_capacity: Coulombs, second_time: Seconds, second_capacity: Coulombs,
    third_time: Seconds, third_capacity: Coulombs, fourth_time: Seconds, fourth_capacity: Coulombs,
    fifth_time: Seconds, fifth_capacity: Coulombs,
) -> Number:  # fmt: skip
    """Share of its charge at hand of the kinetic battery nearest to rows of a maker's table.

    >>> round(fitted_share(first_time=72000.0, first_capacity=360000.0, second_time=36000.0,
    ...     second_capacity=334800.0, third_time=18000.0, third_capacity=306000.0, fourth_time=10800.0,
    ...     fourth_capacity=280800.0, fifth_time=3600.0, fifth_capacity=216000.0), 3)
    0.449
    """
    return _fit(
        _rows(
            (first_time, first_capacity), (second_time, second_capacity), (third_time, third_capacity),
            (fourth_time, fourth_capacity), (fifth_time, fifth_capacity),
        )
    )[1]  # fmt: skip


@procedure("kinetic-battery-papers:fit to rows of capacity by time", uncited=True)
def fitted_rate(
    *, first_time: Seconds, first_capacity: Coulombs, second_time: Seconds, second_capacity: Coulombs,
    third_time: Seconds, third_capacity: Coulombs, fourth_time: Seconds, fourth_capacity: Coulombs,
    fifth_time: Seconds, fifth_capacity: Coulombs,
) -> PerSecond:  # fmt: skip
    """Rate at which the wells level out in the kinetic battery nearest to rows of a maker's table.

    >>> round(fitted_rate(first_time=72000.0, first_capacity=360000.0, second_time=36000.0,
    ...     second_capacity=334800.0, third_time=18000.0, third_capacity=306000.0, fourth_time=10800.0,
    ...     fourth_capacity=280800.0, fifth_time=3600.0, fifth_capacity=216000.0) * 3600, 2)
    1.13
    """
    rows = _rows(
        (first_time, first_capacity), (second_time, second_capacity), (third_time, third_capacity),
        (fourth_time, fourth_capacity), (fifth_time, fifth_capacity),
    )  # fmt: skip
    return _fit(rows)[2] / rows[-1][0]


Rows = tuple[tuple[float, float], ...]


def _rows(*rows: tuple[float, float]) -> Rows:
    """The rows that are there, the longest time last."""
    kept = tuple(sorted((float(time), float(capacity)) for time, capacity in rows if time > 0))
    if len(kept) < 3:
        raise ArithmeticError("three rows of capacity by time are the fewest that settle a kinetic battery")
    for (shorter, less), (longer, more) in zip(kept, kept[1:], strict=False):
        if not (0 < shorter < longer and 0 < less < more):
            raise ArithmeticError("the capacity must grow with the time it is drawn over")
    return kept


@cache
def _fit(rows: Rows) -> tuple[float, float, float]:
    """Full charge by the largest capacity, share at hand, and rate by the longest time."""
    import numpy as np
    from scipy.optimize import least_squares

    longest, most = rows[-1]
    # Rounded, so that a change of units cannot send the search down a flat valley another way.
    times: Any = np.array([round(time / longest, 12) for time, _ in rows])
    capacities = np.array([round(capacity / most, 12) for _, capacity in rows])

    def off(unknown: Any) -> Any:
        full, share, rate = unknown
        return capacity_over(full=full, time=times, share=share, rate=rate) / capacities - 1

    ends = [
        least_squares(
            off, (1.1, share, rate), bounds=((1.0, 0.01, 0.05), (5.0, 0.999, 1000.0)),
            x_scale=(1.0, 0.5, 10.0), xtol=TIGHT, ftol=TIGHT, gtol=TIGHT, max_nfev=2000,
        )
        for share, rate in STARTS
    ]  # fmt: skip
    full, share, rate = min(ends, key=lambda end: float(end.cost)).x
    return float(full), float(share), float(rate)
