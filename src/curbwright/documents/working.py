"""The working of one figure, and finding it by a name that may be a little off."""

from __future__ import annotations

import difflib
from collections.abc import Iterator

from curbwright.errors import UnknownName
from curbwright.figures import Figure, roots, walk
from curbwright.figures.printing import line
from curbwright.sheets import Worksheets


def find(sheets: Worksheets, id: str) -> Figure:
    """Return a figure by id; raises UnknownName with the nearest ids, or the field that is missing."""
    if id in sheets.figures:
        return sheets.figures[id]
    for gap in sheets.gaps:
        if id.startswith(gap.section) or id == gap.path:
            raise UnknownName(f"{id} cannot be told: {gap.says}.")
    near = (
        difflib.get_close_matches(id, sheets.figures, n=3, cutoff=0.5)
        or [one for one in sheets.figures if id in one][:3]
    )
    hint = (
        f" Did you mean {' or '.join(near)}?"
        if near
        else " The ids are printed by: curbwright check FILE --json"
    )
    raise UnknownName(f"There is no figure {id!r}.{hint}")


def working_lines(figure: Figure, system: str) -> Iterator[str]:
    """Yield the working of a figure: the result first, then every step from the build file down to it."""
    yield from line(figure, system)
    yield ""
    steps = [one for one in walk(figure) if one is not figure]
    if steps:
        yield "Worked from:"
    for one in steps:
        first, *rest = line(one, system)
        yield f"  {one.id}"
        yield f"    {first}"
        yield from (f"    {text}" for text in rest)
    fields = sorted(roots(figure))
    if fields:
        yield ""
        yield f"Depends on these fields of the build file: {', '.join(fields)}"
