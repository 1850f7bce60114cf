"""What the build file says of hood, filter, duct, fan, the air that comes in, and the cook's heat."""

from __future__ import annotations

from typing import Annotated, Literal

from curbwright.build.part import (
    Count,
    Length,
    Part,
    Position,
    Power,
    Pressure,
    Reads,
    ReadsRows,
    Rows,
    Share,
    asks,
)
from curbwright.units import Measure

Flow = Annotated[Measure, Reads("flow", most="20000 cfm")]
Area = Annotated[Measure, Reads("area", most="100 ft2")]
Film = Annotated[Measure, Reads("heat_transfer", least="0.01 BTU/(h·ft2·°F)", most="5 BTU/(h·ft2·°F)")]
FanRows = Annotated[Rows, ReadsRows("flow", "pressure", "power", most=20)]
AIR = "cfm|L/s"
WATER = "in WC|Pa"
SMALL = "in2|cm2"


class Duct(Part):
    """`[exhaust.duct]`: from the hood's collar to the open air."""

    diameter: Length | None = asks("inside diameter of a round duct")
    width: Length | None = asks("inside width of a rectangular duct")
    height: Length | None = asks("inside height of a rectangular duct")
    length: Length | None = asks("length from the collar to where the air leaves")
    bends: Count = asks("bends in it", default=0, how="convention")
    bend: Literal["smooth", "mitred"] = asks("how its bends are made", default="mitred")
    rain_cap: bool = asks("a cap that the air must turn under", default=False)
    roughness: Length | None = asks(
        "roughness of its inside", default="0.09 mm", how="memory", source="duct-friction",
        note="galvanised or welded steel, clean",
    )  # fmt: skip

    def _label(self) -> str:
        return "duct"


class AirOpening(Part):
    """`[exhaust.openings.NAME]`: where air comes in from outdoors."""

    opening: str | None = asks("opening of the shell that it is, by name; else say its area")
    area: Area | None = asks("clear area in the wall, before screen or louvre", shown=SMALL)
    cover: Literal["open", "screen", "louvre", "screen and louvre"] = asks(
        "what is in it", default="screen and louvre"
    )
    level: Literal["low", "high", "middle"] = asks(
        "where in the wall: a foot from the floor, a foot from the roof, or between", default="middle"
    )
    always_open: bool = asks("cannot be shut while fan or burners run", default=False)

    def _label(self) -> str:
        return f"opening {self.path.rpartition('.')[2].replace('_', ' ')}"


class Exhaust(Part):
    """`[exhaust]`: the hood over the appliances and all that moves and replaces the air."""

    hood: str | None = asks("the hood, by its item's name; left out: the only hood aboard")
    style: Literal["wall canopy", "single island", "double island", "eyebrow", "backshelf"] | None = asks(
        "how the hood hangs: a canopy against a wall or open all round, an eyebrow, a low backshelf hood"
    )
    duty: Literal["light", "medium", "heavy", "extra-heavy"] | None = asks(
        "heaviest cooking below it (solid fuel is extra-heavy); left out: by what stands there"
    )
    appliances: list[str] | None = asks(
        "items below the hood, by name; left out: everything aboard that gives off grease"
    )
    listed_rate: Flow | None = asks("exhaust on the label of a listed hood", shown=AIR)
    overhang: Position | None = asks(
        "least the hood reaches past the appliances at its open sides (negative: it stands back)"
    )
    filters: Count | None = asks("filters in the hood")
    filter: Literal["20x20", "16x20", "20x16", "16x16"] | None = asks("their size, width by height, inches")
    filter_drop: Pressure | None = asks(
        "pressure lost in them at 300 ft/min, clean", default="0.35 in WC", how="practice", shown=WATER
    )
    filter_above: Length | None = asks("lower edge of the filters above the cooking surface")
    grease_margin: Pressure | None = asks(
        "pressure kept for grease in filters and duct", default="0.2 in WC", how="practice", shown=WATER
    )
    fan: str | None = asks("the fan, by its item's name")
    curve: FanRows | None = asks(
        "rows of the fan's curve: flow, static pressure, electric power; left out: of its catalogue item"
    )
    makeup_pressure: Pressure | None = asks(
        "most the air inside may be below that outdoors", default="0.02 in WC", how="memory",
        source="recalled", shown=WATER, note="more draws flue gas back out of heaters",
    )  # fmt: skip
    combustion: Literal["direct", "level ducts", "one high"] = asks(
        "how air for the burners comes in: two openings straight through the wall, two level ducts, or one"
        " high opening",
        default="direct",
    )
    interlock: bool | None = asks("the gas shuts off, or stays off, while the fan does not run")
    fan_off_flow: Flow | None = asks(
        "air that comes through by draught alone with the fan off and the hatch all but shut",
        default="50 cfm", how="practice", shown=AIR,
    )  # fmt: skip
    wall_film: Film | None = asks(
        "heat through walls and roof, for an area and a degree", default="0.2 BTU/(h·ft2·°F)", how="practice",
        note="2 in walls with steel or wood framing",
    )  # fmt: skip
    roof: Literal["white", "dark"] = asks("colour of the roof", default="dark")
    other_heat: Power | None = asks(
        "heat of lights, fridges and tills inside", default="300 W", how="practice"
    )
    heat_plan: bool | None = asks(
        "breaks out of the heat, water and a fan at the cook are planned for hot days"
    )
    capture: Share | None = asks(
        "share of the plume that the hood catches when it moves enough", default="85 %", how="practice",
        note="85 to 95 % sized right; wind through the hatch can halve it",
    )  # fmt: skip
    duct: Duct = asks("the duct", default=Duct())
    openings: dict[str, AirOpening] = asks("where air comes in", default={})
