"""Each appliance: the pressure that reaches it, the gas it is made for, its height above the sea."""

from __future__ import annotations

from curbwright import data
from curbwright.build.cart import Build
from curbwright.equations import gas as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Gap, Worksheet
from curbwright.sheets.gas.pipe import WATER, Pipe
from curbwright.sheets.gas.things import HEAT, Constants, Thing, Things, read


def appliances(build: Build, things: Things, piped: Pipe, constants: Constants, top: Worksheet) -> None:
    """Write everything that is asked of each appliance; what is missing of one leaves the others be."""
    at, pressures = (
        top.section("at", "at each appliance"),
        top.section("pressure", "pressure at each appliance"),
    )
    drops: dict[str, Figure] = {}
    for key, thing in things.burning.items():
        sheet = at.section(key, thing.name)
        with sheet.attempt():
            drops[thing.name] = _pressure(build, thing, piped, sheet)
            reached = sheet.figures()[f"{sheet.id}.pressure"]
            pressures.smallest(key, f"pressure at {thing.name}, all burning", {"there": reached}, shown=WATER)
        with sheet.attempt():
            _fuel(thing, sheet)
        with sheet.attempt():
            _altitude(build, thing, constants, sheet)
    if drops:
        top.largest("worst_drop", "most pressure lost on the way to any appliance", drops, shown=WATER)


def _pressure(build: Build, thing: Thing, piped: Pipe, sheet: Worksheet) -> Figure:
    """The pressure that reaches an appliance while everything burns; returns what is lost on the way."""
    section = piped.tree.serving.get(thing.key)
    if section is None:
        raise MissingInput("gas.sections", f"no section of pipe serves the {thing.name}")
    way = piped.tree.way(section)
    if not set(way) <= set(piped.runs):
        gap = piped.gap or Gap("", f"items.{thing.key}.gas_input", "what burns there is not given")
        raise MissingInput(gap.path, gap.says)
    lost = sheet.total("drop", "pressure lost on the way", [piped.runs[key].drop for key in way], shown=WATER)
    line = sheet.given(build.gas.regulator["outlet"])
    pressure = sheet.work(
        "pressure",
        f"{thing.name}: pressure, everything burning",
        eq.left_of,
        shown=WATER,
        line=line,
        drop=lost,
    )
    least = sheet.given(thing.gas["least_pressure"])
    sheet.work(
        "pressure_spare", f"{thing.name}: pressure to spare", eq.pressure_spare, shown=WATER,
        pressure=pressure, least=least,
    )  # fmt: skip
    return lost


def _fuel(thing: Thing, sheet: Worksheet) -> None:
    """Whether its burners are made for propane: 1 or 0."""
    path = f"{thing.gas.path}.fuel"
    if thing.gas.fuel is None:
        raise MissingInput(path, f"{thing.name}: the gas its burners are made for is not given")
    propane = 1.0 if thing.gas.fuel == "propane" else 0.0
    name = f"{thing.name}: made or converted for propane (1 yes, 0 no)"
    sheet.choice("propane", name, propane, path, thing.gas.fuel)


def _altitude(build: Build, thing: Thing, constants: Constants, sheet: Worksheet) -> None:
    """How high its orifices are good to, what it may burn at the pitch, and the bore that gives that."""
    altitude, good_to = sheet.given(build.pitch["altitude"]), sheet.given(thing.gas["good_to"])
    sheet.work(
        "height_spare", f"{thing.name}: higher it could stand with its orifices", eq.height_left,
        good_to=good_to, altitude=altitude,
    )  # fmt: skip
    burned = sheet.given(thing.item["gas_input"])
    base = constants["altitude_base"]
    if float(altitude) > float(base):
        share, step = constants["altitude_share"], constants["altitude_step"]
        burned = sheet.work(
            "derated", f"{thing.name}: input at the pitch, counted from the sea", eq.derated_from_sea,
            shown=HEAT, input=burned, altitude=altitude, share=share, step=step,
        )  # fmt: skip
        sheet.work(
            "derated_above", f"{thing.name}: by the other reading, counted from 2,000 ft",
            eq.derated_from_base, shown=HEAT, input=sheet.given(thing.item["gas_input"]), altitude=altitude,
            base=base, share=share, step=step,
        )  # fmt: skip
    if thing.gas.burners is not None:
        _orifice(thing, burned, constants, sheet)


def _orifice(thing: Thing, burned: Figure, constants: Constants, sheet: Worksheet) -> None:
    """The bore of each burner's orifice on propane, and the next smaller drill."""
    each = sheet.work(
        "each_burner", f"{thing.name}: input of each burner", eq.each_burner, shown=HEAT, input=burned,
        burners=sheet.given(thing.gas["burners"]),
    )  # fmt: skip
    flow = sheet.work(
        "burner_flow", f"{thing.name}: gas of each burner", eq.flow_of, shown="cfh|m3/h", load=each,
        heat=constants["heat_by_volume"],
    )  # fmt: skip
    bore = sheet.work(
        "orifice", f"{thing.name}: bore of each orifice on propane", eq.orifice_bore, shown="in|mm",
        flow=flow, pressure=sheet.given(thing.gas["manifold"]), gravity=constants["gravity"],
        factor=constants["orifice_factor"],
    )  # fmt: skip
    drills = {row["drill"]: read(row["bore"], "length") for row in data.table("gas/drills")}
    fits = {number: size for number, size in drills.items() if size <= float(bore)}
    if fits:
        number = max(fits, key=lambda one: fits[one])
        name = f"{thing.name}: no. {number}, the next smaller drill"
        sheet.tabled("drill", name, fits[number], "m", source="recalled", row=f"no. {number}", shown="in|mm")
