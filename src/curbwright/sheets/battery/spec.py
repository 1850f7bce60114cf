"""What is known of the bank's batteries: written beside one, of them all, from the catalogue, or typical."""

from __future__ import annotations

from curbwright import data, units
from curbwright.build.battery import Bank, Piece, names
from curbwright.build.cart import Build
from curbwright.build.fit import Item
from curbwright.errors import MissingInput
from curbwright.figures import Entry, Figure, Worksheet
from curbwright.units import KINDS

LITHIUM = "LFP"
_LIKE_AGM = {"gel": "AGM"}
"""Kinds of battery that a table has no rows for, and whose rows stand in."""


class Spec:
    """One bank: its sections of the build file, and the typical values of its chemistry."""

    def __init__(self, build: Build, bank: Bank) -> None:
        self.build = build
        self.bank = bank
        listed = [(name, build.items.get(name)) for name in names(bank.pieces)]
        self.pieces: dict[str, Item] = {name: item for name, item in listed if item is not None}

    @property
    def chemistry(self) -> str:
        """The kind of the first battery; raises MissingInput where nothing tells."""
        return self.chemistry_of(self._first)

    def chemistry_of(self, piece: Piece | None) -> str:
        """The kind of one battery; raises MissingInput where nothing tells."""
        found: str | None = self._part(piece, "chemistry").chemistry
        if found is None:
            raise MissingInput("battery.chemistry", "battery: kind of battery is not given")
        return found

    @property
    def lithium(self) -> bool:
        """Whether it is lithium iron phosphate."""
        return self.chemistry == LITHIUM

    def entry(self, field: str) -> Entry:
        """Return a field of the first battery as a sheet takes it."""
        return self._part(self._first, field)[field]

    def entry_of(self, piece: Piece | None, field: str) -> Entry:
        """Return a field of one battery as a sheet takes it."""
        return self._part(piece, field)[field]

    def has(self, field: str) -> bool:
        """Whether the first battery has a field, written or filled in."""
        return getattr(self._part(self._first, field), field) is not None

    def rates(self) -> Piece | None:
        """The section whose table of capacity by time holds, if there is one with three rows or more."""
        part = self._part(self._first, "rates")
        return part if part.rates is not None and len(part.rates) >= 3 else None

    def typical(self, sheet: Worksheet, quantity: str, name: str) -> Figure:
        """Write what is typical of the chemistry."""
        row = data.table("battery/chemistry").row(quantity)
        kind = KINDS[row["kind"]]
        shown = "%" if kind.name == "share" else kind.shown
        return sheet.tabled(
            f"typical_{quantity}",
            name,
            float(units.read(row[self.chemistry], kind.name)),
            kind.unit,
            source=row["source"],
            row=f"{self.chemistry}, {row['how']}",
            shown=shown,
        )

    def given_or_typical(self, sheet: Worksheet, field: str, quantity: str, name: str) -> Figure:
        """Write a field of the batteries, or what is typical of their chemistry where it is left out."""
        return sheet.given(self.entry(field)) if self.has(field) else self.typical(sheet, quantity, name)

    def table_rows(self, table: str) -> list[dict[str, str]]:
        """The rows of a table that hold for the chemistry."""
        found = data.table(table)
        known = {row["chemistry"] for row in found}
        chemistry = self.chemistry if self.chemistry in known else _LIKE_AGM.get(self.chemistry, "")
        return [dict(row) for row in found if row["chemistry"] == chemistry]

    @property
    def _first(self) -> Piece | None:
        return next((item.battery for item in self.pieces.values()), None)

    def _part(self, piece: Piece | None, field: str) -> Piece:
        """Where a field of a battery comes from: its own section, the bank's, then the catalogue."""
        if piece is not None and field in piece.model_fields_set and field not in piece._filled:
            return piece
        if field in self.bank.model_fields_set or piece is None or getattr(piece, field) is None:
            return self.bank
        return piece
