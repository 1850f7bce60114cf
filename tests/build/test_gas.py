"""The gas section of a build file: what the catalogue fills in, and every wrong name told at once."""

from __future__ import annotations

import pytest

from curbwright.build.file import load_text
from curbwright.errors import BuildFileProblem

CART = """
[cart]
name = "Small"
[trailer]
deck_length = "120 in"
deck_width = "76 in"
ball_to_deck = "48 in"
[items.plate]
like = "griddle-gas-36-half"
[items.bottle]
like = "cylinder-20"
[items.battery]
like = "batt-lfp-200"
[gas]
bottles = ["bottle"]
[gas.regulator]
like = "regulator-changeover"
[gas.sections.main]
serves = ["plate"]
"""


def refused(text: str) -> dict[str, str]:
    with pytest.raises(BuildFileProblem) as caught:
        load_text(text)
    return {one.path: f"{one.line}: {one.what} {one.allowed} {one.try_this}" for one in caught.value.problems}


def test_the_catalogue_fills_in_burners_bottles_and_the_regulator() -> None:
    build = load_text(CART)
    plate, bottle = build.items["plate"].gas, build.items["bottle"].gas
    assert plate is not None
    assert bottle is not None
    entry = plate["burners"]
    assert (entry.value, entry.assumed, entry.source) == (3.0, True, "catalogue:griddle-gas-36-half")
    assert bottle["water_capacity"].typed == "47.7 lb"
    assert build.gas.regulator["capacity"].source == "catalogue:regulator-changeover"
    assert build.gas.regulator["inlet_least"].value == pytest.approx(10 * 6894.757293168)
    assert build.items["battery"].gas is None


def test_what_is_written_wins() -> None:
    build = load_text(CART + '[items.plate.gas]\nburners = "4"\n')
    plate = build.items["plate"].gas
    assert plate is not None
    assert (plate["burners"].value, plate["burners"].assumed) == (4.0, False)
    assert plate["heat_up"].assumed
    build = load_text(CART.replace("[gas.sections", 'inlet_least = "20 psi"\n[gas.sections'))
    assert not build.gas.regulator["inlet_least"].assumed


def test_every_wrong_name_is_told_at_once_with_its_line() -> None:
    text = CART.replace('["bottle"]', '["bottel", "plate"]\nalarm = "bel"').replace(
        'like = "regulator-changeover"', 'like = "regulator-changover"'
    )
    text = text.replace('serves = ["plate"]', 'serves = ["plat"]\nafter = "mian"')
    text += (
        '[gas.sections.side]\nafter = "side"\nserves = ["bottle"]\n[gas.sections.more]\nserves = ["bottle"]\n'
    )
    found = refused(text)
    assert set(found) == {
        "gas.bottles.0", "gas.alarm", "gas.regulator.like", "gas.sections.main.serves.0",
        "gas.sections.main.after",
        "gas.sections.side.after", "gas.sections.more.serves.0",
    }  # fmt: skip
    assert 'Did you mean "bottle"?' in found["gas.bottles.0"]
    assert 'Did you mean "main"?' in found["gas.sections.main.after"]
    assert "goes round in a ring: side" in found["gas.sections.side.after"]
    assert "hangs on section side already" in found["gas.sections.more.serves.0"]
    assert all(text[: text.index(":")].isdigit() for text in found.values())


def test_a_long_ring_is_told_once() -> None:
    text = CART.replace("[gas.sections.main]", '[gas.sections.main]\nafter = "third"')
    text += '[gas.sections.second]\nafter = "main"\n[gas.sections.third]\nafter = "second"\n'
    text += '[gas.sections.stub]\nafter = "third"\n'
    found = refused(text)
    assert len(found) == 1
    assert "ring" in next(iter(found.values()))


@pytest.mark.parametrize(("field", "value", "says"), [
    ("gas.sections.main.length", '"3"', "has no unit"),
    ("gas.sections.main.pipe", '"lead"', "is not one of the choices"),
    ("gas.sections.main.elbows", '"two"', "whole number"),
    ("gas.regulator.stages", "3", "2"),
    ("gas.changeover", '"magic"', "is not one of the choices"),
    ("gas.reserve", '"95 %"', "more than 90 %"),
    ("gas.film", '"50 BTU/(h·ft2·°F)"', "more than"),
    ("gas.bottels", '"x"', "is not a field"),
])  # fmt: skip
def test_a_wrong_value_is_told_with_its_path(field: str, value: str, says: str) -> None:
    section, _, name = field.rpartition(".")
    found = refused(CART.replace(f"[{section}]", f"[{section}]\n{name} = {value}"))
    assert says in found[field]
    assert list(found) == [field]


@pytest.mark.parametrize("text", [
    "[gas]\nbottles = 3\n", "[gas]\nsections = 3\n", "[gas]\nsections = [1]\n", "gas = 3\n",
    '[gas]\nregulator = "x"\n', "[gas]\nalarm = 3\n", "[gas]\nbottles = [3]\n",
    '[gas.sections]\nmain = "x"\n',
    "[gas.sections.main]\nserves = 3\n", "[gas.sections.main]\nserves = [3]\nafter = 3\n",
    '[items.plate]\ngas = "x"\n', "[gas.regulator]\nlike = 3\n",
])  # fmt: skip
def test_what_is_no_table_or_no_name_is_a_report(text: str) -> None:
    cart = '[cart]\nname = "x"\n[trailer]\ndeck_length = "9 ft"\ndeck_width = "6 ft"\nball_to_deck = "4 ft"\n'
    top, below = (text, cart) if text.startswith("gas =") else (cart, text)
    assert refused(top + below)
