"""What is missing is named, what cannot be meant is a problem, and nothing crashes."""

from __future__ import annotations

import math
import time

import pytest

from curbwright.build.cart import Build
from curbwright.errors import BuildFileProblem
from curbwright.sheets.exhaust import exhaust_sheet
from curbwright.sheets.placing import place
from tests.sheets.exhaust.exhaust_carts import HOOD, WHOLE, build, figures, findings


@pytest.mark.parametrize(
    ("change", "id", "field"),
    [
        (('style = "wall canopy"\n', ""), "code_rate", "exhaust.style"),
        (("filters = 2\n", ""), "code_rate", "exhaust.filters"),
        (('filter = "20x20"\n', ""), "code_rate", "exhaust.filter"),
        (('diameter = "12 in"\n', ""), "code_rate", "exhaust.duct.diameter"),
        (('length = "4 ft"\n', ""), "code_rate", "exhaust.duct.length"),
        (("interlock = true\n", ""), "interlock", "exhaust.interlock"),
        (("heat_plan = true\n", ""), "heat_plan", "exhaust.heat_plan"),
        (('overhang = "6 in"\n', ""), "overhang", "exhaust.overhang"),
        (('filter_above = "24 in"\n', ""), "filter_height", "exhaust.filter_above"),
        (('area = "3 ft2"\n', ""), "makeup", "exhaust.openings.low.area"),
        (("crew = 2\n", ""), "heat_plan", "day.crew"),
        (('gas_input = "60,000 BTU/h"\n', ""), "plume", "items.plate.gas_input"),
        (('gas_input = "60,000 BTU/h"\n', ""), "combustion_low", "items.plate.gas_input"),
        (('gas_input = "60,000 BTU/h"\n', ""), "carbon_dioxide", "items.plate.gas_input"),
    ],
)
def test_what_is_missing_is_named(change: tuple[str, str], id: str, field: str) -> None:
    found = findings(WHOLE, change)[id]
    assert found.verdict == "cannot tell"
    assert field in found.missing


def test_two_hoods_and_none_named_cannot_be_told() -> None:
    two = WHOLE + HOOD.replace("items.hood", "items.other").replace('"14 in"', '"70 in"')
    assert findings(two)["code_rate"].verdict == "cannot tell"
    assert findings(two, ("[exhaust]", '[exhaust]\nhood = "hood"'))["code_rate"].verdict != "cannot tell"


# ---- names and bad input


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (('fan = "fan"', 'fan = "fam"'), "there is no item"),
        (('fan = "fan"', 'fan = "fan"\nhood = "hod"'), "there is no item"),
        (('fan = "fan"', 'fan = "fan"\nappliances = ["plates"]'), "there is no item"),
        (('area = "3 ft2"', 'opening = "hatch"'), "there is no opening"),
        (('area = "3 ft2"', 'area = "3 ft2"\nopening = "hatch"'), "stands beside"),
        (('diameter = "12 in"', 'diameter = "12 in"\nwidth = "10 in"'), "round or rectangular"),
        (('"0 in WC", "250 W"', '"0 in", "250 W"'), "row 1"),
        (('style = "wall canopy"', 'style = "umbrella"'), "exhaust.style"),
    ],
)
def test_what_cannot_be_meant_is_a_problem(change: tuple[str, str], says: str) -> None:
    with pytest.raises(BuildFileProblem) as problem:
        build(WHOLE, change)
    assert says in str(problem.value)


@pytest.mark.parametrize(
    "change",
    [
        ('diameter = "12 in"', 'diameter = "0 in"'),
        ('length = "4 ft"', 'length = "0 ft"'),
        ("filters = 2", "filters = 0"),
        ('style = "wall canopy"', 'style = "wall canopy"\nlisted_rate = "0 cfm"'),
        ('width = "36 in"\ndepth = "24 in"', 'width = "0 in"\ndepth = "0 in"'),
        ('gas_input = "60,000 BTU/h"', 'gas_input = "0 BTU/h"'),
        ('above = "66 in"', 'above = "20 in"'),
        ("interlock = true", 'interlock = true\nfan_off_flow = "0 cfm"'),
        ("interlock = true", 'interlock = true\nmakeup_pressure = "0 in WC"'),
        ("crew = 2", "crew = 0"),
    ],
)
def test_nothing_where_something_is_due_is_never_a_crash(change: tuple[str, str]) -> None:
    assert all(math.isfinite(one) for one in figures(WHOLE, change).values())
    findings(WHOLE, change)


def test_the_sheet_is_quick() -> None:
    cart = build(WHOLE)
    placing = place(cart)
    exhaust_sheet(cart, placing)
    best = min(_timed(cart, placing) for _ in range(5))
    assert best < 0.040


def _timed(cart: Build, placing: object) -> float:
    began = time.thread_time()
    exhaust_sheet(cart, placing)  # type: ignore[arg-type]
    return time.thread_time() - began
