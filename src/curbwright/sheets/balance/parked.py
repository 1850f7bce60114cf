"""Parked: people aboard, somebody at the rear, wind on the closed and the open cart, snow on the roof."""

from __future__ import annotations

from curbwright.build.cart import Build
from curbwright.equations import balance as eq
from curbwright.equations import fit as where
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.balance.cases import Case, Towed, roll_up
from curbwright.sheets.balance.rows import Row
from curbwright.sheets.balance.wind import wind


def parked(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Write what the parked cart carries and what would tip it."""
    for part in (_rear, wind, _snow):
        below = sheet.section(part.__name__.strip("_"), (part.__doc__ or "").rstrip("."))
        with below.attempt():
            part(build, towed, axle, below)
    for id, case, says in SERVING:
        if build.people and case in towed:
            below = sheet.section(id, says)
            with below.attempt():
                _service(build, towed[case], axle, below)


SERVING = (
    ("service", "road_ready", "opening, the crew aboard"),
    ("service_fresh", "fresh_full", "opening with the fresh tank full, the crew aboard"),
    ("service_late", "end_of_day", "closing, the crew aboard"),
)


def _service(build: Build, base: Towed, axle: Figure, sheet: Worksheet) -> None:
    """The crew aboard an uncoupled cart on its wheels and tongue jack, as before the other jacks are down."""
    people = list(_people(build, sheet))
    case = roll_up("service", sheet.title, (*base.case.rows, *people), sheet)
    gross, centre = case.gross, case.station
    sheet.work(
        "axle_load_parked", f"axle load, {sheet.title}", eq.axle_load, gross=gross, centre=centre, axle=axle
    )
    sheet.work(
        "jack_load",
        f"load on the tongue jack, {sheet.title}",
        eq.tongue_load,
        gross=gross,
        centre=centre,
        axle=axle,
    )


def _people(build: Build, sheet: Worksheet) -> list[Row]:
    rows: list[Row] = []
    ball_to_deck, deck = sheet.given(build.trailer["ball_to_deck"]), sheet.given(build.trailer["deck_height"])
    waist = sheet.tabled(
        "waist", "a standing person's centre of gravity above the deck", 1.0, "m", source="trade-practice"
    )
    height = sheet.work(
        "waist_height",
        "a standing person's centre of gravity above the road",
        where.above_road,
        deck_height=deck,
        above=waist,
    )
    spread = sheet.tabled(
        "person_spread", "how far a person's mass may be off", 0.1, "1", source="trade-practice"
    )
    reach = sheet.tabled("person_reach", "how far a person moves about", 0.15, "m", source="trade-practice")
    size = sheet.tabled("person_size", "a person seen from above", 0.0, "m", source="convention")
    for key, person in build.people.items():
        below = sheet.section(f"person_{key}", key.replace("_", " "))
        with below.attempt():
            mass = below.given(person["mass"])
            station = below.work(
                "station",
                f"{key}: behind the ball",
                where.from_ball,
                ball_to_deck=ball_to_deck,
                back=below.given(person["back"]),
            )
            off = below.work(
                "spread", f"{key}: spread of mass", eq.relative_spread, mass=mass, fraction=spread
            )
            rows.append(
                Row(
                    f"person_{key}",
                    key.replace("_", " "),
                    "people",
                    mass,
                    station,
                    below.given(person["off_centre"]),
                    height,
                    off,
                    reach,
                    size,
                    size,
                )
            )
    return rows


def _rear(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Uncoupled, with somebody standing at the rear of the deck."""
    trailer = build.trailer
    rear = sheet.work(
        "edge",
        "rear edge of the deck behind the ball",
        where.from_ball,
        ball_to_deck=sheet.given(trailer["ball_to_deck"]),
        back=sheet.given(trailer["deck_length"]),
    )
    behind = sheet.work("behind", "rear edge of the deck behind the axle", where.rest, whole=rear, part=axle)
    if behind <= 0 or not towed:
        sheet.note("The deck ends ahead of the axle: nobody can tip it backwards.")
        return
    tips = {
        one.case.name: sheet.work(
            f"{key}_tips",
            f"load at the rear edge that lifts the tongue, {one.case.name}",
            eq.rear_load_that_tips,
            tongue_load=one.tongue_load,
            axle=axle,
            behind=behind,
        )
        for key, one in towed.items()
    }
    sheet.smallest("tips", "least load at the rear edge that lifts the uncoupled tongue", tips)
    sheet.tabled(
        "two_people", "two people at the rear", 181.44, "kg", source="trade-practice", row="2 of 200 lb"
    )


def _snow(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Snow on the roof of the parked cart."""
    shell = build.shell
    base = _snow_base(towed)
    if shell is None or base is None or not build.pitch.ground_snow:
        sheet.note("No snow: pitch.ground_snow is not given.")
        return
    exposure, thermal, importance = (
        sheet.tabled(name, f"snow {name} factor", value, "1", source="recalled", row=row)
        for name, value, row in (
            ("exposure", 1.0, "Ce"),
            ("thermal", 1.2, "Ct, unheated"),
            ("importance", 1.0, "I"),
        )
    )
    snow = sheet.work(
        "roof_snow",
        "snow on the roof",
        eq.roof_snow,
        ground_snow=sheet.given(build.pitch["ground_snow"]),
        exposure=exposure,
        thermal=thermal,
        importance=importance,
    )
    length = (
        sheet.given(shell["length"])
        if shell.length is not None
        else sheet.given(build.trailer["deck_length"])
    )
    width = (
        sheet.given(shell["width"]) if shell.width is not None else sheet.given(build.trailer["deck_width"])
    )
    area = sheet.work("roof_area", "roof area", eq.area, length=length, width=width)
    mass = sheet.work("snow_mass", "mass of snow on the roof", eq.snow_on_roof, roof_snow=snow, area=area)
    sheet.total("gross", "gross mass under snow, on wheels and jacks", [base.gross, mass])


def _snow_base(towed: dict[str, Towed]) -> Case | None:
    return max((one.case for one in towed.values()), key=lambda case: float(case.gross), default=None)
