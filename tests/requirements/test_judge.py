"""The evaluator: both sides of a limit, equality, what is missing, stars, and what a cart does not have."""

from __future__ import annotations

import json
import math
from typing import Any

import pytest

from curbwright.build.cart import Build
from curbwright.build.file import load_text
from curbwright.errors import UnknownName
from curbwright.figures import Entry, Worksheet
from curbwright.requirements import Finding, Requirement, judge
from curbwright.sheets import Worksheets
from curbwright.sheets.placing import place

SMALLEST = '[cart]\nname = "A"\n[trailer]\ndeck_length = "8 ft"\ndeck_width = "5 ft"\nball_to_deck = "4 ft"\n'


def row(**changes: str) -> Requirement:
    """A requirement of at least 100 kg on ``rig.load``, with changes."""
    words = {
        "id": "rule.load", "quantity": "rig.load", "comparator": ">=",
        "limit_value": "100 kg", "limit_kind": "mass",
        "says": "the rig carries at least 100 kg", "why": "it floats otherwise",
        "clause": "1.2", "edition": "2026", "source": "trade-practice", "how": "practice",
        "severity": "should",
    }  # fmt: skip
    return Requirement(**{**words, **changes})


def rig(loads: dict[str, float], missing: dict[str, str] | None = None) -> Worksheets:
    """Worksheets with a figure for each load, and a gap in a section for each missing field."""
    sheet = Worksheet("rig", "Rig")
    sections: dict[str, Worksheet] = {"": sheet}
    for id, value in loads.items():
        section, _, name = id.rpartition(".")
        if section not in sections:
            sections[section] = sheet.section(section, section)
        sections[section].tabled(name, id, value, "kg", source="trade-practice")
    for section, field in (missing or {}).items():
        if section not in sections:
            sections[section] = sheet.section(section, section)
        with sections[section].attempt():
            sections[section].given(Entry(None, f"the {field.rpartition('.')[2]}", "kg", field))
    build = load_text(SMALLEST)
    assert isinstance(build, Build)
    return Worksheets(build, place(build), (sheet,), sheet.figures(), sheet.all_gaps())


def only(found: list[Finding]) -> Finding:
    assert len(found) == 1
    return found[0]


@pytest.mark.parametrize(
    ("comparator", "load", "verdict", "margin"),
    [
        (">=", 99.9, "fail", -0.001), (">=", 100.0, "pass", 0.0), (">=", 100.1, "pass", 0.001),
        ("<=", 99.9, "pass", 0.001), ("<=", 100.0, "pass", 0.0), ("<=", 100.1, "fail", -0.001),
        ("==", 99.9, "fail", -0.001), ("==", 100.0, "pass", 0.0), ("==", 100.1, "fail", -0.001),
        (">=", -100.0, "fail", -2.0), ("<=", -100.0, "pass", 2.0),
    ],
)  # fmt: skip
def test_both_sides_of_a_limit(comparator: str, load: float, verdict: str, margin: float) -> None:
    found = only(judge(rig({"load": load}), [row(comparator=comparator)]))
    assert found.verdict == verdict
    assert found.margin == pytest.approx(margin, abs=1e-12)


@pytest.mark.parametrize("comparator", [">=", "<=", "=="])
def test_equality_passes_for_numbers_that_differ_only_by_how_they_were_worked(comparator: str) -> None:
    assert 0.1 + 0.2 != 0.3
    held = row(comparator=comparator, limit_value="0.3 kg")
    assert only(judge(rig({"load": 0.1 + 0.2}), [held])).verdict == "pass"
    assert only(judge(rig({"load": 0.3 * (1 - 1e-12)}), [held])).verdict == "pass"


@pytest.mark.parametrize(("comparator", "off"), [(">=", -1e-6), ("<=", 1e-6), ("==", 1e-6), ("==", -1e-6)])
def test_a_millionth_of_the_limit_is_no_equality(comparator: str, off: float) -> None:
    assert only(judge(rig({"load": 100.0 * (1 + off)}), [row(comparator=comparator)])).verdict == "fail"


def test_a_limit_of_nothing_gives_a_plain_difference() -> None:
    held = row(limit_value="0 kg", comparator="<=")
    assert only(judge(rig({"load": 0.0}), [held])).verdict == "pass"
    over = only(judge(rig({"load": 2.5}), [held]))
    assert over.verdict == "fail"
    assert over.margin == pytest.approx(-2.5)


def test_a_limit_can_be_another_figure() -> None:
    held = row(comparator="<=", limit="rig.rating", limit_value="", limit_kind="")
    assert only(judge(rig({"load": 99.0, "rating": 100.0}), [held])).verdict == "pass"
    over = only(judge(rig({"load": 101.0, "rating": 100.0}), [held]))
    assert over.verdict == "fail"
    assert over.required is not None
    assert over.required.id == "rig.rating"


def test_a_missing_field_is_cannot_tell_and_the_field_is_named() -> None:
    found = only(judge(rig({}, {"": "items.stove.mass"}), [row()]))
    assert found.verdict == "cannot tell"
    assert found.missing == ("items.stove.mass",)
    assert found.fields == {"items.stove.mass"}
    assert found.reason == "the mass is not given"
    assert found.margin is None


