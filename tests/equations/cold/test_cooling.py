"""Compressors against a refrigerant cycle, on and off times against a solver of differential equations."""

from __future__ import annotations

import numpy as np
import pytest
from CoolProp.CoolProp import PropsSI
from scipy.integrate import solve_ivp

from curbwright.equations import cold as eq

BOX = {"capacity": 41600.0, "conductance": 0.684}


def cycle(evaporating: float, condensing: float, overall: float = 0.5) -> tuple[float, float]:
    """Performance and capacity per swept volume of a R134a cycle, suction and liquid saturated.

    ``overall`` is the share of the ideal compression work that the electricity does.
    """
    suction = PropsSI("H", "T", evaporating, "Q", 1, "R134a")
    entropy = PropsSI("S", "T", evaporating, "Q", 1, "R134a")
    pressure = PropsSI("P", "T", condensing, "Q", 0, "R134a")
    ideal = PropsSI("H", "P", pressure, "S", entropy, "R134a") - suction
    taken = suction - PropsSI("H", "T", condensing, "Q", 0, "R134a")
    return taken / (ideal / overall), taken * PropsSI("D", "T", evaporating, "Q", 1, "R134a")


@pytest.mark.parametrize("evaporating", [248.15, 258.15, 263.15, 268.15, 273.15])
@pytest.mark.parametrize("condensing", [313.15, 323.15, 328.15])
def test_a_share_of_the_ideal_machine_is_what_a_refrigerant_gives(
    evaporating: float, condensing: float
) -> None:
    """The default share of 35 % stays within a sixth of a cycle of R134a at an overall efficiency of half."""
    share = cycle(evaporating, condensing)[0] / float(eq.carnot_performance(evaporating, condensing))
    assert 0.30 <= share <= 0.43
    worked = eq.performance(share=0.35, evaporating=evaporating, condensing=condensing)
    assert worked == pytest.approx(cycle(evaporating, condensing)[0], rel=0.18)


@pytest.mark.parametrize("dead_space", [0.0, 0.02, 0.03])
@pytest.mark.parametrize("evaporating", [248.15, 258.15, 268.15, 273.15])
@pytest.mark.parametrize("condensing", [313.15, 323.15, 328.15])
def test_the_fit_moves_a_rated_capacity_as_the_cycle_does_within_15_percent(
    dead_space: float, evaporating: float, condensing: float
) -> None:
    """A piston fills the worse the higher the pressure ratio and the larger its dead space."""

    def taken(low: float, high: float) -> float:
        ratio = PropsSI("P", "T", high, "Q", 0, "R134a") / PropsSI("P", "T", low, "Q", 1, "R134a")
        return cycle(low, high)[1] * float(1 + dead_space - dead_space * ratio**0.9)

    expected = taken(evaporating, condensing) / taken(263.15, 323.15)
    worked = eq.rated_capacity_at(
        rated=1.0, rated_evaporating=263.15, rated_condensing=323.15, evaporating=evaporating,
        condensing=condensing,
    )  # fmt: skip
    assert worked == pytest.approx(expected, rel=0.15)


def test_at_its_rating_point_a_capacity_is_as_rated() -> None:
    worked = eq.rated_capacity_at(
        rated=74.0, rated_evaporating=260.0, rated_condensing=318.0, evaporating=260.0, condensing=318.0
    )
    assert worked == pytest.approx(74.0)


@pytest.mark.parametrize(("start", "stop", "taken"), [(303.15, 277.15, 50.0), (303.15, 277.15, 70.0)])
def test_pull_down_is_the_solution_of_the_heat_balance(start: float, stop: float, taken: float) -> None:
    air = 308.15
    floating = eq.floating_temperature(
        surroundings=air, capacity=taken, steady=0.0, conductance=BOX["conductance"]
    )
    closed = float(eq.time_running(**BOX, high=start, low=stop, floating=floating))

    def reached(_: float, state: np.ndarray) -> float:
        return float(state[0]) - stop

    reached.terminal = True  # type: ignore[attr-defined]
    run = solve_ivp(
        lambda _, state: (BOX["conductance"] * (air - state) - taken) / BOX["capacity"], (0, 2e5), [start],
        events=reached, rtol=1e-10, atol=1e-10,
    )  # fmt: skip
    assert closed == pytest.approx(run.t_events[0][0], rel=1e-7)


def test_warming_is_the_solution_of_the_heat_balance() -> None:
    closed = float(eq.time_warming(**BOX, low=275.37, high=278.15, settles=308.15))
    run = solve_ivp(
        lambda _, state: BOX["conductance"] * (308.15 - state) / BOX["capacity"], (0, closed), [275.37],
        rtol=1e-10, atol=1e-10,
    )  # fmt: skip
    assert run.y[0, -1] == pytest.approx(278.15, abs=1e-7)


def test_over_a_narrow_band_the_duty_is_load_over_capacity() -> None:
    floating = eq.floating_temperature(surroundings=308.15, capacity=70.0, steady=0.0, conductance=0.684)
    running = eq.time_running(**BOX, high=277.15, low=275.15, floating=floating)
    standing = eq.time_warming(**BOX, low=275.15, high=277.15, settles=308.15)
    load = eq.heat_through(conductance=0.684, outside=308.15, inside=276.15)
    assert eq.cycle_duty(running, standing) == pytest.approx(eq.duty(load, 70.0), rel=0.0005)


def test_a_box_floats_where_what_comes_in_is_what_is_taken_out() -> None:
    floating = eq.floating_temperature(surroundings=308.0, capacity=40.0, steady=9.0, conductance=1.2)
    assert eq.heat_through(conductance=1.2, outside=308.0, inside=floating) + 9.0 == pytest.approx(40.0)


def test_no_machine_runs_backwards_or_more_than_always() -> None:
    assert eq.duty_within(-5.0, 70.0) == 0.0
    assert eq.duty_within(35.0, 70.0) == 0.5
    assert eq.duty_within(99.0, 70.0) == 1.0
    assert eq.duty(99.0, 70.0) > 1.0


def test_between_two_rows_is_a_straight_line_through_both() -> None:
    row = {"low": 260.0, "high": 270.0, "from_low": 40.0, "from_high": 70.0}
    assert [eq.between(at=at, **row) for at in (260.0, 265.0, 270.0)] == [40.0, 55.0, 70.0]


def test_the_equations_take_arrays_of_boxes() -> None:
    condensing = np.array([313.15, 323.15, 333.15])
    many = eq.performance(share=0.35, evaporating=266.15, condensing=condensing)
    one = [eq.performance(share=0.35, evaporating=266.15, condensing=float(each)) for each in condensing]
    assert many == pytest.approx(one)
    assert eq.duty_within(np.array([-1.0, 20.0, 90.0]), 40.0) == pytest.approx([0.0, 0.5, 1.0])
