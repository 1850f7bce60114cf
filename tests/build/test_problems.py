"""Problems print in one manner, in the order of the file, and count themselves."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from curbwright.build.problems import Problem, did_you_mean, report


def test_one_problem_says_where_what_what_is_allowed_and_what_to_try() -> None:
    problem = Problem(42, "items.griddle.mass", '"62" has no unit', "a mass: lb, kg, oz", '"62 lb"')
    assert str(problem) == (
        'line 42, items.griddle.mass: "62" has no unit (a mass: lb, kg, oz). Try "62 lb".'
    )


@pytest.mark.parametrize(
    ("problem", "printed"),
    [
        (Problem(None, "", "the file is empty"), "the file is empty."),
        (Problem(3, "", "the file is empty."), "line 3: the file is empty."),
        (Problem(None, "trailer", "is missing"), "trailer: is missing."),
        (Problem(1, "a", "is wrong", try_this="Save it as UTF-8."), "line 1, a: is wrong. Save it as UTF-8."),
        (Problem(1, "a", "is wrong", try_this='Did you mean "b"?'), 'line 1, a: is wrong. Did you mean "b"?'),
        (Problem(1, "a", "is wrong", try_this="1/2 in"), "line 1, a: is wrong. Try 1/2 in."),
        (Problem(1, "a", "is low", severity="caution"), "line 1, a: caution: is low."),
        (Problem(1, "a", "reads\n\x1b[31m\x00"), "line 1, a: reads \\x1b[31m\\x00."),
    ],
)  # fmt: skip
def test_parts_that_are_missing_leave_no_marks(problem: Problem, printed: str) -> None:
    assert str(problem) == printed


def test_the_report_is_in_the_order_of_lines_and_counts() -> None:
    problems = [
        Problem(None, "trailer", "is missing"),
        Problem(10, "b", "is wrong"),
        Problem(2, "z", "is wrong"),
        Problem(10, "a", "is wrong"),
    ]
    assert report(problems).splitlines() == [
        "line 2, z: is wrong.",
        "line 10, a: is wrong.",
        "line 10, b: is wrong.",
        "trailer: is missing.",
        "4 problems; nothing was computed.",
    ]


@pytest.mark.parametrize(
    ("severities", "last"),
    [
        ([], "No problems."),
        (["error"], "1 problem; nothing was computed."),
        (["error"] * 3, "3 problems; nothing was computed."),
        (["caution"], "1 caution."),
        (["caution", "error", "caution"], "1 problem, 2 cautions; nothing was computed."),
    ],
)
def test_cautions_alone_stop_nothing(severities: list[str], last: str) -> None:
    problems = [Problem(1, "a", "is wrong", severity=one) for one in severities]
    assert report(problems).splitlines()[-1] == last


def test_a_long_problem_goes_on_indented_and_loses_no_word() -> None:
    problem = Problem(7, "items.griddle.mass", "is " + "far " * 60 + "too heavy", try_this='"62 lb"')
    lines = report([problem], width=60).splitlines()
    assert lines[0].startswith("line 7, ")
    assert all(line.startswith("    ") for line in lines[1:-1])
    assert all(len(line) <= 60 for line in lines)
    assert " ".join(line.strip() for line in lines[:-1]) == str(problem)


def test_a_severity_that_does_not_exist_is_refused() -> None:
    with pytest.raises(ValueError, match="error or caution"):
        Problem(1, "a", "is wrong", severity="fatal")


@given(st.text(), st.text(), st.text(), st.text(), st.none() | st.integers(1))
def test_whatever_the_file_says_each_problem_is_one_printable_line(
    path: str, what: str, allowed: str, try_this: str, line: int | None
) -> None:
    assert str(Problem(line, path, what, allowed, try_this)).isprintable()


@pytest.mark.parametrize(
    ("word", "choices", "answer"),
    [
        ("gridle", ["griddle", "fryer"], 'Did you mean "griddle"?'),
        ("Griddle", ["griddle", "fryer"], 'Did you mean "griddle"?'),
        ("fresh tank", ["fresh_tank", "waste_tank"], 'Did you mean "fresh_tank"?'),
        ("fresh-tank", ["waste_tank", "fresh_tank"], 'Did you mean "fresh_tank"?'),
        ("sink", ["griddle", "fryer"], ""),
        ("griddle", ["griddle"], ""),
        ("", ["griddle"], ""),
        ("griddle", [], ""),
        ("g" * 1_000_000, ["griddle"], ""),
    ],
)
def test_the_nearest_name_is_offered_only_when_it_is_near(word: str, choices: list[str], answer: str) -> None:
    assert did_you_mean(word, choices) == answer
