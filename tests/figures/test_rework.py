"""The reworking checker finds what it is for: lines that do not say what was worked, and lines too coarse."""

from __future__ import annotations

import pytest

from curbwright.equations import balance
from curbwright.figures import Figure, Summed, Worked, Worksheet, card_of
from curbwright.figures.origins import Governing, Scheduled, Solved
from tests.figures.rework import rework
from tests.figures.sample import entry, gap_share, lever, rest_moment, sheet


@pytest.mark.parametrize("system", ["us", "si"])
def test_an_honest_sheet_reworks(system: str) -> None:
    on, _ = sheet()
    report = rework(on, system=system)
    assert report.faults == []
    assert len(report.reworked) >= len(on.lines)


def planted(value: float, origin: object, unit: str = "kg*m") -> list[str]:
    on = Worksheet("planted", "Planted")
    on.lines.append(figure := Figure(value, id="planted.wrong", name="wrong", unit=unit, origin=origin))  # type: ignore[arg-type]
    on._by_id[figure.id] = figure
    return rework(on).faults


def test_a_line_that_does_not_say_what_was_worked_is_found() -> None:
    on, _ = sheet()
    load, arm = on.lines[0], on.lines[2]
    assert planted(45.0, Worked(card_of(lever), {"load": load, "arm": arm})) == []
    assert "planted.wrong" in planted(45.2, Worked(card_of(lever), {"load": load, "arm": arm}))[0]


def test_a_wrong_sum_is_found() -> None:
    on, _ = sheet()
    assert planted(50.0, Summed((on.lines[0], on.lines[1])), "kg") == []
    assert planted(50.3, Summed((on.lines[0], on.lines[1])), "kg") != []


def test_a_wrong_schedule_is_found() -> None:
    on, _ = sheet()
    rows = {"stove": {"load": on.lines[0], "arm": on.lines[2]}}
    assert planted(45.0, Scheduled(card_of(lever), rows)) == []
    assert planted(44.0, Scheduled(card_of(lever), rows)) != []


def test_a_root_that_is_none_is_found() -> None:
    on, made = sheet()
    inputs = {"load": on.lines[1], "moment": made["moment"]}
    assert planted(2.25, Solved(card_of(rest_moment), "arm", inputs), "m") == []
    assert planted(2.26, Solved(card_of(rest_moment), "arm", inputs), "m") != []


def test_a_case_that_does_not_govern_is_found() -> None:
    on, _ = sheet()
    cases = {"stove": on.lines[0], "sink": on.lines[1]}
    assert planted(30.0, Governing("largest", cases, "stove"), "kg") == []
    assert planted(20.0, Governing("largest", cases, "sink"), "kg") != []


def test_too_few_digits_are_found() -> None:
    on = Worksheet("coarse", "Coarse")
    load, arm = on.given(entry("a.load", 31.7)), on.given(entry("a.arm", 1.537, "m"))
    on.work("moment", "moment", lever, load=load, arm=arm)
    assert rework(on).faults == []
    assert any("print more digits" in fault for fault in rework(on, digits=1).faults)


def test_what_is_left_of_two_nearly_equal_terms_is_reported() -> None:
    on = Worksheet("near", "Near")
    part, whole = on.given(entry("a.part", 2.7351, "m")), on.given(entry("a.whole", 2.7383, "m"))
    on.work("gap", "gap", gap_share, part=part, whole=whole)
    report = rework(on)
    assert report.faults == []
    assert len(report.cancelled) == 1


def test_an_expression_with_numpy_names_reworks() -> None:
    on = Worksheet("tilt", "Tilt")
    on.work("tilt", "tilt", balance.tilt_angle, factor=on.given(entry("a.factor", 0.7254, "1")))
    on.work("swing", "swing", balance.slosh_frequency, width=on.given(entry("a.w", 0.61, "m")),
            depth=on.given(entry("a.d", 0.157, "m")),
            gravity=on.tabled("g", "gravity", 9.80665, "m/s**2", source="si-brochure"))  # fmt: skip
    report = rework(on)
    assert report.faults == []
    assert {"tilt.tilt", "tilt.swing"} <= set(report.reworked)
