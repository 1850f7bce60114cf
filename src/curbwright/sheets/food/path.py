"""The steps of one thing sold against the limits of the rules, and how many its cooking kills."""

from __future__ import annotations

from collections.abc import Mapping

from curbwright import data, units
from curbwright.build.food import MenuItem, Step
from curbwright.equations import food as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.food.limits import Limits

Row = Mapping[str, str]
KILL = {
    "temperature": ("temperature of the published kill", "temperature"),
    "dwell": ("its time", "time"),
    "logs": ("powers of ten it kills", "number"),
    "slope": ("degrees that make it ten times as fast", "temperature_difference"),
}
"""Columns of data/food/kill.csv: their names and kinds."""


def doing(sold: MenuItem, *does: str) -> dict[str, Step]:
    """Return the steps of something sold that do one of these, by name."""
    return {key: step for key, step in sold.steps.items() if step.does in does}


def received(sold: MenuItem, limits: Limits, sheet: Worksheet) -> None:
    """Write the warmest it is received at, and its limit."""
    steps = doing(sold, "receive")
    sheet.largest("warmest", "warmest it is received at", _temperatures(steps, sheet))
    sheet.largest("limit", "received at most at", {"rule": limits["received cold"]})


def kept_cold(sold: MenuItem, limits: Limits, sheet: Worksheet) -> None:
    """Write the warmest it is kept cold at, and the limit of the place."""
    sheet.largest("warmest", "warmest it is kept cold at", _temperatures(doing(sold, "cold hold"), sheet))
    sheet.largest("limit", "kept cold at most at", {"place": limits.cold})


def kept_hot(sold: MenuItem, limits: Limits, sheet: Worksheet) -> None:
    """Write the coldest it is kept hot at, and the limit of the place."""
    sheet.smallest("coldest", "coldest it is kept hot at", _temperatures(doing(sold, "hot hold"), sheet))
    sheet.smallest("limit", "kept hot at least at", {"place": limits.hot})


def _temperatures(steps: Mapping[str, Step], sheet: Worksheet) -> dict[str, Figure]:
    return {key: sheet.given(step["temperature"]) for key, step in steps.items()}


def cooked(sold: MenuItem, limits: Limits, sheet: Worksheet) -> None:
    """Write what it is cooked to and for how long, beside the rule's row."""
    reached, dwell = sheet.given(sold["cook_to"]), sheet.given(sold["dwell"])
    if sold.sort is None:
        raise MissingInput(f"{sold.path}.sort", f"{sold.path}: what it is to the cooking rules is not given")
    row = _row(sold.sort, float(reached))
    place = {"source": row["source"], "row": row["clause"]}
    sheet.largest("temperature", "its middle is cooked to", {"by a probe": reached})
    sheet.largest("dwell", "and kept there for", {"at least": dwell})
    sheet.tabled(
        "limit", f"least for {row['says']}", float(units.read(row["temperature"], "temperature")), "K",
        **place,
    )  # fmt: skip
    sheet.tabled("dwell_limit", "kept there at least", float(units.read(row["dwell"], "time")), "s", **place)


def _row(sort: str, reached: float) -> Row:
    """The rule's row for a food: of several, the hottest that it reaches, else the coolest."""
    rows = sorted(
        (row for row in data.table("food/cooking") if row["sort"] == sort),
        key=lambda row: float(units.read(row["temperature"], "temperature")),
    )
    held = [
        row for row in rows if float(units.read(row["temperature"], "temperature")) <= reached * (1 + 1e-12)
    ]
    return held[-1] if held else rows[0]


