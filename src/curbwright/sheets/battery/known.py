"""The figures worked before a day on the bank: of the bank, of the circuits, of the panels."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from curbwright.errors import MissingInput
from curbwright.figures import Figure

UNKNOWN = {
    "circuits": "what draws on the battery is not known yet",
    "battery": "the bank itself is not known yet",
}


@dataclass(frozen=True)
class Known:
    """Figures by their ids; what could not be worked is a missing input."""

    figures: Mapping[str, Figure]

    def of(self, id: str) -> Figure:
        """Return a figure; raises MissingInput where it could not be worked."""
        if id not in self.figures:
            raise MissingInput("", UNKNOWN[id.partition(".")[0]])
        return self.figures[id]

    def bank(self, name: str) -> Figure:
        """Return a figure of the bank; raises MissingInput where it could not be worked."""
        return self.of(f"battery.{name}")

    def maybe(self, id: str) -> Figure | None:
        """Return a figure if there is one."""
        return self.figures.get(id)
