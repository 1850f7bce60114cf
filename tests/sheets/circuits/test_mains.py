"""120 V: shore power, receptacles, the one bond, what a basis adds, generator, lamps, plan approval."""

from __future__ import annotations

import pytest

from tests.sheets.circuits.carts import HEAD, LOW, MAINS, set_field, worked

SHORE = """
[items.kettle]
kind = "coffee"
[items.kettle.electric]
bus = "120 V shore"
power = "1200 W"
hours = "1 h"
[items.cooler]
kind = "undercounter"
[items.cooler.electric]
bus = "120 V shore"
power = "240 W"
start_multiple = "5"
duty = "thermostat"
share = "50 %"
[electrical.shore]
rating = "15 A"
cord_wire = "12 AWG"
cord_length = "50 ft"
"""
GENERATOR = """
[electrical.generator]
rating = "1800 W"
surge = "2600 W"
"""


def changed(text: str, section: str, **fields: str) -> str:
    for field, value in fields.items():
        text = set_field(text, section, field, value)
    return text


# ---- shore power


@pytest.mark.parametrize(("power", "verdict"), [("1200 W", "pass"), ("1201 W", "fail")])
def test_shore_load_over_80_percent(power: str, verdict: str) -> None:
    """80 % of 15 A at 120 V is 1440 W."""
    text = changed(SHORE, "items.kettle.electric", power=f'"{power}"')
    assert worked(text, bank={}).verdicts("shore_load") == {"": verdict}


def test_the_inverter_s_loads_come_along_where_they_transfer() -> None:
    text = LOW + MAINS + SHORE
    assert worked(text)["shore.load"] == pytest.approx(1440)
    assert worked(changed(text, "electrical.shore", transfers="true"))["shore.load"] == pytest.approx(1710)


@pytest.mark.parametrize(("wire", "verdict"), [("14 AWG", "pass"), ("16 AWG", "fail")])
def test_a_cord_thinner_than_the_inlet_s_rating(wire: str, verdict: str) -> None:
    text = changed(SHORE, "electrical.shore", cord_wire=f'"{wire}"')
    assert worked(text, bank={}).verdicts("cord") == {"": verdict}


def test_the_published_cord_loses_four_percent() -> None:
    """100 ft of 12 AWG at 12 A: 4.75 V of 120 by the table at 75 °C, 4.0 %."""
    cart = worked(changed(SHORE, "electrical.shore", cord_length='"100 ft"'), bank={})
    assert cart["shore.cord_drop"] == pytest.approx(4.75, rel=0.01)
    assert cart.verdicts("cord_drop") == {"": "pass"}
    longer = worked(changed(SHORE, "electrical.shore", cord_length='"150 ft"'), bank={})
    assert longer.verdicts("cord_drop") == {"": "fail"}


def test_loads_on_shore_power_without_an_inlet() -> None:
    text = SHORE.partition("[electrical.shore]")[0]
    assert worked(text, bank={}).verdicts("shore_load") == {"": "cannot tell"}


def test_a_cart_without_shore_power_is_not_asked() -> None:
    assert worked(LOW).verdicts("shore_load") == {"": "not applicable"}


def test_kitchen_demand_is_printed_beside_the_sum_and_never_judged() -> None:
    more = "".join(
        f'[items.{name}]\nkind = "{kind}"\n[items.{name}.electric]\nbus = "120 V shore"\npower = "300 W"\n'
        for name, kind in (("grinder", "grinder"), ("blender", "blender"), ("press", "press"))
    )
    cart = worked(SHORE + more, bank={})
    assert cart["shore.demand"] == pytest.approx(max(0.7 * 2340, 1500))
    assert cart["shore.load"] == pytest.approx(2340)
    assert not worked(SHORE + more, bank={}, place__electrical_basis='"none"').has("shore.demand")


# ---- receptacles


@pytest.mark.parametrize(("gfci", "verdict"), [("true", "pass"), ("false", "fail"), ("", "cannot tell")])
def test_receptacles_behind_a_ground_fault_interrupter(gfci: str, verdict: str) -> None:
    text = changed(LOW + MAINS, "circuits.counter", gfci=gfci)
    assert worked(text).verdicts("gfci") == {"counter": verdict}


def test_a_receptacle_that_is_an_item_counts() -> None:
    text = changed(
        LOW + MAINS, "circuits.counter", receptacles="", gfci="false", feeds='["fan", "till", "socket"]'
    )
    cart = worked(text + '[items.socket]\nkind = "receptacle"\n')
    assert cart["gfci.counter.unprotected"] == 1.0


