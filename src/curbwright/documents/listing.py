"""Lists for a person to pick from: typical equipment."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from curbwright.build import catalogue


def catalogue_lines(words: Sequence[str]) -> Iterator[str]:
    """Yield one line for each catalogue item that matches, with its size and mass, and how to use one."""
    lines = catalogue.search(" ".join(words)) if words else catalogue.lines()
    found = [catalogue.find(line.id) for line in lines]
    if not found:
        yield f"Nothing in the catalogue matches {' '.join(words)!r}. Try one word: griddle, sink3."
        return
    width = max(len(item.id) for item in found)
    for item in found:
        size = " x ".join(item.size[side].text for side in ("width", "depth", "height") if side in item.size)
        yield f"{item.id:<{width}}  {item.kind:<18} {item.mass_empty.text:>8}  {size:<26} {item.name}"
    yield ""
    yield 'Use one with  like = "ID"  in an item. Typical figures only, mostly recalled: the nameplate wins.'
