"""Prints an SI value in the units a builder reads, and tells exactly which number was printed."""

from __future__ import annotations

import math
from functools import cache
from typing import NamedTuple

from curbwright.errors import WrongUnit
from curbwright.units import calendar, clock
from curbwright.units.expression import NotAUnitError, readings
from curbwright.units.gauges import wire_name
from curbwright.units.kinds import KINDS, Kind
from curbwright.units.matching import fits, suited, unit_of
from curbwright.units.text import plain
from curbwright.units.unit import Unit

_RAISED = {"2": "²", "3": "³", "4": "⁴"}
_FINEST = 12
"""Decimals past which nothing prints: what is left there is the noise of floating point."""
_FINEST_DEGREE = 3
_HAIR = 1 - 1e-9
"""What comes this close to a limit has reached it: 63,360 in is a mile."""


class Printed(NamedTuple):
    """A value as printed: the text, and the number in it with the unit and the SI size of that unit."""

    text: str
    number: float
    unit: str
    factor: float


def show(value: float, unit: str, *, system: str = "us", shown: str | None = None, digits: int = 4) -> str:
    """Return an SI value as text in the units of a system, ``us`` or ``si``.

    ``unit`` is the SI spelling of the value's unit. ``shown`` names the unit to print in, for both systems,
    or one for each as in ``gpm|L/min``; besides units there are ``ft-in``, ``clock``, ``date``, ``AWG``,
    ``R`` and ``$``. ``digits`` is the number of significant digits; powers of ten are never printed.

    Lengths in inches print as fractions where the nearest 1/16 is as close as the decimal with that many
    digits would be, and as decimals elsewhere; in feet and inches above 24 in. Money prints to the cent and
    times of day to the minute, whatever the digits.

    Raises ValueError for a value that is no finite number and WrongUnit for a ``shown`` of another kind.

    >>> show(1.6764, "m"), show(0.6, "m"), show(0.00151892, "m"), show(0.6, "m", system="si")
    ('5 ft 6 in', '23 5/8 in', '0.0598 in', '600 mm')
    >>> show(4396.066, "W", shown="BTU/h"), show(333.15, "K"), show(23400, "s", shown="clock")
    ('15,000 BTU/h', '140 °F', '06:30')
    """
    return _printed(float(value), unit, system, shown, digits).text


def shown_number(
    value: float, unit: str, *, system: str = "us", shown: str | None = None, digits: int = 4
) -> tuple[float, str, float]:
    """Return the number that ``show`` prints, its unit as printed, and the SI size of that unit.

    The value printed is ``number * size``, for a temperature plus the offset that ``factor`` gives. Feet
    and inches come as inches, times of day as minutes, and a wire gauge as its area in kcmil.

    >>> shown_number(1.67, "m"), shown_number(333.2, "K")
    ((65.75, 'in', 0.0254), (140.1, '°F', 0.5555555555555556))
    """
    printed = _printed(float(value), unit, system, shown, digits)
    return printed.number, printed.unit, printed.factor


def _printed(value: float, unit: str, system: str, shown: str | None, digits: int) -> Printed:
    if not math.isfinite(value):
        raise ValueError(f"{value} {unit} is no finite number and cannot be printed")
    if system not in ("us", "si"):
        raise ValueError(f"the systems of units are us and si, not {system!r}")
    name = _unit_to_show(value, unit, system, shown)
    match name, unit:
        case "ft-in" | "in", "m":
            return _inches(value, digits, feet=name == "ft-in")
        case "date", "1":
            day, text = calendar.written(value)
            return Printed(text, float(day), "", 1.0)
        case "clock", "s":
            minutes, text = clock.written(value)
            return Printed(text, float(minutes), "min", 60.0)
        case "$", "USD":
            return _dollars(value)
        case "R", "m**2*K/W":
            plain_r = _in_unit(value, "h*ft2*°F/BTU", unit, digits)
            return plain_r._replace(text=f"R-{plain_r.text.split(' ')[0]}")
        case "AWG", "m**2":
            gauge, area = wire_name(value), _in_unit(value, "kcmil", unit, digits)
            return area._replace(text=f"{gauge} AWG") if gauge else area
    return _in_unit(value, name, unit, digits)


@cache
def _kind_shown(unit: str) -> Kind | None:
    return next((kind for kind in KINDS.values() if kind.unit == unit), None)


def _unit_to_show(value: float, unit: str, system: str, shown: str | None) -> str:
    """Return the name of the unit to print in: the one asked for, or the kind's own for that size."""
    if shown:
        us, _, si = shown.partition("|")
        return si if si and system == "si" else us
    kind = _kind_shown(unit)
    if kind is None:
        return unit
    home, others = _scale(kind.shown_us if system == "us" else kind.shown_si)
    size, name = abs(value), home
    for below, limit, other in others:
        reached = size >= limit * _HAIR
        if size and reached != below:
            name = other
    return name


