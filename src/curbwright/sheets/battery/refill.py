"""Filling the bank again: how long each charger takes after a day, and what all of them put back in one."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright.build.battery import Charger
from curbwright.equations import battery as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.battery.known import Known
from curbwright.sheets.battery.spec import Spec


def refill(spec: Spec, known: Known, sheet: Worksheet) -> None:
    """Write the time each charger takes, and the energy that a day's charging puts back."""
    if not spec.bank.chargers and known.maybe("solar.energy_per_day") is None:
        sheet.note("Nothing charges the bank.")
        return
    with sheet.attempt():
        stages = _stages(spec, known, sheet)
        for name, charger in spec.bank.chargers.items():
            if charger.supply != "tow lead":
                below = sheet.section(name, f"charger: {name.replace('_', ' ')}")
                with below.attempt():
                    _time(name, stages, known, below)
        _sun(stages, known, sheet)
        _back(spec, stages, known, sheet)


@dataclass(frozen=True)
class _Stages:
    """What charging is worked from: what is missing after a day, and how the current tapers."""

    missing: Figure
    charge: Figure
    bulk_until: Figure
    efficiency: Figure
    end: Figure


def _stages(spec: Spec, known: Known, sheet: Worksheet) -> _Stages:
    charge = known.bank("capacity_now")
    taken = sheet.work(
        "taken",
        "charge that a day takes",
        eq.charge_of,
        energy=known.bank("day.energy.need"),
        voltage=known.bank("nominal_voltage"),
    )
    missing = sheet.smallest(
        "missing", "charge missing after a day", {"a day's": taken, "all it holds": charge}
    )
    return _Stages(
        missing,
        charge,
        spec.typical(sheet, "bulk_until", "state of charge up to which the full current flows"),
        spec.typical(sheet, "coulombic", "share of the charge that comes back out"),
        sheet.work(
            "end_current",
            "current at which it counts as full",
            eq.rated_current,
            charge=charge,
            rate=spec.typical(sheet, "end_rate", "end current for its capacity"),
        ),
    )


def _time(name: str, stages: _Stages, known: Known, sheet: Worksheet) -> None:
    """Time of one charger: the full current, then, for lead acid, the held voltage."""
    current = sheet.smallest(
        "current",
        "current it charges with",
        {
            "the charger's": known.bank(f"charging.{name}.current"),
            "all the bank takes": known.bank("charging.most_current"),
        },
    )
    bulk = sheet.work(
        "bulk_charge",
        "charge put in at the full current",
        eq.bulk_charge,
        missing=stages.missing,
        charge=stages.charge,
        bulk_until=stages.bulk_until,
    )
    times = [
        sheet.work(
            "bulk",
            "time at the full current",
            eq.bulk_time,
            charge=bulk,
            current=current,
            efficiency=stages.efficiency,
        )
    ]
    if float(stages.bulk_until) < 1:
        times.append(
            sheet.work(
                "absorption",
                "time at the held voltage",
                eq.absorption_time,
                missing=stages.missing,
                charge=stages.charge,
                bulk_until=stages.bulk_until,
                current=current,
                end_current=stages.end,
            )
        )
    sheet.total("time", "time to fill it again after a day", times)


def _sun(stages: _Stages, known: Known, sheet: Worksheet) -> None:
    """Days of clear sun that replace a day's energy."""
    clear = known.maybe("solar.energy_per_day")
    if clear is None or float(clear) <= 0:
        return
    back = sheet.work(
        "sun_back",
        "energy that comes back out of a day's sun",
        eq.energy_back,
        energy=clear,
        nominal=known.bank("nominal_voltage"),
        voltage=known.bank("charging.voltage"),
        efficiency=stages.efficiency,
    )
    sheet.work(
        "sun_days",
        "such days of sun for a day's energy",
        eq.days_on,
        usable=known.bank("day.energy.need"),
        need=back,
    )


def _back(spec: Spec, stages: _Stages, known: Known, sheet: Worksheet) -> None:
    """What all chargers, and a dull day's sun, put back in a day."""
    energies: list[Figure] = []
    for name, charger in spec.bank.chargers.items():
        if charger.supply == "tow lead":
            continue
        energies.append(
            sheet.work(
                f"{name}_energy",
                f"energy put back by {name.replace('_', ' ')}",
                eq.energy_in,
                current=known.bank(f"charging.{name}.current"),
                time=_connected(spec, name, charger, sheet),
                efficiency=stages.efficiency,
                voltage=known.bank("nominal_voltage"),
            )
        )
    sun = known.maybe("battery.day.energy.sun")
    if sun is not None:
        energies.append(sun)
    if not energies:
        raise MissingInput("battery.chargers", "what charges the bank is not told in numbers")
    sheet.total("energy", "energy put back in a day, the sun dull", energies)


def _connected(spec: Spec, name: str, charger: Charger, sheet: Worksheet) -> Figure:
    """Time a day that a charger is connected."""
    if charger.time is not None or charger.supply != "tow DC-DC":
        return sheet.given(charger["time"])
    drive = sheet.given(spec.build.day["drive"])
    return sheet.total(f"{name}_time", "drive there and back", [drive, drive])
