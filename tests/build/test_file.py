"""Mistakes as builders type them: each is told once, where it stands, with what to write instead."""

from __future__ import annotations

import pytest

from curbwright.build.file import load_text
from curbwright.build.problems import Problem, report
from curbwright.errors import BuildFileProblem

CART = '[cart]\nname = "A"\n'
TRAILER = '[trailer]\ndeck_length = "10 ft"\ndeck_width = "80 in"\nball_to_deck = "48 in"\n'


def problems(text: str) -> tuple[Problem, ...]:
    with pytest.raises(BuildFileProblem) as refused:
        load_text(text)
    told = refused.value.problems
    assert all(one.line is None or 1 <= one.line <= text.count("\n") + 1 for one in told)
    return told


def only(text: str) -> str:
    told = problems(text)
    assert len(told) == 1, report(told)
    return str(told[0])


@pytest.mark.parametrize(
    ("section", "line", "says", "advice"),
    [
        ("trailer", 'bare_mass = "700"', '"700" has no unit', 'Try "700 lb"'),
        ("trailer", "bare_mass = 700", "a mass is due", '"700 lb"'),
        ("trailer", 'deck_height = "22 lb"', "is a mass; a length is due", ""),
        ("trailer", 'deck_hieght = "22 in"', "is not a field of [trailer]", 'Did you mean "deck_height"?'),
        ("trailer", 'tires = "ST205"', "a section with fields", "[trailer.tires]"),
        ("trailer", "deck_height = nan", "a length is due", "in quotes"),
        ("trailer", 'bare_mass = "90000 lb"', "more than", "Check the number and its unit"),
        ("trailer.axle", 'count = "2"', "a whole number without quotes", "Write count = 2"),
        ("trailer.axle", 'count = "two"', "a whole number without quotes", "in figures"),
        ("trailer.axle", "count = 3", "3 is out of range", "at most 2"),
        ("trailer.axle", 'back = "71 1/2"', "has no unit", 'Try "71 1/2 in"'),
        ("trailer.axle", 'back = "-1 ft"', "below zero", ""),
        ("trailer.tires", 'kind = "st"', '"st" is not one of the choices (ST, LT, P)', 'Did you mean "ST"?'),
        ("trailer.brakes", 'breakaway = "none"', "true or false", "Write breakaway = false"),
        ("trailer.coupler", "chain_count = -1", "-1 is out of range", "at least 0"),
        ("place", 'state = "Virginia"', "not the two letters of a state", '"VA"'),
        ("place", 'state = "va"', "not the two letters of a state", 'Try "VA"'),
        ("items.stove", 'side = "left"', '"left" is not one of the choices', 'Did you mean "street"?'),
        ("items.stove", 'kind = "gridle"', "is not a kind of thing known here", 'Did you mean "griddle"?'),
        ("items.stove", 'like = "griddle-36"', "is not in the catalogue", "griddle-gas-36"),
        ("items.stove", 'connects = "gas"', "a list in square brackets", 'Write connects = ["gas"]'),
        ("items.stove", 'connects = ["oil"]', '"oil" is not one of the choices', "gas, fresh"),
        ("items.stove", 'off_wall = "2 in"', 'does not go with side = "centre"', "Use off_centre"),
        ("items.stove", 'label = "a\\u001bb"', "a mark that does not print (U+001B)", "plain letters"),
        ("items", 'lamp = "LED"', "a section with fields", "[items.lamp]"),
        ("items", '"my sink" = { mass = "9 lb" }', 'the name "my sink" cannot be used', "label"),
        ("menu.soup", 'cooked_on = "stove"', 'there is no item "stove"', "The items are none yet"),
        ("griddle", 'mass = "9 lb"', '"griddle" is not a field of the build file', "[items.griddle]"),
        ("day", 'opens = "25:00"', "25:00", ""),
        ("people", 'cook = "Ann"', "a section with fields", "[people.cook]"),
    ],
)
def test_one_mistake_gives_one_problem(section: str, line: str, says: str, advice: str) -> None:
    if section == "trailer":
        text, at = f"{CART}{TRAILER}{line}\n", 7
    else:
        text, at = f"{CART}{TRAILER}[{section}]\n{line}\n", 8
    told = only(text)
    assert told.startswith((f"line {at},", f"line {at - 1},"))
    assert says in told
    assert advice in told


def test_what_is_missing_is_named_with_what_it_is() -> None:
    told = report(problems(CART + '[trailer]\ndeck_length = "10 ft"\n'))
    assert "trailer.deck_width: is missing (width of the deck)" in told
    assert "Add deck_width = ... to [trailer]" in " ".join(told.split())


def test_a_misspelt_field_is_not_also_missing() -> None:
    told = only(CART + TRAILER.replace("deck_length", "deck_lenght"))
    assert 'Did you mean "deck_length"?' in told


def test_everything_is_told_at_once_whatever_its_sort() -> None:
    text = (
        CART + TRAILER + 'bare_mass = "700"\nbare_tongue = "90 lb"\nbare_centre_back = "3 ft"\nwheels = 2\n'
        '[place]\nstate = "Ohio"\n[items.stove]\nside = "curb"\noff_centre = "2 in"\nkind = "oven2"\n'
        '[menu.pie]\ncooked_on = "stov"\nportions = "80"\n'
    )
    paths = [one.path for one in problems(text)]
    assert sorted(paths) == sorted([
        "trailer.bare_mass", "trailer.bare_centre_back", "trailer.wheels", "place.state",
        "items.stove.off_centre", "items.stove.kind", "menu.pie.cooked_on", "menu.pie.portions",
    ])  # fmt: skip
    lines = [one.line or 0 for one in problems(text)]
    assert lines == sorted(lines)


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (('deck_width = "80 in"', 'deck_width = "0 in"'), "trailer.deck_width: is nothing"),
        (('ball_to_deck = "48 in"', 'ball_to_deck = "0 in"\naxle.back = "0 in"'), "at or ahead of the ball"),
    ],
)
def test_numbers_that_cannot_be_meant(change: tuple[str, str], says: str) -> None:
    assert says in only(CART + TRAILER.replace(*change))


def test_a_cart_that_is_merely_bad_is_read() -> None:
    build = load_text(CART + TRAILER + 'overall_width = "12 ft"\n[trailer.coupler]\nchain_count = 0\n')
    assert build.trailer.coupler.chain_count == 0


def test_a_warehouse_is_no_cart() -> None:
    items = "".join(f'[items.box_{n}]\nmass = "1 lb"\n' for n in range(301))
    assert "has 301 entries (at most 300)" in only(CART + TRAILER + items)


def test_what_can_still_be_read_is_told_beside_what_cannot() -> None:
    text = (
        CART + TRAILER + "deck_height = 22 in\nwheels = 2\n[items.my stove]\nmass = 62\n"
        '[items.sink]\nside = "left\nbowl_depth = "5"\n[place]\nstate = "Ohio"\n'
        '[menu.pie]\ncooked_on = "stove"\n'
    )
    told = {(one.line, one.path) for one in problems(text)}
    assert {(7, "trailer.deck_height"), (9, "items.my"), (12, "items.sink.side")} <= told
    assert {(8, "trailer.wheels"), (15, "place.state")} <= told
    assert "is missing" not in report(problems(text))
    assert "there is no item" not in report(problems(text))


def test_a_bracket_that_never_closes_hides_the_rest() -> None:
    told = problems(CART + "notes = [\n" + TRAILER + "wheels = 2\n")
    assert [one for one in told if one.path == "trailer.wheels"] == []
