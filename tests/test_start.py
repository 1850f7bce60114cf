"""The command starts light, and a slip of the finger gets a hint."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from benchmarks.start import Starts, measure
from curbwright.build import examples
from curbwright.cli import main

LATE = """
import json, sys
before = set(sys.modules)
from curbwright.cli import main
sys.argv = ["curbwright", *sys.argv[1:]]
try:
    main()
except SystemExit as end:
    code = end.code or 0
tops = {name.partition(".")[0] for name in set(sys.modules) - before}
print(json.dumps([code, sorted(tops - sys.stdlib_module_names)]), file=sys.stderr)
"""
HEAVY = {"ezdxf", "fontTools", "matplotlib", "PIL", "pint", "rich", "scipy", "sectionproperties", "shapely"}


def imported(*arguments: str) -> tuple[int, set[str]]:
    """Run the command in a Python of its own; return its exit code and the packages it brought in."""
    ran = subprocess.run(
        [sys.executable, "-c", LATE, *arguments], capture_output=True, text=True, check=False, timeout=120
    )
    assert ran.returncode == 0, ran.stderr
    code, tops = json.loads(ran.stderr.splitlines()[-1])
    return code, set(tops)


HELPS = [["--help"], *([name, "--help"] for name in main.commands)]


@pytest.mark.parametrize("arguments", HELPS, ids=" ".join)
def test_help_imports_click_and_nothing_else(arguments: list[str]) -> None:
    assert imported(*arguments) == (0, {"click", "curbwright"})


def test_check_leaves_the_drawing_libraries_alone(tmp_path: Path) -> None:
    code, tops = imported("check", str(examples.start(tmp_path, "flatbread")))
    assert code in (0, 1)
    assert {"click", "curbwright", "pydantic"} <= tops
    assert tops & HEAVY == set()


def ran(*arguments: str) -> Result:
    return CliRunner().invoke(main, arguments, prog_name="curbwright")


@pytest.mark.parametrize(("typed", "meant"), [("chek", "check"), ("drow", "draw"), ("catalog", "catalogue")])
def test_a_mistyped_command_names_the_nearest(typed: str, meant: str) -> None:
    result = ran(typed)
    assert result.exit_code == 2
    assert f"Did you mean '{meant}'?" in result.stderr


def test_a_command_that_is_near_to_none_gets_no_hint() -> None:
    result = ran("qqqqq")
    assert result.exit_code == 2
    assert "Did you mean" not in result.stderr


def test_a_mistyped_option_names_the_nearest() -> None:
    result = ran("check", "cart.toml", "--jsn")
    assert result.exit_code == 2
    assert "--json" in result.stderr


def test_the_start_can_be_measured() -> None:
    starts = measure(runs=1)
    assert starts.command > 0
    assert starts.nothing > 0


def test_the_measure_says_whether_the_budget_holds() -> None:
    assert "30.0 ms, python -c pass 10.0 ms: 3.0 x, within" in str(Starts(0.030, 0.010))
    assert "7.0 x, OVER the budget of 6 x" in str(Starts(0.070, 0.010))
