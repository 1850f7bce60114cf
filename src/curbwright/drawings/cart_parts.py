"""What the plan and the elevations share: sizes in metres, the drawbar, the balance marks, the numbers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from curbwright.build import kinds
from curbwright.build.balance import Axle
from curbwright.build.fit import Opening
from curbwright.sheets import Worksheets
from curbwright.sheets.placing import Placed

CASE = "road_ready"
"""The load case whose centre of gravity is marked."""
OVERHEAD = 1.4
"""m above the deck: what starts above this is drawn as overhead in plan."""


@dataclass(frozen=True)
class CartShape:
    """The cart's outline in metres: back from the deck front, across towards the curb, up from the deck."""

    deck_length: float
    deck_width: float
    deck_height: float
    ball: float
    """Ball behind the deck front, so negative."""
    ball_height: float
    overall_width: float | None
    axle: float | None
    track: float | None
    wheel: float
    """Radius of a wheel."""
    axles: tuple[float, ...]
    """Where each axle stands, behind the deck front."""


def shape(sheets: Worksheets) -> CartShape:
    """Return the cart's outline."""
    trailer = sheets.build.trailer
    axle = trailer.axle
    return CartShape(
        float(trailer.deck_length),
        float(trailer.deck_width),
        float(trailer.deck_height or 0.0),
        -float(trailer.ball_to_deck),
        float(trailer.ball_height or 0.0),
        None if trailer.overall_width is None else float(trailer.overall_width),
        None if axle.back is None else float(axle.back),
        None if axle.track is None else float(axle.track),
        float(axle.centre_height or 0.33),
        _axles(axle),
    )


def _axles(axle: Axle) -> tuple[float, ...]:
    """The axle, or the two of a tandem where their spacing is given."""
    if axle.back is None:
        return ()
    middle = float(axle.back)
    if axle.count == 1 or axle.spacing is None:
        return (middle,)
    half = float(axle.spacing) / 2
    return middle - half, middle + half


def numbered(sheets: Worksheets) -> dict[str, int]:
    """Number everything aboard, in the order of the build file: the same on every sheet."""
    return {key: number for number, key in enumerate(sheets.build.items, 1)}


def schedule(sheets: Worksheets) -> tuple[str, ...]:
    """Return one line for each thing aboard, in the order of its number."""
    return tuple(_line(sheets, key) for key in sheets.build.items)


def _line(sheets: Worksheets, key: str) -> str:
    item = sheets.build.items[key]
    sizes = (item.width, item.depth, item.height)
    size = " x ".join(one.text for one in sizes if one is not None)
    mass = item.mass.text if item.mass is not None else "mass not given"
    parts = (text.replace(" ", "\N{NO-BREAK SPACE}") for text in (size, mass))
    return ", ".join(text for text in (item.name, *parts) if text)


def is_overhead(placed: Placed) -> bool:
    """Whether a thing hangs over the floor or stands on the roof."""
    return float(placed.up.low) >= OVERHEAD or kinds.find(placed.item.kind).is_("overhead")


def openings(sheets: Worksheets, *walls: str) -> Iterator[tuple[str, Opening]]:
    """Yield the openings in some walls that can be drawn: those whose place is given."""
    shell = sheets.build.shell
    if shell is None:
        return
    for key, one in shell.openings.items():
        placed = (
            one.back is not None if one.wall in ("curb", "street", "roof") else one.off_centre is not None
        )
        if one.wall in walls and placed:
            yield key, one


def shell_ends(sheets: Worksheets) -> tuple[float, float, float] | None:
    """Return the shell's front and rear behind the deck front, and its width; None for an open cart."""
    shell = sheets.build.shell
    if shell is None:
        return None
    front = float(shell.back or 0.0)
    length = (
        float(shell.length) if shell.length is not None else float(sheets.build.trailer.deck_length) - front
    )
    return front, front + length, float(shell.width or sheets.build.trailer.deck_width)


def centre_of_gravity(sheets: Worksheets) -> tuple[float, float, float] | None:
    """Return the road-ready centre of gravity: behind the deck front, across, above the road; or None."""
    figures = sheets.figures
    names = [f"balance.{CASE}.centre_{direction}" for direction in ("station", "across", "height")]
    if any(name not in figures for name in names):
        return None
    station, across, height = (float(figures[name]) for name in names)
    return station - float(sheets.build.trailer.ball_to_deck), across, height


def tongue_note(sheets: Worksheets) -> str:
    """Return what the tongue carries, road-ready, as a label; nothing if it cannot be told."""
    from curbwright.figures.printing import shown

    load, share = (sheets.figures.get(f"balance.{CASE}.{name}") for name in ("tongue_load", "tongue_share"))
    if load is None or share is None:
        return ""
    system = sheets.build.cart.units
    return f"Tongue {shown(load, system, 3)}, {shown(share, system, 3)} of gross"
