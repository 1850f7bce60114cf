"""Fills what a build file leaves out of burners, bottles and the regulator from the catalogue."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from curbwright.build import catalogue
from curbwright.errors import UnknownName

_BURNING = {"burners": "burners", "heat_up": "preheat_time"}
_BOTTLE = {"water_capacity": "water_capacity"}
_REGULATOR = {
    "capacity": "gas_capacity", "inlet_least": "inlet_least", "outlet": "outlet", "lock_up": "lock_up",
}  # fmt: skip

Fill = dict[str, tuple[Any, str, str]]
"""Fields to fill in: what stands in, how it is known, and from where."""


def gas_fills(data: Mapping[str, Any]) -> Iterator[tuple[tuple[str, ...], Fill]]:
    """Yield, by the path of a section, what the catalogue knows of what it leaves out."""
    items = data.get("items")
    for name, item in items.items() if isinstance(items, dict) else ():
        found = _like(item)
        if found is not None:
            known = _BOTTLE if found.kind == "cylinder" else _BURNING if "gas_input" in found.ratings else {}
            yield ("items", name, "gas"), _left_out(found, known, item.get("gas"))
    gas = data.get("gas")
    regulator = gas.get("regulator") if isinstance(gas, dict) else None
    found = _like(regulator)
    if found is not None:
        yield ("gas", "regulator"), _left_out(found, _REGULATOR, regulator)


def _left_out(item: catalogue.CatalogueItem, wanted: Mapping[str, str], written: Any) -> Fill:
    known = {field: item.ratings.get(name) for field, name in wanted.items()}
    return {
        field: (rating.text, rating.how, f"catalogue:{item.id}")
        for field, rating in known.items()
        if rating is not None and not (isinstance(written, dict) and field in written)
    }


def _like(section: Any) -> catalogue.CatalogueItem | None:
    """The catalogue item that a section is like, if it names one that there is."""
    try:
        return catalogue.find(section["like"])
    except (UnknownName, KeyError, TypeError, AttributeError):  # an unknown one is said where it stands
        return None
