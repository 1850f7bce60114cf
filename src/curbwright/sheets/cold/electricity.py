"""The electricity of a box: from the heat let in, and from its maker's mean; the larger counts."""

from __future__ import annotations

from dataclasses import dataclass

from curbwright.build.cold import ColdBox
from curbwright.equations import cold as eq
from curbwright.figures import Figure, Worksheet
from curbwright.sheets.cold.ambient import Day
from curbwright.sheets.cold.contents import Contents
from curbwright.sheets.cold.gains import Gains
from curbwright.sheets.cold.machine import Running


@dataclass(frozen=True)
class Rated:
    """What a box draws by its maker's mean, moved to the air of the design day."""

    powers: dict[str, Figure]
    """On average, shut, by the hour's key."""
    sheet: Worksheet


def by_rating(
    box: ColdBox, day: Day, gains: Gains, running: dict[str, Running], sheet: Worksheet
) -> Rated | None:
    """Move the maker's mean to every hour; None where there is none, or the box is of another sort."""
    if (box.mean_power is None and box.day_energy is None) or box.cooling == "thermo-electric":
        return None
    below = sheet.section("rating", "electricity hour by hour from its maker's mean, shut")
    mean = (
        below.given(box["mean_power"])
        if box.mean_power is not None
        else below.work(
            "mean", "mean of its maker's day", eq.heat_in_time, heat=below.given(box["day_energy"]),
            time=day.length,
        )
    )  # fmt: skip
    inside = below.given(box["set_point"])
    lift = below.total(
        "lift", "condenser above the air round the box",
        [below.given(box["condenser_rise"]), below.given(box["condenser_above"])],
    )  # fmt: skip
    evaporating = below.work(
        "evaporating", "evaporating temperature", eq.evaporating_temperature, box=inside,
        below=below.given(box["evaporator_below"]),
    )  # fmt: skip
    powers = {
        hour.key: below.work(
            f"power_{hour.key}", f"electricity at {hour.name}, on average", eq.mean_power_at, rated=mean,
            rated_air=below.given(box["rated_air"]), surroundings=hour.around(box.stands), inside=inside,
            condenser_air=hour.around(box.condenser), lift=lift, evaporating=evaporating,
        )
        for hour in day.hours
    }  # fmt: skip
    return Rated(powers, below)


def electricity(
    box: ColdBox, gains: Gains, food: Contents, running: dict[str, Running], rated: Rated | None, day: Day,
    sheet: Worksheet,
) -> None:  # fmt: skip
    """Write the electricity of the day and of the serving time, by both ways where there are two."""
    hours = sheet.section("electricity", "electricity hour by hour from the heat let in, loading left out")
    powers, duties = _powers(box, gains, running, day, hours)
    count = hours.tabled("hours", "hours of a day", 24.0, "1", source="convention")
    sheet.work(
        "duty_mean", "share of the day it runs, from the heat let in, loading left out", eq.hourly_share,
        shown="%", total=hours.total("duties", "shares of all hours added up", duties), hours=count,
    )  # fmt: skip
    at_worst = running[gains.worst.key]
    performance = hours.work(
        "worst_performance", "performance at the worst hour", eq.performance_of, capacity=at_worst.capacity,
        power=at_worst.power,
    )  # fmt: skip
    loading = hours.work(
        "loading", "electricity to bring down the food put in", eq.electricity_for, heat=food.load,
        performance=performance,
    )  # fmt: skip
    ways = {"from the heat let in": _sums(powers, [loading], day, hours)}
    if rated is not None:
        opened = _opened(gains, performance, day, rated.sheet)
        ways["from its maker's mean"] = _sums(rated.powers, [opened, loading], day, rated.sheet)
    _write(ways, day, sheet)
    if box.condenser == "inside" and box.stands == "inside":
        worst = gains.worst.key
        sheet.work(
            "rejected", "heat it gives off in the cart at the worst hour, loading left out", eq.heat_rejected,
            gain=gains.by_hour[worst], power=powers[worst],
        )  # fmt: skip


def _powers(
    box: ColdBox, gains: Gains, running: dict[str, Running], day: Day, hours: Worksheet
) -> tuple[dict[str, Figure], list[Figure]]:
    """Mean power of every hour by its key, and the share of each that the machine runs."""
    powers: dict[str, Figure] = {}
    duties: list[Figure] = []
    for hour in day.hours:
        one = running[hour.key]
        duty = hours.work(
            f"duty_{hour.key}", f"share of the time it runs at {hour.name}", eq.duty_within,
            gain=gains.by_hour[hour.key], capacity=one.capacity,
        )  # fmt: skip
        duties.append(duty)
        powers[hour.key] = hours.work(
            f"power_{hour.key}", f"electricity at {hour.name}, on average", eq.mean_power, duty=duty,
            running=one.power, standby=hours.given(box["standby"]),
        )  # fmt: skip
    return powers, duties


def _opened(gains: Gains, performance: Figure, day: Day, sheet: Worksheet) -> Figure:
    """Electricity of the openings, which a maker's mean of a shut box leaves out."""
    heat = sheet.work(
        "opened_heat", "heat let in by openings in the day", eq.energy, power=gains.opened,
        time=day.serving if day.serving is not None else day.length,
    )  # fmt: skip
    return sheet.work(
        "opened", "electricity for the openings", eq.electricity_for, heat=heat, performance=performance
    )


def _sums(
    powers: dict[str, Figure], more: list[Figure], day: Day, sheet: Worksheet
) -> tuple[Figure, Figure | None]:
    """Electricity of 24 hours, and of the serving time where its hours are given."""
    names = {hour.key: hour for hour in day.hours}
    whole = sheet.schedule(
        "all_day", "electricity of all hours", eq.energy,
        {names[key].name: {"power": power, "time": day.hour} for key, power in powers.items()},
    )  # fmt: skip
    of_day = sheet.total("energy_day", "electricity in 24 hours", [whole, *more])
    if day.serving is None:
        return of_day, None
    served = sheet.schedule(
        "while_serving", "electricity of the serving time", eq.energy_served,
        {
            names[key].name: {"power": power, "served": names[key].served, "hour": day.hour}
            for key, power in powers.items()
        },
    )  # fmt: skip
    return of_day, sheet.total("energy_service", "electricity in the serving time", [served, *more])


def _write(ways: dict[str, tuple[Figure, Figure | None]], day: Day, sheet: Worksheet) -> None:
    """Write the larger of the ways under the short names."""
    of_day = sheet.largest(
        "energy_day", "electricity in 24 hours", {way: sums[0] for way, sums in ways.items()}
    )
    sheet.work(
        "power_mean", "electricity on average over 24 hours", eq.heat_in_time, heat=of_day, time=day.length
    )
    served = {way: sums[1] for way, sums in ways.items() if sums[1] is not None}
    if served:
        sheet.largest("energy_service", "electricity in the serving time", served)
    if len(ways) > 1:
        sheet.note(
            "Its electricity is worked out twice, and the larger counts; a meter on your own box beats both."
        )
