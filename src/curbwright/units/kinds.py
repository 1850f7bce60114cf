"""The kinds of quantity a field can hold, and what each accepts, allows and prints in."""

from __future__ import annotations

import os
from typing import NamedTuple

from curbwright.units.tables import rows


class Kind(NamedTuple):
    """One kind of quantity: its SI unit, the builder's words for it, its limits and how it prints.

    ``least`` and ``most`` are SI values: the cap on what is plausible anywhere, not a field's own band.
    ``shown_us`` and ``shown_si`` name the unit it prints in: a home unit, then others with the SI size
    they take over at, as in ``lb;<0.45359237=oz``.
    """

    name: str
    unit: str
    made_of: str
    """The unit in base units where its spelling means something else to a builder (C is degrees)."""
    says: str
    units: tuple[str, ...]
    example: str
    least: float
    most: float
    shown_us: str
    shown_si: str

    @property
    def choices(self) -> str:
        """The units to choose from, as one reads them.

        >>> KINDS["mass"].choices
        'lb, kg, oz'
        """
        return ", ".join(self.units)

    @property
    def shown(self) -> str | None:
        """What to pass to ``show`` where the SI unit alone would print as another kind does; else None.

        >>> KINDS["clock"].shown, KINDS["share"].shown, KINDS["mass"].shown
        ('clock|clock', '%|%', None)
        """
        first = next(kind for kind in KINDS.values() if kind.unit == self.unit)
        if (first.shown_us, first.shown_si) == (self.shown_us, self.shown_si):
            return None
        return f"{self.shown_us.partition(';')[0]}|{self.shown_si.partition(';')[0]}"

    @property
    def like(self) -> str:
        """The advice to write it as in the example."""
        return f'Write it like "{self.example}"'


def _load() -> dict[str, Kind]:
    kinds = {}
    for row in rows(os.path.join(os.path.dirname(__file__), "kinds.csv")):
        name, unit, made_of, says, units, example, least, most, us, si = row
        choices = tuple(units.split("|"))
        kinds[name] = Kind(
            name, unit, made_of or unit, says, choices, example, float(least), float(most), us, si
        )
    return kinds


KINDS: dict[str, Kind] = _load()
"""Every kind by name, in the order of ``kinds.csv``; the first with an SI unit says how that unit prints."""
