"""What the build file says of propane: what burns it, bottles, regulator, the pipe to each appliance."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from curbwright.build.part import (
    Altitude,
    Clock,
    Count,
    Duration,
    Length,
    Mass,
    Part,
    Power,
    Pressure,
    Reads,
    Share,
    Temperature,
    asks,
)
from curbwright.units import Measure

Burners = Annotated[Measure, Reads("number", least="1", most="100")]
Film = Annotated[Measure, Reads("heat_transfer", least="0.1 BTU/(h·ft2·°F)", most="20 BTU/(h·ft2·°F)")]
Area = Annotated[Measure, Reads("area", most="40 ft2")]
Reserve = Annotated[Measure, Reads("share", most="90 %")]
Shell = Literal["steel", "aluminium", "composite"]
Material = Literal["schedule 40", "copper", "hose"]


class GasThing(Part):
    """`[items.NAME.gas]`: how an appliance burns gas, or what is stamped on a bottle.

    What is left out of an appliance is taken as its kind usually does; the plate on it always wins.
    """

    fuel: Literal["propane", "natural gas"] | None = asks("gas that its burners are made or converted for")
    least_pressure: Pressure | None = asks(
        "least pressure it must get while it burns", default="10 in WC", how="practice", shown="in WC|kPa",
        note="on its plate",
    )  # fmt: skip
    burners: Burners | None = asks("number of equal burners it has")
    manifold: Pressure | None = asks(
        "pressure at its burners' orifices", default="10 in WC", how="practice", shown="in WC|kPa",
        note="on its plate",
    )  # fmt: skip
    heat_up: Duration | None = asks("time at full fire until it is hot; left out: as its kind usually takes")
    busy: Share | None = asks(
        "share of its input it burns on average once hot, while serving; left out: as its kind usually does"
    )
    lit_at: Clock | None = asks("lit at; left out: in time to be hot when serving begins")
    out_at: Clock | None = asks("put out at; left out: when serving ends")
    good_to: Altitude | None = asks(
        "height above the sea that its orifices are made for", default="2000 ft", how="read",
        source="nfpa-54-orifice-annex", note="where nothing is said, burners are made for up to 2,000 ft",
    )  # fmt: skip
    water_capacity: Mass | None = asks("mass of water it holds, stamped WC (of a bottle)")
    filled: Share | None = asks(
        "share of its charge in it when the day begins (of a bottle)", default="100 %", how="practice",
        note="an exchanged 20 lb bottle often holds 15 lb only",
    )  # fmt: skip
    shell: Shell = asks("what it is made of (of a bottle)", default="steel")

    def _label(self) -> str:
        return self.path.split(".")[1].replace("_", " ") if self.path else ""


class Regulator(Part):
    """`[gas.regulator]`: what brings the pressure of the bottles down to that of the pipe."""

    like: str | None = asks("catalogue item that fills in what is left out here")
    stages: Annotated[int, Field(strict=True, ge=1, le=2)] | None = asks("stages it has: 1 or 2")
    capacity: Power | None = asks(
        "heat it passes at the lowest pressure of the bottles, from its maker's table", shown="BTU/h|kW"
    )
    inlet_least: Pressure | None = asks(
        "least pressure it needs from the bottles", default="10 psi", how="practice",
        note="5 to 20 psi by make; it decides how cold the bottles may get",
    )  # fmt: skip
    outlet: Pressure | None = asks(
        "pressure it keeps while gas flows", default="11 in WC", how="practice", shown="in WC|kPa"
    )
    lock_up: Pressure | None = asks("pressure it locks up at with nothing burning", shown="in WC|kPa")

    def _label(self) -> str:
        return "regulator"


class Section(Part):
    """`[gas.sections.NAME]`: one run of pipe or hose; together they branch from the regulator like a tree."""

    after: str | None = asks("section it goes on from; left out: it starts at the regulator")
    serves: list[str] = asks("items connected at its end", default=[])
    length: Length | None = asks("length of the run")
    pipe: Material = asks("what it is made of", default="schedule 40")
    size: Length | None = asks("size as sold, such as 1/2 in; left out: chosen, and printed as what to buy")
    carries: Power | None = asks(
        "heat it carries at a drop of 0.5 in WC, of a hose or connector whose maker says so", shown="BTU/h|kW"
    )
    elbows: Count = asks("elbows in it", default=0, how="convention")
    tees: Count = asks("tees that it leaves by their branch", default=0, how="convention")
    shut_off: bool = asks("a shut-off valve where it starts", default=False)

    def _label(self) -> str:
        return f"gas section {self.path.rpartition('.')[2].replace('_', ' ')}"


class Cabinet(Part):
    """`[gas.cabinet]`: a compartment for the bottles, tight to the inside and open to the outside only."""

    width: Length | None = asks("inside width")
    depth: Length | None = asks("inside depth")
    vent_top: Area | None = asks(
        "free area of its opening at the valves, after screen or louvre", shown="in2|cm2"
    )
    vent_bottom: Area | None = asks("free area of its opening at the floor", shown="in2|cm2")

    def _label(self) -> str:
        return "bottle cabinet"


class Gas(Part):
    """`[gas]`: bottles, regulator and pipe as a whole."""

    bottles: list[str] | None = asks(
        "bottles that are connected, in the order they are used; left out: every bottle aboard"
    )
    changeover: Literal["by hand", "automatic", "all open"] = asks(
        "how the next bottle is opened: by hand, by an automatic change-over, or all are open together",
        default="by hand",
    )
    ambient: Temperature | None = asks(
        "coldest air the bottles must work in; left out: the lowest of the pitch"
    )
    film: Film | None = asks(
        "heat from the air into a bottle, for its wetted wall and a degree; left out: by where they stand"
    )
    full_fire: Duration | None = asks("longest time with every burner on; left out: as long as serving lasts")
    reserve: Reserve | None = asks(
        "share of the gas that a day's plan leaves over", default="20 %", how="practice"
    )
    drop: Pressure | None = asks(
        "most pressure lost between regulator and any appliance", default="0.5 in WC", how="read",
        source="ifgc-tables", shown="in WC|kPa", note="what the code's tables for 11 in WC are made for",
    )  # fmt: skip
    place_limit: Mass | None = asks(
        "most propane that the place allows aboard, spare bottles included", default="200 lb", how="memory",
        source="ifc-319-8", note="cities ask for less: 90, 60, 40 and 20 lb are found; ask yours",
    )  # fmt: skip
    restraint: Mass | None = asks("load that the fastening of one bottle holds in any direction")
    master: bool | None = asks("a quarter-turn valve outside that shuts off everything, with a sign")
    alarm: str | None = asks("the item that sounds at leaking gas, by name")
    regulator: Regulator = asks("what brings the pressure down", default=Regulator())
    sections: dict[str, Section] = asks("runs of pipe and hose", default={})
    cabinet: Cabinet | None = asks("the compartment the bottles stand in, if any")
