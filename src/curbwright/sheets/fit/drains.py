"""Drains: whether every sink runs down to the waste tank, and whether a full tank could rise into a sink."""

from __future__ import annotations

from curbwright import units
from curbwright.build import kinds
from curbwright.equations import fit as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.fit.boxes import TOUCH, Box, distance, write_spare, write_way
from curbwright.sheets.fit.heights import surface
from curbwright.sheets.fit.space import Space


def drains(space: Space, sheet: Worksheet) -> None:
    """Write the height budget of every sink, and of everything else with a drain, down to the waste tank."""
    for key, item in space.build.items.items():
        box, kind = space.boxes.get(key), kinds.find(item.kind)
        drained = kind.is_("sink") or "drain" in item.connects
        if not drained or kind.is_("tank_waste", "tank_fresh", "small", "structure"):
            continue
        below = sheet.section(key, f"{item.name}: fall of its drain")
        with below.attempt():
            space.all_placed()
            if box is None:
                raise MissingInput(f"items.{key}.width", f"{item.name}: no size is given")
            _drain(space, below, box, _tank(space, box))


def _tank(space: Space, box: Box) -> Box:
    """The nearest waste tank."""
    tanks = space.with_flag("tank_waste")
    if not tanks:
        raise MissingInput("items", "there is no waste tank (kind tank_waste) with a size and a place")
    return min(tanks, key=lambda tank: distance(tank, box))


def _drain(space: Space, sheet: Worksheet, box: Box, tank: Box) -> None:
    run = _run(sheet, box, tank)
    outlet, bottom = _outlet(space, sheet, box)
    drop, per = space.known("slope_drop"), space.known("slope_per")
    name = f"{box.name}: fall its drain needs"
    needed = sheet.work("fall_needed", name, eq.fall_needed, run=run, drop=drop, per=per)
    inlet = _inlet(sheet, tank)
    name = f"{box.name}: fall available down to {tank.name}"
    available = sheet.work("fall_available", name, eq.gap, near=inlet, far=outlet)
    name = f"highest inlet that {box.name} can run down to"
    sheet.work("highest_inlet", name, eq.highest_inlet, outlet=outlet, fall=needed)
    spare = write_spare(sheet, f"{box.name}: fall left over", available, needed)
    if spare < -TOUCH:
        name = f"how much lower the inlet of {tank.name} must be for {box.name}"
        lower = sheet.work("lower_by", name, eq.gap, near=available, far=needed)
        sheet.note(f"{box.name} needs the inlet of {tank.name} {units.show(float(lower), 'm')} lower")
    if bottom is not None:
        name = f"bottom of {box.name} above the top of {tank.name}"
        sheet.work("above_tank", name, eq.gap, near=tank.up.high, far=bottom)


def _inlet(sheet: Worksheet, tank: Box) -> Figure:
    """The height of a tank's inlet: as given, else its top, which is the worst it can be."""
    if tank.thing.outlet_above is not None:
        return sheet.given(tank.thing["outlet_above"])
    sheet.note(f"The inlet of {tank.name} is taken at its top, the worst it can be: give its outlet_above")
    return tank.up.high


def _run(sheet: Worksheet, box: Box, tank: Box) -> Figure:
    """The length of the drain pipe: as given, else along and across between the middles."""
    if box.thing.drain_run is not None:
        return sheet.given(box.thing["drain_run"])
    return write_way(sheet, "run", f"{box.name}: run of its drain to {tank.name}", box, tank)


def _outlet(space: Space, sheet: Worksheet, box: Box) -> tuple[Figure, Figure | None]:
    """Where the waste leaves: below the trap of a sink, else as given; and the bottom of a sink's bowl."""
    if not box.kind.is_("sink"):
        return sheet.given(box.thing["outlet_above"]), None
    rim, bowl = surface(sheet, box), sheet.given(box.thing["bowl_depth"])
    bottom = sheet.work("bowl_bottom", f"bottom of the bowl of {box.name}", eq.rest, whole=rim, part=bowl)
    if box.thing.outlet_above is not None:
        return sheet.given(box.thing["outlet_above"]), bottom
    outlet = sheet.work(
        "outlet", f"{box.name}: where its waste leaves the trap", eq.drain_outlet, rim=rim, bowl=bowl,
        strainer=space.known("strainer"), tailpiece=space.known("tailpiece"), trap=space.known("trap"),
    )  # fmt: skip
    return outlet, bottom
