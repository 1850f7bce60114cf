"""Fuel bottles: outside, away from openings and from anything that may set gas alight."""

from __future__ import annotations

from curbwright.equations import fit as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.fit.boxes import SPACE, Box, distance, exact, write_distance
from curbwright.sheets.fit.space import Space


def bottles(space: Space, sheet: Worksheet) -> None:
    """Write, for every bottle, how far outside it stands, and how far from openings, flames and sparks."""
    for box in space.with_flag("bottle"):
        below = sheet.section(box.key, f"{box.name}: where it stands")
        with below.attempt():
            space.all_placed()
            if space.build.shell is not None:
                _outside(space, below, box)
            _ignition(space, below, box)
            _openings(space, below, box)


def _outside(space: Space, sheet: Worksheet, box: Box) -> None:
    if box.thing.sealed_off:
        sheet.note(f"{box.name} stands in a compartment sealed from the inside, as the build file says")
        return
    out = space.outside
    ways: dict[str, tuple[Figure, Figure]] = {
        "ahead of the shell": (box.along.high, out.along.low),
        "behind the shell": (out.along.high, box.along.low),
        "beyond its curb side": (out.across.high, box.across.low),
        "beyond its street side": (box.across.high, out.across.low),
        "below the deck": (box.up.high, space.floor),
        "above the roof": (out.up.high, box.up.low),
    }
    cases = {
        says: sheet.work(f"way_{number}", f"{box.name}: {says}", eq.gap, near=near, far=far)
        for number, (says, (near, far)) in enumerate(ways.items(), start=1)
    }
    sheet.largest("outside_by", f"{box.name}: how far outside the shell", cases)


def _openings(space: Space, sheet: Worksheet, box: Box) -> None:
    """The level distance to the nearest opening that begins below its top, where heavy gas could run in."""
    for opening, path, says in space.unset.values():
        if opening.wall != "roof":
            raise MissingInput(path, says)
    low = [other for opening, other in space.openings.values() if opening.wall != "roof"]
    low = [other for other in low if exact(box.up.high - other.up.low) > 0]
    if not low:
        return
    nearest = min(low, key=lambda other: distance(box, other))
    write_distance(sheet, "to_opening", f"{box.name} to the nearest opening, {nearest.name}", box, nearest)


def _ignition(space: Space, sheet: Worksheet, box: Box) -> None:
    """The distance to the nearest flame or spark that no wall stands between."""
    others = [other for other in space.boxes.values() if not other.kind.is_("bottle")]
    if space.build.shell is not None:
        others = [other for other in others if other.zone != "inside" or other.thing.sealed_off]
    sources = [other for other in others if other.flame or other.kind.is_("spark")]
    if not sources:
        return
    nearest = min(sources, key=lambda other: distance(box, other, SPACE))
    name = f"{box.name} to the nearest flame or spark, the {nearest.name}"
    write_distance(sheet, "to_ignition", name, box, nearest, SPACE)
