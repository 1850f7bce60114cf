"""Every requirement on gas on both sides of its limit, and what is said where something is missing."""

from __future__ import annotations

import pytest

from curbwright.build.file import load_text
from curbwright.requirements import requirements
from curbwright.sheets.gas import things_on_gas
from tests.sheets.gas.gas_carts import CART, changed, findings, said, sheet, sheets

ROWS = [row.id for row in requirements() if row.id.startswith("gas.")]
CABINET = '\n[gas.cabinet]\nwidth = "26 in"\ndepth = "14 in"\nvent_top = "20 in2"\nvent_bottom = "20 in2"\n'

# Requirement or one thing of it, a change that just holds, a change that just fails.
SIDES = {
    "full_fire": (("[gas] master", 'master = true\nfull_fire = "9 h"'),
                  ("[gas] master", 'master = true\nfull_fire = "11 h"')),
    "through_the_day": (("[day] closes", 'closes = "23:30"'), ("[gas] ambient", 'ambient = "-10 °F"')),
    "day_carried": (("[items.plate] gas_input", 'gas_input = "150,000 BTU/h"'),
                    ("[items.plate] gas_input", 'gas_input = "350,000 BTU/h"')),
    "regulator_capacity": (("[gas.regulator] capacity", 'capacity = "60,000 BTU/h"'),
                           ("[gas.regulator] capacity", 'capacity = "59,900 BTU/h"')),
    "regulator_stages": (("[gas.regulator] stages", "stages = 2"), ("[gas.regulator] stages", "stages = 1")),
    "pipe_size.main": (("[gas.sections.main] size", 'size = "1/2 in"'),
                       ("[items.kettle] gas_input", 'gas_input = "170,000 BTU/h"')),
    "pipe_size.plate": (("[gas.sections.plate] carries", 'carries = "40,000 BTU/h"'),
                        ("[gas.sections.plate] carries", 'carries = "39,900 BTU/h"')),
    "pressure.plate": (("[items.plate.gas] least_pressure", 'least_pressure = "10.8 in WC"'),
                       ("[items.plate.gas] least_pressure", 'least_pressure = "10.9 in WC"')),
    "pressure_lost": (("[gas.sections.plate] carries", 'carries = "44,000 BTU/h"'),
                      ("[gas.sections.plate] carries", 'carries = "40,000 BTU/h"')),
    "propane.plate": (("[items.plate.gas] fuel", 'fuel = "propane"'),
                      ("[items.plate.gas] fuel", 'fuel = "natural gas"')),
    "altitude.plate": (("[pitch] altitude", 'altitude = "2000 ft"'),
                       ("[pitch] altitude", 'altitude = "2010 ft"')),
    "filling.bottle": (("[items.bottle.gas] water_capacity", 'water_capacity = "47.62 lb"'),
                       ("[items.bottle.gas] water_capacity", 'water_capacity = "47.61 lb"')),
    "hot_bottle": (("[pitch] high", 'high = "111 °F"'), ("[pitch] high", 'high = "112 °F"')),
    "aboard": (("[gas] place_limit", 'place_limit = "40 lb"'),
               ("[gas] place_limit", 'place_limit = "39 lb"')),
    "restraint": (("[gas] restraint", 'restraint = "152 lb"'), ("[gas] restraint", 'restraint = "151 lb"')),
    "alarm": (("[gas] alarm", 'alarm = "nose"'), ("[gas] alarm", 'alarm = "kettle"')),
    "master_valve": (("[gas] master", "master = true"), ("[gas] master", "master = false")),
    "hose_length.plate": (("[gas.sections.plate] length", 'length = "6 ft"'),
                          ("[gas.sections.plate] length", 'length = "6 ft 1 in"')),
}  # fmt: skip
MISSING = {
    "full_fire": ("[day] opens", "day.opens"),
    "through_the_day": ("[day] closes", "day.closes"),
    "day_carried": ("[items.spare] charge", "items.spare.charge"),
    "regulator_capacity": ("[gas.regulator] capacity", "gas.regulator.capacity"),
    "regulator_stages": ("[gas.regulator] stages", "gas.regulator.stages"),
    "pipe_size.main": ("[gas.sections.main] length", "gas.sections.main.length"),
    "pressure.kettle": ("[gas.sections.main] length", "gas.sections.main.length"),
    "pressure_lost": ("[gas.sections.main] length", "gas.sections.main.length"),
    "propane.plate": ("[items.plate.gas] fuel", "items.plate.gas.fuel"),
    "filling.bottle": ("[items.bottle.gas] water_capacity", "items.bottle.gas.water_capacity"),
    "aboard": ("[items.spare] charge", "items.spare.charge"),
    "restraint": ("[gas] restraint", "gas.restraint"),
    "alarm": ("[gas] alarm", "gas.alarm"),
    "master_valve": ("[gas] master", "gas.master"),
}


