"""Balance equations against independent solvers, and in limits where the answer is obvious."""

from __future__ import annotations

import math

import numpy as np
import pytest

from curbwright import data, units
from curbwright.equations import balance
from tests.equations.carts import Item, cart


def gross_and_centre(items: list[Item]) -> tuple[float, float]:
    gross = math.fsum(item.mass for item in items)
    moments = math.fsum(balance.moment(item.mass, item.back) for item in items)
    return gross, balance.centre(moments, gross)


@pytest.mark.parametrize(
    "case", ["trailer-rollup-road-ready", "trailer-rollup-end-of-day", "trailer-rollup-fresh-full"]
)
def test_tongue_and_axle_are_the_reactions_of_a_beam(case: str) -> None:
    """A stiff beam on the ball and the axle, solved as a structure by PyNite, loaded with each item."""
    from Pynite import FEModel3D

    items, axle = cart(case)
    gross, centre = gross_and_centre(items)
    far = max(*(item.back for item in items), axle) + 0.1
    beam = FEModel3D()
    beam.add_material("steel", 200e9, 77e9, 0.3, 7850.0)
    beam.add_section("rail", 0.01, 1e-4, 1e-4, 1e-4)
    for name, station in (("ball", 0.0), ("axle", axle), ("tail", far)):
        beam.add_node(name, station, 0.0, 0.0)
    beam.add_member("drawbar", "ball", "axle", "steel", "rail")
    beam.add_member("overhang", "axle", "tail", "steel", "rail")
    beam.def_support("ball", True, True, True, True, False, False)
    beam.def_support("axle", False, True, True, False, False, False)
    for item in items:
        member, at = ("drawbar", item.back) if item.back <= axle else ("overhang", item.back - axle)
        beam.add_member_pt_load(member, "Fy", -item.mass, at)
    beam.analyze_linear(check_statics=False)
    tongue = beam.nodes["ball"].RxnFY["Combo 1"]
    on_axle = beam.nodes["axle"].RxnFY["Combo 1"]
    assert balance.tongue_load(gross=gross, centre=centre, axle=axle) == pytest.approx(tongue, rel=1e-9)
    assert balance.axle_load(gross=gross, centre=centre, axle=axle) == pytest.approx(on_axle, rel=1e-9)
    assert balance.tongue_share(centre, axle) == pytest.approx(tongue / gross, rel=1e-9)


def test_a_torsion_tandem_is_a_rigid_beam_on_two_springs() -> None:
    """Solved by PyNite with the ball node lifted: what each spring gains or loses."""
    from Pynite import FEModel3D

    stiffness, lift, spacing, axle = 175e3, 0.05, 0.86, 3.3
    beam = FEModel3D()
    beam.add_material("rigid", 20e12, 8e12, 0.3, 0.0)
    beam.add_section("rail", 1.0, 1.0, 1.0, 1.0)
    for name, station in (("ball", 0.0), ("front", axle - spacing / 2), ("rear", axle + spacing / 2)):
        beam.add_node(name, station, 0.0, 0.0)
    beam.add_member("drawbar", "ball", "front", "rigid", "rail")
    beam.add_member("between", "front", "rear", "rigid", "rail")
    beam.def_support("ball", True, True, True, True, False, False)
    for name in ("front", "rear"):
        beam.def_support(name, False, False, True, False, False, False)
        beam.def_support_spring(name, "DY", stiffness)
    beam.def_node_disp("ball", "DY", lift)
    beam.analyze_linear(check_statics=False)
    inputs = {"stiffness": stiffness, "hitch_high": lift, "spacing": spacing, "axle": axle}
    shifts = {name: -stiffness * beam.nodes[name].DY["Combo 1"] for name in ("front", "rear")}
    assert balance.tandem_front_shift(**inputs) == pytest.approx(shifts["front"], rel=1e-6)
    assert balance.tandem_rear_shift(**inputs) == pytest.approx(shifts["rear"], rel=1e-6)


