"""The load schedule: what each thing draws, when it is on, and what a day of it takes."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright.build.circuits import Bus, Electric
from curbwright.build.fit import Item
from curbwright.equations import circuits as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.circuits.wiring import Wiring

CONTINUOUS = 3 * 3600.0
"""A load that is on this long counts as continuous: 210.20."""
_WIRED = {"12 V", "120 V"}


@dataclass(frozen=True)
class Load:
    """One thing that draws power.

    ``time`` is how long it runs or is switched on, ``share`` the part of that a thermostat keeps it running.
    ``average`` is its mean power from ``begins`` to ``ends``: clock times, past midnight where they are less.
    """

    key: str
    name: str
    bus: Bus
    item: Item
    priority: int
    power: Figure
    apparent: Figure
    multiple: Figure
    time: Figure
    share: Figure
    energy: Figure
    begins: Figure
    ends: Figure
    average: Figure
    average_apparent: Figure

    @property
    def continuous(self) -> bool:
        """Whether it is on for three hours or longer."""
        return float(self.time) >= CONTINUOUS


def load_schedule(wiring: Wiring, sheet: Worksheet) -> dict[str, Load]:
    """Write every load; one whose inputs are missing stands in the gaps."""
    loads: dict[str, Load] = {}
    for key, item in wiring.build.items.items():
        if item.electric is None and (wiring.is_supply(key) or _WIRED.isdisjoint(item.connects)):
            continue
        below = sheet.section(key, item.name)
        with below.attempt():
            loads[key] = _load(wiring, key, item, below)
    return loads


def _load(wiring: Wiring, key: str, item: Item, sheet: Worksheet) -> Load:
    electric = item.electric
    if electric is None:
        raise MissingInput(f"items.{key}.electric", f"{item.name}: what it draws is not given")
    if electric.bus is None:
        raise MissingInput(f"{electric.path}.bus", f"{item.name}: the supply it runs on is not given")
    power = _power(wiring, item.name, electric, sheet)
    factor = sheet.given(electric["power_factor"]) if electric.bus != "12 V" else None
    apparent = _apparent("apparent", f"{item.name}: volts times amperes", power, factor, sheet)
    begins, ends, span = _window(wiring, item.name, electric, sheet)
    time = _time(electric, span, sheet)
    share = _share(wiring, key, item, electric, sheet)
    energy = sheet.work(
        "energy", f"{item.name}: energy a day", eq.daily_energy, power=power, share=share, time=time
    )
    if float(time) > float(span):
        sheet.note(f"{item.name}: is on for longer than between its two times; spread over the whole day")
        begins, ends, span = wiring.constants.midnight, wiring.constants.day, wiring.constants.day
    average = sheet.work(
        "average", f"{item.name}: mean power while it is switched on", eq.mean_power, energy=energy, time=span
    )
    steady = _apparent("average_apparent", f"{item.name}: mean volts times amperes", average, factor, sheet)
    multiple = sheet.given(electric["start_multiple"])
    return Load(
        key, item.name, electric.bus, item, electric.priority, power, apparent, multiple, time, share, energy,
        begins, ends, average, steady,
    )  # fmt: skip


def _apparent(id: str, name: str, power: Figure, factor: Figure | None, sheet: Worksheet) -> Figure:
    """Volts times amperes: the power itself on direct current."""
    if factor is None:
        return power
    return sheet.work(id, name, eq.apparent_power, power=power, power_factor=factor)


def _power(wiring: Wiring, name: str, electric: Electric, sheet: Worksheet) -> Figure:
    """The running power as given, or from the label's volts and amperes."""
    if electric.power is not None or electric.current is None:
        return sheet.given(electric["power"])
    direct, says = electric.bus == "12 V", f"{name}: power while it runs"
    voltage = wiring.constants.low if direct else wiring.constants.mains
    if electric.voltage is not None:
        voltage = sheet.given(electric["voltage"])
    current = sheet.given(electric["current"])
    if direct:
        return sheet.work("power", says, eq.direct_power, voltage=voltage, current=current)
    return sheet.work(
        "power", says, eq.power_of, voltage=voltage, current=current,
        power_factor=sheet.given(electric["power_factor"]),
    )  # fmt: skip


def _window(wiring: Wiring, name: str, electric: Electric, sheet: Worksheet) -> tuple[Figure, Figure, Figure]:
    """When it is switched on and off, and the time between; all day where nothing else is meant."""
    clocked = electric.on_at is not None or electric.off_at is not None
    known = wiring.constants
    served = electric.duty in ("window", "event") and (electric.hours is None or _served(wiring))
    if not clocked and not served:
        return known.midnight, known.day, known.day
    day = wiring.build.day
    begins = sheet.given(electric["on_at"] if electric.on_at is not None else day["opens"])
    ends = sheet.given(electric["off_at"] if electric.off_at is not None else day["closes"])
    says = f"{name}: time between"
    if float(ends) > float(begins):
        return begins, ends, sheet.work("between", says, eq.time_between, shown="h", begins=begins, ends=ends)
    span = sheet.work(
        "between", says, eq.time_past_midnight, shown="h", begins=begins, ends=ends, day=known.day
    )
    return begins, ends, span


def _served(wiring: Wiring) -> bool:
    return wiring.build.day.opens is not None and wiring.build.day.closes is not None


def _time(electric: Electric, span: Figure, sheet: Worksheet) -> Figure:
    """How long it runs or is switched on in a day."""
    if electric.hours is not None or electric.duty == "event":
        return sheet.given(electric["hours"])
    return span


def _share(wiring: Wiring, key: str, item: Item, electric: Electric, sheet: Worksheet) -> Figure:
    """The share of its time that it runs: as given, as the cold sheet works it, or all of it."""
    if electric.duty != "thermostat":
        return sheet.tabled("all", f"{item.name}: share of that time", 1.0, "1", source="convention",
                            row="runs while it is on", shown="%")  # fmt: skip
    worked = wiring.figures.get(f"cold.{key}.duty_mean")
    if electric.share is None and worked is not None:
        return worked
    return sheet.given(electric["share"])
