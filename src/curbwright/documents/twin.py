"""The JSON twin of the check: one object, values in SI."""

from __future__ import annotations

from typing import Any

from curbwright.build.problems import Problem
from curbwright.figures import Figure, origin_tree
from curbwright.requirements import Finding
from curbwright.sheets import Worksheets


def check_json(sheets: Worksheets, findings: list[Finding]) -> dict[str, Any]:
    """Return the whole check as plain data."""
    build = sheets.build
    return {
        "cart": build.cart.name,
        "place": build.place.name,
        "figures": {id: _figure(figure) for id, figure in sheets.figures.items()},
        "findings": [finding.as_json() for finding in findings],
        "gaps": [{"section": gap.section, "field": gap.path, "says": gap.says} for gap in sheets.gaps],
        "day": {},
        "problems": [],
    }


def _figure(figure: Figure) -> dict[str, Any]:
    return {"name": figure.name, "value": float(figure), "unit": figure.unit, "origin": origin_tree(figure)}


def problems_json(problems: tuple[Problem, ...]) -> dict[str, Any]:
    """Return the same object for a build file that cannot be read: nothing but its problems."""
    rows = [
        {
            "line": one.line,
            "path": one.path,
            "what": one.what,
            "allowed": one.allowed,
            "try_this": one.try_this,
        }
        for one in problems
    ]
    return {
        "cart": None,
        "place": None,
        "figures": {},
        "findings": [],
        "gaps": [],
        "day": {},
        "problems": rows,
    }
