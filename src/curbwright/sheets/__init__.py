"""Calculation sheets: a build in, every number with its working out."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from curbwright.build.cart import Build
from curbwright.figures import Figure, Gap, Worksheet
from curbwright.sheets.placing import Placing, place


@dataclass(frozen=True)
class Worksheets:
    """Every sheet of one build."""

    build: Build
    placing: Placing
    sheets: tuple[Worksheet, ...]
    figures: dict[str, Figure] = field(repr=False)
    gaps: list[Gap]

    def sheet(self, id: str) -> Worksheet:
        """Return one sheet by its trade; raises KeyError."""
        return {sheet.id: sheet for sheet in self.sheets}[id]


def work(build: Build) -> Worksheets:
    """Work out every sheet of a build; a later sheet may take figures of those before it."""
    from curbwright.sheets.balance import balance_sheet
    from curbwright.sheets.battery import battery_day_sheet, battery_sheet
    from curbwright.sheets.circuits import circuits_sheet
    from curbwright.sheets.cold import cold_sheet
    from curbwright.sheets.cooking import cooking_sheet
    from curbwright.sheets.exhaust import exhaust_sheet
    from curbwright.sheets.fit import fit_sheet
    from curbwright.sheets.food import food_sheet
    from curbwright.sheets.gas import gas_sheet
    from curbwright.sheets.solar import solar_sheet
    from curbwright.sheets.water import water_sheet

    placing = place(build)
    sheets: list[Worksheet] = []
    figures: dict[str, Figure] = {}
    in_order: tuple[Callable[[], Worksheet], ...] = (
        lambda: placing.sheet,
        lambda: balance_sheet(build, placing),
        lambda: fit_sheet(build, placing),
        lambda: cold_sheet(build, placing),
        lambda: gas_sheet(build, placing),
        lambda: exhaust_sheet(build, placing),
        lambda: cooking_sheet(build, placing),
        lambda: food_sheet(build, placing),
        lambda: water_sheet(build, placing, figures),
        lambda: battery_sheet(build, placing),
        lambda: solar_sheet(build, placing, figures),
        lambda: circuits_sheet(build, placing, figures),
        lambda: battery_day_sheet(build, figures),
    )
    for worked in in_order:
        sheets.append(worked())
        figures.update(sheets[-1].figures())
    gaps = [gap for sheet in sheets for gap in sheet.all_gaps()]
    return Worksheets(build, placing, tuple(sheets), figures, gaps)
