"""A day on the bank: what it has to give, how low its voltage falls, how many such days it stands."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from curbwright import data, units
from curbwright.build.cart import Build
from curbwright.equations import battery as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.battery.known import Known
from curbwright.sheets.battery.refill import refill
from curbwright.sheets.battery.running import run
from curbwright.sheets.battery.spec import Spec


def battery_day_sheet(build: Build, figures: Mapping[str, Figure]) -> Worksheet:
    """Work out a day on the bank from the figures of the sheets before it."""
    sheet = Worksheet("battery.day", "A day on the battery")
    if build.battery is None:
        sheet.note("This cart has no battery.")
        return sheet
    spec, known = Spec(build, build.battery), Known(figures)
    parts: tuple[tuple[str, str, Callable[[Spec, Known, Worksheet], None]], ...] = (
        ("energy", "what a day takes", _energy),
        ("lead", "how deep a day goes into lead acid", _lead),
        ("run", "how long it lasts", run),
        ("load", "voltage under the largest load", _load),
        ("life", "how many such days it stands", _life),
        ("refill", "filling it again", refill),
    )
    for id, says, part in parts:
        below = sheet.section(id, says)
        with below.attempt():
            part(spec, Known({**known.figures, **sheet.figures()}), below)
    return sheet


def _energy(spec: Spec, known: Known, sheet: Worksheet) -> None:
    """What a day takes out of the bank, the sun of a dull day counted, and the bank to buy for it."""
    need = sheet.largest(
        "need", "energy a day from the battery", {"circuits": known.of("circuits.energy_per_day")}
    )
    drawn = _drawn(spec, known, need, sheet)
    nominal = known.bank("nominal_voltage")
    sheet.work(
        "depth", "share of its charge that a day takes", eq.depth_of, shown="%", energy=drawn,
        charge=known.bank("capacity_now"), voltage=nominal,
    )  # fmt: skip
    sheet.work(
        "wanted_capacity", "rated capacity that the day asks for", eq.capacity_wanted, energy=drawn,
        margin=sheet.given(spec.bank["margin"]), voltage=nominal, share=known.bank("usable_share"),
        temperature=known.bank("temperature_factor"), age=sheet.given(spec.bank["age"]),
    )  # fmt: skip
    if float(need) > 0:
        sheet.work(
            "days", "days it lasts with nothing coming in", eq.days_on, usable=known.bank("usable_energy"),
            need=need,
        )  # fmt: skip


def _drawn(spec: Spec, known: Known, need: Figure, sheet: Worksheet) -> Figure:
    """The need less what comes back out of a dull day's sun, where there are panels."""
    dull = known.maybe("solar.energy_dull")
    if dull is None:
        says = "no panels" if spec.build.solar is None else "panels not known yet, so not counted"
        return sheet.largest("drawn", "energy that the bank has to give", {says: need})
    sun = sheet.work(
        "sun", "energy that comes back out of a dull day's sun", eq.energy_back, energy=dull,
        nominal=known.bank("nominal_voltage"), voltage=known.bank("charging.voltage"),
        efficiency=spec.typical(sheet, "coulombic", "share of the charge that comes back out"),
    )  # fmt: skip
    return sheet.work(
        "drawn", "energy that the bank has to give on a dull day", eq.net_need, need=need, sun=sun
    )


def _lead(spec: Spec, known: Known, sheet: Worksheet) -> None:
    """The depth of a day in a lead-acid bank."""
    if not spec.lithium:
        sheet.largest(
            "depth", "share of a lead-acid bank that a day takes",
            {"a day": known.bank("day.energy.depth")}, shown="%",
        )  # fmt: skip


def _load(spec: Spec, known: Known, sheet: Worksheet) -> None:
    """The voltage while everything runs, and while the worst motor starts, at the end of a usable day."""
    share = known.bank("usable_share")
    rested = sheet.work(
        "rested",
        "rested voltage when the usable share is gone",
        eq.open_voltage_at,
        state=sheet.work("state", "state of charge then", eq.rest_of, share=share, shown="%"),
        open_full=known.bank("open_full"),
        open_knee=known.bank("open_knee"),
        open_empty=known.bank("open_empty"),
        knee=known.bank("typical_knee"),
    )
    resistance = known.bank("working_resistance")
    sheet.work(
        "most_power",
        "most power it can give at all then",
        eq.most_power,
        open_voltage=rested,
        resistance=resistance,
    )
    largest = sheet.work(
        "power",
        "power of the largest load",
        eq.load_power,
        current=known.of("circuits.largest_dc_current"),
        voltage=known.bank("lowest_voltage"),
    )
    _sag("", "with everything running", largest, rested, resistance, sheet)
    start = known.maybe("circuits.largest_start_power")
    if start is not None:
        _sag("start_", "while the worst motor starts", start, rested, resistance, sheet)


def _sag(id: str, says: str, power: Figure, rested: Figure, resistance: Figure, sheet: Worksheet) -> None:
    current = sheet.work(
        f"{id}current",
        f"current {says}",
        eq.constant_power_current,
        open_voltage=rested,
        resistance=resistance,
        power=power,
    )
    sheet.work(
        f"{id}voltage",
        f"voltage {says}",
        eq.loaded_voltage,
        open_voltage=rested,
        resistance=resistance,
        current=current,
    )


def _life(spec: Spec, known: Known, sheet: Worksheet) -> None:
    """How many such days a lead-acid bank stands, by the power law through a maker's two rows."""
    rows = spec.table_rows("battery/cycles")
    if not rows:
        sheet.note("Cycles of lithium iron phosphate depend on its maker, its heat and how full it is kept.")
        return
    depth = known.bank("day.energy.depth")
    if float(depth) <= 0:
        return
    two = [row for row in data.table("battery/cycles") if row["chemistry"] == "AGM"]
    inputs: dict[str, Figure] = {}
    for word, row in (("shallow", two[0]), ("deep", two[1])):
        inputs[word] = _share(word, row, sheet)
        inputs[f"{word}_cycles"] = _cycles(f"{word}_cycles", row, sheet)
    exponent = sheet.work(
        "exponent", "how fast cycles fall with their depth", eq.life_exponent, shown=None, **inputs
    )
    counted = _share("counted", rows[0], sheet)
    counts = _cycles("counted_cycles", rows[0], sheet)
    cycles = sheet.work(
        "cycles", "days of this depth before it is worn out, at 77 °F", eq.cycles_at, depth=depth,
        counted=counted, cycles=counts, exponent=exponent,
    )  # fmt: skip
    sheet.work(
        "cycles_warm", "days of this depth, as warm as it is", eq.life_in_heat, cycles=cycles,
        temperature=sheet.given(spec.bank["temperature"]),
        reference=sheet.tabled("counted_at", "temperature the cycles are counted at", 298.15, "K",
                               source="flooded-temperature", row="25 °C"),
        halving=sheet.tabled("halving", "warmth that halves its life", 10.0, "delta_degC",
                             source="flooded-temperature", row="10 °C"),
    )  # fmt: skip


def _share(id: str, row: Mapping[str, str], sheet: Worksheet) -> Figure:
    return sheet.tabled(
        id,
        f"depth of a row of the table ({id})",
        float(units.read(row["depth"], "share")),
        "1",
        source=row["source"],
        row=f"{row['chemistry']}, {row['how']}",
        shown="%",
    )


def _cycles(id: str, row: Mapping[str, str], sheet: Worksheet) -> Figure:
    return sheet.tabled(
        id,
        f"cycles of that row ({id})",
        float(row["cycles"]),
        "1",
        source=row["source"],
        row=f"{row['chemistry']}, {row['how']}",
    )
