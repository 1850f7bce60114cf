"""What burns gas and what holds it, and the constants of propane, written once for the whole sheet."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from curbwright import data, units
from curbwright.build import kinds
from curbwright.build.cart import Build
from curbwright.build.fit import Item
from curbwright.build.gas import GasThing
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet

HEAT = "BTU/h|kW"
"""The unit that gas loads print in."""
SHOWN = {
    "share": "%", "heat_content": "BTU/lb|kJ/kg", "heat_density": "BTU/ft3|MJ/m3", "area": "in2|cm2",
}  # fmt: skip
"""The units that constants print in where their kind has another."""
_ON_MAINS = {"12 V", "120 V"}


@dataclass(frozen=True)
class Thing:
    """One item that burns or holds gas, with what the file says of its gas."""

    key: str
    item: Item
    gas: GasThing

    @property
    def name(self) -> str:
        """What to call it."""
        return self.item.name

    @property
    def kind(self) -> str:
        """Its kind, by which what is left out is taken as usual."""
        return self.item.kind or ""


@dataclass(frozen=True)
class Things:
    """Everything on gas: what burns it, the bottles connected, and every bottle aboard."""

    burning: dict[str, Thing]
    bottles: dict[str, Thing]
    aboard: dict[str, Thing]


def things_on_gas(build: Build) -> Things:
    """Return what burns gas and the bottles, in the order of the build file."""
    items, named = build.items, build.gas.bottles
    burning = {key: Thing(key, item, _gas(key, item)) for key, item in items.items() if _burns(item)}
    holds = [key for key, item in items.items() if kinds.find(item.kind).is_("bottle")]
    aboard = {
        key: Thing(key, items[key], _gas(key, items[key])) for key in dict.fromkeys([*holds, *(named or ())])
    }
    return Things(
        burning, aboard if named is None else {key: aboard[key] for key in dict.fromkeys(named)}, aboard
    )


def _gas(key: str, item: Item) -> GasThing:
    """What the file says of an item's gas; where it says nothing, every field left out."""
    if item.gas is not None:
        return item.gas
    nothing = GasThing()
    nothing._path = f"items.{key}.gas"
    return nothing


def _burns(item: Item) -> bool:
    """Whether it burns gas: it is connected to it, or has an input and is not on electricity alone."""
    kind = kinds.find(item.kind)
    if kind.is_("bottle"):
        return False
    if item.gas_input is None:  # a regulator, a hose and a rack of bottles are connected to gas as well
        return "gas" in item.connects and not kind.is_("small", "holds")
    return "gas" in item.connects or not (_ON_MAINS & set(item.connects))


@cache
def read(text: str, kind: str) -> float:
    """Read a cell of a table as a quantity, in SI, once."""
    return float(units.read(text, kind))


class Constants:
    """The constants of data/gas/constants.csv, each written on the sheet when it is first used."""

    def __init__(self, sheet: Worksheet) -> None:
        self.sheet = sheet.section("constants", "constants of propane and of the methods")
        self._known: dict[str, Figure] = {}

    def __getitem__(self, name: str) -> Figure:
        """Return a constant as a figure; raises UnknownName."""
        if name not in self._known:
            self._known[name] = self._written(name)
        return self._known[name]

    def _written(self, name: str) -> Figure:
        row = data.table("gas/constants").row(name)
        kind = row["kind"]
        shown = SHOWN.get(kind)
        return self.sheet.tabled(
            name,
            row["says"].partition(";")[0],
            read(row["value"], kind),
            units.KINDS[kind].unit,
            source=row["source"],
            row=row["value"],
            shown=shown,
        )


def usual(thing: Thing, field: str, kind: str, sheet: Worksheet) -> Figure:
    """Write a field of an appliance, or what its kind usually does; raises MissingInput for another kind."""
    entry = thing.gas[field]
    if entry.value is not None:
        return sheet.given(entry)
    table = data.table("gas/duty")
    if thing.kind not in table.keys():  # noqa: SIM118 - a table's first column, not a mapping
        raise MissingInput(entry.path, f"{entry.name} is not given, and of its kind nothing usual is known")
    row = table.row(thing.kind)
    unit = "s" if kind == "time" else "1"
    says = f"usual of its kind ({thing.kind.replace('_', ' ')})"
    return sheet.tabled(
        field, f"{entry.name}, {says}", read(row[field], kind), unit, source="trade-practice",
        row=row["says"], shown="%" if kind == "share" else None,
    )  # fmt: skip
