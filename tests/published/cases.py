"""Published cases as data: reading a case file, and saying plainly what is wrong with one."""

from __future__ import annotations

import json
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

HOWS = ("read", "computed", "memory", "practice")
NEEDED = ("id", "what", "inputs", "expected", "source", "how", "answers")
OBJECTS = ("inputs", "expected", "source", "answers")
ROUTES: dict[str, tuple[str, ...]] = {
    "equation": ("with",),
    "schedule": ("over", "with"),
    "sum": ("unit",),
    "quotient": ("unit",),
    "at_least": ("unit",),
    "table": ("column", "kind"),
    "figure": ("build",),
    "step": (),
    "not_answered": (),
}
"""Each way to answer, by the word that names it, and what else it must say."""


class CaseError(Exception):
    """A case or a case file that cannot be worked as it is written."""


@dataclass(frozen=True)
class Case:
    """One published or cross-checked answer, with the way to ask the program for it."""

    id: str
    what: str
    inputs: dict[str, Any]
    expected: dict[str, dict[str, Any]]
    answers: dict[str, Any]
    steps: tuple[dict[str, Any], ...]
    rel_tol: float
    abs_tol: float
    source: dict[str, str]
    how: str
    note: str = ""
    folder: Path = field(default=Path(), compare=False)

    @property
    def not_answered(self) -> str:
        """The trade that will answer the case, where none does yet."""
        waits = {str(way["not_answered"]) for way in self.answers.values() if _route(way) == "not_answered"}
        return ", ".join(sorted(waits))


@dataclass
class CaseFile:
    """What a case file holds: the cases that can be worked, and a line for each thing wrong with it."""

    path: Path
    cases: list[Case]
    problems: list[str]


def read_cases(path: Path) -> CaseFile:
    """Read a case file; nothing is raised: what cannot be read stands in its problems."""
    found = CaseFile(path, [], [])
    try:
        rows = json.loads(path.read_text(encoding="utf-8"))
    except OSError as error:
        found.problems.append(f"cannot be opened: {error.strerror}")
        return found
    except (json.JSONDecodeError, UnicodeDecodeError) as error:
        found.problems.append(f"is not JSON: {error}")
        return found
    if not isinstance(rows, list):
        found.problems.append("is not a list of cases")
        return found
    seen: set[str] = set()
    for number, row in enumerate(rows, 1):
        name = str(row.get("id", f"case {number}")) if isinstance(row, dict) else f"case {number}"
        problems = _problems(row)
        if name in seen:
            problems.append("the id is used twice")
        seen.add(name)
        found.problems += [f"{name}: {problem}" for problem in problems]
        if not problems:
            found.cases.append(_case(row, path.parent))
    return found


def _case(row: dict[str, Any], folder: Path) -> Case:
    return Case(
        id=row["id"],
        what=row["what"],
        inputs=row["inputs"],
        expected=row["expected"],
        answers=row["answers"],
        steps=tuple(row.get("steps", ())),
        rel_tol=float(row.get("rel_tol", 0.0)),
        abs_tol=float(row.get("abs_tol", 0.0)),
        source=row["source"],
        how=row["how"],
        note=row.get("note", ""),
        folder=folder,
    )


def _problems(row: Any) -> list[str]:
    """Return everything wrong with the form of one case."""
    if not isinstance(row, dict):
        return ["is not an object"]
    problems = [f"has no {word}" for word in NEEDED if word not in row]
    problems += [f"{word} is not an object" for word in OBJECTS if not isinstance(row.get(word, {}), dict)]
    if problems:
        return problems
    if not row.keys() & {"rel_tol", "abs_tol"}:
        problems.append("has neither rel_tol nor abs_tol")
    problems += [
        f"{word} is not a number" for word in ("rel_tol", "abs_tol") if not _is_number(row.get(word, 0))
    ]
    if row["how"] not in HOWS:
        problems.append(f"how is {row['how']!r}, not one of {', '.join(HOWS)}")
    if not row["expected"]:
        problems.append("expects nothing")
    problems += [f"{name} has no answer" for name in row["expected"] if name not in row["answers"]]
    problems += [
        f"{name} is answered but not expected" for name in row["answers"] if name not in row["expected"]
    ]
    problems += [
        f"{name} is expected without a value and a unit"
        for name in row["expected"]
        if not _has_value(row["expected"][name])
    ]
    problems += [
        f"{name} is given without a value and a unit, or rows and columns"
        for name in row["inputs"]
        if not _is_input(row["inputs"][name])
    ]
    for name, way in row["answers"].items():
        problems += [f"{name} {problem}" for problem in _wrong_with(way)]
    for number, step in enumerate(row.get("steps", ()), 1):
        if not isinstance(step, dict) or not isinstance(step.get("name"), str):
            problems.append(f"step {number} has no name")
        else:
            problems += [f"step {step['name']} {problem}" for problem in _wrong_with(step)]
    return problems


def _wrong_with(way: Any) -> list[str]:
    """Return what is wrong with an answer or a step, and with those inside it."""
    route = _route(way)
    if not route:
        return [f"is answered by none of {', '.join(ROUTES)}"]
    if isinstance(way, str):
        return []
    problems = [f"is answered by {route} and says no {word}" for word in ROUTES[route] if word not in way]
    inside = [*way["with"].values()] if isinstance(way.get("with"), dict) else []
    inside += [one for word in ("sum", "quotient", "at_least") for one in way.get(word, ())]
    for one in inside:
        if isinstance(one, dict) and not _has_value(one):
            problems += _wrong_with(one)
    return problems


def _route(way: Any) -> str:
    """Return by which route an answer is sought; a bare name is a step or an input."""
    if isinstance(way, str):
        return "step"
    return next((route for route in ROUTES if isinstance(way, dict) and route in way), "")


def _has_value(one: Any) -> bool:
    return isinstance(one, dict) and isinstance(one.get("unit"), str) and _is_number(one.get("value"))


def _is_number(value: Any) -> bool:
    return isinstance(value, int | float)


def _is_input(one: Any) -> bool:
    if isinstance(one, dict) and {"columns", "rows"} <= one.keys():
        return isinstance(one["columns"], dict) and isinstance(one["rows"], dict) and bool(one["rows"])
    return _has_value(one)
