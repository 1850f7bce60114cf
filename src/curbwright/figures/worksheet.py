"""Worksheet: the lines of one calculation, in the order a person would write them.

A sheet is an ordinary object, passed explicitly. It refuses a number without an origin and a figure in
another unit than the equation declares. A field that the builder left out ends the section that needs it
and is recorded as a gap: the findings that depend on it become "cannot tell".
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any

from curbwright.errors import MissingInput, SheetError, UntracedNumber, WrongUnit
from curbwright.figures.cards import Card, card_of
from curbwright.figures.figure import Figure
from curbwright.figures.origins import Given, Governing, Origin, Scheduled, Solved, Summed, Tabled, Worked


@dataclass(frozen=True)
class Entry:
    """One field of the build file, as a sheet needs it; ``value`` is None where the builder left it out."""

    value: float | None
    name: str
    unit: str
    path: str
    typed: str = ""
    how: str = ""
    assumed: bool = False
    source: str = ""
    shown: str | None = None


@dataclass(frozen=True)
class Gap:
    """A section that could not be finished, and the field that would settle it."""

    section: str
    path: str
    says: str


class Worksheet:
    """The lines of one calculation; sections are worksheets of their own below it."""

    def __init__(self, id: str, title: str) -> None:
        self.id = id
        self.title = title
        self.lines: list[Figure] = []
        self.sections: list[Worksheet] = []
        self.gaps: list[Gap] = []
        self.notes: list[str] = []
        self._by_id: dict[str, Figure] = {}

    def section(self, id: str, title: str) -> Worksheet:
        """Open a section; its figures' ids start with its own id."""
        below = Worksheet(f"{self.id}.{id}", title)
        self.sections.append(below)
        return below

    @contextmanager
    def attempt(self) -> Iterator[None]:
        """Run lines that may lack an input; what is missing is recorded as a gap instead of raised."""
        try:
            yield
        except MissingInput as missing:
            self.gaps.append(Gap(self.id, missing.path, missing.says))
        except (ZeroDivisionError, OverflowError) as nothing:
            self.gaps.append(Gap(self.id, "", f"these inputs give no number ({nothing})"))

    def note(self, text: str) -> None:
        """Write a remark under the lines."""
        if text not in self.notes:
            self.notes.append(text)

    def given(self, entry: Entry) -> Figure:
        """Write a field of the build file, once; raise MissingInput if the builder left it out."""
        if entry.value is None:
            raise MissingInput(entry.path, f"{entry.name} is not given")
        if entry.path in self._by_id:
            return self._by_id[entry.path]
        origin = Given(entry.path, entry.typed, entry.how, entry.assumed, entry.source)
        return self._keep(
            Figure(
                entry.value, id=entry.path, name=entry.name, unit=entry.unit, origin=origin, shown=entry.shown
            )
        )

    def choice(self, id: str, name: str, value: float, path: str, typed: str, unit: str = "1") -> Figure:
        """Write a number that a word in the build file stands for, such as 0 for brakes fitted.

        With a unit, a number out of a file that the build file names.
        """
        return self._write(id, name, value, unit, Given(path, typed), None)

    def tabled(
        self,
        id: str,
        name: str,
        value: float,
        unit: str,
        *,
        source: str,
        row: str = "",
        shown: str | None = None,
    ) -> Figure:
        """Write a number from a published table or clause."""
        return self._write(id, name, value, unit, Tabled(source, row), shown)

    def work(
        self, id: str, name: str, function: Callable[..., Any], *, shown: str | None = None, **inputs: Figure
    ) -> Figure:
        """Apply an equation, write the line, return the result."""
        card = self._checked(name, function, inputs)
        result = function(**inputs)
        return self._write(id, name, result, card.units["return"], Worked(card, inputs), shown)

    def total(
        self, id: str, name: str, terms: Sequence[Figure], *, unit: str = "", shown: str | None = None
    ) -> Figure:
        """Write the sum of figures in one unit; ``unit`` is needed only where there may be none to add."""
        units = {self._traced(name, "a term", term).unit for term in terms} or {unit}
        if len(units) != 1 or units == {""}:
            raise WrongUnit(f"{self.id}: {name}: cannot add {', '.join(sorted(units))}")
        return self._write(id, name, math.fsum(terms), units.pop(), Summed(tuple(terms)), shown)

    def schedule(
        self, id: str, name: str, function: Callable[..., Any], rows: Mapping[str, Mapping[str, Figure]],
        *, shown: str | None = None,
    ) -> Figure:  # fmt: skip
        """Apply one equation to every row and write the rows and their sum as one line."""
        card = card_of(function)
        for label, row in rows.items():
            self._checked(f"{name}: {label}", function, row)
        result = math.fsum(function(**row) for row in rows.values())
        kept = {label: dict(row) for label, row in rows.items()}
        return self._write(id, name, result, card.units["return"], Scheduled(card, kept), shown)

    def solve(
        self, id: str, name: str, residual: Callable[..., Any], *, for_: str, between: tuple[float, float],
        shown: str | None = None, **inputs: Figure,
    ) -> Figure:  # fmt: skip
        """Find the value of argument ``for_`` that makes a residual equation zero, by bisection.

        Raises SheetError if the residual has one sign at both ends of ``between``.
        """
        card = self._checked(name, residual, inputs, but=for_)
        root = _bisect(lambda value: float(residual(**inputs, **{for_: value})), *between)
        if root is None:
            raise SheetError(f"{self.id}: {name}: no root between {between[0]:g} and {between[1]:g}")
        return self._write(id, name, root, card.units[for_], Solved(card, for_, dict(inputs)), shown)

    def largest(self, id: str, name: str, cases: Mapping[str, Figure], *, shown: str | None = None) -> Figure:
        """Write the largest of several cases, naming which."""
        return self._govern(id, name, "largest", cases, shown)

    def smallest(
        self, id: str, name: str, cases: Mapping[str, Figure], *, shown: str | None = None
    ) -> Figure:
        """Write the smallest of several cases, naming which."""
        return self._govern(id, name, "smallest", cases, shown)

    def figures(self) -> dict[str, Figure]:
        """Return every figure of the sheet and its sections by id."""
        found = dict(self._by_id)
        for below in self.sections:
            found.update(below.figures())
        return found

    def all_gaps(self) -> list[Gap]:
        """Return the gaps of the sheet and its sections."""
        return [*self.gaps, *(gap for below in self.sections for gap in below.all_gaps())]

    def _govern(
        self, id: str, name: str, rule: str, cases: Mapping[str, Figure], shown: str | None
    ) -> Figure:
        if not cases:
            raise SheetError(f"{self.id}: {name}: there is no case to choose from")
        if len({self._traced(name, label, case).unit for label, case in cases.items()}) != 1:
            raise WrongUnit(f"{self.id}: {name}: the cases are in different units")
        chosen = (max if rule == "largest" else min)(cases, key=lambda label: float(cases[label]))
        origin = Governing(rule, dict(cases), chosen)
        return self._write(id, name, cases[chosen], cases[chosen].unit, origin, shown or cases[chosen].shown)

    def _checked(
        self, name: str, function: Callable[..., Any], inputs: Mapping[str, Figure], but: str = ""
    ) -> Card:
        card = card_of(function)
        for word, number in inputs.items():
            unit = self._traced(name, word, number).unit
            if unit != card.units.get(word):
                raise WrongUnit(f"{self.id}: {name}: {word} is in {unit}, not {card.units.get(word)}")
        if set(inputs) | ({but} if but else set()) != set(card.units) - {"return"}:
            raise WrongUnit(f"{self.id}: {name}: {card.name} takes {', '.join(set(card.units) - {'return'})}")
        return card

    def _traced(self, name: str, word: str, number: object) -> Figure:
        if not isinstance(number, Figure):
            raise UntracedNumber(f"{self.id}: {name}: {word} has no origin")
        return number

    def _write(
        self, id: str, name: str, value: float, unit: str, origin: Origin, shown: str | None
    ) -> Figure:
        if isinstance(value, complex) or not math.isfinite(value):
            raise OverflowError(f"{name} is not a finite number")
        return self._keep(
            Figure(value, id=f"{self.id}.{id}", name=name, unit=unit, origin=origin, shown=shown)
        )

    def _keep(self, figure: Figure) -> Figure:
        if figure.id in self._by_id:
            raise SheetError(f"{self.id}: two figures are called {figure.id}")
        self._by_id[figure.id] = figure
        self.lines.append(figure)
        return figure


def _bisect(residual: Callable[[float], float], low: float, high: float) -> float | None:
    """Return the root of a function between two ends of opposite sign, to the last bit, or None."""
    at_low, at_high = residual(low), residual(high)
    if not (math.isfinite(at_low) and math.isfinite(at_high)):
        return None
    if at_low == 0.0 or at_high == 0.0:
        return low if at_low == 0.0 else high
    if (at_low > 0) == (at_high > 0):
        return None
    while True:
        middle = (low + high) / 2
        if middle in (low, high):
            return middle
        if (residual(middle) > 0) == (at_low > 0):
            low = middle
        else:
            high = middle
