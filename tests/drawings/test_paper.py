"""Paper, scales and the tables behind them."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from curbwright.drawings import Box, Line, paper
from curbwright.drawings.layers import layers
from curbwright.drawings.lettering import MINIMUM_HEIGHT
from curbwright.drawings.paper import fit, scales
from curbwright.drawings.primitives import Text
from curbwright.errors import UnknownName

SPAN = st.floats(0.05, 6.0)


def test_letter_is_eight_and_a_half_by_eleven_inches() -> None:
    sheet = paper("letter", portrait=True)
    assert (sheet.width, sheet.height) == (pytest.approx(8.5 * 25.4), pytest.approx(11 * 25.4))


def test_landscape_is_the_same_sheet_turned() -> None:
    tall, wide = paper("Tabloid", portrait=True), paper("tabloid")
    assert (tall.width, tall.height) == (wide.height, wide.width)


def test_unknown_paper_lists_the_known_ones() -> None:
    with pytest.raises(UnknownName, match="letter, tabloid"):
        paper("foolscap")


def test_half_inch_to_the_foot_is_one_to_twenty_four() -> None:
    by_name = {scale.name: scale.ratio for scale in scales("us")}
    assert by_name["1/2 in = 1 ft"] == 12 / 0.5
    assert by_name["1-1/2 in = 1 ft"] == 12 / 1.5
    assert {50, 25, 20, 10} <= {scale.ratio for scale in scales("si")}


@settings(deadline=None)
@given(SPAN, SPAN, st.sampled_from(["us", "si"]))
def test_fit_takes_the_largest_scale_that_fits(across: float, up: float, system: str) -> None:
    room = (220.0, 150.0)
    found = fit(Box(0, 0, across, up), room, system=system)
    assert found is not None

    def fits(ratio: float) -> bool:
        return across * 1000 / ratio <= room[0] and up * 1000 / ratio <= room[1]

    assert fits(found.ratio)
    assert not any(fits(scale.ratio) for scale in scales(system) if scale.ratio < found.ratio)


def test_nothing_fits_no_room() -> None:
    assert fit(Box(0, 0, 500, 1), (200, 100)) is None


def test_pens_are_weights_the_dxf_format_knows() -> None:
    known = {5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100}
    assert {round(layer.pen * 100) for layer in layers().values()} <= known


def test_dashes_come_in_pairs() -> None:
    assert all(len(layer.dash) % 2 == 0 for layer in layers().values())


def test_services_differ_without_colour() -> None:
    """Printed in black and white, water, waste, gas and wiring must still tell apart."""
    services = [layers()[name] for name in ("WATER", "HOT_WATER", "WASTE", "GAS", "POWER")]
    assert len({(layer.dash, layer.pen) for layer in services}) == len(services)


def test_a_line_on_no_layer_is_refused() -> None:
    with pytest.raises(UnknownName, match="OUTLINE"):
        Line((0, 0), (1, 1), layer="WALLS")


@pytest.mark.parametrize("height", [1.9, 0.0, -3.0, float("nan")])
def test_lettering_too_small_to_read_is_refused(height: float) -> None:
    with pytest.raises(ValueError, match="2"):
        Text((0, 0), "small print", height)
    assert Text((0, 0), "just legible", MINIMUM_HEIGHT).height == 2.0
