"""How long the bank lasts: to its cut-off with a band, to its usable share, and by the old law beside it."""

from __future__ import annotations

from collections.abc import Mapping

from curbwright import data, units
from curbwright.equations import battery as eq
from curbwright.equations import circuits
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.battery.known import Known
from curbwright.sheets.battery.spec import Spec

DAY = 86400.0


def run(spec: Spec, known: Known, sheet: Worksheet) -> None:
    """Time to the cut-off, with a band, and by the old law beside it."""
    power = _power(spec, known, sheet)
    if float(power) <= 0:
        raise MissingInput("", "nothing draws on the battery")
    sheet.work(
        "to_usable",
        "time until the usable energy is gone",
        eq.time_on,
        energy=known.bank("usable_energy"),
        power=power,
    )
    _lasts(known, "time", "time until the loads drop out", known.bank("charge"), power, sheet)
    for row in data.table("battery/band"):
        case = row["case"]
        factor = sheet.tabled(
            f"{case}_load",
            f"load of a {'heavy' if case == 'low' else 'light'} day",
            float(row["load"]),
            "1",
            source=row["source"],
            row=row["how"],
        )
        scaled = sheet.work(
            f"{case}_power", f"power, {case} case", eq.power_scaled, power=power, factor=factor
        )
        charge = sheet.work(
            f"{case}_charge",
            f"charge of the full bank, {case} case",
            eq.charge_left,
            charge=known.bank("full"),
            temperature=known.bank("temperature_factor"),
            age=_age(spec, row, sheet),
        )
        _lasts(known, f"time_{case}", f"time until the loads drop out, {case} case", charge, scaled, sheet)
    _peukert(spec, known, power, sheet)


def _age(spec: Spec, row: Mapping[str, str], sheet: Worksheet) -> Figure:
    """The age of a case: new in the high one, the smaller of given and worn out in the low one."""
    case = row["case"]
    share = sheet.tabled(
        f"{case}_health",
        f"share of its first capacity, {case} case",
        float(units.read(row["age"], "share")),
        "1",
        source=row["source"],
        row=row["how"],
        shown="%",
    )
    if case == "high":
        return share
    return sheet.smallest(
        "low_age",
        "share of its first capacity, the lower",
        {"given": sheet.given(spec.bank["age"]), "worn out": share},
        shown="%",
    )


def _power(spec: Spec, known: Known, sheet: Worksheet) -> Figure:
    """The power it is drawn at: a day's energy while it is away, or over the day where that is not told."""
    energy = known.of("circuits.energy_per_day")
    with sheet.attempt():
        away = _away(spec, sheet)
        day = sheet.tabled("day", "a day", DAY, "s", source="convention")
        return sheet.work(
            "power",
            "mean power, the day's energy drawn while away",
            eq.power_away,
            energy=energy,
            away=away,
            day=day,
        )
    return sheet.largest("power", "mean power over the day", {"circuits": known.of("circuits.mean_power")})


def _away(spec: Spec, sheet: Worksheet) -> Figure:
    """Time from one charge to the next."""
    if spec.bank.away is not None:
        return sheet.largest(
            "away", "time from one charge to the next", {"as given": sheet.given(spec.bank["away"])}
        )
    hours = spec.build.day
    opens, closes = sheet.given(hours["opens"]), sheet.given(hours["closes"])
    if float(closes) > float(opens):
        serving = sheet.work("serving", "serving time", circuits.time_between, begins=opens, ends=closes)
    else:
        whole = sheet.tabled("midnight", "a day", DAY, "s", source="convention")
        serving = sheet.work(
            "serving", "serving time", circuits.time_past_midnight, begins=opens, ends=closes, day=whole
        )
    drive = sheet.given(hours["drive"])
    return sheet.total(
        "away", "time from one charge to the next: there, serving, and back", [drive, serving, drive]
    )


def _lasts(known: Known, id: str, name: str, charge: Figure, power: Figure, sheet: Worksheet) -> None:
    sheet.work(
        id,
        name,
        eq.time_to_cut_off,
        charge=charge,
        share=known.bank("share"),
        rate=known.bank("rate"),
        power=power,
        open_full=known.bank("open_full"),
        open_knee=known.bank("open_knee"),
        open_empty=known.bank("open_empty"),
        knee=known.bank("typical_knee"),
        resistance=known.bank("working_resistance"),
        cut_off=known.bank("lowest_voltage"),
    )


def _peukert(spec: Spec, known: Known, power: Figure, sheet: Worksheet) -> None:
    """The old law, scaled by the rated time, at the current of that power."""
    current = sheet.work(
        "current",
        "current at the nominal voltage",
        circuits.current_of,
        power=power,
        voltage=known.bank("nominal_voltage"),
    )
    part = spec.rates()
    if part is not None and part.rates is not None and not spec.lithium:
        exponent = _exponent(spec, known, sheet)
    else:
        exponent = spec.typical(sheet, "peukert", "exponent of Peukert's law")
    sheet.work(
        "peukert",
        "time by Peukert's law, for comparison",
        eq.peukert_time,
        capacity=known.bank("capacity_now"),
        rated_time=known.bank("twenty_hours"),
        current=current,
        exponent=exponent,
    )


def _exponent(spec: Spec, known: Known, sheet: Worksheet) -> Figure:
    """The exponent through the first and the last row of the maker's table."""
    part = spec.rates()
    assert part is not None  # noqa: S101 - the caller has looked
    assert part.rates is not None  # noqa: S101
    order = sorted(range(len(part.rates)), key=lambda at: part.rates[at][0])  # type: ignore[index]
    rows = {}
    for word, at in (("short", order[0]), ("long", order[-1])):
        time = sheet.given(part.cell("rates", at, 0, f"time of row {at + 1}"))
        amount = sheet.given(part.cell("rates", at, 1, f"capacity of row {at + 1}"))
        rows[word] = (
            time,
            sheet.work(
                f"{word}_current", f"current of row {at + 1}", eq.row_current, charge=amount, time=time
            ),
        )
    return sheet.work(
        "exponent",
        "exponent of Peukert's law, from the maker's table",
        eq.peukert_exponent,
        current=rows["long"][1],
        time=rows["long"][0],
        larger_current=rows["short"][1],
        shorter_time=rows["short"][0],
    )
