"""Exhaust: hood, filter, duct and fan, the air that comes in, heat on the cook, what burning leaves."""

from __future__ import annotations

from curbwright.build.cart import Build
from curbwright.build.exhaust import Exhaust
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.exhaust.air import air_quality
from curbwright.sheets.exhaust.cabin import cabin, heat_stress
from curbwright.sheets.exhaust.fan import at_the_fan, fan, losses
from curbwright.sheets.exhaust.hood import code_rate, estimates, hangs, hood_needed
from curbwright.sheets.exhaust.openings import combustion_air, make_up, openings
from curbwright.sheets.exhaust.things import Constants, Cooking, all_known, burning, cooking
from curbwright.sheets.placing import Placing

__all__ = ["exhaust_sheet"]

CAUTIONS = (
    "A plan for those who license it: hood, duct, suppression and gas are work for licensed people, and the"
    " place's own code counts.",
    "Keep 18 in from hood, duct and fan to what can burn, 3 in to what hardly does, unless they are listed"
    " for less.",
    "A grease fan throws upward, clear of windows and intakes; a plastic axial fan is refused over grease.",
    "Wind through the serving hatch defeats a canopy: end panels, and more reach at the front, help most.",
    "An unvented heater has no place inside: it stands outside or has its own flue and air.",
    "Fit a carbon monoxide alarm. Headache or dizziness: everybody out, gas off, air in.",
)


def exhaust_sheet(build: Build, placing: Placing) -> Worksheet:
    """Work out the exhaust sheet; a cart without an exhaust section has an empty one."""
    sheet = Worksheet("exhaust", "Exhaust and air")
    hood_needed(build, sheet)
    exhaust = build.exhaust
    if exhaust is None:
        sheet.note("The build file has no exhaust section.")
        return sheet
    constants = Constants(sheet)
    things: list[Cooking] = []
    named = burning(build, placing)
    for key, thing in named.items():
        below = sheet.section(f"of_{key}", thing.name)
        with below.attempt():
            things.append(cooking(key, thing, below))
    hung = sheet.section("hood", "how the hood hangs")
    with hung.attempt():
        hangs(build, exhaust, placing, constants, hung)
    with sheet.attempt():
        estimates(build, exhaust, placing, things, constants, sheet)
    with sheet.attempt():
        openings(build, exhaust, sheet)
    flow = _moved(build, exhaust, placing, constants, sheet)
    with sheet.attempt():
        all_known(things, named)
        combustion_air(exhaust, things, sheet)
    if flow is not None:
        with sheet.attempt():
            all_known(things, named)
            air = cabin(build, exhaust, placing, things, flow, constants, sheet)
            if things:
                heat_stress(build, exhaust, air, constants, sheet)
    with sheet.attempt():
        all_known(things, named)
        air_quality(exhaust, placing, things, flow, constants, sheet)
    locked = sheet.section("interlock", "gas and fan together")
    with locked.attempt():
        locked.given(exhaust["interlock"])
    for text in CAUTIONS:
        sheet.note(text)
    return sheet


def _moved(
    build: Build, exhaust: Exhaust, placing: Placing, constants: Constants, sheet: Worksheet
) -> Figure | None:
    """The code's rate, what the fan moves of it, and the openings for that; None where it cannot be told."""
    with sheet.attempt():
        rate = code_rate(build, exhaust, placing, sheet)
        inlets = sheet.figures().get("exhaust.openings.provided")
        loss = losses(exhaust, rate, inlets, constants, sheet)
        flow = fan(build, exhaust, rate, loss, sheet)
        at_the_fan(build, exhaust, flow, sheet)
        both = sheet.section("replaced", "air to be replaced")
        most = both.largest("flow", "the larger of them", {"code": rate, "fan": flow}, shown="cfm|L/s")
        make_up(exhaust, most, constants, sheet)
        return flow
    return None
