"""Pots, water baths and fryers: heating up, boiling away, standing open, cold food going in."""

from curbwright.figures import equation
from curbwright.quantities import (
    CubicMetres,
    JoulesPerKelvin,
    JoulesPerKilogram,
    JoulesPerKilogramKelvin,
    Kelvins,
    Kilograms,
    KilogramsPerCubicMetre,
    KilogramsPerSecond,
    Number,
    Seconds,
    SquareMetres,
    Watts,
    WattsPerSquareMetre,
)


@equation("boiling:mass", uncited=True)
def water_mass(volume: CubicMetres, density: KilogramsPerCubicMetre) -> Kilograms:
    """Mass of the liquid in a pot.

    >>> water_mass(0.01, 1000)
    10.0
    """
    return volume * density


@equation("boiling:heat capacity")
def heat_capacity(mass: Kilograms, specific_heat: JoulesPerKilogramKelvin) -> JoulesPerKelvin:
    """Heat that a plate, or what is in a pot, takes up per degree.

    >>> heat_capacity(10, 4186)
    41860
    """
    return mass * specific_heat


@equation("boiling:time")
def heating_time(
    *, capacity: JoulesPerKelvin, start: Kelvins, end: Kelvins, input: Watts, efficiency: Number
) -> Seconds:
    """Time to heat a pot from one temperature to another with the burner full on.

    >>> round(heating_time(capacity=79230, start=288.7, end=373.15, input=8792, efficiency=0.4) / 60, 1)
    31.7
    """
    return capacity * (end - start) / (input * efficiency)


@equation("boiling:away", uncited=True)
def boiled_away(*, input: Watts, efficiency: Number, latent: JoulesPerKilogram) -> KilogramsPerSecond:
    """Water that a pot at the boil loses with the burner full on.

    >>> round(boiled_away(input=8792, efficiency=0.4, latent=2257000) * 3600, 2)
    5.61
    """
    return input * efficiency / latent


@equation("boiling:vapour", empirical=True)
def vapour_heat(temperature: Kelvins) -> JoulesPerKilogram:
    """Heat of evaporation of water, 10 to 100 °C.

    >>> round(vapour_heat(373.15) / 1000)
    2259
    """
    return 2500800 - 2364 * (temperature - 273.15) - 0.55 * (temperature - 273.15) ** 2


@equation("open-water:loss", uncited=True)
def latent_heat(area: SquareMetres, flux: WattsPerSquareMetre) -> Watts:
    """Heat that leaves open hot water as vapour.

    >>> latent_heat(0.3, 2500)
    750.0
    """
    return area * flux


@equation("open-water:loss")
def open_water_loss(heat: Watts, latent: JoulesPerKilogram) -> KilogramsPerSecond:
    """Water that leaves open hot water as vapour.

    >>> round(open_water_loss(762, 2331000) * 3600, 2)
    1.18
    """
    return heat / latent


@equation("open-water:lid", uncited=True)
def under_lid(heat: Watts, lidded: Number) -> Watts:
    """Heat that leaves as vapour, when lids keep in a share of it.

    >>> round(under_lid(800, 0.85))
    120
    """
    return heat * (1 - lidded)
