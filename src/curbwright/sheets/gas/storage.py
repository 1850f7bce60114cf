"""Bottles as things to carry: how much is aboard, how full, how tied, how their cabinet breathes."""

from __future__ import annotations

from collections.abc import Mapping

from curbwright import data
from curbwright.build.cart import Build
from curbwright.equations import balance
from curbwright.equations import gas as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.gas.cabinet import vents
from curbwright.sheets.gas.things import Constants, Thing, Things, read


def storage(build: Build, things: Things, constants: Constants, top: Worksheet) -> None:
    """Write what is aboard against the place's limit, and every bottle's filling, fastening and heat."""
    with top.attempt():
        charges = [top.given(one.item["charge"]) for one in things.aboard.values()]
        top.total("aboard", "propane aboard, every bottle full, spare ones included", charges)
        top.given(build.gas["place_limit"])
        for row in data.table("gas/place_limits"):
            top.note(f"Propane aboard, {row['place']}: {row['most']}, {row['says']} ({row['how']}).")
    filled = top.section("filling", "how full each bottle may be")
    fillings: dict[str, Figure] = {}
    for key, thing in things.aboard.items():
        below = filled.section(key, thing.name)
        with below.attempt():
            fillings[thing.name] = _filling(thing, constants, below)
    hot = top.section("heat", "bottles in the sun")
    with hot.attempt():
        _heat(build, fillings, constants, hot)
    tied = top.section("restraint", "how the bottles are tied")
    with tied.attempt():
        _tied(build, things, constants, top, tied)
    if build.gas.cabinet is not None:
        below = top.section("vents", "how the bottles' cabinet breathes")
        with below.attempt():
            vents(build.gas.cabinet, things, constants, below)


def _filling(thing: Thing, constants: Constants, sheet: Worksheet) -> Figure:
    """The charge against what its water capacity allows; returns the filling."""
    charge, water = sheet.given(thing.item["charge"]), sheet.given(thing.gas["water_capacity"])
    most = sheet.work(
        "largest_charge", f"{thing.name}: most it may hold", eq.largest_charge, water_capacity=water,
        filling=constants["filling"],
    )  # fmt: skip
    sheet.work("room", f"{thing.name}: room under that", eq.room_left, most=most, mass=charge)
    return sheet.work(
        "filling", f"{thing.name}: propane for the water it holds", eq.filling_of, shown="%", charge=charge,
        water_capacity=water,
    )  # fmt: skip


def _heat(build: Build, fillings: dict[str, Figure], constants: Constants, sheet: Worksheet) -> None:
    """How hot a bottle gets in the sun, its pressure then, and the heat at which its liquid fills it."""
    if not fillings:
        return
    hottest = sheet.work(
        "hottest", "a bottle in the sun on the hottest day", eq.in_the_sun,
        air=sheet.given(build.pitch["high"]), rise=constants["sun_rise"],
    )  # fmt: skip
    sheet.work(
        "absolute", "absolute pressure in it, pure propane", eq.saturation_pressure, temperature=hottest
    )
    commercial = data.table("gas/commercial_pressure")
    sheet.tabled(
        "commercial", "pressure in a bottle of commercial propane at 130 °F",
        read(commercial.row("130 °F")["pressure"], "pressure"), "Pa",
        source=commercial.row("130 °F")["source"], row="130 °F",
    )  # fmt: skip
    fullest = sheet.largest("fullest", "fullest bottle", fillings, shown="%")
    sheet.work(
        "liquid_full", "the heat at which its liquid has no room left", eq.liquid_full_temperature,
        filling=fullest, water_density=constants["water_density"],
    )  # fmt: skip


def _tied(build: Build, things: Things, constants: Constants, top: Worksheet, sheet: Worksheet) -> None:
    """What the fastening of each bottle must hold, by the gas rule and by a container rule beside it."""
    needed: dict[str, Figure] = {}
    heaviest: dict[str, Figure] = {}
    for key, thing in things.aboard.items():
        parts = [sheet.given(thing.item["mass"]), sheet.given(thing.item["charge"])]
        full = sheet.total(f"full_{key}", f"{thing.name} full", parts)
        heaviest[thing.name] = full
        needed[thing.name] = sheet.work(
            f"needed_{key}", f"{thing.name}: load its fastening must hold in any direction",
            balance.restraint_force, mass=full, factor=constants["restraint"],
        )  # fmt: skip
    if not needed:
        return
    top.largest("restraint_needed", "load that the fastening of a bottle must hold in any direction", needed)
    full = sheet.largest("heaviest", "heaviest bottle", heaviest)
    for row in data.table("towing/restraint"):
        if row["rule"] == "container":
            _container_rule(row, full, sheet)
    sheet.given(build.gas["restraint"])


def _container_rule(row: Mapping[str, str], full: Figure, sheet: Worksheet) -> None:
    """A rule for other pressure containers, beside the gas rule: so many times the weight, and a factor."""
    way, source = row["direction"], row["source"]
    times = sheet.tabled(
        f"{way}_times",
        f"{way}: times the weight, by a container rule",
        float(row["times"]),
        "1",
        source=source,
    )
    safety = sheet.tabled(f"{way}_safety", f"{way}: safety factor", float(row["safety"]), "1", source=source)
    force = sheet.work(
        f"{way}_force", f"{way} force by a container rule", balance.restraint_force, mass=full, factor=times
    )
    sheet.work(
        f"{way}_breaking", f"{way} breaking load by a container rule", balance.breaking_load, force=force,
        safety=safety,
    )  # fmt: skip
