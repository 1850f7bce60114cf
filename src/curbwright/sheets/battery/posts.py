"""At the posts: the rested voltages, the resistance inside, what a dead short draws."""

from __future__ import annotations

from curbwright.equations import battery as eq
from curbwright.equations import circuits
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.battery.bank import Sizes
from curbwright.sheets.battery.spec import Spec

COUNTED = 360000.0
"""Coulombs of a battery of 100 Ah, which typical resistances stand for."""
RESTED = {
    "open_full": "rested voltage, full",
    "open_knee": "rested voltage at the knee",
    "open_empty": "rested voltage, empty",
}


def voltages(spec: Spec, known: Sizes, sheet: Worksheet) -> None:
    """Write the rested voltages of the bank and the voltage at which its loads drop out."""
    for id, says in RESTED.items():
        twelve = spec.typical(sheet, id, f"{says}, of a 12 V battery")
        sheet.work(id, says, eq.of_cells, voltage=twelve, cells=known.cells, counted=known.counted)
    spec.typical(sheet, "knee", "state of charge at the knee")
    if spec.bank.cut_off is not None:
        lowest = {"as given": sheet.given(spec.bank["cut_off"])}
    else:
        drops = spec.typical(sheet, "cut_off", "voltage at which loads of 12 V drop out")
        lowest = {
            "typical": sheet.work(
                "drops_out",
                "voltage at which the loads drop out",
                eq.of_cells,
                voltage=drops,
                cells=known.cells,
                counted=known.counted,
            )
        }
    sheet.largest("lowest_voltage", "lowest voltage that the bank is used down to", lowest)


def resistances(spec: Spec, known: Sizes, one: Figure, sheet: Worksheet) -> None:
    """Write the resistance while it works, and what the bank gives into a dead short."""
    if spec.has("inside_resistance"):
        each = sheet.given(spec.entry("inside_resistance"))
    else:
        each = _by_size(spec, known, one, "resistance", sheet)
    warm = sheet.work(
        "warm_resistance",
        "inside resistance of the bank, full and warm",
        eq.bank_resistance,
        resistance=each,
        series=known.series,
        strings=known.strings,
    )
    sheet.work(
        "working_resistance",
        "inside resistance, nearly empty or cold",
        eq.working_resistance,
        resistance=warm,
        rise=spec.typical(sheet, "rise", "what cold or a low charge makes of it"),
    )
    open_full = sheet.figures()[f"{sheet.id}.open_full"]
    if spec.has("short_circuit"):
        maker = sheet.work(
            "maker_fault",
            "into a dead short, as its maker gives it",
            circuits.parallel_fault_current,
            fault_current=sheet.given(spec.entry("short_circuit")),
            strings=known.strings,
        )
        cases = {"as its maker gives it": maker}
    else:
        cases = _shorts(spec, known, one, warm, open_full, sheet)
    fault = sheet.largest("fault_current", "current into a dead short at its posts", cases)
    sheet.work(
        "resistance",
        "inside resistance in a dead short",
        eq.short_resistance,
        voltage=open_full,
        fault_current=fault,
    )


def _shorts(
    spec: Spec, known: Sizes, one: Figure, warm: Figure, open_full: Figure, sheet: Worksheet
) -> dict[str, Figure]:
    """By the resistance, and by that of bare cells where electronics may be in it or none is given."""
    cases = {
        "by its resistance": sheet.work(
            "short_by_resistance",
            "into a dead short, by its resistance",
            eq.short_current,
            voltage=open_full,
            resistance=warm,
        )
    }
    if spec.lithium or not spec.has("inside_resistance"):
        bare = sheet.work(
            "bare_resistance",
            "inside resistance of bare cells",
            eq.bank_resistance,
            resistance=_by_size(spec, known, one, "fault_resistance", sheet),
            series=known.series,
            strings=known.strings,
        )
        cases["by bare cells, as if no electronics opened"] = sheet.work(
            "short_by_cells",
            "into a dead short, by bare cells",
            eq.short_current,
            voltage=open_full,
            resistance=bare,
        )
    return cases


def _by_size(spec: Spec, known: Sizes, one: Figure, quantity: str, sheet: Worksheet) -> Figure:
    """The typical resistance of one battery of this size."""
    says = "inside resistance" if quantity == "resistance" else "resistance of bare cells"
    typical = spec.typical(sheet, quantity, f"typical {says} of a battery of 12 V and 100 Ah")
    found = sheet.figures()
    counted = found.get(f"{sheet.id}.counted_capacity") or sheet.tabled(
        "counted_capacity",
        "capacity that typical resistances stand for",
        COUNTED,
        "C",
        source="convention",
        row="100 Ah",
    )
    return sheet.work(
        f"{quantity}_each",
        f"{says} of one battery",
        eq.resistance_by_size,
        resistance=typical,
        full=counted,
        capacity=one,
        cells=known.each,
        counted=known.counted,
    )
