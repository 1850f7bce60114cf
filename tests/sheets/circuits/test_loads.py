"""The load schedule and what a day takes from the battery."""

from __future__ import annotations

import pytest

from curbwright.build.file import load_text
from curbwright.figures import Figure, Tabled
from curbwright.sheets.circuits import circuits_sheet, work_circuits
from curbwright.sheets.placing import place
from tests.sheets.circuits.carts import HEAD, LOW, MAINS, set_field, worked

WH = 3600.0


def test_a_cart_without_anything_electric_has_an_empty_sheet_with_a_note() -> None:
    build = load_text(HEAD.partition("[electrical")[0])
    sheet = circuits_sheet(build, place(build), {})
    assert sheet.figures() == {}
    assert sheet.all_gaps() == []
    assert sheet.notes == ["This cart has nothing electric and no circuits."]


def test_energy_a_day_by_hand() -> None:
    """Pump 90 W for 20 min, chest 60 W half of 24 h; fan 200 W and till 20 W while serving, 10 to 15."""
    cart = worked(LOW + MAINS)
    assert cart["dc_energy_per_day"] == pytest.approx((90 / 3 + 60 * 12) * WH)
    drawn = (12 + 1.0426908 * 220 + 0.00009473454 * 270**2) * 5 + 12 * 2
    assert cart["inverter_energy_per_day"] == pytest.approx(drawn * WH, rel=1e-5)
    assert cart["energy_per_day"] == pytest.approx(
        cart["dc_energy_per_day"] + cart["inverter_energy_per_day"]
    )
    assert cart["mean_power"] == pytest.approx(cart["energy_per_day"] / 86400)


def test_each_supply_has_its_connected_load_its_energy_and_its_mean() -> None:
    cart = worked(LOW + MAINS)
    assert cart["demand.connected_12v"] == 150.0
    assert cart["demand.connected_inverter"] == 220.0
    assert cart["demand.mean_12v"] == pytest.approx(750 / 24)
    assert cart["demand.energy_inverter"] == pytest.approx(220 * 5 * WH)


def test_everything_running_at_the_lowest_voltage() -> None:
    cart = worked(LOW + MAINS)
    drawn = 12 + 1.0426908 * 220 + 0.00009473454 * 270**2
    assert cart["largest_dc_power"] == pytest.approx(150 + drawn, rel=1e-6)
    assert cart["largest_dc_current"] == pytest.approx((150 + drawn) / 10.8, rel=1e-6)


def test_the_worst_start_from_the_battery_is_the_fan_s_through_the_inverter() -> None:
    cart = worked(LOW + MAINS)
    start = 220 + 3 * 200
    assert cart["start_fan_mains"] == start
    assert cart["largest_start_power"] == pytest.approx(
        150 + 12 + 1.0426908 * start + 0.00009473454 * start**2, rel=1e-6
    )


def test_power_from_a_label_s_volts_and_amperes() -> None:
    text = set_field(LOW, "items.pump.electric", "power", "")
    text = set_field(text, "items.pump.electric", "current", '"7 A"')
    assert worked(text)["load.pump.power"] == 84.0
    text = set_field(text, "items.pump.electric", "voltage", '"13.6 V"')
    assert worked(text)["load.pump.power"] == pytest.approx(95.2)


def test_a_mains_label_needs_its_power_factor() -> None:
    text = set_field(MAINS, "items.fan.electric", "power", "")
    cart = worked(LOW + set_field(text, "items.fan.electric", "current", '"2 A"'))
    assert cart["load.fan.power"] == pytest.approx(120 * 2 * 0.8)
    assert cart["load.fan.apparent"] == pytest.approx(240)


@pytest.mark.parametrize(
    ("fields", "hours"),
    [
        ({"duty": '"constant"'}, 24.0),
        ({"duty": '"window"'}, 5.0),
        ({"duty": '"window"', "hours": '"3 h"'}, 3.0),
        ({"duty": '"window"', "on_at": '"22:00"', "off_at": '"06:00"'}, 8.0),
        ({"duty": '"thermostat"', "share": '"100 %"'}, 24.0),
        ({"duty": '"event"', "hours": '"12 min"'}, 0.2),
    ],
)
def test_the_ways_a_thing_can_run(fields: dict[str, str], hours: float) -> None:
    text = MAINS
    for field, value in fields.items():
        text = set_field(text, "items.till.electric", field, value)
    assert worked(LOW + text)["load.till.energy"] == pytest.approx(20 * hours * WH)


