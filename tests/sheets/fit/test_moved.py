"""Moving everything along together changes no gap."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from curbwright.build.cart import Build
from tests.sheets.fit.small_cart import SHELL, Fields, cart, inches, sheet_of, thing

KINDS = ("stock", "undercounter", "griddle", "counter", "hand_sink", "sink3")
GAPS = (
    "overlaps",
    "room",
    "aisle",
    "swings",
    "front",
    "service",
    "clear_side",
    "clear_rear",
    "cold",
    "hand_sink",
    "deck",
)
PLACES = st.tuples(
    st.sampled_from(["curb", "street", "centre"]), st.integers(24, 100), st.integers(8, 40),
    st.integers(8, 30), st.integers(20, 60), st.sampled_from(KINDS),
)  # fmt: skip


def shifted(places: list[tuple[str, int, int, int, int, str]], inch: int) -> Build:
    """Things in a shell 110 in long that begins at 22 in, all moved along."""
    items: dict[str, Fields] = {}
    for number, (side, back, width, depth, height, kind) in enumerate(places):
        plate: Fields = {"clear_side": "3 in", "clear_rear": "2 in", "front_clear": "20 in"}
        items[f"box{number}"] = thing(
            side, f"{back + inch} in", f"{width}x{depth}x{height}", kind=kind, **plate
        )
    return cart(items, shell={**SHELL, "back": f"{22 + inch} in", "length": "110 in"})


def gaps(build: Build) -> dict[str, float]:
    figures = sheet_of(build).figures()
    return {
        id: float(one)
        for id, one in figures.items()
        if id.split(".")[0] == "fit" and id.split(".")[1] in GAPS
    }


@settings(max_examples=60, deadline=None)
@given(st.lists(PLACES, max_size=6), st.integers(-20, 11))
def test_moving_everything_together_changes_no_gap(
    places: list[tuple[str, int, int, int, int, str]], inch: int
) -> None:
    still, moved = gaps(shifted(places, 0)), gaps(shifted(places, inch))
    lengths = {id for id in still if not id.endswith(".shortest")}
    assert {id: moved[id] for id in lengths if id in moved} == pytest.approx(
        {id: still[id] for id in lengths if id in moved}, abs=1e-9
    )
    assert len(set(still) ^ set(moved)) == 0


def test_one_of_them_by_hand() -> None:
    places = [
        ("street", 30, 60, 24, 36, "counter"),
        ("curb", 50, 40, 20, 36, "counter"),
        ("street", 100, 20, 25, 50, "stock"),
    ]
    for inch in (0, 7):
        build = shifted(places, inch)
        assert inches(build, "narrowest_aisle") == pytest.approx(72 - 24 - 20)
        assert inches(build, "tightest_gap") == pytest.approx(100 - 90)
        assert inches(build, "deck.street_row") == pytest.approx(80)
        assert inches(build, "deck_short_by") == pytest.approx(80 - 106)
