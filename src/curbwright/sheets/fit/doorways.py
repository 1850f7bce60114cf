"""Openings: doors that swing inwards, and what stands in a doorway or in front of a hatch."""

from __future__ import annotations

from curbwright.equations import fit as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.fit.boxes import Box, Direction, exact, meet, write_spare
from curbwright.sheets.fit.facing import leaf_side, nearest_of
from curbwright.sheets.fit.space import Space

SHOWN = 2
"""How many of the nearest things inside a door are written."""


def doors(space: Space, sheet: Worksheet) -> None:
    """Write, for every door of the cart that opens inwards, what its leaf meets."""
    space.openings_ready(sheet, "door")
    for key, (opening, box) in space.openings.items():
        if opening.kind != "door" or opening.opens != "in" or opening.wall == "roof":
            continue
        below = sheet.section(key, f"door {box.name}, opening inwards")
        with below.attempt():
            space.all_placed()
            face, beside = leaf_side(space, opening.wall)
            ends = {"front": "rear", "rear": "front", "curb": "street", "street": "curb"}
            met = _before(space, box, beside)
            nearest = sorted([*met, space.edges[ends[opening.wall]]], key=face.gap)[:SHOWN]
            clear = nearest_of(below, "clear", f"inside the door {box.name}", nearest, face)
            reach = below.given(opening["width"])
            write_spare(below, f"room left inside the open door {box.name}", clear, reach)


def _before(space: Space, box: Box, beside: Direction) -> list[Box]:
    """What stands before an opening at its height, however far inside."""
    level = [other for other in space.inside() if meet(other.up, box.up)]
    return [other for other in level if meet(other.span(beside), box.span(beside))]


def doorways(space: Space, sheet: Worksheet, kinds: tuple[str, ...]) -> None:
    """Write the widest part of every opening of these kinds in front of which nothing stands."""
    space.openings_ready(sheet, *kinds)
    for key, (opening, box) in space.openings.items():
        if opening.kind not in kinds or opening.wall == "roof":
            continue
        below = sheet.section(key, f"{opening.kind} {box.name}")
        with below.attempt():
            space.all_placed()
            face, beside = leaf_side(space, opening.wall)
            deep = exact(space.known("doorway"))
            near = [other for other in _before(space, box, beside) if face.gap(other) < deep]
            if opening.kind != "door":
                near = [other for other in near if not other.kind.is_("serve")]
            clear = _widest_part(below, box, beside, near)
            width = below.given(opening["width"])
            write_spare(below, f"{box.name}: clear part over its whole width", clear, width)


def _widest_part(sheet: Worksheet, opening: Box, beside: Direction, near: list[Box]) -> Figure:
    """The widest stretch of an opening between the things that stand in front of it."""
    span = opening.span(beside)
    start, parts = span.low, {}
    for number, other in enumerate(sorted(near, key=lambda one: exact(one.span(beside).low)), start=1):
        edge = other.span(beside)
        if exact(edge.low - start) > 0:
            name = f"{opening.name}, up to {other.name}"
            parts[name] = sheet.work(f"part_{number}", name, eq.gap, near=start, far=edge.low)
        start = edge.high if exact(edge.high - start) > 0 else start
    if exact(span.high - start) > 0:
        name = f"{opening.name}, the rest" if near else f"{opening.name}, all of it"
        parts[name] = sheet.work("part_last", name, eq.gap, near=start, far=span.high)
    if not parts:
        name = f"{opening.name}, wholly blocked"
        parts[name] = sheet.work("part_none", name, eq.gap, near=span.low, far=span.low)
    return sheet.largest("clear_width", f"{opening.name}: widest part with nothing before it", parts)
