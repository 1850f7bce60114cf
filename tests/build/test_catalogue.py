from __future__ import annotations

import re
import time
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

from curbwright import sources
from curbwright.build import catalogue
from curbwright.build.catalogue import CatalogueItem
from curbwright.build.catalogue_parts import (
    DATA,
    CatalogueQuantity,
    CatalogueTable,
    ratings,
    review_hints,
    warnings,
)
from curbwright.errors import UnknownName
from curbwright.units import KINDS

GROUPS = {
    "cooking", "beverage", "cold", "water", "gas", "exhaust", "power", "fire", "sale", "shell", "trailer",
}  # fmt: skip
TRADES = {
    "balance", "frame", "fit", "circuits", "battery", "solar", "cold", "water", "hot_water", "drains", "gas",
    "exhaust", "cooking", "food", "requirements",
}  # fmt: skip
RECORDED = Path(__file__).parent.parent / "regression" / "catalogue_ids.txt"
ITEMS = [catalogue.find(id) for id in catalogue.ids()]
"""Every item; a fault in one of them fails the whole file, as it should."""


def named(id: str) -> CatalogueItem:
    return catalogue.find(id)


def quantities(item: CatalogueItem) -> Iterator[CatalogueQuantity]:
    """Everything in an item that has a band."""
    yield from item.size.values()
    yield from (one for one in (item.mass_empty, item.mass_filled, item.price, item.noise) if one)
    yield from item.ratings.values()
    yield from item.clearances.values()


def with_rating(*names: str) -> list[CatalogueItem]:
    return [item for item in ITEMS if set(names) <= set(item.ratings)]


def with_table(name: str) -> list[CatalogueItem]:
    return [item for item in ITEMS if name in item.tables]


def value(item: CatalogueItem, rating: str) -> float:
    return item.ratings[rating].value


each_item = pytest.mark.parametrize("item", ITEMS, ids=lambda item: item.id)


# --- the list


def test_every_group_is_present() -> None:
    assert {path.stem for path in (DATA / "equipment").glob("*.toml")} == GROUPS
    assert {item.group for item in ITEMS} == GROUPS


def test_ids_are_unique_and_lower_case() -> None:
    assert len(catalogue.ids()) == len(set(catalogue.ids()))
    assert [id for id in catalogue.ids() if not re.fullmatch(r"[a-z0-9]+(?:[-.][a-z0-9]+)*", id)] == []


def test_ids_are_stable() -> None:
    """Build files name items by id: none may change or go. A new one is added to the record."""
    assert sorted(catalogue.ids()) == RECORDED.read_text(encoding="utf-8").split()


def test_a_paragraph_read_alone_is_what_the_whole_file_says() -> None:
    listed: list[tuple[str, ...]] = []
    for group in GROUPS:
        whole = tomllib.loads((DATA / "equipment" / f"{group}.toml").read_text(encoding="utf-8"))
        for id, entry in whole.items():
            assert catalogue._item(id, group, entry) == catalogue.find(id)
        listed += [(id, group, entry["kind"], entry["name"]) for id, entry in whole.items()]
    assert sorted(listed) == sorted(tuple(line) for line in catalogue.lines())


def test_one_item_loads_quickly() -> None:
    took = []
    for _ in range(7):
        for cache in (catalogue.find, catalogue._places, catalogue._groups, review_hints, warnings, ratings):
            cache.cache_clear()  # type: ignore[attr-defined]
        start = time.thread_time()
        catalogue.find("tank-waste-75")
        took.append(time.thread_time() - start)
    assert min(took) < 0.015


def test_search_wants_every_word() -> None:
    assert [line.id for line in catalogue.search("Waste tank 46")] == ["tank-waste-46"]
    assert {line.kind for line in catalogue.search("hand sink wall")} == {"hand_sink", "faucet"}
    assert catalogue.search("griddle submarine") == []


