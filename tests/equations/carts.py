"""The twelve-item cart of tests/published/balance_mass.json, in SI, for the cross-checks."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path

from curbwright import units

CASES = Path(__file__).parents[1] / "published" / "balance_mass.json"
KINDS = {"mass": "mass", "back": "position", "across": "position", "up": "position",
         "mass_known_to": "share", "back_known_to": "length"}  # fmt: skip


@dataclass(frozen=True)
class Item:
    """One thing aboard: kilograms, metres, and one standard deviation of each."""

    mass: float
    back: float
    across: float = 0.0
    up: float = 0.0
    mass_spread: float = 0.0
    back_spread: float = 0.0


def cart(case: str) -> tuple[list[Item], float]:
    """Return the items of a published roll-up and its axle's station."""
    row = next(one for one in json.loads(CASES.read_text(encoding="utf-8")) if one["id"] == case)
    table = row["inputs"]["items"]
    items = []
    for cells in table["rows"].values():
        found = {
            column: cell * units.factor(unit, KINDS[column])[1]
            for (column, unit), cell in zip(table["columns"].items(), cells, strict=True)
        }
        items.append(
            Item(
                found["mass"],
                found["back"],
                found.get("across", 0.0),
                found.get("up", 0.0),
                found["mass"] * found.get("mass_known_to", 0.0),
                found.get("back_known_to", 0.0),
            )
        )
    axle = row["inputs"]["axle"]
    return items, axle["value"] * units.factor(axle["unit"], "length")[1]
