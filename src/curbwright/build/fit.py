"""What the build file says of the shell, its openings, everything aboard and where it stands."""

from __future__ import annotations

from typing import Literal

from curbwright.build.balance import MassHow
from curbwright.build.battery import Piece
from curbwright.build.circuits import Electric
from curbwright.build.cold import ColdBox
from curbwright.build.cooking import CookingThing
from curbwright.build.gas import GasThing
from curbwright.build.part import (
    Angle,
    ArealMass,
    Length,
    Mass,
    Part,
    Position,
    Power,
    Thickness,
    Volume,
    asks,
)
from curbwright.build.water import WetThing

Side = Literal["curb", "street", "centre", "front", "rear"]
Wall = Literal["curb", "street", "front", "rear", "roof"]


class Opening(Part):
    """`[shell.openings.NAME]`: a hatch, door, window or vent in a wall or the roof."""

    wall: Wall = asks("wall it is in", required=True)
    kind: Literal["hatch", "door", "window", "vent"] = asks("kind of opening", required=True)
    back: Position | None = asks(
        "front edge of the opening behind the front of the deck (side walls and roof)"
    )
    off_centre: Position | None = asks(
        "middle of the opening off the centre line towards the curb side (end walls)"
    )
    above: Length | None = asks("lower edge above the deck", default="0 in", how="convention")
    width: Length = asks("width of the opening", required=True)
    height: Length = asks("height of the opening", required=True)
    areal_mass: ArealMass | None = asks(
        "mass of the leaf for its area",
        default="2.5 lb/ft2",
        how="practice",
        note="framed plywood or metal skin",
    )
    opens: Literal["up", "out", "in", "down", "slide", "fixed"] = asks("how it opens", default="out")
    open_angle: Angle | None = asks(
        "angle of an opened hatch above the horizontal", default="0 deg", how="convention"
    )
    shelf_depth: Length | None = asks("depth of a serving shelf outside, under the opening")
    shelf_above: Position | None = asks(
        "top of the serving shelf outside above the deck (negative: below it); left out: level with the sill"
    )

    def _label(self) -> str:
        return self.path.rpartition(".")[2].replace("_", " ")


class Shell(Part):
    """`[shell]`: floor, walls and roof around the kitchen, outside sizes; leave it out for an open cart."""

    back: Position | None = asks("front wall behind the front of the deck", default="0 in", how="convention")
    length: Length | None = asks("outside length; left out: the rest of the deck")
    width: Length | None = asks("outside width; left out: the deck's")
    height: Length = asks("deck to the top of the roof, outside", required=True)
    wall_thickness: Thickness | None = asks(
        "thickness of the walls, lining included", default="2 in", how="practice"
    )
    roof_thickness: Thickness | None = asks(
        "thickness of the roof, lining included", default="2 in", how="practice"
    )
    floor_areal_mass: ArealMass | None = asks(
        "mass of the floor for its area",
        default="3.5 lb/ft2",
        how="practice",
        note="3/4 in plywood, sealer and sheet",
    )
    wall_areal_mass: ArealMass | None = asks(
        "mass of the walls for their area", default="3 lb/ft2", how="practice",
        note="2x2 framing, two thin skins and a metal lining",
    )  # fmt: skip
    roof_areal_mass: ArealMass | None = asks(
        "mass of the roof for its area", default="2.5 lb/ft2", how="practice"
    )
    combustible: bool = asks(
        "walls that can burn behind the lining (wood framing does, even under metal)", default=True
    )
    openings: dict[str, Opening] = asks("hatches, doors, windows and vents", default={})


