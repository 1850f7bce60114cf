"""The drawing room's tables, read once: layers, paper sizes, scales and letter widths."""

from __future__ import annotations

import csv
from functools import cache
from importlib.resources import files


@cache
def rows(name: str) -> tuple[dict[str, str], ...]:
    """Return the rows of ``data/<name>.csv`` in the order they are written."""
    text = files("curbwright").joinpath("data", f"{name}.csv").read_text(encoding="utf-8")
    return tuple(csv.DictReader(text.splitlines()))
