"""Wire: its area, its resistance cold and hot, the drop along it, what heat and bundles leave of it."""

from numpy import pi

from curbwright.figures import equation
from curbwright.quantities import (
    Amperes,
    Kelvins,
    Metres,
    Number,
    OhmMetres,
    Ohms,
    OhmsPerMetre,
    Seconds,
    SquareMetres,
    Volts,
)


@equation("awg-formula:diameter", empirical=True)
def gauge_area(gauge: Number) -> SquareMetres:
    """Area of a solid round wire of an American gauge; 1/0 counts as 0, 2/0 as -1 and so on.

    Its 0.127 mm is the 0.005 in diameter of gauge 36, and 92 the ratio of the diameters of gauges 36 and -3.

    >>> round(gauge_area(12) * 1e6, 4)
    3.3088
    """
    return pi / 4 * (0.000127 * 92 ** ((36 - gauge) / 39)) ** 2


@equation("ohm-law:resistivity")
def resistivity(resistance: OhmsPerMetre, area: SquareMetres) -> OhmMetres:
    """Resistivity of a conductor from its resistance per length; the trade's K where it is in ohm-cmil/ft.

    >>> resistivity(resistance=0.005, area=0.000004)
    2e-08
    """
    return resistance * area


@equation("ohm-law:resistance per length", uncited=True)
def resistance_per_length(resistivity: OhmMetres, area: SquareMetres) -> OhmsPerMetre:
    """Resistance of one conductor per length.

    >>> round(resistance_per_length(resistivity=2e-8, area=4e-6), 9)
    0.005
    """
    return resistivity / area


@equation("nec-9-8-notes:temperature change", empirical=True)
def resistance_at(resistance: OhmsPerMetre, temperature: Kelvins) -> OhmsPerMetre:
    """Resistance of copper at another temperature than 75 °C (348.15 K); 0.00323 per degree holds for copper.

    >>> round(resistance_at(resistance=1.0, temperature=293.15), 5)
    0.82235
    """
    return resistance * (1 + 0.00323 * (temperature - 348.15))


@equation("nec-9-8-notes:temperature change, turned round", empirical=True)
def temperature_of(resistivity: OhmMetres, hot: OhmMetres) -> Kelvins:
    """Temperature at which copper has a resistivity, ``hot`` being that at 75 °C (348.15 K).

    >>> round(temperature_of(resistivity=2.0, hot=2.0), 2)
    348.15
    """
    return 348.15 + (resistivity / hot - 1) / 0.00323


@equation("marine-drop:out and back", uncited=True)
def loop(length: Metres) -> Metres:
    """Length of conductor from the source to a load and back.

    >>> loop(3.0)
    6.0
    """
    return 2 * length


@equation("ohm-law:drop along both conductors")
def drop(*, current: Amperes, length: Metres, resistance: OhmsPerMetre) -> Volts:
    """Voltage lost on the way to a load and back; ``length`` is one way.

    >>> drop(current=10, length=8, resistance=0.005)
    0.8
    """
    return 2 * length * current * resistance


@equation("marine-drop:CM = K I L / E")
def area_for_drop(*, resistivity: OhmMetres, current: Amperes, loop: Metres, drop: Volts) -> SquareMetres:
    """Conductor area that keeps the voltage lost along a loop to a limit; the loop counts both ways.

    >>> round(area_for_drop(resistivity=2e-8, current=10, loop=6, drop=0.36) * 1e6, 4)
    3.3333
    """
    return resistivity * current * loop / drop


@equation("ohm-law:drop as a share", uncited=True)
def drop_share(drop: Volts, voltage: Volts) -> Number:
    """Voltage lost as a share of the voltage it is judged against.

    >>> drop_share(drop=0.3, voltage=12.0)
    0.025
    """
    return drop / voltage


@equation("ohm-law:drop as a share, turned round", uncited=True)
def drop_allowed(share: Number, voltage: Volts) -> Volts:
    """Voltage that may be lost.

    >>> round(drop_allowed(share=0.03, voltage=12), 4)
    0.36
    """
    return share * voltage


@equation("ohm-law:what is left", uncited=True)
def share_left(limit: Number, spent: Number) -> Number:
    """Share of the voltage that a branch may still lose when its feeder has lost some.

    >>> round(share_left(limit=0.03, spent=0.01), 4)
    0.02
    """
    return limit - spent


@equation("ohm-law:both conductors of a run")
def run_resistance(length: Metres, resistance: OhmsPerMetre) -> Ohms:
    """Resistance of a run out and back; ``length`` is one way.

    >>> run_resistance(length=3.0, resistance=0.001)
    0.006
    """
    return 2 * length * resistance


@equation("wire-heat-ratings:33 CFR 183.425 note 1 as a formula")
def hot_space_factor(*, insulation: Kelvins, space: Kelvins, base: Kelvins) -> Number:
    """What a wire may carry in a hot space over what its table says, ``base`` being the table's temperature.

    Heat leaves in proportion to the difference in temperature and arises with the square of the current.

    >>> round(hot_space_factor(insulation=378.15, space=323.15, base=303.15), 4)
    0.8563
    """
    return ((insulation - space) / (insulation - base)) ** 0.5


@equation("cfr-33-183-425:factors multiply", uncited=True)
def corrected_ampacity(*, ampacity: Amperes, hot: Number, bundle: Number) -> Amperes:
    """What a wire may carry in its hot space and bundle.

    >>> corrected_ampacity(ampacity=40, hot=0.75, bundle=0.5)
    15.0
    """
    return ampacity * hot * bundle


@equation("adiabatic-heating:t = (k S / I) squared", empirical=True, uncited=True)
def withstand_time(area: SquareMetres, current: Amperes) -> Seconds:
    """Time that a copper wire with plastic insulation stands a fault current.

    115 A·√s/mm² takes copper from 70 to 160 °C with no heat lost.

    >>> round(withstand_time(area=33.6e-6, current=2000), 2)
    3.73
    """
    return (115000000.0 * area / current) ** 2


@equation("adiabatic-heating:turned round for the area", empirical=True, uncited=True)
def area_to_withstand(current: Amperes, time: Seconds) -> SquareMetres:
    """Area of copper with plastic insulation that stands a fault current for a time.

    >>> round(area_to_withstand(current=2000, time=0.1) * 1e6, 3)
    5.5
    """
    return current * time**0.5 / 115000000.0
