"""The fall of drains to the waste tank, and what the road allows."""

from __future__ import annotations

import pytest

from curbwright.build.cart import Build
from tests.sheets.fit.small_cart import SHELL, Fields, cart, findings, inches, notes, thing, verdict

SINK: Fields = thing("street", "20 in", "60x20x44", kind="sink3", work_height="36 in", bowl_depth="10 in")
TANK: Fields = thing("street", "90 in", "40x20x14", kind="tank_waste", above="-20 in")


def drained(outlet: str | None = None, **fields: object) -> Build:
    """A three-compartment sink 60 in along the cart from the middle of the tank it drains to."""
    return cart({"sink": {**SINK, **fields}, "tank": {**TANK, "outlet_above": outlet}})


@pytest.mark.parametrize(("inlet", "said"), [("15.75 in", "pass"), ("15.8 in", "fail")])
def test_a_drain_falls_a_quarter_inch_in_each_foot(inlet: str, said: str) -> None:
    """17 in where it leaves the trap; 60 in of run take 1 1/4 in."""
    build = drained(inlet)
    assert inches(build, "drains.sink.outlet") == pytest.approx(17)
    assert inches(build, "drains.sink.fall_needed") == pytest.approx(1.25)
    assert inches(build, "drains.sink.fall_available") == pytest.approx(17 - float(inlet.split()[0]))
    assert verdict(build, "drain_fall.sink") == said


def test_it_says_how_much_lower_the_tank_must_be() -> None:
    assert inches(drained("18 in"), "drains.sink.lower_by") == pytest.approx(2.25)
    assert "sink needs the inlet of tank 2 1/4 in lower" in notes(drained("18 in"))
    assert "fit.drains.sink.lower_by" not in findings(drained("10 in"))


def test_without_an_inlet_the_top_of_the_tank_is_taken_and_said() -> None:
    assert inches(drained(), "drains.sink.fall_available") == pytest.approx(17 + 6)
    assert any("taken at its top" in note for note in notes(drained()))


def test_the_run_of_the_pipe_and_the_outlet_may_be_given() -> None:
    assert inches(drained("10 in", drain_run="8 ft"), "drains.sink.fall_needed") == pytest.approx(2)
    assert inches(drained("10 in", outlet_above="20 in"), "drains.sink.fall_available") == pytest.approx(10)


def test_the_run_goes_along_and_across_to_the_nearest_tank() -> None:
    far = {**TANK, "back": "2 in", "side": "curb"}
    build = cart(
        {"sink": SINK, "far": {**far, "outlet_above": "0 in"}, "near": {**TANK, "outlet_above": "1 in"}}
    )
    assert inches(build, "drains.sink.run") == pytest.approx(60)
    alone = cart({"sink": SINK, "far": {**far, "outlet_above": "0 in"}})
    assert inches(alone, "drains.sink.run") == pytest.approx((50 - 22) + 52)


@pytest.mark.parametrize("field", ["work_height", "bowl_depth"])
def test_a_missing_height_is_cannot_tell(field: str) -> None:
    found = findings(drained("10 in", **{field: None}))
    assert found["drain_fall.sink"].missing == (f"items.sink.{field}",)


def test_no_waste_tank_is_cannot_tell() -> None:
    assert verdict(cart({"sink": SINK}), "drain_fall.sink") == "cannot tell"


def test_a_drained_thing_that_is_no_sink_gives_its_own_outlet() -> None:
    table = thing("street", "20 in", "30x24x34", kind="steam_table", connects=["drain"])
    build = cart({"table": table, "tank": {**TANK, "outlet_above": "1 in"}})
    assert findings(build)["drain_fall.table"].missing == ("items.table.outlet_above",)
    given = cart({"table": {**table, "outlet_above": "20 in"}, "tank": {**TANK, "outlet_above": "1 in"}})
    assert inches(given, "drains.table.fall_available") == pytest.approx(19)
    assert verdict(given, "drain_backup.table") == "not asked"


@pytest.mark.parametrize(("above", "said"), [("12 in", "pass"), ("12.25 in", "fail")])
def test_a_full_tank_stands_below_every_bowl(above: str, said: str) -> None:
    """The bowl ends at 26 in; the tank is 14 in high."""
    build = cart({"sink": SINK, "tank": {**TANK, "above": above, "outlet_above": "0 in"}})
    assert verdict(build, "drain_backup.sink") == said


def road(**trailer: str) -> Build:
    return cart(
        {}, trailer=trailer, place={"width_limit": "96 in", "height_limit": "13 ft", "length_limit": "16 ft"}
    )


@pytest.mark.parametrize(("width", "said"), [("96 in", "pass"), ("96.25 in", "fail")])
def test_the_width_over_the_fenders(width: str, said: str) -> None:
    assert verdict(road(overall_width=width), "road_width") == said


def test_without_the_fenders_only_too_wide_a_deck_can_be_told() -> None:
    place = {"width_limit": "96 in"}
    unknown = cart({}, trailer={"overall_width": None}, place=place)  # type: ignore[dict-item]
    assert findings(unknown)["road_width"].missing == ("trailer.overall_width",)
    wide = cart({}, trailer={"overall_width": None, "deck_width": "98 in"}, place=place)  # type: ignore[dict-item]
    assert verdict(wide, "road_width") == "fail"


def test_what_hangs_out_at_one_side_adds_its_reach_once() -> None:
    locker = thing("centre", "60 in", "20x10x20", kind="stock", off_centre="57 in", above="20 in")
    assert inches(cart({"locker": locker}), "overall_width") == pytest.approx(48 + 62)


@pytest.mark.parametrize(("deck", "said"), [("72 in", "pass"), ("72.25 in", "fail")])
def test_the_height_over_the_road(deck: str, said: str) -> None:
    assert verdict(road(deck_height=deck), "road_height") == said


def test_what_stands_on_the_roof_adds_to_the_height() -> None:
    fan = thing("centre", "60 in", "20x20x20", kind="fan_120v", above="84 in")
    assert inches(cart({"fan": fan}), "overall_height") == pytest.approx(24 + 84 + 20)
    assert inches(cart({}, shell=None), "overall_height") == pytest.approx(24)


@pytest.mark.parametrize(("ball", "said"), [("48 in", "pass"), ("48.25 in", "fail")])
def test_the_length_from_the_ball(ball: str, said: str) -> None:
    assert verdict(road(ball_to_deck=ball), "road_length") == said


def test_what_hangs_behind_adds_to_the_length() -> None:
    rack = thing("centre", "144 in", "12x40x20", kind="stock")
    assert inches(cart({"rack": rack}), "overall_length") == pytest.approx(48 + 156)
    short = cart({}, shell={**SHELL, "length": "100 in"})
    assert inches(short, "overall_length") == pytest.approx(48 + 144)
