"""Load cases: each adds up its own selection of the mass rows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from curbwright import data
from curbwright.build.cart import Build
from curbwright.equations import balance as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.balance.rows import Row

CONTENTS = ("fresh", "waste", "bottles", "stock")


@dataclass(frozen=True)
class Case:
    """One load case worked out: what stands in it and where its weight acts."""

    id: str
    name: str
    sheet: Worksheet
    rows: tuple[Row, ...]
    gross: Figure
    station: Figure
    across: Figure
    height: Figure


@dataclass(frozen=True)
class Towed:
    """What a load case does to the running gear."""

    case: Case
    axle_load: Figure
    tongue_load: Figure
    share: Figure
    share_spread: Figure


def load_cases(build: Build, rows: list[Row], sheet: Worksheet) -> dict[str, Case]:
    """Work out every towed load case of data/balance/load_cases.csv."""
    cases: dict[str, Case] = {}
    for row in data.table("balance/load_cases"):
        if _repeats(row, rows):
            continue
        below = sheet.section(row["id"], row["name"])
        with below.attempt():
            chosen = tuple(_chosen(build, rows, row, below))
            cases[row["id"]] = roll_up(row["id"], row["name"], chosen, below)
    return cases


def _repeats(case: Mapping[str, str], rows: list[Row]) -> bool:
    """Whether a case says nothing new of this cart, which has none of the things that set the case apart."""
    aboard = {row.group for row in rows}
    return not set(case["needs"].split()) <= aboard


def _chosen(build: Build, rows: list[Row], case: Mapping[str, str], sheet: Worksheet) -> list[Row]:
    """The rows that a case carries, contents scaled to how full it has them."""
    shares = {content: _share(build, case[content], sheet, content, case) for content in CONTENTS}
    chosen: list[Row] = []
    for row in rows:
        if row.group == "battery" and case["batteries"] == "0":
            continue
        share = shares.get(row.group)
        if share is None:
            chosen.append(row)
        elif share > 0:
            chosen.append(row if float(share) == 1.0 else _scaled(row, share, sheet))
    return chosen


def _share(build: Build, word: str, sheet: Worksheet, content: str, case: Mapping[str, str]) -> Figure:
    if word.startswith("day."):
        return sheet.given(build.day[word.removeprefix("day.")])
    name = f"how full: {content}"
    return sheet.tabled(f"full_{content}", name, float(word), "1", source="load-cases", row=case["id"])


def _scaled(row: Row, share: Figure, sheet: Worksheet) -> Row:
    mass = sheet.work(f"{row.key}.mass", f"{row.label} left", eq.part_of, whole=row.mass, share=share)
    spread = sheet.work(
        f"{row.key}.mass_spread", f"{row.label} left: spread", eq.part_of, whole=row.mass_spread, share=share
    )
    return Row(
        row.key,
        row.label,
        row.group,
        mass,
        row.station,
        row.across,
        row.height,
        spread,
        row.station_spread,
        row.length,
        row.width,
    )


def roll_up(id: str, name: str, rows: tuple[Row, ...], sheet: Worksheet) -> Case:
    """Add up rows: gross mass and the centre of gravity in three directions."""
    gross = sheet.total("gross", "gross mass", [_named(row) for row in rows], unit="kg")
    directions = {"station": "behind the ball", "across": "off the centre line", "height": "above the road"}
    centres: dict[str, Figure] = {}
    for direction, says in directions.items():
        table = {row.label: {"mass": row.mass, "station": getattr(row, direction)} for row in rows}
        moment = sheet.schedule(f"moment_{direction}", f"moment of all masses, {says}", eq.moment, table)
        centres[direction] = sheet.work(
            f"centre_{direction}", f"centre of gravity {says}", eq.centre, moment=moment, gross=gross
        )
    return Case(id, name, sheet, rows, gross, centres["station"], centres["across"], centres["height"])


def _named(row: Row) -> Figure:
    """A row's mass under the row's own name, for the printed total."""
    mass = row.mass
    return Figure(
        float(mass), id=mass.id, name=row.label, unit=mass.unit, origin=mass.origin, shown=mass.shown
    )


def tow(build: Build, case: Case, axle: Figure, bias: Figure) -> Towed:
    """Put a load case on the ball and the axle."""
    sheet = case.sheet
    on_axle = sheet.work(
        "axle_load", "axle load", eq.axle_load, gross=case.gross, centre=case.station, axle=axle
    )
    on_ball = sheet.work(
        "tongue_load", "tongue load", eq.tongue_load, gross=case.gross, centre=case.station, axle=axle
    )
    share = sheet.work(
        "tongue_share", "tongue share", eq.tongue_share, shown="%", centre=case.station, axle=axle
    )
    spread = _share_spread(case, share, axle, bias)
    sheet.work(
        "tongue_share_low",
        "tongue share, two spreads low",
        eq.two_spreads_low,
        shown="%",
        value=share,
        spread=spread,
    )
    sheet.work(
        "tongue_share_high",
        "tongue share, two spreads high",
        eq.two_spreads_high,
        shown="%",
        value=share,
        spread=spread,
    )
    return Towed(case, on_axle, on_ball, share, spread)


def _share_spread(case: Case, share: Figure, axle: Figure, bias: Figure) -> Figure:
    """Spread of the tongue share: each mass and place by itself, and structure heavier all together."""
    sheet = case.sheet
    variance = sheet.schedule(
        "share_variance",
        "variance of the tongue share",
        eq.share_variance,
        {
            row.label: {
                "mass": row.mass,
                "station": row.station,
                "mass_spread": row.mass_spread,
                "station_spread": row.station_spread,
                "gross": case.gross,
                "share": share,
                "axle": axle,
            }
            for row in case.rows
        },
    )
    built = [row for row in case.rows if row.group == "structure"]
    shift = sheet.schedule(
        "share_bias",
        "change of the tongue share if all estimated structure is heavier",
        eq.share_shift,
        {
            row.label: {
                "mass": row.mass,
                "station": row.station,
                "gross": case.gross,
                "share": share,
                "axle": axle,
                "bias": bias,
            }
            for row in built
        },
    )
    together = sheet.work(
        "share_variance_all",
        "variance of the tongue share, bias included",
        eq.variance_with_bias,
        variance=variance,
        shift=shift,
    )
    _gross_spread(case, bias)
    return sheet.work(
        "share_spread", "spread of the tongue share", eq.share_spread_of, shown="%", variance=together
    )


def _gross_spread(case: Case, bias: Figure) -> None:
    """Spread of the gross mass, in the same two parts."""
    sheet = case.sheet
    mass_variance = sheet.schedule(
        "gross_variance",
        "variance of the gross mass",
        eq.gross_variance,
        {row.label: {"mass_spread": row.mass_spread} for row in case.rows},
    )
    heavier = sheet.schedule(
        "gross_bias",
        "gross mass added if all estimated structure is heavier",
        eq.part_of,
        {row.label: {"whole": row.mass, "share": bias} for row in case.rows if row.group == "structure"},
    )
    all_mass = sheet.work(
        "gross_variance_all",
        "variance of the gross mass, bias included",
        eq.mass_variance_with_bias,
        variance=mass_variance,
        shift=heavier,
    )
    sheet.work("gross_spread", "spread of the gross mass", eq.mass_spread_of, variance=all_mass)
