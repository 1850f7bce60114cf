"""Moist air: what it holds, what it weighs, what an opened lid or door lets in of it."""

from numpy import exp, log

from curbwright.figures import equation
from curbwright.quantities import (
    CubicMetres,
    CubicMetresPerSecond,
    JoulesPerCubicMetre,
    JoulesPerKilogram,
    Kelvins,
    KilogramsPerCubicMetre,
    Metres,
    MetresPerSecond,
    MetresPerSecondSquared,
    Number,
    Pascals,
    PerSecond,
    Seconds,
    SquareMetres,
    Watts,
)


@equation("standard-atmosphere", uncited=True, empirical=True)
def pressure_at(altitude: Metres) -> Pascals:
    """Pressure of the standard atmosphere at an altitude, up to 11 km.

    >>> round(pressure_at(altitude=1500))
    84556
    """
    return 101325 * (1 - 2.25577e-5 * altitude) ** 5.25588


@equation("moist-air:saturation over water", empirical=True)
def saturation_pressure(temperature: Kelvins) -> Pascals:
    """Pressure of water vapour over liquid water, from 0 to 200 °C.

    >>> round(float(saturation_pressure(temperature=308.15)), 1)
    5627.8
    """
    return exp(
        -5800.2206 / temperature + 1.3914993 - 0.048640239 * temperature
        + 4.1764768e-5 * temperature**2 - 1.4452093e-8 * temperature**3 + 6.5459673 * log(temperature)
    )  # fmt: skip


@equation("moist-air-ice", uncited=True, empirical=True)
def saturation_pressure_over_ice(temperature: Kelvins) -> Pascals:
    """Pressure of water vapour over ice, from -100 to 0 °C.

    >>> round(float(saturation_pressure_over_ice(temperature=253.15)), 1)
    103.3
    """
    return exp(
        -5674.5359 / temperature + 6.3925247 - 0.009677843 * temperature + 6.2215701e-7 * temperature**2
        + 2.0747825e-9 * temperature**3 - 9.484024e-13 * temperature**4 + 4.1635019 * log(temperature)
    )  # fmt: skip


@equation("moist-air:humidity ratio")
def humidity_ratio(*, saturation: Pascals, humidity: Number, pressure: Pascals) -> Number:
    """Kilograms of water in the air with a kilogram of dry air.

    >>> round(humidity_ratio(saturation=5627, humidity=0.5, pressure=101325), 5)
    0.01776
    """
    return 0.621945 * humidity * saturation / (pressure - humidity * saturation)


@equation("moist-air:enthalpy", empirical=True)
def moist_enthalpy(temperature: Kelvins, humidity_ratio: Number) -> JoulesPerKilogram:
    """Heat in moist air for each kilogram of dry air, from dry air and liquid water at 0 °C.

    >>> round(moist_enthalpy(temperature=308.15, humidity_ratio=0.01776))
    80784
    """
    return 1006 * (temperature - 273.15) + humidity_ratio * (2501000 + 1860 * (temperature - 273.15))


@equation("moist-air:volume", empirical=True)
def dry_air_density(
    *, temperature: Kelvins, humidity_ratio: Number, pressure: Pascals
) -> KilogramsPerCubicMetre:
    """Kilograms of dry air in a cubic metre of moist air.

    >>> round(dry_air_density(temperature=308.15, humidity_ratio=0.01776, pressure=101325), 4)
    1.1137
    """
    return pressure / (287.042 * temperature * (1 + 1.607858 * humidity_ratio))


@equation("moist-air:volume")
def moist_density(dry_density: KilogramsPerCubicMetre, humidity_ratio: Number) -> KilogramsPerCubicMetre:
    """Density of moist air from the dry air in it.

    >>> round(moist_density(dry_density=1.1137, humidity_ratio=0.01776), 4)
    1.1335
    """
    return dry_density * (1 + humidity_ratio)