@pytest.mark.parametrize(
    ("wrong", "meant"),
    [
        ("gridle-gas-36-3q", "griddle-gas-36-3q"),
        ("Griddle-Gas-36-3Q", "griddle-gas-36-3q"),
        ("fridge 48", "undercounter-fridge-48"),
        ("chocks", "chocks-pair"),
        ("gridle", "griddle-gas-24-half"),
        ("hand snik wall", "hand-sink-9x9x5"),
    ],
)
def test_a_wrong_id_names_what_may_have_been_meant(wrong: str, meant: str) -> None:
    with pytest.raises(catalogue.UnknownItem, match=f"Did you mean .*{re.escape(meant)}"):
        catalogue.find(wrong)


@pytest.mark.parametrize(
    "wrong",
    ["", " ", "zzz", "griddle-gas-36-3q.ratings", "[", "a]\n[b", "x" * 100_000, "griddle-gas-36-3q]\nname"],
)
def test_a_hopeless_id_is_refused_at_once(wrong: str) -> None:
    start = time.thread_time()
    with pytest.raises(UnknownName, match=r"is not in the catalogue"):
        catalogue.find(wrong)
    assert time.thread_time() - start < 1


# --- every item


@each_item
def test_every_quantity_reads_and_its_band_holds_it(item: CatalogueItem) -> None:
    for one in quantities(item):
        assert one.lowest <= one.value <= one.highest, one


@each_item
def test_every_figure_says_how_it_is_known(item: CatalogueItem) -> None:
    for one in [*quantities(item), *item.connections, *item.tables.values()]:
        source = sources.look_up(one.source)
        if one.how == "computed":
            assert source.how in ("computed", "read"), one
        elif one.how == "memory":
            assert source.how in ("memory", "computed"), one
        else:
            assert one.how in ("read", "practice")
            assert source.how == one.how, one


@each_item
def test_sizes_and_masses_are_of_this_world(item: CatalogueItem) -> None:
    assert all(side.lowest > 0 and side.highest < 8 for side in item.size.values())
    assert item.mass_empty.lowest > 0
    assert item.mass_filled is None or item.mass_filled.value > item.mass_empty.value
    assert (item.mass_filled is None) == (item.fill == "")
    assert item.price.lowest > 0
    assert item.trades
    assert set(item.trades) <= TRADES


@each_item
def test_rows_of_tables_are_whole(item: CatalogueItem) -> None:
    for one in item.tables.values():
        assert {len(row) for row in one.rows} == {len(one.columns)}
        assert all(one.column(name) for name in one.columns)


# --- words: a maker's or a model's name would be a capital that is none of these

CAPITALS = {
    "A", "A-frame", "AC", "AGM", "ANL", "ANSI", "ASSE", "AWG", "Ah", "BMS", "BTU", "C", "CAN", "CSA",
    "California", "D", "DC", "DC-DC", "E", "EC", "F", "FPT", "GC2", "GFCI", "GVWR", "H&SC", "H2O", "I",
    "ID", "II", "K", "L", "L14-30", "L5-30", "LCD", "LED", "LP", "LP-gas", "M10", "M8", "MPPT", "MPT",
    "NEMA", "NPS", "NPT", "NSF", "P", "P-trap", "P0", "POL", "PWM", "Pa", "QCC-1", "RV", "SS2-50", "ST175",
    "ST185", "ST205", "ST225", "T", "TT-30", "Type", "U-bolts", "UL", "USB-C", "V", "VA", "VIN", "Vbatt",
    "Vmp", "W", "WC", "Z83",
}  # fmt: skip
"""Units, standards, trade terms, tire sizes and one place."""
OPENINGS = {
    "A", "Bagged", "Baggage", "Boiling", "Cellular", "Combined", "Decanter", "Digital", "Drip", "Extension",
    "Floss", "Flooded", "Heated", "Leaf", "Levelling", "Market", "P", "Percolator", "Pop", "Radiant",
    "Reusable", "Roll", "Six", "Swivel", "Thick", "Tinned",
}  # fmt: skip
"""First words of names that stand nowhere in lower case."""
SENTENCE = re.compile(r"(?:^|[.:;] )[A-Z][a-z]+(?!\w)")
CAPITAL = re.compile(r"(?<![\w&-])[A-Z][A-Za-z0-9&-]*")


def texts(item: CatalogueItem) -> Iterator[str]:
    yield from (item.name, item.note, item.fill, item.clearance_note, item.service_access)
    yield from (each.size for each in item.connections)
    yield from (each.note for each in item.tables.values())


