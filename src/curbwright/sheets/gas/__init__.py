"""Gas: what burns, whether the bottles evaporate it, the pipe, storing, testing, shutting off."""

from __future__ import annotations

from collections.abc import Iterator

from curbwright.build.cart import Build
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.gas.appliances import appliances
from curbwright.sheets.gas.bottles import Bottles, bottles_connected
from curbwright.sheets.gas.leaks import alarm, cautions, leak_test_steps, leak_tests, master, too_much
from curbwright.sheets.gas.load import by_the_hour, connected_load, gas_for_the_day, serving
from curbwright.sheets.gas.pipe import pipe
from curbwright.sheets.gas.storage import storage
from curbwright.sheets.gas.things import Constants, Things, things_on_gas
from curbwright.sheets.gas.vaporisation import vaporisation
from curbwright.sheets.placing import Placing

__all__ = ["gas_sheet", "leak_test_steps", "things_on_gas"]


def gas_sheet(build: Build, placing: Placing) -> Worksheet:
    """Work out the gas sheet; a cart without gas has an empty one."""
    sheet = Worksheet("gas", "Gas")
    things = things_on_gas(build)
    if not (things.burning or things.aboard):
        sheet.note("Nothing aboard burns gas.")
        return sheet
    constants = Constants(sheet)
    if things.burning:
        _burned(build, things, constants, sheet)
        piped = pipe(build, things, constants, sheet.section("pipe", "gas pipe"))
        appliances(build, things, piped, constants, sheet)
        _regulator(build, constants, sheet)
        leak_tests(piped.runs, sheet)
    if things.aboard:
        storage(build, things, constants, sheet.section("storage", "bottles aboard"))
    too_much(build, placing, constants, sheet)
    for id, name, part in (("alarm", "alarm", alarm), ("shut_off", "shutting off", master)):
        below = sheet.section(id, name)
        with below.attempt():
            part(build, below)
    cautions(_conditions(build, things), sheet)
    return sheet


def _burned(build: Build, things: Things, constants: Constants, sheet: Worksheet) -> None:
    """The loads, the gas of a day, and whether the bottles evaporate it."""
    bottles: Bottles | None = None
    connected = sheet.section("bottles", "the bottles connected")
    inputs, common = sheet.section("inputs", "what burns"), sheet.section("hours", "hour by hour")
    with connected.attempt():
        bottles = bottles_connected(build, things, constants, connected)
    loads: dict[str, Figure] = {}
    with inputs.attempt():
        loads["connected"] = connected_load(things, sheet)
    with common.attempt():
        hours = serving(build, common)
        full_fire = build.gas["full_fire"]
        longest = hours.lasts if full_fire.value is None else sheet.given(full_fire)
        sheet.largest("full_fire_time", "longest time with every burner on", {"to plan for": longest})
        sheet.largest("serving_time", "serving lasts", {"the day": hours.lasts})
        if "connected" in loads:
            loads["diversified"], energy = by_the_hour(things, hours, common, sheet)
            if bottles is not None:
                gas_for_the_day(build, bottles, energy, sheet)
    if bottles is not None and "connected" in loads:
        with connected.attempt():
            vaporisation(build, bottles, loads, constants, sheet)


def _regulator(build: Build, constants: Constants, sheet: Worksheet) -> None:
    """What the regulator passes and how many stages it has and needs, each by itself."""
    below = sheet.section("pressure_down", "the regulator")
    below.largest("stages_needed", "stages of a regulator for a fixed system", {"usual": constants["stages"]})
    for field in ("capacity", "stages", "outlet", "lock_up"):
        if field == "lock_up" and build.gas.regulator.lock_up is None:
            continue
        with below.attempt():
            below.given(build.gas.regulator[field])


def _conditions(build: Build, things: Things) -> Iterator[str]:
    """Words of the cautions' table that hold for this cart."""
    if build.gas.changeover == "automatic":
        yield "changeover"
    if build.gas.cabinet is not None:
        yield "compartment"
    if any(one.pipe == "hose" for one in build.gas.sections.values()):
        yield "hose"
    if build.shell is not None:
        yield "enclosed"
    if any(one.item.kind == "generator" for one in things.burning.values()):
        yield "generator"
