"""What stands on the one-line diagram: sources, converters, the bank, the rows of bus and panel."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from curbwright.build.circuits import Circuit
from curbwright.drawings.one_line.pen import Device
from curbwright.figures.printing import shown
from curbwright.sheets import Worksheets
from curbwright.sheets.circuits import Wired, work_circuits
from curbwright.sheets.circuits.schedule import WireRow, called, numbered, rows_of
from curbwright.sheets.circuits.sources import source_ends
from curbwright.sheets.circuits.wiring import Wiring
from curbwright.units import show

_CONVERTERS = ("charger", "controller")
_CHARGED = ("battery", "12 V bus")


@dataclass(frozen=True)
class Wire:
    """One run as the diagram letters it: its number, its wire, the protection at its two ends."""

    number: str
    wire: str
    near: str
    far: str
    short: str
    """Protection and wire without the kind of fuse, for crowded sheets."""
    devices: tuple[Device, ...]
    """What stands on it from its start on, besides the fuse at its far end."""
    has_far: bool


@dataclass(frozen=True)
class Box:
    """A box with its lines of lettering."""

    lines: tuple[str, ...]


@dataclass(frozen=True)
class Lane:
    """A way of charging: a source, the run to a converter, the converter, the run to the bank."""

    source: Box
    first: Wire | None
    converter: Box | None
    second: Wire | None
    joins: str = ""
    """Where the converter charges the 12 V bus instead of the bank: what says so."""


@dataclass(frozen=True)
class Row:
    """A branch: its run, and what it feeds or, coming in, what feeds the bus through it."""

    wire: Wire
    load: str
    power: str
    receptacles: int
    inward: bool


@dataclass(frozen=True)
class Feed:
    """A box that a run comes from, on the way to the 120 V panel."""

    box: Box
    wire: Wire


@dataclass(frozen=True)
class Contents:
    """Everything on the diagram."""

    lanes: tuple[Lane, ...]
    bank: Box | None
    bus_feed: Wire | None
    bus: str
    low: tuple[Row, ...]
    inverter: Box | None
    inverter_feed: Wire | None
    panel_feed: Wire | None
    others: tuple[Feed, ...]
    transfer: Box | None
    panel: str
    outlets: bool
    """Whether the rows start at the inverter itself, with no panel between."""
    mains: tuple[Row, ...]
    bank_ground: str
    panel_ground: str


def contents(sheets: Worksheets) -> Contents | None:
    """Return what stands on the diagram, or None for a cart without circuits."""
    wired = work_circuits(sheets.build, sheets.figures)
    if wired.wiring is None or not wired.wiring.circuits:
        return None
    return _Reader(sheets, wired, wired.wiring).all()


class _Reader:
    """Reads the contents from a worked circuits sheet."""

    def __init__(self, sheets: Worksheets, wired: Wired, wiring: Wiring) -> None:
        self.sheets, self.wired, self.wiring = sheets, wired, wiring
        self.system = sheets.build.cart.units
        self.rows: dict[str, WireRow] = {row.circuit: row for row in rows_of(wired)}
        self.numbers = numbered(wiring)
        self.drawn: set[str] = set()

    def all(self) -> Contents:
        lanes = tuple(self._lanes())
        bus_feed, inverter_feed = self._run("battery", "12 V bus"), self._to_kind("battery", "inverter")
        panel_feed = self._from_kind("inverter", "120 V panel")
        others = tuple(self._others())
        electrical = self.sheets.build.electrical
        switched = {"neutral switched": ("neutral", "switched"), "hot only": ("neutral not", "switched")}
        transfer = None
        if len(others) + (panel_feed is not None) > 1:
            told = switched.get(electrical.bonds.transfer or "", ("neutral", "not told"))
            transfer = Box(("TRANSFER", *told))
        low, mains = tuple(self._branches(mains=False)), tuple(self._branches(mains=True))
        outlets = not any(self._at("120 V panel")) and panel_feed is None and not others
        panel = "INVERTER OUTLETS" if outlets else "120 V PANEL"
        aboard = any(item.kind == "battery" for item in self.sheets.build.items.values())
        if electrical.bonds.panel == "no":
            panel += ", neutral isolated"
        return Contents(
            lanes, self._bank() if aboard or bus_feed is not None else None, bus_feed, self._bus(), low,
            self._inverter(), inverter_feed, panel_feed, others, transfer, panel, outlets, mains,
            self._ground("battery_bond", "negative to frame"),
            self._ground("bonding_wire", "ground bar to frame"),
        )  # fmt: skip

    # ---- runs

    def _wire(self, name: str) -> Wire:
        """The lettering of a run; what was chosen and not given says so."""
        self.drawn.add(name)
        circuit, row = self.wiring.circuits[name], self.rows.get(name)
        length = "" if circuit.length is None else f", {self._shown(float(circuit.length), 'm')}"
        if row is None:
            size = "wire not known" if circuit.wire is None else circuit.wire.text
            near = "fuse not known" if circuit.fuse is None else circuit.fuse.text
        else:
            size = row.wire if row.wire_given else f"{row.wire}*"
            kind = row.fuse_type.removeprefix("AC ").replace("DC cartridge", "cartridge")
            near = f"{row.fuse:g} A {kind}".strip() if row.fuse_given else f"{row.fuse:g} A*"
        starts, ends = source_ends(self.wiring, circuit)
        far = (
            ""
            if circuit.far_fuse is None
            else f"{circuit.far_fuse.text} {circuit.far_fuse_type or ''}".strip()
        )
        near = near if starts or circuit.fuse is not None else ""
        amperes = " ".join(near.split()[:2])
        return Wire(
            self.numbers[name], f"{size}{length}", near, far if far or not ends else "none",
            ", ".join(part for part in (amperes, f"{size}{length}") if part),
            tuple(self._devices(circuit, starts)), bool(far) or ends,
        )  # fmt: skip

    def _devices(self, circuit: Circuit, starts: bool) -> Iterator[Device]:
        if circuit.fuse is not None or starts:
            yield "breaker" if (circuit.fuse_type or "").endswith("breaker") else "fuse"
        if circuit.switch is not None:
            yield "switch"

    def _at(self, node: str) -> Iterator[str]:
        """The circuits that start at a node."""
        return (
            name for name, circuit in self.wiring.circuits.items() if self.wiring.node(circuit.supply) == node
        )

    def _run(self, start: str, end: str) -> Wire | None:
        for name in self._at(start):
            if end in self.wiring.ends(self.wiring.circuits[name]):
                return self._wire(name)
        return None

    def _to_kind(self, start: str, kind: str) -> Wire | None:
        for name in self._at(start):
            if any(self.wiring.kind(end) == kind for end in self.wiring.ends(self.wiring.circuits[name])):
                return self._wire(name)
        return None

    def _from_kind(self, kind: str, end: str) -> Wire | None:
        for name, circuit in self.wiring.circuits.items():
            if self.wiring.kind(self.wiring.node(circuit.supply)) == kind and end in self.wiring.ends(
                circuit
            ):
                return self._wire(name)
        return None

    # ---- charging

    def _lanes(self) -> Iterator[Lane]:
        """One lane for each converter, and one for each source tied straight to the bank."""
        for key, item in self.sheets.build.items.items():
            if item.kind not in _CONVERTERS:
                continue
            second = self._joined("battery", key)
            joined = next(self._between("12 V bus", key), None) if second is None else None
            feeding = next((name for name in self._into(key) if name not in self.drawn), None)
            if feeding is None and second is None and joined is None:
                continue
            source, first = self._source(feeding, key)
            joins = f"to bus, {self.numbers[joined]}" if joined is not None else ""
            yield Lane(source, first, Box((item.name, *self._converter(key))), second, joins)
        for name in list(self._at("tow plug")):
            if name not in self.drawn:
                yield Lane(Box(("TOW PLUG", "charge lead")), self._wire(name), None, None)

    def _between(self, one: str, other: str) -> Iterator[str]:
        """The runs between two nodes, whichever end they are written from."""
        for start, end in ((one, other), (other, one)):
            yield from (
                name for name in self._at(start) if end in self.wiring.ends(self.wiring.circuits[name])
            )

    def _joined(self, one: str, other: str) -> Wire | None:
        """The run between two nodes, whichever end it is written from."""
        return next((self._wire(name) for name in self._between(one, other)), None)

    def _into(self, key: str) -> Iterator[str]:
        """The runs that feed a converter; those to the bank or the bus are what it charges."""
        for name, circuit in self.wiring.circuits.items():
            if key in self.wiring.ends(circuit) and self.wiring.node(circuit.supply) not in _CHARGED:
                yield name

    def _source(self, name: str | None, key: str) -> tuple[Box, Wire | None]:
        """The box a converter's run starts at, and the run; a panel's branch is drawn as a row instead."""
        if name is None:
            solar = self.wiring.kind(key) == "controller"
            return Box(self._solar() if solar else ("source", "not given")), None
        circuit = self.wiring.circuits[name]
        node = self.wiring.node(circuit.supply)
        if node == "120 V panel":
            return Box((f"from {self.numbers[name]}", node)), None
        return self._source_box(node), self._wire(name)

    def _source_box(self, node: str) -> Box:
        shore, kind = self.sheets.build.electrical.shore, self.wiring.kind(node)
        if node == "shore inlet":
            rating = (
                f"{shore.rating.text}, 120 V" if shore is not None and shore.rating is not None else "120 V"
            )
            return Box(("SHORE INLET", rating, "N-G bond at the site"))
        if node == "tow plug":
            return Box(("TOW PLUG", "charge lead"))
        if kind == "generator":
            generator = self.sheets.build.electrical.generator
            rating = generator.rating.text if generator is not None and generator.rating is not None else ""
            bond = self.sheets.build.electrical.bonds.generator or "not told"
            return Box(tuple(line for line in ("GENERATOR", rating, f"N-G bond: {bond}") if line))
        if kind == "solar":
            return Box(self._solar())
        return Box((called(self.wiring, node),))

    def _solar(self) -> tuple[str, ...]:
        panels = sum(item.kind == "solar" for item in self.sheets.build.items.values())
        return ("SOLAR", f"{panels} panel{'s' if panels > 1 else ''}") if panels else ("SOLAR",)

    def _converter(self, key: str) -> Iterator[str]:
        for charger in self.sheets.build.battery.chargers.values() if self.sheets.build.battery else ():
            if (charger.item or "").removeprefix("items.") == key and charger.current is not None:
                yield f"{charger.current.text} out"

    # ---- the bank, the bus, the inverter, the panel

    def _bank(self) -> Box:
        known = self.sheets.figures
        lines = ["BATTERY"]
        nominal, held = known.get("battery.nominal_voltage"), known.get("battery.rated_capacity")
        size = [shown(one, self.system, 3) for one in (nominal, held) if one is not None]
        if size:
            lines.append(", ".join(size))
        if self.wiring.lithium:
            lines += ["lithium iron", "phosphate"]
        fault = known.get("battery.fault_current")
        lines.append("fault not known" if fault is None else f"fault {kiloamperes(float(fault))}")
        return Box(tuple(lines))

    def _bus(self) -> str:
        on_bus = [self.rows[name] for name in self._at("12 V bus") if name in self.rows]
        found = [row.fault_at_fuse for row in on_bus if row.fault_at_fuse is not None]
        return f"12 V BUS, fault {kiloamperes(max(found))}" if found else "12 V BUS"

    def _inverter(self) -> Box | None:
        section = self.sheets.build.electrical.inverter
        if section is None:
            nodes = {node for one in self.wiring.circuits.values() for node in self.wiring.ends(one)}
            wired = any(self.wiring.kind(node) == "inverter" for node in nodes)
            return Box(("INVERTER", "not described")) if wired else None
        bonds = {"relay": "N-G bond: its relay", "jumper": "N-G bond: a jumper", "none": "no N-G bond"}
        bond = bonds.get(self.sheets.build.electrical.bonds.inverter or "", "N-G bond: not told")
        rating = "" if section.rating is None else section.rating.text
        surge = "" if section.surge is None else f"{section.surge.text} surge"
        lines = ["INVERTER", f"{rating} {section.wave or ''}".strip(), surge, bond]
        return Box(tuple(line for line in lines if line))

    def _others(self) -> Iterator[Feed]:
        """What else feeds the panel: shore power, a generator."""
        for name, circuit in self.wiring.circuits.items():
            if name not in self.drawn and "120 V panel" in self.wiring.ends(circuit):
                yield Feed(self._source_box(self.wiring.node(circuit.supply)), self._wire(name))

    def _branches(self, *, mains: bool) -> Iterator[Row]:
        """The circuits that are not drawn elsewhere, as rows."""
        home = "120 V panel" if mains else "12 V bus"
        outlets = mains and not any(self._at(home))
        for name, circuit in self.wiring.circuits.items():
            if name in self.drawn or self.wiring.is_mains(circuit) != mains:
                continue
            start = self.wiring.node(circuit.supply)
            beside = start == home or (outlets and self.wiring.kind(start) == "inverter")
            far = "" if beside else f" (from {called(self.wiring, circuit.supply)})"
            loads = ", ".join(called(self.wiring, one) for one in circuit.feeds)
            wire = self._wire(name)
            if circuit.gfci:
                wire = replace(wire, near=f"{wire.near}, GFCI", short=f"GFCI {wire.short}")
            inward = (
                any(self.wiring.kind(end) in _CONVERTERS for end in self.wiring.ends(circuit)) and not mains
            )
            load = f"from {loads}" if inward else f"{loads}{far}"
            yield Row(wire, load, self._power(circuit.feeds), circuit.receptacles, inward)

    def _power(self, names: list[str]) -> str:
        """The power of all that a branch feeds, where all of it is known."""
        found = [self.wired.loads.get(self.wiring.node(name)) for name in names]
        power = [float(load.power) for load in found if load is not None]
        return self._shown(sum(power), "W", 3) if power and len(power) == len(names) else ""

    def _ground(self, field: str, says: str) -> str:
        wire = getattr(self.sheets.build.electrical, field)
        return f"{says}, {wire.text}" if wire is not None else says

    def _shown(self, value: float, unit: str, digits: int = 4) -> str:
        return show(value, unit, system=self.system, digits=digits)


def kiloamperes(current: float) -> str:
    """Return a fault current as it is lettered.

    >>> kiloamperes(27204.0), kiloamperes(865.0)
    ('27.2 kA', '865 A')
    """
    return f"{current / 1000:.3g} kA" if current >= 1000 else f"{current:.3g} A"
