"""The exhaust sheet on hand-made carts: both sides of every limit, what is missing, what wins."""

from __future__ import annotations

import math
import time

import pytest

from curbwright.build.cart import Build
from curbwright.build.file import load_text
from curbwright.errors import BuildFileProblem
from curbwright.figures import Figure
from curbwright.requirements import Finding, judge
from curbwright.sheets import work
from curbwright.sheets.exhaust import exhaust_sheet
from curbwright.sheets.placing import place

CFM = 0.3048**3 / 60
FPM = 0.3048 / 60
INCH, FOOT = 0.0254, 0.3048
WATER = 249.08891

CART = """
[cart]
name = "Small"
[trailer]
deck_length = "120 in"
deck_width = "76 in"
ball_to_deck = "48 in"
[shell]
height = "84 in"
[day]
opens = "10:00"
closes = "14:00"
crew = 2
[pitch]
high = "90 °F"
low = "70 °F"
humidity = "50 %"
altitude = "0 ft"
"""
PLATE = """
[items.plate]
kind = "griddle"
side = "street"
back = "20 in"
width = "36 in"
depth = "24 in"
height = "36 in"
gas_input = "60,000 BTU/h"
connects = ["gas"]
"""
HOOD = """
[items.hood]
kind = "hood"
side = "street"
back = "14 in"
above = "66 in"
width = "48 in"
depth = "36 in"
height = "18 in"
"""
FAN = """
[items.fan]
kind = "fan_120v"
side = "centre"
back = "30 in"
above = "84 in"
width = "20 in"
depth = "20 in"
height = "20 in"
[items.fan.electric]
bus = "120 V inverter"
power = "400 W"
"""
EXHAUST = """
[exhaust]
style = "wall canopy"
overhang = "6 in"
filters = 2
filter = "20x20"
filter_above = "24 in"
fan = "fan"
curve = [
    ["1900 cfm", "0 in WC", "250 W"], ["1400 cfm", "0.8 in WC", "300 W"], ["400 cfm", "1.4 in WC", "350 W"],
]
interlock = true
heat_plan = true
[exhaust.duct]
diameter = "12 in"
length = "4 ft"
[exhaust.openings.low]
area = "3 ft2"
cover = "open"
level = "low"
always_open = true
[exhaust.openings.high]
area = "1 ft2"
cover = "open"
level = "high"
always_open = true
"""
WHOLE = CART + PLATE + HOOD + FAN + EXHAUST


def build(text: str, *changes: tuple[str, str]) -> Build:
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return load_text(text)


def figures(text: str = WHOLE, *changes: tuple[str, str]) -> dict[str, Figure]:
    cart = build(text, *changes)
    return exhaust_sheet(cart, place(cart)).figures()


def findings(text: str = WHOLE, *changes: tuple[str, str]) -> dict[str, Finding]:
    found = judge(work(build(text, *changes)))
    return {one.id.removeprefix("exhaust."): one for one in found if one.id.startswith("exhaust.")}


def verdict(id: str, *changes: tuple[str, str]) -> str:
    return findings(WHOLE, *changes)[id].verdict


# ---- carts without


def test_a_cart_without_the_section_and_without_grease_has_an_empty_sheet() -> None:
    cart = build(CART)
    sheet = exhaust_sheet(cart, place(cart))
    assert sheet.figures() == {}
    assert sheet.all_gaps() == []
    assert sheet.notes
    assert {one.verdict for one in findings(CART).values()} == {"not applicable"}


def test_grease_on_a_flame_without_a_hood_is_one_finding() -> None:
    found = findings(CART + PLATE)
    assert found["hood_over_grease"].verdict == "fail"
    assert {one.verdict for id, one in found.items() if id != "hood_over_grease"} == {"not applicable"}


def test_a_hood_settles_it_and_asks_for_nothing_more() -> None:
    found = findings(CART + PLATE + HOOD)
    assert found["hood_over_grease"].verdict == "pass"
    assert {one.verdict for id, one in found.items() if id != "hood_over_grease"} == {"not applicable"}


