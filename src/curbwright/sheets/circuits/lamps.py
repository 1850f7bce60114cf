"""The lamps that the road asks for, by overall width, length and gross rating."""

from __future__ import annotations

from collections.abc import Mapping

from curbwright import data, units
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.circuits.wiring import Wiring

_FIELDS = {
    "every trailer": "basic", "wide trailer": "wide", "long trailer": "long", "heavy wide trailer": "tape",
}  # fmt: skip
"""The field of `[electrical.lamps]` that answers each rule of data/towing/lamps.csv."""


def lamps(wiring: Wiring, sheet: Worksheet) -> None:
    """Write, for every rule that applies, whether its lamps are missing."""
    for row in data.table("towing/lamps"):
        field = _FIELDS[row["rule"]]
        below = sheet.section(field, f"{row['rule']}: {row['asks_for']}")
        with below.attempt():
            if not _applies(wiring, row, below):
                continue
            fitted = getattr(wiring.build.electrical.lamps, field)
            if fitted is None:
                raise MissingInput(f"electrical.lamps.{field}", f"{row['asks_for']}: not said whether fitted")
            below.choice("missing", f"{row['rule']}: lamps missing", 0.0 if fitted else 1.0,
                         f"electrical.lamps.{field}", str(fitted).lower())  # fmt: skip


def _applies(wiring: Wiring, row: Mapping[str, str], sheet: Worksheet) -> bool:
    """Whether a rule's width, length and gross are reached; raises MissingInput for what is not known."""
    trailer = wiring.build.trailer
    if row["width_from"]:
        width = sheet.given(trailer["overall_width"])
        least = _tabled("width_from", "width from which they are asked", row, "length", sheet)
        if float(width) < float(least):
            return False
    if row["length_from"]:
        length = wiring.figures.get("fit.overall_length") or sheet.given(trailer["deck_length"])
        least = _tabled("length_from", "length from which they are asked", row, "length", sheet)
        if float(length) < float(least):
            return False
    if row["gross_over"]:
        gross = sheet.given(trailer["gross_rating"])
        over = _tabled("gross_over", "gross rating above which it is asked", row, "mass", sheet)
        return float(gross) > float(over)
    return True


def _tabled(column: str, name: str, row: Mapping[str, str], kind: str, sheet: Worksheet) -> Figure:
    unit = units.KINDS[kind].unit
    return sheet.tabled(column, name, float(units.read(row[column], kind)), unit, source=row["source"])
