"""Heat in the cart and on the cook."""

from collections.abc import Callable

from numpy import exp, log10

from curbwright.figures import equation, procedure
from curbwright.quantities import (
    CubicMetresPerSecond,
    JoulesPerKilogramKelvin,
    Kelvins,
    KilogramsPerCubicMetre,
    Metres,
    MetresPerSecond,
    Number,
    Pascals,
    SquareMetres,
    TemperatureDifference,
    Watts,
    WattsPerKelvin,
    WattsPerSquareMetreKelvin,
)


@equation("cabin-air-balance:heat of an appliance that stays", uncited=True)
def heat_left(*, load: Watts, busy: Number, plume: Number, spill: Number, radiant: Number) -> Watts:
    """Heat an appliance leaves in the cart: what the hood misses of its plume, and what it radiates.

    >>> heat_left(load=20000.0, busy=0.5, plume=0.5, spill=0.2, radiant=0.1)
    2000.0
    """
    return load * busy * (plume * spill + radiant)


@equation("cabin-air-balance:what is not caught", uncited=True)
def missed(caught: Number) -> Number:
    """Share of a plume that a hood misses.

    >>> missed(caught=0.75)
    0.25
    """
    return 1 - caught


@equation("cabin-air-balance:people", uncited=True)
def heat_of(count: Number, each: Watts) -> Watts:
    """Heat that so many people give off.

    >>> heat_of(count=2, each=130.0)
    260.0
    """
    return count * each


@equation("cabin-air-balance:air drawn through", uncited=True)
def air_conductance(
    *, flow: CubicMetresPerSecond, density: KilogramsPerCubicMetre, specific_heat: JoulesPerKilogramKelvin
) -> WattsPerKelvin:
    """Heat that air drawn through a cart carries off for each degree it warms.

    >>> air_conductance(flow=0.5, density=1.2, specific_heat=1000.0)
    600.0
    """
    return flow * density * specific_heat


@equation("geometry:walls", uncited=True)
def wall_area(*, long: Metres, wide: Metres, height: Metres) -> SquareMetres:
    """Area of the four walls.

    >>> wall_area(long=3.0, wide=2.0, height=2.0)
    20.0
    """
    return 2 * (long + wide) * height


@equation("steady-conduction:area times U", uncited=True)
def conductance_of(area: SquareMetres, film: WattsPerSquareMetreKelvin) -> WattsPerKelvin:
    """Heat through a wall for each degree.

    >>> conductance_of(area=20.0, film=1.5)
    30.0
    """
    return area * film


@equation("cabin-air-balance", uncited=True)
def cabin_temperature(
    *, outside: Kelvins, heat: Watts, air: WattsPerKelvin, walls: WattsPerKelvin, roof: WattsPerKelvin,
    roof_rise: TemperatureDifference,
) -> Kelvins:  # fmt: skip
    """Temperature of the air in a cart whose fan runs, where all heat in and out adds up to nothing.

    ``roof_rise`` is what the sun makes the roof's outside warmer than the air.

    >>> cabin_temperature(outside=300.0, heat=2800.0, air=380.0, walls=15.0, roof=5.0, roof_rise=40.0)
    307.5
    """
    return outside + (heat + roof * roof_rise) / (air + walls + roof)


@equation("moist-air:vapour in the air", uncited=True)
def vapour_pressure(saturation: Pascals, humidity: Number) -> Pascals:
    """Pressure of the water vapour in air.

    >>> vapour_pressure(saturation=5600.0, humidity=0.5)
    2800.0
    """
    return saturation * humidity


@procedure("psychrometer", empirical=True, uncited=True)
def wet_bulb(*, air: Kelvins, vapour: Pascals, pressure: Pascals) -> Kelvins:
    """Wet-bulb temperature, by halving the range between 0 °C and the air's in the psychrometer equation.

    >>> round(wet_bulb(air=308.15, vapour=2814.0, pressure=101325.0), 1)
    299.3
    """

    def surplus(wet: float) -> float:
        saturation = 611.2 * float(exp(17.62 * (wet - 273.15) / (wet - 30.03)))
        return saturation - 6.62e-4 * pressure * (air - wet) - vapour

    return _halved(surplus, 263.15, float(air))


@equation("globe-balance:mean radiant temperature")
def mean_radiant(*, view: Number, hot: Kelvins, rest: Kelvins) -> Kelvins:
    """Mean radiant temperature of a place that sees something hot over a share of its view.

    >>> round(mean_radiant(view=0.0, hot=460.0, rest=308.0), 6)
    308.0
    """
    return (view * hot**4 + (1 - view) * rest**4) ** 0.25


@procedure("globe-balance", empirical=True)
def globe_temperature(
    *, air: Kelvins, radiant: Kelvins, speed: MetresPerSecond, diameter: Metres, emissivity: Number
) -> Kelvins:
    """Temperature of a black globe, by halving the range in which what it takes up and gives off are equal.

    >>> round(globe_temperature(air=300.0, radiant=300.0, speed=0.5, diameter=0.15, emissivity=0.95), 6)
    300.0
    """
    film = 6.3 * speed**0.6 / diameter**0.4

    def surplus(globe: float) -> float:
        return float(film * (globe - air) - emissivity * 5.670374e-8 * (radiant**4 - globe**4))

    return _halved(surplus, float(min(air, radiant)), float(max(air, radiant)))


@equation("wet-bulb-globe:indoors")
def wet_bulb_globe(natural_wet_bulb: Kelvins, globe: Kelvins) -> Kelvins:
    """Wet-bulb globe temperature out of the sun.

    >>> round(wet_bulb_globe(natural_wet_bulb=298.15, globe=318.15), 2)
    304.15
    """
    return 0.7 * natural_wet_bulb + 0.3 * globe


@equation("convention:warmer by", uncited=True)
def warmer(temperature: Kelvins, rise: TemperatureDifference) -> Kelvins:
    """A temperature and a rise on it.

    >>> warmer(temperature=298.0, rise=1.0)
    299.0
    """
    return temperature + rise


@equation("niosh-heat-limits:acclimatised", empirical=True, uncited=True)
def limit_acclimatised(work: Watts) -> Kelvins:
    """Wet-bulb globe temperature up to which somebody used to heat may work without a break.

    >>> round(float(limit_acclimatised(work=300.0)), 2)
    301.36
    """
    return 273.15 + 56.7 - 11.5 * log10(work)


@equation("niosh-heat-limits:not acclimatised", empirical=True, uncited=True)
def limit_unacclimatised(work: Watts) -> Kelvins:
    """Wet-bulb globe temperature up to which somebody not used to heat may work without a break.

    >>> round(float(limit_unacclimatised(work=300.0)), 2)
    298.12
    """
    return 273.15 + 59.9 - 14.1 * log10(work)


@procedure("convention:1 where a temperature passes a limit, else 0", uncited=True)
def is_over(temperature: Kelvins, limit: Kelvins) -> Number:
    """Whether a temperature passes a limit: 1 if it does, else 0.

    >>> is_over(temperature=303.0, limit=301.0), is_over(temperature=300.0, limit=301.0)
    (1.0, 0.0)
    """
    return float(temperature > limit)


def _halved(surplus: Callable[[float], float], low: float, high: float) -> float:
    """The root of a function that rises from below nothing to above it."""
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (low, middle) if surplus(middle) > 0 else (middle, high)
    return (low + high) / 2
