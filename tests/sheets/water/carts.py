"""Hand-made carts with sinks, tanks, a pump and taps, for the sheets of water, hot water and drains."""

from __future__ import annotations

import curbwright
from curbwright.figures import Figure
from curbwright.requirements import Finding, judge
from curbwright.sheets import Worksheets

GALLON, GPM, PSI = 0.003785411784, 0.0000630901964, 6894.757293168
INCH, POUND, HOUR = 0.0254, 0.45359237, 3600.0

CART = """
[cart]
name = "Hand-made"
[trailer]
deck_length = "10 ft"
deck_width = "6 ft 8 in"
deck_height = "20 in"
ball_to_deck = "48 in"
bare_mass = "800 lb"
bare_tongue = "100 lb"
[trailer.axle]
back = "70 in"
track = "88 in"
[shell]
height = "7 ft"
[day]
opens = "10:00"
closes = "16:00"
crew = 2
drive = "30 min"
"""
SINKS = """
[items.ware]
kind = "sink3"
side = "curb"
back = "60 in"
width = "40 in"
depth = "18 in"
height = "12 in"
above = "24 in"
mass = "40 lb"
work_height = "36 in"
bowl_depth = "10 in"
[items.ware.water]
bowl_length = "12 in"
bowl_width = "12 in"
[items.hands]
kind = "hand_sink"
side = "curb"
back = "40 in"
width = "12 in"
depth = "14 in"
height = "12 in"
above = "24 in"
mass = "11 lb"
work_height = "36 in"
bowl_depth = "5 in"
[items.hands.water]
bowl_length = "9 in"
bowl_width = "9 in"
"""
TANKS = """
[items.fresh]
kind = "tank_fresh"
side = "street"
back = "20 in"
width = "40 in"
depth = "20 in"
height = "16 in"
mass = "24 lb"
capacity = "50 gal"
[items.fresh.water]
fill_bore = "3/4 in"
sloped = true
[items.waste]
kind = "tank_waste"
side = "street"
back = "66 in"
width = "44 in"
depth = "20 in"
height = "20 in"
mass = "32 lb"
capacity = "75 gal"
[items.waste.water]
drain_bore = "1 in"
drain_valve = true
sloped = true
"""
PUMP = """
[items.pump]
like = "pump-12v-3.0"
side = "street"
back = "112 in"
[water.pump]
lock = "service key relay"
[water.accumulator]
volume = "1.2 gal"
charge = "38 psi"
"""
TAPS = """
[water.taps.wash]
sink = "hands"
flow = "1 gpm"
above_rim = "4 in"
spout_bore = "1/2 in"
[water.taps.ware]
sink = "ware"
flow = "2.2 gpm"
above_rim = "6 in"
spout_bore = "1/2 in"
"""
PIPES = """
[water.pipes.suction]
to = "pump"
length = "3 ft"
fittings = "3"
[water.pipes.shared]
to = "taps"
length = "5 ft"
elbows = 2
checks = 1
[water.pipes.wash]
to = "wash"
size = "3/8 in"
length = "6 ft"
elbows = 2
[water.pipes.ware]
to = "ware"
length = "8 ft"
elbows = 3
"""
WHOLE = (SINKS, TANKS, PUMP, TAPS, PIPES)


def text(*parts: str, swap: dict[str, str] | None = None) -> str:
    """A cart as TOML, later parts after earlier ones, with words swapped that must be there."""
    written = "\n".join((CART, *parts))
    for old, new in (swap or {}).items():
        assert old in written, old
        written = written.replace(old, new)
    return written


def sheets(*parts: str, swap: dict[str, str] | None = None) -> Worksheets:
    """Work out a cart."""
    return curbwright.work(curbwright.read_text(text(*parts, swap=swap)))


def figures(*parts: str, swap: dict[str, str] | None = None) -> dict[str, Figure]:
    """The figures of a cart, all sheets."""
    return sheets(*parts, swap=swap).figures


def findings(*parts: str, swap: dict[str, str] | None = None) -> dict[str, Finding]:
    """What a cart is held to, by the ids of the findings."""
    return {one.id: one for one in judge(sheets(*parts, swap=swap))}


def notes(worked: Worksheets, id: str) -> list[str]:
    """Every note of a sheet and its sections."""
    waiting, found = [worked.sheet(id)], []
    while waiting:
        one = waiting.pop()
        found += one.notes
        waiting += one.sections
    return found
