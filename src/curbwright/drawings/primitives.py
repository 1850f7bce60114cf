"""What a drawing is made of, before any paper or file format: places in metres, x right and y up.

A place is in real-world metres; a height of lettering, an offset of a dimension and the size of a marker are
in millimetres on paper, because they must stay readable at every scale. ``Chain`` and ``Label`` are requests:
``layout.lay_out`` turns them into dimensions, text and leaders once the scale is known.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from curbwright.drawings.boxes import Box, Point
from curbwright.drawings.layers import layer
from curbwright.drawings.lettering import MINIMUM_HEIGHT, NOTE_HEIGHT

Align = Literal["left", "centre", "right"]
Level = Literal["base", "top", "middle", "bottom"]
Side = Literal["above", "below", "left", "right"]
Pattern = Literal["diagonal", "cross", "dots", "none"]
MarkerKind = Literal[
    "axle",
    "centre_of_gravity",
    "ball",
    "jack",
    "valve",
    "regulator",
    "outlet",
    "light",
    "drain",
    "fan",
    "point",
]
Front = Literal["", "left", "right", "up", "down"]


@dataclass(frozen=True, kw_only=True)
class Primitive:
    """What every primitive carries: its layer, and the build-file name of the item it shows, if any."""

    layer: str = "OUTLINE"
    item: str = ""

    def __post_init__(self) -> None:
        layer(self.layer)


@dataclass(frozen=True)
class Line(Primitive):
    """A straight line."""

    start: Point
    end: Point


@dataclass(frozen=True)
class Polyline(Primitive):
    """Straight lines from point to point, back to the first if closed."""

    points: tuple[Point, ...]
    closed: bool = False
    filled: bool = False


@dataclass(frozen=True)
class Circle(Primitive):
    """A circle; radius in metres."""

    centre: Point
    radius: float


@dataclass(frozen=True)
class Arc(Primitive):
    """Part of a circle, counter-clockwise from start to end; degrees from the x axis."""

    centre: Point
    radius: float
    start: float
    end: float


@dataclass(frozen=True)
class Text(Primitive):
    """Lettering, one or more lines; ``height`` of its capitals in mm on paper, never under 2.

    ``align`` and ``level`` say what part of the text stands at the anchor; rotated text (90) reads
    from the right, and its align and level turn with it.
    """

    anchor: Point
    text: str
    height: float = NOTE_HEIGHT
    rotation: Literal[0, 90] = 0
    align: Align = "left"
    level: Level = "base"
    layer: str = field(default="TEXT", kw_only=True)

    def __post_init__(self) -> None:
        super().__post_init__()
        _readable(self.height, self.text)


@dataclass(frozen=True)
class Dimension(Primitive):
    """A linear dimension: the distance between two points, across (rotation 0) or up (90).

    The dimension line stands ``offset`` mm on paper above (right of, if rotated) the coordinate ``base``.
    ``moved`` takes the label out of its place over the middle of the line, in mm on paper, and gives it
    a leader; ``turned`` sets it square to the line. ``start`` and ``end`` are where the extension lines
    spring from, less a gap in mm; the one at the start is left to the neighbour before unless ``first``.
    """

    start: Point
    end: Point
    base: float
    offset: float
    label: str
    rotation: Literal[0, 90] = 0
    moved: Point | None = None
    turned: bool = False
    first: bool = True
    start_gap: float = 1.5
    end_gap: float = 1.5
    height: float = NOTE_HEIGHT
    layer: str = field(default="DIMENSION", kw_only=True)

    def __post_init__(self) -> None:
        super().__post_init__()
        _readable(self.height, self.label)


@dataclass(frozen=True)
class Run:
    """One row of a chain: places along it in metres, ascending, and a label for each gap between."""

    places: tuple[float, ...]
    labels: tuple[str, ...]


@dataclass(frozen=True)
class Chain(Primitive):
    """Rows of dimensions stacked outward from the coordinate ``base``; see ``dimensions.chain``."""

    side: Side
    base: float
    runs: tuple[Run, ...]
    height: float = NOTE_HEIGHT
    layer: str = field(default="DIMENSION", kw_only=True)


@dataclass(frozen=True)
class Hatch(Primitive):
    """A pattern inside a polygon; ``spacing`` in mm on paper."""

    boundary: tuple[Point, ...]
    pattern: Pattern = "diagonal"
    spacing: float = 2.0
    layer: str = field(default="HATCH", kw_only=True)


@dataclass(frozen=True)
class Leader(Primitive):
    """A thin line from a label to what it names; the first point is the tip, with a dot or at a rim."""

    points: tuple[Point, ...]
    dot: bool = True
    layer: str = field(default="LEADER", kw_only=True)


@dataclass(frozen=True)
class Marker(Primitive):
    """A symbol at a place, ``size`` mm across on paper, turned by ``rotation`` degrees."""

    kind: MarkerKind
    at: Point
    size: float = 6.0
    rotation: float = 0.0
    layer: str = field(default="BALANCE", kw_only=True)


@dataclass(frozen=True)
class Label(Primitive):
    """A name wanted near a place: inside ``inside`` (metres) if it fits, else near by with a leader.

    ``short`` (an item number, say) is used where the whole name finds no room.
    """

    text: str
    at: Point
    inside: Box | None = None
    short: str = ""
    height: float = NOTE_HEIGHT
    layer: str = field(default="TEXT", kw_only=True)

    def __post_init__(self) -> None:
        super().__post_init__()
        _readable(self.height, self.text)


@dataclass(frozen=True)
class View:
    """A titled drawing: plan, elevation, diagram.

    ``front`` says toward which side of the paper the front of the cart lies, for the arrow beside the title.
    A diagram (``to_scale=False``) is drawn in thousandths: 0.001 is one millimetre on paper.
    """

    title: str
    primitives: tuple[Primitive, ...]
    front: Front = ""
    to_scale: bool = True


def rectangle(box: Box, *, layer: str = "OUTLINE", item: str = "") -> Polyline:
    """Return the outline of a box."""
    return Polyline(box.corners, closed=True, layer=layer, item=item)


def _readable(height: float, text: str) -> None:
    """Refuse lettering too small to read: a mistake of the drawing's author."""
    if not height >= MINIMUM_HEIGHT:
        raise ValueError(f"{text!r} is lettered {height} mm high; the least is {MINIMUM_HEIGHT} mm on paper")
