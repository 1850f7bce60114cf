"""Where figures come from: one row a source in data/sources.csv, looked up by key.

A key may carry the place in the source after a colon: ``cfr-23-658-15:a`` is paragraph a of
``cfr-23-658-15``.
"""

from __future__ import annotations

import csv
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

from curbwright.errors import UnknownName

TABLE = Path(__file__).parent / "data" / "sources.csv"
HOW = {
    "read": "read in the source",
    "computed": "computed",
    "memory": "from memory: unconfirmed, look it up",
    "practice": "common practice of the trade, no source",
}
"""The closed set of ways a figure is known, and how each prints."""


class UnknownSource(UnknownName):
    """A source key that data/sources.csv does not list."""


@dataclass(frozen=True)
class Source:
    """One published document, page or practice.

    ``where`` is the place in it, ``address`` where the copy that was used lives (several are parted by
    " ; "), ``how`` a key of ``HOW``. Fields that are not known are empty.
    """

    key: str
    title: str
    edition: str
    where: str
    address: str
    how: str

    @property
    def cited(self) -> str:
        """Title, edition and place as one line of a source list."""
        return ", ".join(part for part in (self.title, self.edition, self.where) if part)


def look_up(key: str) -> Source:
    """Return the source of a key; a place after a colon takes over ``where``. Raises UnknownSource.

    >>> look_up("cfr-23-658-15:a").cited
    '23 CFR 658.15, width of vehicles, a'
    """
    name, colon, place = key.partition(":")
    found = _rows().get(name)
    if found is None:
        raise UnknownSource(f'"{key}" is not a source{_near(name)}')
    return replace(found, where=place) if colon else found


def keys() -> tuple[str, ...]:
    """Return every key, in the order of the table."""
    return tuple(_rows())


@cache
def _rows() -> dict[str, Source]:
    with TABLE.open(encoding="utf-8", newline="") as lines:
        return {row["key"]: Source(**row) for row in csv.DictReader(lines)}


def _near(name: str) -> str:
    from difflib import get_close_matches

    near = get_close_matches(name, _rows(), n=3)
    return f". Did you mean {' or '.join(near)}?" if near else ""
