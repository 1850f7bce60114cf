"""Operating points: what each tap gives with one, two and all of them open, and what the pump does then."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from curbwright.build.cart import Build
from curbwright.equations import water as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.placing import Placing
from curbwright.sheets.water.constants import FLOW, Constants
from curbwright.sheets.water.plumbing import Fluid, Outlet, Run, low_of, outlet, run, the_pipe
from curbwright.sheets.water.things import WaterThings

BAND = 0.03
"""Share of the pressure between an answer and the trial on either side of it."""
HIGHEST = 3.0e6
"""Pa that no pump of a cart gives."""


@dataclass(frozen=True)
class Row:
    """One row of the pump's curve."""

    pressure: Figure
    flow: Figure
    current: Figure


@dataclass(frozen=True)
class Supply:
    """The pump with its tank and the runs up to the tee."""

    rows: tuple[Row, ...]
    static: Figure
    suction: Run
    trunk: Run
    water: Fluid

    def span(self, pressure: float) -> tuple[Row, Row]:
        """The two rows that a pump pressure lies between, or the nearest two."""
        pairs = list(zip(self.rows, self.rows[1:], strict=False))
        return next((pair for pair in pairs if pressure <= float(pair[1].pressure)), pairs[-1])

    def inputs(self, span: tuple[Row, Row]) -> dict[str, Figure]:
        """What the flow to the tee is worked from besides the pressure there."""
        low, high = span
        return {
            "low_pressure": low.pressure, "low_flow": low.flow, "high_pressure": high.pressure,
            "high_flow": high.flow, "static": self.static, **self.suction.inputs("suction_"),
            **self.trunk.inputs("trunk_"), **self.water.inputs,
        }  # fmt: skip

    def flow(self, pressure: float, span: tuple[Row, Row]) -> float:
        """The flow at a pressure at the tee, m3/s."""
        return float(eq.supply_flow(pressure=pressure, **self.inputs(span)))


@dataclass(frozen=True)
class Point:
    """What happens with some taps open; of a pump that cycles, at the middle of its switch's band."""

    says: str
    tee: Figure
    flows: dict[str, Figure]
    drawn: Figure
    """What all open taps draw."""
    given: Figure
    """What the pump gives while it runs; the same unless it cycles."""
    pressure: Figure
    """At the pump, as its curve alone would have it."""
    current: Figure
    """While it runs."""


@dataclass(frozen=True)
class Switch:
    """The pressures at which the pump starts and stops, and midway."""

    cut_in: Figure
    cut_out: Figure
    middle: Figure


def supply(
    build: Build, things: WaterThings, placing: Placing, water: Fluid, constants: Constants, top: Worksheet
) -> Supply:
    """Write the pump's curve, the height of its tank and its two runs."""
    pump, sheet = build.water.pump, top.section("supply", "the pump with its tank and the runs to the tee")
    given = pump.rows
    if given is None or len(given) < 2:
        raise MissingInput("water.pump.rows", "two rows of the pump's curve are the least to work with")
    order = sorted(range(len(given)), key=lambda n: float(given[n][0]))
    rows = tuple(
        Row(
            *(
                sheet.given(pump.cell("rows", n, column, f"row {n + 1}, {says}"))
                for column, says in enumerate(("pressure", "flow", "current"))
            )
        )
        for n in order
    )
    _falling(rows)
    if not things.fresh:
        raise MissingInput("items", "there is no fresh-water tank aboard (kind tank_fresh)")
    tank = min(things.fresh.values(), key=lambda one: float(low_of(one.key, one.name, placing)))
    wet = things.the("pump", pump.item, "water.pump.item")
    high = sheet.work(
        "over_pump",
        f"floor of {tank.name} over {wet.name}",
        eq.rise_between,
        high=low_of(tank.key, tank.name, placing),
        low=low_of(wet.key, wet.name, placing),
    )
    static = sheet.work("static", "pressure that the last of the water adds at the pump", eq.static_pressure,
                        density=water.density, gravity=water.gravity, height=high)  # fmt: skip
    return Supply(
        rows,
        static,
        run(the_pipe(things, "pump"), constants, top),
        run(the_pipe(things, "taps"), constants, top),
        water,
    )


def _falling(rows: Sequence[Row]) -> None:
    """Refuse a curve that does not fall: there would be no one answer."""
    for low, high in zip(rows, rows[1:], strict=False):
        if not (float(high.pressure) > float(low.pressure) and float(high.flow) < float(low.flow)):
            raise MissingInput(
                "water.pump.rows", "the pump's flow does not fall from row to row with the pressure"
            )


