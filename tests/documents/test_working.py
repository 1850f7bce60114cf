"""The working of one figure: the result first, then the nearest steps, then what it all rests on."""

from __future__ import annotations

import pytest

from curbwright.build import examples
from curbwright.build.file import load_text
from curbwright.documents.working import WIDTH, find, working_lines
from curbwright.errors import UnknownName
from curbwright.figures import roots
from curbwright.sheets import Worksheets, work


@pytest.fixture(scope="module")
def sheets() -> Worksheets:
    return work(load_text(examples.text("coffee")))


def test_the_result_comes_first_and_the_nearest_step_next(sheets: Worksheets) -> None:
    lines = list(working_lines(sheets.figures["balance.road_ready.tongue_share"], "us"))
    share = 100 * float(sheets.figures["balance.road_ready.tongue_share"])
    assert lines[0] == "tongue share = 1 − centre / axle"
    assert f"{share:.4g} %" in lines[2]
    nearest = next(n for n, line in enumerate(lines) if line.strip() == "balance.road_ready.centre_station")
    deeper = next(n for n, line in enumerate(lines) if line.strip() == "balance.masses.floor_mass")
    assert nearest < deeper


def test_everything_it_rests_on_is_named(sheets: Worksheets) -> None:
    figure = sheets.figures["balance.tires.reserve"]
    text = " ".join(" ".join(working_lines(figure, "us")).split())
    assert roots(figure)
    assert [path for path in roots(figure) if path not in text] == []


def test_no_step_is_printed_twice(sheets: Worksheets) -> None:
    lines = list(working_lines(sheets.figures["balance.worst.tongue_share_least"], "us"))
    ids = [line.strip() for line in lines if line.startswith("  ") and line.strip() in sheets.figures]
    assert len(ids) == len(set(ids)) > 20


@pytest.mark.parametrize("steps", [0, 1, 2, 3])
def test_so_many_steps_down_and_no_further(sheets: Worksheets, steps: int) -> None:
    figure = sheets.figures["balance.tongue_share"]
    fewer = list(working_lines(figure, "us", steps))
    more = list(working_lines(figure, "us", steps + 1))
    assert len(fewer) < len(more)
    assert max(map(len, more)) <= WIDTH


def test_a_schedule_says_once_what_every_row_shares(sheets: Worksheets) -> None:
    figure = sheets.figures["balance.road_ready.share_variance"]
    lines = list(working_lines(figure, "us", 0))
    once = next(line for line in lines if "in every row" in line)
    assert "gross" in once
    assert "axle" in once
    heads = " ".join(lines[lines.index(once) + 1 : lines.index(once) + 3])
    assert "station" in heads
    assert "gross" not in heads


@pytest.mark.parametrize(
    ("typed", "near"),
    [
        ("balance.tongue_shar", "balance.tongue_share"),
        ("tongue_share", "tongue_share"),
        ("balance.gros", "balance.gross"),
    ],
)
def test_a_name_a_little_off_finds_its_neighbours(sheets: Worksheets, typed: str, near: str) -> None:
    with pytest.raises(UnknownName, match=near):
        find(sheets, typed)
