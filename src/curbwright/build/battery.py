"""What the build file says of the bank: its batteries, what is left of them, how it is charged and vented."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from curbwright.build.part import Duration, Part, Reads, ReadsRows, Rows, Share, Temperature, asks
from curbwright.units import Measure

Chemistry = Literal["flooded", "AGM", "gel", "LFP"]
Supply = Literal["shore", "tow DC-DC", "tow lead", "generator"]
Capacity = Annotated[Measure, Reads("charge", least="0.1 Ah", most="5000 Ah")]
RatedTime = Annotated[Measure, Reads("time", least="1 min", most="240 h")]
Volts = Annotated[Measure, Reads("voltage", least="1 V", most="120 V")]
Amperes = Annotated[Measure, Reads("current", least="0.1 A", most="1000 A")]
FaultCurrent = Annotated[Measure, Reads("current", least="10 A", most="50000 A")]
Ohms = Annotated[Measure, Reads("resistance", least="0.01 mohm", most="1 ohm")]
Part_ = Annotated[Measure, Reads("share", least="5 %", most="100 %")]
Opening = Annotated[Measure, Reads("area", most="1000 in2")]
RateRows = Annotated[Rows, ReadsRows("time", "charge", most=5)]


class Piece(Part):
    """`[items.NAME.battery]`: one battery of the bank, from its label and its maker's sheet.

    What all batteries of the bank have in common may stand in `[battery]` instead.
    """

    chemistry: Chemistry | None = asks("kind of battery: flooded, AGM, gel, or lithium iron phosphate (LFP)")
    voltage: Volts | None = asks("nominal voltage of one battery")
    capacity: Capacity | None = asks("capacity of one battery")
    capacity_rate: RatedTime | None = asks(
        "time over which that capacity is drawn", note="100 Ah over 20 h and over 100 h are two batteries"
    )
    rates: RateRows | None = asks(
        "the maker's table: rows of a time and the capacity drawn over it, up to five"
    )
    inside_resistance: Ohms | None = asks(
        "inside resistance of one battery; left out: typical of its kind and size"
    )
    short_circuit: FaultCurrent | None = asks(
        "short-circuit current of one battery, from its maker; left out: from the resistance"
    )
    charge_voltage: Volts | None = asks(
        "voltage that one battery is charged to; left out: typical of its kind"
    )
    least_charge: Temperature | None = asks(
        "coldest at which its maker lets it be charged; left out: freezing for LFP"
    )
    usable: Part_ | None = asks(
        "share of its charge that a day may take; left out: half for lead acid, 80 % for LFP"
    )

    def _label(self) -> str:
        return self.path.removeprefix("items.").partition(".")[0].replace("_", " ")


class Charger(Part):
    """`[battery.chargers.NAME]`: something that charges the bank. Panels stand in `[solar]`."""

    supply: Supply = asks(
        "what it is fed by; tow lead is the battery tied straight to the tow vehicle's charge wire",
        required=True,
    )
    item: str | None = asks("the item it is, by name")
    current: Amperes | None = asks("charging current it gives")
    voltage: Volts | None = asks("voltage it charges the bank to; left out: what the batteries ask for")
    efficiency: Share | None = asks("power out over power in", default="88 %", how="practice")
    power_factor: Share | None = asks(
        "power over volts times amperes at the wall", default="80 %", how="practice", note="0.7 to 0.99"
    )
    input_voltage: Volts | None = asks(
        "voltage it is fed with; left out: 120 V, or 13 V from the tow vehicle"
    )
    time: Duration | None = asks(
        "time a day it is connected; left out: from a tow vehicle, the drive there and back"
    )

    def _label(self) -> str:
        return self.path.rpartition(".")[2].replace("_", " ")


class Bank(Piece):
    """`[battery]`: the bank as a whole, and what all its batteries have in common.

    A value beside an item that is one of its `pieces` holds for that battery alone. The maker's sheet, listed
    equipment and the electrical code of the place decide, not what stands here.
    """

    pieces: list[str] = asks("items that are its batteries", default=[])
    in_series: Annotated[int, Field(strict=True, ge=1, le=8)] = asks(
        "batteries in each string", default=1, how="convention"
    )
    in_parallel: Annotated[int, Field(strict=True, ge=1, le=16)] | None = asks(
        "strings side by side; left out: as many as the pieces make, or one"
    )
    age: Part_ | None = asks(
        "share of its first capacity that it still has", default="80 %", how="practice",
        note="80 % is what makers call worn out: size for the end of its life",
    )  # fmt: skip
    temperature: Temperature | None = asks(
        "temperature of the batteries while they work", default="77 °F", how="practice",
        note="colder gives less",
    )  # fmt: skip
    coldest_charge: Temperature | None = asks("coldest they are when they are charged")
    cold_lockout: bool = asks(
        "the batteries' own electronics, or every charger, refuses to charge below the coldest allowed",
        default=False,
    )
    cut_off: Volts | None = asks(
        "voltage of the bank at which its loads drop out; left out: 10.5 V for each 12 V"
    )
    margin: Share | None = asks("margin on a day's energy", default="15 %", how="practice")
    away: Duration | None = asks(
        "time from one charge to the next; left out: the serving time and the drive there and back"
    )
    vented: bool | None = asks("its box is open to the outside and tight to the inside")
    vent_low: Opening | None = asks("free area of the opening to the outside low in its box")
    vent_high: Opening | None = asks("free area of the opening to the outside high in its box")
    beside: list[str] | None = asks("other things in the same box or locker, by their items' names")
    chargers: dict[str, Charger] = asks("what charges it, besides panels", default={})

    def _label(self) -> str:
        return "battery"


def names(listed: list[str]) -> list[str]:
    """Return items' names without the table they stand in: ``items.house`` and ``house`` are one thing."""
    return [name.removeprefix("items.") for name in listed]
