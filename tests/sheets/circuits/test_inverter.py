"""The inverter: its curve on the sheet, a day by intervals, too small for its load or its starts."""

from __future__ import annotations

import pytest

from curbwright.figures import Scheduled
from tests.sheets.circuits.carts import LOW, MAINS, set_field, worked


def with_inverter(**fields: str) -> str:
    text = MAINS
    for field, value in fields.items():
        text = set_field(text, "electrical.inverter", field, value)
    return LOW + text


def test_the_day_is_cut_where_something_is_switched() -> None:
    cart = worked(with_inverter())
    origin = cart["inverter.energy"].origin
    assert isinstance(origin, Scheduled)
    assert list(origin.rows) == ["09:00 to 10:00", "10:00 to 15:00", "15:00 to 16:00"]
    assert float(origin.rows["09:00 to 10:00"]["power"]) == 0.0
    assert float(origin.rows["10:00 to 15:00"]["power"]) == 220.0
    assert float(origin.rows["10:00 to 15:00"]["apparent"]) == pytest.approx(270.0)


def test_an_inverter_that_is_never_switched_off_pays_its_tare_all_day() -> None:
    switched = worked(with_inverter())["inverter.energy"]
    always = worked(with_inverter(on_at="", off_at=""))["inverter.energy"]
    assert always - switched == pytest.approx(12 * (24 - 7) * 3600)


def test_a_load_outside_the_inverter_s_hours_counts_with_its_tare() -> None:
    text = set_field(with_inverter(), "items.till.electric", "on_at", '"18:00"')
    text = set_field(text, "items.till.electric", "off_at", '"19:00"')
    rows = worked(text)["inverter.energy"].origin.rows
    assert list(rows)[-1] == "18:00 to 19:00"


def test_a_window_past_midnight_counts_in_both_ends_of_the_day() -> None:
    text = set_field(with_inverter(on_at="", off_at=""), "items.till.electric", "on_at", '"22:00"')
    text = set_field(text, "items.till.electric", "off_at", '"02:00"')
    rows = worked(text)["inverter.energy"].origin.rows
    assert float(rows["00:00 to 02:00"]["power"]) == 20.0
    assert float(rows["22:00 to 24:00"]["power"]) == 20.0
    assert worked(text)["load.till.energy"] == pytest.approx(20 * 4 * 3600)


def test_its_curve_goes_through_what_was_given() -> None:
    cart = worked(with_inverter())
    assert cart["inverter.slope"] == pytest.approx(1.0426908, rel=1e-6)
    assert cart["inverter.curvature"] == pytest.approx(9.473454e-5, rel=1e-5)


@pytest.mark.parametrize(("rating", "verdict"), [("270 W", "pass"), ("269 W", "fail")])
def test_it_carries_volts_times_amperes_and_not_watts(rating: str, verdict: str) -> None:
    """The fan's 200 W at a power factor of 80 % are 250 VA; 20 W of till make 270."""
    text = with_inverter(rating=f'"{rating}"', tare='"3 W"')
    assert worked(text).verdicts("inverter_load") == {"": verdict}


@pytest.mark.parametrize(("surge", "verdict"), [("820 W", "pass"), ("819 W", "fail")])
def test_it_starts_the_largest_motor_with_the_rest_running(surge: str, verdict: str) -> None:
    assert worked(with_inverter(surge=f'"{surge}"')).verdicts("inverter_start") == {"": verdict}


@pytest.mark.parametrize(("start", "verdict"), [("1 s", "pass"), ("1.1 s", "fail")])
def test_its_surge_lasts_as_long_as_the_longest_start(start: str, verdict: str) -> None:
    text = set_field(with_inverter(), "items.fan.electric", "start_time", f'"{start}"')
    assert worked(text).verdicts("inverter_start_time") == {"": verdict}


@pytest.mark.parametrize(("wave", "verdict"), [("sine", "pass"), ("modified", "fail")])
def test_no_motor_on_a_modified_wave(wave: str, verdict: str) -> None:
    assert worked(with_inverter(wave=f'"{wave}"')).verdicts("inverter_wave") == {"": verdict}


def test_efficiencies_that_contradict_the_tare_are_found() -> None:
    """With a tare of 12 W, 99.9 % at 300 W would leave less than nothing for every other loss."""
    assert worked(with_inverter(efficiency_part='"99.9 %"')).verdicts("inverter_curve") == {"": "fail"}
    assert worked(with_inverter()).verdicts("inverter_curve") == {"": "pass"}


@pytest.mark.parametrize("field", ["rating", "tare", "efficiency_part", "efficiency_full"])
def test_what_is_not_known_of_it_is_asked_for(field: str) -> None:
    cart = worked(with_inverter(**{field: ""}))
    assert f"electrical.inverter.{field}" in cart.gaps().values()
    assert not cart.has("energy_per_day")
    assert "cannot tell" in cart.verdicts("inverter_load").values()


def test_loads_on_an_inverter_that_nobody_described() -> None:
    text = LOW + MAINS.partition("[electrical.inverter]")[0]
    cart = worked(text)
    assert cart.gaps()["inverter"] == "electrical.inverter"
    assert cart.verdicts("inverter_load") == {"": "cannot tell"}


def test_a_cart_without_an_inverter_is_not_asked_for_one() -> None:
    cart = worked(LOW)
    assert cart.verdicts("inverter_load") == {"": "not applicable"}
    assert cart["energy_per_day"] == cart["dc_energy_per_day"]
