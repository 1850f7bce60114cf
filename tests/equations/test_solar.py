"""Sun and panels against the library's own functions, against plain geometry, and what must hold."""

from __future__ import annotations

from math import cos, degrees, pi, radians

import numpy as np
import pandas
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pvlib import clearsky, irradiance, pvsystem, temperature
from pvlib.location import Location

from curbwright.equations import solar as eq
from curbwright.equations.solar.sky import calm, clear_day

BOULDER = {"latitude": radians(40), "longitude": radians(-105), "altitude": 1600.0}
JUNE, DECEMBER = 172.0, 355.0
FLAT = {"tilt": 0.0, "azimuth": pi}
WHOLE = {"begins": 0.0, "ends": 86400.0}


def sun(day: float, tilt: float = 0.0, azimuth: float = 180.0, **hours: float) -> float:
    face = {"tilt": radians(tilt), "azimuth": radians(azimuth)}
    return eq.panel_sun(**BOULDER, day=day, zone=-7 * 3600.0, turbidity=3.0, **face, **(hours or WHOLE))


@given(air=st.floats(250, 320), sun=st.floats(0, 1200), wind=st.floats(0, 10), still=st.floats(10, 30))
def test_cells_are_as_warm_as_the_library_has_them(air: float, sun: float, wind: float, still: float) -> None:
    ours = eq.cell_temperature(air=air, sun=sun, still=still, wind=wind) - 273.15
    assert ours == pytest.approx(temperature.faiman(sun, air - 273.15, wind, u0=still), abs=1e-9)


@given(rated=st.floats(50, 1000), sun=st.floats(0, 1200), cell=st.floats(-20, 80), loss=st.floats(0, 0.006))
def test_panels_give_what_the_library_gives(rated: float, sun: float, cell: float, loss: float) -> None:
    warmer = eq.warmer_than_rated(cell=cell + 273.15, rated=298.15)
    ours = eq.panel_power(rated=rated, sun=sun, rated_sun=1000.0, loss=loss, warmer=warmer)
    assert ours == pytest.approx(float(pvsystem.pvwatts_dc(sun, cell, rated, -loss)), abs=1e-9)


@given(st.lists(st.floats(0, 30), min_size=10, max_size=10))
def test_losses_in_a_row_are_the_librarys(percents: list[float]) -> None:
    ours = eq.losses_together(
        **dict(
            zip(
                ("soiling", "shading", "snow", "mismatch", "wiring", "connections", "first_light",
                 "nameplate", "age", "outages"),
                (one / 100 for one in percents), strict=True,
            )
        )
    )  # fmt: skip
    theirs = pvsystem.pvwatts_losses(
        *percents[:3], *percents[3:6], percents[6], percents[7], percents[8], percents[9]
    )
    assert 100 * ours == pytest.approx(float(theirs), abs=1e-9)


def test_a_tilted_panel_sees_what_the_library_says_at_noon() -> None:
    times = pandas.date_range("2025-12-21 12:00", periods=60, freq="min", tz="Etc/GMT+7")
    place = Location(40, -105, "Etc/GMT+7", 1600)
    with calm():
        at = place.get_solarposition(times)
        sky = place.get_clearsky(times, model="ineichen", linke_turbidity=3)
    face = irradiance.get_total_irradiance(
        35, 150, at["apparent_zenith"], at["azimuth"], sky["dni"], sky["ghi"], sky["dhi"]
    )
    ours = sun(DECEMBER, 35, 150, begins=43200.0, ends=46800.0)
    assert ours == pytest.approx(float(face["poa_global"].mean()), rel=1e-9)


def test_turbidity_is_the_librarys_map() -> None:
    with calm():
        theirs = clearsky.lookup_linke_turbidity(pandas.DatetimeIndex(["2025-07-21"], tz="UTC"), 40, -105)
    ours = eq.turbidity_at(latitude=radians(40), longitude=radians(-105), day=202.0)
    assert ours == pytest.approx(float(theirs.iloc[0]))


# ---- what must hold whatever the library does


def test_the_sun_above_the_air_bounds_a_clear_day() -> None:
    """On level ground no clear day passes the sun above the air, from plain geometry."""
    for day in (JUNE, DECEMBER):
        declination = radians(23.44) * cos(2 * pi * (day - 172) / 365)
        hour = np.arccos(np.clip(-np.tan(BOULDER["latitude"]) * np.tan(declination), -1, 1))
        above = (
            1361 / pi * (hour * np.sin(BOULDER["latitude"]) * np.sin(declination)
                         + np.cos(BOULDER["latitude"]) * np.cos(declination) * np.sin(hour))
        )  # fmt: skip
        assert 0.6 * above < sun(day) < 0.85 * above


def test_the_hours_add_up_to_the_day() -> None:
    hours = [sun(JUNE, begins=at * 3600.0, ends=(at + 1) * 3600.0) for at in range(24)]
    assert np.mean(hours) == pytest.approx(sun(JUNE))
    assert hours[0] == 0


def test_the_day_is_even_about_solar_noon() -> None:
    """At its own meridian noon is within a quarter of an hour of the middle of the sun's day."""
    at = clear_day(0.7, radians(-105), 0.0, 105, -7 * 3600.0, 3.0, 0.0, 0.0).level
    middle = float((np.arange(1440) * at).sum() / at.sum())
    assert middle == pytest.approx(720, abs=15)


