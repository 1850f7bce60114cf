"""Food: the path of everything sold against the rules' temperatures and times."""

from __future__ import annotations

from collections.abc import Callable

from curbwright.build.cart import Build
from curbwright.build.food import MenuItem
from curbwright.figures import Worksheet
from curbwright.sheets.food.grown import growth_band
from curbwright.sheets.food.limits import Limits
from curbwright.sheets.food.path import (
    cooked,
    cooling,
    doing,
    kept_cold,
    kept_hot,
    killed,
    out_of_control,
    received,
    reheating,
)
from curbwright.sheets.placing import Placing

__all__ = ["food_sheet"]

Part = Callable[[MenuItem, Limits, Worksheet], None]
TOPICS: dict[str, tuple[str, tuple[str, ...], Part]] = {
    "received": ("received", ("receive",), received),
    "cold": ("kept cold", ("cold hold",), kept_cold),
    "cook": ("cooked", ("cook",), cooked),
    "hot": ("kept hot", ("hot hold",), kept_hot),
    "warm": ("neither cold nor hot", ("prep", "serve"), out_of_control),
    "cool": ("cooled", ("cool",), cooling),
    "reheat": ("reheated", ("reheat",), reheating),
}
"""What the rules ask, by section: its name, the steps it concerns, what works it out."""


def food_sheet(build: Build, placing: Placing) -> Worksheet:
    """Work out the path of everything sold that says its steps or what it is cooked to."""
    sheet = Worksheet("food", "Food")
    told = {
        key: one for key, one in build.menu.items() if one.steps or (one.cook_to is not None and one.sort)
    }
    if not told:
        sheet.note("Nothing sold says its steps: [menu.NAME.steps.NAME] holds its food against the rules.")
        return sheet
    limits = Limits(build, sheet)
    for id, (name, does, part) in TOPICS.items():
        concerned = {key: one for key, one in told.items() if _concerns(one, does)}
        above = sheet.section(id, name) if concerned else sheet
        for key, sold in concerned.items():
            below = above.section(key, sold.says or key.replace("_", " "))
            with below.attempt():
                part(sold, limits, below)
    for key, sold in told.items():
        below = sheet.section(key, sold.says or key.replace("_", " "))
        with below.attempt():
            if sold.cook_to is not None:
                killed(sold, below)
        with below.attempt():
            growth_band(sold, limits, below)
    _cautions(sheet)
    return sheet


def _concerns(sold: MenuItem, does: tuple[str, ...]) -> bool:
    """Whether it has a step of a topic; it is cooked too where a temperature is given and no step is."""
    if "cook" in does:
        return sold.sort != "ready to eat" and (sold.cook_to is not None or bool(doing(sold, "cook")))
    return bool(doing(sold, *does))


def _cautions(sheet: Worksheet) -> None:
    for text in (
        "The rules of the place decide, and its inspector; some ask for more. Nothing here is a record.",
        "Probe the middle of the thickest piece of every batch; a probe may be 2 °F out: aim past the limit.",
        "Food out of control for longer than allowed is thrown away, neither cooled again nor reheated.",
        "Dishes for children, the old and the sick have stricter rules.",
    ):
        sheet.note(text)
