"""Demand: how much water a day takes, by a county's allowance and from the bottom up, and what drains."""

from math import ceil

from curbwright.figures import equation, procedure
from curbwright.quantities import CubicMetres, CubicMetresPerSecond, Metres, Number, PerSecond, Seconds


@equation("convention:a day of serving may end after midnight", uncited=True)
def hours_open(*, opens: Seconds, closes: Seconds, before: Seconds, after: Seconds) -> Seconds:
    """Time that hands work aboard: the serving hours with setting up before and cleaning up after.

    >>> hours_open(opens=36000.0, closes=54000.0, before=1800.0, after=1800.0)
    21600.0
    """
    return closes - opens + before + after


@equation("snohomish-water:hand washing, an allowance for each worker and hour")
def hand_allowance(*, workers: Number, time: Seconds, rate: CubicMetresPerSecond) -> CubicMetres:
    """Water to wash hands with, by a county's allowance for each worker and hour.

    >>> round(hand_allowance(workers=3, time=25200.0, rate=1.0515e-6), 5)
    0.07949
    """
    return workers * time * rate


@equation("hand-washing-study:shares of the recommended times")
def washes_tried(recommended: PerSecond, share: Number) -> PerSecond:
    """How often hands are washed, as a share of how often they should be.

    >>> washes_tried(recommended=0.002, share=0.5)
    0.001
    """
    return recommended * share


@equation("steady-flow:washes over the time worked")
def washes_of_hands(*, workers: Number, time: Seconds, rate: PerSecond) -> Number:
    """How often hands are washed in a day.

    >>> washes_of_hands(workers=2, time=7200.0, rate=0.001)
    14.4
    """
    return workers * time * rate


@equation("steady-flow:flow over time")
def run_volume(flow: CubicMetresPerSecond, time: Seconds) -> CubicMetres:
    """Water that a running tap gives in a time.

    >>> run_volume(flow=0.0001, time=20.0)
    0.002
    """
    return flow * time


@equation("steady-flow:flow over time")
def run_flow(volume: CubicMetres, time: Seconds) -> CubicMetresPerSecond:
    """Flow of a tap that gives a volume in a time.

    >>> run_flow(volume=0.004, time=40.0)
    0.0001
    """
    return volume / time


@equation("geometry")
def bowl_volume(*, length: Metres, width: Metres, depth: Metres) -> CubicMetres:
    """Volume of a sink's bowl to its brim, from its inside sizes.

    >>> round(bowl_volume(length=0.3, width=0.3, depth=0.25), 6)
    0.0225
    """
    return length * width * depth


@equation("trade-practice:a bowl is filled part way", uncited=True)
def filled_to(volume: CubicMetres, share: Number) -> CubicMetres:
    """Water in a bowl that is filled to a share of its volume.

    >>> filled_to(volume=0.02, share=0.7)
    0.014
    """
    return volume * share


@procedure("snohomish-water:utensils, at least every four hours", uncited=True)
def washes_needed(time: Seconds, each: Seconds) -> Number:
    """Times that utensils are washed: once for every such span of use begun, and no less than once.

    >>> washes_needed(time=18000.0, each=14400.0)
    2.0
    """
    return float(max(1, ceil(time / each - 1e-9)))


@equation("snohomish-water:utensils, bowls filled at every washing")
def ware_volume(*, washes: Number, bowls: Number, volume: CubicMetres) -> CubicMetres:
    """Water that washing utensils takes: bowls filled at every washing.

    >>> ware_volume(washes=2, bowls=3, volume=0.02)
    0.12
    """
    return washes * bowls * volume


@equation("steady-flow:each times how many")
def each_times(number: Number, each: CubicMetres) -> CubicMetres:
    """Water for so many uses that take the same each.

    >>> each_times(number=100, each=0.0002)
    0.02
    """
    return number * each


@equation("trade-practice:a share is spilled beside what is sold", uncited=True)
def with_purge(volume: CubicMetres, share: Number) -> CubicMetres:
    """Water that drinks take with what is run to waste to make them.

    >>> with_purge(volume=0.01, share=0.5)
    0.015
    """
    return volume * (1 + share)


@equation("trade-practice:spare over the day's need", uncited=True)
def with_spare(volume: CubicMetres, share: Number) -> CubicMetres:
    """A need with a spare on top.

    >>> with_spare(volume=0.1, share=0.1)
    0.11
    """
    return volume * (1 + share)


@equation("trade-practice:a share stays in food, on hands or in the air", uncited=True)
def drained(volume: CubicMetres, kept: Number) -> CubicMetres:
    """Water that runs to the waste tank out of what was used.

    >>> drained(volume=0.1, kept=0.02)
    0.098
    """
    return volume * (1 - kept)


@equation("uncertainty:mean of a compound Poisson count")
def day_mean(*, fixed: CubicMetres, number: Number, each: CubicMetres) -> CubicMetres:
    """Mean need of a day: what is fixed, and so many washes of a mean size.

    >>> day_mean(fixed=0.1, number=50, each=0.001)
    0.15
    """
    return fixed + number * each


@equation("uncertainty:variance of a compound Poisson count")
def day_spread(*, number: Number, each: CubicMetres, variation: Number) -> CubicMetres:
    """Standard deviation of a day's need, where the washes come at random and differ in size.

    ``variation`` is the standard deviation of one wash over its mean.

    >>> round(day_spread(number=50, each=0.001, variation=0.5), 6)
    0.007906
    """
    return each * (number * (1 + variation**2)) ** 0.5


@equation("uncertainty:95 % of days need less, normal tail")
def ninety_five(mean: CubicMetres, spread: CubicMetres) -> CubicMetres:
    """Need that 95 days in a hundred stay within.

    >>> round(ninety_five(mean=0.15, spread=0.01), 5)
    0.16645
    """
    return mean + 1.645 * spread


@equation("convention:what is missing of a need", uncited=True)
def missing_of(need: CubicMetres, has: CubicMetres) -> CubicMetres:
    """How far what there is falls short of a need; less than nothing where it is enough.

    >>> round(missing_of(need=0.15, has=0.1), 6)
    0.05
    """
    return need - has


@equation("convention:how many times as much", uncited=True)
def times_as_much(need: CubicMetres, has: CubicMetres) -> Number:
    """A need over what there is.

    >>> times_as_much(need=0.15, has=0.1)
    1.5
    """
    return need / has
