"""The heat let into a box: at every hour, and what it is made of when most comes in."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright.build.cart import Build
from curbwright.build.cold import ColdBox
from curbwright.equations import cold as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.cold.ambient import Day, Hour
from curbwright.sheets.cold.contents import Contents
from curbwright.sheets.cold.openings import openings
from curbwright.sheets.cold.walls import Inside, Walls, share_of_faces

R_VALUE = 0.17611018368230585
"""One h·ft2·°F/BTU in m2·K/W."""
ABSORBED = {"light": 0.15, "dark": 0.30}
"""Sunlight taken up over the film coefficient, in h·ft2·°F/BTU, by the colour of a face."""
TO_SKY = 7 * 5 / 9
"""What a level face loses to the sky, in kelvins."""


@dataclass(frozen=True)
class Gains:
    """Heat let into a box."""

    by_hour: dict[str, Figure]
    """Without the loading, by the hour's key."""
    worst: Hour
    total: Figure
    """All of it at the worst hour, the loading with it."""
    past_walls: Figure
    """The part of the total that comes neither through walls and gasket nor from the food put in."""
    product: Figure
    """The part that the food put in brings."""
    opened: Figure
    """Heat of openings while serving."""
    standing: Figure
    """What still comes in past the walls with the lid shut and the machine off: hot neighbours, sun."""


@dataclass(frozen=True)
class _Sunny:
    """A group of faces in the sun."""

    name: str
    share: Figure
    level: bool


def gains(
    build: Build, box: ColdBox, room: Inside, shell: Walls, food: Contents, day: Day, sheet: Worksheet
) -> Gains:
    """Work out the heat let in at every hour, and its parts at the worst."""
    warmest = day.warmest(box.stands).around(box.stands)
    opened = openings(room, box, warmest, day, sheet.section("opened", "when it is opened"))
    through = next(iter(shell.parts.values()))
    warm = _warm_faces(box, room, through, sheet)
    sunny = _sunny(box, room, sheet)
    hours = sheet.section("hours", "heat let in hour by hour, loading left out")
    suns = {
        hour.key: [
            one for face in sunny if (one := _sun(build, box, face, through, hour, day, hours)) is not None
        ]
        for hour in day.hours
    }
    serving = hours.total("serving", "heat let in only while serving", [opened, *warm])
    by_hour = {hour.key: _at_hour(box, hour, shell, serving, suns[hour.key], hours) for hour in day.hours}
    worst = max(day.hours, key=lambda hour: float(by_hour[hour.key]))
    hours.largest("most", "most heat let in at an hour", {hour.name: by_hour[hour.key] for hour in day.hours})
    return _at_worst(box, shell, food, worst, by_hour, opened, [*warm, *suns[worst.key]], sheet)


def _at_hour(
    box: ColdBox, hour: Hour, shell: Walls, serving: Figure, suns: list[Figure], sheet: Worksheet
) -> Figure:
    """Heat let in at an hour, the sun's on top of the rest."""
    base = sheet.work(
        f"shade_{hour.key}" if suns else f"gain_{hour.key}", f"heat let in at {hour.name}", eq.heat_at_hour,
        conductance=shell.whole, surroundings=hour.around(box.stands), inside=sheet.given(box["set_point"]),
        serving=serving, served=hour.served, steady=sheet.given(box["inside_power"]),
    )  # fmt: skip
    if not suns:
        return base
    return sheet.total(f"gain_{hour.key}", f"heat let in at {hour.name}, sun and all", [base, *suns])


