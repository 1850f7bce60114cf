"""Tanks, frost, doses and days: limits with their reasons, and independent ways to the same number."""

from __future__ import annotations

import math

import numpy as np
import pytest

from curbwright.equations import water as eq

GALLON, INCH = 0.003785411784, 0.0254


@pytest.mark.parametrize("share", [0.01, 0.25, 0.5, 0.77, 0.99])
def test_a_lying_cylinder_holds_what_the_library_says(share: float) -> None:
    from fluids.geometry import TANK

    diameter, length = 16 * INCH, 36 * INCH
    tank = TANK(D=diameter, L=length, horizontal=True)
    ours = eq.lying_volume(diameter=diameter, length=length, depth=share * diameter)
    assert float(ours) == pytest.approx(tank.V_from_h(share * diameter), rel=1e-9)


def test_a_quarter_of_the_depth_of_a_lying_cylinder_is_less_than_a_quarter_of_its_volume() -> None:
    full = eq.lying_volume(diameter=0.4, length=1.0, depth=0.4)
    assert float(full) == pytest.approx(math.pi * 0.04)
    assert float(eq.lying_volume(diameter=0.4, length=1.0, depth=0.1) / full) == pytest.approx(
        0.1955, abs=1e-4
    )


def test_the_wedge_is_what_is_under_a_tilted_surface() -> None:
    reach, width, tilt = 0.7, 0.4, math.radians(2)
    along = np.linspace(0.0, reach, 20001)
    under = np.trapezoid(along * math.tan(tilt) * width, along)
    assert float(eq.tilt_wedge(reach=reach, width=width, tilt=tilt)) == pytest.approx(under, rel=1e-6)


def test_level_ground_keeps_no_water_from_the_outlet() -> None:
    assert float(eq.tilt_wedge(reach=0.7, width=0.4, tilt=0.0)) == 0.0


@pytest.mark.parametrize("fahrenheit", [33, 40, 60, 80, 100, 120, 140])
def test_water_is_as_dense_and_thick_as_a_library_of_fluids_has_it(fahrenheit: int) -> None:
    from CoolProp.CoolProp import PropsSI

    kelvin = (fahrenheit + 459.67) / 1.8
    density = eq.density(temperature=kelvin)
    assert density == pytest.approx(PropsSI("D", "T", kelvin, "P", 101325, "Water"), rel=5e-4)
    viscosity = float(eq.viscosity(temperature=kelvin, density=density))
    reference = PropsSI("V", "T", kelvin, "P", 101325, "Water") / density
    assert viscosity == pytest.approx(reference, rel=0.01 if fahrenheit >= 60 else 0.035)


def test_pipe_freezing_follows_the_lump_it_is_made_of() -> None:
    """Water cooling through insulation alone, stepped a second at a time, takes the same time."""
    bore, inner, outer, k = 0.012, 0.016, 0.04, 0.036
    density, heat, air = 1000.0, 4187.0, 266.15
    stored = density * heat * math.pi * (bore / 2) ** 2
    lost = 2 * math.pi * k / math.log(outer / inner)
    water, seconds = 283.15, 0
    while water > 273.15:
        water -= lost * (water - air) / stored
        seconds += 1
    ours = eq.pipe_freeze_time(
        bore=bore,
        inner=inner,
        outer=outer,
        conductivity=k,
        density=density,
        specific_heat=heat,
        water=283.15,
        air=air,
        freezing=273.15,
    )
    assert float(ours) == pytest.approx(seconds, rel=2e-3)


def test_a_pipe_without_insulation_has_no_time_at_all() -> None:
    bare = eq.pipe_freeze_time(
        bore=0.012, inner=0.016, outer=0.016, conductivity=0.036, density=1000.0, specific_heat=4187.0,
        water=283.15, air=266.15, freezing=273.15,
    )  # fmt: skip
    assert float(bare) == 0.0


def test_a_tank_freezes_when_its_temperature_says_so() -> None:
    tank = {"loss": 7.4, "mass": 113.5, "specific_heat": 4186.8}
    time = eq.tank_cooling_time(water=288.7, air=266.5, freezing=273.15, **tank)
    assert float(eq.tank_temperature(start=288.7, air=266.5, time=time, **tank)) == pytest.approx(273.15)
    assert float(eq.tank_temperature(start=288.7, air=266.5, time=0.0, **tank)) == 288.7
    assert float(eq.tank_temperature(start=288.7, air=266.5, time=1e9, **tank)) == pytest.approx(266.5)


def test_a_dose_and_the_concentration_it_gives_undo_each_other() -> None:
    bleach = eq.dose(concentration=50e-6, volume=30 * GALLON, strength=0.0825)
    assert eq.concentration(bleach=bleach, volume=30 * GALLON, strength=0.0825) == pytest.approx(50e-6)


def test_a_day_of_random_washes_spreads_as_a_simulation_does() -> None:
    generator = np.random.default_rng(20)
    number, each, variation, fixed = 84.0, 1.0 / 3, 0.5, 44.64
    counts = generator.poisson(number, 20000)
    shape = 1 / variation**2
    days = fixed + np.array([generator.gamma(shape, each / shape, count).sum() for count in counts])
    mean = eq.day_mean(fixed=fixed, number=number, each=each)
    spread = eq.day_spread(number=number, each=each, variation=variation)
    assert days.mean() == pytest.approx(mean, rel=2e-3)
    assert days.std() == pytest.approx(spread, rel=0.02)
    assert np.quantile(days, 0.95) == pytest.approx(eq.ninety_five(mean=mean, spread=spread), rel=5e-3)


@pytest.mark.parametrize(("hours", "washes"), [(0.5, 1), (4.0, 1), (4.01, 2), (8.0, 2), (8.5, 3)])
def test_utensils_are_washed_for_every_four_hours_begun(hours: float, washes: int) -> None:
    assert eq.washes_needed(time=hours * 3600, each=4 * 3600.0) == washes


def test_no_more_is_lost_on_the_road_than_was_aboard() -> None:
    assert float(eq.lost(volume=0.1, flow=1e-4, time=1e6)) == 0.1
    assert float(eq.lost(volume=0.1, flow=1e-4, time=0.0)) == 0.0


def test_a_small_spout_still_needs_an_inch_and_a_wide_one_twice_its_bore() -> None:
    gap = {"times": 2, "least": INCH}
    assert float(eq.air_gap(bore=0.25 * INCH, **gap)) == INCH
    assert float(eq.air_gap(bore=0.75 * INCH, **gap)) == pytest.approx(1.5 * INCH)
