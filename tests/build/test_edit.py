"""Changes to a cart as a builder writes it, and changes that cannot be made."""

from __future__ import annotations

import tomllib
from typing import Any

import pytest

from curbwright.build import splice
from curbwright.build.edit import Edit, add, remove, set_value
from curbwright.errors import BuildFileProblem, EditProblem

CART = """\
# Blue Door, as built
# second trailer

name = "Blue Door"  # painted on the side

# the griddle came with the trailer
[items.griddle]
mass = "62 lb"   # nameplate
back = '2 ft'
# width = "36 in"

# bought used
[items.fryer]
mass = "48 lb"
size = { width = "12 in", depth = "2 ft" }
shelves = [
    "top",    # spices
    "middle"  # pans
]

[water]
fresh.volume = "30 gal"
waste.volume = "35 gal"

[[menu]]
dish = "soup"

[[menu]]
dish = "rice"
"""


def changed_lines(edit: Edit) -> list[str]:
    return [line for line in edit.diff.splitlines() if line[0] in "+-" and line.strip("+-")]


@pytest.mark.parametrize("end", ["\n", "\r\n"])
@pytest.mark.parametrize(
    ("path", "value", "lines"),
    [
        ("items.griddle.mass", "71 lb", ['-mass = "62 lb"   # nameplate', '+mass = "71 lb"   # nameplate']),
        ("items.griddle.back", "3 ft", ["-back = '2 ft'", '+back = "3 ft"']),
        ("items.griddle.above", "1 in", ['+above = "1 in"']),
        ("items.fryer.size.depth", 2, ['-size = { width = "12 in", depth = "2 ft" }',
                                      '+size = { width = "12 in", depth = 2 }']),
        ("items.fryer.size.height", "1 in", ['-size = { width = "12 in", depth = "2 ft" }',
                                            '+size = { width = "12 in", depth = "2 ft", height = "1 in" }']),
        ("items.fryer.shelves.2", "low", ['-    "middle"  # pans', '+    "middle",  # pans', '+    "low"']),
        ("items.fryer.shelves.0", "low", ['-    "top",    # spices', '+    "low",    # spices']),
        ("water.fresh.fitting", "1/2 in", ['+fresh.fitting = "1/2 in"']),
        ("water.pump", True, ["+pump = true"]),
        ("menu.0.price", 4.5, ["+price = 4.5"]),
        ("place", "Riverton", ['+place = "Riverton"']),
        ("items.fan.mass", "4 lb", ["+[items.fan]", '+mass = "4 lb"']),
        ("items.count", 2, ["+[items]", "+count = 2"]),
        (("items", "green chili", "mass"), "1 lb", ['+[items."green chili"]', '+mass = "1 lb"']),
    ],
)  # fmt: skip
def test_one_change_to_a_cart(end: str, path: str, value: Any, lines: list[str]) -> None:
    edit = set_value(CART.replace("\n", end), path, value)
    assert changed_lines(edit) == lines
    assert edit.text.count("\n") == edit.text.count(end)


@pytest.mark.parametrize(
    ("path", "lines"),
    [
        ("items.griddle.mass", ['-mass = "62 lb"   # nameplate']),
        ("items.fryer.size", ['-size = { width = "12 in", depth = "2 ft" }']),
        (
            "items.fryer.size.width",
            ['-size = { width = "12 in", depth = "2 ft" }', '+size = { depth = "2 ft" }'],
        ),
        (
            "items.fryer.size.depth",
            ['-size = { width = "12 in", depth = "2 ft" }', '+size = { width = "12 in" }'],
        ),
        ("items.fryer.shelves.0", ['-    "top",    # spices']),
        ("items.fryer.shelves.1", ['-    "middle"  # pans']),
        ("items.griddle", ["-[items.griddle]", '-mass = "62 lb"   # nameplate', "-back = '2 ft'"]),
        ("water.fresh", ['-fresh.volume = "30 gal"']),
        ("menu.0", ["-[[menu]]", '-dish = "soup"']),
        ("menu.1", ["-[[menu]]", '-dish = "rice"']),
        ("menu", ["-[[menu]]", '-dish = "soup"', "-[[menu]]", '-dish = "rice"']),
    ],
)
def test_one_thing_taken_out_of_a_cart(path: str, lines: list[str]) -> None:
    assert changed_lines(remove(CART, path)) == lines


def test_a_new_table_comes_after_its_like_with_a_blank_line_around() -> None:
    text = add(
        CART, "items.fan", {"mass": "4 lb", "size": {"width": "10 in"}, "on": ["day", 'say "hi"']}
    ).text
    assert (
        """
    "middle"  # pans
]

[items.fan]
mass = "4 lb"
size = { width = "10 in" }
on = ["day", "say \\"hi\\""]

[water]
"""
        in text
    )


