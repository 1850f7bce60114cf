"""Hatching worked out as separate strokes: parallel lines cut by a polygon, broken around lettering."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, cos, floor, pi, sin

from curbwright.drawings.boxes import Box, Point, span_inside

Stroke = tuple[Point, Point]
DOT = 0.35  # mm, the length of a dot
# Directions of the lines of each pattern, in degrees from the x axis.
ANGLES: dict[str, tuple[float, ...]] = {"diagonal": (45.0,), "cross": (45.0, 135.0), "dots": (), "none": ()}


def strokes(
    boundary: Sequence[Point], pattern: str, spacing: float, holes: Sequence[Box] = ()
) -> list[Stroke]:
    """Return the strokes of a hatch, in mm; a dot is a very short stroke.

    Lines lie on one grid for the whole sheet, so neighbouring hatches meet.

    >>> found = strokes([(0, 0), (2, 0), (2, 1), (0, 1)], "diagonal", 1.0)
    >>> [(round(start[0], 3), round(end[0], 3)) for start, end in found]
    [(1.414, 2.0), (0.0, 1.0)]
    """
    if pattern == "dots":
        return _dots(boundary, spacing, holes)
    found: list[Stroke] = []
    for angle in ANGLES[pattern]:
        for line in _lines(boundary, angle, spacing):
            found.extend(_broken(line, holes))
    return found


def _lines(boundary: Sequence[Point], angle: float, spacing: float) -> list[Stroke]:
    c, s = cos(angle * pi / 180), sin(angle * pi / 180)
    turned = [(x * c + y * s, y * c - x * s) for x, y in boundary]
    low, high = min(v for _, v in turned), max(v for _, v in turned)
    found: list[Stroke] = []
    for row in range(ceil(low / spacing), floor(high / spacing) + 1):
        v = row * spacing
        crossings = _crossings(turned, v)
        for first, second in zip(crossings[::2], crossings[1::2], strict=False):
            if second - first > spacing * 0.05:
                found.append(
                    ((first * c - v * s, first * s + v * c), (second * c - v * s, second * s + v * c))
                )
    return found


def _crossings(polygon: Sequence[Point], v: float) -> list[float]:
    """Where a level line crosses the polygon; a corner counts once, by taking half-open edges."""
    found = []
    for (u1, v1), (u2, v2) in zip(polygon, [*polygon[1:], polygon[0]], strict=True):
        if (v1 <= v) != (v2 <= v):
            found.append(u1 + (v - v1) * (u2 - u1) / (v2 - v1))
    return sorted(found)


def _dots(boundary: Sequence[Point], spacing: float, holes: Sequence[Box]) -> list[Stroke]:
    low, high = min(y for _, y in boundary), max(y for _, y in boundary)
    found: list[Stroke] = []
    for row in range(ceil(low / spacing), floor(high / spacing) + 1):
        y, shift = row * spacing, spacing / 2 * (row % 2)
        crossings = _crossings(boundary, y)
        for first, second in zip(crossings[::2], crossings[1::2], strict=False):
            for column in range(ceil((first - shift) / spacing), floor((second - shift) / spacing) + 1):
                x = column * spacing + shift
                if not any(hole.covers((x, y)) for hole in holes):
                    found.append(((x - DOT / 2, y), (x + DOT / 2, y)))
    return found


def _broken(line: Stroke, holes: Sequence[Box]) -> list[Stroke]:
    """Return what is left of a line outside every hole."""
    (x1, y1), (x2, y2) = line
    cuts = sorted(cut for hole in holes if (cut := span_inside(hole, *line)))
    left, done = [], 0.0
    for enter, leave in cuts:
        if enter > done:
            left.append((done, enter))
        done = max(done, leave)
    if done < 1:
        left.append((done, 1.0))
    return [
        ((x1 + (x2 - x1) * a, y1 + (y2 - y1) * a), (x1 + (x2 - x1) * b, y1 + (y2 - y1) * b)) for a, b in left
    ]
