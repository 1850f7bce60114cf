"""What is cooked on what, and the constants of cooking, written once for the whole sheet."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright import data, units
from curbwright.build.cart import Build
from curbwright.build.cooking import CookingThing
from curbwright.build.fit import Item
from curbwright.build.food import MenuItem
from curbwright.equations import cold
from curbwright.equations import cooking as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet

HEAT = "BTU/h|kW"
ENERGY = "BTU|kJ"


@dataclass(frozen=True)
class Appliance:
    """One thing that food is cooked on or kept hot in, and what is sold that is cooked on it."""

    key: str
    item: Item
    cooking: CookingThing
    method: str
    sold: dict[str, MenuItem]

    @property
    def name(self) -> str:
        """What to call it."""
        return self.item.name


def appliances(build: Build) -> list[Appliance]:
    """Return everything with a `cooking` part, in the order of the build file."""
    return [_appliance(build, key, item, item.cooking) for key, item in build.items.items() if item.cooking]


def _appliance(build: Build, key: str, item: Item, cooking: CookingThing) -> Appliance:
    sold = {
        name: one
        for name, one in build.menu.items()
        if one.cooked_on is not None and one.cooked_on.removeprefix("items.") == key
    }
    rows = data.table("cooking/methods")
    usual = next((row["method"] for row in rows if (item.kind or "") in row["kinds"].split()), "other")
    return Appliance(key, item, cooking, cooking.method or usual, sold)


class Constants:
    """The constants of data/cooking/constants.csv and of propane, each written when it is first used."""

    def __init__(self, sheet: Worksheet) -> None:
        self.sheet = sheet.section("constants", "constants of cooking")
        self._known: dict[str, Figure] = {}

    def __getitem__(self, name: str) -> Figure:
        """Return a constant as a figure; raises UnknownName."""
        if name not in self._known:
            place = "gas/constants" if name == "heat_by_mass" else "cooking/constants"
            row = data.table(place).row(name)
            self._known[name] = self.sheet.tabled(
                name, row["says"].partition(";")[0], float(units.read(row["value"], row["kind"])),
                units.KINDS[row["kind"]].unit, source=row["source"], row=row["value"],
                shown="BTU/lb|kJ/kg" if row["kind"] == "heat_content" else None,
            )  # fmt: skip
        return self._known[name]


def usual(one: Appliance, field: str, column: str, kind: str, sheet: Worksheet) -> Figure:
    """Write a field of an appliance, or what its method usually has."""
    entry = one.cooking[field]
    if entry.value is not None:
        return sheet.given(entry)
    found = sheet.figures().get(f"{sheet.id}.{field}")
    row = data.table("cooking/methods").row(one.method)
    return found or sheet.tabled(
        field, f"{entry.name}, usual of a {one.method}", float(units.read(row[column], kind)),
        units.KINDS[kind].unit, source=row["source"], row=row["says"], shown="%" if kind == "share" else None,
    )  # fmt: skip


def input_of(one: Appliance, sheet: Worksheet) -> Figure:
    """Write the input of an appliance, gas or electricity; raises MissingInput where neither is given."""
    entry = one.cooking["power"]
    return sheet.given(entry if entry.value is not None else one.item["gas_input"])


def portion_heat(sold: MenuItem, constants: Constants, sheet: Worksheet) -> Figure:
    """Write the heat a portion takes; raises MissingInput for what is not given of it."""
    if sold.cook_to is None:
        raise MissingInput(f"{sold.path}.cook_to", f"{sold.says or sold.path}: cook_to is not given")
    mass = sheet.given(sold["portion_mass"])
    return sheet.work(
        "portion_heat", "heat into a portion", eq.food_heat, shown=ENERGY, mass=mass,
        specific_heat=specific_heat(sold, sheet), start=sheet.given(sold["from_temperature"]),
        end=sheet.given(sold["cook_to"]), latent=constants["latent"],
        cooked_off=sheet.work(
            "cooked_off", "water that cooks off a portion", eq.water_cooked_off, mass=mass,
            share=sheet.given(sold["cooked_off"]),
        ),
    )  # fmt: skip


def specific_heat(sold: MenuItem, sheet: Worksheet) -> Figure:
    """Write the specific heat of what is sold, by its water."""
    table = data.table("cold/foods")
    water = sheet.tabled(
        "water", f"water in {sold.food}", float(table.quantity(sold.food, "water", "share")), "1",
        source=table.row(sold.food)["source"], row=sold.food, shown="%",
    )  # fmt: skip
    return sheet.work("specific_heat", "specific heat", cold.simple_specific_heat, water=water)
