"""The gas isometric: everything is on it, legible, and no two runs cross."""

from __future__ import annotations

from functools import cache
from itertools import combinations
from random import Random

import pytest

from curbwright.build import examples
from curbwright.build.file import load_text
from curbwright.drawings.backends import dxf, svg
from curbwright.drawings.checking import overlaps, struck, too_small
from curbwright.drawings.drawing_set import drawing_set, pages
from curbwright.drawings.gas_isometric import gas_isometric, gas_notes
from curbwright.drawings.primitives import Label, Line, Marker
from curbwright.drawings.sheet import Sheet
from curbwright.sheets import Worksheets, work

TRAILER = '[trailer]\ndeck_length = "20 ft"\ndeck_width = "7 ft"\nball_to_deck = "4 ft"\n'
PIPED = [name for name in examples.names() if load_text(examples.text(name)).gas.sections]


@cache
def worked(text: str) -> Worksheets:
    return work(load_text(text))


@cache
def isometric(name: str) -> Sheet:
    return next(one for one in drawing_set(worked(examples.text(name))) if one.block.title == "Gas isometric")


def forest(seed: int, sections: int) -> str:
    """A cart whose pipe branches at random, something on gas at most of its ends."""
    random, text, ends = Random(seed), f'[cart]\nname = "Any"\n{TRAILER}', ""
    for number in range(sections):
        after = f'after = "run_{random.randrange(number)}"\n' if number and random.random() < 0.9 else ""
        served = [f"burner_{number}_{n}" for n in range(random.choice((0, 1, 1, 1, 2)))]
        listed = ", ".join(f'"{one}"' for one in served)
        long = f"{random.randrange(1, 12)} ft"
        ends += (
            f'[gas.sections.run_{number}]\n{after}serves = [{listed}]\nlength = "{long}"\nshut_off = true\n'
        )
        for one in served:
            text += f'[items.{one}]\nkind = "burner"\ngas_input = "20,000 BTU/h"\nconnects = ["gas"]\n'
    bottle = '[items.bottle]\nlike = "cylinder-20"\n'
    return f"{text}{bottle}[gas]\nmaster = true\n{ends}"


def test_every_example_on_gas_has_its_isometric_and_a_cart_without_pipe_has_none() -> None:
    assert len(PIPED) >= 3
    plain = worked(f'[cart]\nname = "x"\n{TRAILER}')
    assert [page.title for page in pages(plain)] == ["Floor plan and equipment", "Curb-side elevation"]
    for name in PIPED:
        assert isometric(name).block.number == 3


@pytest.mark.parametrize("name", PIPED)
def test_it_is_fit_to_look_at(name: str) -> None:
    sheet = isometric(name)
    assert overlaps(sheet) == []
    assert struck(sheet) == []
    assert too_small(sheet) == []
    assert sheet.unplaced == ()
    assert sheet.paper.name.lower().startswith("letter")


@pytest.mark.parametrize("name", PIPED)
def test_it_names_every_run_appliance_bottle_and_shut_off(name: str) -> None:
    sheets = worked(examples.text(name))
    words = " ".join(word.text for word in isometric(name).words())
    gas = sheets.build.gas
    for key, section in gas.sections.items():
        assert f"{key.replace('_', ' ')}:" in words
        assert section.length is not None
        assert section.length.text in words
        for item in section.serves:
            assert sheets.build.items[item].name in words
    for bottle in gas.bottles or ():
        assert sheets.build.items[bottle].name in words
    valves = [
        one for one in gas_isometric(sheets).primitives if isinstance(one, Marker) and one.kind == "valve"
    ]
    assert len(valves) == sum(one.shut_off for one in gas.sections.values()) + bool(gas.master)


