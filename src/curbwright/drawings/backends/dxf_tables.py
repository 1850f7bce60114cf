"""What a DXF file says before anything is drawn: units, layers, linetypes, lettering, dimension styles."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, pi, sin
from typing import TYPE_CHECKING

from curbwright.drawings.dimensions import ABOVE_LINE, OVERSHOOT, TICK
from curbwright.drawings.layers import layers
from curbwright.drawings.lettering import NOTE_HEIGHT, clean

if TYPE_CHECKING:
    from ezdxf.document import Drawing

TEXT_STYLE = "LETTERING"
TEXT_FONT = (
    "arial.ttf"  # the sans-serif most readers of the format have; its widths are those we compute with
)
WINDOW_LAYER = "VIEWPORT"
BY_LAYER = 256


@dataclass(frozen=True)
class Unit:
    """The drawing unit: how many to the metre, its number in the format, and what the plotter calls it."""

    per_metre: float
    number: int
    paper: str
    metric: int

    @property
    def per_mm(self) -> float:
        """Drawing units in a millimetre."""
        return self.per_metre / 1000


UNITS = {"us": Unit(1 / 0.0254, 1, "inch", 0), "si": Unit(1000.0, 4, "mm", 1)}


def prepare(document: Drawing, unit: Unit) -> None:
    """Set the units and write the tables."""
    header = document.header
    header["$INSUNITS"] = unit.number
    header["$MEASUREMENT"] = unit.metric
    header["$LUNITS"] = 2
    header["$LTSCALE"] = 1.0  # dashes are given in mm; each entity carries its own scale
    header["$PSLTSCALE"] = 0
    header["$LWDISPLAY"] = 1
    document.styles.new(TEXT_STYLE, dxfattribs={"font": TEXT_FONT})
    for layer in layers().values():
        line = "CONTINUOUS"
        if layer.dash:
            line = layer.name
            _linetype(document, layer.name, layer.meaning, layer.dash)
        entry = document.layers.new(
            layer.name,
            dxfattribs={
                "color": layer.colour,
                "linetype": line,
                "lineweight": round(layer.pen * 100),
                "plot": int(layer.plot),
            },
        )
        entry.description = layer.meaning
    document.layers.new(WINDOW_LAYER, dxfattribs={"color": 9, "plot": 0})


def _linetype(document: Drawing, name: str, meaning: str, dash: tuple[float, ...]) -> None:
    """Dashes are positive, gaps negative, in mm on paper."""
    steps = [length if order % 2 == 0 else -length for order, length in enumerate(dash)]
    document.linetypes.add(name, [sum(dash), *steps], description=meaning)


def dimension_style(document: Drawing, ratio: float, unit: Unit) -> str:
    """Return the name of the dimension style for a scale, made the first time it is asked for."""
    name = f"SCALE_{ratio:g}".replace(".", "_")
    if name in document.dimstyles:
        return name
    mm = unit.per_mm
    document.dimstyles.new(
        name,
        dxfattribs={
            "dimscale": ratio,
            "dimtxsty": TEXT_STYLE,
            "dimtxt": NOTE_HEIGHT * mm,
            "dimgap": ABOVE_LINE * mm,
            "dimexo": OVERSHOOT * mm,
            "dimexe": OVERSHOOT * mm,
            "dimdle": OVERSHOOT * mm,
            "dimtsz": TICK / 2 * 0.7071 * mm,
            "dimasz": TICK / 2 * 0.7071 * mm,
            "dimtad": 1,  # label above the line
            "dimtih": 0,
            "dimtoh": 0,
            "dimtix": 1,
            "dimtofl": 1,
            "dimclrd": BY_LAYER,
            "dimclre": BY_LAYER,
            "dimclrt": BY_LAYER,
        },
    )
    return name


def settle(document: Drawing) -> None:
    """Put the list of object classes, which the library keeps in no fixed order, in order of name."""
    document.classes.add_required_classes(document.dxfversion)
    ordered = sorted(document.classes.classes.items())
    document.classes.classes.clear()
    document.classes.classes.update(ordered)


def across(angle: float, spacing: float) -> tuple[float, float]:
    """Return the step from one hatch line to the next."""
    turn = angle * pi / 180
    return -spacing * sin(turn), spacing * cos(turn)


def plain(text: str) -> str:
    """Return a line of text with the format's own codes made harmless.

    >>> plain("50%% off ^ 2")
    '50%%%%%% off ^  2'
    """
    return clean(text).replace("%%", "%%%" * 2).replace("^", "^ ")


def plain_dimension(text: str) -> str:
    """Return a dimension's figure with the codes of rich text made harmless."""
    escaped = clean(text)
    for mark in "\\{}":
        escaped = escaped.replace(mark, "\\" + mark)
    return escaped.replace("<>", "< >") or " "
