"""What is wrong with a build file, said once, in a builder's words, with the line it stands on."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches

_LONGEST_WORD = 80  # comparing longer words costs time and finds nothing a person mistyped


@dataclass(frozen=True)
class Problem:
    """One thing to put right in a build file.

    ``line`` counts from 1 and is None when the thing is nowhere in the file. ``path`` is the field
    (``items.griddle.mass``) or empty. ``what`` says what is wrong, ``allowed`` what would be allowed.
    ``try_this`` is either what to type instead (``"62 lb"``, printed after the word Try) or a whole
    sentence that begins with a capital. ``severity`` is ``"error"`` or ``"caution"``.

    >>> print(Problem(42, "items.griddle.mass", '"62" has no unit', "a mass: lb, kg, oz", '"62 lb"'))
    line 42, items.griddle.mass: "62" has no unit (a mass: lb, kg, oz). Try "62 lb".
    """

    line: int | None
    path: str
    what: str
    allowed: str = ""
    try_this: str = ""
    severity: str = "error"

    def __post_init__(self) -> None:
        if self.severity not in ("error", "caution"):
            raise ValueError(f"severity is error or caution, not {self.severity!r}")

    def __str__(self) -> str:
        where = [f"line {self.line}"] if self.line is not None else []
        where += [self.path] if self.path else []
        says = self.what.strip().rstrip(".") + (f" ({self.allowed})" if self.allowed else "")
        if self.severity == "caution":
            says = f"caution: {says}"
        sentences = [_ended(": ".join([", ".join(where), says] if where else [says]))]
        if self.try_this:
            sentences.append(_ended(_advice(self.try_this.strip())))
        return _printable(" ".join(sentences))


def report(problems: Iterable[Problem], *, width: int = 100) -> str:
    """Every problem in the order of its line, then how many there are.

    A problem longer than ``width`` characters goes on, indented, below its first line. Problems that
    stand on no line come last.
    """
    listed = sorted(problems, key=lambda one: (one.line is None, one.line or 0, one.path))
    wrapped = [_wrapped(str(one), width) for one in listed]
    return "\n".join([*wrapped, _count(listed)])


def did_you_mean(word: str, choices: Iterable[str]) -> str:
    """A question naming the nearest of ``choices``, or nothing when none is near.

    >>> did_you_mean("gridle", ["griddle", "fryer"])
    'Did you mean "griddle"?'
    >>> did_you_mean("sink", ["griddle", "fryer"])
    ''
    """
    if len(word) > _LONGEST_WORD:
        return ""
    plain = {_plain(choice): choice for choice in reversed(list(choices))}
    near = get_close_matches(_plain(word), plain, n=1)
    return f'Did you mean "{plain[near[0]]}"?' if near and plain[near[0]] != word else ""


def _wrapped(text: str, width: int) -> str:
    return textwrap.fill(
        text, max(width, 20), subsequent_indent="    ", break_long_words=False, break_on_hyphens=False
    )


def _plain(word: str) -> str:
    return word.casefold().replace("-", "_").replace(" ", "_")


def _advice(text: str) -> str:
    a_sentence = text[:1].isupper() and " " in text
    return text if a_sentence else f"Try {text}"


def _ended(text: str) -> str:
    return text if text.endswith((".", "?", "!")) else f"{text}."


def _printable(text: str) -> str:
    """One line of text that no terminal can mistake for a command."""
    return "".join(
        mark if mark.isprintable() else " " if mark.isspace() else ascii(mark)[1:-1] for mark in text
    )


def _count(listed: list[Problem]) -> str:
    cautions = sum(one.severity == "caution" for one in listed)
    errors = len(listed) - cautions
    counted = ((errors, "problem"), (cautions, "caution"))
    words = [f"{count} {name}{'' if count == 1 else 's'}" for count, name in counted if count]
    if not words:
        return "No problems."
    return ", ".join(words) + ("; nothing was computed." if errors else ".")
