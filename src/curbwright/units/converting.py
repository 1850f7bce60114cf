"""Converts units of their own, without a number: what published cases come in."""

from __future__ import annotations

from curbwright.units.expression import NotAUnitError, readings
from curbwright.units.kinds import KINDS
from curbwright.units.matching import fits, kind_of, suited
from curbwright.units.text import LONGEST, plain, quoted, refuse
from curbwright.units.unit import BASE, NOTHING, Unit

_PURE = Unit("", NOTHING, 1.0)


def factor(unit_text: str, kind: str | None = None) -> tuple[str, float, float]:
    """Return ``(SI unit, factor, offset)`` of a unit text: a value in SI is ``number * factor + offset``.

    Takes every unit that ``read`` takes and those of published cases besides (psia, cmil, bool, 1/h). Without
    a ``kind``, a pound is a mass, save in psf, plf, lb/in and lb·ft, which are loads; g is a gram, C and F
    are temperatures. With one, the unit must fit it, as in ``factor("g", "acceleration")``.
    Raises UnitProblem for an unknown unit and for one of another kind, KeyError for an unknown kind.

    >>> factor("kip*in")
    ('N*m', 112.98482902761668, 0.0)
    >>> factor("psf"), factor("psf", "areal_mass")
    (('Pa', 47.88025898033584, 0.0), ('kg/m**2', 4.882427636383051, 0.0))
    >>> factor("degF")
    ('K', 0.5555555555555556, 255.3722222222222)
    """
    text = plain(unit_text[:LONGEST])
    try:
        found = readings(text) if text else [(_PURE, "")]
    except NotAUnitError as problem:
        hint = f"Look at {quoted(problem.word)}" if problem.word else "Look at how it is put together"
        raise refuse(unit_text, "is not a unit known here", hint) from None
    if kind is not None:
        due = KINDS[kind]
        for unit, _ in found:
            if fits(unit, due) or (kind == "number" and unit.dimension == NOTHING):
                return due.unit, unit.factor, suited(unit, due).offset
        raise refuse(unit_text, f"is no unit of {due.says}", f"Units of {due.says} are {due.choices}")
    loads = [unit for unit, mark in found if mark == "load"]
    unit = (loads[1:] or [unit for unit, _ in found if kind_of(unit)] or [found[0][0]])[0]
    measured = kind_of(unit)
    return measured.unit if measured else spelled(unit), unit.factor, unit.offset


def spelled(unit: Unit) -> str:
    """Return the dimension of a unit in base units, as figures spell it.

    >>> spelled(readings("J/kg")[0][0])
    'm**2/s**2'
    """
    powers = list(zip(BASE, unit.dimension, strict=True))
    above = [name if power == 1 else f"{name}**{power}" for name, power in powers if power > 0]
    below = [f"/{name}" if power == -1 else f"/{name}**{-power}" for name, power in powers if power < 0]
    return ("*".join(above) or "1") + "".join(below)
