from __future__ import annotations

import csv
import re
from pathlib import Path

import pytest

from curbwright import sources
from curbwright.errors import UnknownName

PACKAGE = Path(sources.__file__).parent
KEY = re.compile(r"[a-z0-9][a-z0-9._-]*")


def rows_of(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(lines))


def cited_keys(path: Path) -> set[str]:
    """The keys in the source column of a table; a cell may hold several, parted by spaces."""
    return {key for row in rows_of(path) for key in (row.get("source") or "").split()}


TABLES = [path for path in sorted(PACKAGE.rglob("data/**/*.csv")) if "source" in rows_of(path)[0]]


def test_a_place_after_the_colon_replaces_the_place_in_the_table() -> None:
    whole, part = sources.look_up("nfpa-58-6-24"), sources.look_up("nfpa-58-6-24:6.24.3.4(B)")
    assert whole.where == "6.24.3"
    assert part.where == "6.24.3.4(B)"
    assert (part.key, part.title, part.address) == (whole.key, whole.title, whole.address)


def test_an_unknown_key_names_the_nearest() -> None:
    with pytest.raises(sources.UnknownSource, match=r'"fmvs-110" is not a source. Did you mean fmvss-110'):
        sources.look_up("fmvs-110")
    with pytest.raises(UnknownName):
        sources.look_up("")


def test_keys_are_unique_and_plain() -> None:
    listed = [row["key"] for row in rows_of(sources.TABLE)]
    assert len(listed) == len(set(listed)) == len(sources.keys())
    assert [key for key in listed if not KEY.fullmatch(key)] == []


@pytest.mark.parametrize("key", sources.keys())
def test_a_source_says_what_it_is_and_how_it_was_obtained(key: str) -> None:
    source = sources.look_up(key)
    assert source.title.strip() == source.title != ""
    assert source.how in sources.HOW
    assert source.how != "read" or source.where or source.edition or source.address
    assert source.title in source.cited


def test_no_address_is_a_package_index() -> None:
    index = re.compile(r"p[y]pi|python" + "hosted|npm" + "js|crates\\.io", re.IGNORECASE)
    assert not index.search(sources.TABLE.read_text(encoding="utf-8"))


@pytest.mark.parametrize("path", TABLES, ids=lambda path: path.stem)
def test_every_source_a_table_cites_exists(path: Path) -> None:
    for key in cited_keys(path):
        sources.look_up(key)


@pytest.mark.parametrize("path", TABLES, ids=lambda path: path.stem)
def test_a_row_called_read_does_not_rest_on_memory(path: Path) -> None:
    for row in rows_of(path):
        if row.get("how") == "read":
            assert {sources.look_up(key).how for key in row["source"].split()} <= {"read"}, row


@pytest.mark.parametrize(
    "path", sorted((PACKAGE / "data" / "materials").glob("*.csv")), ids=lambda path: path.stem
)
def test_every_material_row_says_how_it_is_known(path: Path) -> None:
    for row in rows_of(path):
        assert row["how"] in sources.HOW
        assert row["source"] or row["how"] == "practice"
