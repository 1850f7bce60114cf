"""The example carts on gas: what becomes of the flatbread cart's bottles when it turns cold, and why."""

from __future__ import annotations

import pytest

from curbwright.build import examples
from curbwright.build.edit import set_value
from curbwright.build.file import load_text
from curbwright.documents.working import working_lines
from curbwright.figures import Figure, roots
from curbwright.requirements import Finding, judge
from curbwright.sheets import Worksheets, work

HOUR = 3600.0


def worked(ambient: str) -> Worksheets:
    return work(load_text(set_value(examples.text("flatbread"), "gas.ambient", ambient).text))


def finding(sheets: Worksheets, id: str) -> Finding:
    return next(one for one in judge(sheets) if one.id == id)


def test_at_75_degrees_the_bottles_hold_the_day_and_at_20_they_starve() -> None:
    warm, cold = finding(worked("75 °F"), "gas.full_fire"), finding(worked("20 °F"), "gas.full_fire")
    assert (warm.verdict, cold.verdict) == ("pass", "fail")
    assert warm.provided is not None
    assert cold.provided is not None
    assert float(cold.provided) < 2 * HOUR < 5 * HOUR < float(warm.provided)
    assert "gas.ambient" in cold.fields


def test_the_same_by_the_air_of_the_pitch() -> None:
    text = examples.text("flatbread").replace('ambient = "75 °F"', "")
    cold = text.replace("[pitch]\n", '[pitch]\nlow = "20 °F"\n')
    assert finding(work(load_text(text)), "gas.full_fire").verdict == "pass"
    assert finding(work(load_text(cold)), "gas.full_fire").verdict == "fail"


def test_they_fail_cold_and_not_empty() -> None:
    """Of 40 lb, 93,000 BTU/h for under two hours takes 8: most of it is still there."""
    figures = worked("20 °F").figures
    assert float(figures["gas.cold.left_connected"]) > 0.75
    assert float(figures["gas.cold.alone_connected_bottle_a"]) < 1 * HOUR
    assert float(figures["gas.vaporisation"]) < float(figures["gas.connected_load"])


def test_the_working_tells_it_line_by_line() -> None:
    """Each cause is named with its number: air, limit of the regulator, wall, load, and where to set them."""
    figure = worked("20 °F").figures["gas.starves_after"]
    text = " ".join(" ".join(working_lines(figure, "us")).split())
    for said in (
        "in the coldest air <", "ambient: 20 °F", "coldest: -21.34 °F", "set gas.regulator.inlet_least",
        "connected load, every burner on", "75,000 BTU/h", "93,000 BTU/h",
        "bottle A: gas in it when the day begins",
        "heat that the air brings to a bottle", "set items.bottle_a.width", "[gas.ambient]",
    ):  # fmt: skip
        assert said in text, said
    assert {"gas.ambient", "items.griddle.gas_input", "items.bottle_a.charge"} <= roots(figure)


def course(figures: dict[str, Figure], what: str) -> list[float]:
    return [
        float(one) for id, one in figures.items() if id.startswith("gas.cold.hour_") and id.endswith(what)
    ]


def test_the_course_falls_hour_by_hour_until_the_regulator_starves() -> None:
    figures = worked("60 °F").figures
    pressures = course(figures, ".pressure")
    assert len(pressures) >= 1
    assert pressures == sorted(pressures, reverse=True)
    assert min(pressures) > 10 * 6894.757


@pytest.mark.parametrize("name", ["coffee", "flatbread", "shelter"])
def test_what_outside_checks_rely_on(name: str) -> None:
    figures = work(load_text(examples.text(name))).figures
    assert figures["gas.connected_load"].unit == "W"
    loads = [
        float(one) for id, one in figures.items() if id.startswith("items.") and id.endswith(".gas_input")
    ]
    assert float(figures["gas.connected_load"]) == pytest.approx(sum(loads))
    assert figures["gas.connected_load"].shown == "BTU/h|kW"
    for id in ("diversified_load", "energy_per_day", "bottles_needed", "vaporisation", "starves_after"):
        assert f"gas.{id}" in figures
    assert [id for id in figures if id.startswith("gas.pressure.")]
