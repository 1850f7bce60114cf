"""What a builder may write, and what is refused and how."""

from __future__ import annotations

import copy
import csv
import datetime
import pickle
from pathlib import Path
from typing import Any

import pint
import pytest

from curbwright.errors import UnitProblem
from curbwright.units import KINDS, Measure, read

HERE = Path(__file__).parent
PINT = pint.UnitRegistry()


def cases(name: str) -> list[dict[str, str]]:
    with (HERE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def by_pint(magnitude: str, unit: str, kind: str) -> float:
    """The SI value of a magnitude by an independent library; dollars are left as they are."""
    si = KINDS[kind].unit
    quantity = PINT.Quantity(float(magnitude), unit)
    return quantity.to("dimensionless" if si in ("1", "USD") else si).magnitude


@pytest.mark.parametrize("case", cases("accepted.csv"), ids=lambda case: f"{case['kind']}: {case['text']}")
def test_accepted(case: dict[str, str]) -> None:
    measure = read(case["text"], case["kind"])
    expected = by_pint(case["magnitude"], case["pint_unit"], case["kind"])
    assert measure == pytest.approx(expected, rel=float(case["within"] or 1e-12), abs=0)
    assert measure.text == case["text"]
    assert measure.kind == case["kind"]


@pytest.mark.parametrize(
    "case", cases("refused.csv"), ids=lambda case: f"{case['kind']}: {case['text'][:20]!r}"
)
def test_refused(case: dict[str, str]) -> None:
    with pytest.raises(UnitProblem) as caught:
        read(case["text"], case["kind"])
    problem = caught.value
    assert case["says"] in str(problem)
    assert problem.what
    assert problem.try_this
    assert str(problem).isprintable()


def test_there_are_enough_cases_and_every_kind_has_both() -> None:
    accepted, refused = cases("accepted.csv"), cases("refused.csv")
    assert len(accepted) >= 170
    assert len(refused) >= 100
    assert {case["kind"] for case in accepted} == set(KINDS)


@pytest.mark.parametrize("kind", KINDS)
def test_the_example_of_each_kind_is_readable(kind: str) -> None:
    assert read(KINDS[kind].example, kind) > 0


@pytest.mark.parametrize(
    ("value", "says"),
    [
        (62, 'Write it in quotes, with its unit: "62 lb"'),
        (1.5, '"1.5 lb"'),
        (True, "yes or no"),
        ([62], "list"),
        ({"lb": 62}, "table"),
        (None, "nothing"),
        (b"62 lb", "something else"),
        (float("nan"), '"62 lb"'),
        (float("inf"), '"62 lb"'),
        (10**5000, "bare number"),
    ],
    ids=lambda value: type(value).__name__,
)
def test_what_is_not_text_is_refused(value: object, says: str) -> None:
    with pytest.raises(UnitProblem) as caught:
        read(value, "mass")
    assert says in str(caught.value)


def test_a_time_without_quotes_is_refused_with_the_quotes_in_the_advice() -> None:
    with pytest.raises(UnitProblem, match='Write it in quotes: "06:30"'):
        read(datetime.time(6, 30), "clock")


class _Strange(str):
    """A text that misbehaves wherever a plain text would not."""

    def __str__(self) -> str:
        raise RuntimeError

    def __len__(self) -> int:
        raise RuntimeError

    def translate(self, table: Any) -> str:
        raise RuntimeError


def test_a_kind_of_text_is_read_as_the_text_it_holds() -> None:
    assert read(_Strange("62 lb"), "mass") == read("62 lb", "mass")
    assert type(read(_Strange("62 lb"), "mass").text) is str


def test_an_unknown_kind_is_the_programmers_mistake() -> None:
    with pytest.raises(KeyError):
        read("62 lb", "weight")


@pytest.mark.parametrize("again", [copy.copy, copy.deepcopy, lambda one: pickle.loads(pickle.dumps(one))])
def test_a_measure_survives_copying(again: Any) -> None:
    measure = read("16 ga stainless", "thickness")
    twin = again(measure)
    assert isinstance(twin, Measure)
    assert (twin, twin.text, twin.kind, twin.note) == (measure, measure.text, measure.kind, measure.note)


def test_a_measure_is_a_float_in_arithmetic_and_in_print() -> None:
    measure = read("2 m", "length")
    assert type(measure * 2) is float
    assert f"{measure:.1f} {measure}" == "2.0 2.0"


def test_feet_and_inches_add_without_a_rounding() -> None:
    assert read("5 ft 6 in", "length") == 66 * 0.0254
    assert read("1 h 30 min", "time") == 5400.0


def test_nothing_below_zero_is_minus_zero() -> None:
    assert str(read("-0 in", "length")) == "0.0"
