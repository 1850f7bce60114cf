"""The kinds of thing a cart carries, and what the trades need to know of each."""

from __future__ import annotations

import csv
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from curbwright.errors import UnknownName


@dataclass(frozen=True)
class Kind:
    """One kind of thing: its name in the build file, what it is, and its flags (data/kind_flags.csv).

    >>> "hand_sink" in find("hand_sink").flags
    True
    """

    name: str
    says: str
    flags: frozenset[str]

    def is_(self, *flags: str) -> bool:
        """Whether it carries any of these flags."""
        return not self.flags.isdisjoint(flags)


UNKNOWN = Kind("", "kind not given", frozenset({"burns"}))
"""Stands in where no kind is given: nothing is known, so it is taken to burn."""


@cache
def all_kinds() -> dict[str, Kind]:
    """Return every kind by name, in the order of the table."""
    return {
        row["kind"]: Kind(row["kind"], row["says"], frozenset(row["flags"].split())) for row in _rows("kinds")
    }


@cache
def flags() -> dict[str, str]:
    """Return what each flag means."""
    return {row["flag"]: row["says"] for row in _rows("kind_flags")}


def names() -> tuple[str, ...]:
    """Return the names of the kinds."""
    return tuple(all_kinds())


def with_flag(*wanted: str) -> tuple[str, ...]:
    """Return the names of the kinds that carry any of these flags."""
    return tuple(name for name, kind in all_kinds().items() if kind.is_(*wanted))


def find(name: str | None) -> Kind:
    """Return a kind by name; UNKNOWN where no name is given.

    Raises UnknownName for a name that is not on the list.
    """
    if name is None:
        return UNKNOWN
    try:
        return all_kinds()[name]
    except KeyError:
        raise UnknownName(f"there is no kind {name!r}") from None


def _rows(name: str) -> Iterable[dict[str, str]]:
    text = files("curbwright").joinpath("data", f"{name}.csv").read_text(encoding="utf-8")
    return csv.DictReader(text.splitlines())
