"""What controller and wires have to carry, and the voltage of a cold bright morning."""

from __future__ import annotations

from collections.abc import Mapping

from curbwright.build.solar import Solar
from curbwright.equations import solar as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet


def currents(solar: Solar, figures: Mapping[str, Figure], sheet: Worksheet) -> None:
    """Write currents and voltages, each as far as it is known."""
    for part in (_circuit, _controller, _voltage):
        with sheet.attempt():
            part(solar, figures, sheet)


def _strings(solar: Solar, sheet: Worksheet) -> Figure:
    found = sheet.figures().get(f"{sheet.id}.strings")
    if found is not None:
        return found
    count = (
        sheet.given(solar["count"])
        if solar.count is not None or not solar.panels
        else sheet.choice(
            "count", "panels", float(len(solar.panels)), "solar.panels", ", ".join(solar.panels)
        )
    )
    return sheet.work(
        "strings", "strings of panels", eq.strings_of, count=count, series=sheet.given(solar["in_series"])
    )


def _circuit(solar: Solar, figures: Mapping[str, Figure], sheet: Worksheet) -> None:
    """The current between panels and controller."""
    circuit = sheet.work(
        "circuit",
        "largest current from the panels",
        eq.circuit_current,
        short_circuit=sheet.given(solar["short_circuit"]),
        strings=_strings(solar, sheet),
    )
    sheet.work(
        "conductor", "current that its wire and fuse are chosen for", eq.conductor_current, circuit=circuit
    )


def _controller(solar: Solar, figures: Mapping[str, Figure], sheet: Worksheet) -> None:
    """The current that the controller is asked to give, against what it can."""
    if solar.controller.kind == "PWM":
        circuit = sheet.figures().get(f"{sheet.id}.circuit")
        if circuit is None:
            raise MissingInput(
                "solar.short_circuit", "panels: short-circuit current of one panel is not given"
            )
        sheet.largest("output", "current that the panels make of it", {"the panels' own": circuit})
    else:
        rated = sheet.work(
            "all",
            "rated power of all panels",
            eq.panels_together,
            one=sheet.given(solar["rated"]),
            count=_count(solar, sheet),
        )
        sheet.work(
            "output",
            "current that the panels make of it",
            eq.current_at,
            power=rated,
            voltage=_nominal(figures),
        )
    sheet.largest(
        "controller",
        "largest current of the controller",
        {"as given": sheet.given(solar.controller["current"])},
    )


def _count(solar: Solar, sheet: Worksheet) -> Figure:
    _strings(solar, sheet)
    found = sheet.figures()
    return found[f"{sheet.id}.count"] if f"{sheet.id}.count" in found else found["solar.count"]


def _nominal(figures: Mapping[str, Figure]) -> Figure:
    if "battery.nominal_voltage" not in figures:
        raise MissingInput("battery", "the bank that the panels charge is not known yet")
    return figures["battery.nominal_voltage"]


def _voltage(solar: Solar, figures: Mapping[str, Figure], sheet: Worksheet) -> None:
    """The open voltage of a string on a cold bright morning, against what the controller stands."""
    rated = sheet.tabled(
        "rated_cell",
        "cell temperature of the rating",
        298.15,
        "K",
        source="photovoltaic-library",
        row="25 °C",
    )
    colder = sheet.work(
        "colder",
        "cells below their rating on the coldest morning",
        eq.warmer_than_rated,
        cell=rated,
        rated=sheet.given(solar["coldest"]),
    )
    sheet.work(
        "cold_voltage",
        "open voltage of a string then",
        eq.cold_voltage,
        open_voltage=sheet.given(solar["open_voltage"]),
        series=sheet.given(solar["in_series"]),
        gain=sheet.given(solar["voltage_per_degree"]),
        colder=colder,
    )
    sheet.largest(
        "most_voltage",
        "largest voltage that the controller stands",
        {"as given": sheet.given(solar.controller["most_voltage"])},
    )
