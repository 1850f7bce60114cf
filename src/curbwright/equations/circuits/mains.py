"""120 V supply: continuous load, kitchen demand, generators, and what asks for plan approval."""

from numpy import log10, maximum

from curbwright.figures import equation, procedure
from curbwright.quantities import Amperes, Kelvins, Metres, Number, Watts


@equation("nec-210-20:125 % of a continuous load")
def continuous_current(current: Amperes) -> Amperes:
    """Current that wires and fuses are chosen for where a load runs three hours or longer.

    >>> continuous_current(12)
    15.0
    """
    return 1.25 * current


@equation("nec-210-20:80 % of the rating")
def continuous_limit(rating: Amperes) -> Amperes:
    """Most that may flow for three hours or longer through a breaker or fuse of a rating.

    >>> continuous_limit(15)
    12.0
    """
    return 0.8 * rating


@equation("nec-220-56:demand of kitchen equipment")
def kitchen_demand(*, connected: Watts, factor: Number, two_largest: Watts) -> Watts:
    """Demand of commercial kitchen equipment, never less than its two largest; fans are not in it.

    >>> float(kitchen_demand(connected=4000, factor=0.65, two_largest=2500))
    2600.0
    """
    return maximum(connected * factor, two_largest)


@equation("nec-220-56:table")
def demand_by_table(connected: Watts, factor: Number) -> Watts:
    """Demand of kitchen equipment by the table alone, before the floor of the two largest.

    >>> demand_by_table(connected=4000, factor=0.5)
    2000.0
    """
    return connected * factor


@equation("generator-noise-guide:hard ground, from sound power", empirical=True)
def sound_at(sound_power: Number, distance: Metres) -> Number:
    """Sound pressure level in dB from a small source on hard ground, from its sound power level.

    The 8 dB stand for a half sphere of 1 m; it holds beyond a few sizes of the source, without echoes.

    >>> round(float(sound_at(sound_power=97, distance=10)), 2)
    69.0
    """
    return sound_power - 20 * log10(distance) - 8


@equation("trade-practice:3.5 % a 1000 ft and 1 % a 10 °F over 77 °F", empirical=True, uncited=True)
def derated_power(*, power: Watts, altitude: Metres, air: Kelvins) -> Watts:
    """Power that an engine generator gives high up and in hot air; 304.8 m is 1000 ft, 298.15 K is 77 °F.

    >>> round(float(derated_power(power=2000, altitude=1524, air=298.15)), 3)
    1650.0
    """
    return (
        power * (1 - 0.035 * maximum(altitude, 0) / 304.8) * (1 - 0.01 * maximum(air - 298.15, 0) / 5.5555556)
    )


@equation("trade-practice:propane gives a tenth less", uncited=True)
def on_propane(power: Watts) -> Watts:
    """Power that a gasoline generator gives on propane.

    >>> on_propane(1000)
    900.0
    """
    return 0.9 * power


@procedure("wac-296-150v-0300:(1)(f) to (h)")
def plan_triggers(
    *, supply: Amperes, circuits: Number, other_sources: Number, supply_limit: Amperes, circuit_limit: Number
) -> Number:
    """Count of what asks for approval of the electrical plan: supply, circuits, other sources of power.

    >>> plan_triggers(supply=30, circuits=6, other_sources=1, supply_limit=30, circuit_limit=5)
    2.0
    """
    return (supply > supply_limit) * 1.0 + (circuits > circuit_limit) * 1.0 + (other_sources > 0) * 1.0
