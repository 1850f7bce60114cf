"""Whole sheets of the demo cart, as a draughtsman would look them over."""

from itertools import pairwise

import pytest

from curbwright.drawings import (
    Box,
    Hatch,
    Label,
    Line,
    Page,
    Sheet,
    Text,
    View,
    overlaps,
    paper,
    rectangle,
    sheet_set,
    struck,
    too_small,
)
from curbwright.drawings.boxes import union
from curbwright.drawings.ink import Word
from curbwright.drawings.inking import inked
from curbwright.errors import CurbwrightError
from tests.drawings import demo

SETS = [
    pytest.param(size, portrait, system, id=f"{size}-{'portrait' if portrait else 'landscape'}-{system}")
    for size in ("letter", "tabloid", "a4", "a3")
    for portrait in (False, True)
    for system in ("us", "si")
]


def one(
    *views: View, notes: tuple[str, ...] = (), size: str = "letter", cart: str = "The Copper Ladle"
) -> Sheet:
    pages = [Page("Test", views, notes)]
    return sheet_set(pages, cart=cart, date="2031-04-02", revision="A", paper=paper(size))[0]


@pytest.mark.parametrize(("size", "portrait", "system"), SETS)
def test_demo_sheets_would_pass_the_drawing_office(size: str, portrait: bool, system: str) -> None:
    for sheet in demo.sheets(size, portrait=portrait, system=system):
        assert overlaps(sheet) == []
        assert struck(sheet) == []
        assert too_small(sheet) == []
        assert sheet.unplaced == ()


@pytest.mark.parametrize(("size", "portrait", "system"), SETS)
def test_views_keep_inside_the_border_and_out_of_each_other(size: str, portrait: bool, system: str) -> None:
    for sheet in demo.sheets(size, portrait=portrait, system=system):
        rooms = [union(mark.box for mark in inked(p.view, p.projection)) for p in sheet.placed]
        assert all(sheet.paper.frame.holds(room) for room in rooms)
        assert not any(a.overlaps(b) for a, b in pairwise(rooms))


def test_sheets_are_numbered_in_order() -> None:
    words = [{word.text for word in sheet.words()} for sheet in demo.sheets()]
    assert all(f"{number} of 3" in found for number, found in enumerate(words, 1))


def test_title_block_says_what_it_was_told() -> None:
    found = {word.text for word in demo.sheets()[0].words()}
    assert {
        "The Copper Ladle",
        "Floor plan",
        "2031-04-02",
        "B",
        "1/2 in = 1 ft",
        "DRAWN BY",
        "FRONT",
    } <= found
    assert any("Not to be scaled from a screen" in text for text in found)


def test_a_plan_on_larger_paper_is_never_drawn_smaller() -> None:
    letter, tabloid = demo.sheets("letter")[0], demo.sheets("tabloid")[0]
    assert tabloid.placed[0].scale.ratio <= letter.placed[0].scale.ratio


def test_views_of_one_sheet_share_a_scale_and_line_up() -> None:
    plan = View("Plan", (rectangle(Box(0, 0, 2, 1)),))
    above = View("Elevation", (rectangle(Box(-0.5, 0, 2, 1)),))
    first, second = one(above, plan, size="tabloid").placed
    assert first.scale == second.scale
    assert first.projection.at[0] == pytest.approx(second.projection.at[0])


def test_overlapping_and_stray_texts_are_found() -> None:
    clash = View("Clash", (Text((0, 0), "one text"), Text((0.01, 0), "over another")))
    assert overlaps(one(clash)) == ["'one text' over 'over another'"]
    sheet = one(View("Stray", (Text((0, 0), "here"),)))
    moved = Sheet(sheet.paper, sheet.block, sheet.placed, View("Sheet", (Text((0, 0), "corner"),)), ())
    assert overlaps(moved) == ["'corner' outside the border"]


def test_text_struck_through_is_found() -> None:
    view = View("Struck", (Line((-1, 0.01), (1, 0.01)), Text((0, 0), "struck")))
    assert struck(one(view)) == ["'struck' struck by OUTLINE"]


def test_hatching_is_broken_around_lettering() -> None:
    area = Box(0, 0, 1, 1)
    sheet = one(View("Floor", (Hatch(area.corners, "cross"), Label("Kept clear", area.centre, area))))
    words = [word for word in sheet.words() if word.text == "Kept clear"]
    hatch = [mark for mark in sheet.ink() if mark.layer == "HATCH" and not isinstance(mark, Word)]
    assert words
    assert hatch
    for mark in hatch:
        assert not any(word.box.struck_by(*segment) for word in words for segment in mark.segments)


def test_numbers_standing_for_names_are_explained_in_the_notes() -> None:
    place = Box(0, 0, 0.2, 0.2)
    name = "Sinkwithdrainboards" * 6
    sheet = one(View("Plan", (rectangle(place), Label(name, place.centre, place, "6"))))
    text = " ".join(word.text for word in sheet.words())
    assert "6" in {word.text for word in sheet.words()}
    assert f"On the drawing 6 stands for {name}.".replace(" ", "") in text.replace(" ", "")
    assert max(word.box.right for word in sheet.words()) < sheet.paper.frame.right
    assert overlaps(sheet) == []


def test_a_number_the_notes_already_explain_is_not_explained_again() -> None:
    place = Box(0, 0, 0.2, 0.2)
    name = "Sinkwithdrainboards" * 6
    plan = View("Plan", (rectangle(place), Label(name, place.centre, place, "1")))
    text = " ".join(word.text for word in one(plan, notes=(f"{name}, stainless",)).words())
    assert "stands for" not in text


def test_a_label_without_a_place_is_owned_up_to_on_the_sheet() -> None:
    crowd = tuple(Label(f"Label {n}", (0.0, 0.0)) for n in range(200))
    sheet = one(View("Crowd", (rectangle(Box(-0.1, -0.1, 0.1, 0.1)), *crowd)), size="a3")
    assert sheet.unplaced
    text = " ".join(word.text for word in sheet.words())
    assert "No room on this sheet to letter:" in text
    assert all(name in text for name in sheet.unplaced)


def test_what_cannot_fit_is_refused_with_the_page_named() -> None:
    with pytest.raises(CurbwrightError, match=r"sheet 1, Test: .* larger paper"):
        one(View("Hangar", (rectangle(Box(0, 0, 300, 1)),)))


def test_a_long_name_is_cut_to_its_cell() -> None:
    sheet = one(View("Plan", (rectangle(Box(0, 0, 2, 1)),)), cart="The Very Long Winded Name " * 8)
    assert overlaps(sheet) == []
    assert any(word.text.endswith("…") for word in sheet.words())


def test_notes_too_long_for_the_sheet_are_refused_not_cut() -> None:
    with pytest.raises(CurbwrightError, match="Test"):
        one(View("Plan", (rectangle(Box(0, 0, 2, 1)),)), notes=("a very long note indeed " * 20,) * 60)


def test_an_empty_page_is_still_a_sheet() -> None:
    sheet = one()
    assert overlaps(sheet) == []
    assert "1 of 1" in {word.text for word in sheet.words()}
