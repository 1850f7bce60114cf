"""Hydrogen: what a charging battery gives off, and the openings that carry it away.

The European way counts a gas current by chemistry and asks for air and for an opening low and one high. The
American way turns an overcharge current into hydrogen and thins it to 1 %. The rule for recreational vehicles
names one size of opening whatever stands behind it.
"""

from curbwright.figures import equation
from curbwright.quantities import (
    Amperes,
    Coulombs,
    CubicMetres,
    CubicMetresPerCoulomb,
    CubicMetresPerSecond,
    Kelvins,
    Number,
    PerSecond,
    Seconds,
    SquareMetres,
)


@equation("en-50272-2:Q = 0.05 n I C / 1000 in m3/h, mA/Ah and Ah", empirical=True)
def vent_flow_by_charge(*, cells: Number, gas_rate: PerSecond, charge: Coulombs) -> CubicMetresPerSecond:
    """Air that keeps hydrogen below its limit, from the gas current for each ampere-hour.

    0.05 m³/h stands for each ampere of gas current and cell: 24 times the hydrogen, with a safety of 5.

    >>> round(vent_flow_by_charge(cells=6, gas_rate=20 / 3600000, charge=220 * 3600) * 3600, 4)
    1.32
    """
    return 0.05 * cells * gas_rate * charge / 3600


@equation("en-50272-2:A = 28 Q in cm2 and m3/h", empirical=True)
def vent_opening(flow: CubicMetresPerSecond) -> SquareMetres:
    """Free area of the opening low down, and again of the one high up, for natural ventilation.

    28 cm² for each m³/h: the air moves at 0.1 m/s.

    >>> round(vent_opening(1.32 / 3600) * 10000, 2)
    36.96
    """
    return 28 * flow * 3600 / 10000


@equation("en-50272-2:A = 28 Q, turned round", empirical=True)
def flow_through(opening: SquareMetres) -> CubicMetresPerSecond:
    """Air that openings of an area low down and high up are counted for.

    >>> round(flow_through(36.96 / 10000) * 3600, 4)
    1.32
    """
    return opening * 10000 / 28 / 3600


@equation("en-50272-2:Q = 0.05 n I C / 1000, turned round", empirical=True)
def charge_vented(*, flow: CubicMetresPerSecond, cells: Number, gas_rate: PerSecond) -> Coulombs:
    """Capacity that an air flow is enough for.

    >>> round(charge_vented(flow=1.32 / 3600, cells=6, gas_rate=20 / 3600000) / 3600, 2)
    220.0
    """
    return flow * 3600 / (0.05 * cells * gas_rate)


@equation(
    "hydrogen-per-ampere:0.000269 cfm for each ampere and cell, thinned to 1 %", empirical=True, uncited=True
)
def vent_flow_by_current(cells: Number, current: Amperes) -> CubicMetresPerSecond:
    """Air that thins the hydrogen of an overcharge current to 1 %, a quarter of what burns.

    0.000269 cfm, or 1.2695e-7 m³/s, of hydrogen comes from each cell and ampere.

    >>> round(vent_flow_by_current(cells=6, current=4.4) / 0.000471947443, 3)
    0.71
    """
    return 1.26954e-7 * cells * current / 0.01


@equation("faraday:2 electrons a molecule", empirical=True)
def hydrogen_volume(charge: Coulombs, temperature: Kelvins) -> CubicMetres:
    """Hydrogen that a charge splits off in one cell, at sea level.

    8.314462618 J/mol/K, 96485 C/mol, two electrons a molecule, 101325 Pa.

    >>> round(hydrogen_volume(charge=3600.0, temperature=273.15) * 1000, 4)
    0.4181
    """
    return charge * 8.314462618 * temperature / (2 * 96485 * 101325)


@equation("hydrogen-recharge:step 1")
def recharge_hydrogen(
    *, cells: Number, charge: Coulombs, overcharge: Number, per_charge: CubicMetresPerCoulomb, time: Seconds
) -> CubicMetresPerSecond:
    """Hydrogen while the overcharge of a recharge goes in over its last hours.

    >>> recharge_hydrogen(cells=10, charge=360000.0, overcharge=0.2, per_charge=1e-7, time=14400.0)
    0.000005
    """
    return cells * charge * overcharge * per_charge / time


@equation("en-50272-2:gas current", uncited=True)
def gas_current(charge: Coulombs, gas_rate: PerSecond) -> Amperes:
    """Current that splits water near the end of a charge.

    >>> round(gas_current(charge=220 * 3600, gas_rate=20 / 3600000), 4)
    4.4
    """
    return charge * gas_rate
