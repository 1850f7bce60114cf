"""Solar: what the panels put into the battery on a clear and on a dull day, and what their wires carry."""

from __future__ import annotations

from collections.abc import Mapping

from curbwright.build.cart import Build
from curbwright.build.solar import Solar
from curbwright.equations import solar as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.placing import Placing
from curbwright.sheets.solar.array import Array, array_of
from curbwright.sheets.solar.currents import currents
from curbwright.sheets.solar.hours import Sky, clear_day, sky
from curbwright.sheets.solar.weather import FIELD, season

__all__ = ["solar_sheet"]


def solar_sheet(build: Build, placing: Placing, figures: Mapping[str, Figure]) -> Worksheet:
    """Work out the panels; ``figures`` are those of the bank."""
    sheet = Worksheet("solar", "Solar")
    solar = build.solar
    if solar is None:
        sheet.note("This cart has no panels.")
        return sheet
    array: Array | None = None
    with sheet.attempt():
        array = array_of(solar, figures, sheet)
        _energy(build, solar, array, sheet)
    currents(solar, figures, array, sheet.section("currents", "currents and voltages"))
    return sheet


def _energy(build: Build, solar: Solar, array: Array, sheet: Worksheet) -> None:
    above = sky(build, solar, sheet)
    hours = sheet.section("clear", "a clear day, hour by hour")
    clear = clear_day(build, solar, above, array, hours)
    if solar.weather_file is None:
        sheet.largest("energy_per_day", "energy to the battery a day, clear sky", {"clear day": clear})
        sheet.work(
            "energy_dull",
            "energy to the battery on a dull day",
            eq.part_of,
            energy=clear,
            share=sheet.given(solar["dull"]),
        )
        return
    below = sheet.section("weather", "the season in the weather file")
    with below.attempt():
        mean, dull = _weather(build, above, clear, below)
        sheet.largest(
            "energy_per_day", "energy to the battery a day, mean of the season", {"weather file": mean}
        )
        sheet.largest("energy_dull", "energy to the battery on a dull day", {"one day in ten": dull})


def _weather(build: Build, above: Sky, clear: Figure, sheet: Worksheet) -> tuple[Figure, Figure]:
    """The season of the date in the weather file, in proportion to the clear day."""
    found = season(build, above.place["day"], above.face["tilt"], above.face["azimuth"])
    sheet.note(f"Weather file: {found.says}. Hours are standard time; the days within 15 of the date count.")
    sheet.choice("hours", "hours in the file", float(found.hours), FIELD, found.says)
    begins = sheet.tabled("begins", "from", 0.0, "s", source="convention", shown="clock")
    ends = sheet.tabled("ends", "until", 86400.0, "s", source="convention", shown="clock")
    whole = sheet.work(
        "clear",
        "mean sun on the panels on a clear day, day and night",
        eq.panel_sun,
        shown="W/m2",
        **above.all,
        begins=begins,
        ends=ends,
    )
    energies = {}
    for id, says, value in (
        ("mean", "the mean day", found.mean),
        ("dull", "the dullest day in ten", found.dull),
        ("bright", "the brightest day in ten", found.bright),
    ):
        sun = sheet.choice(
            f"sun_{id}", f"mean sun on the panels, day and night, {says}", value, FIELD, found.says, "W/m**2"
        )
        energies[id] = sheet.work(
            f"energy_{id}",
            f"energy to the battery, {says}",
            eq.in_proportion,
            energy=clear,
            sun=sun,
            clear=whole,
        )
    return energies["mean"], energies["dull"]
