"""The aisle, the headroom over it, doorways, and where people stand."""

from __future__ import annotations

import pytest

from curbwright.build.cart import Build
from tests.sheets.fit.small_cart import Fields, cart, counter, findings, inches, notes, thing, verdict

DOOR: Fields = {"wall": "rear", "kind": "door", "off_centre": "0 in", "width": "30 in", "height": "74 in"}
HATCH: Fields = {
    "wall": "curb", "kind": "hatch", "back": "20 in", "above": "40 in", "width": "48 in", "height": "36 in"
}  # fmt: skip


def rows(curb_depth: float, **changes: Fields) -> Build:
    """A curb-side counter opposite a street-side counter 24 in deep in a room 72 in wide."""
    return cart({"curb": counter(size=f"60x{curb_depth}x36"), "street": counter("street"), **changes})


@pytest.mark.parametrize(
    ("depth", "width", "said"), [(17, 31, "pass"), (18, 30, "pass"), (18.25, 29.75, "fail")]
)
def test_the_aisle_is_what_two_rows_leave(depth: float, width: float, said: str) -> None:
    assert inches(rows(depth), "narrowest_aisle") == pytest.approx(width)
    assert verdict(rows(depth), "aisle") == said


def test_without_rows_the_aisle_is_the_room() -> None:
    assert inches(cart({}), "narrowest_aisle") == pytest.approx(72)


def test_a_single_row_leaves_the_rest_of_the_room() -> None:
    assert inches(cart({"a": counter()}), "narrowest_aisle") == pytest.approx(48)


def test_rows_that_do_not_face_each_other_are_measured_from_corner_to_corner() -> None:
    far = rows(40, street=counter("street", "95 in", "30x24x36"))
    assert inches(far, "narrowest_aisle") == pytest.approx((15**2 + 8**2) ** 0.5)


def test_what_hangs_above_head_height_does_not_narrow_the_aisle() -> None:
    hood = thing("street", "20 in", "60x40x6", kind="hood", above="74 in")
    assert inches(rows(18, hood=hood), "narrowest_aisle") == pytest.approx(30)
    assert inches(rows(18, hood={**hood, "above": "73 in"}), "narrowest_aisle") == pytest.approx(14)


def test_the_wider_way_past_an_island_counts() -> None:
    island = thing("centre", "60 in", "20x20x36", kind="counter", off_centre="-10 in")
    build = cart({"island": island})
    assert inches(build, "narrowest_aisle") == pytest.approx(36)


@pytest.mark.parametrize(("back", "width"), [("15 in", 10), ("14 in", 72)])
def test_nobody_has_to_get_past_what_stands_at_the_end(back: str, width: float) -> None:
    """Between it and the front wall at 2 in nobody can stand in less than 13 in."""
    build = cart({"end": thing("centre", back, "20x52x36", kind="counter")})
    assert inches(build, "narrowest_aisle") == pytest.approx(width)


def test_a_door_in_that_end_has_to_be_reached() -> None:
    end = thing("centre", "2 in", "20x52x36", kind="counter")
    build = cart({"end": end}, openings={"way_in": {**DOOR, "wall": "front"}})
    assert inches(build, "narrowest_aisle") == pytest.approx(10)


def test_on_an_open_deck_an_aisle_is_looked_at_only_where_somebody_stands() -> None:
    items = {"a": counter(), "b": counter("street")}
    assert verdict(cart(items, shell=None), "aisle") == "not asked"
    assert any("nobody is placed" in note for note in notes(cart(items, shell=None)))
    build = cart(items, shell=None, people__cook={"back": "90 in"})
    assert inches(build, "narrowest_aisle") == pytest.approx(76 - 48)


@pytest.mark.parametrize(("height", "said"), [("76 in", "pass"), ("75.75 in", "fail")])
def test_headroom_is_measured_below_the_roof(height: str, said: str) -> None:
    build = cart({}, shell={"height": height, "roof_thickness": "2 in", "wall_thickness": "2 in"})
    assert verdict(build, "aisle_height") == said


def test_headroom_is_less_under_a_hood_that_reaches_over_the_aisle() -> None:
    griddle = counter("street", size="60x24x36")
    hood = thing("street", "20 in", "60x30x6", kind="hood", above="75 in")
    assert inches(cart({"griddle": griddle, "hood": hood}), "headroom") == pytest.approx(75)
    shallow = {**hood, "depth": "24 in"}
    assert inches(cart({"griddle": griddle, "hood": shallow}), "headroom") == pytest.approx(82)


