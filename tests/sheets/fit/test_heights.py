"""Surfaces, reaches, serving sills, valves, and the hand sink."""

from __future__ import annotations

import pytest

from tests.sheets.fit.small_cart import Fields, cart, counter, findings, inches, notes, thing, verdict

HATCH: Fields = {"wall": "curb", "kind": "hatch", "back": "20 in", "width": "48 in", "height": "30 in"}


@pytest.mark.parametrize(
    ("height", "low", "high"),
    [(34, "pass", "pass"), (33.75, "fail", "pass"), (37, "pass", "pass"), (37.25, "pass", "fail")],
)
def test_a_surface_is_between_34_and_37_in(height: float, low: str, high: str) -> None:
    build = cart({"a": counter(size=f"60x24x{height}")})
    assert (verdict(build, "surface_low.a"), verdict(build, "surface_high.a")) == (low, high)


def test_the_working_surface_wins_over_the_top() -> None:
    build = cart(
        {"griddle": thing("street", "20 in", "36x24x16", kind="griddle", above="24 in", work_height="36 in")}
    )
    assert inches(build, "heights.griddle.height") == pytest.approx(36)


def test_the_rim_of_a_sink_must_be_given() -> None:
    """Its top may be a back splash: taking that for the rim would make room for a drain that is not there."""
    sink = thing("street", "20 in", "60x20x44", kind="sink3")
    assert findings(cart({"sink": sink}))["surface_low.sink"].missing == ("items.sink.work_height",)
    assert inches(cart({"sink": {**sink, "work_height": "36 in"}}), "heights.sink.height") == pytest.approx(
        36
    )


@pytest.mark.parametrize(("above", "said"), [("72.1 in", "pass"), ("72.25 in", "fail")])
def test_shelves_are_within_the_grip_of_a_small_woman(above: str, said: str) -> None:
    assert (
        verdict(
            cart({"shelf": thing("street", "20 in", "36x12x6", kind="shelf", above=above)}),
            "within_grip.shelf",
        )
        == said
    )


@pytest.mark.parametrize(
    ("above", "low", "high"),
    [
        ("36 in", "pass", "pass"),
        ("35 in", "fail", "pass"),
        ("44 in", "pass", "pass"),
        ("45 in", "pass", "fail"),
    ],
)
def test_a_serving_sill_inside(above: str, low: str, high: str) -> None:
    build = cart({}, openings={"hatch": {**HATCH, "above": above}})
    assert (verdict(build, "sill_low.hatch"), verdict(build, "sill_high.hatch")) == (low, high)


@pytest.mark.parametrize(("deck", "said"), [("12 in", "pass"), ("12.25 in", "fail")])
def test_a_serving_sill_outside(deck: str, said: str) -> None:
    build = cart({}, openings={"hatch": {**HATCH, "above": "36 in"}}, trailer={"deck_height": deck})
    assert verdict(build, "sill_outside.hatch") == said


@pytest.mark.parametrize(("deck", "said"), [("0 in", "pass"), ("1 in", "fail")])
def test_an_accessible_sill(deck: str, said: str) -> None:
    build = cart({}, openings={"hatch": {**HATCH, "above": "36 in"}}, trailer={"deck_height": deck})
    assert verdict(build, "sill_accessible") == said
    assert findings(build)["sill_accessible"].requirement.unconfirmed


@pytest.mark.parametrize(("shelf", "said"), [("12 in", "pass"), ("12.25 in", "fail"), ("-4 in", "pass")])
def test_a_shelf_below_the_sill_is_where_food_is_handed_over(shelf: str, said: str) -> None:
    hatch = {**HATCH, "above": "38 in", "shelf_above": shelf}
    build = cart({}, openings={"hatch": hatch, "high": {**HATCH, "wall": "street", "above": "40 in"}})
    assert verdict(build, "sill_accessible") == said
    assert inches(build, "serving.hatch.inside") == pytest.approx(38)


def test_a_window_without_a_shelf_is_not_served_through() -> None:
    window = {**HATCH, "kind": "window", "above": "50 in"}
    assert not [id for id in findings(cart({}, openings={"window": window})) if id.startswith("sill_high.")]
    shelf = {**window, "shelf_depth": "10 in"}
    assert verdict(cart({}, openings={"window": shelf}), "sill_high.window") == "fail"


@pytest.mark.parametrize(("depth", "said"), [(17.8, "pass"), (18, "fail")])
def test_the_reach_over_a_counter_to_a_shelf_outside(depth: float, said: str) -> None:
    hatch = {**HATCH, "above": "38 in", "shelf_depth": "12 in"}
    build = cart({"a": counter(size=f"60x{depth}x36")}, openings={"hatch": hatch})
    assert inches(build, "serving.hatch.hand_over") == pytest.approx(depth + 2 + 6)
    assert verdict(build, "hand_over.hatch") == said


