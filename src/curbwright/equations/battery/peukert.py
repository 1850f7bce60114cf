"""The old law of discharge: for one steady current only, shown beside the kinetic battery.

A battery is rated in ampere-hours over a time. The law holds in the form scaled by that time; without it a
battery of 100 Ah over 20 h would be empty after 14.5 h of the 5 A that it gives for 20 h by its rating.
"""

from numpy import log

from curbwright.figures import equation
from curbwright.quantities import Amperes, Coulombs, Number, Seconds


@equation("battery-monitor-manual:exponent from two rates")
def peukert_exponent(
    *, current: Amperes, time: Seconds, larger_current: Amperes, shorter_time: Seconds
) -> Number:
    """Exponent from two steady currents and the times they last.

    >>> float(peukert_exponent(current=5.0, time=72000.0, larger_current=10.0, shorter_time=36000.0))
    1.0
    """
    return log(time / shorter_time) / log(larger_current / current)


@equation("battery-monitor-manual:scaled by the rated time")
def peukert_time(*, capacity: Coulombs, rated_time: Seconds, current: Amperes, exponent: Number) -> Seconds:
    """Time that a steady current lasts, from the capacity over its rated time.

    It knows nothing of rest and says more than the full charge at very small currents.

    >>> peukert_time(capacity=360000.0, rated_time=72000.0, current=5.0, exponent=1.25)
    72000.0
    """
    return rated_time * (capacity / (current * rated_time)) ** exponent


@equation("peukert-unscaled:time = capacity / current^exponent", empirical=True)
def unscaled_time(*, capacity: Coulombs, current: Amperes, exponent: Number) -> Seconds:
    """Time by the unscaled form, wrong for a capacity with a rated time: kept to show how wrong.

    Ampere-hours over amperes to the exponent give hours; 3600 s are one hour.

    >>> round(unscaled_time(capacity=360000.0, current=5.0, exponent=1.2) / 3600, 2)
    14.5
    """
    return capacity / 3600 / current**exponent * 3600
