"""The wire schedule: numbers, labels for both ends, colours, and what to buy."""

from __future__ import annotations

from curbwright.sheets.circuits.schedule import rows_of
from tests.sheets.circuits.carts import LOW, MAINS, set_field, worked


def rows(text: str):  # type: ignore[no-untyped-def]
    return {row.circuit: row for row in rows_of(worked(text).wired)}


def test_every_circuit_has_a_row_and_a_number_of_its_own() -> None:
    found = rows(LOW + MAINS)
    assert [row.number for row in found.values()] == ["D01", "D02", "D03", "D04", "A01", "A02"]
    assert list(found) == ["feeder", "pump", "chest", "inverter_feed", "panel", "counter"]


def test_both_ends_are_labelled_each_with_the_other_end() -> None:
    pump = rows(LOW)["pump"]
    assert pump.label_from == "D02+ PUMP 10 BN 15A"
    assert pump.label_to == "D02+ 12 V BUS 10 BN 15A"
    assert pump.label_return == "D02- PUMP 10 YL"
    assert rows(LOW + MAINS)["counter"].label_from == "A02 FAN, TILL 14 BK 15A"


def test_labels_fit_around_a_wire() -> None:
    named = set_field(LOW, "items.pump", "label", '"the large pump below the counter"')
    assert all(len(row.label_from) <= 36 for row in rows(named).values())


def test_colours_are_the_usual_ones_unless_told() -> None:
    found = rows(LOW)
    assert (found["feeder"].colour, found["pump"].colour, found["chest"].colour) == ("red", "brown", "orange")
    told = rows(set_field(LOW, "circuits.pump", "colour", '"dark blue"'))["pump"]
    assert told.label_from == "D02+ PUMP 10 DB 15A"


def test_what_was_given_and_what_to_buy_are_told_apart() -> None:
    found = rows(set_field(LOW, "circuits.chest", "fuse", ""))
    assert (found["pump"].wire_given, found["pump"].fuse_given) == (True, True)
    chest = found["chest"]
    assert (chest.wire_given, chest.fuse_given, chest.wire, chest.fuse) == (False, False, "14 AWG", 7.5)


def test_the_tow_lead_is_a_supply_of_its_own() -> None:
    tow = '[circuits.tow]\nsupply = "tow plug"\nfeeds = ["bank"]\nlength = "9 ft"\ncurrent = "10 A"\n'
    assert rows(LOW + tow)["tow"].number == "T01"


def test_a_circuit_that_cannot_be_worked_keeps_its_number_free() -> None:
    found = rows(set_field(LOW, "circuits.pump", "length", ""))
    assert [row.number for row in found.values()] == ["D01", "D03"]
