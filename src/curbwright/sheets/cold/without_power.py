"""Without power: how long the food stays within its limit, shut, alone and beside the ice that is in it."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright import data
from curbwright.build.cold import ColdBox
from curbwright.equations import cold as eq
from curbwright.figures import Figure, Worksheet

CLOSE = 1e-12
"""Two temperatures this close, in relation to the limit, are the same."""


@dataclass(frozen=True)
class Warming:
    """A box left to itself."""

    capacity: Figure
    conductance: Figure
    around: Figure
    steady: Figure
    """Heat that comes in by other ways than the walls: hot neighbours, sun."""
    start: Figure
    limit: Figure


@dataclass(frozen=True)
class Ice:
    """Ice or packs in a box."""

    mass: Figure
    melting: Figure
    latent: Figure
    contact: Figure


def ice_in(box: ColdBox, sheet: Worksheet) -> Ice | None:
    """Write what ice there is; None where there is none."""
    if not box.ice:
        return None
    table = data.table("cold/packs")
    row = table.row(box.ice_kind)
    melting = table.quantity(box.ice_kind, "melting", "temperature")
    return Ice(
        sheet.given(box["ice"]),
        sheet.tabled(
            "melting", f"{box.ice_kind} melts at", float(melting), "K", source=row["source"],
            row=box.ice_kind,
        ),
        sheet.tabled(
            "latent", f"heat of melting of {box.ice_kind}",
            float(table.quantity(box.ice_kind, "latent", "heat_content")), "J/kg", source=row["source"],
            row=box.ice_kind,
        ),
        sheet.given(box["ice_contact"]),
    )  # fmt: skip


def hold_over(warming: Warming, ice: Ice | None, sheet: Worksheet) -> Figure | None:
    """Work out how long the food stays within its limit; None where it does for ever."""
    if float(warming.start) >= float(warming.limit) * (1 - CLOSE):
        sheet.note("The food is at its limit before the power fails.")
        return sheet.tabled("time", "time within the limit without power", 0.0, "s", source="convention")
    alone = _alone("alone", "time within the limit without power, no ice", warming, warming.start, sheet)
    if alone is None:
        sheet.note("It never warms past the limit.")
        return None
    if ice is None or float(ice.melting) >= float(warming.limit):
        return alone
    if float(ice.melting) >= float(warming.start):
        sheet.note("The box is colder than the ice melts: what the ice would hold later is left out.")
        return alone
    return _beside_ice(warming, ice, sheet)


def _alone(id: str, name: str, warming: Warming, start: Figure, sheet: Worksheet) -> Figure | None:
    """Time from a start to the limit with nothing to cool it; None where it settles below the limit."""
    settles = sheet.work(
        f"{id}_settles", "temperature it would end at", eq.settles_at, surroundings=warming.around,
        steady=warming.steady, conductance=warming.conductance,
    )  # fmt: skip
    if float(settles) <= float(warming.limit):
        return None
    return sheet.work(
        id, name, eq.time_warming, capacity=warming.capacity, conductance=warming.conductance, low=start,
        high=warming.limit, settles=settles,
    )  # fmt: skip


def _beside_ice(warming: Warming, ice: Ice, sheet: Worksheet) -> Figure:
    """First beside ice that melts, then alone; or past the limit with ice still left, too badly coupled."""
    both = sheet.work(
        "both", "walls and contact with the ice together", eq.together, walls=warming.conductance,
        contact=ice.contact,
    )  # fmt: skip
    settles = sheet.work(
        "beside_ice", "temperature it settles at beside the ice", eq.temperature_beside_ice,
        walls=warming.conductance, surroundings=warming.around, steady=warming.steady, contact=ice.contact,
        melting=ice.melting,
    )  # fmt: skip
    most = sheet.work(
        "ice_power", "heat the ice can take up while the food is within its limit", eq.ice_power,
        contact=ice.contact, limit=warming.limit, melting=ice.melting,
    )  # fmt: skip
    past = None
    if float(settles) > float(warming.limit):
        sheet.note("The ice cannot take up heat as fast as it comes in: more of it, flatter, or wet, would.")
        past = sheet.work(
            "past", "time to the limit beside the ice", eq.time_warming, capacity=warming.capacity,
            conductance=both, low=warming.start, high=warming.limit, settles=settles,
        )  # fmt: skip
    gone = _gone(warming, ice, settles, both, most, sheet)
    if past is not None and float(past) <= float(gone):
        return past
    after = sheet.work(
        "after_ice", "temperature when the ice is gone", eq.temperature_after, start=warming.start,
        settles=settles, time=gone, capacity=warming.capacity, conductance=both,
    )  # fmt: skip
    then = _alone("then", "time to the limit after the ice is gone", warming, after, sheet)
    return gone if then is None else sheet.total("time", "time within the limit without power", [gone, then])


def _gone(
    warming: Warming, ice: Ice, settles: Figure, both: Figure, most: Figure, sheet: Worksheet
) -> Figure:
    """When the last ice melts: the root of the heat it can still take up."""
    least = float(ice.contact) * (min(float(settles), float(warming.start)) - float(ice.melting))
    slowest = float(ice.mass) * float(ice.latent) / max(least, float(most) * 1e-3)
    return sheet.solve(
        "ice_gone", "time until the ice is gone", eq.ice_unmelted, for_="time", between=(0.0, 2 * slowest),
        mass=ice.mass, latent=ice.latent, contact=ice.contact, melting=ice.melting, start=warming.start,
        settles=settles, capacity=warming.capacity, conductance=both,
    )  # fmt: skip
