"""A text that is not TOML gets every mistake told at its line, with the line as it should read."""

from __future__ import annotations

import time
import tomllib

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from curbwright.build.spelling import as_typed
from curbwright.build.syntax import syntax_problems


def told(text: str) -> list[str]:
    return [str(problem) for problem in syntax_problems(text)]


@pytest.mark.parametrize(
    ("line", "path", "what", "correct"),
    [
        ("mass = 62 lb", "mass", "62 lb is not in quotes", 'mass = "62 lb"'),
        ("mass = 62lb", "mass", "62lb is not in quotes", 'mass = "62lb"'),
        ("mass = 62 lb # nameplate", "mass", "62 lb is not in quotes", 'mass = "62 lb"'),
        ("wall.height = 6 ft 8 in", "wall.height", "6 ft 8 in is not in quotes", 'wall.height = "6 ft 8 in"'),
        ("gap = 1/2 in", "gap", "1/2 in is not in quotes", 'gap = "1/2 in"'),
        ("opens = 06:30", "opens", "06:30 is not in quotes", 'opens = "06:30"'),
        ("slope = 2%", "slope", "2% is not in quotes", 'slope = "2%"'),
        ("name = Blue Door", "name", "Blue Door is not in quotes", 'name = "Blue Door"'),
        ("width = 5'6\"", "width", "5'6\" is not in quotes", 'width = "5 ft 6 in"'),
        ("width = 5' - 6\"", "width", "5' - 6\" is not in quotes", 'width = "5 ft 6 in"'),
        ("width = 30\"", "width", "30\" is not in quotes", 'width = "30 in"'),
        ("width = 3'", "width", "3' is not in quotes", 'width = "3 ft"'),
        ('width = "30""', "width", "a quote mark ends the text too early", 'width = "30 in"'),
        ('width = "5\'6""', "width", "a quote mark ends the text too early", 'width = "5 ft 6 in"'),
        ('mass = "62" lb', "mass", "a quote mark ends the text too early", 'mass = "62 lb"'),
        ("name = 'it's'", "name", "a quote mark ends the text too early", 'name = "it\'s"'),
        ('name = "the "old" one"', "name", "a quote mark ends", 'name = "the \'old\' one"'),
        ("mass = \u201c62 lb\u201d", "mass", "has curly quotes", 'mass = "62 lb"'),
        ("mass = \u201862 lb\u2019", "mass", "has curly quotes", 'mass = "62 lb"'),
        ('mass = "62 lb\u201d', "mass", "the quote is not closed on its line", 'mass = "62 lb"'),
        ('mass = "62 lb', "mass", "the quote is not closed on its line", 'mass = "62 lb"'),
        ("mass = '62 lb", "mass", "the quote is not closed on its line", 'mass = "62 lb"'),
        ("lit = Yes", "lit", "Yes is not a word known here", "lit = true"),
        ("lit = False", "lit", "False is not a word known here", "lit = false"),
        ("price = 1,250", "price", "1,250 is not a number written plainly", "price = 1250"),
        ("share = .5", "share", ".5 is not a number written plainly", "share = 0.5"),
        ("code = 007", "code", "007 is not a number written plainly", 'code = "007"'),
        ("count = 2;", "count", "a line does not end with ;", "count = 2"),
        ('name = "x",', "name", "a line does not end with ,", 'name = "x"'),
        ("count == 2", "count", "there are two = signs", "count = 2"),
        ('mass: "62 lb"', "", "has a : where the = belongs", 'mass = "62 lb"'),
        ("mass: 62 lb", "", "has a : where the = belongs", 'mass = "62 lb"'),
        ('cart name = "x"', "", "a key has no spaces in it", 'cart_name = "x"'),
        ('größe = "2 m"', "", "a key has only plain letters, digits, - and _", '"größe" = "2 m"'),
        ("[items griddle]", "items", "the heading is not closed, or has a space in it", "[items_griddle]"),
        ("[items.griddle", "items.griddle", "the heading is not closed", "[items.griddle]"),
        ("[[menu]", "menu", "the heading is not closed, or has a space in it", "[[menu]]"),
    ],
)  # fmt: skip
def test_a_mistake_that_can_be_mended_shows_the_line_mended(
    line: str, path: str, what: str, correct: str
) -> None:
    (problem,) = syntax_problems(f"a_field_above = 1\n\n{line}\n")
    assert (problem.line, problem.path) == (3, path)
    assert problem.what.startswith(what)
    assert problem.try_this == f"Try {correct}"
    tomllib.loads(correct)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("mass =", "line 1, mass: has no value after the =."),
        ("mass = # later", "line 1, mass: has no value after the =."),
        ("griddle", "line 1: griddle has no = and no value. Begin the line with # if it is a remark"),
        ('mass "62 lb"', 'line 1: mass "62 lb" has no = and no value.'),
        ("= 3", "line 1: there is no key before the =."),
        ("// bought used", "line 1: this is neither a key nor a heading. Begin a remark with #."),
        ("- griddle", "line 1: a list is not written with dashes."),
        ("a = 1 b = 2", "line 1, a: two keys stand on one line."),
        ('a = "x", b = "y"', "line 1, a: two keys stand on one line."),
        ("[a] b = 1", "line 1, a: a heading stands alone on its line."),
        ("[]", "line 1: the name in the heading is not complete."),
        ("[a.]", "line 1: the name in the heading is not complete."),
        ('{"a": 1}', 'line 1: {"a": 1} is neither a field nor a heading.'),
        ("\u201cmass\u201d = 1", "line 1: curly quotes do not count as quotes here."),
        ("a = [\u201cx\u201d]", 'line 1, a: \u201cx\u201d is not in quotes. Try "x".'),
        ("a = [62 lb, 3]", 'line 1, a: 62 lb is not in quotes. Try "62 lb".'),
        ("a = [x, y]", 'line 1, a: x is not in quotes. Try "x".'),
        ("a = { b = 62 lb }", 'line 1, a: 62 lb is not in quotes. Try "62 lb".'),
        ('a = ["x" "y"]', "line 1, a: the [ is not closed by a ], or a comma is missing"),
        ("a = [1 2]", "line 1, a: the [ is not closed by a ], or a comma is missing"),
        ("\na = [1,\n2\nb = 3", "line 2, a: the [ is not closed by a ], or a comma is missing"),
        ("a = [1", "line 1, a: the [ is not closed by a ], or a comma is missing"),
        ("a = { b = 1", "line 1, a: the { is not closed by a }, or a comma is missing"),
        ("a = { b = 1, }", "line 1, a: a comma stands before the }."),
        ("a = {\n b = 1 }", "line 1, a: what is inside { } must all stand on one line."),
        ("a = { b : 1 }", "line 1, a: an entry inside { } has no =."),
        ('\na = """x\n\nb = 1', 'line 2, a: the """ that opens here is never closed.'),
        ("a = '''x", "line 1, a: the ''' that opens here is never closed."),
        ('"a = 1', "line 1: a quote is not closed on its line."),
        ('a = "C:\\path"', 'line 1, a: a \\ has a meaning of its own inside "...".'),
        ('a = "\\uD800"', 'line 1, a: a \\ has a meaning of its own inside "...".'),
        ("a =\u00a01", "line 1, a: an invisible character (no-break space) stands here."),
        ("a = 1\u200b", "line 1, a: an invisible character (zero width space) stands here."),
        ('a = "x\x07"', "line 1, a: a control character (U+0007) stands here."),
        ("a = 1\rb = 2", "line 1, a: a line end of an old kind (carriage return alone) stands here."),
        ("a = 1\n\na = 2", "line 3, a: is already written on line 1. Delete one of the two"),
        ("[a]\nb = 1\nb = [\n1]", "line 3, a.b: is already written on line 2. Delete one of the two"),
        ("[a]\n[b]\n[a]", "line 3, a: is already written on line 1. Delete one of the two"),
        ("a = 1\n[a]", "line 2, a: is already written on line 1. Delete one of the two"),
        ("a = 1\n[[a]]", "line 2, a: is already written on line 1. Delete one of the two"),
        ("a = { b = 1, b = 2 }", "line 1, a: b is written twice inside the { }."),
        ("a = 1\na.b = 2", "line 2, a.b: nothing can be added to a here: it is complete on line 1."),
        ("a = { b = 1 }\n[a.c]", "line 2, a.c: nothing can be added to a here: it is complete on line 1."),
    ],
)
def test_each_mistake_is_told_in_a_builders_words(text: str, says: str) -> None:
    assert told(text)[0].startswith(says)
    assert len(told(text)) == 1


