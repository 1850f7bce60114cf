"""The example carts: they load, they say what they should, and their screens and JSON keep their shape."""

from __future__ import annotations

import json
import math
from collections import Counter
from functools import cache
from typing import Any

import pytest

from curbwright.build import examples
from curbwright.build.file import load_text
from curbwright.documents.screen import check_lines
from curbwright.documents.twin import check_json
from curbwright.documents.verdicts import WIDTH
from curbwright.documents.working import working_lines
from curbwright.requirements import Finding, judge, requirements
from curbwright.sheets import Worksheets, work

GOOD = ("coffee", "flatbread", "shelter")
ALL = (*GOOD, "mistakes")
RELIED_ON = ("balance.gross", "balance.tongue_share", "balance.tongue_load", "balance.axle_load")
"""Figure ids that checks outside the project rely on."""
FINDING_KEYS = {
    "id", "verdict", "required", "provided", "unit", "margin", "clause", "edition", "how", "severity", "says",
}  # fmt: skip


@cache
def worked(name: str) -> Worksheets:
    return work(load_text(examples.text(name)))


@cache
def judged(name: str) -> list[Finding]:
    return judge(worked(name))


@cache
def told(name: str) -> dict[str, Any]:
    return json.loads(json.dumps(check_json(worked(name), judged(name)), allow_nan=False))  # type: ignore[no-any-return]


def test_these_are_all_the_examples() -> None:
    assert set(examples.names()) == set(ALL)


@pytest.mark.parametrize("name", GOOD)
def test_nothing_fails_and_nothing_is_left_untold_in_a_good_example(name: str) -> None:
    short = [one for one in judged(name) if one.verdict in ("fail", "cannot tell")]
    assert [(one.id, one.verdict, one.missing) for one in short] == []


@pytest.mark.parametrize("name", ALL)
def test_no_finding_asks_for_a_field_that_is_in_the_file(name: str) -> None:
    sections = {part.path: part for part in worked(name).build.all_parts() if part.path}
    for finding in judged(name):
        for path in finding.missing:
            section, _, field = path.rpartition(".")
            given = getattr(sections.get(section), field, None)
            assert given is None or path == "tow_vehicle.hitch", f"{finding.id} asks for {path}"


@pytest.mark.parametrize("name", GOOD)
def test_every_requirement_of_the_road_speaks_of_every_example(name: str) -> None:
    spoken = {one.requirement.id for one in judged(name) if one.verdict == "pass"}
    asked = {row.id for row in requirements() if row.id.startswith(("towing.", "standing."))}
    assert asked - spoken == set()


def test_every_requirement_can_pass_or_fail_somewhere() -> None:
    """A row whose figure no sheet writes would never be held against any cart.

    Rows for what few carts have (a generator, a weather file) are tried in their trades' own tests.
    """
    spoken = {one.requirement.id for name in ALL for one in judged(name) if one.verdict in ("pass", "fail")}
    asked = {row.id for row in requirements() if row.id.startswith(("towing.", "standing.", "space."))}
    assert asked - spoken <= {"space.door_leaf"}


@pytest.mark.parametrize("name", ALL)
def test_every_figure_is_a_finite_number(name: str) -> None:
    assert [id for id, figure in worked(name).figures.items() if not math.isfinite(figure)] == []


@pytest.mark.parametrize("name", ALL)
def test_the_json_twin_has_the_keys_that_others_rely_on(name: str) -> None:
    found = told(name)
    assert {"cart", "place", "figures", "findings", "day", "problems"} <= set(found)
    assert found["cart"] == worked(name).build.cart.name
    assert found["problems"] == []
    assert set(RELIED_ON) <= set(found["figures"])
    for figure in found["figures"].values():
        assert {"name", "value", "unit", "origin"} <= set(figure)
    for finding in found["findings"]:
        assert set(finding) >= FINDING_KEYS
        assert finding["verdict"] in ("pass", "fail", "cannot tell", "not applicable")


@pytest.mark.parametrize("name", ALL)
def test_what_a_figure_was_worked_from_is_in_the_json_as_well(name: str) -> None:
    figures = told(name)["figures"]
    for id, figure in figures.items():
        origin = figure["origin"]
        from_ = [*origin.get("inputs", {}).values(), *origin.get("cases", {}).values()]
        from_ += [*origin.get("terms", ())]
        from_ += [one for row in origin.get("rows", {}).values() for one in row.values()]
        assert [one for one in from_ if one not in figures] == [], id


@pytest.mark.parametrize("name", ALL)
@pytest.mark.parametrize("system", ["us", "si"])
def test_the_screen_keeps_within_its_width_and_says_it_all(name: str, system: str) -> None:
    text = examples.text(name).replace('units = "us"', f'units = "{system}"')
    sheets = work(load_text(text))
    lines = [line for line, _ in check_lines(sheets, judge(sheets), "cart.toml")]
    assert [line for line in lines if len(line) > WIDTH] == []
    assert lines[0] == sheets.build.cart.name
    worst: dict[str, str] = {}
    for one in judged(name):
        if one.verdict != "not applicable" and worst.get(one.requirement.id) != "fail":
            order = ("pass", "cannot tell", "fail")
            worst[one.requirement.id] = max(
                worst.get(one.requirement.id, "pass"), one.verdict, key=order.index
            )
    count = Counter(worst.values())
    assert (
        f"Of {len(worst)} requirements {count['fail']} fail, {count['cannot tell']} cannot be told,"
        f" {count['pass']} pass."
    ) in lines
    assert not any("None" in line or "nan" in line.split() for line in lines)


@pytest.mark.parametrize("name", ALL)
def test_the_working_of_every_judged_figure_prints_within_the_width(name: str) -> None:
    sheets = worked(name)
    ids = {one.provided.id for one in judged(name) if one.provided is not None}
    for id in sorted(ids)[::7]:
        lines = list(working_lines(sheets.figures[id], "us"))
        assert [line for line in lines if len(line) > WIDTH] == [], id


@pytest.mark.parametrize("name", ALL)
def test_an_example_explains_itself(name: str) -> None:
    text = examples.text(name)
    assert text.startswith("# ")
    assert "curbwright check" in text
    assert "invented" in text
    assert max(map(len, text.splitlines())) <= 120
