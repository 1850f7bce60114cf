"""The drawings of every example cart: nothing overlaps, everything is numbered, sizes are true."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import ezdxf
import pytest

import curbwright
from curbwright.drawings import overlaps, struck, too_small
from curbwright.drawings.cart_parts import numbered
from curbwright.drawings.drawing_set import READABLE, draw, drawing_set
from curbwright.drawings.primitives import Label, Polyline
from curbwright.drawings.sheet import Sheet
from curbwright.sheets import Worksheets, work
from tests.sheets.balance_carts import PLAIN, changed, worked

EXAMPLES = sorted(Path(curbwright.__file__).parent.joinpath("data", "examples").glob("*/cart.toml"))
every_cart = pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.parent.name)


@cache
def sheets_of(path: Path) -> Worksheets:
    return work(curbwright.read(path))


@cache
def drawn(path: Path) -> tuple[Sheet, ...]:
    return drawing_set(sheets_of(path))


@every_cart
def test_nothing_overlaps_and_everything_can_be_read(path: Path) -> None:
    for sheet in drawn(path):
        assert not overlaps(sheet), sheet.block.title
        assert not struck(sheet), sheet.block.title
        assert not too_small(sheet), sheet.block.title
        assert not sheet.unplaced, sheet.block.title


@every_cart
def test_every_sheet_is_letter_or_tabloid_at_a_standard_scale(path: Path) -> None:
    for sheet in drawn(path):
        assert sheet.paper.name.split()[0] in ("Letter", "Tabloid")
        assert all(placed.scale.ratio <= READABLE for placed in sheet.placed if placed.view.to_scale)


@every_cart
def test_everything_aboard_is_numbered_once_on_the_plan(path: Path) -> None:
    plan = drawn(path)[0].placed[0].view
    wanted = {str(number) for number in numbered(sheets_of(path)).values()}
    texts = [getattr(one, "text", "") for one in plan.primitives]
    for number in wanted:
        assert sum(text.split(" ")[0] == number for text in texts if not isinstance(text, Label)) >= 1, number


@every_cart
def test_the_plan_draws_the_deck_at_its_size(path: Path) -> None:
    build = sheets_of(path).build
    plan = drawn(path)[0].placed[0]
    outline = next(
        one for one in plan.view.primitives if isinstance(one, Polyline) and one.layer == "OUTLINE"
    )
    across = [plan.projection.paper(point)[0] for point in outline.points]
    assert max(across) - min(across) == pytest.approx(
        float(build.trailer.deck_length) / plan.scale.ratio * 1000
    )


@every_cart
def test_files_are_written_and_sound(path: Path, tmp_path: Path) -> None:
    written = draw(sheets_of(path), tmp_path / "new folder")
    assert [one.suffix for one in written].count(".svg") == len(drawn(path))
    document = ezdxf.readfile(written[-1])
    assert not document.audit().errors
    again = draw(sheets_of(path), tmp_path / "again")
    assert [one.read_bytes() for one in written] == [one.read_bytes() for one in again]


def test_a_length_in_the_dxf_is_the_length_in_the_build_file(tmp_path: Path) -> None:
    path = draw(sheets_of(EXAMPLES[0]), tmp_path)[-1]
    deck = float(sheets_of(EXAMPLES[0]).build.trailer.deck_length) / 0.0254
    spans = []
    for line in ezdxf.readfile(path).modelspace().query("LWPOLYLINE[layer=='OUTLINE']"):
        across = [point[0] for point in line.get_points()]
        spans.append(max(across) - min(across))
    assert any(span == pytest.approx(deck) for span in spans)


def test_the_svg_names_its_paper_in_millimetres() -> None:
    from curbwright.drawings.backends import svg

    for sheet in drawn(EXAMPLES[0]):
        size = re.search(r'width="([\d.]+)mm" height="([\d.]+)mm"', svg.write(sheet))
        assert size is not None
        assert [float(one) for one in size.groups()] == pytest.approx([sheet.paper.width, sheet.paper.height])


def test_an_open_cart_without_sizes_is_drawn_all_the_same() -> None:
    assert len(drawing_set(worked(PLAIN))) >= 2


def test_a_cart_whose_balance_is_untold_is_drawn_without_its_mark() -> None:
    plan = drawing_set(worked(changed(PLAIN, bare_mass="")))[0].placed[0].view
    kinds = [getattr(one, "kind", "") for one in plan.primitives]
    assert "centre_of_gravity" not in kinds
    assert "axle" in kinds
