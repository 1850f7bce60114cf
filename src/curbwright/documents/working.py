"""The working of one figure, and finding it by a name that may be a little off."""

from __future__ import annotations

import difflib
from collections.abc import Iterator
from textwrap import wrap

from curbwright.errors import UnknownName
from curbwright.figures import Figure, Given, Tabled, inputs_of, roots
from curbwright.figures.printing import line, shown
from curbwright.sheets import Worksheets

WIDTH = 100
STEPS = "Worked from, the nearest first:"


def find(sheets: Worksheets, id: str) -> Figure:
    """Return a figure by id; raises UnknownName with the nearest ids, or the field that is missing."""
    if id in sheets.figures:
        return sheets.figures[id]
    for gap in sheets.gaps:
        if id.startswith(gap.section) or id == gap.path:
            raise UnknownName(f"{id} cannot be told: {gap.says}.")
    near = difflib.get_close_matches(id, sheets.figures, n=3, cutoff=0.5)
    near = near or [one for one in sheets.figures if id in one][:3]
    hint = (
        f" Did you mean {' or '.join(near)}?"
        if near
        else " The ids are printed by: curbwright check FILE --json"
    )
    raise UnknownName(f'There is no figure "{id}".{hint}')


def working_lines(figure: Figure, system: str, steps: int | None = None) -> Iterator[str]:
    """Yield the working of a figure: the result, then every step down to what it all rests on.

    ``steps`` is how many steps down to go; without it, all of them. What the build file says, what is
    assumed and what comes from tables is listed once, at the end.
    """
    yield from _wrapped(line(figure, system), "")
    below, deeper = _steps(figure, steps)
    if below:
        yield from ("", STEPS)
    for one in below:
        yield f"  {one.id}"
        yield from _wrapped(line(one, system), "    ")
    if deeper:
        yield from ("", f"{deeper} more steps below these; leave out --steps to see them.")
    used = _leaves([figure, *below])
    for title, leaves in used.items():
        if leaves:
            yield from ("", title)
        for one in leaves:
            yield from _leaf(one, system)
    fields = sorted(roots(figure))
    if fields and deeper:
        yield ""
        yield from wrap(f"Depends on these fields of the build file: {', '.join(fields)}", WIDTH)


def _steps(figure: Figure, most: int | None) -> tuple[list[Figure], int]:
    """The worked figures below one, level by level, and how many lie deeper than ``most`` levels."""
    found: list[Figure] = []
    deeper, seen, level, depth = 0, {figure.id}, [figure], 0
    while level:
        depth += 1
        below: list[Figure] = []
        for one in (each for upper in level for each in inputs_of(upper)):
            if one.id not in seen and not isinstance(one.origin, Given | Tabled):
                seen.add(one.id)
                below.append(one)
        if most is None or depth <= most:
            found += below
        else:
            deeper += len(below)
        level = below
    return found, deeper


def _leaves(steps: list[Figure]) -> dict[str, list[Figure]]:
    """What steps take from the build file, what is assumed, what is tabled: each once, in the order met."""
    leaves = {
        one.id: one for step in steps for one in inputs_of(step) if isinstance(one.origin, Given | Tabled)
    }
    given = [one for one in leaves.values() if isinstance(one.origin, Given)]
    return {
        "From the build file:": [one for one in given if not _assumed(one)],
        "Assumed, as the build file does not say:": [one for one in given if _assumed(one)],
        "From tables:": [one for one in leaves.values() if isinstance(one.origin, Tabled)],
    }


def _assumed(figure: Figure) -> bool:
    return isinstance(figure.origin, Given) and figure.origin.assumed


def _leaf(figure: Figure, system: str) -> Iterator[str]:
    """One line for something that is not worked: what it is, its value, where it comes from."""
    yield from _wrapped([f"{figure.name} = {shown(figure, system)}   [{_whence(figure)}]"], "  ")


def _whence(figure: Figure) -> str:
    match figure.origin:
        case Given(path, _, how, True, source):
            return f"{source or 'typical'}{', ' + how if how else ''}; set {path}"
        case Given(path, _, how):
            return f"{path}{', ' + how if how else ''}"
        case Tabled(source, row):
            return f"{source}{', ' + row if row else ''}"
    return ""


def _wrapped(lines: list[str], indent: str) -> Iterator[str]:
    """Lines within the width; what goes on is set in further, and a long label of a table is cut."""
    for text in lines:
        start = indent + text[: len(text) - len(text.lstrip())]
        yield from wrap(text.strip(), WIDTH, initial_indent=start, subsequent_indent=f"{start}    ") or [""]
