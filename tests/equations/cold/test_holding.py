"""Holding without power against a solver of differential equations, and the heat of melting of ice."""

from __future__ import annotations

import numpy as np
import pytest
from CoolProp.CoolProp import HAProps_Aux, PropsSI
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from curbwright import data
from curbwright.equations import cold as eq

ICE = {"mass": 3.0, "latent": 333600.0, "contact": 2.0, "melting": 273.15}
AIR, WALLS, CAPACITY = 308.15, 0.684, 41600.0


def beside_ice(start: float, steady: float, time: float) -> tuple[float, float]:
    """Temperature of the box and heat the ice can still take up, after a time, by stepping."""

    def rates(_: float, state: np.ndarray) -> list[float]:
        into_ice = ICE["contact"] * (state[0] - ICE["melting"])
        return [(WALLS * (AIR - state[0]) + steady - into_ice) / CAPACITY, -into_ice]

    run = solve_ivp(rates, (0, time), [start, ICE["mass"] * ICE["latent"]], rtol=1e-10, atol=1e-8)
    return float(run.y[0, -1]), float(run.y[1, -1])


@pytest.mark.parametrize("steady", [0.0, 6.0])
@pytest.mark.parametrize("time", [600.0, 7200.0, 30000.0])
def test_a_box_beside_ice_follows_the_two_balances(steady: float, time: float) -> None:
    settles = eq.temperature_beside_ice(
        walls=WALLS, surroundings=AIR, steady=steady, contact=ICE["contact"], melting=ICE["melting"]
    )
    both = eq.together(WALLS, ICE["contact"])
    warm, left = beside_ice(276.0, steady, time)
    after = eq.temperature_after(start=276.0, settles=settles, time=time, capacity=CAPACITY, conductance=both)
    unmelted = eq.ice_unmelted(
        time=time, **ICE, start=276.0, settles=settles, capacity=CAPACITY, conductance=both
    )
    assert after == pytest.approx(warm, abs=1e-6)
    assert unmelted == pytest.approx(left, abs=0.05)


def test_the_ice_is_gone_when_it_has_taken_up_its_heat_of_melting() -> None:
    settles = float(
        eq.temperature_beside_ice(walls=WALLS, surroundings=AIR, steady=0.0, contact=2.0, melting=273.15)
    )
    both = float(eq.together(WALLS, 2.0))
    gone = brentq(
        lambda time: float(
            eq.ice_unmelted(
                time=time, **ICE, start=276.0, settles=settles, capacity=CAPACITY, conductance=both
            )
        ),
        0.0, 1e6,
    )  # fmt: skip
    assert beside_ice(276.0, 0.0, gone)[1] == pytest.approx(0.0, abs=0.1)
    # Once settled, what comes through the walls is what the ice takes up.
    into_ice = eq.ice_power(contact=2.0, limit=settles, melting=273.15)
    assert into_ice == pytest.approx(eq.heat_through(conductance=WALLS, outside=AIR, inside=settles))


def test_without_contact_the_box_ends_at_the_air_around_and_with_much_at_the_ice() -> None:
    def settles(contact: float) -> float:
        return float(
            eq.temperature_beside_ice(
                walls=WALLS, surroundings=AIR, steady=0.0, contact=contact, melting=273.15
            )
        )

    assert settles(1e-12) == pytest.approx(eq.settles_at(surroundings=AIR, steady=0.0, conductance=WALLS))
    assert settles(1e9) == pytest.approx(273.15)
    assert settles(1.0) > settles(2.0) > settles(20.0)


def test_ten_kilograms_of_food_drift_to_the_limit_in_an_hour_and_a_half() -> None:
    food = eq.contents_heat_capacity(10.0, 3600.0)
    box = eq.box_heat_capacity(area=1.28, per_area=2300.0, contents=food)
    time = float(eq.time_warming(capacity=box, conductance=WALLS, low=275.37, high=278.15, settles=AIR))
    assert 1.4 < time / 3600 < 1.8


def test_heat_of_melting_is_sublimation_less_evaporation() -> None:
    """Sublimation from the slope of the vapour pressure over ice, evaporation from the reference water."""
    at, step = 273.16, 0.01
    low, high = (HAProps_Aux("p_ws", at - steps * step, 101325.0, 0.0)[0] for steps in (2, 1))
    slope = np.log(high / low) / step
    sublimation = 461.523 * (at - 1.5 * step) ** 2 * slope
    evaporation = PropsSI("H", "T", at, "Q", 1, "Water") - PropsSI("H", "T", at, "Q", 0, "Water")
    row = float(data.table("cold/packs").quantity("ice", "latent", "heat_content"))
    assert row == pytest.approx(sublimation - evaporation, rel=0.01)


def test_ice_for_a_time_is_melted_at_its_end() -> None:
    mass = eq.ice_needed(gain=20.0, time=36000.0, latent=333600.0, allowance=1.0)
    assert eq.melting_time(mass=mass, latent=333600.0, gain=20.0) == pytest.approx(36000.0)
    assert eq.melted_in(gain=20.0, time=36000.0, latent=333600.0) == pytest.approx(mass)
    assert eq.melting_rate(20.0, 333600.0) * 36000.0 == pytest.approx(mass)
