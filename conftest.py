"""What the test run says at its end, whatever it ran on."""

from __future__ import annotations

from collections import Counter

import pytest


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Say how many build files gone wrong were tried, and how they ended."""
    told: list[dict[str, float]] = [
        value
        for reports in terminalreporter.stats.values()
        for one in reports
        if getattr(one, "when", "") == "call"
        for name, value in one.user_properties
        if name == "mutations"
    ]
    if not told:
        return
    ends: Counter[str] = Counter()
    for each in told:
        ends.update({end: int(count) for end, count in each.items() if end != "slowest"})
    tried = ends["report"] + ends["result"] + ends["faults"]
    slowest = max(each["slowest"] for each in told)
    terminalreporter.write_line(
        f"{tried:,} build files gone wrong: {ends['report']:,} reported, {ends['result']:,} worked through,"
        f" {ends['faults']:,} faults; the slowest took {slowest:.2f} s"
    )
