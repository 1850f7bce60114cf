"""What controller and wires have to carry, and the voltage of a cold bright morning."""

from __future__ import annotations

from collections.abc import Mapping

from curbwright.build.solar import Solar
from curbwright.equations import solar as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.solar.array import Array, charging_voltage


def currents(solar: Solar, figures: Mapping[str, Figure], array: Array | None, sheet: Worksheet) -> None:
    """Write currents and voltages, each as far as it is known."""
    for part in (_circuit, _controller, _voltage):
        with sheet.attempt():
            part(solar, figures, array, sheet)


def _circuit(solar: Solar, figures: Mapping[str, Figure], array: Array | None, sheet: Worksheet) -> None:
    """The current between panels and controller."""
    short, series = sheet.given(solar["short_circuit"]), sheet.given(solar["in_series"])
    if array is None:
        raise MissingInput("solar.count", "panels: number of panels is not known")
    strings = sheet.work("strings", "strings of panels", eq.strings_of, count=array.count, series=series)
    circuit = sheet.work(
        "circuit", "largest current from the panels", eq.circuit_current, short_circuit=short,
        strings=strings,
    )  # fmt: skip
    sheet.work(
        "conductor", "current that its wire and fuse are chosen for", eq.conductor_current, circuit=circuit
    )


def _controller(solar: Solar, figures: Mapping[str, Figure], array: Array | None, sheet: Worksheet) -> None:
    """The current that the controller is asked to give, against what it can."""
    says = "current that the controller is asked for"
    if solar.controller.kind == "PWM":
        circuit = sheet.figures().get(f"{sheet.id}.circuit")
        if circuit is None:
            raise MissingInput(
                "solar.short_circuit", "panels: short-circuit current of one panel is not given"
            )
        sheet.largest("output", says, {"the panels' own": circuit})
    elif array is not None:
        sheet.work(
            "output", says, eq.controller_output, rated=array.rated, loss=array.losses,
            efficiency=array.efficiency, voltage=charging_voltage(figures),
        )  # fmt: skip
    sheet.largest(
        "controller", "largest current of the controller",
        {"as given": sheet.given(solar.controller["current"])},
    )  # fmt: skip


def _voltage(solar: Solar, figures: Mapping[str, Figure], array: Array | None, sheet: Worksheet) -> None:
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
