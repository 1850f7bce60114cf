"""The bottles' cabinet: how much air it needs at the top and at the floor."""

from __future__ import annotations

from curbwright.build.gas import Cabinet
from curbwright.equations import gas as eq
from curbwright.errors import MissingInput
from curbwright.figures import Worksheet
from curbwright.sheets.gas.things import Constants, Things

AREA = "in2|cm2"


def vents(cabinet: Cabinet, things: Things, constants: Constants, sheet: Worksheet) -> None:
    """Write the free area that each of two openings needs, by the fuel and by the floor; the larger counts.

    Raises MissingInput for an opening that is not given.
    """
    charges = [sheet.given(one.item["charge"]) for one in things.bottles.values()]
    fuel = sheet.total("fuel", "propane in the cabinet", charges, unit="kg")
    ways = {
        "by the fuel": sheet.work(
            "by_fuel",
            "each opening, by the fuel",
            eq.vent_by_fuel,
            shown=AREA,
            fuel=fuel,
            area=constants["vent_each"],
            each=constants["vent_pound"],
            least=constants["vent_least"],
        )  # fmt: skip
    }
    if cabinet.width is not None and cabinet.depth is not None:
        ways["by the floor"] = sheet.work(
            "by_floor", "each opening, by the floor", eq.vent_by_floor, shown=AREA,
            width=sheet.given(cabinet["width"]), depth=sheet.given(cabinet["depth"]),
            share=constants["vent_floor"],
        )  # fmt: skip
    sheet.largest("needed", "free area that each opening needs", ways, shown=AREA)
    for field in ("vent_top", "vent_bottom"):
        entry = cabinet[field]
        if entry.value is None:
            raise MissingInput(entry.path, f"{entry.name} is not given")
        sheet.given(entry)
