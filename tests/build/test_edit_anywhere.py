"""A change to a build file changes what it names, and not one character more."""

from __future__ import annotations

import copy
import tomllib
from random import Random
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from curbwright.build.edit import add, remove, set_value
from curbwright.build.written import written
from curbwright.errors import EditProblem
from tests.build.toml_writer import Path, keys, styles, tables, write

new_scalars = st.one_of(
    st.text(alphabet="ab \"'\\#=[]{},.\n\r\té°\x7f\x00", max_size=10),
    st.booleans(),
    st.integers(-(2**63), 2**63 - 1),
    st.floats(),
)
new_values = st.recursive(
    new_scalars,
    lambda inner: st.one_of(st.lists(inner, max_size=4), st.dictionaries(keys, inner, max_size=3)),
    max_leaves=6,
)
slowly = [HealthCheck.too_slow, HealthCheck.data_too_large]
often = settings(max_examples=100, suppress_health_check=slowly, deadline=None)


def paths_in(data: Any, here: Path = ()) -> list[Path]:
    found: list[Path] = []
    inside = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    for key, value in inside:
        found += [(*here, key), *paths_in(value, (*here, key))]
    return found


def get(data: Any, path: Path) -> Any:
    for part in path:
        data = data[part]
    return data


def same(one: Any, other: Any) -> bool:
    return repr(_ordered(one)) == repr(_ordered(other))


def _ordered(data: Any) -> Any:
    if isinstance(data, dict):
        return sorted((key, _ordered(value)) for key, value in data.items()) if data else {}
    return [_ordered(value) for value in data] if isinstance(data, list) else data


def lines_kept(before: str, after: str, *, changed: int) -> bool:
    """Whether the filled lines of ``before``, all but ``changed``, stand in ``after`` in their order."""
    there = after.splitlines()
    place = missing = 0
    for line in filter(str.strip, before.splitlines()):
        try:
            place = there.index(line, place) + 1
        except ValueError:
            missing += 1
    return missing <= changed


# --- any document, any change


@given(tables, styles, new_values, st.data())
@often
def test_a_value_set_anywhere_changes_the_data_there_and_nowhere_else(
    data: dict[str, Any], style: Random, value: Any, choice: st.DataObject
) -> None:
    text, _ = write(data, style)
    paths = paths_in(data)
    if not paths:
        return
    path = choice.draw(st.sampled_from(paths))
    wanted = copy.deepcopy(data)
    get(wanted, path[:-1])[path[-1]] = value
    by_headings = isinstance(path[-1], int) and path[:-1] in written(text).counts
    if by_headings and not isinstance(value, dict):
        with pytest.raises(EditProblem, match="takes only tables"):
            set_value(text, path, value)
        return
    assert same(tomllib.loads(set_value(text, path, value).text), wanted)


@given(tables, styles, new_scalars, st.data())
@often
def test_setting_a_plain_value_keeps_every_other_character(
    data: dict[str, Any], style: Random, value: Any, choice: st.DataObject
) -> None:
    text, lines = write(data, style)
    paths = [path for path in paths_in(data) if not isinstance(get(data, path), dict | list)]
    if not paths:
        return
    path = choice.draw(st.sampled_from(paths))
    old, new = text.split("\n"), set_value(text, path, value).text.split("\n")
    first = lines[path] - 1
    assert new[:first] == old[:first]
    spread = len(old) - len(new)
    assert spread >= 0  # a new plain value takes one line
    assert new[first + 1 :] == old[first + 1 + spread :]
    old_value = get(data, path)
    if not isinstance(old_value, str):
        assert spread == 0


@given(tables, styles, new_values, keys, st.data())
@often
def test_a_new_field_leaves_every_line_in_its_place(
    data: dict[str, Any], style: Random, value: Any, key: str, choice: st.DataObject
) -> None:
    text, _ = write(data, style)
    around = [()] + [path for path in paths_in(data) if isinstance(get(data, path), dict)]
    place = choice.draw(st.sampled_from(around))
    if key in get(data, place):
        return
    wanted = copy.deepcopy(data)
    get(wanted, place)[key] = value
    edit = set_value(text, (*place, key), value)
    assert same(tomllib.loads(edit.text), wanted)
    assert lines_kept(text, edit.text, changed=1), edit.diff


@given(tables, styles, st.lists(keys, min_size=2, max_size=3), new_scalars)
@often
def test_missing_tables_around_a_new_field_are_made(
    data: dict[str, Any], style: Random, path: list[str], value: Any
) -> None:
    text, _ = write(data, style)
    wanted: Any = copy.deepcopy(data)
    inner = wanted
    for key in path[:-1]:
        inner = inner.setdefault(key, {}) if isinstance(inner, dict) else inner
    if not isinstance(inner, dict) or path[-1] in inner:
        return
    inner[path[-1]] = value
    edit = set_value(text, tuple(path), value)
    assert same(tomllib.loads(edit.text), wanted)
    assert lines_kept(text, edit.text, changed=1), edit.diff


@given(tables, styles, st.data())
@often
def test_what_is_removed_is_gone_and_all_else_is_there(
    data: dict[str, Any], style: Random, choice: st.DataObject
) -> None:
    text, _ = write(data, style)
    paths = paths_in(data)
    if not paths:
        return
    path = choice.draw(st.sampled_from(paths))
    wanted = copy.deepcopy(data)
    del get(wanted, path[:-1])[path[-1]]
    edit = remove(text, path)
    assert same(tomllib.loads(edit.text), wanted)
    # Lines that are new: the rest of the line it stood on, or the heading of a table now empty.
    assert lines_kept(edit.text, text, changed=2), edit.diff


@given(tables, styles, st.dictionaries(keys, new_values, max_size=3), st.data())
@often
def test_a_table_added_to_a_list_is_its_last(
    data: dict[str, Any], style: Random, mapping: dict[str, Any], choice: st.DataObject
) -> None:
    text, _ = write(data, style)
    paths = [path for path in paths_in(data) if isinstance(get(data, path), list)]
    if not paths:
        return
    path = choice.draw(st.sampled_from(paths))
    wanted = copy.deepcopy(data)
    get(wanted, path).append(mapping)
    edit = add(text, path, mapping)
    assert same(tomllib.loads(edit.text), wanted)
    assert lines_kept(text, edit.text, changed=1), edit.diff


@given(tables, styles, st.data())
@often
def test_remarks_above_and_below_what_is_removed_all_stay(
    data: dict[str, Any], style: Random, choice: st.DataObject
) -> None:
    text, lines = write(data, style)
    paths = [path for path in paths_in(data) if isinstance(path[-1], str)]
    if not paths:
        return
    path = choice.draw(st.sampled_from(paths))
    own = [line for place, line in lines.items() if place[: len(path)] == path]
    ends = [
        text.count("\n", 0, one.end) + 1
        for one in written(text).statements
        if one.path[: len(path)] == path or path[: len(one.path)] == one.path
    ]
    outside = [
        line.strip()
        for number, line in enumerate(text.split("\n"), 1)
        if line.strip().startswith("#") and not min(own) <= number <= max(own + ends)
    ]
    after = [line.strip() for line in remove(text, path).text.split("\n")]
    for remark in set(outside):
        assert after.count(remark) >= outside.count(remark)
