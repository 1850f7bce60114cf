"""Holds a unit against the kind that is due."""

from __future__ import annotations

from functools import cache

from curbwright.units.expression import NotAUnitError, readings
from curbwright.units.kinds import KINDS, Kind
from curbwright.units.refusals import Written, other_kind, unknown
from curbwright.units.text import plain
from curbwright.units.unit import Dimension, Unit


@cache
def unit_of(kind: Kind) -> Unit:
    """Return the SI unit of a kind as the table knows it."""
    return readings(plain(kind.made_of))[0][0]


@cache
def _shared() -> frozenset[Dimension]:
    """The dimensions that an energy shares with something else."""
    units = [unit_of(kind) for kind in KINDS.values()]
    energies = {unit.dimension for unit in units if unit.works}
    return frozenset(unit.dimension for unit in units if not unit.works and unit.dimension in energies)


def fits(unit: Unit, kind: Kind) -> bool:
    """True where a unit measures what a kind is: same dimension, and no energy for a moment."""
    due = unit_of(kind)
    if unit.dimension != due.dimension or kind.name in ("number", "clock"):
        return False
    if due.dimension in _shared() and unit.works != due.works:
        return False
    return kind.name != "temperature" or (bool(unit.name) and not unit.difference)


def suited(unit: Unit, kind: Kind) -> Unit:
    """Return the unit as a kind uses it: only a temperature counts from another zero."""
    return unit if kind.name == "temperature" else unit._replace(offset=0.0)


def kind_of(unit: Unit) -> Kind | None:
    """Return the first kind that a unit measures."""
    if unit.difference:
        return KINDS["temperature_difference"]
    return next((kind for kind in KINDS.values() if fits(unit, kind)), None)


def unit_for(written: Written, kind: Kind) -> Unit:
    """Return the unit that a text means where a kind is due; raises UnitProblem."""
    try:
        found = readings(written.unit)
    except NotAUnitError as problem:
        raise unknown(written, problem.word, kind, lambda unit: fits(unit, kind)) from None
    for unit, mark in found:
        if mark != "convert" and fits(unit, kind):
            return suited(unit, kind)
    loads = [unit for unit, mark in found if mark == "load"]
    raise other_kind(written, kind, kind_of(loads[-1] if loads else found[0][0]))
