"""A day on the bank: need and what is usable, run time with its band, the voltage, filling it again."""

from __future__ import annotations

import pytest

from tests.sheets.battery.bank_cart import AGM, AH, LFP, WH, figure, findings, loads, verdict, worked

HOURS = '\n[day]\nopens = "10:00"\ncloses = "16:00"\ndrive = "1 h"\n'


# ---- what a day takes


def test_need_against_usable_energy() -> None:
    usable = figure(AGM, "battery.usable_energy") / WH
    assert verdict(AGM, "battery.energy", loads(usable)) == "pass"
    assert verdict(AGM, "battery.energy", loads(usable * 1.001)) == "fail"
    assert verdict(AGM, "battery.energy", {}) == "cannot tell"


def test_lead_acid_below_its_usable_share_fails_even_where_the_builder_allows_more() -> None:
    assert figure(AGM, "battery.day.energy.depth", loads(1200)) == pytest.approx(0.5)
    assert verdict(AGM, "battery.depth", loads(1200)) == "pass"
    assert verdict(AGM, "battery.depth", loads(1201)) == "fail"
    braver = AGM + 'usable = "80 %"\n'
    assert verdict(braver, "battery.energy", loads(1500)) == "pass"
    assert verdict(braver, "battery.depth", loads(1500)) == "fail"
    assert verdict(LFP, "battery.depth", loads(1500)) == "not applicable"


def test_days_and_the_capacity_to_buy_by_hand() -> None:
    assert figure(LFP, "battery.day.energy.days", loads(1024)) == pytest.approx(200 * 12.8 * 0.8 / 1024)
    wanted = figure(LFP, "battery.day.energy.wanted_capacity", loads(1024))
    assert wanted == pytest.approx(1024 * 1.15 / (12.8 * 0.8) * AH)


# ---- how long it lasts


def test_lithium_lasts_its_charge_over_the_power() -> None:
    """1,000 Wh drawn over 24 h, from 200 Ah at about 13.1 V on the mean: 62 h and a little."""
    time = figure(LFP, "battery.day.run.time", loads(1000)) / 3600
    assert time == pytest.approx(200 * 13.1 / (1000 / 24), rel=0.03)


def test_the_band_holds_the_middle_and_the_low_case_is_worn_and_heavy() -> None:
    sheets = worked(AGM, loads(1000))
    low, middle, high = (float(sheets.figures[f"battery.day.run.time{one}"]) for one in ("_low", "", "_high"))
    assert low < middle < high
    worn = AGM.replace('age = "100 %"', 'age = "80 %"')
    assert low == pytest.approx(figure(worn, "battery.day.run.time", loads(1200)), rel=1e-6)
    assert high == pytest.approx(figure(AGM, "battery.day.run.time", loads(800)), rel=1e-6)


def test_a_day_away_draws_its_energy_while_away() -> None:
    """Serving from 10:00 to 16:00 with an hour there and back: 8 h."""
    text = AGM + HOURS
    assert figure(text, "battery.day.run.away") == 8 * 3600
    assert figure(text, "battery.day.run.power", loads(1200)) == pytest.approx(150)


def test_serving_past_midnight() -> None:
    late = AGM + HOURS.replace("10:00", "20:00").replace("16:00", "02:00")
    assert figure(late, "battery.day.run.away") == 8 * 3600


def test_run_time_on_both_sides_of_the_day() -> None:
    time = figure(AGM + HOURS, "battery.day.run.time", loads(1200))
    away = AGM + 'away = "{:.6f} h"\n'

    def at(hours: float) -> str:
        return verdict(away.format(hours), "battery.run_time", loads(150 * hours))

    assert time > 8 * 3600
    assert at(8) == "pass"
    assert at(40) == "fail"
    assert verdict(AGM, "battery.run_time", loads(1200)) == "cannot tell"
    assert "day.opens" in findings(AGM, loads(1200))["battery.run_time"].missing


def test_a_worn_bank_on_a_heavy_day_is_advice_of_its_own() -> None:
    text = AGM + 'away = "10 h"\n'
    sheets = {energy: findings(text, loads(energy)) for energy in (1500, 2100)}
    assert sheets[1500]["battery.run_time_low"].verdict == "pass"
    assert sheets[2100]["battery.run_time"].verdict == "pass"
    assert sheets[2100]["battery.run_time_low"].verdict == "fail"


def test_peukert_stands_beside_and_is_scaled() -> None:
    """At the 20 h current the law gives 20 h whatever its exponent: 200 Ah over 20 h are 10 A, 120 W."""
    assert figure(AGM, "battery.day.run.peukert", loads(120 * 24)) == pytest.approx(20 * 3600)
    heavier = figure(AGM, "battery.day.run.peukert", loads(240 * 24))
    assert heavier == pytest.approx(20 * 3600 / 2**1.12)


