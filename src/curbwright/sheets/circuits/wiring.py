"""The wiring as the sections of its sheet share it: constants, and where circuits start and end."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from curbwright import data
from curbwright.build import kinds
from curbwright.build.cart import Build
from curbwright.build.circuits import Circuit
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet

LOW, MAINS = 12.0, 120.0
_PLACE_OF = {"battery": "battery", "bus": "12 V bus", "fuse": "12 V bus", "panel": "120 V panel",
             "inlet": "shore inlet"}  # fmt: skip
"""Items that are one of the places a circuit may name."""
_VOLTS = {"battery": LOW, "12 V bus": LOW, "tow plug": LOW, "120 V panel": MAINS, "shore inlet": MAINS}
_VOLTS_OF_KIND = {"charger": LOW, "controller": LOW, "inverter": MAINS, "generator": MAINS}


@dataclass(frozen=True)
class Constants:
    """Numbers that every part of the sheet takes from practice or a table."""

    low: Figure
    mains: Figure
    day: Figure
    midnight: Figure
    cool: Figure
    """Resistivity of copper at 24 °C, the marine K."""
    hot: Figure
    """Resistivity of copper at 75 °C."""
    contacts: Figure


@dataclass
class Wiring:
    """One build's wiring on its way through the sheet; ``figures`` are those of earlier sheets."""

    build: Build
    figures: Mapping[str, Figure]
    constants: Constants
    lithium: bool | None
    """Whether the bank is lithium iron phosphate; None where that is not told."""
    circuits: Mapping[str, Circuit] = field(init=False)

    def __post_init__(self) -> None:
        self.circuits = self.build.circuits

    def from_sheet(self, id: str, field: str, says: str) -> Figure:
        """Return a figure of an earlier sheet; raises MissingInput naming the field that would settle it."""
        if id not in self.figures:
            raise MissingInput(field, says)
        return self.figures[id]

    def lowest_voltage(self) -> Figure:
        """Return the lowest voltage that the bank is used down to."""
        return self.from_sheet(
            "battery.lowest_voltage", "battery", "the lowest voltage of the bank is not known yet"
        )

    def node(self, name: str) -> str:
        """Return the place an end of a circuit stands for: one of the places, or the item's own name."""
        key = name.removeprefix("items.")
        item = self.build.items.get(key)
        return _PLACE_OF.get(item.kind or "", key) if item is not None else key

    def kind(self, node: str) -> str:
        """Return the kind of the item at a node, or nothing for a place."""
        item = self.build.items.get(node)
        return (item.kind or "") if item is not None else ""

    def volts(self, circuit: Circuit) -> float | None:
        """Return 12 or 120 from where a circuit starts, or None where that does not tell."""
        node = self.node(circuit.supply)
        return _VOLTS.get(node, _VOLTS_OF_KIND.get(self.kind(node)))

    def is_mains(self, circuit: Circuit) -> bool:
        """Whether a circuit carries a dangerous voltage."""
        volts = circuit.voltage if circuit.voltage is not None else self.volts(circuit)
        return volts is not None and volts >= 50

    def ends(self, circuit: Circuit) -> list[str]:
        """Return the nodes that a circuit feeds."""
        return [self.node(name) for name in circuit.feeds]

    def feeder(self, name: str) -> str | None:
        """Return the circuit that feeds the place where a circuit starts, or None at a source."""
        node = self.node(self.circuits[name].supply)
        if node == "battery":
            return None
        found = [other for other, one in self.circuits.items() if node in self.ends(one) and other != name]
        same = [
            one for one in found if self.is_mains(self.circuits[one]) == self.is_mains(self.circuits[name])
        ]
        return same[0] if same else None

    def path(self, name: str) -> list[str]:
        """Return a circuit and those that feed it, the source's first; a ring is cut where it closes."""
        found = [name]
        while (above := self.feeder(found[0])) is not None and above not in found:
            found.insert(0, above)
        return found

    def applies(self, rows: str) -> bool:
        """Whether some rows apply under the place's electrical basis; raises MissingInput without one."""
        basis = self.build.place.electrical_basis
        if basis is None:
            raise MissingInput(
                "place.electrical_basis", "which electrical rules the place holds a cart to is not given"
            )
        return data.table("circuits/basis").row(rows)[basis] == "yes"

    def is_supply(self, key: str) -> bool:
        """Whether an item is part of the supply, and so no load for want of being told what it draws."""
        return kinds.find(self.build.items[key].kind).is_("supply")


def constants(sheet: Worksheet) -> Constants:
    """Write the numbers that every part takes from practice or a table."""
    tabled = sheet.tabled
    return Constants(
        tabled("low", "voltage that a 12 V drop is judged against", LOW, "V", source="trade-practice",
               row="12.0, not 12.8: the safe one"),
        tabled("mains", "voltage between hot and neutral", MAINS, "V", source="convention"),
        tabled("day", "a day", 86400.0, "s", source="convention", row="24 h", shown="h"),
        tabled("midnight", "midnight", 0.0, "s", source="convention", shown="clock"),
        tabled("cool", "resistivity of copper at 24 °C", *_resistivity("10.75"), source="marine-drop",
               row="K = 10.75"),
        tabled("hot", "resistivity of copper at 75 °C", *_resistivity("12.87"), source="nec-9-8",
               row="K = 12.85 to 12.93 from row to row"),
        tabled("contacts", "joints and fuse of one run", 0.0002, "ohm", source="trade-practice",
               row="0.1 to 0.3 mohm each; little, so that a fault is not made small"),
    )  # fmt: skip


def _resistivity(k: str) -> tuple[float, str]:
    from curbwright import units

    return float(units.read(f"{k} ohm·cmil/ft", "resistivity")), "ohm*m"
