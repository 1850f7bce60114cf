"""What heat kills: decimal reduction times that fall tenfold for every z degrees warmer."""

from numpy import log10

from curbwright.figures import equation
from curbwright.quantities import Kelvins, Number, Seconds, TemperatureDifference


@equation("log-linear-kill")
def dwell_at(
    *, reference_time: Seconds, reference: Kelvins, temperature: Kelvins, slope: TemperatureDifference
) -> Seconds:
    """Time at one temperature that kills as many as a known time at another.

    ``slope`` is z: degrees that make it ten times as fast.

    >>> round(dwell_at(reference_time=100.0, reference=330, temperature=340, slope=10), 6)
    10.0
    """
    return reference_time * 10 ** ((reference - temperature) / slope)


@equation("log-linear-kill:decimal time", uncited=True)
def decimal_time(dwell: Seconds, kill: Number) -> Seconds:
    """Time that leaves one in ten alive, from the time of a known kill in powers of ten.

    >>> decimal_time(650, 6.5)
    100.0
    """
    return dwell / kill


@equation("log-linear-kill:decimal time")
def dwell_for_kill(decimal_time: Seconds, kill: Number) -> Seconds:
    """Time for a kill in powers of ten.

    >>> dwell_for_kill(100, 7)
    700
    """
    return decimal_time * kill


@equation("log-linear-kill:kill", uncited=True)
def kill(dwell: Seconds, decimal_time: Seconds) -> Number:
    """Powers of ten killed in a time at one temperature.

    >>> kill(300, 60)
    5.0
    """
    return dwell / decimal_time


@equation("log-linear-kill:slope")
def warming_slope(
    *, cool: Kelvins, cool_time: Seconds, warm: Kelvins, warm_time: Seconds
) -> TemperatureDifference:
    """Degrees that make the kill ten times as fast, from two times that kill as many.

    >>> round(float(warming_slope(cool=336, cool_time=200, warm=341, warm_time=20)), 3)
    5.0
    """
    return (warm - cool) / log10(cool_time / warm_time)
