"""Reads the small tables beside this file: plain comma-separated cells, the first line names them.

Cells hold no commas and no quotes, so that a table loads without a parser.
"""

from __future__ import annotations


def rows(path: str) -> list[list[str]]:
    """Return the rows of a table without its heading."""
    with open(path, encoding="utf-8") as file:
        lines = file.read().splitlines()
    return [line.split(",") for line in lines[1:]]
