"""Fit: what overlaps, where one walks, what opens, what is too near what, heights, drains, road, deck."""

from __future__ import annotations

from curbwright.build.cart import Build
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.fit.aisle import aisle, where_people_stand
from curbwright.sheets.fit.bottles import bottles
from curbwright.sheets.fit.clearances import (
    clearances_above,
    cold_from_heat,
    fryer_from_flame,
    rear_clearances,
    side_clearances,
)
from curbwright.sheets.fit.doorways import doors, doorways
from curbwright.sheets.fit.drains import drains
from curbwright.sheets.fit.heights import service, serving, shelves, surfaces, valve_height, valve_reach
from curbwright.sheets.fit.overlap import overhangs, overlaps, within_room
from curbwright.sheets.fit.road import road
from curbwright.sheets.fit.shortest import shortest
from curbwright.sheets.fit.sinks import splashes, walks
from curbwright.sheets.fit.space import lay_out
from curbwright.sheets.fit.swings import lids, swings, working_floor
from curbwright.sheets.placing import Placing

__all__ = ["fit_sheet"]

SECTIONS = {
    "overlaps": ("Things that take up the same room", overlaps),
    "room": ("Things that stick out of the room", within_room),
    "overhang": ("Things outside the room", overhangs),
    "aisle": ("The aisle", aisle),
    "people": ("Where people stand", where_people_stand),
    "doorways": ("Doorways", lambda space, sheet: doorways(space, sheet, ("door",))),
    "hatches": (
        "In front of hatches and windows",
        lambda space, sheet: doorways(space, sheet, ("hatch", "window")),
    ),
    "doors": ("Doors of the cart that open inwards", doors),
    "swings": ("Doors and drawers", swings),
    "lids": ("Lids", lids),
    "front": ("Floor to work in front of things", working_floor),
    "heights": ("Surfaces to work at", surfaces),
    "reach": ("What is reached up to", shelves),
    "serving": ("Serving over the sill", serving),
    "valve_reach": ("Shut-off valves, forward", valve_reach),
    "valve_height": ("Shut-off valves, upward", valve_height),
    "service": ("Room to get at things", service),
    "clear_side": ("Beside hot things: clearance to what can burn", side_clearances),
    "clear_rear": ("Behind hot things: clearance to what can burn", rear_clearances),
    "clear_above": ("Above hot things: clearance to what can burn", clearances_above),
    "cold": ("Cold boxes from hot things", cold_from_heat),
    "fryers": ("Fryers from open flames", fryer_from_flame),
    "bottles": ("Fuel bottles", bottles),
    "hand_sink": ("The way to the hand sink", walks),
    "splash": ("Splash from hand sinks", splashes),
    "drains": ("Fall of the drains", drains),
    "road": ("On the road", road),
    "deck": ("The shortest deck", shortest),
}
"""Every part of the sheet in the order it prints: its id, its title and what writes it."""

GOVERNING = {
    "tightest_gap": ("overlaps.tightest", "tightest gap between two things"),
    "narrowest_aisle": ("aisle.width", "aisle at its narrowest"),
    "headroom": ("aisle.headroom", "headroom over the aisle"),
    "overall_width": ("road.width", "overall width on the road"),
    "overall_height": ("road.height", "overall height on the road"),
    "overall_length": ("road.length", "trailer from the ball to its rear"),
    "shortest_deck": ("deck.shortest", "shortest deck on which the rows fit"),
    "deck_short_by": ("deck.short_by", "how much the deck is too short"),
}
"""The figures that say it in short, and where each is worked."""


def fit_sheet(build: Build, placing: Placing) -> Worksheet:
    """Work out whether everything fits.

    Every part stands by itself, so that a missing input costs only what needs it.
    """
    sheet = Worksheet("fit", "Space and fit")
    with sheet.attempt():
        space = lay_out(build, placing, sheet)
        for id, (title, write) in SECTIONS.items():
            below = sheet.section(id, title)
            with below.attempt():
                write(space, below)
        _in_short(sheet)
    return sheet


def _in_short(sheet: Worksheet) -> None:
    figures: dict[str, Figure] = sheet.figures()
    for id, (worked, name) in GOVERNING.items():
        if f"fit.{worked}" in figures:
            sheet.smallest(id, name, {"as worked": figures[f"fit.{worked}"]})
