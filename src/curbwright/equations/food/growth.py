"""What grows in food that is neither cold nor hot: published rates, printed as a band and never as a verdict.

Rates are powers of ten a second unless a function says natural logarithm. Without a lag they are on the
safe side: organisms take hours to get going.
"""

from numpy import exp, log, log10, maximum

from curbwright.figures import equation, procedure
from curbwright.quantities import Kelvins, Number, PerSecond, Seconds

STEPS = 400
"""Intervals of the integral along a straight line of cooling."""


@equation("listeria-risk:square root")
def rate_at(*, rate: PerSecond, reference: Kelvins, temperature: Kelvins, least: Kelvins) -> PerSecond:
    """Growth rate at another temperature: the square of how far both are above the least it grows at.

    >>> round(rate_at(rate=1e-6, reference=278.15, temperature=281.15, least=272.15), 9)
    2.25e-06
    """
    return rate * ((temperature - least) / (reference - least)) ** 2


@equation("listeria-risk:observed growth")
def rate_observed(growth: Number, time: Seconds) -> PerSecond:
    """Growth in powers of ten a second, from growth observed in a time.

    >>> rate_observed(2.0, 100)
    0.02
    """
    return growth / time


@equation("listeria-risk:generation time")
def rate_from_doubling(time: Seconds) -> PerSecond:
    """Growth in powers of ten a second, from the time in which numbers double.

    >>> round(float(rate_from_doubling(3600)) * 3600, 4)
    0.301
    """
    return log10(2) / time


@equation("salmonella-chicken", empirical=True)
def salmonella_chicken_rate(temperature: Kelvins) -> PerSecond:
    """Growth of salmonella in chicken, as a natural logarithm, 3.35 to 48 °C.

    >>> round(float(salmonella_chicken_rate(294.25)) * 3600, 3)
    0.598
    """
    return (
        0.0019 * maximum(temperature - 276.5, 0) ** 2
        * (1 - exp(0.29 * (temperature - 321.16)))
        / 3600
    )  # fmt: skip


@equation("salmonella-chicken:powers of ten")
def tenfold_rate(natural: PerSecond) -> PerSecond:
    """A growth rate in powers of ten from one in natural logarithms.

    >>> round(float(tenfold_rate(2.302585)), 4)
    1.0
    """
    return natural / log(10)


@equation("salmonella-processed-meat", empirical=True)
def salmonella_meat_rate(temperature: Kelvins) -> PerSecond:
    """Growth of salmonella in processed meat in powers of ten; none below 5.3 °C.

    >>> round(float(salmonella_meat_rate(294.25)) * 3600, 4)
    0.1142
    """
    return maximum(0.0214 * (temperature - 278.45841), 0) ** 2 / 3600


@equation("ecoli-ground-meat", empirical=True)
def ecoli_rate(temperature: Kelvins) -> PerSecond:
    """Growth of harmful E. coli in ground meat in powers of ten; none below 5.4 °C.

    >>> round(float(ecoli_rate(294.25)) * 3600, 4)
    0.1765
    """
    return maximum(0.0268 * (temperature - 278.5735), 0) ** 2 / 3600


@equation("ecoli-ground-meat:lag", empirical=True)
def ecoli_lag(temperature: Kelvins) -> Seconds:
    """Time before harmful E. coli in ground meat begins to grow, from some degrees above 3.7 °C on.

    >>> round(ecoli_lag(294.25) / 3600, 2)
    16.34
    """
    return 3600 / (-0.0522 + 0.0142 * (temperature - 273.15)) ** 2


@equation("square-root-growth:growth", uncited=True)
def growth(*, rate: PerSecond, time: Seconds, lag: Seconds) -> Number:
    """Growth in powers of ten in a time at one temperature, after a lag.

    >>> round(float(growth(rate=1e-4, time=7200, lag=3600)), 3)
    0.36
    """
    return rate * maximum(time - lag, 0 * time)


@procedure("perfringens-cooling:cardinal temperatures", uncited=True)
def cardinal_rate(
    *, best_rate: PerSecond, least: Kelvins, best: Kelvins, most: Kelvins, temperature: Kelvins
) -> PerSecond:
    """Growth rate at a temperature between the least and the most it grows at, from its best, by a cubic.

    >>> cardinal_rate(best_rate=2.0, least=280, best=316, most=326, temperature=316)
    2.0
    """
    if not least < temperature < most:
        return 0.0 * best_rate
    below = (best - least) * (temperature - best) - (best - most) * (best + least - 2 * temperature)
    return best_rate * (temperature - most) * (temperature - least) ** 2 / ((best - least) * below)


@procedure("perfringens-cooling")
def growth_while_cooling(
    *, best_rate: PerSecond, least: Kelvins, best: Kelvins, most: Kelvins, start: Kelvins, end: Kelvins,
    time: Seconds,
) -> Number:  # fmt: skip
    """Growth in powers of ten along a straight line of cooling with no lag: its rate summed by Simpson.

    ``best_rate`` is a natural logarithm a second.

    >>> round(growth_while_cooling(best_rate=5.64 / 3600, least=283.45, best=316.65, most=326.55,
    ...                            start=330.372, end=294.261, time=7200), 2)
    2.88
    """
    from math import log as natural

    total = 0.0
    for number in range(STEPS + 1):
        weight = 1 if number in (0, STEPS) else 4 if number % 2 else 2
        temperature = start + (end - start) * number / STEPS
        total += weight * cardinal_rate(
            best_rate=best_rate, least=least, best=best, most=most, temperature=temperature
        )
    return total * time / STEPS / 3 / natural(10)
