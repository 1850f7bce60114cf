"""The inverter: its loss curve, a day of it interval by interval, what feeds it, and the worst start."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from curbwright.equations import circuits as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.circuits.loads import Load
from curbwright.sheets.circuits.wiring import Wiring


@dataclass(frozen=True)
class Curve:
    """What the inverter is: its rating, and the loss curve through its tare and two efficiencies."""

    rating: Figure
    full: Figure
    """Efficiency at the rating."""
    tare: Figure
    slope: Figure
    curvature: Figure


@dataclass(frozen=True)
class Carried:
    """What the inverter carries; ``drawn`` is its DC power with all of it running, ``energy`` a day's."""

    running: Figure
    drawn: Figure
    energy: Figure


def curve(wiring: Wiring, sheet: Worksheet) -> Curve | None:
    """Write the inverter's loss curve; nothing where the cart has none."""
    section = wiring.build.electrical.inverter
    if section is None:
        return None
    rating, tare = sheet.given(section["rating"]), sheet.given(section["tare"])
    part, full = sheet.given(section["part"]), sheet.given(section["efficiency_full"])
    partly = sheet.given(section["efficiency_part"])
    curvature = sheet.work(
        "curvature", "loss curve: its third term", eq.loss_curvature, rating=rating, part=part,
        efficiency_part=partly, efficiency_full=full, tare=tare,
    )  # fmt: skip
    slope = sheet.work(
        "slope", "loss curve: its second term", eq.loss_slope, rating=rating, part=part,
        efficiency_part=partly, tare=tare, curvature=curvature,
    )  # fmt: skip
    if float(curvature) > 0:
        sheet.work("best_load", "load at which it loses least", eq.best_load, tare=tare, curvature=curvature)
        sheet.work(
            "best_efficiency", "its best efficiency", eq.best_efficiency, shown="%", tare=tare, slope=slope,
            curvature=curvature,
        )  # fmt: skip
    return Curve(rating, full, tare, slope, curvature)


def carried(
    wiring: Wiring, known: Curve | None, loads: Mapping[str, Load], sheet: Worksheet
) -> Carried | None:
    """Write what the inverter carries at once, in a day and while a motor starts."""
    on = {key: load for key, load in loads.items() if load.bus == "120 V inverter"}
    section = wiring.build.electrical.inverter
    if section is None:
        if on:
            raise MissingInput("electrical.inverter", "things run on an inverter, and none is described")
        return None
    if known is None:
        raise MissingInput("electrical.inverter", "the inverter is not described in full")
    running, drawn = _all_running(on, known, sheet)
    energy = _day(wiring, on, known, sheet)
    _starts(on, running, sheet)
    sheet.given(section["surge_time"])
    with sheet.attempt():
        sheet.given(section["surge"])
    if section.wave is not None:
        motors = [load for load in on.values() if float(load.multiple) > 1]
        rough = 1.0 if section.wave == "modified" and motors else 0.0
        sheet.choice("rough", "motors on a modified wave", rough, "electrical.inverter.wave", section.wave)
    return Carried(running, drawn, energy)


def _all_running(on: Mapping[str, Load], known: Curve, sheet: Worksheet) -> tuple[Figure, Figure]:
    """Everything on the inverter running at once."""
    running = sheet.total("running", "everything on it running", [one.power for one in on.values()],
                          unit="W")  # fmt: skip
    apparent = sheet.total(
        "apparent", "everything on it running, volts times amperes",
        [one.apparent for one in on.values()], unit="W",
    )  # fmt: skip
    drawn = sheet.work(
        "drawn", "DC power it draws then", eq.dc_power, tare=known.tare, slope=known.slope,
        curvature=known.curvature, power=running, apparent=apparent,
    )  # fmt: skip
    if float(running) > 0:
        sheet.work("efficiency", "its efficiency then", eq.efficiency, shown="%", power=running, drawn=drawn)
    return running, drawn


