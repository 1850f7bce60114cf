"""Charging: what each charger draws, what the bank may take, and how cold it may be."""

from __future__ import annotations

from curbwright.build.battery import Charger
from curbwright.equations import battery as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.battery.bank import Sizes
from curbwright.sheets.battery.spec import Spec

FREEZING = 273.15
_FED = {
    "shore": (120.0, "120 V"),
    "generator": (120.0, "120 V"),
    "tow DC-DC": (13.0, "13 V, engine running"),
    "tow lead": (13.8, "13.8 V, engine running"),
}
"""Volts that a charger is fed with where the builder does not say."""


def charging(spec: Spec, known: Sizes, rated: Figure, sheet: Worksheet) -> None:
    """Write the limits of charging, and what each charger draws for what it gives."""
    rate = spec.typical(
        sheet, "charge_rate", f"charging current that {spec.chemistry} takes, for its capacity"
    )
    sheet.work(
        "most_current",
        "largest charging current the bank takes",
        eq.rated_current,
        charge=rated,
        rate=rate,
    )
    if spec.has("charge_voltage"):
        one = sheet.given(spec.entry("charge_voltage"))
        voltage = sheet.work(
            "voltage", "voltage the bank is charged to", eq.series_voltage, voltage=one, series=known.series
        )
    else:
        twelve = spec.typical(sheet, "charge_voltage", "voltage that a 12 V battery is charged to")
        voltage = sheet.work(
            "voltage",
            "voltage the bank is charged to",
            eq.of_cells,
            voltage=twelve,
            cells=known.cells,
            counted=known.counted,
        )
    on_lead = [name for name, one in spec.bank.chargers.items() if one.supply == "tow lead"]
    if spec.lithium and spec.bank.chargers:
        sheet.choice(
            "on_lead",
            "lithium banks tied straight to the tow vehicle",
            float(len(on_lead)),
            "battery.chargers",
            ", ".join(on_lead) or "none",
        )
    for name, charger in spec.bank.chargers.items():
        below = sheet.section(name, f"charger: {name.replace('_', ' ')}")
        with below.attempt():
            _charger(charger, voltage, below)


def cold(spec: Spec, sheet: Worksheet) -> None:
    """The coldest it is charged against the coldest allowed, where nothing refuses by itself."""
    if not spec.lithium and not spec.has("least_charge"):
        return
    if spec.bank.cold_lockout:
        sheet.note("Below the coldest allowed it is not charged at all: a frosty morning's energy is lost.")
        return
    if spec.has("least_charge"):
        least = {"its maker": sheet.given(spec.entry("least_charge"))}
    else:
        least = {
            "lithium iron phosphate": sheet.tabled(
                "freezing",
                "coldest that LFP may be charged",
                FREEZING,
                "K",
                source="trade-practice",
                row="freezing",
            )
        }
    sheet.largest("least", "coldest at which it may be charged", least)
    sheet.largest("coldest", "coldest it is charged", {"as given": sheet.given(spec.bank["coldest_charge"])})


def _charger(charger: Charger, held: Figure, sheet: Worksheet) -> None:
    """What one charger gives and what it draws for that."""
    current = sheet.largest("current", "charging current", {"as given": sheet.given(charger["current"])})
    if charger.supply == "tow lead":
        sheet.note("Tied straight to the tow vehicle it gives what wire and voltages leave, often little.")
        return
    voltage = sheet.given(charger["voltage"]) if charger.voltage is not None else held
    efficiency = sheet.given(charger["efficiency"])
    volts, says = _FED[charger.supply]
    if charger.input_voltage is not None:
        fed = sheet.given(charger["input_voltage"])
    else:
        fed = sheet.tabled(
            "input_voltage", "voltage it is fed with", volts, "V", source="convention", row=says
        )
    if charger.supply == "tow DC-DC":
        sheet.work(
            "input_current",
            "current it takes from the tow vehicle",
            eq.input_current,
            voltage=voltage,
            current=current,
            efficiency=efficiency,
            input_voltage=fed,
        )
        return
    power = sheet.work(
        "input_power",
        "power it takes from the wall",
        eq.wall_power,
        voltage=voltage,
        current=current,
        efficiency=efficiency,
    )
    sheet.work(
        "input_current",
        "current it takes from the wall",
        eq.wall_current,
        power=power,
        power_factor=sheet.given(charger["power_factor"]),
        voltage=fed,
    )