@pytest.mark.parametrize(
    "changes",
    [
        [('[shell]\nheight = "84 in"\n', "")],  # an open cart
        [('kind = "griddle"', 'kind = "steam_table"')],  # no grease
        [('gas_input = "60,000 BTU/h"\n', ""), ('"gas"', '"120 V"')],  # no flame
    ],
)
def test_no_hood_is_asked_for(changes: list[tuple[str, str]]) -> None:
    assert findings(CART + PLATE, *changes)["hood_over_grease"].verdict == "not applicable"


# ---- a whole cart


def test_nothing_fails_in_a_sound_cart_and_nothing_is_left_untold() -> None:
    assert {id: one.verdict for id, one in findings().items() if one.verdict != "pass"} == {}


def test_both_readings_of_the_code_and_the_larger_counts() -> None:
    """4 ft at 300 cfm are 1,200; the older code asks 75 for each of 12 ft2, 900."""
    found = figures()
    assert float(found["exhaust.code.by_length"]) / CFM == pytest.approx(1200)
    assert float(found["exhaust.code.by_older"]) / CFM == pytest.approx(900)
    assert float(found["exhaust.code_rate"]) / CFM == pytest.approx(1200)


def test_the_older_code_counts_where_it_asks_for_more() -> None:
    """A fryer below a canopy 60 in deep: 300 x 4 by length, 100 x 20 by area."""
    found = figures(WHOLE, ('kind = "griddle"', 'kind = "fryer"'), ('depth = "36 in"\nheight = "18 in"',
                    'depth = "60 in"\nheight = "18 in"'))  # fmt: skip
    assert float(found["exhaust.code_rate"]) / CFM == pytest.approx(2000)


@pytest.mark.parametrize(
    ("style", "duty", "rate"),
    [
        ("wall canopy", "light", 300),  # the griddle below makes it medium all the same
        ("wall canopy", "heavy", 400),
        ("wall canopy", "extra-heavy", 550),
        ("single island", "medium", 500),
        ("double island", "heavy", 400),
        ("backshelf", "heavy", 400),
        ("eyebrow", "medium", 250),
    ],
)
def test_the_rate_a_foot_by_style_and_duty(style: str, duty: str, rate: float) -> None:
    found = figures(WHOLE, ('style = "wall canopy"', f'style = "{style}"\nduty = "{duty}"'))
    assert float(found["exhaust.code.by_length"]) / CFM == pytest.approx(4 * rate)


@pytest.mark.parametrize(("style", "duty"), [("eyebrow", "heavy"), ("backshelf", "extra-heavy")])
def test_a_style_that_the_code_does_not_allow_is_a_finding(style: str, duty: str) -> None:
    change = ('style = "wall canopy"', f'style = "{style}"\nduty = "{duty}"')
    assert verdict("style_allowed", change) == "fail"
    assert verdict("code_rate", change) == "cannot tell"
    listed = (change[0], f'{change[1]}\nlisted_rate = "700 cfm"')
    assert verdict("style_allowed", listed) == "pass"


def test_the_label_of_a_listed_hood_stands_in_the_place_of_the_code_s_rate() -> None:
    found = figures(WHOLE, ('style = "wall canopy"', 'style = "wall canopy"\nlisted_rate = "700 cfm"'))
    assert float(found["exhaust.code_rate"]) / CFM == pytest.approx(700)
    assert float(found["exhaust.code.by_length"]) / CFM == pytest.approx(1200)


def test_physics_stands_beside_the_code() -> None:
    """Capture: 4 + 2 x 3 ft of open sides, 30 in high, 50 ft/min; areas: 6 ft2 at 0.30 m/s and 15 %."""
    found = figures()
    assert float(found["exhaust.capture_rate"]) / CFM == pytest.approx(10 * 2.5 * 50)
    assert float(found["exhaust.area_rate"]) == pytest.approx(6 * FOOT**2 * 0.30 * 1.15)
    heat = 60000 * 0.2930710701722222 * 0.5 * 0.45
    across = 2 * 0.9144 * 0.6096 / (0.9144 + 0.6096)
    plume = 18 / 3600 * heat ** (1 / 3) * (30 * INCH + 1.7 * across) ** (5 / 3) * 0.63 * 1.2
    assert float(found["exhaust.plume_rate"]) == pytest.approx(plume)
    assert float(found["exhaust.heat_rate"]) / CFM == pytest.approx(
        60000 * 0.5 * 0.45 / (1.08 * 40), rel=0.005
    )


