"""What is printed, that it reads back, and that the number told is the number printed."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from curbwright.errors import WrongUnit
from curbwright.units import KINDS, factor, read, show, shown_number

INCH = 0.0254


@pytest.mark.parametrize(
    ("inches", "text"),
    [
        (0.0, "0 in"),
        (0.0625, "1/16 in"),
        (0.0598, "0.0598 in"),
        (1.5, "1 1/2 in"),
        (3.3, "3.3 in"),
        (23.622, "23 5/8 in"),
        (24.0, "24 in"),
        (24.0625, "2 ft 1/16 in"),
        (25.0, "2 ft 1 in"),
        (54.33, "54.33 in"),
        (60.0, "5 ft"),
        (66.5, "5 ft 6 1/2 in"),
        (168.33, "14 ft 5/16 in"),
        (-66.0, "-5 ft 6 in"),
        (1200.0, "100 ft"),
        (63360.0, "1 mi"),
        (633600.0, "10 mi"),
    ],
)
def test_lengths_print_as_a_tape_reads(inches: float, text: str) -> None:
    assert show(inches * INCH, "m") == text


@pytest.mark.parametrize(
    ("value", "unit", "system", "shown", "text"),
    [
        (0.6, "m", "si", None, "600 mm"),
        (2.4384, "m", "si", None, "2.438 m"),
        (1.6764, "m", "us", "in", "66 in"),
        (1.6764, "m", "us", "ft", "5.5 ft"),
        (28.1227, "kg", "us", None, "62 lb"),
        (28.1227, "kg", "si", None, "28.12 kg"),
        (0.0, "kg", "us", None, "0 lb"),
        (-0.0, "kg", "us", None, "0 lb"),
        (-0.0, "m", "us", None, "0 in"),
        (0.1, "kg", "us", None, "3.527 oz"),
        (9.76486, "kg/m**2", "us", None, "2 lb/ft²"),
        (4396.07, "W", "us", "BTU/h", "15,000 BTU/h"),
        (4396.07, "W", "us", None, "4,396 W"),
        (43960.7, "W", "us", None, "43.96 kW"),
        (333.15, "K", "us", None, "140 °F"),
        (333.15, "K", "si", None, "60 °C"),
        (273.15, "K", "si", None, "0 °C"),
        (10.0, "delta_degC", "us", None, "18 °F"),
        (10.0, "delta_degC", "si", None, "10 °C"),
        (23400.0, "s", "us", "clock", "06:30"),
        (86399.0, "s", "us", "clock", "24:00"),
        (202.0, "1", "us", "date", "21 July"),
        (5400.0, "s", "us", None, "90 min"),
        (2739.978, "Pa", "us", None, "11 in WC"),
        (206842.7, "Pa", "us", None, "30 psi"),
        (206842.7, "Pa", "si", None, "206.8 kPa"),
        (0.056633693, "m**3/s", "us", None, "120 cfm"),
        (0.000157725, "m**3/s", "us", None, "2.5 gpm"),
        (0.000157725, "m**3/s", "us", "gpm|L/min", "2.5 gpm"),
        (0.000157725, "m**3/s", "si", "gpm|L/min", "9.463 L/min"),
        (0.12, "1", "us", None, "0.12"),
        (0.12, "1", "us", "%", "12 %"),
        (1250.0, "USD", "us", None, "$1,250"),
        (1250.5, "USD", "us", None, "$1,250.50"),
        (-5.25, "USD", "us", None, "-$5.25"),
        (4.0e-06, "m**2", "us", "AWG", "7.894 kcmil"),
        (2.28943, "m**2*K/W", "us", None, "R-13"),
        (2.28943, "m**2*K/W", "si", None, "2.289 m²·K/W"),
        (94.907, "N*m", "us", None, "70 lbf·ft"),
        (0.2443461, "rad", "us", None, "14°"),
        (40 / 3600, "1/s", "us", None, "40/h"),
        (360000.0, "C", "us", None, "100 Ah"),
        (0.00198, "ohm", "us", None, "1.98 mohm"),
        (16.0, "kg**2", "us", None, "16 kg²"),
        (1.0e-9, "kg**2", "us", None, "0.000000001 kg²"),
        (5.83e-07, "m**4", "us", None, "1.401 in⁴"),
        (123456789.0, "1", "us", None, "123,500,000"),
        (1e-17, "m", "us", None, "0 in"),
    ],
)
def test_printed_as_expected(value: float, unit: str, system: str, shown: str | None, text: str) -> None:
    assert show(value, unit, system=system, shown=shown) == text


@pytest.mark.parametrize("size", ["4/0", "3/0", "2/0", "1/0", *map(str, range(1, 41))])
def test_a_wire_gauge_prints_by_its_name(size: str) -> None:
    assert show(read(f"{size} AWG", "wire_size"), "m**2", shown="AWG") == f"{size} AWG"


def test_a_wire_gauge_tells_its_area() -> None:
    number, unit, size = shown_number(read("12 AWG", "wire_size"), "m**2", shown="AWG")
    assert (number, unit) == (6.53, "kcmil")
    assert number * size == pytest.approx(3.309e-6, rel=1e-3)


def test_more_digits_on_demand() -> None:
    assert show(math.pi, "1", digits=7) == "3.141593"
    assert show(54.33 * INCH, "m", digits=3) == "4 ft 6 5/16 in"


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_what_is_no_number_is_not_printed(value: float) -> None:
    with pytest.raises(ValueError, match="no finite number"):
        show(value, "m")


@pytest.mark.parametrize(("unit", "shown"), [("m", "lb"), ("W", "kWh"), ("K", "furlong"), ("kg", "clock")])
def test_a_shown_unit_of_another_kind_is_refused(unit: str, shown: str) -> None:
    with pytest.raises(WrongUnit):
        show(1.0, unit, shown=shown)


def test_only_two_systems() -> None:
    with pytest.raises(ValueError, match="us and si"):
        show(1.0, "m", system="imperial")


def values(kind: str) -> st.SearchStrategy[float]:
    """Values a builder's field of a kind may hold, from small to large, both signs where both are allowed."""
    limits = KINDS[kind]
    if kind == "clock":
        return st.integers(0, 1440).map(lambda minutes: minutes * 60.0)
    if kind == "date":
        return st.integers(1, 365).map(float)
    if kind == "money":
        return st.integers(0, 10**9).map(lambda cents: cents / 100)
    if kind == "temperature":
        return st.floats(1.0, limits.most * 0.999)
    top = min(limits.most, 1e9) * 0.999
    size = st.floats(math.log10(top) - 9, math.log10(top)).map(lambda power: 10.0**power)
    signs = st.sampled_from([1.0, -1.0] if limits.least < 0 else [1.0])
    return st.one_of(st.just(0.0), st.builds(lambda sign, one: sign * one, signs, size))


