"""Sheet gauges from a table, wire gauges from their formula, and R-values."""

from __future__ import annotations

import math
import os
from functools import cache

from curbwright.units.numbers import decimal
from curbwright.units.tables import rows
from curbwright.units.text import Token, refuse, tokens

_METALS = {
    "": "steel", "steel": "steel", "carbon steel": "steel", "mild steel": "steel",
    "galvanised": "galvanised", "galvanized": "galvanised", "galv": "galvanised",
    "galvanised steel": "galvanised", "galvanized steel": "galvanised",
    "stainless": "stainless", "stainless steel": "stainless", "ss": "stainless",
    "aluminium": "aluminium", "aluminum": "aluminium",
}  # fmt: skip
_GAUGE = ("ga", "gauge", "gage")
_INCH = 0.0254
_R_VALUE = 0.17611018368230585
"""m2·K/W in one h·ft2·°F/BTU, worked from the exact foot and the BTU of the table."""


@cache
def _sheets() -> dict[tuple[str, str], tuple[float, str, str]]:
    """Thickness (in), standard and how it is known, by metal and gauge."""
    table = rows(os.path.join(os.path.dirname(__file__), "gauges.csv"))
    return {(row[0], row[1]): (float(row[2]), row[3], row[5]) for row in table}


def sheet_gauge(words: str) -> tuple[float, str] | None:
    """Return the thickness (m) of a sheet gauge and a note on its standard; None where none is named.

    Without a metal it is steel in the manufacturers' standard gauge. Raises UnitProblem for a gauge or a
    metal that is not in the table.

    >>> sheet_gauge("16 ga")
    (0.00151892, '16 ga steel is 0.0598 in (manufacturers standard, computed)')
    """
    found = [token for token in tokens(words) if token.text not in ("-", "#", ".", ",")]
    named = next((at for at, token in enumerate(found) if token.text.casefold() in _GAUGE), None)
    if named is None:
        return None
    gauge, said = _whole(found[:named]), " ".join(token.text for token in found[named + 1 :]).casefold()
    metal = _METALS.get(said)
    if gauge is None or metal is None:
        raise refuse(words, "is no sheet gauge", 'Write it like "16 ga" or "16 ga stainless"')
    if (metal, gauge) not in _sheets():
        sizes = ", ".join(size for each, size in _sheets() if each == metal)
        raise refuse(words, f"is not a gauge in the table ({metal}: {sizes})", "Write inches or mm")
    inches, standard, how = _sheets()[metal, gauge]
    return inches * _INCH, f"{gauge} ga {metal} is {inches:.4f} in ({standard}, {how})"


def _whole(found: list[Token]) -> str | None:
    """Return the digits of a single whole number of one or two digits, without leading zeros."""
    digits = found[0].text if len(found) == 1 else ""
    return str(int(digits)) if digits.isdecimal() and len(digits) <= 2 else None


def wire_gauge(words: str) -> tuple[float, str] | None:
    """Return the area (m2) of an AWG size and a note; None where AWG is not named. Raises UnitProblem.

    >>> area, note = wire_gauge("12 AWG")
    >>> round(area * 1e6, 3), note
    (3.309, '12 AWG is 3.309 mm2')
    """
    text = words.casefold().replace(" ", "").replace("-", "").replace("#", "")
    if not text.startswith("awg") and not text.endswith("awg"):
        return None
    size = text.removeprefix("awg").removesuffix("awg")
    number = _wire_number(size)
    if number is None:
        raise refuse(words, "is no wire gauge", 'Write it like "12 AWG" or "2/0 AWG", from 4/0 to 40')
    return wire_area(number), f"{size} AWG is {wire_area(number) * 1e6:.4g} mm2"


def _wire_number(size: str) -> int | None:
    """Return the number of a wire gauge: 12, or 0 and below for 1/0 to 4/0."""
    if size in ("1/0", "2/0", "3/0", "4/0"):
        return 1 - int(size[0])
    if size in ("0", "00", "000", "0000"):
        return 1 - len(size)
    two = size.isascii() and size.isdecimal() and len(size) <= 2
    return int(size) if two and size[0] != "0" and int(size) <= 40 else None


def wire_area(number: int) -> float:
    """Return the area (m2) of a wire by its AWG number; 0, -1, -2, -3 are 1/0, 2/0, 3/0, 4/0.

    The diameter is 0.127 mm * 92**((36 - number) / 39): 36 AWG is 0.005 in, 4/0 is 0.46 in, 39 steps apart.

    >>> round(wire_area(-3) * 1e6, 1)
    107.2
    """
    diameter = 0.127e-3 * math.pow(92.0, (36 - number) / 39)
    return math.pi / 4 * diameter**2


def wire_name(area: float) -> str | None:
    """Return the AWG size that an area (m2) is, within one part in a million; None for any other.

    >>> wire_name(wire_area(-1)), wire_name(4e-6)
    ('2/0', None)
    """
    for number in range(-3, 41):
        if math.isclose(area, wire_area(number), rel_tol=1e-6):
            return str(number) if number > 0 else f"{1 - number}/0"
    return None


def r_value(words: str) -> tuple[float, str] | None:
    """Return the resistance (m2·K/W) of R-13 or RSI 2.3; None where neither is named.

    >>> round(r_value("R-13")[0], 4)
    2.2894
    """
    for prefix, factor in (("rsi", 1.0), ("r", _R_VALUE)):
        rest = words[len(prefix) :].lstrip(" -")
        if words.casefold().startswith(prefix) and rest[:1].isdecimal() and not rest.strip("0123456789.,"):
            return decimal(rest, words) * factor, ""
    return None
