"""Fuses at their sources, faults and interrupt ratings, the tow lead, what feeds what."""

from __future__ import annotations

import pytest

from tests.sheets.circuits.carts import HEAD, LOW, MAINS, set_field, worked

CHARGER = """
[items.dcdc]
kind = "charger"
[circuits.tow]
supply = "tow plug"
feeds = ["dcdc"]
length = "12 ft"
current = "12 A"
fuse = "20 A"
fuse_type = "blade"
fuse_distance = "5 in"
[circuits.charging]
supply = "bank"
feeds = ["dcdc"]
length = "5 ft"
current = "10 A"
fuse = "20 A"
fuse_type = "terminal-post"
fuse_distance = "1 in"
far_fuse = "20 A"
far_fuse_type = "terminal-post"
far_fuse_distance = "3 in"
"""
LITHIUM = """
[battery]
pieces = ["bank"]
chemistry = "LFP"
"""


def test_a_fuse_at_every_source_passes() -> None:
    assert set(worked(LOW + CHARGER).verdicts("fused").values()) == {"pass"}


@pytest.mark.parametrize("name", ["feeder", "pump"])
def test_a_circuit_without_a_fuse_fails_and_the_one_to_fit_is_told(name: str) -> None:
    cart = worked(set_field(LOW, f"circuits.{name}", "fuse", ""))
    found = cart.findings("fused")[name]
    assert (found.verdict, float(found.provided or 0)) == ("fail", 1.0)
    assert cart[f"run.{name}.fuse"] == cart[f"run.{name}.least_fuse"]
    assert f"circuits.{name}.fuse" in found.fields


@pytest.mark.parametrize(("fields", "bare"), [(("far_fuse",), 1.0), (("fuse", "far_fuse"), 2.0)])
def test_a_cable_between_two_sources_wants_a_fuse_at_both_ends(fields: tuple[str, ...], bare: float) -> None:
    text = LOW + CHARGER
    for field in fields:
        text = set_field(text, "circuits.charging", field, "")
    found = worked(text).findings("fused")["charging"]
    assert (found.verdict, float(found.provided or 0)) == ("fail", bare)


def test_a_charger_is_no_source_to_what_feeds_it() -> None:
    cart = worked(LOW + CHARGER)
    assert cart["source.tow.bare"] == 0.0
    assert not cart.has("source.tow.far_distance")


def test_an_inverter_protects_what_starts_at_it() -> None:
    assert "panel" not in worked(LOW + MAINS).verdicts("fused")


@pytest.mark.parametrize(("distance", "verdict"), [("7 in", "pass"), ("7 1/2 in", "fail")])
def test_a_fuse_too_far_from_the_battery(distance: str, verdict: str) -> None:
    text = set_field(LOW, "circuits.feeder", "fuse_distance", f'"{distance}"')
    assert worked(text).verdicts("fuse_distance")["feeder"] == verdict


@pytest.mark.parametrize(("distance", "verdict"), [("18 in", "pass"), ("19 in", "fail")])
def test_article_552_allows_eighteen_inches(distance: str, verdict: str) -> None:
    text = set_field(LOW, "circuits.feeder", "fuse_distance", f'"{distance}"')
    cart = worked(text, place__electrical_basis='"552"')
    assert cart.verdicts("fuse_distance")["feeder"] == verdict


def test_a_far_fuse_has_its_own_distance() -> None:
    text = set_field(LOW + CHARGER, "circuits.charging", "far_fuse_distance", '"9 in"')
    cart = worked(text)
    assert cart.verdicts("fuse_far_distance")["charging"] == "fail"
    assert cart.verdicts("fuse_distance")["charging"] == "pass"


def test_a_fuse_in_the_bus_needs_no_distance_and_one_at_the_battery_does() -> None:
    cart = worked(set_field(LOW, "circuits.feeder", "fuse_distance", ""))
    verdicts = cart.verdicts("fuse_distance")
    assert verdicts == {"feeder": "cannot tell", "pump": "pass", "chest": "pass"}


# ---- faults


def test_fault_currents_by_hand() -> None:
    """2000 A behind 6.4 mohm; 3 ft of 6 AWG out and back, cold, and 0.2 mohm of joints."""
    cart = worked(LOW)
    feeder = 2 * 3 * 10.75 / 24538
    pump = 2 * 8 * 10.75 / 9343
    assert cart["fault.feeder.at_fuse"] == 2000.0
    assert cart["fault.pump.at_fuse"] == pytest.approx(12.8 / (0.0064 + feeder + 0.0002), rel=1e-6)
    assert cart["fault.pump.at_end"] == pytest.approx(12.8 / (0.0064 + feeder + pump + 0.0004), rel=1e-6)


@pytest.mark.parametrize(("current", "verdict"), [(1000.0, "pass"), (1001.0, "fail")])
def test_a_fuse_that_cannot_break_the_fault(current: float, verdict: str) -> None:
    text = set_field(LOW, "circuits.feeder", "fuse_type", '"blade"')
    cart = worked(text, bank={"battery.fault_current": (current, "A")})
    assert cart.verdicts("interrupt")["feeder"] == verdict


