"""What a roll-up is made of: panels by area, water by volume, what is left, and how far it may be off."""

from curbwright.figures import equation
from curbwright.quantities import (
    CubicMetres,
    Kilograms,
    KilogramsPerCubicMetre,
    KilogramsPerSquareMetre,
    Metres,
    Number,
    SquareKilograms,
    SquareMetres,
)


@equation("geometry", uncited=True)
def area(length: Metres, width: Metres) -> SquareMetres:
    """Area of a rectangle.

    >>> area(length=2.0, width=1.5)
    3.0
    """
    return length * width


@equation("geometry", uncited=True)
def net_area(area: SquareMetres, openings: SquareMetres) -> SquareMetres:
    """Area of a wall less its openings.

    >>> net_area(area=6.0, openings=2.0)
    4.0
    """
    return area - openings


@equation("statics:mass of a sheet", uncited=True)
def panel_mass(areal_mass: KilogramsPerSquareMetre, area: SquareMetres) -> Kilograms:
    """Mass of a panel from its mass for each unit of area.

    >>> panel_mass(areal_mass=12.0, area=4.0)
    48.0
    """
    return areal_mass * area


@equation("statics:mass of a volume", uncited=True)
def mass_of_volume(volume: CubicMetres, density: KilogramsPerCubicMetre) -> Kilograms:
    """Mass of a liquid from its volume.

    >>> mass_of_volume(volume=0.1, density=1000.0)
    100.0
    """
    return volume * density


@equation("statics:part of a mass", uncited=True)
def part_of(whole: Kilograms, share: Number) -> Kilograms:
    """Part of a mass that is aboard.

    >>> part_of(whole=80.0, share=0.25)
    20.0
    """
    return whole * share


@equation("statics:moments about the ball", uncited=True)
def centre_from_tongue(*, mass: Kilograms, tongue: Kilograms, axle: Metres) -> Metres:
    """Centre of gravity behind the ball of a trailer whose tongue was put on a scale.

    The tongue load formula turned round: what does not stand on the ball stands on the axle.

    >>> centre_from_tongue(mass=400.0, tongue=40.0, axle=3.0)
    2.7
    """
    return axle * (1 - tongue / mass)


@equation("uncertainty:two standard deviations", uncited=True)
def two_spreads_low(value: Number, spread: Number) -> Number:
    """Low end of a band two spreads wide: about one cart in forty lies below.

    >>> two_spreads_low(value=0.12, spread=0.01)
    0.1
    """
    return value - 2 * spread


@equation("uncertainty:two standard deviations", uncited=True)
def two_spreads_high(value: Number, spread: Number) -> Number:
    """High end of a band two spreads wide: about one cart in forty lies above.

    >>> two_spreads_high(value=0.12, spread=0.01)
    0.14
    """
    return value + 2 * spread


@equation("uncertainty:shared bias", uncited=True)
def share_shift(
    *, mass: Kilograms, station: Metres, gross: Kilograms, share: Number, axle: Metres, bias: Number
) -> Number:
    """Change of the tongue share if one item is heavier by a fraction of itself, to first order.

    Added up over all estimated structure it is the change if all of it is heavier together.

    >>> share_shift(mass=100.0, station=1.5, gross=1000.0, share=0.1, axle=3.0, bias=0.1)
    0.004
    """
    return bias * mass * ((1 - station / axle) - share) / gross


@equation("uncertainty:shared bias", uncited=True)
def variance_with_bias(variance: Number, shift: Number) -> Number:
    """Variance of a share from independent spreads and one shared bias.

    >>> variance_with_bias(variance=0.0003, shift=0.01)
    0.0004
    """
    return variance + shift**2


@equation("uncertainty:shared bias", uncited=True)
def mass_variance_with_bias(variance: SquareKilograms, shift: Kilograms) -> SquareKilograms:
    """Variance of a mass from independent spreads and one shared bias.

    >>> mass_variance_with_bias(variance=9.0, shift=4.0)
    25.0
    """
    return variance + shift**2


@equation("statics:shared between axles", uncited=True)
def shared_by(load: Kilograms, count: Number) -> Kilograms:
    """Load on each of several axles or tires that share it equally.

    >>> shared_by(load=900.0, count=2)
    450.0
    """
    return load / count


@equation("statics:shared between axles", uncited=True)
def axle_with_shift(load: Kilograms, shift: Kilograms) -> Kilograms:
    """Load on one axle of a tandem whose hitch is not level: its half and what the tilt moves onto it.

    >>> axle_with_shift(load=450.0, shift=-50.0)
    400.0
    """
    return load + shift


@equation("geometry", uncited=True)
def area_moment(area: SquareMetres, station: Metres) -> CubicMetres:
    """First moment of an area.

    >>> area_moment(area=2.0, station=1.5)
    3.0
    """
    return area * station


@equation("geometry", uncited=True)
def centre_round_holes(
    *, area: SquareMetres, middle: Metres, holes: CubicMetres, net: SquareMetres
) -> Metres:
    """Centre of a wall with holes, from the first moment of the holes and the area that is left.

    >>> centre_round_holes(area=6.0, middle=1.5, holes=2.0, net=5.0)
    1.4
    """
    return (area * middle - holes) / net
