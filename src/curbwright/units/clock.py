"""Reads and writes a time of day: seconds since midnight."""

from __future__ import annotations

from curbwright.units.text import refuse

_DAY = 86400


def read_clock(words: str) -> float:
    """Return seconds since midnight: 06:30, 6:30 pm, 18:30:15, 6 pm, noon, 24:00. Raises UnitProblem.

    >>> read_clock("6:30 pm") / 3600
    18.5
    """
    text = words.casefold().replace(".m.", "m").replace(" ", "")
    if text == "noon":
        return 12 * 3600.0
    half = text[-2:] if text[-2:] in ("am", "pm") else ""
    hour, minute, second = _numbers(words, text.removesuffix(half).split(":"), bool(half))
    if half:
        if (hour, minute, second) == (12, 0, 0):
            raise refuse(words, "may be noon or midnight", 'Write "noon" or "00:00"')
        if not 1 <= hour <= 12:
            raise refuse(words, "has no such hour before am or pm", 'Write it like "18:30" or "6:30 pm"')
        hour = hour % 12 + (12 if half == "pm" else 0)
    total = hour * 3600 + minute * 60 + second
    if minute > 59 or second > 59 or total > _DAY:
        raise refuse(words, "is no time of day", 'Hours run from "00:00" to "24:00"')
    return float(total)


def _numbers(words: str, parts: list[str], halved: bool) -> tuple[int, int, int]:
    """Return hour, minute and second; raises UnitProblem for anything but their digits."""
    good = all(part.isascii() and part.isdecimal() and len(part) <= 2 for part in parts)
    padded = all(len(part) == 2 for part in parts[1:])
    if not (good and padded and len(parts) <= 3 and (len(parts) > 1 or halved)):
        guess = words.replace(".", ":", 1)
        if len(words) == 4 and words.isascii() and words.isdecimal():
            guess = f"{words[:2]}:{words[2:]}"
        hint = f'Try "{guess}"' if ":" in guess and guess != words else 'Write it like "06:30" or "6:30 pm"'
        raise refuse(words, "is not a time of day", hint)
    hour, minute, second = [int(part) for part in parts] + [0] * (3 - len(parts))
    return hour, minute, second


def written(seconds: float) -> tuple[int, str]:
    """Return a time of day rounded to the minute, in minutes and as HH:MM.

    >>> written(23400.0)
    (390, '06:30')
    """
    minutes = round(seconds / 60)
    return minutes, f"{minutes // 60:02d}:{minutes % 60:02d}"
