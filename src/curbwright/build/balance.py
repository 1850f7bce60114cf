"""What the build file says of the trailer, its running gear and the vehicle that tows it."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from curbwright.build.part import (
    CorneringStiffness,
    Count,
    Length,
    Mass,
    Part,
    Position,
    Pressure,
    Reads,
    Speed,
    Stiffness,
    asks,
)
from curbwright.units import Measure

MassHow = Literal["weighed", "nameplate", "catalogue", "cut list", "estimate", "guess"]


class Axle(Part):
    """`[trailer.axle]`: where the wheels are and what they may carry."""

    count: Annotated[int, Field(strict=True, ge=1, le=2)] = asks("number of axles", default=1)
    back: Length | None = asks("axle behind the front of the deck (of a tandem: midway between its axles)")
    track: Length | None = asks("track, tire centre to tire centre")
    rating: Mass | None = asks("rating of one axle with its springs and hubs")
    centre_height: Length | None = asks(
        "axle centre above the road",
        default="13 in",
        how="practice",
        note="half a trailer tire's loaded diameter",
    )
    spacing: Length | None = asks("distance between the two axles of a tandem")
    suspension: Literal["equalised leaf", "torsion"] = asks(
        "kind of springs", default="equalised leaf", note="a torsion tandem does not share its load equally"
    )
    spring_rate: Stiffness | None = asks(
        "spring rate of one axle, both wheels together (torsion tandem only)"
    )
    cornering_stiffness: CorneringStiffness | None = asks(
        "side stiffness of all trailer tires together, per radian of slip"
    )


class Tires(Part):
    """`[trailer.tires]`: as the sidewall says."""

    size: str | None = asks("size as on the sidewall, such as ST205/75R15")
    kind: Literal["ST", "LT", "P"] = asks("kind of tire: trailer, light truck or passenger", default="ST")
    rating: Mass | None = asks("load one tire may carry, from its sidewall")
    rated_pressure: Pressure | None = asks("pressure at which the sidewall's load holds")
    pressure: Pressure | None = asks("pressure they are run at; left out: the rated pressure")
    count: Annotated[int, Field(strict=True, ge=2, le=8)] = asks("number of tires on the road", default=2)


class Coupler(Part):
    """`[trailer.coupler]`: the coupler, its ball, the safety chains."""

    rating: Mass | None = asks("gross trailer mass the coupler is rated for")
    ball: Length | None = asks("ball diameter the coupler is made for")
    ball_on_vehicle: Length | None = asks("ball diameter on the tow vehicle")
    ball_rating: Mass | None = asks("gross trailer mass stamped on the ball")
    chain_rating: Mass | None = asks("least breaking load of one safety chain")
    chain_count: Count | None = asks("number of safety chains")


class Brakes(Part):
    """`[trailer.brakes]`."""

    kind: Literal["none", "electric", "surge", "hydraulic"] | None = asks("kind of trailer brakes")
    breakaway: bool | None = asks("a breakaway switch that sets the brakes by itself")


class Trailer(Part):
    """`[trailer]`: the deck, the drawbar and the bare trailer's own mass."""

    deck_length: Length = asks("length of the deck", required=True)
    deck_width: Length = asks("width of the deck", required=True)
    deck_height: Length | None = asks(
        "top of the deck above the road, level", default="24 in", how="practice"
    )
    ball_to_deck: Length = asks("ball centre to the front of the deck", required=True)
    ball_height: Length | None = asks("ball centre above the road, level", default="18 in", how="practice")
    overall_width: Length | None = asks("overall width over rigid fenders and everything fixed")
    bare_mass: Mass | None = asks("mass of the bare trailer: frame, drawbar, axle, wheels")
    bare_mass_how: MassHow = asks("how the bare trailer's mass is known", default="estimate")
    bare_tongue: Mass | None = asks(
        "tongue load of the bare trailer on a scale, which gives its centre of gravity"
    )
    bare_centre_back: Position | None = asks(
        "centre of gravity of the bare trailer behind the front of the deck"
    )
    bare_centre_height: Length | None = asks(
        "centre of gravity of the bare trailer above the road", default="20 in", how="practice",
        note="frame rails and axle together",
    )  # fmt: skip
    gross_rating: Mass | None = asks("gross rating of the trailer (GVWR), from its plate")
    axle: Axle = asks("the running gear", default=Axle())
    tires: Tires = asks("the tires", default=Tires())
    coupler: Coupler = asks("the coupler", default=Coupler())
    brakes: Brakes = asks("the brakes", default=Brakes())


class TowVehicle(Part):
    """`[tow_vehicle]`: what pulls it, from its handbook and door plate."""

    mass: Mass | None = asks("mass of the tow vehicle as it tows")
    wheelbase: Length | None = asks("wheelbase")
    front_share: Annotated[Measure, Reads("share", least="20 %", most="80 %")] | None = asks(
        "share of the tow vehicle's own mass on its front axle", default="55 %", how="practice"
    )
    rear_axle_to_ball: Length | None = asks(
        "rear axle to ball centre", default="46 in", how="practice", note="1.1 to 1.2 m on most vehicles"
    )
    tow_rating: Mass | None = asks("gross trailer mass the maker allows")
    tongue_rating: Mass | None = asks("tongue load the maker or the hitch allows, the smaller")
    hitch: Literal["weight-carrying", "weight-distributing"] = asks(
        "kind of hitch", default="weight-carrying"
    )
    speed: Speed | None = asks("fastest towing speed intended", default="65 mph", how="practice")
