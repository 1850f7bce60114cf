"""What the battery has to give: connected load and energy by supply, the largest current, the worst start."""

from __future__ import annotations

from collections.abc import Mapping

from curbwright.equations import circuits as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.circuits.inverter import Carried, Curve
from curbwright.sheets.circuits.loads import Load
from curbwright.sheets.circuits.wiring import Wiring

BUSES = {"12v": "12 V", "inverter": "120 V inverter", "shore": "120 V shore"}


def by_supply(wiring: Wiring, loads: Mapping[str, Load], sheet: Worksheet) -> None:
    """Write the connected load, a day's energy and the mean load of each supply."""
    for id, bus in BUSES.items():
        carried = [load for load in loads.values() if load.bus == bus]
        if not carried:
            continue
        sheet.total(f"connected_{id}", f"connected load, {bus}", [load.power for load in carried])
        rows = {load.name: {"power": load.power, "share": load.share, "time": load.time} for load in carried}
        energy = sheet.schedule(f"energy_{id}", f"energy a day at the loads, {bus}", eq.daily_energy, rows)
        sheet.work(f"mean_{id}", f"mean load over a day, {bus}", eq.mean_power, energy=energy,
                   time=wiring.constants.day)  # fmt: skip


def from_battery(
    wiring: Wiring, loads: Mapping[str, Load], curve: Curve | None, carried: Carried | None, sheet: Worksheet
) -> None:
    """Write what is drawn from the battery in a day and at most."""
    low = [load for load in loads.values() if load.bus == "12 V"]
    if not low and carried is None:
        sheet.note("Nothing runs on the battery.")
        return
    rows = {load.name: {"power": load.power, "share": load.share, "time": load.time} for load in low}
    energies = [sheet.schedule("dc_energy_per_day", "energy a day of the 12 V loads", eq.daily_energy, rows)]
    powers = [sheet.total("dc_power", "12 V loads, all running", [load.power for load in low], unit="W")]
    if carried is not None:
        energies.append(
            sheet.total("inverter_energy_per_day", "energy a day into the inverter", [carried.energy])
        )
        powers.append(sheet.total("inverter_dc_power", "into the inverter, all running", [carried.drawn]))
    energy = sheet.total("energy_per_day", "energy a day from the battery", energies)
    sheet.work(
        "mean_power", "mean power from the battery over a day", eq.mean_power, energy=energy,
        time=wiring.constants.day,
    )  # fmt: skip
    largest = sheet.total("largest_dc_power", "from the battery, everything running", powers)
    _start(loads, curve, carried, powers[0], largest, sheet)
    with sheet.attempt():
        sheet.work(
            "largest_dc_current", "current from the battery, everything running, at its lowest voltage",
            eq.current_of, power=largest, voltage=wiring.lowest_voltage(),
        )  # fmt: skip


def _start(
    loads: Mapping[str, Load], curve: Curve | None, carried: Carried | None, direct: Figure,
    largest: Figure, sheet: Worksheet,
) -> None:  # fmt: skip
    """The largest motor starting while all else runs, as the battery sees it."""
    cases = {"no motor starting": largest}
    for key, load in loads.items():
        if float(load.multiple) <= 1 or load.bus == "120 V shore":
            continue
        if load.bus == "12 V":
            cases[f"{load.name} starting"] = sheet.work(
                f"start_{key}", f"from the battery while {load.name} starts", eq.start_power, running=largest,
                motor=load.power, multiple=load.multiple,
            )  # fmt: skip
        elif curve is not None and carried is not None:
            cases[f"{load.name} starting"] = _through(load, curve, carried, direct, sheet)
    sheet.largest("largest_start_power", "worst start from the battery", cases)


def _through(load: Load, curve: Curve, carried: Carried, direct: Figure, sheet: Worksheet) -> Figure:
    key = load.key
    start = sheet.work(
        f"start_{key}_mains", f"on the inverter while {load.name} starts", eq.start_power,
        running=carried.running, motor=load.power, multiple=load.multiple,
    )  # fmt: skip
    drawn = sheet.work(
        f"start_{key}_drawn", f"into the inverter while {load.name} starts", eq.dc_power, tare=curve.tare,
        slope=curve.slope, curvature=curve.curvature, power=start, apparent=start,
    )  # fmt: skip
    return sheet.total(f"start_{key}", f"from the battery while {load.name} starts", [direct, drawn])


def complete(schedule: Worksheet) -> None:
    """Raise MissingInput if a load is not known: a sum with something missing is no sum."""
    for gap in schedule.all_gaps():
        raise MissingInput(gap.path, gap.says)
