"""What burning leaves in the air, with the fan on and off, and how soon leaking gas burns."""

from __future__ import annotations

from curbwright.build.exhaust import Exhaust
from curbwright.equations import cold, gas
from curbwright.equations import exhaust as eq
from curbwright.equations import fit as where
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.exhaust.things import PARTS, Constants, Cooking
from curbwright.sheets.placing import Placing

GASES = {
    "carbon_dioxide": ("carbon dioxide", PARTS),
    "oxygen": ("oxygen", "%"),
    "monoxide": ("carbon monoxide of a badly set burner", PARTS),
}
"""What is followed, and the unit it prints in."""


def air_quality(
    exhaust: Exhaust, placing: Placing, things: list[Cooking], flow: Figure | None, constants: Constants,
    top: Worksheet,
) -> None:  # fmt: skip
    """Write what is in the air with the fan on and off, and after what time; nothing of an open cart."""
    room = placing.room
    if room.height is None or not things:
        return
    sheet = top.section("air", "what burning leaves in the air, every burner full on")
    load = sheet.total("load", "all burners that take the cart's air", [one.load for one in things],
                       shown="BTU/h|kW")  # fmt: skip
    gas_flow = sheet.work("gas", "gas they burn", gas.flow_of, shown="cfh|L/h", load=load,
                          heat=constants["gas_heat"])  # fmt: skip
    long = sheet.work("length", "inside length", where.gap, near=room.front, far=room.rear)
    volume = sheet.work("volume", "air in the cart", cold.box_volume, shown="ft3|m3", width=room.width,
                        depth=long, height=room.height)  # fmt: skip
    ratios = {
        "carbon_dioxide": constants["carbon_dioxide"],
        "oxygen": constants["oxygen"],
        "monoxide": sheet.work("monoxide", "carbon monoxide for one of gas", eq.part_of,
                               ratio=constants["dry_products"], share=constants["burner_monoxide"]),
    }  # fmt: skip
    if flow is not None and float(flow) > 0:
        missed = sheet.work("missed", "share of it that the hood misses", eq.missed, shown="%",
                            caught=sheet.given(exhaust["capture"]))  # fmt: skip
        below = sheet.section("fan_on", "with the fan running")
        for name, ratio in ratios.items():
            _steady(name, ratio, gas_flow, missed, flow, constants, below)
    still = sheet.given(exhaust["fan_off_flow"])
    whole = constants["all_of_it"]
    below = sheet.section("fan_off", "with the fan off and every burner on")
    for name, ratio in ratios.items():
        if float(still) > 0:
            source, end = _steady(name, ratio, gas_flow, whole, still, constants, below)
            _time(name, source, end, still, volume, constants, below)
    below.note("These are a mixed room's: beside the burners it is worse. No fan, no fire.")
    _leak(things, volume, constants, top)


def _steady(
    name: str, ratio: Figure, gas_flow: Figure, share: Figure, flow: Figure, constants: Constants,
    sheet: Worksheet,
) -> tuple[Figure, Figure]:  # fmt: skip
    says, shown = GASES[name]
    source = sheet.work(f"{name}_given", f"{says} given off", eq.given_off, shown="cfh|L/h", gas=gas_flow,
                        ratio=ratio, share=share)  # fmt: skip
    outside = constants[f"outside_{name}"]
    end = sheet.work(name, f"{says} in the end", eq.steady_share, shown=shown, outside=outside, source=source,
                     flow=flow)  # fmt: skip
    return source, end


def _time(
    name: str, source: Figure, end: Figure, flow: Figure, volume: Figure, constants: Constants,
    sheet: Worksheet,
) -> None:  # fmt: skip
    """The time until the limit is passed, where it is."""
    says, _ = GASES[name]
    limit = constants[f"{name}_limit"]
    passes = float(end) < float(limit) if name == "oxygen" else float(end) > float(limit)
    if not passes:
        sheet.note(f"The limit of {says} is not passed.")
        return
    outside = constants[f"outside_{name}"]
    sheet.work(f"{name}_time", f"time until {says} passes its limit", eq.time_to_share, volume=volume,
               flow=flow, source=source, outside=outside, limit=limit)  # fmt: skip


def _leak(things: list[Cooking], volume: Figure, constants: Constants, top: Worksheet) -> None:
    """How soon the largest burner, open and unlit, makes the shut cart explosive."""
    sheet = top.section("leak", "a burner open and unlit in the shut cart")
    largest = sheet.largest("load", "largest appliance", {one.name: one.load for one in things},
                            shown="BTU/h|kW")  # fmt: skip
    flow = sheet.work("flow", "gas it lets out", gas.flow_of, shown="cfh|L/h", load=largest,
                      heat=constants["gas_heat"])  # fmt: skip
    sheet.work("time", "until all the air would burn, evenly mixed; at the floor far sooner", eq.time_to_burn,
               volume=volume, limit=constants["lower_limit"], leak=flow)  # fmt: skip
