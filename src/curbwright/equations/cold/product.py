"""Food as a thing with heat in it: its specific heat from what it is made of, its heat of freezing.

Components are shares of the mass. The composition formulas hold from -40 to 150 °C.
"""

from numpy import log

from curbwright.figures import equation
from curbwright.quantities import (
    CubicMetres,
    Joules,
    JoulesPerKilogram,
    JoulesPerKilogramKelvin,
    Kelvins,
    Kilograms,
    KilogramsPerCubicMetre,
    Number,
    TemperatureDifference,
)


@equation("food-composition-water", empirical=True)
def water_specific_heat(temperature: Kelvins) -> JoulesPerKilogramKelvin:
    """Specific heat of the water in food, above freezing.

    >>> round(water_specific_heat(temperature=293.15), 1)
    4176.6
    """
    return 4176.2 - 0.090864 * (temperature - 273.15) + 0.0054731 * (temperature - 273.15) ** 2


@equation("food-composition:protein", empirical=True)
def protein_specific_heat(temperature: Kelvins) -> JoulesPerKilogramKelvin:
    """Specific heat of protein.

    >>> round(protein_specific_heat(temperature=278.15), 1)
    2014.2
    """
    return 2008.2 + 1.2089 * (temperature - 273.15) - 0.0013129 * (temperature - 273.15) ** 2


@equation("food-composition:fat", empirical=True)
def fat_specific_heat(temperature: Kelvins) -> JoulesPerKilogramKelvin:
    """Specific heat of fat.

    >>> round(fat_specific_heat(temperature=278.15), 1)
    1991.4
    """
    return 1984.2 + 1.4733 * (temperature - 273.15) - 0.0048008 * (temperature - 273.15) ** 2


@equation("food-composition:carbohydrate", uncited=True, empirical=True)
def carbohydrate_specific_heat(temperature: Kelvins) -> JoulesPerKilogramKelvin:
    """Specific heat of carbohydrate, fibre left out.

    >>> round(carbohydrate_specific_heat(temperature=278.15), 1)
    1558.5
    """
    return 1548.8 + 1.9625 * (temperature - 273.15) - 0.0059399 * (temperature - 273.15) ** 2


@equation("food-composition:fibre", uncited=True, empirical=True)
def fibre_specific_heat(temperature: Kelvins) -> JoulesPerKilogramKelvin:
    """Specific heat of fibre.

    >>> round(fibre_specific_heat(temperature=278.15), 1)
    1854.9
    """
    return 1845.9 + 1.8306 * (temperature - 273.15) - 0.0046509 * (temperature - 273.15) ** 2


@equation("food-composition:ash", empirical=True)
def ash_specific_heat(temperature: Kelvins) -> JoulesPerKilogramKelvin:
    """Specific heat of ash: salts and minerals.

    >>> round(ash_specific_heat(temperature=278.15), 1)
    1102.0
    """
    return 1092.6 + 1.8896 * (temperature - 273.15) - 0.0036817 * (temperature - 273.15) ** 2


@equation("food-composition:sum over the components")
def component_heat(share: Number, specific_heat: JoulesPerKilogramKelvin) -> JoulesPerKilogramKelvin:
    """What a component adds to the specific heat of a food.

    >>> component_heat(share=0.75, specific_heat=4176)
    3132.0
    """
    return share * specific_heat


@equation("food-from-solids:above freezing", empirical=True)
def specific_heat_from_solids(solids: Number) -> JoulesPerKilogramKelvin:
    """Specific heat of unfrozen food from its solids alone: a second opinion on the composition.

    >>> round(specific_heat_from_solids(solids=0.076), 1)
    4014.9
    """
    return 4190 - 2300 * solids - 628 * solids**3


@equation("food-simple:above freezing", empirical=True)
def simple_specific_heat(water: Number) -> JoulesPerKilogramKelvin:
    """Specific heat of unfrozen food from its water.

    >>> round(simple_specific_heat(water=0.6))
    2850
    """
    return 4190 * water + 840 * (1 - water)


@equation("food-simple:below freezing", empirical=True)
def frozen_specific_heat(water: Number) -> JoulesPerKilogramKelvin:
    """Specific heat of frozen food from its water, well below freezing.

    >>> round(frozen_specific_heat(water=0.6))
    1596
    """
    return 2100 * water + 840 * (1 - water)


