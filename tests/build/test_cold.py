"""Cold boxes in a build file: what the catalogue fills in, what the words are, what is refused."""

from __future__ import annotations

from typing import get_args

import pytest

import curbwright
from curbwright import data
from curbwright.build import catalogue, kinds
from curbwright.build.cold import ColdBox, Food, Insulation, Pack
from curbwright.errors import BuildFileProblem
from tests.sheets.cold.carts import CART, CHEST


def box(text: str, name: str = "chest") -> ColdBox:
    found = curbwright.read_text(CART + text).items[name].cold
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("words", "table"), [(Insulation, "cold/insulation"), (Food, "cold/foods"), (Pack, "cold/packs")]
)
def test_every_word_has_its_row_and_every_row_its_word(words: object, table: str) -> None:
    assert get_args(words) == data.table(table).keys()


def test_the_insulation_of_a_box_is_that_of_the_material_list() -> None:
    same = {"polyiso": "polyiso, foil faced", "xps": "XPS, 15-25 psi", "eps": "EPS type I-IX",
            "glass fibre": "fibreglass batt", "vacuum panel": "vacuum panel, in service"}  # fmt: skip
    for name, material in same.items():
        listed = float(data.table("materials/insulation").row(material)["k_W_mK"])
        table = data.table("cold/insulation")
        assert table.quantity(name, "conductivity", "conductivity") == pytest.approx(listed)
        low, high = (table.quantity(name, column, "conductivity") for column in ("low", "high"))
        assert low <= listed <= high


def test_a_box_of_the_catalogue_needs_no_section_of_its_own() -> None:
    found = box('[items.chest]\nlike = "cold-chest-12v-75l"\nback = "0 in"\n')
    entry = found["running_power"]
    assert entry.path == "items.chest.cold.running_power"
    assert entry.assumed
    assert entry.how == "memory"
    assert entry.source == "catalogue:cold-chest-12v-75l"
    assert found["volume"].typed == "75 L"
    assert found["rated_air"].typed == "90 °F"


def test_what_the_builder_wrote_wins() -> None:
    found = box(
        '[items.chest]\nlike = "cold-chest-12v-75l"\nback = "0 in"\n'
        '[items.chest.cold]\nrunning_power = "48 W"\n'
    )
    assert float(found["running_power"].value or 0) == 48
    assert not found["running_power"].assumed
    assert found["volume"].assumed


def test_a_freezer_is_cold_and_an_ice_chest_full_of_ice() -> None:
    freezer = box('[items.chest]\nlike = "chest-freezer-5"\nback = "0 in"\n')
    assert freezer["set_point"].typed == "0 °F"
    chest = box('[items.chest]\nlike = "ice-chest-50qt"\nback = "0 in"\n')
    assert chest["ice"].typed == "33 lb"
    assert chest["ice_contact"].how == "practice"


def test_other_things_of_the_catalogue_get_no_cold_section() -> None:
    for like in ("ice-bag-10", "griddle-gas-36-half"):
        assert curbwright.read_text(CART + f'[items.x]\nlike = "{like}"\n').items["x"].cold is None


def test_every_box_of_the_catalogue_can_be_worked_from_its_ratings() -> None:
    """All but the ratings of the sizes: what a box of the catalogue leaves open is said by name."""
    from tests.sheets.cold.carts import sheet

    boxes = [item for item in map(catalogue.find, catalogue.ids()) if kinds.find(item.kind).is_("cold_box")]
    assert len(boxes) > 20
    for item in boxes:
        worked = sheet(f'[items.x]\nlike = "{item.id}"\nback = "0 in"\nstock = "20 lb"\n')
        asked = {gap.path for gap in worked.all_gaps()}
        assert asked <= {"items.x.cold.certified", "items.x.cold.thermometer"}, item.id
        assert "cold.heat_gain" in worked.figures(), item.id


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ('wall = "50"', "items.chest.cold.wall"),
        ('wall = "2 ft"', "is more than 12 in"),
        ('insulation = "wool"', "items.chest.cold.insulation"),
        ('set_point = "200 °F"', "is more than 80 °F"),
        ('openings = "12"', "items.chest.cold.openings"),
        ('hot_faces = ["below"]', "items.chest.cold.hot_faces"),
        ('points = { a = { capacity = "70 W" } }', "items.chest.cold.points.a.power"),
        ('gasket = "good"', "gasket"),
        ('certified = "maybe"', "items.chest.cold.certified"),
    ],
)
def test_a_slip_is_told_with_its_line_and_its_field(line: str, says: str) -> None:
    text = CART + CHEST.replace('wall = "2 in"\n', "") + f"{line}\n"
    number = text.splitlines().index(line) + 1
    with pytest.raises(BuildFileProblem) as caught:
        curbwright.read_text(text)
    assert says in str(caught.value)
    assert f"line {number}" in str(caught.value)


def test_all_slips_of_a_box_come_in_one_report() -> None:
    text = CART + CHEST + 'swing = "4"\nice = "five"\nfood = "soup"\n'
    with pytest.raises(BuildFileProblem) as caught:
        curbwright.read_text(text)
    for field in ("swing", "ice", "food"):
        assert f"items.chest.cold.{field}" in str(caught.value)
