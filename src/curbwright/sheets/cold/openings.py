"""What an opened lid or door lets in: the air that is lost, its heat and its moisture, so often an hour."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright.build.cold import ColdBox
from curbwright.equations import cold as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.cold.ambient import Day
from curbwright.sheets.cold.walls import Inside

BOX_HUMIDITY = 0.8
"""Relative humidity of the air in a box that is opened often: common practice."""
GRAVITY = 9.80665
FREEZING = 273.15


@dataclass(frozen=True)
class _Air:
    """Moist air: heat for a kilogram of dry air, and density."""

    heat: Figure
    density: Figure


def openings(room: Inside, box: ColdBox, around: Figure, day: Day, sheet: Worksheet) -> Figure:
    """Work out the mean heat of openings while serving, the air round the box at its warmest."""
    cold_air = sheet.given(box["set_point"])
    if float(around) <= float(cold_air):
        sheet.note("The air round the box is colder than the box: opening it lets no heat in.")
        return sheet.tabled("openings", "heat let in by openings", 0.0, "W", source="convention")
    warm = _air("room", "air round the box", around, day.moisture, day, sheet)
    moisture = _box_moisture(cold_air, day, sheet)
    cold = _air("box", "air in the box", cold_air, moisture, day, sheet)
    per_volume = sheet.work(
        "exchange", "heat let in with each volume of air", eq.exchange_heat,
        density=cold.density, outside=warm.heat, inside=cold.heat,
    )  # fmt: skip
    return sheet.work(
        "openings", "heat let in by openings while serving", eq.openings_heat,
        air=_lost(room, box, warm, cold, sheet), heat=per_volume, rate=sheet.given(box["openings"]),
    )  # fmt: skip


def _lost(room: Inside, box: ColdBox, warm: _Air, cold: _Air, sheet: Worksheet) -> Figure:
    """Air lost in one opening: a share of it over a lid, what runs out of a door in its time."""
    free = sheet.work(
        "free_air",
        "air in the box",
        eq.free_air,
        shown="ft3|L",
        volume=room.volume,
        filled=sheet.given(box["filled"]),
    )
    if room.lidded:
        return sheet.work(
            "air_lost", "air lost over the lid, each time", eq.air_through_lid, shown="ft3|L",
            free_volume=free, spilled=sheet.given(box["spilled"]),
        )  # fmt: skip
    width, height = room.opening
    factor = sheet.work(
        "density_factor", "factor for the densities", eq.density_factor, box_density=cold.density,
        room_density=warm.density,
    )  # fmt: skip
    flow = sheet.work(
        "doorway_flow", "air that runs out of the open door", eq.doorway_flow,
        area=sheet.work("doorway", "open doorway", eq.face_area, one_side=width, other_side=height),
        height=height, box_density=cold.density, room_density=warm.density, factor=factor,
        gravity=sheet.tabled("gravity", "gravity", GRAVITY, "m/s**2", source="si-brochure"),
        shown="cfm|L/s",
    )  # fmt: skip
    return sheet.work(
        "air_lost", "air lost through the door, each time", eq.air_through_door, shown="ft3|L",
        free_volume=free, flow=flow, time=sheet.given(box["open_for"]),
    )  # fmt: skip


def _box_moisture(cold_air: Figure, day: Day, sheet: Worksheet) -> Figure:
    over = eq.saturation_pressure_over_ice if float(cold_air) < FREEZING else eq.saturation_pressure
    return sheet.work(
        "box_moisture", "moisture of the air in the box", eq.humidity_ratio,
        saturation=sheet.work("box_saturation", "vapour pressure in the box", over, temperature=cold_air),
        humidity=sheet.tabled(
            "box_humidity", "relative humidity in the box", BOX_HUMIDITY, "1", source="trade-practice",
            shown="%",
        ),
        pressure=day.pressure,
    )  # fmt: skip


def _air(id: str, name: str, temperature: Figure, moisture: Figure, day: Day, sheet: Worksheet) -> _Air:
    heat = sheet.work(
        f"{id}_heat",
        f"heat in the {name}",
        eq.moist_enthalpy,
        temperature=temperature,
        humidity_ratio=moisture,
    )
    dry = sheet.work(
        f"{id}_dry", f"dry part of the {name}", eq.dry_air_density, temperature=temperature,
        humidity_ratio=moisture, pressure=day.pressure,
    )  # fmt: skip
    density = sheet.work(
        f"{id}_density", f"density of the {name}", eq.moist_density, dry_density=dry, humidity_ratio=moisture
    )
    return _Air(heat, density)
