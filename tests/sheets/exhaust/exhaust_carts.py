"""A small cart under a hood as a build file, and what the exhaust sheet and its requirements say of it."""

from __future__ import annotations

from curbwright.build.cart import Build
from curbwright.build.file import load_text
from curbwright.figures import Figure
from curbwright.requirements import Finding, judge
from curbwright.sheets import work
from curbwright.sheets.exhaust import exhaust_sheet
from curbwright.sheets.placing import place

CFM = 0.3048**3 / 60
FPM = 0.3048 / 60
INCH, FOOT = 0.0254, 0.3048
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
crew = 2
[pitch]
high = "90 °F"
low = "70 °F"
humidity = "50 %"
altitude = "0 ft"
"""
PLATE = """
[items.plate]
kind = "griddle"
side = "street"
back = "20 in"
width = "36 in"
depth = "24 in"
height = "36 in"
gas_input = "60,000 BTU/h"
connects = ["gas"]
"""
HOOD = """
[items.hood]
kind = "hood"
side = "street"
back = "14 in"
above = "66 in"
width = "48 in"
depth = "36 in"
height = "18 in"
"""
FAN = """
[items.fan]
kind = "fan_120v"
side = "centre"
back = "30 in"
above = "84 in"
width = "20 in"
depth = "20 in"
height = "20 in"
[items.fan.electric]
bus = "120 V inverter"
power = "400 W"
"""
EXHAUST = """
[exhaust]
style = "wall canopy"
overhang = "6 in"
filters = 2
filter = "20x20"
filter_above = "24 in"
fan = "fan"
curve = [
    ["1900 cfm", "0 in WC", "250 W"], ["1400 cfm", "0.8 in WC", "300 W"], ["400 cfm", "1.4 in WC", "350 W"],
]
interlock = true
heat_plan = true
[exhaust.duct]
diameter = "12 in"
length = "4 ft"
[exhaust.openings.low]
area = "3 ft2"
cover = "open"
level = "low"
always_open = true
[exhaust.openings.high]
area = "1 ft2"
cover = "open"
level = "high"
always_open = true
"""
WHOLE = CART + PLATE + HOOD + FAN + EXHAUST


def build(text: str, *changes: tuple[str, str]) -> Build:
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return load_text(text)


def figures(text: str = WHOLE, *changes: tuple[str, str]) -> dict[str, Figure]:
    cart = build(text, *changes)
    return exhaust_sheet(cart, place(cart)).figures()


def findings(text: str = WHOLE, *changes: tuple[str, str]) -> dict[str, Finding]:
    found = judge(work(build(text, *changes)))
    return {one.id.removeprefix("exhaust."): one for one in found if one.id.startswith("exhaust.")}


def verdict(id: str, *changes: tuple[str, str]) -> str:
    return findings(WHOLE, *changes)[id].verdict
