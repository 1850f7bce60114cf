"""What a field's check found, said in a builder's words."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Any, Literal, get_args, get_origin

from pydantic import BaseModel

from curbwright.build.cart import Build
from curbwright.build.part import Part
from curbwright.build.problems import Problem, did_you_mean

LONGEST_NAME = 40
"""Letters in a name that the builder chooses."""
MISSING = "is missing"
NO_ITEM = "there is no item"
_LONGEST_SHOWN = 40
_SAID = {"left": "street", "right": "curb", "back": "rear", "imperial": "us", "metric": "si", "top": "roof"}
"""What people say for the words of the build file."""
_NAME = re.compile(rf"[A-Za-z0-9_-]{{1,{LONGEST_NAME}}}")


def fits(name: str) -> bool:
    """Whether a name the builder chose can be used: short, of letters, digits, ``_`` and ``-``."""
    return _NAME.fullmatch(name) is not None


def problem(error: Any) -> Problem:
    """One of pydantic's errors in a builder's words."""
    loc = tuple(part for part in error["loc"] if part != "[key]")
    path = ".".join(str(part) for part in loc)
    kind, context, value = error["type"], error.get("ctx", {}), error.get("input")
    section = _section(loc[:-1])
    if kind == "quantity":
        return Problem(None, path, context["what"], try_this=context["try_this"])
    if kind == "extra_forbidden":
        what = f"{short(str(loc[-1]))} is not a field of {_called(loc[:-1])}"
        fields = list(section.model_fields) if section else []
        return Problem(None, path, what, try_this=_meant(loc, value, fields))
    if kind == "missing":
        known = section is not None and loc[-1] in section.model_fields
        says = str(section.declared(str(loc[-1]))["says"]) if section and known else ""
        return Problem(None, path, MISSING, says, f"Add {loc[-1]} = ... to {_called(loc[:-1])}")
    if kind == "literal_error":
        of = loc[:-1] if isinstance(loc[-1], int) else loc
        holder = _section(of[:-1])
        known = holder is not None and of[-1] in holder.model_fields
        choices = list(_choices(holder.model_fields[str(of[-1])].annotation)) if holder and known else []
        allowed = ", ".join(choices) or str(context.get("expected"))
        what = f"{short(value)} is not one of the choices"
        meant = _SAID.get(value) if isinstance(value, str) else None
        hint = f'Did you mean "{meant}"?' if meant in choices else did_you_mean(str(value), choices)
        return Problem(None, path, what, allowed, hint)
    return Problem(None, path, *_plain(kind, loc, value, context, error["msg"]))


def _meant(loc: tuple[Any, ...], value: Any, fields: list[str]) -> str:
    """What somebody may have meant by a field that there is not."""
    key = str(loc[-1])
    near = did_you_mean(key, fields)
    if near:
        return near
    if isinstance(value, dict) and fits(key):
        if loc[:1] == ("items",) or len(loc) == 1:
            return f"A thing aboard has a header of its own: [items.{key}]"
        return f"No section can stand here; the fields here are {', '.join(fields)}"
    return f"The fields here are {', '.join(fields)}"


def without_echoes(problems: list[Problem]) -> list[Problem]:
    """Leave out that a field is missing where a problem beside it already says how it was misspelt."""
    hinted = {(one.path.rpartition(".")[0], one.try_this) for one in problems}
    echoes = [
        one for one in problems if one.what == MISSING
        and (one.path.rpartition(".")[0], f'Did you mean "{one.path.rpartition(".")[2]}"?') in hinted
    ]  # fmt: skip
    return [one for one in problems if one not in echoes]


def _plain(
    kind: str, loc: tuple[Any, ...], value: Any, context: Mapping[str, Any], message: str
) -> tuple[str, str, str]:
    """What is wrong, what is allowed and what to try, for words, whole numbers, yes or no and tables."""
    limits = {"greater_than_equal": ("ge", "at least"), "less_than_equal": ("le", "at most")}
    if kind in limits:
        limit, words = limits[kind]
        return f"{short(value)} is out of range", f"{words} {context[limit]}", ""
    if kind == "string_too_short":
        return "is empty", "", "Write a few words between the quotes"
    if kind == "string_too_long":
        return "is too long", f"at most {context['max_length']} characters", ""
    path, key = ".".join(map(str, loc)), loc[-1] if loc else ""
    digits = isinstance(value, str) and value.isascii() and value.isdigit()
    whole = f"Write {key} = {value}" if digits else f"Write it in figures, such as {key} = 3"
    yes = "false" if str(value).casefold() in ("no", "none", "off") else "true"
    text = short(value) if isinstance(value, str) else '"..."'
    wanted = {
        "string_type": ("words in quotes", f'Write {key} = "..."'),
        "int_type": ("a whole number without quotes", whole),
        "int_parsing": ("a whole number without quotes", whole),
        "int_from_float": ("a whole number", whole),
        "bool_type": ("true or false, without quotes", f"Write {key} = {yes}"),
        "bool_parsing": ("true or false, without quotes", f"Write {key} = {yes}"),
        "list_type": ("a list in square brackets", f"Write {key} = [{text}]"),
        "dict_type": ("a table of named entries", f"Give each one a header of its own: [{path}.NAME]"),
        "model_type": ("a section with fields", f"Give it a header of its own: [{path}]"),
    }
    if kind in wanted:
        return f"{short(value)} does not belong here", *wanted[kind]
    return f"{short(value)}: {message[:80].lower()}", "", ""


def short(value: Any) -> str:
    """A value as it stands in the file, cut short."""
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, dict):
        return "a table"
    if isinstance(value, list):
        return "a list"
    text = f'"{value}"' if isinstance(value, str) else str(value)
    return text if len(text) <= _LONGEST_SHOWN else text[: _LONGEST_SHOWN - 3] + "..."


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