def _at_worst(
    box: ColdBox, shell: Walls, food: Contents, worst: Hour, by_hour: dict[str, Figure], opened: Figure,
    outside_heat: list[Figure], sheet: Worksheet,
) -> Gains:  # fmt: skip
    """The heat of the worst hour by what brings it, the food put in with it."""
    inside, steady = sheet.given(box["set_point"]), sheet.given(box["inside_power"])
    parts = [
        sheet.work(
            f"through_{number}", name, eq.heat_through, conductance=part, outside=worst.around(box.stands),
            inside=inside,
        )
        for number, (name, part) in enumerate(shell.parts.items(), 1)
    ]  # fmt: skip
    product = sheet.work(
        "product", "food put in, brought down in its time", eq.heat_in_time, heat=food.load,
        time=sheet.given(box["loaded_over"]),
    )  # fmt: skip
    standing = sheet.total("standing", "hot neighbours and sun", outside_heat, unit="W")
    past = sheet.total(
        "past_walls", "heat that comes in by other ways than walls and food",
        [*outside_heat, opened, steady],
    )  # fmt: skip
    total = sheet.total(
        "heat_gain", f"heat let in at the worst hour, {worst.name}",
        [*parts, *outside_heat, opened, steady, product],
    )  # fmt: skip
    return Gains(by_hour, worst, total, past, product, opened, standing)


def _warm_faces(box: ColdBox, room: Inside, through: Figure, sheet: Worksheet) -> list[Figure]:
    if not box.hot_faces:
        return []
    share = share_of_faces("hot", list(box.hot_faces), room, sheet)
    return [
        sheet.work(
            "hot_neighbours", f"hot neighbour at the {', '.join(box.hot_faces)}", eq.heat_through_warm_face,
            conductance=through, share=share, warmer_by=sheet.given(box["hot_rise"]),
        )
    ]  # fmt: skip


def _sunny(box: ColdBox, room: Inside, sheet: Worksheet) -> list[_Sunny]:
    """The sunny faces in two groups: the top is level, the others are taken to face the sun."""
    upright: list[str] = [face for face in box.sunny_faces if face != "top"]
    groups = [("sunny_top", ["top"], True)] if "top" in box.sunny_faces else []
    groups += [("sunny_sides", upright, False)] if upright else []
    return [_Sunny(id, share_of_faces(id, faces, room, sheet), level) for id, faces, level in groups]


def _sun(
    build: Build, box: ColdBox, face: _Sunny, through: Figure, hour: Hour, day: Day, sheet: Worksheet
) -> Figure | None:
    """Heat that the sun drives in through a group of faces at an hour; None where it drives none."""
    found = day.sun(build, hour)
    if found is None:
        return None
    key = f"{face.name}_{hour.key}"
    sol_air = sheet.work(
        f"{key}_sol_air", f"sol-air temperature of the {face.name.replace('_', ' ')} at {hour.name}",
        eq.sol_air, air=hour.outside, absorbed=_absorbed(box, sheet),
        sun=found[0] if face.level else found[1], to_sky=_to_sky(face, sheet),
    )  # fmt: skip
    around = hour.around(box.stands)
    if float(sol_air) <= float(around):
        return None
    return sheet.work(
        key, f"sun on the {face.name.replace('_', ' ')} at {hour.name}", eq.heat_through_sunny_face,
        conductance=through, share=face.share, sol_air=sol_air, surroundings=around,
    )  # fmt: skip


def _absorbed(box: ColdBox, sheet: Worksheet) -> Figure:
    found = sheet.figures().get(f"{sheet.id}.absorbed")
    return found or sheet.tabled(
        "absorbed", f"sunlight taken up over the film coefficient, {box.colour} face",
        ABSORBED[box.colour] * R_VALUE, "m**2*K/W", source="sol-air", row=box.colour,
    )  # fmt: skip


def _to_sky(face: _Sunny, sheet: Worksheet) -> Figure:
    id = "to_sky" if face.level else "to_sky_upright"
    found = sheet.figures().get(f"{sheet.id}.{id}")
    if found is not None:
        return found
    name = "loss to the sky of a level face" if face.level else "loss to the sky of an upright face"
    return sheet.tabled(id, name, TO_SKY if face.level else 0.0, "delta_degC", source="sol-air")
