"""The floor plan: the front of the cart to the left, the curb side up."""

from __future__ import annotations

from collections.abc import Iterator

from curbwright.build import kinds
from curbwright.build.fit import Opening
from curbwright.drawings.boxes import Box
from curbwright.drawings.cart_parts import (
    CartShape,
    centre_of_gravity,
    is_overhead,
    numbered,
    openings,
    shape,
    shell_ends,
    tongue_note,
)
from curbwright.drawings.dimensions import chain
from curbwright.drawings.primitives import (
    Arc,
    Circle,
    Hatch,
    Label,
    Line,
    Marker,
    Polyline,
    Primitive,
    View,
    rectangle,
)
from curbwright.sheets import Worksheets
from curbwright.sheets.placing import Placed

TIRE_WIDTH = 0.21
"""m, about the section width of a trailer tire (common practice)."""
SMALL = frozenset({"pump", "inverter", "battery", "extinguisher", "fuse", "switch", "filter", "accumulator"})
"""Kinds whose place is numbered but not dimensioned: they would crowd out what is set out with a tape."""


def plan(sheets: Worksheets) -> View:
    """Return the floor plan with numbered equipment, dimensions and the balance marks."""
    cart = shape(sheets)
    marks = [
        *_trailer(cart),
        *_shell(sheets),
        *_equipment(sheets),
        *_balance(sheets, cart),
        *_dimensions(sheets, cart),
    ]
    return View("Floor plan", tuple(marks), front="left")


def _trailer(cart: CartShape) -> Iterator[Primitive]:
    half = cart.deck_width / 2
    yield rectangle(Box(0.0, -half, cart.deck_length, half), layer="OUTLINE")
    yield Polyline(((0.0, -half * 0.55), (cart.ball, 0.0), (0.0, half * 0.55)), layer="FRAME")
    yield Line((cart.ball - 0.1, 0.0), (cart.deck_length + 0.15, 0.0), layer="CENTRE")
    if cart.axle is None or cart.track is None:
        return
    for along in cart.axles:
        for side in (-1, 1):
            middle = side * cart.track / 2
            low, high = middle - TIRE_WIDTH / 2, middle + TIRE_WIDTH / 2
            yield rectangle(Box(along - cart.wheel, low, along + cart.wheel, high), layer="FRAME")


def _shell(sheets: Worksheets) -> Iterator[Primitive]:
    """The walls cut through, with their openings left out, and the doors' swing."""
    ends = shell_ends(sheets)
    shell = sheets.build.shell
    if ends is None or shell is None:
        return
    front, rear, width = ends
    wall = float(shell.wall_thickness or 0.0)
    half = width / 2
    yield rectangle(Box(front, -half, rear, half), layer="SHELL")
    yield rectangle(Box(front + wall, wall - half, rear - wall, half - wall), layer="SHELL")
    for side, low, high in (("curb", half - wall, half), ("street", -half, wall - half)):
        gaps = [_along(one) for _, one in openings(sheets, side)]
        for start, end in _solid(front, rear, gaps):
            yield Hatch(Box(start, low, end, high).corners, "diagonal", 1.2)
        for start, end in gaps:
            yield rectangle(Box(start, low, end, high), layer="OPENING")
    for name, low, high in (("front", front, front + wall), ("rear", rear - wall, rear)):
        gaps = [_across(one) for _, one in openings(sheets, name)]
        for start, stop in _solid(wall - half, half - wall, gaps):
            yield Hatch(Box(low, start, high, stop).corners, "diagonal", 1.2)
        for start, stop in gaps:
            yield rectangle(Box(low, start, high, stop), layer="OPENING")
    yield from _swings(sheets, rear, front, half)
    yield from _shelves(sheets, half)


def _along(opening: Opening) -> tuple[float, float]:
    start = float(opening.back or 0.0)
    return start, start + float(opening.width)


def _across(opening: Opening) -> tuple[float, float]:
    middle, half = float(opening.off_centre or 0.0), float(opening.width) / 2
    return middle - half, middle + half


def _solid(start: float, end: float, gaps: list[tuple[float, float]]) -> Iterator[tuple[float, float]]:
    """What is left of a wall between its openings."""
    at = start
    for low, high in sorted(gaps):
        if low > at:
            yield at, min(low, end)
        at = max(at, high)
    if at < end:
        yield at, end


def _swings(sheets: Worksheets, rear: float, front: float, half: float) -> Iterator[Primitive]:
    """Doors that open outward, hinged at their street-side or front edge."""
    for key, one in openings(sheets, "curb", "street", "front", "rear"):
        if one.kind != "door" or one.opens != "out":
            continue
        wide = float(one.width)
        if one.wall in ("rear", "front"):
            low, _ = _across(one)
            hinge = (rear if one.wall == "rear" else front, low)
            sign = 1 if one.wall == "rear" else -1
            yield Line(hinge, (hinge[0] + sign * wide, low), layer="OPENING")
            yield Arc(hinge, wide, 0.0 if sign > 0 else 90.0, 90.0 if sign > 0 else 180.0, layer="SWING")
        else:
            start, _ = _along(one)
            sign = 1 if one.wall == "curb" else -1
            hinge = (start, sign * half)
            yield Line(hinge, (start, sign * (half + wide)), layer="OPENING")
            yield Arc(hinge, wide, 0.0 if sign > 0 else 270.0, 90.0 if sign > 0 else 360.0, layer="SWING")
        yield Label(key.replace("_", " "), (hinge[0], hinge[1] + wide * 0.6))


