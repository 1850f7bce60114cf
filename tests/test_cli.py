"""The commands as they are typed: what they print, where, and the code they leave with."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from curbwright import __version__
from curbwright.build import catalogue, examples
from curbwright.cli import main

SMALLEST = (
    '[cart]\nname = "Bare"\n[trailer]\ndeck_length = "8 ft"\ndeck_width = "5 ft"\nball_to_deck = "4 ft"\n'
)


def run(*words: str | Path) -> Result:
    return CliRunner().invoke(main, [str(word) for word in words], catch_exceptions=False)


@pytest.fixture
def flatbread(tmp_path: Path) -> Path:
    path = tmp_path / "cart.toml"
    path.write_text(examples.text("flatbread"), encoding="utf-8")
    return path


@pytest.fixture
def broken(tmp_path: Path) -> Path:
    path = tmp_path / "broken.toml"
    path.write_text(SMALLEST + 'gross_rating = "3500"\nwheels = 2\n', encoding="utf-8")
    return path


def test_without_a_word_it_lists_the_commands() -> None:
    result = run("--help")
    assert result.exit_code == 0
    for command in ("new", "check", "show", "draw", "catalogue"):
        assert f"  {command} " in result.output
    assert all(len(line) <= 100 for line in result.output.splitlines())


def test_the_version() -> None:
    assert run("--version").output.strip() == f"curbwright {__version__}"


def test_a_command_that_there_is_not() -> None:
    result = run("chek", "cart.toml")
    assert result.exit_code == 2
    assert "Did you mean 'check'?" in result.stderr


@pytest.mark.parametrize("command", ["check", "show", "draw"])
def test_a_command_without_a_file(command: str) -> None:
    result = run(command)
    assert result.exit_code == 2
    assert "FILE" in result.stderr


# ---------------------------------------------------------------- new


@pytest.mark.parametrize("like", examples.names())
def test_new_writes_a_build_file_that_can_be_checked(like: str, tmp_path: Path) -> None:
    result = run("new", tmp_path / "my-cart", "--like", like)
    assert result.exit_code == 0
    path = tmp_path / "my-cart" / "cart.toml"
    assert path.read_text(encoding="utf-8") == examples.text(like)
    assert f"curbwright check {path}" in result.output
    assert run("check", path).exit_code == (1 if like == "mistakes" else 0)


def test_new_never_writes_over_a_build_file(tmp_path: Path) -> None:
    path = tmp_path / "cart.toml"
    path.write_text("mine", encoding="utf-8")
    result = run("new", tmp_path)
    assert result.exit_code == 2
    assert "already there" in result.stderr
    assert path.read_text(encoding="utf-8") == "mine"


def test_new_from_an_example_that_there_is_not(tmp_path: Path) -> None:
    result = run("new", tmp_path / "x", "--like", "flatbred")
    assert result.exit_code == 2
    assert "Did you mean flatbread?" in result.stderr
    assert not (tmp_path / "x").exists()


def test_new_where_no_folder_can_be(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", encoding="utf-8")
    result = run("new", tmp_path / "file" / "deeper")
    assert result.exit_code == 2
    assert "Traceback" not in result.output + result.stderr


# ---------------------------------------------------------------- check


def test_check_leaves_with_0_where_nothing_fails(flatbread: Path) -> None:
    result = run("check", flatbread)
    assert result.exit_code == 0
    assert result.stdout.startswith("Two-person flatbread cart\n")
    assert "0 fail" in result.stdout
    assert result.stderr == ""


def test_check_leaves_with_1_where_something_fails(flatbread: Path) -> None:
    text = flatbread.read_text(encoding="utf-8").replace("chain_count = 2", "chain_count = 1")
    flatbread.write_text(text, encoding="utf-8")
    result = run("check", flatbread)
    assert result.exit_code == 1
    assert "FAIL  Two safety chains" in result.stdout


def test_check_leaves_with_2_and_every_problem_where_the_file_cannot_be_read(broken: Path) -> None:
    result = run("check", broken)
    assert result.exit_code == 2
    assert result.stdout == ""
    assert "line 7, trailer.gross_rating" in result.stderr
    assert "line 8, trailer.wheels" in result.stderr
    assert "2 problems; nothing was computed." in result.stderr


def test_what_is_missing_is_not_a_pass(tmp_path: Path) -> None:
    path = tmp_path / "cart.toml"
    path.write_text(SMALLEST, encoding="utf-8")
    result = run("check", path)
    assert result.exit_code == 0
    assert "Cannot be told yet" in result.stdout
    assert "To fill in next" in result.stdout
    assert "trailer.bare_mass (" in result.stdout


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("crat.toml", 'Did you mean "cart.toml"?'),
        (".", "is a folder"),
        ("deep/er/cart.toml", "there is no file"),
    ],
)
def test_a_file_that_is_not_there(flatbread: Path, name: str, says: str) -> None:
    result = run("check", flatbread.parent / name)
    assert result.exit_code == 2
    assert says in " ".join(result.stderr.split())


def test_check_json_of_a_good_file_is_one_object_on_stdout(flatbread: Path) -> None:
    result = run("check", flatbread, "--json")
    assert result.exit_code == 0
    told = json.loads(result.stdout)
    assert told["cart"] == "Two-person flatbread cart"
    assert told["problems"] == []
    assert told["figures"]["balance.gross"]["unit"] == "kg"


def test_check_json_of_a_bad_file_has_its_problems_and_nothing_else(broken: Path) -> None:
    result = run("check", broken, "--json")
    assert result.exit_code == 2
    told = json.loads(result.stdout)
    assert (told["figures"], told["findings"], told["cart"]) == ({}, [], None)
    assert {(one["line"], one["path"]) for one in told["problems"]} == {
        (7, "trailer.gross_rating"),
        (8, "trailer.wheels"),
    }
    assert all(one["what"] for one in told["problems"])


# ---------------------------------------------------------------- show


def test_show_prints_the_working_down_to_the_build_file(flatbread: Path) -> None:
    result = run("show", flatbread, "balance.tongue_share")
    assert result.exit_code == 0
    assert result.stdout.startswith("tongue share")
    for path in ("trailer.axle.back", "items.griddle.mass", "shell.roof_areal_mass"):
        assert path in result.stdout
    assert all(len(line) <= 100 for line in result.stdout.splitlines())


def test_show_stops_after_the_steps_asked_for(flatbread: Path) -> None:
    whole = run("show", flatbread, "balance.tongue_share").stdout.splitlines()
    two = run("show", flatbread, "balance.tongue_share", "--steps", "2").stdout.splitlines()
    assert len(two) < len(whole) / 4
    assert two[0] == whole[0]
    assert any("more steps below these" in line for line in two)
    assert "trailer.bare_mass" in " ".join(two)


def test_show_a_figure_that_there_is_not(flatbread: Path) -> None:
    result = run("show", flatbread, "balance.tongue_shar")
    assert result.exit_code == 2
    assert 'There is no figure "balance.tongue_shar"' in result.stderr
    assert "balance.tongue_share" in result.stderr


def test_show_a_figure_that_cannot_be_told_names_what_is_missing(tmp_path: Path) -> None:
    path = tmp_path / "cart.toml"
    path.write_text(SMALLEST, encoding="utf-8")
    result = run("show", path, "balance.gross")
    assert result.exit_code == 2
    assert "cannot be told" in result.stderr
    assert "bare trailer" in result.stderr


def test_show_of_a_file_that_cannot_be_read(broken: Path) -> None:
    result = run("show", broken, "balance.gross")
    assert result.exit_code == 2
    assert "trailer.wheels" in result.stderr


# ---------------------------------------------------------------- draw


def test_draw_writes_drawings_and_names_them(flatbread: Path, tmp_path: Path) -> None:
    result = run("draw", flatbread, "-o", tmp_path / "out")
    assert result.exit_code == 0
    written = [Path(line) for line in result.stdout.splitlines()]
    assert {path.suffix for path in written} == {".svg", ".dxf"}
    assert all(path.is_file() and path.stat().st_size > 1000 for path in written)


def test_draw_into_a_file_is_refused(flatbread: Path) -> None:
    result = run("draw", flatbread, "-o", flatbread)
    assert result.exit_code == 2
    assert "Traceback" not in result.stderr
    assert flatbread.read_text(encoding="utf-8") == examples.text("flatbread")


# ---------------------------------------------------------------- catalogue


def test_the_catalogue_lists_what_matches_all_the_words() -> None:
    result = run("catalogue", "griddle", "36")
    assert result.exit_code == 0
    rows = [line for line in result.stdout.splitlines() if line.startswith("  griddle-")]
    assert rows
    assert all("36" in row for row in rows)
    assert 'like = "ID"' in result.stdout
    assert all(len(line) <= 100 for line in result.stdout.splitlines())


def test_the_whole_catalogue_has_a_line_for_each_item() -> None:
    lines = run("catalogue").stdout.splitlines()
    assert all(len(line) <= 100 for line in lines)
    for id in catalogue.ids():
        assert sum(line.startswith(f"  {id} ") for line in lines) == 1


def test_nothing_in_the_catalogue() -> None:
    result = run("catalogue", "unicorn")
    assert result.exit_code == 0
    assert "Nothing in the catalogue matches" in result.stdout
