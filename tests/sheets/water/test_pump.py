"""Operating points, the switch, air gaps, frost, doses and the road: both sides, and what is missing."""

from __future__ import annotations

import pytest

from curbwright.equations import water as eq
from tests.sheets.water.carts import (
    GALLON,
    GPM,
    INCH,
    PIPES,
    POUND,
    PSI,
    PUMP,
    SINKS,
    TANKS,
    TAPS,
    WHOLE,
    figures,
    findings,
    notes,
    sheets,
)


def test_at_an_operating_point_the_pump_gives_what_the_taps_draw() -> None:
    found = figures(*WHOLE)
    for id in ("one_wash", "one_ware", "all"):
        at = f"water.pump.{id}"
        pressure, total = float(found[f"{at}.pressure"]), float(found[f"{at}.flow"])
        rows = [
            (p * PSI, q * GPM)
            for p, q in ((0, 3.2), (10, 2.85), (20, 2.51), (30, 2.17), (40, 1.82), (50, 1.48), (55, 1.3))
        ]
        low, high = next(
            (pair for pair in zip(rows, rows[1:], strict=False) if pressure <= pair[1][0]),
            (rows[-2], rows[-1]),
        )
        curve = low[1] + (high[1] - low[1]) * (pressure - low[0]) / (high[0] - low[0])
        assert total == pytest.approx(curve, rel=1e-9)


def test_the_pressures_along_the_way_add_up() -> None:
    """Pump less suction, shared run, branch and height is what the tap's rating needs for its flow."""
    found = figures(*WHOLE)
    flow = float(found["water.pump.all.flow_ware"])
    water = {"density": found["water.pump.density"], "viscosity": found["water.pump.viscosity"],
             "roughness": found["water.constants.roughness"]}  # fmt: skip

    def lost(pipe: str, through: float) -> float:
        return float(
            eq.run_loss(
                flow=through,
                bore=found[f"water.pump.pipe_{pipe}.bore"],
                length=found[f"water.pipes.{pipe}.length"],
                fittings=found[f"water.pump.pipe_{pipe}.fittings"],
                **water,
            )
        )

    total = float(found["water.pump.all.flow"])
    before = float(found["water.pump.all.pressure"]) - lost("suction", total) - lost("shared", total)
    assert before == pytest.approx(float(found["water.pump.all.tee"]), rel=5e-4)
    at_tap = before - lost("ware", flow) - float(found["water.pump.tap_ware.static"])
    assert at_tap == pytest.approx(60 * PSI * (flow / (2.2 * GPM)) ** 2, rel=2e-3)
    assert at_tap == pytest.approx(float(found["water.pump.pressure_ware"]), rel=2e-3)


def test_more_open_taps_give_less_each() -> None:
    third = '[water.taps.jug]\nsink = "ware"\nflow = "2.2 gpm"\nabove_rim = "6 in"\nspout_bore = "1/2 in"\n' \
            '[water.pipes.jug]\nto = "jug"\nlength = "8 ft"\n'  # fmt: skip
    found = figures(*WHOLE, third)
    one, two, every = (float(found[f"water.pump.{id}.flow_ware"]) for id in ("one_ware", "two", "all"))
    assert one > two > every > 0


def test_a_higher_tank_helps_and_a_higher_tap_hurts() -> None:
    plain = float(figures(*WHOLE)["water.pump.one_ware.flow"])
    tank = figures(
        *WHOLE, swap={'side = "street"\nback = "20 in"': 'side = "street"\nback = "20 in"\nabove = "40 in"'}
    )
    assert float(tank["water.pump.one_ware.flow"]) > plain
    tap = figures(*WHOLE, swap={'sink = "ware"': 'sink = "ware"\nabove = "80 in"'})
    assert float(tap["water.pump.one_ware.flow"]) < plain


def test_the_makers_rows_win_over_the_catalogues() -> None:
    rows = 'rows = [["0 psi", "1.5 gpm", "2 A"], ["35 psi", "0.9 gpm", "4 A"]]\n[water.accumulator]'
    found = figures(*WHOLE, swap={"[water.accumulator]": rows})
    assert float(found["water.pump.one_ware.flow"]) / GPM < 1.3
    assert not any(
        "assumed" in str(one.origin) and "rows" in id
        for id, one in found.items()
        if "rows" in id and one.origin.assumed
    )


