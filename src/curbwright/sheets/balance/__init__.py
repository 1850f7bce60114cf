"""Balance: every load case on ball and axle, ratings, roll, sway, wind, snow, and what moving things does."""

from __future__ import annotations

from curbwright.build.cart import Build
from curbwright.equations import fit as where
from curbwright.figures import Gap, Worksheet
from curbwright.sheets.balance.cases import Towed, load_cases, tow
from curbwright.sheets.balance.moves import moves
from curbwright.sheets.balance.parked import parked
from curbwright.sheets.balance.rows import Row, mass_rows
from curbwright.sheets.balance.steady import steady
from curbwright.sheets.balance.towing import towing
from curbwright.sheets.placing import Placing

HEADLINE = "road_ready"
"""The load case that the figures without a case in their id stand for."""


def balance_sheet(build: Build, placing: Placing) -> Worksheet:
    """Work out the balance sheet."""
    sheet = Worksheet("balance", "Balance")
    masses = sheet.section("masses", "what everything weighs and where")
    rows: list[Row] = []
    with masses.attempt():
        rows = mass_rows(build, placing, masses)
    missing = [*masses.all_gaps(), *placing.sheet.all_gaps()]
    if missing:
        sheet.gaps += [Gap(sheet.id, gap.path, gap.says) for gap in missing]
        sheet.note("Something aboard has no mass or no place yet, so nothing is added up.")
        return sheet
    with sheet.attempt():
        _worked(build, rows, sheet)
    return sheet


def _worked(build: Build, rows: list[Row], sheet: Worksheet) -> None:
    cases = load_cases(build, rows, sheet)
    back = sheet.given(build.trailer.axle["back"])
    axle = sheet.work(
        "axle",
        "axle behind the ball",
        where.from_ball,
        ball_to_deck=sheet.given(build.trailer["ball_to_deck"]),
        back=back,
    )
    bias = sheet.tabled(
        "structure_bias",
        "how much heavier all estimated structure may be together",
        0.05,
        "1",
        source="trade-practice",
        row="5 to 10 %",
    )
    towed: dict[str, Towed] = {}
    for key, case in cases.items():
        with case.sheet.attempt():
            towed[key] = tow(build, case, axle, bias)
    if HEADLINE in towed:
        _headline(towed[HEADLINE], sheet)
    if towed:
        towing(build, towed, axle, sheet)
        steady(build, towed, axle, sheet)
        parked(build, towed, axle, sheet)
        moves(build, towed, axle, sheet.section("moves", "what moving things does"))


def _headline(ready: Towed, sheet: Worksheet) -> None:
    """The road-ready case under the short ids."""
    for id, figure in (
        ("gross", ready.case.gross),
        ("tongue_share", ready.share),
        ("tongue_load", ready.tongue_load),
        ("axle_load", ready.axle_load),
    ):
        sheet.largest(id, f"{figure.name}, {ready.case.name}", {ready.case.name: figure})
