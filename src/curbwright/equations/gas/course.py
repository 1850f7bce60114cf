"""The course of a bottle that is drawn from: it cools until the regulator starves, or runs empty first.

One lump of liquid and wetted wall, saturated vapour above it, air that brings heat through the wetted wall.
A bottle that has cooled to the least temperature keeps giving what the air evaporates, and no more.
"""

from functools import lru_cache
from math import expm1
from typing import NamedTuple

from curbwright.equations.gas.bottle import cooling_rate, heat_capacity, heat_in, steady_draw, wetted_area
from curbwright.equations.gas.propane import latent_heat, liquid_density, liquid_specific_heat
from curbwright.figures import procedure
from curbwright.quantities import (
    JoulesPerKilogramKelvin,
    Kelvins,
    Kilograms,
    KilogramsPerSecond,
    Metres,
    Number,
    Seconds,
    WattsPerSquareMetreKelvin,
)

STEPS = 200
"""A course is stepped this many times while the bottle would last; a step is stable however long it is."""


class _Bottle(NamedTuple):
    diameter: float
    contents: float
    shell: float
    shell_specific_heat: float
    wetted: float
    film: float
    ambient: float


@procedure("bottle-heat-balance:exponential midpoint steps", empirical=True)
def time_alone(
    *, diameter: Metres, contents: Kilograms, shell: Kilograms, shell_specific_heat: JoulesPerKilogramKelvin,
    wetted: Number, film: WattsPerSquareMetreKelvin, ambient: Kelvins, draw: KilogramsPerSecond,
    coldest: Kelvins,
) -> Seconds:  # fmt: skip
    """Time until a bottle, as warm as the air at first, is too cold or gone: its heat balance, stepped.

    >>> round(time_alone(diameter=0.30988, contents=9.0718, shell=8.1647, shell_specific_heat=481.5,
    ...     wetted=0.6, film=11.3565, ambient=277.594, draw=0.00035085, coldest=243.52) / 3600, 2)
    2.16
    """
    bottle = _bottle(diameter, contents, shell, shell_specific_heat, wetted, film, ambient)
    return _course(bottle, float(draw), float(coldest))[-1][0]


@procedure("bottle-heat-balance:exponential midpoint steps", empirical=True)
def temperature_after(
    *, diameter: Metres, contents: Kilograms, shell: Kilograms, shell_specific_heat: JoulesPerKilogramKelvin,
    wetted: Number, film: WattsPerSquareMetreKelvin, ambient: Kelvins, draw: KilogramsPerSecond,
    coldest: Kelvins, time: Seconds,
) -> Kelvins:  # fmt: skip
    """Temperature of a bottle's liquid after a time, as warm as the air at first: its heat balance stepped.

    >>> round(temperature_after(diameter=0.30988, contents=9.0718, shell=8.1647, shell_specific_heat=481.5,
    ...     wetted=0.6, film=11.3565, ambient=277.594, draw=0.00035085, coldest=243.52, time=0.0), 2)
    277.59
    """
    bottle = _bottle(diameter, contents, shell, shell_specific_heat, wetted, film, ambient)
    course = _course(bottle, float(draw), float(coldest))
    before = max((point for point in course if point[0] <= time), default=course[0])
    after = min((point for point in course if point[0] > time), default=before)
    if after is before:
        return before[1]
    late = float(time) - before[0]
    return _stepped(bottle, bottle.contents - draw * before[0], before[1], float(draw), late)


@procedure("bottle-heat-balance:exponential midpoint steps", empirical=True, uncited=True)
def time_with_reserve(
    *, diameter: Metres, contents: Kilograms, shell: Kilograms, reserve_diameter: Metres,
    reserve_contents: Kilograms, reserve_shell: Kilograms, shell_specific_heat: JoulesPerKilogramKelvin,
    wetted: Number, film: WattsPerSquareMetreKelvin, ambient: Kelvins, draw: KilogramsPerSecond,
    coldest: Kelvins,
) -> Seconds:  # fmt: skip
    """Time until two bottles fail: one until too cold or gone, then the reserve beside what it still gives.

    >>> round(time_with_reserve(diameter=0.30988, contents=9.0718, shell=8.1647, shell_specific_heat=481.5,
    ...     wetted=0.6, reserve_diameter=0.30988, reserve_contents=9.0718, reserve_shell=8.1647,
    ...     film=11.3565, ambient=277.594, draw=0.00035085, coldest=243.52) / 3600, 1)
    7.5
    """
    first = _bottle(diameter, contents, shell, shell_specific_heat, wetted, film, ambient)
    second = _bottle(
        reserve_diameter, reserve_contents, reserve_shell, shell_specific_heat, wetted, film, ambient
    )
    opened = _course(first, float(draw), float(coldest))[-1][0]
    left = max(0.0, float(contents) - float(draw) * opened)
    return opened + _reserve(first, left, second, float(draw), float(coldest))


