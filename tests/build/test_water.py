"""Water in a build file: what the catalogue fills in, what the words are, what is refused."""

from __future__ import annotations

from typing import get_args

import pytest

import curbwright
from curbwright import data
from curbwright.build import catalogue
from curbwright.build.cart import Build
from curbwright.build.water import Lock
from curbwright.errors import BuildFileProblem
from curbwright.sheets.water.road import SAFE
from tests.sheets.water.carts import CART, PIPES, PUMP, SINKS, TANKS, TAPS


def build(*parts: str) -> Build:
    return curbwright.read_text("\n".join((CART, *parts)))


def problems(*parts: str) -> list[str]:
    with pytest.raises(BuildFileProblem) as refused:
        build(*parts)
    return [f"{one.path}: {one.what} {one.try_this}" for one in refused.value.problems]


def test_every_word_for_a_lock_is_safe_or_none() -> None:
    assert set(get_args(Lock)) == {"none", *SAFE}


def test_the_only_pump_aboard_brings_its_curve_and_its_switch() -> None:
    found = build(PUMP).water.pump
    curve = catalogue.find("pump-12v-3.0").tables["pump"]
    assert found.rows is not None
    read = [float(cell) for row in found.rows for cell in row]
    listed = zip(*(curve.column(name) for name in curve.columns), strict=True)
    assert read == pytest.approx([cell for row in listed for cell in row])
    cell = found.cell("rows", 1, 1, "flow")
    assert (cell.assumed, cell.how, cell.source) == (True, "memory", "catalogue:pump-12v-3.0")
    assert found["cut_out"].typed == "55 psi"


def test_what_the_builder_wrote_of_the_pump_wins() -> None:
    rows = PUMP.replace(
        'lock = "service key relay"', 'rows = [["0 psi", "3 gpm", "3 A"]]\ncut_out = "45 psi"'
    )
    found = build(rows).water.pump
    assert found.rows is not None
    assert len(found.rows) == 1
    assert not found.cell("rows", 0, 1, "flow").assumed
    assert not found["cut_out"].assumed
    assert found["cut_in"].assumed


def test_of_two_pumps_none_is_taken_unless_one_is_named() -> None:
    two = PUMP.replace("[water.pump]", '[items.spare]\nlike = "pump-12v-1.5"\nback = "1 ft"\n[water.pump]')
    assert build(two).water.pump.rows is None
    named = build(two.replace("[water.pump]", '[water.pump]\nitem = "spare"')).water.pump
    assert named["cut_out"].typed == "35 psi"


def test_a_sink_of_the_catalogue_brings_its_bowls() -> None:
    found = build('[items.sinks]\nlike = "sink-3c-12x12x10"\nback = "0 in"\n').items["sinks"]
    assert found.water is not None
    assert found.water["bowl_length"].typed == "12 in"
    assert found["bowl_depth"].typed == "10 in"
    assert found["bowl_depth"].assumed


def test_every_pipe_as_sold_has_a_bore_and_a_narrower_insert() -> None:
    table = data.table("water/pipe")
    for row in table:
        bore, insert, size = (
            float(table.quantity(row["pipe"], name, "length")) for name in ("bore", "insert", "size")
        )
        assert insert <= bore
        assert 0.9 < bore / size < 1.25 or row["material"] == "PEX"


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ('[water.pump]\nitem = "pumpe"\n', 'water.pump.item: there is no item "pumpe"'),
        ('[water.taps.wash]\nsink = "hand"\n', 'Did you mean "hands"?'),
        ('[water.taps.taps]\nflow = "1 gpm"\n', "a tap cannot be called taps"),
        ('[water.pipes.one]\nto = "nowhere"\n', 'there is no tap or end of a pipe "nowhere"'),
        ('[water.pipes.one]\nto = "pump"\ncarries = "hot"\n', "hot water does not run to the pump"),
        ('[water.pipes.one]\nto = "pump"\n[water.pipes.two]\nto = "pump"\n', 'is told by "one" already'),
        ('[water]\nraw_meat = "some"\n', "raw_meat"),
        ('[water]\ntilt = "45 deg"\n', "is more than 10 deg"),
        ('[water]\nhand_washes = "4"\n', "has no unit"),
        ("[items.ware.water]\nbowls = 0\n", "bowls"),
    ],
)
def test_what_cannot_be_meant_is_told_with_what_to_try(text: str, says: str) -> None:
    sinks = SINKS
    if "[items.ware.water]" in text:
        sinks, text = SINKS.replace("[items.ware.water]\n", text), ""
    found = problems(sinks, TANKS, text)
    assert any(says in one for one in found), found


@pytest.mark.parametrize("text", ["water = 3\n", 'water = ["a"]\n'])
def test_a_water_section_that_is_no_table_is_a_problem_and_no_crash(text: str) -> None:
    with pytest.raises(BuildFileProblem):
        curbwright.read_text(text + CART + SINKS)


@pytest.mark.parametrize(
    "text", ['[items.ware]\nlike = "sink-3c-12x12x10"\nwater = 3\n', "[water]\npump = 3\ntaps = 2\n"]
)
def test_a_wrong_table_below_is_a_problem_and_no_crash(text: str) -> None:
    with pytest.raises(BuildFileProblem):
        build(text)


def test_a_whole_cart_reads() -> None:
    found = build(SINKS, TANKS, PUMP, TAPS, PIPES)
    assert set(found.water.taps) == {"wash", "ware"}
    assert found.water.path == "water"
    assert found.at("water.pipes.shared")["length"].typed == "5 ft"
