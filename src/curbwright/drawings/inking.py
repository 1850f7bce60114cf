"""Primitives put to paper at a scale: every backend and every check of a sheet sees the same ink."""

from __future__ import annotations

from curbwright.drawings import dimensions, hatching, symbols
from curbwright.drawings.boxes import Box, Point
from curbwright.drawings.ink import Bow, Ink, Projection, Stroke, Word
from curbwright.drawings.lettering import LINE_PITCH, baseline_offset, lines_of, width
from curbwright.drawings.primitives import (
    Arc,
    Circle,
    Dimension,
    Hatch,
    Leader,
    Line,
    Marker,
    Polyline,
    Primitive,
    Text,
    View,
)

CLEAR = 0.7  # mm kept free of hatching around lettering
DOT = 0.5  # mm, radius of the dot at the tip of a leader


def inked(view: View, projection: Projection) -> list[Ink]:
    """Return the ink of a view whose chains and labels have been laid out."""
    ink: list[Ink] = []
    for primitive in view.primitives:
        if not isinstance(primitive, Hatch):
            ink.extend(of_primitive(primitive, projection))
    holes = [mark.box.grown(CLEAR) for mark in ink if isinstance(mark, Word)]
    for primitive in view.primitives:
        if isinstance(primitive, Hatch):
            ink.extend(of_hatch(primitive, projection, holes))
    return ink


def of_primitive(primitive: Primitive, projection: Projection) -> list[Ink]:
    """Return the ink of one primitive other than a hatch; requests not yet laid out give none."""
    layer, item = primitive.layer, primitive.item
    match primitive:
        case Line(start=start, end=end):
            return [Stroke(((projection.paper(start), projection.paper(end)),), layer, item)]
        case Polyline(points=points, closed=closed, filled=filled):
            return [Stroke((_papered(points, projection),), layer, item, closed or filled, filled)]
        case Circle(centre=centre, radius=radius):
            return [Bow(projection.paper(centre), radius * projection.per_metre, layer, item)]
        case Arc(centre=centre, radius=radius, start=start_angle, end=end_angle):
            rim = radius * projection.per_metre
            return [Bow(projection.paper(centre), rim, layer, item, start_angle, end_angle)]
        case Text():
            return list(words(primitive, projection.paper(primitive.anchor)))
        case Dimension():
            return dimensions.drawn(primitive, projection)
        case Leader(points=points, dot=dot):
            path = _papered(points, projection)
            tip = [Bow(path[0], DOT, layer, item, filled=True)] if dot else []
            return [Stroke((path,), layer, item), *tip]
        case Marker():
            return _marker(primitive, projection)
    return []


def of_hatch(hatch: Hatch, projection: Projection, holes: list[Box]) -> list[Ink]:
    """Return the strokes of a hatch, broken around the holes (mm on paper)."""
    boundary = _papered(hatch.boundary, projection)
    found = hatching.strokes(boundary, hatch.pattern, hatch.spacing, holes)
    return [Stroke(tuple(found), hatch.layer, hatch.item)] if found else []


def words(text: Text, at: Point) -> list[Word]:
    """Return the lines of a text whose anchor falls at a place on paper."""
    lines = lines_of(text.text)
    share = {"left": 0.0, "centre": 0.5, "right": 1.0}[text.align]
    first = baseline_offset(text.height, len(lines), text.level)
    done = []
    for index, line in enumerate(lines):
        along = -share * width(line, text.height)
        up = first - index * LINE_PITCH * text.height
        shift = (-up, along) if text.rotation == 90 else (along, up)
        if line:
            place = (at[0] + shift[0], at[1] + shift[1])
            done.append(Word(place, line, text.height, text.rotation, text.layer, text.item))
    return done


def _papered(points: tuple[Point, ...], projection: Projection) -> tuple[Point, ...]:
    return tuple(projection.paper(point) for point in points)


def _marker(marker: Marker, projection: Projection) -> list[Ink]:
    x, y = projection.paper(marker.at)
    ink: list[Ink] = []
    for part in symbols.SYMBOLS[marker.kind]:
        match symbols.turned(part, marker.rotation):
            case symbols.Ring(radius=radius, filled=filled):
                ink.append(Bow((x, y), radius * marker.size, marker.layer, marker.item, filled=filled))
            case symbols.Path(points=points, closed=closed, filled=filled):
                path = tuple((x + u * marker.size, y + v * marker.size) for u, v in points)
                ink.append(Stroke((path,), marker.layer, marker.item, closed, filled))
    return ink
