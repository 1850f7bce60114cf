"""Wind: a gust on the side of the parked cart, closed, and with hatch and awning out."""

from __future__ import annotations

from curbwright.build.cart import Build
from curbwright.build.fit import Item, Opening, Shell
from curbwright.equations import balance as eq
from curbwright.equations import fit as where
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.balance.cases import Towed
from curbwright.sheets.balance.towing import gravity_on


def wind(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Wind on the side, on wheels and tongue jack alone, in the load case that holds least."""
    shell = build.shell
    if shell is None or not towed:
        sheet.note("No shell: the wind on an open cart is left to awning and canopy makers' limits.")
        return
    face = _side(build, shell, sheet)
    resisting = _holding(build, towed, axle, sheet)
    closed = _gust("closed", sheet.given(build.pitch["storm_gust"]), face, [], resisting, sheet)
    sheet.work(
        "closed_reserve",
        "moment left over, closed",
        eq.moment_reserve,
        shown="%",
        overturning=closed,
        resisting=resisting,
    )
    hatches = [
        (key, one)
        for key, one in shell.openings.items()
        if one.kind == "hatch" and one.opens == "up" and one.wall in ("curb", "street")
    ]
    opened = _gust("open", sheet.given(build.pitch["gust"]), face, hatches, resisting, sheet, build)
    sheet.work(
        "open_reserve",
        "moment left over, hatch and awning open",
        eq.moment_reserve,
        shown="%",
        overturning=opened,
        resisting=resisting,
    )
    sheet.note(
        "Close the hatch and stow the awning well before these gusts; stake or ballast in exposed places."
    )


def _holding(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> Figure:
    """The least moment with which any load case holds the cart down."""
    track, gravity = sheet.given(build.trailer.axle["track"]), gravity_on(sheet)
    held: dict[str, Figure] = {}
    for key, one in towed.items():
        case = one.case
        span = sheet.work(
            f"{key}_span",
            f"span that holds it, {case.name}",
            eq.standing_span,
            track=track,
            across=case.across,
            centre=case.station,
            axle=axle,
        )
        held[case.name] = sheet.work(
            f"{key}_holds",
            f"moment that holds it down, {case.name}",
            eq.resisting_moment,
            mass=case.gross,
            track=span,
            gravity=gravity,
        )
    return sheet.smallest("resisting", "least moment that holds it down", held)


def _side(build: Build, shell: Shell, sheet: Worksheet) -> tuple[Figure, Figure]:
    """Area of the side and the height of its middle."""
    if shell.length is not None:
        length = sheet.given(shell["length"])
    else:
        length = sheet.work(
            "side_length",
            "length of the side",
            where.rest,
            whole=sheet.given(build.trailer["deck_length"]),
            part=sheet.given(shell["back"]),
        )
    height, deck = sheet.given(shell["height"]), sheet.given(build.trailer["deck_height"])
    area = sheet.work("side_area", "area of the side", eq.area, length=length, width=height)
    return area, sheet.work(
        "side_arm", "middle of the side above the ground", eq.wind_arm, underside=deck, height=height
    )


def _gust(
    id: str,
    speed: Figure,
    face: tuple[Figure, Figure],
    hatches: list[tuple[str, Opening]],
    resisting: Figure,
    sheet: Worksheet,
    build: Build | None = None,
) -> Figure:
    """Overturning moment of a gust, and the gust that would tip it."""
    pressure = _pressure(id, speed, sheet)
    force = _side_force(id, pressure, face[0], sheet)
    moments = [
        sheet.work(
            f"{id}_side_moment",
            f"overturning moment of the side, {id}",
            eq.overturning_moment,
            force=force,
            arm=face[1],
        )
    ]
    if build is not None:
        moments += [_hatch(key, hatch, pressure, build, sheet) for key, hatch in hatches]
        awnings = [(key, item) for key, item in build.items.items() if item.kind == "awning"]
        moments += [_awning(key, item, pressure, build, sheet) for key, item in awnings]
    total = sheet.total(f"{id}_overturning", f"overturning moment, {id}", moments)
    sheet.work(
        f"{id}_tipping",
        f"gust that would tip it, {id}, rigid: not a wind to stand in",
        eq.tipping_speed,
        speed=speed,
        overturning=total,
        resisting=resisting,
    )
    return total


def _pressure(id: str, speed: Figure, sheet: Worksheet) -> Figure:
    """Pressure of a gust on low, open, level ground."""
    exposure, terrain, direction = (
        sheet.tabled(
            f"{id}_exposure",
            "exposure factor, low and open ground",
            0.85,
            "1",
            source="recalled",
            row="Kz to 15 ft",
        ),
        sheet.tabled(f"{id}_terrain", "hills factor, level ground", 1.0, "1", source="recalled", row="Kzt"),
        sheet.tabled(f"{id}_direction", "direction factor", 0.85, "1", source="recalled", row="Kd"),
    )
    return sheet.work(
        f"{id}_pressure",
        f"wind pressure, {id}",
        eq.velocity_pressure,
        shown="lb/ft2",
        speed=speed,
        exposure=exposure,
        terrain=terrain,
        direction=direction,
    )


def _side_force(id: str, pressure: Figure, area: Figure, sheet: Worksheet) -> Figure:
    """Force of the wind on the side, as on a solid box."""
    gust = sheet.tabled(f"{id}_gust_factor", "gust factor", 0.85, "1", source="recalled", row="G")
    shape = sheet.tabled(
        f"{id}_shape", "force coefficient of a box", 1.4, "1", source="recalled", row="Cf 1.3 to 1.5"
    )
    return sheet.work(
        f"{id}_force",
        f"wind force on the side, {id}",
        eq.wind_force,
        pressure=pressure,
        gust_factor=gust,
        force_coefficient=shape,
        area=area,
    )


def _hatch(key: str, hatch: Opening, pressure: Figure, build: Build, sheet: Worksheet) -> Figure:
    """Moment of the wind on a hatch held open on the windward side, hinged at its top."""
    top = sheet.work(
        f"{key}_top",
        f"{key}: hinge above the deck",
        where.far_edge,
        edge=sheet.given(hatch["above"]),
        size=sheet.given(hatch["height"]),
    )
    sides = sheet.given(hatch["width"]), sheet.given(hatch["height"])
    return _flap(key, sides, top, sheet.given(hatch["open_angle"]), pressure, build, sheet)


def _awning(key: str, item: Item, pressure: Figure, build: Build, sheet: Worksheet) -> Figure:
    """Moment of the wind under an awning that is out, flat, on the windward side."""
    flat = sheet.tabled(
        f"{key}_angle", f"{item.name}: its rise above the horizontal", 0.0, "rad", source="convention"
    )
    sides = sheet.given(item["width"]), sheet.given(item["swing"])
    return _flap(key, sides, sheet.given(item["above"]), flat, pressure, build, sheet)


def _flap(
    key: str,
    sides: tuple[Figure, Figure],
    hinge_above: Figure,
    angle: Figure,
    pressure: Figure,
    build: Build,
    sheet: Worksheet,
) -> Figure:
    """Moment of the wind on a flap: drag at its height, uplift at its reach; ``sides``: width, depth."""
    says = key.replace("_", " ")
    area = sheet.work(f"{key}_area", f"{says}: area", eq.area, length=sides[0], width=sides[1])
    hinge = sheet.work(
        f"{key}_hinge",
        f"{says}: hinge above the ground",
        where.above_road,
        deck_height=sheet.given(build.trailer["deck_height"]),
        above=hinge_above,
    )
    coefficient = sheet.tabled(
        f"{key}_coefficient",
        f"{says}: force coefficient of a raised flap",
        1.2,
        "1",
        source="trade-practice",
        row="assumed for drag and uplift",
    )
    return sheet.work(
        f"{key}_moment",
        f"overturning moment of {says}, open",
        eq.hatch_moment,
        pressure=pressure,
        coefficient=coefficient,
        area=area,
        depth=sides[1],
        angle=angle,
        hinge=hinge,
        track=sheet.given(build.trailer.axle["track"]),
        half_width=_half_width(build, sheet),
    )


def _half_width(build: Build, sheet: Worksheet) -> Figure:
    found = sheet.figures().get(f"{sheet.id}.half_width")
    if found is not None:
        return found
    width = (
        sheet.given(build.shell["width"])
        if build.shell and build.shell.width is not None
        else sheet.given(build.trailer["deck_width"])
    )
    zero = sheet.tabled("centre_line", "the centre line", 0.0, "m", source="convention")
    return sheet.work("half_width", "half the shell's width", where.middle, edge=zero, size=width)
