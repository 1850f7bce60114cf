"""What can burn beside, behind and above hot things; cold from hot; fryers; fuel bottles."""

from __future__ import annotations

import pytest

from curbwright.build.cart import Build
from tests.sheets.fit.small_cart import SHELL, Fields, cart, counter, findings, inches, notes, thing, verdict

STEEL: Fields = {**SHELL, "combustible": False}


def griddle(**fields: str | None) -> Fields:
    """A gas griddle on the street side, 36 in wide from 40 in, 6 in off its wall."""
    plate = {"clear_side": "6 in", "clear_rear": "6 in", "clear_above": "40 in", "off_wall": "6 in"}
    return {
        **thing("street", "40 in", "36x24x16", kind="griddle", above="20 in", connects=["gas"]),
        **plate,
        **fields,
    }


def beside(back: str, shell: Fields = SHELL, **fields: object) -> Build:
    box = {**thing("street", back, "20x24x36", kind="stock"), **fields}
    return cart({"griddle": griddle(), "box": box}, shell=shell)


@pytest.mark.parametrize(
    ("back", "clear", "said"), [("82 in", 6, "pass"), ("81.75 in", 5.75, "fail"), ("14 in", 6, "pass")]
)
def test_a_neighbour_that_burns_keeps_the_side_clearance(back: str, clear: float, said: str) -> None:
    assert inches(beside(back), "clear_side.griddle.clear") == pytest.approx(clear)
    assert verdict(beside(back), "clear_side.griddle") == said


def test_only_what_burns_at_its_height_in_its_row_counts() -> None:
    assert verdict(beside("76 in"), "clear_side.griddle") == "fail"
    assert verdict(beside("76 in", combustible=False), "clear_side.griddle") == "pass"
    assert verdict(beside("76 in", kind="undercounter"), "clear_side.griddle") == "pass"
    assert verdict(beside("76 in", kind="undercounter", combustible=True), "clear_side.griddle") == "fail"
    assert verdict(beside("76 in", height="20 in"), "clear_side.griddle") == "pass"
    assert verdict(beside("76 in", side="curb"), "clear_side.griddle") == "pass"


def test_a_thing_of_no_kind_is_taken_to_burn() -> None:
    assert verdict(beside("76 in", kind=None), "clear_side.griddle") == "fail"


@pytest.mark.parametrize(
    ("back", "said"), [("8 in", "pass"), ("7.75 in", "fail"), ("100 in", "pass"), ("100.25 in", "fail")]
)
def test_end_walls_that_burn_count_at_its_sides(back: str, said: str) -> None:
    assert verdict(cart({"griddle": griddle(back=back)}), "clear_side.griddle") == said
    assert verdict(cart({"griddle": griddle(back=back)}, shell=STEEL), "clear_side.griddle") == "not asked"


@pytest.mark.parametrize(("off", "said"), [("6 in", "pass"), ("5.75 in", "fail")])
def test_its_wall_counts_behind_it(off: str, said: str) -> None:
    assert verdict(cart({"griddle": griddle(off_wall=off)}), "clear_rear.griddle") == said
    assert verdict(cart({"griddle": griddle(off_wall=off)}, shell=STEEL), "clear_rear.griddle") == "not asked"


def test_goods_between_it_and_its_wall_count_behind_it() -> None:
    box = thing("street", "40 in", "20x2x36", kind="stock")
    assert inches(cart({"griddle": griddle(), "box": box}), "clear_rear.griddle.clear") == pytest.approx(4)


@pytest.mark.parametrize(("asks", "said"), [("46 in", "pass"), ("46.25 in", "fail")])
def test_the_roof_counts_above_it(asks: str, said: str) -> None:
    assert verdict(cart({"griddle": griddle(clear_above=asks)}), "clear_above.griddle") == said


def test_a_shelf_that_burns_counts_above_it_and_a_hood_takes_its_place() -> None:
    shelf = thing(
        "street", "40 in", "36x12x4", kind="shelf", above="60 in", off_wall="6 in", combustible=True
    )
    assert inches(cart({"griddle": griddle(), "shelf": shelf}), "clear_above.griddle.clear") == pytest.approx(
        60 + 3 - 36
    )
    hood = thing("street", "34 in", "48x36x20", kind="hood", above="58 in")
    build = cart({"griddle": griddle(clear_above=None), "hood": hood})
    assert verdict(build, "clear_above.griddle") == "not asked"
    assert "The hood is above it" in notes(build)


def test_a_plate_not_read_is_cannot_tell_for_its_own_side_only() -> None:
    found = findings(cart({"griddle": griddle(clear_rear=None)}))
    assert found["clear_rear.griddle"].missing == ("items.griddle.clear_rear",)
    assert found["clear_side.griddle"].verdict == found["clear_above.griddle"].verdict == "pass"


def test_a_typical_clearance_is_marked_as_assumed() -> None:
    build = cart({"griddle": {**griddle(), "like": "griddle-gas-36-3q", "clear_side": None}})
    required = findings(build)["clear_side.griddle"].provided
    assert required is not None
    origins = [one for one in required.origin.inputs.values() if one.id == "items.griddle.clear_side"]  # type: ignore[union-attr]
    assert [(one.origin.assumed, one.origin.how) for one in origins] == [(True, "memory")]