def test_only_what_is_under_the_hatch_is_reached_over() -> None:
    hatch = {**HATCH, "above": "38 in", "shelf_depth": "12 in"}
    for wall in ("curb", "street"):
        items = {
            "here": counter(wall, size="20x10x36"), "beside": counter(wall, "68 in", "20x30x36"),
            "over": thing(wall, "40 in", "20x40x10", kind="stock", above="60 in"),
        }  # fmt: skip
        build = cart(items, openings={"hatch": {**hatch, "wall": wall}})
        assert inches(build, "serving.hatch.hand_over") == pytest.approx(10 + 2 + 6)
    assert inches(cart({}, openings={"hatch": hatch}), "serving.hatch.hand_over") == pytest.approx(8)


@pytest.mark.parametrize(
    ("field", "value", "id", "said"),
    [
        ("shutoff_from_face", "25.8 in", "valve_forward", "pass"),
        ("shutoff_from_face", "26 in", "valve_forward", "fail"),
        ("shutoff_from_face", None, "valve_forward", "cannot tell"),
        ("shutoff_above", "72.1 in", "valve_high", "pass"),
        ("shutoff_above", "72.5 in", "valve_high", "fail"),
        ("shutoff_above", None, "valve_high", "cannot tell"),
    ],
)
def test_a_shut_off_is_within_reach(field: str, value: str | None, id: str, said: str) -> None:
    burner = {**thing("street", "20 in", "12x24x13", kind="burner", connects=["gas"]), field: value}
    assert verdict(cart({"burner": burner}), f"{id}.burner") == said


def test_a_heater_in_a_sealed_compartment_is_shut_off_from_outside() -> None:
    heater = thing("street", "20 in", "12x12x12", kind="water_heater", connects=["gas"], sealed_off=True)
    assert verdict(cart({"heater": heater}), "valve_forward.heater") == "not asked"


def basin(back: str, **fields: str) -> Fields:
    return {
        **thing("street", back, "12x14x13", kind="hand_sink", above="24 in", work_height="36 in"),
        **fields,
    }


@pytest.mark.parametrize(("back", "said"), [("211 in", "pass"), ("211.25 in", "fail")])
def test_every_station_is_within_20_ft_of_a_hand_sink(back: str, said: str) -> None:
    """The middles stand 53 in apart across, and what is left along the cart."""
    items = {"prep": counter("curb", "18 in", "24x24x36"), "basin": basin(back)}
    build = cart(items, trailer={"deck_length": "30 ft"})
    assert inches(build, "hand_sink.longest") == pytest.approx(float(back.split()[0]) + 6 - 30 + 53)
    assert verdict(build, "hand_sink_way") == said


def test_the_nearest_of_two_hand_sinks_counts() -> None:
    items = {"prep": counter("street", "18 in", "24x14x36"), "far": basin("120 in"), "near": basin("50 in")}
    assert inches(cart(items), "hand_sink.longest") == pytest.approx(26)


def test_a_station_without_any_hand_sink_cannot_be_told() -> None:
    assert verdict(cart({"prep": counter()}), "hand_sink_way") == "cannot tell"
    assert (
        verdict(cart({"goods": thing("curb", "20 in", "20x20x20", kind="stock")}), "hand_sink_way")
        == "not asked"
    )


@pytest.mark.parametrize(
    ("back", "guard", "said"),
    [
        ("104 in", "0 in", "pass"),
        ("103.75 in", "0 in", "fail"),
        ("103.75 in", "6 in", "pass"),
        ("103.75 in", "5.75 in", "fail"),
    ],
)
def test_a_hand_sink_near_the_utensil_sink_has_a_guard(back: str, guard: str, said: str) -> None:
    sinks = thing("street", "20 in", "60x20x44", kind="sink3", work_height="36 in")
    assert verdict(cart({"sinks": sinks, "basin": basin(back, guard=guard)}), "splash.basin+sinks") == said
    other_way = cart({"sinks": {**sinks, "guard": guard}, "basin": basin(back)})
    assert verdict(other_way, "splash.basin+sinks") == said


def test_goods_are_not_splashed_food() -> None:
    goods = thing("street", "20 in", "60x20x44", kind="stock")
    assert verdict(cart({"goods": goods, "basin": basin("82 in")}), "splash.basin+goods") == "not asked"


def test_lamps_are_noted_by_the_overall_width() -> None:
    assert any("smaller set of lamps" in note for note in notes(cart({}, trailer={"overall_width": "79 in"})))
    assert any(
        "identification lamps are due" in note for note in notes(cart({}, trailer={"overall_width": "80 in"}))
    )
