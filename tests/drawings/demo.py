"""An invented cart drawn by hand, crowded enough to try every part of the drawing room."""

from curbwright.drawings import (
    Arc,
    Box,
    Chain,
    Circle,
    Hatch,
    Label,
    Leader,
    Line,
    Marker,
    Page,
    Polyline,
    Sheet,
    Text,
    View,
    chain,
    paper,
    rectangle,
    sheet_set,
)

IN = 0.0254
LENGTH, WIDTH = 168 * IN, 84 * IN
WALL = 3 * IN
# name, short, back, across from the street side, along the wall, into the room: all inches
ITEMS = [
    ("Refrigerated prep table", "1", 4, 3, 48, 30),
    ("Griddle", "2", 60, 3, 36, 30),
    ("Fryer", "3", 97, 3, 16, 30),
    ("Dumpling steamer", "4", 115, 3, 20, 26),
    ("Landing shelf", "5", 136.5, 3, 11, 26),
    ("Three-compartment sink", "6", 4, 57, 42, 24),
    ("Hand-washing sink", "7", 47, 65, 14, 16),
    ("Cash drawer", "8", 70, 69, 15, 12),
    ("Battery box", "9", 152, 3, 13, 20),
]


def box(back: float, across: float, long: float, deep: float) -> Box:
    return Box(back * IN, across * IN, (back + long) * IN, (across + deep) * IN)


def plan(system: str = "us") -> View:
    inside = Box(WALL, WALL, LENGTH - WALL, WIDTH - WALL)
    marks = [
        rectangle(Box(0, 0, LENGTH, WIDTH), layer="OUTLINE"),
        rectangle(inside, layer="SHELL"),
        Hatch(((0, 0), (LENGTH, 0), (LENGTH, WALL), (0, WALL)), "diagonal", 1.2),
        Hatch(((0, WIDTH - WALL), (LENGTH, WIDTH - WALL), (LENGTH, WIDTH), (0, WIDTH)), "diagonal", 1.2),
        Polyline(((0, WIDTH * 0.2), (-1.2, WIDTH / 2), (0, WIDTH * 0.8)), layer="FRAME"),
        Line((-1.2, WIDTH / 2), (0, WIDTH / 2), layer="CENTRE"),
        Marker("ball", (-1.2, WIDTH / 2), 5.0, layer="FRAME"),
    ]
    for name, short, *size in ITEMS:
        place = box(*size)
        marks.append(rectangle(place, layer="EQUIPMENT", item=name))
        marks.append(Label(name, place.centre, place, short, item=name))
    aisle = box(4, 34, 140, 22)
    marks += [
        rectangle(aisle, layer="CLEARANCE"),
        Hatch(aisle.corners, "dots", 2.5),
        Label("Aisle kept clear, 30 in", aisle.centre, aisle),
        rectangle(box(56, 1, 64, 38), layer="OVERHEAD"),
        Label("Hood over", (118 * IN, 38 * IN)),
        Line((LENGTH, 40 * IN), (LENGTH + 32 * IN, 40 * IN), layer="OPENING"),
        Arc((LENGTH, 40 * IN), 32 * IN, 0, 90, layer="SWING"),
        Label("Door swings clear of the hitch", (LENGTH + 20 * IN, 62 * IN)),
        Marker("centre_of_gravity", (80 * IN, 44 * IN)),
        Label("Centre of gravity, loaded", (80 * IN, 44 * IN)),
        Marker("axle", (100 * IN, 42 * IN)),
        Label("Axle", (100 * IN, 42 * IN)),
        Polyline(((10 * IN, 70 * IN), (10 * IN, 60 * IN), (54 * IN, 60 * IN)), layer="WATER"),
        Polyline(((-0.5, 45 * IN), (-0.5, 2 * IN), (66 * IN, 2 * IN)), layer="GAS"),
        Circle((-0.5, 50 * IN), 6 * IN, layer="EQUIPMENT"),
        Label("Gas cylinder, 20 lb", (-0.5, 50 * IN), Box(-0.5, 50 * IN, -0.5, 50 * IN).grown(6 * IN)),
        *plan_dimensions(system),
    ]
    return View("Floor plan", tuple(marks), front="left")


