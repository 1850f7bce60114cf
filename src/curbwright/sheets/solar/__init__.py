"""Solar: what the panels put into the battery on a clear and on a dull day, and what their wires carry."""

from __future__ import annotations

from collections.abc import Mapping

from curbwright import data, units
from curbwright.build.cart import Build
from curbwright.build.solar import Solar
from curbwright.equations import solar as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.placing import Placing
from curbwright.sheets.solar.currents import currents
from curbwright.sheets.solar.hours import Array, Sky, clear_day, sky
from curbwright.sheets.solar.weather import FIELD, season

__all__ = ["solar_sheet"]


def solar_sheet(build: Build, placing: Placing, figures: Mapping[str, Figure]) -> Worksheet:
    """Work out the panels; ``figures`` are those of the bank."""
    sheet = Worksheet("solar", "Solar")
    solar = build.solar
    if solar is None:
        sheet.note("This cart has no panels.")
        return sheet
    with sheet.attempt():
        _energy(build, solar, figures, sheet)
    currents(solar, figures, sheet.section("currents", "currents and voltages"))
    return sheet


def _energy(build: Build, solar: Solar, figures: Mapping[str, Figure], sheet: Worksheet) -> None:
    array = _array(solar, figures, sheet)
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


def _array(solar: Solar, figures: Mapping[str, Figure], sheet: Worksheet) -> Array:
    """Write the panels together, their losses and their controller."""
    if solar.count is not None or not solar.panels:
        count = sheet.given(solar["count"])
    else:
        count = sheet.choice(
            "panel_count", "panels", float(len(solar.panels)), "solar.panels", ", ".join(solar.panels)
        )
    rated = sheet.work(
        "rated_all",
        "rated power of all panels",
        eq.panels_together,
        one=sheet.given(solar["rated"]),
        count=count,
    )
    return Array(
        rated, _efficiency(solar, figures, sheet), _losses(solar, sheet), _most(solar, figures, rated, sheet)
    )


def _losses(solar: Solar, sheet: Worksheet) -> Figure:
    if solar.losses is not None:
        return sheet.given(solar["losses"])
    parts = {
        row["loss"]: sheet.tabled(
            f"loss_{row['loss']}",
            f"lost to {row['says']}",
            float(units.read(row["share"], "share")),
            "1",
            source=row["source"],
            row=row["how"],
            shown="%",
        )
        for row in data.table("solar/losses")
    }
    return sheet.work("losses_together", "losses together", eq.losses_together, shown="%", **parts)


def _efficiency(solar: Solar, figures: Mapping[str, Figure], sheet: Worksheet) -> Figure:
    """Of an MPPT controller as given; a switching one works the panels at the battery's voltage."""
    if solar.controller.kind == "MPPT":
        return sheet.given(solar.controller["efficiency"])
    return sheet.work(
        "switching",
        "what the controller uses of the panels",
        eq.switching_efficiency,
        shown="%",
        battery=charging_voltage(figures),
        best=sheet.given(solar["best_voltage"]),
        series=sheet.given(solar["in_series"]),
    )


def _most(solar: Solar, figures: Mapping[str, Figure], rated: Figure, sheet: Worksheet) -> Figure:
    """Most power that the controller passes on; without its rating, all that the panels can make."""
    if solar.controller.current is None:
        return sheet.largest("most", "most power to the battery", {"the panels' rating": rated})
    return sheet.work(
        "most",
        "most power to the battery",
        eq.power_at,
        current=sheet.given(solar.controller["current"]),
        voltage=charging_voltage(figures),
    )


def charging_voltage(figures: Mapping[str, Figure]) -> Figure:
    """Return the voltage the bank is charged to; raises MissingInput where there is none."""
    if "battery.charging.voltage" not in figures:
        raise MissingInput("battery", "the bank that the panels charge is not known yet")
    return figures["battery.charging.voltage"]
