"""The catalogue of typical equipment: generic sizes, masses, ratings, clearances, prices, how each is known.

A planning catalogue, largely from memory: the nameplate in a build file always wins. Each group is one file
of data/equipment, each item one paragraph of it, so that an item is read without reading the rest.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, NamedTuple

from curbwright.build.catalogue_parts import (
    DATA,
    CatalogueQuantity,
    CatalogueTable,
    Connection,
    ReviewHint,
    quantity,
    review_hints,
    table,
    warnings,
)
from curbwright.errors import UnknownName

_HEAD = re.compile(r'\n\n\["?([^"\]\n]+)"?\]\nname = "([^"\n]*)"\nkind = "([^"\n]*)"\n')


_WORD = re.compile("[a-z0-9.]{2,}")
_LONGEST_ID = 64
"""Longer texts are compared by their start: no id is longer, and comparing costs time."""


class UnknownItem(UnknownName):
    """An id that the catalogue does not list."""


class Line(NamedTuple):
    """One item as a list shows it."""

    id: str
    group: str
    kind: str
    name: str


@dataclass(frozen=True)
class CatalogueItem:
    """One generic piece of equipment.

    ``size`` holds width (along the wall), depth (from the wall into the room) and height. ``ratings`` and
    ``clearances`` are named as in data/ratings.csv. ``fill`` says what ``mass_filled`` is filled with.
    """

    id: str
    group: str
    kind: str
    name: str
    trades: tuple[str, ...]
    size: Mapping[str, CatalogueQuantity]
    mass_empty: CatalogueQuantity
    mass_filled: CatalogueQuantity | None
    fill: str
    price: CatalogueQuantity
    noise: CatalogueQuantity | None
    ratings: Mapping[str, CatalogueQuantity]
    clearances: Mapping[str, CatalogueQuantity]
    clearance_note: str
    connections: tuple[Connection, ...]
    service_access: str
    """How it is reached for service, by common practice; empty where nothing is to be said."""
    tables: Mapping[str, CatalogueTable]
    review: tuple[ReviewHint, ...]
    warnings: tuple[str, ...]
    note: str


@cache
def find(id: str) -> CatalogueItem:
    """Return the item of an id; raises UnknownItem, which names the nearest ids.

    >>> find("griddle-gas-36-3q").mass_empty.text
    '270 lb'
    """
    import tomllib

    place = _places().get(id)
    if place is None:
        raise UnknownItem(f'"{id[:_LONGEST_ID]}" is not in the catalogue{_near(id)}')
    line, start = place
    paragraph = _groups()[line.group][start:].partition("\n\n")[0]
    return _item(id, line.group, tomllib.loads(paragraph)[id])


def ids() -> tuple[str, ...]:
    """Return every id, group by group."""
    return tuple(line.id for line in lines())


def lines() -> tuple[Line, ...]:
    """Return every item as one line, group by group."""
    return tuple(line for line, _ in _places().values())


def search(words: str) -> list[Line]:
    """Return the items in whose id, name, kind or group every word appears, in the order of the catalogue.

    >>> [line.id for line in search("fresh tank 30")]
    ['tank-fresh-30']
    """
    wanted = words.lower().split()
    return [line for line in lines() if all(word in _words(line) for word in wanted)]


def _words(line: Line) -> str:
    return f"{line.id} {line.group} {line.kind} {line.name}".lower().replace("_", " ")


@cache
def _places() -> dict[str, tuple[Line, int]]:
    """Every item by id, with the place of its paragraph in the text of its group."""
    return {
        head[1]: (Line(head[1], group, head[3], head[2]), head.start() + 2)
        for group, text in _groups().items()
        for head in _HEAD.finditer(text)
    }


@cache
def _groups() -> dict[str, str]:
    """The text of every group file by group."""
    return {
        path.stem: path.read_text(encoding="utf-8") for path in sorted((DATA / "equipment").glob("*.toml"))
    }


def _near(id: str) -> str:
    """What may have been meant, as the end of a sentence: the nearest ids, or what the nearest words find."""
    from difflib import get_close_matches

    typed = id[:_LONGEST_ID].lower()
    near = get_close_matches(typed, ids(), n=3)
    if not near:
        known = sorted({word for line in lines() for word in _WORD.findall(_words(line))})
        words = [close[0] for word in _WORD.findall(typed) if (close := get_close_matches(word, known, n=1))]
        near = [line.id for line in search(" ".join(words))][:3] if words else []
    return f". Did you mean {' or '.join(near)}?" if near else ""


def _item(id: str, group: str, entry: dict[str, Any]) -> CatalogueItem:
    """Make an item of its entry in a group file."""
    one = {
        name: quantity(name, entry[name])
        for name in ("width", "depth", "height", "mass_empty", "mass_filled", "price", "noise")
        if name in entry
    }
    clearances = dict(entry.get("clearances", {}))
    note = clearances.pop("note", "")
    return CatalogueItem(
        id=id,
        group=group,
        kind=entry["kind"],
        name=entry["name"],
        trades=tuple(entry["trades"]),
        size={side: one[side] for side in ("width", "depth", "height")},
        mass_empty=one["mass_empty"],
        mass_filled=one.get("mass_filled"),
        fill=entry.get("fill", ""),
        price=one["price"],
        noise=one.get("noise"),
        ratings={name: quantity(name, rating) for name, rating in entry.get("ratings", {}).items()},
        clearances={name: quantity(name, clearance) for name, clearance in clearances.items()},
        clearance_note=note,
        connections=tuple(Connection(**connection) for connection in entry.get("connections", ())),
        service_access=entry.get("service_access", {}).get("says", ""),
        tables={name: table(name, rows) for name, rows in entry.get("tables", {}).items()},
        review=tuple(review_hints()[key] for key in entry.get("review", ())),
        warnings=tuple(warnings()[key] for key in entry.get("warnings", ())),
        note=entry.get("note", ""),
    )
