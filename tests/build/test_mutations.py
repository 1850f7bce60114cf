"""20,000 build files gone wrong: each ends in one report of its problems, or is worked through to the end."""

from __future__ import annotations

import json
import math
import time
from collections import Counter
from pathlib import Path

import pytest

from curbwright.build.cart import Build
from curbwright.build.file import read
from curbwright.build.problems import report
from curbwright.documents.screen import WIDTH, check_lines
from curbwright.documents.twin import check_json, problems_json
from curbwright.errors import BuildFileProblem
from curbwright.requirements import judge
from curbwright.sheets import work
from tests.build.mutations import mutant

CHUNKS, SIZE = 20, 1000
LONGEST = 2.0
"""Seconds of processor time that one file may take."""
FAIR_SHARE = 0.15
"""Share of the files that must come through to the end: the sheets are tried, not the reader alone."""


@pytest.mark.parametrize("chunk", range(CHUNKS))
def test_a_build_file_gone_wrong_is_reported_or_worked_through(
    chunk: int, tmp_path: Path, record_property: pytest.RecordProperty
) -> None:
    path = tmp_path / "cart.toml"
    ends: Counter[str] = Counter()
    faults: list[str] = []
    slowest = 0.0
    for number in range(chunk * SIZE, (chunk + 1) * SIZE):
        done, data = mutant(number)
        path.write_bytes(data)
        start = time.process_time()
        try:
            ends[one_file(path)] += 1
        except Exception as fault:  # noqa: BLE001 - any exception at all is what is looked for
            faults.append(f"mutant({number}), {done}: {type(fault).__name__}: {str(fault)[:300]}")
        took = time.process_time() - start
        slowest = max(slowest, took)
        if took > LONGEST:
            faults.append(f"mutant({number}), {done}: took {took:.1f} s")
    record_property("mutations", {**ends, "slowest": slowest, "faults": len(faults)})
    assert not faults, f"{len(faults)} faults:\n" + "\n".join(faults[:20])
    assert ends.total() == SIZE
    assert ends["result"] >= FAIR_SHARE * SIZE


def one_file(path: Path) -> str:
    """Read a file and take it all the way; say which way it ended."""
    try:
        build = read(path)
    except BuildFileProblem as refused:
        told = refused.problems
    else:
        worked_through(build)
        return "result"
    lines = path.read_bytes().count(b"\n") + 1
    assert told
    assert all(one.line is None or 1 <= one.line <= lines for one in told)
    assert report(told).strip()
    json.dumps(problems_json(told), allow_nan=False)
    return "report"


def worked_through(build: Build) -> None:
    """Work a cart out, judge it, and print it both ways."""
    sheets = work(build)
    findings = judge(sheets)
    assert all(math.isfinite(figure) for figure in sheets.figures.values())
    printed = [text for text, _ in check_lines(sheets, findings, "cart.toml")]
    assert printed
    assert max(map(len, printed)) <= WIDTH
    json.dumps(check_json(sheets, findings), allow_nan=False)
