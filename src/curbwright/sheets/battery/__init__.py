"""Battery: what the bank holds and gives, what it needs around it, and how a day runs on it."""

from __future__ import annotations

from curbwright.build.cart import Build
from curbwright.figures import Worksheet
from curbwright.sheets.battery.bank import rating, sizes, wells
from curbwright.sheets.battery.charging import charging, cold
from curbwright.sheets.battery.day import battery_day_sheet
from curbwright.sheets.battery.posts import resistances, voltages
from curbwright.sheets.battery.spec import Spec
from curbwright.sheets.battery.state import temperature_factor, usable
from curbwright.sheets.battery.together import box, equal
from curbwright.sheets.battery.vent import vent
from curbwright.sheets.placing import Placing

__all__ = ["battery_day_sheet", "battery_sheet"]

NOTHING = "This cart has no battery."
UNTOLD = "A battery is aboard, and [battery] does not say which items it is made of or what it can do."


def battery_sheet(build: Build, placing: Placing) -> Worksheet:
    """Work out what the bank is by itself; what a day asks of it comes after the circuits."""
    sheet = Worksheet("battery", "Battery")
    if build.battery is None:
        aboard = any(item.kind == "battery" for item in build.items.values())
        sheet.note(UNTOLD if aboard else NOTHING)
        return sheet
    spec = Spec(build, build.battery)
    for part, id, says in (
        (equal, "equal", "equal batteries"),
        (box, "box", "what else stands in its box"),
        (cold, "cold", "how cold it is charged"),
    ):
        below = sheet.section(id, says)
        with below.attempt():
            part(spec, below)
    with sheet.attempt():
        _bank(spec, sheet)
    return sheet


def _bank(spec: Spec, sheet: Worksheet) -> None:
    known = sizes(spec, sheet)
    voltages(spec, known, sheet)
    one, rated = rating(spec, known, sheet)
    resistances(spec, known, one, sheet)
    for part, id, says in ((vent, "vent", "hydrogen and its openings"), (charging, "charging", "charging")):
        below = sheet.section(id, says)
        with below.attempt():
            part(spec, known, rated, below)
    held = wells(spec, known, one, sheet)
    usable(spec, known, held, temperature_factor(spec, sheet), sheet)
