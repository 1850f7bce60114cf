"""What a draughtsman would send back: lettering over lettering, over the border, or struck by a line."""

from __future__ import annotations

from curbwright.drawings.ink import Word
from curbwright.drawings.lettering import MINIMUM_HEIGHT
from curbwright.drawings.sheet import Sheet

TOUCH = 0.05  # mm: boxes that share less than this only touch
_BEHIND = ("HATCH",)  # broken around lettering by the hatching itself


def overlaps(sheet: Sheet) -> list[str]:
    """Return every pair of texts that overlap and every text that is not wholly inside the border."""
    words = sheet.words()
    found = [
        f"{one.text!r} over {other.text!r}"
        for index, one in enumerate(words)
        for other in words[index + 1 :]
        if one.box.grown(-TOUCH).overlaps(other.box)
    ]
    outside = (word for word in words if not sheet.paper.frame.holds(word.box))
    return found + [f"{word.text!r} outside the border" for word in outside]


def struck(sheet: Sheet) -> list[str]:
    """Return every text that a line runs through, with the line's layer."""
    words = sheet.words()
    strokes = [mark for mark in sheet.ink() if not isinstance(mark, Word) and mark.layer not in _BEHIND]
    return [
        f"{word.text!r} struck by {mark.layer}"
        for mark in strokes
        for word in words
        if any(word.box.grown(-0.25 * word.height).struck_by(*segment) for segment in mark.segments)
    ]


def too_small(sheet: Sheet) -> list[str]:
    """Return every text lettered under the least readable height."""
    return [word.text for word in sheet.words() if word.height < MINIMUM_HEIGHT]
