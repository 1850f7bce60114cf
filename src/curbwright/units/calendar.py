"""Reads a day of the year: counted from 1 January, of a year without a leap day."""

from __future__ import annotations

import re

from curbwright.errors import UnitProblem
from curbwright.units.text import refuse

_MONTHS = {
    "january": 31, "february": 28, "march": 31, "april": 30, "may": 31, "june": 30, "july": 31, "august": 31,
    "september": 30, "october": 31, "november": 30, "december": 31,
}  # fmt: skip
_NAMES = tuple(_MONTHS)
_DAY = "([0-9]{1,2})(?:st|nd|rd|th)?"
_WORDS = re.compile(f"(?:{_DAY} ([a-z]+)|([a-z]+) {_DAY})(?:,? [0-9]{{4}})?")
_NUMBERS = re.compile("[0-9]{4}-([0-9]{2})-([0-9]{2})")
_LIKE = 'Write it like "21 July" or "2026-07-21"'


def read_date(words: str) -> float:
    """Return the day of the year: 21 July, July 21, Jul 21 2026, 2026-07-21. Raises UnitProblem.

    >>> read_date("21 July"), read_date("2026-12-31")
    (202.0, 365.0)
    """
    text = " ".join(words.casefold().replace(".", "").split())
    if dated := _NUMBERS.fullmatch(text):
        return _day(words, int(dated[1]), int(dated[2]))
    found = _WORDS.fullmatch(text)
    if not found:
        raise refuse(words, "is not a date", _LIKE)
    name = found[2] or found[3]
    months = [at for at, month in enumerate(_NAMES, 1) if len(name) >= 3 and month.startswith(name)]
    if len(months) != 1:
        raise refuse(words, "names no month", _LIKE)
    return _day(words, months[0], int(found[1] or found[4]))


def _day(words: str, month: int, day: int) -> float:
    if not 1 <= month <= 12:
        raise refuse(words, "names no month", _LIKE)
    last = _MONTHS[_NAMES[month - 1]]
    if (month, day) == (2, 29):
        day = 28
    if not 1 <= day <= last:
        raise _no_such_day(words, month, last)
    return float(sum(list(_MONTHS.values())[: month - 1]) + day)


def _no_such_day(words: str, month: int, last: int) -> UnitProblem:
    return refuse(words, f"is no day: {_NAMES[month - 1].capitalize()} has {last}", _LIKE)


def month_and_day(day: float) -> tuple[int, int]:
    """Return the month, from 1, and the day of it that a day of the year is.

    >>> month_and_day(202.0), month_and_day(1.0), month_and_day(365.0)
    ((7, 21), (1, 1), (12, 31))
    """
    left = round(day)
    for month, days in enumerate(_MONTHS.values(), 1):
        if left <= days:
            return month, left
        left -= days
    return 12, 31


def written(day: float) -> tuple[int, str]:
    """Return a day of the year rounded to a whole one, as its number and in words.

    >>> written(202.0)
    (202, '21 July')
    """
    month, of_month = month_and_day(day)
    return round(day), f"{of_month} {_NAMES[month - 1].capitalize()}"
