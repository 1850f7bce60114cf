"""Lists for a person to pick from: typical equipment."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from textwrap import wrap

from curbwright.build import catalogue, kinds
from curbwright.build.catalogue import CatalogueItem

WIDTH = 100
FEW = 40
"""So many items are named in full; of more, each has one line."""
SIDES = ("width", "depth", "height")


def catalogue_lines(words: Sequence[str]) -> Iterator[str]:
    """Yield the catalogue items that match, kind by kind, with mass and size, and how to use one."""
    lines = catalogue.search(" ".join(words)) if words else catalogue.lines()
    found = [catalogue.find(line.id) for line in lines]
    if not found:
        yield f"Nothing in the catalogue matches {' '.join(words)!r}. Try one word: griddle, sink3."
        return
    width = max(len(item.id) for item in found)
    for kind in dict.fromkeys(item.kind for item in found):
        known = kinds.all_kinds().get(kind)
        yield f"{kind}: {known.says}" if known else kind
        for item in (one for one in found if one.kind == kind):
            start = f"  {item.id:<{width}} {item.mass_empty.text:>8}  {_size(item):<21} "
            name = wrap(item.name, WIDTH - len(start))
            if len(found) > FEW and len(name) > 1:
                name = [f"{item.name[: WIDTH - len(start) - 1]}…"]
            yield start + name[0]
            yield from (" " * len(start) + more for more in name[1:])
    yield ""
    yield "Sizes are width along the wall x depth into the room x height."
    yield 'Use one with  like = "ID"  in an item. Typical figures, mostly recalled: the nameplate wins.'


def _size(item: CatalogueItem) -> str:
    """Width, depth and height; the unit once where all three are in one."""
    texts = [item.size[side].text for side in SIDES if side in item.size]
    units = {text.rpartition(" ")[2] for text in texts}
    if len(units) != 1:
        return " x ".join(texts)
    unit = units.pop()
    return f"{' x '.join(text.removesuffix(unit).strip() for text in texts)} {unit}"
