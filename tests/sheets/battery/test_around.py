"""What stands round the bank: hydrogen and its openings, the box it shares, its chargers, the cold."""

from __future__ import annotations

import pytest

from tests.sheets.battery.bank_cart import AGM, LFP, figure, findings, verdict, worked

CM2 = 1e-4
FLOODED = AGM.replace('"AGM"', '"flooded"').replace('"100 Ah"', '"220 Ah"').replace("in_parallel = 2\n", "")


# ---- hydrogen


def test_one_flooded_bank_of_220_ah_by_hand() -> None:
    """As two 6 V batteries of 220 Ah: 1.32 m3/h, 37 cm2 low and again high; 0.71 cfm beside it."""
    assert figure(FLOODED, "battery.vent.flow") * 3600 == pytest.approx(1.32)
    assert figure(FLOODED, "battery.vent.opening") / CM2 == pytest.approx(36.96)
    assert figure(FLOODED, "battery.vent.flow_by_current") / 0.000471947443 == pytest.approx(0.71, abs=0.005)


def test_200_ah_of_agm_needs_a_third() -> None:
    assert figure(AGM, "battery.vent.opening") / CM2 == pytest.approx(13.44)


def openings(low: float, high: float) -> str:
    return f'vented = true\nvent_low = "{low:.9f} cm2"\nvent_high = "{high:.9f} cm2"\n'


def test_each_opening_must_be_large_enough() -> None:
    assert verdict(FLOODED + openings(36.96, 36.96), "battery.vent_opening") == "pass"
    assert verdict(FLOODED + openings(36.90, 50), "battery.vent_opening") == "fail"
    assert verdict(FLOODED + openings(50, 36.90), "battery.vent_opening") == "fail"
    untold = findings(FLOODED)["battery.vent_opening"]
    assert untold.verdict == "cannot tell"
    assert untold.missing == ("battery.vent_low",)


def test_the_rule_for_park_trailers_is_enough_for_65_ah_only() -> None:
    assert figure(FLOODED, "battery.vent.rv_serves") / 3600 == pytest.approx(65.5, abs=0.3)
    rule = FLOODED + openings(11.0, 11.0)
    assert verdict(rule, "battery.vent_rv_rule") == "pass"
    assert verdict(rule, "battery.vent_opening") == "fail"
    assert verdict(FLOODED + openings(10.99, 10.99), "battery.vent_rv_rule") == "fail"


def test_the_box_breathes_outside() -> None:
    assert verdict(FLOODED + "vented = true\n", "battery.vent_outside") == "pass"
    assert verdict(FLOODED + "vented = false\n", "battery.vent_outside") == "fail"
    assert verdict(FLOODED, "battery.vent_outside") == "cannot tell"


def test_lithium_gives_off_nothing_in_ordinary_use_and_says_so() -> None:
    assert verdict(LFP, "battery.vent_opening") == "not applicable"
    section = next(one for one in worked(LFP).sheet("battery").sections if one.id == "battery.vent")
    assert "a fault or a fire does" in section.notes[0]


# ---- the box it shares


THINGS = """
[items.bottle]
kind = "cylinder"

[items.inverter]
kind = "inverter"

[items.heater]
kind = "water_heater"
connects = ["gas"]

[items.shelf]
kind = "shelf"
"""


@pytest.mark.parametrize(
    ("beside", "flames", "sparks"),
    [
        ("", "pass", "pass"), ('"shelf"', "pass", "pass"), ('"bottle"', "fail", "pass"),
        ('"items.heater"', "fail", "pass"), ('"inverter"', "pass", "fail"),
    ],
)  # fmt: skip
def test_fuel_flame_and_sparks_in_the_box(beside: str, flames: str, sparks: str) -> None:
    text = THINGS + AGM.replace("beside = []", f"beside = [{beside}]")
    assert verdict(text, "battery.flames") == flames
    assert verdict(text, "battery.sparks") == sparks