@pytest.mark.parametrize(
    "rows", ['[["0 psi", "3 gpm", "3 A"]]', '[["0 psi", "2 gpm", "3 A"], ["10 psi", "2.5 gpm", "4 A"]]']
)
def test_a_curve_that_cannot_be_used_is_told_not_guessed(rows: str) -> None:
    untold = findings(*WHOLE, swap={"[water.accumulator]": f"rows = {rows}\n[water.accumulator]"})[
        "water.tap_pressure"
    ]
    assert untold.verdict == "cannot tell"
    assert untold.missing == ("water.pump.rows",)


def test_a_small_tap_makes_the_pump_cycle_between_its_pressures() -> None:
    found = figures(*WHOLE, swap={'flow = "1 gpm"': 'flow = "0.5 gpm"'})
    assert float(found["water.pump.one_wash.pressure"]) > 55 * PSI
    drawn = float(found["water.pump.one_wash.cycled_wash"]) / GPM
    assert 0.5 * (40 / 60) ** 0.5 * 0.95 < drawn < 0.5 * (55 / 60) ** 0.5
    assert float(found["water.pump_flow_one_tap"]) / GPM == pytest.approx(drawn)
    assert "water.pump.over_switch_bare" not in found


def test_without_an_accumulator_that_is_a_finding() -> None:
    bare = PUMP.partition("[water.accumulator]")[0]
    parts = (SINKS, TANKS, bare, TAPS, PIPES)
    small = findings(*parts, swap={'flow = "1 gpm"': 'flow = "0.5 gpm"'})["water.chatter"]
    assert small.verdict == "fail"
    wide = findings(*parts, swap={'flow = "1 gpm"': 'flow = "2.2 gpm"'})["water.chatter"]
    assert wide.verdict == "pass"


@pytest.mark.parametrize(("volume", "verdict"), [("1.2 gal", "pass"), ("1 gal", "fail")])
def test_a_larger_accumulator_spares_the_pump(volume: str, verdict: str) -> None:
    """15 times the flow at cut-in over the drawdown: 1.82 gpm, 20.7 % of the volume."""
    found = findings(*WHOLE, swap={'volume = "1.2 gal"': f'volume = "{volume}"'})["water.starts"]
    assert found.verdict == verdict
    per_hour = 15 * 1.82 / (0.20737 * float(volume.split()[0]))
    assert float(found.provided or 0) * 3600 == pytest.approx(per_hour, rel=1e-3)


@pytest.mark.parametrize(("asked", "verdict"), [("0.5 gpm", "pass"), ("1 gpm", "fail")])
def test_the_place_may_ask_for_a_flow(asked: str, verdict: str) -> None:
    assert findings(*WHOLE, f'[place]\ntap_flow = "{asked}"\n')["water.tap_flow"].verdict == verdict
    assert findings(*WHOLE)["water.tap_flow"].verdict == "not applicable"


@pytest.mark.parametrize(("asked", "verdict"), [("8 psi", "pass"), ("40 psi", "fail")])
def test_the_place_may_ask_for_a_pressure(asked: str, verdict: str) -> None:
    assert findings(*WHOLE, f'[place]\ntap_pressure = "{asked}"\n')["water.tap_pressure"].verdict == verdict


def test_narrow_pipe_makes_the_water_fast() -> None:
    assert findings(*WHOLE)["water.speed"].verdict == "pass"
    narrow = PIPES.replace('to = "taps"', 'to = "taps"\nbore = "0.2 in"')
    assert findings(SINKS, TANKS, PUMP, TAPS, narrow)["water.speed"].verdict == "fail"


def test_a_day_takes_watt_hours_not_kilowatt_hours() -> None:
    found = figures(*WHOLE)
    need, flow = float(found["water.fresh_need"]), float(found["water.pump.one_wash.cycled_given"])
    watts = 12 * float(found["water.pump.one_wash.cycled_current"])
    assert float(found["water.pump_energy_day"]) == pytest.approx(need / flow * watts)
    assert 10 < float(found["water.pump_energy_day"]) / 3600 < 80


@pytest.mark.parametrize(
    ("left_out", "settled_by"),
    [(PIPES, "water.pipes"), (TAPS, "water.taps"), ('length = "8 ft"', "water.pipes.ware.length")],
)
def test_what_the_network_lacks_is_told(left_out: str, settled_by: str) -> None:
    parts = [part for part in WHOLE if part != left_out]
    if left_out == TAPS:
        parts.remove(PIPES)
    swap = {left_out: ""} if left_out not in WHOLE else None
    untold = findings(*parts, swap=swap)["water.tap_pressure"]
    assert untold.verdict == "cannot tell"
    assert settled_by in (*untold.missing, untold.reason)


