"""Wire and fuse of each circuit: both sides of every threshold, and the criterion that governs."""

from __future__ import annotations

import pytest

from tests.sheets.circuits.carts import LOW, MAINS, set_field, worked


def with_pump(**fields: str) -> str:
    text = LOW
    for field, value in fields.items():
        text = set_field(text, "circuits.pump", field, value)
    return text


def governing(text: str, name: str = "pump") -> tuple[str, str]:
    run = worked(text).wired.runs[name]
    return run.needed.name, run.governing


def test_current_is_what_the_load_draws_at_the_lowest_voltage() -> None:
    assert worked(LOW)["run.pump.current"] == pytest.approx(90 / 10.8)
    assert worked(LOW)["run.feeder.current"] == pytest.approx(150 / 10.8)


def test_what_runs_three_hours_or_longer_is_made_for_a_quarter_more() -> None:
    cart = worked(LOW)
    assert cart["run.pump.design"] == pytest.approx(90 / 10.8)
    assert cart["run.chest.design"] == pytest.approx(1.25 * 60 / 10.8)
    assert cart["run.feeder.design"] == pytest.approx(1.25 * 150 / 10.8)
    told = worked(with_pump(continuous="true"))
    assert told["run.pump.design"] == pytest.approx(1.25 * 90 / 10.8)


def test_the_inverter_s_feed_is_made_for_its_rating_at_the_lowest_voltage() -> None:
    cart = worked(LOW + MAINS)
    assert cart["run.inverter_feed.current"] == pytest.approx(1000 / (0.87 * 10.8))
    assert cart["run.inverter_feed.least_fuse"] == 150.0


# ---- a fuse against its wire


def test_what_a_wire_may_carry_in_a_hot_space_and_a_bundle_by_hand() -> None:
    """10 AWG at 75 °C carries 40 A in 86 °F; 104 °F leaves sqrt(35/45) of it, four in a bundle 60 %."""
    cart = worked(with_pump())
    assert cart["run.pump.allowed"] == pytest.approx(40 * (35 / 45) ** 0.5)
    bundled = worked(with_pump(bundled="4"))
    assert bundled["run.pump.allowed"] == pytest.approx(40 * (35 / 45) ** 0.5 * 0.6)


@pytest.mark.parametrize(("fuse", "verdict"), [("35 A", "pass"), ("40 A", "fail")])
def test_a_fuse_larger_than_its_wire_s_ampacity(fuse: str, verdict: str) -> None:
    found = worked(with_pump(fuse=f'"{fuse}"')).findings("fuse_over_wire")["pump"]
    assert found.verdict == verdict
    assert found.required == pytest.approx(35.2767, rel=1e-4)


@pytest.mark.parametrize(("fuse", "verdict"), [("10 A", "pass"), ("7.5 A", "fail")])
def test_a_fuse_too_small_for_its_load(fuse: str, verdict: str) -> None:
    assert worked(with_pump(fuse=f'"{fuse}"')).verdicts("fuse_under_load")["pump"] == verdict


def test_a_hotter_space_lowers_what_a_wire_may_carry_until_its_fuse_is_too_large() -> None:
    assert worked(with_pump(fuse='"30 A"')).verdicts("fuse_over_wire")["pump"] == "pass"
    assert worked(with_pump(fuse='"30 A"', space='"130 F"')).verdicts("fuse_over_wire")["pump"] == "fail"


def test_a_space_hotter_than_the_insulation_leaves_nothing_and_is_no_crash() -> None:
    cart = worked(with_pump(space='"180 F"'))
    assert not cart.has("run.pump.allowed")
    assert cart.verdicts("fuse_over_wire")["pump"] == "cannot tell"


def test_120_v_wire_is_held_to_its_terminals_and_to_the_small_wire_rule() -> None:
    """12 AWG at 90 °C would carry 30 A; its 60 °C terminals and 240.4(D) allow 20."""
    text = set_field(LOW + MAINS, "circuits.counter", "wire", '"12 AWG"')
    cart = worked(set_field(text, "circuits.counter", "insulation", '"90 C"'))
    assert cart["run.counter.allowed"] == 20.0
    assert cart.verdicts("fuse_over_wire")["counter"] == "pass"
    text = set_field(text, "circuits.counter", "fuse", '"25 A"')
    assert worked(text).verdicts("fuse_over_wire")["counter"] == "fail"


