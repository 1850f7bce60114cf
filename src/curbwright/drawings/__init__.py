"""The drawing room: views in metres, put on paper at a standard scale, written as SVG or DXF.

A drawing is a ``View`` of primitives; a ``Page`` names the views of one sheet; ``sheet_set`` composes the
sheets; ``backends.svg`` and ``backends.dxf`` write them; ``overlaps``, ``struck`` and ``too_small`` are what
a draughtsman would send back.
"""

from curbwright.drawings.boxes import Box
from curbwright.drawings.checking import overlaps, struck, too_small
from curbwright.drawings.dimensions import chain
from curbwright.drawings.paper import paper
from curbwright.drawings.primitives import (
    Arc,
    Chain,
    Circle,
    Dimension,
    Hatch,
    Label,
    Leader,
    Line,
    Marker,
    Polyline,
    Text,
    View,
    rectangle,
)
from curbwright.drawings.sheet import Page, Sheet, sheet_set

__all__ = [
    "Arc",
    "Box",
    "Chain",
    "Circle",
    "Dimension",
    "Hatch",
    "Label",
    "Leader",
    "Line",
    "Marker",
    "Page",
    "Polyline",
    "Sheet",
    "Text",
    "View",
    "chain",
    "overlaps",
    "paper",
    "rectangle",
    "sheet_set",
    "struck",
    "too_small",
]