class Item(Part):
    """`[items.NAME]`: one thing aboard: an appliance, tank, bottle, battery, counter, shelf of stock.

    Sizes are those of the thing as it stands: width along its wall, depth into the room, height.
    Without a size its position is that of its centre of gravity.
    """

    label: str | None = asks("name as it should print; left out: the key with spaces")
    like: str | None = asks("catalogue item that fills in what is left out here")
    kind: str | None = asks("kind of thing, from the list in the reference page")
    side: Side = asks("wall it stands against, or the centre line", default="centre")
    back: Position | None = asks(
        "front edge behind the front of the deck (negative: ahead of it, on the drawbar)"
    )
    off_wall: Length | None = asks("gap between its back and its wall", default="0 in", how="convention")
    off_centre: Position | None = asks(
        "middle off the centre line towards the curb side (centre, front and rear positions)", default="0 in",
        how="convention",
    )  # fmt: skip
    above: Position | None = asks(
        "bottom above the deck (negative: slung below it)", default="0 in", how="convention"
    )
    turned: bool = asks("stands end-on to its wall", default=False)
    width: Length | None = asks("width along its wall")
    depth: Length | None = asks("depth from its wall into the room")
    height: Length | None = asks("height")
    mass: Mass | None = asks("mass empty")
    mass_how: MassHow = asks("how its mass is known", default="nameplate")
    capacity: Volume | None = asks("full volume of a tank")
    charge: Mass | None = asks("fuel in a full bottle")
    stock: Mass | None = asks("food and goods kept in it when ready for the road")
    gas_input: Power | None = asks("gas it burns with every burner full on", shown="BTU/h|kW")
    front_clear: Length | None = asks("clear floor needed in front of it to work")
    opens: Literal["door", "drawer", "lid", "none"] = asks("what opens on it", default="none")
    swing: Length | None = asks("how far its door or drawer, or an awning, reaches out when open")
    lid_rise: Length | None = asks("how far its lid reaches above its top, open")
    work_height: Length | None = asks("working surface above the deck; left out: its top")
    clear_side: Length | None = asks("clearance to anything that can burn at its sides, from its plate")
    clear_rear: Length | None = asks("clearance to anything that can burn behind it, from its plate")
    clear_above: Length | None = asks("clearance to anything that can burn above it, from its plate")
    combustible: bool | None = asks("can burn (wood, plastic, paper); left out: as its kind usually does")
    sealed_off: bool = asks(
        "in a compartment sealed from the inside and open to the outside only", default=False
    )
    guard: Length | None = asks(
        "height of the splash guard between it and its neighbour", default="0 in", how="convention"
    )
    bowl_depth: Length | None = asks("inside depth of a sink's bowl")
    drain_run: Length | None = asks(
        "length of its drain pipe to the waste tank; left out: along and across between them"
    )
    outlet_above: Position | None = asks(
        "above the deck: where a sink's waste leaves its trap, or a tank's inlet, or a drain"
    )
    shutoff_above: Position | None = asks("its shut-off valve above the deck")
    shutoff_from_face: Length | None = asks("its shut-off valve behind its face, as the hand reaches")
    connects: list[Literal["gas", "fresh", "hot", "drain", "12 V", "120 V", "duct"]] = asks(
        "what it is connected to", default=[]
    )
    electric: Electric | None = asks("what it draws")
    cold: ColdBox | None = asks("what it does to keep food cold")
    battery: Piece | None = asks("what it is as a battery of the bank")
    cooking: CookingThing | None = asks("how food is cooked on it or kept hot in it")
    gas: GasThing | None = asks("how it burns gas, or what is stamped on a bottle")

    water: WetThing | None = asks("bowls, a tank's shape and fittings, or the water it holds")

    def _label(self) -> str:
        return self.label or self.path.rpartition(".")[2].replace("_", " ")

    @property
    def name(self) -> str:
        """What to call it on a drawing or a line."""
        return self._label()


class Person(Part):
    """`[people.NAME]`: somebody who works in the parked cart."""

    mass: Mass | None = asks("mass, dressed", default="200 lb", how="practice")
    back: Position | None = asks("where they stand, behind the front of the deck")
    off_centre: Position | None = asks(
        "off the centre line towards the curb side", default="0 in", how="convention"
    )
    stature: Length | None = asks("height without shoes")

    def _label(self) -> str:
        return self.path.rpartition(".")[2].replace("_", " ")
