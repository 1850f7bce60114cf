"""A small worksheet with every kind of line, for the tests of this folder."""

from __future__ import annotations

from curbwright.figures import Entry, Figure, Worksheet, equation
from curbwright.quantities import KilogramMetres, Kilograms, Metres, Number


@equation("test:lever", uncited=True)
def lever(load: Kilograms, arm: Metres) -> KilogramMetres:
    """Moment of a load.

    >>> lever(load=2, arm=3)
    6
    """
    return load * arm


@equation("test:rest", uncited=True)
def rest_moment(load: Kilograms, arm: Metres, moment: KilogramMetres) -> KilogramMetres:
    """Moment left over: nothing where the load balances.

    >>> rest_moment(load=2, arm=3, moment=6)
    0
    """
    return load * arm - moment


@equation("test:gap", uncited=True)
def gap_share(part: Metres, whole: Metres) -> Number:
    """Share of a length that is left.

    >>> gap_share(part=1, whole=4)
    0.75
    """
    return 1 - part / whole


def entry(path: str, value: float | None, unit: str = "kg", name: str = "") -> Entry:
    """A field of a build file."""
    return Entry(
        value,
        name or path.rpartition(".")[2].replace("_", " "),
        unit,
        path,
        typed=f"{value} {unit}",
        how="weighed",
    )


def sheet() -> tuple[Worksheet, dict[str, Figure]]:
    """A worksheet with given, tabled, worked, summed, scheduled, solved and governing lines."""
    on = Worksheet("sample", "Sample")
    one, two = on.given(entry("items.stove.mass", 30.0)), on.given(entry("items.sink.mass", 20.0))
    near, far = on.given(entry("items.stove.back", 1.5, "m")), on.given(entry("items.sink.back", 2.75, "m"))
    row = on.tabled("shelf", "shelf", 7.5, "kg", source="trade-practice", row="one shelf")
    rows = {"stove": {"load": one, "arm": near}, "sink": {"load": two, "arm": far}}
    made = {
        "moment": on.work("moment", "moment of the stove", lever, load=one, arm=near),
        "gross": on.total("gross", "all together", [one, two, row]),
        "moments": on.schedule("moments", "all moments", lever, rows),
        "heavier": on.largest("heavier", "the heavier", {"stove": one, "sink": two}),
        "lighter": on.smallest("lighter", "the lighter", {"stove": one, "sink": two}),
        "gap": on.work("gap", "gap", gap_share, part=near, whole=far),
    }
    made["arm"] = on.solve(
        "arm", "balancing arm", rest_moment, for_="arm", between=(0.0, 10.0), load=two, moment=made["moment"]
    )
    return on, made
