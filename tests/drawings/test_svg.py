"""The SVG file: true to scale, readable, the same bytes every time, and nothing in it that acts."""

import re
import subprocess
import sys
from pathlib import Path
from xml.etree import ElementTree

import pytest

from curbwright.drawings import Box, Label, Line, Page, Sheet, Text, View, paper, rectangle, sheet_set
from curbwright.drawings.backends import svg
from curbwright.drawings.lettering import CAPITAL
from tests.drawings import demo

NAME = "{http://www.w3.org/2000/svg}"


def tree(sheet: Sheet) -> ElementTree.Element:
    return ElementTree.fromstring(svg.write(sheet))


def spread_of(path: str) -> tuple[float, float]:
    numbers = [float(number) for number in re.findall(r"-?\d+(?:\.\d+)?", path)]
    return max(numbers[::2]) - min(numbers[::2]), max(numbers[1::2]) - min(numbers[1::2])


@pytest.mark.parametrize(("size", "system"), [("letter", "us"), ("tabloid", "us"), ("a3", "si")])
def test_a_known_length_measures_true_on_paper(size: str, system: str) -> None:
    sheet = demo.sheets(size, system=system)[0]
    root = tree(sheet)
    _, _, wide, high = map(float, root.attrib["viewBox"].split())
    assert root.attrib["width"] == f"{wide:g}mm"
    assert root.attrib["height"] == f"{high:g}mm"
    drawn = [path for path in root.iter(f"{NAME}path") if path.get("data-item") == "Griddle"]
    across, up = spread_of(drawn[0].attrib["d"])
    ratio = sheet.placed[0].scale.ratio
    assert across * ratio / 25.4 == pytest.approx(36, abs=0.01 * ratio / 25.4)
    assert up * ratio / 25.4 == pytest.approx(30, abs=0.01 * ratio / 25.4)


def test_the_bar_scale_measures_what_it_says() -> None:
    """At 1/2 in to the foot the four-foot bar is two inches long."""
    root = tree(demo.sheets("tabloid")[0])
    border = next(group for group in root.iter(f"{NAME}g") if group.get("class") == "border")
    filled = [path.attrib["d"] for path in border.iter(f"{NAME}path") if path.get("fill")]
    bars = [spread_of(path) for path in filled if path.count("L") == 3]
    assert [across for across, _ in bars] == [pytest.approx(25.4 / 2, abs=0.002)] * 2
    assert "4 ft" in {text.text for text in border.iter(f"{NAME}text")}


def test_lettering_is_given_its_width_and_is_two_millimetres_or_more() -> None:
    for sheet in demo.sheets("letter"):
        texts = list(tree(sheet).iter(f"{NAME}text"))
        assert len(texts) == len(sheet.words())
        for text, word in zip(
            sorted(texts, key=lambda t: t.text or ""),
            sorted(sheet.words(), key=lambda w: w.text),
            strict=True,
        ):
            assert float(text.attrib["font-size"]) * CAPITAL >= 2.0 - 0.001
            long = word.box.height if word.rotation else word.box.width
            assert float(text.attrib["textLength"]) == pytest.approx(long, abs=0.001) or texts.count(text) > 1


def test_nothing_acts_and_nothing_is_fetched() -> None:
    for sheet in demo.sheets():
        root = tree(sheet)
        assert {element.tag.removeprefix(NAME) for element in root.iter()} <= {
            "svg", "title", "desc", "g", "path", "circle", "rect", "text",
        }  # fmt: skip
        for element in root.iter():
            assert not any(name.startswith("on") or "href" in name for name in element.attrib)
            assert not any("url(" in value for value in element.attrib.values())


def test_hostile_words_stay_words() -> None:
    name = '</text><script>alert("x")</script> & \x00\x0b\u202e <'
    item = '"><script>'
    page = Page(
        name,
        (
            View(
                name,
                (Text((0, 0), name), Label(name, (1, 1)), Line((0, 0), (1, 1), item=item)),
            ),
        ),
        (name,),
    )
    sheet = sheet_set([page], cart=name, date=name, revision=name, paper=paper("letter"))[0]
    root = tree(sheet)
    assert not list(root.iter(f"{NAME}script"))
    assert any(element.get("data-item") == item for element in root.iter())


def test_layers_are_groups_that_say_which() -> None:
    root = tree(demo.sheets()[0])
    groups = {group.get("class", "") for group in root.iter(f"{NAME}g")}
    assert {"view", "border", "layer equipment", "layer gas", "layer balance", "lettering text"} <= groups
    title = root.find(f"{NAME}title")
    assert title is not None
    assert title.text == "The Copper Ladle: Floor plan"
    assert title.attrib["id"] in root.attrib["aria-labelledby"].split()


def test_setting_out_lines_are_never_printed() -> None:
    view = View("Plan", (rectangle(Box(0, 0, 1, 1)), Line((0, 0), (1, 1), layer="CONSTRUCTION")))
    sheet = sheet_set([Page("P", (view,))], cart="C", date="d", revision="A", paper=paper("letter"))[0]
    assert "construction" not in svg.write(sheet)


def test_an_arc_bulges_the_right_way() -> None:
    """A quarter swing from east to north, with y down in the file, goes counter-clockwise: sweep flag 0."""
    root = tree(demo.sheets()[0])
    swing = next(group for group in root.iter(f"{NAME}g") if group.get("class") == "layer swing")
    path = swing[0].attrib["d"]
    assert re.fullmatch(r"M\S+ \S+A(\S+) \1 0 0 0 \S+ \S+", path)
    start, end = re.findall(r"-?[\d.]+ -?[\d.]+", path)[0], path.split(" ")[-2:]
    assert float(start.split()[0]) > float(end[0])
    assert float(start.split()[1]) > float(end[1])


def test_same_sheet_same_bytes_in_another_process() -> None:
    """Hash seeds differ between processes, so anything that leaned on the order of a set would show."""
    script = (
        "import hashlib; from tests.drawings import demo; from curbwright.drawings.backends import svg;"
        "print(hashlib.sha256(''.join(map(svg.write, demo.sheets('letter'))).encode()).hexdigest())"
    )
    found = {
        subprocess.run(
            [sys.executable, "-c", script], env={"PYTHONHASHSEED": seed, "PYTHONPATH": ":".join(sys.path)},
            capture_output=True, text=True, check=True,
        ).stdout
        for seed in ("1", "2")
    }  # fmt: skip
    assert len(found) == 1


def test_saved_file_is_what_was_written(tmp_path: Path) -> None:
    sheet = demo.sheets()[0]
    svg.save(sheet, tmp_path / "plan.svg")
    assert (tmp_path / "plan.svg").read_bytes() == svg.write(sheet).encode()
