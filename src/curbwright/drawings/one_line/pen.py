"""The symbols of the one-line diagram, set in millimetres on paper."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from curbwright.drawings.boxes import Box, Point
from curbwright.drawings.lettering import LINE_PITCH, MINIMUM_HEIGHT, shortened, width, wrapped
from curbwright.drawings.primitives import Align, Circle, Level, Line, Polyline, Primitive, Text, rectangle

Device = Literal["fuse", "breaker", "switch"]

MM = 0.001
SMALL = 2.1
"""Height of capitals beside runs and in boxes, in millimetres."""
ABOVE = 1.1
"""From a line to the lettering above it."""
FUSE = 6.0
"""Length of a fuse or breaker."""


class Pen:
    """Collects primitives; every length is in millimetres on paper."""

    def __init__(self) -> None:
        self.marks: list[Primitive] = []

    def line(self, *points: Point, layer: str = "WIRE") -> None:
        """Draw straight lines from point to point."""
        scaled = tuple((x * MM, y * MM) for x, y in points)
        if len(scaled) == 2:
            self.marks.append(Line(*scaled, layer=layer))
        else:
            self.marks.append(Polyline(scaled, layer=layer))

    def bar(self, start: Point, end: Point) -> None:
        """Draw a bus."""
        self.line(start, end, layer="OUTLINE")

    def text(
        self, at: Point, words: str, *, room: float, align: Align = "left", level: Level = "base"
    ) -> None:
        """Letter one line, cut to the room it has."""
        cut = shortened(words, SMALL, room)
        if cut:
            self.marks.append(Text((at[0] * MM, at[1] * MM), cut, SMALL, 0, align, level))

    def block(self, at: Point, words: str, *, room: float, most: int) -> None:
        """Letter up to so many lines, their middle at a place; what does not fit is cut."""
        height = SMALL if most < 3 else MINIMUM_HEIGHT
        lines = wrapped(words, height, room, break_words=True).split("\n")
        if len(lines) > most:
            lines = [*lines[: most - 1], " ".join(lines[most - 1 :])]
        text = "\n".join(shortened(line, height, room) for line in lines)
        self.marks.append(Text((at[0] * MM, at[1] * MM), text, height, 0, "left", "middle"))

    def box(self, left: float, bottom: float, wide: float, tall: float, lines: Sequence[str]) -> None:
        """Draw a box with its lettering in the middle."""
        place = Box(left, bottom, left + wide, bottom + tall)
        self.marks.append(rectangle(_scaled(place), layer="EQUIPMENT"))
        most = max(1, int((tall - 1.0) / (LINE_PITCH * SMALL)))
        fitted: list[str] = []
        for number, line in enumerate(lines, 1):
            pieces = wrapped(line, SMALL, wide - 2.0).split("\n")
            spare = most - len(fitted) - (len(lines) - number)
            fitted += pieces if len(pieces) <= spare else [line]
        x, y = place.centre
        text = "\n".join(shortened(line, SMALL, wide - 1.5) for line in fitted[:most])
        self.marks.append(Text((x * MM, y * MM), text, SMALL, 0, "centre", "middle"))

    def device(self, middle: Point, sort: Device, *, upright: bool = False) -> None:
        """Draw a fuse as a box on its run, a breaker as an arc over two dots, a switch as an open blade."""
        x, y = middle
        along, across = (0.0, 1.0) if upright else (1.0, 0.0)
        half = FUSE / 2
        ends = ((x - half * along, y - half * across), (x + half * along, y + half * across))
        if sort == "fuse":
            deep = 1.2
            place = Box(x - half * along - deep * across, y - half * across - deep * along,
                        x + half * along + deep * across, y + half * across + deep * along)  # fmt: skip
            self.marks.append(rectangle(_scaled(place), layer="EQUIPMENT"))
            self.line(*ends)
            return
        for dot in ends:
            self.marks.append(Circle((dot[0] * MM, dot[1] * MM), 0.5 * MM, layer="EQUIPMENT"))
        if sort == "breaker":
            self.line(ends[0], (x + 1.6 * across, y + 1.6 * along), ends[1], layer="EQUIPMENT")
        else:
            blade = (x + 0.3 * half * along + 2.0 * across, y + 2.0 * along + 0.3 * half * across)
            self.line(ends[0], blade, layer="EQUIPMENT")

    def run(self, start: Point, end: Point, *devices: tuple[float, Device]) -> None:
        """Draw a level run from left to right, broken at the middle of each device."""
        x, y = start
        for middle, sort in sorted(devices):
            self.line((x, y), (middle - FUSE / 2, y))
            self.device((middle, y), sort)
            x = middle + FUSE / 2
        self.line((x, y), end)

    def arrow(self, tip: Point, *, left: bool = False) -> None:
        """Draw the head of an arrow that points right, or left."""
        x, y = tip
        back = x + 1.8 if left else x - 1.8
        self.marks.append(
            Polyline(((x * MM, y * MM), (back * MM, (y + 0.7) * MM), (back * MM, (y - 0.7) * MM)),
                     closed=True, filled=True, layer="EQUIPMENT")
        )  # fmt: skip

    def ground(self, at: Point, side: Literal["left", "right"], words: str, room: float) -> None:
        """Draw the mark of a connection to the frame below a place, with what it is beside it."""
        x, y = at
        self.line((x, y), (x, y - 2.5))
        for step, half in enumerate((2.2, 1.4, 0.6)):
            level = y - 2.5 - step * 0.8
            self.line((x - half, level), (x + half, level), layer="EQUIPMENT")
        place = x + 3.2 if side == "right" else x - 3.2
        self.text((place, y - 4.3), words, room=room, align="left" if side == "right" else "right")

    def outlet(self, at: Point) -> None:
        """Draw a receptacle: a circle with two slots."""
        x, y = at
        self.marks.append(Circle((x * MM, y * MM), 1.5 * MM, layer="EQUIPMENT"))
        for slot in (x - 0.5, x + 0.5):
            self.line((slot, y - 0.7), (slot, y + 0.7), layer="EQUIPMENT")


def _scaled(box: Box) -> Box:
    return Box(box.left * MM, box.bottom * MM, box.right * MM, box.top * MM)


def wide(words: str) -> float:
    """Return how wide a line of lettering is, in millimetres."""
    return width(words, SMALL)
