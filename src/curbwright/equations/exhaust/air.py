"""What burning does to the air in a cart, and how soon leaking gas burns."""

from numpy import log

from curbwright.figures import equation
from curbwright.quantities import CubicMetres, CubicMetresPerSecond, Number, Seconds


@equation("stoichiometry:given off into the room", uncited=True)
def given_off(*, gas: CubicMetresPerSecond, ratio: Number, share: Number) -> CubicMetresPerSecond:
    """Flow of a product of burning that stays in the room; less than nothing for oxygen, which is used up.

    ``ratio`` is its volume for one of gas, ``share`` the part that no hood catches.

    >>> given_off(gas=0.002, ratio=3.0, share=0.5)
    0.003
    """
    return gas * ratio * share


@equation("well-mixed-room:steady", uncited=True)
def steady_share(*, outside: Number, source: CubicMetresPerSecond, flow: CubicMetresPerSecond) -> Number:
    """Share of a gas in the air of a room in the end, with so much fresh air.

    >>> round(steady_share(outside=0.0004, source=0.0006, flow=0.3), 6)
    0.0024
    """
    return outside + source / flow


@equation("well-mixed-room:time to a share", uncited=True)
def time_to_share(
    *, volume: CubicMetres, flow: CubicMetresPerSecond, source: CubicMetresPerSecond, outside: Number,
    limit: Number,
) -> Seconds:  # fmt: skip
    """Time until the air of a room reaches a share that it passes in the end.

    >>> round(float(time_to_share(volume=20.0, flow=0.02, source=0.001, outside=0.0, limit=0.025)), 1)
    693.1
    """
    return -volume / flow * log(1 - (limit - outside) * flow / source)


@equation("stoichiometry:flow that a dry share is", uncited=True)
def part_of(ratio: Number, share: Number) -> Number:
    """Volume of a trace gas for one of fuel, from its share in the dry products.

    >>> round(part_of(ratio=20.0, share=0.0004), 6)
    0.008
    """
    return ratio * share


@equation("ideal-gas:a share of the air by volume", uncited=True)
def time_to_burn(*, volume: CubicMetres, limit: Number, leak: CubicMetresPerSecond) -> Seconds:
    """Time until gas leaking into a shut cart makes all its air burn, mixed evenly; at the floor far sooner.

    >>> time_to_burn(volume=20.0, limit=0.02, leak=0.0002)
    2000.0
    """
    return volume * limit / leak
