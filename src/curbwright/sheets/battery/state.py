"""What is left of the bank: by its temperature, by its age, and by what a day may take."""

from __future__ import annotations

from curbwright import data, units
from curbwright.equations import battery as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.battery.bank import TWENTY_HOURS, Sizes, Wells
from curbwright.sheets.battery.spec import Spec


def temperature_factor(spec: Spec, sheet: Worksheet) -> Figure:
    """Write the share of its capacity that the bank gives at the temperature it works at."""
    temperature = sheet.given(spec.bank["temperature"])
    if spec.chemistry == "flooded":
        rows = [dict(row) for row in data.table("battery/cold_bank")]
        multiplier = _between(rows, "multiplier", temperature, sheet)
        factor = sheet.work(
            "cold_factor", "capacity it gives", eq.cold_factor, shown="%", multiplier=multiplier
        )
    else:
        factor = _between(spec.table_rows("battery/temperature"), "factor", temperature, sheet)
    return sheet.largest(
        "temperature_factor",
        "capacity at its temperature, of that at 77 °F",
        {"from the table": factor},
        shown="%",
    )


def _between(rows: list[dict[str, str]], column: str, temperature: Figure, sheet: Worksheet) -> Figure:
    """A straight line through the two rows around a temperature; past the warm end the last row holds."""
    at = [(float(units.read(row["temperature"], "temperature")), row) for row in rows]
    warm = next((n for n, (kelvins, _) in enumerate(at) if kelvins >= float(temperature)), None)
    if warm is None:
        return _cell(at[-1], column, "warmest", sheet)[1]
    if warm == 0:
        warm = 1
        if float(temperature) < at[0][0]:
            sheet.note("It is colder than the table reaches: its last step is carried on.")
    low, at_low = _cell(at[warm - 1], column, "colder", sheet)
    high, at_high = _cell(at[warm], column, "warmer", sheet)
    return sheet.work(
        column,
        f"{column} at its temperature",
        eq.factor_between,
        temperature=temperature,
        cold=low,
        warm=high,
        at_cold=at_low,
        at_warm=at_high,
    )


def _cell(
    found: tuple[float, dict[str, str]], column: str, id: str, sheet: Worksheet
) -> tuple[Figure, Figure]:
    kelvins, row = found
    says = f"{row['temperature']}, {row['how']}"
    return (
        sheet.tabled(
            f"{id}_row", f"temperature of the {id} row", kelvins, "K", source=row["source"], row=says
        ),
        sheet.tabled(
            f"{id}_{column}",
            f"{column} of the {id} row",
            float(row[column]),
            "1",
            source=row["source"],
            row=says,
        ),
    )


def usable(spec: Spec, known: Sizes, wells: Wells, factor: Figure, sheet: Worksheet) -> None:
    """Write what is left of it now, and the energy that a day may take."""
    age = sheet.given(spec.bank["age"])
    sheet.work(
        "charge",
        "charge of the full bank as it is now, what is bound counted",
        eq.charge_left,
        charge=wells.full,
        temperature=factor,
        age=age,
    )
    twenty = sheet.tabled(
        "twenty_hours",
        "time a day's capacity is counted over",
        TWENTY_HOURS,
        "s",
        source="convention",
        row="20 h",
    )
    over = sheet.work(
        "capacity_20h",
        "capacity of the new bank over 20 h",
        eq.capacity_over,
        full=wells.full,
        time=twenty,
        share=wells.share,
        rate=wells.rate,
    )
    left = sheet.work(
        "capacity_now",
        "capacity over 20 h as it is now",
        eq.charge_left,
        charge=over,
        temperature=factor,
        age=age,
    )
    typical = spec.typical(sheet, "usable", f"share that a day may take of {spec.chemistry}")
    cases = {f"typical of {spec.chemistry}": typical}
    if spec.has("usable"):
        cases = {"as given": sheet.given(spec.entry("usable"))}
    share = sheet.largest("usable_share", "share of its charge that a day may take", cases, shown="%")
    sheet.work(
        "usable_energy", "usable energy", eq.usable_energy, charge=left, share=share, voltage=known.nominal
    )
