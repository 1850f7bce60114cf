"""Placing: where every item stands, worked once for the sheets that need it."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright.build.cart import Build
from curbwright.build.fit import Item
from curbwright.equations import fit as eq
from curbwright.figures import Figure, Worksheet


@dataclass(frozen=True)
class Span:
    """One direction of a thing: its two edges and its middle, metres."""

    low: Figure
    high: Figure
    middle: Figure

    @property
    def size(self) -> float:
        """Distance between the edges."""
        return float(self.high) - float(self.low)


@dataclass(frozen=True)
class Placed:
    """Where one item stands: along (from the deck front), across (to the curb), up (above the deck)."""

    key: str
    item: Item
    along: Span
    across: Span
    up: Span
    sized: bool
    """False where the builder gave no size: the spans are then points at its centre."""

    @property
    def inboard(self) -> bool:
        """Whether it stands on or above the deck's length rather than on the drawbar."""
        return float(self.along.high) > 0


@dataclass(frozen=True)
class Room:
    """The inside of the shell, or the open deck where there is none: metres."""

    front: Figure
    rear: Figure
    width: Figure
    height: Figure | None

    @property
    def length(self) -> float:
        """Inside length."""
        return float(self.rear) - float(self.front)


@dataclass(frozen=True)
class Placing:
    """Everything placed, and the sheet that shows it."""

    sheet: Worksheet
    room: Room
    items: dict[str, Placed]


def place(build: Build) -> Placing:
    """Work out where everything stands.

    An item without a position, or without the size that its position needs, is left out and stands in the
    sheet's gaps.
    """
    sheet = Worksheet("placing", "Where everything stands")
    room = _room(build, sheet)
    placed: dict[str, Placed] = {}
    for key, item in build.items.items():
        section = sheet.section(key, item.name)
        with section.attempt():
            placed[key] = _placed(key, item, build, room, section)
    return Placing(sheet, room, placed)


def _room(build: Build, sheet: Worksheet) -> Room:
    trailer, shell = build.trailer, build.shell
    length = sheet.given(trailer["deck_length"])
    width = sheet.given(trailer["deck_width"])
    if shell is None:
        zero = sheet.tabled("deck_front", "front of the deck", 0.0, "m", source="convention")
        return Room(zero, length, width, None)
    wall_back, wall = sheet.given(shell["back"]), sheet.given(shell["wall_thickness"])
    outside = sheet.given(shell["width"]) if shell.width is not None else width
    room = sheet.work("room_width", "inside width", eq.inside, outside=outside, wall=wall)
    gap = sheet.tabled("no_gap", "nothing between", 0.0, "m", source="convention")
    front = sheet.work(
        "room_front",
        "inside face of the front wall",
        eq.front_wall_edge,
        wall_back=wall_back,
        wall=wall,
        gap=gap,
    )
    if shell.length is not None:
        long = sheet.given(shell["length"])
    else:
        long = sheet.work(
            "shell_length", "shell length, the rest of the deck", eq.rest, whole=length, part=wall_back
        )
    rear = sheet.work(
        "room_rear",
        "inside face of the rear wall",
        eq.rear_wall_edge,
        wall_back=wall_back,
        room=long,
        wall=wall,
        gap=gap,
        size=gap,
    )
    roof = sheet.given(shell["roof_thickness"])
    height = sheet.work(
        "headroom",
        "deck to the underside of the roof",
        eq.rest,
        whole=sheet.given(shell["height"]),
        part=roof,
    )
    return Room(front, rear, room, height)


def _placed(key: str, item: Item, build: Build, room: Room, sheet: Worksheet) -> Placed:
    if item.width is None or item.depth is None or item.height is None:
        return _point(key, item, sheet)
    end_on = item.turned != (item.side in ("front", "rear"))
    width, depth = sheet.given(item["width"]), sheet.given(item["depth"])
    along, into = (depth, width) if end_on else (width, depth)
    front = _front(item, build, room, along, sheet)
    long = _span("along", "along the deck", front, along, sheet)
    across = _across(item, room, into, sheet)
    wide = Span(
        sheet.work("street_edge", "its street-side edge", eq.near_edge, middle=across, size=into),
        sheet.work("curb_edge", "its curb-side edge", eq.curb_edge, middle=across, size=into),
        across,
    )
    up = _span("up", "above the deck", sheet.given(item["above"]), sheet.given(item["height"]), sheet)
    return Placed(key, item, long, wide, up, sized=True)


def _point(key: str, item: Item, sheet: Worksheet) -> Placed:
    """An item without a size: its position is its centre of gravity."""
    back, across, above = (sheet.given(item[field]) for field in ("back", "off_centre", "above"))
    return Placed(
        key,
        item,
        Span(back, back, back),
        Span(across, across, across),
        Span(above, above, above),
        sized=False,
    )


def _front(item: Item, build: Build, room: Room, along: Figure, sheet: Worksheet) -> Figure:
    """The item's front edge: as given, or against the end wall it stands at."""
    if item.back is not None or item.side not in ("front", "rear"):
        return sheet.given(item["back"])
    gap = sheet.given(item["off_wall"])
    if item.side == "front":
        return sheet.work(
            "front", "front edge against the front wall", eq.far_edge, edge=room.front, size=gap
        )
    return sheet.work(
        "front", "front edge against the rear wall", eq.against_rear, rear=room.rear, gap=gap, size=along
    )


def _across(item: Item, room: Room, into: Figure, sheet: Worksheet) -> Figure:
    if item.side in ("centre", "front", "rear"):
        return sheet.given(item["off_centre"])
    gap = sheet.given(item["off_wall"])
    against = eq.curb_middle if item.side == "curb" else eq.street_middle
    name = f"its middle, against the {item.side}-side wall"
    return sheet.work("across_middle", name, against, room=room.width, gap=gap, size=into)


def _span(id: str, name: str, low: Figure, size: Figure, sheet: Worksheet) -> Span:
    high = sheet.work(f"{id}_far", f"its far edge {name}", eq.far_edge, edge=low, size=size)
    middle = sheet.work(f"{id}_middle", f"its middle {name}", eq.middle, edge=low, size=size)
    return Span(low, high, middle)
