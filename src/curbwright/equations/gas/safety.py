"""What a leak comes to, how a gauge finds it, and how much air a bottle's cabinet needs."""

from numpy import maximum

from curbwright.figures import equation
from curbwright.quantities import (
    CubicMetres,
    CubicMetresPerKilogram,
    CubicMetresPerSecond,
    Kelvins,
    Kilograms,
    Metres,
    Number,
    Pascals,
    Seconds,
    SquareMetres,
    TemperatureDifference,
)


@equation("ideal-gas:at one temperature", uncited=True)
def leak_rate(
    *, volume: CubicMetres, drop: Pascals, atmosphere: Pascals, time: Seconds
) -> CubicMetresPerSecond:
    """Gas that leaks from a shut system whose gauge falls by so much in a time.

    >>> leak_rate(volume=0.002, drop=50.0, atmosphere=100000.0, time=200.0)
    5e-09
    """
    return volume * drop / atmosphere / time


@equation("ideal-gas:a share of the air by volume")
def mass_to_limit(
    *, volume: CubicMetres, limit: Number, specific_volume: CubicMetresPerKilogram
) -> Kilograms:
    """Gas that brings closed air to its lower flammable limit, mixed evenly; at the floor far less does.

    >>> mass_to_limit(volume=20.0, limit=0.02, specific_volume=0.5)
    0.8
    """
    return volume * limit / specific_volume


@equation("cyl-enclosure:openings by the fuel, each with a least size")
def vent_by_fuel(
    *, fuel: Kilograms, area: SquareMetres, each: Kilograms, least: SquareMetres
) -> SquareMetres:
    """Free area of each opening of a bottle's cabinet: so much for every pound of fuel, and a least size.

    >>> float(vent_by_fuel(fuel=20.0, area=0.0003, each=0.5, least=0.006))
    0.012
    """
    return maximum(least, area * fuel / each)


@equation("iac-675-15-2-74:two vents, 2 % of the floor together", uncited=True)
def vent_by_floor(*, width: Metres, depth: Metres, share: Number) -> SquareMetres:
    """Free area of each of two openings of a bottle's cabinet that together are a share of its floor.

    >>> round(vent_by_floor(width=0.7, depth=0.4, share=0.02), 4)
    0.0028
    """
    return width * depth * share / 2


@equation("trade-practice:a bottle in the sun is hotter than the air", uncited=True)
def in_the_sun(air: Kelvins, rise: TemperatureDifference) -> Kelvins:
    """Temperature of a bottle that the sun shines on.

    >>> in_the_sun(air=308.0, rise=20.0)
    328.0
    """
    return air + rise


@equation("convention:room to spare", uncited=True)
def room_left(most: Kilograms, mass: Kilograms) -> Kilograms:
    """What is left of the most that is allowed; less than nothing where it is too much.

    >>> room_left(most=9.1, mass=9.0) > 0
    True
    """
    return most - mass


@equation("convention:room to spare", uncited=True)
def height_left(good_to: Metres, altitude: Metres) -> Metres:
    """How much higher a burner could stand with the orifices it has.

    >>> height_left(good_to=600.0, altitude=200.0)
    400.0
    """
    return good_to - altitude
