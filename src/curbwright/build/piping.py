"""What the names in the gas section contradict: bottles, sections and items that there are not."""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Mapping
from typing import Any

from curbwright.build import catalogue
from curbwright.build.problems import Problem
from curbwright.build.wording import short
from curbwright.errors import UnknownName

_MOST_COMPARED, _MOST_LISTED = 80, 40

Table = Mapping[str, Any]


def gas_names(data: Table, items: Table) -> Iterator[Problem]:
    """Yield what is wrong with the names of the gas section; what is no table is left to the model."""
    gas = _table(data, "gas")
    for n, name in enumerate(_list(gas, "bottles")):
        yield from _unknown(f"gas.bottles.{n}", name, items, "item")
    if "alarm" in gas:
        yield from _unknown("gas.alarm", gas["alarm"], items, "item")
    yield from _like(_table(gas, "regulator").get("like"))
    sections = {key: one for key, one in _table(gas, "sections").items() if isinstance(one, dict)}
    served: dict[str, str] = {}
    for key, section in sections.items():
        path = f"gas.sections.{key}"
        if "after" in section:
            yield from _unknown(f"{path}.after", section["after"], sections, "gas section")
        for n, name in enumerate(_list(section, "serves")):
            yield from _unknown(f"{path}.serves.{n}", name, items, "item")
            if isinstance(name, str) and served.setdefault(name, key) != key:
                what = f"{short(name)} hangs on section {served[name]} already"
                yield Problem(None, f"{path}.serves.{n}", what, try_this="Leave it at the end of one section")
    yield from _rings(sections)


def _rings(sections: Table) -> Iterator[Problem]:
    """Sections that go on from one another in a ring, and so never reach the regulator; each ring once."""
    told: set[str] = set()
    for key in sections:
        way: list[str] = []
        at: Any = key
        while isinstance(at, str) and at in sections and at not in way and at not in told:
            way.append(at)
            at = sections[at].get("after")
        if isinstance(at, str) and at in way:
            ring = way[way.index(at) :]
            yield Problem(
                None, f"gas.sections.{at}.after", f"goes round in a ring: {', '.join(ring)}",
                try_this="Leave out after in the section that starts at the regulator",
            )  # fmt: skip
        told.update(way)


def _unknown(path: str, name: Any, known: Table, what: str) -> Iterator[Problem]:
    if not isinstance(name, str) or name in known:
        return
    near = difflib.get_close_matches(name[:_MOST_COMPARED], list(known), n=1)
    listed = ", ".join(list(known)[:_MOST_LISTED]) or "none yet"
    hint = f'Did you mean "{near[0]}"?' if near else f"The {what}s are {listed}"
    yield Problem(None, path, f"there is no {what} {short(name)}", try_this=hint)


def _like(name: Any) -> Iterator[Problem]:
    if not isinstance(name, str):
        return
    try:
        catalogue.find(name)
    except UnknownName as unknown:
        path, hint = "gas.regulator.like", "See: curbwright catalogue regulator"
        yield Problem(None, path, str(unknown), try_this=hint)


def _table(tables: Table, name: str) -> Table:
    found = tables.get(name)
    return found if isinstance(found, dict) else {}


def _list(table: Table, name: str) -> list[Any]:
    found = table.get(name)
    return found if isinstance(found, list) else []
