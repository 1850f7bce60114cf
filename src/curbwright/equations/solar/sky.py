"""The sun over a place on a day: position, clear sky and what falls on a tilted panel, by pvlib.

Angles in radians, day of the year counted from 1 January (of 2025, which has no leap day), clock times in
seconds from midnight. ``zone`` is how far the clock is ahead of universal time. pvlib and what it needs are
imported on the first call, and a day's minutes are kept for each place and date.
"""

import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import lru_cache
from math import degrees
from typing import Any

from curbwright.figures import procedure
from curbwright.quantities import (
    Metres,
    Number,
    Radians,
    Seconds,
    WattsPerSquareMetre,
)

YEAR = 2025
MINUTES = 1440


@procedure("convention:standard time by longitude", empirical=True)
def standard_zone(longitude: Radians) -> Seconds:
    """How far standard time is ahead of universal time: the whole hour nearest to the sun's.

    >>> standard_zone(longitude=-1.8326) / 3600
    -7.0
    """
    return 3600.0 * round(degrees(longitude) / 15)


@procedure("photovoltaic-library:clear sky after Ineichen", empirical=True)
def clear_global(
    *, zenith: Radians, air_mass: Number, turbidity: Number, altitude: Metres, above_air: WattsPerSquareMetre
) -> WattsPerSquareMetre:
    """Sun on a level face under a clear sky, by Ineichen's model in pvlib.

    >>> sea = {"altitude": 0.0, "above_air": 1364.0}
    >>> round(clear_global(zenith=0.184392, air_mass=0.93527685, turbidity=3.0, **sea))
    1044
    """
    return _ineichen(zenith, air_mass, turbidity, altitude, above_air)["ghi"]


@procedure("photovoltaic-library:clear sky after Ineichen", empirical=True)
def clear_direct(
    *, zenith: Radians, air_mass: Number, turbidity: Number, altitude: Metres, above_air: WattsPerSquareMetre
) -> WattsPerSquareMetre:
    """Sun square on under a clear sky, without the light of the sky, by Ineichen's model in pvlib.

    >>> sea = {"altitude": 0.0, "above_air": 1364.0}
    >>> round(clear_direct(zenith=0.184392, air_mass=0.93527685, turbidity=3.0, **sea))
    953
    """
    return _ineichen(zenith, air_mass, turbidity, altitude, above_air)["dni"]


@procedure("photovoltaic-library:clear sky after Ineichen", empirical=True)
def clear_diffuse(
    *, zenith: Radians, air_mass: Number, turbidity: Number, altitude: Metres, above_air: WattsPerSquareMetre
) -> WattsPerSquareMetre:
    """Light of a clear sky on a level face, by Ineichen's model in pvlib.

    >>> sea = {"altitude": 0.0, "above_air": 1364.0}
    >>> round(clear_diffuse(zenith=0.184392, air_mass=0.93527685, turbidity=3.0, **sea))
    107
    """
    return _ineichen(zenith, air_mass, turbidity, altitude, above_air)["dhi"]


@procedure("photovoltaic-library:turbidity by place and month", uncited=True, empirical=True)
def turbidity_at(*, latitude: Radians, longitude: Radians, day: Number) -> Number:
    """Linke turbidity of a place and a day, from the map of monthly means that comes with pvlib.

    >>> round(turbidity_at(latitude=0.698132, longitude=-1.832596, day=172.0), 1)
    4.1
    """
    return _turbidity(float(latitude), float(longitude), int(day))


@procedure("photovoltaic-library:sun on a panel", uncited=True, empirical=True)
def panel_sun(
    *, latitude: Radians, longitude: Radians, altitude: Metres, day: Number, zone: Seconds, turbidity: Number,
    tilt: Radians, azimuth: Radians, begins: Seconds, ends: Seconds,
) -> WattsPerSquareMetre:  # fmt: skip
    """Mean sun on a panel from one clock time to another under a clear sky, minute by minute by pvlib.

    ``tilt`` is from level, ``azimuth`` where the panel faces, from north by east.

    >>> round(panel_sun(latitude=0.698132, longitude=-1.832596, altitude=1600.0, day=172.0, zone=-25200.0,
    ...     turbidity=3.0, tilt=0.0, azimuth=3.141593, begins=43200.0, ends=46800.0), -1)
    1060.0
    """
    minutes = clear_day(
        float(latitude), float(longitude), float(altitude), int(day), float(zone), float(turbidity),
        float(tilt), float(azimuth),
    ).on_panel  # fmt: skip
    return float(minutes[round(begins / 60) : round(ends / 60)].mean())


