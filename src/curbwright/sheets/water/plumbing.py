"""Plumbing: bores, lengths, fittings and heights of every run, as the network needs them."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright import data
from curbwright.build.cart import Build
from curbwright.build.water import Tap, WaterPipe
from curbwright.equations import water as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.placing import Placing
from curbwright.sheets.water.constants import Constants
from curbwright.sheets.water.things import WaterThings

TOUCH = 1e-6
"""m: sizes this near are the same."""
COUNTED = {"elbows": "elbow", "tees": "tee", "valves": "valve", "checks": "check"}
NARROWED = ("elbows", "tees")
"""Fittings that are pushed into the pipe and so have a narrower bore."""


@dataclass(frozen=True)
class Run:
    """One run of pipe."""

    name: str
    bore: Figure
    length: Figure
    fittings: Figure

    def inputs(self, prefix: str = "") -> dict[str, Figure]:
        """Its figures as an equation takes them."""
        return {
            f"{prefix}bore": self.bore,
            f"{prefix}length": self.length,
            f"{prefix}fittings": self.fittings,
        }


@dataclass(frozen=True)
class Fluid:
    """The water in the pipes."""

    density: Figure
    viscosity: Figure
    roughness: Figure
    gravity: Figure

    @property
    def inputs(self) -> dict[str, Figure]:
        """Density, viscosity and roughness as the equations take them."""
        return {"density": self.density, "viscosity": self.viscosity, "roughness": self.roughness}


@dataclass(frozen=True)
class Outlet:
    """One tap with its own run and the pressure that its height takes."""

    key: str
    tap: Tap
    run: Run
    static: Figure
    rated_flow: Figure
    rated_pressure: Figure

    @property
    def name(self) -> str:
        """What to call it."""
        return f"{self.key.replace('_', ' ')} tap"

    @property
    def inputs(self) -> dict[str, Figure]:
        """What its flow is worked from besides the water and the pressure at the tee."""
        return {
            **self.run.inputs(), "static": self.static, "rated_flow": self.rated_flow,
            "rated_pressure": self.rated_pressure,
        }  # fmt: skip


def fluid(build: Build, constants: Constants, sheet: Worksheet) -> Fluid:
    """Write the water's density and viscosity at its temperature."""
    temperature = sheet.given(build.water["temperature"])
    density = sheet.work("density", "density of the water", eq.density, temperature=temperature)
    viscosity = sheet.work(
        "viscosity",
        "kinematic viscosity of the water",
        eq.viscosity,
        temperature=temperature,
        density=density,
    )
    return Fluid(density, viscosity, constants["roughness"], constants["gravity"])


def run(pipe: WaterPipe, constants: Constants, top: Worksheet) -> Run:
    """Write one run of pipe, once; raises MissingInput for what it lacks."""
    key = pipe.path.rpartition(".")[2]
    sheet = next((one for one in top.sections if one.id == f"{top.id}.pipe_{key}"), None)
    if sheet is None:
        sheet = top.section(f"pipe_{key}", f"water pipe {key.replace('_', ' ')}")
        _write(pipe, constants, sheet)
    figures = sheet.figures()
    bore = figures.get(f"{pipe.path}.bore") or figures[f"{sheet.id}.bore"]
    return Run(key, bore, figures[f"{pipe.path}.length"], figures[f"{sheet.id}.fittings"])