def _shelves(sheets: Worksheets, half: float) -> Iterator[Primitive]:
    for key, one in openings(sheets, "curb", "street"):
        if one.shelf_depth is None:
            continue
        start, end = _along(one)
        sign = 1 if one.wall == "curb" else -1
        low, high = sorted((sign * half, sign * (half + float(one.shelf_depth))))
        box = Box(start, low, end, high)
        yield rectangle(box, layer="OVERHEAD")
        yield Label(f"{key.replace('_', ' ')} shelf, folded for the road", box.centre, box, "shelf")


def _equipment(sheets: Worksheets) -> Iterator[Primitive]:
    numbers = numbered(sheets)
    for key, placed in sheets.placing.items.items():
        if not placed.sized:
            at = (float(placed.along.middle), float(placed.across.middle))
            yield Marker("point", at, 3.0, layer="EQUIPMENT", item=key)
            yield Label(f"{numbers[key]} {placed.item.name}", at, item=key)
            continue
        box = footprint(placed)
        layer = "OVERHEAD" if is_overhead(placed) else "HIDDEN" if _covered(key, sheets) else "EQUIPMENT"
        if placed.item.kind == "cylinder":
            yield Circle(box.centre, min(box.width, box.height) / 2, layer=layer, item=key)
        else:
            yield rectangle(box, layer=layer, item=key)
        yield Label(str(numbers[key]), _label_at(box, layer), box, item=key)


def footprint(placed: Placed) -> Box:
    """Return what a thing covers, seen from above."""
    return Box(
        float(placed.along.low), float(placed.across.low), float(placed.along.high), float(placed.across.high)
    )


def _covered(key: str, sheets: Worksheets) -> bool:
    """Whether something that reaches higher stands over most of this thing and hides it."""
    mine = sheets.placing.items[key]
    box = footprint(mine)
    for other, placed in sheets.placing.items.items():
        if other == key or not placed.sized or is_overhead(placed):
            continue
        above = footprint(placed)
        wide = min(box.right, above.right) - max(box.left, above.left)
        deep = min(box.top, above.top) - max(box.bottom, above.bottom)
        higher = float(placed.up.high) > float(mine.up.high) + 1e-6
        if higher and wide > 0 and deep > 0 and wide * deep > 0.5 * box.width * box.height:
            return True
    return False


def _label_at(box: Box, layer: str) -> tuple[float, float]:
    """Middle of a thing, or its corner where it is drawn through others."""
    if layer == "EQUIPMENT":
        return box.centre
    return box.left + box.width * 0.12, box.top - box.height * 0.15


def _balance(sheets: Worksheets, cart: CartShape) -> Iterator[Primitive]:
    tongue = tongue_note(sheets)
    yield Marker("ball", (cart.ball, 0.0), 5.0)
    if tongue:
        yield Label(tongue, (cart.ball, 0.0), layer="BALANCE")
    if cart.axle is not None:
        yield Marker("axle", (cart.axle, 0.0))
        yield Label("Axle", (cart.axle, 0.0), layer="BALANCE")
    centre = centre_of_gravity(sheets)
    if centre is not None:
        yield Marker("centre_of_gravity", centre[:2])
        yield Label("Centre of gravity, ready for the road", centre[:2], layer="BALANCE")


def _dimensions(sheets: Worksheets, cart: CartShape) -> Iterator[Primitive]:
    system = sheets.build.cart.units
    half = cart.deck_width / 2
    outer = max(half, (cart.track or 0.0) / 2 + TIRE_WIDTH / 2)
    sides: dict[str, list[float]] = {"curb": [0.0, cart.deck_length], "street": [0.0, cart.deck_length]}
    for key, placed in sheets.placing.items.items():
        shown = placed.sized and not is_overhead(placed) and not _covered(key, sheets) and placed.inboard
        if shown and placed.item.side in sides and kinds.find(placed.item.kind).name not in SMALL:
            sides[placed.item.side] += [float(placed.along.low), float(placed.along.high)]
    yield chain(sides["street"], [cart.ball, 0.0, cart.deck_length], side="below", base=-outer, system=system)
    axle = [cart.ball, cart.axle] if cart.axle is not None else []
    shelf = max((float(one.shelf_depth or 0.0) for _, one in openings(sheets, "curb")), default=0.0)
    top = max(outer, half + shelf)
    yield chain(sides["curb"], axle, side="above", base=top, system=system)
    ends = shell_ends(sheets)
    across = [-half, half]
    if ends is not None and sheets.build.shell is not None:
        wall = float(sheets.build.shell.wall_thickness or 0.0)
        across = [-ends[2] / 2, wall - ends[2] / 2, ends[2] / 2 - wall, ends[2] / 2]
    door = max((float(one.width) for _, one in openings(sheets, "rear") if one.kind == "door"), default=0.0)
    yield chain(across, side="right", base=cart.deck_length + door, system=system)
