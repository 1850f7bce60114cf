"""The rules of the house, kept by the machine: format, lint, types, imports, sizes, names, rooms, words."""

from __future__ import annotations

import ast
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from pkgutil import iter_modules

import pytest

from curbwright import equations, sheets
from scripts import sizes

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "src" / "curbwright"
TOOLS = {
    "format": ("-m", "ruff", "format", "--check", "."),
    "lint": ("-m", "ruff", "check", "."),
    "types": ("-m", "mypy"),
    "imports": ("-c", "from importlinter.cli import lint_imports_command; lint_imports_command()"),
}


@pytest.mark.parametrize("tool", TOOLS)
def test_the_tools_have_no_complaint(tool: str) -> None:
    ran = subprocess.run(
        [sys.executable, *TOOLS[tool]], cwd=ROOT, capture_output=True, text=True, check=False, timeout=600
    )
    assert ran.returncode == 0, f"{ran.stdout[-6000:]}\n{ran.stderr[-2000:]}"


def test_no_module_and_no_function_is_too_long() -> None:
    assert [f"{one.lines} lines: {one.where}" for one in sizes.too_long()] == []


def test_what_is_long_for_a_reason_is_still_long() -> None:
    long = {one.where for one in sizes.sizes() if one.lines > one.hard}
    assert set(sizes.LONG_FOR_A_REASON) <= long


def test_the_measure_of_sizes_finds_what_is_too_long(tmp_path: Path) -> None:
    (tmp_path / "src").mkdir()
    (tmp_path / "src" / "long.py").write_text("def wide():\n" + "    pass\n" * 60 + "x = 1\n" * 340)
    found = sizes.too_long(tmp_path)
    assert [(one.where, one.lines) for one in found] == [("src/long.py", 401), ("src/long.py:1 wide", 61)]


# ---- names


VAGUE = {"manager", "engine", "handler", "processor", "util", "utils", "helper", "helpers", "core"}
"""Words that say nothing of what a thing does in a food cart."""


def vague(name: str) -> bool:
    return not VAGUE.isdisjoint(word.lower() for word in re.findall(r"[A-Z]?[a-z]+|[A-Z]+", name))


def python_files() -> list[Path]:
    return sorted(path for room in sizes.ROOMS for path in (ROOT / room).rglob("*.py"))


def names_in(path: Path) -> Iterator[str]:
    yield from path.relative_to(ROOT).with_suffix("").parts
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        named = isinstance(node, ast.ClassDef | ast.FunctionDef | ast.AsyncFunctionDef)
        if named and not re.fullmatch(r"__\w+__", node.name):
            yield node.name


def test_names_are_words_of_the_trade() -> None:
    assert [f"{path}: {name}" for path in python_files() for name in names_in(path) if vague(name)] == []


@pytest.mark.parametrize("name", ["sheet_utils", "DrawingManager", "core", "_load_helper"])
def test_a_vague_name_is_noticed(name: str) -> None:
    assert vague(name)


@pytest.mark.parametrize("name", ["score", "enginery", "corner_stiffness", "DrawingSheet"])
def test_a_name_that_only_looks_vague_is_let_be(name: str) -> None:
    assert not vague(name)


# ---- trades


KNOWN = {
    "balance", "frame", "fit", "circuits", "battery", "solar", "cold", "water", "hot_water", "drains", "gas",
    "exhaust", "cooking", "food",
}  # fmt: skip
"""The trades of a food cart, by the name they have in every room."""
NOT_TRADES = {"placing"}
"""Sheets that every trade leans on."""
TRADES = sorted({module.name for module in iter_modules(sheets.__path__)} - NOT_TRADES | {"balance", "fit"})
"""A trade is answered once it has a sheet; equations may come before it."""


def in_room(*room: str, named: str) -> bool:
    folder = PACKAGE.joinpath(*room)
    return (folder / f"{named}.py").is_file() or (folder / named / "__init__.py").is_file()


