"""How fast the command starts, against a Python that does nothing: ``python -m benchmarks.start``."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from typing import NamedTuple

BUDGET = 6.0
"""The most that ``curbwright --help`` may cost, in starts of an empty Python (docs/decisions/0005)."""
HELP = ("-m", "curbwright", "--help")
NOTHING = ("-c", "pass")


class Starts(NamedTuple):
    """The quickest start of each, in seconds."""

    command: float
    nothing: float

    @property
    def ratio(self) -> float:
        """How many empty starts the command costs."""
        return self.command / self.nothing

    def __str__(self) -> str:
        verdict = "within" if self.ratio <= BUDGET else "OVER"
        return (
            f"curbwright --help {self.command * 1000:.1f} ms, python -c pass {self.nothing * 1000:.1f} ms:"
            f" {self.ratio:.1f} x, {verdict} the budget of {BUDGET:g} x"
        )


def measure(runs: int) -> Starts:
    """Start both in turn, ``runs`` times each after one to warm up, and keep the quickest of each."""
    quickest = {HELP: float("inf"), NOTHING: float("inf")}
    for run in range(runs + 1):
        for arguments in quickest:
            took = _seconds(arguments)
            if run:
                quickest[arguments] = min(quickest[arguments], took)
    return Starts(quickest[HELP], quickest[NOTHING])


def _seconds(arguments: tuple[str, ...]) -> float:
    """Time one start; compiled files are kept between starts, as they are for everybody who uses it."""
    kept = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    begin = time.perf_counter()
    subprocess.run([sys.executable, *arguments], env=kept, stdout=subprocess.DEVNULL, check=True)
    return time.perf_counter() - begin


if __name__ == "__main__":
    print(measure(runs=20))
