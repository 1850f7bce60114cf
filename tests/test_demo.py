"""The demo takes a failing check for an answer, and a crash for a crash."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

SCRIPT = Path(__file__).parents[1] / "scripts" / "demo.sh"
STAND_IN = """#!/bin/sh
case "$1" in
  new) mkdir -p "$2" && : >"$2/cart.toml" ;;
  check) {check} ;;
  draw) mkdir -p "$4" && echo "$4/1-plan.svg" ;;
esac
"""


def demo(tmp_path: Path, check: str) -> subprocess.CompletedProcess[str]:
    """Run the demo with a command that stands in for the real one and checks as told."""
    (tmp_path / "bin").mkdir()
    (tmp_path / "bin" / "python").symlink_to(sys.executable)
    command = tmp_path / "bin" / "curbwright"
    command.write_text(STAND_IN.format(check=check))
    command.chmod(0o755)
    words = ["sh", str(SCRIPT), "bin", "made"]
    return subprocess.run(words, cwd=tmp_path, capture_output=True, text=True, check=False, timeout=60)


@pytest.mark.parametrize("code", [0, 1])
def test_an_answer_is_followed_by_the_drawings(tmp_path: Path, code: int) -> None:
    ran = demo(tmp_path, f"echo '{{}}'; exit {code}")
    assert ran.returncode == 0
    assert "made/drawings/1-plan.svg" in ran.stdout
    assert ("not an error" in ran.stdout) == (code == 1)
    assert (tmp_path / "made" / "check.json").read_text() == "{}\n"


@pytest.mark.parametrize("check", ["echo Traceback >&2; exit 1", "echo '{}'; exit 2", "exit 139"])
def test_a_crash_is_called_a_fault_of_the_program(tmp_path: Path, check: str) -> None:
    ran = demo(tmp_path, check)
    assert ran.returncode == 3
    assert "a fault of the program" in ran.stderr
    assert "drawings" not in ran.stdout


def test_a_screen_that_disagrees_with_the_data_is_a_fault(tmp_path: Path) -> None:
    ran = demo(tmp_path, "echo '{}'; [ \"$3\" = --json ]")
    assert ran.returncode != 0
    assert "Done" not in ran.stdout
