"""Care: air gaps, the dose that sanitises the tank, and frost."""

from __future__ import annotations

from curbwright.build.cart import Build
from curbwright.equations import balance
from curbwright.equations import water as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.water.constants import Constants
from curbwright.sheets.water.plumbing import Run, run
from curbwright.sheets.water.things import WaterThings

SMALL = "fl oz|mL"


def air_gaps(things: WaterThings, constants: Constants, top: Worksheet) -> None:
    """Write, for every tap, the air gap it has over its sink and the one it needs."""
    if not things.taps:
        return
    every = top.section("air_gaps", "air gaps under the taps")
    for key, tap in things.taps.items():
        name = f"{key.replace('_', ' ')} tap"
        if tap.hose and tap.breaker:
            every.note(f"The {name} ends in a hose that a vacuum breaker guards: no air gap is asked.")
            continue
        sheet = every.section(key, name)
        with sheet.attempt():
            has = sheet.given(tap["above_rim"])
            if tap.hose:
                has = sheet.tabled(
                    "hanging", f"{name}: its hose hangs into the bowl", 0.0, "m", source="convention"
                )
            needed = sheet.work(
                "needed", f"{name}: air gap it needs", eq.air_gap, bore=sheet.given(tap["spout_bore"]),
                times=constants["gap_times"], least=constants["gap_least"],
            )  # fmt: skip
            sheet.work("spare", f"{name}: air gap over what it needs", eq.gap_spare, has=has, needed=needed)


def doses(build: Build, things: WaterThings, constants: Constants, top: Worksheet) -> None:
    """Write the bleach that sanitises the tanks with every line the water runs through."""
    sheet, water = top.section("dose", "sanitising the tank and the lines"), build.water
    with sheet.attempt():
        held = [sheet.given(one.item["capacity"]) for one in things.fresh.values()]
        for key, one in _runs(things, constants, top).items():
            held.append(
                sheet.work(
                    f"holds_{key}",
                    f"water in pipe {one.name}",
                    eq.pipe_volume,
                    bore=one.bore,
                    length=one.length,
                )
            )
        whole = sheet.total("volume", "water to dose", held, unit="m**3")
        asked = sheet.work(
            "share", "chlorine asked for, as a share", eq.per_million, number=sheet.given(water["shock"])
        )
        sheet.work(
            "bleach",
            "bleach that brings it to that",
            eq.dose,
            shown=SMALL,
            concentration=asked,
            volume=whole,
            strength=sheet.given(water["bleach"]),
        )
        rule = sheet.work(
            "bleach_by_rule",
            "bleach of 5.25 % by the rule of thumb",
            eq.dose_by_rule,
            shown=SMALL,
            volume=whole,
            share=constants["rule_share"],
        )
        sheet.work(
            "by_rule", "concentration that the rule comes to, as a share", eq.concentration, bleach=rule,
            volume=whole, strength=constants["rule_strength"],
        )  # fmt: skip
    sheet.note(
        "Dose, open every tap until it smells, let it stand, drain, flush until a strip reads 4 ppm or less."
        " A test strip decides, not the arithmetic: bleach loses a fifth of its strength in a year."
    )


def _runs(things: WaterThings, constants: Constants, top: Worksheet) -> dict[str, Run]:
    """The runs that are told with length and bore, by their names; the pump's section has them already."""
    sheet = next((one for one in top.sections if one.id == f"{top.id}.pump"), None)
    if sheet is None:
        return {}
    told = [pipe for pipe in things.pipes.values() if pipe.length is not None]
    return {one.name: one for one in (run(pipe, constants, sheet) for pipe in told)}


def frost(build: Build, things: WaterThings, constants: Constants, top: Worksheet) -> None:
    """Write how far the pitch's coldest air is over freezing and, where it freezes, what lasts how long."""
    sheet, water = top.section("frost", "frost"), build.water
    air, freezing = sheet.given(build.pitch["low"]), constants["freezing"]
    over = sheet.work(
        "over_freezing", "coldest air of the day over freezing", eq.over_freezing, air=air, freezing=freezing
    )
    if float(over) >= 0.0:
        return
    sheet.note(
        "It freezes at this pitch: pump head, heater coil and traps go first. Drain them, or keep them warm."
    )
    with sheet.attempt():
        start = sheet.given(water["temperature"])
        density = sheet.work("density", "density of the water", eq.density, temperature=start)
        common = {
            "specific_heat": constants["specific_heat"],
            "water": start,
            "air": air,
            "freezing": freezing,
        }
        for key, one in _runs(things, constants, top).items():
            _pipe(build, key, one, {**common, "density": density}, constants, sheet)
        loss = sheet.given(water["freeze_loss"])
        for key, tank in things.fresh.items():
            mass = sheet.work(f"mass_{key}", f"water in {tank.name}", balance.mass_of_volume,
                              volume=sheet.given(tank.item["capacity"]), density=density)  # fmt: skip
            sheet.work(
                f"tank_{key}",
                f"{tank.name}, full: time until it is as cold as ice",
                eq.tank_cooling_time,
                shown=None,
                mass=mass,
                loss=loss,
                **common,
            )


def _pipe(
    build: Build, key: str, one: Run, common: dict[str, Figure], constants: Constants, sheet: Worksheet
) -> None:  # fmt: skip
    pipe = build.water.pipes[key]
    if not pipe.insulation:
        sheet.note(f"Pipe {one.name} is bare: it has minutes.")
        return
    inner = sheet.work(f"inner_{key}", f"pipe {one.name}: outside of the pipe", eq.around, inner=one.bore,
                       thickness=constants["wall"])  # fmt: skip
    outer = sheet.work(f"outer_{key}", f"pipe {one.name}: outside of its insulation", eq.around, inner=inner,
                       thickness=sheet.given(pipe["insulation"]))  # fmt: skip
    sheet.work(
        f"pipe_{key}",
        f"pipe {one.name}: time until it begins to freeze",
        eq.pipe_freeze_time,
        shown=None,
        bore=one.bore,
        inner=inner,
        outer=outer,
        conductivity=constants["foam"],
        **common,
    )
