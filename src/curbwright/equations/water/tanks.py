"""Tanks: what a shape holds, what of it can be used on a tilted pitch, and what the waste tank must hold."""

from numpy import arcsin, maximum, pi, tan

from curbwright.figures import equation
from curbwright.quantities import (
    CubicMetres,
    CubicMetresPerSecond,
    Metres,
    Number,
    Radians,
    Seconds,
    SquareMetres,
)


@equation("geometry", uncited=True)
def plan_area(volume: CubicMetres, height: Metres) -> SquareMetres:
    """Floor of a tank with upright walls.

    >>> plan_area(volume=0.12, height=0.3)
    0.4
    """
    return volume / height


@equation("geometry", uncited=True)
def part_depth(height: Metres, share: Number) -> Metres:
    """Depth of the water at a share of a tank's height.

    >>> part_depth(height=0.4, share=0.25)
    0.1
    """
    return height * share


@equation("geometry", uncited=True)
def upright_volume(area: SquareMetres, depth: Metres) -> CubicMetres:
    """Water in a tank with upright walls, filled to a depth.

    >>> upright_volume(area=0.4, depth=0.25)
    0.1
    """
    return area * depth


@equation("geometry", uncited=True)
def lying_length(volume: CubicMetres, diameter: Metres) -> Metres:
    """Length of a lying cylinder with flat ends.

    >>> round(lying_length(volume=0.12, diameter=0.4), 4)
    0.9549
    """
    return volume / (pi * diameter**2 / 4)


@equation("geometry:segment of a circle")
def lying_volume(*, diameter: Metres, length: Metres, depth: Metres) -> CubicMetres:
    """Water in a lying cylinder with flat ends, filled to a depth.

    >>> round(float(lying_volume(diameter=0.4, length=1.0, depth=0.2)), 5)
    0.06283
    """
    return length * (
        (diameter / 2) ** 2 * (pi / 2 - arcsin(1 - 2 * depth / diameter))
        - (diameter / 2 - depth) * (depth * (diameter - depth)) ** 0.5
    )


@equation("geometry:a wedge of water under a tilted surface", uncited=True)
def tilt_wedge(*, reach: Metres, width: Metres, tilt: Radians) -> CubicMetres:
    """Water that a tilt keeps from an outlet at the raised end.

    ``reach`` is from the outlet to the far wall; holds while the wedge is no deeper than the tank.

    >>> round(float(tilt_wedge(reach=0.8, width=0.5, tilt=0.02)), 5)
    0.0032
    """
    return reach**2 / 2 * width * tan(tilt)


@equation("slosh:quasi-static, rectangular tank")
def wall_rise(length: Metres, pull: Number) -> Metres:
    """How far water climbs the wall of a tank under a steady pull, as a share of gravity.

    Holds while the floor stays wet and the lid dry.

    >>> wall_rise(length=0.6, pull=0.3)
    0.09
    """
    return length / 2 * pull


@equation("trade-practice:room left at the top", uncited=True)
def usable(*, capacity: CubicMetres, top: Number, heel: CubicMetres, wedge: CubicMetres) -> CubicMetres:
    """Water that can be used of a tank: its capacity less room at the top, what is under the outlet, a wedge.

    >>> round(usable(capacity=0.1, top=0.03, heel=0.002, wedge=0.003), 6)
    0.092
    """
    return capacity * (1 - top) - heel - wedge


@equation("steady-flow:volume over flow", uncited=True)
def autonomy(usable: CubicMetres, flow: CubicMetresPerSecond) -> Seconds:
    """Time that water lasts at a mean flow.

    >>> autonomy(usable=0.1, flow=5e-6)
    20000.0
    """
    return usable / flow


@equation("trade-practice:a tank filled again holds as much again", uncited=True)
def with_refills(usable: CubicMetres, refills: Number) -> CubicMetres:
    """Water in a day from a tank that is filled again so many times.

    >>> with_refills(usable=0.1, refills=1)
    0.2
    """
    return usable * (1 + refills)


@equation("convention:waste over fresh", uncited=True)
def waste_ratio(waste: CubicMetres, fresh: CubicMetres) -> Number:
    """Capacity of the waste tank over that of the fresh tank.

    >>> waste_ratio(waste=0.115, fresh=0.1)
    1.15
    """
    return waste / fresh


@equation("ohio-3717-1-05-3:5-401.11(A), a multiple of the fresh tank")
def waste_by_share(fresh: CubicMetres, ratio: Number) -> CubicMetres:
    """Least waste tank as a multiple of the fresh tank.

    >>> waste_by_share(fresh=0.1, ratio=1.15)
    0.115
    """
    return fresh * ratio


@equation("cal-hsc-114240:(b)")
def waste_with_product(
    *, fresh: CubicMetres, ratio: Number, product: CubicMetres, share: Number
) -> CubicMetres:  # fmt: skip
    """Least waste tank as a multiple of the fresh tank and a share of the water that food and drink take.

    >>> waste_with_product(fresh=0.1, ratio=1.5, product=0.02, share=0.15)
    0.153
    """
    return fresh * ratio + product * share


@equation("cal-hsc-114240:(d), a third of the ice cabinet")
def ice_melt(cabinet: CubicMetres, share: Number) -> CubicMetres:
    """Room that melting ice needs, as a share of the cabinet it lies in.

    >>> ice_melt(cabinet=0.09, share=0.5)
    0.045
    """
    return cabinet * share


@equation("cal-hsc-114240:(b), never under a least size")
def no_less_than(volume: CubicMetres, least: CubicMetres) -> CubicMetres:
    """A volume that may not be under a least one.

    >>> float(no_less_than(volume=0.02, least=0.03))
    0.03
    """
    return maximum(volume, least)