def test_a_thermostat_takes_its_share_from_the_cold_sheet() -> None:
    build = load_text(HEAD + set_field(LOW, "items.chest.electric", "share", ""))
    duty = Figure(0.4, id="cold.chest.duty_mean", name="duty", unit="1", origin=Tabled("trade-practice"))
    sheet = work_circuits(build, {duty.id: duty}).sheet
    assert sheet.figures()["circuits.load.chest.energy"] == pytest.approx(60 * 0.4 * 24 * WH)
    assert sheet.figures()["circuits.load.chest.energy"].origin.inputs["share"] is duty


def test_what_the_builder_wrote_beats_the_cold_sheet() -> None:
    build = load_text(HEAD + LOW)
    duty = Figure(0.4, id="cold.chest.duty_mean", name="duty", unit="1", origin=Tabled("trade-practice"))
    figures = work_circuits(build, {duty.id: duty}).sheet.figures()
    assert figures["circuits.load.chest.energy"] == pytest.approx(60 * 0.5 * 24 * WH)


@pytest.mark.parametrize(
    ("section", "field"),
    [
        ("items.pump.electric", "power"),
        ("items.pump.electric", "bus"),
        ("items.pump.electric", "hours"),
        ("items.chest.electric", "share"),
    ],
)
def test_a_load_that_is_not_known_leaves_no_sum(section: str, field: str) -> None:
    cart = worked(set_field(LOW, section, field, ""))
    assert f"{section}.{field}" in cart.gaps().values()
    assert not cart.has("energy_per_day")
    assert not cart.has("demand.connected_12v")


def test_a_thing_on_12_v_that_is_not_said_to_draw_anything_leaves_no_sum() -> None:
    cart = worked(LOW + '[items.radio]\nkind = "other"\nconnects = ["12 V"]\n')
    assert cart.gaps()["load.radio"] == "items.radio.electric"
    assert not cart.has("energy_per_day")


def test_a_battery_or_a_fuse_block_on_12_v_is_no_load() -> None:
    text = LOW.replace('kind = "battery"', 'kind = "battery"\nconnects = ["12 V"]')
    cart = worked(text + '[items.block]\nkind = "fuse"\nconnects = ["12 V"]\n')
    assert cart.has("energy_per_day")


def test_serving_hours_left_out_are_asked_for() -> None:
    build = load_text(HEAD.replace('opens = "10:00"\n', "") + LOW + MAINS)
    gaps = work_circuits(build, {}).sheet.all_gaps()
    assert "day.opens" in {gap.path for gap in gaps}


def test_without_a_bank_the_demand_stands_and_the_current_cannot_be_told() -> None:
    cart = worked(LOW, bank={})
    assert cart.has("energy_per_day")
    assert not cart.has("largest_dc_current")
    assert "battery" in cart.gaps().values()


def test_a_cart_on_shore_power_alone_asks_nothing_of_a_battery() -> None:
    text = """
[items.kettle]
kind = "coffee"
[items.kettle.electric]
bus = "120 V shore"
power = "1200 W"
hours = "1 h"
[electrical.shore]
rating = "20 A"
cord_wire = "12 AWG"
cord_length = "25 ft"
[electrical.bonds]
panel = "no"
[circuits.inlet]
supply = "shore inlet"
feeds = ["120 V panel"]
length = "3 ft"
fuse = "20 A"
fuse_type = "AC breaker"
[circuits.kettle]
supply = "120 V panel"
feeds = ["kettle"]
length = "8 ft"
fuse = "20 A"
fuse_type = "AC breaker"
"""
    cart = worked(text, bank={})
    assert cart.gaps() == {}
    assert not cart.has("energy_per_day")
    assert cart["demand.energy_shore"] == pytest.approx(1200 * WH)
    assert cart["shore.current"] == pytest.approx(10.0)
