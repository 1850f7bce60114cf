"""The hood: where it hangs, the code's rate by two readings, and what physics says beside it."""

from __future__ import annotations

from collections.abc import Mapping

from curbwright import data
from curbwright.build import kinds
from curbwright.build.cart import Build
from curbwright.build.exhaust import Exhaust
from curbwright.equations import exhaust as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.exhaust.things import (
    AIR,
    HEAT,
    SPEED,
    Constants,
    Cooking,
    hood_key,
    read,
    standing,
    under_hood,
)
from curbwright.sheets.placing import Placed, Placing

RANK = ("light", "medium", "heavy", "extra-heavy")
GROUPS = ("low", "medium", "high", "solid")
FOOT = 0.3048


def hood_needed(build: Build, top: Worksheet) -> None:
    """Write whether grease over a flame inside a shell needs a hood, and how many hang; else nothing."""
    frying = [
        key for key, item in build.items.items()
        if kinds.find(item.kind).is_("grease") and kinds.find(item.kind).is_("flame")
        and (item.gas_input is not None or "gas" in item.connects)
    ]  # fmt: skip
    if not frying or build.shell is None:
        return
    hung = [key for key, item in build.items.items() if kinds.find(item.kind).is_("hood")]
    sheet = top.section("grease", "grease over flames")
    sheet.choice("hoods_needed", "hoods needed over what gives off grease", 1.0, f"items.{frying[0]}", "1")
    first = f"items.{hung[0]}" if hung else "items"
    sheet.choice("hoods", "hoods aboard", float(len(hung)), first, str(len(hung)))


def hangs(build: Build, exhaust: Exhaust, placing: Placing, constants: Constants, sheet: Worksheet) -> None:
    """Write how the hood hangs over the cooking surface, with the limits of its style."""
    style = _style(exhaust)
    canopy = data.table("exhaust/code_rates").row(style)["canopy"] == "yes"
    sort = "canopy" if canopy else "low"
    with sheet.attempt():
        hood = standing(hood_key(build, exhaust), placing)
        lowest = _lowest(build, exhaust, placing, sheet)
        lip = sheet.work(
            "lip", "hood's lower edge over the cooking surface", eq.height_between, lower=lowest,
            upper=hood.up.low,
        )  # fmt: skip
        sheet.largest("lip_limit", "highest it may be", {style: constants[f"lip_{sort}"]})
        sheet.largest("lip_over", "lower edge over the lowest cooking surface", {"as it hangs": lip})
    with sheet.attempt():
        sheet.largest("overhang_least", "least it reaches", {style: constants[f"overhang_{sort}"]})
        sheet.given(exhaust["overhang"])
    with sheet.attempt():
        sheet.given(exhaust["filter_above"])


def code_rate(build: Build, exhaust: Exhaust, placing: Placing, top: Worksheet) -> Figure:
    """Write the rate by length, by the older code, and the one that counts; raises MissingInput."""
    sheet = top.section("code", "the code's rate")
    style = _style(exhaust)
    duty, group = _duty(build, exhaust, sheet)
    row = data.table("exhaust/code_rates").row(style)
    hood = standing(hood_key(build, exhaust), placing)
    long, wide = sheet.given(hood.item["width"]), sheet.given(hood.item["depth"])
    allowed = bool(row[duty]) or exhaust.listed_rate is not None
    name = f"{style} hood allowed over {duty} duty unless listed (1 yes, 0 no)"
    sheet.choice("allowed", name, float(allowed), "exhaust.style", style)
    readings: dict[str, Figure] = {}
    if row[duty]:
        rate = sheet.tabled(
            "rate", f"{style} over {duty} duty, for a foot of hood", read(row[duty], "flow") / FOOT, "m**2/s",
            source=row["source"], row=f"{row[duty]} a foot", shown="cfm/ft|L/s/m",
        )  # fmt: skip
        readings["by its length"] = sheet.work(
            "by_length", "rate by the hood's length", eq.rate_by_length, shown=AIR, length=long, rate=rate
        )
        older = _older(long, wide, row, group, sheet)
        readings["by the older code"] = older
    if exhaust.listed_rate is not None:
        readings = {"its label": sheet.given(exhaust["listed_rate"])}
    if not readings:
        raise MissingInput("exhaust.style", f"the code gives no rate for {style} over {duty} duty")
    return top.largest("code_rate", "exhaust that the code asks for", readings, shown=AIR)