def test_the_fan_works_where_its_curve_meets_the_system() -> None:
    """Against a root found by stepping along the typed rows."""
    found = figures()
    loss, design = float(found["exhaust.losses.all"]), float(found["exhaust.code_rate"])
    rows = [(400, 1.4), (1400, 0.8), (1900, 0.0)]

    def left(flow: float) -> float:
        (low, at_low), (high, at_high) = next(
            pair for pair in zip(rows, rows[1:], strict=False) if flow <= pair[1][0]
        )
        given = at_low + (at_high - at_low) * (flow - low) / (high - low)
        return given * WATER - loss * (flow * CFM / design) ** 2 - 0.2 * WATER

    flow = next(step / 10 for step in range(4000, 19000) if left(step / 10) <= 0)
    assert float(found["exhaust.fan_rate"]) / CFM == pytest.approx(flow, abs=0.2)
    assert 250 < float(found["exhaust.fan_power"]) < 350


def test_typed_rows_win_over_the_catalogue_and_without_them_it_stands_in() -> None:
    like = ('kind = "fan_120v"', 'like = "fan-upblast-120v-1200"')
    typed = figures(WHOLE, like)
    start, end = WHOLE.index("curve = "), WHOLE.index("interlock")
    stood_in = figures(WHOLE, like, (WHOLE[start:end], ""))
    assert float(typed["exhaust.fan_rate"]) != float(stood_in["exhaust.fan_rate"])
    assert float(stood_in["exhaust.fan.flow_1"]) / CFM == pytest.approx(1500)


def test_a_fan_too_weak_for_its_duct_fails_and_moves_no_told_amount() -> None:
    start, end = WHOLE.index("curve = "), WHOLE.index("interlock")
    weak = 'curve = [["1600 cfm", "0 in WC", "80 W"], ["1300 cfm", "0.1 in WC", "90 W"]]\n'
    found = findings(WHOLE, (WHOLE[start:end], weak))
    assert found["fan_able"].verdict == "fail"
    assert {found[id].verdict for id in ("code_rate", "plume", "makeup", "carbon_dioxide")} == {"cannot tell"}


def test_a_curve_that_ends_too_high_is_not_drawn_out() -> None:
    start, end = WHOLE.index("curve = "), WHOLE.index("interlock")
    short = 'curve = [["900 cfm", "1.3 in WC", "350 W"], ["500 cfm", "1.4 in WC", "350 W"]]\n'
    found = findings(WHOLE, (WHOLE[start:end], short))
    assert found["fan_able"].verdict == "pass"
    assert found["code_rate"].verdict == "cannot tell"
    assert "rows down to no pressure" in found["code_rate"].reason


def test_a_rectangular_duct_has_the_area_of_its_sides() -> None:
    found = figures(WHOLE, ('diameter = "12 in"', 'width = "10 in"\nheight = "14 in"'))
    assert float(found["exhaust.losses.area"]) == pytest.approx(140 * INCH**2)
    assert float(found["exhaust.losses.diameter"]) == pytest.approx(280 / 24 * INCH)


# ---- both sides of each limit


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


# ---- what is missing


