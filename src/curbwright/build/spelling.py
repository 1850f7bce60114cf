"""How keys and values are spelled in a build file."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any

from curbwright.errors import EditProblem

_LONGEST_LINE = 96
_LARGEST = 2**63
_OPENING = "\"'\u2018\u2019\u201c\u201d\u201e\u00ab\u00bb"
_FEET = re.compile(r"""(\d+)\s*['\u2019\u2032](?!')[\s-]*(?=\d|$)""")
_INCHES = re.compile(r"""(\d)\s*(?:["\u201d\u2033]|'')""")


def spelled(value: object) -> str:
    """A value as it is typed after the = sign; raises EditProblem for what a build file cannot hold.

    >>> spelled({"mass": "62 lb", "lit": True, "at": [1, 2.5]})
    '{ mass = "62 lb", lit = true, at = [1, 2.5] }'
    """
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int):
        if not -_LARGEST <= value < _LARGEST:
            raise EditProblem(f"a whole number of {value.bit_length()} bits is too long for a build file")
        return str(int(value))
    if isinstance(value, float):
        return repr(float(value))
    if isinstance(value, str):
        return _text(value)
    if isinstance(value, Mapping):
        inside = ", ".join(f"{spelled_key(key)} = {spelled(item)}" for key, item in value.items())
        return f"{{ {inside} }}" if inside else "{}"
    if isinstance(value, Sequence) and not isinstance(value, bytes | bytearray):
        return _array([spelled(item) for item in value])
    raise EditProblem(
        f"a build file cannot hold {type(value).__name__}: only text, numbers, lists and tables"
    )


def spelled_key(*parts: Any) -> str:
    """A key, or several with dots between, with quotes where they are needed.

    >>> spelled_key("items", "green chili")
    'items."green chili"'
    """
    from tomlkit.items import SingleKey

    for part in parts:
        if not isinstance(part, str):
            raise EditProblem(f"a key must be text, not {part!r}")
        _check(part)
    return ".".join(SingleKey(part).as_string() for part in parts)


def as_typed(value: str) -> str:
    """What a builder most likely meant by an unreadable ``value``, spelled as it should be.

    >>> as_typed("62 lb"), as_typed("5'6\\""), as_typed("Yes"), as_typed("15,000")
    ('"62 lb"', '"5 ft 6 in"', 'true', '15000')
    """
    text = value.strip()
    if text[:1] in _OPENING:
        text = text[1:].strip()
        text = text[:-1].strip() if text[-1:] in _OPENING else text
        text = re.sub(r'^(\d[\d.,/]*)"(?=\s+[A-Za-z])', r"\1", text)
    elif re.fullmatch(r"(?i)true|yes|on|false|no|off", text):
        return "true" if text.lower() in ("true", "yes", "on") else "false"
    elif re.fullmatch(r"[+-]?\d{1,3}(,\d{3})+(\.\d+)?", text):
        return text.replace(",", "")
    elif re.fullmatch(r"[+-]?\.\d+", text):
        return text.replace(".", "0.")
    elif re.fullmatch(r"[+-]?(0|[1-9]\d*)(\.\d+)?", text):
        return text
    text = _INCHES.sub(r"\1 in", _FEET.sub(r"\1 ft ", text)).strip()
    text = text.replace('"', "" if text.count('"') == 1 else "'")
    return _text("".join(mark for mark in text if mark.isprintable()))


def _text(value: str) -> str:
    from tomlkit import item

    _check(value)
    return item(str(value)).as_string()


def _check(text: str) -> None:
    if any("\ud800" <= mark <= "\udfff" for mark in text):
        raise EditProblem(f"the text {ascii(text)} has a character that cannot be saved")


def _array(items: list[str]) -> str:
    one_line = f"[{', '.join(items)}]"
    if len(one_line) <= _LONGEST_LINE or len(items) < 2:
        return one_line
    return "[\n" + "".join(f"    {item},\n" for item in items) + "]"
