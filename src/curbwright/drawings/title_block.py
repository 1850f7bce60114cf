"""The furniture of a sheet: border, title block, bar scale and the titles of its views.

All of it is drawn in thousandths of a metre, which at full size are millimetres on paper.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from curbwright.drawings.boxes import Box, Point
from curbwright.drawings.lettering import (
    MINIMUM_HEIGHT,
    NOTE_HEIGHT,
    TITLE_HEIGHT,
    clean,
    shortened,
    width,
    wrapped,
)
from curbwright.drawings.paper import Paper, Scale
from curbwright.drawings.primitives import Align, Front, Level, Line, Polyline, Primitive, Text, rectangle
from curbwright.drawings.tables import rows

NOT_FROM_A_SCREEN = (
    "Print at full size. Not to be scaled from a screen or a copy: "
    "written dimensions govern; check the bar scale with a rule."
)
ROW, FOOT = 11.0, 8.0  # mm: a row of cells, and the strip below with the note and the bar scale
_CELLS = (("SCALE", 32.0), ("DATE", 25.0), ("REVISION", 20.0), ("DRAWN BY", 34.0), ("SHEET", 22.0))


@dataclass(frozen=True)
class TitleBlock:
    """What the title block says; nothing in it is looked up from a clock."""

    cart: str
    title: str
    date: str
    revision: str
    number: int
    count: int
    system: str = "us"


def mm(point: Point) -> Point:
    """Return a place given in millimetres of paper, in metres."""
    return point[0] / 1000, point[1] / 1000


def letter(
    at: Point, text: str, height: float, *, align: Align = "left", level: Level = "base", layer: str = "TITLE"
) -> Text:
    """Return lettering at a place in millimetres of paper."""
    return Text(mm(at), text, height, 0, align, level, layer=layer)


def rule(start: Point, end: Point, layer: str = "TITLE") -> Line:
    """Return a line between two places in millimetres of paper."""
    return Line(mm(start), mm(end), layer=layer)


def strip_height(paper: Paper) -> float:
    """Return how much of the frame the title block takes, in mm."""
    return (ROW if _wide(paper) else 2 * ROW) + FOOT


def _wide(paper: Paper) -> bool:
    return paper.frame.width >= sum(wide for _, wide in _CELLS) + 100


def furniture(paper: Paper, block: TitleBlock, scale: Scale | None, scale_text: str) -> list[Primitive]:
    """Return border, title block and bar scale; a sheet of diagrams only (no scale) has no bar."""
    frame = paper.frame
    foot, head = frame.bottom + FOOT, frame.bottom + strip_height(paper)
    done: list[Primitive] = [
        rectangle(Box(*mm((frame.left, frame.bottom)), *mm((frame.right, frame.top))), layer="BORDER"),
        rule((frame.left, foot), (frame.right, foot)),
        rule((frame.left, head), (frame.right, head), "BORDER"),
    ]
    done.extend(_cells(paper, block, scale_text))
    bar = _bar_scale(Box(frame.left, frame.bottom, frame.right - 3, frame.bottom + FOOT), scale, block.system)
    bar_width = 75.0 if bar else 0.0
    note = wrapped(NOT_FROM_A_SCREEN, MINIMUM_HEIGHT, frame.width - bar_width - 6)
    done.append(letter((frame.left + 2, frame.bottom + FOOT / 2), note, MINIMUM_HEIGHT, level="middle"))
    return [*done, *bar]


def _cells(paper: Paper, block: TitleBlock, scale_text: str) -> list[Primitive]:
    frame, bottom = paper.frame, paper.frame.bottom + FOOT
    values = (scale_text, block.date, block.revision, "", f"{block.number} of {block.count}")
    fixed = sum(wide for _, wide in _CELLS)
    names = (frame.width - fixed) / 2 if _wide(paper) else frame.width / 2
    stretch = 1.0 if _wide(paper) else frame.width / fixed
    small = [(caption, wide * stretch, value) for (caption, wide), value in zip(_CELLS, values, strict=True)]
    large = [("CART", names, block.cart), ("TITLE", names, block.title)]
    if _wide(paper):
        return _row_of_cells([*large, *small], frame.left, bottom)
    between = rule((frame.left, bottom + ROW), (frame.right, bottom + ROW))
    return [
        between,
        *_row_of_cells(large, frame.left, bottom + ROW),
        *_row_of_cells(small, frame.left, bottom),
    ]


def _row_of_cells(cells: Sequence[tuple[str, float, str]], left: float, bottom: float) -> list[Primitive]:
    done: list[Primitive] = []
    for order, (caption, wide, value) in enumerate(cells):
        if order:
            done.append(rule((left, bottom), (left, bottom + ROW)))
        done.append(letter((left + 1.5, bottom + ROW - 1.2), caption, MINIMUM_HEIGHT, level="top"))
        height = next((h for h in (4.0, 3.5, 3.0, 2.5) if width(value, h) <= wide - 3), MINIMUM_HEIGHT)
        height = min(height, 4.0 if caption in ("CART", "TITLE") else 2.5)
        if clean(value):
            done.append(letter((left + 1.5, bottom + 2.2), shortened(value, height, wide - 3), height))
        elif caption == "DRAWN BY":
            done.append(rule((left + 1.5, bottom + 2.2), (left + wide - 1.5, bottom + 2.2), "DIMENSION"))
        left += wide
    return done


def _bar_scale(strip: Box, scale: Scale | None, system: str) -> list[Primitive]:
    """Four divisions, every other one filled, at the right of the strip and under 56 mm long."""
    if scale is None:
        return []
    bars = [row for row in rows("bar_scales") if row["system"] == system]
    fitting = [row for row in bars if float(row["division_m"]) * scale.per_metre * 4 <= 56]
    bar = fitting[-1] if fitting else bars[0]
    division = float(bar["division_m"]) * scale.per_metre
    ticks = [strip.right - 6 - division * (4 - step) for step in range(5)]
    low, high = strip.bottom + 1.4, strip.bottom + 3.0
    done: list[Primitive] = []
    for order, (a, b) in enumerate(pairwise(ticks)):
        corners = (mm((a, low)), mm((b, low)), mm((b, high)), mm((a, high)))
        done.append(Polyline(corners, closed=True, filled=order % 2 == 0, layer="TITLE"))
    for step in (0, 1, 2, 4):
        text = f"{int(bar['number']) * step}" + (f" {bar['unit']}" if step == 4 else "")
        if step != 1 or width("0000", MINIMUM_HEIGHT) < division:
            done.append(letter((ticks[step], high + 0.9), text, MINIMUM_HEIGHT, align="centre"))
    return done


def caption_size(title: str, under: str, front: Front) -> tuple[float, float]:
    """Return the room a view's title takes, in mm."""
    wide = max(width(title, TITLE_HEIGHT), width(under, NOTE_HEIGHT))
    return wide + (30.0 if front else 0.0), 12.0


