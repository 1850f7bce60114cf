"""Duct, filters and fan: what the air loses on its way, and what the fan moves against that."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from curbwright import data
from curbwright.build import catalogue
from curbwright.build.cart import Build
from curbwright.build.exhaust import Duct, Exhaust
from curbwright.equations import exhaust as eq
from curbwright.errors import MissingInput, UnknownName
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.exhaust.things import AIR, SPEED, WATER, Constants, read


@dataclass(frozen=True)
class Row:
    """One row of a fan's curve."""

    flow: Figure
    pressure: Figure
    power: Figure


@dataclass(frozen=True)
class Bore:
    """The inside of the duct."""

    area: Figure
    diameter: Figure


def bore(duct: Duct, sheet: Worksheet) -> Bore:
    """Write the area of the duct and the diameter that stands for it; raises MissingInput."""
    if duct.diameter is not None or duct.width is None or duct.height is None:
        across = sheet.given(duct["diameter"])
        return Bore(sheet.work("area", "area of the duct", eq.round_area, diameter=across), across)
    wide, high = sheet.given(duct["width"]), sheet.given(duct["height"])
    across = sheet.work(
        "diameter", "diameter that stands for the duct", eq.hydraulic_diameter, long=wide, wide=high
    )
    return Bore(sheet.work("area", "area of the duct", eq.face, long=wide, wide=high), across)


def losses(
    exhaust: Exhaust, design: Figure, inlets: Figure | None, constants: Constants, top: Worksheet
) -> Figure:
    """Write what the air loses at the code's rate, part by part; return the sum; raises MissingInput."""
    sheet = top.section("losses", "pressure lost at the code's rate")
    parts = [
        _filters(exhaust, design, constants, sheet), _duct(exhaust.duct, design, constants, sheet)
    ]  # fmt: skip
    if inlets is not None and float(inlets) > 0:
        speed = sheet.work(
            "inlet_speed", "speed in the openings it comes in by", eq.speed_through, shown=SPEED, flow=design,
            area=inlets,
        )  # fmt: skip
        parts.append(
            sheet.work(
                "inlet", "lost in the openings it comes in by", eq.opening_loss, shown=WATER,
                density=constants["density"], discharge=constants["discharge"], speed=speed,
            )
        )  # fmt: skip
    else:
        sheet.note("No opening for air is given that stays open: what it costs the fan is left out.")
    return sheet.total("all", "lost in all, clean", parts, shown=WATER)


def _filters(exhaust: Exhaust, design: Figure, constants: Constants, sheet: Worksheet) -> Figure:
    if not exhaust.filters:
        raise MissingInput("exhaust.filters", "how many filters the hood has is not given")
    if exhaust.filter is None:
        raise MissingInput("exhaust.filter", "the size of the filters is not given")
    row = data.table("exhaust/filters").row(exhaust.filter)
    each = sheet.tabled(
        "filter_face", f"face of a {exhaust.filter} filter", read(row["factor"], "area"), "m**2",
        source=row["source"], row=row["factor"], shown="ft2|m2",
    )  # fmt: skip
    faces = sheet.work(
        "filter_faces", "face of all filters", eq.free_area, shown="ft2|m2", area=each,
        share=sheet.given(exhaust["filters"]),
    )  # fmt: skip
    speed = sheet.work(
        "filter_speed", "speed at the filters, code's rate", eq.speed_through, shown=SPEED, flow=design,
        area=faces,
    )  # fmt: skip
    return sheet.work(
        "filters", "lost in the filters", eq.loss_at, shown=WATER, drop=sheet.given(exhaust["filter_drop"]),
        speed=speed, known_speed=constants["filter_speed"],
    )  # fmt: skip


def _duct(duct: Duct, design: Figure, constants: Constants, sheet: Worksheet) -> Figure:
    inside = bore(duct, sheet)
    speed = sheet.work(
        "duct_speed", "speed in the duct, code's rate", eq.speed_through, shown=SPEED, flow=design,
        area=inside.area,
    )  # fmt: skip
    reynolds = sheet.work(
        "reynolds", "Reynolds number", eq.reynolds_number, speed=speed, diameter=inside.diameter,
        viscosity=constants["viscosity"],
    )  # fmt: skip
    friction = sheet.work(
        "friction", "friction factor", eq.friction_factor, reynolds=reynolds,
        roughness=sheet.given(duct["roughness"]), diameter=inside.diameter,
    )  # fmt: skip
    heads = [constants["entry"]]
    if duct.bends:
        heads.append(
            sheet.work(
                "bends", f"its {duct.bend} bends, in velocity heads", eq.heads_of,
                count=sheet.given(duct["bends"]), each=constants[duct.bend],
            )
        )  # fmt: skip
    if duct.rain_cap:
        heads.append(constants["rain cap"])
    heads.append(sheet.tabled("outlet", "velocity head lost at the outlet", 1.0, "1", source="duct-friction"))
    return sheet.work(
        "duct", "lost in the duct", eq.duct_loss, shown=WATER,
        velocity_pressure=sheet.work(
            "velocity_pressure", "velocity pressure in the duct", eq.velocity_pressure, shown=WATER,
            density=constants["density"], speed=speed,
        ),
        friction=friction, length=sheet.given(duct["length"]), diameter=inside.diameter,
        fittings=sheet.total("fittings", "fittings, in velocity heads", heads),
    )  # fmt: skip


