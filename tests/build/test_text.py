"""Reading a build file ends in plain tables or in problems, never in an exception from below."""

from __future__ import annotations

import contextlib
import os
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from curbwright.build.problems import Problem
from curbwright.build.text import DEEPEST, MOST_BYTES, parse, read_text
from curbwright.errors import BuildFileProblem


def problems_of(call: Callable[[], object]) -> tuple[Problem, ...]:
    with pytest.raises(BuildFileProblem) as caught:
        call()
    problems: tuple[Problem, ...] = caught.value.problems
    return problems


def said(call: Callable[[], object]) -> str:
    return "\n".join(map(str, problems_of(call)))


# --- the file


def test_the_text_comes_as_it_is_saved(tmp_path: Path) -> None:
    file = tmp_path / "cart.toml"
    file.write_bytes('a = "30 °F"\r\n# é\n'.encode())
    assert read_text(file) == read_text(str(file)) == 'a = "30 °F"\r\n# é\n'


def test_a_byte_order_mark_does_no_harm(tmp_path: Path) -> None:
    file = tmp_path / "cart.toml"
    file.write_bytes(b"\xef\xbb\xbfa = 1\n")
    assert read_text(file) == "a = 1\n"
    assert parse("\ufeffa = 1\n") == {"a": 1}


def test_an_empty_file_is_an_empty_text(tmp_path: Path) -> None:
    file = tmp_path / "cart.toml"
    file.touch()
    assert read_text(file) == ""
    assert parse("") == {}


def test_a_missing_file_is_named_with_its_neighbour(tmp_path: Path) -> None:
    (tmp_path / "cart.toml").touch()
    says = said(lambda: read_text(tmp_path / "carrt.toml"))
    assert says.startswith("there is no file ")
    assert says.endswith('Did you mean "cart.toml"?')
    assert "Check the folder's name." in said(lambda: read_text(tmp_path / "nowhere" / "cart.toml"))
    assert "Check the name and the folder." in said(lambda: read_text(tmp_path / "x.toml"))