def _bottle(*numbers: float) -> _Bottle:
    """A bottle by its plain numbers, so that what is remembered of it holds no figures."""
    return _Bottle(*map(float, numbers))


@lru_cache(maxsize=64)
def _course(bottle: _Bottle, draw: float, coldest: float) -> tuple[tuple[float, float], ...]:
    """Times and temperatures of a bottle's liquid, the last of them where it fails."""
    lifetime = bottle.contents / draw
    time, liquid = 0.0, bottle.ambient
    course = [(time, liquid)]
    while time < lifetime and liquid > coldest:
        step = min(lifetime / STEPS, lifetime - time)
        colder = _stepped(bottle, bottle.contents - draw * time, liquid, draw, step)
        if colder <= coldest:
            step *= (liquid - coldest) / (liquid - colder)
            colder = coldest
        time, liquid = (lifetime if lifetime - time <= step else time + step), colder
        course.append((time, liquid))
    return tuple(course)


def _stepped(bottle: _Bottle, mass: float, liquid: float, draw: float, step: float) -> float:
    """The liquid's temperature a step later, by what it settles to with the coefficients of the middle."""
    middle = _settling(bottle, mass, liquid, draw, liquid, step / 2)
    return _settling(bottle, mass - draw * step / 2, middle, draw, liquid, step)


def _settling(bottle: _Bottle, mass: float, at: float, draw: float, start: float, step: float) -> float:
    """The temperature after a step from ``start``, with what holds at one mass and temperature kept."""
    area = wetted_area(max(0.0, mass) / float(liquid_density(at)), bottle.diameter)
    capacity = heat_capacity(
        mass=max(0.0, mass),
        specific_heat=liquid_specific_heat(at),
        shell=bottle.shell,
        shell_specific_heat=bottle.shell_specific_heat,
        wetted=bottle.wetted,
    )
    heat = heat_in(film=bottle.film, area=area, ambient=bottle.ambient, liquid=start)
    rate = cooling_rate(heat=heat, draw=draw, latent=latent_heat(at), capacity=capacity)
    fading = float(bottle.film * area / capacity) * step
    return start + float(rate) * step * (-expm1(-fading) / fading if fading > 0 else 1.0)


def _given(bottle: _Bottle, mass: float, coldest: float) -> float:
    """What a bottle held at the least temperature still gives."""
    area = wetted_area(max(0.0, mass) / float(liquid_density(coldest)), bottle.diameter)
    heat = heat_in(film=bottle.film, area=area, ambient=bottle.ambient, liquid=coldest)
    return max(0.0, float(steady_draw(heat, latent_heat(coldest))))


@lru_cache(maxsize=64)
def _reserve(first: _Bottle, left: float, second: _Bottle, draw: float, coldest: float) -> float:
    """Time that the reserve bottle holds, once opened, beside what the first still gives."""
    time, liquid, mass, beside = 0.0, float(second.ambient), float(second.contents), left
    longest = second.contents / draw / STEPS
    while mass > 0 and liquid > coldest:
        # What the first gives changes slowly: its value at the middle of the step serves for the step.
        helped = _given(first, beside, coldest)
        helped = min(draw, _given(first, beside - helped * longest / 2, coldest))
        own = draw - helped
        step = min(longest, mass / own) if own > 0 else longest
        colder = _stepped(second, mass, liquid, own, step)
        if colder <= coldest:
            return time + step * (liquid - coldest) / (liquid - colder)
        gone = own * step >= mass
        time, liquid, mass, beside = time + step, colder, mass - own * step, max(0.0, beside - helped * step)
        if gone:
            return time
    return time
