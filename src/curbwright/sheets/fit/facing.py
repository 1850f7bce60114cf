"""Facing: where the front of a thing is, and what stands in front of it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from curbwright.equations import fit as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.fit.boxes import Box, Direction, exact, meet
from curbwright.sheets.fit.space import Space
from curbwright.sheets.placing import Span

SHOWN = 2
"""How many of the nearest things in front are written."""


@dataclass(frozen=True)
class Facing:
    """The face of a thing: the direction it looks in, whether towards lower numbers, and where it is."""

    direction: Direction
    backwards: bool
    at: Figure

    @property
    def beside(self) -> Direction:
        """The direction along the face."""
        return "across" if self.direction == "along" else "along"

    def gap(self, other: Box) -> float:
        """Distance from the face to something in front of it, metres; negative where that reaches past it."""
        span = other.span(self.direction)
        return exact(self.at - span.high if self.backwards else span.low - self.at)

    def write(self, sheet: Worksheet, id: str, name: str, other: Box) -> Figure:
        """Write the distance."""
        span = other.span(self.direction)
        near, far = (span.high, self.at) if self.backwards else (self.at, span.low)
        return sheet.work(id, name, eq.gap, near=near, far=far)


def facing(box: Box) -> Facing | None:
    """Return where a thing faces: away from its wall; None on the centre line, where it may face both."""
    return {
        "curb": Facing("across", True, box.across.low),
        "street": Facing("across", False, box.across.high),
        "front": Facing("along", False, box.along.high),
        "rear": Facing("along", True, box.along.low),
    }.get(box.side)


def leaf_side(space: Space, wall: str) -> tuple[Facing, Direction]:
    """Return the inside face of a wall as something that faces the room, and the direction along it."""
    edge = space.edges[wall]
    sides: dict[str, tuple[Facing, Direction]] = {
        "front": (Facing("along", False, edge.along.high), "across"),
        "rear": (Facing("along", True, edge.along.low), "across"),
        "curb": (Facing("across", True, edge.across.low), "along"),
        "street": (Facing("across", False, edge.across.high), "along"),
    }
    return sides[wall]


def in_front(space: Space, box: Box, face: Facing, heights: Span) -> list[Box]:
    """Return what is in front of a thing at these heights, the nearest first, the wall opposite among it."""
    level = [other for other in space.inside() if other is not box and meet(other.solid, heights)]
    return _ahead(space, box, face, level)


def across_the_floor(space: Space, box: Box, face: Facing) -> list[Box]:
    """Return what ends the floor in front of a thing, the nearest first, the wall opposite among it."""
    return _ahead(space, box, face, [other for other in standing(space) if other.side != box.side])


def _ahead(space: Space, box: Box, face: Facing, others: list[Box]) -> list[Box]:
    ends = {"along": ("front", "rear"), "across": ("street", "curb")}
    opposite = space.edges[ends[face.direction][0 if face.backwards else 1]]
    found = [other for other in others if meet(box.span(face.beside), other.span(face.beside))]
    return sorted([*(other for other in found if _beyond(face, box, other)), opposite], key=face.gap)


def row_face(space: Space, box: Box, face: Facing) -> Facing:
    """Return where the floor begins in front of a thing: at its own face, or one of its row further out."""
    row = [other for other in standing(space) if other.side == box.side]
    row = [other for other in row if meet(box.span(face.beside), other.span(face.beside))]
    edges = [edge.at for other in row if (edge := facing(other)) is not None]
    at = (min if face.backwards else max)([face.at, *edges], key=float)
    return Facing(face.direction, face.backwards, at)


def standing(space: Space) -> list[Box]:
    """Return everything inside that reaches below head height."""
    return [box for box in space.inside() if exact(box.up.low) < exact(space.known("head_zone"))]


def clear_ahead(space: Space, sheet: Worksheet, box: Box, face: Facing) -> Figure:
    """Write the distance from a thing's face to the nearest thing at its height in front of it."""
    nearest = in_front(space, box, face, box.up)[:SHOWN]
    return nearest_of(sheet, "clear", f"{box.name}: clear in front", nearest, face)


def floor_ahead(space: Space, sheet: Worksheet, box: Box, face: Facing) -> Figure:
    """Write the clear floor in front of a thing, from the face of its row to what stands opposite."""
    row = row_face(space, box, face)
    nearest = across_the_floor(space, box, row)[:SHOWN]
    return nearest_of(sheet, "floor", f"{box.name}: floor in front", nearest, row)


def nearest_of(sheet: Worksheet, id: str, name: str, others: Iterable[Box], face: Facing) -> Figure:
    """Write the smallest of the distances from a face to several things."""
    cases = {}
    for other in others:
        cases[other.name] = face.write(sheet, f"{id}_{other.key}", f"{name}, to the {other.name}", other)
    return sheet.smallest(id, name, cases)


def _beyond(face: Facing, box: Box, other: Box) -> bool:
    """Whether the other thing is on the far side: what stands in a row with it is not in front of it."""
    mine, its = box.span(face.direction), other.span(face.direction)
    return exact(mine.low - its.middle if face.backwards else its.middle - mine.high) > 0