def test_a_folder_is_not_a_file_but_may_hold_one(tmp_path: Path) -> None:
    assert "is a folder. Name a file." in said(lambda: read_text(tmp_path))
    (tmp_path / "cart.toml").touch()
    assert f"is a folder. Name the file: {tmp_path / 'cart.toml'}." in said(lambda: read_text(tmp_path))


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="needs a pipe with a name")
def test_a_pipe_is_refused_without_waiting_for_it(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    assert "is not an ordinary file" in said(lambda: read_text(tmp_path / "pipe"))


@pytest.mark.parametrize("name", ["a\0b", "x" * 5000, "cart.toml/inside", "\udcff.toml"])
def test_names_that_no_file_can_have(name: str, tmp_path: Path) -> None:
    (tmp_path / "cart.toml").touch()
    says = said(lambda: read_text(tmp_path / name))
    assert says.startswith("there is no file") or "cannot be opened" in says


def test_a_file_that_may_not_be_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = tmp_path / "cart.toml"
    file.touch()

    def refuse(*_: object) -> object:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", refuse)
    assert "may not be read" in said(lambda: read_text(file))


def test_a_file_of_exactly_one_mebibyte_is_the_largest(tmp_path: Path) -> None:
    file = tmp_path / "cart.toml"
    file.write_bytes(b"#" * MOST_BYTES)
    assert len(read_text(file)) == MOST_BYTES
    file.write_bytes(b"#" * (MOST_BYTES + 1))
    assert "is larger than 1 MiB" in said(lambda: read_text(file))
    assert "longer than 1 MiB" in said(lambda: parse("#" * (MOST_BYTES + 1)))


def test_every_line_that_is_not_utf_8_is_told_with_its_byte(tmp_path: Path) -> None:
    file = tmp_path / "cart.toml"
    file.write_bytes("name = 'é'\n".encode() + b"t = '30 \xb0F'\nok = 1\nu = '\xff\xfe'\n\xc3")
    assert [(problem.line, problem.what) for problem in problems_of(lambda: read_text(file))] == [
        (2, "byte 21 of the file (0xB0) is not UTF-8 text"),
        (4, "byte 37 of the file (0xFF) is not UTF-8 text"),
        (5, "byte 41 of the file (0xC3) is not UTF-8 text"),
    ]
    assert file.read_bytes()[20] == 0xB0
    assert file.read_bytes()[36] == 0xFF
    assert 'the mark "°" will be kept' in said(lambda: read_text(file))


def test_a_file_of_nothing_but_wrong_bytes_is_cut_short(tmp_path: Path) -> None:
    file = tmp_path / "cart.toml"
    file.write_bytes(b"\xff\n" * 1000)
    problems = problems_of(lambda: read_text(file))
    assert len(problems) == 21
    assert problems[-1].what == "980 more lines are not UTF-8 text"


@pytest.mark.parametrize("coding", ["utf-16", "utf-16-le", "utf-16-be", "utf-32"])
def test_other_ways_to_save_text_are_told_apart(coding: str, tmp_path: Path) -> None:
    file = tmp_path / "cart.toml"
    file.write_bytes('a = "x"\n'.encode(coding))
    says = said(lambda: read_text(file))
    assert "UTF-8" in says
    assert "UTF-16" in says or "NUL" in says


@given(st.binary(max_size=60))
@settings(max_examples=300)
def test_any_bytes_end_in_tables_or_problems(tmp_path_factory: pytest.TempPathFactory, data: bytes) -> None:
    file = tmp_path_factory.getbasetemp() / "any.toml"
    file.write_bytes(data)
    with contextlib.suppress(BuildFileProblem):
        parse(read_text(file))


# --- the text


def test_a_text_of_every_kind_of_value_is_read_as_the_standard_library_reads_it() -> None:
    text = 'a = [1, 2.5, true, "x", 1979-05-27, 07:32:00]\n[b.c]\nd = { e = nan }\n'
    assert repr(parse(text)) == repr(tomllib.loads(text))


def test_a_mistake_is_a_problem_with_its_line() -> None:
    assert said(lambda: parse("a = 1\nmass = 62 lb")) == (
        'line 2, mass: 62 lb is not in quotes. Try mass = "62 lb".'
    )


def test_a_nul_character_is_told_with_its_line() -> None:
    assert said(lambda: parse("a = 1\nb = \0\0")).startswith(
        "line 2: a NUL character stands here (the text has 2)"
    )


def test_half_a_character_is_told_with_its_line() -> None:
    assert said(lambda: parse('a = 1\nb = "\ud83d"')).startswith("line 2: there is half a character here")


@pytest.mark.parametrize(
    "deep",
    [
        lambda n: "\nk = " + "[" * (n - 1) + "]" * (n - 1),
        lambda n: "\n" + ".".join(["k"] * n) + " = 1",
        lambda n: "\n[" + ".".join(["k"] * n) + "]",
        lambda n: "\n[[" + ".".join(["k"] * (n - 1)) + "]]",
        lambda n: "\nk = " + "{ k = " * (n - 1) + "1" + " }" * (n - 1),
    ],
)
def test_nesting_is_limited_and_never_exhausts_the_reader(deep: Callable[[int], str]) -> None:
    # The innermost brackets are empty, so a list of n brackets reaches n - 1 positions deep.
    parse(deep(DEEPEST))
    for depth in (DEEPEST + 2, 100, 5000, 50_000):
        problem = problems_of(lambda depth=depth: parse(deep(depth)))[0]  # type: ignore[misc]
        assert problem.line == 2
        assert problem.what == "is nested more than 12 levels deep"


def test_a_reader_at_the_end_of_its_depth_is_a_problem(monkeypatch: pytest.MonkeyPatch) -> None:
    def too_deep(_: str) -> object:
        raise RecursionError

    monkeypatch.setattr(tomllib, "loads", too_deep)
    assert "nested too deep" in said(lambda: parse("a = 1"))


@pytest.mark.parametrize("digits", ["9" * 5000, "-" + "9" * 5000, "1_" * 4500 + "1"])
def test_a_number_of_thousands_of_digits_is_told_with_its_line(digits: str) -> None:
    assert said(lambda: parse(f"a = 1\nb = {digits}\nc = 1")) == (
        "line 2: there is a number of thousands of digits here. Write a shorter number."
    )


def test_whole_numbers_beyond_64_bits_are_each_told() -> None:
    assert parse(f"a = {2**63 - 1}\nb = {-(2**63)}") == {"a": 2**63 - 1, "b": -(2**63)}
    text = f"a = {2**63}\n[b]\nc = [1, {{ d = {-(2**63) - 1} }}]\ne = 0x{'f' * 9999}"
    assert [(problem.line, problem.path) for problem in problems_of(lambda: parse(text))] == [
        (1, "a"),
        (3, "b.c.1.d"),
        (4, "b.e"),
    ]


def test_an_endless_float_is_left_to_the_checks_that_know_the_field() -> None:
    assert parse("a = 1e999\nb = inf") == {"a": float("inf"), "b": float("inf")}
