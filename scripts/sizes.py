"""How long the modules and functions are, against the limits of the house: ``python -m scripts.sizes``."""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

ROOT = Path(__file__).parents[1]
ROOMS = ("src", "scripts", "benchmarks", "tests")
MODULE_SOFT, MODULE_HARD = 300, 400
FUNCTION_SOFT, FUNCTION_HARD = 40, 60
LONG_FOR_A_REASON: dict[str, str] = {}
"""Modules over the hard limit, each with its reason."""


class Size(NamedTuple):
    """The lines of one module, or of one function in it."""

    where: str
    lines: int
    soft: int
    hard: int


def sizes(root: Path = ROOT) -> Iterator[Size]:
    """Yield every module below the rooms of a tree, each followed by its functions."""
    for path in sorted(path for room in ROOMS for path in (root / room).rglob("*.py")):
        where = path.relative_to(root).as_posix()
        text = path.read_text(encoding="utf-8")
        yield Size(where, len(text.splitlines()), MODULE_SOFT, MODULE_HARD)
        for node in ast.walk(ast.parse(text)):
            if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and node.end_lineno is not None:
                lines = node.end_lineno - node.lineno + 1
                yield Size(f"{where}:{node.lineno} {node.name}", lines, FUNCTION_SOFT, FUNCTION_HARD)


def too_long(root: Path = ROOT) -> list[Size]:
    """Return what is over a hard limit and not on the list of those with a reason."""
    return [one for one in sizes(root) if one.lines > one.hard and one.where not in LONG_FOR_A_REASON]


def main() -> int:
    """Print everything over a soft limit, the longest first; 1 if anything is over a hard one."""
    for one in sorted((one for one in sizes() if one.lines > one.soft), key=lambda one: -one.lines):
        reason = LONG_FOR_A_REASON.get(one.where, "")
        mark = "TOO LONG" if one.lines > one.hard and not reason else f"over {one.soft}"
        print(f"{one.lines:5} lines, {mark}: {one.where}{f' ({reason})' if reason else ''}")
    return 1 if too_long() else 0


if __name__ == "__main__":
    sys.exit(main())
