"""What the build file says of fresh and waste water: habits, tanks, bowls, pump, pipe, taps."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from curbwright.build.part import (
    Count,
    Duration,
    Length,
    Part,
    Position,
    Pressure,
    Reads,
    ReadsRows,
    Rows,
    Share,
    Temperature,
    Thickness,
    Volume,
    asks,
)
from curbwright.units import Measure

Flow = Annotated[Measure, Reads("flow", most="50 gpm")]
Habit = Annotated[Measure, Reads("rate", most="60/h")]
Coefficient = Annotated[Measure, Reads("number", least="0", most="100")]
Volts = Annotated[Measure, Reads("voltage", most="250 V")]
Tilt = Annotated[Measure, Reads("angle", most="10 deg")]
PumpRows = Annotated[Rows, ReadsRows("pressure", "flow", "current", most=20)]
Bowls = Annotated[int, Field(strict=True, ge=1, le=6)]

Shape = Literal["box", "upright cylinder", "lying cylinder"]
Outlet = Literal["middle", "front", "rear", "curb", "street"]
RawMeat = Literal["none", "in batches", "to order"]
Lock = Literal["none", "switch", "tow plug relay", "service key relay"]
ENDS = ("pump", "taps", "heater")
"""What a pipe may lead to besides a tap."""


class WetThing(Part):
    """`[items.NAME.water]`: a sink's bowls, a tank's shape and fittings, what a steam table holds."""

    bowls: Bowls | None = asks("bowls of a sink; left out: as its kind has")
    bowl_length: Length | None = asks("inside length of one bowl")
    bowl_width: Length | None = asks("inside width of one bowl")
    fill: Share | None = asks("share of a bowl that is filled to wash in", default="70 %", how="practice")
    shape: Shape = asks("shape of a tank", default="box")
    outlet: Outlet = asks("where along its bottom a tank is drawn from: its middle, or the end or side named",
                          default="middle")  # fmt: skip
    heel: Length | None = asks(
        "depth of water under a tank's outlet that cannot be drawn", default="1/2 in", how="practice"
    )
    top: Share | None = asks(
        "share of a tank that stays empty at its top", default="3 %", how="practice", note="2 to 5 %"
    )
    fill_bore: Length | None = asks("inside diameter of a fresh tank's fill inlet")
    drain_bore: Length | None = asks("inside diameter of a tank's drain")
    drain_valve: bool | None = asks("a shut-off valve on a tank's drain")
    sloped: bool | None = asks("a tank's floor slopes to its drain, so that it empties altogether")
    vent_bore: Length | None = asks("inside diameter of a tank's vent")
    alike: bool | None = asks("its fill fitting takes the same hose as the other tank's drain")
    holds: Volume | None = asks("water that a steam table or an urn is filled with")
    gives_off: Flow | None = asks("water that it boils off while serving", shown="gal/h|L/h")

    def _label(self) -> str:
        return self.path.split(".")[1].replace("_", " ") if self.path else ""


class Tap(Part):
    """`[water.taps.NAME]`: one tap, and the sink or thing it serves."""

    sink: str | None = asks("item it stands over or feeds")
    flow: Flow | None = asks("flow it is rated for", shown="gpm|L/min")
    rated_pressure: Pressure | None = asks(
        "pressure at which it is rated", default="60 psi", how="read", source="ipc-604",
        note="taps are tested at 60 psi: a pump gives them less",
    )  # fmt: skip
    above: Position | None = asks("its spout above the deck; left out: the rim of its sink")
    above_rim: Length | None = asks("tip of its spout above the rim of its sink")
    spout_bore: Length | None = asks("inside diameter of its spout")
    hot: bool = asks("it gives hot water as well", default=True)
    hose: bool = asks("it ends in a hose or a spray that can hang into a bowl", default=False)
    breaker: bool = asks("a vacuum breaker guards it", default=False)
    runs_for: Duration | None = asks("time it runs at a touch, of a metering tap")

    def _label(self) -> str:
        return f"{self.path.rpartition('.')[2].replace('_', ' ')} tap"


class WaterPipe(Part):
    """`[water.pipes.NAME]`: one run of pipe with its fittings.

    There is one from the tank to the pump, one from the pump to the tee, one from the tee to each tap; and
    where there is a heater, one from the tee to it and one with hot water on to each tap.
    """

    to: str = asks(
        "what it leads to: pump, taps (the shared run), heater, or a tap by its name", required=True
    )
    carries: Literal["cold", "hot"] = asks("what runs in it", default="cold")
    length: Length | None = asks("length of the run")
    material: Literal["PEX", "copper", "hose"] = asks("what it is made of", default="PEX")
    size: Length | None = asks("size as sold", default="1/2 in", how="practice")
    bore: Length | None = asks("inside diameter; left out: as the size has it")
    elbows: Count = asks("elbows in it", default=0)
    tees: Count = asks("tees that it leaves by their branch", default=0)
    valves: Count = asks("full-bore valves in it", default=0)
    checks: Count = asks("check valves in it", default=0)
    inserts: bool = asks("its fittings are pushed into the pipe, which narrows them", default=True)
    fittings: Coefficient | None = asks(
        "loss of everything else in it, as the sum of coefficients", default="0", how="convention",
        note="a clean strainer 2 to 4, a dirty one twice that",
    )  # fmt: skip
    insulation: Thickness | None = asks("insulation around it", default="0 in", how="convention")

    def _label(self) -> str:
        return f"water pipe {self.path.rpartition('.')[2].replace('_', ' ')}"


class Pump(Part):
    """`[water.pump]`: the pump and its pressure switch; the catalogue fills in what it knows of its item."""

    item: str | None = asks("the item it is, by name; left out: the only pump aboard")
    rows: PumpRows | None = asks(
        "its maker's curve: rows of pressure, flow and current; two rows are the least"
    )
    voltage: Volts | None = asks("voltage it runs on", default="12 V", how="practice")
    cut_in: Pressure | None = asks("pressure at which its switch starts it")
    cut_out: Pressure | None = asks("pressure at which its switch stops it")
    lock: Lock | None = asks(
        "what keeps it off on the road: nothing, a switch on the check list, a relay on the tow plug, or one "
        "that only the service key closes"
    )  # fmt: skip
    run_limit: Duration | None = asks("longest that a timer lets it run at a stretch, if there is one")

    def _label(self) -> str:
        return "pump"


class Accumulator(Part):
    """`[water.accumulator]`: a small pressure tank that spares the pump its short runs."""

    item: str | None = asks("the item it is, by name; left out: the only accumulator aboard")
    volume: Volume | None = asks("its volume, air and water")
    charge: Pressure | None = asks("pressure of its air when it is empty; 2 psi below the cut-in is usual")

    def _label(self) -> str:
        return "accumulator"


class Water(Part):
    """`[water]`: habits, the pitch's slope, and what is done against frost and germs."""

    hand_washes: Habit | None = asks(
        "times that each worker washes hands", default="4/h", how="practice",
        note="2.75 is what was seen, 8.6 what was called for",
    )  # fmt: skip
    wash_time: Duration | None = asks("time that the tap runs for it", default="20 s", how="practice")
    wash_flow: Flow | None = asks(
        "flow of the tap at the hand sink; left out: as worked out for it, else 1 gpm", shown="gpm|L/min"
    )
    raw_meat: RawMeat = asks("raw meat handled aboard: none, in batches before serving, or to order",
                             default="none")  # fmt: skip
    before: Duration | None = asks("time worked aboard before serving", default="30 min", how="practice")
    after: Duration | None = asks("time worked aboard after serving", default="45 min", how="practice")
    washes: Count | None = asks(
        "times a day that utensils are washed aboard; left out: once for every 4 h of use begun"
    )
    spare_sets: Count = asks("whole sets of spare utensils that are swapped in instead of washing", default=0)
    buckets: Count = asks("buckets of sanitiser, made anew every 4 h", default=1)
    cleaning: Volume | None = asks("water to clean up with at the end", default="2.5 gal", how="practice")
    purge: Share | None = asks(
        "what is run to waste beside what is sold in drinks", default="10 %", how="practice"
    )
    refills: Count = asks("times a day that the fresh tank is filled again and the waste tank emptied",
                          default=0)  # fmt: skip
    spare: Share | None = asks("spare over the day's need", default="10 %", how="practice", note="10 to 20 %")
    tilt: Tilt | None = asks(
        "most that the parked cart leans in any direction", default="1 deg", how="practice"
    )
    temperature: Temperature | None = asks(
        "temperature of the water in pipes", default="60 °F", how="practice"
    )
    ice_cabinet: Volume | None = asks(
        "volume of the cabinet that ice lies in", default="0 gal", how="convention"
    )
    bleach: Share | None = asks("strength of the bleach, from its label", default="6 %", how="practice")
    shock: Coefficient | None = asks(
        "chlorine that the tank is sanitised with, in parts per million", default="50", how="practice"
    )
    freeze_loss: Annotated[Measure, Reads("heat_loss", most="200 W/K")] | None = asks(
        "heat that the fresh tank loses for each degree", default="14 BTU/(h·°F)", how="practice",
        shown="BTU/(h*°F)|W/K", note="30 gal of bare plastic; half of it with an inch of foam",
    )  # fmt: skip
    pump: Pump = asks("the pump", default=Pump())
    accumulator: Accumulator = asks("the accumulator", default=Accumulator())
    pipes: dict[str, WaterPipe] = asks("runs of pipe", default={})
    taps: dict[str, Tap] = asks("the taps", default={})
