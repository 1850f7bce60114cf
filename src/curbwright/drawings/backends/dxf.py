"""Sheets as one DXF: the work at full size in model space, a paper layout with border and viewports a sheet.

Units are inches for a cart measured in feet and inches, millimetres otherwise. The library is imported late.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from io import StringIO
from pathlib import Path
from threading import Lock
from typing import TYPE_CHECKING, Any

from curbwright.drawings.backends import dxf_tables
from curbwright.drawings.boxes import Box, Point, union
from curbwright.drawings.dimensions import OVERSHOOT, label_place
from curbwright.drawings.hatching import ANGLES, DOT
from curbwright.drawings.ink import Bow, Projection, Stroke, Word
from curbwright.drawings.inking import CLEAR, inked, of_primitive
from curbwright.drawings.lettering import TITLE_HEIGHT
from curbwright.drawings.primitives import (
    Arc,
    Circle,
    Dimension,
    Hatch,
    Line,
    Polyline,
    Primitive,
)
from curbwright.drawings.sheet import Placed, Sheet

if TYPE_CHECKING:
    from ezdxf.document import Drawing

BETWEEN_VIEWS = 1.0  # m of empty model space between one view and the next
_WRITING = Lock()


@dataclass(frozen=True)
class Desk:
    """Where a view is being drawn: the layout, and how metres and paper millimetres become its units.

    ``projection`` takes metres to drawing units; ``per_mm`` is drawing units for a millimetre on paper,
    ``ratio`` how much smaller the paper shows them.
    """

    layout: Any
    projection: Projection
    per_mm: float
    ratio: float = 1.0
    dimension_style: str = "Standard"

    def from_paper(self, point: Point) -> Point:
        """Return in drawing units what ``paper`` gave in millimetres."""
        return self.projection.paper(self.paper.metres(point))

    @property
    def paper(self) -> Projection:
        """Metres to millimetres at the scale of the sheet, about the view's own origin."""
        return Projection(self.projection.per_metre / self.per_mm)


def write(sheets: Sequence[Sheet]) -> str:
    """Return one or more sheets as the text of a DXF file, the same bytes for the same sheets."""
    from ezdxf.filemanagement import new

    with _fixed_metadata():
        document = new("R2010", setup=False)
        unit = dxf_tables.UNITS[sheets[0].block.system]
        dxf_tables.prepare(document, unit)
        left = 0.0
        for sheet in sheets:
            layout = _sheet_layout(document, sheet, unit)
            for placed in sheet.placed:
                left = _placed(document, layout, placed, unit, left, _magnified(sheet, placed))
        document.layouts.delete("Layout1")
        document.set_modelspace_vport(height=left / 2 or 1.0, center=(left / 2, 0.0))
        dxf_tables.settle(document)
        text = StringIO()
        document.write(text)
    return text.getvalue()


def save(sheets: Sequence[Sheet], path: Path) -> None:
    """Write one or more sheets as a DXF file."""
    path.write_text(write(sheets), encoding="utf-8", newline="\n")


def _magnified(sheet: Sheet, placed: Placed) -> float:
    """How many times its own size a view is drawn in model space: 1, but a diagram as large as the rest."""
    ratios = [1000 / other.projection.per_metre for other in sheet.placed if other.view.to_scale]
    return 1.0 if placed.view.to_scale else (ratios or [24.0])[0]


@contextmanager
def _fixed_metadata() -> Iterator[None]:
    """Keep the clock and random identifiers out of the file; the switch is shared, hence the lock."""
    from ezdxf._options import options

    with _WRITING:
        before = options.write_fixed_meta_data_for_testing
        options.write_fixed_meta_data_for_testing = True
        try:
            yield
        finally:
            options.write_fixed_meta_data_for_testing = before


def _sheet_layout(document: Drawing, sheet: Sheet, unit: dxf_tables.Unit) -> Any:
    """Make the paper layout of a sheet and draw its border and title block on it."""
    name = f"Sheet {sheet.block.number}"
    layout = document.layouts.new(name)
    paper = sheet.paper
    per_mm = unit.per_mm
    layout.page_setup(
        size=(paper.width * per_mm, paper.height * per_mm),
        margins=(0, 0, 0, 0),
        units=unit.paper,
        scale=(1, 1),
    )
    desk = Desk(layout, Projection(unit.per_metre), per_mm)
    _draw(desk, sheet.furniture.primitives, [])
    return layout


