"""Air that comes in: to replace what the hood takes, and for burners when nothing drives it."""

from __future__ import annotations

from curbwright import data, units
from curbwright.build.cart import Build
from curbwright.build.exhaust import AirOpening, Exhaust
from curbwright.equations import exhaust as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.exhaust.things import FREE, SMALL, SPEED, Constants, Cooking, read


def openings(build: Build, exhaust: Exhaust, top: Worksheet) -> None:
    """Write the free area of every opening, and the sum of those that stay open; raises MissingInput."""
    sheet = top.section("openings", "openings for air")
    free: dict[str, Figure] = {}
    for key, one in exhaust.openings.items():
        below = sheet.section(key, key.replace("_", " "))
        with below.attempt():
            free[key] = _free(build, one, below)
    for key, one in exhaust.openings.items():
        if one.always_open and key not in free:
            raise MissingInput(f"exhaust.openings.{key}.area", f"the area of opening {key} is not given")
    counted = [free[key] for key, one in exhaust.openings.items() if key in free and one.always_open]
    shut = [key for key, one in exhaust.openings.items() if not one.always_open]
    if shut:
        sheet.note(f"Not counted, as they can be shut: {', '.join(shut)}.")
    sheet.total("provided", "free area that stays open", counted, unit="m**2", shown=FREE)
    for level in ("low", "high"):
        at = [free[key] for key, one in exhaust.openings.items() if key in free and one.always_open
              and one.level == level]  # fmt: skip
        sheet.total(level, f"of it, {level} in the wall", at, unit="m**2", shown=SMALL)


def _free(build: Build, one: AirOpening, sheet: Worksheet) -> Figure:
    """The free area of one opening."""
    shell = build.shell
    if one.opening is not None and shell is not None:
        hole = shell.openings[one.opening]
        area = sheet.work(
            "area", "the opening", eq.face, shown=FREE, long=sheet.given(hole["width"]),
            wide=sheet.given(hole["height"]),
        )  # fmt: skip
    else:
        area = sheet.given(one["area"])
    row = data.table("exhaust/covers").row(one.cover)
    share = sheet.tabled(
        "share", f"free share of it ({one.cover})", read(row["free"], "share"), "1", source=row["source"],
        row=row["says"], shown="%",
    )  # fmt: skip
    return sheet.work("free", "free area", eq.free_area, shown=FREE, area=area, share=share)


def make_up(exhaust: Exhaust, flow: Figure, constants: Constants, top: Worksheet) -> None:
    """Write the free area that lets in what the hood takes, at the pressure allowed inside."""
    sheet = top.section("makeup", "air to replace what the hood takes")
    speed = sheet.work(
        "speed", "speed in at the pressure allowed", eq.opening_speed, shown=SPEED,
        pressure=sheet.given(exhaust["makeup_pressure"]), discharge=constants["discharge"],
        density=constants["density"],
    )  # fmt: skip
    top.work(
        "makeup_opening", "free area to let in what the hood takes", eq.opening_area, shown=FREE, flow=flow,
        speed=speed,
    )  # fmt: skip


def combustion_air(exhaust: Exhaust, things: list[Cooking], top: Worksheet) -> None:
    """Write the free area of each opening for the burners' air, by the way it comes in and by the others."""
    sheet = top.section("combustion", "air for the burners")
    load = sheet.total(
        "load", "all burners that take the cart's air", [one.load for one in things], unit="W",
        shown="BTU/h|kW",
    )  # fmt: skip
    ways: dict[str, Figure] = {}
    for row in data.table("exhaust/combustion"):
        id = row["way"].replace(" ", "_")
        rule = sheet.tabled(
            f"rule_{id}", f"heat for a free area: {row['says']}", read(row["heat_per_area"], "heat_flux"),
            units.KINDS["heat_flux"].unit, source=row["source"], row=row["heat_per_area"],
            shown="BTU/(h*in2)|W/cm2",
        )  # fmt: skip
        ways[row["way"]] = sheet.work(
            id, f"each opening: {row['says']}", eq.combustion_opening, shown=SMALL, load=load, heat=rule
        )
    used = ways[exhaust.combustion]
    each = top.largest(
        "combustion_air", "free area of each opening for the burners", {exhaust.combustion: used}, shown=SMALL
    )
    sheet.largest("high_needed", "free area high in the wall", {"as chosen": each}, shown=SMALL)
    if exhaust.combustion != "one high":
        sheet.largest("low_needed", "free area low in the wall", {"as chosen": each}, shown=SMALL)
    sheet.note("The rule by room volume, 50 cubic feet for 1,000 BTU/h, is never met in a cart.")
    sheet.note("Propane sinks: leave a way out at the floor as well.")