def test_a_hood_over_two_things_together_is_not_over_the_aisle() -> None:
    left, right = counter("street", size="30x24x36"), counter("street", "50 in", "30x24x36")
    hood = thing("street", "20 in", "60x24x6", kind="hood", above="75 in")
    assert inches(cart({"left": left, "right": right, "hood": hood}), "headroom") == pytest.approx(82)
    gap = {**right, "back": "51 in"}
    assert inches(cart({"left": left, "right": gap, "hood": hood}), "headroom") == pytest.approx(75)


@pytest.mark.parametrize(("stature", "said"), [("79 in", "pass"), ("79.25 in", "fail")])
def test_the_tallest_stands_upright_with_shoes_and_a_hat(stature: str, said: str) -> None:
    build = cart({}, people__short={"stature": "60 in"}, people__tall={"stature": stature})
    assert verdict(build, "stand_upright") == said


@pytest.mark.parametrize(("depth", "said"), [(12, "pass"), (12.25, "fail")])
def test_one_walks_past_another(depth: float, said: str) -> None:
    items = {"curb": counter(size=f"60x{depth}x36"), "street": counter("street")}
    assert verdict(cart(items, day={"crew": 2}), "two_in_aisle") == said
    assert verdict(cart(items, day={"crew": 1}), "two_in_aisle") == "not asked"
    assert findings(cart(items))["two_in_aisle"].missing == ("day.crew",)


@pytest.mark.parametrize(
    ("depth", "clear", "said"), [(27, 24, "pass"), (27.25, 23.75, "fail"), (21, 30, "pass")]
)
def test_a_doorway_is_as_wide_as_what_stands_in_it_leaves(depth: float, clear: float, said: str) -> None:
    build = cart({"a": counter("curb", "82 in", f"60x{depth}x36")}, openings={"way_in": DOOR})
    assert inches(build, "doorways.way_in.clear_width") == pytest.approx(clear)
    assert verdict(build, "doorway.way_in") == said


@pytest.mark.parametrize(("back", "said"), [("58 in", "pass"), ("59 in", "fail")])
def test_what_stands_24_in_inside_a_door_leaves_it_clear(back: str, said: str) -> None:
    build = cart({"a": thing("centre", back, "60x60x36", kind="counter")}, openings={"way_in": DOOR})
    assert verdict(build, "doorway.way_in") == said


def test_a_doorway_between_two_things_is_their_gap() -> None:
    left = thing("centre", "130 in", "10x10x36", kind="stock", off_centre="0 in")
    build = cart({"left": left}, openings={"way_in": DOOR})
    assert inches(build, "doorways.way_in.clear_width") == pytest.approx(10)


def test_a_wholly_blocked_doorway_has_no_width() -> None:
    build = cart({"a": thing("centre", "130 in", "10x60x36", kind="stock")}, openings={"way_in": DOOR})
    assert inches(build, "doorways.way_in.clear_width") == 0
    assert verdict(build, "doorway.way_in") == "fail"


@pytest.mark.parametrize(("height", "said"), [(40, "pass"), (41, "fail")])
def test_nothing_stands_above_the_sill_of_a_hatch(height: float, said: str) -> None:
    build = cart({"a": counter(size=f"30x20x{height}")}, openings={"hatch": HATCH})
    assert verdict(build, "before_hatch.hatch") == said


def test_a_till_may_stand_before_a_hatch() -> None:
    till = thing("curb", "30 in", "10x7x9", kind="pos", above="36 in")
    build = cart({"a": counter(), "till": till}, openings={"hatch": HATCH})
    assert verdict(build, "before_hatch.hatch") == "pass"


@pytest.mark.parametrize(("back", "said"), [("92 in", "pass"), ("93 in", "fail")])
def test_a_door_that_opens_inwards_meets_what_stands_in_its_way(back: str, said: str) -> None:
    build = cart(
        {"a": thing("centre", back, "20x20x36", kind="stock")}, openings={"way_in": {**DOOR, "opens": "in"}}
    )
    assert verdict(build, "door_leaf.way_in") == said
    assert verdict(cart({}, openings={"way_in": DOOR}), "door_leaf.way_in") == "not asked"


@pytest.mark.parametrize(("off", "said"), [("12 in", "pass"), ("12.25 in", "fail")])
def test_nobody_stands_in_a_thing(off: str, said: str) -> None:
    build = cart({"a": counter()}, people__cook={"back": "40 in", "off_centre": off})
    assert verdict(build, "people_clear.cook") == said
