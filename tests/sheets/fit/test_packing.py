"""The packing of a row, against every order tried."""

from __future__ import annotations

from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from curbwright.sheets.fit.packing import Row, pack

LEVELS = st.tuples(st.integers(0, 7), st.integers(1, 4))
ROWS = st.lists(
    st.tuples(st.integers(1, 9), LEVELS, st.integers(0, 3), st.integers(0, 3)), min_size=1, max_size=6
)


def as_row(
    things: list[tuple[int, tuple[int, int], int, int]], gaps: list[list[int]], first: int, last: int
) -> Row:
    spans = [(low, low + high) for _, (low, high), _, _ in things]

    def after(i: int, j: int) -> float | None:
        meet = spans[i][0] < spans[j][1] and spans[j][0] < spans[i][1]
        return things[i][0] + gaps[min(i, j)][max(i, j)] if meet else None

    sizes, _, front, rear = (list(column) for column in zip(*things, strict=True))
    ends = frozenset({first} & set(range(len(things)))), frozenset({last} & set(range(len(things))) - {first})
    return Row(sizes, after, front, rear, *ends)


def packed_in(row: Row, order: tuple[int, ...]) -> float:
    """The length of one order, everything as far forward as it goes."""
    at: dict[int, float] = {}
    for new in order:
        steps = [(at[i], row.after(i, new)) for i in at]
        at[new] = max([row.front[new], *(near + step for near, step in steps if step is not None)])
    return max(near + row.sizes[i] + row.rear[i] for i, near in at.items())


def allowed(row: Row, order: tuple[int, ...]) -> bool:
    rank = [(i in row.last) - (i in row.first) for i in order]
    return rank == sorted(rank)


@settings(max_examples=150, deadline=None)
@given(
    ROWS,
    st.lists(st.lists(st.integers(0, 3), min_size=6, max_size=6), min_size=6, max_size=6),
    st.integers(0, 9),
    st.integers(0, 9),
)
def test_no_order_is_shorter_than_the_one_found(
    things: list[tuple[int, tuple[int, int], int, int]], gaps: list[list[int]], first: int, last: int
) -> None:
    row = as_row(things, gaps, first, last)
    orders = [order for order in permutations(range(len(things))) if allowed(row, order)]
    found = pack(row, list(range(len(things))))
    assert found.length == pytest.approx(min(packed_in(row, order) for order in orders))
    assert found.proven
    assert found.length == pytest.approx(packed_in(row, found.order))


@settings(max_examples=100, deadline=None)
@given(ROWS, st.data())
def test_the_chain_adds_up_to_the_length(
    things: list[tuple[int, tuple[int, int], int, int]], data: st.DataObject
) -> None:
    row = as_row(things, [[0] * 6] * 6, 9, 9)
    found = pack(row, data.draw(st.permutations(range(len(things)))))
    steps = [row.after(one, other) for one, other in zip(found.chain, found.chain[1:], strict=False)]
    last = found.chain[-1]
    chain = (
        row.front[found.chain[0]]
        + sum(step for step in steps if step is not None)
        + row.sizes[last]
        + row.rear[last]
    )
    assert None not in steps
    assert chain == pytest.approx(found.length)


def test_a_search_that_is_cut_short_says_what_no_order_beats() -> None:
    """Sixteen things at odd heights are too many to try every order."""
    sizes = [13.0 + 7 * (n * n % 11) for n in range(16)]
    spans = [(5 * n % 37, 5 * n % 37 + 9 + n) for n in range(16)]

    def after(i: int, j: int) -> float | None:
        return sizes[i] if spans[i][0] < spans[j][1] and spans[j][0] < spans[i][1] else None

    found = pack(Row(sizes, after, [0.0] * 16, [0.0] * 16), range(16))
    assert found.bound <= found.length <= found.present
    heights = range(60)
    load = max(
        sum(size for size, (low, high) in zip(sizes, spans, strict=True) if low <= z < high) for z in heights
    )
    assert found.length >= load
