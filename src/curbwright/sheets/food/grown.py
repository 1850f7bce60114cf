"""What may grow in food that is not hot: a band between published rates, as information."""

from __future__ import annotations

from curbwright.build.food import MenuItem
from curbwright.equations import food as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.food.limits import Limits

COUNTED = ("receive", "cold hold", "prep", "serve")


def growth_band(sold: MenuItem, limits: Limits, sheet: Worksheet) -> None:
    """Write the least and the most that published rates let grow over its cold and warm steps."""
    low: dict[str, Figure] = {}
    high: dict[str, Figure] = {}
    none = sheet.tabled("no_lag", "no lag, on the safe side", 0.0, "s", source="convention")
    for key, step in sold.steps.items():
        if step.does not in COUNTED or step.temperature is None or step.time is None:
            continue
        temperature, time = sheet.given(step["temperature"]), sheet.given(step["time"])
        if float(temperature) >= float(limits.hot):
            continue
        below = sheet.section(key, key.replace("_", " "))
        rates = _rates(temperature, limits, below)
        chances: dict[str, Figure] = {}
        for name, (rate, lag) in rates.items():
            id = name.replace(" ", "_").replace(".", "").lower()
            chances[name] = below.work(
                f"grown_{id}", f"grown, {name}", eq.growth, rate=rate, time=time, lag=lag or none
            )
        low[key] = below.smallest("low", "least of these", chances)
        high[key] = below.largest("high", "most of these", chances)
    if not low:
        return
    sheet.total("growth_low", "powers of ten grown, least of the published rates", list(low.values()))
    sheet.total("growth_high", "powers of ten grown, most of the published rates", list(high.values()))
    sheet.note("What may grow is a band between published rates for information; the verdict is the rules'.")


def _rates(temperature: Figure, limits: Limits, sheet: Worksheet) -> dict[str, tuple[Figure, Figure | None]]:
    """Published rates at a temperature, each with its lag where there is one."""
    listeria: dict[str, tuple[Figure, Figure | None]] = {
        f"listeria {word}": (
            sheet.work(
                f"listeria_{word}", f"listeria, {word}", eq.rate_at, shown="/h",
                rate=limits.constant(f"listeria_rate_{word}"), temperature=temperature,
                reference=limits.constant("listeria_reference"), least=limits.constant("listeria_least"),
            ),
            None,
        )
        for word in ("low", "high")
    }  # fmt: skip
    if float(temperature) <= float(limits.constant("starts")):
        return listeria
    natural = sheet.work(
        "salmonella_natural", "salmonella in chicken, natural logarithm", eq.salmonella_chicken_rate,
        shown="/h", temperature=temperature,
    )  # fmt: skip
    ecoli = sheet.work("ecoli", "E. coli in ground meat", eq.ecoli_rate, shown="/h", temperature=temperature)
    lag = sheet.work("ecoli_lag", "E. coli begins after", eq.ecoli_lag, temperature=temperature)
    return {
        **listeria,
        "salmonella in chicken": (
            sheet.work(
                "salmonella_chicken", "salmonella in chicken", eq.tenfold_rate, shown="/h", natural=natural
            ),
            None,
        ),
        "salmonella in cooked meat": (
            sheet.work(
                "salmonella_meat", "salmonella in cooked meat", eq.salmonella_meat_rate, shown="/h",
                temperature=temperature,
            ),
            None,
        ),
        "E. coli after its lag": (ecoli, lag),
    }  # fmt: skip
