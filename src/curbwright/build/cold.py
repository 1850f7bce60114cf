"""What the build file says of a box that keeps food cold: its walls, its lid, its machine, what is in it."""

from __future__ import annotations

from typing import Annotated, Literal

from curbwright.build.part import (
    Duration,
    Length,
    Mass,
    Part,
    Power,
    Reads,
    Share,
    Temperature,
    TemperatureDifference,
    Thickness,
    Volume,
    asks,
)
from curbwright.units import Measure

Insulation = Literal["polyurethane", "polyiso", "xps", "eps", "glass fibre", "vacuum panel"]
Food = Literal[
    "mixed", "drinks", "ground beef", "lean beef", "chicken", "cooked sausage", "fish", "eggs", "milk",
    "cheese", "butter", "cooked rice or beans", "dough", "cabbage", "carrots", "lettuce", "onions", "peppers",
    "potatoes", "spinach", "tomatoes",
]  # fmt: skip
Pack = Literal["ice", "cool pack", "salt pack", "cold salt pack"]
Face = Literal["top", "front", "back", "left", "right"]
Conductivity = Annotated[Measure, Reads("conductivity", least="0.001 W/(m·K)", most="1 W/(m·K)")]
GasketLoss = Annotated[Measure, Reads("conductivity", most="1 W/(m·K)")]
HeatLoss = Annotated[Measure, Reads("heat_loss", most="50 W/K")]
Openings = Annotated[Measure, Reads("rate", most="300/h")]
Voltage = Annotated[Measure, Reads("voltage", most="60 V")]
Energy = Annotated[Measure, Reads("energy", most="100 kWh")]
SubZero = Annotated[Measure, Reads("temperature", least="-60 °F", most="80 °F")]


class CompressorPoint(Part):
    """`[items.NAME.cold.points.NAME]`: one row of the maker's table of the compressor or of the whole box."""

    evaporating: SubZero | None = asks("evaporating temperature of the row")
    condensing: Temperature | None = asks("condensing temperature of the row")
    ambient: Temperature | None = asks("air temperature of the row, where the table has no condensing one")
    capacity: Power = asks("heat taken out while it runs", required=True)
    power: Power = asks("electricity drawn while it runs", required=True)

    def _label(self) -> str:
        key, _, row = self.path.removeprefix("items.").partition(".cold.points.")
        return f"{key.replace('_', ' ')}, {row}"


