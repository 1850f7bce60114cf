"""What stands under the hood and what burns in the cart, and the constants of the methods, written once."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from curbwright import data, units
from curbwright.build import kinds
from curbwright.build.cart import Build
from curbwright.build.exhaust import Exhaust
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.gas.things import Thing, things_on_gas, usual
from curbwright.sheets.placing import Placed, Placing

AIR = "cfm|L/s"
SPEED = "fpm|m/s"
HEAT = "BTU/h|kW"
WATER = "in WC|Pa"
SMALL = "in2|cm2"
FREE = "ft2|m2"
PARTS = "ppm"
SHOWN = {"share": "%", "speed": SPEED, "flow": AIR}
"""The units that constants print in where their kind has another."""
TABLE = "exhaust/appliances"


@cache
def read(text: str, kind: str) -> float:
    """Read a cell of a table as a quantity, in SI, once."""
    return float(units.read(text, kind))


class Constants:
    """The constants of data/exhaust/constants.csv, each written on the sheet when it is first used."""

    def __init__(self, sheet: Worksheet) -> None:
        self.sheet = sheet.section("constants", "constants of air and of the methods")
        self._known: dict[str, Figure] = {}

    def __getitem__(self, name: str) -> Figure:
        """Return a constant as a figure; raises UnknownName."""
        if name not in self._known:
            self._known[name] = self._written(name)
        return self._known[name]

    def _written(self, name: str) -> Figure:
        row = data.table("exhaust/constants").row(name)
        kind, says = row["kind"], row["says"].partition(";")[0]
        unit = "m**2/s" if name == "viscosity" else units.KINDS[kind].unit
        shown = PARTS if "%" not in row["value"] and kind == "share" else SHOWN.get(kind)
        id = name.replace(" ", "_")
        value = read(row["value"], kind)
        return self.sheet.tabled(id, says, value, unit, source=row["source"], row=row["value"], shown=shown)


@dataclass(frozen=True)
class Cooking:
    """An appliance that gives off heat to a hood or the cart: its input, what it burns, and its shares."""

    key: str
    name: str
    kind: str
    load: Figure
    busy: Figure
    plume: Figure
    radiant: Figure


def under_hood(build: Build, exhaust: Exhaust) -> list[str]:
    """Return the items below the hood: as named, or whatever aboard gives off grease."""
    if exhaust.appliances is not None:
        return list(dict.fromkeys(exhaust.appliances))
    return [key for key, item in build.items.items() if kinds.find(item.kind).is_("grease")]


def hood_key(build: Build, exhaust: Exhaust) -> str:
    """Return the hood's item; raises MissingInput where none is named and there is not just one."""
    hoods = [key for key, item in build.items.items() if kinds.find(item.kind).is_("hood")]
    if exhaust.hood is not None:
        return exhaust.hood
    if len(hoods) != 1:
        raise MissingInput("exhaust.hood", f"{len(hoods)} hoods are aboard, and which is meant is not given")
    return hoods[0]


def standing(key: str, placing: Placing) -> Placed:
    """Return where an item stands; raises MissingInput where its size or position is not given."""
    placed = placing.items.get(key)
    if placed is None or not placed.sized:
        raise MissingInput(f"items.{key}.width", f"where {key} stands and how large it is is not given")
    return placed


def burning(build: Build, placing: Placing) -> dict[str, Thing]:
    """Return what burns gas with the air of the cart: not what is sealed off, or stands on the drawbar."""
    outside = {key for key, placed in placing.items.items() if not placed.inboard}
    found = things_on_gas(build).burning
    return {key: one for key, one in found.items() if not one.item.sealed_off and key not in outside}


def all_known(things: list[Cooking], named: dict[str, Thing]) -> None:
    """Raise MissingInput where the heat of something that burns could not be worked out."""
    for key, thing in named.items():
        if key not in {one.key for one in things}:
            says = f"how much gas {thing.name} burns and when is not given"
            raise MissingInput(f"items.{key}.gas_input", says)


def cooking(key: str, thing: Thing, sheet: Worksheet) -> Cooking:
    """Write what one appliance burns while busy and where its heat goes; raises MissingInput."""
    table = data.table(TABLE)
    load = sheet.given(thing.item["gas_input"])
    busy = usual(thing, "busy", "share", sheet)
    row = table.row(thing.kind if thing.kind in table.keys() else "press")  # noqa: SIM118
    other = "" if row["kind"] == thing.kind else ", taken as a griddle's"
    plume, radiant = (
        sheet.tabled(
            word, f"{thing.name}: {says}{other}", read(row[word], "share"), "1", source="trade-practice",
            row=row["kind"], shown="%",
        )
        for word, says in (("plume", "share of it that rises"), ("radiant", "share that it radiates"))
    )  # fmt: skip
    return Cooking(key, thing.name, row["kind"], load, busy, plume, radiant)