@equation("doorway-exchange:density factor")
def density_factor(box_density: KilogramsPerCubicMetre, room_density: KilogramsPerCubicMetre) -> Number:
    """Factor for the two densities on the flow through an open doorway.

    >>> round(density_factor(box_density=1.27, room_density=1.13), 4)
    0.9709
    """
    return (2 / (1 + (box_density / room_density) ** (1 / 3))) ** 1.5


@equation("doorway-exchange:full flow")
def doorway_flow(
    *, area: SquareMetres, height: Metres, box_density: KilogramsPerCubicMetre,
    room_density: KilogramsPerCubicMetre, factor: Number, gravity: MetresPerSecondSquared,
) -> CubicMetresPerSecond:  # fmt: skip
    """Air that runs out of an open upright doorway, heavy and cold, while warm air takes its place.

    >>> round(doorway_flow(area=0.54, height=0.9, box_density=1.27, room_density=1.13, factor=0.971,
    ...                    gravity=9.80665), 3)
    0.114
    """
    return 0.221 * area * (1 - room_density / box_density) ** 0.5 * (gravity * height) ** 0.5 * factor


@equation("well-mixed-room", uncited=True)
def air_through_door(*, free_volume: CubicMetres, flow: CubicMetresPerSecond, time: Seconds) -> CubicMetres:
    """Box air lost in one opening of a front door: never more than the free air there is.

    >>> round(float(air_through_door(free_volume=0.15, flow=0.1133, time=10)), 4)
    0.1499
    """
    return free_volume * (1 - exp(-flow * time / free_volume))


@equation("trade-practice:a lid spills 10 to 30 % of the air")
def air_through_lid(free_volume: CubicMetres, spilled: Number) -> CubicMetres:
    """Box air lost in one opening of a lid: cold air lies still in a chest.

    >>> round(air_through_lid(free_volume=0.05, spilled=0.2), 6)
    0.01
    """
    return free_volume * spilled


@equation("geometry", uncited=True)
def free_air(volume: CubicMetres, filled: Number) -> CubicMetres:
    """Air in a box that is partly filled.

    >>> free_air(volume=0.1, filled=0.5)
    0.05
    """
    return volume * (1 - filled)


@equation("steady-flow:heat of exchanged air")
def exchange_heat(
    *, density: KilogramsPerCubicMetre, outside: JoulesPerKilogram, inside: JoulesPerKilogram
) -> JoulesPerCubicMetre:
    """Heat let in with each cubic metre of box air that is lost, its moisture included.

    ``density`` is that of the box air. The enthalpies are for a kilogram of dry air, so that the result is
    too high by the share of vapour in it, four thousandths in a refrigerator.

    >>> exchange_heat(density=1.25, outside=80000, inside=14000)
    82500.0
    """
    return density * (outside - inside)


@equation("steady-flow:heat of exchanged air")
def openings_heat(*, air: CubicMetres, heat: JoulesPerCubicMetre, rate: PerSecond) -> Watts:
    """Heat let in by openings, so many in an hour.

    >>> round(openings_heat(air=0.01, heat=85000, rate=12 / 3600), 3)
    2.833
    """
    return air * heat * rate


@equation("steady-flow:air changes")
def air_changes(
    *, area: SquareMetres, speed: MetresPerSecond, open_for: Seconds, volume: CubicMetres
) -> Number:
    """How many times a store's air is changed through a doorway that stands open for a time.

    >>> air_changes(area=7, speed=1.0, open_for=18000, volume=35000)
    3.6
    """
    return area * speed * open_for / volume


@equation("doorway-exchange:full flow")
def doorway_heat(
    *, flow: CubicMetresPerSecond, box_density: KilogramsPerCubicMetre,
    outside: JoulesPerKilogram, inside: JoulesPerKilogram,
) -> Watts:  # fmt: skip
    """Heat let in while an upright doorway stands open, its box never running out of cold air.

    >>> round(doorway_heat(flow=0.1133, box_density=1.27, outside=81000, inside=14100))
    9626
    """
    return flow * box_density * (outside - inside)
