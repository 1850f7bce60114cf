"""A short circuit: what flows at a fuse and at the end of a run, and whether fuse and wire can stand it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from curbwright import data, units
from curbwright.equations import circuits as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.circuits.wiring import Wiring


@dataclass
class Fault:
    """The fault currents of one run; ``area`` is what its wire needs to stand one, where known."""

    name: str
    at_fuse: Figure | None = None
    clearing: Figure | None = None
    area: Figure | None = None
    at_end: Figure | None = None
    interrupt: Figure | None = None
    _wiring: Wiring | None = None
    _above: Sequence[Figure] = ()

    def finish(self, area: Figure, cold: Figure, sheet: Worksheet) -> None:
        """Write what needs the wire itself: how long it stands the fault, and the fault at its end."""
        with sheet.attempt():
            if self.at_fuse is None or self._wiring is None:
                return
            sheet.work("withstand", f"{self.name}: time its wire stands it", eq.withstand_time, area=area,
                       current=self.at_fuse)  # fmt: skip
            self.at_end = _further(self._wiring, "at_end", f"{self.name}: fault current at its end",
                                   [*self._above, cold], sheet)  # fmt: skip


def fault(wiring: Wiring, name: str, above: Sequence[Figure], rating: Figure, sheet: Worksheet) -> Fault:
    """Write the fault current at a circuit's fuse and what the fuse can break, where the battery feeds it."""
    circuit = wiring.circuits[name]
    found = Fault(circuit.name, _wiring=wiring, _above=above)
    source = wiring.node(wiring.circuits[wiring.path(name)[0]].supply)
    if wiring.is_mains(circuit):
        sheet.note("On 120 V the site's fault current decides; an inverter cannot trip a breaker by a short.")
        return found
    if source != "battery":
        sheet.note("Its source limits the current itself, or stands on the tow vehicle.")
        return found
    with sheet.attempt():
        found.at_fuse = _further(
            wiring, "at_fuse", f"{circuit.name}: fault current at its fuse", above, sheet
        )
        asked = _enough(wiring, "the fault current", found.at_fuse, sheet)
        sheet.smallest("asked", f"{circuit.name}: interrupt rating asked of its fuse", asked)
    with sheet.attempt():
        row = _type(circuit.fuse_type, f"{circuit.path}.fuse_type", circuit.name)
        found.interrupt = sheet.tabled(
            "interrupt", f"{circuit.name}: what its fuse can break", _read(row["interrupt"], "current"), "A",
            source=row["source"], row=f"{row['type']}, {row['how']}",
        )  # fmt: skip
        if found.at_fuse is not None:
            found.clearing = _clearing(found, row, rating, sheet)
            found.area = sheet.work(
                "area", f"{circuit.name}: area that stands it", eq.area_to_withstand, shown="kcmil|mm2",
                current=found.at_fuse, time=found.clearing,
            )  # fmt: skip
    return found


def _enough(wiring: Wiring, says: str, current: Figure, sheet: Worksheet) -> dict[str, Figure]:
    """What is asked of a fuse: a current, or what the marine rule takes as enough beside any lithium bank."""
    cases = {says: current}
    if wiring.lithium:
        cases["a 20 kA device"] = sheet.tabled(
            "enough", "interrupt rating that is enough beside any lithium bank", 20000.0, "A",
            source="marine-interrupt-lithium", row="where its own figure is over 10 kA",
        )  # fmt: skip
    return cases


def _clearing(found: Fault, row: Mapping[str, str], rating: Figure, sheet: Worksheet) -> Figure:
    assert found.at_fuse is not None  # noqa: S101 - the caller has looked
    through, fastest = (
        sheet.tabled(id, f"{found.name}: {says}", _read(row[id], "time"), "s", source="trade-practice",
                     row=row["type"])
        for id, says in (("let_through", "its fuse's I²t over its rating squared"),
                         ("fastest", "its fuse's least time"))
    )  # fmt: skip
    return sheet.work(
        "clearing", f"{found.name}: time its fuse takes", eq.clearing_time, let_through=through,
        rating=rating, fault_current=found.at_fuse, fastest=fastest,
    )  # fmt: skip


def main_fuses(wiring: Wiring, faults: Mapping[str, Fault], sheet: Worksheet) -> None:
    """Write, for every fuse at the battery, the interrupt rating wanted of it with a quarter over."""
    for name, one in faults.items():
        circuit = wiring.circuits[name]
        if wiring.node(circuit.supply) != "battery" or one.at_fuse is None:
            continue
        below = sheet.section(name, f"{circuit.name}: fuse at the battery")
        with below.attempt():
            over = below.work("over", f"{circuit.name}: its fault current and a quarter", eq.interrupt_wanted,
                              fault_current=one.at_fuse)  # fmt: skip
            below.smallest(
                "wanted",
                f"{circuit.name}: interrupt rating wanted",
                _enough(wiring, "a quarter over", over, below),
            )
            if one.interrupt is None:
                raise MissingInput(f"{circuit.path}.fuse_type", f"{circuit.name}: kind of fuse not given")
            below.largest("interrupt", f"{circuit.name}: what its fuse can break",
                          {"its kind": one.interrupt})  # fmt: skip


def _further(wiring: Wiring, id: str, name: str, runs: Sequence[Figure], sheet: Worksheet) -> Figure:
    """The fault current behind some runs of wire."""
    says = "the bank's fault current is not known yet"
    short = wiring.from_sheet("battery.fault_current", "battery", says)
    if not runs:
        return sheet.largest(id, name, {"at the battery": short})
    source = wiring.from_sheet("battery.resistance", "battery", "the bank's resistance is not known yet")
    run = sheet.total(f"{id}_run", f"{name}: wire on the way", runs)
    contacts = sheet.total(
        f"{id}_contacts", f"{name}: joints on the way", [wiring.constants.contacts] * len(runs)
    )
    return sheet.work(
        id, name, eq.fault_further, fault_current=short, source=source, run=run, contacts=contacts
    )


def _type(name: str | None, path: str, circuit: str) -> Mapping[str, str]:
    if name is None:
        raise MissingInput(path, f"{circuit}: kind of fuse not given")
    return data.table("circuits/fuse_types").row(name)


def _read(text: str, kind: str) -> float:
    return float(units.read(text, kind))