def _placed(
    document: Drawing, layout: Any, placed: Placed, unit: dxf_tables.Unit, left: float, magnified: float
) -> float:
    """Draw a view in model space right of what is there, open a window on it, return the new left edge."""
    ratio = 1000 / placed.projection.per_metre * magnified
    per_mm = unit.per_mm
    ink = inked(placed.view, placed.projection)
    if not ink:
        return left
    seen = union(mark.box for mark in ink).grown(1.0)
    origin = (left - (seen.left - placed.projection.at[0]) * per_mm * ratio, 0.0)
    style = dxf_tables.dimension_style(document, ratio, unit)
    model = document.modelspace()
    desk = Desk(model, Projection(unit.per_metre * magnified, origin), per_mm * ratio, ratio, style)
    words = [mark.box for mark in ink if isinstance(mark, Word)]
    holes = [_scaled(box.grown(CLEAR), placed.projection, desk.projection) for box in words]
    _draw(desk, placed.view.primitives, holes)
    window = _scaled(seen, placed.projection, desk.projection)
    layout.add_viewport(
        center=(seen.centre[0] * per_mm, seen.centre[1] * per_mm),
        size=(seen.width * per_mm, seen.height * per_mm),
        view_center_point=window.centre,
        view_height=window.height,
        dxfattribs={"layer": dxf_tables.WINDOW_LAYER},
    )
    _model_title(desk, placed, window)
    return window.right + BETWEEN_VIEWS * unit.per_metre


def _model_title(desk: Desk, placed: Placed, window: Box) -> None:
    """Letter a view's title under it in model space, just outside the window the sheet looks through."""
    title = desk.layout.add_text(
        dxf_tables.plain(placed.view.title),
        height=TITLE_HEIGHT * desk.per_mm,
        dxfattribs={"layer": "TITLE", "style": dxf_tables.TEXT_STYLE},
    )
    title.set_placement((window.left, window.bottom - 3 * TITLE_HEIGHT * desk.per_mm))


def _scaled(box: Box, paper: Projection, drawing: Projection) -> Box:
    """Return a box on paper in the units of the drawing."""
    left, bottom = drawing.paper(paper.metres((box.left, box.bottom)))
    right, top = drawing.paper(paper.metres((box.right, box.top)))
    return Box(left, bottom, right, top)


def _draw(desk: Desk, primitives: Sequence[Primitive], holes: Sequence[Box]) -> None:
    """Draw everything of a view, hatches first so that they lie underneath."""
    for primitive in primitives:
        if isinstance(primitive, Hatch):
            _hatch(desk, primitive, holes)
    for primitive in primitives:
        if not isinstance(primitive, Hatch):
            _entity(desk, primitive)


def _entity(desk: Desk, primitive: Primitive) -> None:
    attributes = {"layer": primitive.layer, "ltscale": desk.per_mm}
    place = desk.projection.paper
    match primitive:
        case Line(start=start, end=end):
            desk.layout.add_line(place(start), place(end), dxfattribs=attributes)
        case Polyline(points=points, closed=closed, filled=filled):
            _path(desk, [place(point) for point in points], attributes, closed=closed, filled=filled)
        case Circle(centre=centre, radius=radius):
            desk.layout.add_circle(place(centre), radius * desk.projection.per_metre, dxfattribs=attributes)
        case Arc(centre=centre, radius=radius, start=start_angle, end=end_angle):
            desk.layout.add_arc(
                place(centre),
                radius * desk.projection.per_metre,
                start_angle,
                end_angle,
                dxfattribs=attributes,
            )
        case Dimension():
            _dimension(desk, primitive, attributes)
        case _:
            _as_drawn(desk, primitive, attributes)


def _as_drawn(desk: Desk, primitive: Primitive, attributes: dict[str, Any]) -> None:
    """Draw text, leaders and markers from their ink, whose sizes are those of the paper."""
    for mark in of_primitive(primitive, desk.paper):
        match mark:
            case Word(at=at, text=text, height=height, rotation=rotation):
                entity = desk.layout.add_text(
                    dxf_tables.plain(text), height=height * desk.per_mm, rotation=rotation,
                    dxfattribs={"layer": primitive.layer, "style": dxf_tables.TEXT_STYLE},
                )  # fmt: skip
                entity.set_placement(desk.from_paper(at))
            case Stroke(paths=paths, closed=closed, filled=filled):
                for path in paths:
                    _path(
                        desk,
                        [desk.from_paper(point) for point in path],
                        attributes,
                        closed=closed,
                        filled=filled,
                    )
            case Bow():
                _disc(desk, mark, desk.from_paper(mark.centre), attributes)


