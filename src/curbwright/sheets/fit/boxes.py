"""Boxes: everything that takes up room, and the gaps between two of them.

Lengths are compared as plain numbers to find which pairs matter; only those are then written on the sheet.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from curbwright.build.fit import Item
from curbwright.build.kinds import UNKNOWN, Kind
from curbwright.equations import fit as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.placing import Span

TOUCH = 1e-9
"""Metres: edges closer than this touch, and touching things do not overlap."""

Direction = Literal["along", "across", "up"]
Zone = Literal["inside", "ahead", "behind", "below", "roof", "beside", "wall"]
PLAN: tuple[Direction, ...] = ("along", "across")
SPACE: tuple[Direction, ...] = ("along", "across", "up")


@dataclass(frozen=True)
class Box:
    """Something with three spans: a thing aboard, a wall, an opening in one.

    ``zone`` says where it is, ``through`` the direction in which a wall or an opening is passed.
    """

    key: str
    name: str
    along: Span
    across: Span
    up: Span
    zone: Zone
    kind: Kind = UNKNOWN
    item: Item | None = None
    top: Span | None = None
    """Of a table or a shelf: the top alone, which other things cannot pass through."""
    through: Direction = "across"

    def span(self, direction: Direction) -> Span:
        """Return its span in one direction."""
        return {"along": self.along, "across": self.across, "up": self.up}[direction]

    @property
    def thing(self) -> Item:
        """The item that it is the box of; walls and openings are boxes of none."""
        assert self.item is not None
        return self.item

    @property
    def side(self) -> str:
        """The wall it stands against; nothing for walls and openings."""
        return self.item.side if self.item is not None else ""

    @property
    def burns(self) -> bool:
        """Whether it can burn: as the builder says, else as its kind usually does."""
        if self.item is not None and self.item.combustible is not None:
            return self.item.combustible
        return self.kind.is_("burns")

    @property
    def flame(self) -> bool:
        """Whether a flame burns in it: on gas as the file says, or of a kind that is unless electric."""
        if self.item is None:
            return False
        if self.item.gas_input is not None or "gas" in self.item.connects:
            return True
        return self.kind.is_("flame") and not {"12 V", "120 V"} & set(self.item.connects)

    @property
    def solid(self) -> Span:
        """The heights that other things cannot share: all of it, or only the top of a table."""
        return self.up if self.top is None else self.top


def belong(one: Kind, other: Kind) -> bool:
    """Whether two kinds share room: a sink in its counter, a duct in its hood, a bottle in its rack."""
    if one.is_("through_roof") and other.is_("through_roof"):
        return True
    for holder, held in ((one, other), (other, one)):
        if holder.is_("holds") or (holder.is_("hollow") and held.is_("drops_in")):
            return True
        if holder.name == "hatch" and held.is_("serve"):
            return True
    return False


def exact(length: float) -> float:
    """A length to the nanometre, so that the last bit of a sum never decides what comes first."""
    return round(float(length), 9)


def apart(one: Span, other: Span) -> float:
    """Gap between two spans, metres; negative where they overlap."""
    return exact(max(float(other.low) - float(one.high), float(one.low) - float(other.high)))


def separation(one: Box, other: Box) -> float:
    """The largest of the three gaps between two boxes: negative means that they take up the same room."""
    return max(apart(one.along, other.along), apart(one.across, other.across), apart(one.solid, other.solid))


def distance(one: Box, other: Box, directions: tuple[Direction, ...] = PLAN) -> float:
    """Shortest distance between two boxes seen in these directions; the largest gap where they overlap."""
    gaps = [apart(one.span(each), other.span(each)) for each in directions]
    open_gaps = [gap for gap in gaps if gap > 0]
    return exact(sum(gap * gap for gap in open_gaps) ** 0.5) if open_gaps else max(gaps)


def meet(one: Span, other: Span) -> bool:
    """Whether two spans share more than an edge."""
    return apart(one, other) < -TOUCH


def write_gap(sheet: Worksheet, id: str, name: str, one: Span, other: Span) -> Figure:
    """Write the gap between two spans."""
    beyond = float(other.low) - float(one.high) >= float(one.low) - float(other.high)
    near, far = (one.high, other.low) if beyond else (other.high, one.low)
    return sheet.work(id, name, eq.gap, near=near, far=far)


def write_distance(
    sheet: Worksheet, id: str, name: str, one: Box, other: Box, directions: tuple[Direction, ...] = PLAN
) -> Figure:
    """Write the shortest distance between two boxes seen in these directions."""
    open_ways = [each for each in directions if apart(one.span(each), other.span(each)) > 0]
    if not open_ways:
        open_ways = [max(directions, key=lambda each: apart(one.span(each), other.span(each)))]
    if len(open_ways) == 1:
        return write_gap(sheet, id, name, one.span(open_ways[0]), other.span(open_ways[0]))
    legs: dict[str, Figure] = {
        each: write_gap(sheet, f"{id}_{each}", f"{name}, {each}", one.span(each), other.span(each))
        for each in open_ways
    }
    if len(legs) == 3:
        return sheet.work(
            id, name, eq.corner_gap_in_space, along=legs["along"], across=legs["across"], up=legs["up"]
        )
    first, second = legs.values()
    return sheet.work(id, name, eq.corner_gap, one_way=first, other_way=second)


def write_spare(sheet: Worksheet, name: str, clear: Figure, asked: Figure, id: str = "spare") -> Figure:
    """Write what is left over of a clear length when what is asked of it is taken."""
    return sheet.work(id, name, eq.spare, clear=clear, asked=asked)


def write_way(sheet: Worksheet, id: str, name: str, one: Box, other: Box) -> Figure:
    """Write the way from the middle of one thing to the middle of another: along the cart, then across it."""
    along = sheet.work(
        f"{id}_along", f"{name}, along", eq.leg, start=one.along.middle, end=other.along.middle
    )
    across = sheet.work(
        f"{id}_across", f"{name}, across", eq.leg, start=one.across.middle, end=other.across.middle
    )
    return sheet.work(id, name, eq.way, along=along, across=across)


def write_separation(sheet: Worksheet, one: Box, other: Box) -> Figure:
    """Write the three gaps between two boxes and the largest, which is negative where they overlap."""
    both = f"{one.name} and {other.name}"
    cases = {
        "along": write_gap(sheet, "along", f"{both}, along the deck", one.along, other.along),
        "across": write_gap(sheet, "across", f"{both}, across", one.across, other.across),
        "up": write_gap(sheet, "up", f"{both}, one above the other", one.solid, other.solid),
    }
    return sheet.largest("gap", f"gap between {both}", cases)
