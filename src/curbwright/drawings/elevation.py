"""The curb-side elevation: seen from the curb, so the front of the cart is to the right."""

from __future__ import annotations

from collections.abc import Iterator
from math import sin

from curbwright.drawings.boxes import Box
from curbwright.drawings.cart_parts import (
    CartShape,
    centre_of_gravity,
    numbered,
    openings,
    shape,
    shell_ends,
    tongue_note,
)
from curbwright.drawings.dimensions import chain
from curbwright.drawings.primitives import Circle, Label, Line, Marker, Primitive, View, rectangle
from curbwright.sheets import Worksheets
from curbwright.sheets.placing import Placed


def curb_elevation(sheets: Worksheets) -> View:
    """Return the curb-side elevation; what stands inside behind the wall is drawn hidden."""
    cart = shape(sheets)
    marks = [
        *_trailer(cart),
        *_shell(sheets, cart),
        *_equipment(sheets, cart),
        *_balance(sheets, cart),
        *_dimensions(sheets, cart),
    ]
    return View("Curb-side elevation, parked", tuple(marks), front="right")


def _x(back: float) -> float:
    """A place behind the deck front, as it lies on this view: forward is to the right."""
    return -back


def _trailer(cart: CartShape) -> Iterator[Primitive]:
    yield Line((_x(cart.deck_length + 0.3), 0.0), (_x(cart.ball - 0.3), 0.0), layer="GROUND")
    rail = 0.1
    yield rectangle(Box(_x(cart.deck_length), cart.deck_height - rail, 0.0, cart.deck_height), layer="FRAME")
    yield Line((0.0, cart.deck_height - rail), (_x(cart.ball), cart.ball_height), layer="FRAME")
    yield Line((0.0, cart.deck_height), (_x(cart.ball), cart.ball_height + 0.05), layer="FRAME")
    for along in cart.axles:
        at = (_x(along), cart.wheel)
        yield Circle(at, cart.wheel, layer="OUTLINE")
        yield Circle(at, cart.wheel * 0.55, layer="FRAME")


def _shell(sheets: Worksheets, cart: CartShape) -> Iterator[Primitive]:
    ends, shell = shell_ends(sheets), sheets.build.shell
    if ends is None or shell is None:
        return
    front, rear, _ = ends
    roof = cart.deck_height + float(shell.height)
    yield rectangle(Box(_x(rear), cart.deck_height, _x(front), roof), layer="OUTLINE")
    for key, one in openings(sheets, "curb"):
        start = float(one.back or 0.0)
        low = cart.deck_height + float(one.above or 0.0)
        box = Box(_x(start + float(one.width)), low, _x(start), low + float(one.height))
        yield rectangle(box, layer="OPENING")
        yield Label(key.replace("_", " "), box.centre, box)
        if one.shelf_depth is not None:
            yield rectangle(Box(box.left, low - 0.04, box.right, low), layer="OPENING")
        if one.kind == "hatch" and one.opens == "up":
            # Seen from the curb the raised leaf shows its edge, foreshortened by its angle.
            rise = float(one.height) * sin(float(one.open_angle or 0.0))
            yield rectangle(Box(box.left, box.top, box.right, box.top + max(rise, 0.03)), layer="OPENING")


def _equipment(sheets: Worksheets, cart: CartShape) -> Iterator[Primitive]:
    """What stands outside is drawn in full, what stands at the curb-side wall is drawn hidden."""
    numbers, ends = numbered(sheets), shell_ends(sheets)
    for key, placed in sheets.placing.items.items():
        if not placed.sized:
            continue
        outside = _outside(placed, ends, sheets)
        if not outside and placed.item.side != "curb":
            continue
        low = cart.deck_height + float(placed.up.low)
        high = cart.deck_height + float(placed.up.high)
        box = Box(_x(float(placed.along.high)), low, _x(float(placed.along.low)), high)
        yield rectangle(box, layer="EQUIPMENT" if outside else "HIDDEN", item=key)
        yield Label(str(numbers[key]), box.centre, box, item=key)


def _outside(placed: Placed, ends: tuple[float, float, float] | None, sheets: Worksheets) -> bool:
    if ends is None or sheets.build.shell is None:
        return True
    front, rear, _ = ends
    roof = float(sheets.build.shell.height)
    return (
        float(placed.along.high) <= front + 1e-6
        or float(placed.along.low) >= rear - 1e-6
        or float(placed.up.low) >= roof - 0.06
        or float(placed.up.high) <= 1e-6
    )


def _balance(sheets: Worksheets, cart: CartShape) -> Iterator[Primitive]:
    ball = (_x(cart.ball), cart.ball_height)
    yield Marker("ball", ball, 5.0)
    tongue = tongue_note(sheets)
    if tongue:
        yield Label(tongue, ball, layer="BALANCE")
    if cart.axle is not None:
        yield Marker("axle", (_x(cart.axle), cart.wheel))
    centre = centre_of_gravity(sheets)
    if centre is not None:
        at = (_x(centre[0]), centre[2])
        yield Marker("centre_of_gravity", at)
        yield Label("Centre of gravity, ready for the road", at, layer="BALANCE")


def _dimensions(sheets: Worksheets, cart: CartShape) -> Iterator[Primitive]:
    system = sheets.build.cart.units
    ends, shell = shell_ends(sheets), sheets.build.shell
    along = [_x(cart.ball), 0.0, _x(cart.deck_length)]
    if cart.axle is not None:
        yield chain(
            [_x(cart.ball), _x(cart.axle), _x(cart.deck_length)], along, side="below", base=0.0, system=system
        )
    else:
        yield chain(along, side="below", base=0.0, system=system)
    heights = [0.0, cart.deck_height]
    if ends is not None and shell is not None:
        heights.append(cart.deck_height + float(shell.height))
        sills = [cart.deck_height + float(one.above or 0.0) for _, one in openings(sheets, "curb")]
        tops = [
            sill + float(one.height) for sill, (_, one) in zip(sills, openings(sheets, "curb"), strict=True)
        ]
        yield chain(
            [0.0, *sills, *tops, heights[-1]], heights, side="left", base=_x(cart.deck_length), system=system
        )
    else:
        yield chain(heights, side="left", base=_x(cart.deck_length), system=system)
    yield chain([0.0, cart.ball_height], side="right", base=_x(cart.ball), system=system)
