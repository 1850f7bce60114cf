"""Labels put where they can be read: each tries a list of places, cheapest first, and none may overlap.

All in millimetres on paper. The order of the labels and of their candidates decides ties, so the same drawing
always comes out the same.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from heapq import heappop, heappush
from math import hypot

from curbwright.drawings.boxes import Box, Point
from curbwright.drawings.lettering import balanced, block_size

Segment = tuple[Point, Point]
GAP = 0.6  # mm between any two pieces of lettering
DISTANCES = (1.2, 3.0, 6.0, 10.0, 15.0, 21.0, 28.0, 36.0, 46.0)  # mm from the thing named, tried in turn
# What a place costs: a short name, a leader, lettering on a line, a leader over a line, outside the view.
_SHORT, _LEADER, _STRIKE, _LEADER_STRIKE, _AFIELD = 8.0, 2.5, 10.0, 1.0, 4.0
_UNPLACED = 1000.0
_ROUNDS = 4  # times the worst places are gone over
_FOLDED = 0.7  # what it costs to break a name in two
_ABROAD = 4.0  # what it costs to stand in the outline of another labelled thing
_DIRECTIONS = (
    (1, 0), (-1, 0), (0, 1), (0, -1), (1, 1), (1, -1), (-1, 1), (-1, -1),
    (1, 0.5), (1, -0.5), (-1, 0.5), (-1, -0.5), (0.5, 1), (-0.5, 1), (0.5, -1), (-0.5, -1),
)  # fmt: skip


@dataclass(frozen=True)
class Candidate:
    """One place a label may take: its box, what it would say there, its leader (tip first) and its cost."""

    box: Box
    text: str
    cost: float
    rotation: int = 0
    leader: Segment | None = None


def candidates(
    text: str,
    height: float,
    at: Point,
    *,
    inside: Box | None = None,
    short: str = "",
    symbol: Box | None = None,
    others: Sequence[Box] = (),
) -> list[Candidate]:
    """Return the places a label may take, from best to worst: within its item, beside it, farther out.

    ``at`` is what a leader would point to; ``inside`` the item's own outline; ``symbol`` the room of a marker
    there; ``others`` the outlines of other labelled things, where this label would mislead.
    """
    found: list[Candidate] = []
    item = inside or symbol or Box(*at, *at)
    for words, dearer in ((text, 0.0), (short, _SHORT)):
        if words and inside is not None:
            found.extend(_within(words, height, inside, dearer))
        folded = balanced(words, height, 0.6 * block_size(words, height)[0])
        for shape, bent in {words: 0.0, folded: _FOLDED}.items():
            if shape:
                found.extend(_beside(shape, height, at, item, dearer + bent, tied=inside is not None))
    abroad = [box for box in others if not box.covers(at)]
    priced = (
        replace(choice, cost=choice.cost + _ABROAD * any(map(choice.box.overlaps, abroad)))
        for choice in found
    )
    return sorted(priced, key=lambda candidate: candidate.cost)


def _within(text: str, height: float, inside: Box, dearer: float) -> Iterator[Candidate]:
    room = inside.grown(-GAP)
    for rotation, turning in ((0, 0.0), (90, 1.2)):
        across, up = (room.width, room.height) if rotation == 0 else (room.height, room.width)
        words = balanced(text, height, across)
        long, tall = block_size(words, height)
        if long > across or tall > up:
            continue
        folds = words.count("\n") + 1
        wide, high = (long, tall) if rotation == 0 else (tall, long)
        for share_across, share_up in _shifts():
            x = inside.centre[0] + share_across * (room.width - wide) / 2
            y = inside.centre[1] + share_up * (room.height - high) / 2
            cost = dearer + turning * folds + 0.3 * (abs(share_across) + abs(share_up))
            yield Candidate(
                Box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2), words, cost, rotation
            )


def _shifts() -> Iterator[tuple[float, float]]:
    """Shares of the free room to move by, the middle first."""
    steps = (0.0, 0.5, -0.5, 1.0, -1.0)
    for up in steps:
        for across in steps:
            yield across, up


def _beside(
    text: str, height: float, at: Point, item: Box, dearer: float, *, tied: bool
) -> Iterator[Candidate]:
    """Places around an item; one close to a bare point or a symbol needs no leader, unless ``tied``."""
    wide, high = block_size(text, height)
    for distance in DISTANCES[1:] if tied else DISTANCES:
        for order, (across, up) in enumerate(_DIRECTIONS):
            x = item.centre[0] + across * (item.width / 2 + distance + wide / 2)
            y = item.centre[1] + up * (item.height / 2 + distance + high / 2)
            box = Box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
            far = tied or distance > DISTANCES[0]
            cost = dearer + (_LEADER if far else 0.0) + distance / 5 + order * 0.05
            yield Candidate(box, text, cost, 0, _leader(box, at, item, tied=tied) if far else None)


def _leader(box: Box, at: Point, item: Box, *, tied: bool) -> Segment:
    """The line from what is named to its label: from a symbol's rim, else from the very point."""
    foot = _foot(box, at)
    if tied or not item.width:
        return at, foot
    share = item.width / 2 / hypot(foot[0] - at[0], foot[1] - at[1])
    return (at[0] + (foot[0] - at[0]) * share, at[1] + (foot[1] - at[1]) * share), foot


