"""Small carts on gas as build files, and what the gas sheet and its requirements say of them."""

from __future__ import annotations

from functools import cache
from typing import Any

from curbwright.build.cart import Build
from curbwright.build.file import load_text
from curbwright.figures import Figure, Worksheet
from curbwright.requirements import Finding, judge, requirements
from curbwright.sheets import Worksheets
from curbwright.sheets.gas import gas_sheet
from curbwright.sheets.placing import place

INCH, FOOT, POUND, BTU_H, HOUR = 0.0254, 0.3048, 0.45359237, 0.2930710701722222, 3600.0
WATER = 249.08891

CART = """
[cart]
name = "Small"

[trailer]
deck_length = "120 in"
deck_width = "76 in"
ball_to_deck = "48 in"

[shell]
height = "84 in"

[day]
opens = "10:00"
closes = "14:00"

[pitch]
high = "90 °F"
low = "70 °F"
altitude = "0 ft"

[items.plate]
kind = "griddle"
back = "20 in"
gas_input = "40,000 BTU/h"
connects = ["gas"]

[items.plate.gas]
fuel = "propane"
burners = "2"
heat_up = "30 min"
busy = "50 %"
least_pressure = "10 in WC"

[items.kettle]
kind = "burner"
back = "60 in"
gas_input = "20,000 BTU/h"
connects = ["gas"]

[items.kettle.gas]
fuel = "propane"
heat_up = "15 min"
busy = "25 %"

[items.bottle]
kind = "cylinder"
back = "-18 in"
width = "12.2 in"
depth = "12.2 in"
height = "18 in"
mass = "18 lb"
charge = "20 lb"

[items.bottle.gas]
water_capacity = "47.7 lb"

[items.spare]
kind = "cylinder"
back = "-18 in"
off_centre = "14 in"
width = "12.2 in"
depth = "12.2 in"
height = "18 in"
mass = "18 lb"
charge = "20 lb"

[items.spare.gas]
water_capacity = "47.7 lb"

[items.nose]
kind = "detector"
like = "detector-lp-12v"
back = "30 in"

[gas]
bottles = ["bottle", "spare"]
changeover = "all open"
ambient = "60 °F"
restraint = "152 lb"
master = true
alarm = "nose"
place_limit = "40 lb"

[gas.regulator]
stages = 2
capacity = "60,000 BTU/h"
inlet_least = "10 psi"
outlet = "11 in WC"

[gas.sections.main]
length = "10 ft"
size = "1/2 in"

[gas.sections.plate]
after = "main"
serves = ["plate"]
length = "4 ft"
pipe = "hose"
size = "1/2 in"
carries = "80,000 BTU/h"

[gas.sections.kettle]
after = "main"
serves = ["kettle"]
length = "10 ft"
pipe = "copper"
size = "3/8 in"
"""
"""Everything that is asked is answered, and holds."""


def changed(*changes: tuple[str, str], text: str = CART) -> str:
    """Return the text with each first line that begins with a text set anew; a header may go before a comma.

    ``("[gas] ambient", 'ambient = "20 °F"')`` looks below a header; nothing takes the line away.
    """
    lines = text.splitlines()
    for where, new in changes:
        header, _, field = where.rpartition(" ")
        start = lines.index(header) if header else 0
        at = next(n for n in range(start, len(lines)) if lines[n].startswith(f"{field} ="))
        lines[at : at + 1] = [new] if new else []
    return "\n".join(lines)


@cache
def sheets(text: str = CART) -> Worksheets:
    """The placing and the gas sheet of a build file."""
    build = load_text(text)
    return worked(build)


def worked(build: Build) -> Worksheets:
    placing = place(build)
    sheet = gas_sheet(build, placing)
    figures: dict[str, Figure] = {**placing.sheet.figures(), **sheet.figures()}
    return Worksheets(build, placing, (placing.sheet, sheet), figures, sheet.all_gaps())


def sheet(text: str = CART) -> Worksheet:
    return sheets(text).sheet("gas")


def figure(id: str, text: str = CART) -> float:
    return float(sheets(text).figures[f"gas.{id}"])


def findings(text: str = CART) -> dict[str, Finding]:
    rows = [row for row in requirements() if row.id.startswith("gas.")]
    return {one.id: one for one in judge(sheets(text), rows)}


def said(text: str, id: str) -> Any:
    """The verdict on a requirement, or on one thing of it."""
    return findings(text)[f"gas.{id}"].verdict
