"""Uses of water besides hands and utensils: food and drink, preparing, steam, sanitiser, cleaning."""

from __future__ import annotations

from dataclasses import dataclass, field

from curbwright import data, units
from curbwright.build.cart import Build
from curbwright.equations import water as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.water.constants import HOURLY, PER_HOUR, Constants
from curbwright.sheets.water.things import WaterThings

BANDS = ("low", "base", "high")
SPAN = "use after which utensils are washed"


@dataclass
class Need:
    """The day's need as it is gathered."""

    build: Build
    things: WaterThings
    constants: Constants
    sheet: Worksheet
    hours: Figure
    workers: Figure
    serving: Figure
    tasks: dict[str, dict[str, Figure]] = field(default_factory=lambda: {band: {} for band in BANDS})
    """Water by band and task."""

    def base(self, task: str) -> Figure:
        """What a task takes, as the build file has it."""
        return self.tasks["base"][task]


def band_of(need: Need, task: str, band: str, kind: str) -> Figure:
    """Write one end of the band of a habit."""
    row = data.table("water/tasks").row(task)
    shown = {"share": "%", "rate": PER_HOUR, "flow": HOURLY}.get(kind)
    return need.sheet.tabled(
        f"habit_{task}_{band}",
        f"{row['says']}, {band}",
        float(units.read(row[band], kind)),
        units.KINDS[kind].unit,
        source=row["source"],
        row=row[band],
        shown=shown,
    )


def portions(need: Need) -> None:
    """Write the water in what is sold, and the water that preparing it takes."""
    sheet, menu = need.sheet, need.build.menu
    if not menu:
        sheet.note("Nothing is on the menu, so no water goes into food or drink.")
        return
    into: dict[str, dict[str, Figure]] = {}
    drunk: dict[str, dict[str, Figure]] = {}
    prepared: dict[str, dict[str, Figure]] = {}
    for key, sold in menu.items():
        name, portions = (sold.says or key.replace("_", " ")), sheet.given(sold["portions"])
        row = {"number": portions, "each": sheet.given(sold["water"])}
        (drunk if sold.drink else into)[name] = row
        prepared[name] = {"number": portions, "each": sheet.given(sold["prep_water"])}
    food = sheet.schedule("food", "water in food", eq.each_times, into)
    drinks = sheet.schedule("drinks", "water in drinks", eq.each_times, drunk)
    product = sheet.total("product", "food and drink", [food, drinks])
    purged = sheet.work(
        "purged",
        "drinks run to waste",
        eq.filled_to,
        volume=drinks,
        share=sheet.given(need.build.water["purge"]),
    )
    prep = sheet.schedule("preparation", "preparation", eq.each_times, prepared)
    for band in BANDS:
        need.tasks[band]["food and drink"] = product
        need.tasks[band]["drinks run to waste"] = purged
        share = band_of(need, "prep_water", band, "share")
        need.tasks[band]["preparation"] = sheet.work(
            f"preparation_{band}", f"preparation, {band}", eq.filled_to, volume=prep, share=share
        )


def steam(need: Need) -> None:
    """Write what steam tables and baths take: filled once, and boiling off while serving."""
    sheet = need.sheet
    for band in BANDS:
        terms: list[Figure] = []
        for one in need.things.steam.values():
            if one.water.gives_off is not None:
                rate = sheet.given(one.water["gives_off"])
            else:
                known = sheet.figures().get(f"{sheet.id}.habit_gives_off_{band}")
                rate = known or band_of(need, "gives_off", band, "flow")
            off = sheet.work(f"steam_{one.key}_{band}", f"{one.name}: boiled off, {band}", eq.run_volume,
                             flow=rate, time=need.serving)  # fmt: skip
            terms += [sheet.given(one.water["holds"]), off]
        if terms:
            need.tasks[band]["steam tables"] = sheet.total(f"steam_{band}", f"steam tables, {band}", terms)


def cleaning(need: Need) -> None:
    """Write the water to clean up with."""
    sheet = need.sheet
    given = sheet.given(need.build.water["cleaning"])
    for band in BANDS:
        share = band_of(need, "cleaning", band, "share")
        need.tasks[band]["cleaning"] = sheet.work(
            f"cleaning_{band}", f"cleaning, {band}", eq.filled_to, volume=given, share=share
        )


def buckets(need: Need) -> None:
    """Write the water in buckets of sanitiser."""
    sheet = need.sheet
    span = need.constants.cell(
        "water/allowance", "span", "value", "time", "use after which utensils are washed"
    )
    each = band_of(need, "bucket", "base", "volume")
    times = sheet.work(
        "bucket_times", "times sanitiser is made", eq.washes_needed, time=need.hours, each=span
    )
    taken = sheet.work(
        "buckets", "buckets of sanitiser", eq.ware_volume, washes=times,
        bowls=sheet.given(need.build.water["buckets"]), volume=each,
    )  # fmt: skip
    for band in BANDS:
        need.tasks[band]["buckets"] = taken
