"""Panels: what the sun heats and what it gives, what is lost on the way, what the controller carries."""

from numpy import maximum, minimum

from curbwright.figures import equation, procedure
from curbwright.quantities import (
    Amperes,
    Joules,
    Kelvins,
    Metres,
    MetresPerSecond,
    Number,
    PerKelvin,
    Radians,
    Seconds,
    TemperatureDifference,
    Volts,
    Watts,
    WattsPerSquareMetre,
    WattsPerSquareMetreKelvin,
)


@equation("photovoltaic-library:cell temperature after Faiman", empirical=True)
def cell_temperature(
    *, air: Kelvins, sun: WattsPerSquareMetre, still: WattsPerSquareMetreKelvin, wind: MetresPerSecond
) -> Kelvins:
    """Temperature of the cells from the air, the sun on them and the wind over them.

    ``still`` is what they lose in still air; 6.84 W/m²/K more for each metre a second of wind.

    >>> round(cell_temperature(air=293.15, sun=900.0, still=25.0, wind=5.0) - 273.15, 2)
    35.2
    """
    return air + sun / (still + 6.84 * wind)


@equation("photovoltaic-library:power of a panel")
def warmer_than_rated(cell: Kelvins, rated: Kelvins) -> TemperatureDifference:
    """How much warmer the cells are than at their rating.

    >>> warmer_than_rated(cell=318.15, rated=298.15)
    20.0
    """
    return cell - rated


@equation("photovoltaic-library:power of a panel")
def panel_power(
    *, rated: Watts, sun: WattsPerSquareMetre, rated_sun: WattsPerSquareMetre, loss: PerKelvin,
    warmer: TemperatureDifference,
) -> Watts:  # fmt: skip
    """Power of panels in the sun: by the sun on them, less what warmth takes.

    >>> round(panel_power(rated=100.0, sun=900.0, rated_sun=1000.0, loss=0.003, warmer=5.0), 4)
    88.65
    """
    return rated * sun / rated_sun * (1 - loss * warmer)


@equation("photovoltaic-library:losses in a row")
def losses_together(
    *, soiling: Number, shading: Number, snow: Number, mismatch: Number, wiring: Number, connections: Number,
    first_light: Number, nameplate: Number, age: Number, outages: Number,
) -> Number:  # fmt: skip
    """Share lost on the way when each takes its part of what the one before left.

    >>> round(losses_together(soiling=0.02, shading=0.03, snow=0.0, mismatch=0.02, wiring=0.02,
    ...     connections=0.005, first_light=0.015, nameplate=0.01, age=0.0, outages=0.03), 6)
    0.140757
    """
    return 1 - (1 - soiling) * (1 - shading) * (1 - snow) * (1 - mismatch) * (1 - wiring) * (
        1 - connections
    ) * (1 - first_light) * (1 - nameplate) * (1 - age) * (1 - outages)


@equation("trade-practice:shade by the clock", uncited=True)
def shade_share(*, begins: Seconds, ends: Seconds, hour: Seconds, length: Seconds, share: Number) -> Number:
    """Share of an hour's sun that something in the way takes, from when to when it stands in the way.

    >>> float(shade_share(begins=28800.0, ends=34200.0, hour=32400.0, length=3600.0, share=0.6))
    0.3
    """
    return share * maximum(0, (minimum(ends, hour + length) - maximum(begins, hour)) / length)


@equation("trade-practice:shade by the clock", uncited=True)
def in_the_sun(shade: Number) -> Number:
    """Share of the sun that is left when shades add up, and no less than none.

    >>> float(in_the_sun(0.25))
    0.75
    """
    return 1 - minimum(shade, 1)


@equation("photovoltaic-library:to the battery", uncited=True)
def to_battery(*, power: Watts, sunlit: Number, loss: Number, efficiency: Number, most: Watts) -> Watts:
    """Power that reaches the battery: after shade, losses and the controller, and no more than that carries.

    >>> float(to_battery(power=400.0, sunlit=0.5, loss=0.1, efficiency=0.95, most=300.0))
    171.0
    """
    return minimum(power * sunlit * (1 - loss) * efficiency, most)


@equation("energy:power times time", uncited=True)
def energy_of(power: Watts, time: Seconds) -> Joules:
    """Energy of a power over a time.

    >>> energy_of(power=171.0, time=3600.0)
    615600.0
    """
    return power * time


@equation("energy:in proportion to the sun", uncited=True)
def in_proportion(*, energy: Joules, sun: WattsPerSquareMetre, clear: WattsPerSquareMetre) -> Joules:
    """Energy on a day with another sun than the clear day it was worked for.

    >>> in_proportion(energy=720000.0, sun=150.0, clear=300.0)
    360000.0
    """
    return energy * sun / clear