def test_article_552_caps_the_fuses_of_small_12_v_wires() -> None:
    text = with_pump(wire='"16 AWG"', fuse='"10 A"', insulation='"105 C"')
    general = worked(text)
    assert general["run.pump.allowed"] > 10.0
    capped = worked(text, place__electrical_basis='"552"')
    assert capped["run.pump.allowed"] == 8.0
    assert capped.verdicts("fuse_over_wire")["pump"] == "fail"


# ---- voltage drop


def test_drop_by_hand_on_both_bases() -> None:
    """8 ft out and back of 10 AWG by SAE areas, 9343 cmil: 12.87 and 10.75 ohm-cmil/ft."""
    cart = worked(LOW)
    current = 90 / 10.8
    assert cart["run.pump.drop_75"] == pytest.approx(2 * 8 * current * 12.87 / 9343, rel=1e-6)
    assert cart["run.pump.drop_24"] == pytest.approx(2 * 8 * current * 10.75 / 9343, rel=1e-6)
    feeder = 2 * 3 * (150 / 10.8) * 12.87 / 24538 / 12
    own = 2 * 8 * current * 12.87 / 9343 / 12
    assert cart["run.pump.total_share"] == pytest.approx(feeder + own, rel=1e-6)


def test_the_marine_basis_can_be_asked_for_and_the_other_still_prints() -> None:
    cart = worked(LOW, electrical__drop_basis='"24 C"')
    assert cart["run.pump.share"] == cart["run.pump.share_24"]
    assert cart.has("run.pump.share_75")


@pytest.mark.parametrize(("length", "verdict"), [("13 ft 6 in", "pass"), ("14 ft 6 in", "fail")])
def test_a_drop_over_its_limit(length: str, verdict: str) -> None:
    assert worked(with_pump(length=f'"{length}"')).verdicts("drop")["pump"] == verdict


def test_ten_percent_are_allowed_where_it_matters_little() -> None:
    text = with_pump(length='"20 ft"')
    assert worked(text).verdicts("drop")["pump"] == "fail"
    text = set_field(text, "circuits.pump", "critical", "false")
    assert worked(text).verdicts("drop")["pump"] == "pass"


def test_awg_areas_have_more_copper_than_sae() -> None:
    sae, awg = (worked(with_pump(area_basis=f'"{basis}"'))["run.pump.share"] for basis in ("SAE", "AWG"))
    assert sae / awg == pytest.approx(10380 / 9343, rel=1e-6)


# ---- the wire it needs


def test_a_long_thin_load_is_governed_by_its_drop() -> None:
    assert governing(with_pump(length='"20 ft"', fuse='"10 A"')) == ("8 AWG", "voltage drop")


def test_a_large_fuse_on_a_short_run_governs() -> None:
    assert governing(with_pump(length='"1 ft"', fuse='"30 A"')) == ("10 AWG", "carrying its fuse")


def test_a_tiny_load_is_governed_by_the_least_size() -> None:
    text = set_field(with_pump(length='"1 ft"', fuse='"3 A"', fuse_type='"blade"'), "items.pump.electric",
                     "power", '"6 W"')  # fmt: skip
    assert governing(text) == ("16 AWG", "least size allowed")
    assert governing(set_field(text, "circuits.pump", "sheathed", "true"))[0] == "18 AWG"


def test_a_slow_breaker_beside_a_strong_bank_is_governed_by_the_fault() -> None:
    text = set_field(LOW, "circuits.feeder", "fuse_type", '"DC breaker"')
    text = set_field(
        set_field(text, "circuits.feeder", "fuse", '"15 A"'), "circuits.feeder", "length", '"1 ft"'
    )
    cart = worked(text, bank={"battery.fault_current": (6000.0, "A")})
    assert cart.wired.runs["feeder"].governing == "standing a fault"


def test_a_wire_that_is_left_out_is_chosen_and_then_judged() -> None:
    cart = worked(LOW)
    run = cart.wired.runs["chest"]
    assert (run.size.name, run.needed.name) == ("14 AWG", "14 AWG")
    assert cart.verdicts("fuse_over_wire")["chest"] == "pass"
    assert cart.verdicts("drop")["chest"] == "pass"


