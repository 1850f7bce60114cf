"""Hatching stays in its polygon and out of the lettering."""

from math import dist

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from curbwright.drawings import Box
from curbwright.drawings.hatching import strokes

L_SHAPE = [(0.0, 0.0), (40.0, 0.0), (40.0, 10.0), (12.0, 10.0), (12.0, 30.0), (0.0, 30.0)]


def in_l_shape(x: float, y: float, by: float = 1e-6) -> bool:
    return (-by <= x <= 40 + by and -by <= y <= 10 + by) or (-by <= x <= 12 + by and -by <= y <= 30 + by)


@settings(deadline=None)
@given(
    st.sampled_from(["diagonal", "cross", "dots"]),
    st.floats(0.8, 6),
    st.floats(0, 35),
    st.floats(0, 25),
    st.floats(1, 20),
)
def test_strokes_lie_in_the_boundary_and_outside_the_hole(
    pattern: str, spacing: float, left: float, bottom: float, size: float
) -> None:
    hole = Box(left, bottom, left + size, bottom + 3)
    for (x1, y1), (x2, y2) in strokes(L_SHAPE, pattern, spacing, [hole]):
        x, y = (x1 + x2) / 2, (y1 + y2) / 2
        assert in_l_shape(x, y)
        if pattern != "dots":
            assert in_l_shape(x1, y1)
            assert in_l_shape(x2, y2)
        assert not hole.grown(-1e-6).covers((x, y))


def test_length_of_diagonal_hatching_is_area_over_spacing() -> None:
    """Parallel lines a spacing apart cover an area of their length times the spacing."""
    spacing = 0.05
    total = sum(dist(*stroke) for stroke in strokes(L_SHAPE, "diagonal", spacing))
    assert total * spacing == pytest.approx(40 * 10 + 12 * 20, rel=0.01)


def test_none_draws_nothing() -> None:
    assert strokes(L_SHAPE, "none", 2.0) == []
