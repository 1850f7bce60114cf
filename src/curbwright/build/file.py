"""Reads a build file: text → checked, frozen Build, or one report of everything that is wrong."""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, Literal, get_args, get_origin

from pydantic import BaseModel, ValidationError

from curbwright.build import kinds
from curbwright.build.cart import Build, assign_paths
from curbwright.build.lines import line_map, line_of
from curbwright.build.part import Part
from curbwright.build.problems import Problem, did_you_mean
from curbwright.build.text import parse, read_text
from curbwright.build.typical import fill
from curbwright.errors import BuildFileProblem

NAMED = {"items": 300, "people": 20, "menu": 100}
"""The tables of named things, and how many of each a cart may have: a cart, not a warehouse."""
_KEY = frozenset("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-")


def read(path: str | Path) -> Build:
    """Read and check a build file.

    Raises BuildFileProblem with every problem at once.
    """
    return load_text(read_text(Path(path)))


def load_text(text: str) -> Build:
    """Check the text of a build file.

    Raises BuildFileProblem with every problem at once.
    """
    data = parse(text)
    where = line_map(text)
    problems = list(_names(data))
    items, filled, more = fill(data.get("items", {}))
    problems += more
    try:
        build = Build.model_validate({**data, "items": items} if "items" in data else data)
    except ValidationError as invalid:
        problems += [_problem(error) for error in invalid.errors(include_url=False)]
        raise _report(problems, where) from None
    assign_paths(build)
    for key, fields in filled.items():
        build.items[key]._filled.update(fields)
    problems += list(_contradictions(build))
    if problems:
        raise _report(problems, where)
    return build


def _report(problems: list[Problem], where: Mapping[tuple[str | int, ...], int]) -> BuildFileProblem:
    placed = [
        Problem(
            problem.line or (line_of(where, tuple(problem.path.split("."))) if problem.path else None),
            problem.path, problem.what, problem.allowed, problem.try_this, problem.severity,
        )
        for problem in dict.fromkeys(problems)
    ]  # fmt: skip
    return BuildFileProblem(tuple(sorted(placed, key=lambda one: (one.line or 0, one.path))))


def _names(data: Mapping[str, Any]) -> Iterator[Problem]:
    """Check the names the builder chose, and how many there are."""
    shell = data.get("shell")
    openings = shell.get("openings") if isinstance(shell, dict) else None
    tables = {**{name: data.get(name) for name in NAMED}, "shell.openings": openings}
    for name, table in tables.items():
        if not isinstance(table, dict):
            continue
        most = NAMED.get(name, 40)
        if len(table) > most:
            yield Problem(None, name, f"{len(table)} entries", f"at most {most}")
        for key in table:
            if not 1 <= len(key) <= 40 or not set(key) <= _KEY:
                yield Problem(
                    None, name, f"the name {key[:40]!r} cannot be used", "letters, digits, _ and -, up to 40",
                    "Write a short name here and the full one as its label",
                )  # fmt: skip


def _problem(error: Any) -> Problem:
    """One of pydantic's errors in a builder's words."""
    loc = tuple(part for part in error["loc"] if part != "[key]")
    path = ".".join(str(part) for part in loc)
    kind, context, value = error["type"], error.get("ctx", {}), error.get("input")
    if kind == "quantity":
        return Problem(None, path, context["what"], try_this=context["try_this"])
    if kind == "extra_forbidden":
        section = _section(loc[:-1])
        fields = list(section.model_fields) if section else []
        hint = did_you_mean(str(loc[-1]), fields) or f"The fields here are {', '.join(fields)}"
        return Problem(
            None, path, f"{str(loc[-1])[:40]!r} is not a field of {_called(loc[:-1])}", try_this=hint
        )
    if kind == "missing":
        section = _section(loc[:-1])
        says = (
            section.declared(str(loc[-1]))["says"] if section and loc[-1] in section.model_fields else loc[-1]
        )
        return Problem(
            None, path, f"is missing: {says}", try_this=f"Add {loc[-1]} = ... to {_called(loc[:-1])}"
        )
    if kind == "literal_error":
        section = _section(loc[:-1])
        choices = (
            list(_choices(section.model_fields[str(loc[-1])].annotation))
            if section and loc[-1] in section.model_fields
            else []
        )
        allowed = ", ".join(choices) or str(context.get("expected"))
        return Problem(
            None,
            path,
            f"{_short(value)} is not one of the choices",
            allowed,
            did_you_mean(str(value), choices),
        )
    return Problem(None, path, *_plain(kind, value, context, error["msg"]))


