"""Hand sinks: how far one walks to them, and whether they splash what is beside them."""

from __future__ import annotations

from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.fit.boxes import TOUCH, Box, distance, exact, write_distance, write_spare, write_way
from curbwright.sheets.fit.space import Space

STATIONS = ("prep", "cook", "ware_sink", "serve")
LOOKED_AT = 2
"""Neighbours up to this many times the distance that needs no guard are written."""


def walks(space: Space, sheet: Worksheet) -> None:
    """Write the way from every station to the nearest hand sink, and the longest."""
    stations = [box for box in space.inside() if box.kind.is_(*STATIONS)]
    sinks = space.with_flag("hand_sink")
    cases: dict[str, Figure] = {}
    if not space.ready(sheet):
        return
    if stations and not sinks:
        raise MissingInput("items", "there is no hand sink (kind hand_sink) with a size and a place")
    for box in stations:
        cases[box.name] = _walk(sheet.section(box.key, f"{box.name} to the hand sink"), box, sinks)
    if cases:
        sheet.largest("longest", "longest way from a station to the hand sink", cases)


def _walk(sheet: Worksheet, box: Box, sinks: list[Box]) -> Figure:
    sink = min(sinks, key=lambda one: distance(one, box))
    return write_way(sheet, "way", f"way from {box.name} to {sink.name}", box, sink)


def splashes(space: Space, sheet: Worksheet) -> None:
    """Write, for every hand sink near a utensil sink or open food, its guard and the guard it needs."""
    for sink in space.with_flag("hand_sink"):
        for other in space.inside():
            near = distance(sink, other) < exact(LOOKED_AT * space.known("splash_apart"))
            if not near or not other.kind.is_("ware_sink", "prep_sink", "prep", "cook"):
                continue
            below = sheet.section(f"{sink.key}+{other.key}", f"{sink.name} beside {other.name}")
            with below.attempt():
                _splash(space, below, sink, other)


def _splash(space: Space, sheet: Worksheet, sink: Box, other: Box) -> None:
    gap = write_distance(sheet, "gap", f"{sink.name} to {other.name}", sink, other)
    apart = space.known("splash_apart")
    asked = space.known("no_guard") if gap >= float(apart) - TOUCH else space.known("splash_guard")
    guards = {one.name: sheet.given(one.thing["guard"]) for one in (sink, other)}
    has = sheet.largest("guard", f"guard between {sink.name} and {other.name}", guards)
    write_spare(sheet, f"guard between {sink.name} and {other.name} over what it needs", has, asked)
