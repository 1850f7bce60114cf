"""The one-line diagram: sources at the left, the battery in the middle, bus and panel at the right.

It is drawn for one Letter sheet. Lengths are millimetres on paper; nothing is to scale.
"""

from __future__ import annotations

from curbwright.drawings.boxes import Point
from curbwright.drawings.one_line.contents import Contents, Lane, Row, Wire, contents
from curbwright.drawings.one_line.notes import one_line_notes
from curbwright.drawings.one_line.pen import ABOVE, FUSE, SMALL, Pen, wide
from curbwright.drawings.primitives import View
from curbwright.sheets import Worksheets

__all__ = ["one_line", "one_line_notes"]

SOURCE, CONVERTER, BANK, INVERTER = (0.0, 32.0), (56.0, 29.0), (112.0, 28.0), (88.0, 33.0)
"""Left edge and width of the columns of boxes."""
TRANSFER = (144.5, 18.5)
BUS, FUSED, END = 168.0, 178.5, 215.5
"""The bus, the middle of a row's fuse, the tip of its arrow."""
LOAD = 34.5
"""Room for the name of a load."""
LANE, ROOM = 17.0, 108.0
"""From one source to the next, and how tall the diagram may be."""
TALL = 15.5
"""How tall a box of four lines is."""
HEAD = 6.0
"""Above the first row, for the name of the bus."""
APART = 16.0
"""Between the 12 V half and the 120 V half, for the inverter's fuse."""
ROOMY, FULL, LEAST = 9.8, 7.6, 5.0
"""Pitch of rows whose load may take three lines, or two, and of those lettered above their line only."""


def one_line(sheets: Worksheets) -> View | None:
    """Return the one-line diagram, or None for a cart without circuits."""
    found = contents(sheets)
    return None if found is None else View("One-line diagram", tuple(_drawn(found).marks), to_scale=False)


def _drawn(found: Contents) -> Pen:
    pen = Pen()
    rows, low_half = len(found.low) + len(found.mains), found.bank is not None
    mains_half = bool(found.inverter or found.others or found.mains)
    spare = ROOM - (APART if mains_half and low_half else 0.0) - 2 * HEAD
    pitch = min(11.0, max(LEAST, spare / max(rows, 1)))
    low = max(len(found.lanes) * LANE, len(found.low) * pitch + HEAD, 34.0) if low_half else 0.0
    mains = max(len(found.mains) * pitch + HEAD, (1 + len(found.others)) * LANE) if mains_half else 0.0
    middle = mains + (APART if mains and low else 0.0)
    if found.bank is not None:
        pen.box(BANK[0], middle, BANK[1], low, found.bank.lines)
        pen.ground((BANK[0] + BANK[1] - 4.0, middle), "right", found.bank_ground, 60.0)
        _bus(pen, found, middle + low, pitch)
    for number, lane in enumerate(found.lanes):
        _lane(pen, lane, middle + low - LANE * (number + 0.5))
    if mains:
        _mains(pen, found, mains, middle, pitch)
    return pen


def _lane(pen: Pen, lane: Lane, y: float) -> None:
    """A source, its run to a converter, and the converter's run to the bank."""
    left, wide = SOURCE
    pen.box(left, y - TALL / 2, wide, TALL, lane.source.lines)
    start = left + wide
    if lane.converter is None:
        _run(pen, lane.first, (start, y), (BANK[0], y))
        return
    if lane.first is not None:
        _run(pen, lane.first, (start, y), (CONVERTER[0], y))
    else:
        pen.line((start, y), (CONVERTER[0], y))
    pen.box(CONVERTER[0], y - TALL / 2, CONVERTER[1], TALL, lane.converter.lines)
    if lane.joins:
        right = CONVERTER[0] + CONVERTER[1]
        pen.line((right, y), (right + 4.0, y))
        pen.arrow((right + 5.8, y))
        pen.text((right + 7.0, y - SMALL / 2), lane.joins, room=BANK[0] - right - 7.5)
    if lane.second is not None:
        _run(pen, lane.second, (CONVERTER[0] + CONVERTER[1], y), (BANK[0], y), from_right=True)


def _run(pen: Pen, wire: Wire | None, start: Point, end: Point, *, from_right: bool = False) -> None:
    """A level run between two boxes: number and wire above it, protection below; written from either end."""
    if wire is None:
        pen.line(start, end)
        return
    step, first = (-FUSE - 1.5, end[0]) if from_right else (FUSE + 1.5, start[0])
    last = start[0] if from_right else end[0]
    places = [first + (step / abs(step)) * (2.0 + FUSE / 2) + step * n for n in range(len(wire.devices))]
    devices = list(zip(places, wire.devices, strict=True))
    if wire.has_far and wire.far != "none":
        devices.append((last - (step / abs(step)) * (2.0 + FUSE / 2), "fuse"))
    pen.run(start, end, *devices)
    room, middle, y = end[0] - start[0] - 1.0, (start[0] + end[0]) / 2, start[1]
    pen.text((middle, y + 1.2 + ABOVE + 3.5), wire.number, room=room, align="centre")
    pen.text((middle, y + 1.2 + ABOVE), wire.wire, room=room, align="centre")
    below = [(wire.near or "no fuse", from_right)] if wire.devices else []
    if wire.has_far:
        below.append(("no fuse here" if wire.far == "none" else wire.far, not from_right))
    for number, (words, right) in enumerate(sorted(below, key=lambda one: one[1])):
        place = end[0] - 0.5 if right else start[0] + 0.5
        level = y - 1.2 - ABOVE - SMALL - 3.5 * number
        pen.text((place, level), words, room=room, align="right" if right else "left")


