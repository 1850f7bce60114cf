"""Wiring in the build file: what the catalogue fills in, what names nothing, what is no quantity."""

from __future__ import annotations

import pytest

from curbwright.build.cart import Build
from curbwright.build.file import load_text
from curbwright.errors import BuildFileProblem

CART = """
[cart]
name = "Wired"
[trailer]
deck_length = "8 ft"
deck_width = "5 ft"
ball_to_deck = "4 ft"
[items.chest]
like = "cold-chest-12v-75l"
[items.chest.electric]
bus = "12 V"
[items.fan]
like = "fan-upblast-120v-800"
[items.fan.electric]
bus = "120 V inverter"
current = "3 A"
[items.inverter]
like = "inverter-sine-1000"
[electrical.inverter]
item = "inverter"
surge = "1900 W"
[circuits.chest]
supply = "12 V bus"
feeds = ["chest"]
wire = "12 AWG"
"""


def build(text: str = CART) -> Build:
    return load_text(text)


def problems(text: str) -> list[str]:
    with pytest.raises(BuildFileProblem) as caught:
        load_text(text)
    return [f"{one.line} {one.path}: {one.what}. {one.try_this}" for one in caught.value.problems]


def test_the_catalogue_fills_in_what_an_item_draws_and_says_so() -> None:
    electric = build().items["chest"].electric
    assert electric is not None
    entry = electric["power"]
    assert (entry.value, entry.assumed, entry.source) == (60.0, True, "catalogue:cold-chest-12v-75l")
    assert electric["start_multiple"].value == 2.0


def test_a_current_from_the_label_leaves_no_room_for_a_typical_power() -> None:
    electric = build().items["fan"].electric
    assert electric is not None
    assert electric.power is None
    assert electric["current"].value == 3.0


def test_the_catalogue_fills_in_the_inverter_through_its_item_and_what_is_written_wins() -> None:
    inverter = build().electrical.inverter
    assert inverter is not None
    assert inverter["rating"].value == 1000.0
    assert inverter["rating"].path == "electrical.inverter.rating"
    assert inverter["rating"].assumed
    assert inverter["surge"].value == 1900.0
    assert not inverter["surge"].assumed
    assert inverter["efficiency_part"].value == 0.90


def test_an_efficiency_at_another_part_of_the_rating_is_not_filled_in() -> None:
    text = CART.replace('surge = "1900 W"', 'part = "50 %"')
    inverter = build(text).electrical.inverter
    assert inverter is not None
    assert inverter.efficiency_part is None


def test_a_cart_without_wiring_reads_as_before() -> None:
    plain = build(CART.partition("[items.chest]")[0])
    assert plain.circuits == {}
    assert plain.electrical.inverter is None


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('supply = "12 V bus"', 'supply = "12 V buss"', 'Did you mean "12 V bus"?'),
        ('feeds = ["chest"]', 'feeds = ["chets"]', 'Did you mean "chest"?'),
        ('feeds = ["chest"]', "feeds = []", "is empty"),
        ('item = "inverter"', 'item = "invertor"', 'Did you mean "inverter"?'),
        ('item = "inverter"', 'item = ["inverter"]', "does not belong here"),
        ('wire = "12 AWG"', 'wire = "12 ga"', "sheet gauge"),
        ('wire = "12 AWG"', "wire = 12", "12"),
        ('bus = "12 V"', 'bus = "12V"', 'Did you mean "12 V"?'),
        ('current = "3 A"', 'current = "3 W"', "current"),
        ("[circuits.chest]", '[circuits."to the chest"]', "cannot be used"),
        ('feeds = ["chest"]', "", "is missing"),
    ],
)
def test_what_is_wrong_is_told_with_what_to_try(old: str, new: str, says: str) -> None:
    assert old in CART
    assert any(says in one for one in problems(CART.replace(old, new, 1)))


def test_everything_wrong_is_told_at_once() -> None:
    text = CART.replace("12 V bus", "bus").replace('"12 AWG"', '"12 ga"').replace('"3 A"', '"3"')
    assert len(problems(text)) == 3


def test_an_item_may_be_named_with_its_section() -> None:
    assert build(CART.replace('feeds = ["chest"]', 'feeds = ["items.chest"]')).circuits


def test_a_switch_on_a_circuit_is_an_item() -> None:
    text = CART.replace('wire = "12 AWG"', 'wire = "12 AWG"\nswitch = "chets"')
    assert any('Did you mean "chest"?' in one for one in problems(text))
