"""Reads the number in front of a unit: whole, decimal, fraction or mixed, commas in their places."""

from __future__ import annotations

from typing import NamedTuple

from curbwright.units.text import Token, refuse


class Amount(NamedTuple):
    """A number as read."""

    value: float
    whole: bool
    """True for a whole number, which may be followed by a smaller unit (5 ft 6 in)."""
    text: str
    after: int
    """The place in the tokens after it."""


def amount(found: list[Token], at: int, typed: str) -> Amount:
    """Return the number that starts at a token; raises UnitProblem when there is none or it is unclear.

    >>> from curbwright.units.text import tokens
    >>> amount(tokens("1-1/2 in"), 0, "1-1/2 in").value
    1.5
    """
    first = found[at]
    if not first.text.isdecimal():
        _no_fraction_of(found, at, typed)
        return Amount(decimal(first.text, typed), False, first.text, at + 1)
    if _is_fraction(found, at):
        return Amount(_ratio(found, at, typed), False, _between(found, at, at + 3), at + 3)
    joined = at + 1
    if joined < len(found) and found[joined].text == "-" and found[joined].start == first.end:
        joined += 1
    if _is_fraction(found, joined):
        part = _ratio(found, joined, typed)
        if part >= 1:
            raise refuse(typed, "adds a fraction of one or more to a whole number", "Write one number")
        return Amount(int(first.text) + part, False, _between(found, at, joined + 3), joined + 3)
    return Amount(decimal(first.text, typed), True, first.text, at + 1)


def decimal(digits: str, typed: str) -> float:
    """Return the value of a run of digits; raises UnitProblem for a decimal comma or misplaced commas.

    >>> decimal("15,000.5", "15,000.5 lb")
    15000.5
    """
    mantissa, _, power = digits.replace("E", "e").partition("e")
    if power and abs(int(power)) > 15:
        raise refuse(typed, "has a power of ten beyond anything on a cart", "Write the number out")
    if mantissa.count(".") > 1:
        raise refuse(typed, "has a number with two decimal points", "Write one number, as in 1.5")
    whole, point, _ = mantissa.partition(".")
    if "," in mantissa:
        groups = whole.split(",")
        grouped = 1 <= len(groups[0]) <= 3 and all(len(group) == 3 for group in groups[1:])
        if not grouped or groups[0].startswith("0") or "," in mantissa[len(whole) :]:
            once = mantissa.count(",") == 1 and not point
            better = typed.replace(mantissa, mantissa.replace(",", ".")) if once else ""
            hint = f'Write a decimal point: "{better.strip()}"' if better else "Write it as 15,000 or 1.5"
            raise refuse(typed, "has a comma where thousands are not parted", hint)
    return float(digits.replace(",", ""))


def _is_fraction(found: list[Token], at: int) -> bool:
    """True where whole number, slash, whole number follow each other."""
    if at + 2 >= len(found) or found[at + 1].text != "/":
        return False
    return found[at].text.isdecimal() and found[at + 2].text.isdecimal()


def _ratio(found: list[Token], at: int, typed: str) -> float:
    top, bottom = int(found[at].text), int(found[at + 2].text)
    if bottom == 0:
        raise refuse(typed, "divides by zero", "Write a fraction such as 1/2")
    return top / bottom


def _no_fraction_of(found: list[Token], at: int, typed: str) -> None:
    """Refuse 1.5/2 and 1.5 1/2: a decimal and a fraction in one number."""
    after = found[at + 1 : at + 3]
    over = len(after) == 2 and after[0].text == "/" and after[1].kind == "number"
    if over or _is_fraction(found, at + 1):
        raise refuse(typed, "mixes a decimal with a fraction", "Write one or the other: 1.5 or 1 1/2")


def _between(found: list[Token], first: int, last: int) -> str:
    """Return the text of some tokens as one would write it: 1 1/2."""
    written = ""
    for token in found[first:last]:
        gap = written and token.kind == "number" and written[-1].isdecimal()
        written += (" " if gap else "") + token.text
    return written