def test_everything_holds_in_the_small_cart() -> None:
    assert {id: one.verdict for id, one in findings().items() if one.verdict != "pass"} == {
        "gas.vent_top": "not applicable", "gas.vent_bottom": "not applicable",
    }  # fmt: skip


@pytest.mark.parametrize("id", SIDES)
def test_both_sides_of_the_limit(id: str) -> None:
    holds, fails = SIDES[id]
    assert said(changed(holds), id) == "pass"
    assert said(changed(fails), id) == "fail"


@pytest.mark.parametrize(("top", "bottom", "holds"), [
    ("20 in2", "20 in2", True), ("19.9 in2", "20 in2", False), ("20 in2", "19.9 in2", False),
])  # fmt: skip
def test_a_cabinet_breathes_by_the_fuel_in_it(top: str, bottom: str, holds: bool) -> None:
    """Forty pounds at half a square inch a pound."""
    cabinet = CABINET.replace('top = "20 in2"', f'top = "{top}"').replace(
        'bottom = "20 in2"', f'bottom = "{bottom}"'
    )
    found = findings(CART + cabinet)
    assert all(found[f"gas.{id}"].verdict == "pass" for id in ("vent_top", "vent_bottom")) is holds


def test_a_large_cabinet_breathes_by_its_floor() -> None:
    """60 by 40 in: two openings of 2 % together are 24 in2 each, more than the 20 by the fuel."""
    cabinet = CABINET.replace('"26 in"', '"60 in"').replace('"14 in"', '"40 in"')
    found = findings(CART + cabinet)
    assert found["gas.vent_top"].verdict == "fail"
    assert float(found["gas.vent_top"].required or 0) == pytest.approx(24 * 0.0254**2)


def test_a_cabinet_without_bottles_needs_the_least_opening() -> None:
    found = findings(changed(("[gas] bottles", "bottles = []")) + CABINET)
    assert float(found["gas.vent_top"].required or 0) == pytest.approx(10 * 0.0254**2)
    assert found["gas.full_fire"].missing == ("gas.bottles",)


def test_every_requirement_is_tried_on_both_sides() -> None:
    tried = {f"gas.{id.partition('.')[0]}" for id in SIDES} | {"gas.vent_top", "gas.vent_bottom"}
    assert tried == set(ROWS)


@pytest.mark.parametrize("id", MISSING)
def test_what_is_missing_is_named_and_never_passed(id: str) -> None:
    field, path = MISSING[id]
    found = findings(changed((field, "")))
    concerned = found.get(f"gas.{id}") or found[f"gas.{id.partition('.')[0]}"]
    assert concerned.verdict == "cannot tell"
    assert path in concerned.missing


@pytest.mark.parametrize("id", ["pressure.kettle", "pipe_size.main"])
def test_a_size_that_nobody_sells_cannot_be_told(id: str) -> None:
    found = findings(changed(("[gas.sections.main] size", 'size = "0.7 in"')))[f"gas.{id}"]
    assert found.verdict == "cannot tell"
    assert found.missing == ("gas.sections.main.size",)
    assert "1/2 in, 3/4 in" in found.reason


