"""Cooking: the plate against finite differences, the series against finite volumes, paces by hand."""

from __future__ import annotations

import numpy as np
import pytest
from CoolProp.CoolProp import PropsSI
from scipy.integrate import solve_ivp

from curbwright.equations import cooking as eq

STEFAN = 5.670374419e-8
STEEL = {"conductivity": 50.0, "density": 7850.0, "specific_heat": 480.0}
AREA, FILM, EMISSIVITY, AIR = 0.5, 8.5, 0.8, 294.0


def loss(plate: np.ndarray | float) -> np.ndarray | float:
    return FILM * (plate - AIR) + EMISSIVITY * STEFAN * (plate**4 - AIR**4)


@pytest.mark.parametrize(("thickness", "heat"), [(0.0127, 9000.0), (0.019, 7000.0), (0.0254, 12000.0)])
def test_a_plate_solved_layer_by_layer_is_hot_when_the_lump_says(thickness: float, heat: float) -> None:
    """One dimension through the plate: burners below, air and radiation above, 40 layers."""
    layers = 40
    deep = thickness / layers
    each = STEEL["density"] * STEEL["specific_heat"] * deep

    def rates(_: float, layer: np.ndarray) -> np.ndarray:
        flow = STEEL["conductivity"] * np.diff(layer) / deep
        into = np.zeros(layers)
        into[:-1] += flow
        into[1:] -= flow
        into[0] += heat / AREA
        into[-1] -= loss(layer[-1])
        return into / each

    def hot(_: float, layer: np.ndarray) -> float:
        return float(layer[-1] - 463.0)

    hot.terminal = True  # type: ignore[attr-defined]
    solved = solve_ivp(rates, (0, 7200), np.full(layers, AIR), method="BDF", events=hot, rtol=1e-8, atol=1e-6)
    through = float(solved.t_events[0][0])
    mass = eq.plate_mass(AREA, thickness=thickness, density=7850)
    lumped = eq.heat_up_time(
        capacity=eq.heat_capacity(mass, 480), heat=heat, area=AREA, film=FILM, emissivity=EMISSIVITY, air=AIR,
        start=AIR, end=463.0,
    )  # fmt: skip
    assert through == pytest.approx(lumped, rel=0.03)
    assert through > lumped, "the top is the last to be hot"
    net = heat - AREA * float(loss(463.0))
    spread = solved.y[0, -1] - solved.y[-1, -1]
    most = eq.through_difference(heat=heat, area=AREA, thickness=thickness, conductivity=50)
    least = eq.through_difference(heat=net, area=AREA, thickness=thickness, conductivity=50)
    assert least < spread < 1.4 * most


def test_heat_up_without_loss_is_capacity_over_heat() -> None:
    time = eq.heat_up_time(
        capacity=40000, heat=8000, area=1e-12, film=8.5, emissivity=0.8, air=290, start=290, end=390
    )
    assert time == pytest.approx(500, rel=1e-9)


def test_heat_up_agrees_with_small_steps_in_time() -> None:
    plate, time = AIR, 0.0
    while plate < 463.0:
        plate += (9000 - AREA * float(loss(plate))) / 40000 * 0.1
        time += 0.1
    lumped = eq.heat_up_time(
        capacity=40000, heat=9000, area=AREA, film=FILM, emissivity=EMISSIVITY, air=AIR, start=AIR, end=463.0
    )
    assert lumped == pytest.approx(time, abs=0.3)


def test_contact_agrees_with_finite_volumes_at_the_first_moment() -> None:
    """Two bodies, equal cells fine enough that neither far end feels anything in a tenth of a second."""
    cells, size = 400, 1e-5
    heat = np.r_[np.full(cells, 7850 * 480.0), np.full(cells, 1050 * 3500.0)]
    conducts = np.r_[np.full(cells, 50.0), np.full(cells, 0.45)]
    between = 2 * conducts[:-1] * conducts[1:] / (conducts[:-1] + conducts[1:])
    warm = np.r_[np.full(cells, 463.15), np.full(cells, 277.15)]
    solved = solve_ivp(
        lambda _, t: np.diff(np.r_[0, between * np.diff(t), 0]) / size**2 / heat, (0, 0.02), warm,
        method="BDF", rtol=1e-7, atol=1e-6,
    )  # fmt: skip
    end = solved.y[:, -1]
    face = (50 * end[cells - 1] + 0.45 * end[cells]) / 50.45
    said = eq.contact_temperature(
        plate=463.15, food=277.15, plate_conductivity=50, plate_density=7850, plate_specific_heat=480,
        food_conductivity=0.45, food_density=1050, food_specific_heat=3500,
    )  # fmt: skip
    assert face == pytest.approx(float(said), abs=0.3)


@pytest.mark.parametrize("shape", ["slab", "cylinder"])
def test_the_middle_is_hot_when_finite_volumes_say(shape: str) -> None:
    cells, reach, film = 200, 0.01, 400.0
    conductivity, density, specific_heat = 0.45, 1050.0, 3500.0
    edges = np.linspace(0, reach, cells + 1)
    faces = edges if shape == "cylinder" else np.ones(cells + 1)
    volumes = np.diff(edges**2) / 2 if shape == "cylinder" else np.diff(edges)
    last = 1 / (1 / film + reach / cells / 2 / conductivity)

    def rates(_: float, t: np.ndarray) -> np.ndarray:
        flow = np.zeros(cells + 1)
        flow[1:-1] = conductivity * np.diff(t) / (reach / cells) * faces[1:-1]
        flow[-1] = last * (373.15 - t[-1]) * faces[-1]
        return np.diff(flow) / volumes / density / specific_heat

    def done(_: float, t: np.ndarray) -> float:
        return float(t[0] - 347.15)

    done.terminal = True  # type: ignore[attr-defined]
    solved = solve_ivp(
        rates, (0, 5000), np.full(cells, 278.15), method="BDF", events=done, rtol=1e-8, atol=1e-7
    )
    common = {"start": 278.15, "around": 373.15, "end": 347.15, "film": film, "conductivity": conductivity}
    if shape == "cylinder":
        said = eq.cylinder_time(radius=reach, diffusivity=conductivity / density / specific_heat, **common)
    else:
        said = eq.centre_time(half=reach, density=density, specific_heat=specific_heat, **common)
    assert said == pytest.approx(float(solved.t_events[0][0]), rel=0.002)


def test_what_is_never_reached_gives_no_time() -> None:
    with pytest.raises(ZeroDivisionError, match="never"):
        eq.centre_time(
            start=278, around=340, end=345, half=0.01, film=300, conductivity=0.45, density=1050,
            specific_heat=3500,
        )  # fmt: skip


@pytest.mark.parametrize("celsius", [10, 40, 60, 82, 100])
def test_heat_of_evaporation_is_that_of_reference_water(celsius: float) -> None:
    kelvin = celsius + 273.15
    reference = PropsSI("H", "T", kelvin, "Q", 1, "Water") - PropsSI("H", "T", kelvin, "Q", 0, "Water")
    assert eq.vapour_heat(kelvin) == pytest.approx(reference, rel=0.002)


def test_a_larger_plate_never_slows_it() -> None:
    times = [
        eq.plate_time(portions=100, each=0.04, time=300, turn=25, area=size, usable=0.85)
        for size in (0.3, 0.5, 0.9)
    ]
    assert times == sorted(times, reverse=True)
