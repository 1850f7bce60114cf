"""The one-line diagram: everything is on it once, legible, on one sheet, whatever the cart."""

from __future__ import annotations

import re
from functools import cache
from random import Random

import pytest

from curbwright.build import examples
from curbwright.build.file import load_text
from curbwright.drawings.backends import dxf, svg
from curbwright.drawings.checking import overlaps, struck, too_small
from curbwright.drawings.drawing_set import drawing_set, pages
from curbwright.drawings.one_line import one_line, one_line_notes
from curbwright.drawings.one_line.contents import Contents, contents
from curbwright.drawings.sheet import Sheet
from curbwright.sheets import Worksheets, work
from curbwright.sheets.circuits.schedule import wire_schedule

TITLE = "One-line diagram"
WIRED = [name for name in examples.names() if load_text(examples.text(name)).circuits]
TRAILER = '[trailer]\ndeck_length = "20 ft"\ndeck_width = "7 ft"\nball_to_deck = "4 ft"\n'
NAMES = (
    "pump",
    "chest",
    "ice maker with a very long name indeed",
    "lights over the serving hatch",
    "till",
    "fan",
)


@cache
def worked(text: str) -> Worksheets:
    return work(load_text(text))


def sheet(text: str) -> Sheet:
    return next(one for one in drawing_set(worked(text)) if one.block.title == TITLE)


def found(text: str) -> Contents:
    made = contents(worked(text))
    assert made is not None
    return made


def words(one: Sheet) -> list[str]:
    return [word.text for word in one.words()]


def circuit(name: str, supply: str, feeds: str, **fields: str) -> str:
    listed = "".join(f"{field} = {value}\n" for field, value in fields.items())
    return f'[circuits.{name}]\nsupply = "{supply}"\nfeeds = ["{feeds}"]\n{listed}'


FUSED = {"length": '"4 ft"', "fuse": '"30 A"', "fuse_type": '"terminal-post"', "fuse_distance": '"2 in"'}
PLAIN = f'[cart]\nname = "Any"\n{TRAILER}[items.bank]\nkind = "battery"\n'


def any_cart(seed: int) -> str:
    """A cart with some of every supply, and as many branches as a large cart has, named long and short."""
    random, text = Random(seed), PLAIN
    text += circuit("feeder", "bank", "12 V bus", **FUSED)
    if random.random() < 0.8:
        text += '[items.dcdc]\nkind = "charger"\nlabel = "DC-DC charger for the house battery"\n'
        text += circuit("tow", "tow plug", "dcdc", **FUSED, current='"20 A"')
        text += circuit("tow_out", "bank", "dcdc", **FUSED, current='"20 A"', far_fuse='"25 A"')
    if random.random() < 0.6:
        text += '[items.sun]\nkind = "controller"\n[items.roof]\nkind = "solar"\n'
        text += circuit("sun", "roof", "sun", voltage='"40 V"', current='"9 A"', length='"12 ft"')
        text += circuit("sun_out", "sun", "bank", **FUSED, current='"18 A"')
    inverter = random.random() < 0.8
    if inverter:
        text += '[items.inverter]\nlike = "inverter-sine-2000"\n[electrical.inverter]\nitem = "inverter"\n'
        text += circuit("inverter", "bank", "inverter", **FUSED)
        text += circuit("panel", "inverter", "120 V panel", length='"5 ft"')
    if random.random() < 0.7 or not inverter:
        text += '[electrical.shore]\nrating = "30 A"\n' + circuit(
            "shore", "shore inlet", "120 V panel", **FUSED
        )
    if random.random() < 0.4:
        text += (
            '[items.engine]\nkind = "generator"\n[electrical.generator]\nitem = "engine"\nrating = "3000 W"\n'
        )
        text += circuit("engine", "engine", "120 V panel", **FUSED, current='"25 A"')
    for number in range(random.randrange(1, 18)):
        low, label = random.random() < 0.7, f"{random.choice(NAMES)} {number}"
        bus, supply = ("12 V", "12 V bus") if low else ("120 V inverter", "120 V panel")
        text += f'[items.load_{number}]\nkind = "other"\nlabel = "{label}"\n'
        text += f'[items.load_{number}.electric]\nbus = "{bus}"\npower = "{random.randrange(2, 400)} W"\n'
        fields = {"length": f'"{random.randrange(2, 30)} ft"'}
        if random.random() < 0.7:
            fields |= {"fuse": '"15 A"', "fuse_type": '"DC cartridge"' if low else '"AC breaker"'}
        if not low and random.random() < 0.5:
            fields |= {"receptacles": "2", "gfci": "true"}
        text += circuit(f"load_{number}", supply, f"load_{number}", **fields)
    return text


def test_the_examples_with_circuits_have_one_and_a_cart_without_has_none() -> None:
    assert WIRED
    plain = worked(f'[cart]\nname = "x"\n{TRAILER}')
    assert one_line(plain) is None
    assert TITLE not in [page.title for page in pages(plain)]
    assert all(TITLE in [page.title for page in pages(worked(examples.text(name)))] for name in WIRED)


@pytest.mark.parametrize("name", WIRED)
def test_an_example_is_readable_on_one_letter_sheet(name: str) -> None:
    one = sheet(examples.text(name))
    assert one.paper.name == "Letter landscape"
    assert (overlaps(one), struck(one), too_small(one)) == ([], [], [])
    assert not any(word.endswith("…") for word in words(one))


@pytest.mark.parametrize("seed", range(24))
def test_any_cart_is_readable(seed: int) -> None:
    one = sheet(any_cart(seed))
    assert (overlaps(one), struck(one), too_small(one)) == ([], [], [])
    assert all(placed.scale.ratio == 1.0 for placed in one.placed)


