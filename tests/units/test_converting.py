"""The units of published cases, against an independent library."""

from __future__ import annotations

import csv
from pathlib import Path

import pint
import pytest

from curbwright.errors import UnitProblem
from curbwright.units import factor

PINT = pint.UnitRegistry()

with (Path(__file__).parent / "factors.csv").open(encoding="utf-8", newline="") as _file:
    CASES = list(csv.DictReader(_file))


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case['unit']} {case['kind']}")
def test_factor(case: dict[str, str]) -> None:
    unit, size, offset = factor(case["unit"], case["kind"] or None)
    si = {"1": "dimensionless", "C": "coulomb"}.get(unit, unit)
    assert size == pytest.approx(PINT.Quantity(1.0, case["pint_unit"]).to(si).magnitude, rel=1e-12)
    assert offset == 0.0


@pytest.mark.parametrize(
    ("text", "name"), [("degF", "degF"), ("F", "degF"), ("°C", "degC"), ("C", "degC"), ("K", "kelvin")]
)
@pytest.mark.parametrize("number", [-40.0, 0.0, 212.0])
def test_a_temperature_counts_from_its_own_zero(text: str, name: str, number: float) -> None:
    unit, size, offset = factor(text)
    assert unit == "K"
    assert number * size + offset == pytest.approx(
        PINT.Quantity(number, name).to("kelvin").magnitude, rel=1e-12
    )


@pytest.mark.parametrize(
    ("text", "spelled"),
    [
        ("in3", "m**3"),
        ("psf", "Pa"),
        ("BTU/h", "W"),
        ("W/m2K", "W/m**2/K"),
        ("kg*m2", "kg*m**2"),
        ("%", "1"),
        ("Ah", "C"),
        ("m2/s", "m**2/s"),
        ("1/in", "1/m"),
    ],
)
def test_units_are_spelled_as_figures_spell_them(text: str, spelled: str) -> None:
    assert factor(text)[0] == spelled


@pytest.mark.parametrize(
    ("text", "kind", "says"),
    [
        ("furlong", None, "not a unit known here"),
        ("ton", None, "not a unit known here"),
        ("in nominal", None, "not a unit known here"),
        ("lb", "length", "no unit of a length"),
        ("kWh", "moment", "no unit of a moment"),
        ("ft/", None, "not a unit known here"),
    ],
)
def test_refused(text: str, kind: str | None, says: str) -> None:
    with pytest.raises(UnitProblem, match=says):
        factor(text, kind)


def test_an_unknown_kind_is_the_programmers_mistake() -> None:
    with pytest.raises(KeyError):
        factor("lb", "weight")