def _older(
    long: Figure, wide: Figure, row: Mapping[str, str], group: str, sheet: Worksheet,
) -> Figure:  # fmt: skip
    """The rate by the older code: by the area of a canopy and its open sides, else by length."""
    if row["canopy"] != "yes":
        each = sheet.tabled(
            "older_rate", "by the older code, for a foot of a hood that is no canopy",
            read("300 cfm", "flow") / FOOT, "m**2/s", source="kitchen-calculation-older-code",
            row="300 cfm a foot", shown="cfm/ft|L/s/m",
        )  # fmt: skip
        return sheet.work(
            "by_older", "rate by the older code", eq.rate_by_length, shown=AIR, length=long, rate=each
        )
    older = data.table("exhaust/older_rates").row(group)
    column = "four_sides" if row["exposed"] == "4" else "three_sides"
    speed = sheet.tabled(
        "older_speed", f"by the older code, {group} heat and {row['exposed']} open sides, for its area",
        read(older[column], "speed"), "m/s", source=older["source"], row=older["says"], shown=SPEED,
    )  # fmt: skip
    area = sheet.work("area", "area of the hood from above", eq.face, long=long, wide=wide)
    return sheet.work(
        "by_older", "rate by the older code", eq.flow_through, shown=AIR, area=area, speed=speed
    )


def _style(exhaust: Exhaust) -> str:
    if exhaust.style is None:
        raise MissingInput("exhaust.style", "how the hood hangs is not given")
    return exhaust.style


def _duty(build: Build, exhaust: Exhaust, sheet: Worksheet) -> tuple[str, str]:
    """The heaviest duty below the hood and the older code's group; the heaviest governs the whole hood."""
    table = data.table("exhaust/appliances")
    below = [build.items[key] for key in under_hood(build, exhaust)]
    rows = [table.row(str(one.kind)) for one in below if one.kind in table.keys()]  # noqa: SIM118
    if exhaust.duty is None and not rows:
        raise MissingInput("exhaust.duty", "nothing below the hood says how heavy its duty is")
    group = max((row["older"] for row in rows), key=GROUPS.index, default="medium")
    said = [exhaust.duty] if exhaust.duty is not None else []
    duty = max([*said, *(row["duty"] for row in rows)], key=RANK.index)
    sheet.note(f"The heaviest cooking below the hood is {duty}: it governs the whole of it.")
    return duty, "solid" if duty == "extra-heavy" else group


def _lowest(build: Build, exhaust: Exhaust, placing: Placing, sheet: Worksheet) -> Figure:
    """Top of the lowest appliance below the hood."""
    tops = {build.items[key].name: _top(standing(key, placing), sheet) for key in under_hood(build, exhaust)}
    if not tops:
        raise MissingInput("exhaust.appliances", "nothing is below the hood")
    return sheet.smallest("cooking_surface", "lowest cooking surface below the hood", tops)


def _top(placed: Placed, sheet: Worksheet) -> Figure:
    entry = placed.item["work_height"]
    return sheet.given(entry) if entry.value is not None else placed.up.high


