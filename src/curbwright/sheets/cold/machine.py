"""The machine of a box: what it takes out and what it draws, running, at every hour of the day.

A maker's table wins over a rated capacity, and that over the watts on the plate.
"""

from __future__ import annotations

from dataclasses import dataclass

from curbwright.build.cold import ColdBox, CompressorPoint
from curbwright.equations import cold as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.cold.ambient import Day, Hour

THERMO_ELECTRIC = 0.4
"""Heat taken out for each unit of electricity by a thermo-electric box, recalled: 0.3 to 0.5."""


@dataclass(frozen=True)
class Running:
    """What a machine does at an hour, running."""

    capacity: Figure
    power: Figure


def machine(box: ColdBox, day: Day, sheet: Worksheet) -> dict[str, Running]:
    """Work out capacity and power for every hour, by the hour's key."""
    if box.cooling == "thermo-electric":
        return _thermo_electric(box, day, sheet)
    evaporating = sheet.work(
        "evaporating", "evaporating temperature", eq.evaporating_temperature,
        box=sheet.given(box["set_point"]), below=sheet.given(box["evaporator_below"]),
    )  # fmt: skip
    if box.points:
        return _by_table(box, evaporating, day, sheet)
    if box.capacity is None and box.running_power is None:
        raise MissingInput(f"{box.path}.running_power", f"{box['running_power'].name} is not given")
    sheet.note(
        "Capacity "
        + (
            "as rated, moved by a fit"
            if box.capacity is not None
            else "from the watts and a share of the ideal"
        )
        + ": a maker's table, row by row, would win over it."
    )
    return {hour.key: _by_share(box, hour, evaporating, sheet) for hour in day.hours}


def _thermo_electric(box: ColdBox, day: Day, sheet: Worksheet) -> dict[str, Running]:
    power = sheet.given(box["running_power"])
    performance = sheet.tabled(
        "performance", "performance of a thermo-electric box", THERMO_ELECTRIC, "1", source="recalled",
        row="0.3 to 0.5",
    )  # fmt: skip
    capacity = sheet.work(
        "capacity", "heat taken out, running", eq.capacity_from_power, power=power, performance=performance
    )
    return {hour.key: Running(capacity, power) for hour in day.hours}


def _condensing(box: ColdBox, hour: Hour, sheet: Worksheet) -> Figure:
    return sheet.work(
        f"condensing_{hour.key}", f"condensing temperature at {hour.name}", eq.condensing_temperature,
        air=hour.around(box.condenser), recirculated=sheet.given(box["condenser_rise"]),
        above=sheet.given(box["condenser_above"]),
    )  # fmt: skip


def _by_share(box: ColdBox, hour: Hour, evaporating: Figure, sheet: Worksheet) -> Running:
    """From the rated capacity, or from the watts on the plate; the other by a share of the ideal machine."""
    condensing = _condensing(box, hour, sheet)
    performance = sheet.work(
        f"performance_{hour.key}", f"performance at {hour.name}", eq.performance,
        share=sheet.given(box["carnot_share"]), evaporating=evaporating, condensing=condensing,
    )  # fmt: skip
    if box.capacity is None:
        power = sheet.given(box["running_power"])
        capacity = sheet.work(
            f"capacity_{hour.key}", f"heat taken out, running, at {hour.name}", eq.capacity_from_power,
            power=power, performance=performance,
        )  # fmt: skip
        return Running(capacity, power)
    capacity = sheet.work(
        f"capacity_{hour.key}", f"heat taken out, running, at {hour.name}", eq.rated_capacity_at,
        rated=sheet.given(box["capacity"]), rated_evaporating=sheet.given(box["rated_evaporating"]),
        rated_condensing=sheet.given(box["rated_condensing"]), evaporating=evaporating, condensing=condensing,
    )  # fmt: skip
    power = sheet.work(
        f"power_{hour.key}", f"electricity drawn, running, at {hour.name}", eq.power_from_capacity,
        capacity=capacity, performance=performance,
    )  # fmt: skip
    return Running(capacity, power)


