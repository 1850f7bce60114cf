"""Fills what a build file leaves out from the catalogue; what the builder wrote always wins."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from curbwright.build import catalogue
from curbwright.build.problems import Problem
from curbwright.build.typical_cold import cold_fills
from curbwright.build.typical_cooking import cooking_fills
from curbwright.build.typical_gas import gas_fills
from curbwright.build.typical_power import fills
from curbwright.build.typical_water import water_fills
from curbwright.errors import UnknownName

Known = dict[str, tuple[str, str]]
"""What was filled in, field by field: how it is known, and from where."""
Typical = dict[str, tuple[Any, str, str]]
"""What can be filled in, field by field: the text, how it is known, and from where."""

_SIZES = ("width", "depth", "height")
_RATINGS = {
    "capacity": "volume", "charge": "charge", "gas_input": "gas_input", "bowl_depth": "bowl_depth",
}  # fmt: skip
_CLEARANCES = {
    "clear_side": "combustible_side", "clear_rear": "combustible_rear",
    "front_clear": "front_service",
}  # fmt: skip
_PARTS: dict[str, dict[str, tuple[str, ...]]] = {
    "electric": {
        "power": ("power_running", "power_input", "input_power", "power_12v", "power", "power_max"),
        "start_multiple": ("start_multiple",),
        "power_factor": ("power_factor",),
    },
}
"""What of an item's sub-parts the catalogue can fill, by the ratings looked for in turn."""
_SUPPLIES: dict[str, dict[str, tuple[str, ...]]] = {
    "inverter": {
        "rating": ("power",), "surge": ("surge",), "tare": ("tare",),
        "efficiency_part": ("efficiency_30pct",), "efficiency_full": ("efficiency_full",),
    },
    "generator": {"rating": ("power",), "surge": ("surge",)},
}  # fmt: skip
"""What of the sections below `[electrical]` the catalogue can fill, through the item they name."""
_INSTEAD = {"power": ("current",), "efficiency_part": ("part",)}
"""Fields that, once written, leave no room for a typical value."""


def fill(data: Mapping[str, Any]) -> tuple[dict[str, Any], dict[str, Known], list[Problem]]:
    """Return a build file's tables with typical values filled in, what was filled in by path, and problems.

    The tables may hold anything at all; what is no table of tables stays as it is, for the model to refuse.
    """
    items = data.get("items")
    if not isinstance(items, dict):
        return dict(data), {}, []
    filled: dict[str, Known] = {}
    problems: list[Problem] = []
    done = {key: _item(f"items.{key}", item, filled, problems) for key, item in items.items()}
    full = {**data, "items": done}
    if isinstance(data.get("electrical"), dict):
        full["electrical"] = _electrical(data["electrical"], items, filled)
    for place, known in (
        *fills(data),
        *gas_fills(data),
        *cold_fills(data),
        *cooking_fills(data),
        *water_fills(data),
    ):
        _put(full, place, known, filled)
    return full, filled, problems


def _put(full: dict[str, Any], place: tuple[str, ...], known: Typical, filled: dict[str, Known]) -> None:
    """Fill a section in where it stands, in copies of the tables above it."""
    section: Any = full
    for step in place:
        below = section.get(step, {}) if known else None
        if not isinstance(below, dict):
            return
        section[step] = dict(below)
        section = section[step]
    section.update({field: value for field, (value, _, _) in known.items()})
    filled[".".join(place)] = {field: (how, source) for field, (_, how, source) in known.items()}


def _item(path: str, item: Any, filled: dict[str, Known], problems: list[Problem]) -> Any:
    """An item with its own fields and those of its sub-parts filled in."""
    if not isinstance(item, dict) or not isinstance(item.get("like"), str):
        return item
    try:
        found = catalogue.find(item["like"])
    except UnknownName as unknown:
        problems.append(Problem(None, f"{path}.like", str(unknown), try_this="See: curbwright catalogue"))
        return item
    done = _filled(path, item, _of_item(found), filled)
    for name, wanted in _PARTS.items():
        if isinstance(item.get(name), dict):
            done[name] = _filled(f"{path}.{name}", item[name], _of_ratings(found, wanted), filled)
    return done


def _electrical(electrical: Mapping[str, Any], items: Mapping[str, Any], filled: dict[str, Known]) -> Any:
    done = dict(electrical)
    for name, wanted in _SUPPLIES.items():
        section = electrical.get(name)
        named = section.get("item") if isinstance(section, dict) else None
        item = items.get(named.removeprefix("items.")) if isinstance(named, str) else None
        if not isinstance(section, dict) or not isinstance(item, dict):
            continue
        try:
            found = catalogue.find(item["like"])
        except (UnknownName, KeyError, TypeError):  # said where the item stands, or it has no like
            continue
        done[name] = _filled(f"electrical.{name}", section, _of_ratings(found, wanted), filled)
    return done


def _filled(
    path: str, written: Mapping[str, Any], typical: Typical, filled: dict[str, Known]
) -> dict[str, Any]:
    missing = {
        field: known
        for field, known in typical.items()
        if field not in written and not any(other in written for other in _INSTEAD.get(field, ()))
    }
    filled[path] = {field: (how, source) for field, (_, how, source) in missing.items()}
    return {**{field: text for field, (text, _, _) in missing.items()}, **written}


def _of_item(item: catalogue.CatalogueItem) -> Typical:
    """The fields of an item that the catalogue can fill."""
    source = f"catalogue:{item.id}"
    quantities = {
        **{field: item.size.get(field) for field in _SIZES},
        "mass": item.mass_empty,
        **{field: item.ratings.get(rating) for field, rating in _RATINGS.items()},
        **{field: item.clearances.get(name) for field, name in _CLEARANCES.items()},
    }
    known = {field: (one.text, one.how, source) for field, one in quantities.items() if one is not None}
    return {"kind": (item.kind, "", source), **known}


def _of_ratings(item: catalogue.CatalogueItem, wanted: Mapping[str, tuple[str, ...]]) -> Typical:
    """The fields of a section that the catalogue's ratings can fill."""
    found: Typical = {}
    for field, names in wanted.items():
        rating = next((item.ratings[name] for name in names if name in item.ratings), None)
        if rating is not None:
            found[field] = (rating.text, rating.how, f"catalogue:{item.id}")
    return found