def estimates(
    build: Build, exhaust: Exhaust, placing: Placing, things: list[Cooking], constants: Constants,
    top: Worksheet,
) -> None:  # fmt: skip
    """Write what rises by the plume, by plan areas, by air drawn in, and by heat: beside the code's rate."""
    sheet = top.section("physics", "what rises, by physics: to set beside the code's rate")
    named = under_hood(build, exhaust)
    below = [one for one in things if one.key in named]
    if not named:
        raise MissingInput("exhaust.appliances", "nothing is below the hood")
    for key in named:
        if key not in {one.key for one in below}:
            says = f"how much gas {build.items[key].name} burns is not given, and so not what rises from it"
            raise MissingInput(f"items.{key}.gas_input", says)
    hood = standing(hood_key(build, exhaust), placing)
    plumes: dict[str, dict[str, Figure]] = {}
    areas: dict[str, dict[str, Figure]] = {}
    for one in below:
        each = sheet.section(one.key, one.name)
        plumes[one.name], areas[one.name] = _risen(one, hood, placing, constants, each)
    still = sheet.schedule("plume_still", "plumes at the hood's lower edge, air still", eq.plume_flow, plumes,
                           shown=AIR)  # fmt: skip
    top.work("plume_rate", "plumes, with air moving about", eq.times, shown=AIR, flow=still,
             factor=constants["disturbance"])  # fmt: skip
    by_area = sheet.schedule("by_area", "sum of plan areas times coefficients", eq.flow_through, areas,
                             shown=AIR)  # fmt: skip
    top.work("area_rate", "by plan areas (thermal convection)", eq.times, shown=AIR, flow=by_area,
             factor=constants["canopy"])  # fmt: skip
    heat = sheet.total("heat", "heat that rises to the hood", [one["heat"] for one in plumes.values()],
                       shown=HEAT)  # fmt: skip
    top.work("heat_rate", "by heat: air that carries it off and stays cool enough", eq.flow_for_rise,
             shown=AIR, heat=heat, rise=constants["plume_rise"], density=constants["density"],
             specific_heat=constants["specific_heat"])  # fmt: skip
    lip = sheet.work("lip", "open height below the hood", eq.height_between,
                     lower=_lowest(build, exhaust, placing, sheet), upper=hood.up.low)  # fmt: skip
    top.work("capture_rate", "by air drawn in over the open sides", eq.capture_flow, shown=AIR,
             long=sheet.given(hood.item["width"]), wide=sheet.given(hood.item["depth"]), height=lip,
             speed=constants["capture"])  # fmt: skip


def _risen(
    one: Cooking, hood: Placed, placing: Placing, constants: Constants, sheet: Worksheet
) -> tuple[dict[str, Figure], dict[str, Figure]]:
    """The rows of one appliance in the sums of plumes and of areas."""
    placed = standing(one.key, placing)
    long, wide = sheet.given(placed.item["width"]), sheet.given(placed.item["depth"])
    row = data.table("exhaust/appliances").row(one.kind)
    speed = sheet.tabled(
        "speed", f"{one.name}: coefficient for its area", read(row["speed"], "speed"), "m/s",
        source=row["source"], row=row["says"], shown=SPEED,
    )  # fmt: skip
    plume = {
        "heat": sheet.work(
            "heat", f"{one.name}: heat that rises", eq.plume_heat, shown=HEAT, load=one.load, busy=one.busy,
            share=one.plume,
        ),
        "height": sheet.work(
            "height", f"{one.name}: height to the hood", eq.height_between, lower=_top(placed, sheet),
            upper=hood.up.low,
        ),
        "diameter": sheet.work(
            "diameter", f"{one.name}: width of its plume", eq.hydraulic_diameter, long=long, wide=wide
        ),
        "share": constants["free_share" if placed.item.side == "centre" else "wall_share"],
    }  # fmt: skip
    if float(plume["height"]) <= 0:
        raise MissingInput(f"items.{hood.key}.above", f"the hood hangs no higher than {one.name}")
    area = sheet.work("area", f"{one.name}: its area from above", eq.face, long=long, wide=wide)
    return plume, {"area": area, "speed": speed}