class ColdBox(Part):
    """`[items.NAME.cold]`: a refrigerator, a freezer or an ice chest, as far as heat is concerned.

    A maker's table of rows (`points`) wins over a rated capacity, and that over the watts it draws.
    """

    cooling: Literal["compressor", "ice", "thermo-electric"] | None = asks(
        "what keeps it cold; left out: ice in an ice chest, else a compressor"
    )
    stands: Literal["inside", "outside"] = asks("in the air of the cart or in the open", default="inside")
    inside_width: Length | None = asks("inside width; left out: from the volume, or the outside less walls")
    inside_depth: Length | None = asks("inside depth; left out: the outside less two walls")
    inside_height: Length | None = asks("inside height; left out: the outside less two walls")
    volume: Volume | None = asks("inside volume", shown="ft3|L")
    wall: Thickness | None = asks(
        "thickness of the insulation", default="1 1/2 in", how="practice", note="1 to 2 in in portable boxes"
    )
    insulation: Insulation = asks("kind of insulation", default="polyurethane")
    conductivity: Conductivity | None = asks("conductivity of the insulation; left out: as its kind has it")
    ageing: Share | None = asks(
        "what age, moisture, fasteners and bridges add to the conductivity", default="10 %", how="practice"
    )
    gasket_loss: GasketLoss | None = asks(
        "heat let in past the gasket, by its length", default="0.035 W/(m·K)", how="practice",
        shown="BTU/(h*ft*°F)|W/(m*K)", note="0.02 to 0.05 sound, far more where it gapes",
    )  # fmt: skip
    conductance: HeatLoss | None = asks("heat let in per degree, shut, where it was measured")
    fan: bool = asks("a fan stirs the air inside", default=False)
    inside_power: Power | None = asks("fan and light inside, on average", default="0 W", how="practice")
    hot_faces: list[Face] = asks("faces that something hot stands against", default=[])
    hot_rise: TemperatureDifference | None = asks(
        "how much hotter it is there",
        default="18 °F",
        how="practice",
        note="9 to 27 °F by a griddle or a flue",
    )
    sunny_faces: list[Face] = asks("outside faces that the sun shines on", default=[])
    colour: Literal["light", "dark"] = asks("colour of the sunny faces", default="dark")
    openings: Openings | None = asks(
        "how often it is opened while serving", default="12/h", how="practice", shown="/h"
    )
    open_for: Duration | None = asks("how long a door stands open each time", default="10 s", how="practice")
    spilled: Share | None = asks(
        "share of its air that a lid lets go each time", default="20 %", how="practice", note="10 to 30 %"
    )
    filled: Share | None = asks("share of the volume that is full", default="50 %", how="practice")
    set_point: SubZero | None = asks(
        "mean air temperature the thermostat keeps", default="36 °F", how="practice",
        note="a thermometer may read 2 °F low, so food is kept below its limit",
    )  # fmt: skip
    swing: TemperatureDifference | None = asks(
        "swing of the air between start and stop", default="4 °F", how="practice"
    )
    warm_spot: TemperatureDifference | None = asks(
        "how much warmer than the mean air its warmest place is", default="2 °F", how="practice",
        note="measure it: the thermometer belongs there",
    )  # fmt: skip
    running_power: Power | None = asks("electricity drawn while the compressor runs, from its plate")
    capacity: Power | None = asks("rated heat taken out while it runs")
    rated_evaporating: SubZero | None = asks(
        "evaporating temperature of that rating", default="-10 °C", how="practice"
    )
    rated_condensing: Temperature | None = asks(
        "condensing temperature of that rating", default="50 °C", how="practice"
    )
    points: dict[str, CompressorPoint] = asks("rows of the maker's table", default={})
    carnot_share: Share | None = asks(
        "performance as a share of the ideal machine's", default="35 %", how="memory",
        source="makers-literature-recalled", note="0.33 to 0.40 for small compressors with their electronics",
    )  # fmt: skip
    evaporator_below: TemperatureDifference | None = asks(
        "how far below the box air it evaporates", default="18 °F", how="practice", note="8 to 12 °C"
    )
    condenser_above: TemperatureDifference | None = asks(
        "how far above the air round it it condenses", default="27 °F", how="practice", note="10 to 18 °C"
    )
    condenser: Literal["inside", "outside"] = asks("where its condenser breathes", default="inside")
    condenser_rise: TemperatureDifference | None = asks(
        "how much warmer the air is that it draws in: its own breath, a hot neighbour", default="5 °F",
        how="practice", note="0 with a duct in and out, 20 °F and more boxed in",
    )  # fmt: skip
    standby: Power | None = asks("its controller and display, always on", default="1 W", how="practice")
    cut_out: Voltage | None = asks("voltage at which it switches itself off")
    mean_power: Power | None = asks("electricity it draws on average, shut, as its maker or a meter has it")
    day_energy: Energy | None = asks("electricity in 24 hours, shut, as its label or a meter has it")
    rated_air: Temperature | None = asks("air temperature of that mean or that label")
    food: Food = asks("what it mostly holds", default="mixed")
    food_mass: Mass | None = asks("food in it; left out: the stock of the item")
    loaded_mass: Mass | None = asks("food put in warm each day; left out: all of it")
    loaded_temperature: Temperature | None = asks(
        "temperature of food as it is put in", default="41 °F", how="practice",
        note="the warmest that a cold delivery may be",
    )  # fmt: skip
    loaded_over: Duration | None = asks(
        "time in which that food is brought down", default="4 h", how="practice"
    )
    warm_start: Temperature | None = asks(
        "temperature of box and contents when it is plugged in", default="86 °F", how="practice"
    )
    ice: Mass | None = asks("ice or packs in it", default="0 lb", how="convention")
    ice_kind: Pack = asks("ice, or the kind of pack", default="ice")
    ice_contact: HeatLoss | None = asks(
        "heat that reaches the ice per degree", default="2 W/K", how="practice",
        note="a flat pack in still air; 5 to 10 times that for ice in water",
    )  # fmt: skip
    thermometer: TemperatureDifference | None = asks("accuracy of the thermometer kept in it")
    certified: bool | None = asks("carries the mark of the commercial refrigeration standard (NSF/ANSI 7)")

    def _label(self) -> str:
        return self.path.removeprefix("items.").partition(".")[0].replace("_", " ")
