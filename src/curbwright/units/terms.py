"""Parts a text into its numbers, each with the text of its unit."""

from __future__ import annotations

from typing import NamedTuple

from curbwright.units.expression import whole
from curbwright.units.kinds import Kind
from curbwright.units.numbers import amount
from curbwright.units.text import Token, refuse

_TIMES = ("x", "X", "*", "by")


class Term(NamedTuple):
    """A number and the text of its unit."""

    value: float
    whole: bool
    """True for a whole number, which a smaller unit may follow."""
    number: str
    """The number as typed."""
    before: str
    """The whole text up to the unit."""
    unit: str


def signs(found: list[Token]) -> tuple[bool, bool, list[Token]]:
    """Part a leading sign and a leading dollar sign from the rest: negative, dollars, the rest."""
    negative = bool(found) and found[0].text == "-"
    if found and found[0].text in ("-", "+"):
        found = found[1:]
    texts = [token.text for token in found[:2]]
    if texts == ["US", "$"]:
        return negative, True, found[2:]
    dollars = texts[:1] in (["$"], ["USD"])
    return negative, dollars, found[1:] if dollars else found


def terms(found: list[Token], words: str, wanted: Kind) -> list[Term]:
    """Return the terms of a quantity; raises UnitProblem where it does not begin with a number.

    >>> from curbwright.units.kinds import KINDS
    >>> from curbwright.units.text import tokens
    >>> [(term.value, term.unit) for term in terms(tokens("5 ft 6 1/2 in"), "5 ft 6 1/2 in", KINDS["length"])]
    [(5.0, 'ft'), (6.5, 'in')]
    """
    if not found or found[0].kind != "number":
        what = f"does not begin with a number ({wanted.says}: {wanted.choices})"
        raise refuse(words, what, wanted.like)
    read: list[Term] = []
    at = 0
    while at < len(found):
        number = amount(found, at, words)
        value, whole_number, at = number.value, number.whole, number.after
        if _thousands(found, at, wanted):
            value, whole_number, at = value * 1000, False, at + 1
        after = _unit_end(found, at, words)
        unit = _unit_text(found[at:after], after < len(found), words, wanted)
        read.append(Term(value, whole_number, number.text, words[: found[at - 1].end], unit))
        at = after
    return read


def _thousands(found: list[Token], at: int, wanted: Kind) -> bool:
    """True at a k written against its number, as in 40k BTU/h; a K after a temperature is kelvins."""
    if at >= len(found) or found[at].text not in ("k", "K") or wanted.unit in ("K", "delta_degC"):
        return False
    return found[at].start == found[at - 1].end


def _unit_end(found: list[Token], at: int, words: str) -> int:
    """Return the place of the next number that is not a power of the unit before it."""
    if at < len(found) and whole(words[found[at].start :]):
        return len(found)
    end = at
    while end < len(found) and (found[end].kind != "number" or (end > at and _is_power(found, end))):
        end += 1
    return end


def _is_power(found: list[Token], at: int) -> bool:
    """True for the 2 of ft2, ft^2 and s^-2; false for the 2 of 5'2" and of 5ft2in."""
    before, token = found[at - 1], found[at]
    if before.text == "^" or (before.text == "-" and found[at - 2].text == "^"):
        return True
    if before.kind != "word" or before.text in (*_TIMES, '"', "'") or token.start != before.end:
        return False
    after = found[at + 1] if at + 1 < len(found) else None
    alone = after is None or after.kind != "word" or after.start > token.end
    return token.text in ("2", "3", "4") and alone


def _unit_text(found: list[Token], followed: bool, words: str, wanted: Kind) -> str:
    """Return the text of a unit without the dashes and commas that join it to its numbers."""
    texts = [token.text for token in found]
    if followed and texts in (["-"], ["to"]):
        raise refuse(words, "is a range; one number is due", wanted.like)
    if followed and len(texts) == 1 and texts[0] in _TIMES:
        raise refuse(words, "is two measures; one is due", wanted.like)
    first, last = 0, len(found)
    if texts[:1] == ["-"]:
        first = 1
    if followed and texts[-1:] in (["-"], [","], ["and"]):
        last -= 1
    return words[found[first].start : found[last - 1].end] if first < last else ""
