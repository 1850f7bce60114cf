"""Facing: where the front of a thing is, and what stands in front of it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from curbwright.equations import fit as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.fit.boxes import Box, Direction, meet
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

    def gap(self, other: Box) -> float:
        """Distance from the face to something in front of it, metres; negative where that reaches past it."""
        span = other.span(self.direction)
        return float(self.at) - float(span.high) if self.backwards else float(span.low) - float(self.at)

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


def in_front(space: Space, box: Box, face: Facing, heights: Span | None = None) -> list[Box]:
    """Return what is in front of a thing, the nearest first; the wall opposite is always among it.

    ``heights`` limits it to what stands at those heights; without it all counts that is lower than a head.
    """
    beside: Direction = "across" if face.direction == "along" else "along"
    ends = {"along": ("front", "rear"), "across": ("street", "curb")}
    opposite = space.edges[ends[face.direction][0 if face.backwards else 1]]
    level = standing(space) if heights is None else [one for one in space.inside() if meet(one.up, heights)]
    found = [other for other in level if other is not box and meet(box.span(beside), other.span(beside))]
    found = [other for other in found if _beyond(face, box, other)]
    return sorted([*found, opposite], key=face.gap)


def standing(space: Space) -> list[Box]:
    """Return everything inside that reaches below head height."""
    return [box for box in space.inside() if float(box.up.low) < float(space.known("head_zone"))]


def clear_ahead(
    space: Space, sheet: Worksheet, box: Box, face: Facing, heights: Span | None = None, id: str = "clear"
) -> Figure:
    """Write the distance from a thing's face to the nearest thing in front of it, naming which."""
    nearest = in_front(space, box, face, heights)[:SHOWN]
    return nearest_of(sheet, id, f"{box.name}: clear in front", nearest, face)


def nearest_of(sheet: Worksheet, id: str, name: str, others: Iterable[Box], face: Facing) -> Figure:
    """Write the smallest of the distances from a face to several things."""
    cases = {}
    for other in others:
        cases[other.name] = face.write(sheet, f"{id}_{other.key}", f"{name}, to the {other.name}", other)
    return sheet.smallest(id, name, cases)


def _beyond(face: Facing, box: Box, other: Box) -> bool:
    """Whether the other thing is on the far side: what stands in a row with it is not in front of it."""
    mine, its = box.span(face.direction), other.span(face.direction)
    return float(its.middle) < float(mine.low) if face.backwards else float(its.middle) > float(mine.high)
