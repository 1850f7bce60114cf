"""Hand-made carts with a cold box, for the sheet."""

from __future__ import annotations

import curbwright
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.cold import cold_sheet
from curbwright.sheets.placing import place

CART = """
[cart]
name = "Hand-made"
[trailer]
deck_length = "10 ft"
deck_width = "6 ft 8 in"
ball_to_deck = "48 in"
[shell]
height = "7 ft"
[day]
opens = "10:30"
closes = "15:30"
"""
CHEST = """
[items.chest]
kind = "cold_chest_12v"
back = "3 in"
stock = "62 lb"
opens = "lid"
[items.chest.cold]
inside_width = "24 in"
inside_depth = "16 in"
inside_height = "16 in"
wall = "2 in"
running_power = "58 W"
"""


def sheet(*parts: str, base: str = CART) -> Worksheet:
    """Work out the cold sheet of a cart written as TOML, later parts after earlier ones."""
    build = curbwright.read_text("\n".join((base, *parts)))
    return cold_sheet(build, place(build))


def figures(*parts: str, base: str = CART) -> dict[str, Figure]:
    """Return the figures of the cold sheet of a cart."""
    return sheet(*parts, base=base).figures()


def notes(below: Worksheet) -> list[str]:
    """Every note of a sheet and its sections."""
    return [*below.notes, *(note for section in below.sections for note in notes(section))]
