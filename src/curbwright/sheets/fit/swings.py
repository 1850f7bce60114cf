"""Doors, drawers and lids: what they reach when open, and the floor to work in front of things."""

from __future__ import annotations

from curbwright.errors import MissingInput
from curbwright.figures import Worksheet
from curbwright.sheets.fit.boxes import Box, apart, exact, meet, write_gap, write_spare
from curbwright.sheets.fit.facing import across_the_floor, clear_ahead, facing, floor_ahead, nearest_of
from curbwright.sheets.fit.space import Space

SHOWN = 2
"""How many of the nearest things above a lid are written."""


def swings(space: Space, sheet: Worksheet) -> None:
    """Write, for every door and drawer of a thing, what is in front of it and what is left of the aisle."""
    for box in space.inside():
        if box.thing.opens not in ("door", "drawer"):
            continue
        below = sheet.section(box.key, f"{box.name}: its {box.thing.opens}")
        with below.attempt():
            _swing(space, below, box)


def _swing(space: Space, sheet: Worksheet, box: Box) -> None:
    face = facing(box)
    if face is None:
        says = f"{box.name} stands on the centre line, and which way its {box.thing.opens} opens is not given"
        raise MissingInput(f"items.{box.key}.side", says)
    reach = sheet.given(box.thing["swing"])
    space.all_placed()
    clear = clear_ahead(space, sheet, box, face)
    write_spare(sheet, f"{box.name}: room left in front of its open {box.thing.opens}", clear, reach)
    name = f"{box.name}: floor before it"
    floor = nearest_of(sheet, "floor", name, across_the_floor(space, box, face)[:SHOWN], face)
    write_spare(sheet, f"aisle left past the open {box.thing.opens} of {box.name}", floor, reach, "left")
    space.known("body_depth")


def lids(space: Space, sheet: Worksheet) -> None:
    """Write, for every lid, the height to the nearest thing above it."""
    for box in space.inside():
        if box.thing.opens != "lid":
            continue
        below = sheet.section(box.key, f"{box.name}: its lid")
        with below.attempt():
            rise = below.given(box.thing["lid_rise"])
            space.all_placed()
            above = things_above(space, box)
            if not above:
                below.note(f"Nothing is above {box.name}")
                continue
            cases = {
                other.name: write_gap(
                    below, f"to_{other.key}", f"{box.name} to the {other.name} above it", box.up, other.solid
                )
                for other in above[:SHOWN]
            }
            clear = below.smallest("clear", f"{box.name}: clear above", cases)
            write_spare(below, f"{box.name}: height left above its open lid", clear, rise)


def things_above(space: Space, box: Box) -> list[Box]:
    """Return what is above a thing within its plan, the nearest first, the roof among it."""
    roof = [space.walls["roof"]] if "roof" in space.walls else []
    others = [*(other for other in space.inside() if other is not box), *roof]
    over = [other for other in others if meet(box.along, other.along) and meet(box.across, other.across)]
    over = [other for other in over if exact(other.solid.high - box.up.high) > 0]
    return sorted(over, key=lambda other: apart(box.up, other.solid))


def working_floor(space: Space, sheet: Worksheet) -> None:
    """Write the clear floor in front of everything that asks for some."""
    for box in space.inside():
        face = facing(box)
        if box.thing.front_clear is None or face is None:
            continue
        below = sheet.section(box.key, f"{box.name}: floor to work in front of it")
        with below.attempt():
            space.all_placed()
            clear = floor_ahead(space, below, box, face)
            asked = below.given(box.thing["front_clear"])
            write_spare(below, f"{box.name}: floor in front over what it asks", clear, asked)