def test_a_lithium_bank_may_share_its_box_with_an_inverter() -> None:
    text = THINGS + LFP.replace("beside = []", 'beside = ["inverter"]')
    assert verdict(text, "battery.sparks") == "not applicable"
    assert verdict(text.replace('"inverter"]', '"bottle"]'), "battery.flames") == "fail"


def test_what_shares_the_box_has_to_be_told() -> None:
    untold = findings(AGM.replace("beside = []\n", ""))["battery.flames"]
    assert (untold.verdict, untold.missing) == ("cannot tell", ("battery.beside",))


# ---- charging


def charger(supply: str, current: str = "20 A", **fields: str) -> str:
    lines = "".join(f'{field} = "{value}"\n' for field, value in fields.items())
    return f'\n[battery.chargers.one]\nsupply = "{supply}"\ncurrent = "{current}"\n{lines}'


def test_a_shore_charger_by_hand() -> None:
    """40 A at 14.5 V and 88 % is 659 W; at a power factor of 0.8 on 120 V 6.9 A."""
    text = AGM + charger("shore", "40 A")
    assert figure(text, "battery.charging.one.input_power") == pytest.approx(14.5 * 40 / 0.88)
    assert figure(text, "battery.charging.one.input_current") == pytest.approx(14.5 * 40 / 0.88 / 0.8 / 120)


def test_a_dc_charger_by_hand() -> None:
    text = LFP + charger("tow DC-DC", "30 A", efficiency="90 %")
    assert figure(text, "battery.charging.one.input_current") == pytest.approx(14.4 * 30 / 0.9 / 13)


def test_lithium_on_the_tow_lead_fails_and_through_a_charger_passes() -> None:
    assert verdict(LFP + charger("tow lead"), "battery.tow_lead") == "fail"
    assert verdict(LFP + charger("tow DC-DC"), "battery.tow_lead") == "pass"
    assert verdict(AGM + charger("tow lead"), "battery.tow_lead") == "not applicable"


def test_a_charger_gives_no_more_than_the_bank_takes() -> None:
    most = figure(AGM, "battery.charging.most_current")
    assert most == pytest.approx(200 * 0.25)
    assert verdict(AGM + charger("shore", f"{most} A"), "battery.charge_current") == "pass"
    assert verdict(AGM + charger("shore", f"{most * 1.01} A"), "battery.charge_current") == "fail"
    untold = AGM + charger("shore").replace('current = "20 A"\n', "")
    assert verdict(untold, "battery.charge_current") == "cannot tell"


@pytest.mark.parametrize(("coldest", "says"), [("33 °F", "pass"), ("0 °C", "pass"), ("31 °F", "fail")])
def test_lithium_is_not_charged_below_freezing(coldest: str, says: str) -> None:
    assert verdict(LFP + f'coldest_charge = "{coldest}"\n', "battery.charge_cold") == says


def test_how_cold_it_is_charged_has_to_be_told_and_a_lockout_settles_it() -> None:
    untold = findings(LFP)["battery.charge_cold"]
    assert (untold.verdict, untold.missing) == ("cannot tell", ("battery.coldest_charge",))
    assert verdict(LFP + "cold_lockout = true\n", "battery.charge_cold") == "not applicable"
    assert verdict(AGM, "battery.charge_cold") == "not applicable"


def test_the_makers_coldest_wins() -> None:
    text = LFP + 'coldest_charge = "36 °F"\nleast_charge = "41 °F"\n'
    assert verdict(text, "battery.charge_cold") == "fail"


def test_the_catalogue_knows_chargers() -> None:
    text = LFP + '\n[items.box]\nkind = "charger"\nlike = "dcdc-30"\n'
    text += '\n[battery.chargers.one]\nsupply = "tow DC-DC"\nitem = "box"\n'
    assert figure(text, "battery.charging.one.current") == 30
