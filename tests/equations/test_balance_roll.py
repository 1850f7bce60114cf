"""Roll thresholds and slosh against moments worked as vectors and water integrated in slices."""

from __future__ import annotations

import math

import numpy as np
import pytest

from curbwright.equations import balance

TRACK, AXLE, BALL, HEIGHT = 1.52, 2.7, 0.46, 1.05


@pytest.mark.parametrize("share", [0.0, 0.05, 0.12, 0.2])
def test_the_coupled_threshold_is_where_moments_about_the_tip_line_vanish(share: float) -> None:
    """The line runs from the ball to the outer tire; gravity and the side pull act on the centre."""
    centre = AXLE * (1 - share)
    threshold = balance.coupled_roll_threshold(
        track=TRACK, centre=centre, axle=AXLE, height=HEIGHT, ball_height=BALL
    )
    ball, tire = np.array([0.0, 0.0, BALL]), np.array([AXLE, TRACK / 2, 0.0])
    arm = np.array([centre, 0.0, HEIGHT]) - ball
    pull = np.array([0.0, threshold, -1.0])
    assert np.dot(np.cross(arm, pull), tire - ball) == pytest.approx(0.0, abs=1e-12)


@pytest.mark.parametrize("across", [-0.08, 0.03])
def test_off_centre_the_line_on_that_side_is_nearer(across: float) -> None:
    """The same moments with the centre of gravity off the centre line, towards either side."""
    centre = AXLE * 0.9
    place = {"track": TRACK, "centre": centre, "axle": AXLE, "height": HEIGHT, "ball_height": BALL}
    threshold = balance.coupled_roll_threshold_off_centre(**place, across=across)
    side = math.copysign(1.0, across)
    ball, tire = np.array([0.0, 0.0, BALL]), np.array([AXLE, side * TRACK / 2, 0.0])
    arm, pull = np.array([centre, across, HEIGHT]) - ball, np.array([0.0, side * threshold, -1.0])
    assert np.dot(np.cross(arm, pull), tire - ball) == pytest.approx(0.0, abs=1e-12)
    assert threshold < balance.coupled_roll_threshold(**place)
    centred = balance.coupled_roll_threshold_off_centre(**place, across=0.0)
    assert centred == pytest.approx(balance.coupled_roll_threshold(**place))


def test_without_tongue_load_the_coupled_threshold_is_the_stability_factor() -> None:
    coupled = balance.coupled_roll_threshold(
        track=TRACK, centre=AXLE, axle=AXLE, height=HEIGHT, ball_height=BALL
    )
    assert coupled == pytest.approx(balance.stability_factor(TRACK, HEIGHT))


def test_tongue_load_costs_roll_margin_unless_the_ball_is_as_high_as_the_centre() -> None:
    def threshold(share: float, ball: float) -> float:
        return balance.coupled_roll_threshold(
            track=TRACK, centre=AXLE * (1 - share), axle=AXLE, height=HEIGHT, ball_height=ball
        )

    assert threshold(0.15, BALL) < threshold(0.05, BALL)
    # At the height of the ball the tongue's share neither helps nor hurts: the line passes as far below.
    assert threshold(0.15, HEIGHT) == pytest.approx(threshold(0.05, HEIGHT))


def test_an_offset_to_either_side_costs_the_same() -> None:
    left = balance.stability_factor_off_centre(track=TRACK, across=-0.05, height=HEIGHT)
    right = balance.stability_factor_off_centre(track=TRACK, across=0.05, height=HEIGHT)
    assert left == right < balance.stability_factor(TRACK, HEIGHT)
    centred = balance.stability_factor_off_centre(track=TRACK, across=0.0, height=HEIGHT)
    assert centred == balance.stability_factor(TRACK, HEIGHT)


def test_on_the_tip_radius_the_tip_speed_is_the_speed() -> None:
    radius = balance.tip_radius(speed=13.0, threshold=0.6, gravity=9.80665)
    assert balance.tip_speed(radius=radius, threshold=0.6, gravity=9.80665) == pytest.approx(13.0)


@pytest.mark.parametrize("bank", [-0.05, 0.02, 0.08])
def test_a_bank_turns_gravity_and_the_side_pull_together(bank: float) -> None:
    """In the road's own axes the weight and the side acceleration must balance about the outer tires."""
    factor = 0.7
    side = balance.banked_threshold(threshold=factor, bank=bank)
    lean = math.atan(bank)
    across = side * math.cos(lean) - math.sin(lean)
    down = math.cos(lean) + side * math.sin(lean)
    assert across / down == pytest.approx(factor)


def test_a_trailer_as_wide_as_twice_its_height_goes_over_at_45_degrees() -> None:
    assert math.degrees(balance.tilt_angle(balance.stability_factor(2.0, 1.0))) == pytest.approx(45.0)


@pytest.mark.parametrize(("width", "depth", "pull"), [(0.61, 0.15, 0.3), (0.4, 0.2, 0.5), (0.9, 0.3, 0.1)])
def test_slosh_is_the_centre_of_water_under_a_tilted_surface(width: float, depth: float, pull: float) -> None:
    assert width / 2 * pull <= depth, "outside the range the equation holds in"
    across = np.linspace(-width / 2, width / 2, 20001)
    level = depth + pull * across
    area = np.trapezoid(level, across)
    assert area == pytest.approx(width * depth)
    shift = np.trapezoid(across * level, across) / area
    rise = np.trapezoid(level**2 / 2, across) / area - depth / 2
    assert balance.slosh_shift(width=width, depth=depth, side_pull=pull) == pytest.approx(shift, rel=1e-6)
    assert balance.slosh_rise(width=width, depth=depth, side_pull=pull) == pytest.approx(rise, rel=1e-6)


def test_a_lengthwise_baffle_quarters_the_shift() -> None:
    whole = balance.slosh_shift(width=0.6, depth=0.15, side_pull=0.3)
    assert balance.slosh_shift(width=0.3, depth=0.15, side_pull=0.3) == pytest.approx(whole / 4)


def test_deep_water_swings_as_a_deep_wave_and_shallow_water_as_a_long_one() -> None:
    deep = balance.slosh_frequency(width=0.5, depth=5.0, gravity=9.81)
    assert deep == pytest.approx(math.sqrt(9.81 * math.pi / 0.5) / (2 * math.pi))
    shallow = balance.slosh_frequency(width=5.0, depth=0.01, gravity=9.81)
    assert shallow == pytest.approx(math.sqrt(9.81 * 0.01) / (2 * 5.0), rel=1e-3)
