"""The maker's table, the rated capacity and the watts: which wins, and what is read between the rows."""

from __future__ import annotations

import pytest

from curbwright.units import read
from tests.figures.rework import rework
from tests.sheets.cold.carts import CHEST, figures, notes, sheet

BOX = CHEST.replace('running_power = "58 W"', 'evaporator_below = "10 K"\nset_point = "0 °C"')
GRID = """
[items.chest.cold.points]
a = { evaporating = "-20 °C", condensing = "40 °C", capacity = "40 W", power = "30 W" }
b = { evaporating = "0 °C", condensing = "40 °C", capacity = "100 W", power = "50 W" }
c = { evaporating = "-20 °C", condensing = "70 °C", capacity = "25 W", power = "36 W" }
d = { evaporating = "0 °C", condensing = "70 °C", capacity = "70 W", power = "62 W" }
"""
BY_AIR = """
[items.chest.cold.points]
mild = { ambient = "20 °C", capacity = "90 W", power = "40 W" }
hot = { ambient = "50 °C", capacity = "60 W", power = "60 W" }
"""


def test_between_the_rows_on_straight_lines_evaporating_first() -> None:
    """Evaporating at -10 °C, half way; 104 °F in the cart, 5 °F of its own breath and 27 °F make 136 °F."""
    found = figures(BOX, GRID)
    share = ((136 - 32) / 1.8 - 40) / 30
    assert found["cold.chest.machine.capacity_14"] == pytest.approx(70 + (47.5 - 70) * share)
    assert found["cold.chest.machine.power_14"] == pytest.approx(40 + (49 - 40) * share)
    assert found["cold.chest.capacity"] == found["cold.chest.machine.capacity_14"]


def test_the_rule_is_shown_and_the_lines_can_be_reworked() -> None:
    worked = sheet(BOX, GRID)
    assert any("on straight lines" in note for note in notes(worked))
    assert rework(worked).faults == []


def test_a_row_of_the_table_is_met_exactly() -> None:
    air = '[pitch]\nhigh = "40 °C"\nlow = "40 °C"\ncart_rise = "0 K"'
    still = BOX.replace('"10 K"', '"20 K"') + 'condenser_rise = "0 K"\ncondenser_above = "0 K"\n'
    found = figures(still, GRID, air)
    assert found["cold.chest.capacity"] == 40.0


def test_by_the_air_alone_where_the_maker_gives_no_more() -> None:
    found = figures(BOX, BY_AIR)
    inlet = (104 + 5 - 32) / 1.8
    assert found["cold.chest.capacity"] == pytest.approx(90 - (inlet - 20))


def test_milder_than_the_mildest_row_is_that_row() -> None:
    cool = '[pitch]\nhigh = "70 °F"\nlow = "50 °F"\ncart_rise = "0 K"'
    found = figures(BOX, BY_AIR, cool)
    assert found["cold.chest.electricity.duty_05"] == pytest.approx(found["cold.chest.hours.gain_05"] / 90.0)


@pytest.mark.parametrize(
    ("rows", "says"),
    [
        (BY_AIR.replace('"50 °C"', '"35 °C"'), "ends below"),
        (GRID.replace('"-20 °C"', '"-5 °C"'), "ends above -10 °C evaporating"),
    ],
)
def test_harsher_than_the_table_is_not_told(rows: str, says: str) -> None:
    worked = sheet(BOX, rows)
    gap = next(gap for gap in worked.all_gaps() if says in gap.says)
    assert gap.path == "items.chest.cold.points"
    assert "cold.chest.duty_worst" not in worked.figures()
    assert "cold.chest.heat_gain" in worked.figures()


