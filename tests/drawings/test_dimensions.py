"""Chains: what they say adds up, and no figure lies on another."""

from itertools import combinations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from curbwright.drawings import View, chain
from curbwright.drawings.dimension_rows import apart
from curbwright.drawings.ink import Projection, Word
from curbwright.drawings.inking import inked
from curbwright.drawings.layout import lay_out
from curbwright.drawings.primitives import Dimension
from curbwright.units import read

PLACES = st.lists(st.floats(0, 4.5), min_size=2, max_size=14)
SIDES = st.sampled_from(["above", "below", "left", "right"])
SYSTEMS = st.sampled_from(["us", "si"])
PER_METRE = st.sampled_from([1000 / ratio for ratio in (8, 16, 24, 48, 96)])


@settings(deadline=None)
@given(PLACES, SYSTEMS)
def test_figures_of_a_row_add_up_to_the_overall_figure(places: list[float], system: str) -> None:
    drawn = chain(places, side="below", base=0.0, system=system, overall=True)
    row, overall = drawn.runs[0], drawn.runs[-1]
    total = sum(read(label, "length") for label in row.labels)
    assert total == pytest.approx(sum(read(label, "length") for label in overall.labels), abs=1e-9)


@settings(deadline=None)
@given(PLACES, SYSTEMS)
def test_each_figure_is_true_to_the_rounding(places: list[float], system: str) -> None:
    step = 0.0254 / 16 if system == "us" else 0.001
    row = chain(places, side="below", base=0.0, system=system).runs
    for run in row:
        for start, end, label in zip(run.places, run.places[1:], run.labels, strict=False):
            assert read(label, "length") == pytest.approx(end - start, abs=step * 1.001)


@settings(deadline=None)
@given(PLACES, PLACES, SIDES, SYSTEMS, PER_METRE)
@example([0.0, 0.03, 0.06, 0.09, 0.12], [0.05, 3.0], "above", "us", 1000 / 48)
def test_no_figure_lies_on_another_or_on_a_line(
    inner: list[float], outer: list[float], side: str, system: str, per_metre: float
) -> None:
    drawn = chain(inner, outer, side=side, base=0.3, system=system, overall=True)  # type: ignore[arg-type]
    ink = inked(lay_out(View("Chain", (drawn,)), per_metre).view, Projection(per_metre))
    words = [mark for mark in ink if isinstance(mark, Word)]
    for one, other in combinations(words, 2):
        assert not one.box.overlaps(other.box), (one.text, other.text)
    for word in words:
        middle = word.box.grown(-0.3 * word.height)
        for mark in ink:
            if not isinstance(mark, Word):
                assert not any(middle.struck_by(*segment) for segment in mark.segments), word.text


@settings(deadline=None)
@given(PLACES, SIDES, PER_METRE)
def test_dimension_lines_end_where_the_places_are(places: list[float], side: str, per_metre: float) -> None:
    drawn = chain(places, side=side, base=0.0)  # type: ignore[arg-type]
    done = lay_out(View("Chain", (drawn,)), per_metre).view.primitives
    axis = 0 if side in ("above", "below") else 1
    ends = [(one.start[axis], one.end[axis]) for one in done if isinstance(one, Dimension)]
    expected = [pair for run in drawn.runs for pair in zip(run.places, run.places[1:], strict=False)]
    assert ends == expected


def test_places_that_fall_together_make_no_empty_dimension() -> None:
    run = chain([0.0, 0.0001, 1.0], side="below", base=0.0).runs[0]
    assert len(run.labels) == 1


def test_a_figure_too_wide_for_its_gap_is_lifted_with_a_leader() -> None:
    view = View("Chain", (chain([0, 0.05, 1.0], side="below", base=0.0),))
    narrow, wide = (one for one in lay_out(view, 1000 / 24).view.primitives if isinstance(one, Dimension))
    assert narrow.moved is not None
    assert wide.moved is None


@settings(deadline=None)
@given(st.lists(st.tuples(st.floats(0, 100), st.floats(0.5, 20)), min_size=1, max_size=12))
def test_apart_keeps_order_and_clears_every_neighbour(things: list[tuple[float, float]]) -> None:
    things = sorted(things)
    centres = apart([centre for centre, _ in things], [wide for _, wide in things])
    pairs = list(zip(centres, [wide for _, wide in things], strict=True))
    for (a, wide_a), (b, wide_b) in zip(pairs, pairs[1:], strict=False):
        assert b - a >= (wide_a + wide_b) / 2 - 1e-9


def test_apart_leaves_alone_what_is_clear() -> None:
    assert apart([0.0, 10.0, 20.0], [4.0, 4.0, 4.0]) == [0.0, 10.0, 20.0]
