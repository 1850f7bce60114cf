"""Steadiness on the road: what tips it, and how a sway dies away; bands, and never a safe speed."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright.build.cart import Build
from curbwright.equations import balance as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.balance.cases import Towed
from curbwright.sheets.balance.towing import gravity_on

BAND = {"soft": 0.75, "as given": 1.0, "stiff": 1.25}
"""Trailer tires' side stiffness is never known better than this (common practice)."""


def steady(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Write the roll thresholds and the sway figures of every towed case and the governing ones."""
    roll = sheet.section("roll", "side pull that tips it")
    with roll.attempt():
        _roll(build, towed, axle, roll)
    yaw = sheet.section("yaw", "mass far from the middle")
    with yaw.attempt():
        inertias = _yaw(towed, axle, yaw)
        sway = sheet.section("sway", "how a sway dies away at towing speed")
        with sway.attempt():
            _sway(build, towed, inertias, axle, sway)


def _roll(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    track = sheet.given(build.trailer.axle["track"])
    ball_height = sheet.given(build.trailer["ball_height"])
    real = sheet.tabled(
        "real", "a real trailer against a rigid one", 0.8, "1", source="roll-threshold", row="70 to 90 % seen"
    )
    free: dict[str, Figure] = {}
    coupled: dict[str, Figure] = {}
    for key, one in towed.items():
        case, name = one.case, one.case.name
        free[name] = sheet.work(
            f"{key}_free",
            f"stability factor off centre, {name}",
            eq.stability_factor_off_centre,
            track=track,
            across=case.across,
            height=case.height,
        )
        threshold = sheet.work(
            f"{key}_coupled",
            f"side pull that tips it coupled and rigid, {name}",
            eq.coupled_roll_threshold_off_centre,
            track=track,
            across=case.across,
            centre=case.station,
            axle=axle,
            height=case.height,
            ball_height=ball_height,
        )
        coupled[name] = sheet.work(
            f"{key}_real",
            f"side pull that tips it, {name}",
            eq.derated_threshold,
            threshold=threshold,
            factor=real,
        )
    sheet.smallest("stability_factor", "least stability factor, uncoupled", free)
    worst = sheet.smallest("threshold", "least side pull that tips it, coupled", coupled)
    radius = sheet.tabled(
        "curve", "a tight curve for comparison", 30.48, "m", source="convention", row="100 ft"
    )
    sheet.work(
        "tip_speed",
        "speed at which it would go over on a flat curve of 100 ft: never a safe speed",
        eq.tip_speed,
        radius=radius,
        threshold=worst,
        gravity=gravity_on(sheet),
    )


def _yaw(towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> dict[str, Figure]:
    inertias: dict[str, Figure] = {}
    indexes: dict[str, Figure] = {}
    for key, one in towed.items():
        case = one.case
        table = {
            row.label: {
                "mass": row.mass,
                "station": row.station,
                "centre": case.station,
                "across": row.across,
                "across_centre": case.across,
                "length": row.length,
                "width": row.width,
            }
            for row in case.rows
        }
        inertias[key] = sheet.schedule(
            f"{key}_inertia", f"yaw inertia, {case.name}", eq.yaw_inertia_term, table
        )
        if one.share <= 0:
            sheet.note(f"{case.name}: no tongue load, so no yaw radius is small enough")
            continue
        radius = sheet.work(
            f"{key}_radius",
            f"yaw radius, {case.name}",
            eq.yaw_radius,
            inertia=inertias[key],
            gross=case.gross,
        )
        limit = sheet.work(
            f"{key}_limit",
            f"yaw radius that always settles, {case.name}",
            eq.yaw_radius_limit,
            axle=axle,
            share=one.share,
        )
        indexes[case.name] = sheet.work(
            f"{key}_index", f"balance index, {case.name}", eq.balance_index, yaw_radius=radius, limit=limit
        )
    if indexes:
        sheet.largest("index", "worst balance index: yaw radius over the one that always settles", indexes)
    return inertias


@dataclass(frozen=True)
class _Vehicle:
    """The tow vehicle as the sway model takes it."""

    mass: Figure
    inertia: Figure
    front: Figure
    rear: Figure
    ball: Figure
    front_stiffness: Figure
    share: Figure
    per_load: Figure


def _vehicle(build: Build, sheet: Worksheet, gravity: Figure) -> _Vehicle:
    given = build.tow_vehicle
    mass, base, share = (sheet.given(given[field]) for field in ("mass", "wheelbase", "front_share"))
    front = sheet.work(
        "front",
        "tow vehicle: centre of gravity behind its front axle",
        eq.vehicle_centre,
        wheelbase=base,
        front_share=share,
    )
    rear = sheet.work(
        "rear",
        "tow vehicle: rear axle behind its centre of gravity",
        eq.centre_to_rear_axle,
        wheelbase=base,
        front_share=share,
    )
    ball = sheet.work(
        "ball",
        "tow vehicle: ball behind its centre of gravity",
        eq.centre_to_ball,
        rear=rear,
        overhang=sheet.given(given["rear_axle_to_ball"]),
    )
    inertia = sheet.work(
        "inertia", "tow vehicle: yaw inertia", eq.vehicle_yaw_inertia, mass=mass, front=front, rear=rear
    )
    per_load = sheet.tabled(
        "per_load", "tow vehicle: side stiffness over load", 9.0, "1", source="trade-practice", row="8 to 10"
    )
    on_front = sheet.work(
        "on_front", "tow vehicle: front axle", eq.front_axle_of_vehicle, mass=mass, front_share=share
    )
    stiffness = sheet.work(
        "front_stiffness",
        "tow vehicle: front side stiffness",
        eq.cornering_stiffness,
        load=on_front,
        per_load=per_load,
        gravity=gravity,
    )
    return _Vehicle(mass, inertia, front, rear, ball, stiffness, share, per_load)


def _sway(
    build: Build, towed: dict[str, Towed], inertias: dict[str, Figure], axle: Figure, sheet: Worksheet
) -> None:
    gravity = gravity_on(sheet)
    vehicle = _vehicle(build, sheet, gravity)
    speed = sheet.given(build.tow_vehicle["speed"])
    times = {
        label: sheet.tabled(
            f"band_{label.replace(' ', '_')}", f"tires {label}", value, "1", source="trade-practice"
        )
        for label, value in BAND.items()
    }
    dampings: dict[str, dict[str, Figure]] = {label: {} for label in BAND}
    for key, one in towed.items():
        outfit = _Outfit(
            vehicle, speed, one, inertias[key], axle, _rear_stiffness(vehicle, one, key, gravity, sheet)
        )
        stiffness = _tire_stiffness(build, one, key, gravity, sheet)
        for label, factor in times.items():
            dampings[label][one.case.name] = _damping(
                outfit, f"{key}_{label.replace(' ', '_')}", label, stiffness, factor, sheet
            )
    sheet.smallest("damping_low", "least damping of any load case, soft tires", dampings["soft"])
    sheet.smallest("damping_high", "least damping of any load case, stiff tires", dampings["stiff"])
    sheet.note("Damping ranks layouts. Nothing here is a safe speed: wind, ruts and a swerve are not in it.")


@dataclass(frozen=True)
class _Outfit:
    """Tow vehicle and trailer in one load case, all that the sway model takes but the trailer's tires."""

    vehicle: _Vehicle
    speed: Figure
    towed: Towed
    inertia: Figure
    axle: Figure
    rear_stiffness: Figure


def _rear_stiffness(vehicle: _Vehicle, one: Towed, key: str, gravity: Figure, sheet: Worksheet) -> Figure:
    on_rear = sheet.work(
        f"{key}_on_rear",
        f"tow vehicle: rear axle, {one.case.name}",
        eq.rear_axle_of_vehicle,
        mass=vehicle.mass,
        front_share=vehicle.share,
        tongue=one.tongue_load,
    )
    return sheet.work(
        f"{key}_rear_stiffness",
        f"tow vehicle: rear side stiffness, {one.case.name}",
        eq.cornering_stiffness,
        load=on_rear,
        per_load=vehicle.per_load,
        gravity=gravity,
    )


def _damping(
    outfit: _Outfit, id: str, label: str, stiffness: Figure, factor: Figure, sheet: Worksheet
) -> Figure:
    """The least damped motion with the trailer's tires at one end of their band."""
    case, vehicle = outfit.towed.case, outfit.vehicle
    tires = sheet.work(
        f"{id}_stiffness",
        f"side stiffness, tires {label}, {case.name}",
        eq.scaled_stiffness,
        stiffness=stiffness,
        times=factor,
    )
    return sheet.work(
        id,
        f"damping of the least damped sway, tires {label}, {case.name}",
        eq.least_damping,
        speed=outfit.speed,
        tow_mass=vehicle.mass,
        tow_inertia=vehicle.inertia,
        front=vehicle.front,
        rear=vehicle.rear,
        ball_behind=vehicle.ball,
        front_stiffness=vehicle.front_stiffness,
        rear_stiffness=outfit.rear_stiffness,
        mass=case.gross,
        inertia=outfit.inertia,
        centre=case.station,
        axle=outfit.axle,
        stiffness=tires,
    )


def _tire_stiffness(build: Build, one: Towed, key: str, gravity: Figure, sheet: Worksheet) -> Figure:
    """As the builder gives it, or from the load the tires carry."""
    if build.trailer.axle.cornering_stiffness is not None:
        return sheet.given(build.trailer.axle["cornering_stiffness"])
    name = f"trailer tires' side stiffness, {one.case.name}"
    per_load = sheet.tabled(
        f"{key}_per_load",
        "trailer tires: side stiffness over load",
        6.0,
        "1",
        source="trade-practice",
        row="5 to 8",
    )
    return sheet.work(
        f"{key}_stiffness",
        name,
        eq.cornering_stiffness,
        load=one.axle_load,
        per_load=per_load,
        gravity=gravity,
    )
