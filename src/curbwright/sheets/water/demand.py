"""The day's need: by a county's allowance, and from the bottom up with a low and a high; what drains."""

from __future__ import annotations

from curbwright.build.cart import Build
from curbwright.equations import water as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.water.constants import Constants
from curbwright.sheets.water.things import WaterThings, Wet
from curbwright.sheets.water.uses import BANDS, Need, band_of, buckets, cleaning, portions, steam

NEXT_DAY = 86400.0
SMALL = "gal|L"


def demand(build: Build, things: WaterThings, constants: Constants, sheet: Worksheet) -> Need:
    """Write the day's need by both ways; raises MissingInput where hands, hours or bowls are not known."""
    need = _begun(build, things, constants, sheet)
    ware = _ware(need)
    _hands(need)
    portions(need)
    steam(need)
    cleaning(need)
    buckets(need)
    _county(need, ware)
    totals = {band: sheet.total(band, _says(band), _named(need.tasks[band]), unit="m**3") for band in BANDS}
    _days(need, totals["base"])
    ways = {
        "a county's allowance": sheet.figures()["water.demand.county"],
        "from the bottom up": totals["base"],
    }
    larger = sheet.largest("larger", "the day's need by the larger of two ways", ways)
    spare = sheet.given(build.water["spare"])
    sheet.work("need", "fresh water that a day needs", eq.with_spare, volume=larger, share=spare)
    sheet.work("need_low", "the same at its least", eq.with_spare, volume=totals["low"], share=spare)
    sheet.work("need_high", "the same at its most", eq.with_spare, volume=totals["high"], share=spare)
    _drained(need)
    return need


def _says(band: str) -> str:
    says = {"low": "at its least", "base": "as the build file has it", "high": "at its most"}
    return f"water a day takes, from the bottom up, {says[band]}"


def _begun(build: Build, things: WaterThings, constants: Constants, sheet: Worksheet) -> Need:
    day = build.day
    opens, closes = sheet.given(day["opens"]), sheet.given(day["closes"])
    if closes < opens:
        late = float(closes) + NEXT_DAY
        closes = sheet.tabled("closes", "closes, after midnight", late, "s", source="convention", shown="h")
    serving = sheet.work(
        "serving", "serving time", eq.hours_open, opens=opens, closes=closes,
        before=(none := sheet.tabled("none", "nothing", 0.0, "s", source="convention")), after=none,
    )  # fmt: skip
    hours = sheet.work(
        "hours", "time that hands work aboard", eq.hours_open, opens=opens, closes=closes,
        before=sheet.given(build.water["before"]), after=sheet.given(build.water["after"]),
    )  # fmt: skip
    return Need(build, things, constants, sheet, hours, sheet.given(day["crew"]), serving)


def _ware(need: Need) -> tuple[Figure, Figure] | None:
    """Utensils: washings, and the water by bowls part full; returns washings and one bowl to its brim."""
    sheet, water = need.sheet, need.build.water
    sinks = need.things.flagged("ware_sink")
    if not sinks:
        sheet.note("No sink aboard to wash utensils in: they are taken to be washed at the base.")
        return None
    span = need.constants.cell(
        "water/allowance", "span", "value", "time", "use after which utensils are washed"
    )
    needed = sheet.work(
        "washes_needed", "times utensils are due to be washed", eq.washes_needed, time=need.hours, each=span
    )
    washes = needed if water.washes is None else sheet.given(water["washes"])
    if water.washes is not None or water.spare_sets:
        sheet.total("washes_covered", "washings aboard and sets of spare utensils",
                    [washes, sheet.given(water["spare_sets"])])  # fmt: skip
    sink = max(sinks.values(), key=lambda one: one.bowls)
    brim = bowl(sink, sheet)
    fill = sheet.given(sink.water["fill"])
    filled = sheet.work(
        "bowl_filled", f"{sink.name}: one bowl as it is filled", eq.filled_to, volume=brim, share=fill
    )
    count = bowls(sink, sheet)
    taken = sheet.work("utensils", "utensils", eq.ware_volume, washes=washes, bowls=count, volume=filled)
    for band in BANDS:
        need.tasks[band]["utensils"] = taken
    return washes, brim


def bowls(sink: Wet, sheet: Worksheet) -> Figure:
    """Write how many bowls a sink has."""
    if sink.water.bowls is not None:
        return sheet.given(sink.water["bowls"])
    return sheet.tabled(
        f"bowls_{sink.key}", f"{sink.name}: bowls", float(sink.bowls), "1", source="convention", row=sink.kind
    )


def bowl(sink: Wet, sheet: Worksheet) -> Figure:
    """Write one bowl of a sink to its brim, once; raises MissingInput where it lacks a size."""
    id = f"bowl_{sink.key}"
    known = sheet.figures().get(f"{sheet.id}.{id}")
    if known is not None:
        return known
    return sheet.work(
        id,
        f"{sink.name}: one bowl to its brim",
        eq.bowl_volume,
        length=sheet.given(sink.water["bowl_length"]),
        width=sheet.given(sink.water["bowl_width"]),
        depth=sheet.given(sink.item["bowl_depth"]),
    )


