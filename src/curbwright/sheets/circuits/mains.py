"""120 V: the shore inlet and its cord, ground faults, the one neutral-ground bond, what a basis adds."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from curbwright import data, units
from curbwright.build import kinds
from curbwright.equations import circuits as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.circuits.loads import Load
from curbwright.sheets.circuits.wiring import Wiring


def carried_by_shore(wiring: Wiring, loads: Mapping[str, Load]) -> list[Load]:
    """Return the loads on shore power: its own, and the inverter's where they move over."""
    shore = wiring.build.electrical.shore
    buses = {"120 V shore"} | ({"120 V inverter"} if shore is not None and shore.transfers else set())
    return [load for load in loads.values() if load.bus in buses]


def shore(wiring: Wiring, loads: Callable[[], Mapping[str, Load]], sheet: Worksheet) -> None:
    """Write the load on the shore inlet, what it may carry, and its cord."""
    section = wiring.build.electrical.shore
    if section is None:
        drawn = [item.electric for item in wiring.build.items.values() if item.electric is not None]
        if any(electric.bus == "120 V shore" for electric in drawn):
            raise MissingInput("electrical.shore", "things run on shore power, and no inlet is described")
        return
    carried = carried_by_shore(wiring, loads())
    rating, voltage = sheet.given(section["rating"]), sheet.given(section["voltage"])
    load = sheet.total("load", "load on shore power, volts times amperes", [one.apparent for one in carried],
                       unit="W")  # fmt: skip
    current = sheet.work("current", "current from shore power", eq.current_of, power=load, voltage=voltage)
    sheet.work("limit", "what the inlet may carry for three hours", eq.continuous_limit, rating=rating)
    with sheet.attempt():
        if wiring.applies("kitchen_demand"):
            kitchen_demand(carried, sheet)
    with sheet.attempt():
        _cord(wiring, current, voltage, sheet)


def kitchen_demand(carried: list[Load], sheet: Worksheet) -> None:
    """Write the demand of 220.56 beside the plain sum, which stays the one judged: it is the safe one."""
    kitchen = [one for one in carried if _is_kitchen(one)]
    if len(kitchen) < 3:
        return
    row = next(
        row for row in data.table("circuits/kitchen_demand") if len(kitchen) <= int(row["units_up_to"])
    )
    factor = sheet.tabled("demand_factor", "share of kitchen equipment on at once",
                          float(units.read(row["factor"], "share")), "1", source=row["source"],
                          row=f"{len(kitchen)} units", shown="%")  # fmt: skip
    largest = sorted(kitchen, key=lambda one: -float(one.power))[:2]
    two = sheet.total("two_largest", "the two largest", [one.power for one in largest])
    connected = sheet.total("kitchen", "kitchen equipment on shore power", [one.power for one in kitchen])
    sheet.work("demand", "demand of the kitchen equipment; the whole sum is judged, not this",
               eq.kitchen_demand, connected=connected, factor=factor, two_largest=two)  # fmt: skip


def _is_kitchen(load: Load) -> bool:
    kind = kinds.find(load.item.kind)
    return kind.is_("stood_at", "worked_at", "cook", "cold") and not kind.is_("serve", "hood")


def _cord(wiring: Wiring, current: Figure, voltage: Figure, sheet: Worksheet) -> None:
    section = wiring.build.electrical.shore
    assert section is not None  # noqa: S101 - the caller has looked
    wire = sheet.given(section["cord_wire"])
    row = next(
        (
            row
            for row in data.table("circuits/cord")
            if abs(_area(row["size"]) - float(wire)) < 0.01 * float(wire)
        ),
        None,
    )
    if row is None:
        raise MissingInput("electrical.shore.cord_wire", "no cord ampacity is at hand for this size")
    sheet.tabled("cord_ampacity", "what the cord may carry", _amperes(row["ampacity"]), "A",
                 source=row["source"], row=f"{row['size']}, two conductors loaded")  # fmt: skip
    each = sheet.work("cord_resistance", "cord's wire at 75 °C", eq.resistance_per_length,
                      resistivity=wiring.constants.hot, area=wire)  # fmt: skip
    lost = sheet.work("cord_drop", "drop along the cord", eq.drop, current=current,
                      length=sheet.given(section["cord_length"]), resistance=each)  # fmt: skip
    sheet.work(
        "cord_share", "drop along the cord as a share", eq.drop_share, shown="%", drop=lost, voltage=voltage
    )


def _amperes(text: str) -> float:
    return float(units.read(text, "current"))


def _area(size: str) -> float:
    return float(units.read(size, "wire_size"))


