"""Mass rows: everything that weighs, with where its weight acts and how well both are known."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from curbwright import data
from curbwright.build.cart import Build
from curbwright.build.fit import Item
from curbwright.equations import balance as eq
from curbwright.equations import fit as where
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.balance import shell
from curbwright.sheets.placing import Placed, Placing

WATER = ("tank_fresh", "tank_waste")


@dataclass(frozen=True)
class Row:
    """One thing that weighs; ``key`` is what its figures' ids start with.

    ``group`` says what a load case does with it: structure, own, battery, fresh, waste, bottles, stock.
    Stations are metres behind the ball, across metres towards the curb, height metres above the road.
    ``length`` and ``width`` are its extents seen from above, for its own yaw inertia.
    """

    key: str
    label: str
    group: str
    mass: Figure
    station: Figure
    across: Figure
    height: Figure
    mass_spread: Figure
    station_spread: Figure
    length: Figure
    width: Figure


def mass_rows(build: Build, placing: Placing, sheet: Worksheet) -> list[Row]:
    """Work out every mass row; a thing without a mass or a place stands in the gaps.

    A roll-up with something missing is no roll-up, so the caller looks at those gaps first.
    """
    writer = _Writer(build, sheet)
    rows: list[Row] = []
    with sheet.attempt():
        rows.append(_bare_trailer(build, writer))
    for panel in shell.panels(build, sheet):
        rows.append(
            writer.row(
                panel.key,
                panel.label,
                "structure",
                panel.mass,
                panel.back,
                panel.across,
                panel.above,
                "structure",
                panel.length,
                panel.width,
            )
        )
    for key, item in build.items.items():
        section = sheet.section(f"mass_{key}", item.name)
        with section.attempt():
            if key in placing.items:
                rows.extend(_item_rows(key, item, placing.items[key], _Writer(build, section)))
    return rows


class _Writer:
    """Writes the lines a row needs: its station, its height, its two spreads."""

    def __init__(self, build: Build, sheet: Worksheet) -> None:
        self.sheet = sheet
        self.ball_to_deck = sheet.given(build.trailer["ball_to_deck"])
        self.deck_height = sheet.given(build.trailer["deck_height"])

    def row(
        self,
        stem: str,
        label: str,
        group: str,
        mass: Figure,
        back: Figure,
        across: Figure,
        above: Figure,
        known: str,
        length: Figure,
        width: Figure,
    ) -> Row:
        sheet = self.sheet
        station = sheet.work(
            f"{stem}.station",
            f"{label}: behind the ball",
            where.from_ball,
            ball_to_deck=self.ball_to_deck,
            back=back,
        )
        height = sheet.work(
            f"{stem}.height",
            f"{label}: above the road",
            where.above_road,
            deck_height=self.deck_height,
            above=above,
        )
        return self.finish(stem, label, group, mass, station, across, height, known, length, width)

    def finish(
        self,
        stem: str,
        label: str,
        group: str,
        mass: Figure,
        station: Figure,
        across: Figure,
        height: Figure,
        known: str,
        length: Figure,
        width: Figure,
    ) -> Row:
        sheet = self.sheet
        table = data.table("balance/mass_spread")
        fraction_, position_ = (
            table.quantity(known, "mass", "share"),
            table.quantity(known, "position", "length"),
        )
        fraction = sheet.tabled(
            f"{stem}.spread_share",
            f"{label}: spread of a mass known by {known}",
            fraction_,
            "1",
            source="trade-practice",
            row=known,
        )
        spread = sheet.work(
            f"{stem}.mass_spread",
            f"{label}: spread of its mass",
            eq.relative_spread,
            mass=mass,
            fraction=fraction,
        )
        reach = sheet.tabled(
            f"{stem}.station_spread",
            f"{label}: spread of its place",
            position_,
            "m",
            source="trade-practice",
            row=known,
        )
        return Row(stem, label, group, mass, station, across, height, spread, reach, length, width)


def _bare_trailer(build: Build, writer: _Writer) -> Row:
    trailer, sheet = build.trailer, writer.sheet
    mass = sheet.given(trailer["bare_mass"])
    height = sheet.given(trailer["bare_centre_height"])
    across = sheet.tabled("bare_across", "bare trailer: off the centre line", 0.0, "m", source="convention")
    length, width = sheet.given(trailer["deck_length"]), sheet.given(trailer["deck_width"])
    known = trailer.bare_mass_how
    if trailer.bare_tongue is not None:
        axle = sheet.work(
            "bare_axle",
            "axle behind the ball",
            where.from_ball,
            ball_to_deck=writer.ball_to_deck,
            back=sheet.given(trailer.axle["back"]),
        )
        station = sheet.work(
            "bare_station",
            "bare trailer: behind the ball, from its tongue load",
            eq.centre_from_tongue,
            mass=mass,
            tongue=sheet.given(trailer["bare_tongue"]),
            axle=axle,
        )
    else:
        station = sheet.work(
            "bare_station",
            "bare trailer: behind the ball",
            where.from_ball,
            ball_to_deck=writer.ball_to_deck,
            back=sheet.given(trailer["bare_centre_back"]),
        )
    return writer.finish(
        "bare_trailer",
        "bare trailer",
        "structure" if known in ("estimate", "guess") else "own",
        mass,
        station,
        across,
        height,
        known,
        length,
        width,
    )


def _item_rows(key: str, item: Item, placed: Placed, writer: _Writer) -> Iterator[Row]:
    sheet = writer.sheet
    mass = sheet.given(item["mass"])
    known = "typical" if item["mass"].assumed else item.mass_how
    back, across, above = placed.along.middle, placed.across.middle, placed.up.middle
    length, width = _extents(placed, sheet)
    group = "battery" if item.kind == "battery" else "own"
    yield writer.row(key, item.name, group, mass, back, across, above, known, length, width)
    for what, group, content in _contents(item, sheet):
        yield writer.row(
            f"{key}_{what}",
            f"{item.name} {what}",
            group,
            content,
            back,
            across,
            above,
            "contents",
            length,
            width,
        )


def _extents(placed: Placed, sheet: Worksheet) -> tuple[Figure, Figure]:
    if not placed.sized:
        nothing = sheet.tabled("point", "its own size, not given", 0.0, "m", source="convention")
        return nothing, nothing
    long = sheet.work(
        "length_seen", "its length along the deck", where.rest, whole=placed.along.high, part=placed.along.low
    )
    wide = sheet.work(
        "width_seen",
        "its width across the deck",
        where.rest,
        whole=placed.across.high,
        part=placed.across.low,
    )
    return long, wide


def _contents(item: Item, sheet: Worksheet) -> Iterator[tuple[str, str, Figure]]:
    """What an item holds when full: water by volume, fuel, stock."""
    if item.kind in WATER:
        volume = sheet.given(item["capacity"])
        density = sheet.tabled(
            "water_density", "water", 999.35, "kg/m**3", source="recalled", row="8.34 lb/gal"
        )
        yield (
            "water",
            item.kind.removeprefix("tank_"),
            sheet.work(
                "water", f"{item.name}: water when full", eq.mass_of_volume, volume=volume, density=density
            ),
        )
    if item.charge is not None or item.kind == "cylinder":
        yield "fuel", "bottles", sheet.given(item["charge"])
    if item.stock is not None:
        yield "stock", "stock", sheet.given(item["stock"])
    if item.cold is not None and item.cold.ice:
        yield "ice", "stock", sheet.given(item.cold["ice"])
