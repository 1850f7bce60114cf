"""The day the boxes stand in: the air outside and in the cart hour by hour, its moisture, the sun."""

from __future__ import annotations

from dataclasses import dataclass, field

from curbwright import data
from curbwright.build.cart import Build
from curbwright.equations import cold as eq
from curbwright.figures import Figure, Worksheet
from curbwright.units import KINDS, calendar

LOWEST_SUN = 0.035
"""Radians above the horizon, two degrees: below it a clear sky's formula says nothing worth having."""
FULL_DAY = 86400.0
SKY = {
    "apparent": ("sun above the air", "heat_flux"),
    "extinction": ("what the air takes of it", "number"),
    "diffuse": ("light of the sky for the sun's", "number"),
    "ground": ("sun the ground throws back", "number"),
}
"""Figures of the clear sky: their names and kinds."""


@dataclass(frozen=True)
class Hour:
    """One hour of the design day, centred on the time that names it."""

    name: str
    key: str
    middle: Figure
    outside: Figure
    served: Figure
    cart: Figure

    def around(self, stands: str) -> Figure:
        """The air round a thing that stands inside the cart or in the open."""
        return self.cart if stands == "inside" else self.outside


@dataclass(frozen=True)
class _Frame:
    """What every hour is worked from."""

    high: Figure
    spread: Figure
    rise: Figure
    hour: Figure
    length: Figure
    times: tuple[Figure, Figure] | None

    def middle(self, label: int) -> float:
        """Seconds of the middle of an hour, on the day before or after where it is served then."""
        at = label * float(self.hour)
        if self.times is None:
            return at
        opens, closes = map(float, self.times)
        shifted = [at + days * float(self.length) for days in (0, 1, -1)]
        return max(shifted, key=lambda middle: min(closes, middle + 1800.0) - max(opens, middle - 1800.0))


@dataclass
class Day:
    """The design day of the pitch."""

    sheet: Worksheet
    hours: tuple[Hour, ...]
    moisture: Figure
    pressure: Figure
    hour: Figure
    length: Figure
    serving: Figure | None
    """Length of the serving time; None where the hours are not given."""
    missing: str
    """The field that would say the serving time, where it is not given."""
    _sun: dict[str, tuple[Figure, Figure] | None] = field(default_factory=dict)

    def warmest(self, stands: str) -> Hour:
        """The first hour with the warmest air."""
        return max(self.hours, key=lambda one: float(one.around(stands)))

    def sun(self, build: Build, hour: Hour) -> tuple[Figure, Figure] | None:
        """Sun on a level and on an upright face at an hour, worked when first asked for; None at night."""
        if hour.key not in self._sun:
            self._sun[hour.key] = _sun(build, hour, self)
        return self._sun[hour.key]


def design_day(build: Build, sheet: Worksheet) -> Day:
    """Work out the air of every hour from the day's high and low, and the serving share of each."""
    pitch = build.pitch
    high = sheet.given(pitch["high"])
    spread = sheet.work("range", "daily range", eq.daily_range, high=high, low=sheet.given(pitch["low"]))
    hour = sheet.tabled("hour", "an hour", 3600.0, "s", source="convention")
    length = sheet.tabled("day", "a day", FULL_DAY, "s", source="convention")
    rise = _rise(build, sheet)
    frame = _Frame(high, spread, rise, hour, length, _serving(build, hour, length, sheet))
    hours = tuple(_hour(row["hour"], row["fraction"], frame, sheet) for row in data.table("cold/design_day"))
    pressure = sheet.work("pressure", "air pressure", eq.pressure_at, altitude=sheet.given(pitch["altitude"]))
    moisture = sheet.work(
        "moisture",
        "moisture of the air, the same all day",
        eq.humidity_ratio,
        saturation=sheet.work(
            "saturation", "vapour pressure of moist air at the high", eq.saturation_pressure, temperature=high
        ),
        humidity=sheet.given(pitch["humidity"]),
        pressure=pressure,
    )
    serving, missing = None, "day.opens" if build.day.opens is None else "day.closes"
    if frame.times is not None:
        opens, closes = frame.times
        serving = sheet.work("serving", "serving time", eq.serving_time, opens=opens, closes=closes)
    return Day(sheet, hours, moisture, pressure, hour, length, serving, missing)


def _rise(build: Build, sheet: Worksheet) -> Figure:
    if build.shell is None:
        return sheet.tabled(
            "rise", "an open cart is as warm as the air outside", 0.0, "delta_degC", source="convention"
        )
    return sheet.given(build.pitch["cart_rise"])


