"""What the build file says of a thing that food is cooked on or kept hot in."""

from __future__ import annotations

from typing import Annotated, Literal

from curbwright.build.part import (
    Count,
    Duration,
    Length,
    Part,
    Power,
    Reads,
    Share,
    Temperature,
    Thickness,
    Volume,
    asks,
)
from curbwright.units import Measure

Area = Annotated[Measure, Reads("area", most="100 ft2")]
Film = Annotated[Measure, Reads("heat_transfer", most="50 W/(m2·K)")]
HeatFlux = Annotated[Measure, Reads("heat_flux", most="100000 W/m2")]


class CookingThing(Part):
    """`[items.NAME.cooking]`: a plate, a pot, a hot bath or a fryer, as far as heat and portions go."""

    method: Literal["plate", "pot", "bath", "fryer", "other"] | None = asks(
        "how it cooks; left out: as its kind does"
    )
    power: Power | None = asks("electricity it heats with, full on, where it burns no gas")
    plate_width: Length | None = asks("width of the plate that is cooked on")
    plate_depth: Length | None = asks("depth of the plate that is cooked on")
    plate_thickness: Thickness | None = asks("thickness of the plate")
    sides: Share | None = asks(
        "steel that heats up with the plate, as a share of it", default="30 %", how="practice",
        note="splash guards, trough and frame",
    )  # fmt: skip
    to_plate: Share | None = asks(
        "share of the input that reaches the steel while it heats up", default="45 %", how="practice",
        note="40 to 50 % of gas; the rest is flue and body",
    )  # fmt: skip
    efficiency: Share | None = asks(
        "share of the input that reaches the food at full load; left out: as its method usually does"
    )
    set_temperature: Temperature | None = asks(
        "temperature it cooks or holds at; left out: as its method usually does"
    )
    start_temperature: Temperature | None = asks(
        "temperature of it before it is lit", default="70 °F", how="practice"
    )
    film: Film | None = asks(
        "heat from its hot top to the air", default="1.5 BTU/(h·ft2·°F)", how="practice",
        note="still air over a hot plate; a draught takes more",
    )  # fmt: skip
    emissivity: Share | None = asks(
        "emissivity of its top",
        default="80 %",
        how="practice",
        note="seasoned steel; polished chrome 10 to 20 %",
    )
    idle_rate: HeatFlux | None = asks(
        "input it burns hot and empty, for its plate", default="3500 BTU/(h·ft2)", how="memory",
        source="makers-literature-recalled", note="the efficient class burns at most 2,650 BTU/(h·ft2)",
    )  # fmt: skip
    usable: Share | None = asks(
        "share of the plate that food can lie on", default="85 %", how="practice", note="edges are cooler"
    )
    turn: Duration | None = asks("time to take off, scrape and lay on again", default="25 s", how="practice")
    holds: Count | None = asks("portions in it at once, of a pot, a fryer or an oven")
    liquid: Volume | None = asks("water or oil in it")
    open_area: Area | None = asks("open surface of the water of a bath")
    latent_flux: HeatFlux | None = asks(
        "heat that open water at its temperature loses as vapour", default="780 BTU/(h·ft2)", how="computed",
        source="steam-table-heat-gain", note="of two wells of 12 x 20 in standing by at about 160 °F",
    )  # fmt: skip
    lidded: Share | None = asks(
        "share of that vapour that pans and lids keep in",
        default="0 %",
        how="practice",
        note="about 85 % all shut",
    )

    def _label(self) -> str:
        return self.path.removeprefix("items.").partition(".")[0].replace("_", " ")