def caption(at: Point, title: str, under: str, front: Front) -> list[Primitive]:
    """Return a view's title, underlined, with scale and the arrow to the front; ``at`` is its lower left."""
    x, y = at
    wide = max(width(title, TITLE_HEIGHT), width(under, NOTE_HEIGHT))
    done: list[Primitive] = [
        letter((x, y + 6.2), title, TITLE_HEIGHT),
        rule((x, y + 4.7), (x + wide, y + 4.7)),
        letter((x, y + 1.0), under, NOTE_HEIGHT),
    ]
    if front:
        done.extend(_front_arrow((x + wide + 5, y + 4.7), front))
    return done


def _front_arrow(at: Point, front: Front) -> list[Primitive]:
    """Return the arrow that says where the front of the cart lies, and the word beside it."""
    x, y = at
    dx, dy = {"left": (-1, 0), "right": (1, 0), "up": (0, 1), "down": (0, -1)}[front]
    middle = (x + 5, y)
    tail = (middle[0] - dx * 4.5, middle[1] - dy * 4.5)
    tip = (middle[0] + dx * 4.5, middle[1] + dy * 4.5)
    neck = (tip[0] - dx * 3, tip[1] - dy * 3)
    head = (tip, (neck[0] - dy * 1.2, neck[1] + dx * 1.2), (neck[0] + dy * 1.2, neck[1] - dx * 1.2))
    return [
        rule(tail, neck),
        Polyline(tuple(mm(point) for point in head), closed=True, filled=True, layer="TITLE"),
        letter((x + 11.5, y), "FRONT", NOTE_HEIGHT, level="middle"),
    ]
