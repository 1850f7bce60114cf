"""Published tables as CSV files, one table a file; this module only reads them."""

from __future__ import annotations

import csv
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from curbwright import units
from curbwright.errors import UnknownName
from curbwright.units import Measure


@dataclass(frozen=True)
class Table:
    """A table: its rows in order, each a mapping of column to text; the first column names the row."""

    name: str
    columns: tuple[str, ...]
    rows: tuple[Mapping[str, str], ...]

    def keys(self) -> tuple[str, ...]:
        """The first column."""
        return tuple(row[self.columns[0]] for row in self.rows)

    def row(self, key: str) -> Mapping[str, str]:
        """Return the first row with a key; raises UnknownName."""
        for row in self.rows:
            if row[self.columns[0]] == key:
                return row
        raise UnknownName(f"{self.name} has no row {key!r}; it has {', '.join(self.keys())}")

    def quantity(self, key: str, column: str, kind: str) -> Measure:
        """Return a cell as a quantity of a kind, in SI."""
        return units.read(self.row(key)[column], kind)

    def __iter__(self) -> Iterator[Mapping[str, str]]:
        return iter(self.rows)


@cache
def table(name: str) -> Table:
    """Read a table by its path below this folder, without the ending; raises UnknownName."""
    place = files(__name__).joinpath(f"{name}.csv")
    try:
        text = place.read_text(encoding="utf-8")
    except OSError:
        raise UnknownName(f"there is no table {name!r}") from None
    reader = csv.DictReader(text.splitlines())
    rows = tuple(dict(row) for row in reader)
    return Table(name, tuple(reader.fieldnames or ()), rows)
