"""What every equation of every trade keeps: units, an example, a source, a published case, plain words."""

from __future__ import annotations

import ast
import cmath
import importlib
import inspect
import json
import pkgutil
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from random import Random
from typing import Any

import pint
import pytest

import curbwright.equations
from curbwright import sources
from curbwright.figures import EQUATIONS, Card, card_of, equation
from curbwright.quantities import Metres, NewtonMetres, NewtonsPerMetre

PUBLISHED = Path(__file__).parents[1] / "published"
SHORT_WORDS = {"of", "on", "to", "at", "in", "by", "up", "or", "no", "ph"}
"""Words of two letters an argument's name may hold; others that short are symbols."""
TIMES = {"[length]": 2.0, "[mass]": 3.0, "[time]": 0.5, "[temperature]": 1.5, "[current]": 1.25,
         "[luminosity]": 1.75, "[money]": 7.0}  # fmt: skip
"""By how much each base unit is made smaller to see whether an equation cares."""


def _import_all() -> None:
    for module in pkgutil.walk_packages(curbwright.equations.__path__, "curbwright.equations."):
        importlib.import_module(module.name)


_import_all()
CARDS = sorted(
    (card for card in EQUATIONS.values() if card.function.__module__.startswith("curbwright.equations.")),
    key=lambda card: (card.trade, card.name),
)


def name_of(card: Card) -> str:
    return f"{card.trade}.{card.name}"


every_card = pytest.mark.parametrize("card", CARDS, ids=name_of)


@cache
def registry() -> pint.UnitRegistry[Any]:
    units: pint.UnitRegistry[Any] = pint.UnitRegistry()
    units.define("USD = [money]")
    return units


def arguments(card: Card) -> list[str]:
    return [word for word in card.units if word != "return"]


def dimension(unit: str) -> dict[str, float]:
    return dict(registry().parse_units("" if unit == "1" else unit).dimensionality)


def finite(found: Any) -> bool:
    return not isinstance(found, complex) and cmath.isfinite(found)


def tries(card: Card) -> Iterator[dict[str, float]]:
    """Yield sets of positive arguments, the same ones at every run."""
    random = Random(card.name)
    while True:
        yield {word: random.uniform(0.2, 0.9) for word in arguments(card)}


def working_arguments(card: Card) -> dict[str, float]:
    """Return arguments that give a finite number."""
    for _, values in zip(range(2000), tries(card), strict=False):
        try:
            if finite(card.function(**values)):
                return values
        except (ArithmeticError, RuntimeWarning):
            continue
    raise AssertionError(f"{card.name} gives no number for 2000 sets of arguments")


def quantity(value: float, unit: str) -> Any:
    return registry().Quantity(value, "" if unit == "1" else unit)


def has_declared_dimension(card: Card) -> bool:
    result = card.function(
        **{word: quantity(value, card.units[word]) for word, value in working_arguments(card).items()}
    )
    return bool(quantity(1.0, card.units["return"]).check(getattr(result, "dimensionality", {})))


def test_there_are_equations() -> None:
    assert len(CARDS) > 60


@pytest.mark.parametrize(
    "card", [card for card in CARDS if not card.procedure and not card.empirical], ids=name_of
)
def test_the_result_has_the_declared_dimension(card: Card) -> None:
    assert has_declared_dimension(card)


@pytest.mark.parametrize("card", [card for card in CARDS if not card.empirical], ids=name_of)
def test_a_change_of_base_units_changes_nothing_but_the_number(card: Card) -> None:
    values = working_arguments(card)
    scaled = {word: value * size(card.units[word]) for word, value in values.items()}
    before, after = float(card.function(**values)), float(card.function(**scaled))
    assert after == pytest.approx(before * size(card.units["return"]), rel=1e-7)


def size(unit: str) -> float:
    product = 1.0
    for base, power in dimension(unit).items():
        product *= TIMES[base] ** power
    return product


def test_a_wrong_dimension_is_caught() -> None:
    @equation("wrong on purpose")
    def wrong(load: NewtonsPerMetre, span: Metres) -> NewtonMetres:
        return load * span / 8

    card = EQUATIONS.pop(wrong)
    assert not has_declared_dimension(card)


@every_card
def test_the_expression_can_be_printed(card: Card) -> None:
    if not card.procedure:
        assert isinstance(card.expression, ast.expr)


@every_card
def test_it_says_what_it_is_and_shows_an_example(card: Card) -> None:
    text = inspect.getdoc(card.function) or ""
    assert re.search(rf">>> .*\b{card.name}\(", text), "no example that calls it"
    assert card.says.endswith((".", ")")), "the first paragraph is no sentence"
    assert len(card.says) <= 160, "the first paragraph prints as one line: make it shorter"


@every_card
def test_its_source_exists(card: Card) -> None:
    assert sources.look_up(card.source).key == card.source.partition(":")[0]


@every_card
def test_it_has_a_published_case_or_says_that_it_has_none(card: Card) -> None:
    cited = name_of(card) in published_names()
    assert cited or card.uncited, "no case in tests/published asks for it, and it is not marked uncited"
    assert not (cited and card.uncited), "a case in tests/published asks for it: take the mark uncited away"


@cache
def published_names() -> frozenset[str]:
    names: set[str] = set()
    for path in PUBLISHED.glob("*.json"):
        stack: list[Any] = [json.loads(path.read_text(encoding="utf-8"))]
        while stack:
            one = stack.pop()
            if isinstance(one, dict):
                names.update(one[route] for route in ("equation", "schedule") if route in one)
            stack.extend(one.values() if isinstance(one, dict) else one if isinstance(one, list) else ())
    return frozenset(names)


def test_published_cases_name_real_equations() -> None:
    assert published_names() <= {name_of(card) for card in CARDS}


@every_card
def test_it_assumes_nothing(card: Card) -> None:
    for parameter in inspect.signature(card.function).parameters.values():
        assert parameter.default is inspect.Parameter.empty, f"{parameter.name} has a default"


@every_card
def test_its_arguments_are_words(card: Card) -> None:
    for word in arguments(card):
        for part in word.split("_"):
            assert re.fullmatch(r"[a-z]{3,}", part) or part in SHORT_WORDS, f"{word} is not made of words"


@every_card
def test_more_than_two_arguments_go_by_name(card: Card) -> None:
    parameters = inspect.signature(card.function).parameters.values()
    by_place = [one.name for one in parameters if one.kind is not inspect.Parameter.KEYWORD_ONLY]
    assert len(by_place) <= 2, f"{', '.join(by_place)} can be passed by place"


def test_no_equation_is_filed_twice_under_one_name() -> None:
    names = [(card.trade, card.name) for card in CARDS]
    assert sorted(set(names)) == sorted(names)


def test_cards_are_found_again_by_their_function() -> None:
    assert all(card_of(card.function) is card for card in CARDS)
