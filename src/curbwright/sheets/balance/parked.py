"""Parked: people aboard, somebody at the rear, wind on the closed and the open cart, snow on the roof."""

from __future__ import annotations

from curbwright.build.cart import Build
from curbwright.build.fit import Opening, Shell
from curbwright.equations import balance as eq
from curbwright.equations import fit as where
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.balance.cases import Case, Towed, roll_up
from curbwright.sheets.balance.rows import Row
from curbwright.sheets.balance.towing import gravity_on


def parked(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Write what the parked cart carries and what would tip it."""
    for part in (_service, _rear, _wind, _snow):
        below = sheet.section(part.__name__.strip("_"), (part.__doc__ or "").rstrip("."))
        with below.attempt():
            part(build, towed, axle, below)


def _service(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Serving, with the people aboard."""
    base = towed.get("fresh_full") or towed.get("road_ready")
    if base is None:
        return
    people = list(_people(build, sheet))
    case = roll_up("service", "serving", (*base.case.rows, *people), sheet)
    sheet.work("axle_load", "axle load, jacks up", eq.axle_load, gross=case.gross, centre=case.station, axle=axle)
    sheet.work("tongue_load", "load on the tongue jack, rear jacks up", eq.tongue_load, gross=case.gross, centre=case.station, axle=axle)


def _people(build: Build, sheet: Worksheet) -> list[Row]:
    rows: list[Row] = []
    ball_to_deck, deck = sheet.given(build.trailer["ball_to_deck"]), sheet.given(build.trailer["deck_height"])
    waist = sheet.tabled("waist", "a standing person's centre of gravity above the deck", 1.0, "m", source="trade-practice")
    height = sheet.work("waist_height", "a standing person's centre of gravity above the road", where.above_road, deck_height=deck, above=waist)
    spread = sheet.tabled("person_spread", "how far a person's mass may be off", 0.1, "1", source="trade-practice")
    reach = sheet.tabled("person_reach", "how far a person moves about", 0.15, "m", source="trade-practice")
    size = sheet.tabled("person_size", "a person seen from above", 0.0, "m", source="convention")
    for key, person in build.people.items():
        below = sheet.section(f"person_{key}", key.replace("_", " "))
        with below.attempt():
            mass = below.given(person["mass"])
            station = below.work("station", f"{key}: behind the ball", where.from_ball, ball_to_deck=ball_to_deck, back=below.given(person["back"]))
            off = below.work("spread", f"{key}: spread of mass", eq.relative_spread, mass=mass, fraction=spread)
            rows.append(Row(f"person_{key}", key.replace("_", " "), "people", mass, station, below.given(person["off_centre"]), height, off, reach, size, size))
    return rows


def _rear(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Uncoupled, with somebody standing at the rear of the deck."""
    trailer = build.trailer
    rear = sheet.work("edge", "rear edge of the deck behind the ball", where.from_ball, ball_to_deck=sheet.given(trailer["ball_to_deck"]), back=sheet.given(trailer["deck_length"]))
    behind = sheet.work("behind", "rear edge of the deck behind the axle", where.rest, whole=rear, part=axle)
    if behind <= 0 or not towed:
        sheet.note("The deck ends ahead of the axle: nobody can tip it backwards.")
        return
    tips = {
        one.case.name: sheet.work(f"{key}_tips", f"load at the rear edge that lifts the tongue, {one.case.name}", eq.rear_load_that_tips, tongue_load=one.tongue_load, axle=axle, behind=behind)
        for key, one in towed.items()
    }  # fmt: skip
    sheet.smallest("tips", "least load at the rear edge that lifts the uncoupled tongue", tips)
    sheet.tabled("two_people", "two people at the rear", 181.44, "kg", source="trade-practice", row="2 of 200 lb")


def _wind(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Wind on the side, on wheels alone, at its lightest."""
    shell = build.shell
    lightest = min((one.case for one in towed.values()), key=lambda case: float(case.gross), default=None)
    if shell is None or lightest is None:
        sheet.note("No shell: the wind on an open cart is left to awning and canopy makers' limits.")
        return
    face = _side(build, shell, sheet)
    resisting = sheet.work("resisting", "moment that holds it down", eq.resisting_moment, mass=lightest.gross, track=sheet.given(build.trailer.axle["track"]), gravity=gravity_on(sheet))
    closed = _gust("closed", sheet.given(build.pitch["storm_gust"]), face, [], resisting, sheet)
    sheet.work("closed_reserve", "moment left over, closed", eq.moment_reserve, shown="%", overturning=closed, resisting=resisting)
    hatches = [(key, one) for key, one in shell.openings.items() if one.kind == "hatch" and one.opens == "up" and one.wall in ("curb", "street")]
    opened = _gust("open", sheet.given(build.pitch["gust"]), face, hatches, resisting, sheet, build)
    sheet.work("open_reserve", "moment left over, hatch open", eq.moment_reserve, shown="%", overturning=opened, resisting=resisting)
    sheet.note("Close the hatch and stow the awning well before these gusts; stake or ballast in exposed places.")


def _side(build: Build, shell: Shell, sheet: Worksheet) -> tuple[Figure, Figure]:
    """Area of the side and the height of its middle."""
    if shell.length is not None:
        length = sheet.given(shell["length"])
    else:
        length = sheet.work("side_length", "length of the side", where.rest, whole=sheet.given(build.trailer["deck_length"]), part=sheet.given(shell["back"]))
    height, deck = sheet.given(shell["height"]), sheet.given(build.trailer["deck_height"])
    area = sheet.work("side_area", "area of the side", eq.area, length=length, width=height)
    return area, sheet.work("side_arm", "middle of the side above the ground", eq.wind_arm, underside=deck, height=height)


def _gust(
    id: str, speed: Figure, face: tuple[Figure, Figure], hatches: list[tuple[str, Opening]], resisting: Figure,
    sheet: Worksheet, build: Build | None = None,
) -> Figure:  # fmt: skip
    """Overturning moment of a gust, and the gust that would tip it."""
    factors = {
        "exposure": sheet.tabled(f"{id}_exposure", "exposure factor, low and open ground", 0.85, "1", source="recalled", row="Kz to 15 ft"),
        "terrain": sheet.tabled(f"{id}_terrain", "hills factor, level ground", 1.0, "1", source="recalled", row="Kzt"),
        "direction": sheet.tabled(f"{id}_direction", "direction factor", 0.85, "1", source="recalled", row="Kd"),
    }
    pressure = sheet.work(f"{id}_pressure", f"wind pressure, {id}", eq.velocity_pressure, shown="lb/ft2", speed=speed, **factors)
    gust = sheet.tabled(f"{id}_gust_factor", "gust factor", 0.85, "1", source="recalled", row="G")
    shape = sheet.tabled(f"{id}_shape", "force coefficient of a box", 1.4, "1", source="recalled", row="Cf 1.3 to 1.5")
    force = sheet.work(f"{id}_force", f"wind force on the side, {id}", eq.wind_force, pressure=pressure, gust_factor=gust, force_coefficient=shape, area=face[0])
    moments = [sheet.work(f"{id}_side_moment", f"overturning moment of the side, {id}", eq.overturning_moment, force=force, arm=face[1])]
    for key, hatch in hatches:
        if build is not None:
            moments.append(_hatch(key, hatch, pressure, build, sheet))
    total = sheet.total(f"{id}_overturning", f"overturning moment, {id}", moments)
    sheet.work(f"{id}_tipping", f"gust that would tip it, {id}, rigid: not a wind to stand in", eq.tipping_speed, speed=speed, overturning=total, resisting=resisting)
    return total


def _hatch(key: str, hatch: Opening, pressure: Figure, build: Build, sheet: Worksheet) -> Figure:
    """Moment of the wind on an open hatch on the windward side: drag at its height, uplift at its reach."""
    width, height = sheet.given(hatch["width"]), sheet.given(hatch["height"])
    area = sheet.work(f"{key}_area", f"{key}: area", eq.area, length=width, width=height)
    top = sheet.work(f"{key}_top", f"{key}: hinge above the deck", where.far_edge, edge=sheet.given(hatch["above"]), size=height)
    hinge = sheet.work(f"{key}_hinge", f"{key}: hinge above the ground", where.above_road, deck_height=sheet.given(build.trailer["deck_height"]), above=top)
    coefficient = sheet.tabled(f"{key}_coefficient", f"{key}: force coefficient of a raised flap", 1.2, "1", source="trade-practice", row="assumed for drag and uplift")
    return sheet.work(
        f"{key}_moment", f"overturning moment of {key}, open", eq.hatch_moment, pressure=pressure, coefficient=coefficient, area=area,
        depth=height, angle=sheet.given(hatch["open_angle"]), hinge=hinge, track=sheet.given(build.trailer.axle["track"]),
        half_width=_half_width(build, sheet),
    )  # fmt: skip


def _half_width(build: Build, sheet: Worksheet) -> Figure:
    found = sheet.figures().get(f"{sheet.id}.half_width")
    if found is not None:
        return found
    width = sheet.given(build.shell["width"]) if build.shell and build.shell.width is not None else sheet.given(build.trailer["deck_width"])
    zero = sheet.tabled("centre_line", "the centre line", 0.0, "m", source="convention")
    return sheet.work("half_width", "half the shell's width", where.middle, edge=zero, size=width)


def _snow(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Snow on the roof of the parked cart."""
    shell = build.shell
    base = _snow_base(towed)
    if shell is None or base is None or build.pitch.ground_snow in (None, 0):
        sheet.note("No snow: pitch.ground_snow is not given.")
        return
    factors = {name: sheet.tabled(name, f"snow {name} factor", value, "1", source="recalled", row=row)
               for name, value, row in (("exposure", 1.0, "Ce"), ("thermal", 1.2, "Ct, unheated"), ("importance", 1.0, "I"))}  # fmt: skip
    snow = sheet.work("roof_snow", "snow on the roof", eq.roof_snow, ground_snow=sheet.given(build.pitch["ground_snow"]), **factors)
    length = sheet.given(shell["length"]) if shell.length is not None else sheet.given(build.trailer["deck_length"])
    width = sheet.given(shell["width"]) if shell.width is not None else sheet.given(build.trailer["deck_width"])
    area = sheet.work("roof_area", "roof area", eq.area, length=length, width=width)
    mass = sheet.work("snow_mass", "mass of snow on the roof", eq.snow_on_roof, roof_snow=snow, area=area)
    sheet.total("gross", "gross mass under snow, on wheels and jacks", [base.gross, mass])


def _snow_base(towed: dict[str, Towed]) -> Case | None:
    return max((one.case for one in towed.values()), key=lambda case: float(case.gross), default=None)
