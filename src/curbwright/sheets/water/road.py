"""On the road: what a tap knocked open lets out with the pump left live, and what that does to the tongue."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from curbwright.build.cart import Build
from curbwright.equations import balance
from curbwright.equations import fit as where
from curbwright.equations import water as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.placing import Placing
from curbwright.sheets.water.pump import Worked
from curbwright.sheets.water.things import WaterThings, Wet

FULL = "balance.fresh_full"
"""The load case of a cart that is towed with its fresh tank full."""
SAFE = ("switch", "tow plug relay", "service key relay")


@dataclass(frozen=True)
class _Towed:
    """The cart on the road with its fresh tank full, and the water it loses."""

    load: Figure
    gross: Figure
    axle: Figure
    mass: Figure
    station: Figure
    to_deck: Figure
    sheet: Worksheet


def lock(build: Build, top: Worksheet) -> None:
    """Write whether the pump can run while the cart is towed; raises MissingInput where nothing is said."""
    sheet, given = top.section("lock", "the pump on the road"), build.water.pump
    with sheet.attempt():
        if given.lock is None:
            raise MissingInput("water.pump.lock", "what keeps the pump off on the road is not said")
        live = 0.0 if given.lock in SAFE else 1.0
        name = "the pump can run while it is towed (1: yes)"
        sheet.choice("live", name, live, "water.pump.lock", given.lock)
        if given.lock == "switch":
            sheet.note("A switch is as good as its check list: a relay on the service key is better.")


def road(
    build: Build, things: WaterThings, placing: Placing, worked: Worked, earlier: Mapping[str, Figure],
    top: Worksheet,
) -> None:  # fmt: skip
    """Write the water lost by the largest tap over the drive, and the tongue load before and after."""
    sheet = top.section("road", "a tap knocked open on the road, the pump left live")
    with sheet.attempt():
        tank = next(iter(things.fresh.values()))
        full = sheet.given(tank.item["capacity"])
        flows = {one.says: one.drawn for one in worked.alone}
        flow = sheet.largest("flow", "flow of the tap that gives most, alone open", flows)
        time = sheet.given(build.day["drive"])
        if build.water.pump.run_limit is not None:
            timer = sheet.given(build.water.pump["run_limit"])
            time = sheet.smallest("time", "time that the pump runs", {"the drive": time, "its timer": timer})
        sheet.work("to_empty", f"time that empties {tank.name}", eq.time_to_empty, volume=full, flow=flow)
        lost = sheet.work("lost", "water lost on the way", eq.lost, volume=full, flow=flow, time=time)
        sheet.work("left", "water left on arrival", eq.missing_of, need=full, has=lost)
        density = worked.source.water.density
        mass = sheet.work(
            "mass", "mass of the water lost", balance.mass_of_volume, volume=lost, density=density
        )
        _tongue(things, tank, placing, _towed(build, tank, placing, mass, earlier, sheet))


def _towed(
    build: Build, tank: Wet, placing: Placing, mass: Figure, earlier: Mapping[str, Figure], sheet: Worksheet
) -> _Towed:  # fmt: skip
    ids = (f"{FULL}.tongue_load", f"{FULL}.gross", "balance.axle")
    if any(id not in earlier for id in ids):
        raise MissingInput("trailer.axle.back", "how it tows with its fresh tank full is not known")
    load, gross, axle = (earlier[id] for id in ids)
    to_deck = sheet.given(build.trailer["ball_to_deck"])
    station = _station(tank, placing, to_deck, sheet)
    return _Towed(load, gross, axle, mass, station, to_deck, sheet)


def _tongue(things: WaterThings, tank: Wet, placing: Placing, towed: _Towed) -> None:
    """What the water does to the tongue: run away on the road, or into the waste tank by an open bowl."""
    sheet = towed.sheet
    gave = sheet.work(
        "gave", "tongue load that this water gave", balance.tongue_change_when_added, mass=towed.mass,
        station=towed.station, axle=towed.axle,
    )  # fmt: skip
    away = sheet.work("tongue_away", "tongue load once it is gone", eq.without, whole=towed.load, part=gave)
    rest = sheet.work(
        "gross_away", "gross mass once it is gone", eq.without, whole=towed.gross, part=towed.mass
    )
    shares = {
        "run away on the road": sheet.work(
            "share_away", "tongue share once it is gone", balance.weighed_share, shown="%", tongue_load=away,
            gross=rest,
        )
    }  # fmt: skip
    if things.waste:
        waste = next(iter(things.waste.values()))
        shares["run into the waste tank"] = _inside(tank, waste, placing, towed)
    sheet.smallest("share_least", "least tongue share after the loss", shares, shown="%")


def _inside(tank: Wet, waste: Wet, placing: Placing, towed: _Towed) -> Figure:
    sheet = towed.sheet
    behind = _station(waste, placing, towed.to_deck, sheet)
    moved = sheet.work(
        "moved", f"from {tank.name} back to {waste.name}", where.gap, near=towed.station, far=behind
    )
    change = sheet.work(
        "change", "change of tongue load with it in the waste tank", balance.tongue_change_when_moved,
        mass=towed.mass, moved=moved, axle=towed.axle,
    )  # fmt: skip
    load = sheet.total("tongue_inside", "tongue load with it in the waste tank", [towed.load, change])
    return sheet.work(
        "share_inside", "tongue share with it in the waste tank", balance.weighed_share, shown="%",
        tongue_load=load, gross=towed.gross,
    )  # fmt: skip


def _station(tank: Wet, placing: Placing, to_deck: Figure, sheet: Worksheet) -> Figure:
    placed = placing.items.get(tank.key)
    if placed is None:
        raise MissingInput(f"items.{tank.key}.back", f"{tank.name} has no place yet")
    name, back = f"{tank.name} behind the ball", placed.along.middle
    return sheet.work(f"station_{tank.key}", name, where.from_ball, ball_to_deck=to_deck, back=back)
