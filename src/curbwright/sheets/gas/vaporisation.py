"""Whether the bottles evaporate gas as fast as it burns: cold, not empty, is how they fail.

Worked twice: for the coldest air the cart works in and for the warmest. The regulator's least pressure says
how cold the liquid may get; heat from the air must evaporate the rest.
"""

from __future__ import annotations

from dataclasses import dataclass

from curbwright import data
from curbwright.build.cart import Build
from curbwright.equations import gas as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.gas.bottles import Bottle, Bottles, by_the_table
from curbwright.sheets.gas.things import HEAT, Constants

MOST_HOURS = 6
"""How many hours of the course of the bottle in use are written down."""


@dataclass(frozen=True)
class _Air:
    """One air temperature."""

    says: str
    ambient: Figure
    bottles: Bottles
    sheet: Worksheet


@dataclass(frozen=True)
class _Draw:
    """What is drawn and with how much heat from the air; ``suffix`` tells its figures apart."""

    says: str
    suffix: str
    load: Figure
    draw: Figure
    film: Figure


def vaporisation(
    build: Build, bottles: Bottles, loads: dict[str, Figure], constants: Constants, top: Worksheet
) -> None:
    """Write, for cold and warm air, what the bottles give for ever and for how long they hold each load.

    ``loads`` are the connected load and, where it is known, the diversified one.
    """
    coldest = build.gas["ambient"] if build.gas.ambient is not None else build.pitch["low"]
    airs = {"cold": ("in the coldest air", coldest), "warm": ("in the warmest air", build.pitch["high"])}
    steady: dict[str, Figure] = {}
    times: dict[str, dict[str, Figure]] = {word: {} for word in loads}
    for id, (says, temperature) in airs.items():
        sheet = top.section(id, f"bottles {says}")
        air = _Air(says, sheet.given(temperature), bottles, sheet)
        steady[says] = _steady(air)
        for word, load in loads.items():
            times[word][says] = _held(air, _drawn(air, word, load))
        if id == "cold":
            _band(air, loads["connected"])
            _course(air)
            _account(air)
            by_the_table(bottles, air.ambient, constants, sheet)
    top.smallest("vaporisation", "burners that full bottles feed for ever", steady, shown=HEAT)
    for word, each in times.items():
        id = "starves_after" if word == "connected" else f"starves_after_{word}"
        top.smallest(id, f"bottles hold the {word} load for", each)


def _steady(air: _Air) -> Figure:
    """What full bottles feed for ever, their liquid at its coldest: all of them, or by hand the weakest."""
    sheet, bottles = air.sheet, air.bottles
    each: dict[str, Figure] = {}
    for one in bottles.each:
        key, name = one.thing.key, one.thing.name
        heat = sheet.work(
            f"heat_{key}", f"{name}: heat from the air, its liquid at its coldest", eq.heat_in, shown=HEAT,
            film=bottles.film, area=one.area, ambient=air.ambient, liquid=bottles.coldest,
        )  # fmt: skip
        draw = sheet.work(
            f"vapour_{key}", f"{name}: gas that heat evaporates", eq.steady_draw, shown="lb/h|kg/h",
            heat=heat, latent=bottles.latent,
        )  # fmt: skip
        each[name] = sheet.work(
            f"gives_{key}", f"{name}: burners it feeds for ever, full", eq.load_of, shown=HEAT, draw=draw,
            heat=bottles.heat,
        )  # fmt: skip
    name = f"burners that full bottles feed for ever {air.says}"
    if bottles.changeover == "by hand":
        return sheet.smallest("gives", f"{name}, one at a time", each)
    return sheet.total("gives", name, list(each.values()), shown=HEAT)


def _drawn(air: _Air, word: str, load: Figure) -> _Draw:
    draw = air.sheet.work(
        f"draw_{word}", f"gas drawn by the {word} load", eq.draw_of, shown="lb/h|kg/h", load=load,
        heat=air.bottles.heat,
    )  # fmt: skip
    return _Draw(f"the {word} load {air.says}", word, load, draw, air.bottles.film)


def _held(air: _Air, drawn: _Draw) -> Figure:
    """How long the bottles hold a load, and how much of their gas is left when they fail."""
    sheet, suffix = air.sheet, drawn.suffix
    time = _time(air, drawn)
    start = sheet.tabled(f"start_{suffix}", "start", 0.0, "s", source="convention")
    used = sheet.work(
        f"used_{suffix}", "gas burned by then", eq.energy_over, shown="BTU|MJ", load=drawn.load, start=start,
        end=time,
    )  # fmt: skip
    sheet.work(
        f"left_{suffix}", "share of the gas still in the bottles then", eq.share_left, shown="%",
        aboard=air.bottles.energy, used=used,
    )  # fmt: skip
    return time


def _time(air: _Air, drawn: _Draw) -> Figure:
    """How long the bottles hold a draw, by the way the next one is opened."""
    sheet, id, each = air.sheet, f"holds_{drawn.suffix}", air.bottles.each
    if air.bottles.changeover == "all open":
        return _together(air, drawn, id)
    first = _alone(air, each[0], drawn)
    if air.bottles.changeover == "by hand":
        alone = [first, *(_alone(air, one, drawn) for one in each[1:])]
        return sheet.total(id, f"bottles, one after the other by hand, hold {drawn.says} for", alone)
    second = each[1]
    pair = sheet.work(
        f"pair_{drawn.suffix}",
        f"{each[0].thing.name}, then {second.thing.name} beside it, hold {drawn.says} for",
        eq.time_with_reserve, shown=None, **_inputs(air, each[0], drawn), reserve_diameter=second.diameter,
        reserve_contents=second.contents, reserve_shell=second.shell,
    )  # fmt: skip
    rest = [_alone(air, one, drawn) for one in each[2:]]
    return sheet.total(id, f"bottles on an automatic change-over hold {drawn.says} for", [pair, *rest])


