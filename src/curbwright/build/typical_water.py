"""Fills what a build file leaves out of sinks, steam tables, pump and accumulator from the catalogue."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from curbwright.build import catalogue
from curbwright.errors import UnknownName

_WET = {
    "bowl_length": "bowl_length", "bowl_width": "bowl_width", "holds": "water",
    "gives_off": "evaporation_lid_off",
}  # fmt: skip
_WET_KINDS = ("sink3", "sink2", "hand_sink", "prep_sink", "steam_table")
_PARTS = {
    "pump": {"cut_in": "cut_in", "cut_out": "cut_out", "voltage": "voltage"},
    "accumulator": {"volume": "volume", "charge": "precharge"},
}

Fill = dict[str, tuple[Any, str, str]]
"""Fields to fill in: what stands in, how it is known, and from where."""


def water_fills(data: Mapping[str, Any]) -> Iterator[tuple[tuple[str, ...], Fill]]:
    """Yield, by the path of a section, what the catalogue knows of what it leaves out."""
    tables = data.get("items")
    items: dict[str, Any] = tables if isinstance(tables, dict) else {}
    found = {name: _like(item) for name, item in items.items()}
    known = {name: one for name, one in found.items() if one is not None}
    for name, one in known.items():
        if one.kind in _WET_KINDS:
            yield ("items", name, "water"), _left_out(one, _WET, items[name].get("water"))
    water = data.get("water")
    for part, wanted in _PARTS.items():
        section = water.get(part) if isinstance(water, dict) else None
        item = _the_one(part, section, known, items)
        if item is not None:
            fill = _left_out(item, wanted, section)
            if part == "pump" and "pump" in item.tables and not _has(section, "rows"):
                curve = item.tables["pump"]
                fill["rows"] = ([list(row) for row in curve.rows], curve.how, f"catalogue:{item.id}")
            yield ("water", part), fill


def _the_one(
    kind: str, section: Any, known: Mapping[str, catalogue.CatalogueItem], items: Mapping[str, Any]
) -> catalogue.CatalogueItem | None:
    """The catalogue item of the part that a section names, or of the only one of its kind aboard."""
    named = section.get("item") if isinstance(section, dict) else None
    if isinstance(named, str):
        return known.get(named.removeprefix("items."))
    aboard = [name for name, item in items.items() if _kind(item, known.get(name)) == kind]
    return known.get(aboard[0]) if len(aboard) == 1 else None


def _kind(item: Any, like: catalogue.CatalogueItem | None) -> Any:
    written = item.get("kind") if isinstance(item, dict) else None
    return written if written is not None else like.kind if like is not None else None


def _left_out(item: catalogue.CatalogueItem, wanted: Mapping[str, str], written: Any) -> Fill:
    known = {field: item.ratings.get(name) for field, name in wanted.items()}
    return {
        field: (rating.text, rating.how, f"catalogue:{item.id}")
        for field, rating in known.items()
        if rating is not None and not _has(written, field)
    }


def _has(section: Any, field: str) -> bool:
    return isinstance(section, dict) and field in section


def _like(section: Any) -> catalogue.CatalogueItem | None:
    """The catalogue item that a section is like, if it names one that there is."""
    try:
        return catalogue.find(section["like"])
    except (UnknownName, KeyError, TypeError, AttributeError):  # an unknown one is said where it stands
        return None
