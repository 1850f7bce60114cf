"""Fit equations: places and gaps in limits where the answer is obvious, and what moving everything does."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from curbwright.equations import fit

LENGTHS = st.floats(-20.0, 20.0)
SIZES = st.floats(0.0, 10.0)


@given(LENGTHS, SIZES)
def test_edges_and_middle_agree(edge: float, size: float) -> None:
    middle = fit.middle(edge=edge, size=size)
    assert fit.near_edge(middle=middle, size=size) == pytest.approx(edge, abs=1e-12)
    assert fit.curb_edge(middle=middle, size=size) == pytest.approx(
        fit.far_edge(edge=edge, size=size), abs=1e-12
    )


@given(SIZES, SIZES, SIZES)
def test_things_against_the_two_walls_mirror_each_other(room: float, gap: float, size: float) -> None:
    curb = fit.curb_middle(room=room, gap=gap, size=size)
    assert fit.street_middle(room=room, gap=gap, size=size) == pytest.approx(-curb)
    assert fit.curb_face(width=room) == -fit.street_face(width=room)
    back = fit.curb_edge(middle=curb, size=size)
    assert fit.gap(near=back, far=fit.curb_face(width=room)) == pytest.approx(gap, abs=1e-12)


@given(SIZES, st.floats(0.0, 0.3), SIZES, SIZES)
def test_a_thing_against_the_rear_wall_leaves_its_gap(
    room: float, wall: float, gap: float, size: float
) -> None:
    front = fit.rear_wall_edge(wall_back=0.5, room=room, wall=wall, gap=gap, size=size)
    rear_face = fit.rear_wall_edge(wall_back=0.5, room=room, wall=wall, gap=0.0, size=0.0)
    assert fit.gap(near=fit.far_edge(edge=front, size=size), far=rear_face) == pytest.approx(gap, abs=1e-12)
    assert fit.against_rear(rear=rear_face, gap=gap, size=size) == pytest.approx(front)


@given(LENGTHS, LENGTHS, LENGTHS)
def test_moving_both_changes_no_gap_and_no_leg(near: float, far: float, shift: float) -> None:
    assert fit.gap(near=near + shift, far=far + shift) == pytest.approx(
        fit.gap(near=near, far=far), abs=1e-12
    )
    assert fit.leg(start=near + shift, end=far + shift) == pytest.approx(
        fit.leg(start=near, end=far), abs=1e-12
    )
    assert fit.leg(start=near, end=far) == fit.leg(start=far, end=near)


@given(SIZES, SIZES, SIZES)
def test_corners_are_no_nearer_than_either_gap_and_no_further_than_the_way(
    a: float, b: float, c: float
) -> None:
    plan = fit.corner_gap(one_way=a, other_way=b)
    assert max(a, b) <= plan * (1 + 1e-12) + 1e-12
    assert plan <= fit.way(along=a, across=b) + 1e-12
    assert fit.corner_gap_in_space(along=a, across=b, up=c) == pytest.approx(math.dist((0, 0, 0), (a, b, c)))
    assert fit.corner_gap_in_space(along=a, across=b, up=0.0) == pytest.approx(plan)


def test_a_flat_drain_needs_no_fall_and_a_longer_one_more() -> None:
    assert fit.fall_needed(run=0.0, drop=0.25, per=12.0) == 0.0
    assert fit.fall_needed(run=24.0, drop=0.25, per=12.0) == 2 * fit.fall_needed(
        run=12.0, drop=0.25, per=12.0
    )


@given(SIZES, SIZES, SIZES)
def test_the_highest_inlet_uses_up_exactly_the_fall_available(rim: float, bowl: float, run: float) -> None:
    outlet = fit.drain_outlet(rim=rim, bowl=bowl, strainer=0.04, tailpiece=0.1, trap=0.09)
    needed = fit.fall_needed(run=run, drop=0.25, per=12.0)
    inlet = fit.highest_inlet(outlet=outlet, fall=needed)
    available = fit.gap(near=inlet, far=outlet)
    assert fit.spare(clear=available, asked=needed) == pytest.approx(0.0, abs=1e-12)


@given(SIZES, SIZES, SIZES)
def test_a_deck_as_long_as_needed_leaves_its_row_no_room(deck: float, row: float, walls: float) -> None:
    """The room is the deck less its walls; on the deck needed it is just the row."""
    needed = fit.deck_needed(deck=deck, row=row, room=deck - walls)
    assert needed - walls == pytest.approx(row, abs=1e-9)


def test_the_reach_over_a_counter_is_what_lies_between() -> None:
    assert fit.hand_over(counter=0.0, wall=0.0, shelf=0.0) == 0.0
    assert fit.hand_over(counter=24.0, wall=2.0, shelf=12.0) == 32.0


def test_heights_and_stations_add_and_what_is_ahead_is_negative() -> None:
    assert fit.above_road(deck_height=0.6, above=-0.4) == pytest.approx(0.2)
    assert fit.from_ball(ball_to_deck=1.2, back=fit.ahead(distance=1.2)) == 0.0
    assert fit.inside(outside=2.0, wall=0.0) == 2.0
    assert fit.rest(whole=3.0, part=3.0) == 0.0
    assert fit.front_wall_edge(wall_back=0.5, wall=0.05, gap=0.1) == pytest.approx(0.65)
