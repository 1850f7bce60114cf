"""Cold holding: what every box lets in, whether its machine keeps up, what it draws, how long it holds."""

from __future__ import annotations

from curbwright import data
from curbwright.build import kinds
from curbwright.build.cart import Build
from curbwright.build.fit import Item
from curbwright.figures import Figure, Gap, Worksheet
from curbwright.sheets.cold.ambient import design_day
from curbwright.sheets.cold.box import box_section, cooled_by
from curbwright.sheets.placing import Placing

__all__ = ["cold_sheet"]

TOTALS = {
    "heat_gain": "heat let into all boxes, each at its worst hour",
    "power_mean": "electricity of all boxes on average over 24 hours",
    "energy_day": "electricity of all boxes in 24 hours",
    "energy_service": "electricity of all boxes in the serving time",
}
"""What is added up over the boxes; those that ice keeps cold draw nothing."""


def cold_sheet(build: Build, placing: Placing) -> Worksheet:
    """Work out every box that keeps food cold, and the day they stand in."""
    sheet = Worksheet("cold", "Cold holding")
    boxes = {key: item for key, item in build.items.items() if _is_box(item)}
    if not boxes:
        sheet.note("Nothing aboard keeps food cold.")
        return sheet
    sheet.given(build.place["cold_limit"])
    row = data.table("cold/thermometers").row("air and water")
    accuracy = data.table("cold/thermometers").quantity("air and water", "accuracy", "temperature_difference")
    sheet.tabled(
        "thermometer_limit", "accuracy asked of a thermometer for air", float(accuracy), "delta_degC",
        source=row["source"], row=row["clause"],
    )  # fmt: skip
    with sheet.attempt():
        day = design_day(build, sheet.section("design_day", "the design day at the pitch"))
        for key, item in boxes.items():
            below = sheet.section(key, item.name)
            with below.attempt():
                box_section(build, item, day, below)
        _totals(boxes, sheet)
    _cautions(sheet)
    return sheet


def _is_box(item: Item) -> bool:
    return item.cold is not None or (item.kind in kinds.names() and kinds.find(item.kind).is_("cold_box"))


def _totals(boxes: dict[str, Item], sheet: Worksheet) -> None:
    """Add up over the boxes what all of them have; a box without it leaves the total out, with its reason."""
    figures = sheet.figures()
    for id, name in TOTALS.items():
        asked = [key for key, item in boxes.items() if id == "heat_gain" or cooled_by(item) != "ice"]
        terms: list[Figure] = []
        for key in asked:
            found = figures.get(f"cold.{key}.{id}")
            if found is not None:
                terms.append(_called(found, boxes[key].name))
        if len(terms) == len(asked):
            sheet.total(id, name, terms, unit="W" if id in ("heat_gain", "power_mean") else "J")
        else:
            sheet.gaps += [
                Gap(sheet.id, gap.path, gap.says) for gap in sheet.all_gaps() if gap.section != sheet.id
            ][:1]


def _called(figure: Figure, name: str) -> Figure:
    return Figure(
        float(figure), id=figure.id, name=name, unit=figure.unit, origin=figure.origin, shown=figure.shown
    )


def _cautions(sheet: Worksheet) -> None:
    for text in (
        "Keep boxes and their condensers out of the cook line's plume, with air of their own in and out.",
        "The thermometer belongs in the warmest place. A reading of 40 °F may be 42 °F.",
        "A box with a flammable refrigerant keeps its maker's distance from flames. Dry ice gives off carbon"
        " dioxide: never in a closed cart.",
        "This is worked out for a design day and is no record: log temperatures, and discard by the rule.",
    ):
        sheet.note(text)