def test_a_large_table_inside_a_new_one_has_its_own_heading() -> None:
    duty = {f"part_{n}": "a long enough text" for n in range(6)}
    text = add("", "items.fan", {"duty": duty, "mass": "4 lb"}).text
    assert text.startswith('[items.fan]\nmass = "4 lb"\n\n[items.fan.duty]\npart_0 = "a long enough text"\n')
    assert tomllib.loads(text) == {"items": {"fan": {"duty": duty, "mass": "4 lb"}}}


def test_a_table_set_whole_changes_only_the_fields_that_differ() -> None:
    edit = set_value(CART, "items.griddle", {"mass": "62 lb", "back": "3 ft", "side": "curb"})
    assert changed_lines(edit) == ["-back = '2 ft'", '+back = "3 ft"', '+side = "curb"']


def test_setting_what_is_already_there_changes_nothing() -> None:
    assert set_value(CART, "items.griddle.mass", "62 lb") == Edit(CART, "")
    assert set_value(CART, "items", tomllib.loads(CART)["items"]) == Edit(CART, "")


def test_like_values_of_another_kind_are_not_the_same() -> None:
    assert set_value("a = 1", "a", True).text == "a = true"
    assert set_value("a = 1", "a", 1.0).text == "a = 1.0"
    assert set_value("a = 0.0", "a", -0.0).text == "a = -0.0"


def test_the_last_element_removed_leaves_an_empty_list_or_table() -> None:
    assert remove("[[menu]]\ndish = 1\n", "menu.0").text == "menu = []\n"
    assert tomllib.loads(remove("[items.a]\nx = 1\n", "items.a").text) == {"items": {}}
    assert tomllib.loads(remove("a.b.c = 1\n", "a.b.c").text) == {"a": {"b": {}}}
    assert tomllib.loads(remove("a = {b.c = 1}\n", "a.b.c").text) == {"a": {"b": {}}}


def test_a_file_without_a_last_line_end_and_one_with_a_mark_before_it() -> None:
    assert set_value("a = 1", "b", 2).text == "a = 1\nb = 2\n"
    assert set_value("\ufeffa = 1\n", "b", 2).text == "\ufeffa = 1\nb = 2\n"
    assert set_value("\ufeff[a]\n", "b", 2).text == "\ufeffb = 2\n\n[a]\n"
    assert set_value("\ufeff", "b", 2).text == "\ufeffb = 2\n"
    assert set_value("# head\n[a]\n", "b", 2).text == "# head\nb = 2\n\n[a]\n"
    assert set_value("# head\n\n# on a\n[a]\n", "b", 2).text == "# head\n\nb = 2\n\n# on a\n[a]\n"


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (
            lambda: remove(CART, "items.griddle.mas"),
            'items.griddle.mas is not in the file.*Did you mean "mass"',
        ),
        (lambda: remove(CART, "trailer"), "trailer is not in the file"),
        (lambda: remove(CART, "menu.2"), "menu.2 is not in the file"),
        (lambda: remove(CART, "name.x"), "name.x is not in the file"),
        (lambda: remove(CART, ""), "not the path of a field"),
        (lambda: remove(CART, ()), "not the path of a field"),
        (lambda: set_value(CART, "items..x", 1), "not the path of a field"),
        (lambda: set_value(CART, "name.x", 1), "name is a value, not a table"),
        (lambda: set_value(CART, "menu.3.dish", "x"), "menu is a list of 2"),
        (lambda: set_value(CART, "menu.dish", "x"), "menu is a list of 2"),
        (lambda: set_value(CART, ("menu", -1, "dish"), "x"), "menu is a list of 2"),
        (lambda: set_value(CART, ("menu", True), {}), "menu is a list of 2"),
        (lambda: set_value(CART, ("items", 0), "x"), "items is not a list"),
        (lambda: set_value(CART, ("new", 0), "x"), "new is not a list"),
        (lambda: set_value(CART, "menu.2", "x"), "takes only tables"),
        (lambda: set_value(CART, "menu.1", ["x"]), "takes only tables"),
        (lambda: set_value("[[menu]]\nx = 1", "menu.0", "x"), "takes only tables"),
        (lambda: add(CART, "items.fryer", {}), "items.fryer is already in the file .line 13."),
        (lambda: add(CART, "name", {}), "name is already in the file"),
        (lambda: add(CART, "items.fan", []), "only a table can be added"),  # type: ignore[arg-type]
        (lambda: set_value(CART, "a", None), "cannot hold NoneType"),
        (lambda: set_value(CART, "a", [object()]), "cannot hold object"),
        (lambda: set_value(CART, "a", {1: 2}), "a key must be text"),
        (lambda: set_value(CART, "a", 2**63), "too long"),
        (lambda: set_value(CART, "a", "\ud800"), "cannot be saved"),
        (lambda: set_value(CART, "a\ud800", 1), "cannot be saved"),
        (lambda: set_value(CART, "a.b.c.d.e.f.g.h.i.j.k.l.m", 1), "more than 12 levels"),
        (lambda: set_value(CART, "a", [[[[[[[[[[[[1]]]]]]]]]]]]), "more than 12 levels"),
    ],
)
def test_a_change_that_cannot_be_made_is_refused_in_words(change: Any, says: str) -> None:
    with pytest.raises(EditProblem, match=says):
        change()


