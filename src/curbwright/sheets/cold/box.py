"""One box from its walls to its hold-over."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright.build.cart import Build
from curbwright.build.cold import ColdBox
from curbwright.build.fit import Item
from curbwright.equations import cold as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.cold.ambient import Day
from curbwright.sheets.cold.contents import Contents, contents, heat_capacity
from curbwright.sheets.cold.electricity import by_rating, electricity
from curbwright.sheets.cold.gains import Gains, gains
from curbwright.sheets.cold.machine import machine
from curbwright.sheets.cold.walls import Inside, Walls, inside, walls
from curbwright.sheets.cold.without_power import Ice, Warming, hold_over, ice_in

LIFT = 20.0
"""How far below the air round it a thermo-electric box gets at most, in kelvins: 36 °F."""
AROUND_ICE = 1.5
"""Ice carried over ice worked out: heat reaches it by other ways than the box; common practice 1.5 to 2."""


@dataclass(frozen=True)
class Box:
    """A box, and what everything about it is worked from."""

    item: Item
    cold: ColdBox
    room: Inside
    walls: Walls
    food: Contents
    gains: Gains
    ice: Ice | None

    @property
    def around(self) -> Figure:
        """The air round it at the worst hour."""
        return self.gains.worst.around(self.cold.stands)


def cooled_by(item: Item) -> str:
    """What keeps a box cold: as the build file says, else as its kind usually is."""
    said = item.cold.cooling if item.cold is not None else None
    return said or ("ice" if item.kind == "ice_chest" else "compressor")


def box_section(build: Build, item: Item, day: Day, sheet: Worksheet) -> None:
    """Work out one box. Its walls and its heat come first; each later part stands by itself."""
    cold = item.cold
    if cold is None:
        sheet.given(item["cold"])
        return
    _facts(cold, sheet)
    room = inside(item, cold, sheet)
    shell = walls(room, cold, sheet)
    food = contents(item, cold, room, sheet.section("contents", "what is in it"))
    found = gains(build, cold, room, shell, food, day, sheet)
    box = Box(item, cold, room, shell, food, found, ice_in(cold, sheet.section("ice", "ice in it")))
    with sheet.attempt():
        if cooled_by(item) == "ice":
            _iced(box, day, sheet)
        else:
            _driven(box, day, sheet)
    with sheet.attempt():
        _without_power(build, box, sheet)


def _facts(cold: ColdBox, sheet: Worksheet) -> None:
    """What is simply so or not: its mark, its thermometer, its cut-out."""
    below = sheet.section("facts", "what it carries")
    with below.attempt():
        if cold.certified is None:
            below.given(cold["certified"])
        else:
            below.choice(
                "certified", "carries the mark of the commercial refrigeration standard (1 is yes)",
                float(cold.certified), f"{cold.path}.certified", str(cold.certified).lower(),
            )  # fmt: skip
    thermometer = sheet.section("thermometer", "its thermometer")
    with thermometer.attempt():
        accuracy = thermometer.given(cold["thermometer"])
        thermometer.largest("accuracy", "accuracy of the thermometer kept in it", {"as marked": accuracy})
    if cold.cut_out is not None:
        below.given(cold["cut_out"])
        below.note(
            "Below that voltage it stops and warms without a word: size its wire for the drop with fan and"
            " pump running, and keep an alarm at the limit."
        )


def _driven(box: Box, day: Day, sheet: Worksheet) -> None:
    """The machine: its duty and its electricity."""
    cold, worst = box.cold, box.gains.worst
    running = machine(cold, day, sheet.section("machine", "what the machine does, hour by hour"))
    at_worst = running[worst.key]
    capacity = sheet.smallest(
        "capacity", "heat taken out, running, at the worst hour", {worst.name: at_worst.capacity}
    )
    duties = {
        "from the heat let in": sheet.work(
            "duty_by_heat", "share of the worst hour it has to run, from the heat let in", eq.duty, shown="%",
            gain=box.gains.total, capacity=capacity,
        )
    }  # fmt: skip
    sheet.work(
        "reserve", "capacity left over at the worst hour", eq.capacity_left, capacity=capacity,
        gain=box.gains.total,
    )  # fmt: skip
    rated = by_rating(box.cold, day, box.gains, running, sheet)
    if rated is not None:
        duties["from its maker's mean"] = sheet.work(
            "duty_by_mean", "share of the worst hour it runs, from its maker's mean", eq.duty, shown="%",
            gain=rated.powers[worst.key], capacity=at_worst.power,
        )  # fmt: skip
    duty = sheet.largest("duty_worst", "share of the worst hour it has to run", duties)
    if float(duty) > 1:
        sheet.note(
            "It cannot hold its temperature at the worst hour: what it settles at is worked out below."
        )
    electricity(box.cold, box.gains, box.food, running, rated, day, sheet)
    _warmest(box, capacity, sheet)
    _pull_down(box, capacity, sheet)


def _warmest(box: Box, capacity: Figure, sheet: Worksheet) -> None:
    cold = box.cold
    cases = {
        "the thermostat keeps": sheet.given(cold["set_point"]),
        "it settles at, never stopping": _floating(box, capacity, sheet),
    }  # fmt: skip
    if cold.cooling == "thermo-electric":
        cases["a thermo-electric box gets down to"] = sheet.work(
            "lifted", "lowest a thermo-electric box gets", eq.evaporating_temperature, box=box.around,
            below=sheet.tabled(
                "lift", "how far below the air round it a thermo-electric box gets", LIFT, "delta_degC",
                source="thermo-electric-guide", row="36 °F",
            ),
        )  # fmt: skip
    air = sheet.largest("air_worst", "air in the box at the worst hour, on average", cases)
    sheet.work(
        "warmest_food", "warmest food at the worst hour", eq.warmest_food, air=air,
        ripple=sheet.given(cold["swing"]), warm_spot=sheet.given(cold["warm_spot"]),
    )  # fmt: skip


def _floating(box: Box, capacity: Figure, sheet: Worksheet) -> Figure:
    """What the box settles at; food put in gives up the less heat the warmer the box."""
    name = "temperature it settles at when the machine never stops"
    if not box.gains.product:
        return sheet.work(
            "floating", name, eq.floating_temperature, surroundings=box.around, capacity=capacity,
            steady=box.gains.past_walls, conductance=box.walls.whole,
        )  # fmt: skip
    warm, kept = sheet.given(box.cold["loaded_temperature"]), sheet.given(box.cold["set_point"])
    return sheet.work(
        "floating", name, eq.floating_while_loaded, surroundings=box.around, conductance=box.walls.whole,
        loaded=warm, steady=box.gains.past_walls, capacity=capacity,
        load_conductance=sheet.work(
            "load_conductance", "heat the food put in gives up per degree", eq.load_conductance,
            load=box.gains.product, warm=warm, kept=kept,
        ),
    )  # fmt: skip


def _pull_down(box: Box, capacity: Figure, sheet: Worksheet) -> None:
    below = sheet.section("start", "plugging it in warm, its food in it")
    with below.attempt():
        cold = box.cold
        heat = heat_capacity(box.item, cold, box.room, box.food, below)
        floating = below.work(
            "floating", "temperature it would settle at, shut", eq.floating_temperature,
            surroundings=box.around, capacity=capacity, steady=box.gains.standing,
            conductance=box.walls.whole,
        )  # fmt: skip
        warm, kept = below.given(cold["warm_start"]), below.given(cold["set_point"])
        if float(floating) >= float(kept):
            below.note("At the worst hour it never gets down to its set point.")
            return
        if float(warm) <= float(kept):
            below.note("It starts as cold as it is kept.")
            return
        if box.food.frozen:
            below.note("The food's own freezing is not in the pull-down: put it in frozen.")
        time = below.work(
            "time", "time to its set point", eq.time_running, capacity=heat, conductance=box.walls.whole,
            high=warm, low=kept, floating=floating,
        )  # fmt: skip
        sheet.largest(
            "pull_down", "time from warm to its set point, food in it, lid shut", {"at the worst hour": time}
        )
        below.note("Plug it in the night before, and load it cold: a box holds, it does not chill.")


def _iced(box: Box, day: Day, sheet: Worksheet) -> None:
    """An ice chest: how cold the ice keeps it, and how long there is any."""
    air = box.around
    if box.ice is None:
        sheet.note("There is no ice in it.")
    else:
        air = _beside_ice(box, box.ice, sheet)
        _ice_of_day(box, box.ice, day, sheet)
    sheet.work(
        "warmest_food", "warmest food at the worst hour", eq.warmest_food, air=air,
        ripple=sheet.tabled("no_swing", "no machine, no swing", 0.0, "delta_degC", source="convention"),
        warm_spot=sheet.given(box.cold["warm_spot"]),
    )  # fmt: skip
    sheet.note(
        "Many authorities refuse ice as the only cold source: ask first. Melt water goes to the waste tank."
    )


def _beside_ice(box: Box, ice: Ice, sheet: Worksheet) -> Figure:
    steady = sheet.total(
        "onto_ice", "heat that comes in by other ways than the walls",
        [box.gains.past_walls, box.gains.product],
    )  # fmt: skip
    return sheet.work(
        "beside_ice", "air in the box beside the ice at the worst hour", eq.temperature_beside_ice,
        walls=box.walls.whole, surroundings=box.around, steady=steady, contact=ice.contact,
        melting=ice.melting,
    )  # fmt: skip


def _ice_of_day(box: Box, ice: Ice, day: Day, sheet: Worksheet) -> None:
    """How fast the ice melts, how long it lasts, how much the serving time takes."""
    sheet.work(
        "melting_rate", "ice that melts at the worst hour", eq.melting_rate, gain=box.gains.total,
        latent=ice.latent, shown="lb/h|kg/h",
    )  # fmt: skip
    sheet.work(
        "ice_lasts", "time the ice lasts, worst hour after worst hour", eq.melting_time, mass=ice.mass,
        latent=ice.latent, gain=box.gains.total,
    )  # fmt: skip
    if day.serving is None:
        return
    allowance = sheet.tabled(
        "around_ice", "for heat that reaches it by other ways", AROUND_ICE, "1", source="trade-practice",
        row="1.5 to 2",
    )  # fmt: skip
    sheet.work(
        "ice_for_day", "ice for the serving time", eq.ice_needed, gain=box.gains.total, time=day.serving,
        latent=ice.latent, allowance=allowance,
    )  # fmt: skip


def _without_power(build: Build, box: Box, sheet: Worksheet) -> None:
    below = sheet.section("without_power", "without power, lid shut, from the worst hour on")
    limit = box.food.freezing if box.food.frozen else below.given(build.place["cold_limit"])
    start = sheet.figures().get(f"{sheet.id}.beside_ice") or below.work(
        "warmest_air", "air as the power fails, top of its swing", eq.top_of_swing,
        air=below.given(box.cold["set_point"]), ripple=below.given(box.cold["swing"]),
    )  # fmt: skip
    warming = Warming(
        heat_capacity(box.item, box.cold, box.room, box.food, below), box.walls.whole, box.around,
        box.gains.standing, start, limit,
    )  # fmt: skip
    time = hold_over(warming, box.ice, below)
    below.note(
        "Box and food are one lump here; tightly packed food lags behind its air. Ice below the food, or"
        " in a corner, holds less than the figure says."
    )
    if time is not None:
        what = "until it begins to thaw" if box.food.frozen else "until the food is at its limit"
        sheet.smallest("hold_over", f"time without power {what}", {"lid shut": time})
