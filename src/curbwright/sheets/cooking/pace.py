"""Portions an hour of each appliance and of the cart, and what a portion burns."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from curbwright.build.cart import Build
from curbwright.build.food import MenuItem
from curbwright.equations import cooking as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.cooking.heat import plate_area
from curbwright.sheets.cooking.things import (
    ENERGY,
    Appliance,
    Constants,
    input_of,
    portion_heat,
    usual,
)

PACE = "/h"


@dataclass
class Day:
    """What is added up over the appliances: portions, the time each step takes for them, hands, fuel."""

    portions: list[Figure] = field(default_factory=list)
    steps: dict[str, Figure] = field(default_factory=dict)
    hands: dict[str, dict[str, Figure]] = field(default_factory=dict)
    fuel: dict[str, dict[str, Figure]] = field(default_factory=dict)


@dataclass
class _Rows:
    """The rows of one appliance's schedules, by what is sold."""

    room: dict[str, dict[str, Figure]] = field(default_factory=dict)
    flame: dict[str, dict[str, Figure]] = field(default_factory=dict)
    hands: dict[str, dict[str, Figure]] = field(default_factory=dict)
    fuel: dict[str, dict[str, Figure]] = field(default_factory=dict)
    loads: dict[str, Figure] = field(default_factory=dict)


def of_appliance(build: Build, one: Appliance, constants: Constants, sheet: Worksheet, day: Day) -> None:
    """Write the portions an hour of an appliance at the mix sold, and what a portion of each burns."""
    rows = _Rows()
    for key, sold in one.sold.items():
        name = key.replace("_", " ")
        _portion(build, one, sold, constants, (sheet, sheet.section(key, name)), rows)
    counts = [row["portions"] for row in rows.flame.values()]
    whole = sheet.total("portions", "portions of the day cooked on it", counts)
    spread: Callable[..., Any] = eq.plate_time if one.method == "plate" else eq.batch_time
    word, heat = (
        "plate" if one.method == "plate" else "room",
        "flame" if one.cooking.power is None else "power",
    )
    times = {
        word: sheet.schedule("room_time", f"time they take of its {word}", spread, rows.room),
        heat: sheet.schedule("heat_time", "time they take of its heat", eq.heat_time, rows.flame),
    }
    cases = {
        step: sheet.work(
            f"pace_{step}", f"portions an hour by its {step}", eq.pace, shown=PACE, portions=whole, time=time
        )
        for step, time in times.items()
    }  # fmt: skip
    sheet.smallest("portions_per_hour", f"{one.name}: portions an hour, all the mix", cases, shown=PACE)
    if rows.loads:
        sheet.smallest("after_load", f"{one.name}: plate after a full load, no burner helping", rows.loads)
    day.portions.append(whole)
    day.steps |= {f"{one.key.replace('_', ' ')}: {step}": time for step, time in times.items()}
    day.hands |= rows.hands
    day.fuel |= rows.fuel


def _portion(
    build: Build, one: Appliance, sold: MenuItem, constants: Constants, sheets: tuple[Worksheet, Worksheet],
    rows: _Rows,
) -> None:  # fmt: skip
    """Write what one thing sold takes of an appliance, and what a portion of it burns."""
    sheet, below = sheets
    name = below.title
    input, efficiency = input_of(one, sheet), usual(one, "efficiency", "efficiency", "share", sheet)
    portions, time = below.given(sold["portions"]), below.given(sold["cook_time"])
    turn, cooks = sheet.given(one.cooking["turn"]), sheet.given(build.day["cooks"])
    heat = portion_heat(sold, constants, below)
    rows.room[name] = {"portions": portions, "time": time, "turn": turn, **_room(one, sold, sheet, below)}
    rows.flame[name] = {"portions": portions, "heat": heat, "input": input, "efficiency": efficiency}
    rows.hands[name] = {"portions": portions, "each": below.given(sold["hands"]), "cooks": cooks}
    burned = below.work(
        "fuel", f"{name}: burned for a portion", eq.fuel_for, shown=ENERGY, heat=heat, efficiency=efficiency
    )
    if one.cooking.power is None:
        below.work(
            "gas", f"{name}: propane for a portion", eq.fuel_mass, fuel=burned,
            heat_content=constants["heat_by_mass"],
        )  # fmt: skip
    rows.fuel[name] = {"heat": burned, "portions": portions}
    with below.attempt():
        _middle(one, sold, constants, sheet, below)
    if one.method == "plate":
        _full_load(one, heat, rows.room[name], sheet, below, rows.loads)