@st.composite
def quantities(draw: st.DrawFn) -> tuple[str, float]:
    kind = draw(st.sampled_from(list(KINDS)))
    return kind, draw(values(kind))


def told(value: float, kind: str, system: str, digits: int) -> tuple[float, float, float]:
    """The number printed, the SI size of its unit, and the offset of that unit."""
    unit = KINDS[kind].unit
    number, name, size = shown_number(value, unit, system=system, shown=KINDS[kind].shown, digits=digits)
    return number, size, factor(name)[2] if kind == "temperature" else 0.0


@given(quantities(), st.sampled_from(["us", "si"]), st.integers(3, 9))
def test_what_is_printed_reads_back_as_what_was_told(
    case: tuple[str, float], system: str, digits: int
) -> None:
    kind, value = case
    text = show(value, KINDS[kind].unit, system=system, shown=KINDS[kind].shown, digits=digits)
    number, size, offset = told(value, kind, system, digits)
    assert len(text) <= 64
    assert "e" not in text.split(" ")[0]
    if not text.endswith("AWG"):
        assert read(text, kind) == pytest.approx(number * size + offset, rel=1e-12, abs=1e-15 * size)


@given(quantities(), st.sampled_from(["us", "si"]), st.integers(3, 9))
def test_what_is_told_is_the_value_to_its_digits(case: tuple[str, float], system: str, digits: int) -> None:
    kind, value = case
    number, size, offset = told(value, kind, system, digits)
    exact = (value - offset) / size
    half_step = 0.5 * 10.0 ** (math.floor(math.log10(abs(exact))) - digits + 1) if exact else 0.0
    finest = {"temperature": 0.5e-3, "money": 0.5e-2, "clock": 0.5}.get(kind, 0.5e-12)
    assert abs(number - exact) <= max(half_step, finest) * (1 + 1e-6)


@given(quantities(), st.sampled_from(["us", "si"]), st.integers(3, 9))
def test_printing_again_what_was_printed_changes_nothing(
    case: tuple[str, float], system: str, digits: int
) -> None:
    kind, value = case
    if system == "us" and KINDS[kind].unit == "m":
        kind = "angle"  # a length printed as a decimal may lie close enough to a fraction to print as one
    number, size, offset = told(value, kind, system, digits)
    again, size_again, offset_again = told(number * size + offset, kind, system, digits)
    assert again * size_again + offset_again == pytest.approx(number * size + offset, rel=1e-12, abs=1e-15)


@given(st.integers(1, 16 * 24 * 12))
def test_every_sixteenth_prints_as_a_fraction_and_reads_back(sixteenths: int) -> None:
    text = show(sixteenths / 16 * INCH, "m")
    assert "." not in text
    assert read(text, "length") == pytest.approx(sixteenths / 16 * INCH, rel=1e-12)
