"""What the bank and the panels name: items that are there, and batteries that make whole strings."""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Mapping
from typing import Any

from curbwright.build.problems import Problem
from curbwright.build.wording import NO_ITEM, short

Table = Mapping[str, Any]
_MOST_COMPARED = 80
_MOST_LISTED = 40


def power_names(data: Table, items: Table) -> Iterator[Problem]:
    """Yield what `[battery]` and `[solar]` name that cannot be."""
    bank, solar = _table(data, "battery"), _table(data, "solar")
    for field in ("pieces", "beside"):
        yield from _listed(f"battery.{field}", bank.get(field), items)
    for name, charger in _table(bank, "chargers").items():
        if isinstance(charger, dict):
            yield from _named(f"battery.chargers.{name}.item", charger.get("item"), items)
    yield from _listed("solar.panels", solar.get("panels"), items)
    yield from _named("solar.controller.item", _table(solar, "controller").get("item"), items)
    yield from _strings(bank)
    count, panels = solar.get("count"), solar.get("panels")
    if isinstance(panels, list) and panels and isinstance(count, int) and count != len(panels):
        yield Problem(None, "solar.count", f"is {count}, and {len(panels)} panels are named",
                      try_this="Leave count out, or name them all")  # fmt: skip


def _strings(bank: Table) -> Iterator[Problem]:
    """Batteries that are named must make whole strings, as many as are said to stand side by side."""
    pieces, series, strings = bank.get("pieces"), bank.get("in_series", 1), bank.get("in_parallel")
    if not isinstance(pieces, list) or not pieces or not isinstance(series, int) or series < 1:
        return
    said = strings if isinstance(strings, int) and not isinstance(strings, bool) else None
    if len(pieces) % series or (said is not None and said * series != len(pieces)):
        many = f"{len(pieces)} batter{'y' if len(pieces) == 1 else 'ies'}"
        what = f"names {many}, which make no whole strings of {series}"
        if said is not None:
            what = f"names {many}, and {said} strings of {series} are {said * series}"
        yield Problem(
            None, "battery.pieces", what, try_this="Name every battery, and check in_series and in_parallel"
        )


def _listed(path: str, names: Any, items: Table) -> Iterator[Problem]:
    if not isinstance(names, list):
        return
    seen: set[str] = set()
    for n, name in enumerate(names):
        yield from _named(f"{path}.{n}", name, items)
        if isinstance(name, str) and name.removeprefix("items.") in seen:
            yield Problem(None, f"{path}.{n}", f"{short(name)} is named twice", try_this="Name it once")
        if isinstance(name, str):
            seen.add(name.removeprefix("items."))


def _named(path: str, name: Any, items: Table) -> Iterator[Problem]:
    if not isinstance(name, str) or name.removeprefix("items.") in items:
        return
    near = difflib.get_close_matches(name[:_MOST_COMPARED].removeprefix("items."), list(items), n=1)
    listed = ", ".join(list(items)[:_MOST_LISTED]) or "none yet"
    hint = f'Did you mean "{near[0]}"?' if near else f"The items are {listed}"
    yield Problem(None, path, f"{NO_ITEM} {short(name)}", try_this=hint)


def _table(tables: Table, name: str) -> Table:
    found = tables.get(name)
    return found if isinstance(found, dict) else {}
