"""What is in the box: how much heat it holds per degree, and what it brings in when it is loaded warm."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright import data
from curbwright.build.cold import ColdBox
from curbwright.build.fit import Item
from curbwright.equations import cold as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.cold.walls import Inside

PER_AREA = 2300.0
"""J/m2/K: a thin liner and the inner part of its foam, common practice."""
PACKING = 900.0
"""kg/m3 of the filled part of a box, common practice."""
COMPONENTS = {
    "water": eq.water_specific_heat, "protein": eq.protein_specific_heat, "fat": eq.fat_specific_heat,
    "carbohydrate": eq.carbohydrate_specific_heat, "fibre": eq.fibre_specific_heat,
    "ash": eq.ash_specific_heat,
}  # fmt: skip


@dataclass(frozen=True)
class Contents:
    """The food in a box; ``specific_heat`` is as it is kept, thawed or frozen."""

    mass: Figure | None
    """None where the build file does not say."""
    freezing: Figure
    frozen: bool
    specific_heat: Figure
    load: Figure
    """Heat to be taken out of the food of a day."""


def contents(item: Item, box: ColdBox, room: Inside, sheet: Worksheet) -> Contents:
    """Work out what the food is like, and the heat of a day's loading."""
    mass = _mass(item, box, sheet)
    kept = sheet.given(box["set_point"])
    table = data.table("cold/foods")
    row, point = table.row(box.food), table.quantity(box.food, "freezing", "temperature")
    freezing = sheet.tabled(
        "freezing", f"{box.food} begins to freeze at", float(point), "K",
        source="recalled" if row["freezing_how"] == "memory" else "trade-practice", row=box.food,
    )  # fmt: skip
    frozen = float(kept) < float(freezing)
    thawed = _specific_heat(box, sheet)
    water = _share(box, "water", sheet)
    below = (
        sheet.work("frozen_specific_heat", "specific heat, frozen", eq.frozen_specific_heat, water=water)
        if frozen
        else None
    )
    loaded = _loaded(mass, box, room, sheet)
    load = _load(box, loaded, (kept, freezing, water), (thawed, below), sheet)
    return Contents(mass, freezing, frozen, thawed if below is None else below, load)


def heat_capacity(item: Item, box: ColdBox, room: Inside, food: Contents, sheet: Worksheet) -> Figure:
    """Work out the heat capacity of box and food; raises MissingInput where the food's mass is not given."""
    mass = food.mass if food.mass is not None else sheet.given(box["food_mass"])
    return sheet.work(
        "heat_capacity", "heat capacity of box and contents", eq.box_heat_capacity, area=room.area,
        per_area=sheet.tabled(
            "liner", "heat capacity of the liner", PER_AREA, "J/m**2/K", source="trade-practice"
        ),
        contents=sheet.work(
            "food_heat_capacity", "heat capacity of the food", eq.contents_heat_capacity, mass=mass,
            specific_heat=food.specific_heat,
        ),
    )  # fmt: skip


def _mass(item: Item, box: ColdBox, sheet: Worksheet) -> Figure | None:
    if box.food_mass is not None:
        return sheet.given(box["food_mass"])
    return sheet.given(item["stock"]) if item.stock is not None else None


def _loaded(mass: Figure | None, box: ColdBox, room: Inside, sheet: Worksheet) -> Figure:
    """Food put in each day: as given, else all of it, else as much as usually fits."""
    if box.loaded_mass is not None:
        return sheet.given(box["loaded_mass"])
    if mass is not None:
        return mass
    sheet.note("The food's mass is not given: loading counts as much as usually fits.")
    return sheet.work(
        "usual_mass", "food that usually fits", eq.mass_of_filling, volume=room.volume,
        filled=sheet.given(box["filled"]),
        density=sheet.tabled("packing", "food as packed", PACKING, "kg/m**3", source="trade-practice"),
    )  # fmt: skip


def _share(box: ColdBox, component: str, sheet: Worksheet) -> Figure:
    id = f"{sheet.id}.share_{component}"
    if id in sheet.figures():
        return sheet.figures()[id]
    table = data.table("cold/foods")
    row, part = table.row(box.food), table.quantity(box.food, component, "share")
    return sheet.tabled(
        f"share_{component}", f"{component} in {box.food}", float(part), "1", source=row["source"],
        row=box.food, shown="%",
    )  # fmt: skip


def _specific_heat(box: ColdBox, sheet: Worksheet) -> Figure:
    """Specific heat of the thawed food, from what it is made of, at 5 °C."""
    at = sheet.tabled("food_at", "food properties at", 278.15, "K", source="convention", row="5 °C")
    rows = {
        component: {
            "share": _share(box, component, sheet),
            "specific_heat": sheet.work(
                f"heat_{component}", f"specific heat of {component}", of, temperature=at
            ),
        }
        for component, of in COMPONENTS.items()
        if float(data.table("cold/foods").quantity(box.food, component, "share")) > 0
    }
    return sheet.schedule("specific_heat", f"specific heat of {box.food}", eq.component_heat, rows)


def _load(
    box: ColdBox, loaded: Figure, points: tuple[Figure, Figure, Figure],
    heats: tuple[Figure, Figure | None], sheet: Worksheet,
) -> Figure:  # fmt: skip
    """Heat of the food put in each day: cooled, or cooled and frozen, or frozen food cooled further."""
    kept, freezing, water = points
    thawed, frozen = heats
    warm = sheet.given(box["loaded_temperature"])
    if float(warm) <= float(kept):
        sheet.note("Food is put in no warmer than the box: it brings no heat in.")
        return sheet.tabled("load", "heat of food put in each day", 0.0, "J", source="convention")
    if frozen is not None and float(warm) > float(freezing):
        per_mass = sheet.work(
            "freezing_heat", "heat to freeze the food put in", eq.freezing_enthalpy, above=thawed, warm=warm,
            freezing=freezing, latent=sheet.work("latent", "heat of freezing", eq.freezing_heat, water=water),
            below=frozen, cold=kept,
        )  # fmt: skip
        return sheet.work("load", "heat of food put in each day", eq.heat_of, mass=loaded, per_mass=per_mass)
    return sheet.work(
        "load", "heat of food put in each day", eq.heat_to_cool, mass=loaded,
        specific_heat=thawed if frozen is None else frozen, warm=warm, cold=kept,
    )  # fmt: skip
