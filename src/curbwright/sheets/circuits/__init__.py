"""Circuits: the load schedule, the inverter, wire, fuses and faults, the 120 V supply, lamps on the road."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from curbwright.build.cart import Build
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.battery.spec import Spec
from curbwright.sheets.circuits import demand, generator, inverter, lamps, loads, mains, sources
from curbwright.sheets.circuits.currents import Fed
from curbwright.sheets.circuits.faults import main_fuses
from curbwright.sheets.circuits.runs import Run, runs
from curbwright.sheets.circuits.wiring import Wiring, constants
from curbwright.sheets.placing import Placing

__all__ = ["Wired", "circuits_sheet", "work_circuits"]

NOTHING = "This cart has nothing electric and no circuits."


class Wired:
    """A worked circuits sheet with the parts that the wire schedule and the one-line diagram need."""

    def __init__(self, sheet: Worksheet, wiring: Wiring | None) -> None:
        self.sheet = sheet
        self.wiring = wiring
        self.loads: dict[str, loads.Load] = {}
        self.curve: inverter.Curve | None = None
        self.carried: inverter.Carried | None = None
        self.runs: dict[str, Run] = {}


def circuits_sheet(build: Build, placing: Placing, figures: dict[str, Figure]) -> Worksheet:
    """Work out the circuits sheet; ``figures`` are those of the sheets worked before it."""
    return work_circuits(build, figures).sheet


def work_circuits(build: Build, figures: Mapping[str, Figure]) -> Wired:
    """Work out the circuits, sheet and parts."""
    sheet = Worksheet("circuits", "Circuits")
    if not _is_wired(build):
        sheet.note(NOTHING)
        return Wired(sheet, None)
    known = constants(sheet.section("constants", "taken from practice and tables"))
    wiring = Wiring(build, figures, known, is_lithium(build))
    wired = Wired(sheet, wiring)
    _loads(wired, wiring)
    _wires(wired, wiring)
    parts: dict[str, tuple[str, Callable[[Worksheet], None]]] = {
        "source": ("a fuse at every source", lambda part: sources.sources(wiring, part)),
        "tow_lead": ("from the tow vehicle", lambda part: sources.tow_lead(wiring, part)),
        "feed": ("what feeds each thing", lambda part: sources.served(wiring, part)),
        "place": ("the bus and the panel", lambda part: sources.places(wiring, part)),
        "shore": ("shore power", lambda part: mains.shore(wiring, lambda: _complete(wired), part)),
        "gfci": ("ground-fault protection", lambda part: mains.receptacles(wiring, part)),
        "bonds": ("neutral to ground", lambda part: mains.bonds(wiring, part)),
        "basis": ("what the electrical basis asks", lambda part: mains.basis(wiring, part)),
        "generator": ("generator", lambda part: generator.generator(wiring, lambda: _complete(wired), part)),
        "lamps": ("lamps on the road", lambda part: lamps.lamps(wiring, part)),
        "plan": ("approval of the electrical plan", lambda part: mains.plan_approval(wiring, part)),
    }
    for id, (title, write) in parts.items():
        below = sheet.section(id, title)
        with below.attempt():
            write(below)
    return wired


def _is_wired(build: Build) -> bool:
    wanted = {"12 V", "120 V"}
    return bool(build.circuits) or any(
        item.electric is not None or not wanted.isdisjoint(item.connects) for item in build.items.values()
    )


def _loads(wired: Wired, wiring: Wiring) -> None:
    sheet = wired.sheet
    schedule = sheet.section("load", "what draws power")
    wired.loads = loads.load_schedule(wiring, schedule)
    below = sheet.section("demand", "by supply")
    with below.attempt():
        demand.complete(schedule)
        demand.by_supply(wiring, wired.loads, below)
    below = sheet.section("inverter", "inverter")
    with below.attempt():
        wired.curve = inverter.curve(wiring, below)
    with below.attempt():
        demand.complete(schedule)
        wired.carried = inverter.carried(wiring, wired.curve, wired.loads, below)
    with sheet.attempt():
        demand.complete(schedule)
        demand.complete(below)
        demand.from_battery(wiring, wired.loads, wired.curve, wired.carried, sheet)


def _wires(wired: Wired, wiring: Wiring) -> None:
    sheet = wired.sheet
    fed = Fed(wiring, wired.loads, wired.curve)
    section, faults = sheet.section("run", "circuits"), sheet.section("fault", "short circuits")
    wired.runs = runs(fed, section, faults)
    main_fuses(wiring, {name: one.fault for name, one in wired.runs.items()},
               sheet.section("main", "fuses at the battery"))  # fmt: skip


def _complete(wired: Wired) -> dict[str, loads.Load]:
    """The loads, once all of them are known."""
    demand.complete(next(part for part in wired.sheet.sections if part.id == "circuits.load"))
    return wired.loads


def is_lithium(build: Build) -> bool | None:
    """Whether the bank is lithium iron phosphate, or None where that is not told."""
    if build.battery is None:
        return None
    try:
        return Spec(build, build.battery).lithium
    except MissingInput:
        return None
