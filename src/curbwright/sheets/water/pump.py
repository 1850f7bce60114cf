"""The pump: what it gives with one, two and all taps open, amperes, watt-hours, how often it starts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from curbwright.build.cart import Build
from curbwright.equations import water as eq
from curbwright.equations.cold import pressure_at
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.placing import Placing
from curbwright.sheets.water.constants import FLOW, PER_HOUR, Constants
from curbwright.sheets.water.network import Point, Supply, Switch, outlets, point, supply
from curbwright.sheets.water.plumbing import Outlet, fluid
from curbwright.sheets.water.things import WaterThings

SPEED = "ft/s|m/s"


@dataclass(frozen=True)
class Worked:
    """The pump, the taps, and what happens with some of them open."""

    source: Supply
    every: list[Outlet]
    points: dict[str, Point]
    switch: Switch | None
    sheet: Worksheet

    @property
    def alone(self) -> list[Point]:
        """Each tap alone open."""
        return [one for id, one in self.points.items() if id.startswith("one_")]

    @property
    def slowest(self) -> Point:
        """The tap alone open that draws least."""
        return min(self.alone, key=lambda one: float(one.drawn))

    @property
    def most(self) -> Point:
        """What draws most from the pump."""
        return max(self.points.values(), key=lambda one: float(one.drawn))


def pump(
    build: Build, things: WaterThings, placing: Placing, constants: Constants, day: Mapping[str, Figure],
    sheet: Worksheet,
) -> Worked:  # fmt: skip
    """Write the operating points and what they do to pump, pipe and switch; ``day`` is what a day takes."""
    if not things.taps:
        raise MissingInput("water.taps", "no tap is told (water.taps.NAME)")
    water = fluid(build, constants, sheet)
    source = supply(build, things, placing, water, constants, sheet)
    every = outlets(build, things, placing, water, constants, sheet)
    switch: Switch | None = None
    with sheet.attempt():
        switch = _switch(build, sheet)
    points = {
        f"one_{one.key}": point(f"one_{one.key}", f"{one.name} alone open", [one], source, switch, sheet)
        for one in every
    }
    if len(every) > 2:
        two = sorted(every, key=lambda one: -float(one.rated_flow))[:2]
        points["two"] = point("two", "the two largest taps open", two, source, switch, sheet)
    if len(every) > 1:
        points["all"] = point("all", "all taps open", every, source, switch, sheet)
    worked = Worked(source, every, points, switch, sheet)
    _in_short(build, worked)
    _velocities(worked)
    _hammer(worked, constants)
    _two_formulas(worked, constants)
    _electric(build, worked, day)
    with sheet.attempt():
        _starts(build, things, worked, day)
    return worked


def _switch(build: Build, sheet: Worksheet) -> Switch:
    cut_in, cut_out = sheet.given(build.water.pump["cut_in"]), sheet.given(build.water.pump["cut_out"])
    if not float(cut_out) > float(cut_in):
        raise MissingInput("water.pump.cut_out", "its switch stops the pump no higher than it starts it")
    middle = sheet.work(
        "middle",
        "pressure that a cycling pump keeps on average",
        eq.middle_of_band,
        cut_in=cut_in,
        cut_out=cut_out,
    )
    return Switch(cut_in, cut_out, middle)


def _in_short(build: Build, worked: Worked) -> None:
    """The least that any tap gives with one, two and all open, and the least pressure at an open tap."""
    every, points, sheet = worked.every, worked.points, worked.sheet
    alone = {one.name: points[f"one_{one.key}"].flows[one.key] for one in every}
    sheet.smallest("flow_one_tap", "flow of the tap that gives least, alone open", alone, shown=FLOW)
    last = points.get("all") or points[f"one_{every[0].key}"]
    two = points.get("two") or last
    for id, says, one in (("two_taps", "two taps", two), ("all_taps", "all taps", last)):
        flows = {key.replace("_", " "): flow for key, flow in one.flows.items()}
        sheet.smallest(f"flow_{id}", f"least flow of a tap with {says} open", flows, shown=FLOW)
    sheet.given(build.place["tap_pressure"])
    pressures = {
        one.name: sheet.work(
            f"pressure_{one.key}",
            f"pressure at the {one.name}, {last.says}",
            eq.outlet_pressure,
            rated_flow=one.rated_flow,
            rated_pressure=one.rated_pressure,
            flow=last.flows[one.key],
        )  # fmt: skip
        for one in every
    }
    sheet.smallest("least_pressure", "least pressure at an open tap, all open", pressures)


def _velocities(worked: Worked) -> None:
    """Speed in every run at the most it carries, and the pressure that the two shared ones take then."""
    sheet, source, total = worked.sheet, worked.source, worked.most.given
    fastest: dict[str, Figure] = {}
    for name, one in (("suction", source.suction), ("shared run", source.trunk)):
        id = name.replace(" ", "_")
        fastest[name] = sheet.work(
            f"speed_{id}", f"speed in the {name}", eq.velocity, shown=SPEED, flow=total, bore=one.bore
        )
        sheet.work(
            f"lost_{id}",
            f"pressure lost in the {name} with its fittings",
            eq.run_loss,
            shown=None,
            flow=total,
            **one.inputs(),
            **source.water.inputs,
        )
    for tap in worked.every:
        fastest[tap.name] = sheet.work(
            f"speed_{tap.key}", f"speed in the run to the {tap.name}", eq.velocity, shown=SPEED,
            flow=worked.points[f"one_{tap.key}"].flows[tap.key], bore=tap.run.bore,
        )  # fmt: skip
    sheet.largest("speed", "fastest water in a pipe", fastest, shown=SPEED)


def _hammer(worked: Worked, constants: Constants) -> None:
    """The pressure on top when a tap on plastic pipe shuts at once."""
    sheet, water = worked.sheet, worked.source.water
    tap = max(worked.every, key=lambda one: float(sheet.figures()[f"{sheet.id}.speed_{one.key}"]))
    wave = sheet.work(
        "wave", "speed of a pressure wave in PEX", eq.wave_speed, shown=SPEED, bulk=constants["bulk"],
        density=water.density, modulus=constants["modulus"], bore=tap.run.bore, wall=constants["wall"],
    )  # fmt: skip
    sheet.work(
        "hammer", f"pressure on top when the {tap.name} shuts at once", eq.surge, density=water.density,
        wave=wave, velocity=sheet.figures()[f"{sheet.id}.speed_{tap.key}"],
    )  # fmt: skip


def _two_formulas(worked: Worked, constants: Constants) -> None:
    """The friction of the shared run by both formulas, for forms that ask for the older one."""
    sheet, trunk, water = worked.sheet, worked.source.trunk, worked.source.water
    speed = sheet.figures()["water.pump.speed_shared_run"]
    number = sheet.work(
        "reynolds", "Reynolds number in the shared run", eq.reynolds, velocity=speed, bore=trunk.bore,
        viscosity=water.viscosity,
    )  # fmt: skip
    relative = sheet.work(
        "relative", "its roughness against its bore", eq.relative_roughness, roughness=water.roughness,
        bore=trunk.bore,
    )  # fmt: skip
    factor = sheet.work(
        "factor", "its friction factor", eq.friction_factor, reynolds=number, roughness=relative
    )
    sheet.work(
        "darcy", "friction of the shared run, by Darcy and Colebrook", eq.friction_loss, friction=factor,
        length=trunk.length, bore=trunk.bore, density=water.density, velocity=speed,
    )  # fmt: skip
    sheet.work(
        "williams", "the same by Hazen and Williams, which reads low in so narrow a pipe", eq.hazen_williams,
        flow=worked.most.given, bore=trunk.bore, length=trunk.length, smoothness=constants["smoothness"],
    )  # fmt: skip


def _electric(build: Build, worked: Worked, day: Mapping[str, Figure]) -> None:
    """Watts, the share that ends in the water, and watt-hours a day with the slowest tap open."""
    sheet, usual = worked.sheet, worked.slowest
    power = sheet.work(
        "power", f"electricity while it runs, {usual.says}", eq.pump_power,
        voltage=sheet.given(build.water.pump["voltage"]), current=usual.current,
    )  # fmt: skip
    sheet.work(
        "efficiency", "share of it that ends in the water", eq.pump_efficiency, shown="%",
        pressure=usual.tee, flow=usual.given, power=power,
    )  # fmt: skip
    currents = {one.says: one.current for one in worked.points.values()}
    sheet.largest("most_current", "largest current of the pump with taps open", currents)
    need = day.get("water.demand.need")
    if need is not None:
        sheet.work(
            "energy_day", "electricity of the pump in a day", eq.pump_energy, volume=need,
            flow=usual.given, power=power,
        )  # fmt: skip


def _starts(build: Build, things: WaterThings, worked: Worked, day: Mapping[str, Figure]) -> None:
    """Whether the switch cycles the pump, and how often with the accumulator there is."""
    sheet, slowest, switch = worked.sheet, worked.slowest, worked.switch
    if switch is None:
        return
    over = sheet.work(
        "over_switch", f"pressure that pump and tap balance at, over the cut-out, {slowest.says}",
        eq.pressure_over, pressure=slowest.pressure, limit=switch.cut_out,
    )  # fmt: skip
    given = build.water.accumulator
    if given.volume is None and not any(one.kind == "accumulator" for one in things.every.values()):
        sheet.smallest("over_switch_bare", "the same, with no accumulator aboard", {"as worked": over})
        sheet.note("Without an accumulator a pump whose flow is not all drawn starts many times a minute.")
        return
    altitude = sheet.given(build.pitch["altitude"])
    band = {
        "charge": sheet.given(given["charge"]), "cut_in": switch.cut_in, "cut_out": switch.cut_out,
        "atmosphere": sheet.work("atmosphere", "pressure of the air", pressure_at, altitude=altitude),
    }  # fmt: skip
    _cycles(band, sheet.given(given["volume"]), worked)
    wash = day.get("water.demand.wash")
    if wash is not None:
        sheet.work(
            "for_one_wash", "accumulator that gives one hand wash without a start", eq.accumulator_for,
            volume=wash, share=sheet.figures()["water.pump.drawdown_share"],
        )  # fmt: skip


def _cycles(band: dict[str, Figure], volume: Figure, worked: Worked) -> None:
    """How often the pump starts: at worst by the usual formula, and with the smallest tap by the integral."""
    sheet = worked.sheet
    sheet.work(
        "drawdown_share", "share of the accumulator that it gives", eq.drawdown_share, shown="%", **band
    )
    stored = sheet.work(
        "drawdown",
        "water that it gives between stop and start",
        eq.drawdown,
        shown=None,
        volume=volume,
        **band,
    )
    flows: dict[str, Figure] = {}
    for word in ("in", "out"):
        low, high = worked.source.span(float(band[f"cut_{word}"]))
        flows[f"flow_{word}"] = sheet.work(
            f"flow_{word}", f"flow of the pump at its cut-{word}", eq.flow_on_curve, shown=FLOW,
            low_pressure=low.pressure, low_flow=low.flow, high_pressure=high.pressure, high_flow=high.flow,
            pressure=band[f"cut_{word}"],
        )  # fmt: skip
    sheet.work(
        "starts_worst", "starts an hour at worst, for a draw of half its flow", eq.worst_starts,
        shown=PER_HOUR, flow=flows["flow_in"], drawdown=stored,
    )  # fmt: skip
    tap = min(worked.every, key=lambda one: float(one.rated_flow))
    rated = {"rated_flow": tap.rated_flow, "rated_pressure": tap.rated_pressure}
    with sheet.attempt():
        rests = sheet.work(
            "rests",
            f"the pump rests, {tap.name} open",
            eq.exact_rest_time,
            shown=None,
            volume=volume,
            **band,
            **rated,
        )
        on = sheet.work(
            "runs", "and runs", eq.exact_run_time, shown=None, volume=volume, **band, **flows, **rated
        )
        sheet.work(
            "starts", f"starts an hour, {tap.name} open", eq.starts, shown=PER_HOUR, rest=rests, run=on
        )