@pytest.mark.parametrize(("current", "verdict"), [(8000.0, "pass"), (8001.0, "fail")])
def test_a_fuse_at_the_battery_wants_a_quarter_more(current: float, verdict: str) -> None:
    cart = worked(LOW, bank={"battery.fault_current": (current, "A")})
    assert cart.verdicts("main_interrupt") == {"feeder": verdict}
    assert cart.verdicts("interrupt")["feeder"] == "pass"


@pytest.mark.parametrize(("fuse", "verdict"), [("class T", "pass"), ("terminal-post", "fail")])
def test_a_20_kiloampere_device_is_enough_beside_any_lithium_bank(fuse: str, verdict: str) -> None:
    text = set_field(LOW + LITHIUM, "circuits.feeder", "fuse_type", f'"{fuse}"')
    cart = worked(text, bank={"battery.fault_current": (27000.0, "A")})
    assert cart.verdicts("interrupt")["feeder"] == verdict
    assert cart.verdicts("main_interrupt") == {"feeder": verdict}
    lead_acid = worked(text.replace("LFP", "AGM"), bank={"battery.fault_current": (27000.0, "A")})
    assert lead_acid.verdicts("interrupt")["feeder"] == "fail"


def test_a_wire_that_melts_before_its_breaker_opens() -> None:
    """0.05 s of 6000 A ask for 11.7 mm²: 8 AWG by SAE areas has 7.5, 6 AWG 12.4."""
    text = set_field(LOW, "circuits.feeder", "fuse_type", '"DC breaker"')
    bank = {"battery.fault_current": (6000.0, "A"), "battery.resistance": (0.0021, "ohm")}
    assert worked(text, bank=bank).verdicts("withstand")["feeder"] == "pass"
    thin = set_field(text, "circuits.feeder", "wire", '"8 AWG"')
    assert worked(thin, bank=bank).verdicts("withstand")["feeder"] == "fail"


def test_a_fuse_of_no_known_kind_cannot_be_told() -> None:
    cart = worked(set_field(LOW, "circuits.feeder", "fuse_type", ""))
    assert cart.verdicts("interrupt")["feeder"] == "cannot tell"
    assert cart.verdicts("main_interrupt") == {"feeder": "cannot tell"}


def test_without_a_bank_no_fault_can_be_told() -> None:
    cart = worked(LOW, bank={})
    assert set(cart.verdicts("interrupt").values()) == {"cannot tell"}


def test_on_120_v_no_interrupt_rating_is_judged() -> None:
    assert "counter" not in worked(LOW + MAINS).verdicts("interrupt")


# ---- the tow lead, and what feeds what


def test_lithium_straight_on_the_tow_lead() -> None:
    tow = CHARGER.partition("[circuits.charging]")[0]
    straight = set_field(tow, "circuits.tow", "feeds", '["bank"]')
    assert worked(LOW + straight + LITHIUM).verdicts("tow_lead") == {"tow": "fail"}
    assert worked(LOW + CHARGER + LITHIUM).verdicts("tow_lead") == {"tow": "pass"}
    lead_acid = LITHIUM.replace("LFP", "AGM")
    assert worked(LOW + straight + lead_acid).verdicts("tow_lead") == {"tow": "pass"}
    assert worked(LOW + straight).verdicts("tow_lead") == {"tow": "cannot tell"}


@pytest.mark.parametrize(("current", "verdict"), [("15 A", "pass"), ("16 A", "fail")])
def test_what_a_connector_carries(current: str, verdict: str) -> None:
    text = set_field(LOW + CHARGER, "circuits.tow", "current", f'"{current}"')
    assert worked(text).verdicts("tow_connector") == {"tow": verdict}


def test_a_load_on_no_circuit_and_one_on_two() -> None:
    cart = worked(set_field(LOW, "circuits.pump", "feeds", '["chest"]'))
    assert cart.verdicts("one_circuit") == {"pump": "fail", "chest": "fail"}


def test_a_load_on_a_circuit_of_another_voltage() -> None:
    text = set_field(LOW + MAINS, "circuits.counter", "feeds", '["fan", "pump"]')
    text = set_field(text, "circuits.pump", "feeds", '["till"]')
    verdicts = worked(text).verdicts("one_circuit")
    assert (verdicts["pump"], verdicts["till"], verdicts["fan"]) == ("fail", "fail", "pass")


def test_without_circuits_nothing_can_be_told_of_them() -> None:
    text = LOW.partition("[circuits.feeder]")[0]
    assert set(worked(text).verdicts("one_circuit").values()) == {"cannot tell"}


def test_the_same_place_by_the_name_of_its_item() -> None:
    text = LOW.replace('supply = "12 V bus"', 'supply = "block"').replace('["12 V bus"]', '["items.block"]')
    block = '[items.block]\nkind = "fuse"\n'
    plain, named = worked(LOW), worked(text + block)
    assert named["run.pump.total_share"] == plain["run.pump.total_share"]
    assert "electrical_basis" in HEAD
