"""The current a circuit has to carry: as given, or from everything it feeds running at the lowest voltage."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from curbwright.equations import circuits as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.circuits.inverter import Curve
from curbwright.sheets.circuits.loads import Load
from curbwright.sheets.circuits.wiring import Wiring


@dataclass(frozen=True)
class Fed:
    """Everything that hangs on circuits: the loads, and the inverter if its sheet could be worked."""

    wiring: Wiring
    loads: Mapping[str, Load]
    inverter: Curve | None

    def below(self, name: str, seen: frozenset[str] = frozenset()) -> list[Load]:
        """Return the loads that a circuit feeds, through the circuits that start where it ends.

        Raises MissingInput for a load that is not known yet.
        """
        found: dict[str, Load] = {}
        for node in self.wiring.ends(self.wiring.circuits[name]):
            if node in self.loads:
                found[node] = self.loads[node]
                continue
            item = self.wiring.build.items.get(node)
            if item is not None and not self.wiring.is_supply(node):
                raise MissingInput(f"items.{node}.electric", f"{item.name}: what it draws is not given")
            for other, circuit in self.wiring.circuits.items():
                branch = self.wiring.node(circuit.supply) == node and other not in seen | {name}
                if branch and node != "battery" and self._alike(name, other):
                    found.update({load.key: load for load in self.below(other, seen | {name})})
        return list(found.values())

    def _alike(self, one: str, other: str) -> bool:
        circuits = self.wiring.circuits
        return self.wiring.is_mains(circuits[one]) == self.wiring.is_mains(circuits[other])

    def ends_at(self, name: str, *kinds: str) -> bool:
        """Whether a circuit feeds an item of one of these kinds."""
        circuit = self.wiring.circuits[name]
        return any(self.wiring.kind(node) in kinds for node in self.wiring.ends(circuit))

    def continuous(self, name: str) -> bool:
        """Whether a circuit runs three hours or longer; what feeds a supply or a place does."""
        circuit = self.wiring.circuits[name]
        if circuit.continuous is not None:
            return circuit.continuous
        ends = self.wiring.ends(circuit)
        return any(node not in self.loads or self.loads[node].continuous for node in ends)

    def current(self, name: str, voltage: Figure, sheet: Worksheet) -> Figure:
        """Write the largest current that flows for more than a moment."""
        circuit = self.wiring.circuits[name]
        says = f"{circuit.name}: current"
        if circuit.current is not None:
            return sheet.given(circuit["current"])
        mains = self.wiring.is_mains(circuit)
        if not mains and self.ends_at(name, "inverter"):
            return self._feed(says, sheet)
        if mains and self.wiring.node(circuit.supply) == "shore inlet":
            return self._shore(says, sheet)
        if mains and self.wiring.kind(self.wiring.node(circuit.supply)) == "inverter":
            return self._from_inverter(says, voltage, sheet)
        carried = self.below(name)
        if not carried:
            raise MissingInput(f"{circuit.path}.current", f"{says} is not given, and it feeds no known load")
        if mains:
            power = sheet.total(
                "power", f"{circuit.name}: volts times amperes", [one.apparent for one in carried]
            )
            return sheet.work("current", says, eq.current_of, power=power, voltage=voltage)
        power = sheet.total("power", f"{circuit.name}: power it feeds", [one.power for one in carried])
        if float(power) and self._has_inverter_below(name):
            raise MissingInput(
                f"{circuit.path}.current",
                f"{says} is not given, and an inverter hangs on it beside other loads",
            )
        return sheet.work(
            "current", f"{says} at the lowest voltage", eq.current_of, power=power,
            voltage=self.wiring.lowest_voltage(),
        )  # fmt: skip

    def _has_inverter_below(self, name: str) -> bool:
        nodes = self.wiring.ends(self.wiring.circuits[name])
        branches = [
            other for other, one in self.wiring.circuits.items()
            if self.wiring.node(one.supply) in nodes and self._alike(name, other) and other != name
        ]  # fmt: skip
        return any(self.ends_at(other, "inverter") for other in branches)

    def _feed(self, says: str, sheet: Worksheet) -> Figure:
        if self.inverter is None:
            raise MissingInput("electrical.inverter", "the inverter it feeds is not described in full")
        return sheet.work(
            "current", f"{says}: the inverter at its rating and the lowest voltage", eq.feed_current,
            power=self.inverter.rating, efficiency=self.inverter.full,
            voltage=self.wiring.lowest_voltage(),
        )  # fmt: skip

    def _from_inverter(self, says: str, voltage: Figure, sheet: Worksheet) -> Figure:
        if self.inverter is None:
            raise MissingInput("electrical.inverter", "the inverter it starts at is not described in full")
        return sheet.work(
            "current",
            f"{says}: the inverter's rating",
            eq.current_of,
            power=self.inverter.rating,
            voltage=voltage,
        )

    def _shore(self, says: str, sheet: Worksheet) -> Figure:
        shore = self.wiring.build.electrical.shore
        if shore is None:
            raise MissingInput("electrical.shore", "the shore inlet it starts at is not described")
        rating = sheet.given(shore["rating"])
        return sheet.work("current", f"{says}: what the inlet may carry without end", eq.continuous_limit,
                          rating=rating)  # fmt: skip
