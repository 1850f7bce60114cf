"""Labels: placed clear of everything, or owned up to."""

from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from curbwright.drawings import Box, Label, View, rectangle
from curbwright.drawings.ink import Projection, Word
from curbwright.drawings.inking import inked
from curbwright.drawings.layout import lay_out
from curbwright.drawings.placing import Candidate, candidates, place

WORDS = st.sampled_from(
    ["Fryer", "Hand-washing sink", "Three-compartment sink", "1", "Prep table, 48 in", "餃子 steamer"]
)
BOX = st.builds(
    lambda x, y, w, h: Box(x, y, x + w, y + h),
    st.floats(0, 120),
    st.floats(0, 80),
    st.floats(1, 50),
    st.floats(1, 40),
)
ROOM = Box(-40, -40, 200, 160)


@st.composite
def wanted(draw: st.DrawFn) -> list[list[Candidate]]:
    found = []
    for _ in range(draw(st.integers(1, 14))):
        item, inside = draw(BOX), draw(st.booleans())
        short = draw(st.sampled_from(["", "7"]))
        found.append(candidates(draw(WORDS), 2.4, item.centre, inside=item if inside else None, short=short))
    return found


@given(wanted(), st.lists(BOX, max_size=6))
@settings(deadline=None, max_examples=60)
def test_placed_labels_are_clear_of_everything(options: list[list[Candidate]], obstacles: list[Box]) -> None:
    chosen = place(options, obstacles=obstacles, bounds=ROOM)
    assert len(chosen) == len(options)
    placed = [choice for choice in chosen if choice is not None]
    for choice in placed:
        assert ROOM.holds(choice.box)
        assert not any(choice.box.overlaps(obstacle) for obstacle in obstacles)
    for one, other in combinations(placed, 2):
        assert not one.box.overlaps(other.box)
        for a, b in ((one, other), (other, one)):
            assert a.leader is None or not b.box.struck_by(*a.leader)
    assert chosen == place(options, obstacles=obstacles, bounds=ROOM)


@given(wanted())
@settings(deadline=None, max_examples=40)
def test_a_label_goes_unplaced_only_if_no_candidate_is_free(options: list[list[Candidate]]) -> None:
    chosen = place(options, obstacles=[], bounds=ROOM)
    placed = [choice for choice in chosen if choice is not None]
    for choices, choice in zip(options, chosen, strict=True):
        if choice is None:
            for candidate in choices:
                inside = ROOM.holds(candidate.box)
                assert not inside or any(_meet(candidate, other) for other in placed)


def _meet(one: Candidate, other: Candidate) -> bool:
    """Two labels get in each other's way if nearer than 1.2 mm, or if a leader of one meets the other."""
    if one.box.grown(1.2).overlaps(other.box):
        return True
    return any(
        leader is not None and (box.grown(0.5).struck_by(*leader) or (mine and _cross(leader, mine)))
        for leader, box, mine in ((one.leader, other.box, other.leader), (other.leader, one.box, one.leader))
    )


def _cross(one: tuple[tuple[float, float], ...], other: tuple[tuple[float, float], ...]) -> bool:
    """Solve for where the two lines meet; they cross if that lies within both."""
    (ax, ay), (bx, by) = one
    (cx, cy), (dx, dy) = other
    slope = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    if slope == 0:
        return False
    t = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / slope
    u = ((cx - ax) * (by - ay) - (cy - ay) * (bx - ax)) / slope
    return 0 <= t <= 1 and 0 <= u <= 1


def test_a_name_that_fits_stands_in_the_middle_of_its_item() -> None:
    item = Box(0, 0, 40, 20)
    (choice,) = place([candidates("Griddle", 2.4, item.centre, inside=item)], obstacles=[])
    assert choice is not None
    assert choice.box.centre == item.centre
    assert choice.leader is None


def test_a_name_too_wide_stands_outside_with_a_leader_to_its_item() -> None:
    item = Box(0, 0, 5, 5)
    (choice,) = place([candidates("Three-compartment sink", 2.4, item.centre, inside=item)], obstacles=[item])
    assert choice is not None
    assert not choice.box.overlaps(item)
    assert choice.leader is not None
    assert item.covers(choice.leader[0])


def test_a_name_with_no_room_gives_way_to_its_number() -> None:
    item = Box(0, 0, 5, 5)
    walls = [Box(-90, -90, -0.1, 90), Box(5.1, -90, 90, 90), Box(-90, 5.1, 90, 90), Box(-90, -90, 90, -0.1)]
    options = candidates("Three-compartment sink", 2.4, item.centre, inside=item, short="6")
    (choice,) = place([options], obstacles=walls)
    assert choice is not None
    assert choice.text == "6"


def test_a_view_names_what_it_could_not_letter() -> None:
    view = View(
        "Box", (rectangle(Box(0, 0, 0.1, 0.1)), *(Label(f"Label {n}", (0.05, 0.05)) for n in range(400)))
    )
    laid = lay_out(view, 1000 / 48)
    words = [mark.text for mark in inked(laid.view, Projection(1000 / 48)) if isinstance(mark, Word)]
    lettered = " ".join(words)
    assert laid.unplaced
    assert lettered.count("Label") + len(laid.unplaced) == 400


def test_crossing_a_line_is_dearer_than_stepping_aside() -> None:
    item = Box(0, 0, 40, 20)
    line = ((0.0, 10.0), (40.0, 10.0))
    (choice,) = place([candidates("Griddle", 2.4, item.centre, inside=item)], obstacles=[], strokes=[line])
    assert choice is not None
    assert item.holds(choice.box)
    assert not choice.box.struck_by(*line)
