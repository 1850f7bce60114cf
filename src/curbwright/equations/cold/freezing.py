"""How long food takes to freeze, and how a slab of it cools or warms through.

Faces meet air or water with a film; ``film`` is its coefficient. A slab is cooled on both faces; a pan
standing on an insulated bottom is half a slab of twice its depth.
"""

from curbwright.figures import equation, procedure
from curbwright.quantities import (
    JoulesPerCubicMetre,
    JoulesPerKilogram,
    JoulesPerKilogramKelvin,
    Kelvins,
    KilogramsPerCubicMetre,
    Metres,
    Number,
    Seconds,
    WattsPerMetreKelvin,
    WattsPerSquareMetreKelvin,
)

TERMS = 40
"""Terms of the series: enough from a Fourier number of 0.002 on."""


@equation("freezing-plank:slab")
def slab_freezing_time(
    *, latent: JoulesPerCubicMetre, freezing: Kelvins, air: Kelvins, thickness: Metres,
    film: WattsPerSquareMetreKelvin, conductivity: WattsPerMetreKelvin,
) -> Seconds:  # fmt: skip
    """Time to freeze a slab from both faces, its latent heat alone: 15 to 30 % too short.

    ``latent`` is for a cubic metre, ``conductivity`` that of the frozen food.

    >>> round(slab_freezing_time(latent=2.5e8, freezing=271.45, air=253.15, thickness=0.025, film=10,
    ...                          conductivity=1.5) / 3600, 2)
    4.94
    """
    return latent / (freezing - air) * (thickness / (2 * film) + thickness**2 / (8 * conductivity))


@equation("freezing-two-steps:mean freezing temperature", empirical=True)
def mean_freezing_temperature(centre: Kelvins, air: Kelvins) -> Kelvins:
    """Temperature that parts cooling from freezing, from the wanted centre and the air.

    Air -45 to -15 °C.

    >>> round(mean_freezing_temperature(centre=263.15, air=253.15) - 273.15, 3)
    -2.93
    """
    return 274.95 + 0.263 * (centre - 273.15) + 0.105 * (air - 273.15)


@equation("freezing-two-steps:heat of the first step")
def cooling_heat(
    *, density: KilogramsPerCubicMetre, specific_heat: JoulesPerKilogramKelvin, start: Kelvins, mean: Kelvins
) -> JoulesPerCubicMetre:
    """Heat for a cubic metre to cool from the start to the mean freezing temperature.

    >>> cooling_heat(density=1000, specific_heat=3500, start=283, mean=270)
    45500000
    """
    return density * specific_heat * (start - mean)


@equation("freezing-two-steps:heat of the second step")
def frozen_heat(
    *, density: KilogramsPerCubicMetre, latent: JoulesPerKilogram, specific_heat: JoulesPerKilogramKelvin,
    mean: Kelvins, centre: Kelvins,
) -> JoulesPerCubicMetre:  # fmt: skip
    """Heat for a cubic metre to freeze and to cool on to the wanted centre temperature.

    >>> frozen_heat(density=1000, latent=240000, specific_heat=2000, mean=270, centre=263)
    254000000
    """
    return density * (latent + specific_heat * (mean - centre))


@equation("freezing-two-steps:time")
def freezing_time(
    *, half: Metres, shape: Number, film: WattsPerSquareMetreKelvin, conductivity: WattsPerMetreKelvin,
    cooling: JoulesPerCubicMetre, freezing: JoulesPerCubicMetre, start: Kelvins, mean: Kelvins, air: Kelvins,
) -> Seconds:  # fmt: skip
    """Time to freeze, cooling and freezing as two steps.

    ``half`` is half the thickness or the radius; ``shape`` 1 for a slab, 2 a cylinder, 3 a ball. Biot number
    0.02 to 11.

    >>> round(freezing_time(half=0.0125, shape=1, film=10, conductivity=1.5, cooling=4.7e7, freezing=2.6e8,
    ...                     start=283.15, mean=270.22, air=253.15) / 3600, 2)
    6.23
    """
    return (
        half / (shape * film)
        * (cooling / ((start + mean) / 2 - air) + freezing / (mean - air))
        * (1 + film * half / conductivity / 2)
    )  # fmt: skip


@procedure("transient-conduction:slab")
def slab_temperature(
    *, start: Kelvins, around: Kelvins, time: Seconds, half: Metres, place: Number,
    film: WattsPerSquareMetreKelvin, conductivity: WattsPerMetreKelvin, density: KilogramsPerCubicMetre,
    specific_heat: JoulesPerKilogramKelvin,
) -> Kelvins:  # fmt: skip
    """Temperature in a slab after a time in air of one temperature, by the series of its first 40 roots.

    ``half`` is half the thickness; ``place`` 0 at the middle (or on an insulated bottom), 1 at the face.

    >>> round(slab_temperature(start=277.6, around=297.1, time=18000, half=0.0462, place=1.0, film=8.52,
    ...                        conductivity=0.197, density=998, specific_heat=2300), 2)
    292.39
    """
    from math import cos, exp, sin

    biot = film * half / conductivity
    fourier = conductivity * time / (density * specific_heat * half**2)
    left = 0.0
    for number in range(TERMS):
        root = _slab_root(biot, number)
        weight = 4 * sin(root) / (2 * root + sin(2 * root))
        left += weight * exp(-(root**2) * fourier) * cos(root * place)
    return around + (start - around) * left


def _slab_root(biot: float, number: int) -> float:
    """The root of x tan x = Biot number in its own half turn, to the last bit."""
    from math import cos, pi, sin

    low, high = number * pi, number * pi + pi / 2
    while low < (middle := (low + high) / 2) < high:
        # sin and cos share a sign in the half turn, up to the parity of the turn.
        if (middle * sin(middle) - biot * cos(middle)) * (-1) ** number > 0:
            high = middle
        else:
            low = middle
    return low
