"""Reads a quantity as a builder writes it."""

from __future__ import annotations

import math
from functools import lru_cache

from curbwright.errors import UnitProblem
from curbwright.units.calendar import read_date
from curbwright.units.clock import read_clock
from curbwright.units.gauges import r_value, sheet_gauge, wire_gauge
from curbwright.units.kinds import KINDS, Kind
from curbwright.units.matching import unit_for
from curbwright.units.measure import Measure
from curbwright.units.refusals import Written, not_text, with_unit
from curbwright.units.terms import Term, signs, terms
from curbwright.units.text import LONGEST, plain, quoted, refuse, tokens
from curbwright.units.unit import Unit

_FAMILIES = (
    ("mi", "yd", "ft", "in"), ("short ton", "lb", "oz"), ("week", "day", "h", "min", "s"),
    ("gal", "qt", "pt", "cup", "fl oz"), ("m", "cm", "mm"), ("kg", "g"), ("L", "mL"),
)  # fmt: skip
"""Units that follow each other in one quantity, larger first."""


def read(text: object, kind: str) -> Measure:
    """Return the quantity that a builder's text states, in the SI unit of its kind.

    ``kind`` is a name in KINDS (KeyError otherwise). Anything that is not a clear quantity of that kind, in
    at most 64 characters, raises UnitProblem, whose ``what`` and ``try_this`` are in the builder's words.

    >>> read("5 ft 6 in", "length"), read("15,000 BTU/h", "power").text
    (Measure(1.6764, '5 ft 6 in', 'length'), '15,000 BTU/h')
    >>> read("62", "mass")
    Traceback (most recent call last):
    curbwright.errors.UnitProblem: "62" has no unit (a mass: lb, kg, oz). Try "62 lb".
    """
    return _read(_as_text(text, KINDS[kind]), kind)


@lru_cache(maxsize=4096)
def _read(typed: str, kind: str) -> Measure:
    """Return a quantity; kept, because carts and sheets say the same few again and again."""
    wanted = KINDS[kind]
    words = plain(typed)
    if not words:
        raise UnitProblem(f"nothing is written where {wanted.says} is due", wanted.like)
    value, note = _own_form(words, wanted) or (_quantity(words, wanted), "")
    _plausible(value, words, wanted)
    return Measure(value + 0.0, typed, kind, note)


def _as_text(text: object, wanted: Kind) -> str:
    """Return the exact text; raises UnitProblem for anything else, and for a text that nobody means."""
    if not issubclass(type(text), str):
        raise not_text(text, wanted)
    typed = str.__str__(text)
    if len(typed) > LONGEST:
        what = f"{quoted(typed)} has {len(typed):,} characters; {wanted.says} needs at most {LONGEST}"
        raise UnitProblem(what, wanted.like)
    return typed


def _own_form(words: str, wanted: Kind) -> tuple[float, str] | None:
    """Return value and note of a form that only its kind has; None for an ordinary quantity."""
    match wanted.name:
        case "clock":
            return read_clock(words), ""
        case "date":
            return read_date(words), ""
        case "thickness":
            return sheet_gauge(words)
        case "wire_size":
            return wire_gauge(words)
        case "thermal_resistance":
            return r_value(words)
    return None


def _quantity(words: str, wanted: Kind) -> float:
    """Return the SI value of numbers with units: 5 ft 6 in, 40k BTU/h, $1,250, 12 %."""
    negative, dollars, found = signs(tokens(words))
    read_terms = terms(found, words, wanted)
    if dollars and not read_terms[0].unit:
        read_terms[0] = read_terms[0]._replace(unit="$")
    if len(read_terms) == 1 and not read_terms[0].unit:
        value = _bare(read_terms[0], words, wanted)
        return -value if negative else value
    if not all(term.unit for term in read_terms):
        raise _left_bare(read_terms, words, wanted)
    units = [unit_for(Written(words, term.before, term.unit), wanted) for term in read_terms]
    if len(units) > 1:
        _in_order(read_terms, units, words, wanted)
    last = units[-1]
    # Within a family the ratio is a whole number, so that 5 ft 6 in is 66 in exactly.
    total = sum(term.value * (1 if unit is last else round(unit.factor / last.factor))
                for term, unit in zip(read_terms, units, strict=True))  # fmt: skip
    return (-total if negative else total) * last.factor + last.offset


def _bare(term: Term, words: str, wanted: Kind) -> float:
    """Return a number without a unit where that is allowed: plain numbers, and shares from 0 to below 1."""
    if wanted.name == "number" or (wanted.name == "share" and 0 <= term.value < 1):
        return term.value
    if wanted.name == "share":
        raise refuse(words, "is no fraction between 0 and 1", f'Try "{term.before} %"')
    suggested = with_unit(term.before, wanted)
    hint = f'Try "{suggested}"' if suggested else wanted.like
    raise refuse(words, f"has no unit ({wanted.says}: {wanted.choices})", hint)


def _left_bare(read_terms: list[Term], words: str, wanted: Kind) -> UnitProblem:
    """The problem of a number without a unit beside others: 5'6, or 15 000 mm."""
    at = next(at for at, term in enumerate(read_terms) if not term.unit)
    why = f"leaves {read_terms[at].number} without a unit"
    if at + 1 == len(read_terms):
        unit = unit_for(Written(words, read_terms[at - 1].before, read_terms[at - 1].unit), wanted)
        family = next((each for each in _FAMILIES if unit.name in each[:-1]), None)
        smaller = family[family.index(unit.name) + 1] if family else ""
        return refuse(words, why, f'Try "{words} {smaller}"' if smaller else wanted.like)
    return refuse(words, why, "Write one number with its unit, thousands with a comma: 15,000")


def _in_order(read_terms: list[Term], units: list[Unit], words: str, wanted: Kind) -> None:
    """Refuse units that do not follow each other downwards, each amount less than one of the unit before."""
    names = [unit.name for unit in units]
    family = next((each for each in _FAMILIES if all(name in each for name in names)), None)
    if family is None:
        raise refuse(words, "mixes units that do not go together", wanted.like)
    places = [family.index(name) for name in names]
    if any(later <= earlier for earlier, later in zip(places, places[1:], strict=False)):
        raise refuse(words, "does not go from the larger unit to the smaller", wanted.like)
    for term, larger, unit in zip(read_terms[1:], units, units[1:], strict=False):
        if term.value * unit.factor >= larger.factor * (1 - 1e-12):
            what = f"has as many {unit.name} as one {larger.name} holds, or more"
            raise refuse(words, what, f"Write it in {unit.name} alone")
    if not all(term.whole for term in read_terms[:-1]):
        raise refuse(words, "has a fraction before its last unit", "Put the fraction in the smallest unit")


def _plausible(value: float, words: str, wanted: Kind) -> None:
    """Refuse what is no number, or is past the limits of its kind."""
    if not math.isfinite(value):
        raise refuse(words, f"is too large a number for {wanted.says}", wanted.like)
    if value < wanted.least:
        zero = "absolute zero" if wanted.name == "temperature" else "zero"
        below = f"is below {zero}, which {wanted.says} cannot be"
        what = below if wanted.least == 0 else "is less than is plausible"
        raise refuse(words, what, "Check the number and its sign")
    if value > wanted.most:
        raise refuse(words, f"is more than is plausible for {wanted.says}", "Check the number and its unit")