def test_clock_an_hour_ahead_moves_the_sun_an_hour_later() -> None:
    standard = eq.panel_sun(
        **BOULDER, day=JUNE, zone=-25200.0, turbidity=3.0, **FLAT, begins=36000.0, ends=39600.0
    )
    ahead = eq.panel_sun(
        **BOULDER, day=JUNE, zone=-21600.0, turbidity=3.0, **FLAT, begins=39600.0, ends=43200.0
    )
    assert ahead == pytest.approx(standard, rel=1e-6)


def test_facing_south_gains_in_winter_and_facing_north_loses() -> None:
    assert sun(DECEMBER, 40, 180) > 1.5 * sun(DECEMBER)
    assert sun(DECEMBER, 40, 0) < 0.5 * sun(DECEMBER)
    assert sun(JUNE, 60, 180) < sun(JUNE)


def test_east_in_the_morning_is_west_in_the_afternoon() -> None:
    east, west = sun(JUNE, 30, 90), sun(JUNE, 30, 270)
    assert east == pytest.approx(west, rel=0.02)
    assert sun(JUNE, 30, 90, begins=25200.0, ends=28800.0) > sun(JUNE, 30, 270, begins=25200.0, ends=28800.0)


@pytest.mark.parametrize(
    ("longitude", "hours"), [(-105, -7), (-79, -5), (-90, -6), (0, 0), (151, 10), (-97.4, -6)]
)
def test_standard_time_is_the_nearest_hour(longitude: float, hours: int) -> None:
    assert eq.standard_zone(longitude=radians(longitude)) == hours * 3600


def test_a_day_is_worked_once() -> None:
    arguments = (0.7, -1.8, 0.0, 100, -25200.0, 3.0, 0.0, 0.0)
    first = clear_day(*arguments)
    assert clear_day(*arguments) is first
    with pytest.raises(ValueError, match="read-only"):
        first.level[0] = 1.0


def test_hour_by_hour_is_as_good_as_minute_by_minute() -> None:
    """The sheet works with hourly means: the day's energy differs from the minutes' by less than 0.3 %."""
    panels = {"rated": 400.0, "air": 298.15, "wind": 1.0, "still": 25.0, "loss_per_degree": 0.0037}
    minutes = eq.clear_day_energy(
        **BOULDER, **panels, day=JUNE, zone=-25200.0, turbidity=3.0, losses=0.14, efficiency=0.97
    )
    total = 0.0
    for at in range(24):
        face = sun(JUNE, begins=at * 3600.0, ends=(at + 1) * 3600.0)
        cell = eq.cell_temperature(air=298.15, sun=face, still=25.0, wind=1.0)
        power = eq.panel_power(rated=400.0, sun=face, rated_sun=1000.0, loss=0.0037, warmer=cell - 298.15)
        total += float(eq.to_battery(power=power, sunlit=1.0, loss=0.14, efficiency=0.97, most=1e9)) * 3600
    assert total == pytest.approx(minutes, rel=0.003)


@given(begins=st.floats(0, 80000), time=st.floats(0, 20000), share=st.floats(0, 1))
def test_shade_by_the_hour_adds_up_to_the_shade(begins: float, time: float, share: float) -> None:
    ends = min(begins + time, 86400.0)
    hours = [
        float(eq.shade_share(begins=begins, ends=ends, hour=at * 3600.0, length=3600.0, share=share))
        for at in range(24)
    ]
    assert sum(hours) * 3600 == pytest.approx(share * (ends - begins), abs=1e-6)
    assert all(0 <= one <= share + 1e-12 for one in hours)


@settings(max_examples=50)
@given(order=st.permutations(range(8)))
def test_scenarios_side_by_side_are_the_scenarios_one_by_one(order: list[int]) -> None:
    draw = np.random.default_rng(3)
    columns = {
        "power": draw.uniform(0, 800, 8), "sunlit": draw.uniform(0, 1, 8), "loss": draw.uniform(0, 0.3, 8),
        "efficiency": draw.uniform(0.8, 1, 8), "most": draw.uniform(50, 600, 8),
    }  # fmt: skip
    together = np.asarray(eq.to_battery(**{word: one[order] for word, one in columns.items()}))  # type: ignore[arg-type]
    alone = [float(eq.to_battery(**{word: float(one[n]) for word, one in columns.items()})) for n in order]
    assert together == pytest.approx(alone)


def test_the_controller_passes_no_more_than_it_can() -> None:
    alike = {"sunlit": 1.0, "loss": 0.0, "efficiency": 1.0, "most": 200.0}
    assert float(eq.to_battery(power=150.0, **alike)) == 150
    assert float(eq.to_battery(power=250.0, **alike)) == 200


def test_a_panel_in_the_cold_makes_more_voltage() -> None:
    warm = eq.cold_voltage(open_voltage=24.0, series=2, gain=0.003, colder=0.0)
    assert warm == 48
    assert eq.cold_voltage(open_voltage=24.0, series=2, gain=0.003, colder=40.0) == pytest.approx(48 * 1.12)


def test_the_zenith_of_the_published_case_is_high_summer() -> None:
    zenith = {"zenith": radians(10.56413562), "air_mass": 0.93527685, "turbidity": 3.0, "altitude": 0.0,
              "above_air": 1364.0}  # fmt: skip
    level = eq.clear_direct(**zenith) * cos(zenith["zenith"]) + eq.clear_diffuse(**zenith)
    assert level == pytest.approx(eq.clear_global(**zenith), rel=1e-6)
    assert degrees(zenith["zenith"]) < 11
