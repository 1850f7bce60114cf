"""Tanks: what they hold, what can be used on a tilted pitch, how long it lasts, the rules for waste."""

from __future__ import annotations

from collections.abc import Mapping

from curbwright import data, units
from curbwright.build.cart import Build
from curbwright.equations import balance
from curbwright.equations import water as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Gap, Worksheet
from curbwright.sheets.placing import Placed, Placing
from curbwright.sheets.water.constants import HOURLY, Constants
from curbwright.sheets.water.things import WaterThings, Wet

QUARTERS = {"quarter": 0.25, "half": 0.5, "three_quarters": 0.75}
FITTED = {"drain_valve": "a shut-off valve is on its drain", "sloped": "its floor slopes to its drain"}
ENDS = {"along": ("front", "rear"), "across": ("curb", "street")}


def tanks(build: Build, things: WaterThings, placing: Placing, constants: Constants, top: Worksheet) -> None:
    """Write every tank, the two capacities and their ratio."""
    sheet = top.section("capacity", "what the tanks hold together")
    totals: dict[str, Figure] = {}
    for word, found in (("fresh", things.fresh), ("waste", things.waste)):
        with sheet.attempt():
            if not found:
                raise MissingInput("items", f"there is no {word}-water tank aboard (kind tank_{word})")
            given = [_called(sheet.given(one.item["capacity"]), one.name) for one in found.values()]
            totals[word] = sheet.total(word, f"capacity of the {word}-water tanks", given)
            _each(
                build,
                found,
                placing,
                constants,
                top.section(f"{word}_tanks", f"the {word}-water tanks one by one"),
            )
    if len(totals) == 2:
        sheet.work(
            "waste_to_fresh", "waste tank over fresh tank", eq.waste_ratio, shown="%", waste=totals["waste"],
            fresh=totals["fresh"],
        )  # fmt: skip
    with sheet.attempt():
        if len(totals) == 2:
            _waste_rules(build, totals["fresh"], totals["waste"], top)
    _against_the_day(build, things, sheet, top)


def _each(
    build: Build, found: Mapping[str, Wet], placing: Placing, constants: Constants, top: Worksheet
) -> None:  # fmt: skip
    for key, one in found.items():
        below = top.section(key, one.name)
        _fittings(one, below)
        with below.attempt():
            _tank(build, one, placing, constants, below)


def _called(figure: Figure, name: str) -> Figure:
    return Figure(
        float(figure), id=figure.id, name=name, unit=figure.unit, origin=figure.origin, shown=figure.shown
    )


def _tank(build: Build, tank: Wet, placing: Placing, constants: Constants, sheet: Worksheet) -> None:
    water = tank.water
    capacity = sheet.given(tank.item["capacity"])
    height = sheet.given(tank.item["height"])
    heel = sheet.given(water["heel"])
    if water.shape == "lying cylinder":
        length = sheet.work("length", "its length", eq.lying_length, volume=capacity, diameter=height)
        under = sheet.work(
            "under", "water under its outlet", eq.lying_volume, diameter=height, length=length, depth=heel
        )
    else:
        area = sheet.work("area", "its floor", eq.plan_area, volume=capacity, height=height)
        under = sheet.work("under", "water under its outlet", eq.upright_volume, area=area, depth=heel)
    wedge = _wedge(build, tank, placing, sheet)
    top = sheet.given(water["top"])
    sheet.work(
        "usable",
        f"{tank.name}: what can be used of it",
        eq.usable,
        capacity=capacity,
        top=top,
        heel=under,
        wedge=wedge,
    )
    for word, share in QUARTERS.items():
        part = sheet.tabled(
            f"share_{word}",
            f"its height, {word.replace('_', ' ')}",
            share,
            "1",
            source="convention",
            shown="%",
        )
        depth = sheet.work(f"depth_{word}", "on a dip stick", eq.part_depth, height=height, share=part)
        if water.shape == "lying cylinder":
            sheet.work(
                f"holds_{word}",
                "water in it then",
                eq.lying_volume,
                diameter=height,
                length=length,
                depth=depth,
            )
        else:
            sheet.work(f"holds_{word}", "water in it then", eq.upright_volume, area=area, depth=depth)
    if water.shape == "box":
        _surge(placing.items[tank.key], sheet.figures()[f"{sheet.id}.depth_half"], constants, sheet)