def test_a_level_hitch_shifts_nothing_between_tandem_axles() -> None:
    inputs = {"stiffness": 175e3, "hitch_high": 0.0, "spacing": 0.86, "axle": 3.3}
    assert balance.tandem_front_shift(**inputs) == 0.0
    assert balance.tandem_rear_shift(**inputs) == 0.0


def test_yaw_radius_of_joined_boxes_is_that_of_the_plane_shape() -> None:
    """Three boxes of one thickness seen from above, as a plane section solved by sectionproperties."""
    from sectionproperties.analysis import Section
    from sectionproperties.pre.library import rectangular_section

    boxes = [(2.4, 1.5, 0.0, 0.0), (0.8, 0.5, -1.6, 0.0), (0.5, 0.6, 0.4, 1.05)]
    placed = [
        rectangular_section(d=width, b=length).shift_section(x - length / 2, y - width / 2)
        for length, width, x, y in boxes
    ]
    shape = placed[0] + placed[1] + placed[2]
    section = Section(shape.create_mesh(mesh_sizes=[0.05]))
    section.calculate_geometric_properties()
    along, across, _ = section.get_ic()
    radius = math.sqrt((along + across) / section.get_area())

    masses = [length * width for length, width, _, _ in boxes]
    gross = math.fsum(masses)
    centre = math.fsum(mass * box[2] for mass, box in zip(masses, boxes, strict=True)) / gross
    across_centre = math.fsum(mass * box[3] for mass, box in zip(masses, boxes, strict=True)) / gross
    inertia = math.fsum(
        balance.yaw_inertia_term(
            mass=mass,
            station=x,
            centre=centre,
            across=y,
            across_centre=across_centre,
            length=length,
            width=width,
        )
        for mass, (length, width, x, y) in zip(masses, boxes, strict=True)
    )
    assert balance.yaw_radius(inertia, gross) == pytest.approx(radius, rel=1e-6)


def test_spreads_agree_with_random_carts() -> None:
    """400,000 carts drawn at random; a tenth of a percent is what so many draws are good for, and more."""
    items, axle = cart("trailer-rollup-uncertainty")
    gross, centre = gross_and_centre(items)
    share = balance.tongue_share(centre, axle)
    draw = np.random.default_rng(20240).normal
    masses = np.array([draw(item.mass, item.mass_spread, 400_000) for item in items])
    stations = np.array([draw(item.back, item.back_spread, 400_000) for item in items])
    drawn_gross = masses.sum(axis=0)
    drawn_share = 1 - (masses * stations).sum(axis=0) / drawn_gross / axle
    drawn_tongue = drawn_gross * drawn_share

    of_gross = balance.mass_spread_of(math.fsum(balance.gross_variance(item.mass_spread) for item in items))
    of_tongue = balance.mass_spread_of(
        math.fsum(
            balance.tongue_variance(
                mass=item.mass,
                station=item.back,
                mass_spread=item.mass_spread,
                station_spread=item.back_spread,
                axle=axle,
            )
            for item in items
        )
    )
    of_share = balance.share_spread_of(
        math.fsum(
            balance.share_variance(
                mass=item.mass,
                station=item.back,
                mass_spread=item.mass_spread,
                station_spread=item.back_spread,
                gross=gross,
                share=share,
                axle=axle,
            )
            for item in items
        )
    )
    assert of_gross == pytest.approx(drawn_gross.std(), rel=0.005)
    # First-order variances leave out products of two spreads: 0.6 % for this cart.
    assert of_tongue == pytest.approx(drawn_tongue.std(), rel=0.01)
    assert of_share == pytest.approx(drawn_share.std(), rel=0.01)
    for deviations, percent in ((-1.644854, 5), (1.644854, 95)):
        band = balance.share_at(share=share, spread=of_share, deviations=deviations)
        assert band == pytest.approx(np.percentile(drawn_share, percent), abs=0.0005)


def test_exactly_known_items_leave_no_spread() -> None:
    known = {"mass": 80.0, "station": 2.0, "mass_spread": 0.0, "station_spread": 0.0, "axle": 3.0}
    assert balance.tongue_variance(**known) == 0.0
    assert balance.share_variance(**known, gross=1000.0, share=0.1) == 0.0


