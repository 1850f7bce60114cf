"""Every published case agrees within its stated tolerance; a wrong case is reported, never passed over."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.published.__main__ import main
from tests.published.answering import Verdict, work
from tests.published.cases import Case, read_cases

FILES = sorted(Path(__file__).parent.glob("*.json"))
CASES = [case for path in FILES for case in read_cases(path).cases]


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_the_file_is_well_written(path: Path) -> None:
    assert read_cases(path).problems == []


def test_no_id_is_used_twice() -> None:
    assert len({case.id for case in CASES}) == len(CASES)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.id)
def test_published(case: Case) -> None:
    verdicts = work(case)
    wrong = [
        f"{one.name}: {one.word}: {one.says}"
        for one in verdicts
        if one.word not in ("agreed", "not answered")
    ]
    assert not wrong, "\n".join(wrong)
    if all(one.word == "not answered" for one in verdicts):
        pytest.skip(f"waits for {case.not_answered}")


GOOD = {
    "id": "a-case",
    "what": "tongue share",
    "inputs": {"centre": {"value": 110, "unit": "in"}, "axle": {"value": 125, "unit": "in"}},
    "expected": {"share": {"value": 12.0, "unit": "%"}},
    "rel_tol": 0,
    "source": {"title": "made up for this test", "where": "", "url": ""},
    "how": "computed",
    "answers": {"share": {"equation": "balance.tongue_share", "with": {"centre": "centre", "axle": "axle"}}},
}


def judged(tmp_path: Path, **changes: object) -> list[Verdict]:
    path = tmp_path / "case.json"
    path.write_text(json.dumps([GOOD | changes]))
    found = read_cases(path)
    assert found.problems == []
    return work(found.cases[0])


def test_a_right_case_agrees(tmp_path: Path) -> None:
    assert [one.word for one in judged(tmp_path)] == ["agreed"]


def test_a_wrong_value_differs(tmp_path: Path) -> None:
    assert judged(tmp_path, expected={"share": {"value": 12.001, "unit": "%"}})[0].word == "differs"


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        (
            {"answers": {"share": {"equation": "balance.tongue_share", "with": {"centre": "centre"}}}},
            "also takes axle",
        ),
        (
            {"answers": {"share": {"equation": "balance.tonge_share", "with": {}}}},
            "has no equation tonge_share",
        ),
        ({"answers": {"share": {"equation": "ballast.tongue_share", "with": {}}}}, "no trade ballast"),
        (
            {
                "answers": {
                    "share": {
                        "equation": "balance.tongue_share",
                        "with": {"centre": "centre", "axle": "axel"},
                    }
                }
            },
            "axel is neither an input nor an earlier step",
        ),
        (
            {
                "answers": {
                    "share": {"equation": "balance.tongue_share", "with": {"centre": "centre", "axle": 125}}
                }
            },
            "125 is not an input, a step or a number with its unit",
        ),
        ({"inputs": {"centre": {"value": 110, "unit": "lb"}, "axle": {"value": 125, "unit": "in"}}}, "lb"),
        (
            {"answers": {"share": {"figure": "balance.x", "build": "no_such.toml"}}},
            "no_such.toml cannot be opened",
        ),
        ({"answers": {"share": {"figure": "balance.x", "build": '[cart]\nname = "x"\n'}}}, "the trailer"),
        (
            {"answers": {"share": {"table": "towing/no_such", "row": {}, "column": "x", "kind": "mass"}}},
            "no table",
        ),
    ],
)
def test_what_cannot_be_worked_is_a_fault_that_says_why(
    tmp_path: Path, changes: dict[str, object], says: str
) -> None:
    verdict = judged(tmp_path, **changes)[0]
    assert verdict.word == "fault"
    assert says in verdict.says


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"answers": {}}, "share has no answer"),
        ({"answers": {"share": {"guess": 12}}}, "answered by none of"),
        ({"rel_tol": None}, "neither rel_tol nor abs_tol"),
        ({"rel_tol": "close"}, "rel_tol is not a number"),
        ({"inputs": {"centre": 110}}, "centre is given without a value and a unit"),
        ({"inputs": []}, "inputs is not an object"),
        ({"answers": {"share": {"equation": "balance.tongue_share"}}}, "says no with"),
        ({"answers": {"share": {"sum": [{"guess": 1}], "unit": "1"}}}, "answered by none of"),
        ({"steps": [{"equation": "balance.moment", "with": {}}]}, "step 1 has no name"),
        ({"how": "hearsay"}, "hearsay"),
        ({"expected": {}}, "expects nothing"),
    ],
)
def test_a_badly_written_case_is_reported(tmp_path: Path, changes: dict[str, object], says: str) -> None:
    row = {key: value for key, value in (GOOD | changes).items() if value is not None}
    path = tmp_path / "case.json"
    path.write_text(json.dumps([row]))
    found = read_cases(path)
    assert found.cases == []
    assert says in " ".join(found.problems)


@pytest.mark.parametrize("text", ["{", "{}", "[1]", "[]"])
def test_a_file_without_cases_does_not_pass(
    tmp_path: Path, text: str, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "case.json"
    path.write_text(text)
    assert main([str(path)]) == 1
    capsys.readouterr()


def test_the_runner_counts_and_exits_with_what_it_found(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "case.json"
    path.write_text(json.dumps([GOOD]))
    assert main([str(path)]) == 0
    assert "1 cases, 1 values: 1 agreed, 0 differ" in capsys.readouterr().out
    path.write_text(json.dumps([GOOD | {"expected": {"share": {"value": 13.0, "unit": "%"}}}]))
    assert main([str(path)]) == 1
    assert "DIFFERS" in capsys.readouterr().out