def _surge(placed: Placed, depth: Figure, constants: Constants, sheet: Worksheet) -> None:
    """What braking does to the water of a tank that is towed half full."""
    pull, length = constants["braking"], sheet.figures()[f"{sheet.id}.size_along"]
    shift = sheet.work(
        "shift", "half full, braking: its water's centre moves forward", balance.slosh_shift, width=length,
        depth=depth, side_pull=pull,
    )  # fmt: skip
    sheet.work("climbs", "and climbs its front wall", eq.wall_rise, length=length, pull=pull)
    if placed.sized and float(shift) > float(length) / 6:
        sheet.note(
            "Its floor falls dry before it moves so far; it surges all the same: tow it full or empty."
        )


def _fittings(tank: Wet, top: Worksheet) -> None:
    """What of its fittings is asked about: each in a section of its own, so that each can be untold."""
    water = tank.water
    bore, says = ("drain_bore", "its drain") if tank.kind == "tank_waste" else ("fill_bore", "its fill inlet")
    sheet = top.section(bore, f"{tank.name}: {says}")
    with sheet.attempt():
        sheet.smallest(
            "value", f"{tank.name}: inside diameter of {says}", {"given": sheet.given(water[bore])}
        )
    for field, says in FITTED.items():
        if field == "drain_valve" and tank.kind != "tank_waste":
            continue
        value, sheet = getattr(water, field), top.section(field, f"{tank.name}: {says}")
        with sheet.attempt():
            if value is None:
                raise MissingInput(f"{water.path}.{field}", f"{tank.name}: whether {says} is not said")
            name, typed = f"{tank.name}: {says} (1: yes)", str(value).lower()
            sheet.choice("value", name, float(value), f"{water.path}.{field}", typed)


def _wedge(build: Build, tank: Wet, placing: Placing, sheet: Worksheet) -> Figure:
    """The water that the worst lean keeps from the outlet, along or across."""
    placed = placing.items.get(tank.key)
    if placed is None or not placed.sized:
        raise MissingInput(f"items.{tank.key}.width", f"{tank.name}: its size and place are not given")
    tilt = sheet.given(build.water["tilt"])
    sizes = {
        way: sheet.work(f"size_{way}", f"its size {way}", eq.rise_between, high=span.high, low=span.low)
        for way, span in (("along", placed.along), ("across", placed.across))
    }
    cases: dict[str, Figure] = {}
    for way, other in (("along", "across"), ("across", "along")):
        whole = tank.water.outlet in ENDS[way]
        share = sheet.tabled(
            f"reach_share_{way}",
            f"outlet to the far wall {way}",
            1.0 if whole else 0.5,
            "1",
            source="convention",
            row=tank.water.outlet,
            shown="%",
        )
        reach = sheet.work(
            f"reach_{way}",
            f"from its outlet to the far wall {way}",
            eq.part_depth,
            height=sizes[way],
            share=share,
        )
        cases[f"leaning {way}"] = sheet.work(
            f"wedge_{way}",
            f"water kept from its outlet, leaning {way}",
            eq.tilt_wedge,
            reach=reach,
            width=sizes[other],
            tilt=tilt,
        )
    return sheet.largest("wedge", "water kept from its outlet by a lean", cases)


def _waste_rules(build: Build, fresh: Figure, waste: Figure, top: Worksheet) -> None:
    """What the place asks of the waste tank, and what every published rule would."""
    place, sheet = build.place, top.section("waste_rule", "the waste tank by the place's rule")
    product = _product(top, sheet)
    asked = sheet.work(
        "by_tanks", "waste tank by the place's ratio", eq.waste_with_product, fresh=fresh,
        ratio=sheet.given(place["waste_ratio"]), product=product, share=sheet.given(place["waste_product"]),
    )  # fmt: skip
    cabinet, share = sheet.given(build.water["ice_cabinet"]), sheet.given(place["waste_ice"])
    melt = sheet.work("ice", "room for melting ice", eq.ice_melt, cabinet=cabinet, share=share)
    needed = sheet.total("with_ice", "waste tank by the place's ratio, with ice", [asked, melt])
    least = place.waste_least
    if least is not None:
        floor = sheet.given(place["waste_least"])
        needed = sheet.work(
            "no_less", "never under the place's least", eq.no_less_than, volume=needed, least=floor
        )
    if least is not None or float(share) or float(place.waste_product or 0.0):
        below, says = (
            top.section("place_waste", "the waste tank the place asks for"),
            "waste tank over what is asked",
        )
        below.work("spare", says, eq.missing_of, need=waste, has=needed)
    each: dict[str, Figure] = {}
    for row in data.table("water/rules"):
        if row["how"] == "read":
            each[row["says"]] = _published(row["rule"], fresh, product, sheet)
    sheet.largest("everywhere", "waste tank that every published rule would take", each)