def test_an_item_over_the_axle_cannot_change_the_tongue_by_its_mass() -> None:
    over = {"mass": 80.0, "station": 3.0, "mass_spread": 8.0, "station_spread": 0.0, "axle": 3.0}
    assert balance.tongue_variance(**over) == 0.0
    assert balance.tongue_change_when_added(mass=80.0, station=3.0, axle=3.0) == 0.0


def test_changes_of_tongue_load_are_those_of_the_whole_roll_up() -> None:
    items, axle = cart("trailer-rollup-road-ready")
    gross, centre = gross_and_centre(items)
    before = balance.tongue_load(gross=gross, centre=centre, axle=axle)
    added = [*items, Item(90.0, 3.6)]
    more, there = gross_and_centre(added)
    change = balance.tongue_load(gross=more, centre=there, axle=axle) - before
    assert balance.tongue_change_when_added(mass=90.0, station=3.6, axle=axle) == pytest.approx(
        change, rel=1e-9
    )
    moved = [*items[:-1], Item(items[-1].mass, items[-1].back + 0.4)]
    same, back = gross_and_centre(moved)
    change = balance.tongue_load(gross=same, centre=back, axle=axle) - before
    assert balance.tongue_change_when_moved(mass=items[-1].mass, moved=0.4, axle=axle) == pytest.approx(
        change
    )


def test_the_axle_for_a_share_gives_that_share() -> None:
    axle = balance.axle_for_share(centre=2.6, share=0.125)
    assert balance.tongue_share(centre=2.6, axle=axle) == pytest.approx(0.125)
    assert balance.axle_for_share(centre=2.6, share=0.0) == 2.6


def test_a_centre_behind_the_axle_lifts_the_tongue() -> None:
    assert balance.tongue_load(gross=1000.0, centre=3.1, axle=3.0) < 0
    assert balance.tongue_share(centre=3.1, axle=3.0) < 0


def test_wheels_carry_the_axle_and_turn_about_the_centre_line() -> None:
    wheels = {"axle_load": 900.0, "gross": 1020.0, "across": 0.04, "track": 1.5}
    right, left = balance.right_wheels(**wheels), balance.left_wheels(**wheels)
    assert right + left == pytest.approx(900.0)
    # The ball carries no roll: the wheels alone balance the offset of the whole mass.
    assert (right - left) * 1.5 / 2 == pytest.approx(1020.0 * 0.04)


@pytest.mark.parametrize("height", [0.7, 1.0, 1.4])
@pytest.mark.parametrize("angle", [0.1, 0.25])
def test_the_height_found_by_raising_the_tongue_is_the_height_put_in(height: float, angle: float) -> None:
    """Turn the trailer about its axle, read the ball load from moments, and ask for the height back."""
    gross, axle, ahead, wheel, ball = 1000.0, 2.7, 0.2, 0.33, 0.46
    turn = np.array([[math.cos(angle), math.sin(angle)], [-math.sin(angle), math.cos(angle)]])
    centre_back = (turn @ [-ahead, height - wheel])[0]
    ball_back = (turn @ [-axle, ball - wheel])[0]
    reading = gross * centre_back / ball_back
    found = balance.centre_height(
        axle_height=wheel,
        centre_ahead=ahead,
        raised_tongue=reading,
        gross=gross,
        axle=axle,
        ball_height=ball,
        angle=angle,
    )
    assert found == pytest.approx(height, rel=1e-9)


def test_a_board_with_the_tongue_at_the_scale_reads_it_straight() -> None:
    assert balance.tongue_on_lever(reading=90.0, board=1.2, tongue_from_pivot=1.2) == 90.0


def test_the_load_that_tips_leaves_nothing_on_the_ball() -> None:
    gross, centre, axle, behind = 1110.0, 2.5, 2.7, 1.27
    tongue = balance.tongue_load(gross=gross, centre=centre, axle=axle)
    load = balance.rear_load_that_tips(tongue_load=tongue, axle=axle, behind=behind)
    left = tongue + balance.tongue_change_when_added(mass=load, station=axle + behind, axle=axle)
    assert left == pytest.approx(0.0, abs=1e-9)


