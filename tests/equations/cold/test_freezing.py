"""Freezing times and slabs against solutions by finite volumes."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from curbwright.equations import cold as eq

BEEF = {"density": 1050.0, "film": 10.0, "air": 253.15}
SOLIDS, WATER, PROTEIN, FREEZING = 0.2828, 0.7172, 0.2124, 271.45


def enthalpy_table() -> tuple[np.ndarray, np.ndarray]:
    """Temperature and heat of a kilogram of the beef, by apparent specific heats below and above freezing."""
    above = eq.specific_heat_from_solids(SOLIDS)
    bound = 0.4 * PROTEIN
    below_zero = np.linspace(-45.0, FREEZING - 273.15, 4000)
    apparent = 1550 + 1260 * SOLIDS - (WATER - bound) * 333600 * (FREEZING - 273.15) / below_zero**2
    heat = np.concatenate([[0.0], np.cumsum((apparent[1:] + apparent[:-1]) / 2 * np.diff(below_zero))])
    temperatures = np.concatenate([below_zero, [40.0]]) + 273.15
    return temperatures, np.concatenate([heat, [heat[-1] + above * (40.0 - (FREEZING - 273.15))]])


def frozen_after(half: float, start: float, centre: float, conductivity: float, cells: int = 24) -> float:
    """Seconds until the middle of a slab, cooled on its faces, is down to ``centre``."""
    temperatures, heats = enthalpy_table()
    step = half / cells
    outer = 1 / (1 / BEEF["film"] + step / 2 / conductivity)

    def rates(_: float, heat: np.ndarray) -> np.ndarray:
        place = np.interp(heat, heats, temperatures)
        flow = np.diff(place) * conductivity / step
        into = np.zeros(cells)
        into[:-1] += flow
        into[1:] -= flow
        into[-1] += outer * (BEEF["air"] - place[-1])
        return into / (BEEF["density"] * step)

    def cold(_: float, heat: np.ndarray) -> float:
        return float(np.interp(heat[0], heats, temperatures)) - centre

    cold.terminal = True  # type: ignore[attr-defined]
    begin = np.full(cells, np.interp(start, temperatures, heats))
    run = solve_ivp(rates, (0, 2e5), begin, events=cold, method="LSODA", rtol=1e-6, atol=1.0)
    return float(run.t_events[0][0])


def two_steps(half: float, start: float, centre: float, conductivity: float) -> float:
    mean = eq.mean_freezing_temperature(centre, BEEF["air"])
    latent = eq.freezable_heat(WATER, PROTEIN)
    frozen = eq.frozen_heat_from_solids(SOLIDS)
    cooling = eq.cooling_heat(
        density=BEEF["density"], specific_heat=eq.specific_heat_from_solids(SOLIDS), start=start, mean=mean
    )
    freezing = eq.frozen_heat(
        density=BEEF["density"], latent=latent, specific_heat=frozen, mean=mean, centre=centre
    )
    return eq.freezing_time(
        half=half, shape=1.0, film=BEEF["film"], conductivity=conductivity, cooling=cooling,
        freezing=freezing, start=start, mean=mean, air=BEEF["air"],
    )  # fmt: skip


@pytest.mark.parametrize("half", [0.0125, 0.025])
def test_two_steps_are_within_a_tenth_and_latent_heat_alone_is_far_too_short(half: float) -> None:
    exact = frozen_after(half, 283.15, 263.15, 1.5)
    assert two_steps(half, 283.15, 263.15, 1.5) == pytest.approx(exact, rel=0.12)
    alone = eq.slab_freezing_time(
        latent=BEEF["density"] * eq.freezable_heat(WATER, PROTEIN), freezing=FREEZING, air=BEEF["air"],
        thickness=2 * half, film=BEEF["film"], conductivity=1.5,
    )  # fmt: skip
    assert 0.65 * exact < alone < 0.9 * exact


def warmed(place: float, time: float, cells: int = 200) -> float:
    """Temperature in a slab, insulated at one face, by finite volumes."""
    half, conductivity, density, heat, film = 0.05, 0.5, 1030.0, 3600.0, 12.0
    step = half / cells
    outer = 1 / (1 / film + step / 2 / conductivity)

    def rates(_: float, inside: np.ndarray) -> np.ndarray:
        flow = np.diff(inside) * conductivity / step
        into = np.zeros(cells)
        into[:-1] += flow
        into[1:] -= flow
        into[-1] += outer * (277.0 - inside[-1])
        return into / (density * heat * step)

    run = solve_ivp(rates, (0, time), np.full(cells, 330.0), method="LSODA", rtol=1e-9, atol=1e-9)
    middles = (np.arange(cells) + 0.5) / cells
    return float(np.interp(place, middles, run.y[:, -1]))


@pytest.mark.parametrize("place", [0.01, 0.5, 0.9])
@pytest.mark.parametrize("time", [600.0, 3600.0, 20000.0])
def test_the_series_of_a_slab_is_the_solution_by_finite_volumes(place: float, time: float) -> None:
    series = eq.slab_temperature(
        start=330.0, around=277.0, time=time, half=0.05, place=place, film=12.0, conductivity=0.5,
        density=1030.0, specific_heat=3600.0,
    )  # fmt: skip
    assert series == pytest.approx(warmed(place, time), abs=0.02)


def test_a_slab_begins_at_its_start_and_ends_at_the_air() -> None:
    def at(time: float, place: float = 0.5) -> float:
        return eq.slab_temperature(
            start=330.0, around=277.0, time=time, half=0.05, place=place, film=12.0, conductivity=0.5,
            density=1030.0, specific_heat=3600.0,
        )  # fmt: skip

    assert at(30.0, 0.0) == pytest.approx(330.0, abs=0.05)
    assert at(1e6) == pytest.approx(277.0, abs=1e-6)


def test_a_four_inch_pan_does_not_cool_in_two_hours() -> None:
    """Half a slab of twice its depth, in air of 39 °F: from 135 °F its middle stays far above 70 °F."""
    after = eq.slab_temperature(
        start=330.37, around=277.04, time=7200.0, half=0.1016, place=0.0, film=12.0, conductivity=0.5,
        density=1030.0, specific_heat=3600.0,
    )  # fmt: skip
    assert after > 294.26
