"""A small wired cart, made by hand, with a bank whose figures are given: each test changes a line or two."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright.build.cart import Build
from curbwright.build.file import load_text
from curbwright.figures import Figure, Tabled
from curbwright.requirements import Finding, judge, requirements
from curbwright.sheets import Worksheets
from curbwright.sheets.circuits import Wired, work_circuits
from curbwright.sheets.placing import place

HEAD = """
[cart]
name = "Wired by hand"
[trailer]
deck_length = "10 ft"
deck_width = "6 ft"
ball_to_deck = "4 ft"
overall_width = "78 in"
[day]
opens = "10:00"
closes = "15:00"
[place]
electrical_basis = "general"
[electrical.lamps]
basic = true
"""
LOW = """
[items.bank]
kind = "battery"
[items.pump]
kind = "pump"
[items.pump.electric]
bus = "12 V"
power = "90 W"
start_multiple = "3"
duty = "event"
hours = "20 min"
[items.chest]
kind = "cold_chest_12v"
[items.chest.electric]
bus = "12 V"
power = "60 W"
duty = "thermostat"
share = "50 %"
[circuits.feeder]
supply = "bank"
feeds = ["12 V bus"]
length = "3 ft"
wire = "6 AWG"
fuse = "60 A"
fuse_type = "terminal-post"
fuse_distance = "0 in"
[circuits.pump]
supply = "12 V bus"
feeds = ["pump"]
length = "8 ft"
wire = "10 AWG"
fuse = "15 A"
fuse_type = "terminal-post"
[circuits.chest]
supply = "12 V bus"
feeds = ["chest"]
length = "6 ft"
fuse = "15 A"
fuse_type = "terminal-post"
"""
MAINS = """
[items.inverter]
kind = "inverter"
[items.fan]
kind = "fan_120v"
[items.fan.electric]
bus = "120 V inverter"
power = "200 W"
power_factor = "80 %"
start_multiple = "4"
[items.till]
kind = "pos"
[items.till.electric]
bus = "120 V inverter"
power = "20 W"
[electrical.inverter]
item = "inverter"
rating = "1000 W"
surge = "2000 W"
tare = "12 W"
efficiency_part = "90 %"
efficiency_full = "87 %"
wave = "sine"
on_at = "09:00"
off_at = "16:00"
[electrical.bonds]
inverter = "relay"
panel = "no"
transfer = "neutral switched"
[circuits.inverter_feed]
supply = "bank"
feeds = ["inverter"]
length = "4 ft"
fuse = "150 A"
fuse_type = "class T"
fuse_distance = "4 in"
insulation = "105 C"
[circuits.panel]
supply = "inverter"
feeds = ["120 V panel"]
length = "4 ft"
[circuits.counter]
supply = "120 V panel"
feeds = ["fan", "till"]
length = "10 ft"
fuse = "15 A"
fuse_type = "AC breaker"
receptacles = 2
gfci = true
"""
BANK = {
    "battery.nominal_voltage": (12.8, "V"),
    "battery.lowest_voltage": (10.8, "V"),
    "battery.fault_current": (2000.0, "A"),
    "battery.resistance": (0.0064, "ohm"),
}


@dataclass(frozen=True)
class Worked:
    """A worked circuits sheet, its figures by id without the trade's name, and its findings."""

    build: Build
    wired: Wired
    bank: dict[str, Figure]

    def __getitem__(self, id: str) -> Figure:
        return self.wired.sheet.figures()[f"circuits.{id}"]

    def has(self, id: str) -> bool:
        """Whether a figure could be worked."""
        return f"circuits.{id}" in self.wired.sheet.figures()

    def gaps(self) -> dict[str, str]:
        """What is missing, by section."""
        return {gap.section.removeprefix("circuits."): gap.path for gap in self.wired.sheet.all_gaps()}

    def findings(self, requirement: str) -> dict[str, Finding]:
        """Return the findings of one requirement of the electrical document, by what its star stands for."""
        sheet = self.wired.sheet
        sheets = Worksheets(
            self.build, place(self.build), (sheet,), {**self.bank, **sheet.figures()}, sheet.all_gaps()
        )
        rows = [row for row in requirements() if row.id == f"electrical.{requirement}"]
        assert rows, f"there is no requirement electrical.{requirement}"
        return {one.id.removeprefix(f"{rows[0].id}").lstrip("."): one for one in judge(sheets, rows)}

    def verdicts(self, requirement: str) -> dict[str, str]:
        """Return the verdicts of one requirement, by what its star stands for."""
        return {id: one.verdict for id, one in self.findings(requirement).items()}


def figure(id: str, value: float, unit: str) -> Figure:
    return Figure(value, id=id, name=id, unit=unit, origin=Tabled("trade-practice"))


def worked(text: str, *, bank: dict[str, tuple[float, str]] | None = None, **changes: str) -> Worked:
    """Work a cart's circuits; ``bank`` replaces or, as an empty dict, removes the battery's figures."""
    given = BANK if bank is None else {**BANK, **bank} if bank else {}
    figures = {id: figure(id, value, unit) for id, (value, unit) in given.items()}
    build = load_text(changed(HEAD + text, changes))
    return Worked(build, work_circuits(build, figures), figures)


def changed(text: str, changes: dict[str, str]) -> str:
    """Set values by their paths: ``trailer__overall_width`` is that in [trailer]; "" takes it out."""
    for name, value in changes.items():
        section, _, field = name.replace("__", ".").rpartition(".")
        text = set_field(text, section, field, value)
    return text


def set_field(text: str, section: str, field: str, value: str) -> str:
    """Set one field of a section, adding the line or the section where it is not there yet."""
    head = f"[{section}]"
    if head not in text:
        return f"{text}{head}\n{field} = {value}\n"
    before, _, rest = text.partition(head)
    own, mark, after = rest.partition("\n[")
    lines = [line for line in own.split("\n") if not line.startswith(f"{field} =")]
    if value:
        lines.insert(1, f"{field} = {value}")
    return before + head + "\n".join(lines) + mark + after