def test_at_the_tipping_speed_the_wind_balances_the_weight() -> None:
    inputs = {"exposure": 0.85, "terrain": 1.0, "direction": 0.85}
    resisting = balance.resisting_moment(mass=900.0, track=1.52, gravity=9.80665)

    def overturning(speed: float) -> float:
        pressure = balance.velocity_pressure(speed=speed, **inputs)
        force = balance.wind_force(pressure=pressure, gust_factor=0.85, force_coefficient=1.4, area=5.2)
        return balance.overturning_moment(force, arm=1.5)

    tips = balance.tipping_speed(speed=25.0, overturning=overturning(25.0), resisting=resisting)
    assert overturning(tips) == pytest.approx(resisting)


def test_what_holds_against_wind_is_the_roll_threshold_with_the_ball_on_the_ground() -> None:
    place = {"track": 1.8, "across": -0.06, "centre": 2.6, "axle": 3.0}
    share = balance.coupled_roll_threshold_off_centre(**place, height=1.3, ball_height=0.0)
    assert balance.standing_span(**place) == pytest.approx(2 * 1.3 * share)
    middle = {**place, "across": 0.0, "centre": 3.0}
    assert balance.standing_span(**middle) == 1.8


def test_the_wind_constant_is_that_of_the_customary_form() -> None:
    """0.00256 psf for each mph squared; both constants are rounded to three figures."""
    customary = 0.00256 * units.factor("psf", "pressure")[1] / units.factor("mph", "speed")[1] ** 2
    here = balance.velocity_pressure(speed=1.0, exposure=1.0, terrain=1.0, direction=1.0)
    assert here == pytest.approx(customary, rel=0.002)


def test_the_load_index_formula_is_close_to_its_table() -> None:
    for row in data.table("towing/load_index"):
        tabled = float(units.read(row["load"], "mass"))
        assert balance.load_index_load(float(row["index"])) == pytest.approx(tabled, rel=0.015)


def test_every_row_of_the_tire_chart_fits_a_power_between_half_and_two_thirds() -> None:
    """The chart's own scatter is 0.54 to 0.64 from a size's first row to its others."""
    first: dict[str, tuple[float, float]] = {}
    for row in data.table("towing/st_tires"):
        if row["source"] != "st-tire-chart":
            continue
        load, pressure = (
            float(units.read(row["load"], "mass")),
            float(units.read(row["pressure"], "pressure")),
        )
        low = first.setdefault(row["size"], (load, pressure))
        if low != (load, pressure):
            exponent = balance.tire_pressure_exponent(
                load=low[0], full_load=load, pressure=low[1], full_pressure=pressure
            )
            assert 0.535 < exponent < 0.645, row
            again = balance.tire_load_at_pressure(
                load=load, pressure=low[1], full_pressure=pressure, exponent=exponent
            )
            assert again == pytest.approx(low[0])
    assert len(first) == 7


def test_a_tire_at_its_full_pressure_carries_its_full_load() -> None:
    assert (
        balance.tire_load_at_pressure(load=975.0, pressure=448e3, full_pressure=448e3, exponent=0.58) == 975.0
    )


def test_a_coupling_between_equal_masses_feels_half_of_either() -> None:
    assert balance.coupling_pull(tow_vehicle=1000.0, trailer=1000.0, gravity=9.81) == pytest.approx(4905.0)
    # A very heavy tow vehicle feels the whole weight of the trailer: its D value tends to g times its mass.
    assert balance.coupling_pull(tow_vehicle=1e9, trailer=1000.0, gravity=9.81) == pytest.approx(
        9810.0, rel=1e-5
    )


def test_stopping_is_uniform() -> None:
    deceleration = balance.stopping_deceleration(speed=9.0, distance=12.0)
    time = 9.0 / deceleration
    assert 9.0 * time - deceleration * time**2 / 2 == pytest.approx(12.0)