def test_an_appliance_that_no_pipe_serves_cannot_be_told() -> None:
    text = changed(("[gas.sections.kettle] serves", ""))
    assert said(text, "pressure.kettle") == "cannot tell"
    assert said(text, "pressure.plate") == "pass"


def test_a_thing_on_the_pipe_that_burns_nothing_cannot_be_told() -> None:
    text = changed(("[gas.sections.kettle] serves", 'serves = ["kettle", "nose"]'))
    found = findings(text)["gas.pressure.kettle"]
    assert (found.verdict, found.missing) == ("cannot tell", ("items.nose.gas_input",))
    assert "hangs on the gas pipe" in found.reason
    assert said(text, "pressure.plate") == "pass"


def test_a_cart_without_gas_has_an_empty_sheet_and_no_findings() -> None:
    text = "\n".join(CART.split("[items.plate]")[0].splitlines())
    empty = sheet(text)
    assert empty.figures() == {}
    assert empty.notes == ["Nothing aboard burns gas."]
    assert {one.verdict for one in findings(text).values()} == {"not applicable"}


def test_a_cart_of_bottles_alone_is_held_to_the_rules_of_bottles() -> None:
    bottles = CART[CART.index("[items.bottle]") : CART.index("[items.nose]")]
    told = '[gas]\nrestraint = "152 lb"\nmaster = true\nalarm = "bottle"\n'
    text = CART.split("[items.plate]")[0] + bottles + told
    found = findings(text)
    assert found["gas.filling.bottle"].verdict == "pass"
    assert found["gas.full_fire"].verdict == "not applicable"


def test_the_open_cart_needs_no_alarm_inside() -> None:
    text = changed(("[gas] alarm", ""), ("[shell] height", "")).replace("[shell]\n", "")
    assert said(text, "alarm") == "not applicable"


def test_nothing_is_guessed_of_a_kind_unheard_of() -> None:
    text = changed(("[items.kettle] kind", 'kind = "tool"'), ("[items.kettle.gas] busy", ""))
    gaps = {gap.path: gap.says for gap in sheets(text).gaps}
    assert "items.kettle.gas.busy" in gaps
    assert said(text, "through_the_day") == "cannot tell"


@pytest.mark.parametrize(("fields", "burns"), [
    ('kind = "griddle"\ngas_input = "30,000 BTU/h"', True),
    ('kind = "griddle"\ngas_input = "30,000 BTU/h"\nconnects = ["120 V"]', False),
    ('kind = "griddle"\ngas_input = "30,000 BTU/h"\nconnects = ["120 V", "gas"]', True),
    ('kind = "griddle"\nconnects = ["gas"]', True),
    ('kind = "griddle"', False),
    ('kind = "regulator"\nconnects = ["gas"]', False),
    ('kind = "rack"\nconnects = ["gas"]', False),
    ('kind = "cylinder"\nconnects = ["gas"]', False),
])  # fmt: skip
def test_what_burns_gas(fields: str, burns: bool) -> None:
    build = load_text(f'{CART}\n[items.one]\nback = "90 in"\n{fields}\n')
    assert ("one" in things_on_gas(build).burning) is burns


def test_what_is_left_out_is_taken_as_its_kind_usually_does() -> None:
    text = changed(("[items.plate.gas] busy", ""), ("[items.plate.gas] heat_up", ""))
    figures = sheets(text).figures
    assert float(figures["gas.hours.plate.busy"]) == 0.5
    assert float(figures["gas.hours.plate.heat_up"]) == 15 * 60
    assert "usual of its kind" in figures["gas.hours.plate.busy"].name


def test_the_file_of_the_small_cart_is_read_without_a_problem() -> None:
    assert load_text(CART).gas.changeover == "all open"