def test_a_12_v_socket_needs_none() -> None:
    assert worked(changed(LOW, "circuits.pump", receptacles="1")).verdicts("gfci") == {"": "not applicable"}


# ---- neutral to ground


@pytest.mark.parametrize(
    ("inverter", "generator", "panel", "transfer", "counts"),
    [
        ("relay", "plug", "no", "neutral switched", {"shore": 1, "inverter": 1, "generator": 1}),
        ("jumper", "frame", "no", "neutral switched", {"shore": 1, "inverter": 1, "generator": 1}),
        ("none", "none", "no", "neutral switched", {"shore": 1, "inverter": 0, "generator": 0}),
        ("relay", "frame", "yes", "neutral switched", {"shore": 2, "inverter": 2, "generator": 2}),
        ("jumper", "plug", "no", "hot only", {"shore": 2, "inverter": 1, "generator": 2}),
        ("relay", "frame", "no", "hot only", {"shore": 2, "inverter": 2, "generator": 1}),
        ("jumper", "frame", "yes", "hot only", {"shore": 4, "inverter": 3, "generator": 3}),
    ],
)
def test_one_bond_in_every_mode(
    inverter: str, generator: str, panel: str, transfer: str, counts: dict[str, int]
) -> None:
    text = changed(
        LOW + MAINS + SHORE + GENERATOR, "electrical.bonds", inverter=f'"{inverter}"',
        generator=f'"{generator}"', panel=f'"{panel}"', transfer=f'"{transfer}"',
    )  # fmt: skip
    cart = worked(text)
    assert {mode: float(cart[f"bonds.{mode}.count"]) for mode in counts} == counts
    verdicts = {mode: "pass" if count == 1 else "fail" for mode, count in counts.items()}
    assert cart.verdicts("bond") == verdicts


@pytest.mark.parametrize("field", ["inverter", "panel"])
def test_a_bond_that_is_not_told_is_no_bond_and_no_pass(field: str) -> None:
    cart = worked(changed(LOW + MAINS, "electrical.bonds", **{field: ""}))
    assert cart.verdicts("bond") == {"inverter": "cannot tell"}
    assert f"electrical.bonds.{field}" in cart.gaps().values()


def test_how_the_source_is_changed_matters_only_where_a_bond_could_stay_in_the_circuit() -> None:
    text = changed(LOW + MAINS + SHORE, "electrical.bonds", transfer="")
    assert set(worked(text).verdicts("bond").values()) == {"pass"}
    jumper = changed(text, "electrical.bonds", inverter='"jumper"')
    assert worked(jumper).verdicts("bond") == {"shore": "cannot tell", "inverter": "pass"}


def test_a_cart_without_120_v_has_no_modes() -> None:
    assert worked(LOW).verdicts("bond") == {"": "not applicable"}


# ---- the electrical basis


@pytest.mark.parametrize(
    ("basis", "asked"),
    [
        ("none", set()),
        ("general", set()),
        ("551", {"panel_width", "panel_depth", "bonding_wire"}),
        ("552", {"bonding_wire", "battery_bond"}),
        ("525", {"operator_disconnect"}),
    ],
)
def test_a_basis_decides_which_rows_apply(basis: str, asked: set[str]) -> None:
    cart = worked(LOW + MAINS, place__electrical_basis=f'"{basis}"')
    rows = ("panel_width", "panel_depth", "bonding_wire", "battery_bond", "operator_disconnect")
    found = {row for row in rows if "cannot tell" in cart.verdicts(row).values()}
    assert found == asked


def test_without_a_basis_its_rows_cannot_be_told() -> None:
    cart = worked(LOW + MAINS, place__electrical_basis="")
    assert cart.gaps()["basis.panel_space"] == "place.electrical_basis"
    assert cart.verdicts("bonding_wire") == {"": "cannot tell"}


@pytest.mark.parametrize(
    ("basis", "row", "field", "good", "bad"),
    [
        ("551", "panel_width", "panel_space_width", "24 in", "23 in"),
        ("551", "panel_depth", "panel_space_depth", "30 in", "29 in"),
        ("551", "bonding_wire", "bonding_wire", "8 AWG", "10 AWG"),
        ("552", "battery_bond", "battery_bond", "8 AWG", "10 AWG"),
        ("525", "operator_disconnect", "disconnect_to_operator", "6 ft", "7 ft"),
    ],
)
def test_both_sides_of_what_a_basis_asks(basis: str, row: str, field: str, good: str, bad: str) -> None:
    for value, verdict in ((good, "pass"), (bad, "fail")):
        text = changed(LOW + MAINS, "electrical", **{field: f'"{value}"'})
        assert worked(text, place__electrical_basis=f'"{basis}"').verdicts(row) == {"": verdict}


