"""Paper sizes and standard scales, and the largest scale at which a drawing fits."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from curbwright.drawings.boxes import Box
from curbwright.drawings.tables import rows
from curbwright.errors import UnknownName


@dataclass(frozen=True)
class Paper:
    """A sheet of paper as it lies; width, height and margin in millimetres."""

    name: str
    width: float
    height: float
    margin: float

    @property
    def frame(self) -> Box:
        """The border line."""
        m = self.margin
        return Box(m, m, self.width - m, self.height - m)


@dataclass(frozen=True)
class Scale:
    """A standard drawing scale: one on paper stands for ``ratio`` in the world."""

    name: str
    ratio: float

    @property
    def per_metre(self) -> float:
        """Millimetres of paper to a metre."""
        return 1000 / self.ratio


def paper(name: str, *, portrait: bool = False) -> Paper:
    """Return a paper size by name: letter, tabloid, a4, a3; landscape unless asked otherwise.

    >>> paper("letter").width
    279.4
    """
    for row in rows("paper_sizes"):
        if row["paper"] == name.lower():
            short, long = float(row["width_mm"]), float(row["height_mm"])
            across, up = (short, long) if portrait else (long, short)
            way = "portrait" if portrait else "landscape"
            return Paper(f"{row['name']} {way}", across, up, float(row["margin_mm"]))
    names = ", ".join(row["paper"] for row in rows("paper_sizes"))
    raise UnknownName(f"{name!r} is not a paper size; the sizes are {names}")


@cache
def scales(system: str = "us") -> tuple[Scale, ...]:
    """Return the standard scales of a unit system (us, si), the largest drawing first.

    >>> [scale.name for scale in scales("si")][:3]
    ['1:10', '1:20', '1:25']
    """
    found = [
        Scale(row["scale"], float(row["ratio"])) for row in rows("drawing_scales") if row["system"] == system
    ]
    return tuple(sorted(found, key=lambda scale: scale.ratio))


def fit(extents: Box, room: tuple[float, float], *, system: str = "us") -> Scale | None:
    """Return the largest standard scale at which extents (m) fit the room (mm across, mm up), or None.

    >>> fit(Box(0, 0, 3.6, 2.0), (239, 160)).name
    '3/4 in = 1 ft'
    """
    for scale in scales(system):
        if extents.width * scale.per_metre <= room[0] and extents.height * scale.per_metre <= room[1]:
            return scale
    return None
