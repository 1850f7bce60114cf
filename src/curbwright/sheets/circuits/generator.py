"""An engine generator: what height and heat leave of its plate, its load, what a neighbour hears."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from curbwright.build.circuits import Generator
from curbwright.equations import circuits as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.circuits.loads import Load
from curbwright.sheets.circuits.mains import carried_by_shore
from curbwright.sheets.circuits.wiring import Wiring


def generator(wiring: Wiring, loads: Callable[[], Mapping[str, Load]], sheet: Worksheet) -> None:
    """Write what the generator gives, what it has to carry and start, and its noise where that is given."""
    section = wiring.build.electrical.generator
    if section is None:
        return
    with sheet.attempt():
        _load(wiring, section, loads(), sheet)
    if section.noise_limit is not None or section.sound_power is not None:
        noise = sheet.section("noise", "what a neighbour hears")
        with noise.attempt():
            noise.work(
                "heard", "noise at the nearest ear, in dB", eq.sound_at,
                sound_power=noise.given(section["sound_power"]), distance=noise.given(section["listener"]),
            )  # fmt: skip
            noise.given(section["noise_limit"])
    sheet.note("Exhaust at least 10 ft from openings, intakes and the way out; refuel only cold and closed.")


def _load(wiring: Wiring, section: Generator, loads: Mapping[str, Load], sheet: Worksheet) -> None:
    carried = carried_by_shore(wiring, loads)
    running = sheet.total("running", "load on the generator", [one.power for one in carried], unit="W")
    cases = {"no motor starting": running}
    for one in carried:
        if float(one.multiple) > 1:
            cases[f"{one.name} starting"] = sheet.work(
                f"start_{one.key}", f"while {one.name} starts", eq.start_power, running=running,
                motor=one.power, multiple=one.multiple,
            )  # fmt: skip
    sheet.largest("worst_start", "worst start on the generator", cases)
    gives = _derated("gives", "what it gives without end", section, sheet.given(section["rating"]), sheet)
    sheet.work(
        "share", "load as a share of what it gives", eq.efficiency, shown="%", power=running, drawn=gives
    )
    _derated("starts", "what it gives while a motor starts", section, sheet.given(section["surge"]), sheet)


def _derated(id: str, name: str, section: Generator, plate: Figure, sheet: Worksheet) -> Figure:
    """A plate's power at this height and in this air, on the fuel it runs on."""
    if section.fuel == "propane" and section.plate_fuel == "gasoline":
        plate = sheet.work(f"{id}_on_propane", f"{name}, on propane", eq.on_propane, power=plate)
    return sheet.work(
        id, name, eq.derated_power, power=plate, altitude=sheet.given(section["altitude"]),
        air=sheet.given(section["air"]),
    )  # fmt: skip
