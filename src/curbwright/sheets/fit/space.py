"""Space: the room, what stands in it and around it, ready to be measured."""

from __future__ import annotations

from dataclasses import dataclass, field

from curbwright import units
from curbwright.build import kinds
from curbwright.build.cart import Build
from curbwright.build.fit import Opening
from curbwright.data import table
from curbwright.equations import fit as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Gap, Worksheet
from curbwright.sheets.fit.boxes import TOUCH, Box, Zone
from curbwright.sheets.placing import Placed, Placing, Room, Span


@dataclass
class Space:
    """One build, laid out: boxes of everything sized, the faces of the room, walls, openings.

    ``walls`` is empty on an open cart; ``edges`` are the walls, or the edges of an open deck.
    ``unplaced`` are things and ``unset`` openings that have no place yet: the field that is missing, and
    what is said of it.
    """

    build: Build
    room: Room
    sheet: Worksheet
    curb: Figure
    street: Figure
    floor: Figure
    outside: Box
    boxes: dict[str, Box] = field(default_factory=dict)
    walls: dict[str, Box] = field(default_factory=dict)
    edges: dict[str, Box] = field(default_factory=dict)
    openings: dict[str, tuple[Opening, Box]] = field(default_factory=dict)
    unplaced: dict[str, tuple[str, str]] = field(default_factory=dict)
    unset: dict[str, tuple[Opening, str, str]] = field(default_factory=dict)
    unsized: list[str] = field(default_factory=list)
    _known: dict[str, Figure] = field(default_factory=dict)

    def known(self, key: str) -> Figure:
        """Write a published or customary length once (data/space.csv) and return it."""
        if key not in self._known:
            row = table("space").row(key)
            value = float(units.read(row["value"], "length"))
            where = {"source": row["source"], "row": row["row"]}
            self._known[key] = self.sheet.tabled(key, row["says"], value, "m", **where)
        return self._known[key]

    def inside(self) -> list[Box]:
        """Everything that takes up room inside, in the order of the build file."""
        found = [box for box in self.boxes.values() if box.zone == "inside"]
        return [box for box in found if not box.kind.is_("small", "structure")]

    def with_flag(self, *flags: str) -> list[Box]:
        """Every box whose kind carries any of these flags."""
        return [box for box in self.boxes.values() if box.kind.is_(*flags)]

    def all_placed(self) -> None:
        """Raise MissingInput where something that takes up room has no place yet."""
        for path, says in self.unplaced.values():
            raise MissingInput(path, says)

    def ready(self, sheet: Worksheet) -> bool:
        """Whether everything has its place; what has none is given a section with a gap."""
        for key, (path, says) in self.unplaced.items():
            below = sheet.section(key, f"{key.replace('_', ' ')}: no place yet")
            below.gaps.append(Gap(below.id, path, says))
        return not self.unplaced

    def openings_ready(self, sheet: Worksheet, *kinds: str) -> None:
        """Open a section with a gap for every opening of these kinds that has no place yet."""
        for key, (opening, path, says) in self.unset.items():
            if opening.kind in kinds:
                below = sheet.section(key, f"{key.replace('_', ' ')}: no place yet")
                below.gaps.append(Gap(below.id, path, says))


def lay_out(build: Build, placing: Placing, sheet: Worksheet) -> Space:
    """Turn a placing into boxes."""
    room = placing.room
    curb = sheet.work("curb_face", "inside face on the curb side", eq.curb_face, width=room.width)
    street = sheet.work("street_face", "inside face on the street side", eq.street_face, width=room.width)
    floor = sheet.tabled("floor", "top of the deck", 0.0, "m", source="convention")
    outside = _outside(build, room, floor, sheet)
    space = Space(build, room, sheet, curb, street, floor, outside)
    names = _names(build)
    for key, item in build.items.items():
        placed, kind = placing.items.get(key), kinds.find(item.kind)
        if placed is None:
            if not kind.is_("small", "structure"):
                space.unplaced[key] = _why(placing, key)
        elif placed.sized:
            zone, top = _zone(placed, outside), _top(key, placed, kind, space)
            spans = placed.along, placed.across, placed.up
            space.boxes[key] = Box(key, names[key], *spans, zone, kind, item, top)
        elif not kind.is_("small", "structure"):
            space.unsized.append(names[key])
    space.edges = _edges(space, outside)
    if build.shell is not None:
        space.walls = space.edges
        for key, opening in build.shell.openings.items():
            below = sheet.section(f"openings.{key}", f"opening: {key.replace('_', ' ')}")
            with below.attempt():
                space.openings[key] = opening, _opening(key, opening, space, below)
            if below.gaps:
                space.unset[key] = opening, below.gaps[0].path, below.gaps[0].says
    return space


def _names(build: Build) -> dict[str, str]:
    """What to call every item: its label, and its key beside it where two have the same."""
    labels = [item.name for item in build.items.values()]
    return {
        key: item.name if labels.count(item.name) == 1 else f"{item.name} ({key})"
        for key, item in build.items.items()
    }


def _why(placing: Placing, key: str) -> tuple[str, str]:
    """The field that keeps an item from being placed, and what is said of it."""
    for gap in placing.sheet.all_gaps():
        if gap.section == f"placing.{key}":
            return gap.path, gap.says
    return f"items.{key}", "its place cannot be worked out"


