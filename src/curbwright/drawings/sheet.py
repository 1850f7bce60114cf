"""Sheets: views put on paper at the largest standard scale that holds them all, in a titled border."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from curbwright.drawings import notes, title_block
from curbwright.drawings.arrangement import Block, arranged
from curbwright.drawings.boxes import Box
from curbwright.drawings.ink import Ink, Projection, Word
from curbwright.drawings.inking import inked
from curbwright.drawings.layers import layers
from curbwright.drawings.layout import LaidOut, extents, lay_out
from curbwright.drawings.paper import Paper, Scale, fit, scales
from curbwright.drawings.primitives import Primitive, View
from curbwright.drawings.title_block import TitleBlock
from curbwright.errors import CurbwrightError

PADDING = 4.0  # mm between the frame and anything drawn in it
DIAGRAMS = tuple(Scale("not to scale", ratio) for ratio in (1.0, 1.15, 1.3, 1.5, 1.75, 2.0, 2.5, 3.0, 4.0))


@dataclass(frozen=True)
class Page:
    """What is wanted on one sheet: title, views in order, and numbered notes beside them under a heading."""

    title: str
    views: tuple[View, ...]
    notes: tuple[str, ...] = ()
    heading: str = "NOTES"


@dataclass(frozen=True)
class Placed:
    """A view on the sheet: everything decided, where its origin stands, and at what scale."""

    view: View
    projection: Projection
    scale: Scale


@dataclass(frozen=True)
class Sheet:
    """One finished sheet. ``furniture`` is its border, title block, view titles and notes, in thousandths."""

    paper: Paper
    block: TitleBlock
    placed: tuple[Placed, ...]
    furniture: View
    unplaced: tuple[str, ...]

    def ink(self) -> Iterator[Ink]:
        """Give everything that is printed, in millimetres from the lower left of the paper."""
        known = layers()
        for placed in (*self.placed, Placed(self.furniture, FULL_SIZE, DIAGRAMS[0])):
            for mark in inked(placed.view, placed.projection):
                if known[mark.layer].plot:
                    yield mark

    def words(self) -> list[Word]:
        """Return every line of lettering on the sheet."""
        return [mark for mark in self.ink() if isinstance(mark, Word)]


FULL_SIZE = Projection(1000.0)


def sheet_set(
    pages: Sequence[Page],
    *,
    cart: str,
    date: str,
    revision: str,
    paper: Paper,
    system: str = "us",
) -> tuple[Sheet, ...]:
    """Return one sheet a page, numbered in order.

    Raises ``CurbwrightError`` naming the page if its views do not fit the paper at any standard scale.
    """
    return tuple(
        compose(page, TitleBlock(cart, page.title, date, revision, number, len(pages), system), paper)
        for number, page in enumerate(pages, 1)
    )


def compose(page: Page, block: TitleBlock, paper: Paper) -> Sheet:
    """Return one sheet with the views of a page at the largest standard scale that holds them all."""
    room = _room(paper)
    diagrams = DIAGRAMS if any(not view.to_scale for view in page.views) else DIAGRAMS[:1]
    for scale in _scales_to_try(page, room, block.system):
        for diagram in diagrams:
            sheet = _at_scale(page, block, paper, scale, diagram)
            if sheet is not None:
                return sheet
    raise CurbwrightError(
        f"sheet {block.number}, {page.title}: the views do not fit {paper.name} at any standard scale; "
        "take a larger paper or fewer views a sheet"
    )


def _at_scale(page: Page, block: TitleBlock, paper: Paper, scale: Scale, diagram: Scale) -> Sheet | None:
    """Return the sheet at one scale, or None; labels are placed only once the rest is seen to fit."""
    sheet = None
    for labelled in (False, True):
        laid = [
            lay_out(view, (scale if view.to_scale else diagram).per_metre, labelled=labelled)
            for view in page.views
        ]
        sheet = _composed(page, block, paper, laid, scale)
        if sheet is None:
            return None
    return sheet


def _room(paper: Paper) -> Box:
    frame = paper.frame
    bottom = frame.bottom + title_block.strip_height(paper)
    return Box(frame.left, bottom, frame.right, frame.top).grown(-PADDING)


def _scales_to_try(page: Page, room: Box, system: str) -> Sequence[Scale]:
    """Leave out the scales at which some view's bare work is already too large."""
    known = scales(system)
    for view in page.views:
        if view.to_scale:
            largest = fit(extents(view), (room.width, room.height), system=system)
            if largest is None:
                return ()
            known = tuple(scale for scale in known if scale.ratio >= largest.ratio)
    return known if any(view.to_scale for view in page.views) else known[:1]


