"""The notes beside the one-line diagram: basis, areas, temperature, faults, the one bond, loads."""

from __future__ import annotations

from collections.abc import Iterator

from curbwright.drawings.one_line.contents import kiloamperes
from curbwright.figures.printing import shown
from curbwright.sheets import Worksheets
from curbwright.sheets.circuits.schedule import WireRow, wire_schedule

_BASIS = {
    "none": "none: common practice and the marine low-voltage rules",
    "general": "the electrical code at large",
    "551": "article 551, recreational vehicles",
    "552": "article 552, park trailers",
    "525": "article 525, fairs",
}
_MODES = {"shore": "shore power", "inverter": "the inverter", "generator": "the generator"}


def one_line_notes(sheets: Worksheets) -> tuple[str, ...]:
    """Return the notes beside the diagram."""
    return tuple(_notes(sheets, wire_schedule(sheets.build, sheets.figures)))


def _notes(sheets: Worksheets, rows: tuple[WireRow, ...]) -> Iterator[str]:
    build = sheets.build
    basis = build.place.electrical_basis
    told = _BASIS[basis] if basis is not None else "not told"
    yield f"Electrical basis: {told}; verify with the edition the authority has adopted."
    bases = ", ".join(sorted({f"{row.bus} by {row.basis} areas" for row in rows}))
    heat = build.electrical.drop_basis
    yield f"Copper, {bases}. Drop judged at {heat}, of 12.0 or 120 V. Lengths one way."
    yield (
        "D: 12 V, A: 120 V, T: tow vehicle; the numbers stand on the labels at both ends of every wire."
        " A box on a run is a fuse, an arc a breaker."
    )
    if any(not row.wire_given or not row.fuse_given for row in rows):
        yield "* chosen by calculation: to buy and to fit."
    fault = sheets.figures.get("battery.fault_current")
    if fault is not None:
        fitted = {row.fuse_type for row in rows if row.fault_at_fuse is not None and row.fuse_type}
        kinds = ", ".join(sorted(fitted)) or "not told"
        yield f"Available fault current {kiloamperes(float(fault))} at the battery. Fuses: {kinds}."
    yield from _bonds(sheets)
    yield from _loads(sheets)
    yield from _disconnects(sheets, rows)
    yield "A design aid: 120 V work by a licensed electrician, inspected before use."


def _disconnects(sheets: Worksheets, rows: tuple[WireRow, ...]) -> Iterator[str]:
    """Which item disconnects which circuits."""
    build, found = sheets.build, dict[str, list[str]]()
    for row in rows:
        switch = build.circuits[row.circuit].switch
        if switch is not None:
            name = build.items[switch.removeprefix("items.")].name
            found.setdefault(name, []).append(row.number)
    told = "; ".join(f"{name}: {', '.join(numbers)}" for name, numbers in found.items())
    yield f"Disconnects: {told or 'none given'}."


def _bonds(sheets: Worksheets) -> Iterator[str]:
    """In how many places neutral meets ground, for each way of running."""
    counts = {
        says: int(sheets.figures[f"circuits.bonds.{mode}.count"])
        for mode, says in _MODES.items()
        if f"circuits.bonds.{mode}.count" in sheets.figures
    }
    if counts:
        told = ", ".join(f"on {says} {count}" for says, count in counts.items())
        yield f"Places where neutral meets ground: {told}; one is right. Equipment ground runs through."


def _loads(sheets: Worksheets) -> Iterator[str]:
    """The connected loads and a day's energy from the battery."""
    system = sheets.build.cart.units
    parts = [
        f"{says} {shown(sheets.figures[id], system, 3)}"
        for id, says in (
            ("circuits.demand.connected_12v", "12 V"),
            ("circuits.demand.connected_inverter", "inverter"),
            ("circuits.demand.connected_shore", "shore"),
        )
        if id in sheets.figures
    ]
    energy = sheets.figures.get("circuits.energy_per_day")
    if parts:
        day = f"; {shown(energy, system, 3)} a day from the battery" if energy is not None else ""
        yield f"Connected load: {', '.join(parts)}{day}."
