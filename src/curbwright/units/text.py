"""From what a builder types to plain characters, and to words and numbers."""

from __future__ import annotations

from typing import NamedTuple

from curbwright.errors import UnitProblem

LONGEST = 64
"""No quantity needs more characters than this; a longer text is refused unread."""

_SAME = {
    **dict.fromkeys("\u00a0\u2007\u2009\u202f\u2002\u2003\u200a\t\n\r", " "),
    **dict.fromkeys("\u2212\u2010\u2011\u2012\u2013\u2014", "-"),
    **dict.fromkeys("\u2032\u2019\u2018\u00b4`", "'"),
    **dict.fromkeys("\u2033\u201d\u201c\u201e", '"'),
    **dict.fromkeys("\u00b7\u22c5\u2022\u2219\u00d7", "*"),
    **dict.fromkeys("\u00ba\u02da", "°"),
    "\u2044": "/", "\u2215": "/", "\u2126": "Ω", "\u2103": "°C", "\u2109": "°F",
    "\u00b2": "^2", "\u00b3": "^3", "\u2074": "^4", "\u2082": "2",
}  # fmt: skip
_FRACTIONS = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5",
    "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
_PLAIN = str.maketrans(_SAME | {sign: f" {words}" for sign, words in _FRACTIONS.items()})
_ALONE = "%$¢#€£"
_DIGITS = "0123456789"


class Token(NamedTuple):
    """A number, a word or a sign of a text, with the place it starts and ends at."""

    kind: str
    """``number``, ``word`` or ``sign``."""
    text: str
    start: int
    end: int


def plain(typed: str) -> str:
    """Return a text with typographic characters made plain and its spaces made single.

    >>> plain("5\\u20326\\u00bd\\u2033")
    '5\\'6 1/2"'
    """
    words = typed.translate(_PLAIN).replace("''", '"').replace("**", "^")
    return " ".join(words.split())


def printable(words: str) -> str:
    """Return a text with every character that does not print replaced by a question mark."""
    return "".join(sign if sign.isprintable() else "?" for sign in words)


def quoted(typed: str) -> str:
    """Return a text in quotes, fit to print: cut when long, odd characters replaced.

    >>> quoted("62 lb\\x00")
    '"62 lb?"'
    """
    return f'"{printable(typed if len(typed) <= 32 else typed[:28] + "...")}"'


def refuse(typed: str, why: str, try_this: str) -> UnitProblem:
    """Return the problem of a text, ready to be raised."""
    return UnitProblem(f"{quoted(typed)} {why}", printable(try_this))


def tokens(words: str) -> list[Token]:
    """Return the numbers, words and signs of a plain text, in one pass.

    >>> [token.text for token in tokens("2 lb/ft2")]
    ['2', 'lb', '/', 'ft', '2']
    """
    found: list[Token] = []
    at = 0
    while at < len(words):
        start, sign = at, words[at]
        if sign == " ":
            at += 1
            continue
        if sign in _DIGITS or (sign == "." and _digit(words, at + 1)):
            at = _past_number(words, at)
            kind = "number"
        elif _in_word(sign):
            while at < len(words) and _in_word(words[at]):
                at += 1
            kind = "word"
        else:
            at += 1
            kind = "word" if sign in _ALONE or sign in "'\"" else "sign"
        found.append(Token(kind, words[start:at], start, at))
    return found


def _in_word(sign: str) -> bool:
    return sign.isalpha() or sign in "°_"


def _digit(words: str, at: int) -> bool:
    return at < len(words) and words[at] in _DIGITS


def _past_number(words: str, at: int) -> int:
    """Return the place after a run of digits, with the commas, points and power of ten inside it."""
    end = len(words)
    while at < end and (words[at] in _DIGITS or (words[at] in ".," and _digit(words, at + 1))):
        at += 1
    if at < end and words[at] in "eE":
        power = at + 2 if words[at + 1 : at + 2] in ("+", "-") else at + 1
        if _digit(words, power):
            at = power
            while at < end and words[at] in _DIGITS:
                at += 1
    return at
