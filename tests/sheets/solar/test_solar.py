"""The panels on their sheet: published days, shade, controller, both sides of each limit, what is missing."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from tests.figures.rework import rework
from tests.sheets.battery.bank_cart import AGM, CART, LFP, WH, figure, findings, loads, verdict, worked

PLACE = """
[pitch]
latitude = "40 deg"
longitude = "-105 deg"
altitude = "1600 m"
date = "21 June"
daylight_saving = false
high = "25 °C"
low = "25 °C"
"""
PANELS = """
[solar]
count = 2
rated = "200 W"
short_circuit = "10 A"
open_voltage = "24 V"
best_voltage = "20 V"
loss_per_degree = "0.37 %/°C"
turbidity = "3"
mounted = "open"
losses = "14.0757 %"
"""
CONTROLLER = """
[solar.controller]
current = "40 A"
most_voltage = "100 V"
efficiency = "97 %"
"""
SUN = LFP + PLACE + PANELS + CONTROLLER


@pytest.mark.parametrize(
    ("date", "watt_hours"), [("21 June", 2783.9), ("21 September", 1884.3), ("21 December", 802.5)]
)
def test_the_published_clear_days(date: str, watt_hours: float) -> None:
    """400 W lying flat at 40° N and 1,600 m, worked elsewhere minute by minute: here hour by hour."""
    text = SUN.replace("21 June", date)
    assert figure(text, "solar.energy_per_day") / WH == pytest.approx(watt_hours, rel=0.003)


def test_a_clock_ahead_changes_the_hours_and_not_the_day() -> None:
    ahead = SUN.replace("daylight_saving = false", "daylight_saving = true")
    assert figure(ahead, "solar.energy_per_day") == pytest.approx(
        figure(SUN, "solar.energy_per_day"), rel=0.002
    )
    assert figure(ahead, "solar.clear.sun_13") == pytest.approx(figure(SUN, "solar.clear.sun_12"), rel=1e-6)


def test_flat_on_the_roof_and_in_the_heat_give_less() -> None:
    hot = SUN.replace('high = "25 °C"\nlow = "25 °C"', 'high = "40 °C"\nlow = "25 °C"')
    roof = SUN.replace('mounted = "open"', 'mounted = "flat on the roof"')
    assert figure(hot, "solar.energy_per_day") < figure(SUN, "solar.energy_per_day")
    assert figure(roof, "solar.energy_per_day") < figure(SUN, "solar.energy_per_day")


# ---- shade


def shaded(rows: str) -> float:
    return figure(SUN.replace(PANELS, f"{PANELS}shade = {rows}\n"), "solar.energy_per_day")


def test_shade_all_day_leaves_nothing_and_half_shade_half() -> None:
    clear = figure(SUN, "solar.energy_per_day")
    assert shaded('[["00:00", "24:00", "100 %"]]') == 0
    assert shaded('[["00:00", "24:00", "50 %"]]') == pytest.approx(clear / 2)
    assert shaded('[["00:00", "24:00", "80 %"], ["06:00", "20:00", "80 %"]]') < 0.05 * clear


def test_shade_takes_its_hours_by_the_clock() -> None:
    hours = [figure(SUN, f"solar.clear.battery_{hour:02d}") for hour in (9, 10)]
    lost = figure(SUN, "solar.energy_per_day") - shaded('[["09:00", "10:30", "60 %"]]')
    assert lost == pytest.approx(3600 * 0.6 * (hours[0] + hours[1] / 2))


# ---- the controller


def test_the_controller_throws_away_what_it_cannot_carry() -> None:
    small = SUN.replace('current = "40 A"', 'current = "10 A"')
    assert figure(small, "solar.clear.battery_12") == pytest.approx(10 * 14.4)
    assert figure(small, "solar.energy_per_day") < figure(SUN, "solar.energy_per_day")


def test_the_controllers_current_against_the_panels() -> None:
    enough = 400 * (1 - 0.140757) * 0.97 / 14.4
    at = SUN.replace('current = "40 A"', 'current = "{:.9f} A"')
    assert verdict(at.format(enough), "solar.controller_current") == "pass"
    assert verdict(at.format(enough * 0.999), "solar.controller_current") == "fail"
    untold = findings(SUN.replace('current = "40 A"\n', ""))["solar.controller_current"]
    assert (untold.verdict, untold.missing) == ("cannot tell", ("solar.controller.current",))


def test_a_switching_controller_carries_the_panels_own_current() -> None:
    pwm = SUN.replace("[solar.controller]", '[solar.controller]\nkind = "PWM"')
    assert figure(pwm, "solar.currents.output") == pytest.approx(1.25 * 10 * 2)
    assert figure(pwm, "solar.switching") == pytest.approx(14.4 / 20)
    assert figure(pwm, "solar.energy_per_day") < 0.8 * figure(SUN, "solar.energy_per_day")


def test_conductors_by_hand() -> None:
    assert figure(SUN, "solar.currents.circuit") == pytest.approx(1.25 * 20)
    assert figure(SUN, "solar.currents.conductor") == pytest.approx(1.25 * 1.25 * 20)
    series = SUN.replace("count = 2", "count = 2\nin_series = 2")
    assert figure(series, "solar.currents.circuit") == pytest.approx(1.25 * 10)


def test_a_cold_morning_against_what_the_controller_stands() -> None:
    """Two in series at -10 °C: 48 V x (1 + 0.3 % x 35) is 53.04 V."""
    series = SUN.replace("count = 2", 'count = 2\nin_series = 2\ncoldest = "-10 °C"')
    assert figure(series, "solar.currents.cold_voltage") == pytest.approx(53.04)
    at = series.replace('most_voltage = "100 V"', 'most_voltage = "{} V"')
    assert verdict(at.format(53.05), "solar.controller_voltage") == "pass"
    assert verdict(at.format(53.03), "solar.controller_voltage") == "fail"
    assert verdict(SUN.replace('open_voltage = "24 V"\n', ""), "solar.controller_voltage") == "cannot tell"


# ---- on the bank


def test_a_dull_day_is_a_fifth_and_relieves_the_bank() -> None:
    clear, dull = (figure(SUN, f"solar.energy_{which}") for which in ("per_day", "dull"))
    assert dull == pytest.approx(0.2 * clear)
    drawn = figure(SUN, "battery.day.energy.drawn", loads(2000)) / WH
    assert drawn == pytest.approx(2000 - dull / WH * 12.8 / 14.4 * 0.99)
    assert figure(SUN, "battery.day.energy.drawn", loads(10)) == 0


def test_days_of_sun_for_a_days_need() -> None:
    back = figure(SUN, "solar.energy_per_day") * 12.8 / 14.4 * 0.99
    assert figure(SUN, "battery.day.refill.sun_days", loads(2000)) == pytest.approx(2000 * WH / back)


# ---- what is missing


@pytest.mark.parametrize(
    ("left_out", "field"),
    [('rated = "200 W"\n', "solar.rated"), ("count = 2\n", "solar.count")],
)
def test_what_is_left_out_is_named(left_out: str, field: str) -> None:
    sheets = worked(SUN.replace(left_out, ""))
    assert "solar.energy_per_day" not in sheets.figures
    assert field in {gap.path for gap in sheets.gaps}


def test_panels_without_a_bank_say_so() -> None:
    sheets = worked(PLACE + PANELS + CONTROLLER, {})
    assert "battery" in {gap.path for gap in sheets.gaps}


def test_without_panels_nothing_is_asked() -> None:
    assert {one.verdict for id, one in findings(AGM).items() if id.startswith("solar.")} == {"not applicable"}


def test_the_catalogue_fills_panels_and_controller_in() -> None:
    text = LFP + PLACE + '\n[items.left]\nkind = "solar"\nlike = "solar-200"\n'
    text += '\n[items.right]\nkind = "solar"\nlike = "solar-200"\n\n[items.box]\nkind = "controller"\n'
    text += 'like = "controller-mppt-30"\n\n[solar]\npanels = ["left", "right"]\n'
    text += '\n[solar.controller]\nitem = "box"\n'
    assert figure(text, "solar.rated_all") == 400
    assert figure(text, "solar.currents.controller") == 30
    assert worked(text).figures["solar.rated"].origin.assumed  # type: ignore[union-attr]


@pytest.mark.parametrize("system", ["us", "si"])
@pytest.mark.parametrize(
    "text", [SUN, SUN.replace('turbidity = "3"\n', "").replace('losses = "14.0757 %"\n', "")]
)
def test_every_line_reworks(text: str, system: str) -> None:
    for sheet in worked(text).sheets:
        assert rework(sheet, system=system).faults == []


@pytest.mark.parametrize("bank", ["", AGM, LFP], ids=["none", "AGM", "LFP"])
def test_a_cart_without_panels_imports_no_solar_library(tmp_path: Path, bank: str) -> None:
    path = tmp_path / "cart.toml"
    path.write_text(CART + bank, encoding="utf-8")
    code = (
        "import sys, curbwright\nfrom curbwright.requirements import judge\n"
        "sheets = curbwright.work(curbwright.read(sys.argv[1]))\njudge(sheets)\n"
        "assert {'battery', 'battery.day', 'solar'} <= {sheet.id for sheet in sheets.sheets}\n"
        "tops = {name.partition('.')[0] for name in sys.modules}\n"
        "print(sorted(tops & {'pvlib', 'pandas', 'scipy', 'h5py'}))"
    )
    ran = subprocess.run([sys.executable, "-c", code, str(path)], capture_output=True, text=True, check=True)
    assert ran.stdout.strip() == "[]"
