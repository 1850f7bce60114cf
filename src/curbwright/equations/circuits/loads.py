"""Loads: what things draw, for how long, and what a day of them takes."""

from curbwright.figures import equation
from curbwright.quantities import (
    Amperes,
    CubicMetres,
    CubicMetresPerSecond,
    Joules,
    Number,
    Pascals,
    Seconds,
    Volts,
    Watts,
)


@equation("ohm-law:power", uncited=True)
def power_of(*, voltage: Volts, current: Amperes, power_factor: Number) -> Watts:
    """Power that a label's volts and amperes stand for.

    >>> power_of(voltage=120, current=2.0, power_factor=0.75)
    180.0
    """
    return voltage * current * power_factor


@equation("ohm-law:power", uncited=True)
def direct_power(voltage: Volts, current: Amperes) -> Watts:
    """Power that a label's volts and amperes of direct current stand for.

    >>> direct_power(voltage=12, current=5)
    60
    """
    return voltage * current


@equation("ohm-law:apparent power", uncited=True)
def apparent_power(power: Watts, power_factor: Number) -> Watts:
    """Volts times amperes of a load, in VA: what wires, breakers and inverters have to carry.

    >>> apparent_power(power=150, power_factor=0.75)
    200.0
    """
    return power / power_factor


@equation("ohm-law:current of a load", uncited=True)
def current_of(power: Watts, voltage: Volts) -> Amperes:
    """Current that a power draws at a voltage; a load that keeps its power draws more as the voltage falls.

    >>> current_of(power=60, voltage=12)
    5.0
    """
    return power / voltage


@equation("time-of-day:from one clock time to another", uncited=True)
def time_between(begins: Seconds, ends: Seconds) -> Seconds:
    """Time from one clock time to a later one of the same day.

    >>> time_between(begins=36000, ends=54000)
    18000
    """
    return ends - begins


@equation("time-of-day:past midnight", uncited=True)
def time_past_midnight(*, begins: Seconds, ends: Seconds, day: Seconds) -> Seconds:
    """Time from one clock time to an earlier one, on the next day.

    >>> time_past_midnight(begins=79200, ends=21600, day=86400)
    28800
    """
    return ends + day - begins


@equation("energy:power times time", uncited=True)
def daily_energy(*, power: Watts, share: Number, time: Seconds) -> Joules:
    """Energy that a load takes in a day: its running power, the share of the time it runs, the time it is on.

    >>> daily_energy(power=60, share=0.5, time=3600)
    108000.0
    """
    return power * share * time


@equation("energy:mean over a time", uncited=True)
def mean_power(energy: Joules, time: Seconds) -> Watts:
    """Mean power over a time.

    >>> mean_power(energy=864000, time=86400)
    10.0
    """
    return energy / time


@equation("energy:average over on and off", uncited=True)
def averaged_power(power: Watts, share: Number) -> Watts:
    """Average power of a load that switches itself on and off.

    >>> averaged_power(power=60, share=0.5)
    30.0
    """
    return power * share


@equation("trade-practice:start of a motor among running loads", uncited=True)
def start_power(*, running: Watts, motor: Watts, multiple: Number) -> Watts:
    """Power at the moment a motor starts while everything else runs.

    >>> start_power(running=300, motor=100, multiple=5)
    700
    """
    return running + (multiple - 1) * motor


@equation("energy:a pump that runs as long as the water flows")
def pump_energy(
    *, volume: CubicMetres, flow: CubicMetresPerSecond, current: Amperes, voltage: Volts
) -> Joules:
    """Energy that a demand pump takes to move a volume.

    >>> pump_energy(volume=0.1, flow=0.0002, current=5, voltage=12)
    30000.0
    """
    return volume / flow * current * voltage


@equation("fan-trade-formula:cfm x in WG / (6356 x efficiency) hp", empirical=True)
def fan_shaft_power(*, flow: CubicMetresPerSecond, pressure: Pascals, efficiency: Number) -> Watts:
    """Shaft power of a fan by the trade's formula, whose 6356 counts water at room temperature.

    Flow over 0.000471947443 is cfm, pressure over 249.08891 is inches of water, 745.699872 W a horsepower.
    Plain flow × pressure / efficiency is 0.2 % more.

    >>> round(fan_shaft_power(flow=0.424752699, pressure=186.8166825, efficiency=0.4), 2)
    197.98
    """
    return flow / 0.000471947443 * pressure / 249.08891 / 6356 / efficiency * 745.699872


@equation("fan-trade-formula:motor")
def motor_input(shaft: Watts, efficiency: Number) -> Watts:
    """Electric power that a motor takes to give a power at its shaft.

    >>> motor_input(shaft=120, efficiency=0.6)
    200.0
    """
    return shaft / efficiency


@equation("cfr-10-431-66:(b)(1), solid door, self-contained, made 2010 to 2017", empirical=True)
def fridge_limit(volume: CubicMetres) -> Watts:
    """Most mean power a commercial refrigerator with a solid door may take in the federal test at 75 °F.

    0.10 kWh a day for each cubic foot (0.028316847 m³) and 2.04 kWh a day; 1 kWh a day is 41.6667 W.

    >>> round(fridge_limit(0.33980216), 2)
    135.0
    """
    return (0.10 * volume / 0.028316847 + 2.04) * 41.6666667
