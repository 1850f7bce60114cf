"""The day's need by both ways, hand-worked; what leaves a number out, and what is said of it."""

from __future__ import annotations

import pytest

from tests.sheets.water.carts import GALLON, HOUR, SINKS, TANKS, WHOLE, figures, findings, notes, sheets

HOURS = 7.25
"""Six hours of serving, half an hour before and three quarters after."""
BOWL = 12 * 12 * 10 / 231


def gallons(id: str, *parts: str, swap: dict[str, str] | None = None) -> float:
    return float(figures(*(parts or (SINKS, TANKS)), swap=swap)[id]) / GALLON


def test_the_county_counts_hands_by_the_hour_and_two_bowls_a_washing() -> None:
    """Two hands for 7.25 h at 1 gal/h, two washings of two bowls, 2.5 to clean with, two buckets."""
    assert gallons("water.demand.county") == pytest.approx(2 * HOURS + 2 * 2 * BOWL + 2.5 + 2, rel=1e-6)


def test_from_the_bottom_up_it_is_washes_of_hands_and_bowls_part_full() -> None:
    hands = 2 * HOURS * 4 * (1.0 * 20 / 60)
    assert gallons("water.demand.base") == pytest.approx(hands + 2 * 3 * 0.7 * BOWL + 2.5 + 2, rel=1e-6)


def test_the_need_is_the_larger_of_the_two_with_a_spare() -> None:
    found = figures(SINKS, TANKS)
    ways = [float(found[f"water.demand.{way}"]) for way in ("county", "base")]
    assert float(found["water.fresh_need"]) == pytest.approx(1.1 * max(ways))
    assert found["water.fresh_need"].unit == "m**3"


def test_low_and_high_are_on_either_side() -> None:
    found = figures(SINKS, TANKS)
    low, need, high = (float(found[f"water.demand.{id}"]) for id in ("need_low", "need", "need_high"))
    assert low < need < high


@pytest.mark.parametrize(
    ("meat", "hands", "washings"), [("none", 1, 2), ("in batches", 1, 3), ("to order", 2, 4)]
)
def test_raw_meat_asks_for_more_washing(meat: str, hands: int, washings: int) -> None:
    more = f'[water]\nraw_meat = "{meat}"\n'
    assert gallons("water.demand.county", SINKS, TANKS, more) == pytest.approx(
        hands * 2 * HOURS + washings * 2 * BOWL + 4.5
    )


def test_a_filled_form_of_that_county_is_met() -> None:
    """Two workers, eight hours, raw meat in one batch, bowls of 12 x 12 x 10 in: 53.4 gal."""
    lean = """
[water]
raw_meat = "in batches"
before = "0 min"
after = "0 min"
cleaning = "0 gal"
buckets = 0
"""
    form = gallons("water.demand.county", SINKS, TANKS, lean, swap={'closes = "16:00"': 'closes = "18:00"'})
    assert form == pytest.approx(53.4, rel=0.002)


def test_what_is_sold_takes_water_into_food_drink_and_preparing() -> None:
    menu = """
[menu.coffee]
portions = 100
water = "8 fl oz"
drink = true
prep_water = "0 fl oz"
[menu.soup]
portions = 32
water = "12 fl oz"
prep_water = "4 fl oz"
"""
    before, after = gallons("water.demand.base"), gallons("water.demand.base", SINKS, TANKS, menu)
    assert after - before == pytest.approx(100 * 8 / 128 * 1.1 + 32 * 16 / 128)
    assert gallons("water.demand.product", SINKS, TANKS, menu) == pytest.approx(800 / 128 + 3)


def test_what_is_drunk_does_not_drain() -> None:
    menu = '[menu.tea]\nportions = 128\nwater = "1 fl oz"\nprep_water = "0 fl oz"\n'
    assert gallons("water.demand.waste", SINKS, TANKS, menu) == pytest.approx(gallons("water.demand.waste"))


def test_ice_comes_on_top_of_the_waste() -> None:
    ice = '[water]\nice_cabinet = "9 gal"\n'
    assert gallons("water.demand.waste", SINKS, TANKS, ice) == pytest.approx(
        gallons("water.demand.waste") + 3
    )


def test_a_steam_table_is_filled_once_and_boils_off_while_serving() -> None:
    bath = (
        '[items.bath]\nkind = "steam_table"\n[items.bath.water]\nholds = "3 gal"\ngives_off = "0.5 gal/h"\n'
    )
    assert gallons("water.demand.steam_base", SINKS, TANKS, bath) == pytest.approx(3 + 0.5 * 6)


def test_washing_fewer_times_saves_water_and_wants_spare_sets() -> None:
    once = "[water]\nwashes = 1\n"
    assert gallons("water.demand.utensils", SINKS, TANKS, once) == pytest.approx(3 * 0.7 * BOWL)
    assert findings(SINKS, TANKS, once)["water.washing_up"].verdict == "fail"
    assert findings(SINKS, TANKS, once + "spare_sets = 1\n")["water.washing_up"].verdict == "pass"


def test_serving_past_midnight_is_no_negative_day() -> None:
    late = {'opens = "10:00"': 'opens = "20:00"', 'closes = "16:00"': 'closes = "02:00"'}
    assert float(figures(SINKS, TANKS, swap=late)["water.demand.serving"]) == pytest.approx(6 * HOUR)


@pytest.mark.parametrize(
    ("left_out", "settled_by"),
    [
        ("crew = 2", "day.crew"),
        ('opens = "10:00"', "day.opens"),
        ('bowl_length = "12 in"', "items.ware.water.bowl_length"),
    ],
)
def test_without_it_the_need_cannot_be_told(left_out: str, settled_by: str) -> None:
    found = findings(SINKS, TANKS, swap={left_out: ""})["water.fresh_day"]
    assert found.verdict == "cannot tell"
    assert settled_by in found.missing


def test_a_cart_without_water_is_held_to_nothing() -> None:
    assert {one.verdict for id, one in findings().items() if id.startswith("water.")} == {"not applicable"}
    assert notes(sheets(), "water") == ["No sink, tank or tap is aboard."]


def test_no_sink_for_utensils_is_said() -> None:
    alone = SINKS.partition("[items.hands]")
    worked = sheets("[items.hands]" + alone[2], TANKS)
    assert any("washed at the base" in note for note in notes(worked, "water"))


def test_a_least_tank_of_a_county_is_told_how_far_it_falls_short() -> None:
    """A county's 3.5 gal is a tenth of what two people need in a day."""
    place = '[place]\nfresh_least = "3.5 gal"\n'
    found = figures(*WHOLE, place)
    need = float(found["water.fresh_need"]) / GALLON
    assert float(found["water.place_fresh.need_to_least"]) == pytest.approx(need / 3.5)
    assert float(found["water.place_fresh.need_to_least"]) > 10
    assert float(found["water.place_fresh.short"]) / GALLON == pytest.approx(need - 3.5)
    assert findings(*WHOLE, place)["water.fresh_place"].verdict == "pass"
