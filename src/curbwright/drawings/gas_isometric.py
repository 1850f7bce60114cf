"""The gas isometric: bottles, regulator, every run of pipe with its size, length and load, every shut-off.

Not to scale. Runs leave the regulator down to the right; what branches off stands farther up to the right, so
that no two runs cross. Lengths here are millimetres on paper in thousandths.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from math import cos, pi, sin

from curbwright.build.gas import Section
from curbwright.drawings.boxes import Box, Point
from curbwright.drawings.primitives import Label, Line, Marker, Primitive, View, rectangle
from curbwright.figures import Figure, Tabled
from curbwright.figures.printing import shown
from curbwright.sheets import Worksheets
from curbwright.sheets.gas import things_on_gas

MM = 0.001
SLANT = pi / 6
"""Isometric axes lie this far from level."""
SLOT, RUN, DROP = 26 * MM, 34 * MM, 9 * MM
"""Between neighbouring branches, along a run, down to an appliance."""
STUB, PIGTAIL = 14 * MM, 20 * MM
"""From the regulator to the first branch, and between the bottles."""
VALVE, REGULATOR = 5.0, 8.0
"""Size of the symbols, in millimetres."""


@dataclass
class _Node:
    """The end of a section: its slot, how many runs from the regulator, what branches there."""

    key: str
    section: Section | None
    depth: int
    slot: int = 0
    serves: list[tuple[str, int]] = field(default_factory=list)
    below: list[_Node] = field(default_factory=list)


def gas_isometric(sheets: Worksheets) -> View:
    """Return the gas isometric of a cart whose build file has sections of pipe."""
    root = _tree(sheets)
    marks = [*_supply(sheets), *_runs(sheets, root)]
    return View("Gas isometric", tuple(marks), to_scale=False)


def gas_notes(sheets: Worksheets) -> tuple[str, ...]:
    """Return what stands beside it: each section in full, the loads, the leak check, who may do the work."""
    known, system = sheets.figures, sheets.build.cart.units
    lines = [_section_note(key, one, sheets) for key, one in sheets.build.gas.sections.items()]
    for id, says in (("connected_load", "Connected load"), ("worst_drop", "Most pressure lost on the way")):
        if f"gas.{id}" in known:
            lines.append(f"{says}: {shown(known[f'gas.{id}'], system)}.")
    pressure, time = (known.get(f"gas.leak_test.leak_check_{word}") for word in ("pressure", "time"))
    if pressure is not None and time is not None:
        lines.append(
            f"Leak check before use and after each bottle change: {shown(pressure, system)} held"
            f" {shown(time, system)}, no fall."
        )
    lines.append("A bow tie is a shut-off valve. Lengths are along the run.")
    lines.append("A design aid. Licensed gas work, a pressure test and the authority's approval before use.")
    return tuple(lines)


def _section_note(key: str, section: Section, sheets: Worksheets) -> str:
    system = sheets.build.cart.units
    parts = [
        _size(key, section, sheets),
        section.length.text if section.length is not None else "length not given",
    ]
    for id, says, digits in (("load", "feeds {}", 4), ("drop", "loses {}", 3)):
        figure = sheets.figures.get(f"gas.pipe.{key}.{id}")
        if figure is not None:
            parts.append(says.format(shown(figure, system, digits)))
    return f"{_called(key)}: {', '.join(parts)}."


# ---- where everything goes


def _tree(sheets: Worksheets) -> _Node:
    """The sections as nodes, each with its slot: the first branch goes straight on, others farther out."""
    sections = sheets.build.gas.sections
    root = _Node("", None, 0)
    _branch(root, sections, 0)
    return root


def _branch(node: _Node, sections: dict[str, Section], slot: int) -> int:
    """Give a node and all beyond it their slots; return the next free one."""
    node.slot = slot
    served = node.section.serves if node.section is not None else []
    for name in served:
        node.serves.append((name, slot))
        slot += 1
    for key, section in sections.items():
        if (section.after or "") == node.key:
            below = _Node(key, section, node.depth + 1)
            node.below.append(below)
            slot = _branch(below, sections, slot)
    return max(slot, node.slot + 1)


def _at(slot: float, depth: float) -> Point:
    """A place by its slot and its runs from the regulator; the first run starts a stub away from it."""
    along, out = STUB + depth * RUN, slot * SLOT
    return (along + out) * cos(SLANT), (out - along) * sin(SLANT)


def _between(start: Point, end: Point, share: float) -> Point:
    return start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])


# ---- what is drawn


def _supply(sheets: Worksheets) -> Iterator[Primitive]:
    """The bottles, the regulator, and the valve that shuts off everything."""
    build, system = sheets.build, sheets.build.cart.units
    far = (0.0, 0.0)
    for number, (key, bottle) in enumerate(things_on_gas(build).bottles.items(), 1):
        far = (-number * PIGTAIL * cos(SLANT), -number * PIGTAIL * sin(SLANT))
        neck = (far[0], far[1] - 5 * MM)
        body = Box(neck[0] - 4 * MM, neck[1] - 16 * MM, neck[0] + 4 * MM, neck[1] - 2 * MM)
        yield Line(far, neck, layer="GAS")
        yield rectangle(Box(neck[0] - 1.5 * MM, body.top, neck[0] + 1.5 * MM, neck[1]), layer="EQUIPMENT")
        yield rectangle(body, layer="EQUIPMENT", item=key)
        charge = bottle.item.charge
        said = f"{bottle.name}\n{charge.text}" if charge is not None else bottle.name
        yield Label(said, body.centre, item=key)
    yield Line(far, (0.0, 0.0), layer="GAS")
    yield Marker("regulator", (0.0, 0.0), REGULATOR, layer="EQUIPMENT")
    outlet = build.gas.regulator["outlet"]
    line = sheets.figures.get(outlet.path)
    yield Label(f"regulator, {shown(line, system)}" if line is not None else "regulator", (0.0, 0.0))
    yield Line((0.0, 0.0), _at(0, 0), layer="GAS")
    if build.gas.master:
        valve = _between((0.0, 0.0), _at(0, 0), 0.7)
        yield Marker("valve", valve, VALVE, -30.0, layer="EQUIPMENT")
        yield Label("shuts off all, outside", valve)


def _runs(sheets: Worksheets, node: _Node) -> Iterator[Primitive]:
    """Everything that leaves a node: the runs that go on from it, and what hangs on its end."""
    header = _at(node.slot, node.depth)
    for name, slot in node.serves:
        corner = _at(slot, node.depth)
        if corner != header:
            yield Line(header, corner, layer="GAS")
        yield from _appliance(sheets, name, corner)
        header = corner
    for below in node.below:
        corner, end = _at(below.slot, node.depth), _at(below.slot, below.depth)
        if corner != header:
            yield Line(header, corner, layer="GAS")
        header = corner
        yield Line(corner, end, layer="GAS")
        section = below.section
        if section is not None:
            if section.shut_off:
                yield Marker("valve", _between(corner, end, 0.25), VALVE, -30.0, layer="EQUIPMENT")
            length = f", {section.length.text}" if section.length is not None else ""
            size = _size(below.key, section, sheets).removesuffix(" schedule 40")
            yield Label(f"{_called(below.key)}:\n{size}{length}", _between(corner, end, 0.6))
        yield from _runs(sheets, below)


def _appliance(sheets: Worksheets, name: str, corner: Point) -> Iterator[Primitive]:
    """An appliance below the end of its run, with its input and the pressure that reaches it."""
    foot = (corner[0], corner[1] - DROP)
    yield Line(corner, foot, layer="GAS")
    box = Box(foot[0] - 4 * MM, foot[1] - 4 * MM, foot[0] + 4 * MM, foot[1])
    yield rectangle(box, layer="EQUIPMENT", item=name)
    system, known = sheets.build.cart.units, sheets.figures
    lines = [sheets.build.items[name].name]
    for id in (f"items.{name}.gas_input", f"gas.at.{name}.pressure"):
        figure: Figure | None = known.get(id)
        if figure is not None:
            lines.append(shown(figure, system))
    yield Label("\n".join(lines), box.centre, item=name)


def _size(key: str, section: Section, sheets: Worksheets) -> str:
    """The size as sold: as written, or as the sheet chose it."""
    bore = sheets.figures.get(f"gas.pipe.{key}.bore")
    if bore is not None and isinstance(bore.origin, Tabled):
        return bore.origin.row
    if section.size is not None:
        return f"{section.size.text} {section.pipe}"
    return section.pipe


def _called(key: str) -> str:
    return key.replace("_", " ")
