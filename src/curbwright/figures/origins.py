"""Where a number comes from: one small class an origin.

The build file, a table, an equation, a sum, a schedule of equal sums, a root, or the governing case.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeAlias

if TYPE_CHECKING:
    from curbwright.figures.cards import Card
    from curbwright.figures.figure import Figure


@dataclass(frozen=True)
class Given:
    """From the build file, or from a typical value standing in for a field left out.

    ``typed`` is the text as written. ``how`` says how the value is known. ``assumed`` marks a stand-in,
    and ``source`` says where the stand-in comes from.
    """

    path: str
    typed: str
    how: str = ""
    assumed: bool = False
    source: str = ""


@dataclass(frozen=True)
class Tabled:
    """From a published table or a clause; ``row`` names the row and the rule that chose it."""

    source: str
    row: str = ""


@dataclass(frozen=True)
class Worked:
    """From an equation or a procedure."""

    card: Card
    inputs: dict[str, Figure]


@dataclass(frozen=True)
class Summed:
    """The sum of other figures."""

    terms: tuple[Figure, ...]


@dataclass(frozen=True)
class Scheduled:
    """The sum of one equation over many rows: a schedule with a total."""

    card: Card
    rows: dict[str, dict[str, Figure]]


@dataclass(frozen=True)
class Solved:
    """The root of an equation's residual: the unknown that makes it zero."""

    card: Card
    unknown: str
    inputs: dict[str, Figure]


@dataclass(frozen=True)
class Governing:
    """The largest or the smallest of several cases, and which one it was."""

    rule: str
    cases: dict[str, Figure]
    chosen: str


Origin: TypeAlias = Given | Tabled | Worked | Summed | Scheduled | Solved | Governing