@pytest.mark.parametrize("seed", range(24))
def test_every_circuit_is_on_it_once(seed: int) -> None:
    text = any_cart(seed)
    numbers = [word for each in words(sheet(text)) for word in re.findall(r"\b[DAT]\d\d\b", each)]
    drawn = [number for number in numbers if number != "from"]
    build = worked(text).build
    assert len(set(drawn)) == len(build.circuits)
    assert all(drawn.count(number) == 1 for number in drawn)


@pytest.mark.parametrize("name", WIRED)
def test_its_numbers_are_those_of_the_wire_schedule(name: str) -> None:
    sheets = worked(examples.text(name))
    text = " ".join(words(sheet(examples.text(name))))
    for row in wire_schedule(sheets.build, sheets.figures):
        assert row.number in text
        assert row.wire in text


def test_fault_currents_stand_at_the_battery_and_at_the_bus() -> None:
    sheets = worked(examples.text("flatbread"))
    text = words(sheet(examples.text("flatbread")))
    assert f"fault {float(sheets.figures['battery.fault_current']) / 1000:.3g} kA" in text
    assert any(word.startswith("12 V BUS, fault") for word in text)


def test_a_cable_without_its_second_fuse_says_so() -> None:
    cart = (
        PLAIN + '[items.dcdc]\nkind = "charger"\n' + circuit("out", "bank", "dcdc", **FUSED, current='"9 A"')
    )
    assert "no fuse here" in words(sheet(cart))
    both = cart + 'far_fuse = "20 A"\nfar_fuse_type = "blade"\n'
    assert "no fuse here" not in words(sheet(both))
    assert "20 A blade" in words(sheet(both))


def test_what_was_chosen_is_marked_and_explained() -> None:
    chosen = PLAIN + circuit("feeder", "bank", "12 V bus", length='"4 ft"', current='"20 A"')
    text = words(sheet(chosen))
    assert {"10 AWG*, 4 ft", "25 A*"} <= set(text)
    assert any("chosen by calculation" in word for word in text)
    given = PLAIN + circuit("feeder", "bank", "12 V bus", **FUSED, current='"20 A"', wire='"8 AWG"')
    text = words(sheet(given))
    assert {"8 AWG, 4 ft", "30 A terminal-post"} <= set(text)
    assert not any("*" in word for word in text)


def test_loads_at_the_inverter_s_own_outlets() -> None:
    text = PLAIN + '[items.inverter]\nlike = "inverter-sine-1000"\n[electrical.inverter]\nitem = "inverter"\n'
    text += circuit("feed", "bank", "inverter", **FUSED)
    text += '[items.till]\nkind = "pos"\n' + circuit("till", "inverter", "till", length='"5 ft"')
    made = found(text)
    assert made.panel == "INVERTER OUTLETS"
    assert [row.load for row in made.mains] == ["till"]
    assert (overlaps(sheet(text)), struck(sheet(text))) == ([], [])


def test_two_supplies_of_the_panel_meet_in_a_transfer_switch() -> None:
    one = (
        PLAIN
        + '[electrical.shore]\nrating = "30 A"\n'
        + circuit("shore", "shore inlet", "120 V panel", **FUSED)
    )
    assert found(one).transfer is None
    two = one + '[items.inverter]\nlike = "inverter-sine-1000"\n[electrical.inverter]\nitem = "inverter"\n'
    two += circuit("panel", "inverter", "120 V panel", length='"5 ft"')
    switch = found(two).transfer
    assert switch is not None
    assert switch.lines == ("TRANSFER", "neutral", "not told")


def test_a_charger_on_the_bus_is_drawn_between_the_tow_plug_and_the_bus() -> None:
    """Drawn otherwise the tow lead would seem tied straight to the bank."""
    text = PLAIN + '[items.dcdc]\nkind = "charger"\n' + circuit("feeder", "bank", "12 V bus", **FUSED)
    text += circuit("tow", "tow plug", "dcdc", **FUSED, current='"20 A"')
    text += circuit("out", "12 V bus", "dcdc", **FUSED, current='"20 A"', far_fuse='"25 A"')
    made = found(text)
    (lane,) = made.lanes
    assert (lane.source.lines[0], lane.first is not None, lane.second) == ("TOW PLUG", True, None)
    assert lane.joins == "to bus, D02"
    assert [(row.load, row.inward) for row in made.low] == [("from dcdc", True)]


def test_a_tow_lead_tied_straight_to_the_bank_is_drawn_so() -> None:
    made = found(PLAIN + circuit("tow", "tow plug", "bank", **FUSED, current='"20 A"'))
    assert [(lane.source.lines[0], lane.converter) for lane in made.lanes] == [("TOW PLUG", None)]


def test_the_one_bond_and_the_disconnects_stand_in_the_notes() -> None:
    notes = " ".join(one_line_notes(worked(examples.text("flatbread"))))
    assert "on shore power 1, on the inverter 1" in notes
    assert "battery disconnect: D01, D02" in notes


def test_a_cart_on_shore_power_alone_has_no_battery_on_it() -> None:
    text = f'[cart]\nname = "x"\n{TRAILER}[electrical.shore]\nrating = "20 A"\n'
    text += circuit("inlet", "shore inlet", "120 V panel", **FUSED)
    text += '[items.urn]\nkind = "coffee"\n' + circuit("urn", "120 V panel", "urn", length='"5 ft"')
    one = sheet(text)
    assert "BATTERY" not in words(one)
    assert (overlaps(one), struck(one)) == ([], [])


@pytest.mark.parametrize("name", WIRED)
def test_it_is_written_as_svg_and_dxf(name: str) -> None:
    one = sheet(examples.text(name))
    assert "BATTERY" in svg.write(one)
    assert "BATTERY" in dxf.write((one,))
