"""The pump's network against EPANET: one tap, two and three on a common tee."""

from __future__ import annotations

import warnings
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest

import curbwright
from curbwright.equations import water as eq

GPM, PSI, FOOT, INCH = 0.0000630901964, 6894.757293168, 0.3048, 0.0254
DENSITY, VISCOSITY, GRAVITY = 998.2, 1.02e-6, 9.80665
"""Water as the other solver takes it, by its relative viscosity of one."""
HEAD = DENSITY * GRAVITY
OPEN, SLOPE = 3.2 * GPM, 0.0345 * GPM / PSI
SUCTION = (4 * FOOT, 0.475 * INCH, 4.0)
TRUNK = (12 * FOOT, 0.475 * INCH, 3.3)
A, B = (6 * FOOT, 0.350 * INCH, 2.4), (10 * FOOT, 0.475 * INCH, 3.0)
RATED = 0.28402 * GPM
HIGH = 2.5 * FOOT
Branch = tuple[float, float, float]


@pytest.fixture(scope="module")
def other() -> Any:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        import wntr
    return wntr


def epanet(wntr: Any, branches: Sequence[Branch], folder: Path) -> dict[str, float]:
    """Flows in gpm and pressures in psi of the same network, solved by EPANET."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        net = wntr.network.WaterNetworkModel()
        net.options.hydraulic.headloss = "D-W"
        net.options.hydraulic.inpfile_units = "GPM"
        net.options.hydraulic.accuracy = 1e-7
        net.options.time.duration = 0
        net.add_reservoir("tank", base_head=0.0)
        for name in ("before", "after", "tee"):
            net.add_junction(name, elevation=0.0)
        points = [(q * GPM, (OPEN - q * GPM) / SLOPE / HEAD) for q in (0.0, 0.8, 1.6, 2.4, 3.19)]
        net.add_curve("line", "HEAD", points)
        net.add_pump("pump", "before", "after", "HEAD", "line")
        runs = {"suction": ("tank", "before", *SUCTION), "trunk": ("after", "tee", *TRUNK)}
        for number, branch in enumerate(branches):
            net.add_junction(f"tap{number}", elevation=HIGH)
            net.get_node(f"tap{number}").emitter_coefficient = RATED * (HEAD / PSI) ** 0.5
            runs[f"run{number}"] = ("tee", f"tap{number}", *branch)
        for name, (start, end, length, bore, fittings) in runs.items():
            net.add_pipe(name, start, end, length, bore, roughness=1.5e-6, minor_loss=fittings)
        found = wntr.sim.EpanetSimulator(net).run_sim(file_prefix=str(folder / "net"))
    flows, pressures = found.link["flowrate"].iloc[0], found.node["pressure"].iloc[0]
    told = {f"tap{n}": flows[f"run{n}"] / GPM for n in range(len(branches))}
    return {**told, "pump": flows["pump"] / GPM, "tee": pressures["tee"] * HEAD / PSI}


def ours(branches: Sequence[Branch]) -> dict[str, float]:
    water = {"roughness": 1.5e-6, "density": DENSITY, "viscosity": VISCOSITY}

    def drawn(pressure: float) -> list[float]:
        return [
            eq.tap_flow(pressure=pressure, static=HEAD * HIGH, length=length, bore=bore, fittings=fittings,
                        rated_flow=RATED, rated_pressure=PSI, **water)
            for length, bore, fittings in branches
        ]  # fmt: skip

    def given(pressure: float) -> float:
        keys = ("length", "bore", "fittings")
        suction = {f"suction_{key}": value for key, value in zip(keys, SUCTION, strict=True)}
        trunk = {f"trunk_{key}": value for key, value in zip(keys, TRUNK, strict=True)}
        return eq.supply_flow(
            pressure=pressure, low_pressure=0.0, low_flow=OPEN, high_pressure=10 * PSI,
            high_flow=OPEN - 10 * PSI * SLOPE, static=0.0, **suction, **trunk, **water,
        )  # fmt: skip

    low, high = 0.0, 100 * PSI
    for _ in range(80):
        middle = (low + high) / 2
        low, high = (middle, high) if given(middle) > sum(drawn(middle)) else (low, middle)
    taps = {f"tap{number}": flow / GPM for number, flow in enumerate(drawn(low))}
    return {**taps, "pump": sum(drawn(low)) / GPM, "tee": low / PSI}


@pytest.mark.parametrize("branches", [(A,), (B,), (A, B), (A, B, B)], ids=["A", "B", "AB", "ABB"])
def test_epanet_agrees_on_every_flow_and_pressure(
    other: Any, branches: Sequence[Branch], tmp_path: Path
) -> None:
    theirs, found = epanet(other, branches, tmp_path), ours(branches)
    assert set(theirs) == set(found)
    for name, value in theirs.items():
        assert found[name] == pytest.approx(value, rel=5e-4), name


def test_a_curve_of_one_point_is_for_centrifugal_pumps(other: Any) -> None:
    """EPANET makes 133 % of the head at no flow and twice the flow at no head of it: never use it here."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        net = other.network.WaterNetworkModel()
        net.add_reservoir("low", base_head=0.0)
        net.add_junction("high")
        net.add_curve("point", "HEAD", [(10 * GPM, 100 * FOOT)])
        net.add_pump("pump", "low", "high", "HEAD", "point")
        shut, fall, power = net.get_link("pump").get_head_curve_coefficients()
    assert shut / FOOT == pytest.approx(133, abs=0.5)
    assert (shut / fall) ** (1 / power) / GPM == pytest.approx(20, rel=1e-3)


COMMON = """
[cart]
name = "A tap as carts have them"
[trailer]
deck_length = "10 ft"
deck_width = "7 ft"
ball_to_deck = "4 ft"
[items.tank]
like = "tank-fresh-20"
back = "1 ft"
[items.pump]
like = "pump-12v-3.0"
back = "4 ft"
[water.taps.ware]
flow = "2.2 gpm"
above = "44 in"
[water.pipes.suction]
to = "pump"
length = "2 ft"
fittings = "3"
[water.pipes.shared]
to = "taps"
length = "4 ft"
elbows = 2
checks = 1
[water.pipes.ware]
to = "ware"
length = "6 ft"
elbows = 3
"""


def test_a_twelve_volt_pump_of_this_class_moves_about_one_and_a_half_gallons_a_minute() -> None:
    """Common practice: some 1.6 gpm at an ordinary open tap, at 6 or 7 A."""
    figures = curbwright.work(curbwright.read_text(COMMON)).figures
    assert float(figures["water.pump_flow_one_tap"]) / GPM == pytest.approx(1.6, abs=0.2)
    assert 5.5 < float(figures["water.pump.one_ware.current"]) < 7.5