def capitals(text: str) -> set[str]:
    """The capitalised words of a text that do not merely open a sentence."""
    return set(CAPITAL.findall(SENTENCE.sub(" ", text)))


def all_texts() -> list[str]:
    return [text for item in ITEMS for text in texts(item)] + [hint.says for hint in review_hints().values()]


def test_no_text_names_a_maker_or_a_model() -> None:
    assert {word for text in all_texts() for word in capitals(text)} - CAPITALS == set()


def test_no_name_opens_with_a_maker() -> None:
    known = " ".join([*all_texts(), *(f"{item.id} {item.kind}" for item in ITEMS)])
    lower = set(re.findall("[a-z]{2,}", known.replace("_", " ")))
    opening = {found[0] for item in ITEMS if (found := re.match("[A-Za-z]+", item.name))}
    assert {word for word in opening if word.lower() not in lower} - OPENINGS == set()


def test_the_check_on_capitals_sees_a_name() -> None:
    assert capitals("Gas griddle by Someone, 36 in, model GX-36") == {"Someone", "GX-36"}


def test_no_text_carries_a_trade_mark_sign() -> None:
    for path in (DATA / "equipment").iterdir():
        assert not re.search("[®™©]|\\(R\\)|\\(TM\\)", path.read_text(encoding="utf-8"))


# --- names


def test_every_name_stands_in_the_table_of_ratings_and_every_row_is_used() -> None:
    used = {one.rating.name for item in ITEMS for one in quantities(item)}
    used |= {column for item in ITEMS for one in item.tables.values() for column in one.columns}
    assert used == set(ratings())


def test_every_row_of_the_table_of_ratings_is_sound() -> None:
    for rating in ratings().values():
        assert re.fullmatch("[a-z][a-z0-9_]*", rating.name)
        assert rating.kind in KINDS
        assert (rating.per_kind in KINDS) if rating.per else rating.per_kind == ""
        assert rating.of == "" or rating.kind == "number"
        assert rating.means


def test_hints_and_warnings_are_known_and_used() -> None:
    assert {hint.key for item in ITEMS for hint in item.review} == set(review_hints())
    assert {says for item in ITEMS for says in item.warnings} == set(warnings().values())
    for hint in review_hints().values():
        assert hint.says
        assert {sources.look_up(key).how for key in hint.sources} == {hint.how}


# --- what a quantity tells


def test_a_quantity_reads_in_si_and_keeps_its_words() -> None:
    griddle = named("griddle-gas-36-3q")
    assert griddle.mass_empty.text == "270 lb"
    assert griddle.mass_empty.value == pytest.approx(270 * 0.45359237)
    assert griddle.ratings["idle_listing_threshold"].value == pytest.approx(
        2650 * 1055.05585262 / 3600 / 0.09290304
    )
    assert griddle.ratings["efficiency_listing_threshold"].value == pytest.approx(0.38)


def test_a_quantity_per_something_is_divided_by_it() -> None:
    fall = named("sink-3c-12x12x10").ratings["board_fall_per_ft"]
    assert fall.value == pytest.approx(0.125 / 12)
    assert fall.says == "0.125 in per 1 ft"


def test_a_plain_number_says_what_it_counts() -> None:
    noise = named("glass-merch-5").noise
    assert noise is not None
    assert noise.says == "52 dBA"


def test_the_spread_is_a_quarter_of_the_band() -> None:
    width = named("griddle-gas-24-half").size["width"]
    assert width.spread == pytest.approx((25 - 24) * 0.0254 / 4)


def test_a_table_reads_by_column() -> None:
    cable = named("inverter-sine-2000").tables["dc_cable"]
    assert cable.column("run_to") == pytest.approx((3 * 0.3048, 6 * 0.3048, 10 * 0.3048))
    assert cable.rows[1] == ("3 ft", "6 ft", "2/0 AWG")
    with pytest.raises(UnknownName, match="has no column 'colour'; it has run_over, run_to, wire"):
        cable.column("colour")


# --- limits that hold whatever the make


