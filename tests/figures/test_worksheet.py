import math
import pickle

import pytest

from curbwright.errors import MissingInput, SheetError, UntracedNumber, WrongUnit
from curbwright.figures import (
    Figure,
    Given,
    Scheduled,
    Solved,
    Summed,
    Tabled,
    Worked,
    Worksheet,
    equation,
    inputs_of,
    origin_tree,
    roots,
    sources,
    walk,
)
from curbwright.quantities import Number
from tests.figures.sample import entry, gap_share, lever, rest_moment, sheet


@equation("test:root", uncited=True)
def root_of(share: Number) -> Number:
    """Root of a share.

    >>> root_of(share=4)
    2.0
    """
    return share**0.5


@equation("test:product", uncited=True)
def product(share: Number, times: Number) -> Number:
    """Product.

    >>> product(share=2, times=3)
    6
    """
    return share * times


def test_a_naked_number_is_refused_naming_sheet_line_and_argument():
    on, _ = sheet()
    with pytest.raises(UntracedNumber, match="sample: a moment: arm has no origin"):
        on.work("x", "a moment", lever, load=on.lines[0], arm=1.5)


def test_arithmetic_gives_a_bare_number_that_cannot_go_back():
    on, made = sheet()
    bare = made["gross"] * 2
    assert type(bare) is float
    with pytest.raises(UntracedNumber):
        on.total("x", "twice", [bare])
    with pytest.raises(UntracedNumber):
        on.largest("y", "largest", {"one": bare})
    with pytest.raises(UntracedNumber):
        on.schedule("z", "rows", lever, {"one": {"load": bare, "arm": on.lines[2]}})


def test_a_figure_in_another_unit_is_refused():
    on, _ = sheet()
    mass, station = on.lines[0], on.lines[2]
    with pytest.raises(WrongUnit, match="load is in m, not kg"):
        on.work("x", "a moment", lever, load=station, arm=station)
    with pytest.raises(WrongUnit, match="cannot add kg, m"):
        on.total("x", "a sum", [mass, station])
    with pytest.raises(WrongUnit, match="different units"):
        on.largest("x", "a case", {"mass": mass, "station": station})
    with pytest.raises(WrongUnit, match="load is in m, not kg"):
        on.schedule("x", "rows", lever, {"stove": {"load": station, "arm": station}})


@pytest.mark.parametrize("inputs", [("load",), ("load", "arm", "twist")])
def test_a_missing_or_an_unknown_argument_is_refused(inputs):
    on, _ = sheet()
    with pytest.raises(WrongUnit):
        on.work(
            "x",
            "a moment",
            lever,
            **{word: on.lines[0] if word == "load" else on.lines[2] for word in inputs},
        )


def test_two_figures_cannot_share_an_id():
    on, _ = sheet()
    with pytest.raises(SheetError, match=r"two figures are called sample\.gross"):
        on.total("gross", "again", [on.lines[0]])


def test_the_same_field_is_written_once():
    on = Worksheet("one", "One")
    first = on.given(entry("items.stove.mass", 30.0))
    assert on.given(entry("items.stove.mass", 30.0)) is first
    assert on.lines == [first]


def test_a_field_left_out_becomes_a_gap_and_never_a_number():
    on = Worksheet("one", "One")
    with on.attempt():
        on.given(entry("items.stove.mass", None))
        raise AssertionError("a missing field gave a number")
    assert [(gap.section, gap.path) for gap in on.all_gaps()] == [("one", "items.stove.mass")]
    with pytest.raises(MissingInput, match="is not given"):
        on.given(entry("items.stove.mass", None))


def test_gaps_of_sections_count_too():
    on = Worksheet("one", "One")
    with (below := on.section("two", "Two")).attempt():
        below.given(entry("a.b", None))
    assert [gap.section for gap in on.all_gaps()] == ["one.two"]


@pytest.mark.parametrize(
    ("function", "values"),
    [
        (gap_share, (1.0, 0.0)),
        (root_of, (-1.0,)),
        (product, (1e200, 1e200)),
    ],
    ids=["divides by zero", "root of a negative", "beyond any float"],
)
def test_inputs_that_give_no_number_become_a_gap(function, values):
    on = Worksheet("one", "One")
    units = [unit for word, unit in _card_units(function).items() if word != "return"]
    words = [word for word in _card_units(function) if word != "return"]
    inputs = {
        word: on.given(entry(f"field.{word}", value, unit))
        for word, value, unit in zip(words, values, units, strict=True)
    }
    with on.attempt():
        on.work("x", "nothing", function, **inputs)
        raise AssertionError("it gave a number")
    assert "give no number" in on.gaps[0].says
    assert "one.x" not in on.figures()