def _foot(box: Box, tip: Point) -> Point:
    """Where a leader from the tip meets a label: the middle of its nearest side, a little off."""
    grown = box.grown(0.8)
    x, y = grown.centre
    sides = ((grown.left, y), (grown.right, y), (x, grown.bottom), (x, grown.top))
    return min(sides, key=lambda side: (side[0] - tip[0]) ** 2 + (side[1] - tip[1]) ** 2)


def place(
    wanted: Sequence[Sequence[Candidate]],
    *,
    obstacles: Sequence[Box],
    strokes: Sequence[tuple[Point, Point]] = (),
    home: Box | None = None,
    bounds: Box | None = None,
) -> list[Candidate | None]:
    """Return the place taken by each label, or None for one that finds no free place.

    No label overlaps an obstacle or another label, or lies outside ``bounds``; crossing a stroke or leaving
    ``home`` is only dearer. A leader never crosses lettering. Labels with the cheapest places choose first;
    then the worst placed may send a neighbour to its next choice where both together gain by it.
    """
    ground = Ground(obstacles, strokes, home, bounds)
    options = [Options(choices, ground) for choices in wanted]
    chosen: list[Candidate | None] = [None] * len(wanted)
    first = [next((choice.cost for choice in choices), 0.0) for choices in options]
    for index in sorted(range(len(wanted)), key=lambda i: (first[i], i)):
        chosen[index] = _first_clear(options[index], chosen, leave_out=index)
    for _ in range(_ROUNDS):
        # The worst placed first: those without a place, then the dearest.
        worst = sorted(range(len(wanted)), key=lambda i: (-_price(chosen[i]), i))
        changes = [_bettered(index, options, chosen) for index in worst]
        if not any(changes):
            break
    return chosen


@dataclass(frozen=True)
class Ground:
    """What is on the paper before any label is placed."""

    obstacles: Sequence[Box]
    strokes: Sequence[tuple[Point, Point]]
    home: Box | None
    bounds: Box | None

    def cost(self, choice: Candidate) -> float | None:
        """Return what a candidate costs, all that is fixed counted in, or None if it cannot stand there."""
        if self.bounds is not None and not self.bounds.holds(choice.box):
            return None
        box, leader = choice.box.grown(GAP), choice.leader
        for obstacle in self.obstacles:
            if box.overlaps(obstacle):
                return None
            # The symbol a leader points at is no obstacle to that leader.
            if leader and not obstacle.covers(leader[0]) and _strikes(leader, obstacle):
                return None
        cost = choice.cost + _STRIKE * sum(box.struck_by(*stroke) for stroke in self.strokes)
        if leader is not None:
            cost += _LEADER_STRIKE * sum(_crosses(leader, stroke) for stroke in self.strokes)
        return cost + (_AFIELD if self.home is not None and not self.home.holds(choice.box) else 0.0)