def killed(sold: MenuItem, sheet: Worksheet) -> None:
    """Write the powers of ten of salmonella killed while it is kept hot; heating up is not counted."""
    table, sort = data.table("food/kill"), sold.sort or ""
    if sort not in table.keys():  # noqa: SIM118 - a table's first column, not a mapping
        sheet.note("How many organisms its cooking kills is worked out for meat and poultry only.")
        return
    reached, dwell = sheet.given(sold["cook_to"]), sheet.given(sold["dwell"])
    row = table.row(sort)
    known = {
        column: sheet.tabled(
            f"kill_{column}", name, float(table.quantity(sort, column, kind)), units.KINDS[kind].unit,
            source=row["source"], row=sort,
        )
        for column, (name, kind) in KILL.items()
    }  # fmt: skip
    same = sheet.work(
        "kill_time", "time at its temperature for the published kill", eq.dwell_at,
        reference_time=known["dwell"], reference=known["temperature"], temperature=reached,
        slope=known["slope"],
    )  # fmt: skip
    tenth = sheet.work(
        "decimal_time", "time that leaves one in ten", eq.decimal_time, dwell=same, kill=known["logs"]
    )
    sheet.work(
        "lethality", "powers of ten of salmonella killed, heating up not counted", eq.kill, dwell=dwell,
        decimal_time=tenth,
    )  # fmt: skip
    sheet.note("The kill explains and never decides: the rule's temperature and time do, read with a probe.")


def reheating(sold: MenuItem, limits: Limits, sheet: Worksheet) -> None:
    """Write every reheating: the temperature against its limit, and the longest time."""
    steps = doing(sold, "reheat")
    packed = all(step.packaged for step in steps.values())
    sheet.smallest("coldest", "coldest it is reheated to", _temperatures(steps, sheet))
    asked = limits["reheating packaged" if packed else "reheating"]
    sheet.largest("limit", "reheated at least to", {"packed" if packed else "made here": asked})
    times = {key: sheet.given(step["time"]) for key, step in steps.items()}
    sheet.largest("time", "longest reheating", times)
    sheet.largest("time_limit", "reheated within", {"rule": limits["reheating time"]})


def cooling(sold: MenuItem, limits: Limits, sheet: Worksheet) -> None:
    """Write every cooling: its first stage, the whole, and what may grow on the way."""
    steps = doing(sold, "cool")
    sheet.note("Ask first: many places allow no cooling of cooked food on a cart.")
    first = {key: sheet.given(step["first"]) for key, step in steps.items()}
    whole = {key: sheet.given(step["time"]) for key, step in steps.items()}
    sheet.largest("first", "cooled from 135 to 70 °F in", first)
    sheet.largest("whole", "cooled from 135 to 41 °F in", whole)
    sheet.largest("first_limit", "first stage within", {"rule": limits["cooling first time"]})
    sheet.largest("whole_limit", "all of it within", {"rule": limits["cooling time"]})
    worst = max(whole, key=lambda key: float(whole[key]))
    legs = (
        ("first", "cooling from", "cooling first to", first[worst]),
        ("then", "cooling first to", "cooling to",
         sheet.work("then", "second stage", eq.time_after, whole=whole[worst], first=first[worst])),
    )  # fmt: skip
    grown = [
        sheet.work(
            f"grown_{leg}", f"Clostridium perfringens grown, {leg}, with no lag", eq.growth_while_cooling,
            best_rate=limits.constant("perfringens_rate"), least=limits.constant("perfringens_least"),
            best=limits.constant("perfringens_best"), most=limits.constant("perfringens_most"),
            start=limits[start], end=limits[end], time=time,
        )
        for leg, start, end, time in legs
    ]  # fmt: skip
    sheet.total("grown_cooling", "powers of ten grown in cooling, at the very most", grown)


def out_of_control(sold: MenuItem, limits: Limits, sheet: Worksheet) -> None:
    """Write the time its food is neither cold nor hot while it is prepared and served."""
    cold, hot = float(limits.cold), float(limits.hot)
    warm: list[Figure] = []
    for step in doing(sold, "prep", "serve").values():
        temperature, time = sheet.given(step["temperature"]), sheet.given(step["time"])
        if cold * (1 + 1e-12) < float(temperature) < hot * (1 - 1e-12):
            warm.append(time)
    sheet.total("time", "time neither cold nor hot", warm, unit="s")
    sheet.largest("limit", "thrown away after", {"rule": limits["time as control"]})
    for key, step in doing(sold, "discard").items():
        if step.time is not None:
            sheet.largest("discarded", "thrown away at the latest", {key: sheet.given(step["time"])})
            break
