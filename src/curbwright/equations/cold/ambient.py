"""The air and the sun round a box: a design day from its high and low, a clear sky, walls in the sun.

Hours are standard time, and taken for solar time: the sun is up to half an hour off across a time zone.
"""

from numpy import arcsin, cos, exp, log, maximum, minimum, pi, sin

from curbwright.figures import equation
from curbwright.quantities import (
    Kelvins,
    Number,
    Radians,
    Seconds,
    SquareMetreKelvinsPerWatt,
    TemperatureDifference,
    WattsPerSquareMetre,
)


@equation("design-day:daily range", uncited=True)
def daily_range(high: Kelvins, low: Kelvins) -> TemperatureDifference:
    """Difference between the day's high and its low.

    >>> daily_range(high=308, low=297)
    11
    """
    return high - low


@equation("design-day:hourly fractions")
def hour_temperature(*, high: Kelvins, daily_range: TemperatureDifference, fraction: Number) -> Kelvins:
    """Temperature at an hour of a design day, from the published fraction of the daily range.

    >>> round(hour_temperature(high=308.15, daily_range=11.1, fraction=0.55), 3)
    302.045
    """
    return high - daily_range * fraction


@equation("convention:standard time", uncited=True)
def standard_time(*, clock: Seconds, ahead: Number, hour: Seconds) -> Seconds:
    """Standard time from the time on the clock, which is so many hours ahead.

    >>> standard_time(clock=46800, ahead=1, hour=3600)
    43200
    """
    return clock - ahead * hour


@equation("convention:an hour's mean stands at its middle", uncited=True)
def served_share(*, opens: Seconds, closes: Seconds, middle: Seconds, hour: Seconds) -> Number:
    """Share of an hour that falls within the serving time.

    >>> float(served_share(opens=37800, closes=55800, middle=36000, hour=3600))
    0.0
    >>> float(served_share(opens=37800, closes=55800, middle=39600, hour=3600))
    1.0
    """
    return maximum(
        0, minimum(1, (minimum(closes, middle + hour / 2) - maximum(opens, middle - hour / 2)) / hour)
    )


@equation("trade-practice:a working cart is warmer than the air outside", uncited=True)
def cart_temperature(*, outside: Kelvins, rise: TemperatureDifference, served: Number) -> Kelvins:
    """Air temperature inside the cart, warmer than outside while it serves.

    >>> cart_temperature(outside=308.0, rise=5.0, served=1.0)
    313.0
    """
    return outside + rise * served


@equation("convention:the year as an angle", uncited=True)
def year_angle(day: Number) -> Radians:
    """Angle of a day of the year, counted from 1, in a year of 365 days.

    >>> round(year_angle(day=183.5), 4)
    3.1416
    """
    return 2 * pi * (day - 1) / 365


@equation("sun-declination", uncited=True)
def declination(year_angle: Radians) -> Radians:
    """Angle of the sun above the equator, by the first terms of its Fourier series.

    >>> round(float(declination(year_angle=3.46)) * 180 / 3.14159265, 2)
    20.64
    """
    return (
        0.006918
        - 0.399912 * cos(year_angle) + 0.070257 * sin(year_angle)
        - 0.006758 * cos(2 * year_angle) + 0.000907 * sin(2 * year_angle)
        - 0.002697 * cos(3 * year_angle) + 0.00148 * sin(3 * year_angle)
    )  # fmt: skip


@equation("solar-geometry:hour angle", uncited=True)
def hour_angle(time: Seconds, day: Seconds) -> Radians:
    """Angle of the sun west of south at a time of the day; negative before noon.

    >>> round(hour_angle(time=54000, day=86400), 4)
    0.7854
    """
    return 2 * pi * (time / day - 0.5)


@equation("solar-geometry:altitude")
def solar_altitude(*, latitude: Radians, declination: Radians, hour_angle: Radians) -> Radians:
    """Height of the sun above the horizon; negative at night.

    >>> round(float(solar_altitude(latitude=0.7, declination=0.36, hour_angle=0.0)), 3)
    1.231
    """
    return arcsin(cos(latitude) * cos(declination) * cos(hour_angle) + sin(latitude) * sin(declination))


@equation("clear-sky:direct normal")
def direct_normal(
    *, apparent: WattsPerSquareMetre, extinction: Number, altitude: Radians
) -> WattsPerSquareMetre:
    """Sun on a face square to it under a clear sky; only for a sun above the horizon.

    >>> round(float(direct_normal(apparent=1093, extinction=0.186, altitude=1.2322)), 1)
    897.4
    """
    return apparent * exp(-extinction / sin(altitude))


@equation("clear-sky:diffuse")
def sun_on_top(*, direct: WattsPerSquareMetre, altitude: Radians, diffuse: Number) -> WattsPerSquareMetre:
    """Sun and sky on a level face under a clear sky.

    >>> round(float(sun_on_top(direct=897.4, altitude=1.2322, diffuse=0.138)), 1)
    970.3
    """
    return direct * (sin(altitude) + diffuse)


@equation("clear-sky:diffuse", uncited=True)
def sun_on_side(
    *, direct: WattsPerSquareMetre, altitude: Radians, diffuse: Number, level: WattsPerSquareMetre,
    ground: Number,
) -> WattsPerSquareMetre:  # fmt: skip
    """Sun, half the sky and half the ground's reflection on an upright face turned to the sun.

    ``level`` is the sun on a level face, ``ground`` the share the ground throws back.

    >>> round(float(sun_on_side(direct=800, altitude=0.6, diffuse=0.138, level=562, ground=0.2)), 1)
    771.7
    """
    return direct * (cos(altitude) + diffuse / 2) + level * ground / 2


@equation("convention:serving time", uncited=True)
def serving_time(opens: Seconds, closes: Seconds) -> Seconds:
    """Length of the serving time.

    >>> serving_time(opens=37800, closes=55800)
    18000
    """
    return closes - opens


@equation("convention:serving past midnight", uncited=True)
def next_day(time: Seconds, day: Seconds) -> Seconds:
    """A time of the day after.

    >>> next_day(time=7200, day=86400)
    93600
    """
    return time + day


@equation("sol-air")
def sol_air(
    *, air: Kelvins, absorbed: SquareMetreKelvinsPerWatt, sun: WattsPerSquareMetre,
    to_sky: TemperatureDifference,
) -> Kelvins:  # fmt: skip
    """Temperature of still air that would heat a wall as much as sun, sky and air do together.

    ``absorbed`` is the share of sunlight the face takes up over its film coefficient; ``to_sky`` what a level
    face loses to the sky.

    >>> round(sol_air(air=308.0, absorbed=0.05, sun=900, to_sky=4.0), 6)
    349.0
    """
    return air + absorbed * sun - to_sky


@equation("sky-infrared", empirical=True)
def sky_infrared(*, air: Kelvins, dew_point: Kelvins, cover: Number) -> WattsPerSquareMetre:
    """Heat radiated down by the sky on a level face; ``cover`` is opaque cloud in tenths.

    >>> round(float(sky_infrared(air=293, dew_point=283, cover=0)), 1)
    340.3
    """
    return (
        5.6697e-8 * air**4 * (0.787 + 0.764 * log(dew_point / 273))
        * (1 + 0.0224 * cover - 0.0035 * cover**2 + 0.00028 * cover**3)
    )  # fmt: skip
