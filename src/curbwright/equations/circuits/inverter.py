"""The inverter: what it draws at any load, never by one efficiency, and what feeds it."""

from curbwright.figures import equation
from curbwright.quantities import Amperes, Joules, Number, PerWatt, Seconds, Volts, Watts


@equation("inverter-loss-curve:P0 + a P + b S squared")
def dc_power(*, tare: Watts, slope: Number, curvature: PerWatt, power: Watts, apparent: Watts) -> Watts:
    """DC power that an inverter draws for an AC load, valid from nothing to its rating.

    ``apparent`` is in VA: copper losses go with the current. At a power factor of 1 it equals the power.

    >>> round(dc_power(tare=10, slope=1.05, curvature=0.0001, power=100, apparent=100), 4)
    116.0
    """
    return tare + slope * power + curvature * apparent**2


@equation("inverter-loss-curve:energy over a time", uncited=True)
def inverter_energy(
    *, tare: Watts, slope: Number, curvature: PerWatt, power: Watts, apparent: Watts, time: Seconds
) -> Joules:
    """DC energy that an inverter draws for a steady AC load over a time.

    >>> round(inverter_energy(tare=10, slope=1.05, curvature=0.0001, power=100, apparent=100, time=10), 3)
    1160.0
    """
    return (tare + slope * power + curvature * apparent**2) * time


@equation("inverter-loss-curve:curvature from the efficiency at the rating")
def curvature_from_full(*, tare: Watts, slope: Number, rating: Watts, efficiency: Number) -> PerWatt:
    """Third term of the loss curve where the second is known.

    >>> round(curvature_from_full(tare=10, slope=1.06, rating=750, efficiency=0.87), 8)
    0.00010146
    """
    return (rating / efficiency - tare - slope * rating) / rating**2


@equation("inverter-loss-curve:curvature through two points", uncited=True)
def loss_curvature(
    *, rating: Watts, part: Number, efficiency_part: Number, efficiency_full: Number, tare: Watts
) -> PerWatt:
    """Third term of the loss curve through the tare and the efficiencies at a part of the rating and at it.

    >>> round(loss_curvature(rating=1000, part=0.3, efficiency_part=0.9, efficiency_full=0.87, tare=12), 8)
    0.00009473
    """
    return (1 / efficiency_full - tare / rating - (1 / efficiency_part - tare / (part * rating))) / (
        (1 - part) * rating
    )


@equation("inverter-loss-curve:slope through two points", uncited=True)
def loss_slope(
    *, rating: Watts, part: Number, efficiency_part: Number, tare: Watts, curvature: PerWatt
) -> Number:
    """Second term of the loss curve through the tare and the efficiency at a part of the rating.

    >>> round(loss_slope(rating=1000, part=0.3, efficiency_part=0.9, tare=12, curvature=0.00009473), 4)
    1.0427
    """
    return 1 / efficiency_part - tare / (part * rating) - curvature * part * rating


@equation("inverter-loss-curve:efficiency")
def efficiency(power: Watts, drawn: Watts) -> Number:
    """AC power over the DC power drawn for it.

    >>> efficiency(power=90.0, drawn=100.0)
    0.9
    """
    return power / drawn


@equation("inverter-loss-curve:best load")
def best_load(tare: Watts, curvature: PerWatt) -> Watts:
    """AC load at which an inverter loses the least share.

    >>> best_load(tare=10.0, curvature=0.0001) / 2
    158.11
    """
    return (tare / curvature) ** 0.5


@equation("inverter-loss-curve:best efficiency")
def best_efficiency(*, tare: Watts, slope: Number, curvature: PerWatt) -> Number:
    """Efficiency of an inverter at its best load.

    >>> round(best_efficiency(tare=10, slope=1.06, curvature=0.000101456), 4)
    0.8899
    """
    return 1 / (slope + 2 * (tare * curvature) ** 0.5)


@equation("inverter-loss-curve:DC current")
def feed_current(*, power: Watts, efficiency: Number, voltage: Volts) -> Amperes:
    """DC current that feeds an inverter giving a power, at the voltage of the moment.

    >>> round(feed_current(power=750, efficiency=0.85, voltage=10.5), 2)
    84.03
    """
    return power / (efficiency * voltage)