def _by_table(box: ColdBox, evaporating: Figure, day: Day, sheet: Worksheet) -> dict[str, Running]:
    """From the maker's rows: first along the evaporating temperature, then along that of air or condenser."""
    sheet.note(
        "Between the maker's rows on straight lines, evaporating first. Milder than the mildest row is taken"
        " as that row; harsher than the harshest is not told."
    )
    across = "condensing" if all(row.condensing is not None for row in box.points.values()) else "ambient"
    lines: dict[float, dict[str, CompressorPoint]] = {}
    for name, row in box.points.items():
        at = sheet.given(row[across])
        lines.setdefault(float(at), {})[name] = row
    columns = {
        at: _along(number, rows, evaporating, across, sheet)
        for number, (at, rows) in enumerate(sorted(lines.items()), 1)
    }
    return {hour.key: _across(box, hour, across, columns, sheet) for hour in day.hours}


@dataclass(frozen=True)
class _Column:
    """The maker's rows at one condensing or air temperature, at our evaporating temperature."""

    at: Figure
    running: Running


def _along(
    number: int, rows: dict[str, CompressorPoint], evaporating: Figure, across: str, sheet: Worksheet
) -> _Column:
    first = next(iter(rows.values()))
    at = sheet.given(first[across])
    if len(rows) == 1 and first.evaporating is None:
        return _Column(at, Running(sheet.given(first["capacity"]), sheet.given(first["power"])))
    places = {name: sheet.given(row["evaporating"]) for name, row in rows.items()}
    low, high = _neighbours({name: float(one) for name, one in places.items()}, float(evaporating))
    if low is None:
        raise MissingInput(
            f"{first.path.rpartition('.')[0]}",
            f"the maker's table ends above {float(evaporating) - 273.15:.0f} °C evaporating",
        )
    if high is None or float(places[low]) == float(places[high]):
        return _Column(at, Running(sheet.given(rows[low]["capacity"]), sheet.given(rows[low]["power"])))
    found = {
        what: sheet.work(
            f"{what}_column_{number}", f"{what}, column {number}, at our evaporating temperature",
            eq.between, low=places[low], high=places[high], at=evaporating,
            from_low=sheet.given(rows[low][what]), from_high=sheet.given(rows[high][what]),
        )
        for what in ("capacity", "power")
    }  # fmt: skip
    return _Column(at, Running(found["capacity"], found["power"]))


def _across(
    box: ColdBox, hour: Hour, across: str, columns: dict[float, _Column], sheet: Worksheet
) -> Running:
    at = _condensing(box, hour, sheet) if across == "condensing" else _inlet(box, hour, sheet)
    names = {str(place): place for place in columns}
    low, high = _neighbours(names, float(at))
    if low is None:
        return columns[min(columns)].running
    if high is None:
        if float(at) > float(columns[max(columns)].at):
            raise MissingInput(
                f"{box.path}.points",
                f"the maker's table ends below the {float(at) - 273.15:.0f} °C {across} of {hour.name}",
            )
        return columns[max(columns)].running
    below, above = columns[names[low]], columns[names[high]]
    found = {
        what: sheet.work(
            f"{what}_{hour.key}", f"{name} at {hour.name}", eq.between, low=below.at, high=above.at, at=at,
            from_low=getattr(below.running, what), from_high=getattr(above.running, what),
        )
        for what, name in (
            ("capacity", "heat taken out, running,"), ("power", "electricity drawn, running,")
        )
    }  # fmt: skip
    return Running(found["capacity"], found["power"])


def _inlet(box: ColdBox, hour: Hour, sheet: Worksheet) -> Figure:
    return sheet.work(
        f"inlet_{hour.key}", f"air the condenser draws in at {hour.name}", eq.air_at_condenser,
        air=hour.around(box.condenser), recirculated=sheet.given(box["condenser_rise"]),
    )  # fmt: skip


def _neighbours(places: dict[str, float], at: float) -> tuple[str | None, str | None]:
    """The nearest place at or below, and the nearest above; None where there is none."""
    below = [name for name, place in places.items() if place <= at]
    above = [name for name, place in places.items() if place > at]
    return (
        max(below, key=lambda name: places[name], default=None),
        min(above, key=lambda name: places[name], default=None),
    )
