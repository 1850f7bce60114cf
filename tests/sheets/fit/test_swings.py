"""Doors, drawers, lids, the floor in front of things, and room to get at them."""

from __future__ import annotations

import pytest

from curbwright.build.cart import Build
from tests.sheets.fit.small_cart import Fields, cart, counter, findings, inches, thing, verdict


def fridge(**fields: str) -> Fields:
    """A fridge 25 in deep on the street side: its face is 47 in from the curb-side wall."""
    return thing(
        "street", "30 in", "24x25x34", **{"kind": "undercounter", "opens": "door", "swing": "24 in", **fields}
    )


def opposite(depth: float, *, height: int = 36, above: str = "0 in", back: str = "20 in") -> Build:
    return cart(
        {"fridge": fridge(), "box": thing("curb", back, f"60x{depth}x{height}", kind="stock", above=above)}
    )


@pytest.mark.parametrize(
    ("depth", "spare", "said"), [(23, 0, "pass"), (22, 1, "pass"), (23.25, -0.25, "fail")]
)
def test_a_door_opens_as_far_as_what_stands_opposite_lets_it(depth: float, spare: float, said: str) -> None:
    assert inches(opposite(depth), "swings.fridge.spare") == pytest.approx(spare)
    assert verdict(opposite(depth), "swing.fridge") == said


def test_a_door_passes_over_under_and_beside_things() -> None:
    assert verdict(opposite(40, above="34 in"), "swing.fridge") == "pass"
    assert verdict(opposite(40, above="33 in"), "swing.fridge") == "fail"
    assert verdict(opposite(40, back="54 in"), "swing.fridge") == "pass"
    assert verdict(opposite(40, back="53 in"), "swing.fridge") == "fail"


@pytest.mark.parametrize(("swing", "said"), [("47 in", "pass"), ("48 in", "fail")])
def test_the_wall_opposite_counts(swing: str, said: str) -> None:
    assert verdict(cart({"fridge": fridge(swing=swing)}), "swing.fridge") == said


def test_a_thing_at_an_end_opens_along_the_cart() -> None:
    end = thing("front", None, "24x25x34", kind="undercounter", opens="door", swing="24 in")
    box = thing("centre", "50 in", "20x20x34", kind="stock")
    assert verdict(cart({"end": end, "box": box}), "swing.end") == "fail"
    assert verdict(cart({"end": end, "box": {**box, "back": "51 in"}}), "swing.end") == "pass"
    rear = {**end, "side": "rear"}
    assert verdict(cart({"end": rear, "box": {**box, "back": "73 in"}}), "swing.end") == "pass"
    assert verdict(cart({"end": rear, "box": {**box, "back": "74 in"}}), "swing.end") == "fail"


@pytest.mark.parametrize(("depth", "left", "said"), [(10, 13, "pass"), (10.25, 12.75, "fail")])
def test_the_aisle_past_an_open_door(depth: float, left: float, said: str) -> None:
    assert inches(opposite(depth), "swings.fridge.left") == pytest.approx(left)
    assert verdict(opposite(depth), "past_open_door.fridge") == said


def test_a_door_without_its_reach_or_its_side_cannot_be_told() -> None:
    found = findings(cart({"fridge": {**fridge(), "swing": None}, "other": {**fridge(), "back": "70 in"}}))
    assert (found["swing.fridge"].verdict, found["swing.other"].verdict) == ("cannot tell", "pass")
    assert found["swing.fridge"].missing == ("items.fridge.swing",)
    assert findings(cart({"fridge": {**fridge(), "side": "centre"}}))["swing.fridge"].missing == (
        "items.fridge.side",
    )


def chest(rise: str | None, **fields: str) -> Fields:
    return thing("curb", "30 in", "30x18x20", kind="cold_chest_12v", opens="lid", lid_rise=rise, **fields)


@pytest.mark.parametrize(("rise", "said"), [("15 in", "pass"), ("15.25 in", "fail")])
def test_a_lid_opens_below_the_counter_above_it(rise: str, said: str) -> None:
    build = cart({"counter": counter(), "chest": chest(rise)})
    assert inches(build, "lids.chest.clear") == pytest.approx(35 - 20)
    assert verdict(build, "lid.chest") == said


@pytest.mark.parametrize(("rise", "said"), [("62 in", "pass"), ("62.25 in", "fail")])
def test_a_lid_opens_below_the_roof(rise: str, said: str) -> None:
    assert verdict(cart({"chest": chest(rise)}), "lid.chest") == said
    assert verdict(cart({"chest": chest(rise)}, shell=None), "lid.chest") == "not asked"


def test_a_lid_without_its_rise_cannot_be_told() -> None:
    assert findings(cart({"chest": chest(None)}))["lid.chest"].missing == ("items.chest.lid_rise",)


@pytest.mark.parametrize(("asks", "said"), [("24 in", "pass"), ("24.25 in", "fail")])
def test_floor_in_front_is_measured_to_the_row_opposite(asks: str, said: str) -> None:
    build = cart({"a": counter("street"), "b": counter(front_clear=asks)})
    assert inches(build, "front.b.floor") == pytest.approx(24)
    assert verdict(build, "front_floor.b") == said


def test_floor_begins_where_the_row_stands_out_furthest() -> None:
    sink = thing("curb", "30 in", "12x15x13", kind="hand_sink", above="40 in", front_clear="48 in")
    assert inches(cart({"sink": sink}), "front.sink.floor") == pytest.approx(72 - 15)
    assert inches(cart({"sink": sink, "counter": counter()}), "front.sink.floor") == pytest.approx(72 - 24)


@pytest.mark.parametrize(("depth", "said"), [(35, "pass"), (35.25, "fail")])
def test_what_needs_service_has_12_in_before_it(depth: float, said: str) -> None:
    assert verdict(opposite(depth), "service.fridge") == said


def test_a_battery_in_an_open_bench_is_got_at_from_its_front() -> None:
    battery = thing("street", "30 in", "10x8x8", kind="battery", above="2 in")
    bench = thing("street", "20 in", "40x24x18", kind="bench")
    build = cart({"battery": battery, "bench": bench})
    assert inches(build, "service.battery.clear") == pytest.approx(72 - 8)
    shut = cart({"battery": battery, "box": {**bench, "kind": "stock", "off_wall": "8 in"}})
    assert verdict(shut, "service.battery") == "fail"
