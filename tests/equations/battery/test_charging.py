"""Charging, hydrogen and sizes: worked examples, and what must add up."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from curbwright.equations import battery as eq

AH, WH = 3600.0, 3600.0


def test_half_a_bank_of_200_ah_by_40_a() -> None:
    """From half full, 40 A, the last fifth tapering to 4 A: 1.5 h and 2.3 h."""
    bulk = eq.bulk_charge(missing=100 * AH, charge=200 * AH, bulk_until=0.8)
    assert float(eq.bulk_time(charge=bulk, current=40, efficiency=1)) / 3600 == pytest.approx(1.5)
    taper = eq.absorption_time(missing=100 * AH, charge=200 * AH, bulk_until=0.8, current=40, end_current=4)
    assert float(taper) / 3600 == pytest.approx(2.3, abs=0.01)


def test_lithium_takes_the_full_current_all_the_way() -> None:
    bulk = eq.bulk_charge(missing=160 * AH, charge=200 * AH, bulk_until=1.0)
    assert float(eq.bulk_time(charge=bulk, current=40, efficiency=1)) / 3600 == pytest.approx(4.0)


@given(missing=st.floats(1, 200), bulk_until=st.floats(0.5, 0.95), current=st.floats(5, 60))
def test_what_the_taper_carries_is_what_it_has_to(missing: float, bulk_until: float, current: float) -> None:
    """Over its time the current adds up to what was missing there, less the end current's part."""
    charge, end = 200 * AH, 4.0
    bulk = float(eq.bulk_charge(missing=missing * AH, charge=charge, bulk_until=bulk_until))
    left = missing * AH - bulk
    tau = (1 - bulk_until) * charge / current
    start = left / tau
    time = float(eq.absorption_time(missing=missing * AH, charge=charge, bulk_until=bulk_until,
                                    current=current, end_current=end))  # fmt: skip
    if start <= end:
        assert time == 0
    else:
        carried, _ = quad(lambda at: start * np.exp(-at / tau), 0, time)
        assert carried == pytest.approx(left - tau * end, rel=1e-6)


def test_the_last_fifth_takes_longer_than_three_tenths() -> None:
    bulk = float(eq.bulk_time(charge=60 * AH, current=40, efficiency=1))
    taper = eq.absorption_time(missing=40 * AH, charge=200 * AH, bulk_until=0.8, current=40, end_current=4)
    assert float(taper) > bulk


def test_charge_is_kept_when_empty_and_lost_when_nearly_full() -> None:
    kept = [float(eq.charge_efficiency(state=state, current_ratio=1.0)) for state in (0.3, 0.8, 0.9, 0.97, 1)]
    assert kept == sorted(kept, reverse=True)
    assert kept[0] > 0.99
    assert kept[-1] == 0


def test_thirty_amperes_through_a_converter_take_thirty_seven() -> None:
    drawn = eq.input_current(voltage=14.4, current=30, efficiency=0.9, input_voltage=13)
    assert drawn == pytest.approx(37, abs=0.1)


@pytest.mark.parametrize(
    ("voltage", "share", "factor", "wanted"),
    [(12.8, 0.8, 1.0, 215), (12.2, 0.5, 1.0, 361), (12.2, 0.5, 0.84, 429)],
)
def test_the_bank_for_a_day_of_2200_wh(voltage: float, share: float, factor: float, wanted: float) -> None:
    size = eq.capacity_wanted(
        energy=2200 * WH, margin=0, voltage=voltage, share=share, temperature=factor, age=1
    )
    assert size / AH == pytest.approx(wanted, abs=0.6)


def test_what_is_wanted_is_what_is_then_usable() -> None:
    size = eq.capacity_wanted(energy=1e6, margin=0.2, voltage=12, share=0.5, temperature=0.9, age=0.8)
    left = eq.charge_left(charge=size, temperature=0.9, age=0.8)
    assert eq.usable_energy(charge=left, share=0.5, voltage=12) == pytest.approx(1.2e6)


# ---- hydrogen


def test_the_european_air_is_24_times_the_hydrogen_five_times_over() -> None:
    """0.05 m3/h for each ampere of gas: 24 x 5 x 0.42e-3 m3/Ah, rounded down by 1 % in the standard."""
    air = eq.vent_flow_by_charge(cells=1, gas_rate=1 / AH, charge=1 * AH) * 3600
    hydrogen = eq.hydrogen_volume(charge=1 * AH, temperature=273.15)
    assert air / (24 * 5 * hydrogen) == pytest.approx(1, rel=0.01)


def test_the_american_hydrogen_is_that_of_the_electrons_at_25_degrees() -> None:
    hydrogen = eq.vent_flow_by_current(cells=1, current=1) * 0.01 * 3600
    assert hydrogen / eq.hydrogen_volume(charge=1 * AH, temperature=298.15) == pytest.approx(1, rel=0.005)


def test_two_golf_cart_batteries_by_both_ways() -> None:
    """Two flooded 6 V batteries of 220 Ah, 4.4 A at the end: 0.78 cfm and 0.71 cfm."""
    cfm = 0.000471947443
    assert eq.vent_flow_by_charge(cells=6, gas_rate=0.02 / AH, charge=220 * AH) / cfm == pytest.approx(
        0.777, abs=1e-3
    )
    assert eq.vent_flow_by_current(cells=6, current=4.4) / cfm == pytest.approx(0.71, abs=0.005)


@given(area=st.floats(1e-4, 0.1), cells=st.integers(3, 24), rate=st.floats(1e-6, 1e-4))
def test_an_opening_is_worth_the_capacity_that_needs_it(area: float, cells: int, rate: float) -> None:
    served = eq.charge_vented(flow=eq.flow_through(area), cells=cells, gas_rate=rate)
    assert eq.vent_opening(
        eq.vent_flow_by_charge(cells=cells, gas_rate=rate, charge=served)
    ) == pytest.approx(area)


# ---- the bank


def test_two_in_series_and_two_strings_are_as_one_battery_of_four() -> None:
    assert eq.series_voltage(voltage=6, series=2) == 12
    assert eq.bank_resistance(resistance=0.004, series=2, strings=2) == 0.004
    assert eq.parallel_charge(capacity=220 * AH, strings=2) == 440 * AH


@pytest.mark.parametrize(
    ("volts", "cell", "cells"), [(12, 2, 6), (6, 2, 3), (12.8, 3.2, 4), (12, 3.2, 4), (25.6, 3.2, 8)]
)
def test_cells_are_counted_by_the_nominal_voltage(volts: float, cell: float, cells: int) -> None:
    assert eq.cells_of(voltage=volts, cell=cell) == cells


def test_a_shallow_day_costs_fewer_cycles_and_heat_costs_half() -> None:
    exponent = eq.life_exponent(shallow=0.5, deep=0.8, shallow_cycles=1000, deep_cycles=500)
    deep = eq.cycles_at(depth=0.8, counted=0.5, cycles=1000, exponent=exponent)
    assert float(deep) == pytest.approx(500)
    heat = {"reference": 298.15, "halving": 10.0}
    assert float(eq.life_in_heat(cycles=1000, temperature=318.15, **heat)) == pytest.approx(250)
    assert float(eq.life_in_heat(cycles=1000, temperature=280.0, **heat)) == pytest.approx(1000)