@cache
def _scale(cell: str) -> tuple[str, tuple[tuple[bool, float, str], ...]]:
    """Return the home unit and the others, each with the SI size below or above which it takes over."""
    home, *others = cell.split(";")
    found = []
    for other in others:
        limit, _, name = other.lstrip("<>=").partition("=")
        found.append((other.startswith("<"), float(limit), name))
    return home, tuple(found)


@cache
def _sized(name: str, unit: str) -> Unit:
    """Return a named unit as it measures values kept in an SI unit; raises WrongUnit where it does not."""
    kind = _kind_shown(unit)
    try:
        found = [each for each, _ in readings(plain(name))] if name else [unit_of(KINDS["number"])]
        due = unit_of(kind) if kind else readings(plain(unit))[0][0]
    except NotAUnitError:
        raise WrongUnit(f"{name!r} is not a unit that {unit!r} can be shown in") from None
    if kind is None or not name or kind.name == "number":
        fitting = [each for each in found if each.dimension == due.dimension]
    else:
        fitting = [suited(each, kind) for each in found if fits(each, kind)]
    if not fitting:
        raise WrongUnit(f"{name!r} is not a unit that {unit!r} can be shown in")
    return fitting[0]


def _in_unit(value: float, name: str, unit: str, digits: int) -> Printed:
    sized = _sized(name, unit)
    number = (value - sized.offset) / sized.factor
    rounded, text = _rounded(number, digits, _FINEST_DEGREE if unit == "K" else _FINEST)
    printed = _pretty(name)
    gap = " " if printed and not printed.startswith("/") and printed != "°" else ""
    return Printed(f"{text}{gap}{printed}", rounded, printed, sized.factor)


def _rounded(number: float, digits: int, finest: int = _FINEST) -> tuple[float, str]:
    """Return a number rounded to significant digits, and the same as text with commas and no idle zeros.

    >>> _rounded(15246.0, 4), _rounded(0.00012344, 3), _rounded(-1e-17, 4)
    ((15250.0, '15,250'), (0.000123, '0.000123'), (0.0, '0'))
    """
    places = max(0, digits - 1 - _power(number, digits))
    rounded = float(f"{number:.{digits - 1}e}") + 0.0  # never minus zero
    if places > finest:
        places, rounded = finest, round(number, finest) + 0.0
    text = f"{rounded:,.{places}f}"
    return rounded, text.rstrip("0").rstrip(".") if "." in text else text


def _power(number: float, digits: int) -> int:
    """Return the power of ten of a number once rounded to significant digits."""
    return int(f"{number:.{digits - 1}e}".partition("e")[2])


def _inches(value: float, digits: int, *, feet: bool) -> Printed:
    """Print a length in inches, as a fraction where that is as close as the decimal would be."""
    inches = abs(value) / 0.0254
    sixteenths = round(inches * 16)
    # Half a step of the last digit printed; the hair on top keeps 1/32 itself on the fraction's side.
    allowed = 0.5 * 10.0 ** (_power(inches, digits) - digits + 1) * (1 + 1e-9)
    sign = "-" if value < 0 else ""
    if inches and (not sixteenths or abs(sixteenths / 16 - inches) > allowed):
        number, text = _rounded(math.copysign(inches, value), digits)
        return Printed(f"{text} in", number, "in", 0.0254)
    whole, part = divmod(sixteenths, 16)
    words = []
    if feet and sixteenths > 24 * 16:
        words = [f"{whole // 12:,} ft"]
        whole %= 12
    if whole or part or not words:
        inch_words = [f"{whole:,}"] if whole or not part else []
        if part:
            shared = math.gcd(part, 16)
            inch_words.append(f"{part // shared}/{16 // shared}")
        words.append(" ".join(inch_words) + " in")
    return Printed(sign + " ".join(words), math.copysign(sixteenths / 16, value) + 0.0, "in", 0.0254)


def _dollars(value: float) -> Printed:
    cents = round(value, 2) + 0.0
    text = f"{abs(cents):,.2f}".removesuffix(".00")
    return Printed(f"{'-' if cents < 0 else ''}${text}", cents, "$", 1.0)


@cache
def _pretty(name: str) -> str:
    """Return a unit's name as printed.

    >>> _pretty("BTU/(h*ft2*°F)"), _pretty("delta_degF"), _pretty("kg**2")
    ('BTU/(h·ft²·°F)', '°F', 'kg²')
    """
    text = name.replace("delta_deg", "°").replace("**", "").replace("*", "·")
    signs = list(text)
    for place in range(1, len(signs)):
        if signs[place] in _RAISED and signs[place - 1].isalpha():
            signs[place] = _RAISED[signs[place]]
    return "".join(signs)
