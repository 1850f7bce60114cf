"""The kinds of thing: every kind the catalogue uses, flags that mean something, names that are known."""

from __future__ import annotations

import pytest

from curbwright.build import catalogue, kinds
from curbwright.build.file import load_text
from curbwright.errors import BuildFileProblem, UnknownName

CART = '[cart]\nname = "A"\n[trailer]\ndeck_length = "8 ft"\ndeck_width = "5 ft"\nball_to_deck = "4 ft"\n'


def test_every_kind_of_the_catalogue_is_known() -> None:
    used = {line.kind for line in catalogue.lines()}
    assert len(used) > 80
    assert used <= set(kinds.names())


def test_what_a_builder_makes_himself_is_known_too() -> None:
    assert {"counter", "shelf", "bench", "stock", "other"} <= set(kinds.names())


def test_every_flag_is_explained_and_used() -> None:
    used = {flag for kind in kinds.all_kinds().values() for flag in kind.flags}
    assert used == set(kinds.flags())
    assert all(says and says == says.strip() for says in kinds.flags().values())


@pytest.mark.parametrize(
    ("kind", "has", "lacks"),
    [
        ("griddle", "flame heat clear grease cook", "cold sink burns"),
        ("hand_sink", "sink hand_sink", "ware_sink cook"),
        ("sink3", "sink ware_sink", "hand_sink"),
        ("cylinder", "bottle", "flame burns"),
        ("tank_waste", "tank_waste", "tank_fresh"),
        ("counter", "hollow prep", "burns"),
        ("hood", "hood overhead through_roof", "stood_at"),
        ("stock", "burns", "hollow"),
    ],
)
def test_what_a_kind_is(kind: str, has: str, lacks: str) -> None:
    found = kinds.find(kind)
    assert set(has.split()) <= found.flags
    assert not found.is_(*lacks.split())


def test_kinds_by_flag() -> None:
    assert set(kinds.with_flag("tank_fresh", "tank_waste")) == {"tank_fresh", "tank_waste"}
    assert kinds.with_flag("hood") == ("hood",)


def test_nothing_is_known_of_a_thing_without_a_kind_so_it_may_burn() -> None:
    assert kinds.find(None) is kinds.UNKNOWN
    assert kinds.UNKNOWN.flags == {"burns"}


def test_an_unknown_kind_is_refused_by_name_and_in_a_build_file() -> None:
    with pytest.raises(UnknownName, match="there is no kind 'gridle'"):
        kinds.find("gridle")
    with pytest.raises(BuildFileProblem, match=r"items\.a\.kind.*griddle"):
        load_text(f'{CART}[items.a]\nkind = "gridle"\nback = "1 ft"\n')
