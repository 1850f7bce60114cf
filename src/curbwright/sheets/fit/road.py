"""On the road: overall width, height and length against the limits of the roads used."""

from __future__ import annotations

from curbwright import units
from curbwright.equations import fit as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.fit.boxes import Box, write_spare
from curbwright.sheets.fit.space import Space


def road(space: Space, sheet: Worksheet) -> None:
    """Write overall width, height and length, and what is left of each under its limit."""
    if not space.ready(sheet):
        return
    for write in (_width, _height, _length):
        with sheet.attempt():
            write(space, sheet)


def _fixed(space: Space) -> list[Box]:
    """What rides on the trailer in a place of its own."""
    return [box for box in space.boxes.values() if not box.kind.is_("small")]


def _width(space: Space, sheet: Worksheet) -> None:
    """The overall width: over the fenders as given, and over anything that sticks out further.

    Without it only what is known to be too wide can be told, because fenders may be wider than the deck.
    """
    trailer = space.build.trailer
    limit = sheet.given(space.build.place["width_limit"])
    widths = {"deck": sheet.given(trailer["deck_width"])}
    if space.build.shell is not None and space.build.shell.width is not None:
        widths["shell"] = sheet.given(space.build.shell["width"])
    if trailer.overall_width is not None:
        widths["fenders"] = sheet.given(trailer["overall_width"])
    curb = {
        key: sheet.work(f"{key}_curb", f"{key}, curb side", eq.curb_face, width=one)
        for key, one in widths.items()
    }
    street = {
        key: sheet.work(f"{key}_street", f"{key}, street side", eq.street_face, width=one)
        for key, one in widths.items()
    }
    for box in _fixed(space):
        curb[box.name], street[box.name] = box.across.high, box.across.low
    if trailer.overall_width is None and max(curb.values()) - min(street.values()) <= limit:
        raise MissingInput("trailer.overall_width", "the overall width over the fenders is not given")
    far = sheet.largest("curb_most", "farthest out on the curb side", _outermost(curb, 1.0))
    near = sheet.smallest("street_most", "farthest out on the street side", _outermost(street, -1.0))
    width = sheet.work("width", "overall width on the road", eq.gap, near=near, far=far)
    write_spare(sheet, "width left under the limit", limit, width, "width_spare")
    _lamps(space, sheet, width)


def _outermost(cases: dict[str, Figure], sign: float, shown: int = 4) -> dict[str, Figure]:
    """The few cases that stand farthest out, the farthest first."""
    return dict(sorted(cases.items(), key=lambda case: -sign * float(case[1]))[:shown])


def _lamps(space: Space, sheet: Worksheet, width: Figure) -> None:
    lamps = space.known("lamps_width")
    more = (
        "clearance and identification lamps are due" if width >= lamps else "the smaller set of lamps will do"
    )
    sheet.note(f"{units.show(float(width), 'm')} overall: {more} (due from {units.show(float(lamps), 'm')})")
    sheet.note("A shelf, step or awning must fold to within this width before it is towed")


def _height(space: Space, sheet: Worksheet) -> None:
    deck = sheet.given(space.build.trailer["deck_height"])
    tops = (
        {"deck": space.floor}
        if space.build.shell is None
        else {"shell": sheet.given(space.build.shell["height"])}
    )
    tops.update({box.name: box.up.high for box in _fixed(space)})
    above = sheet.largest("top", "highest point above the deck", _outermost(tops, 1.0))
    height = sheet.work("height", "overall height on the road", eq.above_road, deck_height=deck, above=above)
    limit = sheet.given(space.build.place["height_limit"])
    write_spare(sheet, "height left under the limit", limit, height, "height_spare")


def _length(space: Space, sheet: Worksheet) -> None:
    trailer = space.build.trailer
    ball = sheet.given(trailer["ball_to_deck"])
    ends = {"deck": sheet.given(trailer["deck_length"])}
    if space.build.shell is not None:
        ends["shell"] = space.outside.along.high
    ends.update({box.name: box.along.high for box in _fixed(space)})
    rear = sheet.largest("rear", "rearmost point behind the front of the deck", _outermost(ends, 1.0))
    name = "trailer from the ball to its rear"
    length = sheet.work("length", name, eq.from_ball, ball_to_deck=ball, back=rear)
    limit = sheet.given(space.build.place["length_limit"])
    write_spare(sheet, "length left under the limit", limit, length, "length_spare")
