"""A chain of dimensions set out in rows at one scale, so that no figure collides with another.

A figure too wide for its gap is lifted off its row and tied to it by a leader; where many crowd together the
lifted ones stand square to the line. Offsets are common drawing-office practice.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from curbwright.drawings.boxes import Point
from curbwright.drawings.dimensions import ABOVE_LINE, OVERSHOOT, SLANT, half_depth, usual_rise
from curbwright.drawings.lettering import width
from curbwright.drawings.primitives import Chain, Dimension, Run

FIRST_ROW = 9.0  # mm on paper from the work to the first dimension line
ROW_PITCH = 8.0  # mm from one row to the next
BETWEEN = 1.6  # mm between neighbouring labels
STEM = 4.6  # mm: a lifted label's leader first runs straight past the labels left on the row
SHORT_STEM = 1.0  # mm, where the row's labels stand on the other side of their line
FARTHEST = 6.0  # mm a lifted label may stray sideways before the lifted ones are turned
_SIGN = {"above": 1, "right": 1, "below": -1, "left": -1}


@dataclass(frozen=True)
class Lift:
    """The lifted labels of one row: where each stands along it (mm), whether they are turned."""

    turned: bool = False
    along: dict[int, float] = field(default_factory=dict)


@dataclass(frozen=True)
class Taken:
    """Paper lettered by an inner row: from and to along the chain, and how far out it reaches (mm)."""

    low: float
    high: float
    reach: float


def spread(chain: Chain, per_metre: float) -> list[Dimension]:
    """Return the dimensions of a chain at so many millimetres of paper to the metre, innermost row first."""
    done: list[Dimension] = []
    taken: list[Taken] = []
    depth = FIRST_ROW
    for run in chain.runs:
        lift = _lifted(run, per_metre, chain.height)
        done.extend(_row(chain, run, depth, lift, taken, per_metre))
        taken.extend(_lettered(chain, run, depth, lift, per_metre))
        outermost = max((_lift_out(chain, run.labels[i], lift) for i in lift.along), default=0.0)
        deepest = max((_depth_of(chain, run.labels[i], lift) for i in lift.along), default=0.0)
        depth += ROW_PITCH + (outermost + deepest - 2.0 if lift.along else 0.0)
    return done


def _lifted(run: Run, per_metre: float, height: float) -> Lift:
    """Return the labels that do not fit their gap, moved apart."""
    tight = [
        i for i, label in enumerate(run.labels) if width(label, height) + BETWEEN > _gap(run, i, per_metre)
    ]
    wanted = [_middle(run, i, per_metre) for i in tight]
    level = apart(wanted, [width(run.labels[i], height) + BETWEEN for i in tight])
    if all(abs(place - wish) <= FARTHEST for place, wish in zip(level, wanted, strict=True)):
        return Lift(False, dict(zip(tight, level, strict=True)))
    square = apart(wanted, [1.4 * height + BETWEEN / 2 for _ in tight])
    return Lift(True, dict(zip(tight, square, strict=True)))


def _gap(run: Run, index: int, per_metre: float) -> float:
    return (run.places[index + 1] - run.places[index]) * per_metre


def _middle(run: Run, index: int, per_metre: float) -> float:
    return (run.places[index] + run.places[index + 1]) / 2 * per_metre


def apart(wanted: Sequence[float], widths: Sequence[float]) -> list[float]:
    """Move ascending centres apart as little as will keep things of these widths from overlapping.

    Least squares with an order: neighbours that collide are pooled and centred on their mean.

    >>> apart([0.0, 1.0, 9.0], [4.0, 4.0, 4.0])
    [-1.5, 2.5, 9.0]
    """
    steps = [0.0]
    for before, after in zip(widths, widths[1:], strict=False):
        steps.append(steps[-1] + (before + after) / 2)
    pools: list[tuple[float, int]] = []
    for centre, step in zip(wanted, steps, strict=False):
        mean, count = centre - step, 1
        while pools and pools[-1][0] > mean:
            other, more = pools.pop()
            mean, count = (mean * count + other * more) / (count + more), count + more
        pools.append((mean, count))
    means = [mean for mean, count in pools for _ in range(count)]
    return [mean + step for mean, step in zip(means, steps, strict=False)]


def _outward(chain: Chain) -> bool:
    """Whether labels, which stand above or left of their line, stand on the outer side of this chain."""
    return chain.side in ("above", "left")


def _upright(chain: Chain) -> bool:
    return chain.side in ("left", "right")


def _depth_of(chain: Chain, label: str, lift: Lift) -> float:
    """Half the room a lifted label takes outward, in mm."""
    return half_depth(label, chain.height, feet=True, turned=lift.turned)


def _lift_out(chain: Chain, label: str, lift: Lift) -> float:
    """Distance outward from the dimension line to the middle of a lifted label, in mm."""
    stem = STEM if _outward(chain) else SHORT_STEM
    return stem + SLANT + half_depth(label, chain.height, feet=_outward(chain), turned=lift.turned)


def _row(
    chain: Chain, run: Run, depth: float, lift: Lift, taken: Sequence[Taken], per_metre: float
) -> list[Dimension]:
    sign, upright = _SIGN[chain.side], _upright(chain)
    row = []
    for index, label in enumerate(run.labels):
        first, second = run.places[index], run.places[index + 1]
        moved: Point | None = None
        if index in lift.along:
            along = lift.along[index] - _middle(run, index, per_metre)
            out = sign * _lift_out(chain, label, lift) - usual_rise(chain.height, upright)
            moved = (out, along) if upright else (along, out)
        row.append(
            Dimension(
                start=(chain.base, first) if upright else (first, chain.base),
                end=(chain.base, second) if upright else (second, chain.base),
                base=chain.base,
                offset=sign * depth,
                label=label,
                rotation=90 if upright else 0,
                moved=moved,
                turned=lift.turned and moved is not None,
                first=index == 0,
                start_gap=_clear_of(taken, first * per_metre),
                end_gap=_clear_of(taken, second * per_metre),
                height=chain.height,
                layer=chain.layer,
                item=chain.item,
            )
        )
    return row


def _clear_of(taken: Sequence[Taken], along: float) -> float:
    """Return where an extension line may start so as to strike no label of an inner row."""
    return max((label.reach for label in taken if label.low < along < label.high), default=OVERSHOOT)


def _lettered(chain: Chain, run: Run, depth: float, lift: Lift, per_metre: float) -> list[Taken]:
    """Return the paper the labels of a row take."""
    found = []
    for index, label in enumerate(run.labels):
        half = width(label, chain.height) / 2
        centre = _middle(run, index, per_metre)
        reach = depth + (ABOVE_LINE + 1.2 * chain.height if _outward(chain) else OVERSHOOT)
        if index in lift.along:
            centre = lift.along[index]
            half = 0.9 * chain.height if lift.turned else half
            reach = depth + _lift_out(chain, label, lift) + _depth_of(chain, label, lift) + 0.6
        found.append(Taken(centre - half - 0.6, centre + half + 0.6, reach))
    return found
