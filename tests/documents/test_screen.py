"""What the check prints: each requirement once, both sides in one unit, and what to do next."""

from __future__ import annotations

import pytest

from curbwright.build.file import load_text
from curbwright.documents.screen import check_lines
from curbwright.documents.verdicts import WIDTH, Verdicts
from curbwright.equations.fit import spare
from curbwright.figures import Entry, Worksheet
from curbwright.requirements import Requirement, judge
from curbwright.sheets import Worksheets
from curbwright.sheets.placing import place

CART = (
    '[cart]\nname = "Small"\nunits = "{units}"\n[trailer]\ndeck_length = "8 ft"\ndeck_width = "5 ft"\n'
    'ball_to_deck = "4 ft"\n'
)


def row(quantity: str, comparator: str, limit: str, kind: str, **changes: str) -> Requirement:
    words = {
        "id": "rule.one", "says": "It holds", "why": "It falls otherwise.", "clause": "", "edition": "",
        "source": "trade-practice", "how": "practice", "severity": "must", **changes,
    }  # fmt: skip
    return Requirement(quantity=quantity, comparator=comparator, limit_value=limit, limit_kind=kind, **words)


def sheets_with(sheet: Worksheet, units: str = "us") -> Worksheets:
    build = load_text(CART.format(units=units))
    return Worksheets(build, place(build), (sheet,), sheet.figures(), sheet.all_gaps())


def printed(sheet: Worksheet, rows: list[Requirement], units: str = "us") -> list[str]:
    sheets = sheets_with(sheet, units)
    found = [one for one in judge(sheets, rows) if one.verdict == "fail"]
    return [line for line, _ in Verdicts(sheets).full(found, "fail")]


@pytest.mark.parametrize(
    ("value", "unit", "shown", "comparator", "limit", "kind", "numbers"),
    [
        (500.0, "kg", None, "<=", "1000 lb", "mass", "1,102 lb  (at most 1,000 lb)  102 lb over"),
        (400.0, "kg", None, ">=", "1000 lb", "mass", "881.8 lb  (at least 1,000 lb)  118 lb short"),
        (0.08, "1", "%", ">=", "10 %", "share", "8 %  (at least 10 %)  2 points short"),
        (0.09, "1", "%", ">=", "10 %", "share", "9 %  (at least 10 %)  1 point short"),
        (28 * 0.0254, "m", None, ">=", "30 in", "length", "28 in  (at least 30 in)  2 in short"),
        (118 * 0.0254, "m", None, "<=", "8 ft", "length", "9 ft 10 in  (at most 8 ft)  22 in over"),
        (1.0, "1", None, ">=", "2", "number", "1  (at least 2)  1 short"),
        (1.875 * 0.0254, "m", None, "==", "2 in", "length", "1 7/8 in  (exactly 2 in)  1/8 in off"),
    ],
)
def test_both_sides_and_the_difference_print_in_one_unit(
    value: float, unit: str, shown: str | None, comparator: str, limit: str, kind: str, numbers: str
) -> None:
    sheet = Worksheet("rig", "Rig")
    sheet.tabled("load", "load", value, unit, source="trade-practice", shown=shown)
    lines = printed(sheet, [row("rig.load", comparator, limit, kind)])
    assert lines[0] == "FAIL  It holds"
    assert lines[1].split(maxsplit=1) == ["load", numbers]


def test_metric_carts_print_metric() -> None:
    sheet = Worksheet("rig", "Rig")
    sheet.tabled("load", "load", 500.0, "kg", source="trade-practice")
    assert "500 kg  (at most 453.6 kg)" in printed(sheet, [row("rig.load", "<=", "1000 lb", "mass")], "si")[1]


def test_a_requirement_is_said_once_with_its_cases_under_their_titles() -> None:
    sheet = Worksheet("rig", "Rig")
    for n in range(8):
        sheet.section(f"case_{n}", f"in case {n}").tabled("load", "load", 10.0 + n, "kg", source="convention")
    lines = printed(sheet, [row("rig.*.load", ">=", "100 kg", "mass")])
    assert [line for line in lines if "It holds" in line] == ["FAIL  It holds"]
    assert [line.split("  ")[3] for line in lines if "short" in line] == [f"in case {n}" for n in range(6)]
    assert "      and 2 more" in lines
    assert lines[-2:] == ["      It falls otherwise.", "      Common practice. Working: show rig.case_0.load"]


def test_a_margin_prints_what_it_was_worked_from() -> None:
    sheet = Worksheet("rig", "Rig")
    there = sheet.given(Entry(20 * 0.0254, "floor in front", "m", "items.stove.front"))
    asked = sheet.tabled("asked", "floor asked", 30 * 0.0254, "m", source="convention")
    sheet.work("spare", "floor left over", spare, clear=there, asked=asked)
    line = printed(sheet, [row("rig.spare", ">=", "0 in", "position")])[1]
    assert line.split("  ")[3:] == ["floor in front", "20 in", "(at least 30 in)", "10 in short"]


def test_where_the_reach_is_given_the_thing_reached_for_is_what_prints() -> None:
    sheet = Worksheet("rig", "Rig")
    reach = sheet.tabled("reach", "reach of a small woman", 24 * 0.0254, "m", source="convention")
    deep = sheet.given(Entry(30 * 0.0254, "depth of the shelf", "m", "items.shelf.depth"))
    sheet.work("spare", "reach left over", spare, clear=reach, asked=deep)
    line = printed(sheet, [row("rig.spare", ">=", "0 in", "position")])[1]
    assert line.split("  ")[3:] == ["depth of the shelf", "30 in", "(at most 24 in)", "6 in over"]


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"clause": "1.2", "edition": "2026", "how": "read"}, "1.2, 2026. Working"),
        ({"clause": "1.2", "how": "memory"}, "1.2 (recalled, not read: look it up). Working"),
        ({"clause": "common practice, 7 to 9"}, "Common practice, 7 to 9. Working"),
        ({"how": "read"}, "Working"),
    ],
)
def test_who_asks_it_and_how_that_is_known(changes: dict[str, str], says: str) -> None:
    sheet = Worksheet("rig", "Rig")
    sheet.tabled("load", "load", 1.0, "kg", source="convention")
    assert printed(sheet, [row("rig.load", ">=", "2 kg", "mass", **changes)])[-1].strip().startswith(says)


def test_long_names_stand_on_lines_of_their_own() -> None:
    sheet = Worksheet("rig", "Rig")
    sheet.tabled("load", "a very long name " * 9, 1.0, "kg", source="convention")
    lines = printed(sheet, [row("rig.load", ">=", "2 kg", "mass")])
    assert max(map(len, lines)) <= WIDTH
    assert any(line.strip() == "2.205 lb  (at least 4.409 lb)  2.2 lb short" for line in lines)


def test_a_cart_hardly_begun_is_told_what_to_fill_in_next() -> None:
    from curbwright.sheets import work

    sheets = work(load_text(CART.format(units="us")))
    lines = [line for line, _ in check_lines(sheets, judge(sheets), "cart.toml")]
    text = " ".join(" ".join(lines).split())
    assert "To fill in next" in text
    assert "trailer.bare_mass (" in text
    assert max(map(len, lines)) <= WIDTH
