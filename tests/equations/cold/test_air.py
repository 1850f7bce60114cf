"""Moist air and open doors against reference moist air."""

from __future__ import annotations

import pytest
from CoolProp.CoolProp import HAPropsSI

from curbwright.equations import cold as eq

STATES = [(308.15, 0.5, 101325.0), (277.15, 0.8, 101325.0), (313.15, 0.3, 84556.0), (275.15, 1.0, 95000.0)]


def worked(temperature: float, humidity: float, pressure: float) -> tuple[float, float, float]:
    """Humidity ratio, enthalpy, kilograms of dry air in a cubic metre."""
    moisture = eq.humidity_ratio(
        saturation=eq.saturation_pressure(temperature), humidity=humidity, pressure=pressure
    )
    dry = eq.dry_air_density(temperature=temperature, humidity_ratio=moisture, pressure=pressure)
    return float(moisture), float(eq.moist_enthalpy(temperature, moisture)), float(dry)


@pytest.mark.parametrize(("temperature", "humidity", "pressure"), STATES)
def test_moist_air_is_within_a_hundredth_of_the_reference(
    temperature: float, humidity: float, pressure: float
) -> None:
    moisture, heat, dry = worked(temperature, humidity, pressure)
    state = ("T", temperature, "R", humidity, "P", pressure)
    # Vapour in air holds half a percent more than alone: perfect gases leave that out.
    assert moisture == pytest.approx(HAPropsSI("W", *state), rel=0.006)
    assert heat == pytest.approx(HAPropsSI("H", *state), rel=0.006)
    assert dry == pytest.approx(1 / HAPropsSI("V", *state), rel=0.001)


@pytest.mark.parametrize("temperature", [235.15, 255.15, 270.15])
def test_moisture_over_ice(temperature: float) -> None:
    moisture = eq.humidity_ratio(
        saturation=eq.saturation_pressure_over_ice(temperature), humidity=1.0, pressure=101325.0
    )
    expected = HAPropsSI("W", "T", temperature, "R", 1.0, "P", 101325.0)
    assert moisture == pytest.approx(expected, rel=0.007)


def test_ice_and_water_have_one_vapour_pressure_where_they_meet() -> None:
    water, ice = eq.saturation_pressure(273.16), eq.saturation_pressure_over_ice(273.16)
    assert water == pytest.approx(ice, rel=1e-4)
    assert water == pytest.approx(611.66, rel=2e-4)
    assert eq.saturation_pressure_over_ice(253.15) < eq.saturation_pressure(253.15)


def test_a_cubic_metre_of_box_air_costs_85_kilojoules_half_of_them_moisture() -> None:
    _, warm, _ = worked(308.15, 0.5, 101325.0)
    moisture, cold, dry = worked(277.15, 0.8, 101325.0)
    density = eq.moist_density(dry, moisture)
    heat = eq.exchange_heat(density=density, outside=warm, inside=cold)
    reference = HAPropsSI("H", "T", 308.15, "R", 0.5, "P", 101325) - HAPropsSI(
        "H", "T", 277.15, "R", 0.8, "P", 101325
    )
    assert heat == pytest.approx(reference / HAPropsSI("V", "T", 277.15, "R", 0.8, "P", 101325), rel=0.005)
    assert 1006 * 31 * density / heat < 0.5


def test_a_door_never_lets_go_of_more_air_than_there_is() -> None:
    lost = [
        float(eq.air_through_door(free_volume=0.15, flow=0.113, time=time)) for time in (0.01, 1, 10, 600)
    ]
    assert lost == sorted(lost)
    assert lost[0] == pytest.approx(0.113 * 0.01, rel=0.01)
    assert lost[2] > 0.99 * 0.15
    assert lost[-1] <= 0.15


def test_no_air_runs_out_where_both_weigh_the_same() -> None:
    assert eq.density_factor(1.2, 1.2) == 1.0
    flow = eq.doorway_flow(
        area=0.5, height=0.9, box_density=1.2, room_density=1.2, factor=1.0, gravity=9.80665
    )
    assert flow == 0.0


def test_pressure_falls_an_eighth_on_the_first_mile() -> None:
    assert eq.pressure_at(0.0) == 101325
    assert eq.pressure_at(1609.344) == pytest.approx(83437, rel=0.002)