def _write(pipe: WaterPipe, constants: Constants, sheet: Worksheet) -> None:
    sheet.given(pipe["length"])
    row = _as_sold(pipe)
    if pipe.bore is not None:
        bore = sheet.given(pipe["bore"])
    elif row is None:
        size = pipe.size.text if pipe.size is not None else ""
        raise MissingInput(f"{pipe.path}.bore", f"the bore of {pipe.material} of {size} is not known")
    else:
        bore = sheet.tabled(
            "bore",
            f"bore of {row['pipe']} in pipe",
            float(data.table("water/pipe").quantity(row["pipe"], "bore", "length")),
            "m",
            source=row["source"],
            row=row["pipe"],
        )
    terms = [sheet.given(pipe["fittings"])]
    for field, fitting in COUNTED.items():
        if not getattr(pipe, field):
            continue
        each = constants.cell("water/fittings", fitting, "coefficient", "number", f"one {fitting}")
        if field in NARROWED and pipe.inserts and row is not None:
            insert = sheet.tabled(
                f"insert_{fitting}", f"{fitting} pushed into it: its bore",
                float(data.table("water/pipe").quantity(row["pipe"], "insert", "length")), "m",
                source="makers-literature-recalled", row=row["pipe"],
            )  # fmt: skip
            each = sheet.work(
                f"narrowed_{fitting}",
                f"one {fitting}, narrowed",
                eq.narrowed,
                coefficient=each,
                bore=bore,
                insert=insert,
            )
        terms.append(sheet.work(f"{field}_sum", field, eq.alike, number=sheet.given(pipe[field]), each=each))
    sheet.total("fittings", "its fittings together", terms)


def _as_sold(pipe: WaterPipe) -> dict[str, str] | None:
    """The row of the table for a pipe's material and size."""
    size = pipe.size
    if size is None:
        return None
    table = data.table("water/pipe")
    return next(
        (
            dict(row)
            for row in table
            if row["material"] == pipe.material
            and abs(float(table.quantity(row["pipe"], "size", "length")) - float(size)) < TOUCH
        ),
        None,
    )


def outlet(
    build: Build, key: str, things: WaterThings, placing: Placing, water: Fluid, constants: Constants,
    top: Worksheet, carries: str = "cold",
) -> Outlet:  # fmt: skip
    """Write one tap: its run, its rating and the pressure its height over the pump takes."""
    tap = things.taps[key]
    own = run(the_pipe(things, key, carries), constants, top)
    id = f"tap_{key}"
    sheet = next((one for one in top.sections if one.id == f"{top.id}.{id}"), None)
    if sheet is None:
        sheet = top.section(id, f"{key.replace('_', ' ')} tap")
        _spout(build, things, key, placing, water, sheet)
    figures = sheet.figures()
    return Outlet(
        key,
        tap,
        own,
        figures[f"{sheet.id}.static"],
        sheet.given(tap["flow"]),
        sheet.given(tap["rated_pressure"]),
    )


def _spout(
    build: Build, things: WaterThings, key: str, placing: Placing, water: Fluid, sheet: Worksheet
) -> None:
    """The height of a spout over the pump, as a pressure."""
    tap = things.taps[key]
    if tap.above is not None:
        spout = sheet.given(tap["above"])
    elif tap.sink is not None:
        sink = build.items[tap.sink.removeprefix("items.")]
        spout = sheet.given(sink["work_height"])
    else:
        raise MissingInput(f"water.taps.{key}.above", "the height of its spout is not given")
    rise = sheet.work(
        "rise",
        "its spout over the pump",
        eq.rise_between,
        high=spout,
        low=pump_height(build, things, placing),
    )
    sheet.work(
        "static",
        "pressure that this height takes",
        eq.static_pressure,
        density=water.density,
        gravity=water.gravity,
        height=rise,
    )


def pump_height(build: Build, things: WaterThings, placing: Placing) -> Figure:
    """The bottom of the pump above the deck."""
    pump = things.the("pump", build.water.pump.item, "water.pump.item")
    return low_of(pump.key, pump.name, placing)


def low_of(key: str, name: str, placing: Placing) -> Figure:
    """The bottom of something above the deck; raises MissingInput where it has no place."""
    placed = placing.items.get(key)
    if placed is None:
        raise MissingInput(f"items.{key}.back", f"{name} has no place yet")
    return placed.up.low


def the_pipe(things: WaterThings, to: str, carries: str = "cold") -> WaterPipe:
    """The pipe to an end; raises MissingInput where there is none."""
    pipe = things.pipes.get((to, carries))
    if pipe is None:
        what = f"with hot water to {to}" if carries == "hot" else f"to {to}"
        raise MissingInput(
            "water.pipes", f'there is no water pipe {what} (water.pipes.NAME with to = "{to}")'
        )
    return pipe