@equation("trade-practice:part of a clear day", uncited=True)
def part_of(energy: Joules, share: Number) -> Joules:
    """Energy on a dull day as a part of a clear one.

    >>> part_of(energy=720000.0, share=0.25)
    180000.0
    """
    return energy * share


@equation("ohm-law:in series and parallel", uncited=True)
def panels_together(one: Watts, count: Number) -> Watts:
    """Rated power of equal panels.

    >>> panels_together(one=100.0, count=4)
    400.0
    """
    return one * count


@equation("ohm-law:in series and parallel", uncited=True)
def strings_of(count: Number, series: Number) -> Number:
    """Strings in parallel of panels, so many in series in each.

    >>> strings_of(count=4, series=2)
    2.0
    """
    return count / series


@equation("trade-practice:current of a controller that works panels at their best", uncited=True)
def controller_output(*, rated: Watts, loss: Number, efficiency: Number, voltage: Volts) -> Amperes:
    """Current that a controller is asked for when panels in full sun give their rating, less what is lost.

    >>> round(controller_output(rated=400.0, loss=0.1, efficiency=0.95, voltage=14.4), 2)
    23.75
    """
    return rated * (1 - loss) * efficiency / voltage


@equation("ohm-law:current at a voltage", uncited=True)
def power_at(current: Amperes, voltage: Volts) -> Watts:
    """Power of a current at a voltage.

    >>> power_at(current=20.0, voltage=14.4)
    288.0
    """
    return current * voltage


@equation("nec-690-8:125 % of the short-circuit current", uncited=True)
def circuit_current(*, short_circuit: Amperes, strings: Number) -> Amperes:
    """Largest current a panel circuit is counted for: brighter than the rating for hours.

    >>> circuit_current(short_circuit=8.0, strings=2)
    20.0
    """
    return 1.25 * short_circuit * strings


@equation("nec-690-8:125 % again for the conductor", uncited=True)
def conductor_current(circuit: Amperes) -> Amperes:
    """Current that the conductor of a panel circuit, and its fuse, are chosen for.

    >>> conductor_current(20.0)
    25.0
    """
    return 1.25 * circuit


@equation("trade-practice:open voltage in the cold", uncited=True)
def cold_voltage(
    *, open_voltage: Volts, series: Number, gain: PerKelvin, colder: TemperatureDifference
) -> Volts:
    """Open-circuit voltage of panels in series on a cold bright morning.

    >>> round(cold_voltage(open_voltage=22.0, series=2, gain=0.003, colder=25.0), 2)
    47.3
    """
    return open_voltage * series * (1 + gain * colder)


@equation("trade-practice:a controller that only switches", uncited=True)
def switching_efficiency(*, battery: Volts, best: Volts, series: Number) -> Number:
    """Share that a switching (PWM) controller uses: the panel works at the battery's voltage.

    >>> switching_efficiency(battery=13.5, best=18.0, series=1)
    0.75
    """
    return battery / (best * series)


@procedure("photovoltaic-library:inverter of a grid house", empirical=True)
def grid_inverter(*, power: Watts, rated: Watts, efficiency: Number) -> Watts:
    """Power a grid inverter gives, by PVWatts in pvlib: for comparison only, not for a battery's inverter.

    >>> round(grid_inverter(power=90.0, rated=100.0, efficiency=0.95), 2)
    85.59
    """
    from pvlib.inverter import pvwatts

    return float(pvwatts(float(power), float(rated), float(efficiency)))


@procedure("photovoltaic-library:a clear day of a panel", empirical=True)
def clear_day_energy(
    *, latitude: Radians, longitude: Radians, altitude: Metres, day: Number, zone: Seconds, turbidity: Number,
    rated: Watts, air: Kelvins, wind: MetresPerSecond, still: WattsPerSquareMetreKelvin,
    loss_per_degree: PerKelvin, losses: Number, efficiency: Number,
) -> Joules:  # fmt: skip
    """Energy that level panels put into a battery on a clear day, minute by minute by pvlib.

    >>> place = {"latitude": 0.698132, "longitude": -1.832596, "altitude": 1600.0, "zone": -25200.0}
    >>> round(clear_day_energy(**place, day=172.0, turbidity=3.0, rated=400.0, air=298.15, wind=1.0,
    ...     still=25.0, loss_per_degree=0.0037, losses=0.140757, efficiency=0.97) / 3600, -1)
    2780.0
    """
    from pvlib.pvsystem import pvwatts_dc
    from pvlib.temperature import faiman

    from curbwright.equations.solar.sky import clear_day

    sun = clear_day(
        float(latitude), float(longitude), float(altitude), int(day), float(zone), float(turbidity), 0.0, 0.0
    ).level
    cells = faiman(sun, float(air) - 273.15, float(wind), u0=float(still))
    power = pvwatts_dc(sun, cells, float(rated), -float(loss_per_degree))
    return float(power.sum()) * 60 * (1 - float(losses)) * float(efficiency)
