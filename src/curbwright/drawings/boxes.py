"""Upright rectangles: what every collision on a drawing is judged by."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

Point = tuple[float, float]


@dataclass(frozen=True)
class Box:
    """An upright rectangle in whatever unit its owner uses: metres in a view, millimetres on paper."""

    left: float
    bottom: float
    right: float
    top: float

    @property
    def width(self) -> float:
        """The size across."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """The size up."""
        return self.top - self.bottom

    @property
    def centre(self) -> Point:
        """The middle."""
        return (self.left + self.right) / 2, (self.bottom + self.top) / 2

    @property
    def corners(self) -> tuple[Point, Point, Point, Point]:
        """The four corners, counter-clockwise from the lower left."""
        return (
            (self.left, self.bottom),
            (self.right, self.bottom),
            (self.right, self.top),
            (self.left, self.top),
        )

    def grown(self, by: float) -> Box:
        """Return the box with every side moved out by that much."""
        return Box(self.left - by, self.bottom - by, self.right + by, self.top + by)

    def moved(self, across: float, up: float) -> Box:
        """Return the box moved."""
        return Box(self.left + across, self.bottom + up, self.right + across, self.top + up)

    def overlaps(self, other: Box) -> bool:
        """Say whether the two share more than an edge.

        >>> Box(0, 0, 2, 1).overlaps(Box(2, 0, 3, 1)), Box(0, 0, 2, 1).overlaps(Box(1, 0, 3, 1))
        (False, True)
        """
        return (
            self.left < other.right
            and other.left < self.right
            and self.bottom < other.top
            and other.bottom < self.top
        )

    def holds(self, other: Box) -> bool:
        """Say whether the other lies wholly within this one."""
        return (
            self.left <= other.left
            and self.bottom <= other.bottom
            and other.right <= self.right
            and other.top <= self.top
        )

    def covers(self, point: Point) -> bool:
        """Say whether a point lies in the box or on its edge."""
        return self.left <= point[0] <= self.right and self.bottom <= point[1] <= self.top

    def struck_by(self, start: Point, end: Point) -> bool:
        """Say whether the straight line from start to end passes through the inside of the box.

        >>> Box(0, 0, 2, 2).struck_by((-1, 1), (3, 1)), Box(0, 0, 2, 2).struck_by((-1, 2), (3, 2))
        (True, False)
        """
        (ax, ay), (bx, by) = start, end
        # Most lines of a drawing are nowhere near: turn those away before anything is worked out.
        if (ax <= self.left and bx <= self.left) or (ax >= self.right and bx >= self.right):
            return False
        if (ay <= self.bottom and by <= self.bottom) or (ay >= self.top and by >= self.top):
            return False
        return span_inside(self, start, end) is not None


def span_inside(box: Box, start: Point, end: Point) -> tuple[float, float] | None:
    """Return the part of a straight line inside a box, as two shares of its length, or None.

    >>> span_inside(Box(0, 0, 2, 2), (-1, 1), (3, 1))
    (0.25, 0.75)
    """
    enter, leave = 0.0, 1.0
    for low, high, at, to in (
        (box.left, box.right, start[0], end[0]),
        (box.bottom, box.top, start[1], end[1]),
    ):
        if at == to:
            if not low < at < high:
                return None
            continue
        first, second = sorted(((low - at) / (to - at), (high - at) / (to - at)))
        enter, leave = max(enter, first), min(leave, second)
    return (enter, leave) if enter < leave else None


def around(points: Iterable[Point]) -> Box:
    """Return the smallest box that holds every point (at least one).

    >>> around([(1, 5), (3, 2)])
    Box(left=1, bottom=2, right=3, top=5)
    """
    listed = list(points)
    across, up = [x for x, _ in listed], [y for _, y in listed]
    return Box(min(across), min(up), max(across), max(up))


def union(boxes: Iterable[Box]) -> Box:
    """Return the smallest box that holds every box (at least one)."""
    return around(corner for box in boxes for corner in (box.corners[0], box.corners[2]))
