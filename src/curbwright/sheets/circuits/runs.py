"""One run of wire: its current, its fuse, the wire it needs and why, what it may carry, what it loses."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright.build.circuits import Circuit
from curbwright.equations import circuits as eq
from curbwright.errors import MissingInput
from curbwright.figures import Entry, Figure, Worksheet
from curbwright.sheets.circuits.choosing import Needs, choose
from curbwright.sheets.circuits.currents import Fed
from curbwright.sheets.circuits.faults import Fault, fault
from curbwright.sheets.circuits.sizes import Carrying, Size, basis_of, bundle_factor, named, next_size
from curbwright.units import read

_BASE = "86 F"
"""Both ampacity tables hold at 30 °C."""


@dataclass(frozen=True)
class Run:
    """What the rest of the sheet, the wire schedule and the one-line diagram take from one circuit.

    ``needed`` is the size the tool would choose and ``governing`` why; ``size`` the one in use: as given, or
    ``needed``. ``cold`` is its resistance out and back at 24 °C, ``share`` its own drop on the judged basis.
    """

    name: str
    circuit: Circuit
    mains: bool
    basis: str
    current: Figure
    design: Figure
    fuse: Figure
    size: Size
    needed: Size
    governing: str
    allowed: Figure
    cold: Figure
    share: Figure
    total: Figure
    limit: Figure
    fault: Fault


def runs(fed: Fed, sheet: Worksheet, faults: Worksheet) -> dict[str, Run]:
    """Write every circuit, feeders before what they feed; one whose inputs are missing stands in the gaps."""
    wiring, done = fed.wiring, dict[str, Run]()
    for name in sorted(wiring.circuits, key=lambda one: len(wiring.path(one))):
        title = wiring.circuits[name].name
        below, beside = sheet.section(name, title), faults.section(name, f"{title}: a fault")
        with below.attempt():
            done[name] = _Writer(fed, name, done, below).run(beside)
    return {name: done[name] for name in wiring.circuits if name in done}


class _Writer:
    """Writes the lines of one circuit."""

    def __init__(self, fed: Fed, name: str, done: dict[str, Run], sheet: Worksheet) -> None:
        self.fed, self.wiring, self.name, self.sheet = fed, fed.wiring, name, sheet
        self.circuit = fed.wiring.circuits[name]
        self.mains = fed.wiring.is_mains(self.circuit)
        self.basis = basis_of(self.circuit, self.mains)
        self.above = [self._known(other, done) for other in fed.wiring.path(name)[:-1]]

    def _known(self, other: str, done: dict[str, Run]) -> Run:
        if other not in done:
            raise MissingInput(
                f"circuits.{other}", f"{self.circuit.name}: its feeder {other} is not worked out"
            )
        return done[other]

    def run(self, faults: Worksheet) -> Run:
        sheet, circuit = self.sheet, self.circuit
        voltage = self._voltage()
        current = self.fed.current(self.name, voltage, sheet)
        design = self._design(current)
        least = next_size(
            "least_fuse", f"{circuit.name}: least fuse", design,
            "breaker_sizes" if self.mains else "fuse_sizes", f"{circuit.path}.fuse", sheet,
        )  # fmt: skip
        fuse = least
        if circuit.fuse is not None:
            fuse = sheet.given(circuit["fuse"])
        fuse = sheet.largest("fuse", f"{circuit.name}: fuse", {
            "as given" if circuit.fuse is not None else "as chosen, fit one": fuse
        })  # fmt: skip
        found = fault(self.wiring, self.name, [one.cold for one in self.above], fuse, faults)
        carrying = self._carrying()
        spent = self._spent()
        needs = Needs(
            circuit, carrying, self.basis, fuse, current, voltage, spent, self._resistivity(), found.area
        )
        chosen = choose(needs, sheet)
        size = chosen.size if circuit.wire is None else self._as_given()
        return self._finished(needs, design, size, chosen.size, chosen.governing, found, faults)

    def _finished(
        self, needs: Needs, design: Figure, size: Size, needed: Size, governing: str, found: Fault,
        faults: Worksheet,
    ) -> Run:  # fmt: skip
        sheet, circuit = self.sheet, self.circuit
        area = self._area(needs, size)
        allowed = self._allowed(needs.carrying, size)
        cold, share = self._drop(needs, area)
        total = share
        if needs.spent is not None:
            total = sheet.total("total_share", f"{circuit.name}: drop from the source on",
                                [*(one.share for one in self.above), share], shown="%")  # fmt: skip
        else:
            total = sheet.largest("total_share", f"{circuit.name}: drop from the source on",
                                  {"this run alone": share}, shown="%")  # fmt: skip
        found.finish(area, cold, faults)
        limit = sheet.figures()[f"{sheet.id}.drop_limit"]
        return Run(
            self.name, circuit, self.mains, self.basis, needs.current, design, needs.fuse, size, needed,
            governing, allowed, cold, share, total, limit, found,
        )  # fmt: skip

    def _area(self, needs: Needs, size: Size) -> Figure:
        """The area of the wire in use: of the gauge given, on its basis, or of the size chosen."""
        circuit, sheet = self.circuit, self.sheet
        name = f"{circuit.name}: its wire"
        if circuit.wire is None:
            chosen = sheet.figures()[f"{sheet.id}.least_area"]
            return sheet.largest("area", name, {f"{size.name}, as chosen": chosen}, shown="AWG")
        given = Entry(size.area, f"{name} by {self.basis} areas", "m**2", f"{circuit.path}.wire",
                      circuit.wire.text, shown="kcmil|mm2")  # fmt: skip
        return sheet.largest("area", name, {f"{size.name}, as given": sheet.given(given)}, shown="kcmil|mm2")

    def _voltage(self) -> Figure:
        if self.circuit.voltage is not None:
            return self.sheet.given(self.circuit["voltage"])
        volts = self.wiring.volts(self.circuit)
        if volts is None:
            raise MissingInput(
                f"{self.circuit.path}.voltage", f"{self.circuit.name}: its voltage is not given"
            )
        return self.wiring.constants.mains if self.mains else self.wiring.constants.low

    def _design(self, current: Figure) -> Figure:
        name = f"{self.circuit.name}: current it is made for"
        if self.fed.continuous(self.name):
            return self.sheet.work("design", name, eq.continuous_current, current=current)
        return self.sheet.largest("design", name, {"less than three hours": current})

    def _resistivity(self) -> Figure:
        known = self.wiring.constants
        return known.hot if self.wiring.build.electrical.drop_basis == "75 C" else known.cool

    def _carrying(self) -> Carrying:
        circuit, sheet = self.circuit, self.sheet
        insulation = sheet.given(self._insulation())
        base = sheet.tabled("base", "air that the ampacity table holds in", float(read(_BASE, "temperature")),
                            "K", source="nec-310-16" if self.mains else "cfr-33-183-425")  # fmt: skip
        hot = sheet.work(
            "hot", f"{circuit.name}: share left in its hot space", eq.hot_space_factor, shown="%",
            insulation=insulation, space=sheet.given(circuit["space"]), base=base,
        )  # fmt: skip
        return Carrying(
            self.mains, circuit.insulation, circuit.terminals or ("60 C" if self.mains else None), hot,
            bundle_factor(circuit, self.mains, sheet), self._cap(),
        )  # fmt: skip

    def _insulation(self) -> Entry:
        """The temperature that the word for the insulation stands for."""
        circuit = self.circuit
        assumed = "insulation" not in circuit.model_fields_set
        return Entry(
            float(read(circuit.insulation, "temperature")), f"{circuit.name}: its insulation", "K",
            f"{circuit.path}.insulation", circuit.insulation, "practice" if assumed else "", assumed,
        )  # fmt: skip

    def _cap(self) -> str:
        """The column of fuses that small wires may have: on 120 V always, on 12 V under article 552."""
        if self.mains:
            return "mains"
        return "low_voltage_552" if self.wiring.build.place.electrical_basis == "552" else ""

    def _spent(self) -> Figure | None:
        if not self.above:
            return None
        return self.sheet.total("spent", f"{self.circuit.name}: drop of its feeders",
                                [one.share for one in self.above], shown="%")  # fmt: skip

    def _as_given(self) -> Size:
        wire = self.circuit.wire
        assert wire is not None  # noqa: S101 - the caller has looked
        try:
            return named(wire, self.basis)
        except MissingInput as missing:
            raise MissingInput(f"{self.circuit.path}.wire", f"{self.circuit.name}: {missing.says}") from None

    def _allowed(self, carrying: Carrying, size: Size) -> Figure:
        sheet, name = self.sheet, self.circuit.name
        cases: dict[str, Figure] = {}
        for label, (amperes, source, row) in carrying.rows(size.name).items():
            id = label.replace(" ", "_")
            limit = sheet.tabled(f"ampacity_{id}", f"{name}: {label}", amperes, "A", source=source, row=row)
            if label == "table":
                limit = sheet.work(
                    "corrected", f"{name}: in its space and bundle", eq.corrected_ampacity, ampacity=limit,
                    hot=carrying.hot, bundle=carrying.bundle,
                )  # fmt: skip
            cases[{"table": "space and bundle"}.get(label, label)] = limit
        if "space and bundle" not in cases:
            raise MissingInput(
                f"{self.circuit.path}.wire", f"{name}: {size.name} has no ampacity with this insulation"
            )
        return sheet.smallest("allowed", f"{name}: what its wire may carry", cases)

    def _drop(self, needs: Needs, area: Figure) -> tuple[Figure, Figure]:
        """Drop on both bases, both printed: the cold resistance, and the share on the judged basis."""
        sheet, name, known = self.sheet, self.circuit.name, self.wiring.constants
        length = sheet.given(self.circuit["length"])
        shares: dict[str, Figure] = {}
        cold: Figure | None = None
        for id, says, resistivity in (("24", "24 °C", known.cool), ("75", "75 °C", known.hot)):
            each = sheet.work(f"resistance_{id}", f"{name}: its wire at {says}", eq.resistance_per_length,
                              resistivity=resistivity, area=area)  # fmt: skip
            lost = sheet.work(f"drop_{id}", f"{name}: drop, copper at {says}", eq.drop, current=needs.current,
                              length=length, resistance=each)  # fmt: skip
            shares[f"{id} C"] = sheet.work(
                f"share_{id}",
                f"{name}: drop as a share, copper at {says}",
                eq.drop_share,
                shown="%",
                drop=lost,
                voltage=needs.voltage,
            )
            if cold is None:
                cold = sheet.work("cold", f"{name}: out and back at 24 °C", eq.run_resistance, length=length,
                                  resistance=each)  # fmt: skip
        assert cold is not None  # noqa: S101 - the first round gave it
        basis = self.wiring.build.electrical.drop_basis
        return cold, sheet.largest("share", f"{name}: drop as judged", {f"copper at {basis}": shares[basis]},
                                   shown="%")  # fmt: skip
