"""Water: what a day takes, what the tanks hold, what pump and pipe give, frost, germs and the road."""

from __future__ import annotations

from collections.abc import Mapping

from curbwright.build.cart import Build
from curbwright.equations import water as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.placing import Placing
from curbwright.sheets.water.care import air_gaps, doses, frost
from curbwright.sheets.water.constants import FLOW, Constants
from curbwright.sheets.water.demand import demand
from curbwright.sheets.water.pump import Worked, pump
from curbwright.sheets.water.road import lock, road
from curbwright.sheets.water.tanks import tanks
from curbwright.sheets.water.things import water_things

__all__ = ["water_sheet"]

IN_SHORT = {
    "fresh_need": ("water.demand.need", "fresh water that a day needs"),
    "fresh_capacity": ("water.capacity.fresh", "capacity of the fresh-water tanks"),
    "waste_capacity": ("water.capacity.waste", "capacity of the waste-water tanks"),
    "waste_to_fresh": ("water.capacity.waste_to_fresh", "waste tank over fresh tank"),
    "autonomy": ("water.capacity.autonomy", "how long the fresh tank lasts without a refill"),
    "pump_flow_one_tap": ("water.pump.flow_one_tap", "flow of the tap that gives least, alone open"),
    "pump_flow_two_taps": ("water.pump.flow_two_taps", "least flow of a tap with two taps open"),
    "pump_flow_all_taps": ("water.pump.flow_all_taps", "least flow of a tap with all taps open"),
    "pump_energy_day": ("water.pump.energy_day", "electricity of the pump in a day"),
}
"""The figures that say it in short, and where each is worked."""
CAUTIONS = (
    "Only tanks, pipe and hose made for drinking water carry it; the fill hose has a fitting of its own.",
    "Waste water goes to a sewer or a place that takes it, never to the ground or a storm drain.",
    "A licensing place may ask for other tanks, and counts their nominal size: its own list decides.",
)


def water_sheet(build: Build, placing: Placing, earlier: Mapping[str, Figure]) -> Worksheet:
    """Work out fresh and waste water; ``earlier`` are the figures of the sheets before it, by id."""
    sheet = Worksheet("water", "Water")
    things = water_things(build)
    if not things.any:
        sheet.note("No sink, tank or tap is aboard.")
        return sheet
    constants = Constants(sheet.section("constants", "constants of water and of the methods"))
    below = sheet.section("demand", "what a day takes")
    with below.attempt():
        demand(build, things, constants, below)
    tanks(build, things, placing, constants, sheet)
    below = sheet.section("pump", "pump, pipe and taps")
    worked: Worked | None = None
    with below.attempt():
        worked = pump(build, things, placing, constants, sheet.figures(), below)
    air_gaps(things, constants, sheet)
    doses(build, things, constants, sheet)
    frost(build, things, constants, sheet)
    lock(build, sheet)
    if worked is not None:
        _place_taps(build, sheet)
        road(build, things, placing, worked, earlier, sheet)
    _in_short(sheet)
    for text in CAUTIONS:
        sheet.note(text)
    return sheet


def _place_taps(build: Build, sheet: Worksheet) -> None:
    """The flow that a place asks of every tap, against what two open ones get."""
    if build.place.tap_flow is None:
        return
    below = sheet.section("place_taps", "the flow the place asks of each tap")
    below.work(
        "spare", "least flow with two taps open over what the place asks", eq.flow_over, shown=FLOW,
        flow=sheet.figures()["water.pump.flow_two_taps"], least=below.given(build.place["tap_flow"]),
    )  # fmt: skip


def _in_short(sheet: Worksheet) -> None:
    figures = sheet.figures()
    for id, (worked, name) in IN_SHORT.items():
        if worked in figures:
            sheet.largest(id, name, {"as worked": figures[worked]})
