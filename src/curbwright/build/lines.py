"""Which line of a build file a field is written on.

A field path is a tuple of keys and, inside arrays, of positions counted from 0:
``("menu", 0, "price")``. Written with dots it reads ``menu.0.price``.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping

from curbwright.build.written import FieldPath, written

_BARE_PART = re.compile(r"[A-Za-z0-9_-]+")
_POSITION = re.compile(r"[0-9]{1,9}")
_DOTTED_PART = re.compile(r'"(?:[^"\\]|\\.)*"(?=\.|\Z)|[^.]*')


def line_map(text: str) -> dict[FieldPath, int]:
    """The line, counted from 1, of every key and every array element of a valid TOML text.

    A table has the line of its heading; one that has none, the line where it is first named. A text
    that cannot be read to its end gives the lines of what could be read.

    >>> line_map('[items.griddle]\\nmass = "62 lb"')
    {('items',): 1, ('items', 'griddle'): 1, ('items', 'griddle', 'mass'): 2}
    """
    return written(text).lines


def line_of(lines: Mapping[FieldPath, int], path: FieldPath) -> int | None:
    """The line of ``path``, or of the nearest thing around it that is written; None if nothing is.

    A position may also be given as text, as in a path that was written with dots.

    >>> line_of({("items", "griddle"): 7}, ("items", "griddle", "mass"))
    7
    """
    positions = tuple(
        int(part) if isinstance(part, str) and _POSITION.fullmatch(part) else part for part in path
    )
    for length in range(len(path), 0, -1):
        line = lines.get(path[:length]) or lines.get(positions[:length])
        if line is not None:
            return line
    return None


def dotted(path: FieldPath) -> str:
    """A field path as one text.

    >>> dotted(("menu", 0, "green chili"))
    'menu.0."green chili"'
    """
    words = [str(part) for part in path]
    return ".".join(
        word if _BARE_PART.fullmatch(word) else json.dumps(word, ensure_ascii=False) for word in words
    )


def split(path: str) -> tuple[str, ...]:
    """The parts of a field path written with dots, each still text.

    >>> split('menu.0."green chili"')
    ('menu', '0', 'green chili')
    """
    parts: list[str] = []
    at = 0
    while path and at <= len(path):
        found = _DOTTED_PART.match(path, at)
        part = found.group() if found else ""
        at += len(part) + 1
        parts.append(_unquoted(part))
    return tuple(parts)


def _unquoted(part: str) -> str:
    if not part.startswith('"'):
        return part
    try:
        return str(json.loads(part, strict=False))
    except ValueError:
        return part
