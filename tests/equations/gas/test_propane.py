"""The fits to propane against the reference properties they were made from, between -60 and 150 °F."""

from __future__ import annotations

import pytest
from CoolProp.CoolProp import PropsSI

from curbwright.equations import gas as eq

BETWEEN = [222.0 + 1.3 * step for step in range(91)]
"""Temperatures that the fits were not made at."""


def reference(what: str, temperature: float, vapour: float = 0.0) -> float:
    return float(PropsSI(what, "T", temperature, "Q", vapour, "Propane"))


@pytest.mark.parametrize("temperature", BETWEEN)
def test_the_fits_are_as_close_as_their_source_says(temperature: float) -> None:
    assert eq.saturation_pressure(temperature) == pytest.approx(reference("P", temperature), rel=1e-4)
    assert eq.liquid_density(temperature) == pytest.approx(reference("D", temperature), rel=2.2e-4)
    assert eq.liquid_specific_heat(temperature) == pytest.approx(reference("C", temperature), rel=2e-4)
    latent = reference("H", temperature, 1.0) - reference("H", temperature)
    assert eq.latent_heat(temperature) == pytest.approx(latent, rel=2e-3)


@pytest.mark.parametrize("temperature", BETWEEN[::10])
def test_temperature_and_pressure_lead_back_to_each_other(temperature: float) -> None:
    pressure = float(eq.saturation_pressure(temperature))
    assert eq.saturation_temperature(pressure) == pytest.approx(temperature, abs=1e-5)
    assert eq.saturation_temperature(pressure) == pytest.approx(
        float(PropsSI("T", "P", pressure, "Q", 0, "Propane")), abs=0.01
    )


def test_a_bottle_filled_further_fills_with_its_liquid_sooner() -> None:
    heats = [eq.liquid_full_temperature(filling, 999.0) for filling in (0.38, 0.42, 0.46)]
    assert heats == sorted(heats, reverse=True)
    assert eq.liquid_density(heats[1]) == pytest.approx(0.42 * 999.0, rel=1e-6)


def test_commercial_propane_is_not_pure_propane() -> None:
    """The published pressure at 100 °F is an eighth above that of pure propane: the two are never mixed."""
    pure = eq.gauge_pressure(float(eq.saturation_pressure(310.928)), 101325.0)
    assert 196 * 6894.757 / pure == pytest.approx(1.127, abs=0.002)


def test_the_ideal_gas_is_two_hundredths_above_the_real_one() -> None:
    ideal = eq.vapour_volume(temperature=288.7056, pressure=101325.0, gas_constant=8.314462618 / 0.04409562)
    assert ideal * float(PropsSI("D", "T", 288.7056, "P", 101325.0, "Propane")) == pytest.approx(
        1.018, abs=0.001
    )


def test_burning_takes_air_in_proportion() -> None:
    one = eq.combustion_air(load=10_000.0, heat=92.7e6, ratio=23.86)
    assert eq.combustion_air(load=20_000.0, heat=92.7e6, ratio=23.86) == pytest.approx(2 * one)
    # Some 9.6 cubic feet a minute for 60,000 BTU/h.
    assert eq.combustion_air(load=60_000 * 0.29307107, heat=2488 * 37258.9458, ratio=23.86) / 0.000471947 == (
        pytest.approx(9.6, abs=0.05)
    )
