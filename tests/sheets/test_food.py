"""Food on the sheet: both sides of every limit, the pairs that go together, what is left out."""

from __future__ import annotations

from textwrap import dedent

import pytest

import curbwright
from curbwright.requirements.finding import Finding
from tests.figures.rework import rework

CART = dedent("""
    [cart]
    name = "Stew"

    [trailer]
    deck_length = "10 ft"
    deck_width = "6 ft"
    ball_to_deck = "4 ft"

    [menu.stew]
    cook_to = "155 °F"
    dwell = "17 s"
    sort = "ground meat"
""")
STEPS = {
    "buy": 'does = "receive"\ntemperature = "41 °F"\ntime = "30 min"',
    "chest": 'does = "cold hold"\ntemperature = "41 °F"\ntime = "6 h"',
    "cut": 'does = "prep"\ntemperature = "60 °F"\ntime = "4 h"',
    "fire": 'does = "cook"',
    "keep": 'does = "hot hold"\ntemperature = "135 °F"\ntime = "3 h"',
    "cool": 'does = "cool"\nfirst = "2 h"\ntime = "6 h"',
    "again": 'does = "reheat"\ntemperature = "165 °F"\ntime = "2 h"',
    "bin": 'does = "discard"\ntime = "4 h"',
}


def works(cart: str = CART, **steps: str) -> curbwright.sheets.Worksheets:
    told = "\n".join(f"[menu.stew.steps.{key}]\n{text}\n" for key, text in {**STEPS, **steps}.items() if text)
    return curbwright.work(curbwright.read_text(f"{cart}\n{told}"))


def finding(id: str, cart: str = CART, **steps: str) -> Finding:
    return next(one for one in curbwright.judge(works(cart, **steps)) if one.id == f"food.{id}.stew")


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_line_can_be_reworked(system: str) -> None:
    report = rework(works().sheet("food"), system=system)
    assert report.faults == []
    assert len(report.reworked) > 30


def test_at_every_limit_it_passes() -> None:
    told = [one for one in curbwright.judge(works()) if one.requirement.id.startswith("food.")]
    assert {one.verdict for one in told} == {"pass"}
    assert len(told) == 11


@pytest.mark.parametrize(
    ("id", "step", "before", "after"),
    [
        ("received", "buy", "41 °F", "42 °F"),
        ("cold_hold", "chest", "41 °F", "42 °F"),
        ("hot_hold", "keep", "135 °F", "134 °F"),
        ("warm_time", "cut", "4 h", "4 h 1 min"),
        ("discard", "bin", "4 h", "5 h"),
        ("cool_first", "cool", "2 h", "2 h 10 min"),
        ("cool_whole", "cool", "6 h", "6 h 10 min"),
        ("reheat", "again", "165 °F", "164 °F"),
        ("reheat_time", "again", "2 h", "2 h 1 min"),
    ],
)
def test_past_each_limit_that_one_fails(id: str, step: str, before: str, after: str) -> None:
    changed = STEPS[step].replace(before, after)
    assert changed != STEPS[step]
    told = [one for one in curbwright.judge(works(**{step: changed})) if one.verdict == "fail"]
    assert [one.id for one in told if one.id.startswith("food.")] == [f"food.{id}.stew"]


@pytest.mark.parametrize(
    ("sort", "cooked", "dwell", "hot", "long"),
    [
        ("ground meat", "155 °F", "17 s", "pass", "pass"),
        ("ground meat", "155 °F", "16 s", "pass", "fail"),
        ("ground meat", "158 °F", "0 s", "pass", "pass"),
        ("ground meat", "151 °F", "1 min", "pass", "pass"),
        ("ground meat", "151 °F", "17 s", "pass", "fail"),
        ("ground meat", "144 °F", "10 min", "fail", "pass"),
        ("poultry", "165 °F", "0 s", "pass", "pass"),
        ("poultry", "164 °F", "0 s", "fail", "pass"),
        ("fish", "145 °F", "15 s", "pass", "pass"),
        ("plants", "134 °F", "0 s", "fail", "pass"),
    ],
)
def test_temperature_and_time_of_cooking_go_together(
    sort: str, cooked: str, dwell: str, hot: str, long: str
) -> None:
    cart = CART.replace("ground meat", sort).replace("155 °F", cooked).replace("17 s", dwell)
    assert finding("cook", cart).verdict == hot
    assert finding("cook_dwell", cart).verdict == long


def test_a_place_may_ask_for_hotter() -> None:
    cart = CART.replace("[menu.stew]", '[place]\nhot_limit = "140 °F"\n\n[menu.stew]')
    assert finding("hot_hold", cart).verdict == "fail"


def test_opened_from_a_plants_pack_it_is_reheated_to_less() -> None:
    again = STEPS["again"].replace("165 °F", "135 °F")
    assert finding("reheat", again=again).verdict == "fail"
    assert finding("reheat", again=again + "\npackaged = true").verdict == "pass"


def test_time_at_a_safe_temperature_does_not_count() -> None:
    cold = 'does = "prep"\ntemperature = "40 °F"\ntime = "9 h"'
    hot = 'does = "serve"\ntemperature = "140 °F"\ntime = "9 h"'
    figures = works(cut=cold, window=hot).figures
    assert float(figures["food.warm.stew.time"]) == 0


def test_the_kill_of_the_published_row_is_that_of_the_table() -> None:
    cart = CART.replace("155 °F", "150 °F").replace("17 s", "67 s")
    assert works(cart).figures["food.stew.lethality"] == pytest.approx(6.5, rel=0.01)


def test_what_grows_is_a_band_and_no_verdict() -> None:
    sheets = works()
    low, high = (sheets.figures[f"food.stew.growth_{end}"] for end in ("low", "high"))
    assert 0 < low < high
    assert not any("growth" in one.requirement.quantity for one in curbwright.judge(sheets))


def test_cooling_at_the_limit_grows_what_the_published_case_says() -> None:
    assert works().figures["food.cool.stew.grown_cooling"] == pytest.approx(3.288, rel=0.005)


def test_a_missing_temperature_cannot_be_told_and_leaves_the_rest_be() -> None:
    told = finding("cold_hold", chest='does = "cold hold"')
    assert told.verdict == "cannot tell"
    assert told.missing == ("menu.stew.steps.chest.temperature",)
    assert finding("hot_hold", chest='does = "cold hold"').verdict == "pass"


def test_a_missing_sort_cannot_be_told() -> None:
    told = finding("cook", CART.replace('sort = "ground meat"\n', ""))
    assert told.verdict == "cannot tell"
    assert told.missing == ("menu.stew.sort",)


def test_what_is_ready_to_eat_needs_no_cooking() -> None:
    cart = CART.replace("ground meat", "ready to eat")
    assert not any(
        one.id.startswith("food.cook.")
        for one in curbwright.judge(works(cart))
        if one.verdict != "not applicable"
    )


def test_a_menu_without_steps_has_an_empty_sheet() -> None:
    plain = curbwright.work(curbwright.read_text(CART.partition("cook_to")[0] + "portions = 5"))
    assert plain.sheet("food").figures() == {}
    assert "Nothing sold says its steps" in plain.sheet("food").notes[0]
