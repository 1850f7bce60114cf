"""On the road: tires, coupler, chains, brakes, how hard things must be held down, tandem axles."""

from numpy import log

from curbwright.figures import equation
from curbwright.quantities import (
    Kilograms,
    Metres,
    MetresPerSecond,
    MetresPerSecondSquared,
    Newtons,
    NewtonsPerMetre,
    Number,
    Pascals,
)


@equation("st-tire-chart:power law between two rows")
def tire_load_at_pressure(
    *, load: Kilograms, pressure: Pascals, full_pressure: Pascals, exponent: Number
) -> Kilograms:
    """Load a tire may carry below its sidewall pressure.

    ``load`` is the load at ``full_pressure``. Valid below the sidewall pressure only, never above it.

    >>> tire_load_at_pressure(load=800, pressure=100e3, full_pressure=400e3, exponent=0.5)
    400.0
    """
    return load * (pressure / full_pressure) ** exponent


@equation("st-tire-chart:power law between two rows")
def tire_pressure_exponent(
    *, load: Kilograms, full_load: Kilograms, pressure: Pascals, full_pressure: Pascals
) -> Number:
    """Exponent of the power law through two rows of a tire's load table.

    >>> float(tire_pressure_exponent(load=400, full_load=800, pressure=100e3, full_pressure=400e3))
    0.500
    """
    return log(load / full_load) / log(pressure / full_pressure)


@equation("nhtsa-nht76-1-47:quoting S5.1.2")
def passenger_tire_derated(rating: Kilograms) -> Kilograms:
    """Load a passenger-car tire may carry on a trailer: its rating divided by 1.10.

    Trailer (ST) and light truck (LT) tires are not derated.

    >>> round(passenger_tire_derated(rating=660), 6)
    600.0
    """
    return rating / 1.10


@equation("recalled:load index approximation", uncited=True, empirical=True)
def load_index_load(index: Number) -> Kilograms:
    """Load that a tire's load index stands for, in kilograms, within about 2 % of the table.

    Valid from 70 to 120, checked over the table's rows; the table and the sidewall come first.

    >>> round(load_index_load(index=80), 6)
    450.0
    """
    return 45 * 10 ** (index / 80)


@equation("nhtsa-nht76-1-47:quoting S5.1.2")
def tires_together(rating: Kilograms, count: Number) -> Kilograms:
    """Load that the tires of an axle or of the trailer may carry together.

    >>> tires_together(rating=600, count=2)
    1200
    """
    return rating * count


@equation("trade-practice:reserve", uncited=True)
def reserve(load: Kilograms, rating: Kilograms) -> Number:
    """Share of a rating that is left over; negative where the load is above the rating.

    >>> reserve(load=450, rating=600)
    0.25
    """
    return 1 - load / rating


@equation("tow-vehicle-handbooks:share of gross", uncited=True)
def load_for_share(gross: Kilograms, share: Number) -> Kilograms:
    """Tongue load that is a given share of the gross mass.

    >>> load_for_share(gross=1000, share=0.125)
    125.0
    """
    return gross * share


@equation("uk-nose-weight:share of laden mass")
def noseweight(mass: Kilograms, share: Number) -> Kilograms:
    """European noseweight: a share of the laden mass, capped elsewhere by the lowest rating of the outfit.

    >>> noseweight(mass=1000, share=0.0625)
    62.5
    """
    return mass * share


@equation("comar-11-13-08-10:Table 1")
def coupler_load(gross: Kilograms, times: Number) -> Kilograms:
    """Load a class 4 coupling must bear without breaking: so many times the gross trailer mass.

    >>> coupler_load(gross=2000, times=3)
    6000
    """
    return gross * times


@equation("sae-j684-hitch-classes:safety chains")
def chain_load(gross: Kilograms, times: Number) -> Kilograms:
    """Least breaking load of one safety chain, as so many times the gross trailer mass.

    >>> chain_load(gross=2000, times=1)
    2000
    """
    return gross * times


@equation("cfr-49-393-102:a")
def restraint_force(mass: Kilograms, factor: Number) -> Kilograms:
    """Force a fastening must hold, as so many times the weight of what it holds.

    >>> restraint_force(mass=50, factor=0.8)
    40.0
    """
    return mass * factor


@equation("wac-296-826-60005:1")
def breaking_load(force: Kilograms, safety: Number) -> Kilograms:
    """Breaking load a fastening needs for a design force and a safety factor.

    >>> breaking_load(force=100, safety=4)
    400
    """
    return force * safety


