"""Towing: every load case against what the running gear, the coupling and the tow vehicle may carry."""

from __future__ import annotations

from curbwright import data, units
from curbwright.build.cart import Build
from curbwright.equations import balance as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.balance.cases import Towed

GRAVITY = 9.80665


def towing(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Write the governing loads of all towed cases and the ratings they are held against."""
    _heaviest(towed, sheet.section("worst", "the governing load case of each kind"))
    for part in (_axles, _tires, _coupling, _hitch_class, _brakes, _vehicle):
        below = sheet.section(part.__name__.strip("_"), part.__doc__.split(":")[0] if part.__doc__ else "")
        with below.attempt():
            part(build, towed, axle, below)


def _names(towed: dict[str, Towed], field: str) -> dict[str, Figure]:
    return {one.case.name: getattr(one, field) for one in towed.values()}


def _heaviest(towed: dict[str, Towed], sheet: Worksheet) -> None:
    sheet.largest("gross", "heaviest gross mass", {one.case.name: one.case.gross for one in towed.values()})
    sheet.largest("axle_load", "heaviest axle load", _names(towed, "axle_load"))
    sheet.largest("tongue_load", "heaviest tongue load", _names(towed, "tongue_load"))
    sheet.smallest("tongue_share_least", "least tongue share", _names(towed, "share"))
    sheet.largest("tongue_share_most", "largest tongue share", _names(towed, "share"))


def _axles(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Axles: each against its rating, the nose level and two inches off."""
    count = sheet.given(build.trailer.axle["count"])
    each = {
        one.case.name: sheet.work(
            f"{key}_each",
            f"load on each axle, {one.case.name}",
            eq.shared_by,
            load=one.axle_load,
            count=count,
        )
        for key, one in towed.items()
    }
    if build.trailer.axle.count == 2 and build.trailer.axle.suspension == "torsion":
        each |= _tilted(build, towed, axle, each, sheet)
    sheet.largest("each", "heaviest load on one axle", each)
    rating = sheet.given(build.trailer.axle["rating"])
    sheet.work("rating_all", "rating of all axles together", eq.tires_together, rating=rating, count=count)
    sheet.given(build.trailer["gross_rating"])


def _tilted(
    build: Build, towed: dict[str, Towed], axle: Figure, each: dict[str, Figure], sheet: Worksheet
) -> dict[str, Figure]:
    """The axle of a torsion tandem that gains load with the hitch two inches above or below level ride."""
    running = build.trailer.axle
    rate, spacing = sheet.given(running["spring_rate"]), sheet.given(running["spacing"])
    gravity = gravity_on(sheet)
    tilted: dict[str, Figure] = {}
    for end, nose, off, shift_of in (
        ("rear", "high", 0.0508, eq.tandem_rear_shift),
        ("front", "low", -0.0508, eq.tandem_front_shift),
    ):
        hitch = sheet.tabled(
            f"hitch_{nose}",
            f"hitch above level ride, nose {nose}",
            off,
            "m",
            source="trade-practice",
            row="2 in out of level happens",
        )
        shift = sheet.work(
            f"{end}_shift",
            f"moved onto the {end} axle, nose {nose}",
            shift_of,
            stiffness=rate,
            hitch_high=hitch,
            spacing=spacing,
            axle=axle,
        )
        moved = sheet.work(
            f"{end}_shift_mass",
            f"moved onto the {end} axle, as a scale shows it",
            eq.weighs,
            force=shift,
            gravity=gravity,
        )
        for key, one in towed.items():
            tilted[f"{one.case.name}, nose 2 in {nose}"] = sheet.work(
                f"{key}_nose_{nose}",
                f"{end} axle, nose {nose}, {one.case.name}",
                eq.axle_with_shift,
                load=each[one.case.name],
                shift=moved,
            )
    return tilted


def gravity_on(sheet: Worksheet) -> Figure:
    """Write standard gravity on a sheet."""
    return sheet.tabled("gravity", "standard gravity", GRAVITY, "m/s**2", source="si-brochure")


def _tires(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Tires: the heavier side of the heaviest case against the sidewall."""
    tires, trailer = build.trailer.tires, build.trailer
    track = sheet.given(trailer.axle["track"])
    count = sheet.given(tires["count"])
    heavier: dict[str, Figure] = {}
    uneven: dict[str, Figure] = {}
    for key, one in towed.items():
        name, load, gross, across = one.case.name, one.axle_load, one.case.gross, one.case.across
        right = sheet.work(
            f"{key}_curb",
            f"curb-side wheels, {name}",
            eq.right_wheels,
            axle_load=load,
            gross=gross,
            across=across,
            track=track,
        )
        left = sheet.work(
            f"{key}_street",
            f"street-side wheels, {name}",
            eq.left_wheels,
            axle_load=load,
            gross=gross,
            across=across,
            track=track,
        )
        side = sheet.largest(
            f"{key}_side", f"heavier side, {name}", {"curb side": right, "street side": left}
        )
        heavier[name] = sheet.work(
            f"{key}_tire",
            f"load on one tire of the heavier side, {name}",
            eq.tire_of_side,
            side=side,
            count=count,
        )
        uneven[name] = sheet.work(
            f"{key}_uneven",
            f"side over its half of the axle load, {name}",
            eq.side_excess,
            shown="%",
            side=side,
            axle_load=one.axle_load,
        )
    worst = sheet.largest("heaviest", "heaviest load on one tire", heavier)
    sheet.largest("uneven", "one side over its half, the worst", uneven)
    rating = _tire_rating(build, sheet)
    sheet.work(
        "reserve", "what the most loaded tire has to spare", eq.reserve, shown="%", load=worst, rating=rating
    )


def _tire_rating(build: Build, sheet: Worksheet) -> Figure:
    tires = build.trailer.tires
    rating = sheet.given(tires["rating"])
    if tires.pressure is not None and sheet.given(tires["pressure"]) < sheet.given(tires["rated_pressure"]):
        exponent = sheet.tabled(
            "exponent",
            "how tire load falls with pressure",
            0.64,
            "1",
            source="st-tire-chart",
            row="the safe end of 0.54 to 0.64, fitted to the table's rows",
        )
        rating = sheet.work(
            "rating_at_pressure",
            "tire rating at the pressure it is run at",
            eq.tire_load_at_pressure,
            load=rating,
            pressure=sheet.given(tires["pressure"]),
            full_pressure=sheet.given(tires["rated_pressure"]),
            exponent=exponent,
        )
    if tires.kind == "P":
        rating = sheet.work(
            "rating_derated", "passenger tire rating on a trailer", eq.passenger_tire_derated, rating=rating
        )
    sheet.work(
        "rating_all",
        "what all tires may carry together",
        eq.tires_together,
        rating=rating,
        count=sheet.given(tires["count"]),
    )
    return sheet.largest("rating", "what one tire may carry", {f"{tires.kind} tire": rating})


def _coupling(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Coupling: coupler, ball and chains; the lowest-rated part governs."""
    coupler = build.trailer.coupler
    ratings = {
        says: sheet.given(coupler[field])
        for field, says in (
            ("rating", "coupler"),
            ("ball_rating", "ball"),
            ("chain_rating", "one safety chain"),
        )
        if getattr(coupler, field) is not None
    }
    if ratings:
        sheet.smallest("rating", "lowest rating of coupler, ball and chain given", ratings)
    for field in ("rating", "ball_rating", "chain_rating", "ball", "ball_on_vehicle", "chain_count"):
        with sheet.attempt():
            sheet.given(coupler[field])


def _hitch_class(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Hitch class: the tongue load recommended for the class this gross mass falls in."""
    gross = sheet.largest(
        "gross", "heaviest gross mass", {one.case.name: one.case.gross for one in towed.values()}
    )
    hitch = build.tow_vehicle.hitch
    for row in data.table("towing/tongue_limits"):
        if row["hitch"] == hitch and gross <= units.read(row["gross_up_to"], "mass"):
            name, chosen = (
                f"recommended tongue load, class {row['class']}, {hitch}",
                f"class {row['class']}, {hitch}",
            )
            if row["tongue"]:
                sheet.tabled(
                    "tongue_limit",
                    name,
                    units.read(row["tongue"], "mass"),
                    "kg",
                    source=row["source"],
                    row=chosen,
                )
            else:
                share = sheet.tabled(
                    "tongue_limit_share",
                    f"{name}, share of gross",
                    units.read(row["share"], "share"),
                    "1",
                    source=row["source"],
                    row=chosen,
                )
                sheet.work("tongue_limit", name, eq.load_for_share, gross=gross, share=share)
            return
    says = (
        f"no tongue load is published for a {hitch} hitch at this gross mass; the plate on the hitch decides"
    )
    raise MissingInput("tow_vehicle.hitch", says)


def _brakes(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Brakes: the mass towed without them, and the mass from which the state asks for them."""
    gross = sheet.largest(
        "gross", "heaviest gross mass", {one.case.name: one.case.gross for one in towed.values()}
    )
    brakes = build.trailer.brakes
    for id, name, field in (
        ("unbraked", "mass towed without trailer brakes", "kind"),
        ("without_breakaway", "mass towed without a breakaway switch", "breakaway"),
    ):
        with sheet.attempt():
            value = getattr(brakes, field)
            if value is None:
                raise MissingInput(f"trailer.brakes.{field}", f"{brakes.declared(field)['says']}: not given")
            fitted = 0.0 if value in ("none", False) else 1.0
            missing = sheet.choice(
                f"{id}_share",
                f"share of it: {'none, it is fitted' if fitted else 'all, none is fitted'}",
                1 - fitted,
                f"trailer.brakes.{field}",
                str(value),
            )
            sheet.work(id, name, eq.part_of, whole=gross, share=missing)
    state = build.place.state
    if state is None:
        raise MissingInput("place.state", "the state whose road rules apply is not given")
    found = {
        row["source"].replace("-", " "): row
        for row in data.table("towing/brake_thresholds")
        if row["state"] == state and row["gross_from"]
    }
    if not found:
        raise MissingInput("place.state", f"no published threshold is at hand for {state}: ask the state")
    listed = {
        label: sheet.tabled(
            label.replace(" ", "_"),
            f"brakes asked for from, {label}",
            units.read(row["gross_from"], "mass"),
            "kg",
            source=row["source"],
            row=f"{state}, {row['applies_to']}",
        )
        for label, row in found.items()
    }
    silent = [
        row
        for row in data.table("towing/brake_thresholds")
        if row["state"] == state and not row["gross_from"]
    ]
    says = "; ".join(row["note"] for row in silent if row["note"]) or "the stricter list"
    sheet.smallest("threshold", f"brakes asked for from, {state}, {says}", listed)


def _vehicle(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Tow vehicle: what its maker allows on the ball and behind it."""
    vehicle = build.tow_vehicle
    for field in ("tow_rating", "tongue_rating"):
        with sheet.attempt():
            sheet.given(vehicle[field])
    heaviest = sheet.largest(
        "gross", "heaviest gross mass towed", {one.case.name: one.case.gross for one in towed.values()}
    )
    sheet.work(
        "ratio",
        "trailer's mass as a share of the tow vehicle's",
        eq.tow_ratio,
        shown="%",
        gross=heaviest,
        tow_vehicle=sheet.given(vehicle["mass"]),
    )