def test_it_tells_size_length_load_and_pressure() -> None:
    sheets = worked(examples.text("flatbread"))
    labels = [one.text for one in gas_isometric(sheets).primitives if isinstance(one, Label)]
    assert "main:\n3/4 in, 4 ft" in labels
    assert any(text.startswith("griddle\n75,000 BTU/h\n10.") and text.endswith(" in WC") for text in labels)
    notes = gas_notes(sheets)
    assert notes[0].startswith("main: 3/4 in schedule 40, 4 ft, feeds 93,000 BTU/h, loses 0.01")
    assert "Connected load: 93,000 BTU/h." in notes
    assert any("9 in WC held 3 min" in note for note in notes)
    assert "Licensed gas work" in notes[-1]


def test_a_size_left_out_is_the_one_the_sheet_chose() -> None:
    notes = gas_notes(worked(examples.text("coffee")))
    assert any(note.startswith("heater: 1/4 in copper") for note in notes)


def test_in_metric_units() -> None:
    text = examples.text("flatbread").replace('units = "us"', 'units = "si"')
    labels = [one.text for one in gas_isometric(worked(text)).primitives if isinstance(one, Label)]
    assert any("21.98 kW" in text for text in labels)


def crossing(one: Line, other: Line) -> bool:
    """Whether two lines cross or lie on one another, sharing more than an end."""
    (ax, ay), (bx, by), (cx, cy), (dx, dy) = one.start, one.end, other.start, other.end

    def side(px: float, py: float, qx: float, qy: float, rx: float, ry: float) -> float:
        return (qx - px) * (ry - py) - (qy - py) * (rx - px)

    tiny = 1e-9
    first, second = side(ax, ay, bx, by, cx, cy), side(ax, ay, bx, by, dx, dy)
    third, fourth = side(cx, cy, dx, dy, ax, ay), side(cx, cy, dx, dy, bx, by)
    if first * second < -(tiny**2) and third * fourth < -(tiny**2):
        return True
    if max(map(abs, (first, second))) > tiny:
        return False
    low, high = sorted((ax + ay * 1e-3, bx + by * 1e-3))
    start, end = sorted((cx + cy * 1e-3, dx + dy * 1e-3))
    return min(high, end) - max(low, start) > 1e-6


def test_the_test_of_crossings_sees_them() -> None:
    across, along = Line((0.0, 0.0), (2.0, 2.0)), Line((0.0, 2.0), (2.0, 0.0))
    assert crossing(across, along)
    assert crossing(across, Line((1.0, 1.0), (3.0, 3.0)))
    assert not crossing(across, Line((2.0, 2.0), (3.0, 0.0)))
    assert not crossing(across, Line((2.0, 2.0), (3.0, 3.0)))


@pytest.mark.parametrize("seed", range(25))
def test_no_two_runs_cross_however_it_branches(seed: int) -> None:
    view = gas_isometric(worked(forest(seed, 2 + seed % 9)))
    pipes = [one for one in view.primitives if isinstance(one, Line) and one.layer == "GAS"]
    assert [pair for pair in combinations(pipes, 2) if crossing(*pair)] == []


@pytest.mark.parametrize("seed", [3, 8])
def test_a_branching_cart_makes_a_sheet(seed: int) -> None:
    sheets = worked(forest(seed, 2 + seed % 9))
    view = gas_isometric(sheets)
    assert not view.to_scale
    made = drawing_set(sheets)[-1]
    assert overlaps(made) == []
    assert struck(made) == []


def test_what_is_not_known_yet_is_drawn_all_the_same() -> None:
    bare = "\n".join(line for line in forest(1, 3).splitlines() if not line.startswith("length"))
    sheets = worked(bare)
    assert any("length not given" in note for note in gas_notes(sheets))
    assert [one for one in gas_isometric(sheets).primitives if isinstance(one, Label)]


def test_it_is_written_as_svg_and_dxf() -> None:
    sheet = isometric("flatbread")
    assert "Gas isometric" in svg.write(sheet)
    assert "GAS" in dxf.write((sheet,))
