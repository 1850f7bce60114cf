"""What burns: all burners on, hour by hour of the day, and what that comes to."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor

from curbwright.build.cart import Build
from curbwright.equations import gas as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.gas.bottles import Bottles
from curbwright.sheets.gas.things import HEAT, Thing, Things, usual
from curbwright.units import show

HOUR, DAY = 3600.0, 86400.0
EARLY = 4 * HOUR
"""Opening before this, things may be lit on the evening before: the day is then counted from there."""


@dataclass(frozen=True)
class Serving:
    """From when to when is served, on one running clock."""

    opens: Figure
    closes: Figure
    lasts: Figure


@dataclass(frozen=True)
class _Lit:
    """When one thing burns."""

    input: Figure
    busy: Figure
    lit: Figure
    hot: Figure
    out: Figure


def connected_load(things: Things, sheet: Worksheet) -> Figure:
    """Write the input of everything on gas, every burner on; raises MissingInput for one not given."""
    inputs = [sheet.given(one.item["gas_input"]) for one in things.burning.values()]
    return sheet.total("connected_load", "connected load, every burner on", inputs, unit="W", shown=HEAT)


def serving(build: Build, sheet: Worksheet) -> Serving:
    """Write from when to when is served and how long that is; raises MissingInput for a time not given."""
    opens, closes = sheet.given(build.day["opens"]), sheet.given(build.day["closes"])
    day = sheet.tabled("day", "a day", DAY, "s", source="convention")
    if float(closes) <= float(opens):
        closes = _later("closes_next", "serving ends, on the next day", closes, day, sheet)
    if float(opens) < EARLY:
        opens = _later("opens_next", "serving begins, counted from the evening before", opens, day, sheet)
        closes = _later("closes_later", "serving ends, counted from the evening before", closes, day, sheet)
    lasts = sheet.work("serving_time", "serving lasts", eq.hours_between, opens=opens, closes=closes)
    return Serving(opens, closes, lasts)


def _later(id: str, name: str, time: Figure, day: Figure, sheet: Worksheet) -> Figure:
    return sheet.work(id, name, eq.on_the_next_day, shown="clock", time=time, day=day)


def by_the_hour(things: Things, hours: Serving, sheet: Worksheet, top: Worksheet) -> tuple[Figure, Figure]:
    """Write what burns in every hour of the day; return the busiest hour's load and the day's energy."""
    burning = {
        one.name: _lit(one, hours, sheet.section(one.key, one.name)) for one in things.burning.values()
    }
    first = floor(min(float(one.lit) for one in burning.values()) / HOUR)
    last = ceil(max(float(one.out) for one in burning.values()) / HOUR)
    loads: dict[str, Figure] = {}
    energies: dict[str, dict[str, Figure]] = {}
    for number in range(first, max(last, first + 1)):
        start, end = (
            sheet.tabled(f"{word}_{number:02}", says, at * HOUR, "s", source="convention", shown="clock")
            for word, says, at in (("from", "hour from", number), ("to", "hour to", number + 1))
        )
        label = f"from {show(float(start), 's', shown='clock')}"
        rows = {
            name: {"input": one.input, "busy": one.busy, "lit": one.lit, "hot": one.hot, "out": one.out,
                   "start": start, "end": end}
            for name, one in burning.items()
        }  # fmt: skip
        load = sheet.schedule(f"load_{number:02}", f"burned {label}", eq.mean_input, rows, shown=HEAT)
        loads[label] = load
        energies[label] = {"load": load, "start": start, "end": end}
    busiest = top.largest("diversified_load", "diversified load: the busiest hour", loads, shown=HEAT)
    energy = top.schedule("energy_per_day", "gas burned in a day", eq.energy_over, energies, shown="BTU|MJ")
    return busiest, energy


def _lit(thing: Thing, hours: Serving, sheet: Worksheet) -> _Lit:
    """When one thing is lit, hot and put out: as given, or in time for serving."""
    heat_up = usual(thing, "heat_up", "time", sheet)
    busy = usual(thing, "busy", "share", sheet)
    lit = _time(thing, "lit_at", hours, sheet) or sheet.work(
        "lit", f"{thing.name}: lit", eq.lit_before, shown="clock", opens=hours.opens, heat_up=heat_up
    )
    hot = sheet.work("hot", f"{thing.name}: hot", eq.hot_from, shown="clock", lit=lit, heat_up=heat_up)
    out = _time(thing, "out_at", hours, sheet) or hours.closes
    return _Lit(sheet.given(thing.item["gas_input"]), busy, lit, hot, out)


def _time(thing: Thing, field: str, hours: Serving, sheet: Worksheet) -> Figure | None:
    """A time of day as given, on the clock that serving is counted on; None where it is left out."""
    entry = thing.gas[field]
    if entry.value is None:
        return None
    time = sheet.given(entry)
    if float(time) >= float(hours.opens) - DAY / 2 or float(hours.closes) <= DAY:
        return time
    day = sheet.tabled("day", "a day", DAY, "s", source="convention")
    return _later(f"{field}_later", f"{entry.name}, on the next day", time, day, sheet)


def gas_for_the_day(build: Build, bottles: Bottles, energy: Figure, sheet: Worksheet) -> None:
    """Write the gas to carry for the day with its reserve, in bottles, and what is left of what is aboard."""
    needed = sheet.work(
        "energy_with_reserve", "gas to carry for the day", eq.with_reserve, shown="BTU|MJ", energy=energy,
        reserve=sheet.given(build.gas["reserve"]),
    )  # fmt: skip
    aboard = sheet.total("energy_aboard", "gas in the bottles connected", [bottles.energy], shown="BTU|MJ")
    below = sheet.section("each_bottle", "gas in each bottle connected")
    each = {
        one.thing.name: below.work(
            one.thing.key,
            f"gas in {one.thing.name}",
            eq.energy_of,
            shown="BTU|MJ",
            mass=one.contents,
            heat=bottles.heat,
        )  # fmt: skip
        for one in bottles.each
    }
    smallest = below.smallest("smallest", "gas in the smallest of them", each)
    exact = below.work("exactly", "bottles the day takes", eq.in_bottles, energy=needed, each=smallest)
    sheet.work("bottles_needed", "bottles needed for the day", eq.whole_bottles, bottles=exact)
    sheet.work(
        "share_left", "share of the gas left after the day", eq.share_left, shown="%", aboard=aboard,
        used=energy,
    )  # fmt: skip