def _starts(on: Mapping[str, Load], running: Figure, sheet: Worksheet) -> None:
    """The largest motor starting while all else runs, and the longest start; with no motor, all running."""
    cases, times = {"no motor starting": running}, dict[str, Figure]()
    for key, load in on.items():
        if float(load.multiple) <= 1 or load.item.electric is None:
            continue
        cases[f"{load.name} starting"] = sheet.work(
            f"start_{key}", f"while {load.name} starts", eq.start_power, running=running,
            motor=load.power, multiple=load.multiple,
        )  # fmt: skip
        times[load.name] = sheet.given(load.item.electric["start_time"])
    sheet.largest("worst_start", "worst start on the inverter", cases)
    if times:
        sheet.largest("longest_start", "longest start on the inverter", times)


@dataclass(frozen=True)
class _Interval:
    begins: Figure
    ends: Figure
    on: tuple[Load, ...]

    @property
    def label(self) -> str:
        return f"{_clock(float(self.begins))} to {_clock(float(self.ends))}"


def _clock(seconds: float) -> str:
    minutes = round(seconds / 60)
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def _pieces(begins: Figure, ends: Figure, wiring: Wiring) -> list[tuple[Figure, Figure]]:
    """A window as pieces of one day: two where it runs past midnight."""
    known = wiring.constants
    if float(ends) > float(begins):
        return [(begins, ends)]
    return [(begins, known.day), (known.midnight, ends)]


def _intervals(wiring: Wiring, loads: Mapping[str, Load], sheet: Worksheet) -> list[_Interval]:
    """The day cut wherever something on the inverter, or the inverter, is switched; only while it is on."""
    section, midnight, day = (
        wiring.build.electrical.inverter, wiring.constants.midnight, wiring.constants.day
    )  # fmt: skip
    assert section is not None  # noqa: S101 - the caller has looked
    if section.on_at is not None and section.off_at is not None:
        switched = _pieces(sheet.given(section["on_at"]), sheet.given(section["off_at"]), wiring)
    else:
        switched = [(midnight, day)]
    spans = {load.key: _pieces(load.begins, load.ends, wiring) for load in loads.values()}
    cuts = {
        float(edge): edge
        for piece in (*switched, *(one for span in spans.values() for one in span))
        for edge in piece
    }
    places = [cuts[at] for at in sorted(cuts)]
    found = []
    for begins, ends in zip(places, places[1:], strict=False):
        on = tuple(one for one in loads.values() if _covers(spans[one.key], begins, ends))
        if on or _covers(switched, begins, ends):
            found.append(_Interval(begins, ends, on))
    return found


def _covers(pieces: list[tuple[Figure, Figure]], begins: Figure, ends: Figure) -> bool:
    return any(float(low) <= float(begins) and float(ends) <= float(high) for low, high in pieces)


def _day(wiring: Wiring, on: Mapping[str, Load], known: Curve, sheet: Worksheet) -> Figure:
    """The DC energy of a day, interval by interval through the loss curve; never by one efficiency."""
    rows: dict[str, dict[str, Figure]] = {}
    for number, one in enumerate(_intervals(wiring, on, sheet), 1):
        time = sheet.work(
            f"time_{number}", f"on from {one.label}", eq.time_between, shown="h", begins=one.begins,
            ends=one.ends,
        )  # fmt: skip
        power = sheet.total(
            f"power_{number}", f"mean load from {one.label}", [load.average for load in one.on], unit="W"
        )
        apparent = sheet.total(
            f"apparent_{number}", f"mean volts times amperes from {one.label}",
            [load.average_apparent for load in one.on], unit="W",
        )  # fmt: skip
        rows[one.label] = {
            "tare": known.tare, "slope": known.slope, "curvature": known.curvature, "power": power,
            "apparent": apparent, "time": time,
        }  # fmt: skip
    return sheet.schedule("energy", "DC energy of a day through the inverter", eq.inverter_energy, rows)
