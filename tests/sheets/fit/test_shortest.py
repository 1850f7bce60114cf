"""The shortest deck: by hand, and never longer than an arrangement that fits."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from curbwright.build.cart import Build
from tests.sheets.fit.small_cart import SHELL, Fields, cart, counter, findings, inches, notes, thing, verdict

STEEL: Fields = {**SHELL, "combustible": False}


def row(*widths: float, side: str = "street", shell: Fields | None = STEEL) -> Build:
    """Boxes of these widths along one wall, drawn one after the other from 2 in whether they fit or not."""
    items, back = {}, 2.0
    for number, width in enumerate(widths):
        items[f"box{number}"] = thing(side, f"{back} in", f"{width}x20x30", kind="stock")
        back += width
    return cart(items, shell=shell)


@pytest.mark.parametrize(("last", "short", "said"), [(40, 0, "pass"), (30, -10, "pass"), (62, 22, "fail")])
def test_a_row_is_the_sum_of_its_widths_and_the_deck_adds_its_walls(
    last: float, short: float, said: str
) -> None:
    build = row(60, 40, last)
    assert inches(build, "deck.street_row") == pytest.approx(100 + last)
    assert inches(build, "shortest_deck") == pytest.approx(104 + last)
    assert inches(build, "deck_short_by") == pytest.approx(short, abs=1e-9)
    assert verdict(build, "deck_length") == said


def test_it_says_by_how_much_and_which_row() -> None:
    assert "The deck is too short by 22 in: the street row is the longest" in notes(row(60, 40, 62))
    assert not any("too short" in note for note in notes(row(60, 40, 40)))


def test_an_open_deck_has_no_walls_to_add() -> None:
    assert inches(row(60, 40, 62, shell=None), "shortest_deck") == pytest.approx(162)


def test_a_porch_before_the_shell_is_kept() -> None:
    shell = {**STEEL, "back": "20 in"}
    assert inches(row(60, 40, 62, shell=shell), "shortest_deck") == pytest.approx(20 + 162 + 4)


def test_the_longest_row_governs() -> None:
    build = cart(
        {"a": counter("street", size="90x20x36"), "b": counter("curb", size="100x20x36")}, shell=STEEL
    )
    assert inches(build, "deck.row") == pytest.approx(100)


def test_things_above_and_below_each_other_share_their_length() -> None:
    low = thing("street", "2 in", "60x20x34", kind="undercounter")
    high = thing("street", "2 in", "50x12x10", kind="shelf", above="60 in")
    assert inches(cart({"low": low, "high": high}, shell=STEEL), "deck.street_row") == pytest.approx(60)
    tall = thing("street", "62 in", "20x20x70", kind="stock")
    build = cart({"low": low, "high": high, "tall": tall}, shell=STEEL)
    assert inches(build, "deck.street_row") == pytest.approx(80)


def test_a_fridge_under_a_counter_and_a_sink_in_it_add_nothing() -> None:
    items = {
        "counter": counter("street", "2 in"),
        "fridge": thing("street", "2 in", "24x22x34", kind="undercounter"),
        "sink": thing("street", "40 in", "20x20x10", kind="hand_sink", above="26 in"),
    }
    assert inches(cart(items, shell=STEEL), "deck.street_row") == pytest.approx(60)


def hot(back: str, clear: str | None, **fields: object) -> Fields:
    return thing(
        "street", back, "36x24x36", **{"kind": "griddle", "clear_side": clear, "connects": ["gas"], **fields}
    )


@pytest.mark.parametrize(("kind", "length"), [("stock", 62), ("undercounter", 56)])
def test_a_hot_thing_keeps_its_clearance_from_a_neighbour_that_burns(kind: str, length: float) -> None:
    build = cart(
        {"hot": hot("2 in", "6 in"), "box": thing("street", "44 in", "20x20x34", kind=kind)}, shell=STEEL
    )
    assert inches(build, "deck.street_row") == pytest.approx(length)


def test_walls_that_burn_keep_it_away_from_the_ends() -> None:
    assert inches(cart({"hot": hot("8 in", "6 in")}), "deck.street_row") == pytest.approx(36 + 12)


def test_the_best_order_is_found_and_said() -> None:
    """A fridge at either end, which burns nothing, spares both clearances to the end walls."""
    fridge = thing("street", "60 in", "20x20x34", kind="undercounter")
    build = cart({"hot": hot("8 in", "6 in"), "a": fridge, "b": {**fridge, "back": "90 in"}})
    assert inches(build, "deck.street_row") == pytest.approx(76)
    assert any(note.startswith("street row, shortest in the order") for note in notes(build))


def test_a_door_takes_its_width_and_a_hatch_only_what_stands_above_its_sill() -> None:
    door = {"wall": "street", "kind": "door", "back": "100 in", "width": "30 in", "height": "74 in"}
    hatch = {**door, "kind": "hatch", "above": "40 in", "height": "30 in", "back": "2 in"}
    items = {"a": counter("street", "2 in")}
    assert inches(cart(items, shell=STEEL, openings={"door": door}), "deck.street_row") == pytest.approx(90)
    assert inches(cart(items, shell=STEEL, openings={"hatch": hatch}), "deck.street_row") == pytest.approx(60)
    tall = {"a": counter("street", "40 in", "60x24x50")}
    assert inches(cart(tall, shell=STEEL, openings={"hatch": hatch}), "deck.street_row") == pytest.approx(90)


def test_things_against_the_end_walls_take_their_depth_from_the_rows_they_reach_into() -> None:
    front = thing("front", None, "60x20x36", kind="stock")
    build = cart({"front": front, "a": thing("street", "22 in", "50x24x36", kind="stock")}, shell=STEEL)
    assert inches(build, "deck.street_row") == pytest.approx(70)
    narrow = cart({"front": {**front, "width": "20 in"}, "a": counter("street")}, shell=STEEL)
    assert inches(narrow, "deck.street_row") == pytest.approx(60)


def test_a_hot_thing_at_an_end_wall_asks_nothing_of_what_stands_in_front_of_it() -> None:
    griddle = {**hot("2 in", "6 in"), "side": "front", "back": None}
    build = cart({"griddle": griddle, "a": thing("street", "26 in", "50x30x36", kind="stock")}, shell=STEEL)
    assert inches(build, "deck.street_row") == pytest.approx(24 + 50)


def test_items_without_a_place_are_counted_so_that_it_can_be_said_before_anything_is_drawn() -> None:
    items = {f"box{n}": thing("street", None, "50x20x30", kind="stock") for n in range(3)}
    found = findings(cart(items, shell=STEEL))
    assert found["deck_length"].verdict == "fail"
    assert inches(cart(items, shell=STEEL), "deck_short_by") == pytest.approx(10)


def test_what_is_not_known_keeps_a_deck_that_seems_long_enough_from_passing() -> None:
    build = cart({"hot": hot("60 in", None), "box": thing("street", "2 in", "20x20x34", kind="stock")})
    assert findings(build)["deck_length"].missing == ("items.hot.clear_side",)
    unsized = {"a": counter(), "b": {"kind": "griddle", "side": "street", "mass": "90 lb"}}
    assert findings(cart(unsized))["deck_length"].missing == ("items.b.back",)


def test_what_is_too_long_without_it_fails_all_the_same() -> None:
    build = cart({"hot": hot("60 in", None), "box": thing("street", "2 in", "120x20x34", kind="stock")})
    assert verdict(build, "deck_length") == "fail"
    assert any("too short by at least" in note for note in notes(build))


# ---- never longer than an arrangement that fits

WIDTHS = st.lists(st.integers(8, 40), min_size=1, max_size=5)


@settings(max_examples=25, deadline=None)
@given(WIDTHS, st.lists(st.integers(0, 12), min_size=6, max_size=6))
def test_the_shortest_deck_is_never_longer_than_one_on_which_it_fits(
    widths: list[int], gaps: list[int]
) -> None:
    items, back = {}, 2
    for number, width in enumerate(widths):
        back += gaps[number]
        kind = ("stock", "undercounter", "griddle")[(number + width) % 3]
        plate = {"clear_side": "0 in", "connects": ["gas"]} if kind == "griddle" else {}
        items[f"box{number}"] = thing("street", f"{back} in", f"{width}x20x30", kind=kind, **plate)
        back += width
    length = back + gaps[5] + 2
    build = cart(items, trailer={"deck_length": f"{length} in"})
    overlaps = [one for id, one in findings(build).items() if id.startswith(("overlap.", "in_room."))]
    assert all(one.verdict == "pass" for one in overlaps)
    assert inches(build, "shortest_deck") <= length + 1e-6
    assert verdict(build, "deck_length") == "pass"
