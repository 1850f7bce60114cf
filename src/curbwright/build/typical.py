"""Fills what an item leaves out from the catalogue; what the builder wrote always wins."""

from __future__ import annotations

from typing import Any

from curbwright.build import catalogue
from curbwright.build.problems import Problem
from curbwright.errors import UnknownName

_SIZES = ("width", "depth", "height")
_RATINGS = {"capacity": "volume", "charge": "charge", "gas_input": "gas_input"}
_CLEARANCES = {
    "clear_side": "combustible_side", "clear_rear": "combustible_rear",
    "front_clear": "front_service",
}  # fmt: skip


def fill(items: Any) -> tuple[Any, dict[str, dict[str, tuple[str, str]]], list[Problem]]:
    """Return items with typical values filled in, what was filled in (how, source), and the problems met.

    ``items`` is the raw table of the build file and may be anything at all; what is not a table of tables
    is returned as it came, for the model to refuse.
    """
    if not isinstance(items, dict):
        return items, {}, []
    filled: dict[str, dict[str, tuple[str, str]]] = {}
    problems: list[Problem] = []
    done: dict[str, Any] = {}
    for key, item in items.items():
        done[key] = item
        if not isinstance(item, dict) or not isinstance(item.get("like"), str):
            continue
        try:
            typical = _typical(item["like"])
        except UnknownName as unknown:
            problems.append(
                Problem(None, f"items.{key}.like", str(unknown), try_this="See: curbwright catalogue")
            )
            continue
        missing = {field: known for field, known in typical.items() if field not in item}
        done[key] = {**{field: text for field, (text, _, _) in missing.items()}, **item}
        filled[key] = {field: (how, source) for field, (_, how, source) in missing.items()}
    return done, filled, problems


def _typical(id: str) -> dict[str, tuple[str, str, str]]:
    """The fields a catalogue item can fill: field to text, how, source."""
    item = catalogue.find(id)
    found = {"kind": (item.kind, "", f"catalogue:{id}")}
    quantities = {
        **{field: item.size.get(field) for field in _SIZES},
        "mass": item.mass_empty,
        **{field: item.ratings.get(rating) for field, rating in _RATINGS.items()},
        **{field: item.clearances.get(name) for field, name in _CLEARANCES.items()},
    }
    for field, quantity in quantities.items():
        if quantity is not None:
            found[field] = (quantity.text, quantity.how, f"catalogue:{id}")
    return found