def _plain(kind: str, value: Any, context: Mapping[str, Any], message: str) -> tuple[str, str, str]:
    """What is wrong, what is allowed and what to try, for words, whole numbers, yes or no and tables."""
    limits = {"greater_than_equal": "ge", "less_than_equal": "le"}
    if kind in limits:
        return (
            f"{_short(value)} is out of range",
            f"{'at least' if 'greater' in kind else 'at most'} {context[limits[kind]]}",
            "",
        )
    wanted = {
        "string_type": ("words in quotes", 'Write it in quotes: "..."'),
        "int_type": ("a whole number without quotes", "Write a whole number, such as 2"),
        "int_parsing": ("a whole number", "Write a whole number, such as 2"),
        "int_from_float": ("a whole number", "Write a whole number, such as 2"),
        "bool_type": ("true or false", "Write true or false, without quotes"),
        "bool_parsing": ("true or false", "Write true or false, without quotes"),
        "list_type": ("a list in square brackets", 'Write a list: ["...", "..."]'),
        "dict_type": (
            "a table of named entries",
            "Give each one a header of its own, such as [items.griddle]",
        ),
        "model_type": ("a section with fields", "Give it a header of its own, such as [trailer]"),
    }
    if kind in wanted:
        return f"{_short(value)} does not belong here", *wanted[kind]
    return f"{_short(value)}: {message[:80].lower()}", "", ""


def _short(value: Any) -> str:
    text = repr(value)
    return text if len(text) <= 40 else text[:37] + "..."


def _called(loc: tuple[Any, ...]) -> str:
    return f"[{'.'.join(map(str, loc))}]" if loc else "the build file"


def _section(loc: tuple[Any, ...]) -> type[Part] | None:
    """The class of the section at a place in the build file."""
    current: Any = Build
    for step in loc:
        if isinstance(current, type) and issubclass(current, BaseModel):
            if step not in current.model_fields:
                return None
            current = _inside(current.model_fields[step].annotation)
        elif get_origin(current) is dict:
            current = _inside(get_args(current)[1])
        else:
            return None
    return current if isinstance(current, type) and issubclass(current, Part) else None


def _inside(annotation: Any) -> Any:
    """An optional type without its None."""
    inner = [one for one in get_args(annotation) if one is not type(None)]
    return inner[0] if len(inner) == 1 and get_origin(annotation) is not dict else annotation


def _choices(annotation: Any) -> Iterator[str]:
    """The words a Literal allows, however deep it is wrapped."""
    if get_origin(annotation) is Literal:
        yield from (str(word) for word in get_args(annotation))
    else:
        for inner in get_args(annotation):
            yield from _choices(inner)


def _contradictions(build: Build) -> Iterator[Problem]:
    """Things that cannot both be meant; a thing that is merely bad is a finding, not a problem."""
    trailer = build.trailer
    if trailer.deck_length <= 0 or trailer.deck_width <= 0:
        yield Problem(None, "trailer.deck_length", "a deck needs a length and a width above nothing")
    if trailer.axle.back is not None and trailer.axle.back + trailer.ball_to_deck <= 0:
        yield Problem(None, "trailer.axle.back", "puts the axle at or ahead of the ball")
    if trailer.bare_tongue is not None and trailer.bare_centre_back is not None:
        yield Problem(
            None, "trailer.bare_centre_back",
            "stands beside bare_tongue: both say where the trailer balances",
            try_this="Keep bare_tongue, which is measured, and delete bare_centre_back",
        )  # fmt: skip
    for key, item in build.items.items():
        yield from _item_contradictions(f"items.{key}", item, build)
    for key, sold in build.menu.items():
        used = sold.cooked_on
        if used is not None and used.removeprefix("items.") not in build.items:
            near = difflib.get_close_matches(used.removeprefix("items."), build.items, n=1)
            hint = f"Did you mean {near[0]}?" if near else f"The items are {', '.join(build.items) or 'none'}"
            yield Problem(None, f"menu.{key}.cooked_on", f"there is no item {_short(used)}", try_this=hint)


def _item_contradictions(path: str, item: Any, build: Build) -> Iterator[Problem]:
    wall = item.side in ("curb", "street")
    if wall and "off_centre" in item.model_fields_set:
        yield Problem(
            None, f"{path}.off_centre", f"does not go with side = {item.side!r}, which says where it stands",
            try_this="Use off_wall for a gap behind it, or side = \"centre\"",
        )  # fmt: skip
    if item.side == "centre" and "off_wall" in item.model_fields_set:
        yield Problem(None, f"{path}.off_wall", 'does not go with side = "centre"', try_this="Use off_centre")
    if item.kind is not None and item.kind not in kinds.names():
        hint = did_you_mean(item.kind, kinds.names()) or "See docs/reference/kinds.md for the list"
        yield Problem(
            None, f"{path}.kind", f"{_short(item.kind)} is not a kind of thing known here", try_this=hint
        )
