"""Figure: a number that remembers what it is and where it came from."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from curbwright.figures.origins import Given, Governing, Origin, Scheduled, Solved, Summed, Tabled, Worked


class Figure(float):
    """A float that knows its id, name, unit and origin; arithmetic on it gives a bare float.

    ``id`` is unique in a build's worksheets, ``unit`` the SI spelling of curbwright.quantities and ``shown``
    the unit it prints in where its trade has its own (BTU/h for gas, gpm for water).
    """

    id: str
    name: str
    unit: str
    origin: Origin
    shown: str | None

    def __new__(
        cls, value: float, *, id: str, name: str, unit: str, origin: Origin, shown: str | None = None
    ) -> Figure:
        """Make a figure; nothing is checked here, the worksheet does that."""
        self = super().__new__(cls, value)
        self.id, self.name, self.unit, self.origin, self.shown = id, name, unit, origin, shown
        return self

    def __reduce__(self) -> tuple[Any, ...]:
        return _rebuild, (float(self), self.id, self.name, self.unit, self.origin, self.shown)

    def __repr__(self) -> str:
        return f"<{self.id} {float(self):g} {self.unit}>"


def _rebuild(value: float, id: str, name: str, unit: str, origin: Origin, shown: str | None) -> Figure:
    return Figure(value, id=id, name=name, unit=unit, origin=origin, shown=shown)


def inputs_of(figure: Figure) -> tuple[Figure, ...]:
    """Return the figures that this one was worked from, in the order they are printed."""
    match figure.origin:
        case Worked(_, inputs) | Solved(_, _, inputs):
            return tuple(inputs.values())
        case Summed(terms):
            return terms
        case Scheduled(_, rows):
            return tuple(one for row in rows.values() for one in row.values())
        case Governing(_, cases, _):
            return tuple(cases.values())
        case Given() | Tabled():
            return ()


def walk(*figures: Figure) -> Iterator[Figure]:
    """Yield the whole working of figures, inputs before what is worked from them, each once."""
    seen: set[int] = set()
    stack = [(one, False) for one in reversed(figures)]
    while stack:
        one, ready = stack.pop()
        if ready:
            yield one
        elif id(one) not in seen:
            seen.add(id(one))
            stack.append((one, True))
            stack.extend((each, False) for each in reversed(inputs_of(one)))


def roots(*figures: Figure) -> set[str]:
    """Return the build-file paths that figures depend on.

    A field that the builder left out and a typical value stands in for counts: setting it changes the figure.
    """
    return {one.origin.path for one in walk(*figures) if isinstance(one.origin, Given)}


def sources(figure: Figure) -> set[str]:
    """Return the source keys used anywhere in a figure's working."""
    found: set[str] = set()
    for one in walk(figure):
        match one.origin:
            case Worked(card, _) | Scheduled(card, _) | Solved(card, _, _):
                found.add(card.source)
            case Tabled(source, _) | Given(source=source):
                found.add(source)
    return found - {""}


def origin_tree(figure: Figure) -> dict[str, Any]:
    """Return a figure's origin as plain data for JSON: the kind, and the ids it was worked from."""
    match figure.origin:
        case Given(path, typed, how, assumed, source):
            return {
                "kind": "given",
                "path": path,
                "typed": typed,
                "how": how,
                "assumed": assumed,
                "source": source,
            }
        case Tabled(source, row):
            return {"kind": "tabled", "source": source, "row": row}
        case Worked(card, inputs):
            from_ = {word: one.id for word, one in inputs.items()}
            return {"kind": "worked", "equation": card.name, "source": card.source, "inputs": from_}
        case Summed(terms):
            return {"kind": "summed", "terms": [one.id for one in terms]}
        case Scheduled(card, rows):
            table = {label: {word: one.id for word, one in row.items()} for label, row in rows.items()}
            return {"kind": "scheduled", "equation": card.name, "source": card.source, "rows": table}
        case Solved(card, unknown, inputs):
            from_ = {word: one.id for word, one in inputs.items()}
            return {
                "kind": "solved",
                "equation": card.name,
                "source": card.source,
                "for": unknown,
                "inputs": from_,
            }
        case Governing(rule, cases, chosen):
            from_ = {label: one.id for label, one in cases.items()}
            return {"kind": "governing", "rule": rule, "cases": from_, "chosen": chosen}
