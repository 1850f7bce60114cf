"""The constants of data/water, each written on the sheet when it is first used."""

from __future__ import annotations

from curbwright import data, units
from curbwright.figures import Figure, Worksheet

FLOW = "gpm|L/min"
HOURLY = "gal/h|L/h"
PER_HOUR = "/h"
SHOWN = {"share": "%", "flow": FLOW, "rate": PER_HOUR}


class Constants:
    """Constants by name, out of one table, written once in a section of their own."""

    def __init__(self, sheet: Worksheet, table: str = "water/constants") -> None:
        self.sheet = sheet
        self.table = table
        self._known: dict[str, Figure] = {}

    def __getitem__(self, name: str) -> Figure:
        """Return a constant as a figure; raises UnknownName."""
        if name not in self._known:
            row = data.table(self.table).row(name)
            self._known[name] = self._written(name, row["says"], row["value"], row["kind"], row["source"])
        return self._known[name]

    def cell(self, table: str, row: str, column: str, kind: str, says: str) -> Figure:
        """Return a cell of another table as a figure, written once."""
        name = f"{row}.{column}".replace(" ", "_").replace("/", "_")
        if name not in self._known:
            found = data.table(table).row(row)
            source = found.get("source") or "trade-practice"
            self._known[name] = self._written(name, says, found[column], kind, source)
        return self._known[name]

    def _written(self, name: str, says: str, text: str, kind: str, source: str) -> Figure:
        value = float(units.read(text, kind))
        unit, shown = units.KINDS[kind].unit, SHOWN.get(kind)
        return self.sheet.tabled(name, says, value, unit, source=source, row=text, shown=shown)
