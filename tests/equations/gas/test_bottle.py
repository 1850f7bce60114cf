"""A bottle: its wetted wall, its steady draw, and its course against a solver and reference properties."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

import numpy as np
import pytest
from CoolProp.CoolProp import PropsSI
from scipy.integrate import solve_ivp
from scipy.interpolate import CubicSpline

from curbwright import data, units
from curbwright.equations import gas as eq

INCH, POUND, BTU_H = 0.0254, 0.45359237, 0.29307107
FILM = 2.0 * 5.678263341
"""2 BTU/(h·ft2·°F)."""
HEAT = 21548 * 2326.0
SMALL = {
    "diameter": 12.2 * INCH, "contents": 20 * POUND, "shell": 18 * POUND,
    "shell_specific_heat": 0.115 * 4186.8, "wetted": 0.6, "film": FILM,
}  # fmt: skip
COLDEST = 243.518
"""Where propane has 10 psi on a gauge."""


def fahrenheit(degrees: float) -> float:
    return (degrees + 459.67) / 1.8


def draw(load: float) -> float:
    """Kilograms a second for a load in BTU/h."""
    return load * BTU_H / HEAT


# ---- the wall


def test_an_empty_bottle_wets_nothing_and_a_fuller_one_more() -> None:
    areas = [float(eq.wetted_area(volume, 0.31)) for volume in (0.0, 0.001, 0.005, 0.01, 0.02)]
    assert areas[0] == 0
    assert areas == sorted(areas)


def test_head_and_side_meet_without_a_step() -> None:
    head = np.pi * 0.31**3 / 24
    below, above = eq.wetted_area(head * (1 - 1e-9), 0.31), eq.wetted_area(head * (1 + 1e-9), 0.31)
    assert below == pytest.approx(above, rel=1e-8)
    assert above == pytest.approx(1.084 * 0.31**2, rel=1e-6)


def test_above_the_head_the_side_grows_as_that_of_a_cylinder() -> None:
    one, other = eq.wetted_area(0.010, 0.31), eq.wetted_area(0.015, 0.31)
    level = 0.005 / (np.pi * 0.31**2 / 4)
    assert other - one == pytest.approx(np.pi * 0.31 * level)


def test_equations_take_arrays() -> None:
    assert eq.wetted_area(np.array([0.001, 0.01]), 0.31).shape == (2,)
    assert eq.heat_in(film=10.0, area=np.array([0.1, 0.2]), ambient=290.0, liquid=250.0) == pytest.approx(
        [40.0, 80.0]
    )


# ---- the steady draw: the published reference table of usable draws, thousand BTU/h


@pytest.mark.parametrize(
    ("diameter", "left", "ambient", "usable"),
    [
        (12.2, 20, 0, 15), (12.2, 20, 20, 28), (12.2, 20, 40, 42), (12.2, 20, 60, 56), (12.2, 20, 80, 69),
        (12.2, 10, 0, 9), (12.2, 10, 40, 25), (12.2, 10, 80, 42),
        (12.2, 30, 20, 39), (12.2, 30, 60, 78), (12.2, 40, 20, 51), (12.2, 40, 60, 100),
    ],
)  # fmt: skip
def test_what_bottles_give_for_ever(diameter: float, left: float, ambient: float, usable: float) -> None:
    """Those were worked with the density of another temperature, and print two digits."""
    volume = eq.liquid_volume(left * POUND, float(eq.liquid_density(COLDEST)))
    area = eq.wetted_area(volume, diameter * INCH)
    heat = eq.heat_in(film=FILM, area=area, ambient=fahrenheit(ambient), liquid=COLDEST)
    given = eq.load_of(eq.steady_draw(heat, float(eq.latent_heat(COLDEST))), HEAT) / BTU_H / 1000
    assert given == pytest.approx(usable, abs=max(0.6, 0.03 * usable))


def test_the_published_table_is_what_the_file_holds_and_three_numbers_repeat_it() -> None:
    misses = []
    for row in data.table("gas/vaporisation_100lb"):
        for air in (0, 20, 40, 60, 70):
            printed = float(units.read(row[f"{air} °F"], "power"))
            worked = eq.table_draw(
                empty=364.8 * 0.52752792631, each=21.856 * 0.52752792631, step=POUND,
                mass=float(units.read(row["left"], "mass")), ambient=fahrenheit(air),
                coldest=fahrenheit(-44.65),
            )  # fmt: skip
            misses.append(worked / printed - 1)
    assert len(misses) == 50
    assert np.sqrt(np.mean(np.square(misses))) == pytest.approx(0.0167, abs=0.0001)
    assert max(map(abs, misses)) == pytest.approx(0.070, abs=0.001)


def test_the_published_table_lets_the_liquid_lose_all_pressure() -> None:
    assert eq.saturation_pressure(fahrenheit(-44.65)) == pytest.approx(101325.0, rel=0.03)


# ---- the course


GRID = np.linspace(215.0, 330.0, 400)
PROPERTIES: dict[str, Callable[[float], float]] = {
    "density": CubicSpline(GRID, PropsSI("D", "T", GRID, "Q", 0, "Propane")),
    "heat": CubicSpline(GRID, PropsSI("C", "T", GRID, "Q", 0, "Propane")),
    "latent": CubicSpline(
        GRID, PropsSI("H", "T", GRID, "Q", 1, "Propane") - PropsSI("H", "T", GRID, "Q", 0, "Propane")
    ),
}


def area_of(mass: float, liquid: float, diameter: float) -> float:
    """The same shape worked in another way: the head by its share, then a cylinder by its level."""
    volume, head = max(mass, 0.0) / PROPERTIES["density"](liquid), np.pi * diameter**3 / 24
    if volume <= head:
        return float(1.084 * diameter**2 * (volume / head) ** 0.6)
    return float(1.084 * diameter**2 + np.pi * diameter * (volume - head) / (np.pi * diameter**2 / 4))


def slope(time: float, state: Any, *, bottle: dict[str, float], ambient: float, drawn: float) -> list[float]:
    liquid, mass = state
    area = area_of(mass, liquid, bottle["diameter"])
    capacity = (
        mass * PROPERTIES["heat"](liquid) + bottle["wetted"] * bottle["shell"] * bottle["shell_specific_heat"]
    )
    heat = bottle["film"] * area * (ambient - liquid)
    return [float((heat - drawn * PROPERTIES["latent"](liquid)) / capacity), -drawn]


def fails_at(bottle: dict[str, float], ambient: float, drawn: float) -> float:
    """When a bottle is too cold or empty, by a solver with events and reference properties."""
    cold = partial(lambda time, state: state[0] - COLDEST)
    cold.terminal = True  # type: ignore[attr-defined]
    lifetime = bottle["contents"] / drawn
    found = solve_ivp(
        partial(slope, bottle=bottle, ambient=ambient, drawn=drawn), (0.0, lifetime * (1 - 1e-9)),
        [ambient, bottle["contents"]], events=cold, rtol=1e-8, atol=1e-8, max_step=60.0,
    )  # fmt: skip
    return float(found.t_events[0][0]) if len(found.t_events[0]) else lifetime


@pytest.mark.parametrize("ambient", [0, 20, 40, 70, 95])
@pytest.mark.parametrize("load", [15_000, 40_000, 60_000, 93_000])
def test_the_course_agrees_with_a_solver_on_reference_properties(ambient: float, load: float) -> None:
    found = eq.time_alone(**SMALL, ambient=fahrenheit(ambient), draw=draw(load), coldest=COLDEST)
    assert found == pytest.approx(fails_at(SMALL, fahrenheit(ambient), draw(load)), rel=3e-3, abs=5.0)


@pytest.mark.parametrize(("ambient", "load", "hours"), [
    (70, 60_000, 3.6), (40, 60_000, 2.2), (20, 60_000, 1.3),
    (70, 30_000, 11.2), (40, 30_000, 7.5), (20, 30_000, 3.8),
])  # fmt: skip
def test_hours_until_a_small_bottle_starves(ambient: float, load: float, hours: float) -> None:
    """Reference answers made apart, by Euler steps of a second."""
    found = eq.time_alone(**SMALL, ambient=fahrenheit(ambient), draw=draw(load), coldest=COLDEST)
    assert found / 3600 == pytest.approx(hours, abs=0.06)


def test_a_light_load_empties_the_bottle() -> None:
    found = eq.time_alone(**SMALL, ambient=fahrenheit(80), draw=draw(5000), coldest=COLDEST)
    assert found == pytest.approx(20 * POUND / draw(5000))


@pytest.mark.parametrize("load", [1, 10, 1000])
def test_the_lightest_load_is_worked_in_as_many_steps(load: float) -> None:
    """Steps of weeks stay stable: the liquid stays all but as warm as the air."""
    course = SMALL | {"ambient": fahrenheit(60), "draw": draw(load), "coldest": COLDEST}
    assert eq.time_alone(**course) == pytest.approx(20 * POUND / draw(load))
    lifetime = 20 * POUND / draw(load)
    assert eq.temperature_after(**course, time=lifetime / 2) == pytest.approx(
        fahrenheit(60), abs=load / 200 + 0.1
    )


def test_air_as_cold_as_the_limit_gives_nothing() -> None:
    assert eq.time_alone(**SMALL, ambient=COLDEST, draw=draw(5000), coldest=COLDEST) == 0
    assert eq.time_alone(**SMALL, ambient=COLDEST - 5, draw=draw(5000), coldest=COLDEST) == 0


@pytest.mark.parametrize(
    ("field", "factor"), [("film", 1.3), ("diameter", 1.1), ("contents", 1.2), ("shell", 1.5)]
)
def test_more_wall_air_gas_and_steel_hold_longer(field: str, factor: float) -> None:
    more = SMALL | {field: SMALL[field] * factor}
    hours = [eq.time_alone(**one, ambient=270.0, draw=draw(60_000), coldest=COLDEST) for one in (SMALL, more)]
    if field == "diameter":  # the same liquid stands lower in a wider bottle
        assert hours[0] != hours[1]
    else:
        assert hours[1] > hours[0]


def test_the_temperature_on_the_way() -> None:
    at = partial(eq.temperature_after, **SMALL, ambient=280.0, draw=draw(60_000), coldest=COLDEST)
    end = eq.time_alone(**SMALL, ambient=280.0, draw=draw(60_000), coldest=COLDEST)
    times = [0.0, 600.0, 3600.0, end - 1, end, end + 3600]
    course = [at(time=time) for time in times]
    assert course == sorted(course, reverse=True)
    assert course[0] == 280.0
    assert course[-3] == pytest.approx(COLDEST, abs=0.05)
    assert course[-2:] == [COLDEST, COLDEST]


@pytest.mark.parametrize("hour", [1, 2, 4])
def test_an_hour_of_the_transient_case(hour: int) -> None:
    """At 1 h 42.1 °F and 66.6 psi, at 2 h 27.8 °F, at 4 h 4.8 °F and 27.4 psi, by Euler steps of a second."""
    liquid = eq.temperature_after(
        **SMALL, ambient=fahrenheit(60), draw=draw(40_000), coldest=COLDEST, time=hour * 3600.0
    )
    expected = {1: (42.1, 66.6), 2: (27.8, 49.4), 4: (4.8, 27.4)}[hour]
    pressure = (float(eq.saturation_pressure(liquid)) - 101325) / 6894.757
    assert (liquid * 1.8 - 459.67, pressure) == pytest.approx(expected, abs=0.15)


# ---- two bottles


def with_reserve(ambient: float, drawn: float, first: dict[str, float], second: dict[str, float]) -> float:
    """When both fail: the first held at the limit gives what the air evaporates, the second the rest."""
    opened = fails_at(first, ambient, drawn)
    left = max(0.0, first["contents"] - drawn * opened)

    def given(mass: float) -> float:
        if mass <= 1e-9:
            return 0.0
        heat = first["film"] * area_of(mass, COLDEST, first["diameter"]) * (ambient - COLDEST)
        return float(min(drawn, heat / PROPERTIES["latent"](COLDEST)))

    def both(time: float, state: Any) -> list[float]:
        liquid, mass, beside = state
        helped = given(beside)
        own = slope(time, (liquid, mass), bottle=second, ambient=ambient, drawn=drawn - helped)
        return [*own, -helped]

    cold, gone = (lambda time, state: state[0] - COLDEST), (lambda time, state: state[1] - 1e-6)
    cold.terminal = gone.terminal = True  # type: ignore[attr-defined]
    found = solve_ivp(
        both, (0.0, 2 * (left + second["contents"]) / drawn), [ambient, second["contents"], left],
        events=[cold, gone], rtol=1e-7, atol=1e-7, max_step=30.0,
    )  # fmt: skip
    return opened + float(found.t[-1])


@pytest.mark.parametrize(
    ("ambient", "load"), [(75, 93_000), (20, 93_000), (40, 60_000), (20, 50_000), (80, 30_000)]
)
@pytest.mark.parametrize("larger", [False, True])
def test_a_change_over_agrees_with_a_solver(ambient: float, load: float, larger: bool) -> None:
    second = SMALL | ({"contents": 30 * POUND, "shell": 24 * POUND} if larger else {})
    found = eq.time_with_reserve(
        **SMALL, reserve_diameter=second["diameter"], reserve_contents=second["contents"],
        reserve_shell=second["shell"], ambient=fahrenheit(ambient), draw=draw(load), coldest=COLDEST,
    )  # fmt: skip
    assert found == pytest.approx(with_reserve(fahrenheit(ambient), draw(load), SMALL, second), rel=0.01)


def test_two_bottles_hold_longer_than_one_after_the_other_alone() -> None:
    """What the first still gives, cold as it is, helps the second."""
    course = SMALL | {"ambient": fahrenheit(20), "draw": draw(93_000), "coldest": COLDEST}
    pair = eq.time_with_reserve(
        **course, reserve_diameter=SMALL["diameter"], reserve_contents=SMALL["contents"],
        reserve_shell=SMALL["shell"],
    )  # fmt: skip
    assert pair > 2 * eq.time_alone(**course)


def test_where_the_first_runs_empty_the_second_is_alone() -> None:
    course = SMALL | {"ambient": fahrenheit(80), "draw": draw(5000), "coldest": COLDEST}
    pair = eq.time_with_reserve(
        **course, reserve_diameter=SMALL["diameter"], reserve_contents=SMALL["contents"],
        reserve_shell=SMALL["shell"],
    )  # fmt: skip
    assert pair == pytest.approx(40 * POUND / draw(5000), rel=1e-6)
