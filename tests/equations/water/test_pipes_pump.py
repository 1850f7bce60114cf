"""Friction, taps and the pump: limits with their reasons, and independent solvers."""

from __future__ import annotations

import math

import pytest

from curbwright.equations import water as eq

GPM, PSI, FOOT, INCH, GALLON = 0.0000630901964, 6894.757293168, 0.3048, 0.0254, 0.003785411784
HALF_INCH = {"bore": 0.475 * INCH, "length": 10 * FOOT, "fittings": 3.0}
COLD = {"roughness": 1.5e-6, "density": 999.0, "viscosity": 1.12e-6}


def test_laminar_flow_has_no_memory_of_the_wall() -> None:
    assert eq.friction_factor(reynolds=1000.0, roughness=0.05) == pytest.approx(0.064)


@pytest.mark.parametrize("edge", [2000.0, 4000.0])
def test_the_friction_factor_does_not_jump(edge: float) -> None:
    below, above = (eq.friction_factor(reynolds=edge + d, roughness=1e-4) for d in (-1e-3, 1e-3))
    assert below == pytest.approx(above, rel=1e-5)


@pytest.mark.parametrize("reynolds", [4000.0, 14850.0, 2e5])
def test_the_friction_factor_solves_colebrook(reynolds: float) -> None:
    factor = eq.friction_factor(reynolds=reynolds, roughness=1.2e-4)
    right = -2 * math.log10(1.2e-4 / 3.7 + 2.51 / (reynolds * math.sqrt(factor)))
    assert 1 / math.sqrt(factor) == pytest.approx(right, rel=1e-6)


@pytest.mark.parametrize("gpm", [0.1, 0.5, 1.0, 2.0, 4.0])
def test_a_run_loses_what_the_library_of_fluids_says(gpm: float) -> None:
    from fluids.core import K_from_f, Reynolds, dP_from_K
    from fluids.friction import friction_factor

    flow = gpm * GPM
    speed = flow / (math.pi * HALF_INCH["bore"] ** 2 / 4)
    number = Reynolds(V=speed, D=HALF_INCH["bore"], nu=COLD["viscosity"])
    factor = friction_factor(Re=number, eD=COLD["roughness"] / HALF_INCH["bore"])
    both = K_from_f(fd=factor, L=HALF_INCH["length"], D=HALF_INCH["bore"]) + HALF_INCH["fittings"]
    theirs = dP_from_K(both, rho=COLD["density"], V=speed)
    ours = eq.run_loss(flow=flow, **HALF_INCH, **COLD)
    assert ours == pytest.approx(theirs, rel=1e-9 if not 2000 < number < 4000 else 0.25)


@pytest.mark.parametrize(("gpm", "low"), [(1.0, 20), (2.0, 13), (4.0, 7)])
def test_hazen_and_williams_reads_low_in_pipe_so_narrow(gpm: float, low: float) -> None:
    """By as much as a calculation of its own found, in per cent, with Colebrook at 60 °F."""
    straight = {"bore": 0.475 * INCH, "length": 100 * FOOT}
    older = eq.hazen_williams(flow=gpm * GPM, smoothness=150, **straight)
    newer = eq.run_loss(flow=gpm * GPM, fittings=0.0, **straight, **COLD)
    assert 100 * (1 - older / newer) == pytest.approx(low, abs=1.0)


def test_a_shut_pump_gives_nothing_and_a_tap_without_pressure_neither() -> None:
    tap = {**HALF_INCH, **COLD, "static": 7000.0, "rated_flow": 1e-4, "rated_pressure": 4e5}
    assert eq.tap_flow(pressure=7000.0, **tap) == 0.0
    assert eq.tap_flow(pressure=6000.0, **tap) == 0.0
    assert eq.tap_flow(pressure=7000.1, **tap) > 0.0


def test_a_tap_without_pipe_is_an_orifice() -> None:
    bare = {"bore": 1.0, "length": 0.0, "fittings": 0.0, **COLD}
    flow = eq.tap_flow(pressure=2e5, static=0.0, rated_flow=1e-4, rated_pressure=4e5, **bare)
    assert flow == pytest.approx(eq.outlet_flow(rated_flow=1e-4, rated_pressure=4e5, pressure=2e5), rel=1e-9)


def test_two_alike_in_series_pass_less_by_the_root_of_two() -> None:
    one = {"rated_flow": 1e-4, "rated_pressure": 1e5, "other_flow": 1e-4, "other_pressure": 1e5}
    assert eq.in_series(**one) == pytest.approx(1e-4 / math.sqrt(2))
    wide = one | {"other_flow": 1e3}
    assert eq.in_series(**wide) == pytest.approx(1e-4)


