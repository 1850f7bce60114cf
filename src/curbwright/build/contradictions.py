"""What cannot be meant: names that cannot be used, things that do not exist, fields that exclude each other.

A cart that is merely bad is a finding, not a problem. All but the numbers is checked on the tables as
written, so that it is told together with what else is wrong.
"""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterator, Mapping
from typing import Any

from curbwright.build import kinds
from curbwright.build.cart import Build
from curbwright.build.circuits import PLACES
from curbwright.build.exhaust_names import exhaust_names
from curbwright.build.piping import gas_names
from curbwright.build.power_names import power_names
from curbwright.build.problems import Problem, did_you_mean
from curbwright.build.water_names import water_names
from curbwright.build.wording import LONGEST_NAME, fits, short

_MOST = {
    "items": 300,
    "people": 20,
    "menu": 100,
    "shell.openings": 40,
    "circuits": 100,
    "gas.sections": 60,
    "exhaust.openings": 20,
    "water.taps": 20,
    "water.pipes": 40,
}
"""The tables of named things, and how many of each a cart may have: a cart, not a warehouse."""
_FREE_TEXT = ("notes",)
_MOST_COMPARED = 80

Table = Mapping[str, Any]


def in_writing(data: Table) -> Iterator[Problem]:
    """Yield what the tables of a build file contradict, whatever else they hold."""
    yield from _names(data)
    yield from _marks(data)
    items, trailer = _table(data, "items"), _table(data, "trailer")
    if "bare_tongue" in trailer and "bare_centre_back" in trailer:
        yield Problem(
            None, "trailer.bare_centre_back", "stands beside bare_tongue: both say where it balances",
            try_this="Keep bare_tongue, which is measured, and delete bare_centre_back",
        )  # fmt: skip
    yield from _state(_table(data, "place").get("state"))
    for key, item in items.items():
        if isinstance(item, dict):
            yield from _item(f"items.{key}", item)
    yield from _wiring(data, items)
    yield from power_names(data, items)
    yield from gas_names(data, items)
    yield from exhaust_names(data, items)
    yield from water_names(data, items)
    for key, sold in _table(data, "menu").items():
        used = sold.get("cooked_on") if isinstance(sold, dict) else None
        if isinstance(used, str) and used.removeprefix("items.") not in items:
            yield _no_item(f"menu.{key}.cooked_on", used, list(items))


def _state(state: Any) -> Iterator[Problem]:
    if not isinstance(state, str) or re.fullmatch("[A-Z]{2}", state):
        return
    advice = f'"{state.upper()}"' if re.fullmatch("[A-Za-z]{2}", state) else 'Write it like "VA"'
    yield Problem(None, "place.state", f"{short(state)} is not the two letters of a state", try_this=advice)


def in_numbers(build: Build) -> Iterator[Problem]:
    """Yield what the numbers of a checked build contradict."""
    trailer = build.trailer
    for field in ("deck_length", "deck_width"):
        if getattr(trailer, field) <= 0:
            yield Problem(None, f"trailer.{field}", "is nothing, and a deck needs a length and a width")
    if trailer.axle.back is not None and trailer.axle.back + trailer.ball_to_deck <= 0:
        yield Problem(None, "trailer.axle.back", "puts the axle at or ahead of the ball")


def _table(data: Table, *path: str) -> Table:
    """The table at a path; an empty one where something else stands there."""
    found: Any = data
    for step in path:
        found = found.get(step) if isinstance(found, dict) else None
    return found if isinstance(found, dict) else {}


def _names(data: Table) -> Iterator[Problem]:
    """Check the names the builder chose, and how many there are."""
    for name, most in _MOST.items():
        table = _table(data, *name.split("."))
        if len(table) > most:
            yield Problem(None, name, f"has {len(table)} entries", f"at most {most}")
        for key in table:
            if not fits(key):
                yield Problem(
                    None, name, f"the name {short(key)} cannot be used",
                    f"letters, digits, _ and -, up to {LONGEST_NAME}",
                    "Write a short name here and the full one as its label",
                )  # fmt: skip


def _marks(data: Table) -> Iterator[Problem]:
    """Words that would upset a terminal or a drawing: line breaks and marks that do not print."""
    waiting: list[tuple[str, Any]] = [(str(key), value) for key, value in data.items()]
    while waiting:
        path, value = waiting.pop()
        if isinstance(value, dict):
            waiting += [(f"{path}.{key}", inner) for key, inner in value.items()]
        elif isinstance(value, str) and not value.isprintable() and path.rpartition(".")[2] not in _FREE_TEXT:
            mark = next(each for each in value if not each.isprintable())
            said = "a line break" if mark in "\r\n" else f"a mark that does not print (U+{ord(mark):04X})"
            yield Problem(None, path, f"has {said} in it", try_this="Write it on one line, in plain letters")


def _item(path: str, item: Table) -> Iterator[Problem]:
    side = item.get("side", "centre")
    if side in ("curb", "street") and "off_centre" in item:
        yield Problem(
            None, f"{path}.off_centre", f'does not go with side = "{side}", which says where it stands',
            try_this='Use off_wall for a gap behind it, or side = "centre"',
        )  # fmt: skip
    if side == "centre" and "off_wall" in item:
        yield Problem(None, f"{path}.off_wall", 'does not go with side = "centre"', try_this="Use off_centre")
    kind = item.get("kind")
    if isinstance(kind, str) and kind not in kinds.names():
        hint = did_you_mean(kind, kinds.names()) or f"The kinds are {', '.join(kinds.names())}"
        yield Problem(None, f"{path}.kind", f"{short(kind)} is not a kind of thing known here", try_this=hint)


def _wiring(data: Table, items: Table) -> Iterator[Problem]:
    """Check what the circuits and the supplies name."""
    places = (*PLACES, *items)
    for key, circuit in _table(data, "circuits").items():
        ends = circuit if isinstance(circuit, dict) else {}
        feeds = ends.get("feeds")
        named = [("supply", ends.get("supply"))]
        named += [(f"feeds.{n}", one) for n, one in enumerate(feeds)] if isinstance(feeds, list) else []
        for field, used in named:
            if isinstance(used, str) and used.removeprefix("items.") not in places:
                yield _no_item(f"circuits.{key}.{field}", used, list(places))
        if feeds == []:
            yield Problem(None, f"circuits.{key}.feeds", "is empty", try_this="Name what the circuit ends at")
        switch = ends.get("switch")
        if isinstance(switch, str) and switch.removeprefix("items.") not in items:
            yield _no_item(f"circuits.{key}.switch", switch, list(items))
    for supply in ("inverter", "generator"):
        used = _table(data, "electrical", supply).get("item")
        if isinstance(used, str) and used.removeprefix("items.") not in items:
            yield _no_item(f"electrical.{supply}.item", used, list(items))


def _no_item(path: str, used: str, items: list[str]) -> Problem:
    near = difflib.get_close_matches(used[:_MOST_COMPARED].removeprefix("items."), items, n=1)
    hint = f'Did you mean "{near[0]}"?' if near else f"The items are {', '.join(items[:40]) or 'none yet'}"
    return Problem(None, path, f"there is no item {short(used)}", try_this=hint)
