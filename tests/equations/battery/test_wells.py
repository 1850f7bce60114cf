"""The kinetic battery: its exact steps against a solver of differential equations, and what must hold."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from curbwright.equations import battery as eq

FULL = 100.0
shares = st.floats(0.05, 0.95)
rates = st.floats(0.05, 5.0)
steps = st.lists(st.tuples(st.floats(0.0, 40.0), st.floats(0.05, 2.0)), min_size=1, max_size=6)
"""Currents in A, times in h: charge is counted in Ah here, as any unit will do."""


def stepped(profile: list[tuple[float, float]], share: float, rate: float) -> tuple[float, float]:
    at_hand, bound = share * FULL, (1 - share) * FULL
    for current, time in profile:
        state = {"charge": at_hand + bound, "current": current, "time": time, "share": share, "rate": rate}
        at_hand, bound = (
            float(eq.at_hand_after(at_hand=at_hand, **state)),
            float(eq.bound_after(bound=bound, **state)),
        )
    return at_hand, bound


def integrated(profile: list[tuple[float, float]], share: float, rate: float) -> tuple[float, float]:
    """The same two wells as differential equations, integrated by somebody else's solver."""
    wells = np.array([share * FULL, (1 - share) * FULL])
    conductance = rate * share * (1 - share)
    for current, time in profile:

        def flow(_: float, levels: np.ndarray, out: float = current) -> list[float]:  # type: ignore[type-arg]
            between = conductance * (levels[1] / (1 - share) - levels[0] / share)
            return [-out + between, -between]

        wells = solve_ivp(flow, (0, time), wells, rtol=1e-10, atol=1e-10).y[:, -1]
    return float(wells[0]), float(wells[1])


@settings(max_examples=60, deadline=None)
@given(profile=steps, share=shares, rate=rates)
def test_the_exact_step_agrees_with_a_solver_over_any_profile(
    profile: list[tuple[float, float]], share: float, rate: float
) -> None:
    assert stepped(profile, share, rate) == pytest.approx(integrated(profile, share, rate), abs=2e-6)


@given(profile=steps, share=shares, rate=rates)
def test_what_flows_out_is_what_the_wells_lose(
    profile: list[tuple[float, float]], share: float, rate: float
) -> None:
    drawn = sum(current * time for current, time in profile)
    assert sum(stepped(profile, share, rate)) == pytest.approx(FULL - drawn, abs=1e-9)


@given(share=shares, rate=rates, current=st.floats(0.1, 30), time=st.floats(0.1, 2), rest=st.floats(0.05, 5))
def test_rest_brings_charge_back_and_makes_none(
    share: float, rate: float, current: float, time: float, rest: float
) -> None:
    tired = stepped([(current, time)], share, rate)
    rested = stepped([(current, time), (0.0, rest)], share, rate)
    assert rested[0] > tired[0]
    assert rested[0] < share * sum(tired) + 1e-9
    assert sum(rested) == pytest.approx(sum(tired), abs=1e-9)


def test_after_a_long_rest_the_wells_are_level() -> None:
    at_hand, bound = stepped([(20.0, 1.0), (0.0, 1000.0)], 0.4, 1.0)
    assert at_hand / 0.4 == pytest.approx(bound / 0.6)


@given(share=shares, rate=rates, time=st.floats(0.05, 30))
def test_the_largest_discharge_just_empties_what_is_at_hand(share: float, rate: float, time: float) -> None:
    current = float(
        eq.largest_discharge(at_hand=share * FULL, charge=FULL, time=time, share=share, rate=rate)
    )
    assert stepped([(current, time)], share, rate)[0] == pytest.approx(0, abs=1e-8)
    assert current * time == pytest.approx(
        float(eq.capacity_over(full=FULL, time=time, share=share, rate=rate))
    )


@given(share=shares, rate=rates, drawn=st.floats(1, 60), time=st.floats(0.05, 5))
def test_the_largest_charge_just_fills_what_is_at_hand(
    share: float, rate: float, drawn: float, time: float
) -> None:
    at_hand, bound = stepped([(drawn * share, 1.0)], share, rate)
    state = {"charge": at_hand + bound, "time": time, "share": share, "rate": rate}
    current = float(eq.largest_charge(at_hand=at_hand, full=FULL, **state))
    assert current <= 0
    filled = float(eq.at_hand_after(at_hand=at_hand, current=current, **state))
    assert filled == pytest.approx(share * FULL, abs=1e-8)


