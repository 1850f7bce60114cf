"""The tables: whole, sourced, unambiguous, all reachable, and quick to load."""

from __future__ import annotations

import csv
import os
import subprocess
import sys
import time
from pathlib import Path

import pint
import pytest

import curbwright.units
from curbwright.errors import UnitProblem
from curbwright.units import KINDS, factor, read, show
from curbwright.units.gauges import wire_area
from curbwright.units.unit import table

FOLDER = Path(curbwright.units.__file__).parent
PINT = pint.UnitRegistry()


def cells(name: str) -> list[dict[str, str]]:
    with (FOLDER / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


@pytest.mark.parametrize("name", ["units.csv", "kinds.csv", "gauges.csv"])
def test_tables_that_load_without_a_parser_hold_no_quotes(name: str) -> None:
    text = (FOLDER / name).read_text(encoding="utf-8")
    assert '"' not in text
    assert len({line.count(",") for line in text.splitlines()}) == 1


@pytest.mark.parametrize("name", ["units.csv", "gauges.csv"])
def test_every_figure_says_how_it_is_known(name: str) -> None:
    for row in cells(name):
        assert row["how"] in {"read", "computed", "memory", "practice"}
        assert row["source"] or row["how"] == "practice"


def test_only_two_spellings_mean_two_units() -> None:
    shared = {spelling for spelling, rows in table().exact.items() if len(rows) > 1}
    assert shared == {"g", "C"}


def test_every_spelling_of_a_unit_converts_alike() -> None:
    for row in table().rows:
        for spelling in row.aliases:
            if spelling not in {"g", "C", "1"}:
                assert factor(spelling) == factor(row.name), (row.name, spelling)


@pytest.mark.parametrize("kind", KINDS)
def test_every_unit_named_to_the_builder_is_read(kind: str) -> None:
    for unit in KINDS[kind].units:
        if kind in {"clock", "number"} or unit.startswith(("a ", "R-")):
            continue
        assert read(f"7 {unit}", kind) > 0


@pytest.mark.parametrize("kind", KINDS)
def test_every_unit_of_a_kind_is_one_that_pint_knows(kind: str) -> None:
    if kind not in {"share", "number", "money"}:
        assert PINT.Unit(KINDS[kind].unit)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("system", ["us", "si"])
def test_every_size_of_every_kind_prints_in_units_that_exist(kind: str, system: str) -> None:
    for power in range(-12, 13):
        assert show(10.0**power, KINDS[kind].unit, system=system)


@pytest.mark.parametrize("row", cells("doubtful.csv"), ids=lambda row: f"{row['kind']}: {row['word']}")
def test_every_doubt_is_reached(row: dict[str, str]) -> None:
    kind = "mass" if row["kind"] == "*" else row["kind"]
    number = "1:30" if row["word"] == ":" else f"7 {row['word']}"
    with pytest.raises(UnitProblem) as caught:
        read(number, kind)
    assert row["why"] in caught.value.what
    assert caught.value.try_this == row["try_this"].replace("{n}", "7")


POUNDS_PER_SQUARE_FOOT = {
    "7": 7.5, "8": 6.875, "10": 5.625, "11": 5.0, "12": 4.375, "14": 3.125, "16": 2.5, "18": 2.0, "20": 1.5,
    "22": 1.25, "24": 1.0, "26": 0.75, "28": 0.625, "30": 0.5,
}  # fmt: skip
"""The weights that define the manufacturers' standard gauge of steel sheet, at 41.82 lb/ft2 per inch."""


def test_steel_gauges_are_their_weights_over_the_weight_of_an_inch() -> None:
    steel = {
        row["gauge"]: float(row["thickness_in"]) for row in cells("gauges.csv") if row["metal"] == "steel"
    }
    assert steel == {gauge: round(weight / 41.82, 4) for gauge, weight in POUNDS_PER_SQUARE_FOOT.items()}


def test_aluminium_gauges_are_the_wire_gauge_diameters() -> None:
    for row in cells("gauges.csv"):
        if row["metal"] == "aluminium":
            diameter = (wire_area(int(row["gauge"])) * 4 / 3.141592653589793) ** 0.5 / 0.0254
            assert float(row["thickness_in"]) == pytest.approx(diameter, abs=0.00006)


def test_tables_load_quickly() -> None:
    def seconds() -> float:
        table.cache_clear()
        began = time.thread_time()
        table()
        return time.thread_time() - began

    assert min(seconds() for _ in range(5)) < 0.003


def test_reading_needs_nothing_but_the_standard_library() -> None:
    code = "import sys, curbwright.units; print(*{name.partition('.')[0] for name in sys.modules})"
    paths = os.pathsep.join([str(FOLDER.parent.parent), *filter(None, sys.path)])
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, env={"PYTHONPATH": paths}
    )
    foreign = (
        set(done.stdout.split())
        - set(sys.stdlib_module_names)
        - {"curbwright", "__main__", "_distutils_hack"}
    )
    assert not {name for name in foreign if not name.startswith(("_", "sitecustomize"))}
