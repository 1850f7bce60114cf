"""At the posts: loads that keep their power, and the time until they drop out."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from curbwright.equations import battery as eq

LEAD = {"open_full": 12.7, "open_knee": 12.24, "open_empty": 11.9, "knee": 0.5}


@given(open_=st.floats(10, 60), resistance=st.floats(1e-4, 0.05), part=st.floats(0.001, 0.999))
def test_the_current_carries_the_power_at_the_voltage_it_leaves(
    open_: float, resistance: float, part: float
) -> None:
    power = part * float(eq.most_power(open_voltage=open_, resistance=resistance))
    current = eq.constant_power_current(open_voltage=open_, resistance=resistance, power=power)
    voltage = eq.loaded_voltage(open_voltage=open_, resistance=resistance, current=current)
    assert float(current) * float(voltage) == pytest.approx(power, rel=1e-6)
    assert float(voltage) >= open_ / 2 * (1 - 1e-6)  # of the two answers, the one a battery settles at


def test_past_the_most_power_the_voltage_collapses() -> None:
    most = eq.most_power(open_voltage=12.0, resistance=0.01)
    current = eq.constant_power_current(open_voltage=12.0, resistance=0.01, power=2 * most)
    assert float(eq.loaded_voltage(open_voltage=12.0, resistance=0.01, current=current)) == pytest.approx(6.0)


def test_a_column_of_powers_is_the_powers_one_by_one() -> None:
    powers = np.linspace(1, 2000, 50)
    together = eq.constant_power_current(open_voltage=12.5, resistance=0.008, power=powers)  # type: ignore[arg-type]
    alone = [float(eq.constant_power_current(open_voltage=12.5, resistance=0.008, power=p)) for p in powers]
    assert np.asarray(together) == pytest.approx(alone)


@pytest.mark.parametrize(
    ("state", "volts"), [(1.0, 12.7), (0.75, 12.47), (0.5, 12.24), (0.25, 12.07), (0.0, 11.9)]
)
def test_the_rested_voltage_runs_through_empty_knee_and_full(state: float, volts: float) -> None:
    assert eq.open_voltage_at(state=state, **LEAD) == pytest.approx(volts)


def by_solver(
    charge: float, share: float, rate: float, power: float, resistance: float, cut_off: float
) -> float:
    """The time to cut-off with the current following the voltage all along, by a solver with events."""

    def voltages(at_hand: float) -> tuple[float, float]:
        state = max(at_hand, 0.0) / (share * charge)
        rested = np.interp(state, [0, 0.5, 1], [11.9, 12.24, 12.7])
        under = max(rested**2 - 4 * resistance * power, 0.0) ** 0.5
        return (rested - under) / (2 * resistance), (rested + under) / 2

    def flow(_: float, wells: np.ndarray) -> list[float]:  # type: ignore[type-arg]
        between = rate * (share * wells[1] - (1 - share) * wells[0])
        return [-voltages(wells[0])[0] + between, -between]

    def low(_: float, wells: np.ndarray) -> float:  # type: ignore[type-arg]
        return float(min(voltages(wells[0])[1] - cut_off, wells[0] / charge))

    low.terminal = True  # type: ignore[attr-defined]
    longest = 2 * charge * 12.7 / power
    ran = solve_ivp(flow, (0, longest), [share * charge, (1 - share) * charge], events=low, rtol=1e-8,
                    atol=1e-3, max_step=longest / 400)  # fmt: skip
    return float(ran.t_events[0][0])


@settings(max_examples=25, deadline=None)
@given(
    share=st.floats(0.2, 0.9), rate=st.floats(0.3 / 3600, 3 / 3600), power=st.floats(20, 900),
    resistance=st.floats(0.001, 0.02), cut_off=st.sampled_from([10.5, 11.0, 11.9]),
)  # fmt: skip
def test_the_time_to_cut_off_is_what_a_solver_finds(
    share: float, rate: float, power: float, resistance: float, cut_off: float
) -> None:
    charge = 360000.0
    found = eq.time_to_cut_off(charge=charge, share=share, rate=rate, power=power, resistance=resistance,
                               cut_off=cut_off, **LEAD)  # fmt: skip
    assume(found > 60)
    assert found == pytest.approx(by_solver(charge, share, rate, power, resistance, cut_off), rel=3e-3, abs=2)


def test_a_steady_power_from_counted_charge_lasts_energy_over_power() -> None:
    flat = {"open_full": 12.0, "open_knee": 12.0, "open_empty": 12.0, "knee": 0.1}
    time = eq.time_to_cut_off(charge=3600.0 * 100, share=1.0, rate=1e-4, power=120.0, resistance=1e-9,
                              cut_off=10.0, **flat)  # fmt: skip
    assert time == pytest.approx(10 * 3600, rel=1e-6)


def test_a_load_too_large_lasts_no_time() -> None:
    assert eq.time_to_cut_off(charge=36000.0, share=0.4, rate=1e-4, power=5000.0, resistance=0.01,
                              cut_off=10.5, **LEAD) == 0  # fmt: skip


def test_resting_loads_let_more_out_before_the_cut_off() -> None:
    alike = {
        "charge": 360000.0,
        "share": 0.45,
        "rate": 1.1 / 3600,
        "resistance": 0.004,
        "cut_off": 10.5,
        **LEAD,
    }
    heavy, light = (eq.time_to_cut_off(power=power, **alike) for power in (600.0, 60.0))
    assert light * 60 > heavy * 600  # joules


@pytest.mark.parametrize("current", [5.0, 10.0, 25.0])
def test_the_scaled_law_gives_the_rating_back_and_falls_from_there(current: float) -> None:
    rating = {"capacity": 360000.0, "rated_time": 72000.0}
    assert eq.peukert_time(**rating, current=5.0, exponent=1.3) == pytest.approx(72000)
    time = eq.peukert_time(**rating, current=current, exponent=1.3)
    assert time == pytest.approx(72000 * (5 / current) ** 1.3)


def test_the_unscaled_law_contradicts_the_rating_it_starts_from() -> None:
    assert eq.unscaled_time(capacity=360000.0, current=5.0, exponent=1.0) == pytest.approx(72000)
    assert eq.unscaled_time(capacity=360000.0, current=5.0, exponent=1.2) < 0.75 * 72000
