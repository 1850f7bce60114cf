"""Fills what a build file leaves out of batteries, chargers and panels from the catalogue items they name."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from curbwright.build import catalogue
from curbwright.errors import UnknownName

_BATTERY = {
    "voltage": "nominal_voltage", "inside_resistance": "resistance", "charge_voltage": "charge_voltage",
    "least_charge": "charge_temp_least",
}  # fmt: skip
_CHARGER = {
    "current": "charge_current", "efficiency": "efficiency", "power_factor": "power_factor",
    "input_voltage": "voltage_in",
}  # fmt: skip
_PANEL = {"rated": "power_stc", "short_circuit": "isc", "open_voltage": "voc", "best_voltage": "vmp"}
_CONTROLLER = {"current": "current", "most_voltage": "pv_voltage_max", "efficiency": "efficiency"}
_CHEMISTRIES = {"Lithium iron phosphate": "LFP", "AGM": "AGM", "Flooded": "flooded", "Gel": "gel"}
"""How the name of a catalogue item begins, by the chemistry it is."""
_TWENTY_HOURS = "20 h"
_RATES = {"1h": "1 h", "3h": "3 h", "5h": "5 h", "10h": "10 h", "20h": _TWENTY_HOURS, "100h": "100 h"}

Fill = dict[str, tuple[Any, str, str]]
"""Fields to fill in: what stands in, how it is known, and from where."""
Sections = Iterator[tuple[tuple[str, ...], Fill]]


def fills(data: Mapping[str, Any]) -> Sections:
    """Yield, by the path of a section, what the catalogue knows of what it leaves out.

    What a build file says of the whole bank counts as written for each of its batteries.
    """
    items = _table(data, "items")
    bank = _table(data, "battery")
    for name in _names(bank.get("pieces")):
        found = _like(items, name)
        if found is not None:
            written = {*bank, *_table(_table(items, name), "battery")}
            yield ("items", name, "battery"), _without(_piece(found), written)
    for name, charger in _table(bank, "chargers").items():
        if isinstance(charger, dict):
            found = _like(items, charger.get("item"))
            yield ("battery", "chargers", name), _without(_of(found, _CHARGER), set(charger))
    solar = _table(data, "solar")
    panels = _names(solar.get("panels"))
    if panels:
        yield ("solar",), _without(_of(_like(items, panels[0]), _PANEL), set(solar))
    controller = _table(solar, "controller")
    found = _like(items, controller.get("item"))
    yield ("solar", "controller"), _without(_of(found, _CONTROLLER) | _switching(found), set(controller))


def _piece(item: catalogue.CatalogueItem) -> Fill:
    filled = _of(item, _BATTERY)
    source = f"catalogue:{item.id}"
    chemistry = next((word for start, word in _CHEMISTRIES.items() if item.name.startswith(start)), None)
    if chemistry is not None:
        filled["chemistry"] = (chemistry, "", source)
    if "capacity_20h" in item.ratings:
        capacity = item.ratings["capacity_20h"]
        filled["capacity"] = (capacity.text, capacity.how, source)
        filled["capacity_rate"] = (_TWENTY_HOURS, capacity.how, source)
    rows = [
        [time, item.ratings[f"capacity_{hours}"].text]
        for hours, time in _RATES.items() if f"capacity_{hours}" in item.ratings
    ]  # fmt: skip
    if len(rows) >= 3:
        filled["rates"] = (rows, item.ratings["capacity_20h"].how, source)
    return filled


def _switching(item: catalogue.CatalogueItem | None) -> Fill:
    """Whether a controller only switches, as its name says."""
    if item is None:
        return {}
    return {"kind": ("PWM" if item.name.startswith("PWM") else "MPPT", "", f"catalogue:{item.id}")}


def _of(item: catalogue.CatalogueItem | None, wanted: Mapping[str, str]) -> Fill:
    if item is None:
        return {}
    known = {field: item.ratings.get(name) for field, name in wanted.items()}
    return {
        field: (rating.text, rating.how, f"catalogue:{item.id}")
        for field, rating in known.items() if rating is not None
    }  # fmt: skip


def _without(fill: Fill, written: set[str]) -> Fill:
    """What is left to fill in; a capacity that is written takes its time and its table with it."""
    if not written.isdisjoint({"capacity", "rates"}):
        written = written | {"capacity", "capacity_rate", "rates"}
    return {field: known for field, known in fill.items() if field not in written}


def _like(items: Mapping[str, Any], name: object) -> catalogue.CatalogueItem | None:
    """The catalogue item that an item of the build file names, if both exist."""
    item = _table(items, name.removeprefix("items.")) if isinstance(name, str) else {}
    try:
        return catalogue.find(item["like"])
    except (UnknownName, KeyError, TypeError, AttributeError):  # said where the item stands
        return None


def _names(listed: object) -> list[str]:
    names = listed if isinstance(listed, list) else []
    return [name.removeprefix("items.") for name in names if isinstance(name, str)]


def _table(tables: Mapping[str, Any], name: str) -> dict[str, Any]:
    found = tables.get(name)
    return found if isinstance(found, dict) else {}
