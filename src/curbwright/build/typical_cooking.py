"""Fills what a build file leaves out of a cooking thing from the catalogue."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from curbwright.build import catalogue
from curbwright.errors import UnknownName

_KNOWN = {
    "plate_width": "plate_width", "plate_depth": "plate_depth", "plate_thickness": "plate_thickness",
    "efficiency": "cooking_efficiency", "idle_rate": "idle_rate_per_area",
}  # fmt: skip

Fill = dict[str, tuple[Any, str, str]]
"""Fields to fill in: what stands in, how it is known, and from where."""


def cooking_fills(data: Mapping[str, Any]) -> Iterator[tuple[tuple[str, ...], Fill]]:
    """Yield, by the path of a section, what the catalogue knows of what a `cooking` part leaves out."""
    items = data.get("items")
    for name, item in items.items() if isinstance(items, dict) else ():
        written = item.get("cooking") if isinstance(item, dict) else None
        if not isinstance(written, dict):
            continue
        try:
            found = catalogue.find(item["like"])
        except (UnknownName, KeyError, TypeError):  # an unknown one is said where it stands
            continue
        known = {field: found.ratings.get(rating) for field, rating in _KNOWN.items()}
        yield (
            ("items", name, "cooking"),
            {
                field: (rating.text, rating.how, f"catalogue:{found.id}")
                for field, rating in known.items()
                if rating is not None and field not in written
            },
        )
