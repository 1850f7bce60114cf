"""The limits of the rules, and the constants of growth, written when they are first used."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright import data, units
from curbwright.build.cart import Build
from curbwright.figures import Figure, Worksheet


@dataclass(frozen=True)
class Limits:
    """Where the limits of a cart's food are written."""

    build: Build
    sheet: Worksheet

    @property
    def cold(self) -> Figure:
        """Warmest that food kept cold may be, as the place asks."""
        return self.sheet.given(self.build.place["cold_limit"])

    @property
    def hot(self) -> Figure:
        """Coldest that food kept hot may be, as the place asks."""
        return self.sheet.given(self.build.place["hot_limit"])

    def __getitem__(self, what: str) -> Figure:
        """Return a limit of data/food/limits.csv by what it limits; raises UnknownName."""
        row = data.table("food/limits").row(what)
        kind = "time" if row["limit"].endswith(("h", "s")) else "temperature"
        return self._once(
            what.replace(" ", "_"), what, units.read(row["limit"], kind), kind, row["source"], row["clause"]
        )

    def constant(self, name: str) -> Figure:
        """Return a constant of data/food/growth.csv; raises UnknownName."""
        row = data.table("food/growth").row(name)
        return self._once(
            name, row["says"], units.read(row["value"], row["kind"]), row["kind"], row["source"], row["value"]
        )

    def _once(self, id: str, name: str, value: float, kind: str, source: str, row: str) -> Figure:
        found = self.sheet.figures().get(f"{self.sheet.id}.{id}")
        unit = units.KINDS[kind].unit
        return found or self.sheet.tabled(id, name, float(value), unit, source=source, row=row)
