"""What to say to a builder about a unit that will not do, and what to write instead."""

from __future__ import annotations

import os
from collections.abc import Callable
from functools import cache
from typing import NamedTuple

from curbwright.errors import UnitProblem
from curbwright.units.expression import NotAUnitError, readings, whole, work
from curbwright.units.kinds import Kind
from curbwright.units.text import quoted, refuse
from curbwright.units.unit import Unit, capitals, table

_REPEATED = 10**12
"""A larger number is not repeated in advice."""

_MOST_FEET = 15
"""A bare length of more is not in feet on a cart."""


class Written(NamedTuple):
    """A unit in the text it stands in."""

    typed: str
    before: str
    """The text up to the unit: the number, and the terms before it."""
    unit: str

    def suggest(self, *units: str) -> str:
        """Return the advice to write other units in this one's place."""
        return "Try " + " or ".join(f'"{self.before} {unit}"' for unit in units)


def other_kind(written: Written, kind: Kind, measured: Kind | None) -> UnitProblem:
    """The problem of a length where a mass is due."""
    what = f"is {measured.says}" if measured and measured is not kind else "is something else"
    due = refuse(written.typed, f"{what}; {kind.says} is due: {kind.choices}", kind.like)
    return _doubtful(written, written.unit, kind) or due


def unknown(written: Written, word: str, kind: Kind, fitting: Callable[[Unit], bool]) -> UnitProblem:
    """The problem of a unit in no table: doubtful, in the wrong capitals, or nearly one that there is.

    ``word`` is the part of it that is unknown and ``fitting`` tells the units of the kind that is due.
    """
    doubtful = _doubtful(written, written.unit, kind) or _doubtful(written, word, kind)
    if doubtful:
        return doubtful
    meant = _in_capitals(written.unit, word, fitting)
    if meant:
        why = "leaves its unit in doubt: capitals matter here"
        return refuse(written.typed, why, written.suggest(*meant))
    near = _nearest(written.unit, kind, fitting) if word else None
    why = f"has no unit that is known here ({kind.says}: {kind.choices})"
    return refuse(written.typed, why, written.suggest(near) if near else kind.like)


def _in_capitals(text: str, word: str, fitting: Callable[[Unit], bool]) -> list[str]:
    """Return the units of the kind that differ from a text in the capitals of its unknown word only."""
    spellings = [text.replace(word, each) for each in dict.fromkeys(capitals(word))] if word else []
    return [each for each in dict.fromkeys((*capitals(text), *spellings)) if _readable(each, fitting)]


def _readable(text: str, fitting: Callable[[Unit], bool]) -> bool:
    try:
        return any(fitting(unit) for unit, _ in readings(text))
    except NotAUnitError:
        return False


def _nearest(text: str, kind: Kind, fitting: Callable[[Unit], bool]) -> str | None:
    """Return the unit of a kind that is spelled most like a text."""
    from difflib import get_close_matches

    spellings: dict[str, str] = {}
    for row in table().rows:
        if row.name and row.mark != "convert" and any(fitting(work(row, way)) for way in (False, True)):
            spellings |= {each.casefold(): row.name for each in (row.name, *row.aliases)}
    spellings |= {each.casefold(): each for each in kind.units if not each[:1].isdigit()}
    close = get_close_matches(text.casefold()[:24], list(spellings), 1, 0.6)
    return spellings[close[0]] if close else None


@cache
def _doubts() -> dict[tuple[str, str], tuple[str, str]]:
    """Why a word will not do and what to try, by kind (* for any) and word."""
    from csv import DictReader

    path = os.path.join(os.path.dirname(__file__), "doubtful.csv")
    with open(path, encoding="utf-8", newline="") as file:
        return {(row["kind"], row["word"]): (row["why"], row["try_this"]) for row in DictReader(file)}


def _doubtful(written: Written, word: str, kind: Kind) -> UnitProblem | None:
    """The problem of a unit left in doubt, or commonly taken for another, where the table has it."""
    cases = (word.upper(), word.casefold()) if len(word) > 1 else ()
    for spelling in (word, *cases, *(row.name for row in whole(word))):
        for name in (kind.name, "*"):
            why, try_this = _doubts().get((name, spelling), ("", ""))
            if why:
                advice = try_this.replace("{n}", written.before)
                return refuse(written.typed, f"will not do for {kind.says}: {why}", advice)
    return None


def with_unit(number: str, kind: Kind) -> str | None:
    """Return a number with the first unit of a kind, or None where that would be no help."""
    if kind.name in ("clock", "share", "thermal_resistance"):
        return None
    if kind.name == "number":
        return number
    return f"${number}" if kind.name == "money" else f"{number} {_likely(number, kind)}"


def _likely(number: str, kind: Kind) -> str:
    """Return the unit of a kind that a bare number is most likely in: 48 or 5/16 of a length are inches."""
    first = kind.units[0]
    few = number.replace(".", "", 1).isdigit() and float(number) < _MOST_FEET
    return "in" if first == "ft" and "in" in kind.units and not few else first


def not_text(value: object, kind: Kind) -> UnitProblem:
    """The problem of a value that is no text; its type is only ever compared by identity."""
    found = type(value)
    what, like = _called(found), kind.example
    if (found is int or found is float) and -_REPEATED < value < _REPEATED:  # type: ignore[operator]
        what, like = f"{value} is a bare number", with_unit(f"{value}", kind) or like
    how = "in quotes" if kind.name in ("number", "clock") else "in quotes, with its unit"
    return UnitProblem(f"{what}, not text; {kind.says} is due", f"Write it {how}: {quoted(like)}")


def _called(found: type) -> str:
    from datetime import date, time

    names = {bool: "a yes or no", list: "a list", dict: "a table", type(None): "nothing"}
    for each, name in names.items():
        if found is each:
            return f"this is {name}"
    if issubclass(found, date | time):
        return "this is a date or a time"
    return "this is a bare number" if issubclass(found, int | float) else "this is something else"