def fan(build: Build, exhaust: Exhaust, design: Figure, loss: Figure, top: Worksheet) -> Figure:
    """Write where the fan works on its curve, and what it draws there; raises MissingInput."""
    sheet = top.section("fan", "the fan on its curve")
    rows = sorted(_rows(build, exhaust, sheet), key=lambda row: float(row.flow))
    margin = sheet.given(exhaust["grease_margin"])
    system = {"loss": loss, "design": design, "margin": margin}
    need = sheet.work(
        "needed", "pressure to overcome at the code's rate, greasy", eq.system_pressure, shown=WATER,
        flow=design, **system,
    )  # fmt: skip
    sheet.largest("pressure_needed", "the fan must give at that rate", {"greasy": need}, shown=WATER)
    left = [float(one.pressure) - float(eq.system_pressure(flow=one.flow, **system)) for one in rows]
    path = "exhaust.curve" if exhaust.curve is not None else "exhaust.fan"
    able = f"{float(rows[0].pressure):.0f} Pa at the least flow"
    sheet.choice("able", "the fan drives air through it at all (1 yes, 0 no)", float(left[0] > 0), path, able)
    if left[0] <= 0:
        says = "the fan cannot keep even the least flow of its curve against this hood and duct"
        raise MissingInput("exhaust.curve", says)
    if left[-1] > 0:
        says = "the fan moves more than the last row of its curve: rows down to no pressure are not given"
        raise MissingInput("exhaust.curve", says)
    between = _where_it_works(rows, system)
    flow = top.solve(
        "fan_rate", "air the fan moves", eq.fan_surplus, for_="flow",
        between=(float(between["low_flow"]), float(between["high_flow"])), shown=AIR, **between, **system,
    )  # fmt: skip
    low, high = (next(row for row in rows if row.flow is between[end]) for end in ("low_flow", "high_flow"))
    top.work(
        "fan_power", "electricity the fan draws", eq.power_between, shown="W", flow=flow, low_flow=low.flow,
        high_flow=high.flow, low_power=low.power, high_power=high.power,
    )  # fmt: skip
    return flow


def _where_it_works(rows: list[Row], system: dict[str, Figure]) -> dict[str, Figure]:
    """The two rows between which the fan first has nothing left; raises MissingInput."""
    for low, high in pairwise(rows):
        ends = {
            "low_flow": low.flow, "high_flow": high.flow, "low_pressure": low.pressure,
            "high_pressure": high.pressure,
        }  # fmt: skip
        left = [float(eq.fan_surplus(flow=row.flow, **ends, **system)) for row in (low, high)]
        if left[0] >= 0 >= left[1]:
            return ends
    raise MissingInput("exhaust.curve", "where the fan works lies between no two rows of its curve")


def _rows(build: Build, exhaust: Exhaust, sheet: Worksheet) -> list[Row]:
    """The rows of the curve: as typed, else of the catalogue item that the fan is like."""
    if exhaust.curve is not None:
        names = ("flow", "pressure", "power")
        rows = [
            Row(*(sheet.given(exhaust.cell("curve", n, c, f"fan curve, row {n + 1}: {names[c]}"))
                  for c in range(3)))
            for n in range(len(exhaust.curve))
        ]  # fmt: skip
    else:
        rows = _catalogue_rows(build, exhaust, sheet)
    if len({float(row.flow) for row in rows}) < max(2, len(rows)):
        raise MissingInput("exhaust.curve", "the fan's curve needs two rows or more, each at another flow")
    return rows


def _catalogue_rows(build: Build, exhaust: Exhaust, sheet: Worksheet) -> list[Row]:
    if exhaust.fan is None:
        raise MissingInput("exhaust.fan", "neither the fan nor the rows of its curve are given")
    like = build.items[exhaust.fan].like
    try:
        curve = catalogue.find(like or "").tables["fan"]
    except (UnknownName, KeyError):
        raise MissingInput(
            "exhaust.curve", "the rows of the fan's curve are not given, and no catalogue item has them"
        ) from None
    units = (("air_flow", "flow", "m**3/s", AIR), ("static_pressure", "pressure", "Pa", WATER),
             ("input", "power", "W", "W"))  # fmt: skip
    columns = [curve.column(name) for name, *_ in units]
    return [
        Row(
            *(
                sheet.tabled(
                    f"{word}_{n + 1}", f"fan curve, row {n + 1}: {word}", columns[c][n], unit,
                    source=curve.source, row=f"{like}, row {n + 1}", shown=shown,
                )
                for c, (_, word, unit, shown) in enumerate(units)
            )
        )
        for n in range(len(curve.rows))
    ]  # fmt: skip


def at_the_fan(build: Build, exhaust: Exhaust, flow: Figure, top: Worksheet) -> None:
    """Write speeds in duct and filters at what the fan moves, and what the wiring planned for it."""
    sheet = top.section("moving", "with the fan running")
    figures = top.figures()
    area = figures["exhaust.losses.area"]
    sheet.work("duct_speed", "speed in the duct", eq.speed_through, shown=SPEED, flow=flow, area=area)
    sheet.work(
        "filter_speed", "speed at the filters", eq.speed_through, shown=SPEED, flow=flow,
        area=figures["exhaust.losses.filter_faces"],
    )  # fmt: skip
    least = sheet.tabled(
        "least_speed", "least speed in a grease duct", read("500 fpm", "speed"), "m/s",
        source="everett-hood-sheet", row="506.3.4", shown=SPEED,
    )  # fmt: skip
    sheet.work(
        "largest_duct", "largest round duct that keeps that speed", eq.largest_round_duct, flow=flow,
        speed=least,
    )  # fmt: skip
    wired = None if exhaust.fan is None else build.items[exhaust.fan].electric
    if wired is not None and wired.power is not None:
        typed = {"typed": sheet.given(wired["power"])}
        sheet.largest("power_wired", "the fan's power, as its wiring has it", typed, shown="W")
