"""Both sides of every limit, and the air and heat in the cart."""

from __future__ import annotations

import pytest

from tests.sheets.exhaust.exhaust_carts import FPM, INCH, WHOLE, figures, verdict


@pytest.mark.parametrize(
    ("id", "good", "bad"),
    [
        ("lip", ('above = "66 in"', 'above = "84 in"'), ('above = "66 in"', 'above = "84.1 in"')),
        ("overhang", ('overhang = "6 in"', 'overhang = "6 in"'),
         ('overhang = "6 in"', 'overhang = "5.9 in"')),
        ("filter_height", ('filter_above = "24 in"', 'filter_above = "18 in"'),
         ('filter_above = "24 in"', 'filter_above = "17.9 in"')),
        ("interlock", ("interlock = true", "interlock = true"), ("interlock = true", "interlock = false")),
        ("heat_plan", ("heat_plan = true", "heat_plan = true"), ("heat_plan = true", "heat_plan = false")),
        ("combustion_high", ('area = "1 ft2"', 'area = "15 in2"'), ('area = "1 ft2"', 'area = "14.9 in2"')),
        ("combustion_low", ('area = "3 ft2"', 'area = "15 in2"'), ('area = "3 ft2"', 'area = "14.9 in2"')),
        ("power_wired", ('power = "400 W"', 'power = "350 W"'), ('power = "400 W"', 'power = "250 W"')),
        ("filter_fast", ("filters = 2", "filters = 2"), ("filters = 2", "filters = 1")),
        ("filter_slow", ("filters = 2", "filters = 2"), ("filters = 2", "filters = 6")),
        ("duct_not_too_fast", ('diameter = "12 in"', 'diameter = "10 in"'),
         ('diameter = "12 in"', 'diameter = "7 in"')),
        ("duct_fast_enough", ('diameter = "12 in"', 'diameter = "18 in"'),
         ('diameter = "12 in"', 'diameter = "24 in"')),
    ],
)  # fmt: skip
def test_both_sides(id: str, good: tuple[str, str], bad: tuple[str, str]) -> None:
    assert verdict(id, good) == "pass"
    assert verdict(id, bad) == "fail"


def test_a_low_hood_may_stand_back_and_must_hang_lower() -> None:
    low = ('style = "wall canopy"', 'style = "backshelf"')
    assert verdict("overhang", low, ('overhang = "6 in"', 'overhang = "-12 in"')) == "pass"
    assert verdict("overhang", low, ('overhang = "6 in"', 'overhang = "-12.1 in"')) == "fail"
    assert verdict("lip", low, ('above = "66 in"', 'above = "72 in"')) == "pass"
    assert verdict("lip", low, ('above = "66 in"', 'above = "72.1 in"')) == "fail"


def test_make_up_air_needs_its_free_area_open_for_good() -> None:
    """At 0.02 in of water air comes in at some 346 ft/min."""
    found = figures()
    moved = max(float(found["exhaust.fan_rate"]), float(found["exhaust.code_rate"]))
    assert float(found["exhaust.makeup_opening"]) == pytest.approx(moved / (345.8 * FPM), rel=0.001)
    assert verdict("makeup") == "pass"
    assert verdict("makeup", ("always_open = true", "always_open = false")) == "fail"
    assert verdict("makeup", ('cover = "open"', 'cover = "screen and louvre"')) == "fail"


def test_an_opening_of_the_shell_counts_by_its_size() -> None:
    hatch = '[shell.openings.hatch]\nwall = "curb"\nkind = "hatch"\nback = "30 in"\n'
    hatch += 'width = "36 in"\nheight = "24 in"\n'
    used = ('area = "3 ft2"', 'opening = "hatch"')
    found = figures(WHOLE, ("[day]", f"{hatch}[day]"), used)
    assert float(found["exhaust.openings.low.free"]) == pytest.approx(36 * 24 * INCH**2)


def test_a_mild_day_needs_no_plan_against_heat() -> None:
    mild = ('high = "90 °F"\nlow = "70 °F"', 'high = "55 °F"\nlow = "45 °F"')
    assert verdict("heat_plan", mild, ("heat_plan = true", "heat_plan = false")) == "pass"


def test_a_weak_hood_leaves_carbon_dioxide() -> None:
    assert verdict("carbon_dioxide", ("interlock", 'capture = "0 %"\ninterlock')) == "pass"
    more = ('gas_input = "60,000 BTU/h"', 'gas_input = "250,000 BTU/h"')
    assert verdict("carbon_dioxide", ("interlock", 'capture = "0 %"\ninterlock'), more) == "fail"


def test_with_the_fan_off_the_air_is_bad_within_minutes() -> None:
    """60,000 BTU/h and 50 cfm: 16.9 % of oxygen in the end, and the limits passed long before."""
    found = figures()
    assert float(found["exhaust.air.fan_off.oxygen"]) == pytest.approx(0.169, abs=0.001)
    assert float(found["exhaust.air.fan_off.carbon_dioxide_time"]) < 120
    assert float(found["exhaust.air.fan_off.oxygen_time"]) < 600


def test_an_open_burner_unlit_makes_the_shut_cart_burn() -> None:
    """Inside 116 x 72 x 82 in; 60,000 / 2,488 cubic feet an hour; 2.15 %."""
    room = 116 * 72 * 82 / 12**3
    assert float(figures()["exhaust.leak.time"]) / 3600 == pytest.approx(room * 0.0215 / (60000 / 2488))


def test_the_cook_at_the_plate_is_hotter_than_a_step_back() -> None:
    found = figures()
    assert float(found["exhaust.wbgt"]) > float(found["exhaust.wbgt_low"])
    assert float(found["exhaust.cabin_temperature"]) > float(found["pitch.high"])
