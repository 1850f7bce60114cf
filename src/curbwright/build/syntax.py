"""Every place where a text is not TOML, found one after the other.

The reader of the standard library stops at the first mistake. Most mistakes stay on their own line, so
the faulty statement is set aside and the rest read on, until all is read or the mistake (a bracket that
never closes) hides what follows.
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from functools import lru_cache

from curbwright.build.lines import dotted
from curbwright.build.problems import Problem
from curbwright.build.syntax_advice import STAND_IN, Fault, advice
from curbwright.build.written import Statement, written

_PLACE = re.compile(r" \(at (?:line (\d+), column (\d+)|end of document)\)$")
_MOST_PROBLEMS = 20
_LONG_TEXT = 100_000  # characters; reading a longer text again and again would keep the builder waiting
_MOST_IN_LONG_TEXT = 3


def syntax_problems(text: str) -> tuple[Problem, ...]:
    """The mistakes in ``text``, in its order; none if it is TOML.

    At most 20 are told (3 in a text longer than 100,000 characters); a last problem then says so.
    """
    return _set_aside(text)[0]


def readable_rest(text: str) -> str | None:
    """``text`` with an empty line for each faulty statement, its lines as they were numbered.

    None where some mistake hides what follows it, or where there are more than are told.
    """
    return _set_aside(text)[1]


@lru_cache(maxsize=1)
def _set_aside(text: str) -> tuple[tuple[Problem, ...], str | None]:
    """The mistakes, and what is left without them."""
    rest: str | None = text
    most = _MOST_PROBLEMS if len(text) <= _LONG_TEXT else _MOST_IN_LONG_TEXT
    problems: list[Problem] = []
    while rest is not None:
        found = _first_fault(rest)
        if found is None:
            break
        if len(problems) == most:
            problems.append(Problem(None, "", f"there may be more: the first {most} are shown"))
            rest = None
            break
        told = advice(found.fault)
        line = told.line or found.fault.line
        problems.append(Problem(line, dotted(found.path), told.what, try_this=told.try_this))
        rest = found.rest
    return tuple(problems), rest


@dataclass(frozen=True)
class _Found:
    fault: Fault
    path: tuple[str | int, ...]
    rest: str | None
    """The text with the faulty statement set aside; None if what follows cannot be told apart from it."""


def _first_fault(src: str) -> _Found | None:
    try:
        tomllib.loads(src)
    except tomllib.TOMLDecodeError as error:
        says = str(error)
    except (ValueError, OverflowError, RecursionError):
        return None  # told elsewhere, with its own words
    else:
        return None
    place = _PLACE.search(says)
    says = _PLACE.sub("", says)
    offset = _offset(src, place)
    seen = written(src)
    before = [one for one in seen.statements if one.start < offset]
    statement = before[-1] if before else None
    if says == "Invalid statement":
        statement = None
    line = _line(src, min(offset, len(src.rstrip())))
    begins = _line(src, statement.start) if statement else line
    fault = Fault(src, says, offset, line, begins, statement, _lines_before(src, statement))
    return _Found(fault, fault.path, _without(fault))


def _offset(src: str, place: re.Match[str] | None) -> int:
    if place is None or place[1] is None:
        return len(src)
    start = 0
    for _ in range(int(place[1]) - 1):
        start = src.index("\n", start) + 1
    return start + int(place[2]) - 1


def _line(src: str, offset: int) -> int:
    return src.count("\n", 0, offset) + 1


def _lines_before(src: str, statement: Statement | None) -> dict[tuple[str | int, ...], int]:
    return written(src[: statement.start]).lines if statement else {}


def _without(fault: Fault) -> str | None:
    """Put an empty line, or a heading of another name, where the faulty statement stood."""
    lines = fault.src.split("\n")
    statement = fault.statement
    spread = re.match(r'\[|\{|"""|' + "'''", fault.value)
    if statement and statement.kind == "element":
        return None
    if not fault.is_twice and (fault.begins != fault.line or spread):
        return None
    lines[fault.begins - 1 : fault.line] = [""] * (fault.line - fault.begins + 1)
    if statement and statement.kind == "table":
        lines[fault.begins - 1] = f"[{STAND_IN}{fault.begins}]"
    return "\n".join(lines)