def _bus(pen: Pen, found: Contents, top: float, pitch: float) -> None:
    if not found.low and found.bus_feed is None:
        return
    first, last = _rows(pen, found.bus, found.low, top, pitch)
    pen.bar((BUS, first + pitch / 2), (BUS, last - pitch / 2))
    if found.bus_feed is not None:
        y = (first + last) / 2
        _run(pen, found.bus_feed, (BANK[0] + BANK[1], y), (BUS, y))


def _rows(pen: Pen, name: str, rows: tuple[Row, ...], top: float, pitch: float) -> tuple[float, float]:
    """Draw a bus's name and its rows; return the heights of the first and the last."""
    pen.text((BUS - 1.0, top - 2.6), name, room=END + LOAD - BUS)
    first = top - HEAD - pitch / 2
    for number, row in enumerate(rows):
        _row(pen, row, first - pitch * number, pitch)
    return first, first - pitch * max(len(rows) - 1, 0)


def _row(pen: Pen, row: Row, y: float, pitch: float) -> None:
    """One branch: number, protection, wire, load."""
    wire, full = row.wire, pitch >= FULL
    pen.run((BUS, y), (END - 1.8, y), *((FUSED, sort) for sort in wire.devices[:1]))
    pen.arrow((END - 1.8, y) if row.inward else (END, y), left=row.inward)
    pen.text((BUS + 1.0, y + ABOVE), wire.number, room=FUSED - FUSE / 2 - BUS - 1.5)
    start = FUSED + FUSE / 2 + 1.0
    pen.text((start, y + ABOVE), wire.near if full else wire.short, room=END - 1.5 - start)
    if full:
        far = f", far {' '.join(wire.far.split()[:2])}" if wire.has_far else ""
        pen.text((start, y - ABOVE - SMALL), f"{wire.wire}{far}", room=END - 1.5 - start)
    place = END + 1.5
    if row.receptacles:
        pen.outlet((END + 1.6, y))
        place += 2.7
    room = LOAD - (place - END)
    pen.block((place, y), _load(row, room), room=room, most=3 if pitch >= ROOMY else 2 if full else 1)


def _load(row: Row, room: float) -> str:
    """What a branch feeds with its power, which is not parted from its unit where one line is too short."""
    count = f"{row.receptacles} receptacles: " if row.receptacles > 1 else ""
    names = f"{count}{row.load}"
    if not row.power:
        return names
    words = f"{names}, {row.power}"
    return f"{names},\n{row.power}" if wide(words) > room >= wide(f"{names},") else words


def _mains(pen: Pen, found: Contents, top: float, middle: float, pitch: float) -> None:
    """The inverter under the bank, other supplies at the left, transfer, panel and its rows."""
    feed = top - LANE / 2
    goes_on = BUS
    if found.transfer is not None:
        goes_on = TRANSFER[0]
        pen.box(TRANSFER[0], feed - TALL / 2, TRANSFER[1], TALL, found.transfer.lines)
        pen.line((TRANSFER[0] + TRANSFER[1], feed), (BUS, feed))
    if found.inverter is not None:
        pen.box(INVERTER[0], feed - TALL / 2, INVERTER[1], TALL, found.inverter.lines)
        _down(pen, found.inverter_feed, BANK[0] + 4.0, middle, feed + TALL / 2)
        if found.panel_feed is not None or found.outlets:
            _run(pen, found.panel_feed, (INVERTER[0] + INVERTER[1], feed), (goes_on, feed))
    for number, other in enumerate(found.others, 1 if found.inverter is not None else 0):
        y = feed - LANE * number
        pen.box(SOURCE[0], y - TALL / 2, SOURCE[1], TALL, other.box.lines)
        corner = goes_on + TRANSFER[1] / 2 - 3.0 * (len(found.others) - number) if found.transfer else BUS
        _run(pen, other.wire, (SOURCE[0] + SOURCE[1], y), (SOURCE[0] + SOURCE[1] + 44.0, y))
        pen.line((SOURCE[0] + SOURCE[1] + 44.0, y), (corner, y), (corner, min(y, feed - TALL / 2)))
        if y != feed:
            pen.line((corner, y), (corner, feed - TALL / 2))
    if found.mains or found.panel_feed is not None or found.others:
        first, last = _rows(pen, found.panel, found.mains, top, pitch)
        foot = min(last - pitch / 2, feed - 2.0)
        pen.bar((BUS, max(first + pitch / 2, feed + 2.0)), (BUS, foot))
        pen.ground((BUS, foot), "right", found.panel_ground, 60.0)


def _down(pen: Pen, wire: Wire | None, x: float, top: float, bottom: float) -> None:
    """The run from the bank down to the inverter, its fuse and lettering beside it."""
    if wire is None:
        return
    y = top
    for sort in wire.devices:
        pen.line((x, y), (x, y - 1.0))
        pen.device((x, y - 1.0 - FUSE / 2), sort, upright=True)
        y -= 1.0 + FUSE
    pen.line((x, y), (x, bottom))
    pen.text((x - 2.8, top - 4.0), f"{wire.number}  {wire.wire}", room=40.0, align="right")
    pen.text((x - 2.8, top - 7.5), wire.near or "no fuse", room=40.0, align="right")
