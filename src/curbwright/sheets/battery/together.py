"""What goes together: equal batteries in one bank, and what else stands in their box."""

from __future__ import annotations

from curbwright.build import kinds
from curbwright.build.battery import names
from curbwright.build.fit import Item
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.battery.spec import Spec


def equal(spec: Spec, sheet: Worksheet) -> None:
    """Write how many kinds the bank is made of, and how far its batteries differ."""
    if len(spec.pieces) < 2:
        return
    chemistries = {spec.chemistry_of(item.battery) for item in spec.pieces.values()}
    sheet.choice(
        "chemistries",
        "kinds of battery in the bank",
        float(len(chemistries)),
        "battery.pieces",
        ", ".join(sorted(chemistries)),
    )
    for field, says in (("capacity", "capacity"), ("voltage", "voltage")):
        values: dict[str, Figure] = {}
        for item in spec.pieces.values():
            entry = spec.entry_of(item.battery, field)
            if entry.value is not None:
                values[item.name] = sheet.given(entry)
        if len(values) < len(spec.pieces):
            raise MissingInput(f"battery.{field}", f"battery: {says} of each battery is not known")
        sheet.smallest(f"least_{field}", f"least {says} of a battery in the bank", values)
        sheet.largest(f"most_{field}", f"largest {says} of a battery in the bank", values)


def box(spec: Spec, sheet: Worksheet) -> None:
    """Write how many things beside the bank hold fuel or burn it."""
    if spec.bank.beside is None:
        raise MissingInput("battery.beside", "battery: what else is in its box is not given ([] for nothing)")
    items = {name: spec.build.items[name] for name in names(spec.bank.beside) if name in spec.build.items}
    dangerous = [item.name for item in items.values() if _burns(item)]
    sheet.choice(
        "flames",
        "things in its box that hold fuel or burn it",
        float(len(dangerous)),
        "battery.beside",
        ", ".join(dangerous) or "none",
    )
    others = [item for name, item in items.items() if name not in spec.pieces]
    sparks = [item.name for item in others if kinds.find(item.kind).is_("spark")]
    if not spec.lithium:
        sheet.choice(
            "sparks",
            "things in its box that may spark",
            float(len(sparks)),
            "battery.beside",
            ", ".join(sparks) or "none",
        )


def _burns(item: Item) -> bool:
    return (
        kinds.find(item.kind).is_("bottle", "flame") or item.gas_input is not None or "gas" in item.connects
    )
