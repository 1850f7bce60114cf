"""What reaches the paper: strokes, rings, bows and words, all in millimetres from the sheet's lower left."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, pi, sin

from curbwright.drawings.boxes import Box, Point, around
from curbwright.drawings.lettering import line_box


@dataclass(frozen=True)
class Projection:
    """How metres become millimetres on paper: so many to the metre, from where the origin stands."""

    per_metre: float
    at: Point = (0.0, 0.0)

    def paper(self, point: Point) -> Point:
        """Return where a real-world point (m) falls on the paper (mm)."""
        return self.at[0] + point[0] * self.per_metre, self.at[1] + point[1] * self.per_metre

    def metres(self, point: Point) -> Point:
        """Return the real-world point (m) that falls at a place on the paper (mm)."""
        return (point[0] - self.at[0]) / self.per_metre, (point[1] - self.at[1]) / self.per_metre


@dataclass(frozen=True)
class Stroke:
    """One or more lines drawn with the pen of a layer; filled areas are closed."""

    paths: tuple[tuple[Point, ...], ...]
    layer: str
    item: str = ""
    closed: bool = False
    filled: bool = False

    @property
    def box(self) -> Box:
        """The room it takes."""
        return around(point for path in self.paths for point in path)

    @property
    def segments(self) -> list[tuple[Point, Point]]:
        """Its straight pieces."""
        pieces: list[tuple[Point, Point]] = []
        for path in self.paths:
            ring = (*path, path[0]) if self.closed else path
            pieces.extend(zip(ring, ring[1:], strict=False))
        return pieces


@dataclass(frozen=True)
class Bow:
    """A circle, or the part of it from start to end degrees counter-clockwise."""

    centre: Point
    radius: float
    layer: str
    item: str = ""
    start: float = 0.0
    end: float = 360.0
    filled: bool = False

    @property
    def whole(self) -> bool:
        """Whether it is a full circle."""
        return self.end - self.start >= 360

    def point(self, degrees: float) -> Point:
        """Return the point of the rim at an angle."""
        angle = degrees * pi / 180
        return self.centre[0] + self.radius * cos(angle), self.centre[1] + self.radius * sin(angle)

    @property
    def sweep(self) -> float:
        """Degrees from start to end, counter-clockwise."""
        return 360.0 if self.whole else (self.end - self.start) % 360

    @property
    def rim(self) -> tuple[Point, ...]:
        """Points along it, close enough together to judge collisions by."""
        steps = 24
        return tuple(self.point(self.start + self.sweep * step / steps) for step in range(steps + 1))

    @property
    def box(self) -> Box:
        """The room it takes."""
        return around(self.rim)

    @property
    def segments(self) -> list[tuple[Point, Point]]:
        """Straight pieces that follow it."""
        return list(zip(self.rim, self.rim[1:], strict=False))


@dataclass(frozen=True)
class Word:
    """One line of lettering; ``at`` is where its baseline starts, ``height`` that of its capitals."""

    at: Point
    text: str
    height: float
    rotation: int
    layer: str
    item: str = ""

    @property
    def box(self) -> Box:
        """The room it takes, tails included."""
        return line_box(self.at, self.text, self.height, self.rotation)


Ink = Stroke | Bow | Word