def _outside(build: Build, room: Room, floor: Figure, sheet: Worksheet) -> Box:
    """The outer faces: of the shell, or of the open deck, which has no roof to speak of."""
    trailer, shell = build.trailer, build.shell
    low, high, width = room.front, sheet.given(trailer["deck_length"]), sheet.given(trailer["deck_width"])
    if shell is not None:
        low = sheet.given(shell["back"])
        if shell.length is not None:
            long = sheet.given(shell["length"])
            high = sheet.work("shell_rear", "outside of the rear wall", eq.far_edge, edge=low, size=long)
        if shell.width is not None:
            width = sheet.given(shell["width"])
    curb = sheet.work("curb_outside", "outside on the curb side", eq.curb_face, width=width)
    street = sheet.work("street_outside", "outside on the street side", eq.street_face, width=width)
    top = sheet.given(shell["height"]) if shell is not None else floor
    along, across, up = Span(low, high, low), Span(street, curb, curb), Span(floor, top, top)
    return Box("outside", "outside of the shell", along, across, up, "wall")


def _zone(placed: Placed, outside: Box) -> Zone:
    """Where a thing is: inside unless it is wholly outside one face."""
    if float(placed.up.high) <= TOUCH:
        return "below"
    if float(placed.along.high) <= float(outside.along.low) + TOUCH:
        return "ahead"
    if float(placed.along.low) >= float(outside.along.high) - TOUCH:
        return "behind"
    if float(outside.up.high) > 0 and float(placed.up.low) >= float(outside.up.high) - TOUCH:
        return "roof"
    beside = float(placed.across.low) >= float(outside.across.high) - TOUCH
    beside = beside or float(placed.across.high) <= float(outside.across.low) + TOUCH
    return "beside" if beside else "inside"


def _top(key: str, placed: Placed, kind: kinds.Kind, space: Space) -> Span | None:
    """The top of a thing that is open below it."""
    thickness = space.known("table_top")
    if not kind.is_("hollow") or placed.up.size <= float(thickness):
        return None
    name = f"{placed.item.name}: underside of its top"
    sheet = space.sheet.section(f"tops.{key}", name)
    low = sheet.work("underside", name, eq.rest, whole=placed.up.high, part=thickness)
    return Span(low, placed.up.high, placed.up.high)


def _edges(space: Space, outside: Box) -> dict[str, Box]:
    """The walls and the roof as boxes between their two faces; of an open deck its four edges."""
    room, word = space.room, "wall" if space.build.shell is not None else "edge"
    along, across = Span(room.front, room.rear, room.front), Span(space.street, space.curb, space.curb)
    up = Span(space.floor, room.height or space.floor, room.height or space.floor)
    front, rear = (
        Span(outside.along.low, room.front, room.front),
        Span(room.rear, outside.along.high, room.rear),
    )
    curb = Span(space.curb, outside.across.high, space.curb)
    street = Span(outside.across.low, space.street, space.street)
    edges = {
        "front": Box("wall:front", f"front {word}", front, across, up, "wall"),
        "rear": Box("wall:rear", f"rear {word}", rear, across, up, "wall"),
        "curb": Box("wall:curb", f"curb-side {word}", along, curb, up, "wall"),
        "street": Box("wall:street", f"street-side {word}", along, street, up, "wall"),
    }
    if room.height is not None:
        roof = Span(room.height, outside.up.high, room.height)
        edges["roof"] = Box("wall:roof", "roof", along, across, roof, "wall")
    return edges


def _opening(key: str, opening: Opening, space: Space, sheet: Worksheet) -> Box:
    """An opening as the piece of wall it is cut from."""
    wall, name = space.walls[opening.wall], key.replace("_", " ")
    width, height = sheet.given(opening["width"]), sheet.given(opening["height"])
    if opening.wall == "roof":
        along = _from_edge(sheet, "along", sheet.given(opening["back"]), width)
        across = _round_middle(sheet, "across", sheet.given(opening["off_centre"]), height)
        return Box(key, name, along, across, wall.up, "wall", through="up")
    up = _from_edge(sheet, "up", sheet.given(opening["above"]), height)
    if opening.wall in ("front", "rear"):
        across = _round_middle(sheet, "across", sheet.given(opening["off_centre"]), width)
        return Box(key, name, wall.along, across, up, "wall", through="along")
    along = _from_edge(sheet, "along", sheet.given(opening["back"]), width)
    return Box(key, name, along, wall.across, up, "wall")


def _from_edge(sheet: Worksheet, id: str, low: Figure, size: Figure) -> Span:
    return Span(low, sheet.work(f"{id}_far", f"its far edge, {id}", eq.far_edge, edge=low, size=size), low)


def _round_middle(sheet: Worksheet, id: str, middle: Figure, size: Figure) -> Span:
    low = sheet.work(f"{id}_street", "its street-side edge", eq.near_edge, middle=middle, size=size)
    high = sheet.work(f"{id}_curb", "its curb-side edge", eq.curb_edge, middle=middle, size=size)
    return Span(low, high, middle)