def test_a_value_that_contains_itself_is_refused() -> None:
    endless: list[Any] = []
    endless.append(endless)
    with pytest.raises(EditProblem, match="more than 12 levels"):
        set_value("", "a", endless)


def test_a_text_that_cannot_be_read_is_not_changed() -> None:
    with pytest.raises(BuildFileProblem, match="line 1, mass: 62 lb is not in quotes"):
        set_value("mass = 62 lb", "mass", "62 lb")


def test_positions_in_lists_may_be_numbers_or_text() -> None:
    assert set_value("a = [1, 2]", ("a", 1), 3).text == set_value("a = [1, 2]", "a.1", 3).text == "a = [1, 3]"
    assert set_value("[a]\n1 = 2", "a.1", 3).text == "[a]\n1 = 3"


def test_the_diff_of_a_change_to_a_long_file_is_short() -> None:
    text = "".join(f'[items.item{n}]\nmass = "62 lb"\nback = "{n} in"\n\n' for n in range(3000))
    edit = set_value(text, "items.item1500.mass", "70 lb")
    changed = ["@@ -6001,3 +6001,3 @@", " [items.item1500]", '-mass = "62 lb"', '+mass = "70 lb"']
    assert edit.diff.splitlines() == [*changed, ' back = "1500 in"']


@pytest.mark.parametrize(
    ("text", "appended", "shortened"),
    [
        ("a = [0]", "a = [0, 9]", "a = []"),
        ("a = [0, 1]", "a = [0, 1, 9]", "a = [0]"),
        ("a = [0, 1,]", "a = [0, 1, 9]", "a = [0,]"),
        ("a = [\n 0, # x, y\n 1 # x, ]\n]", "a = [\n 0, # x, y\n 1, # x, ]\n 9\n]", "a = [\n 0, # x, y\n]"),
        ("a = [\n  0,\n  1, # x\n  # y\n]", "a = [\n  0,\n  1, # x\n  9,\n  # y\n]", "a = [\n  0,\n  # y\n]"),
        ("a = [0,\n1]", "a = [0,\n1, 9]", "a = [0,\n]"),
        ("a = [[0], [1]]", "a = [[0], [1], 9]", "a = [[0]]"),
    ],
)  # fmt: skip
def test_lists_grow_and_shrink_at_their_end_with_remarks_in_place(
    text: str, appended: str, shortened: str
) -> None:
    length = len(tomllib.loads(text)["a"])
    assert set_value(text, ("a", length), 9).text == appended
    assert remove(text, ("a", length - 1)).text == shortened


def test_a_table_between_two_others_goes_with_one_of_its_blank_lines() -> None:
    assert remove("[a]\n\n[b]\n\n[c]\n", "b").text == "[a]\n\n[c]\n"
    assert remove("[a]\n[b]\n\n[c]\n", "b").text == "[a]\n\n[c]\n"
    assert remove("[a]\n\n[b]\n[c]\n", "b").text == "[a]\n\n[c]\n"
    assert remove("[a]\n\n[b]\n", "b").text == "[a]\n"
    assert remove("[a]\n\n[b]", "b").text == "[a]\n"
    assert remove("[b]\n\n[c]\n", "b").text == "[c]\n"
    assert remove("[b]\n", "b").text == ""


def test_a_remark_belongs_to_what_it_touches_when_a_table_comes_between() -> None:
    before = "[items.a]\nx = 1\n# x = 2\n\n# on b\n[b]\ny = 1\n"
    assert add(before, "items.c", {"z": 1}).text == (
        "[items.a]\nx = 1\n# x = 2\n\n[items.c]\nz = 1\n\n# on b\n[b]\ny = 1\n"
    )
    before = "[items.a]\nx = 1\n# on b\n[b]\ny = 1\n"
    assert add(before, "items.c", {"z": 1}).text == (
        "[items.a]\nx = 1\n\n[items.c]\nz = 1\n\n# on b\n[b]\ny = 1\n"
    )


@pytest.mark.parametrize(
    ("wrong", "says"),
    [("a = 2\nb = 9\n", "touched something else"), ("a = = 2\n", "could not be read after it. line 1, a:")],
)
def test_a_change_that_went_wrong_is_never_handed_back(
    wrong: str, says: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(splice, "replace", lambda *_: wrong)
    with pytest.raises(EditProblem, match=says):
        set_value("a = 1\nb = 1\n", "a", 2)
