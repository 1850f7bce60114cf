"""Things in the same room, things that stick out, and things outside."""

from __future__ import annotations

import pytest

from curbwright.build.cart import Build
from tests.sheets.fit.small_cart import SHELL, cart, counter, findings, inches, notes, thing, verdict


def pair(back: str) -> Build:
    """Two boxes along the street side; the first ends at 30 in."""
    first = thing("street", "10 in", "20x20x30", kind="stock")
    return cart({"a": first, "b": thing("street", back, "20x20x30", kind="stock")})


@pytest.mark.parametrize(("back", "said"), [("30 in", "pass"), ("30.25 in", "pass"), ("29.75 in", "fail")])
def test_two_things_side_by_side(back: str, said: str) -> None:
    assert verdict(pair(back), "overlap.a+b") == said


def test_the_gap_of_a_pair_is_the_largest_of_the_three() -> None:
    assert inches(pair("29 in"), "overlaps.a+b.gap") == pytest.approx(-1.0)
    assert inches(pair("33 in"), "overlaps.a+b.gap") == pytest.approx(3.0)
    assert inches(pair("33 in"), "tightest_gap") == pytest.approx(3.0)


@pytest.mark.parametrize(("above", "said"), [("30 in", "pass"), ("29 in", "fail")])
def test_one_thing_above_another(above: str, said: str) -> None:
    low = thing("street", "10 in", "20x20x30", kind="stock")
    assert verdict(cart({"a": low, "b": {**low, "above": above}}), "overlap.a+b") == said


@pytest.mark.parametrize(("height", "said"), [(35, "pass"), (35.5, "fail")])
def test_a_fridge_stands_under_a_counter_below_its_top(height: float, said: str) -> None:
    fridge = thing("curb", "30 in", f"24x22x{height}", kind="undercounter")
    assert verdict(cart({"counter": counter(), "fridge": fridge}), "overlap.counter+fridge") == said


def test_a_thing_stands_on_a_counter() -> None:
    urn = thing("curb", "30 in", "12x12x20", kind="coffee", above="36 in")
    assert verdict(cart({"counter": counter(), "urn": urn}), "overlap.counter+urn") == "pass"


def test_a_sink_may_hang_in_its_counter_but_not_in_a_fridge() -> None:
    sink = thing("curb", "30 in", "20x20x10", kind="hand_sink", above="26 in")
    assert verdict(cart({"counter": counter(), "sink": sink}), "overlap.counter+sink") == "not asked"
    fridge = thing("curb", "20 in", "60x24x34", kind="undercounter")
    assert verdict(cart({"fridge": fridge, "sink": sink}), "overlap.fridge+sink") == "fail"


def test_two_counters_cannot_share_their_tops() -> None:
    build = cart({"a": counter(), "b": counter(back="60 in")})
    assert verdict(build, "overlap.a+b") == "fail"


def test_small_things_and_fixed_parts_take_no_room() -> None:
    tap = thing("curb", "30 in", "8x9x12", kind="faucet", above="20 in")
    box = thing("curb", "20 in", "60x24x36", kind="stock")
    build = cart({"box": box, "tap": tap, "frame": thing("centre", "0 in", "70x144x24", kind="frame")})
    assert [id for id in findings(build) if id.startswith("overlap.")] == []


def test_every_overlap_is_written_and_only_the_tightest_of_the_rest() -> None:
    clear = {f"far{n}": thing("curb", f"{10 + 20 * n} in", "10x10x10", kind="stock") for n in range(5)}
    wrong = {f"near{n}": thing("street", f"{10 + 5 * n} in", "10x10x10", kind="stock") for n in range(4)}
    said = [
        one.verdict for id, one in findings(cart({**clear, **wrong})).items() if id.startswith("overlap.")
    ]
    assert sorted(said) == ["fail"] * 3 + ["pass"] * 3
    assert "36 pairs looked at, 3 overlap" in notes(cart({**clear, **wrong}))


def test_things_with_one_label_are_told_apart() -> None:
    box = thing("street", "10 in", "20x20x30", kind="stock", label="box")
    build = cart({"a": box, "b": {**box, "back": "25 in"}, "c": {**box, "back": "40 in"}})
    found = findings(build)
    assert found["overlap.a+b"].verdict == found["overlap.b+c"].verdict == "fail"


FACES = {
    "front": {"back": "1 in"}, "rear": {"back": "123 in"}, "roof": {"above": "53 in"},
    "deck": {"above": "-1 in"},
    "street": {"off_wall": "53 in"},
}  # fmt: skip