def _room(one: Appliance, sold: MenuItem, sheet: Worksheet, below: Worksheet) -> dict[str, Figure]:
    """What a portion needs of the room: of a plate its area, else how many it holds at once."""
    if one.method != "plate":
        return {"at_once": sheet.given(one.cooking["holds"])}
    return {
        "each": below.given(sold["room"]),
        "area": plate_area(one, sheet),
        "usable": sheet.given(one.cooking["usable"]),
    }


def _full_load(
    one: Appliance, heat: Figure, room: dict[str, Figure], sheet: Worksheet, below: Worksheet,
    loads: dict[str, Figure],
) -> None:  # fmt: skip
    """Write how far a full load draws the plate down, and how soon the burners have put it back."""
    found = sheet.figures()
    capacity, spare = found.get(f"{sheet.id}.capacity"), found.get(f"{sheet.id}.heat_spare")
    if capacity is None or spare is None or float(spare) <= 0:
        return
    count = below.work(
        "at_once", "portions on the plate at once", eq.at_once, area=room["area"], usable=room["usable"],
        each=room["each"],
    )  # fmt: skip
    load = below.work(
        "load_heat", "heat a full load takes", eq.load_heat, shown=ENERGY, heat=heat, portions=count
    )
    drop = below.work(
        "drop", "the plate falls, no burner helping", eq.load_drop, heat=load, capacity=capacity
    )
    loads[below.title] = below.work(
        "after_load", "plate after a full load, no burner helping", eq.after_load,
        hot=usual(one, "set_temperature", "set", "temperature", sheet), drop=drop,
    )  # fmt: skip
    below.work("recovery", "time to put that heat back", eq.recovery_time, heat=load, spare=spare)


def _middle(one: Appliance, sold: MenuItem, constants: Constants, sheet: Worksheet, below: Worksheet) -> None:
    """Write when the middle of a portion is hot, where its thickness is given."""
    if sold.thickness is None or one.method not in ("plate", "pot", "fryer"):
        return
    found = below.figures()
    hot = usual(one, "set_temperature", "set", "temperature", sheet)
    half = below.work(
        "half", "half its thickness", eq.half_thickness, thickness=below.given(sold["thickness"])
    )
    below.work(
        "centre_time", "time until its middle is that hot", eq.centre_time,
        start=found[f"{sold.path}.from_temperature"],
        around=hot if one.method == "pot" else constants["crust"],
        end=found[f"{sold.path}.cook_to"], half=half, film=constants["contact_film"],
        conductivity=constants["food_conduction"], density=constants["food_density"],
        specific_heat=found[f"{below.id}.specific_heat"],
    )  # fmt: skip
    below.note("As if both faces were at it all the time; what conducts is uncertain by a third: probe it.")


def of_cart(build: Build, cooked: list[Appliance], day: Day, constants: Constants, sheet: Worksheet) -> None:
    """Write the portions an hour of the cart, the busiest hour's demand, and what a portion burns."""
    portions = sheet.total("portions", "portions of the day that are cooked", day.portions)
    hands = sheet.schedule("hands_time", "time they take of the people who cook", eq.hands_time, day.hands)
    cases = {
        step: sheet.work(
            f"pace_{number}", f"portions an hour, if only {step} counted", eq.pace, shown=PACE,
            portions=portions, time=time,
        )
        for number, (step, time) in enumerate({**day.steps, "hands": hands}.items(), 1)
    }  # fmt: skip
    possible = sheet.smallest("portions_per_hour", "portions an hour of the cart", cases, shown=PACE)
    asked = sheet.work(
        "peak_demand", "portions asked for in the busiest hour", eq.peak_pace, shown=PACE, portions=portions,
        share=sheet.given(build.day["busiest_hour"]), hour=constants["hour"],
    )  # fmt: skip
    sheet.work("share_busy", "of what is possible", eq.share_busy, shown="%", asked=asked, possible=possible)
    burned = sheet.schedule(
        "fuel_cooked", "burned for the day's portions", eq.load_heat, day.fuel, shown=ENERGY
    )
    each = sheet.work(
        "energy_per_portion", "burned for a portion, on average", eq.mean_each, shown=ENERGY, whole=burned,
        portions=portions,
    )  # fmt: skip
    if all(one.cooking.power is None for one in cooked):
        sheet.work(
            "gas_per_portion", "propane for a portion, on average", eq.fuel_mass, fuel=each,
            heat_content=constants["heat_by_mass"],
        )  # fmt: skip