# ---- generator


@pytest.mark.parametrize(("altitude", "verdict"), [("0 ft", "pass"), ("6000 ft", "fail")])
def test_a_generator_gives_less_up_high(altitude: str, verdict: str) -> None:
    """1440 W of 1800 W leave 20 %; 6000 ft take 21 %."""
    text = changed(SHORE + GENERATOR, "electrical.generator", altitude=f'"{altitude}"')
    assert worked(text, bank={}).verdicts("generator_load") == {"": verdict}


@pytest.mark.parametrize(("surge", "verdict"), [("2400 W", "pass"), ("2399 W", "fail")])
def test_a_generator_starts_the_largest_motor(surge: str, verdict: str) -> None:
    """1440 W, and four times the cooler's 240 W more."""
    text = changed(SHORE + GENERATOR, "electrical.generator", surge=f'"{surge}"')
    assert worked(text, bank={}).verdicts("generator_start") == {"": verdict}


def test_a_gasoline_plate_gives_a_tenth_less_on_propane() -> None:
    text = changed(SHORE + GENERATOR, "electrical.generator", fuel='"propane"')
    cart = worked(text, bank={})
    assert cart["generator.gives"] == pytest.approx(1620)
    plated = changed(text, "electrical.generator", plate_fuel='"propane"')
    assert worked(plated, bank={})["generator.gives"] == pytest.approx(1800)


@pytest.mark.parametrize(("listener", "verdict"), [("33 ft", "pass"), ("32 ft", "fail")])
def test_noise_at_the_nearest_ear(listener: str, verdict: str) -> None:
    """90 dB of power are 62 dB at 10 m."""
    text = changed(
        SHORE + GENERATOR, "electrical.generator", sound_power='"90"', listener=f'"{listener}"',
        noise_limit='"62"',
    )  # fmt: skip
    assert worked(text, bank={}).verdicts("generator_noise") == {"": verdict}


def test_noise_is_asked_for_only_where_there_is_a_limit_or_a_level() -> None:
    assert worked(SHORE + GENERATOR, bank={}).verdicts("generator_noise") == {"": "not applicable"}
    text = changed(SHORE + GENERATOR, "electrical.generator", noise_limit='"62"')
    assert worked(text, bank={}).verdicts("generator_noise") == {"": "cannot tell"}


# ---- lamps and plan approval


@pytest.mark.parametrize(
    ("width", "wide", "verdicts"),
    [
        ("79 in", "", {"basic": "pass"}),
        ("80 in", "false", {"basic": "pass", "wide": "fail"}),
        ("80 in", "true", {"basic": "pass", "wide": "pass"}),
        ("80 in", "", {"basic": "pass", "wide": "cannot tell"}),
    ],
)
def test_an_80_in_trailer_has_more_lamps(width: str, wide: str, verdicts: dict[str, str]) -> None:
    cart = worked(
        LOW, trailer__overall_width=f'"{width}"', trailer__gross_rating='"3500 lb"',
        electrical__lamps__wide=wide,
    )  # fmt: skip
    assert cart.verdicts("lamps") == verdicts


def test_tape_on_a_wide_and_heavy_trailer() -> None:
    for gross, verdict in (("10000 lb", None), ("10001 lb", "fail")):
        cart = worked(
            LOW, trailer__overall_width='"96 in"', trailer__gross_rating=f'"{gross}"',
            electrical__lamps__wide="true", electrical__lamps__tape="false",
        )  # fmt: skip
        assert cart.verdicts("lamps").get("tape") == verdict


def test_a_width_that_is_not_known_cannot_be_told() -> None:
    assert worked(LOW, trailer__overall_width="").verdicts("lamps")["wide"] == "cannot tell"


@pytest.mark.parametrize(("state", "triggers"), [("WA", 1.0), ("VA", None)])
def test_washington_asks_for_plan_approval_of_any_inverter(state: str, triggers: float | None) -> None:
    cart = worked(LOW + MAINS, place__state=f'"{state}"')
    assert cart.has("plan.triggers") is (triggers is not None)
    if triggers is not None:
        assert cart["plan.triggers"] >= triggers


def test_few_small_circuits_need_no_approval() -> None:
    cart = worked(LOW, place__state='"WA"')
    assert cart["plan.triggers"] == 0.0
    assert "general" in HEAD
