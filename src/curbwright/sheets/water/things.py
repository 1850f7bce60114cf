"""What holds, gives, takes or heats water aboard, found once for the three trades of water."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright.build import kinds
from curbwright.build.cart import Build
from curbwright.build.fit import Item
from curbwright.build.water import Tap, WaterPipe, WetThing
from curbwright.errors import MissingInput

BOWLS = {"sink3": 3, "sink2": 2, "hand_sink": 1, "prep_sink": 1}
"""Bowls of a sink by its kind, where the build file does not say."""


NOTHING = WetThing()
"""What stands in for an item whose water the file says nothing of."""


@dataclass(frozen=True)
class Wet:
    """One item with what the file says of its water."""

    key: str
    item: Item
    water: WetThing

    @property
    def name(self) -> str:
        """What to call it."""
        return self.item.name

    @property
    def kind(self) -> str:
        """Its kind."""
        return self.item.kind or ""

    @property
    def bowls(self) -> int:
        """How many bowls it has."""
        return self.water.bowls or BOWLS.get(self.kind, 1)


@dataclass(frozen=True)
class WaterThings:
    """Everything with water in it, in the order of the build file."""

    every: dict[str, Wet]
    sinks: dict[str, Wet]
    fresh: dict[str, Wet]
    waste: dict[str, Wet]
    steam: dict[str, Wet]
    taps: dict[str, Tap]
    pipes: dict[tuple[str, str], WaterPipe]
    """Pipes by what they lead to and what they carry."""

    @property
    def any(self) -> bool:
        """Whether there is anything to work out."""
        return bool(self.sinks or self.fresh or self.waste or self.taps)

    def flagged(self, flag: str) -> dict[str, Wet]:
        """The sinks that carry a flag."""
        return {key: one for key, one in self.sinks.items() if kinds.find(one.item.kind).is_(flag)}

    def the(self, kind: str, named: str | None, path: str) -> Wet:
        """The item of a part: the one named, or the only one of its kind aboard; raises MissingInput."""
        if named is not None:
            return self.every[named.removeprefix("items.")]
        found = [one for one in self.every.values() if one.kind == kind]
        if len(found) != 1:
            says = f"there is no {kind}" if not found else f"there are {len(found)} of the kind {kind}"
            raise MissingInput(path, f"{says} aboard: name the item")
        return found[0]


def water_things(build: Build) -> WaterThings:
    """Find everything with water in it."""
    every = {key: Wet(key, item, _water(key, item)) for key, item in build.items.items()}

    def flagged(flag: str) -> dict[str, Wet]:
        return {key: one for key, one in every.items() if kinds.find(one.item.kind).is_(flag)}

    return WaterThings(
        every=every,
        sinks=flagged("sink"),
        fresh=flagged("tank_fresh"),
        waste=flagged("tank_waste"),
        steam={key: one for key, one in every.items() if one.kind == "steam_table"},
        taps=build.water.taps,
        pipes={(pipe.to, pipe.carries): pipe for pipe in build.water.pipes.values()},
    )


def _water(key: str, item: Item) -> WetThing:
    """What the file says of an item's water; else fields left out of the place they belong in."""
    if item.water is not None:
        return item.water
    nothing = NOTHING.model_copy()
    nothing._path = f"items.{key}.water"
    return nothing
