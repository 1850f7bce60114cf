"""Dimensions: chains of them lettered from places in metres, and how one is drawn on paper.

Slashes for ticks, the figure over its line, reading from below or from the right: common practice.
"""

from __future__ import annotations

from collections.abc import Sequence

from curbwright.drawings.boxes import Point
from curbwright.drawings.ink import Ink, Projection, Stroke, Word
from curbwright.drawings.lettering import NOTE_HEIGHT, baseline_offset, width
from curbwright.drawings.primitives import Chain, Dimension, Run, Side
from curbwright.units import show

STEPS = {"us": 0.0254 / 16, "si": 0.001}  # m: dimensions are written to 1/16 in or 1 mm
OVERSHOOT = 1.5  # mm that lines run past each other
TICK = 2.2  # mm, length of the slash
ABOVE_LINE = 1.0  # mm from the dimension line to the foot of its label
SLANT = 2.2  # mm: the end of a moved label's leader that may lean
FEET, HEADS = 0.32, 0.08  # how far tails and tall letters reach past a capital, in capital heights


def chain(
    *runs: Sequence[float],
    side: Side,
    base: float,
    system: str = "us",
    overall: bool = False,
    height: float = NOTE_HEIGHT,
) -> Chain:
    """Return rows of dimensions, the first run innermost.

    A run lists places in metres along x (side above or below) or y (left or right), in any order; ``base`` is
    the coordinate of the work's edge the extension lines spring from. ``overall`` adds a row from end to end.
    Places are rounded before they are subtracted, so the figures of a row add up to the overall figure.

    >>> chain([0, 0.6096, 1.2192], side="below", base=0.0, system="si").runs[0].labels
    ('610 mm', '609 mm')
    """
    step = STEPS[system]
    wanted = [run for run in runs if len(run) > 1]
    if overall and wanted:
        ends = [place for run in wanted for place in run]
        wanted.append([min(ends), max(ends)])
    return Chain(side, base, tuple(_run(places, step, system) for places in wanted), height)


def _run(places: Sequence[float], step: float, system: str) -> Run:
    """Round the places, drop those that fall together, and letter the gaps."""
    kept: dict[int, float] = {}
    for place in sorted(places):
        kept.setdefault(round(place / step), place)
    counts = list(kept)
    labels = (length_text((b - a) * step, system) for a, b in zip(counts, counts[1:], strict=False))
    return Run(tuple(kept.values()), tuple(labels))


def length_text(metres: float, system: str) -> str:
    """Return a length as a drawing letters it: feet and inches to 1/16, or millimetres.

    >>> length_text(0.7620, "us"), length_text(0.762, "si")
    ('2 ft 6 in', '762 mm')
    """
    return show(metres, "m", system=system, shown="ft-in|mm", digits=7)


def drawn(dimension: Dimension, projection: Projection) -> list[Ink]:
    """Return a dimension as strokes and a word on paper."""
    turn = dimension.rotation == 90
    a, b, line = _ends(dimension, projection)
    # Work along x with the offset along y, and swap the two at the end if the dimension is upright.
    overshoot = OVERSHOOT if a[0] <= b[0] else -OVERSHOOT
    paths = [((a[0] - overshoot * dimension.first, line), (b[0] + overshoot, line))]
    sides = [(b, dimension.end_gap), (a, dimension.start_gap)]
    for (along, out), gap in sides if dimension.first else sides[:1]:
        sign = 1 if line >= out else -1
        if abs(line - out) > gap:
            paths.append(((along, out + sign * gap), (along, line + sign * OVERSHOOT)))
        paths.append(_tick(along, line, turn))
    upright = [tuple(_swapped(point, turn) for point in path) for path in paths]
    middle, leader = label_place(dimension, projection)
    if leader:
        upright.append(leader)
    return [Stroke(tuple(upright), dimension.layer, dimension.item), _label(dimension, middle)]


def label_place(dimension: Dimension, projection: Projection) -> tuple[Point, tuple[Point, ...]]:
    """Return where the middle of the label's capitals falls on paper, and its leader if it was moved."""
    turn = dimension.rotation == 90
    a, b, line = _ends(dimension, projection)
    middle = ((a[0] + b[0]) / 2, line)
    along, out = middle[0], line + usual_rise(dimension.height, turn)
    if dimension.moved is None:
        return _swapped((along, out), turn), ()
    shift = _swapped(dimension.moved, turn)
    along, out = along + shift[0], out + shift[1]
    sign = 1 if out > line else -1
    edge = out - sign * half_depth(
        dimension.label, dimension.height, feet=(sign > 0) != turn, turned=dimension.turned
    )
    leader = (middle, (middle[0], edge - sign * SLANT), (along, edge - sign * 0.2))
    return _swapped((along, out), turn), tuple(_swapped(point, turn) for point in leader)


def usual_rise(height: float, turn: bool) -> float:
    """Return how far out from its line the middle of a label usually stands: above, or left of, the line."""
    rise = ABOVE_LINE + height / 2
    return -rise if turn else rise


def half_depth(label: str, height: float, *, feet: bool, turned: bool) -> float:
    """Return how far a label reaches from the middle of its capitals toward its line.

    A turned label ends toward it; any other has its feet or its heads there.
    """
    if turned:
        return width(label, height) / 2
    return height * (0.5 + (FEET if feet else HEADS))


def _ends(dimension: Dimension, projection: Projection) -> tuple[Point, Point, float]:
    """Return both ends as (along, out) and the dimension line's place out, in mm."""
    turn = dimension.rotation == 90
    start, end = (_swapped(projection.paper(point), turn) for point in (dimension.start, dimension.end))
    base = _swapped(projection.paper((dimension.base, dimension.base)), turn)[1]
    return start, end, base + dimension.offset


def _swapped(point: Point, turn: bool) -> Point:
    return (point[1], point[0]) if turn else point


def _tick(along: float, line: float, turn: bool) -> tuple[Point, Point]:
    half = TICK / 2 * 0.7071
    lean = -half if turn else half
    return (along - half, line - lean), (along + half, line + lean)


def _label(dimension: Dimension, middle: Point) -> Word:
    x, y = middle
    upright = (dimension.rotation == 90) != dimension.turned
    drop = baseline_offset(dimension.height, 1, "middle")
    half = width(dimension.label, dimension.height) / 2
    at = (x - drop, y - half) if upright else (x - half, y + drop)
    rotation = 90 if upright else 0
    return Word(at, dimension.label, dimension.height, rotation, dimension.layer, dimension.item)