def test_a_missing_limit_is_cannot_tell_and_the_field_is_named() -> None:
    held = row(comparator="<=", limit="trailer.rating", limit_value="", limit_kind="")
    found = only(judge(rig({"load": 1.0}, {"": "trailer.rating"}), [held]))
    assert (found.verdict, found.missing) == ("cannot tell", ("trailer.rating",))


def test_a_limit_that_nobody_wrote_on_a_sheet_is_never_a_pass() -> None:
    held = row(comparator="<=", limit="trailer.rating", limit_value="", limit_kind="")
    found = only(judge(rig({"load": 1.0}), [held]))
    assert (found.verdict, found.missing) == ("cannot tell", ("trailer.rating",))


def test_what_a_cart_does_not_have_is_not_applicable() -> None:
    found = only(judge(rig({"other": 1.0}), [row()]))
    assert (found.verdict, found.missing, found.margin) == ("not applicable", (), None)


def test_a_gap_elsewhere_does_not_make_an_absent_thing_cannot_tell() -> None:
    found = only(judge(rig({"other": 1.0}, {"hood": "items.hood.width"}), [row(quantity="rig.fryer.load")]))
    assert found.verdict == "not applicable"


def test_a_star_holds_for_every_section_and_each_is_a_finding_of_its_own() -> None:
    sheets = rig({"full.load": 120.0, "half.load": 60.0, "full.other": 1.0, "full.deep.load": 5.0})
    found = judge(sheets, [row(quantity="rig.*.load")])
    verdicts = {one.id: one.verdict for one in found}
    assert verdicts == {"rule.load.half": "fail", "rule.load.full": "pass"}


def test_a_star_stands_for_one_whole_segment_only() -> None:
    sheets = rig({"full.tire.load": 50.0, "load": 50.0})
    assert only(judge(sheets, [row(quantity="rig.*.load")])).verdict == "not applicable"


def test_a_star_over_things_of_one_sort_tells_which_of_them_is_missing_something() -> None:
    sheets = rig({"door.left.load": 120.0}, {"door.right": "items.right.swing"})
    found = judge(sheets, [row(quantity="rig.door.*.load")])
    assert [(one.id, one.verdict, one.missing) for one in found] == [
        ("rule.load.right", "cannot tell", ("items.right.swing",)),
        ("rule.load.left", "pass", ()),
    ]


def test_a_star_in_the_limit_stands_for_the_same_thing() -> None:
    loads = {
        "axle.a.load": 90.0,
        "axle.a.most": 100.0,
        "axle.b.load": 90.0,
        "axle.b.most": 80.0,
    }
    asked = row(
        quantity="rig.axle.*.load", comparator="<=", limit="rig.axle.*.most", limit_value="", limit_kind=""
    )
    found = {one.id: one for one in judge(rig(loads), [asked])}
    assert {id: one.verdict for id, one in found.items()} == {"rule.load.a": "pass", "rule.load.b": "fail"}
    assert found["rule.load.b"].required == 80.0


def test_a_thing_whose_own_limit_is_missing_cannot_be_told() -> None:
    loads = {"axle.a.load": 90.0, "axle.b.load": 90.0, "axle.b.most": 100.0}
    asked = row(
        quantity="rig.axle.*.load", comparator="<=", limit="rig.axle.*.most", limit_value="", limit_kind=""
    )
    found = {one.id: one.verdict for one in judge(rig(loads, {"axle.a": "axles.a.most"}), [asked])}
    assert found == {"rule.load.a": "cannot tell", "rule.load.b": "pass"}


def test_findings_come_worst_first_then_by_weight_then_by_margin() -> None:
    rows = [
        row(id="a.advice", severity="advice"),
        row(id="b.must", severity="must", limit_value="120 kg"),
        row(id="c.should", limit_value="150 kg"),
        row(id="d.pass", severity="must", limit_value="50 kg"),
        row(id="e.tight", severity="must", limit_value="89 kg"),
        row(id="f.unknown", quantity="rig.gone.load", severity="must"),
    ]
    found = judge(rig({"load": 90.0}, {"gone": "items.gone.mass"}), rows)
    assert [one.id for one in found] == ["b.must", "c.should", "a.advice", "f.unknown", "e.tight", "d.pass"]


def test_the_json_of_a_finding_is_plain_and_in_si() -> None:
    found = only(judge(rig({"load": 90.0}), [row(limit_value="220.462262 lb")]))
    told: dict[str, Any] = json.loads(json.dumps(found.as_json(), allow_nan=False))
    assert told["verdict"] == "fail"
    assert told["required"] == pytest.approx(100.0)
    assert told["provided"] == 90.0
    assert told["unit"] == "kg"
    assert told["margin"] == pytest.approx(-0.1)
    assert told["figure"] == "rig.load"
    assert {"id", "clause", "edition", "how", "severity", "says", "missing"} <= set(told)


def test_a_figure_that_is_not_a_number_never_reaches_the_evaluator() -> None:
    with pytest.raises(OverflowError):
        Worksheet("rig", "Rig").tabled("load", "load", math.nan, "kg", source="trade-practice")


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"comparator": "~"}, "comparator"),
        ({"severity": "grave"}, "severity"),
        ({"limit": "rig.rating"}, "either limit or limit_value"),
        ({"limit_value": "", "limit_kind": ""}, "either limit or limit_value"),
    ],
)
def test_a_row_that_cannot_be_meant_is_refused(changes: dict[str, str], says: str) -> None:
    with pytest.raises(UnknownName, match=says):
        row(**changes)
