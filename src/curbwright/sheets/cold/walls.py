"""The walls of a box: its inside, what they let through per degree, the share of each face."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright import data
from curbwright.build.cold import ColdBox
from curbwright.build.fit import Item
from curbwright.equations import cold as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet

STILL, STIRRED, OUTSIDE = 7.0, 12.0, 9.0
"""Film coefficients in W/m2/K, recalled: still air on a plate, stirred by a fan, outside a box indoors."""
LIDDED = frozenset({"cold_chest_12v", "ice_chest", "prep_table_cold"})
"""Kinds that open upwards where the build file does not say how."""


@dataclass(frozen=True)
class Inside:
    """Inside sizes of a box."""

    width: Figure
    depth: Figure
    height: Figure
    volume: Figure
    area: Figure
    lidded: bool

    @property
    def opening(self) -> tuple[Figure, Figure]:
        """The two sides of its lid or door; of a door the height comes second."""
        return (self.width, self.depth) if self.lidded else (self.width, self.height)


@dataclass(frozen=True)
class Walls:
    """What a shut box lets through per degree: in parts, and all together."""

    parts: dict[str, Figure]
    """By what it is: the walls and the gasket, or both as measured."""
    whole: Figure


def inside(item: Item, box: ColdBox, sheet: Worksheet) -> Inside:
    """Work out the inside sizes: as given, from the volume, or from outside less two walls."""
    wall = sheet.given(box["wall"])
    depth, height = (_size(side, item, box, wall, sheet) for side in ("depth", "height"))
    if box.inside_width is None and box.volume is not None:
        volume = sheet.given(box["volume"])
        width = sheet.work(
            "width", "inside width, the rest of the outside being machinery", eq.side_from_volume,
            volume=volume, depth=depth, height=height,
        )  # fmt: skip
    else:
        width = _size("width", item, box, wall, sheet)
        volume = sheet.work(
            "volume", "inside volume", eq.box_volume, shown="ft3|L", width=width, depth=depth, height=height
        )
    if float(wall) / 5 > min(width, depth, height):
        sheet.note("A side is less than a fifth of the wall: the formula for edges does not hold there.")
    area = sheet.work("area", "inside area", eq.inside_area, width=width, depth=depth, height=height)
    lidded = item.opens == "lid" or (item.opens == "none" and item.kind in LIDDED)
    return Inside(width, depth, height, volume, area, lidded)


def _size(side: str, item: Item, box: ColdBox, wall: Figure, sheet: Worksheet) -> Figure:
    if getattr(box, f"inside_{side}") is not None:
        return sheet.given(box[f"inside_{side}"])
    size = sheet.work(side, f"inside {side}", eq.within_walls, outside=sheet.given(item[side]), wall=wall)
    if float(size) <= 0:
        raise MissingInput(f"{box.path}.wall", f"two walls leave no inside {side}")
    return size


def walls(room: Inside, box: ColdBox, sheet: Worksheet) -> Walls:
    """Work out what the walls with their edges and corners and the gasket let through per degree."""
    if box.conductance is not None:
        measured = sheet.given(box["conductance"])
        sheet.note("Walls and gasket as measured: their sizes and their insulation are not asked.")
        return Walls({"walls and gasket, as measured": measured}, measured)
    wall = sheet.given(box["wall"])
    factor = sheet.work(
        "shape_factor", "shape factor: faces, edges and corners", eq.shape_factor, area=room.area,
        wall=wall,
        edges=sheet.work(
            "edges", "length of the twelve edges inside", eq.edge_length,
            width=room.width, depth=room.depth, height=room.height,
        ),
    )  # fmt: skip
    film = (STIRRED, "stirred by a fan") if box.fan else (STILL, "still air")
    through = sheet.work(
        "walls", "heat let in per degree through the walls", eq.wall_conductance,
        conductivity=_conductivity(box, sheet), shape_factor=factor, inside_area=room.area,
        outside_area=sheet.work(
            "outside_area", "outside area", eq.outside_area,
            width=room.width, depth=room.depth, height=room.height, wall=wall,
        ),
        inside_film=sheet.tabled(
            "inside_film", "film inside", film[0], "W/m**2/K", source="recalled", row=film[1]
        ),
        outside_film=sheet.tabled(
            "outside_film", "film outside", OUTSIDE, "W/m**2/K", source="recalled", row="indoors, 8 to 10"
        ),
    )  # fmt: skip
    one, other = room.opening
    gasket = sheet.work(
        "gasket", "heat let in per degree past the gasket", eq.gasket_conductance,
        loss=sheet.given(box["gasket_loss"]),
        length=sheet.work(
            "gasket_length", "length of the gasket", eq.gasket_length, one_side=one, other_side=other
        ),
    )  # fmt: skip
    whole = sheet.total("conductance", "heat let in per degree, shut", [through, gasket])
    return Walls({"walls, edges and corners": through, "gasket": gasket}, whole)


def _conductivity(box: ColdBox, sheet: Worksheet) -> Figure:
    if box.conductivity is not None:
        new = sheet.given(box["conductivity"])
    else:
        row = data.table("cold/insulation").row(box.insulation)
        value = data.table("cold/insulation").quantity(box.insulation, "conductivity", "conductivity")
        new = sheet.tabled(
            "new_conductivity", f"conductivity of {box.insulation}", float(value), "W/m/K",
            source=row["source"], row=box.insulation,
        )  # fmt: skip
    return sheet.work(
        "aged_conductivity", "conductivity in service", eq.aged_conductivity, conductivity=new,
        ageing=sheet.given(box["ageing"]),
    )  # fmt: skip


def share_of_faces(id: str, faces: list[str], room: Inside, sheet: Worksheet) -> Figure:
    """Share of some faces in the inside area."""
    sides = {
        "top": (room.width, room.depth),
        "front": (room.width, room.height), "back": (room.width, room.height),
        "left": (room.depth, room.height), "right": (room.depth, room.height),
    }  # fmt: skip
    areas = [
        sheet.work(
            f"{id}_{face}", f"inside area of the {face}", eq.face_area,
            one_side=sides[face][0], other_side=sides[face][1],
        )
        for face in dict.fromkeys(faces)
    ]  # fmt: skip
    total = sheet.total(f"{id}_area", f"area of the faces: {', '.join(dict.fromkeys(faces))}", areas)
    return sheet.work(f"{id}_share", "their share of the box", eq.face_share, face=total, area=room.area)
