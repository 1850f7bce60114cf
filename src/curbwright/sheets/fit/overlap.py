"""Whether two things take up the same room, and whether anything sticks out of the room."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations

from curbwright.equations import fit as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.fit.boxes import TOUCH, Box, Direction, belong, exact, separation, write_separation
from curbwright.sheets.fit.space import Space

SHOWN = 3
"""How many of the tightest clear pairs are written beside the ones that overlap."""


def overlaps(space: Space, sheet: Worksheet) -> None:
    """Write every pair that overlaps, the tightest pairs that do not, and the tightest of all."""
    space.ready(sheet)
    boxes = [box for box in space.boxes.values() if not box.kind.is_("small", "structure")]
    both = [pair for pair in combinations(boxes, 2) if not belong(pair[0].kind, pair[1].kind)]
    pairs = [(separation(one, other), one, other) for one, other in both]
    pairs.sort(key=lambda pair: pair[0])
    wrong = sum(gap < -TOUCH for gap, _, _ in pairs)
    cases: dict[str, Figure] = {}
    for _, one, other in pairs[: wrong + SHOWN]:
        below = sheet.section(f"{one.key}+{other.key}", f"{one.name} and {other.name}")
        cases[f"{one.name} and {other.name}"] = write_separation(below, one, other)
    if cases:
        sheet.smallest("tightest", "tightest gap between two things", cases)
        sheet.note(f"{len(pairs)} pairs looked at, {wrong} overlap")
    if space.unsized:
        sheet.note(f"Without a size, so not looked at: {', '.join(space.unsized)}")


@dataclass(frozen=True)
class Face:
    """One face of the room: at its low end of a direction, or at its high end."""

    key: str
    name: str
    direction: Direction
    low: bool
    at: Figure

    def gap(self, box: Box) -> float:
        """How far a box keeps inside this face, metres; negative where it sticks out."""
        span = box.span(self.direction)
        return exact(span.low - self.at if self.low else self.at - span.high)

    def write(self, sheet: Worksheet, name: str, box: Box) -> Figure:
        """Write the gap."""
        span = box.span(self.direction)
        near, far = (self.at, span.low) if self.low else (span.high, self.at)
        return sheet.work("gap", name, eq.gap, near=near, far=far)


def within_room(space: Space, sheet: Worksheet) -> None:
    """Write everything that sticks out of the room, the tightest that does not, and the tightest of all."""
    space.ready(sheet)
    space.openings_ready(sheet, "hatch", "door", "window", "vent")
    boxes = [*space.inside(), *(box for _, box in space.openings.values())]
    gaps = [(face.gap(box), face, box) for box in boxes for face in _faces(space) if not _passes(box, face)]
    gaps.sort(key=lambda one: one[0])
    wrong = sum(gap < -TOUCH for gap, _, _ in gaps)
    cases: dict[str, Figure] = {}
    for _, face, box in gaps[: wrong + SHOWN]:
        name = f"{box.name} inside the {face.name}"
        below = sheet.section(f"{box.key}+{face.key}", f"{box.name} and the {face.name}")
        cases[name] = face.write(below, name, box)
    if cases:
        sheet.smallest("tightest", "tightest gap between a thing and the room", cases)


def _passes(box: Box, face: Face) -> bool:
    """Whether a thing may go through a face: a duct through the roof, an opening through its wall."""
    if box.zone == "wall":
        return face.direction == box.through
    return face.key == "roof" and box.kind.is_("through_roof")


def _faces(space: Space) -> list[Face]:
    """The faces of the room, or the edges of an open deck."""
    room, shell = space.room, space.build.shell is not None
    word = "wall" if shell else "edge of the deck"
    faces = [
        Face("front", f"front {word}", "along", True, room.front),
        Face("rear", f"rear {word}", "along", False, room.rear),
        Face("street", f"street-side {word}", "across", True, space.street),
        Face("curb", f"curb-side {word}", "across", False, space.curb),
        Face("deck", "top of the deck", "up", True, space.floor),
    ]
    if room.height is not None:
        faces.append(Face("roof", "underside of the roof", "up", False, room.height))
    return faces


def overhangs(space: Space, sheet: Worksheet) -> None:
    """Write, for everything outside the room, how far it keeps within the trailer: its deck, and the ball."""
    if all(box.zone == "inside" for box in space.boxes.values()):
        return
    trailer = space.build.trailer
    length, width = sheet.given(trailer["deck_length"]), sheet.given(trailer["deck_width"])
    ball = sheet.work(
        "ball", "ball behind the front of the deck", eq.ahead, distance=sheet.given(trailer["ball_to_deck"])
    )
    curb = sheet.work("curb", "curb-side edge of the deck", eq.curb_face, width=width)
    street = sheet.work("street", "street-side edge of the deck", eq.street_face, width=width)
    faces = [
        Face("ball", "ball", "along", True, ball),
        Face("rear", "rear edge of the deck", "along", False, length),
        Face("street", "street-side edge of the deck", "across", True, street),
        Face("curb", "curb-side edge of the deck", "across", False, curb),
    ]
    outside = [
        box for box in space.boxes.values() if box.zone != "inside" and not box.kind.is_("small", "structure")
    ]
    for box in outside:
        face = min(faces, key=lambda one: one.gap(box))
        name = f"{box.name} within the {face.name}"
        face.write(sheet.section(box.key, name), name, box)
