"""Cooking on the sheet: what limits, both sides of each limit, what is left out."""

from __future__ import annotations

from textwrap import dedent

import pytest

import curbwright
from curbwright.figures import Figure, Worksheet
from curbwright.requirements.finding import Finding
from tests.figures.rework import rework

CART = dedent("""
    [cart]
    name = "A plate"

    [trailer]
    deck_length = "10 ft"
    deck_width = "6 ft"
    ball_to_deck = "4 ft"

    [day]
    opens = "11:00"
    closes = "15:00"
""")
PLATE = dedent("""
    [items.plate]
    kind = "griddle"
    gas_input = "60,000 BTU/h"

    [items.plate.cooking]
    plate_width = "36 in"
    plate_depth = "24 in"
    plate_thickness = "3/4 in"
    sides = "0 %"
""")
OTHERS = dedent("""
    [items.pot]
    kind = "burner"
    gas_input = "30,000 BTU/h"
    [items.pot.cooking]
    liquid = "5 gal"
    holds = 20

    [items.vat]
    kind = "fryer"
    gas_input = "50,000 BTU/h"
    [items.vat.cooking]
    liquid = "6 gal"
    holds = 8

    [items.bath]
    kind = "steam_table"
    gas_input = "5,000 BTU/h"
    [items.bath.cooking]
    liquid = "4 gal"
    open_area = "3 ft2"
""")
CAKES = dedent("""
    [menu.cakes]
    portions = 100
    cooked_on = "plate"
    portion_mass = "5 oz"
    room = "60 in2"
    cook_time = "5 min"
    cook_to = "165 °F"
""")


def works(*parts: str) -> curbwright.sheets.Worksheets:
    return curbwright.work(curbwright.read_text("\n".join((CART, *parts))))


def sheet(*parts: str) -> Worksheet:
    return works(*parts).sheet("cooking")


def figures(*parts: str) -> dict[str, Figure]:
    return sheet(*parts).figures()


def finding(id: str, *parts: str) -> Finding:
    return next(one for one in curbwright.judge(works(*parts)) if one.id == id)


def test_a_cart_that_says_nothing_of_cooking_has_an_empty_sheet_and_no_verdict() -> None:
    sheets = works('[items.plate]\nkind = "griddle"', '[menu.cakes]\nportions = 10\ncooked_on = "plate"')
    assert sheets.sheet("cooking").figures() == {}
    assert "says how it cooks" in sheets.sheet("cooking").notes[0]
    told = [one for one in curbwright.judge(sheets) if one.requirement.id.startswith(("cooking.", "food."))]
    assert {one.verdict for one in told} == {"not applicable"}


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_line_can_be_reworked(system: str) -> None:
    soup = CAKES.replace("cakes", "soup").replace('"plate"', '"pot"')
    soup = soup.replace("room", "thickness").replace("60 in2", "1 in")
    chips = CAKES.replace("cakes", "chips").replace('"plate"', '"vat"')
    report = rework(sheet(PLATE, CAKES, OTHERS, soup, chips), system=system)
    assert report.faults == []
    assert len(report.reworked) > 60


def test_the_plate_by_hand() -> None:
    """0.2836 lb/in3 of steel, 0.115 BTU/lb a degree; published: 16.0 min at 60,000 BTU/h without sides."""
    found = figures(PLATE)
    pounds = 36 * 24 * 0.75 * 0.2836
    assert found["cooking.plate.steel"] / 0.45359237 == pytest.approx(pounds, rel=1e-6)
    assert found["cooking.plate.heat_up"] / 60 == pytest.approx(16.0, rel=0.01)
    assert found["cooking.plate.idle"] / 0.29307107 == pytest.approx(6 * 3500, rel=1e-6)


def test_the_step_that_limits_is_named() -> None:
    found = figures(PLATE, CAKES)
    pieces = 36 * 24 * 0.85 / 60
    plate = pieces / 325 * 3600
    assert found["cooking.plate.portions_per_hour"] * 3600 == pytest.approx(plate, rel=1e-9)
    assert found["cooking.portions_per_hour"] * 3600 == pytest.approx(80, rel=1e-9)
    assert found["cooking.portions_per_hour"].origin.chosen == "hands"  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("change", "limits"),
    [
        (('"5 min"', '"15 min"'), "plate: plate"),
        (('"60,000 BTU/h"', '"6,000 BTU/h"'), "plate: flame"),
        (("portion_mass", 'hands = "90 s"\nportion_mass'), "hands"),
    ],
)
def test_each_step_limits_when_it_is_the_slowest(change: tuple[str, str], limits: str) -> None:
    found = figures(PLATE.replace(*change), CAKES.replace(*change))
    assert found["cooking.portions_per_hour"].origin.chosen == limits  # type: ignore[union-attr]