def _hands(need: Need) -> None:
    sheet, water = need.sheet, need.build.water
    flow = sheet.given(water["wash_flow"]) if water.wash_flow is not None else _usual_flow(need)
    time = sheet.given(water["wash_time"])
    each = sheet.work("wash", "one hand wash", eq.run_volume, flow=flow, time=time, shown=SMALL)
    rates = {
        "low": band_of(need, "hand_rate", "low", "rate"), "base": sheet.given(water["hand_washes"]),
        "high": band_of(need, "hand_rate", "high", "rate"),
    }  # fmt: skip
    for band, rate in rates.items():
        number = sheet.work(
            f"washes_{band}", f"hand washes in a day, {band}", eq.washes_of_hands, workers=need.workers,
            time=need.hours, rate=rate,
        )  # fmt: skip
        need.tasks[band]["hands"] = sheet.work(
            f"hands_{band}", f"hands, {band}", eq.each_times, number=number, each=each
        )


def _usual_flow(need: Need) -> Figure:
    """The flow of the tap at a hand sink by its rating, else what is usual."""
    hand = need.things.flagged("hand_sink")
    rated = [tap for tap in need.things.taps.values() if tap.sink in hand and tap.flow is not None]
    return need.sheet.given(rated[0]["flow"]) if rated else need.constants["wash_flow"]


def _county(need: Need, ware: tuple[Figure, Figure] | None) -> None:
    """The county's allowance: hands by the hour, two bowls to their brim at every washing, the rest."""
    sheet, meat = need.sheet, need.build.water.raw_meat
    if meat == "none":
        sheet.note("Taken as: no raw meat is handled aboard (water.raw_meat).")
    row = "hand_raw_meat" if meat == "to order" else "hand"
    says = "allowance for each worker and hour" + (", raw meat to order" if meat == "to order" else "")
    rate = need.constants.cell("water/allowance", row, "value", "flow", says)
    hands = sheet.work(
        "county_hands", "hands", eq.hand_allowance, workers=need.workers, time=need.hours, rate=rate
    )
    terms = [hands]
    if ware is not None:
        washes, brim = ware
        if meat != "none":
            extra = need.constants.cell(
                "water/allowance", "span", "value", "time", "use after which utensils are washed"
            )
            again = (
                sheet.work(
                    "county_again",
                    "washings for raw meat to order",
                    eq.washes_needed,
                    time=need.hours,
                    each=extra,
                )
                if meat == "to order"
                else sheet.tabled(
                    "county_again", "a washing after raw meat in batches", 1.0, "1", source="snohomish-water"
                )
            )
            washes = sheet.total("county_washes", "washings with those for raw meat", [washes, again])
        two = need.constants.cell(
            "water/allowance", "bowls", "value", "number", "bowls filled at every washing"
        )
        terms.append(
            sheet.work("county_ware", "utensils", eq.ware_volume, washes=washes, bowls=two, volume=brim)
        )
    rest = [one for task, one in need.tasks["base"].items() if task not in ("hands", "utensils")]
    sheet.total("county", "water a day takes, by a county's allowance", [*terms, *rest], unit="m**3")


def _days(need: Need, base: Figure) -> None:
    """How far days differ by chance: the washes of hands come at random."""
    sheet = need.sheet
    figures = sheet.figures()
    number, each = figures["water.demand.washes_base"], figures["water.demand.wash"]
    spread = sheet.work(
        "spread",
        "standard deviation of a day's need, by chance alone",
        eq.day_spread,
        number=number,
        each=each,
        variation=need.constants.cell(
            "water/allowance", "variation", "value", "number", "spread of one hand wash"
        ),
    )
    sheet.work("ninety_five", "need that 95 days in a hundred stay within, habits as given", eq.ninety_five,
               mean=base, spread=spread)  # fmt: skip


def _named(tasks: dict[str, Figure]) -> list[Figure]:
    """What each task takes, under the task's own name, for the printed sum."""
    return [
        Figure(float(one), id=one.id, name=task, unit=one.unit, origin=one.origin, shown=one.shown)
        for task, one in tasks.items()
    ]


def _drained(need: Need) -> None:
    """What of the day's water runs into the waste tank, with the ice that melts."""
    sheet = need.sheet
    rows = {
        task: {
            "volume": one,
            "kept": need.constants.cell("water/kept", task, "kept", "share", f"{task}: kept"),
        }
        for task, one in need.tasks["base"].items()
    }
    used = sheet.schedule("drained", "water used that drains", eq.drained, rows)
    melt = sheet.work(
        "ice",
        "ice that melts",
        eq.ice_melt,
        cabinet=sheet.given(need.build.water["ice_cabinet"]),
        share=need.constants.cell(
            "water/rules", "california", "ice", "share", "share of a cabinet that ice melts to"
        ),
    )
    sheet.total("waste", "waste water in a day", [used, melt])