@procedure("photovoltaic-library:largest sun of the day on level ground", empirical=True)
def largest_sun(
    *, latitude: Radians, longitude: Radians, altitude: Metres, day: Number, zone: Seconds, turbidity: Number
) -> WattsPerSquareMetre:
    """Largest sun on a level face in any minute of a clear day, by pvlib.

    >>> round(largest_sun(latitude=0.698132, longitude=-1.832596, altitude=1600.0, day=172.0, zone=-25200.0,
    ...     turbidity=3.0))
    1067
    """
    return float(_level(latitude, longitude, altitude, day, zone, turbidity).max())


@procedure("photovoltaic-library:sun of the day on level ground", empirical=True)
def mean_sun(
    *, latitude: Radians, longitude: Radians, altitude: Metres, day: Number, zone: Seconds, turbidity: Number
) -> WattsPerSquareMetre:
    """Sun on a level face under a clear sky, its mean over the whole day and night, by pvlib.

    >>> round(mean_sun(latitude=0.698132, longitude=-1.832596, altitude=1600.0, day=172.0, zone=-25200.0,
    ...     turbidity=3.0))
    385
    """
    return float(_level(latitude, longitude, altitude, day, zone, turbidity).mean())


@dataclass(frozen=True)
class ClearDay:
    """The minutes of a clear day, from midnight by the clock: sun on level ground and on the panel, W/m2."""

    level: Any
    on_panel: Any


@lru_cache(maxsize=64)
def clear_day(
    latitude: float, longitude: float, altitude: float, day: int, zone: float, turbidity: float,
    tilt: float, azimuth: float,
) -> ClearDay:  # fmt: skip
    """Work the minutes of one day at one place, once."""
    from pvlib.irradiance import get_total_irradiance

    times, place = _minutes(latitude, longitude, altitude, day, zone)
    with calm():
        sun = place.get_solarposition(times)
        sky = place.get_clearsky(times, model="ineichen", solar_position=sun, linke_turbidity=turbidity)
    face = get_total_irradiance(
        degrees(tilt), degrees(azimuth), sun["apparent_zenith"], sun["azimuth"], sky["dni"], sky["ghi"],
        sky["dhi"],
    )  # fmt: skip
    return ClearDay(_kept(sky["ghi"]), _kept(face["poa_global"]))


def _kept(minutes: Any) -> Any:
    """A series as an array that nobody can change, nothing where the sun is down."""
    array = minutes.fillna(0.0).clip(lower=0.0).to_numpy().copy()
    array.flags.writeable = False
    return array


@contextmanager
def calm() -> Iterator[None]:
    """Run calls of the library without its warnings: of words that pandas means to drop, of mixed columns."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        yield


def _level(
    latitude: float, longitude: float, altitude: float, day: float, zone: float, turbidity: float
) -> Any:
    return clear_day(
        float(latitude), float(longitude), float(altitude), int(day), float(zone), float(turbidity), 0.0, 0.0
    ).level


def _minutes(latitude: float, longitude: float, altitude: float, day: int, zone: float) -> tuple[Any, Any]:
    """The minutes of a day by the clock, and the place."""
    import datetime

    import pandas
    from pvlib.location import Location

    clock = datetime.timezone(datetime.timedelta(seconds=zone))
    first = datetime.datetime(YEAR, 1, 1, tzinfo=clock) + datetime.timedelta(days=day - 1)
    times = pandas.date_range(first, periods=MINUTES, freq="min")
    return times, Location(degrees(latitude), degrees(longitude), "UTC", altitude)


def _ineichen(
    zenith: float, air_mass: float, turbidity: float, altitude: float, above_air: float
) -> dict[str, float]:
    from pvlib.clearsky import ineichen

    found = ineichen(
        degrees(zenith),
        float(air_mass),
        float(turbidity),
        altitude=float(altitude),
        dni_extra=float(above_air),
    )
    return {name: float(value) for name, value in found.items()}


@lru_cache(maxsize=64)
def _turbidity(latitude: float, longitude: float, day: int) -> float:
    from pvlib.clearsky import lookup_linke_turbidity

    times, _ = _minutes(latitude, longitude, 0.0, day, 0.0)
    with calm():
        return float(lookup_linke_turbidity(times[:1], degrees(latitude), degrees(longitude)).iloc[0])