@pytest.mark.parametrize(
    ("change", "id", "field"),
    [
        (('style = "wall canopy"\n', ""), "code_rate", "exhaust.style"),
        (("filters = 2\n", ""), "code_rate", "exhaust.filters"),
        (('filter = "20x20"\n', ""), "code_rate", "exhaust.filter"),
        (('diameter = "12 in"\n', ""), "code_rate", "exhaust.duct.diameter"),
        (('length = "4 ft"\n', ""), "code_rate", "exhaust.duct.length"),
        (("interlock = true\n", ""), "interlock", "exhaust.interlock"),
        (("heat_plan = true\n", ""), "heat_plan", "exhaust.heat_plan"),
        (('overhang = "6 in"\n', ""), "overhang", "exhaust.overhang"),
        (('filter_above = "24 in"\n', ""), "filter_height", "exhaust.filter_above"),
        (('area = "3 ft2"\n', ""), "makeup", "exhaust.openings.low.area"),
        (("crew = 2\n", ""), "heat_plan", "day.crew"),
        (('gas_input = "60,000 BTU/h"\n', ""), "plume", "items.plate.gas_input"),
        (('gas_input = "60,000 BTU/h"\n', ""), "combustion_low", "items.plate.gas_input"),
        (('gas_input = "60,000 BTU/h"\n', ""), "carbon_dioxide", "items.plate.gas_input"),
    ],
)
def test_what_is_missing_is_named(change: tuple[str, str], id: str, field: str) -> None:
    found = findings(WHOLE, change)[id]
    assert found.verdict == "cannot tell"
    assert field in found.missing


def test_two_hoods_and_none_named_cannot_be_told() -> None:
    two = WHOLE + HOOD.replace("items.hood", "items.other").replace('"14 in"', '"70 in"')
    assert findings(two)["code_rate"].verdict == "cannot tell"
    assert findings(two, ("[exhaust]", '[exhaust]\nhood = "hood"'))["code_rate"].verdict != "cannot tell"


# ---- names and bad input


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (('fan = "fan"', 'fan = "fam"'), "there is no item"),
        (('fan = "fan"', 'fan = "fan"\nhood = "hod"'), "there is no item"),
        (('fan = "fan"', 'fan = "fan"\nappliances = ["plates"]'), "there is no item"),
        (('area = "3 ft2"', 'opening = "hatch"'), "there is no opening"),
        (('area = "3 ft2"', 'area = "3 ft2"\nopening = "hatch"'), "stands beside"),
        (('diameter = "12 in"', 'diameter = "12 in"\nwidth = "10 in"'), "round or rectangular"),
        (('"0 in WC", "250 W"', '"0 in", "250 W"'), "row 1"),
        (('style = "wall canopy"', 'style = "umbrella"'), "exhaust.style"),
    ],
)
def test_what_cannot_be_meant_is_a_problem(change: tuple[str, str], says: str) -> None:
    with pytest.raises(BuildFileProblem) as problem:
        build(WHOLE, change)
    assert says in str(problem.value)


@pytest.mark.parametrize(
    "change",
    [
        ('diameter = "12 in"', 'diameter = "0 in"'),
        ('length = "4 ft"', 'length = "0 ft"'),
        ("filters = 2", "filters = 0"),
        ('style = "wall canopy"', 'style = "wall canopy"\nlisted_rate = "0 cfm"'),
        ('width = "36 in"\ndepth = "24 in"', 'width = "0 in"\ndepth = "0 in"'),
        ('gas_input = "60,000 BTU/h"', 'gas_input = "0 BTU/h"'),
        ('above = "66 in"', 'above = "20 in"'),
        ("interlock = true", 'interlock = true\nfan_off_flow = "0 cfm"'),
        ("interlock = true", 'interlock = true\nmakeup_pressure = "0 in WC"'),
        ("crew = 2", "crew = 0"),
    ],
)
def test_nothing_where_something_is_due_is_never_a_crash(change: tuple[str, str]) -> None:
    assert all(math.isfinite(one) for one in figures(WHOLE, change).values())
    findings(WHOLE, change)


def test_the_sheet_is_quick() -> None:
    cart = build(WHOLE)
    placing = place(cart)
    exhaust_sheet(cart, placing)
    best = min(_timed(cart, placing) for _ in range(5))
    assert best < 0.040


def _timed(cart: Build, placing: object) -> float:
    began = time.perf_counter()
    exhaust_sheet(cart, placing)  # type: ignore[arg-type]
    return time.perf_counter() - began
