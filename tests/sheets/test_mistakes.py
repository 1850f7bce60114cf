"""The example of honest mistakes: the check finds every one that the file owns up to."""

from __future__ import annotations

import re
from functools import cache

import pytest

from curbwright import units
from curbwright.build import examples
from curbwright.build.file import load_text
from curbwright.requirements import Finding, judge
from curbwright.sheets import work

INCH, POUND = 0.0254, 0.45359237

# Finding and, where a tape or a plate gives it at once, the figure: worked by hand from the build file.
FOUND = {
    "towing.tongue_share_least.end_of_day": None,
    "towing.tongue_share_least.road_ready": None,
    "towing.tongue_share_low_band.end_of_day": None,
    "towing.gross_rating": None,
    "towing.coupler_rating": None,
    "towing.axle_rating": None,
    "towing.tire_rating": None,
    "towing.tires_cover_axle": 2 * 1400 / 1.10 * (32 / 35) ** 0.64 * POUND,  # soft, then a tenth off
    "towing.sides": None,
    "towing.ball_size": 1.875 * INCH,
    "towing.ball_rating": None,
    "towing.chain_count": 1.0,
    "towing.chain_rating": 2600 * POUND,
    "towing.brakes_by_law": None,
    "towing.breakaway": None,
    "towing.tow_rating": None,
    "towing.tongue_rating": None,
    "towing.roll": None,
    "towing.sway": None,
    "standing.rear": None,
    "standing.wind_closed": None,
    "space.road_width": 104 * INCH,
    "space.deck_length": None,
    "space.overlap.sinks+waste_tank": (24 - 36) * INCH,  # the sink hangs to 25 1/2, the tank stands to 38
    "space.in_room.sinks+rear": (94 - 62 - 37.5) * INCH,
    "space.aisle": None,
    "space.swing.fridge": (68 - 30 - 16 - 27) * INCH,  # the fresh tank stands opposite
    "space.lid.cold_chest": (56 + 10 - 1 - 34 - 18 - 15) * INCH,
    "space.clear_rear.griddle": -6 * INCH,
    "space.clear_side.griddle": -6 * INCH,
    "space.cold_from_hot.cold_chest": 0.0,
    "space.fryer_flame.fryer": None,
    "space.bottle_outside.bottle_a": (80 - 96) * INCH,
    "space.bottle_opening.bottle_b": 0.8 * INCH,  # from -13 in, 12.2 in across, to the wall at 0
    "space.drain_fall.sinks": None,
    "space.drain_backup.sinks": (36 - 10 - 38) * INCH,
    "space.splash.hand_sink+sinks": -6 * INCH,
    "space.valve_forward.griddle": (25.8 - 30) * INCH,
    "space.doorway.door": 0.0,
    "space.service.waste_tank": None,
    "space.within_grip.high_shelf": (71.1 + 1 - 80) * INCH,
    "space.surface_high.serving_counter": 42 * INCH,
    "space.sill_outside.hatch": 70 * INCH,
    "space.hand_over.hatch": None,
    "gas.full_fire": None,
    "gas.through_the_day": None,
    "gas.day_carried": None,
    "gas.regulator_capacity": None,
    "gas.regulator_stages": 1.0,
    "gas.pipe_size.hose": None,
    "gas.hose_length.hose": 144 * INCH,
    "gas.pressure.fryer": None,
    "gas.pressure_lost": None,
    "gas.propane.fryer": 0.0,
    "gas.filling.bottle_b": (0.42 * 44 - 20) * POUND,
    "gas.hot_bottle": (95 + 36 + 459.67) / 1.8,
    "gas.aboard": 50 * POUND,
    "gas.restraint": 40 * POUND,
    "gas.vent_top": 6 * INCH**2,
    "gas.vent_bottom": 0.0,
    "gas.master_valve": 0.0,
    "exhaust.hood_over_grease": 0.0,
    "battery.rate_said": 0.0,
    "battery.flames": 1.0,
    "battery.vent_outside": 0.0,
    "battery.vent_opening": INCH**2,
    "battery.vent_rv_rule": INCH**2,
    "battery.charge_current.shore": 60.0,
    "water.fresh_day": None,
    "water.waste_day": None,
    "water.fill_bore.fresh_tank": 1.25 * INCH,
    "water.fresh_slope.fresh_tank": 0.0,
    "water.waste_drain.waste_tank": 0.75 * INCH,
    "water.waste_valve.waste_tank": 0.0,
    "water.road_lock": 1.0,
    "water.air_gap.spray": -1 * INCH,
}  # fmt: skip


@cache
def findings() -> dict[str, Finding]:
    return {one.id: one for one in judge(work(load_text(examples.text("mistakes"))))}


@pytest.mark.parametrize(("id", "provided"), FOUND.items())
def test_the_check_finds_the_mistake(id: str, provided: float | None) -> None:
    found = findings()[id]
    assert found.verdict == "fail"
    if provided is not None:
        assert found.provided is not None
        assert float(found.provided) == pytest.approx(provided, abs=1e-9)


def test_every_mistake_that_the_file_owns_up_to_is_in_this_list() -> None:
    remarks = "\n".join(line for line in examples.text("mistakes").splitlines() if line.startswith("#"))
    owned = set(re.findall(r"(?:towing|space|standing|gas|battery|exhaust|water)\.[a-z_]+", remarks))
    assert owned == {".".join(id.split(".")[:2]) for id in FOUND}
    assert len(owned) >= 12


def test_the_drain_of_the_three_sinks_would_have_to_run_uphill() -> None:
    """From a rim at 36: bowl 10, strainer 1 1/2, tailpiece 4, trap 3 1/2 in; the top of the tank is at 38."""
    spare = findings()["space.drain_fall.sinks"].provided
    assert spare is not None
    assert float(spare) < (17 - 38) * INCH


def test_what_is_right_is_left_alone() -> None:
    for id in ("space.road_height", "space.road_length", "space.hand_sink_way", "space.people_clear.server"):
        assert findings()[id].verdict == "pass"
    assert units.read("13 ft 6 in", "length") > float(findings()["space.road_height"].provided or 0)
