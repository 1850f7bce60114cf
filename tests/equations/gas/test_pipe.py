"""Pipe against the printed tables of the code and against a flow calculation of another kind."""

from __future__ import annotations

import math

import pytest
from CoolProp.CoolProp import PropsSI

from curbwright.equations import gas as eq

INCH, FOOT, WATER, BTU_H = 0.0254, 0.3048, 249.08891, 0.29307107
HEAT = 2488 * 37258.94580783128
BORES = {"1/2": 0.622, "3/4": 0.824, "1": 1.049, "1 1/4": 1.380}
COPPER = {"1/4": 0.305, "3/8": 0.402, "1/2": 0.527, "5/8": 0.652, "3/4": 0.745}
PIPE_TABLE = {
    10: (291, 608, 1150, 2350), 20: (200, 418, 787, 1620), 30: (160, 336, 632, 1300),
    40: (137, 287, 541, 1110), 50: (122, 255, 480, 985), 60: (110, 231, 434, 892),
}  # fmt: skip
COPPER_TABLE = {
    10: (45, 93, 188, 329, 467), 20: (31, 64, 129, 226, 321), 30: (25, 51, 104, 182, 258),
    40: (21, 44, 89, 155, 220),
}  # fmt: skip
CELLS = [
    *((bore, feet, cell) for feet, row in PIPE_TABLE.items()
      for bore, cell in zip(BORES.values(), row, strict=True)),
    *((bore, feet, cell) for feet, row in COPPER_TABLE.items()
      for bore, cell in zip(COPPER.values(), row, strict=True)),
]  # fmt: skip


def capacity(bore: float, feet: float, drop: float = 0.5) -> float:
    """BTU/h."""
    flow = eq.low_pressure_flow(bore=bore * INCH, drop=drop * WATER, length=feet * FOOT, factor=1.2462)
    return eq.capacity_of(flow, HEAT) / BTU_H


@pytest.mark.parametrize(("bore", "feet", "printed"), CELLS)
def test_every_cell_of_the_tables_of_the_code(bore: float, feet: float, printed: float) -> None:
    """Printed to three digits, or two; the code rounds down and takes a slightly lower heating value."""
    digit = 10 ** (math.floor(math.log10(printed)) - 2) if printed >= 100 else 1
    worked = capacity(bore, feet) / 1000
    assert printed * 0.985 - digit / 2 <= worked <= printed * 1.012 + digit


def test_bore_drop_and_flow_lead_back_to_each_other() -> None:
    flow = eq.low_pressure_flow(bore=0.0158, drop=120.0, length=5.0, factor=1.2462)
    assert eq.low_pressure_bore(flow=flow, drop=120.0, length=5.0, factor=1.2462) == pytest.approx(0.0158)
    assert eq.low_pressure_drop(flow=flow, bore=0.0158, length=5.0, factor=1.2462) == pytest.approx(120.0)


def darcy_bore(load: float, feet: float) -> float:
    """Bore for half an inch of water by friction of a rough pipe: another kind of calculation."""
    air = {"T": 288.7, "P": 101325 + 11 * WATER}
    density = PropsSI("D", "T", air["T"], "P", air["P"], "Propane")
    viscosity = PropsSI("V", "T", air["T"], "P", air["P"], "Propane")
    flow = load * BTU_H / HEAT * 101325 / air["P"]
    low, high = 0.002, 0.1
    while high - low > 1e-7:
        bore = (low + high) / 2
        speed = flow / (math.pi * bore**2 / 4)
        reynolds = density * speed * bore / viscosity
        friction = 0.25 / math.log10(4.57e-5 / bore / 3.7 + 5.74 / reynolds**0.9) ** 2
        drop = friction * feet * FOOT / bore * density * speed**2 / 2
        low, high = (bore, high) if drop > 0.5 * WATER else (low, bore)
    return low


@pytest.mark.parametrize(("load", "feet"), [(291_000, 10), (122_000, 50), (231_000, 60), (632_000, 30)])
def test_a_rough_pipe_by_friction_is_within_a_seventh(load: float, feet: float) -> None:
    flow = load * BTU_H / HEAT
    bore = eq.low_pressure_bore(flow=flow, drop=0.5 * WATER, length=feet * FOOT, factor=1.2462)
    assert darcy_bore(load, feet) == pytest.approx(bore, rel=0.14)


def test_a_drop_goes_with_less_than_the_square_of_the_load() -> None:
    half, whole = (
        eq.drop_by_capacity(load=load, capacity=20_000.0, drop=0.5 * WATER) for load in (10_000.0, 20_000.0)
    )
    assert whole == 0.5 * WATER
    assert math.log2(whole / half) == pytest.approx(0.381 / 0.206)


def test_a_hose_by_its_capacity_is_the_pipe_equation() -> None:
    load = capacity(0.375, 6) * BTU_H
    flow = eq.flow_of(load / 3, HEAT)
    by_bore = eq.low_pressure_drop(flow=flow, bore=0.375 * INCH, length=6 * FOOT, factor=1.2462)
    assert eq.drop_by_capacity(load=load / 3, capacity=load, drop=0.5 * WATER) == pytest.approx(by_bore)


def test_fittings_lengthen_a_run() -> None:
    long = eq.equivalent_length(length=3.0, bore=0.02, elbows=2, each_elbow=30, tees=1, each_tee=60)
    assert long == pytest.approx(3.0 + 0.02 * 120)
    assert eq.equivalent_length(length=3.0, bore=0.02, elbows=0, each_elbow=30, tees=0, each_tee=60) == 3.0


def test_orifice_of_a_burner() -> None:
    """30,000 BTU/h at 10 in of water takes about 0.063 in, and the formula leads back."""
    flow = eq.flow_of(30_000 * BTU_H, HEAT)
    bore = eq.orifice_bore(flow=flow, pressure=10 * WATER, gravity=1.5, factor=0.9)
    assert bore / INCH == pytest.approx(0.063, abs=0.0006)
    assert eq.orifice_flow(bore=bore, pressure=10 * WATER, gravity=1.5, factor=0.9) == pytest.approx(flow)


def test_an_orifice_for_natural_gas_passes_more_than_twice_the_heat_on_propane() -> None:
    """The same bore: 3.5 in of water of natural gas at 1,050 BTU/ft3, 10 in of propane at 2,488."""
    natural = eq.orifice_flow(bore=0.0016, pressure=3.5 * WATER, gravity=0.6, factor=0.9) * 1050
    propane = eq.orifice_flow(bore=0.0016, pressure=10 * WATER, gravity=1.5, factor=0.9) * 2488
    assert propane / natural > 2


def test_altitude_by_both_readings() -> None:
    """80,000 BTU/h at 5,000 ft: 64,000 counted from the sea, 70,400 counted from 2,000 ft."""
    step, altitude = 1000 * FOOT, 5000 * FOOT
    assert eq.derated_from_sea(input=80_000.0, altitude=altitude, share=0.04, step=step) == pytest.approx(
        64_000
    )
    above = eq.derated_from_base(input=80_000.0, altitude=altitude, base=2000 * FOOT, share=0.04, step=step)
    assert above == pytest.approx(70_400)