def test_a_rating_told_at_another_pressure_is_the_same_rating() -> None:
    told = {"rated_flow": 1e-4, "rated_pressure": 4e5}
    low = eq.outlet_flow(pressure=1e5, **told)
    assert eq.outlet_pressure(flow=low, **told) == pytest.approx(1e5)
    both = {"other_flow": 3e-5, "other_pressure": 1e5}
    at_four = eq.in_series(**told, **both)
    at_one = eq.in_series(rated_flow=low, rated_pressure=1e5, **both)
    assert at_four == pytest.approx(2 * at_one)


CYCLE = {
    "volume": GALLON, "charge": 38 * PSI, "cut_in": 40 * PSI, "cut_out": 55 * PSI, "atmosphere": 14.7 * PSI,
}  # fmt: skip
TAP = {"rated_flow": 0.5 * GPM, "rated_pressure": 60 * PSI}


def pump_flow(pressure: float) -> float:
    return (3.2 - 0.0345 * pressure / PSI) * GPM


def test_an_accumulator_cycles_as_an_ode_says() -> None:
    """One gallon, 38/40/55 psi, a half-gpm tap: some 11 s on, 28 s off, 91 starts an hour."""
    from scipy.integrate import solve_ivp

    def volume(pressure: float) -> float:
        return CYCLE["volume"] * (
            1 - (CYCLE["charge"] + CYCLE["atmosphere"]) / (pressure + CYCLE["atmosphere"])
        )

    def pressure(stored: float) -> float:
        return (CYCLE["charge"] + CYCLE["atmosphere"]) / (1 - stored / CYCLE["volume"]) - CYCLE["atmosphere"]

    def time(sign: int, start: float, end: float) -> float:
        def rate(_: float, stored: list[float]) -> list[float]:
            now = pressure(stored[0])
            drawn = TAP["rated_flow"] * math.sqrt(now / TAP["rated_pressure"])
            return [(pump_flow(now) if sign > 0 else 0.0) - drawn]

        def there(_: float, stored: list[float]) -> float:
            return pressure(stored[0]) - end

        there.terminal = True  # type: ignore[attr-defined]
        found = solve_ivp(rate, (0, 1e4), [volume(start)], events=there, rtol=1e-10, atol=1e-14)
        return float(found.t_events[0][0])

    on = eq.exact_run_time(**CYCLE, **TAP, flow_in=pump_flow(40 * PSI), flow_out=pump_flow(55 * PSI))
    off = eq.exact_rest_time(**CYCLE, **TAP)
    assert on == pytest.approx(time(1, 40 * PSI, 55 * PSI), rel=1e-6)
    assert off == pytest.approx(time(-1, 55 * PSI, 40 * PSI), rel=1e-6)
    assert (round(on), round(off), round(3600 / (on + off))) == (11, 28, 91)


def test_a_quarter_of_the_accumulator_starts_the_pump_four_times_as_often() -> None:
    small = CYCLE | {"volume": GALLON / 4}
    flows = {"flow_in": pump_flow(40 * PSI), "flow_out": pump_flow(55 * PSI)}
    on, off = eq.exact_run_time(**small, **TAP, **flows), eq.exact_rest_time(**small, **TAP)
    assert 3600 / (on + off) == pytest.approx(365, abs=1)


def test_a_tap_that_draws_all_never_lets_the_pump_stop() -> None:
    wide = {"rated_flow": 2.2 * GPM, "rated_pressure": 60 * PSI}
    with pytest.raises(ZeroDivisionError):
        eq.exact_run_time(**CYCLE, **wide, flow_in=pump_flow(40 * PSI), flow_out=pump_flow(55 * PSI))


def test_the_worst_draw_is_half_the_flow() -> None:
    flow, stored = 1e-4, 1e-3
    worst = eq.worst_starts(flow=flow, drawdown=stored)
    for share in (0.2, 0.4, 0.5, 0.6, 0.9):
        rest = eq.rest_time(drawdown=stored, draw=share * flow)
        run = eq.run_time(drawdown=stored, flow=flow, draw=share * flow)
        assert eq.starts(rest=rest, run=run) <= worst * (1 + 1e-12)
    half = {"drawdown": stored, "draw": flow / 2}
    assert eq.starts(rest=eq.rest_time(**half), run=eq.run_time(flow=flow, **half)) == pytest.approx(worst)


def test_no_air_lost_and_no_band_gives_no_water() -> None:
    assert eq.drawdown(**CYCLE | {"cut_out": 40 * PSI}) == 0.0
    higher = eq.drawdown(**CYCLE | {"atmosphere": 11.8 * PSI})
    assert higher > eq.drawdown(**CYCLE)


def test_stiff_pipe_carries_a_wave_at_the_speed_of_sound_in_water() -> None:
    stiff = eq.wave_speed(bulk=2.15e9, density=998.2, modulus=1e15, bore=0.012, wall=0.002)
    assert stiff == pytest.approx(math.sqrt(2.15e9 / 998.2), rel=1e-4)
