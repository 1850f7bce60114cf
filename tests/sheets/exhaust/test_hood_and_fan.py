"""Hood and fan on hand-made carts: the rate that counts, physics beside it, where the fan works."""

from __future__ import annotations

import pytest

from curbwright.sheets.exhaust import exhaust_sheet
from curbwright.sheets.placing import place
from tests.sheets.exhaust.exhaust_carts import (
    CART,
    CFM,
    FOOT,
    HOOD,
    INCH,
    PLATE,
    WATER,
    WHOLE,
    build,
    figures,
    findings,
    verdict,
)


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
