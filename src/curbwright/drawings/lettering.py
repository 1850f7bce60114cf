"""How wide lettering is on paper, in millimetres, whatever font the reader's machine has.

The widths in ``data/lettering.csv`` (thousandths of the type size) were measured with fontTools from
Liberation Sans Regular, a free font with the same widths as the usual office sans-serif. The backends ask
every viewer to fit the text to the width computed here, so a label takes the room it was given.
Height is the height of a capital letter, as on any working drawing.
"""

from __future__ import annotations

import unicodedata
from functools import cache

from curbwright.drawings.boxes import Box, Point
from curbwright.drawings.tables import rows

FONT_STACK = "'Liberation Sans', Arial, Helvetica, sans-serif"
MINIMUM_HEIGHT = 2.0  # mm on paper; common practice: smaller is lost in a photocopy
NOTE_HEIGHT = 2.4  # mm, 3/32 in: common practice for notes and dimensions
TITLE_HEIGHT = 3.5  # mm: titles of views
CAPITAL = 0.688  # height of a capital as a share of the type size, measured as above
LINE_PITCH = 1.7  # baseline to baseline, in capital heights
_ABOVE, _BELOW = 1.08, 0.32  # how far b, d, l rise and g, y fall, in capital heights


@cache
def _widths() -> dict[str, float]:
    return {chr(int(row["code"], 16)): float(row["width"]) / 1000 for row in rows("lettering")}


def _width(character: str) -> float:
    known = _widths().get(character)
    if known is not None:
        return known
    if unicodedata.combining(character):
        return 0.0
    # A character outside the table: a square for the wide scripts, else as wide as a figure and a bit.
    return 1.0 if unicodedata.east_asian_width(character) in "WF" else 0.65


def clean(text: str) -> str:
    """Return one line of text with odd white space, control and direction characters taken out.

    >>> clean("  flat \\t top\\x00 ")
    'flat top'
    """
    visible = (" " if c.isspace() else c for c in text)
    kept = (c for c in visible if unicodedata.category(c) not in ("Cc", "Cf", "Cs", "Cn", "Co"))
    return " ".join("".join(kept).split())


def lines_of(text: str) -> tuple[str, ...]:
    """Return the lines of a text, each cleaned."""
    return tuple(clean(line) for line in text.split("\n"))


def type_size(height: float) -> float:
    """Return the type size that gives capitals of that height; same unit as given."""
    return height / CAPITAL


def width(text: str, height: float) -> float:
    """Return how wide one line of text is, in the unit of its capital height.

    >>> round(width("Griddle", 2.4), 2)
    11.24
    """
    return sum(map(_width, clean(text))) * type_size(height)


def block_size(text: str, height: float) -> tuple[float, float]:
    """Return width and height of a text of one or more lines, its tails included."""
    lines = lines_of(text)
    pitch = LINE_PITCH * height
    return max(width(line, height) for line in lines), ((len(lines) - 1) * pitch + (_ABOVE + _BELOW) * height)


def line_box(at: Point, text: str, height: float, rotation: int = 0) -> Box:
    """Return the box of one line whose baseline starts at a point; rotation is 0 or 90 degrees."""
    x, y = at
    long = width(text, height)
    if rotation == 90:
        return Box(x - _ABOVE * height, y, x + _BELOW * height, y + long)
    return Box(x, y - _BELOW * height, x + long, y + _ABOVE * height)


def baseline_offset(height: float, count: int, level: str) -> float:
    """Return how far the first baseline is above the anchor of a block of ``count`` lines.

    ``level`` says what the anchor is: ``base`` the first baseline, ``top`` the top of the block, ``middle``
    the middle of its capitals, ``bottom`` the foot of its tails.
    """
    below_first = (count - 1) * LINE_PITCH * height
    return {
        "base": 0.0,
        "top": -_ABOVE * height,
        "middle": (below_first - height) / 2,
        "bottom": below_first + _BELOW * height,
    }[level]


def wrapped(text: str, height: float, room: float, *, break_words: bool = False) -> str:
    """Return the text broken at spaces into lines no wider than the room where words allow it.

    No line is broken at a no-break space. ``break_words`` breaks a word that is wider than the room as well.

    >>> wrapped("hand washing sink", 2.4, 16)
    'hand\\nwashing\\nsink'
    >>> wrapped("sink, 27\\N{NO-BREAK SPACE}lb", 2.4, 13)
    'sink,\\n27 lb'
    """
    done: list[str] = []
    for line in text.split("\n"):
        current = ""
        for word in filter(None, map(clean, line.split(" "))):
            for piece in _pieces(word, height, room) if break_words else [word]:
                longer = f"{current} {piece}".strip()
                if current and width(longer, height) > room:
                    done.append(current)
                    current = piece
                else:
                    current = longer
        done.append(current)
    return "\n".join(done)


def _pieces(word: str, height: float, room: float) -> list[str]:
    """Return a word in pieces that fit the room, at least one character each."""
    pieces = [""]
    for character in word:
        if pieces[-1] and width(pieces[-1] + character, height) > room:
            pieces.append("")
        pieces[-1] += character
    return pieces


def balanced(text: str, height: float, room: float) -> str:
    """Return the text wrapped to the room with its lines as even as the same number of lines allows.

    >>> balanced("Serving window with flap up", 2.4, 32)
    'Serving window\\nwith flap up'
    """
    best = wrapped(text, height, room)
    while True:
        longest = max(width(line, height) for line in best.split("\n"))
        tighter = wrapped(text, height, longest * 0.999)
        if tighter == best or tighter.count("\n") > best.count("\n"):
            return best
        if max(width(line, height) for line in tighter.split("\n")) >= longest:
            return best
        best = tighter


def shortened(text: str, height: float, room: float) -> str:
    """Return the text, cut and ended by an ellipsis if it is wider than the room.

    >>> shortened("The Long Name Cart", 2.4, 20)
    'The Long…'
    """
    line = clean(text)
    if width(line, height) <= room:
        return line
    while line and width(line + "…", height) > room:
        line = line[:-1].rstrip()
    return line + "…"
