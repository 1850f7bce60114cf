"""The one way to change a build file: a value set, added or removed at a path, all else left as it is.

A change is worked on the text itself, so remarks, blank lines, order and spelling survive. Before it is
handed back it is read again: nothing but the path may differ.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher
from typing import Any

from curbwright.build import splice
from curbwright.build.lines import dotted, split
from curbwright.build.problems import did_you_mean
from curbwright.build.saving import create, save
from curbwright.build.text import DEEPEST, parse
from curbwright.build.written import FieldPath, written
from curbwright.errors import BuildFileProblem, EditProblem

__all__ = ["Edit", "add", "create", "remove", "save", "set_value"]


@dataclass(frozen=True)
class Edit:
    """A changed text, and the lines that changed in the unified form (- old, + new, one line around)."""

    text: str
    diff: str


def set_value(text: str, path: str | Sequence[str | int], value: object) -> Edit:
    """Write a value at a path, which may be new; missing tables around it are made.

    ``path`` is dotted text or a tuple. ``value`` is text, a truth, a number, or a list or table of these.
    A position one past the end of a list adds to it. Raises EditProblem, or BuildFileProblem if ``text``
    itself cannot be read.

    >>> print(set_value('[trailer]\\nmass = "620 lb"  # empty\\n', "trailer.mass", "655 lb").text)
    [trailer]
    mass = "655 lb"  # empty
    <BLANKLINE>
    """
    mark, text = _without_mark(text)
    data = parse(text)
    place = _resolved(data, path)
    wanted = _plain(value, place)
    _check_way(data, place)
    changed = _become(text, place, _get(data, place), wanted)
    return _checked(mark, text, changed, _with(data, place, wanted))


def add(text: str, path: str | Sequence[str | int], mapping: Mapping[str, object]) -> Edit:
    """Add a table at a new path, or at the end of the list at ``path``.

    Raises EditProblem if something else is there already.
    """
    if not isinstance(mapping, Mapping):
        raise EditProblem(f"only a table can be added, not {type(mapping).__name__}")
    data = parse(text)
    place = _resolved(data, path)
    found = _get(data, place)
    if isinstance(found, list):
        place = (*place, len(found))
    elif found is not _MISSING:
        raise EditProblem(
            f"{dotted(place)} is already in the file{_at_line(text, place)}; set its fields instead"
        )
    return set_value(text, place, mapping)


def remove(text: str, path: str | Sequence[str | int]) -> Edit:
    """Take a field, a table or a list element out of the file; raises EditProblem if it is not there.

    A table or list that would vanish with its last field stays, empty. Remarks above what is removed stay.
    """
    mark, text = _without_mark(text)
    data = parse(text)
    place = _resolved(data, path)
    if _get(data, place) is _MISSING:
        around = _get(data, place[:-1])
        near = did_you_mean(str(place[-1]), around) if isinstance(around, dict) else ""
        raise EditProblem(f"{dotted(place)} is not in the file, so it cannot be removed. {near}".strip())
    wanted = _with(data, place, _MISSING)
    changed = splice.delete(text, place)
    for length in range(1, len(place)):
        if _get(parse(changed), place[:length]) is _MISSING:
            changed = splice.insert(changed, place[:length], _get(wanted, place[:length]))
            break
    return _checked(mark, text, changed, wanted)


class _Missing:
    """Stands for what is not in the file."""


_MISSING = _Missing()


def _resolved(data: Mapping[str, Any], path: str | Sequence[str | int]) -> FieldPath:
    """The path as a tuple, with positions as numbers where the file has a list."""
    parts = split(path) if isinstance(path, str) else tuple(path)
    if not parts or (isinstance(path, str) and "" in parts):
        raise EditProblem(f"{path!r} is not the path of a field")
    place: FieldPath = ()
    for part in parts:
        if isinstance(part, str) and isinstance(_get(data, place), list) and part.isdecimal():
            part = int(part[:9])
        place += (part,)
    return place


def _get(data: Any, place: FieldPath) -> Any:
    for part in place:
        there = isinstance(data, dict) and part in data
        if isinstance(data, list):
            there = isinstance(part, int) and 0 <= part < len(data)
        if not there:
            return _MISSING
        data = data[part]
    return data


def _check_way(data: Any, place: FieldPath) -> None:
    """Whether a value can stand at ``place``: everything on the way is a table, or a list long enough."""
    for length, part in enumerate(place):
        around = _get(data, place[:length])
        name = dotted(place[:length]) or "the file"
        if isinstance(around, list):
            if not isinstance(part, int) or isinstance(part, bool) or not 0 <= part <= len(around):
                raise EditProblem(f"{name} is a list of {len(around)}, and {part!r} is not a position in it")
        elif around is not _MISSING and not isinstance(around, dict):
            raise EditProblem(f"{name} is a value, not a table, so {part!r} cannot be put inside it")
        elif not isinstance(part, str):
            raise EditProblem(f"{name} is not a list, so it has no position {part!r}")


def _plain(value: object, place: FieldPath) -> Any:
    """The value as the file would give it back; refuses what a file cannot hold."""
    if len(place) > DEEPEST:
        raise EditProblem(f"{dotted(place[:3])}... would be nested more than {DEEPEST} levels deep")
    if isinstance(value, bool):
        return value
    for kind in (str, int, float):
        if isinstance(value, kind):
            return kind(value)
    if isinstance(value, Mapping):
        return {key: _plain(inner, (*place, key)) for key, inner in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(inner, (*place, index)) for index, inner in enumerate(value)]
    raise EditProblem(
        f"a build file cannot hold {type(value).__name__}: only text, numbers, lists and tables"
    )


def _become(text: str, place: FieldPath, old: Any, new: Any) -> str:
    """Change as little of the text as makes ``old`` into ``new``."""
    if old is _MISSING:
        return splice.insert(text, place, new)
    if _same(old, new):
        return text
    seen = written(text)
    if isinstance(old, dict) and isinstance(new, dict):
        return _become_table(text, place, old, new)
    if place[:-1] in seen.counts:
        raise EditProblem(splice.ONLY_TABLES)
    if (
        isinstance(old, list)
        and isinstance(new, list)
        and _elements_stay(place, old, new, place in seen.counts)
    ):
        for index in range(len(old), len(new)):
            text = splice.insert(text, (*place, index), new[index])
        for index in range(len(old) - 1, len(new) - 1, -1):
            text = splice.delete(text, (*place, index))
        for index, (before, after) in enumerate(zip(old, new, strict=False)):
            text = _become(text, (*place, index), before, after)
        return text
    if place in seen.values:
        return splice.replace(text, place, new)
    return splice.insert(splice.delete(text, place), place, new)


def _become_table(text: str, place: FieldPath, old: dict[str, Any], new: dict[str, Any]) -> str:
    for key, value in new.items():
        text = _become(text, (*place, key), old.get(key, _MISSING), value)
    for key in old:
        if key not in new:
            text = splice.delete(text, (*place, key))
    return text if place in written(text).lines else splice.insert(text, place, {})


def _elements_stay(place: FieldPath, old: list[Any], new: list[Any], by_headings: bool) -> bool:
    if by_headings:
        return bool(new) and all(isinstance(one, dict) for one in new)
    return len(old) == len(new) or (len(old) < len(new) and _same(old, new[: len(old)]))


def _with(data: Any, place: FieldPath, value: Any) -> Any:
    """A copy of ``data`` with ``value`` at ``place``, or without the place."""
    if not place:
        return value
    part, rest = place[0], place[1:]
    if isinstance(data, list):
        assert isinstance(part, int)
        if value is _MISSING and not rest:
            return data[:part] + data[part + 1 :]
        old = data[part] if part < len(data) else {}
        return [*data[:part], _with(old, rest, value), *data[part + 1 :]]
    assert isinstance(part, str)
    if value is _MISSING and not rest:
        return {key: inner for key, inner in data.items() if key != part}
    return {**data, part: _with(data.get(part, {}), rest, value)}


def _same(one: Any, other: Any) -> bool:
    if type(one) is not type(other):
        return False
    if isinstance(one, dict):
        return one.keys() == other.keys() and all(_same(one[key], other[key]) for key in one)
    if isinstance(one, list):
        return len(one) == len(other) and all(map(_same, one, other))
    return repr(one) == repr(other) if isinstance(one, float) else bool(one == other)


def _without_mark(text: str) -> tuple[str, str]:
    """The byte-order mark, if there is one, and the rest."""
    return ("\ufeff", text[1:]) if text.startswith("\ufeff") else ("", text)


def _checked(mark: str, text: str, changed: str, wanted: Any) -> Edit:
    """Hand the change back only if the text reads as wanted."""
    try:
        outcome = parse(changed)
    except BuildFileProblem as unreadable:
        raise EditProblem(
            f"the change was not made: the file could not be read after it. {unreadable}"
        ) from None
    if not _same(outcome, wanted):
        raise EditProblem("the change was not made: it would have touched something else in the file too")
    return Edit(mark + changed, _diff(text, changed))


def _at_line(text: str, place: FieldPath) -> str:
    line = written(text).lines.get(place)
    return f" (line {line})" if line else ""


def _diff(before: str, after: str) -> str:
    """The changed lines with one line around; equal lines at both ends are not compared again."""
    old, new = ([line.removesuffix("\r") for line in text.split("\n")] for text in (before, after))
    old, new = (lines[:-1] if lines[-1] == "" else lines for lines in (old, new))
    shared = min(len(old), len(new))
    head = next((n for n in range(shared) if old[n] != new[n]), shared)
    tail = next((n for n in range(shared - head) if old[-1 - n] != new[-1 - n]), shared - head)
    skip = max(head - 1, 0)
    keep = max(tail - 1, 0)
    old, new = old[skip : len(old) - keep], new[skip : len(new) - keep]
    lines: list[str] = []
    for group in SequenceMatcher(None, old, new, autojunk=False).get_grouped_opcodes(1):
        (_, a, _, c, _), (_, _, b, _, d) = group[0], group[-1]
        lines.append(f"@@ -{skip + a + 1},{b - a} +{skip + c + 1},{d - c} @@")
        for kind, i, j, k, m in group:
            if kind == "equal":
                lines += [f" {line}" for line in old[i:j]]
                continue
            lines += [f"-{line}" for line in old[i:j]] + [f"+{line}" for line in new[k:m]]
    return "\n".join(lines)
