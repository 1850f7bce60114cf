"""The bank and the panels in the build file: rows, names, what the catalogue fills in, one report."""

from __future__ import annotations

from pathlib import Path

import pytest

from curbwright.build.file import load_text, read
from curbwright.errors import BuildFileProblem

CART = """
[cart]
name = "Power"
[trailer]
deck_length = "3 m"
deck_width = "2 m"
deck_height = "0.5 m"
ball_to_deck = "1 m"
[items.a]
kind = "battery"
like = "batt-fla-gc2-6v"
[items.b]
kind = "battery"
like = "batt-fla-gc2-6v"
"""


def problems(text: str) -> list[str]:
    with pytest.raises(BuildFileProblem) as caught:
        load_text(CART + text)
    return [str(one) for one in caught.value.problems]


def test_rows_are_read_in_si() -> None:
    bank = load_text(CART + '[battery]\nrates = [["20 h", "225 Ah"], ["300 min", "185 Ah"]]\n').battery
    assert bank is not None
    assert bank.rates is not None
    assert [tuple(map(float, row)) for row in bank.rates] == [(72000, 810000), (18000, 666000)]
    cell = bank.cell("rates", 1, 0, "time")
    assert (cell.value, cell.unit, cell.path, cell.typed) == (18000, "s", "battery.rates.1.0", "300 min")


@pytest.mark.parametrize(
    ("rows", "says"),
    [
        ('[["20 h", "100"]]', 'row 1: "100" has no unit'),
        ('[["20 h", "100 Ah"], ["5 h"]]', "row 2 has 1 entries, and 2 are due"),
        ('["20 h", "100 Ah"]', "needs a list of rows"),
        ('"20 h"', "needs a list of rows"),
        ("20", "needs a list of rows"),
        ("[[20, 100]]", "row 1: 20"),
        ("[" + '["1 h", "1 Ah"],' * 6 + "]", "has 6 rows, and 5 are the most"),
    ],
)
def test_what_is_wrong_with_rows_is_told_with_its_line(rows: str, says: str) -> None:
    (told,) = problems(f"[battery]\nrates = {rows}\n")
    assert says in told
    assert told.startswith("line 16, battery.rates:")


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ('[battery]\npieces = ["a", "c"]\n', "there is no item"),
        ('[battery]\npieces = ["a", "a"]\n', "is named twice"),
        ('[battery]\nbeside = ["botle"]\n', "there is no item"),
        ('[battery]\npieces = ["a", "b"]\nin_series = 4\n', "make no whole strings of 4"),
        ('[battery]\npieces = ["a", "b"]\nin_series = 2\nin_parallel = 2\n', "2 strings of 2 are 4"),
        ('[battery.chargers.shore]\nsupply = "shore"\nitem = "charger"\n', "there is no item"),
        ("[battery.chargers.shore]\n", "battery.chargers.shore.supply: is missing"),
        ('[battery]\nchemistry = "lithium"\n', "not one of the choices"),
        ('[battery]\ncapacity = "100 A"\n', "battery.capacity"),
        ('[solar]\npanels = ["a", "roof"]\n', "there is no item"),
        ('[solar]\npanels = ["a", "b"]\ncount = 3\n', "is 3, and 2 panels are named"),
        ('[solar.controller]\nitem = "mppt"\n', "there is no item"),
        ('[solar]\nshade = [["morning", "10:00", "50 %"]]\n', "row 1:"),
        ('[solar]\nloss_per_degree = "0.4 %"\n', "solar.loss_per_degree"),
    ],
)
def test_what_cannot_be_meant_is_told(text: str, says: str) -> None:
    assert any(says in one for one in problems(text))


def test_everything_wrong_comes_in_one_report() -> None:
    text = '[battery]\npieces = ["c"]\ncapacity = "big"\n[solar]\nrated = "100 V"\npanels = ["d"]\n'
    assert len(problems(text)) == 4


@pytest.mark.parametrize("field", ["pieces", "beside", "chargers", "rates", "capacity"])
@pytest.mark.parametrize("value", ["3", '"x"', "[1]", "[[1]]", "true", "{ x = 1 }"])
def test_nothing_written_there_brings_it_down(field: str, value: str) -> None:
    assert problems(f"[battery]\n{field} = {value}\n")


def test_the_catalogue_fills_batteries_with_their_table() -> None:
    build = load_text(CART + '[battery]\npieces = ["a", "items.b"]\nin_series = 2\n')
    piece = build.items["a"].battery
    assert piece is not None
    assert (piece.chemistry, piece.voltage, piece.capacity) == ("flooded", 6, 225 * 3600)
    assert piece.rates is not None
    assert len(piece.rates) == 4
    assert piece["capacity"].assumed
    assert piece.cell("rates", 0, 1, "").assumed
    assert build.items["b"].battery is not None


def test_a_written_capacity_leaves_the_catalogues_time_and_table_out() -> None:
    build = load_text(CART + '[battery]\npieces = ["a"]\n[items.a.battery]\ncapacity = "200 Ah"\n')
    piece = build.items["a"].battery
    assert piece is not None
    assert (piece.capacity_rate, piece.rates) == (None, None)
    assert not piece["capacity"].assumed


def test_a_build_knows_its_folder_when_it_was_read_from_one(tmp_path: Path) -> None:
    path = tmp_path / "cart.toml"
    path.write_text(CART, encoding="utf-8")
    assert read(path).folder == tmp_path
    assert load_text(CART).folder is None