@equation("cvc-26454:b-3")
def stopping_deceleration(speed: MetresPerSecond, distance: Metres) -> MetresPerSecondSquared:
    """Steady deceleration that stops within a distance.

    >>> stopping_deceleration(speed=10, distance=12.5)
    4.0
    """
    return speed**2 / (2 * distance)


@equation("maryland-trailer-rules:share of the tow vehicle", uncited=True)
def tow_ratio(gross: Kilograms, tow_vehicle: Kilograms) -> Number:
    """Gross trailer mass as a share of the tow vehicle's.

    >>> tow_ratio(gross=800, tow_vehicle=2000)
    0.4
    """
    return gross / tow_vehicle


@equation("coupling-loads-europe:D value", uncited=True)
def coupling_pull(*, tow_vehicle: Kilograms, trailer: Kilograms, gravity: MetresPerSecondSquared) -> Newtons:
    """European D value: the lengthwise force between tow vehicle and trailer that a coupling is rated for.

    ``trailer`` is the mass on the trailer's axles.

    >>> coupling_pull(tow_vehicle=2000, trailer=2000, gravity=10)
    10000.0
    """
    return gravity * tow_vehicle * trailer / (tow_vehicle + trailer)


@equation("coupling-loads-europe:V value", uncited=True)
def coupling_bounce(
    *, trailer: Kilograms, acceleration: MetresPerSecondSquared, platform: Metres, drawbar: Metres
) -> Newtons:
    """European V value: the amplitude of the vertical force at the coupling of a centre-axle trailer.

    ``trailer`` is the mass on the trailer's axles, ``acceleration`` 1.8 m/s² (air springs) or 2.4 m/s² at the
    tow vehicle's rear axle, ``platform`` the length of the loaded area and ``drawbar`` the distance from the
    coupling to the axle. Take the squared ratio of the last two as 1 where it is less.

    >>> coupling_bounce(trailer=1400, acceleration=2.4, platform=3.0, drawbar=3.0)
    3360.0
    """
    return acceleration * (platform / drawbar) ** 2 * trailer


@equation("statics:two springs and a ball")
def tandem_front_shift(
    *, stiffness: NewtonsPerMetre, hitch_high: Metres, spacing: Metres, axle: Metres
) -> Newtons:
    """Change of the front axle's load of a torsion tandem when the hitch stands above level ride.

    ``stiffness`` is of one axle, ``axle`` the distance from the ball to the middle of the tandem.
    An equalised leaf tandem shares equally instead.

    >>> tandem_front_shift(stiffness=100e3, hitch_high=0.05, spacing=1.0, axle=2.0)
    -1470.5882352941176
    """
    return -stiffness * hitch_high * (spacing / 2) * (axle + spacing / 2) / (axle**2 + spacing**2 / 4)


@equation("statics:two springs and a ball")
def tandem_rear_shift(
    *, stiffness: NewtonsPerMetre, hitch_high: Metres, spacing: Metres, axle: Metres
) -> Newtons:
    """Change of the rear axle's load of a torsion tandem when the hitch stands above level ride.

    What the front axle loses beyond it presses on the ball.

    >>> tandem_rear_shift(stiffness=100e3, hitch_high=0.05, spacing=1.0, axle=2.0)
    882.3529411764706
    """
    return stiffness * hitch_high * (spacing / 2) * (axle - spacing / 2) / (axle**2 + spacing**2 / 4)


@equation("statics:weight", uncited=True)
def weighs(force: Newtons, gravity: MetresPerSecondSquared) -> Kilograms:
    """Mass that weighs as much as a force.

    >>> weighs(force=100, gravity=10)
    10.0
    """
    return force / gravity


@equation("statics:weight", uncited=True)
def weight(mass: Kilograms, gravity: MetresPerSecondSquared) -> Newtons:
    """Weight of a mass.

    >>> weight(mass=10, gravity=9.8)
    98.0
    """
    return mass * gravity


@equation("statics:shared between tires", uncited=True)
def tire_of_side(side: Kilograms, count: Number) -> Kilograms:
    """Load on one tire of a side, of so many tires on both sides together.

    >>> tire_of_side(side=500.0, count=4)
    250.0
    """
    return side / (count / 2)


@equation("statics:side over its half", uncited=True)
def side_excess(side: Kilograms, axle_load: Kilograms) -> Number:
    """What one side carries over its half, as a share of the axle load.

    >>> side_excess(side=550.0, axle_load=1000.0)
    0.05
    """
    return side / axle_load - 0.5
