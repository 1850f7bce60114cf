"""Exhaust against independent solvers, libraries and worked figures of the trade."""

from __future__ import annotations

import math

import pytest

from curbwright.equations import exhaust as eq

CFM = 0.3048**3 / 60
FPM = 0.3048 / 60
INCH, FOOT = 0.0254, 0.3048
WATER = 249.08891
BTU_H = 0.2930710701722222
AIR = 0.075 * 0.45359237 / FOOT**3


def fahrenheit(kelvin: float) -> float:
    return (kelvin - 273.15) * 1.8 + 32


def kelvin(degrees: float) -> float:
    return (degrees - 32) / 1.8 + 273.15


# ---- hood


def test_the_plume_draws_in_more_the_higher_it_rises_and_less_against_a_wall() -> None:
    low, high = (eq.plume_flow(heat=4000, height=z, diameter=0.73, share=1.0) for z in (0.5, 1.5))
    assert high > low
    beside = eq.plume_flow(heat=4000, height=0.5, diameter=0.73, share=0.63)
    assert beside == pytest.approx(0.63 * low)


def test_the_plume_is_within_a_third_of_an_axisymmetric_fire_plume() -> None:
    """0.071 Q^(1/3) z^(5/3) + 0.0018 Q in kg/s with kW, z counted from the point it seems to rise from."""
    d = eq.hydraulic_diameter(long=0.9144, wide=0.6096)
    z = 0.9 + 1.7 * d
    mass = 0.071 * 4 ** (1 / 3) * z ** (5 / 3) + 0.0018 * 4
    assert eq.plume_flow(heat=4000, height=0.9, diameter=d, share=1.0) == pytest.approx(mass / AIR, rel=0.33)


def test_a_plume_without_heat_draws_nothing() -> None:
    assert eq.plume_flow(heat=0.0, height=1.0, diameter=0.7, share=1.0) == 0.0


def test_air_drawn_in_is_the_rule_of_fifty_times_perimeter_times_height() -> None:
    """4 ft wide, 2 ft deep, 2 ft up: 8 ft of open sides at 50 ft/min."""
    flow = eq.capture_flow(long=4 * FOOT, wide=2 * FOOT, height=2 * FOOT, speed=50 * FPM)
    assert flow / CFM == pytest.approx(800)


def test_the_heat_that_a_flow_carries_off_is_the_trade_s_1_08() -> None:
    """1.08 BTU/h for each cfm and °F."""
    flow = eq.flow_for_rise(heat=10800 * BTU_H, rise=10 / 1.8, density=AIR, specific_heat=0.24 * 4186.8)
    assert flow / CFM == pytest.approx(1000, rel=0.002)


# ---- duct and fan


def test_a_twelve_inch_duct_at_1200_cfm_against_a_library_of_fluids() -> None:
    """1,528 ft/min and a velocity pressure of (V/4005)^2 inches are the trade's.

    A note puts the loss at 0.253 in a hundred feet; the implicit friction factor gives 0.266 with 0.09 mm.
    """
    fluids = pytest.importorskip("fluids")
    area, across = eq.round_area(diameter=12 * INCH), 12 * INCH
    speed = eq.speed_through(flow=1200 * CFM, area=area)
    assert speed / FPM == pytest.approx(1528, abs=1)
    pressure = eq.velocity_pressure(density=AIR, speed=speed)
    assert pressure / WATER == pytest.approx((1528 / 4005) ** 2, rel=0.003)
    reynolds = eq.reynolds_number(speed=speed, diameter=across, viscosity=1.57e-5)
    friction = eq.friction_factor(reynolds=reynolds, roughness=0.09e-3, diameter=across)
    lost = eq.duct_loss(
        velocity_pressure=pressure, friction=friction, length=100 * FOOT, diameter=across, fittings=0.0
    )
    exact = fluids.one_phase_dP(
        m=1200 * CFM * AIR, rho=AIR, mu=1.57e-5 * AIR, D=across, roughness=0.09e-3, L=100 * FOOT
    )
    assert lost == pytest.approx(exact, rel=0.01)