def _card_units(function):
    from curbwright.figures import card_of

    return card_of(function).units


def test_every_verb_gives_its_value():
    _, made = sheet()
    assert made["moment"] == 45.0
    assert made["gross"] == 57.5
    assert made["moments"] == 100.0
    assert made["heavier"] == 30.0
    assert made["lighter"] == 20.0
    assert made["arm"] == 2.25
    assert made["gap"] == 1 - 1.5 / 2.75


def test_every_verb_keeps_its_origin():
    on, made = sheet()
    kinds = {name: type(figure.origin) for name, figure in made.items()}
    assert (kinds["moment"], kinds["gross"], kinds["moments"], kinds["arm"]) == (
        Worked,
        Summed,
        Scheduled,
        Solved,
    )
    assert made["heavier"].origin.chosen == "stove"
    assert made["lighter"].origin.chosen == "sink"
    assert isinstance(on.lines[0].origin, Given)
    assert isinstance(on.lines[4].origin, Tabled)


def test_an_empty_sum_needs_a_unit_and_an_empty_choice_is_refused():
    on = Worksheet("one", "One")
    assert on.total("none", "nothing aboard", [], unit="kg") == 0.0
    with pytest.raises(WrongUnit):
        on.total("none_again", "nothing aboard", [])
    with pytest.raises(SheetError, match="no case to choose from"):
        on.largest("worst", "worst", {})


def test_solve_refuses_an_interval_without_a_root():
    on, made = sheet()
    with pytest.raises(SheetError, match="no root between"):
        on.solve(
            "far",
            "far arm",
            rest_moment,
            for_="arm",
            between=(5.0, 10.0),
            load=on.lines[0],
            moment=made["moment"],
        )


def test_solve_refuses_an_end_that_gives_no_number():
    on = Worksheet("one", "One")
    share = on.given(entry("a.share", 1e200, "1"))
    with pytest.raises(SheetError, match="no root between"):
        on.solve("times", "times", product, for_="times", between=(-1e200, 1e200), share=share)


def test_solve_finds_a_root_at_either_end():
    on, made = sheet()
    stove, moment = on.lines[0], made["moment"]
    at_low = on.solve("low", "arm", rest_moment, for_="arm", between=(1.5, 9.0), load=stove, moment=moment)
    at_high = on.solve("high", "arm", rest_moment, for_="arm", between=(0.0, 1.5), load=stove, moment=moment)
    assert (at_low, at_high) == (1.5, 1.5)


def test_roots_are_the_fields_a_number_depends_on():
    on, made = sheet()
    assert roots(made["moment"]) == {"items.stove.mass", "items.stove.back"}
    assert roots(made["moments"]) == {
        f"items.{name}.{field}" for name in ("stove", "sink") for field in ("mass", "back")
    }
    assert roots(made["arm"]) == {"items.sink.mass", "items.stove.mass", "items.stove.back"}
    assert roots(made["heavier"]) == {"items.stove.mass", "items.sink.mass"}
    assert roots(on.lines[4]) == set()


def test_sources_of_a_whole_working():
    _, made = sheet()
    assert sources(made["gross"]) == {"trade-practice"}
    assert sources(made["arm"]) == {"test:rest", "test:lever"}


def test_walk_gives_inputs_first_and_each_once():
    _, made = sheet()
    ids = [one.id for one in walk(made["arm"])]
    assert ids[-1] == "sample.arm"
    assert len(ids) == len(set(ids))
    for one in walk(made["arm"]):
        assert all(ids.index(each.id) < ids.index(one.id) for each in inputs_of(one))


def test_a_very_long_working_does_not_run_out_of_stack():
    on = Worksheet("long", "Long")
    last = on.given(entry("a.b", 1.0))
    for number in range(3000):
        last = on.total(f"step_{number}", "step", [last])
    assert roots(last) == {"a.b"}


@pytest.mark.parametrize("name", ["moment", "gross", "moments", "heavier", "gap", "arm"])
def test_a_figure_survives_pickling_with_its_working(name):
    _, made = sheet()
    again = pickle.loads(pickle.dumps(made[name]))
    assert isinstance(again, Figure)
    assert (again, again.id, again.name, again.unit) == (
        made[name],
        made[name].id,
        made[name].name,
        made[name].unit,
    )
    assert origin_tree(again) == origin_tree(made[name])
    assert roots(again) == roots(made[name])


def test_the_origin_tree_is_plain_data():
    import json

    on, _ = sheet()
    for one in on.lines:
        assert json.loads(json.dumps(origin_tree(one)))["kind"]


def test_figures_are_finite():
    on, _ = sheet()
    assert all(math.isfinite(one) for one in on.figures().values())
