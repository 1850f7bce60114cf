"""A sheet as SVG: millimetres, grouped by view and layer, no script, nothing fetched from elsewhere."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path
from xml.sax.saxutils import escape, quoteattr

from curbwright.drawings.boxes import Point
from curbwright.drawings.ink import Bow, Ink, Stroke, Word
from curbwright.drawings.inking import inked
from curbwright.drawings.layers import Layer, layers
from curbwright.drawings.lettering import FONT_STACK, clean, type_size, width
from curbwright.drawings.sheet import FULL_SIZE, Placed, Sheet

HALO = 0.6  # mm of white around lettering, so that a line passing under it is broken


def write(sheet: Sheet) -> str:
    """Return the sheet as the text of an SVG file, the same bytes for the same sheet."""
    paper, block = sheet.paper, sheet.block
    name = f"sheet-{block.number}"
    size = f'width="{_n(paper.width)}mm" height="{_n(paper.height)}mm"'
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" {size} viewBox="0 0 {_n(paper.width)} {_n(paper.height)}"'
        f' role="img" aria-labelledby="{name}-title {name}-desc" font-family={quoteattr(FONT_STACK)}'
        f' stroke-linecap="round" stroke-linejoin="round" fill="none">',
        f'<title id="{name}-title">{escape(clean(f"{block.cart}: {block.title}"))}</title>',
        f'<desc id="{name}-desc">{escape(clean(_described(sheet)))}</desc>',
        f'<rect class="paper" width="{_n(paper.width)}" height="{_n(paper.height)}" fill="#ffffff"/>',
    ]
    for number, placed in enumerate(sheet.placed, 1):
        lines.extend(_view(placed, f"{name}-view-{number}", "view", paper.height))
    furniture = Placed(sheet.furniture, FULL_SIZE, sheet.placed[0].scale) if sheet.placed else None
    if furniture is not None:
        lines.extend(_view(furniture, f"{name}-border", "border", paper.height))
    lines.append("</svg>")
    return "\n".join(lines) + "\n"


def save(sheet: Sheet, path: Path) -> None:
    """Write the sheet as an SVG file."""
    path.write_text(write(sheet), encoding="utf-8", newline="\n")


def _described(sheet: Sheet) -> str:
    views = "; ".join(f"{placed.view.title}, {placed.scale.name}" for placed in sheet.placed)
    return f"Sheet {sheet.block.number} of {sheet.block.count}, {sheet.paper.name}. {views}."


def _view(placed: Placed, name: str, kind: str, height: float) -> list[str]:
    by_layer: dict[str, list[Ink]] = {}
    for mark in inked(placed.view, placed.projection):
        by_layer.setdefault(mark.layer, []).append(mark)
    lines = [f'<g id="{name}" class="{kind}" data-title={quoteattr(clean(placed.view.title))}>']
    for layer in layers().values():
        if layer.plot and layer.name in by_layer:
            lines.extend(_layer(layer, by_layer[layer.name], height, halo=kind == "view"))
    return [*lines, "</g>"]


def _layer(layer: Layer, marks: Sequence[Ink], height: float, *, halo: bool) -> list[str]:
    """Lines first, then lettering over them."""
    drawn = [mark for mark in marks if not isinstance(mark, Word)]
    words = [mark for mark in marks if isinstance(mark, Word)]
    name = layer.name.lower().replace("_", "-")
    lines = []
    if drawn:
        dash = (
            f' stroke-dasharray="{" ".join(map(_n, layer.dash))}" stroke-linecap="butt"' if layer.dash else ""
        )
        lines.append(f'<g class="layer {name}" stroke="{layer.ink}" stroke-width="{_n(layer.pen)}"{dash}>')
        lines.extend(_shape(mark, layer, height) for mark in drawn)
        lines.append("</g>")
    if words:
        edge = f' stroke="#ffffff" stroke-width="{_n(2 * HALO)}" paint-order="stroke"' if halo else ""
        lines.append(f'<g class="lettering {name}" fill="{layer.ink}"{edge}>')
        lines.extend(_word(word, height) for word in words)
        lines.append("</g>")
    return lines


def _shape(mark: Stroke | Bow, layer: Layer, height: float) -> str:
    ink = f' fill="{layer.ink}"' if mark.filled else ""
    item = f" data-item={quoteattr(clean(mark.item))}" if mark.item else ""
    if isinstance(mark, Stroke):
        path = "".join(_path(points, mark.closed, height) for points in mark.paths)
        return f'<path d="{path}"{ink}{item}/>'
    x, y = mark.centre
    if mark.whole:
        return f'<circle cx="{_n(x)}" cy="{_n(height - y)}" r="{_n(mark.radius)}"{ink}{item}/>'
    start, end = mark.point(mark.start), mark.point(mark.end)
    radius, large = _n(mark.radius), int(mark.sweep > 180)
    # Counter-clockwise with y up is the sweep flag 0 once y is turned down.
    path = f"M{_at(start, height)}A{radius} {radius} 0 {large} 0 {_at(end, height)}"
    return f'<path d="{path}"{ink}{item}/>'


def _path(points: Iterable[Point], closed: bool, height: float) -> str:
    places = [_at(point, height) for point in points]
    return f"M{'L'.join(places)}{'Z' if closed else ''}"


def _word(word: Word, height: float) -> str:
    x, y = _n(word.at[0]), _n(height - word.at[1])
    turn = f' transform="rotate(-90 {x} {y})"' if word.rotation == 90 else ""
    item = f" data-item={quoteattr(clean(word.item))}" if word.item else ""
    long = _n(width(word.text, word.height))
    return (
        f'<text x="{x}" y="{y}" font-size="{_n(type_size(word.height))}" textLength="{long}"'
        f' lengthAdjust="spacingAndGlyphs"{turn}{item}>{escape(word.text)}</text>'
    )


def _at(point: Point, height: float) -> str:
    return f"{_n(point[0])} {_n(height - point[1])}"


def _n(value: float) -> str:
    """A number to a thousandth of a millimetre, without idle zeros."""
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