def test_a_heater_outside_keeps_its_distance_from_the_shell() -> None:
    heater = thing(
        "centre",
        "-20 in",
        "12x12x20",
        kind="water_heater",
        above="20 in",
        connects=["gas"],
        clear_rear="8 in",
    )
    assert verdict(cart({"heater": heater}), "clear_rear.heater") == "pass"
    assert verdict(cart({"heater": {**heater, "clear_rear": "8.25 in"}}), "clear_rear.heater") == "fail"


def test_an_electric_griddle_has_no_flame_and_still_needs_its_clearance() -> None:
    plate = {**griddle(), "connects": ["120 V"]}
    assert verdict(cart({"griddle": {**plate, "off_wall": "5 in"}}), "clear_rear.griddle") == "fail"
    assert verdict(cart({"griddle": plate}), "valve_forward.griddle") == "not asked"


@pytest.mark.parametrize(("back", "said"), [("100 in", "pass"), ("99 in", "fail")])
def test_cold_boxes_stand_away_from_hot_things(back: str, said: str) -> None:
    fridge = thing("street", back, "24x24x34", kind="undercounter", off_wall="6 in")
    assert verdict(cart({"griddle": griddle(), "fridge": fridge}), "cold_from_hot.fridge") == said


def test_cold_boxes_are_measured_in_all_three_directions() -> None:
    fridge = thing("curb", "85 in", "24x24x8", kind="undercounter")
    build = cart({"griddle": griddle(), "fridge": fridge})
    assert inches(build, "cold.fridge.clear") == pytest.approx((9**2 + 18**2 + 12**2) ** 0.5)


@pytest.mark.parametrize(("back", "said"), [("92 in", "pass"), ("91.75 in", "fail")])
def test_a_fryer_stands_away_from_open_flames(back: str, said: str) -> None:
    fryer = thing("street", back, "16x24x36", kind="fryer", connects=["gas"], off_wall="6 in")
    burner = {**griddle(), "kind": "burner"}
    assert verdict(cart({"burner": burner, "fryer": fryer}), "fryer_flame.fryer") == said
    assert verdict(cart({"a": fryer, "b": {**fryer, "back": "60 in"}}), "fryer_flame.a") == "not asked"


def bottle(back: str = "-20 in", **fields: object) -> Fields:
    return thing("centre", back, "12x12x18", **{"kind": "cylinder", **fields})


HATCH: Fields = {"wall": "front", "kind": "hatch", "off_centre": "20 in", "width": "12 in", "height": "36 in"}


@pytest.mark.parametrize(
    ("back", "said"), [("-12 in", "pass"), ("-11.75 in", "fail"), ("144 in", "pass"), ("40 in", "fail")]
)
def test_bottles_stand_outside(back: str, said: str) -> None:
    assert verdict(cart({"bottle": bottle(back)}), "bottle_outside.bottle") == said


def test_a_sealed_compartment_or_an_open_cart_is_outside() -> None:
    build = cart({"bottle": bottle("40 in", sealed_off=True)})
    assert verdict(build, "bottle_outside.bottle") == "not asked"
    assert any("sealed from the inside" in note for note in notes(build))
    assert verdict(cart({"bottle": bottle("40 in")}, shell=None), "bottle_outside.bottle") == "not asked"


@pytest.mark.parametrize(("back", "said"), [("-48 in", "pass"), ("-47.75 in", "fail")])
def test_bottles_keep_away_from_openings_that_begin_below_their_tops(back: str, said: str) -> None:
    hatch = {**HATCH, "off_centre": "0 in", "above": "10 in"}
    assert verdict(cart({"bottle": bottle(back)}, openings={"hatch": hatch}), "bottle_opening.bottle") == said
    high = {**hatch, "above": "18 in"}
    assert (
        verdict(cart({"bottle": bottle(back)}, openings={"hatch": high}), "bottle_opening.bottle")
        == "not asked"
    )


def test_openings_are_measured_level_to_their_nearest_edge() -> None:
    build = cart({"bottle": bottle(above="-10 in")}, openings={"hatch": {**HATCH, "above": "0 in"}})
    assert inches(build, "bottles.bottle.to_opening") == pytest.approx(8 * 2**0.5)


@pytest.mark.parametrize(("off", "said"), [("36 in", "pass"), ("35.75 in", "fail")])
def test_bottles_keep_away_from_sparks_outside(off: str, said: str) -> None:
    """Both stand ahead of the shell: 30 in to one side and 36 in to the other, less half of each."""
    generator = thing("centre", "-20 in", "12x0x18", kind="generator", off_centre=off)
    build = cart({"bottle": bottle(off_centre="-30 in"), "generator": generator})
    assert verdict(build, "bottle_ignition.bottle") == said


def test_a_wall_stands_between_a_bottle_and_what_burns_inside() -> None:
    assert verdict(cart({"bottle": bottle(), "griddle": griddle()}), "bottle_ignition.bottle") == "not asked"
    assert (
        verdict(cart({"bottle": bottle(), "griddle": griddle()}, shell=None), "bottle_ignition.bottle")
        == "fail"
    )


def test_a_counter_is_no_hot_thing() -> None:
    assert not any(
        id.startswith("clear_") and one.provided is not None
        for id, one in findings(cart({"a": counter()})).items()
    )
