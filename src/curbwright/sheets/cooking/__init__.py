"""Cooking: heating up, what a portion takes, portions an hour and the step that limits them."""

from __future__ import annotations

from curbwright.build.cart import Build
from curbwright.figures import Worksheet
from curbwright.sheets.cooking.heat import plate, pot
from curbwright.sheets.cooking.pace import Day, of_appliance, of_cart
from curbwright.sheets.cooking.things import Appliance, Constants, appliances
from curbwright.sheets.placing import Placing

__all__ = ["cooking_sheet"]


def cooking_sheet(build: Build, placing: Placing) -> Worksheet:
    """Work out everything with a `cooking` part, and the portions an hour of the cart."""
    sheet = Worksheet("cooking", "Cooking")
    things = appliances(build)
    if not things:
        sheet.note("Nothing aboard says how it cooks: [items.NAME.cooking] has it worked out.")
        return sheet
    constants, day = Constants(sheet), Day()
    cooked = [one for one in things if one.sold and one.method != "bath"]
    done = 0
    for one in things:
        below = sheet.section(one.key, one.name)
        with below.attempt():
            _heat(one, constants, below)
        if one in cooked:
            with below.attempt():
                of_appliance(build, one, constants, below, day)
                done += 1
    if cooked and done == len(cooked):
        with sheet.attempt():
            of_cart(build, cooked, day, constants, sheet)
    elif cooked:
        sheet.gaps += [gap for gap in sheet.all_gaps() if gap.section != sheet.id][:1]
    _cautions(things, sheet)
    return sheet


def _heat(one: Appliance, constants: Constants, sheet: Worksheet) -> None:
    if one.method == "plate":
        plate(one, constants, sheet)
    elif one.method in ("pot", "bath", "fryer"):
        pot(one, constants, sheet)


def _cautions(things: list[Appliance], sheet: Worksheet) -> None:
    sheet.note(
        "Planned with usual times: time a batch on your own plate, and let a probe say when it is done."
    )
    sheet.note("An hour at this pace has no one wash hands, restock or scrape: plan on four fifths of it.")
    methods = {one.method for one in things}
    if "bath" in methods:
        sheet.note("A steam table or a hot bath holds food that is hot already: never reheat in it.")
    if "fryer" in methods:
        sheet.note(
            "Oil is cold, and drained or covered, before the cart moves; a class K extinguisher within reach."
        )
