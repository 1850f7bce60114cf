"""Notes and the key to the lines, set as text beside the views of a sheet."""

from __future__ import annotations

from collections.abc import Sequence

from curbwright.drawings.boxes import Point
from curbwright.drawings.layers import layer
from curbwright.drawings.lettering import LINE_PITCH, NOTE_HEIGHT, width, wrapped
from curbwright.drawings.primitives import Primitive
from curbwright.drawings.title_block import letter, rule

GUTTER = 6.0  # mm between columns of notes
INDENT = 6.0  # mm that a note stands in from its number
SAMPLE, KEY_PITCH = 16.0, 5.0  # mm: a sample of line, and from one sample down to the next
_PITCH = LINE_PITCH * NOTE_HEIGHT


def beside(
    notes: Sequence[str],
    keyed: Sequence[str],
    *,
    at: Point,
    wide: float,
    columns: int,
    heading: str = "NOTES",
) -> tuple[list[Primitive], float]:
    """Return numbered notes over a key to the layers named, and their depth in mm; ``at`` is the top left."""
    done: list[Primitive] = []
    depth = 0.0
    if notes:
        done, depth = _numbered(heading, notes, at, wide, columns)
    if keyed:
        gap = 3.0 if notes else 0.0
        lines, tall = _key(keyed, (at[0], at[1] - depth - gap), wide)
        done.extend(lines)
        depth += gap + tall
    return done, depth


def _numbered(
    heading: str, texts: Sequence[str], at: Point, wide: float, columns: int
) -> tuple[list[Primitive], float]:
    column = (wide - GUTTER * (columns - 1)) / columns
    set_lines = [wrapped(text, NOTE_HEIGHT, column - INDENT, break_words=True).split("\n") for text in texts]
    share = -(-sum(map(len, set_lines)) // columns)
    done: list[Primitive] = [letter((at[0], at[1] - NOTE_HEIGHT), heading, NOTE_HEIGHT, layer="TEXT")]
    place = rows = deepest = 0
    for number, lines in enumerate(set_lines, 1):
        if rows and place < columns - 1 and rows + len(lines) > share:
            place, rows = place + 1, 0
        x, y = at[0] + place * (column + GUTTER), at[1] - NOTE_HEIGHT - (rows + 1) * _PITCH
        done.append(letter((x, y), f"{number}.", NOTE_HEIGHT, layer="TEXT"))
        done.append(letter((x + INDENT, y), "\n".join(lines), NOTE_HEIGHT, layer="TEXT"))
        rows += len(lines)
        deepest = max(deepest, rows)
    return done, NOTE_HEIGHT * 1.4 + deepest * _PITCH


def _key(names: Sequence[str], at: Point, wide: float) -> tuple[list[Primitive], float]:
    cell = max(width(layer(name).meaning, NOTE_HEIGHT) for name in names) + SAMPLE + 8
    columns = max(1, int(wide // cell))
    done: list[Primitive] = [letter((at[0], at[1] - NOTE_HEIGHT), "LINES", NOTE_HEIGHT, layer="TEXT")]
    for order, name in enumerate(names):
        x = at[0] + (order % columns) * cell
        y = at[1] - NOTE_HEIGHT - (order // columns + 1) * KEY_PITCH
        done.append(rule((x, y + NOTE_HEIGHT / 2), (x + SAMPLE, y + NOTE_HEIGHT / 2), name))
        done.append(letter((x + SAMPLE + 2, y), layer(name).meaning, NOTE_HEIGHT, layer="TEXT"))
    return done, NOTE_HEIGHT * 1.4 + -(-len(names) // columns) * KEY_PITCH
