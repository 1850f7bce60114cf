"""The panels together: their rating, what is lost, what the controller makes of it and passes on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from curbwright import data, units
from curbwright.build.solar import Solar
from curbwright.equations import solar as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet


@dataclass(frozen=True)
class Array:
    """The panels together and what stands between them and the bank."""

    count: Figure
    rated: Figure
    efficiency: Figure
    losses: Figure
    most: Figure
    """Most power that the controller passes on."""


def array_of(solar: Solar, figures: Mapping[str, Figure], sheet: Worksheet) -> Array:
    """Write the panels together, their losses and their controller."""
    if solar.count is not None or not solar.panels:
        count = sheet.given(solar["count"])
    else:
        count = sheet.choice(
            "panel_count", "panels", float(len(solar.panels)), "solar.panels", ", ".join(solar.panels)
        )
    rated = sheet.work(
        "rated_all",
        "rated power of all panels",
        eq.panels_together,
        one=sheet.given(solar["rated"]),
        count=count,
    )
    return Array(
        count,
        rated,
        _efficiency(solar, figures, sheet),
        _losses(solar, sheet),
        _most(solar, figures, rated, sheet),
    )


def _losses(solar: Solar, sheet: Worksheet) -> Figure:
    if solar.losses is not None:
        return sheet.given(solar["losses"])
    parts = {
        row["loss"]: sheet.tabled(
            f"loss_{row['loss']}",
            f"lost to {row['says']}",
            float(units.read(row["share"], "share")),
            "1",
            source=row["source"],
            row=row["how"],
            shown="%",
        )
        for row in data.table("solar/losses")
    }
    return sheet.work("losses_together", "losses together", eq.losses_together, shown="%", **parts)


def _efficiency(solar: Solar, figures: Mapping[str, Figure], sheet: Worksheet) -> Figure:
    """Of an MPPT controller as given; a switching one works the panels at the battery's voltage."""
    if solar.controller.kind == "MPPT":
        return sheet.given(solar.controller["efficiency"])
    return sheet.work(
        "switching",
        "what the controller uses of the panels",
        eq.switching_efficiency,
        shown="%",
        battery=charging_voltage(figures),
        best=sheet.given(solar["best_voltage"]),
        series=sheet.given(solar["in_series"]),
    )


def _most(solar: Solar, figures: Mapping[str, Figure], rated: Figure, sheet: Worksheet) -> Figure:
    """Most power that the controller passes on; without its rating, all that the panels can make."""
    if solar.controller.current is None:
        return sheet.largest("most", "most power to the battery", {"the panels' rating": rated})
    return sheet.work(
        "most",
        "most power to the battery",
        eq.power_at,
        current=sheet.given(solar.controller["current"]),
        voltage=charging_voltage(figures),
    )


def charging_voltage(figures: Mapping[str, Figure]) -> Figure:
    """Return the voltage the bank is charged to; raises MissingInput where there is none."""
    if "battery.charging.voltage" not in figures:
        raise MissingInput("battery", "the bank that the panels charge is not known yet")
    return figures["battery.charging.voltage"]