@pytest.mark.parametrize("length", ["1 ft", "5 ft", "12 ft", "25 ft", "60 ft"])
@pytest.mark.parametrize("power", ["12 W", "60 W", "180 W"])
@pytest.mark.parametrize("space", ["86 F", "140 F"])
def test_what_the_tool_chooses_always_passes(length: str, power: str, space: str) -> None:
    text = set_field(
        with_pump(wire="", fuse="", length=f'"{length}"', space=f'"{space}"'), "items.pump.electric",
        "power", f'"{power}"',
    )  # fmt: skip
    text = set_field(text, "items.pump.electric", "start_multiple", "")
    cart = worked(text)
    for rule in ("fuse_over_wire", "fuse_under_load", "wire_least", "drop", "withstand"):
        assert cart.verdicts(rule)["pump"] in ("pass",), rule


@pytest.mark.parametrize("length", ["5 ft", "12 ft", "25 ft"])
def test_one_size_thinner_than_the_tool_chooses_fails_something(length: str) -> None:
    from curbwright.sheets.circuits.sizes import sizes

    text = with_pump(wire="", length=f'"{length}"')
    needed = worked(text).wired.runs["pump"].needed
    names = [size.name for size in sizes("SAE")]
    thinner = names[names.index(needed.name) - 1]
    cart = worked(set_field(text, "circuits.pump", "wire", f'"{thinner}"'))
    rules = ("fuse_over_wire", "wire_least", "drop", "withstand")
    assert "fail" in {cart.verdicts(rule)["pump"] for rule in rules}


@pytest.mark.parametrize(("wire", "verdict"), [("16 AWG", "pass"), ("18 AWG", "fail")])
def test_a_wire_under_the_least_size(wire: str, verdict: str) -> None:
    text = with_pump(wire=f'"{wire}"', fuse='"10 A"')
    assert worked(text).verdicts("wire_least")["pump"] == verdict


def test_18_awg_within_a_sheath() -> None:
    text = with_pump(wire='"18 AWG"', sheathed="true")
    assert worked(text).verdicts("wire_least")["pump"] == "pass"


def test_metric_wire_counts_as_the_gauge_below_it() -> None:
    assert worked(with_pump(wire='"6 mm2"')).wired.runs["pump"].size.name == "10 AWG"


def test_a_gauge_that_is_not_made_is_told() -> None:
    cart = worked(with_pump(wire='"3 AWG"'))
    assert cart.gaps()["run.pump"] == "circuits.pump.wire"
    assert worked(with_pump(wire='"3 AWG"', area_basis='"AWG"')).wired.runs["pump"].size.name == "3 AWG"


def test_no_wire_is_thick_enough_and_the_reason_is_told() -> None:
    cart = worked(with_pump(wire="", length='"60 ft"', current='"300 A"', fuse='"300 A"'))
    assert cart.gaps()["run.pump"] == "circuits.pump.wire"
    assert cart.verdicts("drop")["pump"] == "cannot tell"


def test_no_fuse_is_large_enough_and_the_reason_is_told() -> None:
    assert worked(with_pump(current='"900 A"')).gaps()["run.pump"] == "circuits.pump.fuse"


@pytest.mark.parametrize("field", ["length", "supply"])
def test_what_a_circuit_leaves_out(field: str) -> None:
    if field == "length":
        cart = worked(with_pump(length=""))
        assert cart.gaps()["run.pump"] == "circuits.pump.length"
        assert {cart.verdicts(rule)["pump"] for rule in ("drop", "fuse_over_wire")} == {"cannot tell"}
    else:
        cart = worked(with_pump(supply='"chest"'))
        assert cart.gaps()["run.pump"] == "circuits.pump.voltage"


def test_a_feeder_that_is_not_known_takes_its_branches_with_it() -> None:
    cart = worked(set_field(LOW, "circuits.feeder", "length", ""))
    assert cart.gaps()["run.pump"] == "circuits.feeder"
    assert cart.verdicts("drop") == {"feeder": "cannot tell", "pump": "cannot tell", "chest": "cannot tell"}


def test_circuits_that_feed_each_other_in_a_ring_are_no_endless_loop() -> None:
    text = set_field(LOW, "circuits.feeder", "supply", '"12 V bus"')
    cart = worked(text)
    assert cart.verdicts("place_fed") == {"12_v_bus": "fail"}
    text = set_field(LOW, "circuits.feeder", "supply", '"pump"')
    assert worked(set_field(text, "circuits.pump", "feeds", '["pump"]')).gaps()


def test_a_circuit_to_a_thing_that_draws_nothing_known() -> None:
    cart = worked(with_pump(feeds='["bank"]'))
    assert cart.gaps()["run.pump"] == "circuits.pump.current"
