"""Food: the published tables of cooking, growth rates at their ends, cooling against a solver."""

from __future__ import annotations

import math

import pytest
from scipy.integrate import quad

from curbwright.equations import food as eq


def fahrenheit(degrees: float) -> float:
    return (degrees + 459.67) / 1.8


BEEF = [(130, 112 * 60), (140, 12 * 60), (145, 4 * 60), (150, 67), (151, 54), (155, 22)]
"""Rows of the printed table: whole minutes up to 145 °F and whole seconds above, rounded up."""


@pytest.mark.parametrize(("degrees", "printed"), BEEF)
def test_the_beef_table_is_the_line_rounded_up(degrees: float, printed: float) -> None:
    found = eq.dwell_at(
        reference_time=112 * 60, reference=fahrenheit(130), temperature=fahrenheit(degrees), slope=10 / 1.8
    )
    step = 60 if degrees <= 145 else 1
    assert found <= printed * 1.01
    assert printed - found <= step


CHICKEN = [(157, 31), (158, 24.5), (159, 19.4), (160, 15.3), (161, 12.1), (162, 9.6)]


@pytest.mark.parametrize(("degrees", "printed"), CHICKEN)
def test_the_chicken_table_is_a_line(degrees: float, printed: float) -> None:
    found = eq.dwell_at(
        reference_time=31, reference=fahrenheit(157), temperature=fahrenheit(degrees), slope=9.81 / 1.8
    )
    assert found == pytest.approx(printed, rel=0.01)


def test_kill_and_dwell_are_each_others_inverse() -> None:
    tenth = eq.decimal_time(650, 6.5)
    assert eq.kill(eq.dwell_for_kill(tenth, 5), tenth) == pytest.approx(5)


@pytest.mark.parametrize(
    ("rate", "least"),
    [
        (eq.salmonella_chicken_rate, 3.35),
        (eq.salmonella_meat_rate, 5.30841),
        (eq.ecoli_rate, 5.4235),
    ],
)
def test_nothing_grows_below_the_least_and_more_grows_warmer(rate: object, least: float) -> None:
    assert callable(rate)
    assert rate(least + 273.15 - 2) == 0
    found = [float(rate(celsius + 273.15)) for celsius in (8, 12, 20, 30)]
    assert 0 < found[0] < found[1] < found[2] < found[3]


def test_salmonella_doubles_in_about_twenty_minutes_at_blood_heat() -> None:
    doubling = math.log(2) / float(eq.salmonella_chicken_rate(310.15))
    assert 15 * 60 < doubling < 25 * 60


def test_cooling_sums_the_rate_as_a_solver_does() -> None:
    cardinal = {"best_rate": 5.64 / 3600, "least": 283.45, "best": 316.65, "most": 326.55}
    start, end, time = fahrenheit(135), fahrenheit(70), 7200.0
    exact, _ = quad(
        lambda t: eq.cardinal_rate(temperature=start + (end - start) * t / time, **cardinal), 0, time,
        points=[time * (start - 326.55) / (start - end)], limit=200,
    )  # fmt: skip
    found = eq.growth_while_cooling(start=start, end=end, time=time, **cardinal)
    assert found == pytest.approx(exact / math.log(10), rel=1e-3)


def test_a_time_within_the_lag_grows_nothing() -> None:
    assert eq.growth(rate=1e-4, time=3000.0, lag=3600.0) == 0
