"""The towing tables: every cell reads, every row says where it comes from, conflicts stay visible."""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path

import pytest

from curbwright import data, sources, units

FOLDER = Path(data.__file__).parent / "towing"
TABLES = sorted(f"towing/{path.stem}" for path in FOLDER.glob("*.csv"))
COLUMNS = {
    "mass": "gross_up_to gross_from gross_over lengthwise sideways vertical rating breaking_load tongue load",
    "length": "ball shank width width_metric width_from height trailer_length length_from",
    "pressure": "pressure",
    "share": "share low high",
    "number": "class index times safety lengthwise_times sideways_times vertical_times",
}
KINDS = {column: kind for kind, columns in COLUMNS.items() for column in columns.split()}
WORDS = {"hitch", "size", "load_range", "state", "applies_to", "where", "rule", "asks_for", "direction", "of",
         "region", "source", "how", "note"}  # fmt: skip


@pytest.mark.parametrize("name", TABLES)
def test_every_cell_reads_and_every_row_has_a_source(name: str) -> None:
    table = data.table(name)
    assert set(table.columns) <= set(KINDS) | WORDS, "a column of no known kind"
    for row in table:
        assert sources.look_up(row["source"])
        assert row["how"] in sources.HOW
        for column, cell in row.items():
            if column in KINDS and cell:
                assert float(units.read(cell, KINDS[column])) > 0


def test_a_figure_from_memory_is_not_given_a_publication() -> None:
    for name in TABLES:
        for row in data.table(name):
            assert (row["how"] == "memory") == (row["source"] == "recalled")


def test_all_states_are_listed_and_what_is_in_conflict_is_kept() -> None:
    thresholds: dict[str, set[str]] = defaultdict(set)
    says: dict[str, set[str]] = defaultdict(set)
    for row in data.table("towing/brake_thresholds"):
        if row["source"].startswith("state-brake-list"):
            thresholds[row["state"]].add(row["gross_from"])
            says[row["state"]].add(row["note"].partition(":")[0])
    assert len(thresholds) == 51
    conflicts = {state for state, found in thresholds.items() if len(found) > 1}
    assert conflicts == {"AK", "CO", "GA", "MA", "MI", "MN", "MO", "NE", "NY", "UT", "WY"}
    assert conflicts == {state for state, found in says.items() if found == {"the lists disagree"}}


def test_classes_and_tire_loads_only_grow() -> None:
    for name in ("towing/couplers", "towing/chains"):
        limits = [float(units.read(row["gross_up_to"], "mass")) for row in data.table(name)]
        assert limits == sorted(limits)
    loads: dict[str, list[tuple[float, float]]] = defaultdict(list)
    for row in data.table("towing/st_tires"):
        if row["source"] == "st-tire-chart":
            pressure = float(units.read(row["pressure"], "pressure"))
            loads[row["size"]].append((pressure, float(units.read(row["load"], "mass"))))
    for found in loads.values():
        assert found == sorted(found)
        assert len({load for _, load in found}) == len(found)
