"""What the build file says of a box, and what it leaves out: sizes, food, walls, cut-out."""

from __future__ import annotations

import pytest

from curbwright.units import read
from tests.sheets.cold.carts import CHEST, figures, notes, sheet


def test_a_freezer_is_told_until_it_begins_to_thaw() -> None:
    found = figures(CHEST, 'set_point = "0 °F"\nloaded_temperature = "10 °F"\nfood = "ground beef"')
    assert found["cold.chest.contents.freezing"] == pytest.approx(271.45)
    assert "thaw" in found["cold.chest.hold_over"].name
    assert found["cold.chest.product"] > 0
    frozen = found["cold.chest.contents.frozen_specific_heat"]
    expected = frozen * read("62 lb", "mass") * 10 / 1.8
    assert found["cold.chest.contents.load"] == pytest.approx(expected)


def test_food_put_in_no_warmer_than_the_box_brings_nothing_in() -> None:
    cold = figures(CHEST, 'loaded_temperature = "36 °F"')
    assert cold["cold.chest.product"] == 0
    assert cold["cold.chest.electricity.loading"] == 0


def test_where_the_food_is_not_said_the_loading_is_what_usually_fits_and_the_hold_over_is_not_told() -> None:
    unsaid = sheet(CHEST.replace('stock = "62 lb"\n', ""))
    found = unsaid.figures()
    volume = found["cold.chest.volume"]
    assert found["cold.chest.contents.usual_mass"] == pytest.approx(volume * 0.5 * 900)
    assert "cold.chest.hold_over" not in found
    assert any(gap.path == "items.chest.cold.food_mass" for gap in unsaid.all_gaps())


def test_sizes_come_from_inside_or_from_the_volume_or_from_outside() -> None:
    outside = 'width = "30 in"\ndepth = "20 in"\nheight = "20 in"\n'
    head = '[items.chest]\nkind = "cold_chest_12v"\nback = "0 in"\nstock = "20 lb"\n'
    head += f"{outside}[items.chest.cold]\n"
    rest = 'wall = "2 in"\nrunning_power = "58 W"\n'
    by_walls = figures(head + rest)
    assert by_walls["cold.chest.width"] == pytest.approx(26 * 0.0254)
    by_volume = figures(head + rest + 'volume = "60 L"\n')
    assert by_volume["cold.chest.width"] == pytest.approx(0.060 / (16 * 0.0254) ** 2)
    assert by_volume["cold.chest.area"] < by_walls["cold.chest.area"]


@pytest.mark.parametrize(
    ("text", "path"),
    [
        (CHEST.replace('running_power = "58 W"', ""), "items.chest.cold.running_power"),
        (CHEST.replace('inside_height = "16 in"\n', ""), "items.chest.height"),
        (CHEST.partition("[items.chest.cold]")[0], "items.chest.cold"),
        (CHEST.replace('inside_depth = "16 in"\n', ""), "items.chest.depth"),
    ],
)  # fmt: skip
def test_what_is_missing_is_named(text: str, path: str) -> None:
    gaps = sheet(text).all_gaps()
    assert path in {gap.path for gap in gaps}


def test_walls_thicker_than_the_box_are_refused() -> None:
    text = """
    [items.chest]
    kind = "cold_chest_12v"
    back = "0 in"
    width = "30 in"
    depth = "16 in"
    height = "16 in"
    [items.chest.cold]
    wall = "8 in"
    running_power = "58 W"
    """
    gaps = sheet(text).all_gaps()
    assert any(gap.path == "items.chest.cold.wall" and "leave no inside" in gap.says for gap in gaps)


def test_the_measured_conductance_wins_over_the_walls() -> None:
    found = figures(CHEST, 'conductance = "0.7 W/K"')
    assert "cold.chest.shape_factor" not in found
    assert found["cold.chest.through_1"] == pytest.approx(0.7 * 68 / 1.8)


def test_a_cut_out_is_passed_on_with_its_caution() -> None:
    with_it = sheet(CHEST, 'cut_out = "10.4 V"')
    assert with_it.figures()["items.chest.cold.cut_out"] == 10.4
    assert any("Below that voltage" in note for note in notes(with_it))