def _serving(build: Build, hour: Figure, length: Figure, sheet: Worksheet) -> tuple[Figure, Figure] | None:
    """Serving from and until, in standard time; None where one of them is not given."""
    day, saving = build.day, build.pitch.daylight_saving
    if day.opens is None or day.closes is None:
        sheet.note("The serving hours are not given: every hour of the day is taken for one.")
        return None
    opens, closes = sheet.given(day["opens"]), sheet.given(day["closes"])
    if float(closes) <= float(opens):
        closes = sheet.work(
            "closes_next", "serving until, the day after", eq.next_day, time=closes, day=length
        )
    ahead = sheet.choice(
        "ahead",
        "hours the clock is ahead of standard time",
        float(saving),
        "pitch.daylight_saving",
        str(saving),
    )
    standard = {
        id: sheet.work(
            f"{id}_standard", name, eq.standard_time, shown="clock", clock=clock, ahead=ahead, hour=hour
        )
        for id, name, clock in (
            ("opens", "serving from, standard time", opens),
            ("closes", "serving until, standard time", closes),
        )
    }
    return standard["opens"], standard["closes"]


def _hour(label: str, fraction: str, frame: _Frame, sheet: Worksheet) -> Hour:
    """One hour: its air outside, how much of it is serving time, its air in the cart."""
    key, name = f"{int(label):02d}", f"{int(label):02d}:00"
    middle = sheet.tabled(
        f"middle_{key}",
        f"middle of the hour {name}",
        frame.middle(int(label)),
        "s",
        source="design-day",
        row=label,
    )
    outside = sheet.work(
        f"outside_{key}", f"air outside at {name}", eq.hour_temperature, high=frame.high,
        daily_range=frame.spread,
        fraction=sheet.tabled(
            f"fraction_{key}", f"fraction of the daily range at {name}", float(fraction), "1",
            source="design-day", row=label,
        ),
    )  # fmt: skip
    if frame.times is None:
        served = sheet.tabled(
            f"served_{key}", f"share of {name} in serving time", 1.0, "1", source="convention"
        )
    else:
        opens, closes = frame.times
        served = sheet.work(
            f"served_{key}", f"share of {name} in serving time", eq.served_share, opens=opens, closes=closes,
            middle=middle, hour=frame.hour,
        )  # fmt: skip
    cart = sheet.work(
        f"cart_{key}", f"air in the cart at {name}", eq.cart_temperature, outside=outside, rise=frame.rise,
        served=served,
    )  # fmt: skip
    return Hour(name, key, middle, outside, served, cart)


def _sun(build: Build, hour: Hour, day: Day) -> tuple[Figure, Figure] | None:
    sheet, key, name = day.sheet, hour.key, hour.name
    tilt, row = _season(build, day)
    angle = sheet.work(
        f"angle_{key}", f"angle of the sun at {name}", eq.hour_angle,
        time=sheet.tabled(f"solar_{key}", f"time of {name}", int(key) * 3600.0, "s", source="convention"),
        day=day.length,
    )  # fmt: skip
    altitude = sheet.work(
        f"altitude_{key}", f"height of the sun at {name}", eq.solar_altitude,
        latitude=sheet.given(build.pitch["latitude"]), declination=tilt, hour_angle=angle,
    )  # fmt: skip
    if float(altitude) < LOWEST_SUN:
        return None
    direct = sheet.work(
        f"direct_{key}", f"sun square on at {name}", eq.direct_normal, apparent=row["apparent"],
        extinction=row["extinction"], altitude=altitude,
    )  # fmt: skip
    top = sheet.work(
        f"sun_top_{key}", f"sun on a level face at {name}", eq.sun_on_top, direct=direct, altitude=altitude,
        diffuse=row["diffuse"],
    )  # fmt: skip
    side = sheet.work(
        f"sun_side_{key}", f"sun on an upright face turned to it at {name}", eq.sun_on_side, direct=direct,
        altitude=altitude, diffuse=row["diffuse"], level=top, ground=row["ground"],
    )  # fmt: skip
    return top, side


def _season(build: Build, day: Day) -> tuple[Figure, dict[str, Figure]]:
    """The sun's declination on the date, and the clear sky of its month."""
    sheet = day.sheet
    date = sheet.given(build.pitch["date"])
    found = sheet.figures()
    if f"{sheet.id}.declination" in found:
        return found[f"{sheet.id}.declination"], {key: found[f"{sheet.id}.sky_{key}"] for key in SKY}
    month = str(calendar.month_and_day(float(date))[0])
    table = data.table("cold/clear_sky")
    row = {
        key: sheet.tabled(
            f"sky_{key}", name, float(table.quantity(month, key, kind)), KINDS[kind].unit, source="clear-sky",
            row=f"month {month}",
        )
        for key, (name, kind) in SKY.items() if key != "ground"
    }  # fmt: skip
    row["ground"] = sheet.tabled(
        "sky_ground", "sun the ground throws back", 0.2, "1", source="trade-practice"
    )
    year = sheet.work("year_angle", "the date as an angle", eq.year_angle, day=date)
    return sheet.work("declination", "declination of the sun", eq.declination, year_angle=year), row