def test_griddle_input_is_in_the_band_of_its_plate() -> None:
    """75 to 135 BTU/h a square inch; outside is a typing error or an unusual unit (common practice)."""
    btu_per_square_inch = 1055.05585262 / 3600 / 0.0254**2
    for item in with_rating("plate_width", "plate_depth", "gas_input"):
        plate = value(item, "plate_width") * value(item, "plate_depth")
        assert 75 < value(item, "gas_input") / plate / btu_per_square_inch < 135, item.id


def test_a_griddle_outweighs_its_plate_but_not_by_far() -> None:
    steel = 7850
    for item in with_rating("plate_width", "plate_depth", "plate_thickness"):
        plate = (
            value(item, "plate_width") * value(item, "plate_depth") * value(item, "plate_thickness") * steel
        )
        assert 1.2 < item.mass_empty.value / plate < 2.0, item.id


def test_a_full_cylinder_holds_no_more_than_the_law_allows() -> None:
    """42 % of the water capacity by mass: 29 CFR 1910.110(b)(19). Tare and charge make the filled mass."""
    for item in with_rating("charge", "water_capacity"):
        assert value(item, "charge") <= 0.42 * value(item, "water_capacity") * 1.0005, item.id
        assert item.mass_filled is not None
        assert item.mass_filled.value == pytest.approx(item.mass_empty.value + value(item, "charge"))


def test_nothing_holds_more_than_its_outside() -> None:
    for item in with_rating("volume"):
        width, depth, height = (item.size[side].value for side in ("width", "depth", "height"))
        assert value(item, "volume") < width * depth * height, item.id


def test_battery_energy_is_voltage_times_capacity() -> None:
    for item in with_rating("energy", "nominal_voltage", "capacity_20h"):
        worked = value(item, "nominal_voltage") * value(item, "capacity_20h")
        assert value(item, "energy") == pytest.approx(worked, rel=0.01), item.id


def falls(column: tuple[float, ...]) -> bool:
    return all(after < before for before, after in zip(column, column[1:], strict=False))


def curve(item: CatalogueItem, name: str) -> CatalogueTable:
    return item.tables[name]


def test_fans_give_less_against_more_pressure_and_no_free_work() -> None:
    for item in with_table("fan"):
        fan = curve(item, "fan")
        flow, pressure, power = (fan.column(name) for name in ("air_flow", "static_pressure", "input"))
        assert falls(flow), item.id
        assert falls(pressure[::-1]), item.id
        assert all(q * p < 0.5 * w for q, p, w in zip(flow, pressure, power, strict=True)), item.id
        assert flow[0] == value(item, "free_flow")
        assert ("shut_off" in item.ratings) == (flow[-1] == 0)


def test_pumps_give_less_against_more_pressure_and_no_free_work() -> None:
    for item in with_table("pump"):
        pump = curve(item, "pump")
        flow, pressure, current = (pump.column(name) for name in ("pump_flow", "pressure", "pump_current"))
        assert falls(flow), item.id
        assert falls(pressure[::-1]), item.id
        assert all(q * p < 0.55 * 12 * a for q, p, a in zip(flow, pressure, current, strict=True)), item.id


def test_inverter_tables_agree_with_their_loss_terms() -> None:
    for item in with_table("efficiency"):
        tare, a, b = (value(item, name) for name in ("tare", "loss_a", "loss_b"))
        full = value(item, "power")
        table = curve(item, "efficiency")
        for share, efficiency in zip(table.column("load_share"), table.column("efficiency"), strict=True):
            out = share * full
            assert efficiency == pytest.approx(out / (tare + a * out + b * out**2), abs=0.002), item.id


def test_the_page_on_the_catalogue_counts_right() -> None:
    page = (Path(__file__).parents[2] / "docs" / "catalogue.md").read_text(encoding="utf-8")
    assert f"{len(ITEMS)} generic items" in page
    hows = [one.how for item in ITEMS for one in quantities(item)]
    said = {"read": 1 / 13, "computed": 1 / 11, "memory": 2 / 3, "practice": 1 / 6}
    assert {how: hows.count(how) / len(hows) for how in said} == pytest.approx(said, abs=0.005)
