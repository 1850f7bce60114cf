"""Leaks: what a test must show, what a falling gauge comes to, how little gas is too much, what sounds."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from curbwright import data, units
from curbwright.build import kinds
from curbwright.build.cart import Build
from curbwright.equations import cold
from curbwright.equations import fit as where
from curbwright.equations import gas as eq
from curbwright.errors import MissingInput
from curbwright.figures import Worksheet
from curbwright.sheets.gas.pipe import WATER, Run
from curbwright.sheets.gas.things import Constants, read
from curbwright.sheets.placing import Placing

FALL = "0.1 in WC"
"""The least fall that is seen on a gauge for inches of water."""


@dataclass(frozen=True)
class Step:
    """One step of a leak test, as it prints on the record."""

    number: int
    says: str
    test: str


def leak_test_steps() -> tuple[Step, ...]:
    """Return the steps of the leak test, in order; ``test`` names the test a step belongs to, or every."""
    return tuple(Step(int(row["step"]), row["says"], row["test"]) for row in data.table("gas/leak_steps"))


def leak_tests(runs: Mapping[str, Run], top: Worksheet) -> None:
    """Write each test's pressure, time and allowed fall, and the leak that a visible fall would come to."""
    sheet = top.section("leak_test", "leak tests: record them")
    for row in data.table("gas/leak_test"):
        id = row["test"].replace(" ", "_")
        for field, word, kind, unit, shown in (
            ("pressure", "pressure", "pressure", "Pa", None), ("time", "time it is held", "time", "s", None),
            ("drop", "fall allowed", "pressure", "Pa", WATER),
        ):  # fmt: skip
            value = read(row[field], kind)
            name = f"{row['test']}: {word}"
            sheet.tabled(
                f"{id}_{field}", name, value, unit, source=row["source"], row=row["when"], shown=shown
            )
    for step in leak_test_steps():
        sheet.note(f"{step.number}. {step.says}")
    _visible_fall(runs, sheet)


def _visible_fall(runs: Mapping[str, Run], sheet: Worksheet) -> None:
    """The leak behind the least fall that is seen in the time of the leak check."""
    volumes = [
        sheet.work(
            f"volume_{key}",
            f"inside of section {key.replace('_', ' ')}",
            eq.pipe_volume,
            shown="in3|L",
            bore=run.bore,
            length=run.length,
        )  # fmt: skip
        for key, run in runs.items()
        if run.bore is not None
    ]
    if not volumes:
        return
    volume = sheet.total(
        "volume", "inside of all pipe between regulator and appliances", volumes, shown="in3|L"
    )
    atmosphere = sheet.tabled("atmosphere", "pressure of the air", 101325.0, "Pa", source="convention")
    fall = sheet.tabled(
        "fall", "least fall that is seen", read(FALL, "pressure"), "Pa", source="trade-practice",
        row=FALL, shown=WATER,
    )  # fmt: skip
    time = sheet.figures()[f"{sheet.id}.leak_check_time"]
    sheet.work(
        "seen", "smallest leak that the leak check shows", eq.leak_rate, shown="cfh|L/h", volume=volume,
        drop=fall, atmosphere=atmosphere, time=time,
    )  # fmt: skip


def too_much(build: Build, placing: Placing, constants: Constants, top: Worksheet) -> None:
    """Write how little propane makes the shut cart explosive; an open cart has no air of its own."""
    room = placing.room
    if build.shell is None or room.height is None:
        return
    sheet = top.section("explosive", "how little gas is too much")
    with sheet.attempt():
        long = sheet.work("length", "inside length", where.gap, near=room.front, far=room.rear)
        air = sheet.work(
            "air", "air in the shut cart, nothing in it", cold.box_volume, width=room.width, depth=long,
            height=room.height,
        )  # fmt: skip
        thin = sheet.tabled(
            "thin", "room that a mass of gas takes", 8.66 * units.factor("ft3/lb")[1], "m**3/kg",
            source="propane-properties", row="8.66 ft3/lb at 60 °F", shown="ft3/lb|m3/kg",
        )  # fmt: skip
        sheet.work(
            "mass", "propane that makes it explosive, evenly mixed; at the floor far less does",
            eq.mass_to_limit, volume=air, limit=constants["lower_limit"], specific_volume=thin,
        )  # fmt: skip


def alarm(build: Build, sheet: Worksheet) -> None:
    """Write whether something sounds at leaking gas in the cart; raises MissingInput where none is named."""
    if build.shell is None:
        return
    named = build.gas.alarm
    if named is None:
        raise MissingInput("gas.alarm", "no item is named that sounds at leaking gas")
    fit = 1.0 if kinds.find(build.items[named].kind).name == "detector" else 0.0
    name = "something sounds at leaking gas (1 yes, 0 no)"
    sheet.choice("sounds", name, fit, "gas.alarm", named)


def master(build: Build, sheet: Worksheet) -> None:
    """Write whether one valve outside shuts off everything; raises MissingInput where it is not said."""
    if build.gas.master is None:
        raise MissingInput("gas.master", "whether one valve outside shuts everything off is not given")
    name = "one valve outside shuts off everything (1 yes, 0 no)"
    sheet.choice("valve", name, float(build.gas.master), "gas.master", str(build.gas.master).lower())


def cautions(conditions: Iterable[str], sheet: Worksheet) -> None:
    """Write the cautions that always hold, and those of what this cart has."""
    holds = {"always", *conditions}
    for row in data.table("gas/cautions"):
        if row["when"] in holds:
            sheet.note(row["says"])
