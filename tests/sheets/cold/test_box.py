"""A box on the sheet: what it lets in, whether its machine keeps up, what it draws, both sides of a limit."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from curbwright.equations import cold as eq
from curbwright.units import read
from tests.figures.rework import rework
from tests.sheets.cold.carts import CHEST, figures, sheet

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
