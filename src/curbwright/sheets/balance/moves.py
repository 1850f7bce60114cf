"""What moving things does: one foot for each item, and where the axle would have to be."""

from __future__ import annotations

from curbwright.build.cart import Build
from curbwright.equations import balance as eq
from curbwright.equations import fit as where
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.balance.cases import Towed

FOOT = 0.3048


def moves(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Write, for the road-ready case, the tongue load that moving each thing one foot back takes away."""
    ready = towed.get("road_ready")
    if ready is None:
        return
    foot = sheet.tabled("foot", "moved back by", FOOT, "m", source="convention", row="1 ft")
    for row in ready.case.rows:
        if row.group != "structure":
            sheet.work(
                row.key,
                f"tongue load when {row.label} moves 1 ft back",
                eq.tongue_change_when_moved,
                shown="lb",
                mass=row.mass,
                moved=foot,
                axle=axle,
            )
    _axle_positions(build, towed, axle, sheet)


def _axle_positions(build: Build, towed: dict[str, Towed], axle: Figure, sheet: Worksheet) -> None:
    """Where the axle would stand for a wanted tongue share in the two cases that differ most."""
    wanted = sheet.tabled(
        "wanted", "a tongue share in the middle of the window", 0.125, "1", source="trade-practice"
    )
    least = min(towed.values(), key=lambda one: float(one.share))
    most = max(towed.values(), key=lambda one: float(one.share))
    stands: dict[str, Figure] = {}
    for one in (least, most):
        if one.case.name not in stands:
            stands[one.case.name] = sheet.work(
                f"axle_for_{one.case.id}",
                f"axle behind the ball for the wanted share, {one.case.name}",
                eq.axle_for_share,
                centre=one.case.station,
                share=wanted,
            )
    between = list(stands.values())
    if len(between) == 2:
        low, high = sorted(between)
        half = sheet.work("axle_span", "between the two", where.rest, whole=high, part=low)
        best = sheet.work(
            "axle_best", "axle behind the ball, midway between the two", where.middle, edge=low, size=half
        )
    else:
        best = between[0]
    sheet.work(
        "axle_back",
        "the same behind the front of the deck",
        where.rest,
        whole=best,
        part=sheet.given(build.trailer["ball_to_deck"]),
    )
