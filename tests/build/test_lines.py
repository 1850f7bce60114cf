"""Every field of a build file is found on the line it is written on."""

from __future__ import annotations

import time
import tomllib
from random import Random
from typing import Any

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from curbwright.build.lines import dotted, line_map, line_of, split
from curbwright.build.written import written
from tests.build.toml_writer import Path, styles, tables, write

SLOWLY = [HealthCheck.too_slow, HealthCheck.data_too_large]


def paths_of(data: Any, here: Path = ()) -> set[Path]:
    inside: list[tuple[str | int, Any]] = []
    if isinstance(data, dict):
        inside = list(data.items())
    elif isinstance(data, list):
        inside = list(enumerate(data))
    found = {(*here, key) for key, _ in inside}
    return found.union(*(paths_of(value, (*here, key)) for key, value in inside))


@given(tables, styles)
@settings(max_examples=200, suppress_health_check=SLOWLY, deadline=None)
def test_every_style_of_writing_gives_the_line_it_was_written_on(data: dict[str, Any], style: Random) -> None:
    text, lines = write(data, style)
    assert tomllib.loads(text) == data, text
    assert line_map(text) == lines, text


@given(tables)
@settings(max_examples=80, suppress_health_check=SLOWLY, deadline=None)
def test_every_path_of_a_text_by_another_writer_is_mapped(data: dict[str, Any]) -> None:
    import tomlkit

    text = tomlkit.dumps(data)
    assert set(line_map(text)) == paths_of(tomllib.loads(text))


HAND_MADE = """\
# the cart
name = "Blue Door"      # = [x]
"street side".door = '''
  [not.a.table]
  key = 1
'''

[ items . griddle ]
mass = "62 lb"
size = { width = "36 in", "deep \\u0065nd" = { at = [ 1, 2 ] } }

[items]
count = 3
[[menu]]
dish = \"\"\"
a "quoted\\" [name]
# not a remark \"\"\"\"\"
prices = [ 4.50, # small
  # none for medium
  [ 1979-05-27 07:32:00, 07:32:00 ],
  { a.b = 1, a.c = 2 },
]
[[menu]]
[menu.sauce]
hot = true
[[menu.sauce.jars]]
[[menu.sauce.jars]]
lid = "a"
"""

HAND_LINES: dict[Path, int] = {
    ("name",): 2,
    ("street side",): 3,
    ("street side", "door"): 3,
    ("items",): 12,
    ("items", "griddle"): 8,
    ("items", "griddle", "mass"): 9,
    ("items", "griddle", "size"): 10,
    ("items", "griddle", "size", "width"): 10,
    ("items", "griddle", "size", "deep end"): 10,
    ("items", "griddle", "size", "deep end", "at"): 10,
    ("items", "griddle", "size", "deep end", "at", 0): 10,
    ("items", "griddle", "size", "deep end", "at", 1): 10,
    ("items", "count"): 13,
    ("menu",): 14,
    ("menu", 0): 14,
    ("menu", 0, "dish"): 15,
    ("menu", 0, "prices"): 18,
    ("menu", 0, "prices", 0): 18,
    ("menu", 0, "prices", 1): 20,
    ("menu", 0, "prices", 1, 0): 20,
    ("menu", 0, "prices", 1, 1): 20,
    ("menu", 0, "prices", 2): 21,
    ("menu", 0, "prices", 2, "a"): 21,
    ("menu", 0, "prices", 2, "a", "b"): 21,
    ("menu", 0, "prices", 2, "a", "c"): 21,
    ("menu", 1): 23,
    ("menu", 1, "sauce"): 24,
    ("menu", 1, "sauce", "hot"): 25,
    ("menu", 1, "sauce", "jars"): 26,
    ("menu", 1, "sauce", "jars", 0): 26,
    ("menu", 1, "sauce", "jars", 1): 27,
    ("menu", 1, "sauce", "jars", 1, "lid"): 28,
}


