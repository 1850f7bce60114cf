"""The aisle: how wide at its narrowest, how high, and wide enough for two."""

from __future__ import annotations

from curbwright.equations import fit as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.fit.boxes import TOUCH, Box, distance, exact, write_distance
from curbwright.sheets.fit.facing import standing
from curbwright.sheets.fit.space import Space
from curbwright.sheets.placing import Span

SHOWN = 4
"""How many of the narrowest places are written."""


def aisle(space: Space, sheet: Worksheet) -> None:
    """Write the narrowest place of the aisle and the headroom over it."""
    if space.build.shell is None and not any(
        person.back is not None for person in space.build.people.values()
    ):
        sheet.note("An open deck on which nobody is placed: no aisle is looked at")
        return
    if space.ready(sheet):
        width = _width(space, sheet)
        passing = sheet.section("passing", "Two people in the aisle")
        with passing.attempt():
            _passing(space, passing, width)
    _headroom(space, sheet)


def _width(space: Space, sheet: Worksheet) -> Figure:
    boxes = standing(space)
    curb = [*(box for box in boxes if box.side == "curb"), space.edges["curb"]]
    street = [*(box for box in boxes if box.side == "street"), space.edges["street"]]
    pairs = sorted(((one, other) for one in curb for other in street), key=lambda pair: distance(*pair))
    cases: dict[str, Figure] = {}
    for one, other in pairs[:SHOWN]:
        name = f"{one.name} to {other.name}"
        cases[name] = write_distance(sheet, f"{one.key}+{other.key}", f"aisle, {name}", one, other)
    for box in boxes:
        if box.side == "centre" and not _at_an_end(space, box):
            cases[f"past {box.name}"] = _past(sheet, box, curb, street)
    return sheet.smallest("width", "aisle at its narrowest", cases)


def _past(sheet: Worksheet, box: Box, curb: list[Box], street: list[Box]) -> Figure:
    """The wider of the two ways past a thing that stands on the centre line."""
    ways = {}
    for side, others in (("curb", curb), ("street", street)):
        nearest = min(others, key=lambda other: distance(box, other))
        name = f"past {box.name}, {side} side, to {nearest.name}"
        ways[f"{side} side"] = write_distance(sheet, f"past_{box.key}_{side}", name, box, nearest)
    return sheet.largest(f"past_{box.key}", f"past {box.name} on its wider side", ways)


def _at_an_end(space: Space, box: Box) -> bool:
    """Whether a thing on the centre line stands so near an end that nobody has to get past it.

    Nobody can stand in less than a body's depth; a door in that end still has to be reached.
    """
    deep = exact(space.known("body_depth"))
    doors = {opening.wall for opening, _ in space.openings.values() if opening.kind == "door"}
    at_front = exact(box.along.low - space.room.front) < deep and "front" not in doors
    at_rear = exact(space.room.rear - box.along.high) < deep and "rear" not in doors
    return at_front or at_rear


def _headroom(space: Space, sheet: Worksheet) -> None:
    cases = {} if space.room.height is None else {"underside of the roof": space.room.height}
    cases.update({box.name: box.up.low for box in _overhead(space)})
    if not cases:
        sheet.note("Nothing is overhead")
        return
    headroom = sheet.smallest("headroom", "headroom over the aisle", cases)
    parts = [_tallest(space, sheet), space.known("shoe"), space.known("hat")]
    asked = sheet.total("headroom_to_stand", "headroom to stand upright, shod, with a hat", parts)
    sheet.work(
        "headroom_spare", "headroom left over when standing upright", eq.spare, clear=headroom, asked=asked
    )


def _tallest(space: Space, sheet: Worksheet) -> Figure:
    """The tallest who works here, or a tall man where no stature is given."""
    given = {
        key: person["stature"] for key, person in space.build.people.items() if person.stature is not None
    }
    if not given:
        return space.known("stature_man_95")
    return sheet.largest(
        "tallest", "stature of the tallest", {key: sheet.given(entry) for key, entry in given.items()}
    )


def _overhead(space: Space) -> list[Box]:
    """What hangs above head height over the aisle rather than over something that stands below it."""
    low, floor = float(space.known("head_zone")), standing(space)
    hung = [box for box in space.boxes.values() if box.zone == "inside" and not box.kind.is_("structure")]
    return [box for box in hung if float(box.up.low) >= low - TOUCH and not _covered(box, floor)]


def _covered(box: Box, floor: list[Box]) -> bool:
    """Whether things on the floor take up all of the plan of a thing above them."""
    deep = [
        other for other in floor
        if float(other.across.low) <= float(box.across.low) + TOUCH
        and float(other.across.high) >= float(box.across.high) - TOUCH
    ]  # fmt: skip
    reached = float(box.along.low)
    for other in sorted(deep, key=lambda one: float(one.along.low)):
        if float(other.along.low) <= reached + TOUCH:
            reached = max(reached, float(other.along.high))
    return reached >= float(box.along.high) - TOUCH


def _passing(space: Space, sheet: Worksheet, width: Figure) -> None:
    """Write whether one can walk past another who stands at work, where two or more work aboard."""
    if float(sheet.given(space.build.day["crew"])) < 2:
        return
    parts = [space.known("body_depth"), space.known("body_breadth"), space.known("room_to_move")]
    asked = sheet.total("asked", "aisle in which one walks past another at work", parts)
    sheet.work(
        "spare", "aisle left over when one walks past another at work", eq.spare, clear=width, asked=asked
    )


def where_people_stand(space: Space, sheet: Worksheet) -> None:
    """Write how far everybody's place is from the nearest thing on the floor."""
    floor = standing(space)
    for key, person in space.build.people.items():
        if person.back is None or not floor:
            continue
        name = key.replace("_", " ")
        below = sheet.section(key, f"where {name} stands")
        back, off = below.given(person["back"]), below.given(person["off_centre"])
        spot = Box(key, name, Span(back, back, back), Span(off, off, off), floor[0].up, "inside")
        nearest = min(floor, key=lambda box: distance(box, spot))
        write_distance(below, "clear", f"{name} to the nearest thing, the {nearest.name}", spot, nearest)
