"""Portions an hour: what the day's portions take of the plate, of the flame and of the hands.

Each step's time for all the portions is what they would take if that step never waited; the step that takes
longest sets the pace of the whole.
"""

from curbwright.figures import equation
from curbwright.quantities import (
    Joules,
    JoulesPerKilogram,
    JoulesPerKilogramKelvin,
    Kelvins,
    Kilograms,
    Number,
    PerSecond,
    Seconds,
    SquareMetres,
    Watts,
)


@equation("portion-heat:water cooked off", uncited=True)
def water_cooked_off(mass: Kilograms, share: Number) -> Kilograms:
    """Water that cooking drives off a portion.

    >>> water_cooked_off(0.2, 0.1)
    0.020000000000000004
    """
    return mass * share


@equation("portion-heat")
def food_heat(
    *, mass: Kilograms, specific_heat: JoulesPerKilogramKelvin, start: Kelvins, end: Kelvins,
    cooked_off: Kilograms, latent: JoulesPerKilogram,
) -> Joules:  # fmt: skip
    """Heat that a portion takes: warming it through, and the water that cooks off.

    >>> food_heat(mass=0.1, specific_heat=3000, start=278, end=348, cooked_off=0.02, latent=2257000)
    66140.0
    """
    return mass * specific_heat * (end - start) + cooked_off * latent


@equation("portion-heat:fuel")
def fuel_for(heat: Joules, efficiency: Number) -> Joules:
    """Gas or electricity burned to put heat into food.

    >>> fuel_for(64000, 0.32)
    200000.0
    """
    return heat / efficiency


@equation("portion-heat:fuel")
def fuel_mass(fuel: Joules, heat_content: JoulesPerKilogram) -> Kilograms:
    """Mass of a fuel burned.

    >>> fuel_mass(250e6, 50e6)
    5.0
    """
    return fuel / heat_content


@equation("portions-an-hour:plate")
def plate_time(
    *, portions: Number, each: SquareMetres, time: Seconds, turn: Seconds, area: SquareMetres, usable: Number
) -> Seconds:
    """Time that portions take of a plate which is always full.

    ``each`` is the plate one portion needs with its gap; ``turn`` the time to take off, scrape and lay on.

    >>> round(plate_time(portions=100, each=0.04, time=300, turn=20, area=0.5, usable=0.8))
    3200
    """
    return portions * each * (time + turn) / (area * usable)


@equation("portions-an-hour:flame")
def heat_time(portions: Number, *, heat: Joules, input: Watts, efficiency: Number) -> Seconds:
    """Time that portions take of the flame, every burner full on.

    >>> round(heat_time(100, heat=64000, input=20000, efficiency=0.32))
    1000
    """
    return portions * heat / (input * efficiency)


@equation("portions-an-hour:hands", uncited=True)
def hands_time(portions: Number, *, each: Seconds, cooks: Number) -> Seconds:
    """Time that portions take of the people who cook.

    >>> hands_time(100, each=40, cooks=2)
    2000.0
    """
    return portions * each / cooks


@equation("portions-an-hour:pace")
def pace(portions: Number, time: Seconds) -> PerSecond:
    """Portions in a time that a step takes for all of them.

    >>> pace(100, 2000)
    0.05
    """
    return portions / time


@equation("portions-an-hour:peak", uncited=True)
def peak_pace(*, portions: Number, share: Number, hour: Seconds) -> PerSecond:
    """Portions asked for in the busiest hour of the day.

    >>> round(peak_pace(portions=140, share=0.35, hour=3600) * 3600)
    49
    """
    return portions * share / hour


@equation("portions-an-hour:load", uncited=True)
def share_busy(asked: PerSecond, possible: PerSecond) -> Number:
    """Share of what is possible that the busiest hour asks for.

    >>> share_busy(0.02, 0.04)
    0.5
    """
    return asked / possible


@equation("portion-heat:mean", uncited=True)
def mean_each(whole: Joules, portions: Number) -> Joules:
    """Gas of a portion, on average over what is sold.

    >>> mean_each(30e6, 150)
    200000.0
    """
    return whole / portions


@equation("portions-an-hour:batches", uncited=True)
def batch_time(*, portions: Number, at_once: Number, time: Seconds, turn: Seconds) -> Seconds:
    """Time that portions take of a pot, a basket or an oven which is always full.

    >>> batch_time(portions=100, at_once=5, time=200, turn=25)
    4500.0
    """
    return portions / at_once * (time + turn)


@equation("portions-an-hour:room", uncited=True)
def at_once(area: SquareMetres, *, usable: Number, each: SquareMetres) -> Number:
    """Portions that lie on a plate at once.

    >>> round(at_once(0.5, usable=0.8, each=0.04), 6)
    10.0
    """
    return area * usable / each


@equation("portion-heat:load", uncited=True)
def load_heat(heat: Joules, portions: Number) -> Joules:
    """Heat that all portions of a full load take.

    >>> load_heat(60000, 10)
    600000
    """
    return heat * portions
