"""Runs case files from anywhere: ``python -m tests.published FILE...`` prints a line a value and a count."""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path

from tests.published.answering import Verdict, work
from tests.published.cases import read_cases

HERE = Path(__file__).parent


def main(names: list[str]) -> int:
    """Work the files named, or this folder's; return 0 if all agree or wait, and all can be read."""
    paths = [Path(name) for name in names] or sorted(HERE.glob("*.json"))
    verdicts: list[Verdict] = []
    problems = 0
    for path in paths:
        found = read_cases(path)
        for problem in found.problems:
            print(f"PROBLEM       {path.name}: {problem}")
        problems += len(found.problems)
        for case in found.cases:
            worked = work(case)
            verdicts += worked
            for one in worked:
                print(f"{one.word.upper():13} {case.id}: {one.name}: {one.says}")
    count = Counter(one.word for one in verdicts)
    waits = Counter(one.says for one in verdicts if one.word == "not answered")
    cases = {one.case.id for one in verdicts}
    print(
        f"\n{len(cases)} cases, {len(verdicts)} values: {count['agreed']} agreed, {count['differs']} differ, "
        f"{count['fault']} at fault, {count['not answered']} not answered"
        + "".join(f" ({number} wait for {trade})" for trade, number in sorted(waits.items()))
        + f"; {problems} problems in the files"
    )
    return 1 if count["differs"] or count["fault"] or problems or not cases else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