def test_every_mistake_is_told_at_once() -> None:
    text = """\
name = Blue Door
mass = "62 lb"
mass = "63 lb"
[items griddle]
width = 30"
[items.fryer]
lit = Yes
[items.fryer]
depth = "2 ft
notes = [1,
  2
[water]
"""
    assert [(problem.line, problem.path) for problem in syntax_problems(text)] == [
        (1, "name"),
        (3, "mass"),
        (4, "items"),
        (5, "width"),
        (7, "items.fryer.lit"),
        (8, "items.fryer"),
        (9, "depth"),
        (10, "notes"),
    ]


def test_a_mistake_is_told_alike_with_windows_line_ends() -> None:
    text = "a = 1\n\nmass = 62 lb\n[x\n"
    assert syntax_problems(text.replace("\n", "\r\n")) == syntax_problems(text) != ()


def test_a_valid_text_has_no_mistakes() -> None:
    assert syntax_problems('a = 1\n[b]\nc = "x"\n') == ()


def test_very_many_mistakes_are_cut_short_and_it_is_said() -> None:
    problems = syntax_problems("a = 1 lb\n" * 500)
    assert len(problems) == 21
    assert problems[-1].what == "there may be more: the first 20 are shown"
    assert len(syntax_problems("a = 1 lb\n" * 20)) == 20


def test_a_long_text_full_of_mistakes_is_refused_quickly() -> None:
    begun = time.process_time()
    assert len(syntax_problems('mass = "62 lb"\n' * 60_000)) == 4
    assert time.process_time() - begun < 20


@given(st.lists(st.sampled_from(
    ["a", "b", "=", " ", '"', "'", "[", "]", "{", "}", ",", ".", "#", "\n", "\r\n", "1", " lb", ":", "\\",
     '"""', "true", "\u201c", "\u00a0", "é", "\t", "-", "\r", "\ufeff", "0x", "1979-05-27"]
), max_size=24).map("".join))  # fmt: skip
@example("a.b.")
@example("[a\n[a\n[[a\n")
@settings(max_examples=1000, deadline=None)
def test_any_text_is_either_read_or_told(text: str) -> None:
    try:
        tomllib.loads(text)
    except tomllib.TOMLDecodeError:
        problems = syntax_problems(text)
        assert problems
        lines = [problem.line for problem in problems if problem.line is not None]
        assert all(1 <= line <= text.count("\n") + 1 for line in lines)
        assert all(problem.what and str(problem).isprintable() for problem in problems)
        return
    assert syntax_problems(text) == ()


@given(st.text(alphabet="ab 160,./'\"\u201c\u201d\u2019\\#-\n\x07", max_size=12))
@settings(max_examples=500)
def test_what_was_meant_is_always_a_readable_value(value: str) -> None:
    tomllib.loads(f"k = {as_typed(value)}")
