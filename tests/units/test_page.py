"""The page a builder reads: whatever it says may be written is read, and whatever it says is refused is."""

from __future__ import annotations

from pathlib import Path

import pytest

from curbwright.errors import UnitProblem
from curbwright.units import KINDS, read

PAGE = (Path(__file__).parents[2] / "docs" / "units.md").read_text(encoding="utf-8")
KIND_CALLED = {kind.says: name for name, kind in KINDS.items()}


def rows(heading: str) -> list[tuple[str, str]]:
    """Kind and text of every example in the second column of a section's table."""
    section = PAGE.partition(f"## {heading}")[2].partition("\n## ")[0]
    table = [line.split("|") for line in section.splitlines() if line.startswith("| ")]
    return [(row[1].strip(), text) for row in table[1:] for text in row[2].split("`")[1::2]]


WRITTEN = rows("Kind by kind")
REFUSED = rows("Refused, because it could mean two things")


@pytest.mark.parametrize(("says", "text"), WRITTEN)
def test_what_may_be_written_is_read(says: str, text: str) -> None:
    assert read(text, KIND_CALLED[says]).text == text


@pytest.mark.parametrize(("says", "text"), REFUSED)
def test_what_is_refused_is_refused(says: str, text: str) -> None:
    with pytest.raises(UnitProblem):
        read(text, KIND_CALLED[says])


def test_the_page_has_every_kind() -> None:
    assert {KIND_CALLED[says] for says, _ in WRITTEN} == set(KINDS)
    assert len(REFUSED) > 15
