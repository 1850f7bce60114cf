"""The wire schedule: a row for each circuit with its number, its ends, its wire and fuse, its labels."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from curbwright import data
from curbwright.build import kinds
from curbwright.build.cart import Build
from curbwright.figures import Figure
from curbwright.sheets.circuits import Wired, work_circuits
from curbwright.sheets.circuits.runs import Run
from curbwright.sheets.circuits.wiring import Wiring

LETTERS = {"tow": "T", "mains": "A", "low": "D"}
_LONGEST = 14
"""Letters of a name on a label: it is wrapped around a wire."""


@dataclass(frozen=True)
class WireRow:
    """One run of wire as the schedule prints it; quantities are SI.

    ``label_from`` and ``label_to`` are what stands on the ungrounded wire at its two ends, each naming the
    other end; ``label_return`` stands on the wire back. ``needed`` is the size the tool would choose and
    ``governing`` the criterion that asked for it.
    """

    number: str
    circuit: str
    name: str
    start: str
    end: str
    bus: str
    running: float
    design: float
    fuse: float
    fuse_type: str
    fuse_given: bool
    wire: str
    wire_given: bool
    basis: str
    insulation: str
    colour: str
    length: float
    drop_share: float
    drop_limit: float
    ampacity: float
    needed: str
    governing: str
    bundled: int
    fault_at_fuse: float | None
    label_from: str
    label_to: str
    label_return: str


def wire_schedule(build: Build, figures: Mapping[str, Figure]) -> tuple[WireRow, ...]:
    """Return the rows of every circuit that could be worked out, in the order of the build file.

    ``figures`` are those of every sheet, or at least of the battery's.
    """
    return rows_of(work_circuits(build, figures))


def rows_of(wired: Wired) -> tuple[WireRow, ...]:
    """Return the rows of a worked circuits sheet."""
    if wired.wiring is None:
        return ()
    numbers = numbered(wired.wiring)
    return tuple(_row(wired.wiring, numbers[name], run) for name, run in wired.runs.items())


def numbered(wiring: Wiring) -> dict[str, str]:
    """Return the number of every circuit: a letter for its supply and its place among that supply's."""
    counted = dict.fromkeys(LETTERS.values(), 0)
    found: dict[str, str] = {}
    for name, circuit in wiring.circuits.items():
        tow = wiring.node(circuit.supply) == "tow plug"
        letter = LETTERS["tow" if tow else "mains" if wiring.is_mains(circuit) else "low"]
        counted[letter] += 1
        found[name] = f"{letter}{counted[letter]:02d}"
    return found


def _row(wiring: Wiring, number: str, run: Run) -> WireRow:
    circuit = run.circuit
    start, end = called(wiring, circuit.supply), ", ".join(called(wiring, one) for one in circuit.feeds)
    colour, code = _colour(wiring, run)
    back = "120 V neutral" if run.mains else "12 V negative"
    fuse = f"{float(run.fuse):g}A"
    gauge = run.size.name.removesuffix(" AWG")
    sign, other = ("", "N") if run.mains else ("+", "-")
    return WireRow(
        number=number, circuit=run.name, name=circuit.name, start=start, end=end,
        bus="120 V" if run.mains else "12 V", running=float(run.current), design=float(run.design),
        fuse=float(run.fuse), fuse_type=circuit.fuse_type or "", fuse_given=circuit.fuse is not None,
        wire=run.size.name, wire_given=circuit.wire is not None, basis=run.basis,
        insulation=circuit.insulation, colour=colour, length=float(circuit.length or 0.0),
        drop_share=float(run.total), drop_limit=float(run.limit), ampacity=float(run.allowed),
        needed=run.needed.name, governing=run.governing, bundled=circuit.bundled,
        fault_at_fuse=None if run.fault.at_fuse is None else float(run.fault.at_fuse),
        label_from=f"{number}{sign} {_short(end)} {gauge} {code} {fuse}",
        label_to=f"{number}{sign} {_short(start)} {gauge} {code} {fuse}",
        label_return=f"{number}{other} {_short(end)} {gauge} {_colours()[back][1]}",
    )  # fmt: skip


def called(wiring: Wiring, name: str) -> str:
    """Return what to call an end of a circuit: an item's label, or the place."""
    item = wiring.build.items.get(name.removeprefix("items."))
    return item.name if item is not None else name


def _short(name: str) -> str:
    return name.upper()[:_LONGEST].rstrip(" ,")


def _colours() -> dict[str, tuple[str, str]]:
    return {row["wire"]: (row["colour"], row["code"]) for row in data.table("circuits/colours")}


def _colour(wiring: Wiring, run: Run) -> tuple[str, str]:
    """The colour of the ungrounded wire and its letters: as given, else by what the circuit feeds."""
    known = _colours()
    if run.circuit.colour is not None:
        codes = dict(known.values())
        return run.circuit.colour, codes.get(run.circuit.colour, run.circuit.colour[:2].upper())
    if run.mains:
        return known["120 V hot"]
    return known[next(_uses(wiring, run), "12 V accessories")]


def _uses(wiring: Wiring, run: Run) -> Iterator[str]:
    for node in wiring.ends(run.circuit):
        item = wiring.build.items.get(node)
        if item is None or kinds.find(item.kind).is_("supply"):
            yield "12 V positive"
        elif item.kind in ("pump", "light"):
            yield {"pump": "12 V pump", "light": "12 V lights"}[item.kind]
