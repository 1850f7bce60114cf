"""The wire a circuit needs: by its fuse, its drop, the least size, a fault; the largest governs."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from curbwright.build.circuits import Circuit
from curbwright.equations import circuits as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Governing, Worksheet
from curbwright.sheets.circuits.sizes import SMALLEST, Carrying, Size, sizes


@dataclass(frozen=True)
class Needs:
    """What one circuit's wire has to meet."""

    circuit: Circuit
    carrying: Carrying
    basis: str
    fuse: Figure
    current: Figure
    voltage: Figure
    spent: Figure | None
    """Share of the voltage that the feeders lose, where there are any."""
    resistivity: Figure
    withstand: Figure | None
    """Area that stands a fault until the fuse clears, where the fault current is known."""


@dataclass(frozen=True)
class Chosen:
    """The size that meets everything, its area, and the criterion that asked for the most."""

    size: Size
    area: Figure
    governing: str


def choose(needs: Needs, sheet: Worksheet) -> Chosen:
    """Write each criterion's size and the largest of them; raises MissingInput where none is enough."""
    cases = {
        "carrying its fuse": _by_fuse(needs, sheet),
        "voltage drop": _by_drop(needs, sheet),
        "least size allowed": smallest(needs.circuit, needs.carrying.mains, needs.basis, sheet),
    }
    if needs.withstand is not None:
        cases["standing a fault"] = _first(
            "for_fault", "size that stands a fault", needs, sheet,
            lambda size: size.area >= float(needs.withstand or 0.0), "first to stand it till the fuse clears",
        )  # fmt: skip
    area = sheet.largest("least_area", f"{needs.circuit.name}: wire it needs", cases, shown="AWG")
    origin = area.origin
    assert isinstance(origin, Governing)  # noqa: S101 - largest gives no other
    size = next(one for one in sizes(needs.basis) if one.area == float(area))
    return Chosen(size, area, origin.chosen)


def smallest(circuit: Circuit, mains: bool, basis: str, sheet: Worksheet) -> Figure:
    """Write the least size that may be used at all."""
    sort = "mains" if mains else "sheathed" if circuit.sheathed else "single"
    name = SMALLEST[sort]
    size = next(one for one in sizes(basis) if one.name == name)
    says = {
        "mains": ("recalled", "14 AWG on 120 V, recalled"),
        "sheathed": ("cfr-33-183-425", "18 AWG within a sheath"),
        "single": ("cfr-33-183-425", "16 AWG for single wires"),
    }[sort]
    return sheet.tabled("smallest", "least size allowed", size.area, "m**2", source=says[0], row=says[1],
                        shown="AWG")  # fmt: skip


def _by_fuse(needs: Needs, sheet: Worksheet) -> Figure:
    return _first(
        "for_fuse", "size that carries its fuse", needs, sheet,
        lambda size: needs.carrying.allowed(size.name) >= float(needs.fuse) * (1 - 1e-9),
        "first allowed that much in its space and bundle",
    )  # fmt: skip


def _by_drop(needs: Needs, sheet: Worksheet) -> Figure:
    circuit = needs.circuit
    limit = share_of_drop(circuit, sheet)
    if needs.spent is not None:
        limit = sheet.work("drop_left", f"{circuit.name}: drop its feeders leave", eq.share_left, shown="%",
                           limit=limit, spent=needs.spent)  # fmt: skip
    if float(limit) <= 0:
        raise MissingInput(
            f"{circuit.path}.wire", f"{circuit.name}: its feeder alone loses more than allowed"
        )
    loop = sheet.work("loop", f"{circuit.name}: out and back", eq.loop, length=sheet.given(circuit["length"]))
    allowed = sheet.work("drop_allowed", f"{circuit.name}: drop allowed", eq.drop_allowed, share=limit,
                         voltage=needs.voltage)  # fmt: skip
    wanted = sheet.work(
        "area_for_drop", f"{circuit.name}: area that keeps to it", eq.area_for_drop, shown="kcmil|mm2",
        resistivity=needs.resistivity, current=needs.current, loop=loop, drop=allowed,
    )  # fmt: skip
    return _first(
        "for_drop", "size that keeps to its drop", needs, sheet, lambda size: size.area >= float(wanted),
        "first of at least that area",
    )  # fmt: skip


def share_of_drop(circuit: Circuit, sheet: Worksheet) -> Figure:
    """Write the share of the voltage that may be lost between the source and what a circuit feeds."""
    value, row = (0.03, "3 % where it matters") if circuit.critical else (0.10, "10 % elsewhere")
    return sheet.tabled("drop_limit", "drop from the source on", value, "1", source="marine-drop", row=row,
                        shown="%")  # fmt: skip


def _first(
    id: str, name: str, needs: Needs, sheet: Worksheet, meets: Callable[[Size], bool], says: str
) -> Figure:
    """Write the first size that meets a criterion."""
    for size in sizes(needs.basis):
        if meets(size):
            return sheet.tabled(id, name, size.area, "m**2", source=size.source, shown="AWG",
                                row=f"{size.name} by {needs.basis} areas: {says}")  # fmt: skip
    raise MissingInput(f"{needs.circuit.path}.wire", f"{needs.circuit.name}: no {name}: shorten or divide it")
