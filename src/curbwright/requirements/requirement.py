"""Requirement: one row of a document, as data; reading the documents."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from curbwright import units
from curbwright.errors import UnknownName

COMPARATORS = {">=": "at least", "<=": "at most", "==": "exactly"}
SEVERITIES = {"must": 0, "should": 1, "advice": 2}
"""must: law or a rating; should: common practice that keeps people safe; advice: worth knowing."""


@dataclass(frozen=True)
class Requirement:
    """One row: a figure of the sheets, a comparator and a limit, with the clause that asks it.

    ``quantity`` is a figure id in which one ``*`` stands for any section, so that a row can hold for every
    load case. ``each`` says that a star right below a sheet stands for things of one sort, so that one whose
    figure is missing cannot be told. The limit is another figure (``limit``) or a quantity in words
    (``limit_value``).
    """

    id: str
    quantity: str
    comparator: str
    says: str
    why: str
    clause: str
    edition: str
    source: str
    how: str
    severity: str
    limit: str = ""
    limit_value: str = ""
    limit_kind: str = ""
    each: bool = False

    def __post_init__(self) -> None:
        if self.comparator not in COMPARATORS:
            raise UnknownName(f"{self.id}: {self.comparator!r} is not a comparator")
        if self.severity not in SEVERITIES:
            raise UnknownName(f"{self.id}: {self.severity!r} is not a severity")
        if bool(self.limit) == bool(self.limit_value):
            raise UnknownName(f"{self.id}: give either limit or limit_value")
        if self.limit_value:
            units.read(self.limit_value, self.limit_kind)

    @property
    def unconfirmed(self) -> bool:
        """Whether it is known from memory only and must be looked up before it is relied on."""
        return self.how == "memory"


DOCUMENTS = (
    "towing",
    "space",
    "cold",
    "electrical",
    "gas",
    "exhaust",
    "water",
    "cooking",
    "food",
    "battery",
    "solar",
)


@cache
def requirements() -> tuple[Requirement, ...]:
    """Return every requirement of the documents that every cart is held to."""
    found: list[Requirement] = []
    for document in DOCUMENTS:
        place = files("curbwright").joinpath("data", "requirements", f"{document}.toml")
        rows = tomllib.loads(place.read_text(encoding="utf-8"))["requirement"]
        found += [Requirement(**row) for row in rows]
    return tuple(found)