class Options:
    """The candidates of one label that may stand, in order of full cost, priced no sooner than asked for."""

    def __init__(self, choices: Sequence[Candidate], ground: Ground) -> None:
        self._priced: list[Candidate] = []
        self._rest = self._by_cost(sorted(choices, key=lambda choice: choice.cost), ground)

    def __iter__(self) -> Iterator[Candidate]:
        yield from self._priced
        for choice in self._rest:
            self._priced.append(choice)
            yield choice

    @staticmethod
    def _by_cost(choices: Sequence[Candidate], ground: Ground) -> Iterator[Candidate]:
        """Full cost is never under own cost, so what is cheaper than the next one's own cost can go out."""
        waiting: list[tuple[float, int]] = []
        for order, choice in enumerate(choices):
            while waiting and waiting[0][0] < choice.cost:
                cost, ready = heappop(waiting)
                yield replace(choices[ready], cost=cost)
            full = ground.cost(choice)
            if full is not None:
                heappush(waiting, (full, order))
        while waiting:
            cost, ready = heappop(waiting)
            yield replace(choices[ready], cost=cost)


def _first_clear(options: Options, chosen: Sequence[Candidate | None], *, leave_out: int) -> Candidate | None:
    others = [other for index, other in enumerate(chosen) if other is not None and index != leave_out]
    for option in options:
        if not any(clash(option, other) for other in others):
            return option
    return None


def _price(choice: Candidate | None) -> float:
    return _UNPLACED if choice is None else choice.cost


def _bettered(index: int, options: Sequence[Options], chosen: list[Candidate | None]) -> bool:
    """Give a label a cheaper place, if need be by sending on the one neighbour that stands in it.

    The two together must come out cheaper than before; says whether anything changed.
    """
    for option in options[index]:
        gain = _price(chosen[index]) - option.cost
        if gain <= 0:
            return False
        standing = [
            i for i, other in enumerate(chosen) if i != index and other is not None and clash(option, other)
        ]
        if not standing:
            chosen[index] = option
            return True
        if len(standing) > 1:
            continue
        neighbour = standing[0]
        trial = list(chosen)
        trial[index] = option
        elsewhere = _first_clear(options[neighbour], trial, leave_out=neighbour)
        if elsewhere is not None and elsewhere.cost - _price(chosen[neighbour]) < gain:
            chosen[index], chosen[neighbour] = option, elsewhere
            return True
    return False


def clash(one: Candidate, other: Candidate) -> bool:
    """Say whether two placed labels overlap, or the leader of one runs through the other or its leader."""
    if one.box.grown(GAP).overlaps(other.box):
        return True
    if _strikes(one.leader, other.box) or _strikes(other.leader, one.box):
        return True
    return one.leader is not None and other.leader is not None and _crosses(one.leader, other.leader)


def _strikes(leader: Segment | None, box: Box) -> bool:
    return leader is not None and box.grown(GAP / 2).struck_by(leader[0], leader[1])


def _crosses(one: Segment, other: Segment) -> bool:
    """Say whether two straight lines cross."""
    (ax, ay), (bx, by) = one
    (cx, cy), (dx, dy) = other
    if max(ax, bx) < min(cx, dx) or max(cx, dx) < min(ax, bx):
        return False
    c = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
    d = (bx - ax) * (dy - ay) - (by - ay) * (dx - ax)
    if c * d >= 0:
        return False
    a = (dx - cx) * (ay - cy) - (dy - cy) * (ax - cx)
    b = (dx - cx) * (by - cy) - (dy - cy) * (bx - cx)
    return a * b < 0
