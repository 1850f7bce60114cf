"""The table of units: what each is made of, its spellings, and how careful they are about capitals."""

from __future__ import annotations

import os
from functools import cache
from typing import NamedTuple

from curbwright.units.tables import rows

Dimension = tuple[int, int, int, int, int, int, int, int]
"""Powers of m, kg, s, A, K, rad, lux and USD."""

NOTHING: Dimension = (0, 0, 0, 0, 0, 0, 0, 0)
BASE = ("m", "kg", "s", "A", "K", "rad", "lux", "USD")
_HERE = os.path.dirname(__file__)
STANDARD_GRAVITY = 9.80665
"""m/s2, exact by convention: what a pound or a kilogram of mass weighs is counted with it."""


class Unit(NamedTuple):
    """A unit worked down to SI: a value is ``number * factor + offset``."""

    name: str
    dimension: Dimension
    factor: float
    offset: float = 0.0
    works: bool = False
    """True where an energy or a power is part of it: that parts kWh from lb·ft."""
    difference: bool = False
    """True for a temperature difference."""


class Row(NamedTuple):
    """One row of ``units.csv`` before it is worked down."""

    name: str
    of: str
    offset: str
    exact: bool
    """True where capitals matter (mW, MW)."""
    mark: str
    """``weight``: a mass that may stand for its weight. ``load``: a force where nothing says otherwise.
    ``convert``: known to ``factor`` and refused from a builder. ``difference``: of temperatures.
    ``energy``: whatever is made of it is energy or power, and never a moment."""
    aliases: tuple[str, ...]


class Table(NamedTuple):
    """All rows, by exact spelling and by spelling without regard to capitals."""

    rows: tuple[Row, ...]
    exact: dict[str, tuple[Row, ...]]
    folded: dict[str, tuple[Row, ...]]


@cache
def table() -> Table:
    """Return the table of units, loaded when first asked for."""
    loaded: list[Row] = []
    exact: dict[str, tuple[Row, ...]] = {}
    folded: dict[str, tuple[Row, ...]] = {}
    for name, of, offset, aliases, case, mark, _, _ in rows(os.path.join(_HERE, "units.csv")):
        row = Row(name, of, offset, case == "exact", mark, tuple(aliases.split("|")) if aliases else ())
        loaded.append(row)
        for spelling in (name, *row.aliases):
            exact[spelling] = (*exact.get(spelling, ()), row)
            small = spelling.casefold()
            if row not in folded.get(small, ()):
                folded[small] = (*folded.get(small, ()), row)
    return Table(tuple(loaded), exact, folded)


def named(spelling: str) -> tuple[Row, ...]:
    """Return the rows that a spelling may mean; none where only capitals tell units apart.

    >>> [row.name for row in named("LBS")], [row.name for row in named("mw")]
    (['lb'], [])
    """
    found = table().exact.get(spelling)
    if found is not None:
        return found
    near = table().folded.get(spelling.casefold(), ())
    return () if any(row.exact for row in near) else near


def capitals(spelling: str) -> tuple[str, ...]:
    """Return the spellings that differ from this one in capitals only.

    >>> capitals("mw")
    ('mW', 'MW')
    """
    small = spelling.casefold()
    near = table().folded.get(small, ())
    return tuple(each for row in near for each in (row.name, *row.aliases) if each.casefold() == small)


def product(left: Unit, right: Unit, power: int, name: str = "") -> Unit:
    """Return ``left * right**power``; offsets drop out, as they do in any rate or product."""
    powers = [a + b * power for a, b in zip(left.dimension, right.dimension, strict=True)]
    dimension: Dimension = tuple(powers)  # type: ignore[assignment]
    works = left.works or right.works
    return Unit(name, dimension, left.factor * right.factor**power, 0.0, works)


def number(cell: str) -> float:
    """Return the value of a cell: a decimal, or a ratio of two.

    >>> number("5/9") == 5 / 9
    True
    """
    top, _, bottom = cell.partition("/")
    return float(top) / float(bottom or 1)