def _composed(
    page: Page, block: TitleBlock, paper: Paper, laid: Sequence[LaidOut], scale: Scale
) -> Sheet | None:
    room = _room(paper)
    unders = [scale.name if view.to_scale else "not to scale" for view in page.views]
    blocks = [
        Block(one.extents, title_block.caption_size(one.view.title, under, one.view.front), one.view.to_scale)
        for one, under in zip(laid, unders, strict=True)
    ]
    ways = (
        (aside, arranged(blocks, left))
        for aside, left in _asides(page.heading, _notes(page, laid), _keyed(laid), room)
    )
    aside, found = next((way for way in ways if way[1] is not None), ([], None))
    if found is None:
        return None
    furniture = list(aside)
    placed = []
    for one, under, (origin, caption_at) in zip(laid, unders, found, strict=True):
        furniture.extend(title_block.caption(caption_at, one.view.title, under, one.view.front))
        drawn_at = scale if one.view.to_scale else Scale("not to scale", 1000 / one.projection.per_metre)
        placed.append(Placed(one.view, Projection(one.projection.per_metre, origin), drawn_at))
    bar = scale if any(view.to_scale for view in page.views) else None
    scale_text = "as noted" if len(set(unders)) > 1 else (unders or ["none"])[0]
    furniture.extend(title_block.furniture(paper, block, bar, scale_text))
    return Sheet(
        paper,
        block,
        tuple(placed),
        View("Sheet", tuple(furniture)),
        tuple(name for one in laid for name in one.unplaced),
    )


def _notes(page: Page, laid: Sequence[LaidOut]) -> list[str]:
    """The page's notes, what the numbers stand for, and an admission if some label found no room."""
    texts = list(page.notes)
    pairs = {pair for one in laid for pair in one.numbered if not _explained(pair, texts)}
    numbered = sorted(pairs, key=lambda pair: (len(pair[0]), pair))
    if numbered:
        texts.append(f"On the drawing {'; '.join(f'{short} stands for {name}' for short, name in numbered)}.")
    unplaced = [name for one in laid for name in one.unplaced]
    if unplaced:
        texts.append(f"No room on this sheet to letter: {'; '.join(unplaced)}.")
    return texts


def _explained(pair: tuple[str, str], texts: Sequence[str]) -> bool:
    """Whether the note of that number already gives the name, as a list of equipment does."""
    short, name = pair
    listed = dict(zip(map(str, range(1, len(texts) + 1)), texts, strict=True))
    return name.lower() in listed.get(short, "").lower()


def _keyed(laid: Sequence[LaidOut]) -> list[str]:
    """The layers used on the sheet that a reader needs a key to, in drawing order."""
    used = {primitive.layer for one in laid for primitive in one.view.primitives}
    return [name for name, row in layers().items() if name in used and row.in_key]


def _asides(
    heading: str, texts: Sequence[str], keyed: Sequence[str], room: Box
) -> Iterator[tuple[list[Primitive], Box]]:
    """Give ways to set notes and key, across the foot or down the right side, with the room each leaves."""
    if not texts and not keyed:
        yield [], room
        return
    gap = 5.0
    columns = max(1, int(room.width // 90))
    _, tall = notes.beside(texts, keyed, heading=heading, at=(0, 0), wide=room.width, columns=columns)
    if tall < room.height:
        top = room.bottom + tall
        foot, _ = notes.beside(
            texts, keyed, heading=heading, at=(room.left, top), wide=room.width, columns=columns
        )
        yield foot, Box(room.left, top + gap, room.right, room.top)
    wide = min(75.0, room.width / 3)
    side, tall = notes.beside(
        texts, keyed, heading=heading, at=(room.right - wide, room.top), wide=wide, columns=1
    )
    if tall <= room.height:
        yield side, Box(room.left, room.bottom, room.right - wide - gap, room.top)
