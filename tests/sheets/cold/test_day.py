"""The design day on the sheet: serving hours, the cart, the sun, a cold day."""

from __future__ import annotations

import pytest

from curbwright.units import read
from tests.sheets.cold.carts import CART, CHEST, figures, notes, sheet


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