@equation("food-simple:latent heat", empirical=True)
def freezing_heat(water: Number) -> JoulesPerKilogram:
    """Heat food gives up in freezing, from its water.

    >>> round(freezing_heat(water=0.6))
    201000
    """
    return 335000 * water


@equation("food-table:latent heat of its water", empirical=True)
def freezing_heat_of_water(water: Number) -> JoulesPerKilogram:
    """Heat food gives up in freezing, if all its water freezes: the value tables print.

    >>> round(freezing_heat_of_water(water=0.924))
    308616
    """
    return 334000 * water


@equation("ice-in-food", empirical=True)
def ice_share(*, water: Number, freezing: Kelvins, temperature: Kelvins) -> Number:
    """Share of a food that is ice below its freezing point.

    ``freezing`` is where freezing begins. Not for the first half degree below it.

    >>> round(float(ice_share(water=0.58, freezing=271.45, temperature=253.15)), 4)
    0.5164
    """
    return 1.105 * water / (1 + 0.7138 / log(freezing - temperature + 1))


@equation("ice-in-food")
def part_of_mass(mass: Kilograms, share: Number) -> Kilograms:
    """Mass of a part.

    >>> part_of_mass(mass=150, share=0.5)
    75.0
    """
    return mass * share


@equation("ice-in-food")
def mass_left(whole: Kilograms, taken: Kilograms) -> Kilograms:
    """What is left of a mass: ice not melted yet, water not frozen yet.

    >>> mass_left(whole=4, taken=0.5)
    3.5
    """
    return whole - taken


@equation("food-frozen:bound water stays liquid", empirical=True)
def freezable_heat(water: Number, protein: Number) -> JoulesPerKilogram:
    """Heat food gives up in freezing, the water bound to its protein left liquid.

    >>> round(freezable_heat(water=0.7172, protein=0.2124))
    210915
    """
    return 333600 * (water - 0.4 * protein)


@equation("food-frozen:from solids", empirical=True)
def frozen_heat_from_solids(solids: Number) -> JoulesPerKilogramKelvin:
    """Specific heat of frozen food from its solids, without the ice that still forms.

    >>> round(frozen_heat_from_solids(solids=0.2828), 1)
    1906.3
    """
    return 1550 + 1260 * solids


@equation("steady-flow:heat a product gives up")
def heat_to_cool(
    *, mass: Kilograms, specific_heat: JoulesPerKilogramKelvin, warm: Kelvins, cold: Kelvins
) -> Joules:
    """Heat to be taken out of food to cool it without freezing, or frozen food to cool it further.

    >>> heat_to_cool(mass=10, specific_heat=3600, warm=283, cold=277)
    216000
    """
    return mass * specific_heat * (warm - cold)


@equation("steady-flow:heat a product gives up")
def heat_to_freeze(
    *, mass: Kilograms, specific_heat: JoulesPerKilogramKelvin, cooled_by: TemperatureDifference,
    latent: JoulesPerKilogram,
) -> Joules:  # fmt: skip
    """Heat to be taken out of a product to cool it and freeze it.

    >>> heat_to_freeze(mass=10, specific_heat=2000, cooled_by=25, latent=105000)
    1550000
    """
    return mass * (specific_heat * cooled_by + latent)


@equation("steady-flow:heat a product gives up")
def freezing_enthalpy(
    *, above: JoulesPerKilogramKelvin, warm: Kelvins, freezing: Kelvins, latent: JoulesPerKilogram,
    below: JoulesPerKilogramKelvin, cold: Kelvins,
) -> JoulesPerKilogram:  # fmt: skip
    """Heat for each kilogram to cool food to its freezing point, freeze it and cool it further.

    >>> freezing_enthalpy(above=3220, warm=283, freezing=271, latent=256000, below=1670, cold=255)
    321360
    """
    return above * (warm - freezing) + latent + below * (freezing - cold)


@equation("steady-flow:heat a product gives up", uncited=True)
def heat_of(mass: Kilograms, per_mass: JoulesPerKilogram) -> Joules:
    """Heat of a mass.

    >>> heat_of(mass=10, per_mass=321360)
    3213600
    """
    return mass * per_mass


@equation("geometry", uncited=True)
def mass_of_filling(*, volume: CubicMetres, filled: Number, density: KilogramsPerCubicMetre) -> Kilograms:
    """Mass of what fills a part of a volume.

    >>> mass_of_filling(volume=0.1, filled=0.5, density=900)
    45.0
    """
    return volume * filled * density
