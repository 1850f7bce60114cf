"""Symbols of the trade, each drawn in a square from -0.5 to 0.5 and scaled to its size on paper."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, pi, sin

from curbwright.drawings.boxes import Point


@dataclass(frozen=True)
class Path:
    """Straight lines of a symbol."""

    points: tuple[Point, ...]
    closed: bool = False
    filled: bool = False


@dataclass(frozen=True)
class Ring:
    """A circle of a symbol."""

    radius: float
    filled: bool = False


Part = Path | Ring
_ACROSS = Path(((-0.5, 0.0), (0.5, 0.0)))
_UP = Path(((0.0, -0.5), (0.0, 0.5)))


def _sector(radius: float, start: float) -> Path:
    """A filled quarter of a circle, drawn as straight steps so every format shows the same."""
    rim = tuple(
        (radius * cos(start + pi / 2 * step / 8), radius * sin(start + pi / 2 * step / 8))
        for step in range(9)
    )
    return Path(((0.0, 0.0), *rim), closed=True, filled=True)


_BOW_TIE = (
    Path(((-0.5, -0.3), (-0.5, 0.3), (0.0, 0.0)), closed=True),
    Path(((0.5, -0.3), (0.5, 0.3), (0.0, 0.0)), closed=True),
)

SYMBOLS: dict[str, tuple[Part, ...]] = {
    # The quartered disc is the usual mark of a centre of gravity: common practice.
    "centre_of_gravity": (Ring(0.36), _sector(0.36, 0.0), _sector(0.36, pi), _ACROSS, _UP),
    "axle": (Ring(0.26), Ring(0.06, filled=True), _ACROSS, _UP),
    "ball": (Ring(0.36), Ring(0.16, filled=True)),
    "jack": (Path(((-0.35, -0.4), (0.35, -0.4), (0.0, 0.2)), closed=True),),
    "valve": _BOW_TIE,
    "regulator": (*_BOW_TIE, Path(((0.0, 0.0), (0.0, 0.35))), Path(((-0.2, 0.35), (0.2, 0.35)))),
    "outlet": (Ring(0.4), Path(((-0.12, -0.4), (-0.12, 0.4))), Path(((0.12, -0.4), (0.12, 0.4)))),
    "light": (Ring(0.4), Path(((-0.28, -0.28), (0.28, 0.28))), Path(((-0.28, 0.28), (0.28, -0.28)))),
    "drain": (Ring(0.4), Ring(0.2), _ACROSS, _UP),
    "fan": (Ring(0.45), _sector(0.4, pi / 4), _sector(0.4, 5 * pi / 4)),
    "point": (Ring(0.2, filled=True),),
}


def turned(part: Part, degrees: float) -> Part:
    """Return a part of a symbol turned counter-clockwise."""
    if isinstance(part, Ring) or degrees == 0:
        return part
    c, s = cos(degrees * pi / 180), sin(degrees * pi / 180)
    return Path(tuple((x * c - y * s, x * s + y * c) for x, y in part.points), part.closed, part.filled)
