"""Heat in the cart with the fan running, and on the cook at the hot plate."""

from __future__ import annotations

from curbwright import data
from curbwright.build.cart import Build
from curbwright.build.exhaust import Exhaust
from curbwright.equations import cold
from curbwright.equations import exhaust as eq
from curbwright.equations import fit as where
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.exhaust.things import HEAT, Constants, Cooking, read
from curbwright.sheets.placing import Placing


def cabin(
    build: Build, exhaust: Exhaust, placing: Placing, things: list[Cooking], flow: Figure,
    constants: Constants, top: Worksheet,
) -> Figure:  # fmt: skip
    """Write the heat that stays in the cart and the temperature it comes to; raises MissingInput."""
    sheet = top.section("cabin", "heat in the cart on the hottest day")
    outside = sheet.given(build.pitch["high"])
    spill = sheet.work(
        "spill", "share of the plume that the hood misses", eq.missed, shown="%",
        caught=sheet.given(exhaust["capture"]),
    )  # fmt: skip
    rows = {
        one.name: {"load": one.load, "busy": one.busy, "plume": one.plume, "spill": spill,
                   "radiant": one.radiant}
        for one in things
    }  # fmt: skip
    heats = (
        [sheet.schedule("appliances", "left by appliances", eq.heat_left, rows, shown=HEAT)] if rows else []
    )
    crew = sheet.given(build.day["crew"])
    heats.append(
        sheet.work(
            "crew", "given off by the crew", eq.heat_of, shown=HEAT, count=crew, each=constants["person"]
        )
    )
    heats.append(sheet.given(exhaust["other_heat"]))
    heat = sheet.total("heat", "heat left in the cart", heats, shown=HEAT)
    walls, roof, rise = _shell(exhaust, placing, sheet)
    air = sheet.work(
        "air", "heat that the air drawn through carries off for a degree", eq.air_conductance, flow=flow,
        density=constants["density"], specific_heat=constants["specific_heat"],
    )  # fmt: skip
    return top.work(
        "cabin_temperature", "air in the cart on the hottest day, fan running", eq.cabin_temperature,
        outside=outside, heat=heat, air=air, walls=walls, roof=roof, roof_rise=rise,
    )  # fmt: skip


def _shell(exhaust: Exhaust, placing: Placing, sheet: Worksheet) -> tuple[Figure, Figure, Figure]:
    """Heat through walls and roof for a degree, what the sun adds to the roof; nothing of an open cart."""
    room = placing.room
    row = data.table("exhaust/roof").row(exhaust.roof)
    rise = sheet.tabled(
        "roof_rise", f"{exhaust.roof} roof in the sun over the air",
        read(row["rise"], "temperature_difference"), "delta_degC", source=row["source"], row=row["says"],
    )  # fmt: skip
    if room.height is None:
        none = sheet.tabled("walls", "an open cart has no walls", 0.0, "W/K", source="convention")
        return none, none, rise
    film = sheet.given(exhaust["wall_film"])
    long = sheet.work("length", "inside length", where.gap, near=room.front, far=room.rear)
    area = sheet.work(
        "wall_area", "walls", eq.wall_area, shown="ft2|m2", long=long, wide=room.width, height=room.height
    )
    roof = sheet.work("roof_area", "roof", eq.face, shown="ft2|m2", long=long, wide=room.width)
    return (
        sheet.work("walls", "heat through the walls for a degree", eq.conductance_of, area=area, film=film),
        sheet.work("roof", "heat through the roof for a degree", eq.conductance_of, area=roof, film=film),
        rise,
    )


def heat_stress(build: Build, exhaust: Exhaust, air: Figure, constants: Constants, top: Worksheet) -> None:
    """Write the wet-bulb globe temperature at the plate and a step back, and the limits."""
    sheet = top.section("cook", "heat on the cook")
    wet = _wet_bulb(build, air, sheet)
    natural = sheet.work(
        "natural",
        "natural wet bulb at the plate",
        eq.warmer,
        temperature=wet,
        rise=constants["wet_bulb_gain"],
    )
    near = _globe("near", "at the plate", air, constants["view"], constants, sheet)
    back = _globe("back", "a step back", air, constants["view_back"], constants, sheet)
    top.work("wbgt", "wet-bulb globe temperature at the plate", eq.wet_bulb_globe, natural_wet_bulb=natural,
             globe=near)  # fmt: skip
    top.work("wbgt_low", "the same a step back, by the wet bulb alone", eq.wet_bulb_globe,
             natural_wet_bulb=wet, globe=back)  # fmt: skip
    limit = sheet.work(
        "limit", "limit without breaks, used to heat", eq.limit_acclimatised, work=constants["work_rate"]
    )
    sheet.work(
        "limit_new", "limit without breaks, not used to heat", eq.limit_unacclimatised,
        work=constants["work_rate"],
    )  # fmt: skip
    sheet.work(
        "plan_needed", "a plan against heat is needed (1 yes, 0 no)", eq.is_over,
        temperature=top.figures()["exhaust.wbgt"], limit=limit,
    )  # fmt: skip
    sheet.note("Above the limit: breaks in the cool, water every quarter of an hour, a fan at the cook.")
    sheet.note(
        "Somebody new to the heat starts with a fifth of the day and takes a week or two to get used to it."
    )
    with sheet.attempt():
        sheet.given(exhaust["heat_plan"])


def _wet_bulb(build: Build, air: Figure, sheet: Worksheet) -> Figure:
    high = sheet.given(build.pitch["high"])
    saturation = sheet.work(
        "saturation", "vapour pressure of moist air outdoors", cold.saturation_pressure, temperature=high
    )
    vapour = sheet.work(
        "vapour", "vapour in the air", eq.vapour_pressure, shown="Pa", saturation=saturation,
        humidity=sheet.given(build.pitch["humidity"]),
    )  # fmt: skip
    pressure = sheet.work(
        "pressure", "pressure of the air", cold.pressure_at, altitude=sheet.given(build.pitch["altitude"])
    )
    return sheet.work(
        "wet_bulb", "wet bulb in the cart", eq.wet_bulb, air=air, vapour=vapour, pressure=pressure
    )


def _globe(id: str, place: str, air: Figure, view: Figure, constants: Constants, sheet: Worksheet) -> Figure:
    radiant = sheet.work(
        f"radiant_{id}", f"mean radiant temperature {place}", eq.mean_radiant, view=view,
        hot=constants["plate"], rest=air,
    )  # fmt: skip
    return sheet.work(
        f"globe_{id}", f"globe {place}", eq.globe_temperature, air=air, radiant=radiant,
        speed=constants["air_speed"], diameter=constants["globe"], emissivity=constants["emissivity"],
    )  # fmt: skip
