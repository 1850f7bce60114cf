"""The fit of the kinetic battery to a table: it finds what made the table, and what another search finds."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import differential_evolution

from curbwright.equations import battery as eq

WORDS = ("first", "second", "third", "fourth", "fifth")
AGM = ((20.0, 100.0), (10.0, 93.0), (5.0, 85.0), (3.0, 78.0), (1.0, 60.0))
"""Hours and ampere-hours of a typical table, recalled."""


def rows(*table: tuple[float, float]) -> dict[str, float]:
    given_ = dict.fromkeys((f"{word}_{field}" for word in WORDS for field in ("time", "capacity")), 0.0)
    for word, (time, capacity) in zip(WORDS, table, strict=False):
        given_ |= {f"{word}_time": time, f"{word}_capacity": capacity}
    return given_


def fitted(*table: tuple[float, float]) -> tuple[float, float, float]:
    arguments = rows(*table)
    return eq.fitted_charge(**arguments), eq.fitted_share(**arguments), eq.fitted_rate(**arguments)


@settings(max_examples=25, deadline=None)
@given(full=st.floats(20, 400), share=st.floats(0.2, 0.7), rate=st.floats(0.2, 1.5))
def test_it_finds_the_battery_that_made_the_table(full: float, share: float, rate: float) -> None:
    table = [
        (time, float(eq.capacity_over(full=full, time=time, share=share, rate=rate)))
        for time in (20.0, 10.0, 5.0, 3.0, 1.0)
    ]
    assert fitted(*table) == pytest.approx((full, share, rate), rel=1e-3)


def test_three_rows_are_met_exactly() -> None:
    table = AGM[:1] + AGM[2:4]
    full, share, rate = fitted(*table)
    for time, capacity in table:
        assert float(eq.capacity_over(full=full, time=time, share=share, rate=rate)) == pytest.approx(
            capacity
        )


def test_no_other_search_finds_a_nearer_battery() -> None:
    times, capacities = (np.array(column) for column in zip(*AGM, strict=True))

    def cost(unknown: np.ndarray) -> float:  # type: ignore[type-arg]
        full, share, rate = unknown
        off = eq.capacity_over(full=full, time=times, share=share, rate=rate) / capacities - 1  # type: ignore[arg-type]
        return float(np.sum(np.asarray(off) ** 2))

    found = np.array(fitted(*AGM))
    other = differential_evolution(
        cost, ((90, 150), (0.05, 0.95), (0.05, 10)), seed=1, tol=1e-12, maxiter=3000
    )
    assert cost(found) <= other.fun * (1 + 1e-9)
    assert found == pytest.approx(other.x, rel=2e-3)


def test_every_row_is_met_within_a_twentieth() -> None:
    full, share, rate = fitted(*AGM)
    for time, capacity in AGM:
        assert eq.row_miss(full=full, time=time, share=share, rate=rate, capacity=capacity) < 0.02


def test_the_order_of_rows_is_nothing() -> None:
    assert fitted(*AGM) == fitted(*AGM[::-1])


@pytest.mark.parametrize(
    ("table", "says"),
    [
        (AGM[:2], "three rows"),
        (((20.0, 100.0), (10.0, 101.0), (5.0, 85.0)), "must grow"),
        (((20.0, 100.0), (20.0, 93.0), (5.0, 85.0)), "must grow"),
    ],
)
def test_a_table_that_no_battery_makes_is_refused(table: tuple[tuple[float, float], ...], says: str) -> None:
    with pytest.raises(ArithmeticError, match=says):
        fitted(*table)
