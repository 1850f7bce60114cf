"""Small carts as build files, and what the fit sheet and its requirements say of them."""

from __future__ import annotations

from typing import Any

from curbwright.build.cart import Build
from curbwright.build.file import load_text
from curbwright.figures import Worksheet
from curbwright.requirements import Finding, judge
from curbwright.sheets import Worksheets
from curbwright.sheets.fit import fit_sheet
from curbwright.sheets.placing import place

Fields = dict[str, Any]
TRAILER: Fields = {
    "deck_length": "144 in", "deck_width": "76 in", "deck_height": "24 in", "ball_to_deck": "48 in",
    "overall_width": "96 in",
}  # fmt: skip
SHELL: Fields = {"height": "84 in", "wall_thickness": "2 in", "roof_thickness": "2 in"}
"""Outside 144 by 76 in; the room inside is 140 in long from 2 in to 142 in, 72 in wide and 82 in high."""


def thing(side: str, back: str | None, size: str, **fields: Any) -> Fields:
    """An item: its wall, where it begins, and its size as "width x depth x height" in inches."""
    width, depth, height = (f"{one} in" for one in size.split("x"))
    placed = {} if back is None else {"back": back}
    return {"side": side, **placed, "width": width, "depth": depth, "height": height, **fields}


def counter(side: str = "curb", back: str | None = "20 in", size: str = "60x24x36", **fields: Any) -> Fields:
    """A steel counter."""
    return thing(side, back, size, **{"kind": "counter", **fields})


def cart(
    items: dict[str, Fields] | None = None,
    *,
    shell: Fields | None = SHELL,
    openings: dict[str, Fields] | None = None,
    trailer: Fields | None = None,
    **sections: Fields,
) -> Build:
    """A cart of 12 ft with a shell, read from its build file."""
    tables = {"cart": {"name": "Small"}, "trailer": {**TRAILER, **(trailer or {})}}
    if shell is not None:
        tables["shell"] = shell
    tables |= {f"shell.openings.{key}": fields for key, fields in (openings or {}).items()}
    tables |= {f"items.{key}": fields for key, fields in (items or {}).items()}
    tables |= {name.replace("__", "."): fields for name, fields in sections.items()}
    return load_text("".join(f"[{name}]\n{_lines(fields)}" for name, fields in tables.items()))


def _lines(fields: Fields) -> str:
    return "".join(f"{key} = {_value(value)}\n" for key, value in fields.items() if value is not None)


def _value(value: Any) -> str:
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, list):
        return f"[{', '.join(map(_value, value))}]"
    return f'"{value}"' if isinstance(value, str) else str(value)


def sheet_of(build: Build) -> Worksheet:
    """The fit sheet of a cart."""
    return fit_sheet(build, place(build))


def inches(build: Build, id: str) -> float:
    """A figure of the fit sheet in inches; ``id`` without the leading fit."""
    return float(sheet_of(build).figures()[f"fit.{id}"]) / 0.0254


def findings(build: Build) -> dict[str, Finding]:
    """What the space requirements say, by id without the leading space."""
    placing = place(build)
    sheet = fit_sheet(build, placing)
    sheets = Worksheets(build, placing, (sheet,), sheet.figures(), sheet.all_gaps())
    found = judge(sheets)
    return {one.id.removeprefix("space."): one for one in found if one.id.startswith("space.")}


def verdict(build: Build, id: str) -> str:
    """The verdict on one requirement, or "not asked" where the cart has nothing of the kind."""
    found = findings(build).get(id)
    return "not asked" if found is None or found.verdict == "not applicable" else found.verdict


def notes(build: Build) -> list[str]:
    """Every note of the fit sheet."""

    def of(sheet: Worksheet) -> list[str]:
        return [*sheet.notes, *(note for below in sheet.sections for note in of(below))]

    return of(sheet_of(build))
