"""The rows of the space document: each is alive, and each rests on a source that exists."""

from __future__ import annotations

import pytest

from curbwright import sources
from curbwright.requirements import Requirement, requirements
from tests.sheets.fit.small_cart import Fields, cart, counter, findings, thing

ROWS = [row for row in requirements() if row.id.startswith("space.")]
CREWED: Fields = {"crew": 2}
HATCH: Fields = {
    "wall": "curb", "kind": "hatch", "back": "20 in", "above": "38 in", "width": "48 in", "height": "36 in",
    "shelf_depth": "12 in",
}  # fmt: skip
DOOR: Fields = {
    "wall": "rear",
    "kind": "door",
    "off_centre": "0 in",
    "width": "30 in",
    "height": "74 in",
    "opens": "in",
}
BURNER: Fields = {
    "connects": ["gas"], "off_wall": "6 in", "clear_side": "6 in", "clear_rear": "6 in",
    "clear_above": "30 in", "shutoff_above": "20 in", "shutoff_from_face": "8 in", "front_clear": "30 in",
}  # fmt: skip

BASIN: Fields = {"work_height": "36 in", "bowl_depth": "5 in"}


def everything() -> dict[str, Fields]:
    """One thing of every sort that a row asks about."""
    return {
        "griddle": thing("street", "20 in", "24x20x16", kind="griddle", above="20 in", **BURNER),
        "fryer": thing("street", "60 in", "12x20x36", kind="fryer", **BURNER),
        "sinks": thing("street", "76 in", "40x18x44", kind="sink3", work_height="36 in", bowl_depth="10 in"),
        "basin": thing("street", "120 in", "12x14x13", kind="hand_sink", above="24 in", **BASIN),
        "counter": counter(size="40x18x36"),
        "fridge": thing("curb", "70 in", "24x18x34", kind="undercounter", opens="door", swing="20 in"),
        "chest": thing("curb", "100 in", "24x18x20", kind="cold_chest_12v", opens="lid", lid_rise="18 in"),
        "shelf": thing("street", "80 in", "30x10x4", kind="shelf", above="60 in"),
        "tank": thing("street", "80 in", "40x20x14", kind="tank_waste", above="-20 in"),
        "bottle": thing("centre", "-30 in", "12x12x18", kind="cylinder"),
        "generator": thing("centre", "-30 in", "20x12x18", kind="generator", off_centre="30 in"),
    }  # fmt: skip


def test_there_are_rows() -> None:
    assert len(ROWS) > 35


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.id)
def test_a_row_says_what_why_and_on_what_it_rests(row: Requirement) -> None:
    assert sources.look_up(row.source)
    assert row.how in sources.HOW
    assert row.says[0].isupper()
    assert row.why.endswith(".")
    assert row.clause or row.how in ("practice", "memory", "computed")


def test_no_row_is_dead() -> None:
    """A cart with one of everything is held to every row: each finds its figure and its limit."""
    openings = {"hatch": HATCH, "way_in": DOOR}
    found = findings(cart(everything(), openings=openings, day=CREWED, people__cook={"back": "60 in"}))
    heard = {one.requirement.id for one in found.values() if one.verdict in ("pass", "fail")}
    assert {row.id for row in ROWS} - heard == set()
