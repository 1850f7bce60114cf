"""The shell's own mass, panel by panel: floor, roof, four walls less their openings, the leaves of those."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from curbwright.build.cart import Build
from curbwright.build.fit import Opening, Shell
from curbwright.equations import balance as eq
from curbwright.equations import fit as where
from curbwright.figures import Figure, Worksheet


@dataclass(frozen=True)
class Panel:
    """One panel: its mass, and where its middle is (from the deck front, to the curb, above the deck)."""

    key: str
    label: str
    mass: Figure
    back: Figure
    across: Figure
    above: Figure
    length: Figure
    width: Figure


def panels(build: Build, sheet: Worksheet) -> Iterator[Panel]:
    """Yield the shell's panels; an open cart has none."""
    shell = build.shell
    if shell is None:
        return
    size = _Size(build, shell, sheet)
    yield size.flat("floor", sheet.given(shell["floor_areal_mass"]), size.zero)
    yield size.flat("roof", sheet.given(shell["roof_areal_mass"]), size.roof_middle)
    for wall in ("curb", "street", "front", "rear"):
        yield size.upright(wall)
    for key, opening in shell.openings.items():
        below = sheet.section(f"leaf_{key}", key.replace("_", " "))
        with below.attempt():
            yield size.leaf(key, opening, below)


