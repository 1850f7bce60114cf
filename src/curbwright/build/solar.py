"""What the build file says of the panels: what they are, how they lie, what stands in their light."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from curbwright.build.part import Angle, Part, Power, Reads, ReadsRows, Rows, Share, Speed, Temperature, asks
from curbwright.units import Measure

Volts = Annotated[Measure, Reads("voltage", least="1 V", most="600 V")]
Amperes = Annotated[Measure, Reads("current", least="0.1 A", most="500 A")]
PerDegree = Annotated[Measure, Reads("temperature_coefficient", most="2 %/°C")]
Compass = Annotated[Measure, Reads("angle", least="0 deg", most="360 deg")]
Turbidity = Annotated[Measure, Reads("number", least="1", most="12")]
ShadeRows = Annotated[Rows, ReadsRows("clock", "clock", "share", most=24)]


class Controller(Part):
    """`[solar.controller]`: what stands between the panels and the bank."""

    item: str | None = asks("the item it is, by name")
    kind: Literal["MPPT", "PWM"] = asks(
        "MPPT works the panels at their best voltage, PWM ties them to the battery's", default="MPPT"
    )
    current: Amperes | None = asks("largest current it gives the battery")
    most_voltage: Volts | None = asks("largest voltage its panel side stands")
    efficiency: Share | None = asks("power out over power in", default="95 %", how="practice",
                                    note="of an MPPT controller 95 to 98 %")  # fmt: skip

    def _label(self) -> str:
        return "solar controller"


class Solar(Part):
    """`[solar]`: the panels, all alike and all lying the same way.

    The place is that of `[pitch]`. Hours are those of the clock. Rows of `shade` say what takes how much of
    the sun when: `[["07:00", "09:30", "80 %"]]` for a tree in the morning.
    """

    panels: list[str] = asks("items that are its panels", default=[])
    count: Annotated[int, Field(strict=True, ge=1, le=60)] | None = asks(
        "number of panels; left out: as many as there are items"
    )
    in_series: Annotated[int, Field(strict=True, ge=1, le=20)] = asks(
        "panels in each string", default=1, how="convention"
    )
    rated: Power | None = asks("rated power of one panel")
    short_circuit: Amperes | None = asks("short-circuit current of one panel (Isc)")
    open_voltage: Volts | None = asks("open-circuit voltage of one panel (Voc)")
    best_voltage: Volts | None = asks("voltage of one panel at its rated power (Vmp)")
    loss_per_degree: PerDegree | None = asks(
        "power lost for each degree the cells are above 25 °C", default="0.44 %/°C", how="computed",
        source="cec-modules",
    )  # fmt: skip
    voltage_per_degree: PerDegree | None = asks(
        "open-circuit voltage gained for each degree below 25 °C", default="0.3 %/°C", how="practice"
    )
    tilt: Angle | None = asks("slope of the panels from level", default="0 deg", how="convention")
    azimuth: Compass | None = asks(
        "where they face, from north by east: south is 180 deg", default="180 deg", how="convention"
    )
    mounted: Literal["flat on the roof", "open"] = asks(
        "flat on the roof, where they run hotter, or open to the air behind", default="flat on the roof"
    )
    wind: Speed | None = asks("wind over them on a hot day", default="1 m/s", how="practice")
    losses: Share | None = asks(
        "lost to dirt, mismatch, wires and the rest; left out: the usual losses together"
    )
    turbidity: Turbidity | None = asks(
        "Linke turbidity of a clear sky; left out: that of the place and month, from a map of means",
        note="2 in clean mountain air, 3 to 4 usual, 5 and more in hazy towns",
    )  # fmt: skip
    shade: ShadeRows | None = asks("what takes the sun: rows of from, until, and the share it takes")
    coldest: Temperature | None = asks(
        "coldest bright morning they meet, for their voltage", default="14 °F", how="practice"
    )
    dull: Share | None = asks(
        "what a dull day gives of a clear one, where there is no weather file", default="20 %",
        how="practice", note="15 to 25 %",
    )  # fmt: skip
    weather_file: str | None = asks(
        "weather file of a typical year, TMY3 or EPW, in the folder of the build file or below it"
    )
    controller: Controller = asks("what stands between panels and bank", default=Controller())

    def _label(self) -> str:
        return "panels"