def point(
    id: str, says: str, open_taps: Sequence[Outlet], source: Supply, switch: Switch | None, top: Worksheet
) -> Point:  # fmt: skip
    """Write what happens with some taps open: the pressure at the tee by two trials, then all the rest."""
    sheet = top.section(id, says)
    tee_at, span = _search(open_taps, source)
    low, high = tee_at * (1 - BAND), tee_at * (1 + BAND)
    trials: dict[str, Figure] = {}
    drawn: dict[str, Figure] = {}
    given: dict[str, Figure] = {}
    for word, value in (("low", low), ("high", high)):
        trial = sheet.tabled(
            f"trial_{word}", f"pressure at the tee, {word} trial", value, "Pa", source="network-trials",
            row="near the answer",
        )  # fmt: skip
        each = [
            sheet.work(
                f"{word}_{one.key}", f"{one.name} draws then", eq.tap_flow, shown=FLOW, pressure=trial,
                **one.inputs, **source.water.inputs,
            )
            for one in open_taps
        ]  # fmt: skip
        trials[word] = trial
        drawn[word] = sheet.total(f"drawn_{word}", f"the taps draw, {word} trial", each, shown=FLOW)
        given[word] = sheet.work(
            f"given_{word}", f"the pump gives, {word} trial", eq.supply_flow, shown=FLOW, pressure=trial,
            **source.inputs(span),
        )  # fmt: skip
    tee = sheet.work(
        "tee", f"pressure at the tee, {says}", eq.where_they_meet, low=trials["low"], high=trials["high"],
        drawn_low=drawn["low"], drawn_high=drawn["high"], given_low=given["low"], given_high=given["high"],
    )  # fmt: skip
    flows = {
        one.key: sheet.work(
            f"flow_{one.key}",
            f"{one.name}, {says}",
            eq.tap_flow,
            shown=FLOW,
            pressure=tee,
            **one.inputs,
            **source.water.inputs,
        )
        for one in open_taps
    }
    total = sheet.total("flow", f"flow of the pump, {says}", list(flows.values()), shown=FLOW)
    pressure = _on_curve("pressure", f"pressure at the pump, {says}", total, span, sheet)
    if switch is not None and float(pressure) > float(switch.cut_out):
        return _cycling(says, open_taps, source, switch, pressure, sheet)
    current = _current("current", f"current of the pump, {says}", pressure, span, sheet)
    return Point(says, tee, flows, total, total, pressure, current)


def _cycling(
    says: str, open_taps: Sequence[Outlet], source: Supply, switch: Switch, pressure: Figure, sheet: Worksheet
) -> Point:  # fmt: skip
    """What a pump gives that its switch stops and starts: on average, the pressure midway."""
    sheet.note("Pump and taps would only balance above the cut-out, so the switch cycles the pump.")
    middle = switch.middle
    flows = {
        one.key: sheet.work(
            f"cycled_{one.key}",
            f"{one.name}, {says}, the pump cycling",
            eq.tap_flow,
            shown=FLOW,
            pressure=middle,
            **one.inputs,
            **source.water.inputs,
        )  # fmt: skip
        for one in open_taps
    }
    drawn = sheet.total("cycled", f"flow drawn, {says}, the pump cycling", list(flows.values()), shown=FLOW)
    low, high = span = source.span(float(middle))
    given = sheet.work(
        "cycled_given",
        "flow of the pump while it runs",
        eq.flow_on_curve,
        shown=FLOW,
        low_pressure=low.pressure,
        low_flow=low.flow,
        high_pressure=high.pressure,
        high_flow=high.flow,
        pressure=middle,
    )
    current = _current("cycled_current", "current of the pump while it runs", middle, span, sheet)
    return Point(says, middle, flows, drawn, given, pressure, current)


def _on_curve(id: str, name: str, flow: Figure, span: tuple[Row, Row], sheet: Worksheet) -> Figure:
    low, high = span
    return sheet.work(
        id, name, eq.pressure_on_curve, low_pressure=low.pressure, low_flow=low.flow,
        high_pressure=high.pressure, high_flow=high.flow, flow=flow,
    )  # fmt: skip


def _current(id: str, name: str, pressure: Figure, span: tuple[Row, Row], sheet: Worksheet) -> Figure:
    low, high = span
    return sheet.work(
        id, name, eq.current_on_curve, low_pressure=low.pressure, low_current=low.current,
        high_pressure=high.pressure, high_current=high.current, pressure=pressure,
    )  # fmt: skip


def _search(open_taps: Sequence[Outlet], source: Supply) -> tuple[float, tuple[Row, Row]]:
    """The pressure at the tee at which taps and pump agree, and the rows of the curve it lies on."""
    from fluids import numerics

    brent: Callable[..., float] = numerics.brenth
    inputs = [{**one.inputs, **source.water.inputs} for one in open_taps]
    span = source.span(0.0)
    for _ in range(len(source.rows)):

        def over(pressure: float, span: tuple[Row, Row] = span) -> float:
            drawn = sum(float(eq.tap_flow(pressure=pressure, **one)) for one in inputs)
            return source.flow(pressure, span) - drawn

        if over(0.0) <= 0.0:
            raise MissingInput(
                "water.pump.rows", "the pump gives nothing against these pipes: look at its curve"
            )
        tee = float(brent(over, 0.0, HIGHEST, xtol=1e-6, rtol=1e-9))
        low, high = span
        at_pump = float(eq.pressure_on_curve(
            low_pressure=low.pressure, low_flow=low.flow, high_pressure=high.pressure, high_flow=high.flow,
            flow=source.flow(tee, span),
        ))  # fmt: skip
        again = source.span(at_pump)
        if again == span:
            break
        span = again
    return tee, span


def outlets(
    build: Build, things: WaterThings, placing: Placing, water: Fluid, constants: Constants, top: Worksheet
) -> list[Outlet]:
    """Write every tap; raises MissingInput for what one lacks."""
    return [outlet(build, key, things, placing, water, constants, top) for key in things.taps]