def receptacles(wiring: Wiring, sheet: Worksheet) -> None:
    """Write, for every 120 V circuit with receptacles, how many are without ground-fault protection."""
    for name, circuit in wiring.circuits.items():
        fed = [end for end in wiring.ends(circuit) if wiring.kind(end) == "receptacle"]
        count = circuit.receptacles + len(fed)
        if not count or not wiring.is_mains(circuit):
            continue
        below = sheet.section(name, f"{circuit.name}: its receptacles")
        with below.attempt():
            if circuit.gfci is None:
                raise MissingInput(
                    f"{circuit.path}.gfci", f"{circuit.name}: whether it is behind a GFCI is not given"
                )
            below.choice("unprotected", f"{circuit.name}: receptacles without ground-fault protection",
                         0.0 if circuit.gfci else float(count), f"{circuit.path}.gfci",
                         str(circuit.gfci).lower())  # fmt: skip


def modes(wiring: Wiring) -> list[str]:
    """Return the ways of running 120 V that the cart declares."""
    electrical = wiring.build.electrical
    every = {"shore": electrical.shore, "inverter": electrical.inverter, "generator": electrical.generator}
    return [mode for mode, section in every.items() if section is not None]


def bonds(wiring: Wiring, sheet: Worksheet) -> None:
    """Write, for every way of running, in how many places neutral and ground are joined: one is right."""
    for mode in modes(wiring):
        below = sheet.section(mode, f"neutral to ground, on {mode} power")
        with below.attempt():
            joined = [
                found
                for number, row in enumerate(data.table("circuits/bonds"), 1)
                if row["mode"] == mode and (found := _joined(wiring, number, row, below)) is not None
            ]
            below.total("count", f"places where neutral meets ground, on {mode} power", joined)


def _joined(wiring: Wiring, number: int, row: Mapping[str, str], sheet: Worksheet) -> Figure | None:
    """One row of the truth table: whether neutral meets ground there; None where it cannot arise."""
    known = wiring.build.electrical.bonds
    if row["fact"] == "always":
        return sheet.tabled(f"at_{row['place']}", row["says"], 1.0, "1", source=row["source"])
    field = row["fact"].removesuffix("_bond")
    if field != "panel" and field not in modes(wiring):
        return None
    fact = getattr(known, field)
    if fact is None:
        raise MissingInput(
            f"electrical.bonds.{field}", f"neutral and ground {known.declared(field)['says']}: not given"
        )
    holds = fact == row["counts_if"]
    if holds and row["unless_switched"] == "yes":
        if known.transfer is None:
            raise MissingInput(
                "electrical.bonds.transfer", f"{known.declared('transfer')['says']} is not given"
            )
        holds = known.transfer == "hot only"
    return sheet.choice(
        f"at_{row['place']}_{number}", row["says"], float(holds), f"electrical.bonds.{field}", fact
    )


def basis(wiring: Wiring, sheet: Worksheet) -> None:
    """Write what the place's electrical basis asks besides: each figure only where its rows apply."""
    electrical = wiring.build.electrical
    asked = {
        "panel_space": ("panel_space_width", "panel_space_depth"),
        "bonding_wire": ("bonding_wire",),
        "battery_bond": ("battery_bond",),
        "operator_disconnect": ("disconnect_to_operator",),
    }
    mains = any(wiring.is_mains(one) for one in wiring.circuits.values())
    for rows, fields in asked.items():
        if rows == "panel_space" and not mains:
            continue
        below = sheet.section(rows, str(data.table("circuits/basis").row(rows)["says"]))
        with below.attempt():
            if not wiring.applies(rows):
                continue
            for field in fields:
                with below.attempt():
                    given = below.given(electrical[field])
                    below.largest(field, given.name, {"as given": given}, shown=given.shown)


def plan_approval(wiring: Wiring, sheet: Worksheet) -> None:
    """Write how many things call for approval of the electrical plan, where the state says what does."""
    state = wiring.build.place.state
    row = next((row for row in data.table("circuits/plan_triggers") if row["state"] == state), None)
    if row is None:
        return
    section = wiring.build.electrical.shore
    if section is None:
        supply = sheet.tabled("supply", "shore power", 0.0, "A", source="convention", row="none described")
    else:
        supply = sheet.given(section["rating"])
    circuits = sheet.choice(
        "circuits", "circuits", float(len(wiring.circuits)), "circuits", str(len(wiring.circuits))
    )
    solar = [
        key for key, item in wiring.build.items.items() if item.kind in ("solar", "generator", "inverter")
    ]
    others = sheet.choice(
        "others", "other sources of power", float(len(solar)), "items", ", ".join(solar) or "none"
    )
    limits = (
        sheet.tabled("supply_limit", "supply above which it is asked", _amperes(row["supply_over"]), "A",
                     source=row["source"]),
        sheet.tabled("circuit_limit", "circuits above which it is asked", float(row["circuits_over"]), "1",
                     source=row["source"]),
    )  # fmt: skip
    count = sheet.work("triggers", f"what calls for approval of the plan in {state}", eq.plan_triggers,
                       supply=supply, circuits=circuits, other_sources=others, supply_limit=limits[0],
                       circuit_limit=limits[1])  # fmt: skip
    asked = "has to be approved before it is built" if count else "need not be approved for these reasons"
    sheet.note(f"In {state} the design {asked}: {row['says']}. Gas piping and a hood ask for it too.")