class _Size:
    """The shell's outside sizes as figures, and the panels they give."""

    def __init__(self, build: Build, shell: Shell, sheet: Worksheet) -> None:
        trailer = build.trailer
        self.shell, self.sheet = shell, sheet
        self.back = sheet.given(shell["back"])
        self.height = sheet.given(shell["height"])
        self.width = (
            sheet.given(shell["width"]) if shell.width is not None else sheet.given(trailer["deck_width"])
        )
        if shell.length is not None:
            self.length = sheet.given(shell["length"])
        else:
            deck = sheet.given(trailer["deck_length"])
            self.length = sheet.work(
                "shell_length", "shell length, the rest of the deck", where.rest, whole=deck, part=self.back
            )
        wall, roof = sheet.given(shell["wall_thickness"]), sheet.given(shell["roof_thickness"])
        self.wall = wall
        self.ends: dict[str, Figure] = {}
        self.zero = sheet.tabled("zero", "on the centre line, or the deck", 0.0, "m", source="convention")
        self.middle = sheet.work(
            "shell_middle",
            "middle of the shell behind the deck front",
            where.middle,
            edge=self.back,
            size=self.length,
        )
        self.roof_middle = sheet.work(
            "roof_middle", "middle of the roof above the deck", where.near_edge, middle=self.height, size=roof
        )
        self.half_height = sheet.work(
            "wall_middle",
            "middle of the walls above the deck",
            where.middle,
            edge=self.zero,
            size=self.height,
        )

    def flat(self, label: str, areal: Figure, above: Figure) -> Panel:
        area = self.sheet.work(
            f"{label}_area", f"{label}: area", eq.area, length=self.length, width=self.width
        )
        mass = self.sheet.work(f"{label}_mass", f"{label}: mass", eq.panel_mass, areal_mass=areal, area=area)
        return Panel(label, label, mass, self.middle, self.zero, above, self.length, self.width)

    def upright(self, wall: str) -> Panel:
        sheet, label = self.sheet, f"{wall} wall"
        side = wall in ("curb", "street")
        long = self.length if side else self.width
        whole = sheet.work(f"{wall}_wall_area", f"{label}: area", eq.area, length=long, width=self.height)
        holes = [
            sheet.work(
                f"{wall}_wall_hole_{key}",
                f"{label}: opening {key.replace('_', ' ')}",
                eq.area,
                length=sheet.given(hole["width"]),
                width=sheet.given(hole["height"]),
            )
            for key, hole in self.shell.openings.items()
            if hole.wall == wall
        ]
        taken = sheet.total(f"{wall}_wall_holes", f"{label}: openings together", holes, unit="m**2")
        net = sheet.work(
            f"{wall}_wall_net", f"{label}: area less its openings", eq.net_area, area=whole, openings=taken
        )
        mass = sheet.work(
            f"{wall}_wall_mass",
            f"{label}: mass",
            eq.panel_mass,
            areal_mass=sheet.given(self.shell["wall_areal_mass"]),
            area=net,
        )
        if side:
            edge = where.curb_middle if wall == "curb" else where.street_middle
            across = sheet.work(
                f"{wall}_wall_across",
                f"{label}: off the centre line",
                edge,
                room=self.width,
                gap=self.zero,
                size=self.wall,
            )
            along = self._centre_along(wall, whole, net, holes)
            return Panel(f"{wall}_wall", label, mass, along, across, self.half_height, self.length, self.wall)
        return Panel(
            f"{wall}_wall", label, mass, self._end(wall), self.zero, self.half_height, self.wall, self.width
        )

    def _centre_along(self, wall: str, whole: Figure, net: Figure, holes: list[Figure]) -> Figure:
        """Centre of a side wall: its middle, or what its openings leave of it."""
        if not holes:
            return self.middle
        sheet, openings = self.sheet, [one for one in self.shell.openings.items() if one[1].wall == wall]
        rows = {}
        for (key, hole), area in zip(openings, holes, strict=True):
            middle = sheet.work(
                f"{wall}_wall_hole_{key}_middle",
                f"{wall} wall: middle of opening {key.replace('_', ' ')} behind the deck front",
                where.middle,
                edge=sheet.given(hole["back"]),
                size=sheet.given(hole["width"]),
            )
            rows[key.replace("_", " ")] = {"area": area, "station": middle}
        moment = sheet.schedule(
            f"{wall}_wall_hole_moment", f"{wall} wall: openings' first moment", eq.area_moment, rows
        )
        return sheet.work(
            f"{wall}_wall_along",
            f"{wall} wall: centre behind the deck front, openings out",
            eq.centre_round_holes,
            area=whole,
            middle=self.middle,
            holes=moment,
            net=net,
        )

    def _end(self, wall: str) -> Figure:
        """Middle of an end wall behind the deck front, written once."""
        if wall not in self.ends:
            self.ends[wall] = self._front_end() if wall == "front" else self._rear_end()
        return self.ends[wall]

    def _front_end(self) -> Figure:
        return self.sheet.work(
            "front_wall_back",
            "front wall: middle behind the deck front",
            where.middle,
            edge=self.back,
            size=self.wall,
        )

    def _rear_end(self) -> Figure:
        sheet = self.sheet
        far = sheet.work(
            "shell_rear",
            "rear of the shell behind the deck front",
            where.far_edge,
            edge=self.back,
            size=self.length,
        )
        return sheet.work(
            "rear_wall_back",
            "rear wall: middle behind the deck front",
            where.near_edge,
            middle=far,
            size=self.wall,
        )

    def leaf(self, key: str, opening: Opening, sheet: Worksheet) -> Panel:
        """The hatch, door or window itself, closed."""
        label = key.replace("_", " ")
        width, height = sheet.given(opening["width"]), sheet.given(opening["height"])
        area = sheet.work("area", f"{label}: area", eq.area, length=width, width=height)
        mass = sheet.work(
            "mass", f"{label}: mass", eq.panel_mass, areal_mass=sheet.given(opening["areal_mass"]), area=area
        )
        above = sheet.work(
            "above_middle",
            f"{label}: middle above the deck",
            where.middle,
            edge=sheet.given(opening["above"]),
            size=height,
        )
        if opening.wall in ("front", "rear"):
            return Panel(
                f"leaf_{key}",
                label,
                mass,
                self._end(opening.wall),
                sheet.given(opening["off_centre"]),
                above,
                self.wall,
                width,
            )
        back = sheet.work(
            "back_middle",
            f"{label}: middle behind the deck front",
            where.middle,
            edge=sheet.given(opening["back"]),
            size=width,
        )
        if opening.wall == "roof":
            return Panel(f"leaf_{key}", label, mass, back, self.zero, self.roof_middle, width, height)
        edge = where.curb_middle if opening.wall == "curb" else where.street_middle
        across = sheet.work(
            "across", f"{label}: off the centre line", edge, room=self.width, gap=self.zero, size=self.wall
        )
        return Panel(f"leaf_{key}", label, mass, back, across, above, width, self.wall)
