"""What a box is held to: pass, fail and cannot tell, box by box."""

from __future__ import annotations

import tomllib
from importlib.resources import files

import pytest

import curbwright
from curbwright.requirements import Finding, Requirement, judge
from curbwright.sheets import Worksheets
from curbwright.sheets.cold import cold_sheet
from curbwright.sheets.placing import place
from tests.sheets.cold.carts import CART, CHEST

ROWS = [
    Requirement(**row)
    for row in tomllib.loads(
        files("curbwright").joinpath("data/requirements/cold.toml").read_text(encoding="utf-8")
    )["requirement"]
]
SECOND = CHEST.replace("items.chest", "items.drinks")


def findings(*parts: str) -> dict[str, Finding]:
    build = curbwright.read_text("\n".join((CART, *parts)))
    placing = place(build)
    sheet = cold_sheet(build, placing)
    sheets = Worksheets(build, placing, (sheet,), sheet.figures(), sheet.all_gaps())
    return {one.id: one for one in judge(sheets, ROWS)}


def verdict(id: str, *parts: str) -> str:
    return findings(*parts)[id].verdict


def test_a_cart_without_a_box_is_held_to_nothing() -> None:
    assert {one.verdict for one in findings().values()} == {"not applicable"}


@pytest.mark.parametrize(
    ("id", "good", "bad"),
    [
        ("cold.limit.chest", 'set_point = "37 °F"', 'set_point = "38 °F"'),
        ("cold.capacity.chest", "", 'inside_power = "80 W"'),
        ("cold.duty.chest", "", 'inside_power = "25 W"'),
        ("cold.hold_over.chest", 'ice = "10 lb"\nice_contact = "15 W/K"', ""),
        ("cold.thermometer.chest", 'thermometer = "3 °F"', 'thermometer = "4 °F"'),
        ("cold.certified.chest", "certified = true", "certified = false"),
    ],
)
def test_each_row_passes_and_fails(id: str, good: str, bad: str) -> None:
    assert verdict(id, CHEST, good) == "pass"
    assert verdict(id, CHEST, bad) == "fail"


@pytest.mark.parametrize(
    ("id", "left_out", "settled_by"),
    [
        ("cold.capacity.drinks", 'running_power = "58 W"', "items.drinks.cold.running_power"),
        ("cold.duty.drinks", 'running_power = "58 W"', "items.drinks.cold.running_power"),
        ("cold.limit.drinks", 'running_power = "58 W"', "items.drinks.cold.running_power"),
        ("cold.hold_over.drinks", 'stock = "62 lb"', "items.drinks.cold.food_mass"),
        ("cold.thermometer.drinks", "", "items.drinks.cold.thermometer"),
        ("cold.certified.drinks", "", "items.drinks.cold.certified"),
    ],
)
def test_a_second_box_with_something_missing_cannot_be_told(id: str, left_out: str, settled_by: str) -> None:
    """The first box passes; it must not speak for the second."""
    first = CHEST + 'thermometer = "2 °F"\ncertified = true\n'
    found = findings(first, SECOND.replace(left_out, ""))
    assert found[id].verdict == "cannot tell"
    assert found[id].missing == (settled_by,)
    assert found[id.replace("drinks", "chest")].verdict in ("pass", "fail")


def test_a_box_of_which_nothing_is_said_cannot_be_told() -> None:
    found = findings(CHEST.partition("[items.chest.cold]")[0])
    assert {one.verdict for one in found.values()} == {"cannot tell"}
    assert {one.missing for one in found.values()} == {("items.chest.cold",)}


def test_a_place_with_another_limit_is_judged_by_it() -> None:
    warm = 'set_point = "38 °F"'
    assert verdict("cold.limit.chest", CHEST, warm) == "fail"
    assert verdict("cold.limit.chest", CHEST, warm, '[place]\ncold_limit = "45 °F"') == "pass"


def test_every_row_says_how_it_is_known() -> None:
    for row in ROWS:
        assert row.says
        assert row.why
        assert row.how in ("read", "practice", "memory")
        assert row.unconfirmed == (row.how == "memory")
