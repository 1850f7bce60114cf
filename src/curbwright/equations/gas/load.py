"""Load: what burns by the hour, what that comes to in a day, burners high above the sea, their orifices."""

from math import ceil

from numpy import maximum, minimum, pi

from curbwright.figures import equation, procedure
from curbwright.quantities import (
    CubicMetresPerSecond,
    Joules,
    JoulesPerCubicMetre,
    Metres,
    Number,
    Pascals,
    Seconds,
    Watts,
)


@equation("convention:heated up just in time for the first customer", uncited=True)
def lit_before(opens: Seconds, heat_up: Seconds) -> Seconds:
    """Time of day at which a burner is lit so that it is hot when serving begins.

    >>> lit_before(opens=37800.0, heat_up=1800.0)
    36000.0
    """
    return opens - heat_up


@equation("convention:heated up at full fire", uncited=True)
def hot_from(lit: Seconds, heat_up: Seconds) -> Seconds:
    """Time of day from which a burner only keeps hot and cooks.

    >>> hot_from(lit=36000.0, heat_up=1800.0)
    37800.0
    """
    return lit + heat_up


@equation("convention:a day of serving may end after midnight", uncited=True)
def hours_between(opens: Seconds, closes: Seconds) -> Seconds:
    """Time from one time of day to a later one.

    >>> hours_between(opens=36000.0, closes=54000.0)
    18000.0
    """
    return closes - opens


@equation("convention:a day of serving may end after midnight", uncited=True)
def on_the_next_day(time: Seconds, day: Seconds) -> Seconds:
    """A time of day after midnight, counted from the midnight before.

    >>> on_the_next_day(time=3600.0, day=86400.0)
    90000.0
    """
    return time + day


@equation("energy:mean of a stepped load", uncited=True)
def mean_input(
    *, input: Watts, busy: Number, lit: Seconds, hot: Seconds, out: Seconds, start: Seconds, end: Seconds
) -> Watts:  # fmt: skip
    """Gas that one thing burns on average between two times of day: full fire until hot, a share of it after.

    >>> float(mean_input(input=20000.0, busy=0.5, lit=1800.0, hot=2700.0, out=9000.0, start=0.0, end=3600.0))
    7500.0
    """
    return (
        input
        * (
            maximum(0, minimum(hot, end) - maximum(lit, start))
            + busy * maximum(0, minimum(out, end) - maximum(hot, start))
        )
        / (end - start)
    )


@equation("energy:power over time")
def energy_over(*, load: Watts, start: Seconds, end: Seconds) -> Joules:
    """Heat of the gas burned between two times of day.

    >>> energy_over(load=20000.0, start=3600.0, end=7200.0)
    72000000.0
    """
    return load * (end - start)


@equation("trade-practice:a reserve is never planned on", uncited=True)
def with_reserve(energy: Joules, reserve: Number) -> Joules:
    """Gas to carry so that a share of it is left over.

    >>> with_reserve(energy=80.0, reserve=0.2)
    100.0
    """
    return energy / (1 - reserve)


@equation("convention:counted in bottles", uncited=True)
def in_bottles(energy: Joules, each: Joules) -> Number:
    """An amount of gas counted in bottles.

    >>> in_bottles(energy=600.0, each=400.0)
    1.5
    """
    return energy / each


@procedure("convention:counted in bottles", uncited=True)
def whole_bottles(bottles: Number) -> Number:
    """The number of bottles, rounded up: nobody sells a part of one (a millionth over does not count).

    >>> whole_bottles(bottles=1.2)
    2.0
    """
    return float(ceil(bottles - 1e-6))


@equation("trade-practice:what is left of what was aboard", uncited=True)
def share_left(aboard: Joules, used: Joules) -> Number:
    """Share of the gas aboard that is left; less than nothing where there was too little.

    >>> share_left(aboard=400.0, used=100.0)
    0.75
    """
    return 1 - used / aboard


@equation("nfpa-54-orifice-annex:4 % for each 1,000 ft above the sea, from 2,000 ft", uncited=True)
def derated_from_sea(*, input: Watts, altitude: Metres, share: Number, step: Metres) -> Watts:
    """Input of a burner for its altitude, less a share for every step above the sea: the safer reading.

    >>> round(derated_from_sea(input=20000.0, altitude=1500.0, share=0.04, step=300.0), 6)
    16000.0
    """
    return input * (1 - share * altitude / step)


@equation("altitude-guide:4 % for each 1,000 ft above 2,000 ft")
def derated_from_base(*, input: Watts, altitude: Metres, base: Metres, share: Number, step: Metres) -> Watts:
    """Input of a burner for its altitude, less a share for every step above a base: the other reading.

    >>> round(derated_from_base(input=20000.0, altitude=1500.0, base=600.0, share=0.04, step=300.0), 6)
    17600.0
    """
    return input * (1 - share * (altitude - base) / step)


@equation("convention:one burner of several", uncited=True)
def each_burner(input: Watts, burners: Number) -> Watts:
    """Input of one of several equal burners.

    >>> each_burner(input=20000.0, burners=4)
    5000.0
    """
    return input / burners


@equation("energy:volume of gas by its heat", uncited=True)
def flow_of(load: Watts, heat: JoulesPerCubicMetre) -> CubicMetresPerSecond:
    """Gas that burners draw, by volume.

    >>> flow_of(load=9300.0, heat=93e6)
    0.0001
    """
    return load / heat


@equation("plumbing-orifice-table", empirical=True)
def orifice_flow(*, bore: Metres, pressure: Pascals, gravity: Number, factor: Number) -> CubicMetresPerSecond:
    """Gas through an orifice, by the trade's formula in cubic feet an hour, square inches, inches of water.

    ``gravity`` is the gas's own against air, ``factor`` that of the orifice.

    >>> round(orifice_flow(bore=0.0016, pressure=2500.0, gravity=1.5, factor=0.9) * 1e6, 2)
    94.65
    """
    return (
        7.86579072e-06
        * 1658.5
        * factor
        * (pi * bore**2 / 4 / 0.00064516)
        * (pressure / 249.08891 / gravity) ** 0.5
    )


@equation("plumbing-orifice-table", empirical=True, uncited=True)
def orifice_bore(*, flow: CubicMetresPerSecond, pressure: Pascals, gravity: Number, factor: Number) -> Metres:
    """Bore of the orifice that passes a flow: the same formula, solved for the bore.

    >>> round(orifice_bore(flow=94.65e-6, pressure=2500.0, gravity=1.5, factor=0.9), 5)
    0.0016
    """
    return (
        4
        / pi
        * 0.00064516
        * flow
        / (7.86579072e-06 * 1658.5 * factor * (pressure / 249.08891 / gravity) ** 0.5)
    ) ** 0.5
