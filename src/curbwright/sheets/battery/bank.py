"""The bank when new: how its batteries are put together, its voltage, its capacity, its wells."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright import data, units
from curbwright.build.battery import Piece
from curbwright.equations import battery as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.battery.spec import Spec

TWENTY_HOURS = 72000.0
FULL = "charge of one battery, what is bound counted"
SHARE = "share of its charge at hand when full"
RATE = "rate at which bound charge follows"
_ROWS = ("first", "second", "third", "fourth", "fifth")


@dataclass(frozen=True)
class Wells:
    """The kinetic battery of the whole bank when new and warm; a share of 1 counts every ampere once."""

    full: Figure
    share: Figure
    rate: Figure


@dataclass(frozen=True)
class Sizes:
    """How many batteries, and their voltage."""

    series: Figure
    strings: Figure
    voltage: Figure
    nominal: Figure
    each: Figure
    """Cells in one battery."""
    cells: Figure
    """Cells in a string."""
    counted: Figure
    """Cells of a battery of 12 V, which typical voltages stand for."""


def sizes(spec: Spec, sheet: Worksheet) -> Sizes:
    """Write how the batteries are put together and the voltage that gives."""
    bank = spec.bank
    voltage = sheet.given(spec.entry("voltage"))
    series = sheet.given(bank["in_series"])
    if bank.in_parallel is not None:
        strings = sheet.given(bank["in_parallel"])
    else:
        count = max(len(spec.pieces), bank.in_series)
        strings = sheet.choice(
            "strings",
            "strings side by side",
            float(count // bank.in_series),
            "battery.pieces",
            ", ".join(spec.pieces) or "none named: one string",
        )
    nominal = sheet.work(
        "nominal_voltage", "nominal voltage of the bank", eq.series_voltage, voltage=voltage, series=series
    )
    cell = spec.typical(sheet, "cell_voltage", "nominal voltage of a cell")
    each = sheet.work("cells_each", "cells in one battery", eq.cells_of, voltage=voltage, cell=cell)
    cells = sheet.work("cells", "cells in a string", eq.cells_in_string, cells=each, series=series)
    counted = spec.typical(sheet, "cells", "cells of a battery of 12 V")
    return Sizes(series, strings, voltage, nominal, each, cells, counted)


def rating(spec: Spec, known: Sizes, sheet: Worksheet) -> tuple[Figure, Figure]:
    """Write and return the rated capacity of one battery and of the bank."""
    if not spec.lithium:
        said = spec.rates() is not None or spec.has("capacity_rate")
        sheet.section("rating", "how the capacity is rated").choice(
            "said", "capacity given with the time it is drawn over", float(said), "battery.capacity_rate",
            "yes" if said else "left out",
        )  # fmt: skip
    one = sheet.given(spec.entry("capacity")) if spec.has("capacity") else _from_rows(spec, sheet)
    rated = sheet.work(
        "rated_capacity", "rated capacity of the bank", eq.parallel_charge, capacity=one,
        strings=known.strings,
    )  # fmt: skip
    return one, rated


def wells(spec: Spec, known: Sizes, one: Figure, sheet: Worksheet) -> Wells:
    """Write the wells of the bank."""
    full, share, rate = _wells(spec, one, sheet)
    whole = sheet.work(
        "full", "charge of the new bank, what is bound counted", eq.parallel_charge, capacity=full,
        strings=known.strings,
    )  # fmt: skip
    return Wells(whole, share, rate)


def _from_rows(spec: Spec, sheet: Worksheet) -> Figure:
    """The capacity of one battery from its table: the row nearest to twenty hours."""
    part = spec.rates()
    rows = part.rates if part is not None else None
    if part is None or rows is None:
        raise MissingInput("battery.capacity", "battery: capacity of one battery is not given")
    row = min(range(len(rows)), key=lambda at: abs(rows[at][0] - TWENTY_HOURS))
    cell = sheet.given(part.cell("rates", row, 1, f"capacity over {rows[row][0].text}"))
    return sheet.largest(
        "capacity_of_one", "capacity of one battery", {"row of the table nearest to 20 h": cell}
    )


def _wells(spec: Spec, one: Figure, sheet: Worksheet) -> tuple[Figure, Figure, Figure]:
    """Full charge, share at hand and rate of one battery: from its table, or typical of its kind."""
    part = spec.rates()
    if part is not None and not spec.lithium:
        full, share, rate = _fitted(part, sheet.section("wells", "the kinetic battery of the maker's table"))
        share = sheet.largest("share", share.name, {"fitted": share})
        return full, share, sheet.largest("rate", rate.name, {"fitted": rate})
    row = data.table("battery/wells").row(spec.chemistry)
    how = "every ampere counted once" if spec.lithium else f"typical {spec.chemistry}, {row['how']}"
    share = sheet.tabled("share", SHARE, float(row["share"]), "1", source=row["source"], row=how)
    rate = sheet.tabled(
        "rate", RATE, float(units.read(row["rate"], "rate")), "1/s", source=row["source"], row=how
    )
    return (one if spec.lithium else _from_capacity(spec, one, share, rate, sheet)), share, rate


def _from_capacity(spec: Spec, one: Figure, share: Figure, rate: Figure, sheet: Worksheet) -> Figure:
    """Full charge of one battery, from what it gives up over its rated time."""
    if not spec.has("capacity_rate"):
        raise MissingInput("battery.capacity_rate", "battery: capacity without the time it is drawn over")
    over = sheet.work(
        "over", "what such a battery gives up in its rated time", eq.capacity_over, full=one,
        time=sheet.given(spec.entry("capacity_rate")), share=share, rate=rate,
    )  # fmt: skip
    return sheet.work("full_one", FULL, eq.full_from_capacity, capacity=one, over=over, full=one)


def _fitted(part: Piece, sheet: Worksheet) -> tuple[Figure, Figure, Figure]:
    """The kinetic battery nearest to a table, and how far it is off each row."""
    rows = part.rates or ()
    _ordered(part)
    none = (
        sheet.tabled("no_time", "no further row", 0.0, "s", source="convention"),
        sheet.tabled("no_capacity", "no further row", 0.0, "C", source="convention"),
    )
    cells = [
        (
            sheet.given(part.cell("rates", at, 0, f"time of row {at + 1}")),
            sheet.given(part.cell("rates", at, 1, f"capacity of row {at + 1}")),
        )
        for at in range(len(rows))
    ]
    inputs: dict[str, Figure] = {}
    for at, word in enumerate(_ROWS):
        inputs[f"{word}_time"], inputs[f"{word}_capacity"] = cells[at] if at < len(cells) else none
    full = sheet.work("full_one", FULL, eq.fitted_charge, shown=None, **inputs)
    share = sheet.work("share", SHARE, eq.fitted_share, shown=None, **inputs)
    rate = sheet.work("rate", RATE, eq.fitted_rate, shown=None, **inputs)
    misses = {
        f"row {at + 1}": sheet.work(
            f"miss_{at + 1}",
            f"off row {at + 1}",
            eq.row_miss,
            shown="%",
            full=full,
            time=time,
            share=share,
            rate=rate,
            capacity=amount,
        )
        for at, (time, amount) in enumerate(cells)
    }
    sheet.largest("misfit", "off the maker's table, at worst", misses)
    return full, share, rate


def _ordered(part: Piece) -> None:
    """Raise MissingInput where a table gives less over a longer time."""
    rows = sorted(part.rates or ())
    for (shorter, less), (longer, more) in zip(rows, rows[1:], strict=False):
        if not (0 < shorter < longer and 0 < less < more):
            raise MissingInput(
                f"{part.path}.rates",
                f"battery: {less.text} over {shorter.text} and {more.text} over {longer.text} cannot be: "
                "a battery gives more the longer it takes",
            )
