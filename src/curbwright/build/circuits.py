"""What the build file says of the wiring: what draws power, what it is wired with, what supplies it."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from curbwright.build.part import Clock, Count, Duration, Length, Part, Power, Reads, Share, asks
from curbwright.units import Measure

Amperes = Annotated[Measure, Reads("current", most="2000 A")]
Volts = Annotated[Measure, Reads("voltage", most="600 V")]
WireSize = Annotated[Measure, Reads("wire_size")]
Temperature = Annotated[Measure, Reads("temperature", least="-40 F", most="250 F")]
Far = Annotated[Measure, Reads("length", most="1000 ft")]
Number = Annotated[Measure, Reads("number", least="0", most="1000")]

Basis = Literal["none", "general", "551", "552", "525"]
Bus = Literal["12 V", "120 V inverter", "120 V shore"]
FuseType = Literal[
    "blade",
    "bolt-down mini",
    "bolt-down mega",
    "ANL",
    "terminal-post",
    "DC cartridge",
    "class T",
    "DC breaker",
    "AC breaker",
]
Heat = Literal["60 C", "75 C", "90 C", "105 C"]
PLACES = ("battery", "12 V bus", "120 V panel", "shore inlet", "tow plug")
"""Where a circuit may start or end besides at an item."""


class Electric(Part):
    """`[items.NAME.electric]`: what one thing draws, for how long, and from which supply."""

    bus: Bus | None = asks("supply it runs on: the battery, the inverter, or shore power alone")
    power: Power | None = asks("power while it runs; left out: volts times amperes")
    current: Amperes | None = asks("current while it runs, from its label")
    voltage: Volts | None = asks("voltage of its label; left out: 12 V or 120 V, as its supply")
    power_factor: Share = asks(
        "real power over volts times amperes, on 120 V", default="100 %", how="practice",
        note="a small motor is nearer 70 %: read its label",
    )  # fmt: skip
    start_multiple: Number = asks(
        "current at the moment it starts over its running current", default="1", how="convention",
        note="a refrigerator 3 to 5, another motor 4 to 6",
    )  # fmt: skip
    start_time: Duration = asks("how long its start lasts", default="0.3 s", how="memory", source="recalled")
    duty: Literal["constant", "window", "thermostat", "event"] = asks(
        "how it runs: always, between two times, by its thermostat, or now and then", default="window"
    )
    share: Share | None = asks("share of its time that a thermostat keeps it running; left out: as worked")
    hours: Duration | None = asks(
        "time a day that it runs or is switched on; left out: between its two times, or all day"
    )
    on_at: Clock | None = asks("switched on at; left out: when serving begins", shown="clock")
    off_at: Clock | None = asks("switched off at; left out: when serving ends", shown="clock")
    priority: Annotated[int, Field(strict=True, ge=1, le=9)] = asks(
        "when the battery runs low it goes off after those with a higher number; 1 never goes off", default=5
    )

    def _label(self) -> str:
        return self.path.split(".")[1].replace("_", " ") if self.path else ""


class Circuit(Part):
    """`[circuits.NAME]`: one run of wire, out and back, with its fuse.

    It starts at `supply` and ends at what it `feeds`: items by their names, or one of battery, 12 V bus,
    120 V panel, shore inlet, tow plug. A wire or fuse left out is chosen and printed as what to buy.
    """

    label: str | None = asks("name as it should print; left out: the key with spaces")
    supply: str = asks("where it starts: an item, or one of the places", required=True)
    feeds: list[str] = asks("what it feeds: items, or one of the places", required=True)
    length: Length | None = asks("length of the run one way, as the wire goes")
    voltage: Volts | None = asks("its voltage; left out: 12 V or 120 V, from where it starts")
    current: Amperes | None = asks("largest current it carries; left out: what it feeds, all running")
    continuous: bool | None = asks("runs three hours or longer; left out: from what it feeds")
    wire: WireSize | None = asks("wire size; left out: chosen, and printed as what to buy", shown="AWG")
    area_basis: Literal["AWG", "SAE"] | None = asks(
        "whose areas the wire is made to; left out: SAE on 12 V, which has less copper, and AWG on 120 V"
    )
    insulation: Heat = asks("temperature its insulation is made for", default="75 C", how="practice")
    terminals: Heat | None = asks(
        "temperature its terminals are made for; left out: 60 C on 120 V, as the insulation on 12 V"
    )
    space: Temperature = asks(
        "hottest air around any part of it", default="104 F", how="practice",
        note="beside a griddle or under a roof in the sun it is hotter",
    )  # fmt: skip
    bundled: Count = asks(
        "conductors that carry current in its bundle, cable or pipe, its own two counted", default=2
    )
    sheathed: bool = asks("within a sheath or cable jacket, which alone allows 18 AWG", default=False)
    critical: bool = asks("what it feeds must not see a low voltage: 3 % drop instead of 10 %", default=True)
    fuse: Amperes | None = asks("fuse or breaker where it starts")
    fuse_type: FuseType | None = asks("kind of that fuse")
    fuse_distance: Length | None = asks(
        "wire between the source and that fuse; left out at a bus or panel: none"
    )
    far_fuse: Amperes | None = asks("fuse at its other end, where that is a source too")
    far_fuse_type: FuseType | None = asks("kind of the fuse at its other end")
    far_fuse_distance: Length | None = asks("wire between the other source and the fuse there")
    switch: str | None = asks("the item that disconnects it, by name")
    receptacles: Count = asks("receptacles on it", default=0)
    gfci: bool | None = asks("everything on it is behind a ground-fault interrupter")
    colour: str | None = asks("colour of its ungrounded wire; left out: by the usual colours")

    def _label(self) -> str:
        return self.label or self.path.rpartition(".")[2].replace("_", " ")

    @property
    def name(self) -> str:
        """What to call it on a drawing or a line."""
        return self._label()


class Inverter(Part):
    """`[electrical.inverter]`: 120 V from the battery; the catalogue fills in what it knows of its item."""

    item: str | None = asks("the item it is, by name")
    rating: Power | None = asks("power it gives without end")
    surge: Power | None = asks("power it gives for a second or two, while a motor starts")
    surge_time: Duration = asks("how long it gives that", default="1 s", how="practice")
    tare: Power | None = asks("power it draws with nothing switched on")
    part: Share = asks("part of its rating at which its part-load efficiency is given", default="30 %",
                       how="convention")  # fmt: skip
    efficiency_part: Share | None = asks("efficiency at that part of its rating")
    efficiency_full: Share | None = asks("efficiency at its rating")
    wave: Literal["sine", "modified"] | None = asks("form of its wave")
    on_at: Clock | None = asks("switched on at; left out: never switched off", shown="clock")
    off_at: Clock | None = asks("switched off at; left out: never switched off", shown="clock")

    def _label(self) -> str:
        return "inverter"


class Shore(Part):
    """`[electrical.shore]`: power from a building or the pitch."""

    rating: Amperes | None = asks("rating of the inlet and its main breaker")
    voltage: Volts | None = asks("voltage between its two wires", default="120 V", how="practice")
    cord_wire: WireSize | None = asks("wire size of the cord", shown="AWG")
    cord_length: Far | None = asks("length of the cord, with any extension")
    transfers: bool = asks("the inverter's loads move to shore power while it is there", default=False)

    def _label(self) -> str:
        return "shore power"


class Generator(Part):
    """`[electrical.generator]`: an engine generator, as far as wiring and neighbours are concerned."""

    item: str | None = asks("the item it is, by name")
    rating: Power | None = asks("running power on its plate")
    surge: Power | None = asks("starting power on its plate")
    plate_fuel: Literal["gasoline", "propane", "diesel"] = asks(
        "fuel that its plate's ratings hold for", default="gasoline"
    )
    fuel: Literal["gasoline", "propane", "diesel"] = asks("fuel it runs on", default="gasoline")
    altitude: Annotated[Measure, Reads("position", least="-2000 ft", most="15000 ft")] | None = asks(
        "height above the sea", default="0 ft", how="convention"
    )
    air: Temperature | None = asks("air on a hot day", default="77 F", how="convention")
    sound_power: Number | None = asks("sound power level on its plate, in dB")
    listener: Far | None = asks("distance to the nearest ear that counts")
    noise_limit: Number | None = asks("most that may be heard there, in dB")

    def _label(self) -> str:
        return "generator"


class Bonds(Part):
    """`[electrical.bonds]`: where neutral and ground are joined.

    In every way of running there must be one place. The service that shore power comes from has its own;
    the trailer's panel must have none.
    """

    inverter: Literal["relay", "jumper", "none"] | None = asks(
        "at the inverter: by its own relay while it inverts, by a fixed jumper, or not at all"
    )
    generator: Literal["frame", "plug", "none"] | None = asks(
        "at the generator: to its frame, by a listed plug, or not at all (floating)"
    )
    panel: Literal["yes", "no"] | None = asks("in the trailer's own panel")
    transfer: Literal["neutral switched", "hot only"] | None = asks(
        "whether changing the source switches the neutral too"
    )


class Lamps(Part):
    """`[electrical.lamps]`: what lights the trailer on the road."""

    basic: bool | None = asks(
        "tail, stop and turn lamps, red rear reflectors, side markers with reflectors, plate lamp"
    )
    wide: bool | None = asks("clearance lamps, and three red identification lamps at the rear")
    long: bool | None = asks("amber markers and reflectors at the middle of each side")
    tape: bool | None = asks("red and white conspicuity tape")


class Electrical(Part):
    """`[electrical]`: what holds for the wiring as a whole."""

    drop_basis: Literal["24 C", "75 C"] = asks(
        "temperature of the copper at which voltage drop is judged", default="75 C", how="practice",
        note="24 C is the marine K of 10.75; 75 C loses a fifth more",
    )  # fmt: skip
    panel_space_width: Length | None = asks("clear width in front of the 120 V panel")
    panel_space_depth: Length | None = asks("clear depth in front of the 120 V panel")
    bonding_wire: WireSize | None = asks(
        "wire that bonds frame, body, hood, sinks and gas piping together", shown="AWG"
    )
    battery_bond: WireSize | None = asks("wire that bonds the battery's negative to the frame", shown="AWG")
    disconnect_to_operator: Length | None = asks("from where the operator stands to the disconnect")
    inverter: Inverter | None = asks("120 V from the battery")
    shore: Shore | None = asks("power from a building or the pitch")
    generator: Generator | None = asks("an engine generator")
    bonds: Bonds = asks("where neutral and ground are joined", default=Bonds())
    lamps: Lamps = asks("what lights the trailer on the road", default=Lamps())
