"""Calculation sheets: a build in, every number with its working out."""

from __future__ import annotations

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
    """Work out every sheet of a build."""
    from curbwright.sheets.balance import balance_sheet
    from curbwright.sheets.cold import cold_sheet
    from curbwright.sheets.fit import fit_sheet

    placing = place(build)
    sheets = (
        placing.sheet, balance_sheet(build, placing), fit_sheet(build, placing), cold_sheet(build, placing),
    )  # fmt: skip
    figures: dict[str, Figure] = {}
    for sheet in sheets:
        figures.update(sheet.figures())
    gaps = [gap for sheet in sheets for gap in sheet.all_gaps()]
    return Worksheets(build, placing, sheets, figures, gaps)
