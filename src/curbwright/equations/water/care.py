"""Care: frost, sanitising doses, and what a tap that is knocked open on the road lets out."""

from numpy import exp, log, maximum, minimum, pi

from curbwright.figures import equation
from curbwright.quantities import (
    CubicMetres,
    CubicMetresPerSecond,
    JoulesPerKilogramKelvin,
    Kelvins,
    Kilograms,
    KilogramsPerCubicMetre,
    Metres,
    Number,
    Seconds,
    TemperatureDifference,
    WattsPerKelvin,
    WattsPerMetreKelvin,
)


@equation("pipe-freezing")
def pipe_freeze_time(
    *, bore: Metres, inner: Metres, outer: Metres, conductivity: WattsPerMetreKelvin,
    density: KilogramsPerCubicMetre, specific_heat: JoulesPerKilogramKelvin, water: Kelvins, air: Kelvins,
    freezing: Kelvins,
) -> Seconds:  # fmt: skip
    """Time until the water in an insulated pipe begins to freeze; wall and air film count for nothing.

    ``inner`` and ``outer`` are the diameters of the insulation.

    >>> round(float(pipe_freeze_time(bore=0.012, inner=0.016, outer=0.04, conductivity=0.036, density=1000.0,
    ...     specific_heat=4187.0, water=283.15, air=266.15, freezing=273.15)))
    1702
    """
    return (
        density
        * specific_heat
        * pi
        * (bore / 2) ** 2
        * log(outer / inner)
        / (2 * pi * conductivity)
        * log((water - air) / (freezing - air))
    )


@equation("geometry")
def around(inner: Metres, thickness: Metres) -> Metres:
    """Outside diameter of something round with a layer about it.

    >>> around(inner=0.016, thickness=0.012)
    0.04
    """
    return inner + 2 * thickness


@equation("cooling-lump:time constant", uncited=True)
def tank_cooling_time(
    *, mass: Kilograms, specific_heat: JoulesPerKilogramKelvin, loss: WattsPerKelvin, water: Kelvins,
    air: Kelvins, freezing: Kelvins,
) -> Seconds:  # fmt: skip
    """Time until the water in a tank is as cold as ice, well stirred.

    >>> round(float(tank_cooling_time(mass=100.0, specific_heat=4187.0, loss=7.0, water=283.15, air=266.15,
    ...     freezing=273.15)))
    53073
    """
    return mass * specific_heat / loss * log((water - air) / (freezing - air))


@equation("cooling-lump:time constant", uncited=True)
def tank_temperature(
    *, start: Kelvins, air: Kelvins, time: Seconds, loss: WattsPerKelvin, mass: Kilograms,
    specific_heat: JoulesPerKilogramKelvin,
) -> Kelvins:  # fmt: skip
    """Temperature of the water in a tank that stands in air of another temperature.

    >>> round(float(tank_temperature(start=283.15, air=303.15, time=36000.0, loss=7.0, mass=100.0,
    ...     specific_heat=4187.0)), 2)
    292.19
    """
    return air + (start - air) * exp(-loss * time / (mass * specific_heat))


@equation("convention:parts per million", uncited=True)
def per_million(number: Number) -> Number:
    """A number of parts per million as a share.

    >>> per_million(number=50)
    5e-05
    """
    return number / 1000000


@equation("chlorine-dose:trade percent as grams in 100 mL")
def dose(*, concentration: Number, volume: CubicMetres, strength: Number) -> CubicMetres:
    """Bleach that brings water to a concentration; both as shares, a part per million being one.

    >>> dose(concentration=50e-6, volume=0.1, strength=0.05)
    0.0001
    """
    return concentration * volume / strength


@equation("chlorine-dose:trade percent as grams in 100 mL")
def concentration(*, bleach: CubicMetres, volume: CubicMetres, strength: Number) -> Number:
    """Concentration that bleach brings water to, as a share: a millionth is one part per million.

    >>> concentration(bleach=0.0001, volume=0.1, strength=0.05)
    5e-05
    """
    return bleach * strength / volume


@equation("rv-bleach-rule:gallons times 0.13 in ounces")
def dose_by_rule(volume: CubicMetres, share: Number) -> CubicMetres:
    """Bleach by the rule of thumb for the tanks of vehicles: a share of the volume.

    >>> round(dose_by_rule(volume=0.1, share=0.001), 6)
    0.0001
    """
    return volume * share


@equation("steady-flow:volume over flow")
def time_to_empty(volume: CubicMetres, flow: CubicMetresPerSecond) -> Seconds:
    """Time in which a flow empties a volume.

    >>> time_to_empty(volume=0.1, flow=0.0001)
    1000.0
    """
    return volume / flow


@equation("steady-flow:never more than there is")
def lost(*, volume: CubicMetres, flow: CubicMetresPerSecond, time: Seconds) -> CubicMetres:
    """Water that an open tap lets out in a time: never more than there is.

    >>> float(lost(volume=0.1, flow=0.0001, time=600.0))
    0.06
    """
    return minimum(volume, flow * time)


@equation("statics:what is left of a mass or a load", uncited=True)
def without(whole: Kilograms, part: Kilograms) -> Kilograms:
    """A mass, or a load as a scale shows it, once a part of it is gone.

    >>> without(whole=100.0, part=20.0)
    80.0
    """
    return whole - part


@equation("ohio-3717-1-05-1:(D), twice the diameter of the inlet and an inch at least", uncited=True)
def air_gap(*, bore: Metres, times: Number, least: Metres) -> Metres:
    """Air gap that the tip of a spout needs over the rim it fills.

    >>> float(air_gap(bore=0.0127, times=2, least=0.0254))
    0.0254
    """
    return maximum(times * bore, least)


@equation("geometry", uncited=True)
def gap_spare(has: Metres, needed: Metres) -> Metres:
    """Air gap over what is needed; less than nothing where it is too small.

    >>> round(gap_spare(has=0.05, needed=0.03), 6)
    0.02
    """
    return has - needed


@equation("convention:over freezing", uncited=True)
def over_freezing(air: Kelvins, freezing: Kelvins) -> TemperatureDifference:
    """How far the coldest air is over freezing; less than nothing where it freezes.

    >>> round(over_freezing(air=283.15, freezing=273.15), 6)
    10.0
    """
    return air - freezing
