"""Widths of lettering, and text broken or cut to a width."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from curbwright.drawings.lettering import (
    balanced,
    block_size,
    clean,
    line_box,
    shortened,
    type_size,
    width,
    wrapped,
)

TEXT = st.text(max_size=60)
WORDS = st.lists(st.text("abcdeWMil", min_size=1, max_size=12), min_size=1, max_size=12).map(" ".join)
ROOM = st.floats(3, 120)


@pytest.mark.parametrize(
    ("character", "thousandths"),
    [(" ", 278), ("A", 667), ("M", 833), ("i", 222), ("0", 556), ("W", 944), ("m", 833)],
)
def test_widths_are_those_of_the_usual_sans_serif(character: str, thousandths: int) -> None:
    """The widths every metric-compatible sans-serif of this family shares."""
    line = f"x{character}x" if character == " " else character
    spare = 2 * width("x", 10) if character == " " else 0.0
    assert width(line, 10) - spare == pytest.approx(type_size(10) * thousandths / 1000, abs=0.01)


@settings(deadline=None)
@given(TEXT)
def test_clean_leaves_nothing_a_file_format_could_choke_on(text: str) -> None:
    line = clean(text)
    assert all(character.isprintable() or character == " " for character in line)
    assert clean(line) == line


@settings(deadline=None)
@given(TEXT, TEXT)
def test_width_adds_up(one: str, other: str) -> None:
    joined = clean(one) + clean(other)
    assert width(joined, 2.4) <= width(one, 2.4) + width(other, 2.4) + 1e-9


@settings(deadline=None)
@given(WORDS, ROOM)
def test_wrapping_loses_no_word_and_keeps_to_the_room(text: str, room: float) -> None:
    lines = wrapped(text, 2.4, room).split("\n")
    assert " ".join(lines).split() == text.split()
    assert all(width(line, 2.4) <= room or " " not in line for line in lines)


@settings(deadline=None)
@given(WORDS, ROOM)
def test_balancing_takes_no_more_lines_and_no_more_room(text: str, room: float) -> None:
    plain, even = wrapped(text, 2.4, room), balanced(text, 2.4, room)
    assert even.split() == plain.split()
    assert even.count("\n") <= plain.count("\n")
    assert block_size(even, 2.4)[0] <= block_size(plain, 2.4)[0]


@settings(deadline=None)
@given(TEXT, st.floats(6, 60))
def test_shortened_text_fits(text: str, room: float) -> None:
    assert width(shortened(text, 2.4, room), 2.4) <= room


def test_rotated_line_takes_the_same_room_turned() -> None:
    flat, upright = line_box((0, 0), "Griddle", 2.4), line_box((0, 0), "Griddle", 2.4, 90)
    assert (upright.width, upright.height) == (pytest.approx(flat.height), pytest.approx(flat.width))


def test_wide_scripts_and_marks_have_a_width() -> None:
    assert width("餃子", 2.0) == pytest.approx(2 * type_size(2.0))
    assert width("e\u0301", 2.0) == pytest.approx(width("e", 2.0))
