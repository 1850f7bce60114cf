"""What the names in the exhaust section contradict: items and openings that there are not."""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Mapping
from typing import Any

from curbwright.build.problems import Problem
from curbwright.build.wording import short

_MOST_COMPARED, _MOST_LISTED = 80, 40

Table = Mapping[str, Any]


def exhaust_names(data: Table, items: Table) -> Iterator[Problem]:
    """Yield what is wrong with the names of the exhaust section; what is no table is left to the model."""
    exhaust = _table(data, "exhaust")
    for field in ("hood", "fan"):
        if field in exhaust:
            yield from _unknown(f"exhaust.{field}", exhaust[field], items, "item")
    named = exhaust.get("appliances")
    for n, name in enumerate(named if isinstance(named, list) else []):
        yield from _unknown(f"exhaust.appliances.{n}", name, items, "item")
    walls = _table(_table(data, "shell"), "openings")
    for key, opening in _table(exhaust, "openings").items():
        if not isinstance(opening, dict) or "opening" not in opening:
            continue
        yield from _unknown(f"exhaust.openings.{key}.opening", opening["opening"], walls, "opening")
        if "area" in opening:
            yield Problem(
                None, f"exhaust.openings.{key}.area", "stands beside opening, which has a size of its own",
                try_this="Keep one of the two",
            )  # fmt: skip
    yield from _duct(_table(exhaust, "duct"))


def _duct(duct: Table) -> Iterator[Problem]:
    if "diameter" in duct and ("width" in duct or "height" in duct):
        what = "stands beside width or height: a duct is round or rectangular"
        yield Problem(None, "exhaust.duct.diameter", what, try_this="Keep what it is")


def _unknown(path: str, name: Any, known: Table, what: str) -> Iterator[Problem]:
    if not isinstance(name, str) or name in known:
        return
    near = difflib.get_close_matches(name[:_MOST_COMPARED], list(known), n=1)
    listed = ", ".join(list(known)[:_MOST_LISTED]) or "none yet"
    hint = f'Did you mean "{near[0]}"?' if near else f"The {what}s are {listed}"
    yield Problem(None, path, f"there is no {what} {short(name)}", try_this=hint)


def _table(tables: Table, name: str) -> Table:
    found = tables.get(name)
    return found if isinstance(found, dict) else {}
