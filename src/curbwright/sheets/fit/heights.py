"""Heights and reaches: surfaces to work at, shelves, valves, what is served over."""

from __future__ import annotations

from curbwright.build.fit import Opening
from curbwright.equations import fit as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.fit.boxes import Box, exact, meet, write_spare
from curbwright.sheets.fit.facing import clear_ahead, facing
from curbwright.sheets.fit.space import Space


def surfaces(space: Space, sheet: Worksheet) -> None:
    """Write the height of every surface that somebody works at standing, above the deck they stand on."""
    space.known("light_low")
    space.known("light_high")
    for box in space.inside():
        if not box.kind.is_("worked_at"):
            continue
        below = sheet.section(box.key, f"{box.name}: height of its surface")
        with below.attempt():
            height = surface(below, box)
            below.smallest("height", f"{box.name}: working surface above the deck", {"its surface": height})


def surface(sheet: Worksheet, box: Box) -> Figure:
    """Return the height of the surface somebody works at; of a sink that is its rim, which must be given."""
    if box.thing.work_height is not None or box.kind.is_("sink"):
        return sheet.given(box.thing["work_height"])
    return box.up.high


def shelves(space: Space, sheet: Worksheet) -> None:
    """Write the bottom of everything that is reached up to, and how high a small woman reaches."""
    reach = _highest_grip(space, sheet)
    for box in space.inside():
        if box.kind.is_("reached"):
            below = sheet.section(box.key, f"{box.name}: height to reach it at")
            write_spare(below, f"{box.name}: reach left over", reach, box.up.low)


def valve_reach(space: Space, sheet: Worksheet) -> None:
    """Write, for everything inside on gas, whether its shut-off is within a forward grip."""
    forward = space.known("grip_forward_woman_5")
    for box in _on_gas(space):
        below = sheet.section(box.key, f"{box.name}: forward reach to its shut-off")
        with below.attempt():
            deep = below.given(box.thing["shutoff_from_face"])
            write_spare(below, f"{box.name}: forward reach left over at its shut-off", forward, deep)


def valve_height(space: Space, sheet: Worksheet) -> None:
    """Write, for everything inside on gas, whether its shut-off is within an upward grip."""
    highest = _highest_grip(space, sheet)
    for box in _on_gas(space):
        below = sheet.section(box.key, f"{box.name}: height of its shut-off")
        with below.attempt():
            high = below.given(box.thing["shutoff_above"])
            write_spare(below, f"{box.name}: reach left over above its shut-off", highest, high)


def _on_gas(space: Space) -> list[Box]:
    burning = [box for box in space.inside() if box.flame and not box.kind.is_("bottle")]
    return [box for box in burning if not box.thing.sealed_off]


def _highest_grip(space: Space, sheet: Worksheet) -> Figure:
    parts = [space.known("grip_height_woman_5"), space.known("shoe")]
    return sheet.total("highest_grip", "highest grip of a small woman, shod", parts)


def service(space: Space, sheet: Worksheet) -> None:
    """Write the room in front of everything inside that has to be got at."""
    for box in space.inside():
        face = facing(box)
        if not box.kind.is_("service") or box.kind.is_("overhead") or face is None:
            continue
        below = sheet.section(box.key, f"{box.name}: room to get at it")
        with below.attempt():
            space.all_placed()
            clear_ahead(space, below, box, face)


def serving(space: Space, sheet: Worksheet) -> None:
    """Write, for every serving opening, its sill inside and above the ground, and the reach over it."""
    space.openings_ready(sheet, "hatch", "window")
    handed_over: dict[str, Figure] = {}
    for key, (opening, box) in space.openings.items():
        if not _serves(opening):
            continue
        below = sheet.section(key, f"serving at {box.name}")
        with below.attempt():
            sill = below.given(opening["above"])
            deck = below.given(space.build.trailer["deck_height"])
            below.smallest("inside", f"sill of {box.name} above the deck", {"sill": sill})
            word, level = "sill", sill
            if opening.shelf_above is not None:
                word, level = "shelf", below.given(opening["shelf_above"])
            name = f"{word} of {box.name} above the ground"
            handed_over[name] = below.work("outside", name, eq.above_road, deck_height=deck, above=level)
            if opening.shelf_depth is not None and opening.wall in ("curb", "street"):
                _hand_over(space, below, opening.wall, box, below.given(opening["shelf_depth"]))

    if handed_over:
        sheet.smallest("lowest", "lowest place where food is handed over, above the ground", handed_over)


def _serves(opening: Opening) -> bool:
    """Whether food is handed out there: through any hatch in a wall, and a window with a shelf outside."""
    window = opening.kind == "window" and opening.shelf_depth is not None
    return opening.wall != "roof" and (opening.kind == "hatch" or window)


def _hand_over(space: Space, sheet: Worksheet, wall: str, box: Box, shelf: Figure) -> None:
    """The reach from where one stands, over what is under the opening, to the middle of the shelf outside."""
    row = [other for other in space.inside() if other.side == wall and meet(other.along, box.along)]
    under = [other for other in row if exact(box.up.low - other.up.low) > 0]
    depths = {} if under else {"nothing under it": space.floor}
    for other in under:
        near, far = (other.across.low, space.curb) if wall == "curb" else (space.street, other.across.high)
        name = f"edge of {other.name} to the wall"
        depths[other.name] = sheet.work(f"over_{other.key}", name, eq.gap, near=near, far=far)
    counter = sheet.largest("counter", f"deepest thing under {box.name}", depths)
    edge = space.edges[wall].across
    thick = sheet.work("wall", "thickness of the wall", eq.gap, near=edge.low, far=edge.high)
    name = f"reach over to the shelf at {box.name}"
    reach = sheet.work("hand_over", name, eq.hand_over, counter=counter, wall=thick, shelf=shelf)
    forward = space.known("grip_forward_woman_5")
    write_spare(sheet, f"forward reach left over at {box.name}", forward, reach, "hand_over_spare")
