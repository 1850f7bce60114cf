"""The bottles connected: what is in them, how cold their liquid may get, how much of their wall it wets."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright import data
from curbwright.build.cart import Build
from curbwright.equations import gas as eq
from curbwright.equations.cold import pressure_at
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.gas.things import HEAT, Constants, Thing, Things, read


@dataclass(frozen=True)
class Bottle:
    """One connected bottle with the figures its course is worked from."""

    thing: Thing
    diameter: Figure
    contents: Figure
    shell: Figure
    shell_specific_heat: Figure
    area: Figure


@dataclass(frozen=True)
class Bottles:
    """The bottles connected and everything about them that depends neither on the air nor on the load."""

    changeover: str
    each: tuple[Bottle, ...]
    atmosphere: Figure
    coldest: Figure
    latent: Figure
    film: Figure
    wetted: Figure
    heat: Figure
    energy: Figure

    def course_of(self, bottle: Bottle) -> dict[str, Figure]:
        """The inputs of a bottle's course that are its own."""
        return {
            "diameter": bottle.diameter, "contents": bottle.contents, "shell": bottle.shell,
            "shell_specific_heat": bottle.shell_specific_heat, "wetted": self.wetted, "coldest": self.coldest,
        }  # fmt: skip


def bottles_connected(build: Build, things: Things, constants: Constants, sheet: Worksheet) -> Bottles:
    """Write what is known of the bottles; raises MissingInput where one lacks something, or there is none."""
    if not things.bottles:
        raise MissingInput("gas.bottles", "no bottle is aboard")
    atmosphere = sheet.work(
        "atmosphere",
        "pressure of the air outside",
        pressure_at,
        altitude=sheet.given(build.pitch["altitude"]),
    )
    least = sheet.work(
        "least_pressure", "least absolute pressure in a bottle", eq.absolute_pressure,
        gauge=sheet.given(build.gas.regulator["inlet_least"]), atmosphere=atmosphere,
    )  # fmt: skip
    coldest = sheet.work(
        "coldest", "coldest the liquid may get: below it the regulator starves", eq.saturation_temperature,
        pressure=least,
    )  # fmt: skip
    latent = sheet.work(
        "latent", "heat that evaporates the liquid at its coldest", eq.latent_heat, shown="BTU/lb|kJ/kg",
        temperature=coldest,
    )  # fmt: skip
    density = sheet.work(
        "density", "density of the liquid at its coldest", eq.liquid_density, temperature=coldest
    )
    each = tuple(_bottle(one, density, constants, sheet) for one in things.bottles.values())
    heat = constants["heat_by_mass"]
    rows = {one.thing.name: {"mass": one.contents, "heat": heat} for one in each}
    energy = sheet.schedule("energy", "gas in the bottles connected", eq.energy_of, rows, shown="BTU|MJ")
    changeover = "all open" if len(each) == 1 else build.gas.changeover
    wetted, film = constants["wetted"], _film(build, sheet)
    return Bottles(changeover, each, atmosphere, coldest, latent, film, wetted, heat, energy)


def _bottle(thing: Thing, density: Figure, constants: Constants, sheet: Worksheet) -> Bottle:
    key, name = thing.key, thing.name
    filled = sheet.work(
        f"contents_{key}", f"{name}: gas in it when the day begins", eq.part_filled,
        charge=sheet.given(thing.item["charge"]), filled=sheet.given(thing.gas["filled"]),
    )  # fmt: skip
    diameter = sheet.given(thing.item["width"])
    volume = sheet.work(
        f"volume_{key}", f"{name}: liquid in it", eq.liquid_volume, mass=filled, density=density
    )
    area = sheet.work(
        f"area_{key}", f"{name}: wall that the liquid wets", eq.wetted_area, volume=volume, diameter=diameter
    )
    shell_heat = constants[f"{thing.gas.shell}_heat"]
    return Bottle(thing, diameter, filled, sheet.given(thing.item["mass"]), shell_heat, area)


def _film(build: Build, sheet: Worksheet) -> Figure:
    """The heat that the air brings: as given, or by whether the bottles stand in the open or in a cabinet."""
    if build.gas.film is not None:
        return sheet.given(build.gas["film"])
    stands = "open" if build.gas.cabinet is None else "compartment"
    row = data.table("gas/film").row(stands)
    name = f"heat that the air brings to a bottle, {'in the open' if stands == 'open' else 'in its cabinet'}"
    return sheet.tabled(
        "film_usual",
        name,
        read(row["film"], "heat_transfer"),
        "W/m**2/K",
        source="trade-practice",
        row=row["says"],
    )


def by_the_table(bottles: Bottles, ambient: Figure, constants: Constants, sheet: Worksheet) -> None:
    """Write what the published table of 100 lb bottles would have: an upper limit that leaves no pressure."""
    draw = sheet.work(
        "table_draw", "a full 100 lb bottle by the published table, whose liquid may lose all pressure",
        eq.table_draw, shown=HEAT, empty=constants["table_empty"], each=constants["table_each"],
        step=constants["table_step"], mass=constants["table_full"], ambient=ambient,
        coldest=constants["table_coldest"],
    )  # fmt: skip
    density = sheet.work(
        "table_density",
        "density of its liquid then",
        eq.liquid_density,
        temperature=constants["table_coldest"],
    )
    volume = sheet.work(
        "table_volume", "its liquid", eq.liquid_volume, mass=constants["table_full"], density=density
    )
    area = sheet.work(
        "table_area", "its wetted wall", eq.wetted_area, volume=volume, diameter=constants["table_diameter"]
    )
    each = {
        one.thing.name: sheet.work(
            f"table_{one.thing.key}",
            f"{one.thing.name}: by the published table",
            eq.scaled_by_wall,
            shown=HEAT,
            draw=draw,
            area=one.area,
            of_area=area,
        )  # fmt: skip
        for one in bottles.each
    }
    sheet.total(
        "table", "all bottles by the published table: an upper limit that no regulator works at",
        list(each.values()), shown=HEAT,
    )  # fmt: skip
