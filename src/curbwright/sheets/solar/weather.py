"""A weather file of a typical year: reading TMY3 and EPW, and the sun on the panels around a date."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import degrees
from pathlib import Path, PurePosixPath, PureWindowsPath
from typing import Any

from curbwright.build.cart import Build
from curbwright.equations.solar.sky import YEAR, calm
from curbwright.errors import MissingInput

MOST_BYTES = 20 * 1024 * 1024
FIELD = "solar.weather_file"
WINDOW = 15
"""Days before and after the date that count as its season."""
LARGEST_SUN = 1500.0
"""W/m2: no instrument on the ground reads more for an hour."""
_COLUMNS = ("ghi", "dni", "dhi")


@dataclass(frozen=True)
class Season:
    """The days around a date in a weather file: mean sun on the panels over whole days, W/m2.

    ``dull`` is the day that one in ten is duller than, ``bright`` the one that one in ten is brighter than.
    """

    says: str
    hours: int
    mean: float
    dull: float
    bright: float


def season(build: Build, day: float, tilt: float, azimuth: float) -> Season:
    """Read the weather file that a build file names; angles in radians.

    Raises MissingInput, which says what is wrong with the file.
    """
    place = _place(build)
    try:
        stamp = place.stat().st_mtime_ns
    except OSError as error:
        raise _wrong(f"cannot be opened: {error.strerror}") from None
    return _season(place, stamp, round(day), degrees(tilt), degrees(azimuth))


def _place(build: Build) -> Path:
    """The file's own path, inside the folder of the build file."""
    name = (build.solar.weather_file if build.solar is not None else None) or ""
    if build.folder is None:
        raise _wrong("is looked for beside the build file, and this one was read from text alone")
    parts = PureWindowsPath(name).parts if "\\" in name else PurePosixPath(name).parts
    if (
        not parts
        or PureWindowsPath(name).is_absolute()
        or PureWindowsPath(name).drive
        or name.startswith("/")
    ):
        raise _wrong("must be named from the folder of the build file, such as weather/town.epw")
    if ".." in parts:
        raise _wrong("must stand in the folder of the build file or below it")
    place = build.folder.joinpath(*parts)
    if not place.is_file():
        raise _wrong(f"is not there: no file {name[:80]} beside the build file")
    if place.stat().st_size > MOST_BYTES:
        raise _wrong("is larger than 20 MiB, and a typical year has about one")
    return place


def _wrong(what: str) -> MissingInput:
    return MissingInput(FIELD, f"the weather file {what}")


@lru_cache(maxsize=8)
def _season(place: Path, stamp: int, day: int, tilt: float, azimuth: float) -> Season:
    import numpy as np

    says, table, middle = _read(place)
    sun = _on_panels(table, middle, tilt, azimuth)
    by_day = sun.groupby(middle.day_of_year).mean()
    apart = (by_day.index.to_numpy() - day + 182) % 365 - 182
    near = by_day.to_numpy()[abs(apart) <= WINDOW]
    if near.size < WINDOW:
        raise _wrong("has too few days around the date")
    dull, bright = np.percentile(near, (10, 90))
    return Season(says, len(sun), float(near.mean()), float(dull), float(bright))


def _read(place: Path) -> tuple[str, Any, Any]:
    """What a file says it is, its rows, and the middle of each row's hour with the place of its sun."""
    import pandas
    from pvlib.iotools import read_epw, read_tmy3

    epw = place.read_bytes()[:9].upper().startswith(b"LOCATION,")
    kind, reads, half = ("EPW", read_epw, 30) if epw else ("TMY3", read_tmy3, -30)
    options = {} if epw else {"map_variables": True}
    try:
        with calm():
            table, about = reads(str(place), coerce_year=YEAR, **options)
            middle = table.index + pandas.Timedelta(minutes=half)
            for column in (*_COLUMNS, "latitude", "longitude"):
                _numbers(table if column in _COLUMNS else about, column)
    except MissingInput:
        raise
    except (ValueError, KeyError, IndexError, TypeError, AttributeError, OSError) as error:
        reason = f"{type(error).__name__}: {str(error).splitlines()[0][:80] if str(error) else ''}"
        raise _wrong(f"cannot be read as a typical year, TMY3 or EPW ({reason})") from None
    town = str(about.get("Name") or about.get("city") or "somewhere")
    town = "".join(mark for mark in town if mark.isprintable())[:60].strip(' "')
    says = f"{kind}, {town}, {float(about['latitude']):.1f}° N {float(about['longitude']):.1f}° E"
    table.attrs = {"latitude": float(about["latitude"]), "longitude": float(about["longitude"])}
    return says, table, middle


def _numbers(table: Any, column: str) -> None:
    """Raise MissingInput unless a column, or a coordinate, holds plain numbers in its bounds."""
    import numpy as np

    values = np.asarray(table[column], dtype=float)
    bounds = {"latitude": (-90.0, 90.0), "longitude": (-180.0, 180.0)}.get(column, (0.0, LARGEST_SUN))
    if not np.isfinite(values).all() or values.min() < bounds[0] or values.max() > bounds[1]:
        raise _wrong(f"has a {column} that is missing or cannot be: {bounds[0]:g} to {bounds[1]:g} is due")


def _on_panels(table: Any, middle: Any, tilt: float, azimuth: float) -> Any:
    """Mean sun on the panels in each hour of the file, W/m2."""
    from pvlib.irradiance import get_total_irradiance
    from pvlib.solarposition import get_solarposition

    with calm():
        sun = get_solarposition(middle, table.attrs["latitude"], table.attrs["longitude"])
        face = get_total_irradiance(
            tilt,
            azimuth,
            sun["apparent_zenith"].to_numpy(),
            sun["azimuth"].to_numpy(),
            table["dni"].to_numpy(),
            table["ghi"].to_numpy(),
            table["dhi"].to_numpy(),
        )
    import pandas

    found = pandas.Series(face["poa_global"], index=middle)
    return found.fillna(0.0).clip(lower=0.0)
