"""The shortest row: things along one wall in the order that takes the least length.

Two things conflict where they cannot stand one above the other; then one comes after the other with the gap
the pair needs. For one order the shortest row puts everything as far forward as what comes before it allows,
and the best row of all is that of some order. Orders are searched until one is proven shortest.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

NODES = 20_000
"""How many part orders are tried before the best one so far is taken as it is."""
CLOSE = 1e-9


@dataclass(frozen=True)
class Row:
    """A row to be packed, by number: sizes, gaps to the two end walls, and what stands first and last.

    ``after(i, j)`` is the least distance from the near edge of i to the near edge of a later j, or None where
    the two do not conflict: the size of i and the gap that the pair needs.
    """

    sizes: Sequence[float]
    after: Callable[[int, int], float | None]
    front: Sequence[float]
    rear: Sequence[float]
    first: frozenset[int] = frozenset()
    last: frozenset[int] = frozenset()


@dataclass(frozen=True)
class Packed:
    """A packed row: its length, that of the order it began with, its order, and the chain that fixes it.

    No order is shorter than ``bound``.
    """

    length: float
    present: float
    order: tuple[int, ...]
    chain: tuple[int, ...]
    bound: float

    @property
    def proven(self) -> bool:
        """Whether no order is shorter."""
        return self.length <= self.bound + CLOSE


def pack(row: Row, start: Sequence[int]) -> Packed:
    """Return the shortest row; ``start`` is the order to begin with, such as the present one.

    >>> pack(Row([1.0, 2.0], lambda i, j: [1.0, 2.0][i], [0.0, 0.0], [0.0, 0.0]), [0, 1]).length
    3.0
    """
    search = _Search(row)
    rank = {i: (i in row.last) - (i in row.first) for i in start}
    search.try_order(sorted(start, key=lambda i: rank[i]))
    present = search.best
    search.try_order(sorted(start, key=lambda i: (rank[i], -row.sizes[i])))
    search.grow([], list(row.front), frozenset(start))
    bound = search.bound if search.nodes > NODES else search.best
    return Packed(search.best, present, search.order, _chain(row, search.order), min(bound, search.best))


class _Search:
    """Depth-first over orders, cut off where even the least that is left is no shorter than the best."""

    def __init__(self, row: Row) -> None:
        count = range(len(row.sizes))
        self.row = row
        self.after = [[None if i == j else row.after(i, j) for j in count] for i in count]
        self.ends = [row.sizes[i] + row.rear[i] for i in count]
        self.bound = _bound(row, self.after)
        self.best = float("inf")
        self.order: tuple[int, ...] = ()
        self.nodes = 0

    def try_order(self, order: Sequence[int]) -> None:
        """Pack one order and keep it if it is shorter."""
        lefts, rest = list(self.row.front), frozenset(order)
        for i in order:
            rest = rest - {i}
            lefts = self._pushed(lefts, i, rest)
        self._keep(order, lefts)

    def grow(self, placed: list[int], lefts: list[float], rest: frozenset[int]) -> None:
        """Try everything that may come next; ``lefts`` holds how far forward each thing could stand now."""
        if self.best <= self.bound + CLOSE or self.nodes > NODES:
            return
        self.nodes += 1
        if not rest:
            self._keep(placed, lefts)
            return
        for i in sorted(self._next(rest), key=lambda i: (lefts[i], -self.row.sizes[i])):
            if placed and self._repeats(placed[-1], i, lefts):
                continue
            pushed = self._pushed(lefts, i, rest - {i})
            if max(left + end for left, end in zip(pushed, self.ends, strict=True)) < self.best - CLOSE:
                self.grow([*placed, i], pushed, rest - {i})

    def _next(self, rest: frozenset[int]) -> frozenset[int]:
        """What may come next: what stands first before all else, what stands last after all else."""
        return (rest & self.row.first) or (rest - self.row.last) or rest

    def _repeats(self, before: int, new: int, lefts: Sequence[float]) -> bool:
        """Whether the same row is met again in the order of its near edges, which is the one needed."""
        row = self.row
        same = (before in row.first) == (new in row.first) and (before in row.last) == (new in row.last)
        return same and lefts[new] < lefts[before] - CLOSE

    def _pushed(self, lefts: Sequence[float], placed: int, rest: frozenset[int]) -> list[float]:
        """How far forward each of the rest can stand once one more is placed: after it, if they conflict."""
        at, pushed = lefts[placed], list(lefts)
        for j in rest:
            step = self.after[placed][j]
            if step is not None and at + step > pushed[j]:
                pushed[j] = at + step
        return pushed

    def _keep(self, order: Sequence[int], lefts: Sequence[float]) -> None:
        length = max((left + end for left, end in zip(lefts, self.ends, strict=True)), default=0.0)
        if length < self.best - CLOSE:
            self.best, self.order = length, tuple(order)


def _bound(row: Row, after: Sequence[Sequence[float | None]]) -> float:
    """What no order is shorter than: things that all conflict stand in one line, with their least gaps."""
    count = range(len(row.sizes))
    best = 0.0
    for i in count:
        line = [i]
        for j in sorted((j for j in count if j != i), key=lambda j: -row.sizes[j]):
            if all(after[j][k] is not None for k in line):
                line.append(j)
        steps = (
            sorted(min(_step(after, k, j) - row.sizes[k] for k in line if k != j) for j in line)
            if len(line) > 1
            else [0.0]
        )
        ends = min(row.front[k] for k in line) + min(row.rear[k] for k in line)
        best = max(best, sum(row.sizes[k] for k in line) + ends + sum(steps[:-1]))
    return best


def _step(after: Sequence[Sequence[float | None]], i: int, j: int) -> float:
    step = after[i][j]
    return float("inf") if step is None else step


def _chain(row: Row, order: Sequence[int]) -> tuple[int, ...]:
    """The things that fix the length of a packed order, from the front wall to the rear."""
    lefts: dict[int, float] = {}
    before: dict[int, int | None] = {}
    for new in order:
        lefts[new], before[new] = row.front[new], None
        for i in [one for one in lefts if one != new]:
            step = row.after(i, new)
            if step is not None and lefts[i] + step > lefts[new] + CLOSE:
                lefts[new], before[new] = lefts[i] + step, i
    last: int | None = max(lefts, key=lambda i: lefts[i] + row.sizes[i] + row.rear[i], default=None)
    chain: list[int] = []
    while last is not None:
        chain.append(last)
        last = before[last]
    return tuple(reversed(chain))