def has_tests(room: str, trade: str) -> bool:
    folder = ROOT / "tests" / room
    patterns = (f"test_{trade}.py", f"test_{trade}_*.py", f"{trade}/test_*.py")
    return any(True for pattern in patterns for _ in folder.glob(pattern))


@pytest.mark.parametrize("trade", TRADES)
@pytest.mark.parametrize("room", ["build", "equations", "sheets"])
def test_a_trade_has_the_same_name_in_every_room(trade: str, room: str) -> None:
    assert in_room(room, named=trade), f"src/curbwright/{room}/{trade}"


@pytest.mark.parametrize("trade", TRADES)
@pytest.mark.parametrize("room", ["equations", "sheets"])
def test_a_trade_is_tested_in_every_room(trade: str, room: str) -> None:
    assert has_tests(room, trade), f"tests/{room}/test_{trade}.py"


@pytest.mark.parametrize("trade", TRADES)
def test_a_trade_has_a_page_that_names_its_files(trade: str) -> None:
    page = (ROOT / "docs" / "trades" / f"{trade}.md").read_text(encoding="utf-8")
    for room in ("build", "equations", "sheets"):
        assert f"src/curbwright/{room}/{trade}" in page
    assert f"trades/{trade}.md" in (ROOT / "docs" / "README.md").read_text(encoding="utf-8")


def test_sheets_and_equations_are_those_of_a_trade() -> None:
    assert set(TRADES) | {module.name for module in iter_modules(equations.__path__)} <= KNOWN


# ---- words and links in every file of the project


FORBIDDEN = {
    "the address of a package index": r"p[y]pi\.|python[h]osted|np[m]js\.|crates[.]io|proxy\.go[l]ang",
    "a path of one machine": r"(?<![\w.])/(?:wo[r]k|fa[r]m|ho[m]e|ro[o]t|Us[e]rs)/|/tmp/[b]ash|/opt/[w]heels",
    "two versions left side by side": r"^(?:<{7} |>{7} )",
    "a demo that is not ours to use": r"(?i)hot ?d[o]g",
}


def project_files() -> list[Path]:
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, text=True, check=False)
    if listed.returncode == 0:
        return [path for name in listed.stdout.split("\0") if name and (path := ROOT / name).is_file()]
    left_out = {".venv", ".git", "__pycache__", ".mypy_cache", ".ruff_cache", ".pytest_cache", ".hypothesis"}
    return [path for path in ROOT.rglob("*") if path.is_file() and left_out.isdisjoint(path.parts)]


def text_of(path: Path) -> str:
    try:
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        return ""


@pytest.mark.parametrize("what", FORBIDDEN)
def test_no_file_holds(what: str) -> None:
    pattern = re.compile(FORBIDDEN[what], re.MULTILINE)
    files = project_files()
    assert ROOT / "pyproject.toml" in files
    found = {path: pattern.search(text_of(path)) for path in files}
    assert [f"{path.relative_to(ROOT)}: {match[0]}" for path, match in found.items() if match] == []


@pytest.mark.parametrize(
    ("what", "text"),
    [
        ("the address of a package index", "https://py" + "pi.org/simple"),
        ("a path of one machine", "open('/wo" + "rk/main/x')"),
        ("two versions left side by side", "a\n<<<<<<" + "< ours"),
        ("a demo that is not ours to use", "Hot " + "dog"),
    ],
)
def test_a_forbidden_word_is_noticed(what: str, text: str) -> None:
    assert re.compile(FORBIDDEN[what], re.MULTILINE).search(text)


def test_every_link_between_our_own_pages_leads_somewhere() -> None:
    pages = [path for path in project_files() if path.suffix == ".md"]
    link = re.compile(r"\]\(([^)#\s]+)(?:#[^)\s]*)?\)")
    links = [(page, one) for page in pages for one in link.findall(text_of(page)) if "://" not in one]
    assert len(links) > 10
    broken = [(page, one) for page, one in links if not (page.parent / one).exists()]
    assert [f"{page.relative_to(ROOT)}: {one}" for page, one in broken] == []
