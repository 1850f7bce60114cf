"""What a catalogue item is made of: quantities with a band, connections, tables, and what names mean."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from curbwright.errors import UnknownName

DATA = Path(__file__).parent.parent / "data"


@dataclass(frozen=True)
class Rating:
    """What a name in the catalogue stands for: a row of data/ratings.csv.

    ``kind`` is a kind of the unit reader. ``per`` (of ``per_kind``) says per what the quantity counts, where
    no kind has the unit: an inch of fall per foot. ``of`` is what a plain number counts.
    """

    name: str
    kind: str
    per: str
    per_kind: str
    of: str
    means: str

    def value(self, text: str) -> float:
        """Read a text as a quantity of this name, in SI; raises UnitProblem."""
        from curbwright import units

        value = float(units.read(text, self.kind))
        return value / float(units.read(self.per, self.per_kind)) if self.per else value


@dataclass(frozen=True)
class CatalogueQuantity:
    """A typical value with the low and high end of its class, as text with units, and how it is known.

    ``how`` is one of read, computed, memory, practice; ``source`` a key of data/sources.csv.
    """

    text: str
    low: str
    high: str
    how: str
    source: str
    rating: Rating

    @property
    def value(self) -> float:
        """The typical value in SI."""
        return self.rating.value(self.text)

    @property
    def lowest(self) -> float:
        """The low end of the class in SI."""
        return self.rating.value(self.low)

    @property
    def highest(self) -> float:
        """The high end of the class in SI."""
        return self.rating.value(self.high)

    @property
    def spread(self) -> float:
        """One standard deviation in SI: a quarter of the band, as common practice has it."""
        return (self.highest - self.lowest) / 4

    @property
    def says(self) -> str:
        """The typical value as it should print: ``58 dBA``, ``0.125 in per 1 ft``."""
        per = f"per {self.rating.per}" if self.rating.per else ""
        return " ".join(part for part in (self.text, self.rating.of, per) if part)


@dataclass(frozen=True)
class Connection:
    """One service an item is connected to: its size in the trade's words and where on the item it is."""

    service: str
    size: str
    position: str
    how: str
    source: str


@dataclass(frozen=True)
class CatalogueTable:
    """A small table of an item: a pump or fan curve, inverter efficiency, cable by run."""

    name: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    """Cells as text with their units."""
    how: str
    source: str
    note: str

    def column(self, name: str) -> tuple[float, ...]:
        """Return a column in SI, top to bottom; raises UnknownName."""
        if name not in self.columns:
            raise UnknownName(
                f"the {self.name} table has no column {name!r}; it has {', '.join(self.columns)}"
            )
        at, rating = self.columns.index(name), ratings()[name]
        return tuple(rating.value(row[at]) for row in self.rows)


@dataclass(frozen=True)
class ReviewHint:
    """What a plan reviewer looks for; ``sources`` are keys of data/sources.csv."""

    key: str
    says: str
    how: str
    sources: tuple[str, ...]


@cache
def ratings() -> Mapping[str, Rating]:
    """Return what every size, rating, clearance and table column means, by name."""
    return {row["name"]: Rating(**row) for row in _csv("ratings.csv")}


@cache
def review_hints() -> Mapping[str, ReviewHint]:
    """Return every review hint by key."""
    rows = _csv("equipment/review.csv")
    return {
        row["key"]: ReviewHint(row["key"], row["says"], row["how"], tuple(row["source"].split()))
        for row in rows
    }


@cache
def warnings() -> Mapping[str, str]:
    """Return every warning by key."""
    return {row["key"]: row["says"] for row in _csv("equipment/warnings.csv")}


def quantity(name: str, entry: Mapping[str, str]) -> CatalogueQuantity:
    """Make a quantity of its entry in a group file; without a band low and high are the typical value."""
    text = entry["typical"]
    low, high = entry.get("low", text), entry.get("high", text)
    return CatalogueQuantity(text, low, high, entry["how"], entry["source"], ratings()[name])


def table(name: str, entry: Mapping[str, Any]) -> CatalogueTable:
    """Make a table of its entry; a cell that is a bare number takes the unit of its column."""
    rows = tuple(
        tuple(
            cell if isinstance(cell, str) else f"{cell} {unit}"
            for cell, unit in zip(row, entry["units"], strict=True)
        )
        for row in entry["rows"]
    )
    return CatalogueTable(name, tuple(entry["columns"]), rows, entry["how"], entry["source"], entry["note"])


def _csv(path: str) -> list[dict[str, str]]:
    with (DATA / path).open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(lines))
