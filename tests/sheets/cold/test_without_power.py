"""Hold-over, with and without ice, against a solver of differential equations; ice chests."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from curbwright.figures import Figure
from curbwright.units import read
from tests.sheets.cold.carts import CHEST, figures, notes, sheet

AROUND = read("104 °F", "temperature")
LIMIT = read("41 °F", "temperature")


def stepped(found: dict[str, Figure], mass: float, contact: float) -> float:
    """Seconds to the limit by stepping the two balances until it is reached, ice or no ice."""
    capacity = float(found["cold.chest.without_power.heat_capacity"])
    walls, start = float(found["cold.chest.conductance"]), read("38 °F", "temperature")

    def rates(_: float, state: np.ndarray) -> list[float]:
        into_ice = contact * (state[0] - 273.15) if state[1] > 0 else 0.0
        return [(walls * (AROUND - state[0]) - into_ice) / capacity, -into_ice]

    def reached(_: float, state: np.ndarray) -> float:
        return float(state[0]) - LIMIT

    reached.terminal = True  # type: ignore[attr-defined]
    run = solve_ivp(
        rates, (0, 3e6), [start, mass * 333600.0], events=reached, rtol=1e-8, atol=1e-6, max_step=60.0
    )
    return float(run.t_events[0][0])


@pytest.mark.parametrize(
    ("ice", "contact"),
    [("0 lb", "2 W/K"), ("1 lb", "2 W/K"), ("5 lb", "2 W/K"), ("1 lb", "12 W/K"), ("10 lb", "12 W/K")],
)
def test_the_time_without_power_is_the_solution_of_the_heat_balance(ice: str, contact: str) -> None:
    """Badly coupled ice leaves the box before it is gone; well coupled ice holds it until it is."""
    found = figures(CHEST, f'ice = "{ice}"\nice_contact = "{contact}"')
    expected = stepped(found, read(ice, "mass"), read(contact, "heat_loss"))
    assert found["cold.chest.hold_over"] == pytest.approx(expected, rel=2e-3)


def test_more_ice_and_better_contact_hold_longer() -> None:
    times = [
        float(figures(CHEST, f'ice = "{ice}"\nice_contact = "{contact}"')["cold.chest.hold_over"])
        for ice, contact in (("0 lb", "2 W/K"), ("5 lb", "2 W/K"), ("5 lb", "12 W/K"), ("10 lb", "12 W/K"))
    ]
    assert times == sorted(times)
    assert times[0] < times[-1] / 4


def test_ice_that_cannot_take_the_heat_up_is_said_to() -> None:
    assert any("cannot take up heat" in note for note in notes(sheet(CHEST, 'ice = "5 lb"')))
    wet = sheet(CHEST, 'ice = "5 lb"\nice_contact = "20 W/K"')
    assert not any("cannot take up heat" in note for note in notes(wet))


def test_food_already_at_its_limit_has_no_time_at_all() -> None:
    assert figures(CHEST, 'set_point = "40 °F"')["cold.chest.hold_over"] == 0.0


def test_a_box_in_the_cold_never_passes_the_limit() -> None:
    winter = sheet(CHEST, '[pitch]\nhigh = "38 °F"\nlow = "20 °F"\ncart_rise = "0 °F"')
    assert "cold.chest.hold_over" not in winter.figures()
    assert any("never warms past" in note for note in notes(winter))


def test_the_limit_is_the_one_of_the_place() -> None:
    tighter = figures(CHEST, '[place]\ncold_limit = "4 °C"')
    assert tighter["cold.chest.hold_over"] < figures(CHEST)["cold.chest.hold_over"]


ICED = """
[items.chest]
kind = "ice_chest"
back = "0 in"
stock = "20 lb"
[items.chest.cold]
inside_width = "24 in"
inside_depth = "14 in"
inside_height = "14 in"
wall = "2 in"
loaded_temperature = "36 °F"
"""


@pytest.mark.parametrize(("contact", "holds"), [("2 W/K", False), ("20 W/K", True)])
def test_an_ice_chest_is_as_cold_as_its_ice_reaches(contact: str, holds: bool) -> None:
    found = figures(ICED, f'ice = "30 lb"\nice_contact = "{contact}"')
    beside = found["cold.chest.beside_ice"]
    into_ice = read(contact, "heat_loss") * (beside - 273.15)
    through = found["cold.chest.conductance"] * (AROUND - beside)
    assert through + found["cold.chest.onto_ice"] == pytest.approx(into_ice)
    assert (found["cold.chest.warmest_food"] <= LIMIT) is holds


def test_an_ice_chest_draws_nothing_and_says_how_much_ice_it_takes() -> None:
    found = figures(ICED, 'ice = "30 lb"\nice_contact = "20 W/K"')
    assert found["cold.power_mean"] == 0
    assert "cold.chest.duty_worst" not in found
    hours = found["cold.chest.heat_gain"] * 5 * 3600 / 333600.0
    assert found["cold.chest.ice_for_day"] == pytest.approx(1.5 * hours)
    assert found["cold.chest.ice_lasts"] == pytest.approx(
        read("30 lb", "mass") * 333600.0 / found["cold.chest.heat_gain"]
    )


def test_an_ice_chest_without_ice_is_as_warm_as_the_cart() -> None:
    empty = sheet(ICED)
    assert empty.figures()["cold.chest.warmest_food"] > AROUND
    assert any("no ice in it" in note for note in notes(empty))
