"""Where circuits meet their sources: a fuse at every source, how near it is, what the tow lead charges."""

from __future__ import annotations

from curbwright import units
from curbwright.build.circuits import Circuit
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.circuits.wiring import Wiring

_FEEDS_BACK = ("charger", "controller")
"""What is a source too, seen from the battery it charges."""
_HOLDS_FUSES = ("12 V bus", "120 V panel")
"""Places that hold the fuses of what starts there, so that no wire lies between."""
_OWN_PROTECTION = ("inverter",)
"""Kinds that protect what starts at them by themselves."""
SEVEN, EIGHTEEN = "7 in", "18 in"
CONNECTOR = 15.0
"""A: what a seven-pin connector's charge pin should carry (common practice)."""


def sources(wiring: Wiring, sheet: Worksheet) -> None:
    """Write, for every circuit, how many of its ends are sources without a fuse, and how near fuses are."""
    for name, circuit in wiring.circuits.items():
        below = sheet.section(name, f"{circuit.name}: fuses at its sources")
        with below.attempt():
            _fuses(wiring, circuit, below)


def _fuses(wiring: Wiring, circuit: Circuit, sheet: Worksheet) -> None:
    near, far = source_ends(wiring, circuit)
    bare: list[Figure] = []
    for is_source, field in ((near, "fuse"), (far, "far_fuse")):
        if is_source:
            fitted = getattr(circuit, field) is not None
            where = "where it starts" if field == "fuse" else "at its other end"
            bare.append(
                sheet.choice(
                    f"without_{field}", f"{circuit.name}: source without a fuse {where}",
                    0.0 if fitted else 1.0, f"{circuit.path}.{field}",
                    getattr(circuit, field).text if fitted else "not given",
                )
            )  # fmt: skip
    if bare:
        sheet.total("bare", f"{circuit.name}: sources without a fuse", bare)
    if wiring.is_mains(circuit):
        return
    distance_limit(wiring, sheet)
    if near and circuit.fuse is not None:
        _distance(circuit, "fuse_distance", wiring.node(circuit.supply), sheet)
    if far and circuit.far_fuse is not None:
        _distance(circuit, "far_fuse_distance", wiring.ends(circuit)[0], sheet)


def source_ends(wiring: Wiring, circuit: Circuit) -> tuple[bool, bool]:
    """Return whether a circuit has a source where it starts, and one at its other end."""
    start, ends = wiring.node(circuit.supply), wiring.ends(circuit)
    charged = {"battery", "12 V bus"}
    near = wiring.kind(start) not in (*_OWN_PROTECTION, *_FEEDS_BACK, "solar")
    if wiring.kind(start) in _FEEDS_BACK:
        near = not charged.isdisjoint(ends)
    back = start in charged and any(wiring.kind(end) in _FEEDS_BACK for end in ends)
    return near, back or "battery" in ends


def distance_limit(wiring: Wiring, sheet: Worksheet) -> Figure:
    """Write how far along the wire a fuse may stand from its source."""
    if wiring.build.place.electrical_basis == "552":
        return sheet.tabled("limit", "wire allowed between source and fuse", _metres(EIGHTEEN), "m",
                            source="nec-552-10:(E)(3)", row="18 in")  # fmt: skip
    return sheet.tabled("limit", "wire allowed between source and fuse", _metres(SEVEN), "m",
                        source="marine-overcurrent", row="7 in; 552.10 allows 18 in")  # fmt: skip


def _metres(text: str) -> float:
    return float(units.read(text, "length"))


def _distance(circuit: Circuit, field: str, node: str, sheet: Worksheet) -> None:
    id = "distance" if field == "fuse_distance" else "far_distance"
    name = f"{circuit.name}: wire from {node} to its fuse"
    if getattr(circuit, field) is None and node in _HOLDS_FUSES:
        sheet.tabled(id, name, 0.0, "m", source="convention", row=f"its fuse is in the {node}")
        return
    sheet.largest(id, name, {"as given": sheet.given(circuit[field])})


def tow_lead(wiring: Wiring, sheet: Worksheet) -> None:
    """Write, for every circuit from the tow plug, whether it is tied straight to a lithium bank."""
    for name, circuit in wiring.circuits.items():
        if wiring.node(circuit.supply) != "tow plug":
            continue
        below = sheet.section(name, f"{circuit.name}: from the tow vehicle")
        with below.attempt():
            straight = not {"battery", "12 V bus"}.isdisjoint(wiring.ends(circuit))
            tied = 1.0 if straight and wiring.lithium else 0.0
            if straight and wiring.lithium is None:
                raise MissingInput("battery.chemistry", "the chemistry of the bank is not given")
            below.choice(
                "straight", f"{circuit.name}: lithium bank tied straight to the tow vehicle",
                tied, f"{circuit.path}.feeds", ", ".join(circuit.feeds),
            )  # fmt: skip
            if circuit.current is not None:
                below.largest("current", f"{circuit.name}: through the connector",
                              {"as given": below.given(circuit["current"])})  # fmt: skip


def served(wiring: Wiring, sheet: Worksheet) -> None:
    """Write, for every load, how many circuits of its own voltage feed it: one is right."""
    for key, item in wiring.build.items.items():
        electric = item.electric
        if electric is None or electric.bus is None:
            continue
        below = sheet.section(key, f"{item.name}: what feeds it")
        with below.attempt():
            if not wiring.circuits:
                raise MissingInput("circuits", "no circuits are given")
            mains = electric.bus != "12 V"
            feeding = [
                one for one in wiring.circuits.values()
                if key in wiring.ends(one) and wiring.is_mains(one) == mains
            ]  # fmt: skip
            below.choice(
                "circuits",
                f"{item.name}: circuits that feed it",
                float(len(feeding)),
                f"items.{key}.electric.bus",
                ", ".join(one.name for one in feeding) or "none",
            )


def places(wiring: Wiring, sheet: Worksheet) -> None:
    """Write, for the bus and the panel where circuits start, how many other circuits feed them."""
    for place in _HOLDS_FUSES:
        starting = [one for one in wiring.circuits.values() if wiring.node(one.supply) == place]
        if not starting:
            continue
        feeding = [
            one for one in wiring.circuits.values()
            if place in wiring.ends(one) and wiring.node(one.supply) != place
        ]  # fmt: skip
        below = sheet.section(place.replace(" ", "_").lower(), f"the {place}")
        below.choice(
            "feeds", f"circuits that feed the {place}", float(len(feeding)), "circuits",
            ", ".join(one.name for one in feeding) or "none",
        )  # fmt: skip
