"""How unsure a roll-up is: standard deviations of mass, tongue load and tongue share.

Every item has a spread (one standard deviation) of its mass and of its station. The spreads are taken as
independent, so their squares add; a bias that all items share is a term of its own on the sheet.
"""

from curbwright.figures import equation
from curbwright.quantities import Kilograms, Metres, Number, SquareKilograms


@equation("uncertainty:one standard deviation")
def relative_spread(mass: Kilograms, fraction: Number) -> Kilograms:
    """Spread of a mass known to within a fraction of itself.

    >>> relative_spread(mass=80, fraction=0.05)
    4.0
    """
    return mass * fraction


@equation("uncertainty:variance", uncited=True)
def variance(spread: Kilograms) -> SquareKilograms:
    """Square of a spread, ready to be added to others.

    >>> variance(spread=4)
    16
    """
    return spread**2


@equation("uncertainty:sum of squares")
def gross_variance(mass_spread: Kilograms) -> SquareKilograms:
    """What one item's spread adds to the variance of the gross mass.

    >>> gross_variance(mass_spread=3)
    9
    """
    return mass_spread**2


@equation("uncertainty:sum of squares")
def tongue_variance(
    *, mass: Kilograms, station: Metres, mass_spread: Kilograms, station_spread: Metres, axle: Metres
) -> SquareKilograms:
    """What one item's spreads of mass and station add to the variance of the tongue load.

    First-order: each derivative of the tongue load times its spread, squared.

    >>> tongue_variance(mass=100, station=1.5, mass_spread=8, station_spread=0.09, axle=3)
    25.0
    """
    return ((1 - station / axle) * mass_spread) ** 2 + (mass / axle * station_spread) ** 2


@equation("uncertainty:sum of squares")
def share_variance(
    *, mass: Kilograms, station: Metres, mass_spread: Kilograms, station_spread: Metres,
    gross: Kilograms, share: Number, axle: Metres,
) -> Number:  # fmt: skip
    """What one item's spreads of mass and station add to the variance of the tongue share.

    First-order; a heavier item also changes the gross mass that the share is taken of.

    >>> share_variance(
    ...     mass=100, station=1.5, mass_spread=0, station_spread=0.3, gross=1000, share=0.1, axle=3)
    0.0001
    """
    return (((1 - station / axle) - share) / gross * mass_spread) ** 2 + (
        mass / (gross * axle) * station_spread
    ) ** 2


@equation("uncertainty:root of the variance")
def mass_spread_of(variance: SquareKilograms) -> Kilograms:
    """Spread of a mass or load, from the sum of variances.

    >>> mass_spread_of(variance=25)
    5.0
    """
    return variance**0.5


@equation("uncertainty:root of the variance")
def share_spread_of(variance: Number) -> Number:
    """Spread of a share, from the sum of variances.

    >>> share_spread_of(variance=0.0625)
    0.25
    """
    return variance**0.5


@equation("uncertainty:normal distribution")
def share_at(*, share: Number, spread: Number, deviations: Number) -> Number:
    """Share so many standard deviations from its middle: 1.645 of them leave one cart in twenty beyond.

    >>> share_at(share=0.12, spread=0.01, deviations=-2)
    0.1
    """
    return share + deviations * spread
