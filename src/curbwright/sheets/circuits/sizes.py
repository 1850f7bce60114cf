"""The wire table as the sheet uses it: rows with their areas, what each may carry, the next standard size."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from curbwright import data, units
from curbwright.build.circuits import Circuit
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.units import Measure

SMALLEST = {"single": "16 AWG", "sheathed": "18 AWG", "mains": "14 AWG"}


@dataclass(frozen=True)
class Size:
    """One size of wire on one basis of areas: its name and its area in m²."""

    name: str
    area: float
    source: str


def sizes(basis: str) -> list[Size]:
    """Return the sizes made to a basis of areas, AWG or SAE, the smallest first."""
    column = "awg_area" if basis == "AWG" else "sae_area"
    source = "nec-9-8" if basis == "AWG" else "sae-wire-areas"
    return [
        Size(row["size"], float(units.read(row[column], "wire_size")), source)
        for row in data.table("circuits/wire")
        if row[column]
    ]


def basis_of(circuit: Circuit, mains: bool) -> str:
    """Return whose areas a circuit's wire is made to: as given, else the usual and safe one."""
    return circuit.area_basis or ("AWG" if mains else "SAE")


def named(wire: Measure, basis: str) -> Size:
    """Return the size that a wire of the build file is: its gauge, or the next below its area.

    Raises MissingInput for a wire smaller than any, or of a gauge that the basis lacks.
    """
    known = sizes(basis)
    for size in known:
        if abs(float(units.read(size.name, "wire_size")) - float(wire)) < 0.01 * float(wire):
            return size
    below = [size for size in known if size.area <= float(wire)]
    if not below or "AWG" in wire.text.upper():
        raise MissingInput("", f"{wire.text} is no size of the {basis} table: 18 AWG to 4/0 AWG")
    return below[-1]


@dataclass(frozen=True)
class Carrying:
    """What decides how much the sizes of one circuit may carry."""

    mains: bool
    insulation: str
    terminals: str | None
    hot: Figure
    bundle: Figure
    cap_column: str
    """Column of small_wire_fuses that applies, or nothing."""

    @property
    def table(self) -> str:
        """The ampacity table in use."""
        return "circuits/ampacity_mains" if self.mains else "circuits/ampacity_low_voltage"

    @property
    def column(self) -> str:
        """The insulation's column; the mains table ends at 90 °C."""
        return "90 C" if self.mains and self.insulation == "105 C" else self.insulation

    def rows(self, size: str) -> dict[str, tuple[float, str, str]]:
        """Return each limit on one size, before hot space and bundle: amperes, source, row."""
        row = _row(self.table, size)
        found: dict[str, tuple[float, str, str]] = {}
        for label, column in (("table", self.column), ("terminals", self.terminals or "")):
            if row.get(column):
                found[label] = (_amperes(row[column]), row["source"], f"{size}, {column} column")
        cap = _row("circuits/small_wire_fuses", size).get(self.cap_column, "") if self.cap_column else ""
        if cap:
            source = "nec-310-16" if self.cap_column == "mains" else "recalled"
            says = "240.4(D)" if self.cap_column == "mains" else "552.10(E)(1), recalled"
            found["small wire"] = (_amperes(cap), source, f"{size}, {says}")
        return found

    def allowed(self, size: str) -> float:
        """Return what one size may carry, in amperes; nothing where the table has no row for it."""
        limits = {label: amperes for label, (amperes, _, _) in self.rows(size).items()}
        if "table" not in limits:
            return 0.0
        limits["table"] *= float(self.hot) * float(self.bundle)
        return min(limits.values())


def _row(table: str, size: str) -> Mapping[str, str]:
    return next((row for row in data.table(table) if row["size"] == size), {})


def _amperes(text: str) -> float:
    return float(units.read(text, "current"))


def next_size(id: str, name: str, wanted: Figure, table: str, path: str, sheet: Worksheet) -> Figure:
    """Write the first standard fuse or breaker that is no smaller than a current."""
    for row in data.table(f"circuits/{table}"):
        rating = _amperes(row["rating"])
        if rating >= float(wanted) * (1 - 1e-9):
            return sheet.tabled(id, name, rating, "A", source=row["source"],
                                row=f"first standard size at or above {float(wanted):.4g} A")  # fmt: skip
    raise MissingInput(path, f"{name}: no standard size reaches {float(wanted):.4g} A; divide the load")


def bundle_factor(circuit: Circuit, mains: bool, sheet: Worksheet) -> Figure:
    """Write what bundling leaves of a wire's ampacity."""
    column = "mains" if mains else "low_voltage"
    count = sheet.given(circuit["bundled"])
    for row in data.table("circuits/bundling"):
        if float(count) <= float(row["conductors_up_to"]):
            how = row["source"].split()[-1] if mains else "marine-bundling"
            return sheet.tabled("bundle", "share left in its bundle", float(row[column]), "1", source=how,
                                row=f"up to {row['conductors_up_to']} conductors", shown="%")  # fmt: skip
    raise MissingInput(f"{circuit.path}.bundled", "no factor is at hand for so many conductors in a bundle")
