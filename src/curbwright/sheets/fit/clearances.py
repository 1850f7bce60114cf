"""Clearances: hot things from what can burn, cold things from hot ones, a fryer from flames."""

from __future__ import annotations

from collections.abc import Iterator

from curbwright.figures import Figure, Worksheet
from curbwright.sheets.fit.boxes import (
    SPACE,
    TOUCH,
    Box,
    Direction,
    apart,
    distance,
    exact,
    meet,
    write_distance,
    write_gap,
    write_spare,
)
from curbwright.sheets.fit.facing import facing
from curbwright.sheets.fit.space import Space
from curbwright.sheets.fit.swings import things_above

SHOWN = 2
"""How many of the nearest things that can burn are written for each side."""


def side_clearances(space: Space, sheet: Worksheet) -> None:
    """Write, for everything that needs a clearance, the nearest thing that can burn at its sides."""
    for box, below in _hot(space, sheet):
        with below.attempt():
            space.all_placed()
            if box.zone == "inside":
                _one(below, box, "side", _beside(space, box), _along_wall(box))


def rear_clearances(space: Space, sheet: Worksheet) -> None:
    """Write, for everything that needs a clearance, the nearest thing that can burn behind it.

    What stands outside the shell is held to the distance from the shell.
    """
    for box, below in _hot(space, sheet):
        with below.attempt():
            space.all_placed()
            if box.zone == "inside":
                _one(below, box, "rear", _behind(space, box), _into_room(box))
            elif burning_walls(space) and box.zone != "roof":
                clear = write_distance(below, "clear", f"{box.name} to the shell", box, space.outside, SPACE)
                asked = below.given(box.thing["clear_rear"])
                write_spare(below, f"{box.name}: clearance to the shell left over", clear, asked)


def clearances_above(space: Space, sheet: Worksheet) -> None:
    """Write, for everything that needs a clearance, the nearest thing that can burn above it."""
    for box, below in _hot(space, sheet):
        with below.attempt():
            space.all_placed()
            if box.zone == "inside":
                _above(space, below, box)


def _hot(space: Space, sheet: Worksheet) -> Iterator[tuple[Box, Worksheet]]:
    """Everything that needs a clearance, each with a section of its own."""
    for box in space.boxes.values():
        if (box.kind.is_("clear") or box.flame) and not box.kind.is_("bottle", "small", "structure"):
            yield box, sheet.section(box.key, f"{box.name}: clearance to what can burn")


def _one(sheet: Worksheet, box: Box, word: str, near: list[Box], way: Direction) -> None:
    """Write one side: the nearest thing that can burn, what the plate asks, what is left over."""
    if not near:
        sheet.note("Nothing that can burn is there")
        return
    near = sorted(near, key=lambda other: apart(box.span(way), other.span(way)))[:SHOWN]
    clear = _nearest(sheet, word, box, near, way)
    asked = sheet.given(box.thing[f"clear_{word}"])
    write_spare(sheet, f"{box.name}: {word} clearance left over", clear, asked)


def _nearest(sheet: Worksheet, word: str, box: Box, near: list[Box], way: Direction) -> Figure:
    cases = {}
    for other in near:
        far, name = (
            other.solid if way == "up" else other.span(way),
            f"{box.name}: {word}, to the {other.name}",
        )
        cases[other.name] = write_gap(sheet, f"to_{other.key}", name, box.span(way), far)
    return sheet.smallest("clear", f"{box.name}: {word}, to the nearest thing that can burn", cases)


def _along_wall(box: Box) -> Direction:
    return "across" if box.side in ("front", "rear") else "along"


def _into_room(box: Box) -> Direction:
    return "along" if box.side in ("front", "rear") else "across"


def burning_walls(space: Space) -> dict[str, Box]:
    """Return the walls and the roof where they can burn."""
    shell = space.build.shell
    return space.walls if shell is not None and shell.combustible else {}


def _beside(space: Space, box: Box) -> list[Box]:
    """What can burn at its two sides: neighbours in its row, and the walls at the ends of the row."""
    way, cross = _along_wall(box), _into_room(box)
    ends = ("front", "rear") if way == "along" else ("street", "curb")
    near = [other for other in _burning(space, box) if meet(box.span(cross), other.span(cross))]
    near = [other for other in near if not meet(box.span(way), other.span(way))]
    walls = burning_walls(space)
    return [*near, *(walls[key] for key in ends if key in walls)]


def _behind(space: Space, box: Box) -> list[Box]:
    """What can burn behind it: its wall, and things between it and its wall."""
    way, cross = _into_room(box), _along_wall(box)
    walls, face = burning_walls(space), facing(box)
    if face is None:
        return [walls[key] for key in ("street", "curb") if key in walls]
    own = [walls[box.side]] if box.side in walls else []
    others = [other for other in _burning(space, box) if meet(box.span(cross), other.span(cross))]
    return [*(other for other in others if _at_back(box, other, way, face.backwards)), *own]


def _at_back(box: Box, other: Box, way: Direction, backwards: bool) -> bool:
    mine, its = box.span(way), other.span(way)
    if backwards:
        return float(its.low) >= float(mine.high) - TOUCH
    return float(its.high) <= float(mine.low) + TOUCH


def _burning(space: Space, box: Box) -> list[Box]:
    """What else can burn and stands at its height."""
    others = [other for other in space.inside() if other is not box and other.burns]
    return [other for other in others if meet(box.up, other.solid)]


def _above(space: Space, sheet: Worksheet, box: Box) -> None:
    """The clearance above; a hood over it takes the place of one."""
    above = things_above(space, box)
    hood = next((other for other in above if other.kind.is_("hood")), None)
    walls = burning_walls(space)
    burning = [other for other in above if (other.burns if other.item is not None else "roof" in walls)]
    if hood is not None:
        burning = [other for other in burning if exact(hood.up.low - other.up.low) > 0]
    if not burning:
        sheet.note("The hood is above it" if hood is not None else "Nothing that can burn is there")
        return
    if box.thing.clear_above is None and not box.kind.is_("heat"):
        sheet.note("No clearance is asked")
        return
    clear = _nearest(sheet, "above", box, burning[:SHOWN], "up")
    asked = sheet.given(box.thing["clear_above"])
    write_spare(sheet, f"{box.name}: clearance left over above", clear, asked)


def cold_from_heat(space: Space, sheet: Worksheet) -> None:
    """Write how far every cold box is from the nearest hot thing."""
    hot = [box for box in space.inside() if box.kind.is_("heat")]
    for box in space.inside():
        if not box.kind.is_("cold") or not hot:
            continue
        nearest = min(hot, key=lambda other: distance(box, other, SPACE))
        below = sheet.section(box.key, f"{box.name} from the {nearest.name}")
        name = f"{box.name} to the nearest hot thing, the {nearest.name}"
        write_distance(below, "clear", name, box, nearest, SPACE)


def fryer_from_flame(space: Space, sheet: Worksheet) -> None:
    """Write how far every fryer is from the nearest open flame."""
    for box in space.inside():
        others = [other for other in space.inside() if other is not box and other.kind.name != "fryer"]
        flames = [other for other in others if other.flame]
        if box.kind.name != "fryer" or not flames:
            continue
        nearest = min(flames, key=lambda other: distance(box, other))
        below = sheet.section(box.key, f"{box.name} from the {nearest.name}")
        write_distance(below, "clear", f"{box.name} to the nearest flame, the {nearest.name}", box, nearest)