@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_a_file_written_by_hand(end: str) -> None:
    text = HAND_MADE.replace("\n", end)
    assert set(line_map(text)) == paths_of(tomllib.loads(text))
    assert line_map(text) == HAND_LINES


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ("", {}),
        ("# only a remark", {}),
        ("\n\n a=1", {("a",): 3}),
        ('"" . x = 2', {("",): 1, ("", "x"): 1}),
        ("3.14 = 1", {("3",): 1, ("3", "14"): 1}),
        ("a.b = 1\n\na.c = 2", {("a",): 1, ("a", "b"): 1, ("a", "c"): 3}),
        ("[a.b.c]\n[a]\n[a.b]", {("a",): 2, ("a", "b"): 3, ("a", "b", "c"): 1}),
        ("a = []\nb = {}", {("a",): 1, ("b",): 2}),
        ("a = [\n\n1,\n\n[\n2]]", {("a",): 1, ("a", 0): 3, ("a", 1): 5, ("a", 1, 0): 6}),
        ('a = """\n"""\nb = """x\\\n\n  y"""\nc = 1', {("a",): 1, ("b",): 3, ("c",): 6}),
        ("a = ''''''\nb = '''\n'''''\nc = 1", {("a",): 1, ("b",): 2, ("c",): 4}),
        ('a = """"""\nb = """\n\\""""""\nc = 1', {("a",): 1, ("b",): 2, ("c",): 4}),
        ('"a\\"b" = 1\n"\\u00e9" = 2', {('a"b',): 1, ("é",): 2}),
    ],
)
def test_corners_of_the_language(text: str, lines: dict[Path, int]) -> None:
    assert set(lines) == paths_of(tomllib.loads(text))
    assert line_map(text) == lines


@given(st.text(alphabet="ab\"'\\#=[]{},.\n\r\t 1é", max_size=60))
@example('a = "x')
@example("[a")
@example("[[")
@example('"\\uZZZZ" = 1')
@settings(max_examples=300)
def test_any_text_at_all_is_read_without_an_error(text: str) -> None:
    lines = line_map(text)
    assert all(1 <= line <= text.count("\n") + 1 for line in lines.values())
    try:
        data = tomllib.loads(text)
    except tomllib.TOMLDecodeError:
        return
    assert set(lines) == paths_of(data)
    assert written(text).whole


def test_what_can_be_read_before_a_mistake_is_kept() -> None:
    assert line_map("a = 1\nb = \nc = 3") == {("a",): 1, ("b",): 2}


@pytest.mark.parametrize("depth", [400, 100_000])
@pytest.mark.parametrize(
    ("opening", "middle", "closing"), [("[", "1", "]"), ("{a=", "1", "}"), ("[{a=", "1", "}]")]
)
def test_nesting_has_no_limit_that_raises(depth: int, opening: str, middle: str, closing: str) -> None:
    lines = line_map("k = " + opening * depth + middle + closing * depth)
    assert lines[("k",)] == 1
    assert len(lines) > min(depth, 150)


@pytest.mark.parametrize(
    "piece",
    [
        "[items.item{n}]\nmass = \"62 lb\" # as weighed\nsize = {{ width = '30 in', depth = '2 ft' }}\n",
        "[[menu]]\nprices = [ 1, 2, # x\n 3 ]\n",
        'k{n} = """a\\"b\nc"""\n',
        "# a remark\n\n",
        "key.{n} = 1\n",
    ],
)
def test_time_grows_with_the_length_and_no_faster(piece: str) -> None:
    def seconds(pieces: int) -> float:
        text = "".join(piece.format(n=n) for n in range(pieces))
        best = 1e9
        for _ in range(3):
            begun = time.process_time()
            line_map(text)
            best = min(best, time.process_time() - begun)
        return best

    few, many = 500, 8000
    assert seconds(many) < 3 * (many / few) * seconds(few) + 0.05


def test_one_long_remark_list_or_string_takes_no_time() -> None:
    million = 1_000_000
    begun = time.process_time()
    for text in (
        "#" * million,
        "a = [" + "1," * (million // 2) + "]",
        'a = """' + '""a' * (million // 3) + '"""',
    ):
        assert written(text).whole
    assert written("\n" * million).whole
    assert time.process_time() - begun < 10


def test_the_nearest_thing_around_a_missing_field_gives_its_line() -> None:
    lines = line_map('name = "x"\n[items.griddle]\nmass = "1 lb"\n[[menu]]\n')
    assert line_of(lines, ("items", "griddle", "mass")) == 3
    assert line_of(lines, ("items", "griddle", "width")) == 2
    assert line_of(lines, ("items", "fryer", "width", "x")) == 2
    assert line_of(lines, ("menu", 0, "price")) == 4
    assert line_of(lines, ("menu", "0", "price")) == 4
    assert line_of(lines, ("menu", 7, "price")) == 4
    assert line_of(lines, ("trailer",)) is None
    assert line_of(lines, ()) is None
    assert line_of({}, ("a",)) is None


@given(st.lists(st.text(max_size=5), max_size=5))
def test_a_path_with_dots_reads_back(parts: list[str]) -> None:
    assert split(dotted(tuple(parts))) == tuple(parts)
