"""The reference pages are what the program says of itself today: nothing is left out, nothing lags behind."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from click.testing import CliRunner

from curbwright.build import kinds
from curbwright.build.part import Part
from curbwright.cli import main
from curbwright.figures import EQUATIONS
from scripts import fields, reference


def written(name: str) -> str:
    return (reference.FOLDER / name).read_text(encoding="utf-8")


def part_classes(part: type[Part] = Part) -> Iterator[type[Part]]:
    """Every class of section, found through the class tree rather than through the fields."""
    for one in part.__subclasses__():
        if one.__module__.startswith("curbwright."):
            yield from (one, *part_classes(one))


@pytest.mark.parametrize("name", reference.PAGES)
def test_making_a_page_again_changes_nothing(name: str) -> None:
    assert written(name) == reference.page(name), "run: make reference"


def test_no_page_is_left_over() -> None:
    assert sorted(path.name for path in reference.FOLDER.iterdir()) == sorted(reference.PAGES)


def test_every_section_of_the_model_is_on_the_page() -> None:
    shown = {part.__name__ for _, part, _ in fields.sections()}
    assert shown == {part.__name__ for part in part_classes()} - {"Build"}


@pytest.mark.parametrize(("path", "part"), [(path, part) for path, part, _ in fields.sections()])
def test_every_field_of_a_section_is_documented(path: str, part: type[Part]) -> None:
    own = written("build-file.md").partition(f"\n## `[{path}]`\n")[2].partition("\n## ")[0]
    assert own, f"[{path}] has no heading"
    for field in part.model_fields:
        if fields.below(part, field) is None:
            assert f"\n| `{field}` | " in own, f"{path}.{field}"
            assert str(part.declared(field)["says"]).strip(), f"{path}.{field} does not say what it is"


@pytest.mark.parametrize(("path", "part"), [(path, part) for path, part, _ in fields.sections()])
def test_a_section_says_its_own_path(path: str, part: type[Part]) -> None:
    assert (part.__doc__ or "").startswith(f"`[{path}]`")


@pytest.mark.parametrize("name", ["", *main.commands])
def test_a_command_is_documented_as_it_speaks(name: str) -> None:
    ran = CliRunner().invoke(main, [*name.split(), "--help"], prog_name="curbwright", terminal_width=100)
    assert ran.exit_code == 0
    assert f"```\n{ran.output}```\n" in written("commands.md")
    assert not name or f"\n## `curbwright {name}`\n" in written("commands.md")


def test_every_kind_and_flag_is_listed() -> None:
    page = written("kinds.md")
    assert [name for name in kinds.names() if f"\n| `{name}` | " not in page] == []
    assert [flag for flag in kinds.flags() if f"\n| {flag} | " not in page] == []


def test_every_equation_is_listed() -> None:
    page = written("equations.md")
    reference.page("equations.md")
    cards = [card for card in EQUATIONS.values() if card.function.__module__.startswith("curbwright.")]
    assert cards
    assert [card.name for card in cards if f"\n| `{card.name}` | " not in page] == []