def _published(rule: str, fresh: Figure, product: Figure, sheet: Worksheet) -> Figure:
    row, id = data.table("water/rules").row(rule), rule.replace(" ", "_")

    def cell(column: str, kind: str, says: str) -> Figure:
        return sheet.tabled(
            f"{id}_{column}",
            f"{row['says']}: {says}",
            float(units.read(row[column], kind)),
            units.KINDS[kind].unit,
            source=row["source"],
            row=row["clause"],
            shown="%" if kind == "share" else None,
        )

    asked = sheet.work(
        f"{id}_by_ratio",
        f"{row['says']}: waste tank by its ratio",
        eq.waste_with_product,
        fresh=fresh,
        ratio=cell("ratio", "share", "ratio"),
        product=product,
        share=cell("product", "share", "share of product"),
    )
    return sheet.work(f"{id}_asks", f"{row['says']}: waste tank", eq.no_less_than, volume=asked,
                      least=cell("least", "volume", "never under"))  # fmt: skip


def _product(top: Worksheet, sheet: Worksheet) -> Figure:
    known = top.figures().get("water.demand.product")
    if known is not None:
        return known
    return sheet.tabled("no_product", "water in food and drink, not told", 0.0, "m**3", source="convention")


def _usable(
    build: Build, word: str, tanks: Mapping[str, Wet], says: str, sheet: Worksheet, top: Worksheet
) -> Figure | None:  # fmt: skip
    """What can be used of the tanks of one sort, once and in a day; None while one of them is untold."""
    figures = top.figures()
    found = [figures.get(f"water.{word}_tanks.{key}.usable") for key in tanks]
    each = [one for one in found if one is not None]
    if not each or len(each) < len(found):
        gaps = [gap for gap in top.all_gaps() if gap.section.startswith(f"water.{word}_tanks.")]
        sheet.gaps += [Gap(sheet.id, gap.path, gap.says) for gap in gaps if gap.section.count(".") == 2]
        return None
    whole = sheet.total(f"{word}_usable_once", f"usable of the {word}-water tanks", each)
    refills = sheet.given(build.water["refills"])
    sheet.work(f"{word}_usable", says, eq.with_refills, usable=whole, refills=refills)
    return whole


def _against_the_day(build: Build, things: WaterThings, sheet: Worksheet, top: Worksheet) -> None:
    """What can be used in a day, how long it lasts, how far tank and the place's least tank fall short."""
    whole = _usable(build, "fresh", things.fresh, "fresh water that can be used in a day", sheet, top)
    _usable(build, "waste", things.waste, "waste water that can be taken in a day", sheet, top)
    need, capacity = (top.figures().get(id) for id in ("water.demand.need", "water.capacity.fresh"))
    if build.place.fresh_least is not None:
        below = top.section("place_fresh", "the fresh tank the place asks for")
        _least(below.given(build.place["fresh_least"]), capacity, need, below)
    if need is None or whole is None:
        return
    hours = top.figures()["water.demand.hours"]
    says = "mean draw over the time worked"
    mean = sheet.work("mean_draw", says, eq.run_flow, shown=HOURLY, volume=need, time=hours)
    says = "how long the fresh tank lasts without a refill"
    sheet.work("autonomy", says, eq.autonomy, usable=whole, flow=mean)
    says, has = "how far the fresh water falls short of a day", top.figures()["water.capacity.fresh_usable"]
    sheet.work("fresh_missing", says, eq.missing_of, need=need, has=has)


def _least(least: Figure, capacity: Figure | None, need: Figure | None, sheet: Worksheet) -> None:
    """The least tank of the place against the tank there is, and against what a day needs."""
    if capacity is not None:
        sheet.work("spare", "fresh tanks over the place's least", eq.missing_of, need=capacity, has=least)
    if need is not None:
        says = "a day's need over the least tank of the place"
        sheet.work("need_to_least", says, eq.times_as_much, need=need, has=least)
        says = "how far the least tank of the place falls short of a day"
        sheet.work("short", says, eq.missing_of, need=need, has=least)
