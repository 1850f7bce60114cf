"""Small carts with a bank and panels as build files, and what their sheets and requirements say of them."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from pathlib import Path
from textwrap import dedent

from curbwright.build.cart import Build
from curbwright.build.file import load_text, read
from curbwright.figures import Figure, Worksheet
from curbwright.requirements import Finding, Requirement, judge
from curbwright.sheets import Worksheets
from curbwright.sheets.battery import battery_day_sheet, battery_sheet
from curbwright.sheets.placing import place
from curbwright.sheets.solar import solar_sheet

CART = dedent("""
    [cart]
    name = "Bank"

    [trailer]
    deck_length = "3 m"
    deck_width = "2 m"
    deck_height = "0.5 m"
    ball_to_deck = "1 m"
""")
AGM = dedent("""
    [battery]
    chemistry = "AGM"
    voltage = "12 V"
    capacity = "100 Ah"
    capacity_rate = "20 h"
    in_parallel = 2
    age = "100 %"
    beside = []
""")
LFP = dedent("""
    [battery]
    chemistry = "LFP"
    voltage = "12.8 V"
    capacity = "200 Ah"
    age = "100 %"
    beside = []
""")
AH = WH = 3600.0


def loads(energy: float = 1000.0, current: float = 60.0, start: float | None = None) -> dict[str, Figure]:
    """What the circuits would say: Wh a day, and the current with everything running."""
    sheet = Worksheet("circuits", "stands in for the circuits")
    sheet.tabled("energy_per_day", "energy a day", energy * WH, "J", source="convention")
    sheet.tabled("mean_power", "mean power", energy / 24, "W", source="convention")
    sheet.tabled("largest_dc_current", "largest current", current, "A", source="convention")
    if start is not None:
        sheet.tabled("largest_start_power", "worst start", start, "W", source="convention")
    return sheet.figures()


def worked(text: str | Path, drawn: Mapping[str, Figure] | None = None) -> Worksheets:
    """Work the bank, the panels and a day of a build file; ``drawn`` stands in for the circuits."""
    build: Build = load_text(CART + text) if isinstance(text, str) else read(text)
    placing = place(build)
    bank = battery_sheet(build, placing)
    figures = {**bank.figures(), **(loads() if drawn is None else drawn)}
    solar = solar_sheet(build, placing, figures)
    figures |= solar.figures()
    day = battery_day_sheet(build, figures)
    sheets = (bank, solar, day)
    for sheet in sheets:
        figures |= sheet.figures()
    return Worksheets(build, placing, sheets, figures, [gap for one in sheets for gap in one.all_gaps()])


def figure(text: str, id: str, drawn: Mapping[str, Figure] | None = None) -> float:
    return float(worked(text, drawn).figures[id])


@cache
def rows() -> tuple[Requirement, ...]:
    """The requirements of the bank and the panels."""
    folder = files("curbwright").joinpath("data", "requirements")
    texts = [folder.joinpath(f"{name}.toml").read_text(encoding="utf-8") for name in ("battery", "solar")]
    return tuple(Requirement(**row) for text in texts for row in tomllib.loads(text)["requirement"])


def findings(text: str | Path, drawn: Mapping[str, Figure] | None = None) -> dict[str, Finding]:
    """Every finding of the battery and solar documents, by its id."""
    return {one.id: one for one in judge(worked(text, drawn), rows())}


def verdict(text: str | Path, id: str, drawn: Mapping[str, Figure] | None = None) -> str:
    found = [one for key, one in findings(text, drawn).items() if key == id or one.requirement.id == id]
    assert len(found) == 1, [one.id for one in found]
    return found[0].verdict
