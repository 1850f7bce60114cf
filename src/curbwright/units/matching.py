"""Holds a unit text against the kind that is due: the unit, or what is wrong and what to write."""

from __future__ import annotations

import os
from functools import cache

from curbwright.errors import UnitProblem
from curbwright.units.expression import NotAUnitError, readings, whole, work
from curbwright.units.kinds import KINDS, Kind
from curbwright.units.text import plain, quoted, refuse
from curbwright.units.unit import BASE, NOTHING, Unit, capitals, table


@cache
def unit_of(kind: Kind) -> Unit:
    """Return the SI unit of a kind as the table knows it."""
    return readings(plain(kind.made_of))[0][0]


@cache
def _with_rivals() -> frozenset[object]:
    """The dimensions that an energy shares with something else."""
    kinds = [unit_of(kind) for kind in KINDS.values()]
    return frozenset(one.dimension for one in kinds if any(
        one.dimension == other.dimension and one.works != other.works for other in kinds))  # fmt: skip


def fits(unit: Unit, kind: Kind) -> bool:
    """True where a unit measures what a kind is: same dimension, and no energy for a moment."""
    due = unit_of(kind)
    if unit.dimension != due.dimension or kind.name in ("number", "clock"):
        return False
    if due.dimension in _with_rivals() and unit.works != due.works:
        return False
    return kind.name != "temperature" or (bool(unit.name) and not unit.difference)


def suited(unit: Unit, kind: Kind) -> Unit:
    """Return the unit as a kind uses it: only a temperature counts from another zero."""
    return unit if kind.name == "temperature" else unit._replace(offset=0.0)


def unit_for(text: str, kind: Kind, *, typed: str, number: str) -> Unit:
    """Return the unit that a text means where a kind is due.

    ``typed`` and ``number`` are the whole text and its number, for the message. Raises UnitProblem.
    """
    try:
        found = readings(text)
    except NotAUnitError as unknown:
        raise _unknown(text, unknown.word, kind, typed, number) from None
    for unit, mark in found:
        if mark != "convert" and fits(unit, kind):
            return suited(unit, kind)
    raise _doubtful(text, kind, typed, number) or _other_kind(found[0][0], kind, typed)


def kind_of(unit: Unit) -> Kind | None:
    """Return the first kind that a unit measures."""
    if unit.difference:
        return KINDS["temperature_difference"]
    return next((kind for kind in KINDS.values() if fits(unit, kind)), None)


def factor(unit_text: str, kind: str | None = None) -> tuple[str, float, float]:
    """Return ``(SI unit, factor, offset)`` of a unit text: a value in SI is ``number * factor + offset``.

    Takes everything ``read`` takes and the units of published cases besides (psia, cmil, bool). Without a
    ``kind``, a pound is a mass, save in psf, plf, lb/in and lb·ft, which are loads; g is a gram and C and F
    are temperatures. With one, the unit must fit it: ``factor("g", "acceleration")``.
    Raises UnitProblem for an unknown unit and for one of another kind.

    >>> factor("kip*in")
    ('N*m', 112.98482902761668, 0.0)
    >>> factor("psf"), factor("psf", "areal_mass")
    (('Pa', 47.88025898033584, 0.0), ('kg/m**2', 4.882427636383051, 0.0))
    >>> factor("degF")
    ('K', 0.5555555555555556, 255.3722222222222)
    """
    text = plain(unit_text[:64])
    try:
        found = readings(text) if text else [(Unit("", NOTHING, 1.0), "")]
    except NotAUnitError as unknown:
        hint = f"Look at {quoted(unknown.word)}" if unknown.word else "Look at how it is put together"
        raise refuse(unit_text, "is not a unit known here", hint) from None
    if kind is not None:
        due = KINDS[kind]
        fitting = [suited(unit, due) for unit, _ in found if fits(unit, due)]
        if not fitting:
            raise _other_kind(found[0][0], due, unit_text)
        return due.unit, fitting[0].factor, fitting[0].offset
    loads = [unit for unit, mark in found if mark == "load"]
    units = loads[1:] or [unit for unit, _ in found if kind_of(unit)] or [found[0][0]]
    measured = kind_of(units[0])
    return measured.unit if measured else spelled(units[0]), units[0].factor, units[0].offset


def spelled(unit: Unit) -> str:
    """Return the dimension of a unit in base units, as figures spell it.

    >>> spelled(readings("J/kg")[0][0])
    'm**2/s**2'
    """
    powers = list(zip(BASE, unit.dimension, strict=True))
    above = [name if power == 1 else f"{name}**{power}" for name, power in powers if power > 0]
    below = [f"/{name}" if power == -1 else f"/{name}**{-power}" for name, power in powers if power < 0]
    return ("*".join(above) or "1") + "".join(below)


def _other_kind(unit: Unit, kind: Kind, typed: str) -> UnitProblem:
    """The problem of a length where a mass is due."""
    measured = kind_of(unit)
    what = f"is {measured.says}" if measured and measured is not kind else "does not fit"
    return refuse(typed, f"{what}; {kind.says} is due: {kind.choices}", kind.like)


def _unknown(text: str, word: str, kind: Kind, typed: str, number: str) -> UnitProblem:
    """The problem of a unit that no table has: doubtful, in the wrong capitals, or nearly one that it has."""
    doubtful = _doubtful(text, kind, typed, number) or _doubtful(word, kind, typed, number)
    if doubtful:
        return doubtful
    same = capitals(text) or capitals(word)
    if same:
        units = [text.replace(word, each) if word else each for each in dict.fromkeys(same)]
        ways = " or ".join(f'"{number} {each}"' for each in units)
        return refuse(typed, "leaves its unit in doubt: capitals matter here", f"Try {ways}")
    what = f"has no unit that is known here ({kind.says}: {kind.choices})"
    near = _nearest(text, kind) if word else None
    return refuse(typed, what, f'Try "{number} {near}"' if near else kind.like)


def _nearest(text: str, kind: Kind) -> str | None:
    """Return the unit of a kind that is spelled most like a text."""
    from difflib import get_close_matches

    spellings: dict[str, str] = {}
    for row in table().rows:
        fitting = any(fits(work(row, weight), kind) for weight in (False, True))
        if row.name and row.mark != "convert" and fitting:
            spellings |= {each.casefold(): row.name for each in (row.name, *row.aliases)}
    spellings |= {each.casefold(): each for each in kind.units if not each[:1].isdigit()}
    close = get_close_matches(text.casefold()[:24], list(spellings), 1, 0.6)
    return spellings[close[0]] if close else None


@cache
def _doubts() -> dict[tuple[str, str], tuple[str, str]]:
    from csv import DictReader

    with open(os.path.join(os.path.dirname(__file__), "doubtful.csv"), encoding="utf-8", newline="") as file:
        return {(row["kind"], row["word"]): (row["why"], row["try_this"]) for row in DictReader(file)}


def _doubtful(text: str, kind: Kind, typed: str, number: str) -> UnitProblem | None:
    """The problem of a unit that is left in doubt or commonly taken for another, where the table has it."""
    rows = whole(text)
    words = [text, *((text.upper(), text.casefold()) if len(text) > 1 else ()), *(row.name for row in rows)]
    for key in ((name, word) for word in words for name in (kind.name, "*")):
        if key in _doubts():
            why, try_this = _doubts()[key]
            return refuse(typed, f"will not do for {kind.says}: {why}", try_this.replace("{n}", number))
    return None
