"""The drawing set of a cart: which sheets there are, and writing them."""

from __future__ import annotations

from pathlib import Path

from curbwright.drawings.backends import svg
from curbwright.drawings.cart_parts import schedule
from curbwright.drawings.elevation import curb_elevation
from curbwright.drawings.gas_isometric import gas_isometric, gas_notes
from curbwright.drawings.one_line import one_line, one_line_notes
from curbwright.drawings.paper import paper
from curbwright.drawings.plan import plan
from curbwright.drawings.sheet import Page, Sheet, compose
from curbwright.drawings.title_block import TitleBlock
from curbwright.errors import CurbwrightError
from curbwright.sheets import Worksheets

PAPERS = ("letter", "tabloid")
READABLE = 24.0
"""A drawing is wanted at 1/2 in = 1 ft or larger; a larger paper is taken before a smaller scale.

A diagram is wanted as it was set out: made smaller, its lettering would not fit any more.
"""


def pages(sheets: Worksheets) -> tuple[Page, ...]:
    """Return the sheets of the set: floor plan, curb-side elevation, gas and wiring where they are told."""
    wanted = [
        Page("Floor plan and equipment", (plan(sheets),), schedule(sheets), "EQUIPMENT"),
        Page("Curb-side elevation", (curb_elevation(sheets),), schedule(sheets), "EQUIPMENT"),
    ]
    if sheets.build.gas.sections:
        wanted.append(Page("Gas isometric", (gas_isometric(sheets),), gas_notes(sheets), "GAS"))
    wiring = one_line(sheets)
    if wiring is not None:
        wanted.append(Page("One-line diagram", (wiring,), one_line_notes(sheets)))
    return tuple(wanted)


def drawing_set(sheets: Worksheets) -> tuple[Sheet, ...]:
    """Compose the set, each sheet on the smallest paper that holds it at a readable scale.

    Raises CurbwrightError naming the sheet that no paper holds.
    """
    cart, wanted = sheets.build.cart, pages(sheets)
    return tuple(
        _composed(
            page,
            TitleBlock(
                cart.name,
                page.title,
                cart.drawn_on or "",
                cart.revision or "",
                number,
                len(wanted),
                cart.units,
            ),
        )
        for number, page in enumerate(wanted, 1)
    )


def _composed(page: Page, block: TitleBlock) -> Sheet:
    made: Sheet | None = None
    for name in PAPERS:
        try:
            made = compose(page, block, paper(name))
        except CurbwrightError:
            if name == PAPERS[-1]:
                raise
            continue
        if all(placed.scale.ratio <= (READABLE if placed.view.to_scale else 1.0) for placed in made.placed):
            return made
    assert made is not None  # noqa: S101 - the last paper either held it or raised
    return made


def draw(sheets: Worksheets, folder: str | Path) -> list[Path]:
    """Write the drawings into a folder, made if need be: one SVG a sheet and one DXF of the set.

    Returns the paths written. Raises OSError where the folder cannot be written.
    """
    from curbwright.drawings.backends import dxf

    place = Path(folder)
    place.mkdir(parents=True, exist_ok=True)
    written: list[Path] = []
    made = drawing_set(sheets)
    for sheet in made:
        path = place / f"{sheet.block.number}-{sheet.block.title.lower().replace(' ', '-')}.svg"
        path.write_text(svg.write(sheet), encoding="utf-8")
        written.append(path)
    path = place / "cart.dxf"
    path.write_text(dxf.write(made), encoding="utf-8")
    written.append(path)
    return written