def _together(air: _Air, drawn: _Draw, id: str) -> Figure:
    """Bottles open together share the draw by the walls they wet; the first to starve counts."""
    sheet, each = air.sheet, air.bottles.each
    areas = sheet.total(f"areas_{drawn.suffix}", "wetted walls together", [one.area for one in each])
    times: dict[str, Figure] = {}
    for one in each:
        part = sheet.work(
            f"part_{drawn.suffix}_{one.thing.key}", f"{one.thing.name}: its part of the draw",
            eq.part_of_draw, shown="lb/h|kg/h", draw=drawn.draw, area=one.area, all_areas=areas,
        )  # fmt: skip
        own = _Draw(drawn.says, drawn.suffix, drawn.load, part, drawn.film)
        times[one.thing.name] = _alone(air, one, own, "with its part")
    return sheet.smallest(id, f"bottles hold {drawn.says} for", times)


def _alone(air: _Air, bottle: Bottle, drawn: _Draw, how: str = "alone") -> Figure:
    id, name = f"alone_{drawn.suffix}_{bottle.thing.key}", bottle.thing.name
    says = f"{name} {how} holds {drawn.says} for"
    return air.sheet.work(id, says, eq.time_alone, shown=None, **_inputs(air, bottle, drawn))


def _inputs(air: _Air, bottle: Bottle, drawn: _Draw) -> dict[str, Figure]:
    own = air.bottles.course_of(bottle)
    return own | {"film": drawn.film, "ambient": air.ambient, "draw": drawn.draw}


def _band(air: _Air, load: Figure) -> None:
    """The same with less and with more heat from the air, which nobody knows well."""
    sheet, row = air.sheet, data.table("gas/film").row("open")
    draw = sheet.figures()[f"{sheet.id}.draw_connected"]
    for end, word in (("low", "least"), ("high", "most")):
        times = sheet.tabled(
            f"film_{end}", f"the {word} heat from the air, against the usual", float(row[end]), "1",
            source="trade-practice", row="frost, rain and wind",
        )  # fmt: skip
        film = sheet.work(
            f"film_at_{end}",
            f"the {word} heat from the air",
            eq.film_times,
            film=air.bottles.film,
            times=times,
        )
        _time(
            air, _Draw(f"the connected load {air.says}, with the {word} heat from it,", end, load, draw, film)
        )


def _draw_of_the_first(air: _Air) -> Figure:
    """What the bottle in use gives of the connected load: all of it, or its part where all are open."""
    known, id = air.sheet.figures(), air.sheet.id
    part = known.get(f"{id}.part_connected_{air.bottles.each[0].thing.key}")
    return part if part is not None else known[f"{id}.draw_connected"]


def _course(air: _Air) -> None:
    """How the bottle in use cools, hour by hour until it fails."""
    sheet, bottle = air.sheet, air.bottles.each[0]
    name, draw = bottle.thing.name, _draw_of_the_first(air)
    alone = sheet.figures()[f"{sheet.id}.alone_connected_{bottle.thing.key}"]
    drawn = _Draw("", "", draw, draw, air.bottles.film)
    for hour in range(1, MOST_HOURS + 1):
        if hour * 3600 >= float(alone):
            break
        below = sheet.section(f"hour_{hour}", f"{name} after {hour} h of the connected load")
        after = f"{name} after {hour} h"
        time = below.tabled("time", "time", hour * 3600.0, "s", source="convention", shown="h")
        liquid = below.work(
            "liquid",
            f"{after}: its liquid",
            eq.temperature_after,
            shown=None,
            **_inputs(air, bottle, drawn),
            time=time,
        )
        absolute = below.work(
            "absolute", f"{after}: absolute pressure", eq.saturation_pressure, temperature=liquid
        )
        below.work(
            "pressure", f"{after}: pressure on a gauge", eq.gauge_pressure, absolute=absolute,
            atmosphere=air.bottles.atmosphere,
        )  # fmt: skip
        below.work(
            "left", f"{after}: gas left in it", eq.left_after, contents=bottle.contents, draw=draw, time=time
        )


def _account(air: _Air) -> None:
    """Why it cools: what evaporating takes, what the air brings at most, what the bottle has stored."""
    below, bottle = air.sheet.section("account", "where the heat comes from"), air.bottles.each[0]
    name, draw = bottle.thing.name, _draw_of_the_first(air)
    takes = below.work(
        "takes", f"{name}: heat that evaporating its draw takes", eq.evaporation_heat, shown=HEAT, draw=draw,
        latent=air.bottles.latent,
    )  # fmt: skip
    brings = air.sheet.figures()[f"{air.sheet.id}.heat_{bottle.thing.key}"]
    below.largest(
        "brings", f"{name}: heat that the air brings at most", {"at its coldest": brings}, shown=HEAT
    )
    capacity = below.work(
        "capacity", f"{name}: heat it gives up for a degree, full", eq.heat_capacity, mass=bottle.contents,
        specific_heat=below.work(
            "specific_heat", "specific heat of the liquid, as warm as the air", eq.liquid_specific_heat,
            temperature=air.ambient,
        ),
        shell=bottle.shell, shell_specific_heat=bottle.shell_specific_heat, wetted=air.bottles.wetted,
    )  # fmt: skip
    stored = below.work(
        "stored", f"{name}: heat it gives up from the air's temperature to its coldest", eq.stored_heat,
        shown="BTU|kJ", capacity=capacity, ambient=air.ambient, liquid=air.bottles.coldest,
    )  # fmt: skip
    below.work("stored_lasts", f"{name}: stored heat alone would do for", eq.lasts, energy=stored, load=takes)
