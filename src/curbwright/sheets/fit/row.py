"""What stands in a row along one wall, and which of it can pass what."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright.build import kinds
from curbwright.build.fit import Item
from curbwright.build.kinds import UNKNOWN, Kind
from curbwright.errors import MissingInput
from curbwright.figures import Entry
from curbwright.sheets.fit.boxes import TOUCH, Box, belong
from curbwright.sheets.fit.clearances import burning_walls
from curbwright.sheets.fit.space import Space

ROWS = ("curb", "street", "centre")


@dataclass(frozen=True)
class Member:
    """One thing of a row: what it takes along the wall, across and up (metres), and what its sides need.

    ``start`` is where it stands now, ``needs`` whether it needs a clearance, ``clear`` that clearance.
    """

    name: str
    length: Entry
    across: tuple[float, float]
    up: tuple[float, float]
    start: float
    side: str
    kind: Kind = UNKNOWN
    burns: bool = False
    needs: bool = False
    clear: Entry | None = None

    @property
    def clearance(self) -> float:
        """The side clearance its plate asks, metres; nothing where none is needed or none is known."""
        return float(self.clear.value or 0.0) if self.asks and self.clear is not None else 0.0

    @property
    def asks(self) -> bool:
        """Whether it needs a clearance along the row: at an end wall the row is in front of it."""
        return self.needs and self.side not in ("front", "rear")


def members(space: Space, side: str) -> list[Member]:
    """Return a row: what stands at its wall, its doors and hatches, what reaches into it from the ends."""
    row = [_of_box(box) for box in space.inside() if box.side == side]
    row += [_of_item(space, key, item) for key, item in _waiting(space).items() if item.side == side]
    if not row:
        return []
    row += _openings(space, side)
    ends = [_of_box(box) for box in space.inside() if box.side in ("front", "rear")]
    return [*row, *(one for one in ends if any(conflict(one, other) for other in row))]


def conflict(one: Member, other: Member) -> bool:
    """Whether two things cannot pass each other along the wall: they share depth and height."""
    if belong(one.kind, other.kind):
        return False
    spans = ((one.across, other.across), (one.up, other.up))
    return all(a[0] < b[1] - TOUCH and b[0] < a[1] - TOUCH for a, b in spans)


def gap_between(one: Member, other: Member) -> tuple[float, Entry | None]:
    """Return the gap two neighbours need: the larger clearance of one whose neighbour can burn, and whose."""
    pairs = ((one, other), (other, one))
    cases = [(hot.clearance, hot.clear) for hot, near in pairs if near.burns and hot.clearance > 0]
    return max(cases, key=lambda case: case[0], default=(0.0, None))


def unknown(space: Space, row: list[Member]) -> list[MissingInput]:
    """Return the side clearances that are not known and matter: beside something that can burn."""
    walls = bool(burning_walls(space))
    found = []
    for one in row:
        near = any(other.burns and conflict(one, other) for other in row if other is not one)
        if one.asks and one.clear is not None and one.clear.value is None and (walls or near):
            found.append(MissingInput(one.clear.path, f"{one.clear.name} is not given"))
    return found


def lost(space: Space) -> list[MissingInput]:
    """Return what no row can count: things without a place or a size, doors and hatches without a place."""
    waiting = _waiting(space)
    things = [MissingInput(*why) for key, why in space.unplaced.items() if key not in waiting]
    unset = [(opening, MissingInput(path, says)) for opening, path, says in space.unset.values()]
    return [
        *things,
        *(why for opening, why in unset if opening.wall in ROWS and opening.kind in ("door", "hatch")),
    ]


def _of_box(box: Box) -> Member:
    across, up = (
        (float(box.across.low), float(box.across.high)),
        (float(box.solid.low), float(box.solid.high)),
    )
    needs = box.kind.is_("clear") or box.flame
    return Member(
        box.name, _length(box.thing), across, up, float(box.along.low), box.side, box.kind, box.burns, needs,
        box.thing["clear_side"],
    )  # fmt: skip


def _length(item: Item) -> Entry:
    """What an item takes along the deck: its width, or its depth where it stands end-on."""
    return item["depth" if item.turned != (item.side in ("front", "rear")) else "width"]


def _waiting(space: Space) -> dict[str, Item]:
    """Items that have a size, a wall and a height, but no place along the wall yet."""
    found = {}
    for key in space.unplaced:
        item = space.build.items[key]
        sized = item.width is not None and item.depth is not None and item.height is not None
        if sized and item.side in ("curb", "street") and item.above is not None and item.above >= 0:
            found[key] = item
    return found


def _of_item(space: Space, key: str, item: Item) -> Member:
    """A member of a row that has no place yet: it stands at the wall, wherever along it."""
    kind, into = kinds.find(item.kind), float((item.width if item.turned else item.depth) or 0.0)
    off, low, high = float(item.off_wall or 0.0), float(item.above or 0.0), float(item.height or 0.0)
    near = float(space.curb) - off - into if item.side == "curb" else float(space.street) + off
    bottom = max(low, low + high - float(space.known("table_top"))) if kind.is_("hollow") else low
    burns = kind.is_("burns") if item.combustible is None else item.combustible
    needs = kind.is_("clear", "flame") or item.gas_input is not None
    return Member(
        key.replace("_", " "), _length(item), (near, near + into), (bottom, low + high), float("inf"),
        item.side, kind, burns, needs, item["clear_side"],
    )  # fmt: skip


def _openings(space: Space, side: str) -> list[Member]:
    """The doors and hatches of a wall: nothing stands before a door, nor above the sill of a hatch."""
    deep, found = float(space.known("doorway")), []
    for opening, box in space.openings.values():
        if opening.wall != side or opening.kind not in ("door", "hatch"):
            continue
        near = float(space.curb) - deep if side == "curb" else float(space.street)
        up = float(box.up.low), float(box.up.high)
        kind = Kind(opening.kind, "an opening", frozenset({opening.kind}))
        name = f"{opening.kind} {box.name}"
        start = float(box.along.low)
        found.append(Member(name, opening["width"], (near, near + deep), up, start, side, kind))
    return found