@pytest.mark.parametrize("face", FACES)
def test_what_sticks_out_of_a_face_is_named(face: str) -> None:
    box = {**thing("curb", "60 in", "20x20x30", kind="stock"), **FACES[face]}
    build = cart({"box": box})
    assert verdict(build, f"in_room.box+{face}") == "fail"
    assert inches(build, f"room.box+{face}.gap") == pytest.approx(-1.0)


def test_what_touches_every_face_is_inside() -> None:
    box = thing("curb", "2 in", "140x72x82", kind="stock")
    said = {id: one.verdict for id, one in findings(cart({"box": box})).items() if id.startswith("in_room.")}
    assert set(said.values()) == {"pass"}


def test_an_open_cart_has_edges_instead_of_walls() -> None:
    box = thing("curb", "125 in", "20x20x30", kind="stock")
    assert verdict(cart({"box": box}, shell=None), "in_room.box+rear") == "fail"
    assert verdict(cart({"box": {**box, "back": "124 in"}}, shell=None), "in_room.box+rear") == "pass"
    assert verdict(cart({"box": {**box, "height": "9 ft"}}, shell=None), "in_room.box+roof") == "not asked"


def test_a_duct_goes_through_the_roof_and_a_shelf_does_not() -> None:
    duct = thing("street", "60 in", "10x10x30", kind="duct", above="60 in")
    assert verdict(cart({"duct": duct}), "in_room.duct+roof") == "not asked"
    assert verdict(cart({"duct": {**duct, "kind": "shelf"}}), "in_room.duct+roof") == "fail"


@pytest.mark.parametrize(("back", "said"), [("92 in", "pass"), ("93 in", "fail")])
def test_a_hatch_stays_within_its_wall(back: str, said: str) -> None:
    hatch = {
        "wall": "curb",
        "kind": "hatch",
        "back": back,
        "above": "40 in",
        "width": "50 in",
        "height": "36 in",
    }
    build = cart({}, openings={"hatch": hatch})
    assert verdict(build, "in_room.hatch+rear") == said


@pytest.mark.parametrize(
    ("fields", "face", "said"),
    [
        ({"back": "-48 in"}, "bottle", "pass"),
        ({"back": "-49 in"}, "bottle", "fail"),
        ({"back": "144 in"}, "bottle", "fail"),
        ({"back": "60 in", "above": "-20 in", "off_centre": "32 in"}, "bottle", "pass"),
        ({"back": "60 in", "above": "-20 in", "off_centre": "33 in"}, "bottle", "fail"),
    ],
)
def test_what_is_outside_keeps_within_the_trailer(fields: dict[str, str], face: str, said: str) -> None:
    bottle = {**thing("centre", None, "12x12x18", kind="cylinder"), **fields}
    assert verdict(cart({"bottle": bottle}), f"overhang.{face}") == said


def test_what_has_no_place_yet_is_cannot_tell_and_never_a_pass() -> None:
    build = cart({"a": counter(), "b": counter("street", None)})
    found = findings(build)
    for id in ("overlap.b", "in_room.b", "aisle", "road_width", "road_length", "hand_sink_way"):
        assert found[id].verdict == "cannot tell", id
        assert found[id].missing == ("items.b.back",)


def test_what_has_no_size_is_said_to_be_left_out() -> None:
    goods = {"kind": "stock", "back": "40 in", "mass": "40 lb"}
    assert "Without a size, so not looked at: goods" in notes(cart({"goods": goods, "counter": counter()}))


def test_an_empty_cart_works_and_asks_only_for_the_crew() -> None:
    for shell, asked in ((SHELL, {"two_in_aisle": ("day.crew",)}), (None, {})):
        found = findings(cart({}, shell=shell))
        assert {id: one.missing for id, one in found.items() if one.verdict == "cannot tell"} == asked
        assert not any(one.verdict == "fail" for one in found.values())


def test_an_opening_without_a_place_is_cannot_tell_wherever_it_matters() -> None:
    hatch = {"wall": "curb", "kind": "hatch", "above": "40 in", "width": "50 in", "height": "36 in"}
    door = {"wall": "rear", "kind": "door", "width": "30 in", "height": "74 in", "opens": "in"}
    bottle = thing("centre", "-20 in", "12x12x18", kind="cylinder")
    found = findings(cart({"bottle": bottle, "a": counter()}, openings={"hatch": hatch, "way_in": door}))
    missing = {
        "before_hatch.hatch": "hatch.back", "in_room.hatch": "hatch.back", "sill_low.hatch": "hatch.back",
        "doorway.way_in": "way_in.off_centre", "door_leaf.way_in": "way_in.off_centre",
        "bottle_opening.bottle": "hatch.back", "deck_length": "hatch.back",
    }  # fmt: skip
    for id, field in missing.items():
        assert (found[id].verdict, found[id].missing[:1]) == ("cannot tell", (f"shell.openings.{field}",)), id