def test_the_exponent_comes_from_the_makers_table_where_there_is_one() -> None:
    text = AGM + 'rates = [["20 h", "100 Ah"], ["10 h", "93 Ah"], ["3 h", "60 Ah"]]\n'
    assert figure(text, "battery.day.run.exponent") == pytest.approx(1.3685, abs=1e-4)


# ---- the voltage it falls to


def test_the_voltage_under_the_largest_load_by_hand() -> None:
    """60 A at 10.5 V are 630 W: from 12.24 V through 1.75 x 2 mohm."""
    text = AGM + 'inside_resistance = "4 mohm"\n'
    resistance = 0.002 * 1.75
    voltage = figure(text, "battery.day.load.voltage", loads(current=60))
    assert voltage * (12.24 - voltage) / resistance == pytest.approx(630)
    assert voltage == pytest.approx(12.06, abs=0.01)


def test_a_load_that_drops_the_voltage_too_low_fails() -> None:
    text = AGM + 'inside_resistance = "4 mohm"\n'
    resistance = 0.0035
    most = (12.24 - 10.5) / resistance
    assert verdict(text, "battery.load_voltage", loads(current=most * 0.999)) == "pass"
    assert verdict(text, "battery.load_voltage", loads(current=most * 1.001)) == "fail"
    assert verdict(text, "battery.load_voltage", loads(current=5000)) == "fail"  # past all it can give
    start = {"current": 20.0, "start": 10.5 * most * 1.001}
    assert verdict(text, "battery.start_voltage", loads(**start)) == "fail"
    assert verdict(text, "battery.start_voltage", loads(current=20, start=300)) == "pass"


# ---- filling it again


SHORE = '\n[battery.chargers.shore]\nsupply = "shore"\ncurrent = "40 A"\ntime = "{}"\n'


def test_refill_by_hand() -> None:
    """100 Ah out of 200: 60 Ah at 40 A and 92 %, then 1 h x ln(40 / 4)."""
    text = AGM + SHORE.format("8 h")
    assert figure(text, "battery.day.refill.shore.bulk", loads(1200)) == pytest.approx(60 / 40 / 0.92 * 3600)
    assert figure(text, "battery.day.refill.shore.absorption", loads(1200)) == pytest.approx(
        2.3026 * 3600, rel=1e-4
    )


def test_lithium_has_no_held_voltage() -> None:
    sheets = worked(LFP + SHORE.format("8 h"), loads(1280))
    assert "battery.day.refill.shore.absorption" not in sheets.figures
    assert float(sheets.figures["battery.day.refill.shore.time"]) == pytest.approx(100 / 40 / 0.99 * 3600)


def test_what_goes_back_is_held_against_what_a_day_takes() -> None:
    needed = 1200 / (40 * 0.92 * 12)
    assert verdict(AGM + SHORE.format(f"{needed * 1.001} h"), "battery.refilled", loads(1200)) == "pass"
    assert verdict(AGM + SHORE.format(f"{needed * 0.999} h"), "battery.refilled", loads(1200)) == "fail"
    bare = AGM + SHORE.replace('time = "{}"\n', "")
    untold = findings(bare, loads(1200))["battery.refilled"]
    assert (untold.verdict, untold.missing) == ("cannot tell", ("battery.chargers.shore.time",))
    assert verdict(AGM, "battery.refilled", loads(1200)) == "not applicable"


def test_the_drive_charges_through_a_converter() -> None:
    """12 A for an hour there and an hour back."""
    text = AGM + HOURS + '\n[battery.chargers.car]\nsupply = "tow DC-DC"\ncurrent = "12 A"\n'
    assert figure(text, "battery.day.refill.energy", loads(100)) == pytest.approx(12 * 2 * 0.92 * 12 * WH)


def test_the_tow_lead_counts_for_nothing() -> None:
    text = AGM + '\n[battery.chargers.lead]\nsupply = "tow lead"\ncurrent = "5 A"\n'
    assert verdict(text, "battery.refilled", loads(100)) == "cannot tell"


def test_a_shallower_day_is_repeated_more_often_and_heat_costs_half() -> None:
    half, third = (figure(AGM, "battery.day.life.cycles", loads(energy)) for energy in (1200, 720))
    assert half == pytest.approx(1000)
    assert third == pytest.approx(2124, rel=1e-3)
    warm = AGM + 'temperature = "35 °C"\n'
    cycles, warmed = (figure(warm, f"battery.day.life.{id}", loads(1200)) for id in ("cycles", "cycles_warm"))
    assert warmed == pytest.approx(cycles / 2)


def test_nothing_drawn_is_no_number_and_no_crash() -> None:
    sheets = worked(AGM, loads(0, 0))
    assert any("nothing draws" in gap.says for gap in sheets.gaps)
