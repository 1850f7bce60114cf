"""Fills what a build file leaves out of a cold box from the catalogue."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from curbwright.build import catalogue, kinds
from curbwright.errors import UnknownName

_RATINGS = {
    "volume": ("volume",), "wall": ("insulation",), "running_power": ("power_running",),
    "cut_out": ("cut_off_voltage",), "ice": ("ice_capacity", "ice"),
    "conductance": ("heat_gain_per_degree",),
}  # fmt: skip
_MEANS = (
    ("mean_power", "average_power_90f_ambient", "90 °F"), ("day_energy", "energy_per_day_75f", "75 °F"),
)  # fmt: skip
"""What a box draws on average, by the rating's name, and the air temperature in that name."""
_BY_KIND = {
    "freezer": {"set_point": "0 °F", "loaded_temperature": "10 °F", "wall": "2 1/2 in"},
    "ice_chest": {"ice_contact": "15 W/K"},
}
"""What is usual of a kind of box, as common practice has it."""

Fill = dict[str, tuple[Any, str, str]]
"""Fields to fill in: what stands in, how it is known, and from where."""


def cold_fills(data: Mapping[str, Any]) -> Iterator[tuple[tuple[str, ...], Fill]]:
    """Yield, by the path of its section, what the catalogue knows of each box that keeps food cold.

    A section that the build file leaves out altogether is filled in too.
    """
    items = data.get("items")
    for name, item in items.items() if isinstance(items, dict) else ():
        try:
            found = catalogue.find(item["like"])
        except (UnknownName, KeyError, TypeError, AttributeError):  # an unknown one is said where it stands
            continue
        if kinds.find(found.kind).is_("cold_box"):
            yield ("items", name, "cold"), _left_out(found, item.get("cold"))


def _left_out(item: catalogue.CatalogueItem, written: Any) -> Fill:
    source = f"catalogue:{item.id}"
    known: Fill = {}
    for field, names in _RATINGS.items():
        rating = next((item.ratings[name] for name in names if name in item.ratings), None)
        if rating is not None:
            known[field] = (rating.text, rating.how, source)
    for field, name, air in _MEANS:
        if name in item.ratings:
            mean = item.ratings[name]
            known |= {field: (mean.text, mean.how, source), "rated_air": (air, mean.how, source)}
            break
    for field, text in _BY_KIND.get(item.kind, {}).items():
        known.setdefault(field, (text, "practice", source))
    return {
        field: fill for field, fill in known.items() if not (isinstance(written, dict) and field in written)
    }
