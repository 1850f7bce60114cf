import math
import pickle

import numpy as np
import pytest

from curbwright.errors import NotAnEquation
from curbwright.figures import EQUATIONS, card_of, equation, procedure
from curbwright.figures.cards import Card
from curbwright.quantities import Metres, Number
from tests.figures.sample import lever


@pytest.fixture(autouse=True)
def _leave_the_list_as_it_was():
    before = dict(EQUATIONS)
    yield
    EQUATIONS.clear()
    EQUATIONS.update(before)


def test_the_decorator_returns_the_function_itself():
    def twice(length: Metres) -> Metres:
        return 2 * length

    assert equation("test")(twice) is twice
    assert type(twice(2.0)) is float
    assert list(twice(np.array([1.0, 2.0]))) == [2.0, 4.0]


def test_a_card_reads_units_source_and_first_sentence():
    card = card_of(lever)
    assert card.units == {"load": "kg", "arm": "m", "return": "kg*m"}
    assert (card.source, card.uncited, card.empirical, card.procedure) == ("test:lever", True, False, False)
    assert card.says == "Moment of a load."


@pytest.mark.parametrize(
    ("module", "trade"),
    [("curbwright.equations.fit", "fit"), ("curbwright.equations.balance.mass", "balance")],
)
def test_a_trade_is_the_module_or_the_folder_that_became_of_it(module, trade):
    def one(length: Metres) -> Metres:
        return length

    one.__module__ = module
    assert Card(one, "test").trade == trade


def test_a_function_that_was_never_filed_has_no_card():
    with pytest.raises(NotAnEquation, match="fsum is not filed"):
        card_of(math.fsum)


def test_a_missing_unit_is_refused():
    @equation("test")
    def bare(length: Metres, width: float) -> Metres:
        return length * width

    with pytest.raises(NotAnEquation, match="no unit on width"):
        _ = card_of(bare).units


def choice(length: Metres) -> Metres:
    return length if length > 0 else -length


def both(length: Metres) -> Metres:
    return length and 1.0


def compares(length: Metres) -> Number:
    return length > 1


def steps(length: Metres) -> Metres:
    double = 2 * length
    return double + 1


def calls(length: Metres) -> Metres:
    return round(length)


def named(length: Metres) -> Metres:
    return abs(x=length)  # type: ignore[call-arg]


def outside(length: Metres) -> Metres:
    return length * SOMETHING


def rounds(length: Metres) -> Metres:
    return length // 1


def picks(length: Metres) -> Metres:
    return [length][0]


SOMETHING = 3.0


@pytest.mark.parametrize(
    ("function", "why"),
    [
        (choice, "make the choice in the sheet"),
        (both, "make the choice in the sheet"),
        (compares, "make the choice in the sheet"),
        (steps, "one return expression"),
        (calls, "round has no printed form"),
        (named, "abs has no printed form"),
        (outside, "SOMETHING is neither an argument nor a constant"),
        (rounds, "FloorDiv has no printed form"),
        (picks, "has no printed form"),
    ],
    ids=lambda one: getattr(one, "__name__", None),
)
def test_what_cannot_be_printed_as_arithmetic_is_refused(function, why):
    equation("test")(function)
    with pytest.raises(NotAnEquation, match=why):
        _ = card_of(function).expression


def test_a_procedure_may_take_more_than_one_step():
    procedure("test")(steps)
    assert card_of(steps).procedure


def test_a_card_survives_pickling_as_itself():
    assert pickle.loads(pickle.dumps(card_of(lever))) is card_of(lever)
