"""Circuits: limits with their reasons, other ways to the same number, tables against their formulas."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.optimize import minimize_scalar

from curbwright import data, units
from curbwright.equations import circuits as eq

CMIL = units.factor("cmil")[1]
K = units.factor("ohm*cmil/ft")[1]


def rows(name: str) -> list[dict[str, str]]:
    return [dict(row) for row in data.table(f"circuits/{name}")]


def read(text: str, kind: str) -> float:
    return float(units.read(text, kind))


# ---- wire


@pytest.mark.parametrize("row", rows("wire"), ids=lambda row: row["size"])
def test_the_table_of_areas_is_the_gauge_formula_to_its_rounding(row: dict[str, str]) -> None:
    area = read(row["awg_area"], "wire_size")
    assert eq.gauge_area(gauge=float(row["gauge"])) == pytest.approx(area, rel=0.003)


@pytest.mark.parametrize("row", rows("wire"), ids=lambda row: row["size"])
def test_every_row_of_the_table_has_the_resistivity_that_the_sheet_uses(row: dict[str, str]) -> None:
    """12.85 to 12.93 ohm-cmil/ft from row to row, so 12.87 is within half a percent of each."""
    found = eq.resistivity(
        resistance=read(row["resistance_75"], "line_resistance"), area=read(row["awg_area"], "wire_size")
    )
    assert found == pytest.approx(12.87 * K, rel=0.005)


@pytest.mark.parametrize("row", [row for row in rows("wire") if row["sae_area"]], ids=lambda row: row["size"])
def test_sae_wire_has_less_copper(row: dict[str, str]) -> None:
    share = read(row["sae_area"], "wire_size") / read(row["awg_area"], "wire_size")
    assert 0.88 < share < 0.98


@pytest.mark.parametrize("name", ["ampacity_low_voltage", "ampacity_mains"])
def test_more_copper_and_hotter_insulation_never_carry_less(name: str) -> None:
    table = [[read(cell, "current") if cell else 0.0 for cell in columns(row)] for row in rows(name)]
    for one, thicker in zip(table, table[1:], strict=False):
        assert all(more >= less for less, more in zip(one, thicker, strict=True) if less)
    for row in table:
        given = [cell for cell in row if cell]
        assert given == sorted(given)


def columns(row: dict[str, str]) -> list[str]:
    return [cell for name, cell in row.items() if name.endswith(" C")]


@pytest.mark.parametrize("name", ["fuse_sizes", "breaker_sizes"])
def test_standard_sizes_ascend(name: str) -> None:
    found = [read(row["rating"], "current") for row in rows(name)]
    assert found == sorted(set(found))


def test_resistance_is_the_table_s_at_the_table_s_temperature_and_falls_by_a_fifth_at_24_degrees() -> None:
    assert eq.resistance_at(resistance=2.0, temperature=348.15) == 2.0
    assert eq.resistance_at(resistance=12.87, temperature=297.15) == pytest.approx(10.75, rel=0.001)


def test_temperature_and_resistance_undo_each_other() -> None:
    for temperature in (273.15, 297.15, 348.15, 378.15):
        warm = eq.resistance_at(resistance=2e-8, temperature=temperature)
        assert eq.temperature_of(resistivity=warm, hot=2e-8) == pytest.approx(temperature)


def test_the_area_for_a_drop_gives_that_drop() -> None:
    area = eq.area_for_drop(resistivity=1.8e-8, current=12.0, loop=eq.loop(4.0), drop=0.36)
    each = eq.resistance_per_length(resistivity=1.8e-8, area=area)
    assert eq.drop(current=12.0, length=4.0, resistance=each) == pytest.approx(0.36)


def test_a_loop_counts_both_ways() -> None:
    """Counting one way only is the usual mistake: it loses half the drop."""
    one_way = 5.0 * 10.0 * 0.01
    assert eq.drop(current=10.0, length=5.0, resistance=0.01) == 2 * one_way


def test_a_hot_space_leaves_all_at_the_table_s_air_and_nothing_at_the_insulation_s_limit() -> None:
    assert eq.hot_space_factor(insulation=348.15, space=303.15, base=303.15) == 1.0
    assert eq.hot_space_factor(insulation=348.15, space=348.15, base=303.15) == 0.0


def test_a_wire_at_its_corrected_ampacity_is_as_warm_as_its_insulation_allows() -> None:
    """Heat made with the square of the current, heat lost with the difference in temperature."""
    insulation, base, space, rated = 378.15, 303.15, 333.15, 60.0
    factor = eq.hot_space_factor(insulation=insulation, space=space, base=base)
    cooling = rated**2 / (insulation - base)
    warm = space + (rated * factor) ** 2 / cooling
    assert warm == pytest.approx(insulation)


def test_withstand_time_and_area_undo_each_other() -> None:
    area = eq.area_to_withstand(current=2000.0, time=0.05)
    assert eq.withstand_time(area=area, current=2000.0) == pytest.approx(0.05)


def test_withstand_is_the_heat_of_copper_from_70_to_160_degrees() -> None:
    """Heat stored per volume over heat made per volume and second, with resistivity rising as it warms."""
    stored, cold, beta = 3.45e6, 1.7241e-8, 234.5
    heat, _ = quad(lambda theta: stored / (cold * (beta + theta) / (beta + 20)), 70, 160)
    assert heat**0.5 == pytest.approx(115e6, rel=0.01)


# ---- faults


def test_no_run_leaves_the_fault_at_the_posts() -> None:
    assert eq.fault_further(fault_current=3000.0, source=0.004, run=0.0, contacts=0.0) == 3000.0


def test_both_ways_to_a_fault_further_off_agree() -> None:
    posts = eq.fault_current(voltage=12.8, source=0.005, run=0.0, contacts=0.0)
    far = eq.fault_further(fault_current=posts, source=0.005, run=0.004, contacts=0.0003)
    assert far == pytest.approx(eq.fault_current(voltage=12.8, source=0.005, run=0.004, contacts=0.0003))


def test_parallel_strings_are_resistances_in_parallel() -> None:
    together = eq.parallel_fault_current(fault_current=2000.0, strings=3.0)
    assert eq.source_resistance(voltage=12.0, fault_current=together) == pytest.approx(12.0 / 2000.0 / 3)


def test_a_fuse_s_let_through_energy_does_not_depend_on_the_fault_until_its_least_time() -> None:
    through = [
        eq.clearing_time(let_through=3.0, rating=100.0, fault_current=fault, fastest=0.001) * fault**2
        for fault in (1000.0, 2000.0, 5000.0)
    ]
    assert through == pytest.approx([30000.0] * 3)
    assert eq.clearing_time(let_through=3.0, rating=10.0, fault_current=5000.0, fastest=0.001) == 0.001


# ---- loads


def test_energy_is_the_integral_of_a_load_that_comes_and_goes() -> None:
    period, share, power, time = 1200.0, 0.4, 60.0, 86400.0
    instants = np.arange(0.5, time, 1.0)
    on = (instants % period) < share * period
    assert eq.daily_energy(power=power, share=share, time=time) == pytest.approx(float(power * on.sum()))


def test_a_start_with_no_surge_is_everything_running() -> None:
    assert eq.start_power(running=500.0, motor=200.0, multiple=1.0) == 500.0


def test_clock_times_past_midnight_and_not() -> None:
    day = 86400.0
    assert eq.time_between(begins=36000.0, ends=54000.0) == 18000.0
    assert eq.time_past_midnight(begins=79200.0, ends=21600.0, day=day) == 28800.0
    assert eq.time_past_midnight(begins=1000.0, ends=1000.0, day=day) == day


def test_the_trade_s_fan_formula_is_flow_times_pressure_within_a_quarter_percent() -> None:
    flow, pressure, share = 0.3, 180.0, 0.45
    found = eq.fan_shaft_power(flow=flow, pressure=pressure, efficiency=share)
    assert found == pytest.approx(flow * pressure / share, rel=0.0025)
    assert found < flow * pressure / share


# ---- inverter


CURVE = {"rating": 1000.0, "part": 0.3, "efficiency_part": 0.90, "efficiency_full": 0.87, "tare": 12.0}


def curve() -> tuple[float, float]:
    curvature = eq.loss_curvature(**CURVE)
    wanted = {name: CURVE[name] for name in ("rating", "part", "efficiency_part", "tare")}
    return eq.loss_slope(**wanted, curvature=curvature), curvature


def drawn(power: float) -> float:
    slope, curvature = curve()
    return eq.dc_power(tare=12.0, slope=slope, curvature=curvature, power=power, apparent=power)


def test_the_curve_goes_through_the_points_it_was_made_from() -> None:
    assert drawn(0.0) == 12.0
    assert eq.efficiency(power=300.0, drawn=drawn(300.0)) == pytest.approx(0.90)
    assert eq.efficiency(power=1000.0, drawn=drawn(1000.0)) == pytest.approx(0.87)


def test_the_best_load_is_where_a_search_finds_it() -> None:
    slope, curvature = curve()
    found = minimize_scalar(lambda power: -power / drawn(power), bounds=(1.0, 1000.0), method="bounded")
    assert eq.best_load(tare=12.0, curvature=curvature) == pytest.approx(found.x, rel=1e-3)
    assert eq.best_efficiency(tare=12.0, slope=slope, curvature=curvature) == pytest.approx(-found.fun)


def test_the_curve_agrees_with_the_catalogue_s_table_of_the_same_inverter() -> None:
    from curbwright.build import catalogue

    table = catalogue.find("inverter-sine-1000").tables["efficiency"]
    for share, efficiency in table.rows:
        power = 1000.0 * read(share, "share")
        assert power / drawn(power) == pytest.approx(read(efficiency, "share"), abs=0.0006)


def test_one_efficiency_would_be_badly_wrong_at_a_small_load() -> None:
    """A tablet of 10 W costs 22 W; by the efficiency at the rating it would be 11.5."""
    assert drawn(10.0) > 1.9 * 10.0 / 0.87


def test_the_day_through_the_curve_is_the_integral_over_its_intervals() -> None:
    slope, curvature = curve()
    known = {"tare": 12.0, "slope": slope, "curvature": curvature}
    hours = {50.0: 3600.0, 300.0: 7200.0, 0.0: 1800.0}
    summed = sum(
        eq.inverter_energy(**known, power=power, apparent=power, time=time) for power, time in hours.items()
    )
    assert summed == pytest.approx(sum(drawn(power) * time for power, time in hours.items()))


def test_a_lower_voltage_draws_more_current() -> None:
    assert eq.feed_current(power=1000.0, efficiency=0.87, voltage=10.5) > eq.feed_current(
        power=1000.0, efficiency=0.87, voltage=12.8
    )


# ---- 120 V


def test_125_percent_and_80_percent_are_one_rule() -> None:
    assert eq.continuous_current(eq.continuous_limit(20.0)) == pytest.approx(20.0)


def test_kitchen_demand_never_falls_under_the_two_largest() -> None:
    assert eq.kitchen_demand(connected=4000.0, factor=0.65, two_largest=3500.0) == 3500.0
    assert eq.kitchen_demand(connected=4000.0, factor=1.0, two_largest=3500.0) == 4000.0


def test_twice_the_distance_is_six_decibels_less() -> None:
    near, far = (eq.sound_at(sound_power=95.0, distance=distance) for distance in (5.0, 10.0))
    assert near - far == pytest.approx(6.02, abs=0.01)


def test_sound_on_hard_ground_is_a_half_sphere_of_power() -> None:
    level = 10 * np.log10(1 / (2 * np.pi * 7.0**2))
    assert eq.sound_at(sound_power=0.0, distance=7.0) == pytest.approx(level, abs=0.05)


def test_a_generator_by_the_sea_on_a_cool_day_gives_its_plate() -> None:
    assert eq.derated_power(power=2000.0, altitude=0.0, air=288.15) == 2000.0
    assert eq.derated_power(power=2000.0, altitude=-50.0, air=298.15) == 2000.0


@pytest.mark.parametrize(
    ("supply", "circuits", "others", "count"),
    [(30.0, 5.0, 0.0, 0.0), (30.1, 5.0, 0.0, 1.0), (30.0, 6.0, 0.0, 1.0), (31.0, 6.0, 2.0, 3.0)],
)
def test_plan_triggers_count_what_is_exceeded(
    supply: float, circuits: float, others: float, count: float
) -> None:
    found = eq.plan_triggers(
        supply=supply, circuits=circuits, other_sources=others, supply_limit=30.0, circuit_limit=5.0
    )
    assert found == count


def test_equations_take_arrays() -> None:
    loads = np.array([0.0, 100.0, 500.0])
    slope, curvature = curve()
    found = eq.dc_power(tare=12.0, slope=slope, curvature=curvature, power=loads, apparent=loads)
    assert np.allclose(found, [drawn(float(load)) for load in loads])
