"""A view laid out at one scale: its chains become dimensions, its labels text and leaders."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from curbwright.drawings import placing
from curbwright.drawings.boxes import Box, Point, around, union
from curbwright.drawings.dimension_rows import spread
from curbwright.drawings.ink import Ink, Projection, Word
from curbwright.drawings.inking import inked
from curbwright.drawings.primitives import (
    Arc,
    Chain,
    Circle,
    Hatch,
    Label,
    Leader,
    Line,
    Marker,
    Polyline,
    Primitive,
    Text,
    View,
)

AFIELD = 22.0  # mm that labels may stand outside the rest of the view
EMPTY = Box(0.0, 0.0, 0.0, 0.0)


@dataclass(frozen=True)
class LaidOut:
    """A view with nothing left to decide.

    ``extents`` is the room it takes on paper, in mm from its own origin; ``numbered`` pairs each label that
    had to use its short form with its whole name; ``unplaced`` names the labels no place was found for. The
    sheet must print both.
    """

    view: View
    projection: Projection
    extents: Box
    numbered: tuple[tuple[str, str], ...] = ()
    unplaced: tuple[str, ...] = ()


def lay_out(view: View, per_metre: float, *, labelled: bool = True) -> LaidOut:
    """Return the view laid out at so many millimetres of paper to the metre.

    Without its labels it is laid out far sooner, which is enough to see that a scale is too large.
    """
    projection = Projection(per_metre)
    fixed = replace(view, primitives=_with_dimensions(view.primitives, per_metre))
    ink = inked(fixed, projection)
    wanted = [primitive for primitive in view.primitives if isinstance(primitive, Label)]
    if not (wanted and labelled):
        return LaidOut(fixed, projection, _room(ink))
    chosen = _places(wanted, ink, view, projection)
    lettered = [
        primitive
        for label, choice in zip(wanted, chosen, strict=True)
        if choice is not None
        for primitive in _drawn(label, choice, projection)
    ]
    done = replace(fixed, primitives=(*fixed.primitives, *lettered))
    pairs = list(zip(wanted, chosen, strict=True))
    return LaidOut(
        done,
        projection,
        _room(inked(done, projection)),
        tuple(
            (label.short, _plain(label)) for label, choice in pairs if choice and choice.text == label.short
        ),
        tuple(_plain(label) for label, choice in pairs if choice is None),
    )


def _room(ink: Sequence[Ink]) -> Box:
    return union(mark.box for mark in ink) if ink else EMPTY


def _plain(label: Label) -> str:
    return label.text.replace("\n", " ")


def _with_dimensions(primitives: Sequence[Primitive], per_metre: float) -> tuple[Primitive, ...]:
    """Return the primitives with chains spread into dimensions, and labels left out."""
    done: list[Primitive] = []
    for primitive in primitives:
        if isinstance(primitive, Chain):
            done.extend(spread(primitive, per_metre))
        elif not isinstance(primitive, Label):
            done.append(primitive)
    return tuple(done)


def _places(
    wanted: Sequence[Label], ink: Sequence[Ink], view: View, projection: Projection
) -> list[placing.Candidate | None]:
    markers = {
        primitive.at: _marker_box(primitive, projection)
        for primitive in view.primitives
        if isinstance(primitive, Marker)
    }
    drawn = [mark for mark in ink if not isinstance(mark, Word) and mark.layer != "HATCH"]
    home = union([*(mark.box for mark in ink), *(_label_box(label, projection) for label in wanted)])
    outlines = [_label_box(label, projection) for label in wanted if label.inside is not None]
    return placing.place(
        [_choices(label, projection, markers.get(label.at), outlines) for label in wanted],
        obstacles=[*(mark.box for mark in ink if isinstance(mark, Word)), *markers.values()],
        strokes=[segment for mark in drawn for segment in mark.segments],
        home=home,
        bounds=home.grown(AFIELD),
    )


def _choices(
    label: Label, projection: Projection, marker: Box | None, outlines: Sequence[Box]
) -> list[placing.Candidate]:
    return placing.candidates(
        label.text,
        label.height,
        projection.paper(label.at),
        inside=_label_box(label, projection) if label.inside is not None else None,
        short=label.short,
        symbol=marker,
        others=outlines,
    )


def _drawn(label: Label, choice: placing.Candidate, projection: Projection) -> list[Primitive]:
    upright = choice.rotation == 90
    # The block is centred by its whole box, so its anchor is the middle of its foot.
    x, y = choice.box.centre
    foot = projection.metres((choice.box.right, y) if upright else (x, choice.box.bottom))
    turn: Literal[0, 90] = 90 if upright else 0
    done: list[Primitive] = [
        Text(foot, choice.text, label.height, turn, "centre", "bottom", layer=label.layer, item=label.item)
    ]
    if choice.leader is not None:
        points = tuple(projection.metres(point) for point in choice.leader)
        tip = choice.leader[0] == projection.paper(label.at)
        done.append(Leader(points, dot=tip, item=label.item))
    return done


def _label_box(label: Label, projection: Projection) -> Box:
    corners: Sequence[Point] = label.inside.corners if label.inside is not None else [label.at]
    return around(projection.paper(corner) for corner in corners)


def _marker_box(marker: Marker, projection: Projection) -> Box:
    x, y = projection.paper(marker.at)
    return Box(x, y, x, y).grown(marker.size / 2)


def extents(view: View) -> Box:
    """Return the room a view's work takes in metres, lettering and dimension rows left out."""
    points: list[Point] = []
    for primitive in view.primitives:
        points.extend(_points(primitive))
    return around(points) if points else EMPTY


def _points(primitive: Primitive) -> Sequence[Point]:
    match primitive:
        case Line(start=start, end=end):
            return start, end
        case Polyline(points=points) | Leader(points=points) | Hatch(boundary=points):
            return points
        case Circle(centre=(x, y), radius=r) | Arc(centre=(x, y), radius=r):
            return Box(x, y, x, y).grown(r).corners
        case Text(anchor=point) | Label(at=point) | Marker(at=point):
            return (point,)
    return ()
