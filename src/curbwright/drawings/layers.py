"""Layers: what each kind of line is called, how thick its pen is, how it is dashed, whether it prints."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from curbwright.drawings.tables import rows
from curbwright.errors import UnknownName


@dataclass(frozen=True)
class Layer:
    """One row of ``data/drawing_layers.csv``.

    ``pen`` and ``dash`` (on, off, on, off...) are in millimetres on paper; ``ink`` is a web colour and
    ``colour`` the DXF colour number; ``order`` counts from the layer drawn first.
    """

    name: str
    pen: float
    dash: tuple[float, ...]
    ink: str
    colour: int
    plot: bool
    in_key: bool
    meaning: str
    order: int


@cache
def layers() -> dict[str, Layer]:
    """Return every layer by name, in drawing order."""
    return {
        row["layer"]: Layer(
            name=row["layer"],
            pen=float(row["pen_mm"]),
            dash=tuple(float(length) for length in row["dash_mm"].split()),
            ink=row["ink"],
            colour=int(row["colour"]),
            plot=row["plot"] == "yes",
            in_key=row["key"] == "yes",
            meaning=row["meaning"],
            order=order,
        )
        for order, row in enumerate(rows("drawing_layers"))
    }


def layer(name: str) -> Layer:
    """Return the layer of that name.

    >>> layer("OUTLINE").pen
    0.5
    """
    try:
        return layers()[name]
    except KeyError:
        raise UnknownName(f"{name!r} is not a layer; the layers are {', '.join(layers())}") from None
