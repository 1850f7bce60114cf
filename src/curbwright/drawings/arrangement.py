"""Views set out on a sheet: one under another, side by side, or in rows, on one line where they can be."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from curbwright.drawings.boxes import Box, Point

TITLE_GAP = 4.0  # mm from a view to its title
APART = 7.0  # mm between views


@dataclass(frozen=True)
class Block:
    """A view and its title: extents about the view's origin and the title's size, in mm.

    ``aligned`` views share an origin worth lining up, as a plan and the elevation above it do.
    """

    extents: Box
    title: tuple[float, float]
    aligned: bool

    @property
    def span(self) -> Box:
        """The room taken about the origin with the title centred underneath."""
        middle, half = self.extents.centre[0], self.title[0] / 2
        return Box(
            min(self.extents.left, middle - half),
            self.extents.bottom - TITLE_GAP - self.title[1],
            max(self.extents.right, middle + half),
            self.extents.top,
        )

    def title_at(self, origin: Point) -> Point:
        """Return the lower left of the title when the origin stands there."""
        return origin[0] + self.extents.centre[0] - self.title[0] / 2, origin[1] + self.span.bottom


def arranged(blocks: Sequence[Block], room: Box) -> list[tuple[Point, Point]] | None:
    """Return where each block's origin and its title's lower left stand, or None if they do not all fit."""
    if not blocks:
        return []
    for rows in _ways(blocks, room):
        found = _set_out(rows, room)
        if found is not None:
            return [(origin, block.title_at(origin)) for origin, block in zip(found, blocks, strict=True)]
    return None


def _ways(blocks: Sequence[Block], room: Box) -> Iterator[list[list[Block]]]:
    yield [[block] for block in blocks]
    if len(blocks) > 1:
        yield [list(blocks)]
    rows: list[list[Block]] = []
    for block in blocks:
        if rows and sum(b.span.width + APART for b in rows[-1]) + block.span.width <= room.width:
            rows[-1].append(block)
        else:
            rows.append([block])
    yield rows


def _set_out(rows: Sequence[Sequence[Block]], room: Box) -> list[Point] | None:
    heights = [_reach(row)[0] + _reach(row)[1] for row in rows]
    spare = room.height - sum(heights) - APART * (len(rows) - 1)
    if spare < 0:
        return None
    between = spare / (len(rows) + 1)
    lined_up = _lined_up(rows, room) if all(len(row) == 1 and row[0].aligned for row in rows) else None
    found: list[Point] = []
    top = room.top - between
    for row, height in zip(rows, heights, strict=True):
        across = [lined_up] if lined_up is not None else _across(row, room)
        if across is None:
            return None
        for block, x in zip(row, across, strict=True):
            below = _reach(row)[1]
            y = top - height + below if _level(row) else top - block.span.top
            found.append((x, y))
        top -= height + between + APART
    return found


def _level(row: Sequence[Block]) -> bool:
    """Whether the views of a row stand on one line."""
    return all(block.aligned for block in row)


def _reach(row: Sequence[Block]) -> tuple[float, float]:
    """Return how far a row reaches above and below the line its origins stand on, or its height and 0."""
    if _level(row):
        return max(block.span.top for block in row), max(-block.span.bottom for block in row)
    return max(block.span.height for block in row), 0.0


def _lined_up(rows: Sequence[Sequence[Block]], room: Box) -> float | None:
    """Return the one x for the origins of a column, if all its views then fit across."""
    left = min(row[0].span.left for row in rows)
    right = max(row[0].span.right for row in rows)
    if right - left > room.width:
        return None
    return room.centre[0] - (left + right) / 2


def _across(row: Sequence[Block], room: Box) -> list[float] | None:
    spare = room.width - sum(block.span.width for block in row) - APART * (len(row) - 1)
    if spare < 0:
        return None
    between = spare / (len(row) + 1)
    found = []
    x = room.left + between
    for block in row:
        found.append(x - block.span.left)
        x += block.span.width + APART + between
    return found