def _path(
    desk: Desk, points: Sequence[Point], attributes: dict[str, Any], *, closed: bool, filled: bool
) -> None:
    desk.layout.add_lwpolyline(points, close=closed or filled, dxfattribs=attributes)
    if filled:
        hatch = desk.layout.add_hatch(color=dxf_tables.BY_LAYER, dxfattribs={"layer": attributes["layer"]})
        hatch.paths.add_polyline_path(points, is_closed=True)


def _disc(desk: Desk, bow: Bow, centre: Point, attributes: dict[str, Any]) -> None:
    radius = bow.radius * desk.per_mm
    desk.layout.add_circle(centre, radius, dxfattribs=attributes)
    if bow.filled:
        hatch = desk.layout.add_hatch(color=dxf_tables.BY_LAYER, dxfattribs={"layer": attributes["layer"]})
        hatch.paths.add_edge_path().add_arc(centre, radius, 0, 360)


def _dimension(desk: Desk, dimension: Dimension, attributes: dict[str, Any]) -> None:
    """Add a real dimension whose text is the figure lettered on the sheet."""
    turn = dimension.rotation == 90
    place = desk.projection.paper
    line = place((dimension.base, dimension.base))[0 if turn else 1] + dimension.offset * desk.per_mm
    start, end = (
        _nearer(place(point), line, (gap - OVERSHOOT) * desk.per_mm, turn)
        for point, gap in ((dimension.start, dimension.start_gap), (dimension.end, dimension.end_gap))
    )
    override = desk.layout.add_linear_dim(
        base=(line, 0) if turn else (0, line), p1=start, p2=end, angle=dimension.rotation,
        text_rotation=(90 - dimension.rotation) if dimension.turned else None,
        text=dxf_tables.plain_dimension(dimension.label), dimstyle=desk.dimension_style,
        override=_override(dimension, desk),
        dxfattribs={"layer": dimension.layer},
    )  # fmt: skip
    middle, leader = label_place(dimension, desk.paper)
    # The label's place is always given, so that it never hangs on the fonts of the writing machine.
    override.set_location(desk.from_paper(middle))
    override.render()
    if leader:
        _path(desk, [desk.from_paper(point) for point in leader], attributes, closed=False, filled=False)


def _override(dimension: Dimension, desk: Desk) -> dict[str, Any]:
    """What this dimension does otherwise than its style."""
    return {"dimtxt": dimension.height * desk.per_mm / desk.ratio, "dimse1": 0 if dimension.first else 1}


def _nearer(point: Point, line: float, by: float, turn: bool) -> Point:
    """Move the point an extension line springs from toward the dimension line."""
    x, y = point
    if turn:
        return (x + by if line >= x else x - by), y
    return x, (y + by if line >= y else y - by)


def _hatch(desk: Desk, hatch: Hatch, holes: Sequence[Box]) -> None:
    if hatch.pattern == "none":
        return
    boundary = [desk.projection.paper(point) for point in hatch.boundary]
    spacing = hatch.spacing * desk.per_mm
    entity = desk.layout.add_hatch(color=dxf_tables.BY_LAYER, dxfattribs={"layer": hatch.layer})
    if hatch.pattern == "dots":
        lines = [[0.0, (0.0, 0.0), (spacing / 2, spacing), [DOT * desk.per_mm, DOT * desk.per_mm - spacing]]]
    else:
        lines = [
            [angle, (0.0, 0.0), dxf_tables.across(angle, spacing), []] for angle in ANGLES[hatch.pattern]
        ]
    entity.set_pattern_fill(f"OWN_{hatch.pattern.upper()}", definition=lines)
    entity.paths.add_polyline_path(boundary, is_closed=True, flags=1)
    inside = union([Box(x, y, x, y) for x, y in boundary])
    for hole in holes:
        if inside.holds(hole):
            entity.paths.add_polyline_path(hole.corners, is_closed=True, flags=16)
