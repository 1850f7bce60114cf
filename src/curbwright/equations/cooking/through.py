"""How long heat takes to the middle of food: the exact series of a long cylinder, and of a slab inverted.

The film is that of water, of oil or of the plate; what conducts is uncertain by about 30 %, so that the
answer is a planning figure and a probe decides.
"""

from collections.abc import Callable

from curbwright.figures import equation, procedure
from curbwright.quantities import (
    JoulesPerKilogramKelvin,
    Kelvins,
    KilogramsPerCubicMetre,
    Metres,
    Number,
    Seconds,
    SquareMetresPerSecond,
    WattsPerMetreKelvin,
    WattsPerSquareMetreKelvin,
)

TERMS = 40
"""Terms of the series."""


@equation("transient-conduction:biot")
def biot_number(
    *, film: WattsPerSquareMetreKelvin, length: Metres, conductivity: WattsPerMetreKelvin
) -> Number:
    """Biot number: the film's heat against that conducted inside.

    >>> biot_number(film=600, length=0.01, conductivity=0.75)
    8.0
    """
    return film * length / conductivity


@equation("transient-conduction:half", uncited=True)
def half_thickness(thickness: Metres) -> Metres:
    """Way from the face of a slab to its middle.

    >>> half_thickness(0.02)
    0.01
    """
    return thickness / 2


@procedure("transient-conduction:cylinder root")
def cylinder_root(biot: Number) -> Number:
    """First root of x J1(x) = Biot number times J0(x), by Brent's method.

    >>> round(cylinder_root(7.895), 4)
    2.1253
    """
    return _cylinder_root(biot, 0)


@procedure("transient-conduction:cylinder weight")
def cylinder_weight(root: Number) -> Number:
    """Weight of a root's term in the series of a cylinder: 2 J1 / x / (J0² + J1²), from Bessel functions.

    >>> round(cylinder_weight(2.1253), 4)
    1.5515
    """
    from scipy.special import j0, j1

    return float(2 / root * j1(root) / (j0(root) ** 2 + j1(root) ** 2))


@procedure("transient-conduction:cylinder")
def cylinder_temperature(
    *, start: Kelvins, around: Kelvins, time: Seconds, radius: Metres, place: Number,
    film: WattsPerSquareMetreKelvin, conductivity: WattsPerMetreKelvin, diffusivity: SquareMetresPerSecond,
) -> Kelvins:  # fmt: skip
    """Temperature in a long cylinder after a time in a liquid, by the series of its first 40 roots.

    ``place`` 0 at the middle, 1 at the skin.

    >>> round(cylinder_temperature(start=293.15, around=367.15, time=120, radius=0.011, place=0.0, film=467,
    ...                            conductivity=0.771, diffusivity=2.017e-7) - 273.15, 2)
    46.73
    """
    from math import exp

    from scipy.special import j0

    biot, fourier = film * radius / conductivity, diffusivity * time / radius**2
    left = 0.0
    for number in range(TERMS):
        root = _cylinder_root(biot, number)
        left += cylinder_weight(root) * exp(-(root**2) * fourier) * float(j0(root * place))
    return around + (start - around) * left


@procedure("transient-conduction:cylinder")
def cylinder_time(
    *, start: Kelvins, around: Kelvins, end: Kelvins, radius: Metres, film: WattsPerSquareMetreKelvin,
    conductivity: WattsPerMetreKelvin, diffusivity: SquareMetresPerSecond,
) -> Seconds:  # fmt: skip
    """Time for the middle of a long cylinder to reach a temperature, by bisection of its series.

    ``end`` lies between ``start`` and ``around``; raises ZeroDivisionError where it is never reached.

    >>> round(cylinder_time(start=278.15, around=373.15, end=353.15, radius=0.01, film=600,
    ...                     conductivity=0.76, diffusivity=2e-7), 1)
    221.1
    """
    share = _share_left(start, around, end)
    return _first_time(
        lambda time: cylinder_temperature(
            start=1.0, around=0.0, time=time, radius=radius, place=0.0, film=film,
            conductivity=conductivity, diffusivity=diffusivity,
        ) - share,
        radius**2 / diffusivity,
    )  # fmt: skip


@procedure("transient-conduction:slab", uncited=True)
def centre_time(
    *, start: Kelvins, around: Kelvins, end: Kelvins, half: Metres, film: WattsPerSquareMetreKelvin,
    conductivity: WattsPerMetreKelvin, density: KilogramsPerCubicMetre,
    specific_heat: JoulesPerKilogramKelvin,
) -> Seconds:  # fmt: skip
    """Time for the middle of a slab heated on both faces to reach a temperature, by bisection of its series.

    ``end`` lies between ``start`` and ``around``; raises ZeroDivisionError where it is never reached.

    >>> round(centre_time(start=278.15, around=373.15, end=347.15, half=0.006, film=300, conductivity=0.45,
    ...                   density=1050, specific_heat=3500))
    276
    """
    share = _share_left(start, around, end)
    biot, unit = film * half / conductivity, density * specific_heat * half**2 / conductivity
    roots = [_slab_root(biot, number) for number in range(TERMS)]
    return _first_time(lambda time: _slab_left(roots, time / unit) - share, unit)


def _share_left(start: float, around: float, end: float) -> float:
    """Share of the first temperature difference that is left at the end; it has to lie between 0 and 1."""
    share = (around - end) / (around - start)
    if not 0 < share < 1:
        raise ZeroDivisionError("that temperature is never reached")
    return share


def _first_time(over: Callable[[float], float], unit: float) -> float:
    """The time at which a falling function is zero, to the last bit or so."""
    low, high = 0.0, unit
    for _ in range(60):
        if over(high) <= 0:
            break
        high *= 2
    for _ in range(80):
        middle = (low + high) / 2
        low, high = (middle, high) if over(middle) > 0 else (low, middle)
    return high


def _cylinder_root(biot: float, number: int) -> float:
    """The root of x J1 = Biot J0 between the zeros of J1 and J0 that enclose it."""
    from scipy.optimize import brentq
    from scipy.special import j0, j1, jn_zeros

    low = 1e-12 if number == 0 else float(jn_zeros(1, number)[-1])
    high = float(jn_zeros(0, number + 1)[-1])
    return float(brentq(lambda x: x * j1(x) - biot * j0(x), low, high, xtol=1e-14, rtol=1e-14))


def _slab_root(biot: float, number: int) -> float:
    """The root of x tan x = Biot number in its own half turn, to the last bit."""
    from math import cos, pi, sin

    low, high = number * pi, number * pi + pi / 2
    while low < (middle := (low + high) / 2) < high:
        if (middle * sin(middle) - biot * cos(middle)) * (-1) ** number > 0:
            high = middle
        else:
            low = middle
    return low


def _slab_left(roots: list[float], fourier: float) -> float:
    """Share of the difference that is left in the middle of a slab."""
    from math import exp, sin

    return sum(4 * sin(x) / (2 * x + sin(2 * x)) * exp(-(x**2) * fourier) for x in roots)
