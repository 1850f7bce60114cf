"""Pipe and hose: each section's load, size, capacity by the longest run, and its own loss at that load."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from curbwright import data
from curbwright.build.cart import Build
from curbwright.build.gas import Section
from curbwright.equations import gas as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Gap, Worksheet
from curbwright.sheets.gas.things import HEAT, Constants, Thing, Things, read

WATER = "in WC|Pa"


@dataclass(frozen=True)
class Run:
    """One section worked out; ``bore`` is None for a hose whose maker says what it carries."""

    key: str
    section: Section
    load: Figure
    length: Figure
    bore: Figure | None
    drop: Figure


@dataclass(frozen=True)
class Tree:
    """The sections as they branch from the regulator, and which of them leads to each appliance."""

    sections: Mapping[str, Section]
    serving: Mapping[str, str]

    def way(self, key: str) -> list[str]:
        """The sections from the regulator to the end of one, that one last."""
        found = [key]
        while (after := self.sections[found[0]].after) is not None:
            found.insert(0, after)
        return found

    def beyond(self, key: str, things: Things) -> list[Thing]:
        """What burns gas that comes through a section."""
        return [
            thing for name, thing in things.burning.items()
            if name in self.serving and key in self.way(self.serving[name])
        ]  # fmt: skip


@dataclass(frozen=True)
class Pipe:
    """The tree with every section that could be worked out, and the first thing that was missing, if any."""

    tree: Tree
    runs: Mapping[str, Run]
    gap: Gap | None


def tree_of(build: Build) -> Tree:
    """Return the sections of a build as a tree."""
    sections = build.gas.sections
    return Tree(sections, {name: key for key, one in sections.items() for name in one.serves})


def pipe(build: Build, things: Things, constants: Constants, sheet: Worksheet) -> Pipe:
    """Work out every section; what lacks an input is recorded as a gap of its own and left out."""
    tree = tree_of(build)
    if not tree.sections:
        return Pipe(tree, {}, None)
    drop, factor, heat = sheet.given(build.gas["drop"]), constants["factor"], constants["heat_by_volume"]
    below = {key: sheet.section(key, f"gas pipe, section {_called(key)}") for key in tree.sections}
    lengths: dict[str, Figure] = {}
    for key, section in tree.sections.items():
        with below[key].attempt():
            lengths[key] = _length(section, constants, below[key])
    longest = _longest(tree, lengths, sheet)
    runs: dict[str, Run] = {}
    for key, section in tree.sections.items():
        with below[key].attempt():
            if longest is None or key not in lengths:
                continue
            _nothing_else(section, things)
            loads = [below[key].given(one.item["gas_input"]) for one in tree.beyond(key, things)]
            load = below[key].total("load", "burners it feeds", loads, unit="W", shown=HEAT)
            if float(load) > 0:
                method = _Method(drop, factor, heat, longest, constants)
                runs[key] = _run(key, section, lengths[key], load, method, below[key])
                if section.pipe == "hose":
                    long = below[key].given(section["length"])
                    below[key].largest("hose", f"{_called(key)}: length of hose", {"as it is": long})
    return Pipe(tree, runs, next(iter(sheet.all_gaps()), None))


def _nothing_else(section: Section, things: Things) -> None:
    """Raise MissingInput for something on the pipe that, as far as the file says, burns no gas."""
    for name in section.serves:
        if name not in things.burning:
            says = f"{name.replace('_', ' ')} hangs on the gas pipe, and what it burns is not given"
            raise MissingInput(f"items.{name}.gas_input", says)


@dataclass(frozen=True)
class _Method:
    """What the longest-length method takes for every section."""

    drop: Figure
    factor: Figure
    heat: Figure
    longest: Figure
    constants: Constants


def _length(section: Section, constants: Constants, sheet: Worksheet) -> Figure:
    """The length with its fittings; while its size is yet to be chosen they count as those of the largest."""
    length = sheet.given(section["length"])
    if not section.elbows + section.tees:
        return length
    row = _row(section) if section.size is not None else _rows(section)[-1]
    bore = _tabled_bore(row, "fitting_bore", "bore of its fittings", sheet)
    return sheet.work(
        "equivalent", "its length with its fittings", eq.equivalent_length, length=length, bore=bore,
        elbows=sheet.given(section["elbows"]), each_elbow=constants["elbow"],
        tees=sheet.given(section["tees"]), each_tee=constants["tee"],
    )  # fmt: skip


def _longest(tree: Tree, lengths: Mapping[str, Figure], sheet: Worksheet) -> Figure | None:
    """The longest run from the regulator to anything; None where some length is missing."""
    if set(lengths) != set(tree.sections):
        return None
    ends = dict.fromkeys(tree.serving.values()) or dict.fromkeys(tree.sections)
    runs = {
        _called(key): sheet.total(
            f"run_to_{key}",
            f"run to the end of {_called(key)}",
            [lengths[one] for one in tree.way(key)],
        )
        for key in ends
    }
    return sheet.largest("longest", "longest run from the regulator", runs)


def _run(key: str, section: Section, length: Figure, load: Figure, method: _Method, sheet: Worksheet) -> Run:
    if section.carries is not None:
        return _by_its_maker(key, section, length, load, method, sheet)
    flow = sheet.work("flow", "gas it carries", eq.flow_of, shown="cfh|m3/h", load=load, heat=method.heat)
    needed = sheet.work(
        "needed", "bore it needs, by the longest run", eq.low_pressure_bore, shown="in|mm", flow=flow,
        drop=method.drop, length=method.longest, factor=method.factor,
    )  # fmt: skip
    bore = _chosen(section, float(needed), sheet)
    carries = sheet.work(
        "carries", "gas that its size carries, by the longest run", eq.low_pressure_flow, shown="cfh|m3/h",
        bore=bore, drop=method.drop, length=method.longest, factor=method.factor,
    )  # fmt: skip
    capacity = sheet.work(
        "capacity", "burners that its size feeds, by the longest run", eq.capacity_of, shown=HEAT,
        flow=carries, heat=method.heat,
    )  # fmt: skip
    sheet.work("spare", "share of that left over", eq.spare, shown="%", capacity=capacity, load=load)
    drop = sheet.work(
        "drop", f"{_called(key)}: pressure lost at its load, by its own length", eq.low_pressure_drop,
        shown=WATER, flow=flow, bore=bore, length=length, factor=method.factor,
    )  # fmt: skip
    return Run(key, section, load, length, bore, drop)


def _by_its_maker(
    key: str, section: Section, length: Figure, load: Figure, method: _Method, sheet: Worksheet
) -> Run:
    """A hose or connector whose maker says what it carries at a drop of half an inch of water."""
    capacity = sheet.given(section["carries"])
    half = sheet.tabled(
        "half", "drop that its maker's capacity is for", 0.5 * 249.08891, "Pa", source="convention",
        row="0.5 in WC", shown=WATER,
    )  # fmt: skip
    sheet.work("spare", "share of its capacity left over", eq.spare, shown="%", capacity=capacity, load=load)
    drop = sheet.work(
        "drop", f"{_called(key)}: pressure lost at its load", eq.drop_by_capacity, shown=WATER, load=load,
        capacity=capacity, drop=half,
    )  # fmt: skip
    return Run(key, section, load, length, None, drop)


def _chosen(section: Section, needed: float, sheet: Worksheet) -> Figure:
    """The bore of the size written, or of the smallest size that is wide enough: what to buy."""
    if section.size is not None:
        row = _row(section)
        return _tabled_bore(row, "bore", f"bore of {row['size']}", sheet)
    rows = [row for row in _rows(section) if _bore(row) >= needed]
    if not rows:
        raise MissingInput(f"{section.path}.size", f"no {section.pipe} on the list is wide enough")
    name = f"bore of {rows[0]['size']}, chosen: the smallest that is wide enough"
    return _tabled_bore(rows[0], "bore", name, sheet)


def _tabled_bore(row: Mapping[str, str], id: str, name: str, sheet: Worksheet) -> Figure:
    return sheet.tabled(id, name, _bore(row), "m", source=row["source"], row=row["size"], shown="in|mm")


def _bore(row: Mapping[str, str]) -> float:
    return read(row["bore"], "length")


def _called(key: str) -> str:
    return key.replace("_", " ")


def _rows(section: Section) -> list[Mapping[str, str]]:
    return [row for row in data.table("gas/pipe") if row["material"] == section.pipe]


def _row(section: Section) -> Mapping[str, str]:
    """The row of a size as sold; raises MissingInput naming the sizes there are."""
    for row in _rows(section):
        if abs(read(row["nominal"], "length") - float(section.size or 0)) < 1e-6:
            return row
    sizes = ", ".join(row["nominal"] for row in _rows(section))
    raise MissingInput(f"{section.path}.size", f"the list of {section.pipe} has no such size; it has {sizes}")