def plan_dimensions(system: str) -> list[Chain]:
    return [
        chain(
            [
                0,
                *(
                    edge
                    for _, _, back, across, long, _ in ITEMS
                    if across == 3
                    for edge in (back * IN, (back + long) * IN)
                ),
                LENGTH,
            ],
            side="below",
            base=0.0,
            system=system,
            overall=True,
        ),
        chain(
            [
                0,
                *(
                    edge
                    for _, _, back, across, long, _ in ITEMS
                    if across != 3
                    for edge in (back * IN, (back + long) * IN)
                ),
                LENGTH,
            ],
            [-1.2, 0, LENGTH],
            side="above",
            base=WIDTH,
            system=system,
            overall=True,
        ),
        chain(
            [0, WALL, 33 * IN, 57 * IN, WIDTH - WALL, WIDTH],
            side="right",
            base=LENGTH + 0.85,
            system=system,
            overall=True,
        ),
        chain([0, WALL, WIDTH - WALL, WIDTH], side="left", base=-1.25, system=system, overall=True),
    ]


def elevation(title: str, front: str, system: str = "us") -> View:
    deck, roof = 24 * IN, 110 * IN
    marks = [
        Line((-1.3, 0), (LENGTH + 0.3, 0), layer="GROUND"),
        rectangle(Box(0, deck, LENGTH, roof), layer="OUTLINE"),
        Circle((100 * IN, 13 * IN), 13 * IN, layer="EQUIPMENT"),
        rectangle(box(40, 60, 72, 36), layer="OPENING"),
        Label("Serving window with flap up", (76 * IN, 78 * IN), box(40, 60, 72, 36)),
        Line((-1.2, 18 * IN), (0, 22 * IN), layer="FRAME"),
        Marker("ball", (-1.2, 18 * IN), 5.0, layer="FRAME"),
        Marker("centre_of_gravity", (80 * IN, 52 * IN)),
        chain([0, 40 * IN, 112 * IN, LENGTH], side="below", base=0.0, system=system, overall=True),
        chain([0, deck, 60 * IN, 96 * IN, roof], side="right", base=LENGTH, system=system, overall=True),
    ]
    return View(title, tuple(marks), front=front)  # type: ignore[arg-type]


def diagram() -> View:
    marks = []
    for index, name in enumerate(["Shore inlet", "Main breaker", "Charger", "Battery 12 V", "Inverter"]):
        place = Box(0.04 * index, 0, 0.04 * index + 0.03, 0.014)
        marks += [rectangle(place, layer="EQUIPMENT"), Label(name, place.centre, place)]
        if index:
            marks.append(Line((0.04 * index - 0.01, 0.007), (0.04 * index, 0.007), layer="POWER"))
    marks.append(Text((0, 0.018), "12 V side is earthed to the frame at one point only", 2.4))
    marks.append(Leader(((0.13, 0.002), (0.14, -0.008)), layer="LEADER"))
    marks.append(Text((0.141, -0.009), "fuse within 7 in", 2.4))
    for index, kind in enumerate(["valve", "regulator", "outlet", "light", "drain", "fan", "jack", "point"]):
        marks.append(Marker(kind, (0.01 + 0.018 * index, -0.025), 6.0, layer="EQUIPMENT"))  # type: ignore[arg-type]
    return View("One-line diagram", tuple(marks), to_scale=False)


NOTES = (
    "All dimensions are to finished faces unless shown otherwise.",
    "Gas piping by a licensed fitter; pressure test and leak test before first use, and after every move.",
    "Local code governs wherever it asks for more than this sheet shows.",
)


def sheets(size: str = "tabloid", *, portrait: bool = False, system: str = "us") -> tuple[Sheet, ...]:
    pages = [
        Page("Floor plan", (plan(system),), NOTES),
        Page(
            "Elevations", (elevation("Curb side", "right", system), elevation("Street side", "left", system))
        ),
        Page("Power", (elevation("Rear", "", system), diagram()), NOTES[:1]),
    ]
    return sheet_set(
        pages,
        cart="The Copper Ladle",
        date="2031-04-02",
        revision="B",
        paper=paper(size, portrait=portrait),
        system=system,
    )
