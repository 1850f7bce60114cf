"""The bank by itself: answers worked by hand, both sides of each limit, and what is missing."""

from __future__ import annotations

import pytest

from tests.figures.rework import rework
from tests.sheets.battery.bank_cart import AGM, AH, LFP, WH, figure, findings, verdict, worked


def test_two_batteries_side_by_side_by_hand() -> None:
    assert figure(AGM, "battery.nominal_voltage") == 12
    assert figure(AGM, "battery.rated_capacity") == 200 * AH
    assert figure(AGM, "battery.capacity_20h") == pytest.approx(200 * AH)  # the rating given back
    assert figure(AGM, "battery.usable_energy") == pytest.approx(200 * 12 * 0.5 * WH)
    assert figure(AGM, "battery.lowest_voltage") == 10.5


def test_two_six_volt_batteries_in_series_by_hand() -> None:
    text = AGM.replace('"12 V"', '"6 V"').replace("in_parallel = 2", "in_series = 2")
    assert figure(text, "battery.nominal_voltage") == 12
    assert figure(text, "battery.cells") == 6
    assert figure(text, "battery.usable_energy") == pytest.approx(100 * 12 * 0.5 * WH)
    assert figure(text, "battery.lowest_voltage") == 10.5


def test_lithium_counts_amperes() -> None:
    assert figure(LFP, "battery.full") == 200 * AH
    assert figure(LFP, "battery.usable_energy") == pytest.approx(200 * 12.8 * 0.8 * WH)
    assert figure(LFP, "battery.charge") == pytest.approx(200 * AH)


def test_a_capacity_over_100_h_is_less_over_20() -> None:
    slow = AGM.replace('capacity_rate = "20 h"', 'capacity_rate = "100 h"')
    assert figure(slow, "battery.capacity_20h") < 0.98 * figure(AGM, "battery.capacity_20h")


@pytest.mark.parametrize(("share", "left"), [("100 %", 1.0), ("80 %", 0.8)])
def test_age_takes_its_share(share: str, left: float) -> None:
    aged = AGM.replace('age = "100 %"', f'age = "{share}"')
    assert figure(aged, "battery.usable_energy") == pytest.approx(1200 * left * WH)


@pytest.mark.parametrize(
    ("chemistry", "temperature", "share"),
    [
        ("AGM", "25 °C", 1.0), ("AGM", "0 °C", 0.84), ("AGM", "12.5 °C", 0.92), ("AGM", "60 °C", 1.05),
        ("AGM", "-5 °C", 0.80), ("flooded", "-10 °C", 1 / 1.65), ("flooded", "77 °F", 1.0),
        ("flooded", "32 °F", 1 / 1.43), ("LFP", "0 °C", 0.8), ("gel", "0 °C", 0.84),
    ],
)  # fmt: skip
def test_cold_takes_what_the_tables_say(chemistry: str, temperature: str, share: float) -> None:
    text = AGM.replace('"AGM"', f'"{chemistry}"') + f'temperature = "{temperature}"\n'
    assert figure(text, "battery.temperature_factor") == pytest.approx(share)


def test_a_table_of_rates_makes_the_wells() -> None:
    table = '[["20 h", "100 Ah"], ["10 h", "93 Ah"], ["5 h", "85 Ah"], ["3 h", "78 Ah"], ["1 h", "60 Ah"]]'
    text = AGM + f"rates = {table}\n"
    assert figure(text, "battery.full") == pytest.approx(2 * 104.24 * AH, rel=1e-3)
    assert figure(text, "battery.share") == pytest.approx(0.4488, rel=1e-3)
    assert figure(text, "battery.wells.misfit") < 0.02
    assert verdict(text, "battery.misfit") == "pass"
    odd = [["20 h", "100 Ah"], ["10 h", "70 Ah"], ["5 h", "69 Ah"], ["3 h", "68 Ah"], ["1 h", "30 Ah"]]
    assert verdict(f"{AGM}rates = {odd}\n".replace("'", '"'), "battery.misfit") == "fail"


def test_a_table_that_cannot_be_leaves_the_bank_untold_and_says_why() -> None:
    text = AGM + 'rates = [["20 h", "100 Ah"], ["10 h", "110 Ah"], ["5 h", "85 Ah"]]\n'
    sheets = worked(text)
    assert "battery.usable_energy" not in sheets.figures
    assert any("gives more the longer it takes" in gap.says for gap in sheets.gaps)
    assert verdict(text, "battery.energy") == "cannot tell"


def test_a_capacity_may_come_from_the_table_alone() -> None:
    table = 'rates = [["20 h", "100 Ah"], ["10 h", "93 Ah"], ["5 h", "85 Ah"]]\n'
    text = AGM.replace('capacity = "100 Ah"\n', "").replace('capacity_rate = "20 h"\n', "") + table
    assert figure(text, "battery.rated_capacity") == 200 * AH