def test_a_mix_takes_the_time_of_both() -> None:
    other = (
        CAKES.replace("cakes", "eggs").replace("portions = 100", "portions = 50").replace("60 in2", "25 in2")
    )
    alone, mixed = figures(PLATE, CAKES), figures(PLATE, CAKES, other)
    first, both = alone["cooking.plate.room_time"], mixed["cooking.plate.room_time"]
    assert both - first == pytest.approx(50 * 25 * 325 / (36 * 24 * 0.85), rel=1e-9)
    assert float(mixed["cooking.portions"]) == 150


@pytest.mark.parametrize(("portions", "verdict"), [(228, "pass"), (229, "fail")])
def test_both_sides_of_the_busiest_hour(portions: int, verdict: str) -> None:
    """35 % of 228 is 79.8 and of 229 is 80.15; hands make 80 an hour."""
    menu = CAKES.replace("portions = 100", f"portions = {portions}")
    assert finding("cooking.pace", PLATE, menu).verdict == verdict


def test_a_plate_with_too_little_heat_fails_and_says_so() -> None:
    weak = PLATE.replace('"60,000 BTU/h"', '"8,000 BTU/h"')
    assert finding("cooking.reaches.plate", weak).verdict == "fail"
    assert "With every burner on it never gets that hot." in sheet(weak).sections[-1].notes


def test_a_bath_of_two_open_wells_loses_what_the_handbook_says() -> None:
    """2.6 lb/h, 2,600 BTU/h of vapour from two wells of 12 x 20 in."""
    found = figures(OTHERS.replace("3 ft2", "480 in2"))
    assert found["cooking.bath.water_lost"] * 3600 / 0.45359237 == pytest.approx(2.6, rel=0.03)


def test_a_pot_without_its_water_still_has_its_pace() -> None:
    soup = CAKES.replace('"plate"', '"pot"').replace("room", "thickness").replace("60 in2", "1 in")
    found = sheet(OTHERS.replace('liquid = "5 gal"', ""), soup)
    assert "cooking.pot.heat_up" not in found.figures()
    assert found.figures()["cooking.pot.pace_room"] == pytest.approx(20 / 325)
    assert "cooking.pot.portions_per_hour" in found.figures()


def test_a_middle_that_is_never_that_hot_leaves_the_pace_be() -> None:
    hotter = CAKES.replace("165 °F", "220 °F") + 'thickness = "1/2 in"\n'
    found = figures(PLATE, hotter)
    assert "cooking.plate.cakes.centre_time" not in found
    assert "cooking.portions_per_hour" in found


def test_a_thin_plate_under_a_heavy_load_is_told() -> None:
    thin = PLATE.replace("3/4 in", "1/8 in")
    assert finding("cooking.after_load.plate", PLATE, CAKES).verdict == "pass"
    assert finding("cooking.after_load.plate", thin, CAKES).verdict == "fail"


def test_a_missing_cook_time_cannot_be_told_and_names_the_field() -> None:
    told = finding("cooking.pace", PLATE, CAKES.replace('cook_time = "5 min"\n', ""))
    assert told.verdict == "cannot tell"
    assert "menu.cakes.cook_time" in told.missing


def test_a_plate_on_electricity_burns_no_gas() -> None:
    electric = PLATE.replace('gas_input = "60,000 BTU/h"\n', "") + 'power = "6 kW"\nefficiency = "70 %"\n'
    found = figures(electric, CAKES)
    assert "cooking.gas_per_portion" not in found
    assert found["cooking.energy_per_portion"] > 0


def test_no_portions_is_a_gap_and_not_a_crash() -> None:
    found = sheet(PLATE, CAKES.replace("portions = 100", "portions = 0"))
    assert "cooking.portions_per_hour" not in found.figures()
    assert found.all_gaps()
