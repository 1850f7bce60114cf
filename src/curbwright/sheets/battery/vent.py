"""Hydrogen: the air and the openings that a charging lead-acid bank needs, by two published ways."""

from __future__ import annotations

from curbwright.equations import battery as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.battery.bank import Sizes
from curbwright.sheets.battery.spec import Spec

RV_RULE = 0.0011
"""Square metres: 1100 mm2, 1.7 in2, at the top and again at the bottom."""


def vent(spec: Spec, known: Sizes, rated: Figure, sheet: Worksheet) -> None:
    """Write what the bank gives off while it is charged hard, and the openings for it."""
    if spec.lithium:
        sheet.note(
            "Lithium iron phosphate gives off no hydrogen in ordinary use; a fault or a fire does. Its maker"
            " and the place say where it may stand."
        )
        return
    gas_rate = spec.typical(sheet, "gas_rate", "gas current near the end of a charge, for its capacity")
    by_charge = sheet.work(
        "flow_by_charge",
        "air it needs, by the European way",
        eq.vent_flow_by_charge,
        shown="cfm|m3/h",
        cells=known.cells,
        gas_rate=gas_rate,
        charge=rated,
    )
    current = sheet.work(
        "gas_current", "gas current of the bank", eq.gas_current, charge=rated, gas_rate=gas_rate
    )
    by_current = sheet.work(
        "flow_by_current",
        "air it needs, by the American way",
        eq.vent_flow_by_current,
        shown="cfm|m3/h",
        cells=known.cells,
        current=current,
    )
    flow = sheet.largest(
        "flow", "air it needs, by the stricter way", {"European": by_charge, "American": by_current}
    )
    sheet.work(
        "opening",
        "free opening it needs low in its box, and again high",
        eq.vent_opening,
        shown="in2|cm2",
        flow=flow,
    )
    _rv_rule(known, gas_rate, sheet)
    for part, says in ((_given, "its openings"), (_tight, "where it breathes")):
        below = sheet.section(part.__name__.strip("_"), says)
        with below.attempt():
            part(spec, below)


def _rv_rule(known: Sizes, gas_rate: Figure, sheet: Worksheet) -> None:
    """What the one opening of the recreational-vehicle rule is worth."""
    rule = sheet.tabled(
        "rv_rule",
        "opening by the rule for park trailers, low and again high",
        RV_RULE,
        "m**2",
        source="nec-552-10",
        row="(D), 1100 mm²",
        shown="in2|cm2",
    )
    air = sheet.work("rv_flow", "air that it is counted for", eq.flow_through, shown="cfm|m3/h", opening=rule)
    sheet.work(
        "rv_serves",
        "capacity that it is enough for",
        eq.charge_vented,
        flow=air,
        cells=known.cells,
        gas_rate=gas_rate,
    )


def _given(spec: Spec, sheet: Worksheet) -> None:
    low, high = sheet.given(spec.bank["vent_low"]), sheet.given(spec.bank["vent_high"])
    sheet.smallest("opening", "the smaller of its two openings", {"low": low, "high": high}, shown="in2|cm2")


def _tight(spec: Spec, sheet: Worksheet) -> None:
    sheet.choice(
        "outside",
        "its box is open to the outside and tight to the inside",
        float(sheet.given(spec.bank["vented"])),
        "battery.vented",
        str(spec.bank.vented),
    )