@pytest.mark.parametrize("reynolds", [2e4, 1e5, 5e5, 2e6])
@pytest.mark.parametrize("rough", [0.0001, 0.0005, 0.002, 0.01])
def test_the_friction_factor_is_within_3_percent_of_the_implicit_one(reynolds: float, rough: float) -> None:
    fluids = pytest.importorskip("fluids")
    exact = fluids.friction_factor(Re=reynolds, eD=rough)
    assert float(eq.friction_factor(reynolds=reynolds, roughness=rough, diameter=1.0)) == pytest.approx(
        exact, rel=0.03
    )


def test_the_fan_s_surplus_vanishes_where_the_quadratic_formula_says() -> None:
    """120 - 100 x = 80 x^2 + 10 with the flow as a share of the design flow: x = 0.7036."""
    root = (-100 + math.sqrt(100**2 + 4 * 80 * 110)) / 160
    rows = {"low_flow": 0.0, "high_flow": 1.0, "low_pressure": 120.0, "high_pressure": 20.0}
    left = eq.fan_surplus(flow=root, **rows, loss=80.0, design=1.0, margin=10.0)
    assert left == pytest.approx(0, abs=1e-9)
    against = eq.system_pressure(loss=80.0, design=1.0, flow=root, margin=10.0)
    assert against == pytest.approx(120 - 100 * root)


def test_the_largest_duct_for_a_speed_has_that_speed() -> None:
    across = eq.largest_round_duct(flow=0.3, speed=2.54)
    assert eq.speed_through(flow=0.3, area=eq.round_area(diameter=across)) == pytest.approx(2.54)


def test_speed_through_an_opening_and_its_loss_undo_each_other() -> None:
    speed = eq.opening_speed(pressure=5.0, discharge=0.61, density=1.2)
    assert eq.opening_loss(density=1.2, discharge=0.61, speed=speed) == pytest.approx(5.0)


def test_a_single_high_opening_for_100_000_btu_an_hour() -> None:
    area = eq.combustion_opening(load=100000 * BTU_H, heat=3000 * BTU_H / INCH**2)
    assert area / INCH**2 == pytest.approx(33.3, abs=0.05)


# ---- heat


@pytest.mark.parametrize(("flow", "printed"), [(200, 126), (400, 112), (800, 104), (1200, 101)])
def test_a_cart_with_a_30_000_btu_griddle_warms_as_worked_elsewhere(flow: float, printed: float) -> None:
    """10 % radiant, 15 % of the plume missed, two people, dark roof, 20 W/K; 13 of them are the roof's here.

    How much the roof had is not told: 13 is taken so that 400 cfm fits, and the other flows then follow.
    """
    heat = eq.heat_left(load=30000 * BTU_H, busy=1.0, plume=0.45, spill=0.15, radiant=0.10) + 260
    air = eq.air_conductance(flow=flow * CFM, density=AIR, specific_heat=0.24 * 4186.8)
    inside = eq.cabin_temperature(
        outside=kelvin(95), heat=heat, air=air, walls=7.0, roof=13.0, roof_rise=86 / 1.8
    )
    assert fahrenheit(inside) == pytest.approx(printed, abs=1.0)


def test_no_heat_and_no_sun_leave_the_cart_as_warm_as_outside() -> None:
    quiet = eq.cabin_temperature(outside=300.0, heat=0.0, air=300.0, walls=20.0, roof=6.0, roof_rise=0.0)
    assert quiet == 300.0


def test_more_air_is_never_warmer() -> None:
    temperatures = [
        eq.cabin_temperature(outside=308.0, heat=2500.0, air=air, walls=20.0, roof=6.0, roof_rise=48.0)
        for air in (100.0, 200.0, 400.0)
    ]
    assert temperatures == sorted(temperatures, reverse=True)


