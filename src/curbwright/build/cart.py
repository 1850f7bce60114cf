"""Build: the whole build file, checked and frozen."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Annotated, Literal

from pydantic import Field, PrivateAttr

from curbwright.build.balance import TowVehicle, Trailer
from curbwright.build.battery import Bank
from curbwright.build.circuits import Basis, Circuit, Electrical
from curbwright.build.exhaust import Exhaust
from curbwright.build.fit import Item, Person, Shell
from curbwright.build.food import MenuItem
from curbwright.build.gas import Gas
from curbwright.build.part import (
    Altitude,
    ArealMass,
    Clock,
    Count,
    Date,
    Duration,
    Latitude,
    Length,
    Longitude,
    Part,
    Pressure,
    Reads,
    Share,
    Speed,
    Temperature,
    TemperatureDifference,
    Volume,
    asks,
)
from curbwright.build.solar import Solar
from curbwright.build.water import Water
from curbwright.units import Measure

WasteRatio = Annotated[Measure, Reads("share", most="400 %")]
TapFlow = Annotated[Measure, Reads("flow", most="20 gpm")]


class Cart(Part):
    """`[cart]`: its name and how to print it."""

    name: Annotated[str, Field(min_length=1, max_length=80)] = asks("name of the cart", required=True)
    notes: str | None = asks("remarks for yourself")
    units: Literal["us", "si"] = asks(
        "units to print in: us (in, lb, gal, BTU/h) or si (mm, kg, L, kW)", default="us"
    )
    revision: str | None = asks("revision mark for the drawings")
    drawn_on: str | None = asks("date for the drawings, as it should print")


class Place(Part):
    """`[place]`: whose rules. Road limits are those of the state it is towed in."""

    name: str | None = asks("the place that licenses it, in your words")
    state: str | None = asks("state whose road rules apply, as its two letters")
    electrical_basis: Basis | None = asks(
        "which electrical rules the place holds a cart to: none, general, or an article of the code",
        note="551 recreational vehicles, 552 park trailers, 525 fairs: ask, as no article names food carts",
    )
    width_limit: Length | None = asks(
        "widest vehicle on the roads used", default="102 in", how="read", source="cfr-23-658-15:a",
        note="on the National Network; many local roads allow 96 in",
    )  # fmt: skip
    height_limit: Length | None = asks(
        "tallest vehicle on the roads used", default="13 ft 6 in", how="read",
        source="maryland-trailer-rules", note="a common state limit; western states allow 14 ft (memory)",
    )  # fmt: skip
    length_limit: Length | None = asks(
        "longest trailer on the roads used", default="35 ft", how="read", source="maryland-trailer-rules"
    )
    cold_limit: Temperature | None = asks(
        "warmest that food kept cold may be", default="41 °F", how="read", source="food-code-3-501-16:(A)(2)",
        note="one state's older text allows 45 °F, Ontario asks for 4 °C: the place decides",
    )  # fmt: skip
    hot_limit: Temperature | None = asks(
        "coldest that food kept hot may be", default="135 °F", how="read", source="food-code-3-501-16:(A)(1)",
        note="New York asks for 140 °F: the place decides",
    )  # fmt: skip
    fresh_least: Volume | None = asks("least fresh-water tank the place allows")
    waste_ratio: WasteRatio | None = asks(
        "waste tank as a share of the fresh tank", default="115 %", how="read",
        source="ohio-3717-1-05-3:5-401.11(A)", note="150 % in California, Chicago and some counties: ask",
    )  # fmt: skip
    waste_least: Volume | None = asks("least waste tank the place allows", note="7.5 gal in California")
    waste_product: Share | None = asks(
        "share of the water in food and drink that the waste tank must hold on top", default="0 %",
        how="convention", note="15 % in California",
    )  # fmt: skip
    waste_ice: Share | None = asks(
        "share of the ice cabinet that the waste tank must hold on top", default="0 %", how="convention",
        note="a third in California",
    )  # fmt: skip
    tap_flow: TapFlow | None = asks("least flow the place asks of each tap", shown="gpm|L/min",
                                    note="1 gpm in California")  # fmt: skip
    tap_pressure: Pressure | None = asks(
        "least pressure at an open tap", default="8 psi", how="read", source="ipc-604",
        note="20 psi in one county of Oregon",
    )  # fmt: skip


class Pitch(Part):
    """`[pitch]`: where it stands and serves."""

    gust: Speed | None = asks(
        "strongest gust it must stand in, parked and open", default="40 mph", how="practice"
    )
    storm_gust: Speed | None = asks(
        "strongest gust it must stand in, closed", default="60 mph", how="practice"
    )
    ground_snow: ArealMass | None = asks(
        "ground snow load where it winters", default="0 lb/ft2", how="convention"
    )
    high: Temperature | None = asks(
        "highest air temperature of the hottest day it works through", default="95 °F", how="practice",
        note="the 0.4 % or 1 % summer design temperature of the nearest station, not the record",
    )  # fmt: skip
    low: Temperature | None = asks("lowest air temperature of the same day", default="75 °F", how="practice")
    humidity: Share | None = asks("relative humidity when the air is hottest", default="50 %", how="practice")
    altitude: Altitude | None = asks("height above the sea", default="0 ft", how="practice", shown="ft|m")
    latitude: Latitude | None = asks(
        "latitude, north of the equator", default="40 deg", how="practice", note="the middle of the US"
    )
    longitude: Longitude | None = asks(
        "longitude, negative west of Greenwich",
        default="-90 deg",
        how="practice",
        note="the middle of the US",
    )
    date: Date | None = asks(
        "day of the year it is worked out for", default="21 July", how="practice", shown="date"
    )
    daylight_saving: bool = asks("clocks an hour ahead of standard time on that day", default=True)
    cart_rise: TemperatureDifference | None = asks(
        "how much warmer than outside the air in the cart is while it serves", default="9 °F", how="practice",
        note="more beside a large griddle under a weak hood: 10 to 30 °F is seen",
    )  # fmt: skip


class ServiceDay(Part):
    """`[day]`: the hours and the hands."""

    opens: Clock | None = asks("serving from", shown="clock")
    closes: Clock | None = asks("serving until", shown="clock")
    crew: Count | None = asks("people working aboard")
    cooks: Count | None = asks("of them, people who cook and hand on", default=1, how="practice")
    busiest_hour: Share | None = asks(
        "share of a day's portions asked for in its busiest hour", default="35 %", how="practice",
        note="about 20 % of a cafe's day, half of a lunch-only pitch",
    )  # fmt: skip
    drive: Duration | None = asks("drive from base to the pitch")
    stock_left: Share | None = asks(
        "share of the stock left at the end of the day", default="30 %", how="practice"
    )
    bottles_left: Share | None = asks(
        "share of the fuel left at the end of the day", default="50 %", how="practice"
    )


class Build(Part):
    """The build file: every section, checked and frozen."""

    _folder: Path | None = PrivateAttr(default=None)

    cart: Cart = asks("the cart", required=True)
    place: Place = asks("whose rules", default=Place())
    trailer: Trailer = asks("the trailer", required=True)
    tow_vehicle: TowVehicle = asks("what pulls it", default=TowVehicle())
    shell: Shell | None = asks("floor, walls and roof")
    items: dict[str, Item] = asks("everything aboard", default={})
    circuits: dict[str, Circuit] = asks("runs of wire with their fuses", default={})
    electrical: Electrical = asks("the wiring as a whole", default=Electrical())
    battery: Bank | None = asks("the batteries that run it")
    solar: Solar | None = asks("the panels that charge them")
    gas: Gas = asks("bottles, regulator and gas pipe", default=Gas())
    exhaust: Exhaust | None = asks("hood, fan, and the air that comes in")
    water: Water = asks("fresh and waste water", default=Water())
    people: dict[str, Person] = asks("who works aboard", default={})
    pitch: Pitch = asks("where it stands", default=Pitch())
    menu: dict[str, MenuItem] = asks("what is sold", default={})
    day: ServiceDay = asks("hours and hands", default=ServiceDay())

    @property
    def folder(self) -> Path | None:
        """The folder the build file stands in; None where it was read from text."""
        return self._folder

    def all_parts(self) -> Iterator[Part]:
        """Yield every section, this one first."""
        stack: list[Part] = [self]
        while stack:
            part = stack.pop()
            yield part
            stack.extend(below for _, below in part.parts())

    def at(self, path: str) -> Part:
        """Return the section at a dotted path; raises KeyError if there is none."""
        for part in self.all_parts():
            if part.path == path:
                return part
        raise KeyError(path)


def assign_paths(build: Build) -> None:
    """Tell every section its own path; called once, when a build file has been read."""
    stack: list[Part] = [build]
    while stack:
        part = stack.pop()
        for key, below in part.parts():
            below._path = f"{part._path}.{key}" if part._path else key
            stack.append(below)
