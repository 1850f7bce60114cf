"""A box on the sheet: what it lets in, whether its machine keeps up, what it draws, both sides of a limit."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from curbwright.equations import cold as eq
from curbwright.units import read
from tests.figures.rework import rework
from tests.sheets.cold.carts import CART, CHEST, figures, notes, sheet

KELVIN = read("41 °F", "temperature")


def test_a_cart_without_a_box_says_so_and_has_no_figures() -> None:
    empty = sheet()
    assert empty.figures() == {}
    assert empty.all_gaps() == []
    assert "Nothing aboard keeps food cold." in empty.notes


@pytest.mark.parametrize("system", ["us", "si"])
@pytest.mark.parametrize(
    "more",
    [
        "",
        'ice = "5 lb"',
        'hot_faces = ["left", "top"]',
        'stands = "outside"\nsunny_faces = ["top", "front"]\ncondenser = "outside"',
        'set_point = "0 °F"\nloaded_temperature = "10 °F"',
        'set_point = "0 °F"\nloaded_temperature = "60 °F"',
        'capacity = "74 W"',
        'cooling = "thermo-electric"',
        'cooling = "ice"\nice = "20 lb"',
        'conductance = "0.7 W/K"',
    ],
)
def test_every_line_of_every_sort_of_box_can_be_reworked(more: str, system: str) -> None:
    report = rework(sheet(CHEST, more), system=system)
    assert report.faults == []
    assert len(report.reworked) > 100


def test_the_heat_let_in_is_the_sum_of_its_parts_worked_by_hand() -> None:
    found = figures(CHEST)
    inside, wall = (0.6096, 0.4064, 0.4064), 0.0508
    area = 2 * (inside[0] * inside[1] * 2 + inside[1] * inside[2])
    shape = area / wall + 0.54 * 4 * sum(inside) + 0.15 * 8 * wall
    outside = [size + 2 * wall for size in inside]
    out_area = 2 * (outside[0] * outside[1] * 2 + outside[1] * outside[2])
    walls = 1 / (1 / (0.024 * 1.1 * shape) + 1 / (7 * area) + 1 / (9 * out_area))
    gasket = 0.035 * 2 * (inside[0] + inside[1])
    difference = (104 - 36) * 5 / 9
    assert found["cold.chest.conductance"] == pytest.approx(walls + gasket)
    parts = (walls + gasket) * difference + found["cold.chest.opened.openings"] + found["cold.chest.product"]
    assert found["cold.chest.heat_gain"] == pytest.approx(parts)
    assert found["cold.heat_gain"] == found["cold.chest.heat_gain"]


def test_the_worst_hour_is_the_hottest_one_served() -> None:
    """95 °F at 14:00 and 15:00 standard time; it closes at 14:30, so that its own heat counts at 14:00."""
    found = figures(CHEST)
    assert found["cold.chest.hours.most"].origin.chosen == "14:00"  # type: ignore[union-attr]
    assert found["cold.design_day.cart_14"] == pytest.approx(read("104 °F", "temperature"))
    assert found["cold.design_day.cart_15"] == pytest.approx(read("95 °F", "temperature"))
    gains = [found[f"cold.chest.hours.gain_{hour:02d}"] for hour in range(1, 25)]
    assert max(gains) + found["cold.chest.product"] == pytest.approx(found["cold.chest.heat_gain"])


def test_without_daylight_saving_the_service_hours_fall_an_hour_later() -> None:
    found = figures(CHEST, "[pitch]\ndaylight_saving = false")
    assert found["cold.design_day.served_15"] == 1.0
    assert found["cold.design_day.served_10"] == 0.0
    assert figures(CHEST)["cold.design_day.served_10"] == 1.0


def test_a_cart_that_serves_past_midnight_is_served_before_and_after_it() -> None:
    late = CART.replace('"10:30"', '"19:00"').replace('"15:30"', '"02:00"')
    found = figures(CHEST, base=late)
    served = [float(found[f"cold.design_day.served_{hour:02d}"]) for hour in range(1, 25)]
    assert sum(served) == pytest.approx(7.0)
    # 18:00 to 01:00 standard time: half of the hours named 18:00 and 01:00, all of those between.
    assert served[0] == served[17] == 0.5
    assert served[18:24] == [1.0] * 6
    assert served[11] == 0.0


def test_an_open_cart_is_as_warm_as_the_air_outside() -> None:
    found = figures(CHEST, base=CART.replace('[shell]\nheight = "7 ft"\n', ""))
    assert found["cold.design_day.cart_14"] == found["cold.design_day.outside_14"]


def test_without_serving_hours_every_hour_counts_and_the_service_day_is_not_told() -> None:
    base = CART.partition("[day]")[0]
    closed = sheet(CHEST, base=base)
    found = closed.figures()
    assert found["cold.design_day.cart_05"] == pytest.approx(read("84 °F", "temperature"))
    assert "cold.chest.energy_service" not in found
    assert "cold.energy_service" not in found
    assert "cold.energy_day" in found
    assert any("every hour of the day" in note for note in notes(closed))


def test_the_energy_of_the_day_is_the_hours_added_up() -> None:
    found = figures(CHEST)
    hours = [f"{hour:02d}" for hour in range(1, 25)]
    power = sum(found[f"cold.chest.electricity.power_{hour}"] for hour in hours)
    loading = found["cold.chest.electricity.loading"]
    assert found["cold.chest.energy_day"] == pytest.approx(power * 3600 + loading)
    assert found["cold.chest.power_mean"] == pytest.approx(found["cold.chest.energy_day"] / 86400)
    assert found["cold.power_mean"] == found["cold.chest.power_mean"]
    served = sum(
        found[f"cold.chest.electricity.power_{hour}"] * found[f"cold.design_day.served_{hour}"]
        for hour in hours
    )
    assert found["cold.chest.energy_service"] == pytest.approx(served * 3600 + loading)
    assert 0 < found["cold.chest.duty_mean"] < found["cold.chest.duty_worst"] < 1


def test_two_boxes_add_up_and_one_unfinished_leaves_the_totals_out() -> None:
    second = CHEST.replace("items.chest", "items.drinks").replace('"62 lb"', '"30 lb"')
    both = figures(CHEST, second)
    assert both["cold.heat_gain"] == pytest.approx(
        both["cold.chest.heat_gain"] + both["cold.drinks.heat_gain"]
    )
    unfinished = sheet(CHEST, second.replace('running_power = "58 W"', ""))
    found = unfinished.figures()
    assert "cold.heat_gain" in found
    assert "cold.power_mean" not in found
    assert "cold.chest.power_mean" in found
    assert any(gap.path == "items.drinks.cold.running_power" for gap in unfinished.all_gaps())


@pytest.mark.parametrize(("watts", "fails"), [("58 W", False), ("25 W", True)])
def test_a_machine_too_weak_lets_the_box_float_past_its_set_point(watts: str, fails: bool) -> None:
    found = figures(CHEST.replace("58 W", watts))
    assert (found["cold.chest.reserve"] < 0) is fails
    assert (found["cold.chest.duty_worst"] > 1) is fails
    assert (found["cold.chest.air_worst"] > read("36 °F", "temperature")) is fails
    if fails:
        floating = found["cold.chest.floating"]
        through = found["cold.chest.conductance"] * (read("104 °F", "temperature") - floating)
        loaded = read("41 °F", "temperature")
        given_up = found["cold.chest.product"] * (loaded - floating) / (loaded - read("36 °F", "temperature"))
        past = found["cold.chest.past_walls"]
        assert through + given_up + past == pytest.approx(found["cold.chest.capacity"])


def test_a_box_of_drinks_put_in_warm_is_never_told_to_be_warmer_than_both_air_and_drinks() -> None:
    found = figures(CHEST, 'loaded_temperature = "75 °F"\nloaded_over = "30 min"')
    assert found["cold.chest.duty_worst"] > 3
    assert read("41 °F", "temperature") < found["cold.chest.air_worst"] < read("104 °F", "temperature")


def test_the_float_is_at_the_set_point_where_the_machine_just_keeps_up() -> None:
    enough = float(figures(CHEST)["cold.chest.heat_gain"]) / float(figures(CHEST)["cold.chest.capacity"]) * 58
    for watts, above in ((enough * 1.001, False), (enough * 0.999, True)):
        found = figures(CHEST.replace("58 W", f"{watts:.6f} W"))
        assert (found["cold.chest.floating"] > found["items.chest.cold.set_point"]) is above


@pytest.mark.parametrize(("set_point", "within"), [("37 °F", True), ("38 °F", False)])
def test_the_warmest_food_is_above_the_set_point_by_half_the_swing_and_the_warm_place(
    set_point: str, within: bool
) -> None:
    found = figures(CHEST, f'set_point = "{set_point}"')
    assert (found["cold.chest.warmest_food"] <= KELVIN * (1 + 1e-12)) is within


def test_openings_at_the_worst_never_take_more_than_the_air_there_is() -> None:
    door = CHEST.replace('"lid"', '"door"') + 'open_for = "5 min"\n'
    found = figures(door)
    assert found["cold.chest.opened.air_lost"] == pytest.approx(found["cold.chest.opened.free_air"], rel=1e-6)
    assert found["cold.chest.opened.air_lost"] <= found["cold.chest.opened.free_air"]
    lid = figures(CHEST)
    assert lid["cold.chest.opened.openings"] < found["cold.chest.opened.openings"]


def test_a_box_colder_outside_than_in_lets_no_heat_in_and_draws_its_standby_only() -> None:
    winter = '[pitch]\nhigh = "30 °F"\nlow = "10 °F"\ncart_rise = "0 °F"'
    found = figures(CHEST, winter)
    assert found["cold.chest.opened.openings"] == 0
    assert found["cold.chest.duty_mean"] == 0
    standby = found["items.chest.cold.standby"]
    loading = found["cold.chest.electricity.loading"]
    assert found["cold.chest.energy_day"] == pytest.approx(standby * 86400 + loading)


def test_a_hot_neighbour_and_the_sun_only_add() -> None:
    plain, hot = figures(CHEST), figures(CHEST, 'hot_faces = ["left"]\nhot_rise = "18 °F"')
    share = (0.4064 * 0.4064) / plain["cold.chest.area"]
    assert hot["cold.chest.heat_gain"] - plain["cold.chest.heat_gain"] == pytest.approx(
        plain["cold.chest.walls"] * share * 10, rel=1e-9
    )
    outside = figures(CHEST, 'stands = "outside"')
    sunny = figures(CHEST, 'stands = "outside"\nsunny_faces = ["top"]')
    assert sunny["cold.chest.heat_gain"] > outside["cold.chest.heat_gain"]
    white = figures(CHEST, 'stands = "outside"\nsunny_faces = ["top"]\ncolour = "light"')
    assert outside["cold.chest.heat_gain"] < white["cold.chest.heat_gain"] < sunny["cold.chest.heat_gain"]


def test_a_dark_top_in_the_sun_of_july_is_as_hot_as_published() -> None:
    """178 °F at 92.4 °F outside, 40° north, noon of 21 July: the published sol-air temperature of a roof."""
    sunny = figures(CHEST, 'stands = "outside"\nsunny_faces = ["top"]')
    noon = sunny["cold.chest.hours.sunny_top_12_sol_air"]
    assert noon == pytest.approx(read("177.7 °F", "temperature"), abs=0.3)
    assert "cold.chest.hours.sunny_top_02_sol_air" not in sunny


@pytest.mark.parametrize("better", ['insulation = "vacuum panel"', 'set_point = "40 °F"', 'openings = "2/h"'])
def test_what_should_help_helps(better: str) -> None:
    assert figures(CHEST, better)["cold.chest.energy_day"] < figures(CHEST)["cold.chest.energy_day"]


def test_twenty_four_degrees_hotter_nearly_doubles_the_electricity() -> None:
    """About 1.9 times between 86 and 110 °F round the box: more heat comes in, and each watt moves less."""
    few = 'loaded_mass = "0 lb"\nopenings = "0/h"\nstandby = "0 W"'
    mild, hot = (
        figures(CHEST, few, f'[pitch]\nhigh = "{air}"\nlow = "{air}"\ncart_rise = "0 °F"')
        for air in ("86 °F", "110 °F")
    )
    assert 1.6 < hot["cold.chest.energy_day"] / mild["cold.chest.energy_day"] < 2.2


def test_pull_down_is_the_solution_of_the_heat_balance_on_the_sheet() -> None:
    found = figures(CHEST)
    capacity, conductance = found["cold.chest.start.heat_capacity"], found["cold.chest.conductance"]
    around, taken = read("104 °F", "temperature"), found["cold.chest.capacity"]
    start, stop = found["items.chest.cold.warm_start"], found["items.chest.cold.set_point"]

    def reached(_: float, state: np.ndarray) -> float:
        return float(state[0]) - stop

    reached.terminal = True  # type: ignore[attr-defined]
    run = solve_ivp(
        lambda _, state: (conductance * (around - state) - taken) / capacity, (0, 1e6), [float(start)],
        events=reached, rtol=1e-9, atol=1e-9,
    )  # fmt: skip
    assert found["cold.chest.pull_down"] == pytest.approx(run.t_events[0][0], rel=1e-6)


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


def test_the_heat_given_off_in_the_cart_is_what_came_in_and_what_was_drawn() -> None:
    found = figures(CHEST)
    assert found["cold.chest.rejected"] == pytest.approx(
        found["cold.chest.hours.gain_14"] + found["cold.chest.electricity.power_14"]
    )
    assert "cold.chest.rejected" not in figures(CHEST, 'condenser = "outside"')


def test_the_equations_of_the_sheet_are_those_of_the_day() -> None:
    """The plate's conductances give the sheet's one conductance when nothing else is in the way."""
    whole, liner = 0.684, 8.0
    outer = eq.outer_conductance(whole, liner)
    assert 1 / (1 / outer + 1 / liner) == pytest.approx(whole)
