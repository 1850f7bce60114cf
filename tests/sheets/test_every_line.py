"""Every printed line of every sheet of every example cart can be reworked from the numbers it prints."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

import curbwright
from curbwright.sheets import Worksheets
from tests.figures.rework import Report, rework

EXAMPLES = sorted(Path(curbwright.__file__).parent.joinpath("data", "examples").glob("*/cart.toml"))
OTHERS = sorted(Path(__file__).parents[1].joinpath("published").glob("*.toml"))
CARTS = [*EXAMPLES, *OTHERS]

every_cart = pytest.mark.parametrize("path", CARTS, ids=lambda path: f"{path.parent.name}/{path.stem}")
both_systems = pytest.mark.parametrize("system", ["us", "si"])


@cache
def worked(path: Path) -> Worksheets:
    return curbwright.work(curbwright.read(path))


@cache
def reports(path: Path, system: str) -> dict[str, Report]:
    return {sheet.id: rework(sheet, system=system) for sheet in worked(path).sheets}


def test_there_are_examples() -> None:
    assert EXAMPLES


@both_systems
@every_cart
def test_every_line_reworks_from_what_it_prints(path: Path, system: str) -> None:
    faults = [fault for report in reports(path, system).values() for fault in report.faults]
    assert not faults, "\n".join(faults)


@both_systems
@every_cart
def test_every_figure_was_looked_at(path: Path, system: str) -> None:
    """A line is reworked, or left of two nearly equal terms, or a procedure's; none is passed over."""
    for sheet in worked(path).sheets:
        report = reports(path, system)[sheet.id]
        seen = {text.partition(": ")[0] for text in (*report.reworked, *report.cancelled, *report.procedures)}
        assert set(sheet.figures()) <= seen


@both_systems
@every_cart
def test_few_lines_are_left_of_two_nearly_equal_terms(path: Path, system: str) -> None:
    found = reports(path, system).values()
    cancelled = [text for report in found for text in report.cancelled]
    looked_at = sum(len(report.reworked) for report in found)
    assert len(cancelled) <= looked_at / 50, "\n".join(cancelled)