@pytest.mark.parametrize(("air", "humidity"), [(298.15, 0.3), (308.15, 0.5), (313.15, 0.4), (305.15, 0.9)])
def test_the_wet_bulb_is_that_of_reference_moist_air(air: float, humidity: float) -> None:
    moist = pytest.importorskip("CoolProp.HumidAirProp")
    vapour = humidity * moist.HAPropsSI("P_w", "T", air, "P", 101325, "R", 1.0)
    exact = moist.HAPropsSI("B", "T", air, "P", 101325, "R", humidity)
    assert eq.wet_bulb(air=air, vapour=vapour, pressure=101325.0) == pytest.approx(exact, abs=0.25)


def test_saturated_air_has_its_own_temperature_as_wet_bulb() -> None:
    saturated = 611.2 * math.exp(17.62 * 30 / (243.12 + 30))
    assert eq.wet_bulb(air=303.15, vapour=saturated, pressure=101325.0) == pytest.approx(303.15, abs=1e-6)


def test_the_globe_takes_up_by_radiation_what_it_gives_off_to_the_air() -> None:
    globe = eq.globe_temperature(air=308.15, radiant=331.0, speed=0.5, diameter=0.15, emissivity=0.95)
    given = 6.3 * 0.5**0.6 / 0.15**0.4 * (globe - 308.15)
    taken = 0.95 * 5.670374e-8 * (331.0**4 - globe**4)
    assert given == pytest.approx(taken, rel=1e-9)
    assert 308.15 < globe < 331.0


def test_the_limits_at_300_watts() -> None:
    """28.2 and 25.0 °C."""
    assert float(eq.limit_acclimatised(work=300.0)) - 273.15 == pytest.approx(28.2, abs=0.05)
    assert float(eq.limit_unacclimatised(work=300.0)) - 273.15 == pytest.approx(25.0, abs=0.05)


# ---- air


GAS = 60000 / 2488 / 3600 * FOOT**3
"""Propane that burns at 60,000 BTU/h, cubic metres a second."""


def in_the_end(ratio: float, flow: float, outside: float) -> float:
    source = eq.given_off(gas=GAS, ratio=ratio, share=1.0)
    return eq.steady_share(outside=outside, source=source, flow=flow * CFM)


def test_burning_60_000_btu_an_hour_into_300_cfm() -> None:
    """4,019 parts in a million of carbon dioxide more, 0.67 % of oxygen less."""
    assert in_the_end(3, 300, 0.0) == pytest.approx(4019e-6, rel=0.001)
    assert in_the_end(-5, 300, 0.0) == pytest.approx(-0.0067, abs=0.00005)


def test_burning_60_000_btu_an_hour_into_50_cfm_is_dangerous() -> None:
    """16.9 % of oxygen is left, and a burner at 400 parts in a million makes 70 of carbon monoxide."""
    assert in_the_end(-5, 50, 0.2095) == pytest.approx(0.169, abs=0.0005)
    assert in_the_end(eq.part_of(ratio=21.87, share=400e-6), 50, 0.0) == pytest.approx(70e-6, rel=0.01)


def test_the_time_to_a_share_is_that_of_small_steps() -> None:
    volume, flow, source, outside, limit = 12.0, 0.0236, 0.00079, 0.0004, 0.0028
    share, time, step = outside, 0.0, 0.01
    while share < limit:
        share += step * (source - flow * (share - outside)) / volume
        time += step
    found = eq.time_to_share(volume=volume, flow=flow, source=source, outside=outside, limit=limit)
    assert float(found) == pytest.approx(time, rel=0.001)


def test_almost_no_air_comes_to_the_time_of_a_shut_room() -> None:
    """Without air the share grows in a straight line."""
    shut = 12.0 * 0.0024 / 0.00079
    found = eq.time_to_share(volume=12.0, flow=1e-7, source=0.00079, outside=0.0004, limit=0.0028)
    assert float(found) == pytest.approx(shut, rel=1e-4)