# ---- ampere-hours without a time


def test_ampere_hours_without_a_time_fail_and_leave_the_energy_untold() -> None:
    bare = AGM.replace('capacity_rate = "20 h"\n', "")
    assert verdict(AGM, "battery.rate_said") == "pass"
    assert verdict(bare, "battery.rate_said") == "fail"
    untold = findings(bare)["battery.energy"]
    assert untold.verdict == "cannot tell"
    assert "battery.capacity_rate" in untold.missing
    assert "battery.vent.opening" in worked(bare).figures  # hydrogen does not wait for it


def test_lithium_needs_no_time() -> None:
    assert verdict(LFP, "battery.rate_said") == "not applicable"


# ---- faults


def test_the_makers_short_circuit_current_wins() -> None:
    text = AGM + 'short_circuit = "2000 A"\n'
    assert figure(text, "battery.fault_current") == 4000
    assert figure(text, "battery.resistance") == pytest.approx(12.7 / 4000)


def test_a_lead_acid_fault_is_volts_over_resistance() -> None:
    text = AGM + 'inside_resistance = "4 mohm"\n'
    assert figure(text, "battery.fault_current") == pytest.approx(12.7 / 0.002)


def test_a_lithium_fault_is_counted_as_if_its_electronics_did_not_open() -> None:
    text = LFP + 'inside_resistance = "15 mohm"\n'
    bare = 0.0015 * 100 / 200
    assert figure(text, "battery.fault_current") == pytest.approx(13.6 / bare)
    assert figure(text, "battery.working_resistance") == pytest.approx(0.015 * 1.2)


# ---- batteries that are items


PIECES = """
[items.a]
kind = "battery"
like = "batt-agm-31"

[items.b]
kind = "battery"
like = "{other}"

[battery]
pieces = ["a", "b"]
age = "100 %"
beside = []
"""


def test_the_catalogue_fills_the_batteries_in() -> None:
    text = PIECES.format(other="batt-agm-31")
    assert figure(text, "battery.rated_capacity") == 210 * AH
    assert figure(text, "battery.strings") == 2
    assert worked(text).figures["items.a.battery.capacity"].origin.assumed  # type: ignore[union-attr]
    assert verdict(text, "battery.kinds") == "pass"


@pytest.mark.parametrize(
    ("other", "failing"),
    [
        ("batt-agm-27", {"battery.capacities"}),
        ("batt-lfp-100", {"battery.kinds", "battery.capacities", "battery.voltages"}),
        ("batt-agm-gc2-6v", {"battery.capacities", "battery.voltages"}),
    ],
)
def test_unlike_batteries_are_told(other: str, failing: set[str]) -> None:
    found = findings(PIECES.format(other=other))
    asked = {"battery.kinds", "battery.capacities", "battery.voltages"}
    assert {id for id in asked if found[id].verdict == "fail"} == failing


def test_what_is_written_beside_one_battery_holds_for_it_alone() -> None:
    text = PIECES.format(other="batt-agm-31") + '\n[items.b.battery]\ncapacity = "90 Ah"\n'
    assert verdict(text, "battery.capacities") == "fail"
    assert figure(text, "battery.equal.least_capacity") == 90 * AH


def test_what_the_bank_says_beats_the_catalogue() -> None:
    text = PIECES.format(other="batt-agm-31").replace("[battery]", '[battery]\ncapacity = "80 Ah"')
    assert figure(text + 'capacity_rate = "20 h"\n', "battery.rated_capacity") == 160 * AH
    assert verdict(text, "battery.rate_said") == "fail"  # the catalogue's time is not that of your capacity


# ---- no battery


def test_a_cart_without_a_battery_is_told_so_and_held_to_nothing() -> None:
    sheets = worked("", {})
    assert sheets.gaps == []
    assert sheets.sheet("battery").notes == ["This cart has no battery."]
    assert {one.verdict for one in findings("", {}).values()} == {"not applicable"}


def test_a_battery_nobody_describes_is_noticed() -> None:
    sheets = worked('[items.box]\nkind = "battery"\nlike = "batt-lfp-100"\n', {})
    assert "A battery is aboard" in sheets.sheet("battery").notes[0]


def test_a_bank_without_a_kind_names_the_field() -> None:
    untold = findings(AGM.replace('chemistry = "AGM"\n', ""))["battery.energy"]
    assert untold.verdict == "cannot tell"
    assert untold.missing[0] == "battery.chemistry"


@pytest.mark.parametrize("system", ["us", "si"])
@pytest.mark.parametrize(
    "text", [AGM, LFP, PIECES.format(other="batt-fla-gc2-6v").replace("agm-31", "fla-gc2-6v")]
)
def test_every_line_reworks(text: str, system: str) -> None:
    for sheet in worked(text).sheets:
        assert rework(sheet, system=system).faults == []
