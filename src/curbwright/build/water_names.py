"""What the water section contradicts: items, sinks and taps that there are not, two pipes for one run."""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Mapping
from typing import Any

from curbwright.build.problems import Problem
from curbwright.build.water import ENDS
from curbwright.build.wording import short

_MOST_COMPARED, _MOST_LISTED = 80, 40

Table = Mapping[str, Any]


def water_names(data: Table, items: Table) -> Iterator[Problem]:
    """Yield what is wrong with the names of the water section; what is no table is left to the model."""
    water = _table(data, "water")
    for part in ("pump", "accumulator"):
        yield from _unknown(f"water.{part}.item", _table(water, part).get("item"), list(items), "item")
    taps = {key: one for key, one in _table(water, "taps").items() if isinstance(one, dict)}
    for key, tap in taps.items():
        yield from _unknown(f"water.taps.{key}.sink", tap.get("sink"), list(items), "item")
        if key in ENDS:
            hint = "Call it after its sink, such as hands or ware"
            yield Problem(None, f"water.taps.{key}", f"a tap cannot be called {key}", try_this=hint)
    yield from _pipes(_table(water, "pipes"), list(taps))


def _pipes(pipes: Table, taps: list[str]) -> Iterator[Problem]:
    seen: dict[tuple[str, str], str] = {}
    for key, pipe in pipes.items():
        to = pipe.get("to") if isinstance(pipe, dict) else None
        if not isinstance(to, str):
            continue
        path = f"water.pipes.{key}.to"
        yield from _unknown(path, to, [*ENDS, *taps], "tap or end of a pipe")
        carries = pipe.get("carries", "cold")
        run = (to, carries if isinstance(carries, str) else "cold")
        if carries == "hot" and to in ENDS:
            yield Problem(
                None, path, f"hot water does not run to the {to}", try_this="Name the tap it leads to"
            )
        elif seen.setdefault(run, key) != key:
            yield Problem(
                None, path, f"the run to {short(to)} is told by {short(seen[run])} already",
                try_this="Add their lengths and fittings up in one",
            )  # fmt: skip


def _unknown(path: str, name: Any, known: list[str], what: str) -> Iterator[Problem]:
    if not isinstance(name, str) or name.removeprefix("items.") in known:
        return
    near = difflib.get_close_matches(name[:_MOST_COMPARED], known, n=1)
    listed = ", ".join(known[:_MOST_LISTED]) or "none yet"
    hint = f'Did you mean "{near[0]}"?' if near else f"There are: {listed}"
    yield Problem(None, path, f"there is no {what} {short(name)}", try_this=hint)


def _table(tables: Table, name: str) -> Table:
    found = tables.get(name)
    return found if isinstance(found, dict) else {}