def test_a_short_discharge_gets_what_is_at_hand_and_a_long_one_everything() -> None:
    assert float(eq.capacity_over(full=FULL, time=1e-6, share=0.4, rate=1.0)) == pytest.approx(40, rel=1e-4)
    assert float(eq.capacity_over(full=FULL, time=1e6, share=0.4, rate=1.0)) == pytest.approx(100, rel=1e-4)


@given(share=shares, rate=rates, times=st.tuples(st.floats(0.1, 10), st.floats(0.1, 10)))
def test_more_time_gets_more_out(share: float, rate: float, times: tuple[float, float]) -> None:
    shorter, longer = sorted(times)
    less, more = (
        float(eq.capacity_over(full=FULL, time=time, share=share, rate=rate)) for time in (shorter, longer)
    )
    assert less <= more + 1e-9


@given(profile=steps)
def test_with_everything_at_hand_it_counts_amperes(profile: list[tuple[float, float]]) -> None:
    at_hand, bound = stepped(profile, 1.0, 1.0)
    assert at_hand == pytest.approx(FULL - sum(current * time for current, time in profile), abs=1e-9)
    assert bound == pytest.approx(0, abs=1e-9)


def test_scenarios_side_by_side_are_the_scenarios_one_by_one() -> None:
    draw = np.random.default_rng(7)
    state = {
        "charge": draw.uniform(50, 100, 200),
        "current": draw.uniform(-20, 40, 200),
        "time": draw.uniform(0.01, 2, 200),
        "share": draw.uniform(0.1, 0.9, 200),
        "rate": draw.uniform(0.1, 3, 200),
    }
    at_hand = draw.uniform(5, 40, 200)
    together = eq.at_hand_after(at_hand=at_hand, **state)  # type: ignore[arg-type]
    order = draw.permutation(200)
    shuffled = eq.at_hand_after(at_hand=at_hand[order], **{word: one[order] for word, one in state.items()})  # type: ignore[arg-type]
    assert np.array_equal(np.asarray(shuffled), np.asarray(together)[order])
    for n in range(200):
        alone = eq.at_hand_after(
            at_hand=float(at_hand[n]), **{word: float(one[n]) for word, one in state.items()}
        )
        assert float(alone) == pytest.approx(float(np.asarray(together)[n]), rel=1e-12)


# ---- lifetimes of loads that repeat


@settings(max_examples=40, deadline=None)
@given(
    share=st.floats(0.1, 0.6), rate=st.floats(0.1, 2),
    loads=st.lists(st.tuples(st.floats(5, 60), st.floats(0.2, 2)), min_size=1, max_size=3),
    rest=st.floats(0.1, 1),
)  # fmt: skip
def test_the_life_on_a_pattern_is_when_a_solver_finds_it_empty(
    share: float, rate: float, loads: list[tuple[float, float]], rest: float
) -> None:
    pattern = [*loads, (0.0, rest)]
    life = eq.life_on(pattern, charge=FULL, share=share, rate=rate)
    passed, profile = 0.0, []
    while passed < life:
        for current, time in pattern:
            part = min(time, life - passed)
            if part > 0:
                profile.append((current, part))
            passed += part
    assert integrated(profile, share, rate)[0] == pytest.approx(0, abs=5e-6)
    assert stepped(profile[:-1], share, rate)[0] > 0


def test_a_load_that_takes_nothing_has_no_life() -> None:
    with pytest.raises(ArithmeticError, match="takes nothing out"):
        eq.life_on([(0.0, 10.0)], charge=1.0, share=0.5, rate=1.0)
    with pytest.raises(ArithmeticError, match="puts something in"):
        eq.life_on([(1.0, 10.0), (-2.0, 10.0)], charge=1.0, share=0.5, rate=1.0)


def test_alternating_loads_outlast_the_mean_load_drawn_at_once() -> None:
    steady = eq.life_on([(10.0, 1.0)], charge=FULL, share=0.2, rate=1.0)
    with_rest = eq.life_on([(20.0, 1.0), (0.0, 1.0)], charge=FULL, share=0.2, rate=1.0)
    assert with_rest < steady  # the same mean, in lumps
