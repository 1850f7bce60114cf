"""The design day and the sun against limits and the published table of the season."""

from __future__ import annotations

import math

import numpy as np
import pytest

from curbwright import data
from curbwright.equations import cold as eq
from curbwright.units import read

FRACTIONS = [float(row["fraction"]) for row in data.table("cold/design_day")]
MONTHS = [row["month"] for row in data.table("cold/clear_sky")]
NOON = 0.0


def test_a_design_day_runs_between_its_low_and_its_high() -> None:
    high, low = read("95 °F", "temperature"), read("75 °F", "temperature")
    spread = eq.daily_range(high, low)
    hours = [eq.hour_temperature(high=high, daily_range=spread, fraction=one) for one in FRACTIONS]
    assert len(hours) == 24
    assert min(hours) == pytest.approx(low)
    assert max(hours) == pytest.approx(high)
    assert hours.index(min(hours)) + 1 == 5
    assert np.mean(hours) == pytest.approx(read("84.3 °F", "temperature"), abs=0.05)


@pytest.mark.parametrize("month", MONTHS)
def test_the_declination_is_near_the_published_table(month: str) -> None:
    """The table is of whole steps: it has the autumn equinox on the 21st, two days early."""
    day = read(f"2026-{int(month):02d}-21", "date")
    table = data.table("cold/clear_sky").quantity(month, "declination", "angle")
    worked = eq.declination(eq.year_angle(float(day)))
    assert math.degrees(worked) == pytest.approx(math.degrees(table), abs=1.1)


def test_solstices_and_equinoxes_fall_on_their_days() -> None:
    days = np.arange(1.0, 366.0)
    tilt = np.degrees(eq.declination(eq.year_angle(days)))
    assert days[tilt.argmax()] == pytest.approx(float(read("21 June", "date")), abs=1)
    assert days[tilt.argmin()] == pytest.approx(float(read("21 December", "date")), abs=1)
    assert tilt.max() == pytest.approx(23.44, abs=0.05)
    assert tilt.min() == pytest.approx(-23.44, abs=0.05)
    rises, falls = days[1:][(tilt[:-1] < 0) & (tilt[1:] >= 0)], days[1:][(tilt[:-1] >= 0) & (tilt[1:] < 0)]
    assert rises == pytest.approx([float(read("21 March", "date"))], abs=1)
    assert falls == pytest.approx([float(read("23 September", "date"))], abs=1)


def test_the_sun_stands_highest_at_noon_where_latitude_and_season_put_it() -> None:
    latitude, tilt = math.radians(40), math.radians(20.6)
    times = np.arange(0, 86400, 600.0)
    heights = eq.solar_altitude(latitude=latitude, declination=tilt, hour_angle=eq.hour_angle(times, 86400.0))
    assert times[heights.argmax()] == 43200
    assert heights.max() == pytest.approx(math.pi / 2 - latitude + tilt)
    # The day is as long as the half day's angle says: cos H = -tan L tan d.
    half = math.acos(-math.tan(latitude) * math.tan(tilt)) / math.pi
    assert (heights > 0).mean() == pytest.approx(half, abs=0.01)


def test_at_the_equinox_everybody_has_half_a_day() -> None:
    for latitude in (0.0, 0.6, 1.2):
        height = eq.solar_altitude(latitude=latitude, declination=0.0, hour_angle=math.pi / 2)
        assert height == pytest.approx(0.0, abs=1e-12)


def test_a_face_turned_to_a_low_sun_gets_more_than_the_roof_and_under_a_high_one_less() -> None:
    def faces(altitude: float) -> tuple[float, float]:
        direct = float(eq.direct_normal(apparent=1093, extinction=0.186, altitude=altitude))
        level = float(eq.sun_on_top(direct=direct, altitude=altitude, diffuse=0.138))
        side = eq.sun_on_side(direct=direct, altitude=altitude, diffuse=0.138, level=level, ground=0.2)
        return level, float(side)

    low, high = faces(0.3), faces(1.3)
    assert low[1] > low[0]
    assert high[1] < high[0]
    assert faces(1.5)[0] < 1093


def test_without_sun_a_wall_is_as_warm_as_the_air_less_what_it_gives_the_sky() -> None:
    assert eq.sol_air(air=300.0, absorbed=0.05, sun=0.0, to_sky=0.0) == 300.0
    assert eq.sol_air(air=300.0, absorbed=0.05, sun=0.0, to_sky=3.9) == pytest.approx(296.1)


def test_the_standard_form_of_sol_air_is_the_absorbed_sun_over_the_film() -> None:
    """0.30 h·ft²·°F/BTU is a dark face of 0.9 with a film of 3.0 BTU/(h·ft²·°F)."""
    film = read("3 BTU/(h·ft2·°F)", "heat_transfer")
    assert 0.9 / film == pytest.approx(0.30 * 0.17611018368230585)


@pytest.mark.parametrize(
    ("middle", "share"), [(9.0, 0.0), (9.5, 0.5), (10.0, 1.0), (14.0, 1.0), (14.25, 0.75), (15.0, 0.0)]
)
def test_the_share_of_an_hour_in_serving_time(middle: float, share: float) -> None:
    worked = eq.served_share(opens=9.5 * 3600, closes=14.5 * 3600, middle=middle * 3600, hour=3600.0)
    assert worked == pytest.approx(share)


def test_a_cloudy_sky_radiates_more_than_a_clear_one_and_less_than_the_ground() -> None:
    clear = float(eq.sky_infrared(air=293.0, dew_point=283.0, cover=0.0))
    cloudy = float(eq.sky_infrared(air=293.0, dew_point=283.0, cover=10.0))
    assert clear < cloudy < 5.6697e-8 * 293.0**4