def test_the_table_wins_over_the_rating_and_that_over_the_watts() -> None:
    watts, rated = 'running_power = "58 W"', 'capacity = "74 W"\nrated_evaporating = "-10 °C"'
    by_watts = figures(BOX, watts)["cold.chest.capacity"]
    by_rating = figures(BOX, watts, rated)["cold.chest.capacity"]
    assert by_watts != by_rating
    assert (
        figures(BOX, watts, rated, GRID)["cold.chest.capacity"] == figures(BOX, GRID)["cold.chest.capacity"]
    )
    # At its rating point in evaporating, 136 °F against 50 °C condensing: the fit takes 10 % off.
    expected = 74 * (1 - 0.0135 * ((136 - 32) / 1.8 - 50))
    assert by_rating == pytest.approx(expected)


def test_from_the_watts_by_a_share_of_the_ideal_machine() -> None:
    found = figures(BOX, 'running_power = "58 W"')
    evaporating, condensing = 263.15, read("136 °F", "temperature")
    assert found["cold.chest.capacity"] == pytest.approx(58 * 0.35 * evaporating / (condensing - evaporating))


def test_air_of_its_own_for_the_condenser_saves_electricity() -> None:
    plain = figures(CHEST)["cold.chest.energy_day"]
    assert figures(CHEST, 'condenser = "outside"')["cold.chest.energy_day"] < plain
    assert figures(CHEST, 'condenser_rise = "30 °F"')["cold.chest.energy_day"] > plain


@pytest.mark.parametrize(("high", "holds"), [("70 °F", True), ("95 °F", False)])
def test_a_thermo_electric_box_gets_36_degrees_below_the_air_and_no_more(high: str, holds: bool) -> None:
    pitch = f'[pitch]\nhigh = "{high}"\nlow = "60 °F"\ncart_rise = "0 K"'
    shut = 'loaded_mass = "0 lb"\nopenings = "0/h"'
    found = figures(CHEST, 'cooling = "thermo-electric"', shut, pitch)
    lowest = read(high, "temperature") - 20
    assert found["cold.chest.lifted"] == pytest.approx(lowest)
    assert (found["cold.chest.warmest_food"] <= read("41 °F", "temperature")) is holds


MEAN = 'mean_power = "16 W"\nrated_air = "90 °F"'


def test_a_makers_mean_is_moved_by_the_heat_and_by_the_lift() -> None:
    found = figures(CHEST, MEAN)
    heat = (104 - 36) / (90 - 36)
    evaporating, above = 36 - 18, 5 + 27
    lift = (104 + above - evaporating) / (90 + above - evaporating)
    assert found["cold.chest.rating.power_14"] == pytest.approx(16 * heat * lift)
    still = figures(CHEST, MEAN, '[pitch]\nhigh = "90 °F"\nlow = "90 °F"\ncart_rise = "0 K"')
    assert still["cold.chest.rating.power_03"] == pytest.approx(16)


@pytest.mark.parametrize(
    ("mean", "way"), [("5 W", "from the heat let in"), ("16 W", "from its maker's mean")]
)
def test_the_larger_of_two_ways_counts_and_both_are_shown(mean: str, way: str) -> None:
    worked = sheet(CHEST, f'mean_power = "{mean}"\nrated_air = "90 °F"')
    found = worked.figures()
    assert found["cold.chest.energy_day"].origin.chosen == way  # type: ignore[union-attr]
    both = (found["cold.chest.electricity.energy_day"], found["cold.chest.rating.energy_day"])
    assert found["cold.chest.energy_day"] == max(both)
    assert found["cold.chest.duty_worst"] == max(
        found["cold.chest.duty_by_heat"], found["cold.chest.duty_by_mean"]
    )
    assert any("worked out twice" in note for note in notes(worked))
    assert rework(worked).faults == []


def test_a_label_of_a_day_is_the_same_as_its_mean() -> None:
    label = figures(CHEST, 'day_energy = "384 Wh"\nrated_air = "90 °F"')
    assert label["cold.chest.energy_day"] == pytest.approx(figures(CHEST, MEAN)["cold.chest.energy_day"])


def test_a_mean_without_its_air_temperature_is_not_told() -> None:
    worked = sheet(CHEST, 'mean_power = "16 W"')
    assert any(gap.path == "items.chest.cold.rated_air" for gap in worked.all_gaps())
    assert "cold.chest.energy_day" not in worked.figures()
