"""The evaluator: every requirement against every figure it names."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from curbwright import units
from curbwright.figures import Figure, Gap, Tabled
from curbwright.requirements.finding import Finding
from curbwright.requirements.requirement import Requirement, requirements
from curbwright.sheets import Worksheets

CLOSE = 1e-9
"""Equality passes: two numbers this close, in relation to the limit, count as equal."""


def judge(sheets: Worksheets, rows: Iterable[Requirement] | None = None) -> list[Finding]:
    """Hold every requirement against the sheets; failures first, then cannot tell, then the tightest passes.

    ``rows`` are the requirements; without them, those that every cart is held to.
    """
    asked = requirements() if rows is None else rows
    found = [finding for row in asked for finding in _held(row, sheets.figures, sheets.gaps)]
    return sorted(found, key=lambda finding: finding.rank)


def _held(row: Requirement, figures: dict[str, Figure], gaps: list[Gap]) -> Iterator[Finding]:
    matches = _matching(row.quantity, figures)
    limit = _limit(row, figures)
    unfinished = _unfinished(row, matches, gaps)
    if not matches and not unfinished:
        yield from _untold(row, row.quantity, None, limit, gaps)
    for starred, needed in unfinished.items():
        missing = tuple(dict.fromkeys(gap.path for gap in needed if gap.path))
        yield Finding(f"{row.id}.{starred}", row, "cannot tell", None, limit, None, missing, needed[0].says)
    for starred, provided in matches.items():
        id = f"{row.id}.{starred}" if starred else row.id
        own = _limit(row, figures, starred)
        if own is None:
            yield from _untold(row, row.limit.replace("*", starred), provided, None, gaps, id)
        else:
            yield _compared(row, id, provided, own)


def _matching(pattern: str, figures: dict[str, Figure]) -> dict[str, Figure]:
    """Figures that a quantity names, by what its star stands for."""
    if "*" not in pattern:
        return {"": figures[pattern]} if pattern in figures else {}
    before, _, after = pattern.partition("*")
    shape = re.compile(re.escape(before) + r"([^.]+)" + re.escape(after))
    return {match[1]: figure for id, figure in figures.items() if (match := shape.fullmatch(id))}


def _unfinished(row: Requirement, matches: dict[str, Figure], gaps: list[Gap]) -> dict[str, list[Gap]]:
    """The things under a star whose figure is missing because an input is, with why.

    A star right below a sheet ranges over unlike sections, so a gap in one says nothing of this figure,
    unless the row says that they are things of one sort.
    """
    before, star, after = row.quantity.partition("*")
    if not star or (before.count(".") < 2 and not row.each):
        return {}
    found: dict[str, list[Gap]] = {}
    for gap in gaps:
        one = gap.section.removeprefix(before).partition(".")[0]
        if gap.section.startswith(before) and one not in matches:
            found.setdefault(one, []).append(gap)
    return {one: _nearest(f"{before}{one}{after}", needed) for one, needed in found.items()}


def _nearest(wanted: str, gaps: list[Gap]) -> list[Gap]:
    """Of the gaps of one thing, those of the section its figure belongs to; else those above; else all."""
    section = wanted.rpartition(".")[0]
    own = [gap for gap in gaps if gap.section == section]
    return own or [gap for gap in gaps if section.startswith(f"{gap.section}.")] or gaps


def _limit(row: Requirement, figures: dict[str, Figure], starred: str = "*") -> Figure | None:
    """The figure that is the limit; a star in it stands for the same thing as the quantity's."""
    if row.limit:
        return figures.get(row.limit.replace("*", starred))
    value = units.read(row.limit_value, row.limit_kind)
    unit = units.KINDS[row.limit_kind].unit
    return Figure(
        float(value), id=f"limit.{row.id}", name=row.says, unit=unit, origin=Tabled(row.source, row.clause)
    )


def _untold(
    row: Requirement,
    wanted: str,
    provided: Figure | None,
    limit: Figure | None,
    gaps: list[Gap],
    id: str = "",
) -> Iterator[Finding]:
    """Cannot tell where an input is missing; not applicable where the cart has nothing of the kind."""
    needed = [gap for gap in gaps if _concerns(gap, wanted)]
    missing = tuple(dict.fromkeys(gap.path for gap in needed if gap.path))
    if not needed and "." in wanted and provided is not None:
        missing = (wanted,)
    if not needed and not missing:
        yield Finding(row.id, row, "not applicable", provided, limit, None)
        return
    reason = needed[0].says if needed else f"{wanted} is not given"
    yield Finding(id or row.id, row, "cannot tell", provided, limit, None, missing, reason)


def _concerns(gap: Gap, wanted: str) -> bool:
    """Whether a gap can be why a figure is missing: its field, or its section, leads to the figure."""
    if gap.path == wanted:
        return True
    section = wanted.partition("*")[0].rstrip(".") if "*" in wanted else wanted.rpartition(".")[0]
    if not section:
        return False
    return (
        section == gap.section
        or section.startswith(f"{gap.section}.")
        or gap.section.startswith(f"{section}.")
    )


def _compared(row: Requirement, id: str, provided: Figure, limit: Figure) -> Finding:
    room = float(provided) - float(limit) if row.comparator == ">=" else float(limit) - float(provided)
    if row.comparator == "==":
        room = -abs(room)
    scale = abs(float(limit)) or 1.0
    holds = room >= -CLOSE * scale
    return Finding(id, row, "pass" if holds else "fail", provided, limit, room / scale)
