"""Stepping a box through a day: it closes its balances, settles where it should, takes many boxes at once."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

import numpy as np
import pytest

from curbwright.equations import cold as eq

LINER, PLATE = 3000.0, 1500.0
FOOD, HEAT = 20.0, 3400.0
INTO_FOOD, INTO_LINER, INTO_PLATE = 3.0, 8.0, 5.0
WHOLE = 0.684
LATENT = 333600.0


@dataclass
class Run:
    """A box stepped with the equations of state; every heat that passes is counted."""

    step: float = 60.0
    ice: Any = 0.0
    power: bool = True
    liner: Any = 277.0
    food: Any = 276.0
    plate: Any = 268.0
    running: Any = 0.0
    since: Any = 1e9
    came_in: Any = 0.0
    taken_out: Any = 0.0
    air: Any = field(default=276.0)

    def go(self, seconds: float, around: Any, heat: Any = 0.0) -> Run:
        outer = eq.outer_conductance(WHOLE, INTO_LINER)
        for _ in range(round(seconds / self.step)):
            contact = np.where(np.asarray(self.ice) > 0, 2.0, 0.0)
            self.air = eq.air_temperature(
                food_contact=INTO_FOOD, food=self.food, liner_contact=INTO_LINER, liner=self.liner,
                plate_contact=INTO_PLATE, plate=self.plate, ice_contact=contact, melting=273.15, heat=heat,
            )  # fmt: skip
            started = eq.thermostat(
                running=self.running, sensed=self.air, middle=276.15, swing=2.0, since=self.since, rest=180.0
            )
            now = started if self.power else 0.0 * started
            self.since = np.where((self.running > 0) & (now == 0), 0.0, self.since + self.step)
            self.running = now
            out = 60.0 * now
            self.came_in += (outer * (around - self.liner) + heat) * self.step
            self.taken_out += out * self.step
            self.ice += self.step * eq.ice_rate(
                ice_contact=contact, air=self.air, melting=273.15, latent=LATENT
            )
            liner = eq.liner_rate(
                outer=outer, surroundings=around, liner_contact=INTO_LINER, air=self.air, liner=self.liner,
                capacity=LINER,
            )  # fmt: skip
            plate = eq.plate_rate(
                plate_contact=INTO_PLATE, air=self.air, plate=self.plate, frost=0.0, freezing_out=2.83e6,
                running=now, taken_out=60.0, capacity=PLATE,
            )  # fmt: skip
            food = eq.food_heat_rate(food_contact=INTO_FOOD, air=self.air, food=self.food)
            self.liner = self.liner + self.step * liner
            self.plate = self.plate + self.step * plate
            self.food = self.food + self.step * food / (FOOD * HEAT)
        return self

    @property
    def stored(self) -> Any:
        return LINER * self.liner + PLATE * self.plate + FOOD * HEAT * self.food + LATENT * -self.ice


@pytest.mark.parametrize("ice", [0.0, 2.0])
def test_what_comes_in_less_what_goes_out_is_what_is_stored(ice: float) -> None:
    box = Run(ice=ice)
    before = box.stored
    box.go(86400, around=305.0, heat=2.0)
    assert box.taken_out > 0
    assert box.stored - before == pytest.approx(box.came_in - box.taken_out, rel=1e-9)


def test_over_days_the_duty_is_the_steady_load_over_the_capacity() -> None:
    box = Run(step=20.0).go(86400, around=305.0)
    box.came_in = box.taken_out = 0.0
    box.go(5 * 86400, around=305.0)
    load = eq.heat_through(conductance=WHOLE, outside=305.0, inside=276.15)
    assert box.taken_out / (5 * 86400) == pytest.approx(load, rel=0.02)


@pytest.mark.parametrize("step", [10.0, 30.0])
def test_a_step_of_a_minute_is_short_enough(step: float) -> None:
    fine, minute = Run(step=step).go(86400, around=305.0), Run(step=60.0).go(86400, around=305.0)
    assert minute.taken_out == pytest.approx(fine.taken_out, rel=0.03)
    assert minute.food == pytest.approx(fine.food, abs=0.2)


def test_left_to_itself_the_food_lags_the_one_lump_of_the_sheet() -> None:
    """The lump holds everything at one temperature: its food warms too soon, which is the safe side."""
    box = Run(power=False, liner=276.0, plate=276.0)
    capacity = LINER + PLATE + FOOD * HEAT
    for hours in (2, 6):
        box.go(3600 * (hours - (0 if hours == 2 else 2)), around=308.0)
        lump = eq.temperature_after(
            start=276.0, settles=308.0, time=3600.0 * hours, capacity=capacity, conductance=WHOLE
        )
        assert 0 <= lump - box.food < 1.5
        assert box.food < box.air


def test_it_settles_at_the_air_around_when_nothing_runs() -> None:
    box = Run(power=False).go(40 * 86400, around=300.0)
    assert [box.liner, box.food, box.plate, box.air] == pytest.approx([300.0] * 4, abs=0.05)


def test_many_boxes_at_once_are_the_same_as_one_by_one() -> None:
    around = np.array([295.0, 305.0, 313.0])
    many = Run(
        liner=np.full(3, 277.0), food=np.full(3, 276.0), plate=np.full(3, 268.0), running=np.zeros(3),
        since=np.full(3, 1e9),
    ).go(40000, around=around)  # fmt: skip
    one_by_one = [Run().go(40000, around=float(each)) for each in around]
    assert many.food == pytest.approx([float(one.food) for one in one_by_one])
    assert many.taken_out == pytest.approx([float(one.taken_out) for one in one_by_one])


def test_food_that_freezes_stays_at_its_freezing_point_until_all_its_heat_is_gone() -> None:
    food = {"freezing": 271.0, "latent": 240000.0, "above": 3500.0, "below": 2000.0}
    heats = np.array([-20000.0, 0.0, 1.0, 120000.0, 240000.0, 247000.0])
    found = eq.freezing_food_temperature(heat=heats, **food)
    assert found == pytest.approx([261.0, 271.0, 271.0, 271.0, 271.0, 273.0])
    assert (np.diff(eq.freezing_food_temperature(heat=np.linspace(-1e5, 4e5, 501), **food)) >= 0).all()


def test_a_plate_drier_than_the_air_takes_frost_and_a_moister_one_gives_none_back() -> None:
    assert eq.frost_rate(carried=0.002, air_moisture=0.004, plate_moisture=0.002) == pytest.approx(4e-6)
    assert eq.frost_rate(carried=0.002, air_moisture=0.002, plate_moisture=0.004) == 0.0


def test_the_compressor_rests_before_it_starts_again() -> None:
    box = Run(step=10.0)
    stopped, shortest = None, 1e9
    for moment in range(0, 86400, 10):
        before = float(box.running)
        box.go(10, around=318.0, heat=8.0)
        if before and not box.running:
            stopped = moment
        if box.running and not before and stopped is not None:
            shortest = min(shortest, moment - stopped)
    assert 180 <= shortest < 86400


def test_the_condenser_gets_rid_of_what_is_taken_out_and_what_is_drawn() -> None:
    rejected = eq.heat_rejected(60.0, 40.0)
    assert eq.condenser_temperature(air=308.0, rejected=rejected, conductance=8.0) == pytest.approx(320.5)
    assert eq.power_drawn(running=0.0, compressor=50.0, fans=3.0, control=1.0) == 1.0