@pytest.mark.parametrize(("above", "verdict"), [("1 in", "pass"), ("7/8 in", "fail")])
def test_a_spout_ends_an_inch_above_the_rim(above: str, verdict: str) -> None:
    found = findings(*WHOLE, swap={'above_rim = "4 in"': f'above_rim = "{above}"'})
    assert found["water.air_gap.wash"].verdict == verdict
    assert found["water.air_gap.ware"].verdict == "pass"


def test_a_hose_needs_a_breaker() -> None:
    hose = {'sink = "ware"': 'sink = "ware"\nhose = true'}
    assert findings(*WHOLE, swap=hose)["water.air_gap.ware"].verdict == "fail"
    guarded = {'sink = "ware"': 'sink = "ware"\nhose = true\nbreaker = true'}
    assert "water.air_gap.ware" not in findings(*WHOLE, swap=guarded)


def test_frost_is_told_with_what_lasts_how_long() -> None:
    assert findings(*WHOLE)["water.frost"].verdict == "pass"
    cold = '[pitch]\nlow = "20 °F"\n'
    wrapped = PIPES.replace('to = "ware"', 'to = "ware"\ninsulation = "1/2 in"')
    worked = sheets(SINKS, TANKS, PUMP, TAPS, wrapped, cold)
    assert findings(*WHOLE, cold)["water.frost"].verdict == "fail"
    pipe = float(worked.figures["water.frost.pipe_ware"]) / 60
    assert 30 < pipe < 60
    assert float(worked.figures["water.frost.tank_fresh"]) > 24 * 3600
    assert any("bare" in note for note in notes(worked, "water"))


def test_the_dose_covers_tank_and_lines() -> None:
    found = figures(*WHOLE)
    whole = float(found["water.dose.volume"])
    lines = ((3 + 5 + 8) * 1.178 + 6 * 0.640) / 128
    assert whole / GALLON == pytest.approx(50 + lines, abs=1e-3)
    assert float(found["water.dose.bleach"]) == pytest.approx(50e-6 * whole / 0.06)
    assert float(found["water.dose.by_rule"]) * 1e6 == pytest.approx(53.3, abs=0.1)


def test_a_tap_knocked_open_empties_the_tank_and_moves_the_tongue() -> None:
    found = figures(*WHOLE)
    flow = float(found["water.road.flow"])
    assert float(found["water.road.lost"]) == pytest.approx(min(50 * GALLON, flow * 30 * 60))
    mass = float(found["water.road.mass"])
    axle = (48 + 70) * INCH
    middles = {"fresh": 20 + 40 / 2, "waste": 66 + 44 / 2}
    moved = (middles["waste"] - middles["fresh"]) * INCH
    assert float(found["water.road.change"]) == pytest.approx(-mass * moved / axle)
    assert float(found["water.road.gave"]) == pytest.approx(
        mass * (1 - (48 + middles["fresh"]) * INCH / axle)
    )


def test_thirty_gallons_moved_four_feet_back_take_a_hundred_pounds_off_the_tongue() -> None:
    """Coupler to axle 120 in, water 48 in back: 250 lb x 48 / 120."""
    swap = {'ball_to_deck = "48 in"': 'ball_to_deck = "50 in"', 'capacity = "50 gal"': 'capacity = "30 gal"',
            'back = "66 in"': 'back = "66 in"\n', 'drive = "30 min"': 'drive = "60 min"',
            'back = "66 in"\n\n': 'back = "66 in"\n'}  # fmt: skip
    assert float(figures(*WHOLE, swap=swap)["water.road.change"]) / POUND == pytest.approx(-100, abs=0.5)


def test_a_timer_caps_what_is_lost() -> None:
    limit = {'lock = "service key relay"': 'lock = "service key relay"\nrun_limit = "3 min"'}
    found = figures(*WHOLE, swap=limit)
    assert float(found["water.road.lost"]) == pytest.approx(180 * float(found["water.road.flow"]))


@pytest.mark.parametrize(
    ("lock", "verdict"),
    [("none", "fail"), ("switch", "pass"), ("tow plug relay", "pass"), ("service key relay", "pass")],
)
def test_a_pump_that_can_run_on_the_road_is_a_finding(lock: str, verdict: str) -> None:
    assert (
        findings(*WHOLE, swap={'lock = "service key relay"': f'lock = "{lock}"'})["water.road_lock"].verdict
        == verdict
    )


def test_a_lock_that_is_not_told_cannot_be_judged() -> None:
    untold = findings(*WHOLE, swap={'lock = "service key relay"\n': ""})["water.road_lock"]
    assert untold.verdict == "cannot tell"
    assert untold.missing == ("water.pump.lock",)
