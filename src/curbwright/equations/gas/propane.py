"""Propane: pressure, density and heat of the liquid in a bottle, and what burning it gives.

The four fits are our own, to the reference properties of pure propane between -60 and 150 °F (222 to 339 K);
the tests hold them to 0.2 %. Commercial propane has a higher pressure: 127 psi at 70 °F against 110 psi.
"""

from collections.abc import Callable

from numpy import exp

from curbwright.figures import equation, procedure
from curbwright.quantities import (
    CubicMetresPerKilogram,
    CubicMetresPerSecond,
    Joules,
    JoulesPerCubicMetre,
    JoulesPerKilogram,
    JoulesPerKilogramKelvin,
    Kelvins,
    Kilograms,
    KilogramsPerCubicMetre,
    Number,
    Pascals,
    Watts,
)

COLDEST, CRITICAL = 150.0, 369.89
"""Between these temperatures (K) a saturation pressure is looked for; the upper is the critical point."""


@equation("propane-fit:saturation pressure", empirical=True)
def saturation_pressure(temperature: Kelvins) -> Pascals:
    """Pressure of pure propane over its liquid, absolute.

    >>> round(float(saturation_pressure(288.7056)), -2)
    742700.0
    """
    return 4251200 * exp(
        369.89
        / temperature
        * (
            -6.7469 * (1 - temperature / 369.89)
            + 1.4919 * (1 - temperature / 369.89) ** 1.5
            - 1.4683 * (1 - temperature / 369.89) ** 2.5
            - 2.3517 * (1 - temperature / 369.89) ** 5
        )
    )


@procedure("propane-fit:saturation pressure", empirical=True)
def saturation_temperature(pressure: Pascals) -> Kelvins:
    """Temperature at which liquid propane has an absolute pressure, by halving the range it lies in.

    >>> round(saturation_temperature(pressure=170273.0), 2)
    243.52
    """
    return _halved(lambda temperature: float(saturation_pressure(temperature)) - pressure)


@equation("propane-fit:liquid density", empirical=True)
def liquid_density(temperature: Kelvins) -> KilogramsPerCubicMetre:
    """Density of liquid propane at its own saturation pressure.

    >>> round(float(liquid_density(288.7056)), 1)
    506.7
    """
    return 220.478 * (
        1
        + 1.8872 * (1 - temperature / 369.89) ** 0.35
        + 0.45167 * (1 - temperature / 369.89) ** 0.7
        + 0.26681 * (1 - temperature / 369.89) ** 1.4
    )


@equation("propane-fit:latent heat", empirical=True)
def latent_heat(temperature: Kelvins) -> JoulesPerKilogram:
    """Heat that evaporates liquid propane.

    >>> round(float(latent_heat(231.04)), -4)
    430000.0
    """
    return (
        607680 * (1 - temperature / 369.89) ** 0.38
        + 85023 * (1 - temperature / 369.89)
        - 179340 * (1 - temperature / 369.89) ** 2
    )


@equation("propane-fit:specific heat of the liquid", empirical=True, uncited=True)
def liquid_specific_heat(temperature: Kelvins) -> JoulesPerKilogramKelvin:
    """Specific heat of liquid propane.

    >>> round(float(liquid_specific_heat(288.7056)), -1)
    2620.0
    """
    return 1997.4 - 2.7926 * temperature + 0.012208 * temperature**2 + 90.939 / (1 - temperature / 369.89)


@procedure("propane-fit:liquid density", empirical=True)
def liquid_full_temperature(filling: Number, water_density: KilogramsPerCubicMetre) -> Kelvins:
    """Temperature at which the liquid of a bottle has no room left, by halving the range it lies in.

    ``filling`` is the mass of propane over the mass of water that the bottle holds.

    >>> round(liquid_full_temperature(filling=0.42, water_density=999.0), 1)
    336.8
    """
    return _halved(lambda temperature: filling * water_density - float(liquid_density(temperature)))


@equation("gauge-and-absolute")
def absolute_pressure(gauge: Pascals, atmosphere: Pascals) -> Pascals:
    """Absolute pressure from what a gauge shows.

    >>> absolute_pressure(gauge=70000.0, atmosphere=100000.0)
    170000.0
    """
    return gauge + atmosphere


@equation("gauge-and-absolute")
def gauge_pressure(absolute: Pascals, atmosphere: Pascals) -> Pascals:
    """What a gauge shows of an absolute pressure.

    >>> gauge_pressure(absolute=170000.0, atmosphere=100000.0)
    70000.0
    """
    return absolute - atmosphere


@equation("ideal-gas")
def vapour_volume(
    *, temperature: Kelvins, pressure: Pascals, gas_constant: JoulesPerKilogramKelvin
) -> CubicMetresPerKilogram:
    """Volume of a kilogram of gas as an ideal gas; propane's is 1.8 % less at room conditions.

    >>> vapour_volume(temperature=300.0, pressure=100000.0, gas_constant=190.0)
    0.57
    """
    return gas_constant * temperature / pressure


@equation("heats-of-formation")
def gross_heating_value(
    *, fuel: Joules, carbon_dioxide: Joules, water: Joules, carbons: Number, waters: Number, mass: Kilograms
) -> JoulesPerKilogram:
    """Heat of burning from the heats of formation of one mole each, the water condensed.

    ``mass`` is that of one mole of the fuel, which gives so many moles of carbon dioxide and water.

    >>> round(gross_heating_value(
    ...     fuel=-104700, carbon_dioxide=-393510, water=-285830, carbons=3, waters=4, mass=0.0440956), -4)
    50330000.0
    """
    return (fuel - carbons * carbon_dioxide - waters * water) / mass


@equation("stoichiometry")
def air_ratio(oxygen: Number, share: Number) -> Number:
    """Volume of air that burns one volume of fuel, from its volume of oxygen and the oxygen in air.

    >>> round(air_ratio(oxygen=5, share=0.2095), 2)
    23.87
    """
    return oxygen / share


@equation("stoichiometry")
def combustion_air(*, load: Watts, heat: JoulesPerCubicMetre, ratio: Number) -> CubicMetresPerSecond:
    """Air that burners consume, none to spare.

    >>> combustion_air(load=93000.0, heat=93e6, ratio=24)
    0.024
    """
    return load / heat * ratio


def _halved(rising: Callable[[float], float]) -> float:
    """The temperature at which a rising function is nothing, to a millionth of a degree."""
    low, high = COLDEST, CRITICAL
    while high - low > 1e-6:
        middle = (low + high) / 2
        low, high = (low, middle) if rising(middle) > 0 else (middle, high)
    return (low + high) / 2
