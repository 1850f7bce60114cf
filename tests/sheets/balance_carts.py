"""Small carts as text, for holding the balance sheet to answers worked by hand."""

from __future__ import annotations

from textwrap import dedent

from curbwright.build.file import load_text
from curbwright.requirements import Finding, judge
from curbwright.sheets import Worksheets, work

PLAIN = dedent("""
    [cart]
    name = "Plain"
    units = "si"

    [place]
    state = "VA"

    [trailer]
    deck_length = "3 m"
    deck_width = "2 m"
    deck_height = "0.5 m"
    ball_to_deck = "1 m"
    ball_height = "0.45 m"
    bare_mass = "400 kg"
    bare_mass_how = "weighed"
    bare_centre_back = "1.6 m"
    bare_centre_height = "0.5 m"
    gross_rating = "1000 kg"

    [trailer.axle]
    back = "2 m"
    track = "1.8 m"
    rating = "1000 kg"

    [trailer.tires]
    rating = "600 kg"

    [trailer.coupler]
    rating = "1000 kg"
    ball = "50 mm"
    ball_on_vehicle = "50 mm"
    ball_rating = "1000 kg"
    chain_rating = "1000 kg"
    chain_count = 2

    [trailer.brakes]
    kind = "electric"
    breakaway = true

    [tow_vehicle]
    mass = "2200 kg"
    wheelbase = "3 m"
    tow_rating = "2000 kg"
    tongue_rating = "200 kg"

    [items.box]
    kind = "other"
    back = "1.5 m"
    off_centre = "0 m"
    above = "0.6 m"
    mass = "200 kg"
    mass_how = "weighed"
""")


def changed(text: str, **values: str) -> str:
    """Return the text with the first line of each named field set anew; nothing takes the line away."""
    lines = text.splitlines()
    for field, value in values.items():
        at = next(n for n, line in enumerate(lines) if line.startswith(f"{field} ="))
        lines[at : at + 1] = [f"{field} = {value}"] if value else []
    return "\n".join(lines)


def worked(text: str) -> Worksheets:
    return work(load_text(text))


def finding(text: str, id: str) -> Finding:
    """The one finding of a requirement, or of one load case of it."""
    found = [one for one in judge(worked(text)) if one.id == id or one.requirement.id == id]
    assert len(found) == 1, [one.id for one in found]
    return found[0]
