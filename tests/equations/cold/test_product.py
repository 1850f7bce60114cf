"""Specific heats of food against reference water, a published list and a second method."""

from __future__ import annotations

import pytest
from CoolProp.CoolProp import PropsSI

from curbwright import data
from curbwright.equations import cold as eq

COMPONENTS = {
    "water": eq.water_specific_heat, "protein": eq.protein_specific_heat, "fat": eq.fat_specific_heat,
    "carbohydrate": eq.carbohydrate_specific_heat, "fibre": eq.fibre_specific_heat,
    "ash": eq.ash_specific_heat,
}  # fmt: skip
TABLE = data.table("cold/foods")
LISTED = {
    "carrots": (3810, 3940), "fish": (3180, 4000), "lean beef": (3430, 3430), "milk": (3850, 3850),
    "potatoes": (3520, 3520), "tomatoes": (3980, 3980), "butter": (2300, 2300), "eggs": (3180, 3700),
}  # fmt: skip
"""Above freezing, J/(kg·K): a textbook's list (food-heat-capacities), where it scatters from low to high."""


def share(food: str, component: str) -> float:
    return float(TABLE.quantity(food, component, "share"))


def specific_heat(food: str, temperature: float = 278.15) -> float:
    return sum(eq.component_heat(share(food, name), of(temperature)) for name, of in COMPONENTS.items())


@pytest.mark.parametrize("temperature", [274.15, 283.15, 298.15, 333.15])
def test_water_in_food_has_the_specific_heat_of_water(temperature: float) -> None:
    reference = PropsSI("C", "T", temperature, "P", 101325, "Water")
    assert eq.water_specific_heat(temperature) == pytest.approx(reference, rel=0.011)


@pytest.mark.parametrize("food", TABLE.keys())
def test_a_food_is_all_of_its_parts(food: str) -> None:
    assert sum(share(food, component) for component in COMPONENTS) == pytest.approx(1.0, abs=1e-9)
    assert 250 < TABLE.quantity(food, "freezing", "temperature") < 273.15


@pytest.mark.parametrize("food", LISTED)
def test_composition_gives_the_listed_specific_heat_within_8_percent(food: str) -> None:
    low, high = LISTED[food]
    assert low * 0.92 <= specific_heat(food) <= high * 1.08


@pytest.mark.parametrize("food", [food for food in TABLE.keys() if food != "butter"])  # noqa: SIM118
def test_a_second_method_agrees_within_8_percent(food: str) -> None:
    """From the solids alone; butter is left out: it is nearly all fat, which that method does not know."""
    second = eq.specific_heat_from_solids(1 - share(food, "water"))
    assert specific_heat(food) == pytest.approx(second, rel=0.08)


def test_frozen_food_takes_less_heat_and_less_still_the_drier_it_is() -> None:
    for water in (0.4, 0.7, 0.95):
        assert eq.frozen_specific_heat(water) < eq.simple_specific_heat(water)
    assert eq.frozen_specific_heat(1.0) == pytest.approx(2100)
    assert eq.simple_specific_heat(1.0) == pytest.approx(4190)


def test_ice_grows_as_it_gets_colder_and_never_passes_the_water_there_is() -> None:
    shares = [
        float(eq.ice_share(water=0.7, freezing=271.45, temperature=271.45 - below))
        for below in (1, 5, 20, 40)
    ]
    assert shares == sorted(shares)
    assert shares[-1] < 0.7


def test_freezing_costs_far_more_than_cooling() -> None:
    whole = eq.freezing_enthalpy(
        above=3500.0, warm=283.15, freezing=271.45, latent=240000.0, below=2000.0, cold=255.15
    )
    cooling = 3500.0 * (283.15 - 271.45)
    assert whole == pytest.approx(cooling + 240000.0 + 2000.0 * 16.3)
    assert cooling < 0.2 * whole
