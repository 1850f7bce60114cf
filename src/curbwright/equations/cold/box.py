"""The insulated box: its walls with edges and corners, films, gasket, and what else lets heat in.

Sizes are inside sizes. Heat flows inwards; a box that is warmer than its surroundings gives negative gains.
"""

from curbwright.figures import equation
from curbwright.quantities import (
    CubicMetres,
    JoulesPerKelvin,
    JoulesPerSquareMetreKelvin,
    Kelvins,
    KelvinsPerWatt,
    Metres,
    Number,
    SquareMetres,
    TemperatureDifference,
    Watts,
    WattsPerKelvin,
    WattsPerMetreKelvin,
    WattsPerSquareMetreKelvin,
)


@equation("geometry", uncited=True)
def box_volume(*, width: Metres, depth: Metres, height: Metres) -> CubicMetres:
    """Volume of a box.

    >>> round(box_volume(width=0.6, depth=0.4, height=0.4), 6)
    0.096
    """
    return width * depth * height


@equation("geometry", uncited=True)
def side_from_volume(*, volume: CubicMetres, depth: Metres, height: Metres) -> Metres:
    """Inside width of a box of known volume: what its machinery leaves of the outside width.

    >>> round(side_from_volume(volume=0.096, depth=0.4, height=0.4), 6)
    0.6
    """
    return volume / (depth * height)


@equation("geometry", uncited=True)
def within_walls(outside: Metres, wall: Metres) -> Metres:
    """Inside size between two walls.

    >>> round(within_walls(outside=0.5, wall=0.05), 6)
    0.4
    """
    return outside - 2 * wall


@equation("geometry")
def inside_area(*, width: Metres, depth: Metres, height: Metres) -> SquareMetres:
    """Area of all six faces inside.

    >>> round(inside_area(width=0.6, depth=0.4, height=0.4), 6)
    1.28
    """
    return 2 * (width * depth + width * height + depth * height)


@equation("geometry", uncited=True)
def outside_area(*, width: Metres, depth: Metres, height: Metres, wall: Metres) -> SquareMetres:
    """Area of all six faces outside, from the inside sizes and the wall.

    >>> round(outside_area(width=0.6, depth=0.4, height=0.4, wall=0.05), 6)
    1.9
    """
    return 2 * (
        (width + 2 * wall) * (depth + 2 * wall)
        + (width + 2 * wall) * (height + 2 * wall)
        + (depth + 2 * wall) * (height + 2 * wall)
    )


@equation("geometry")
def edge_length(*, width: Metres, depth: Metres, height: Metres) -> Metres:
    """Length of the twelve edges inside.

    >>> round(edge_length(width=0.6, depth=0.4, height=0.4), 6)
    5.6
    """
    return 4 * (width + depth + height)


@equation("shape-factors:case 8, edge of adjoining walls; case 9, corner of three walls")
def shape_factor(*, area: SquareMetres, edges: Metres, wall: Metres) -> Metres:
    """Conduction shape factor of a box: six flat walls, twelve edges, eight corners.

    ``area`` and ``edges`` are inside. Valid where every inside size is more than a fifth of the wall.

    >>> round(shape_factor(area=1.28, edges=5.6, wall=0.05), 3)
    28.684
    """
    return area / wall + 0.54 * edges + 0.15 * 8 * wall


@equation("trade-practice:10 % for age, moisture, fasteners and bridges", uncited=True)
def aged_conductivity(conductivity: WattsPerMetreKelvin, ageing: Number) -> WattsPerMetreKelvin:
    """Conductivity of a foam in service from that of new foam.

    >>> round(aged_conductivity(conductivity=0.024, ageing=0.1), 6)
    0.0264
    """
    return conductivity * (1 + ageing)


@equation("steady-conduction:resistances in a row", uncited=True)
def wall_conductance(
    *, conductivity: WattsPerMetreKelvin, shape_factor: Metres,
    inside_area: SquareMetres, outside_area: SquareMetres,
    inside_film: WattsPerSquareMetreKelvin, outside_film: WattsPerSquareMetreKelvin,
) -> WattsPerKelvin:  # fmt: skip
    """Heat let in per degree through the walls: the foam and the air films on both sides, in a row.

    >>> round(wall_conductance(conductivity=0.024, shape_factor=28.684, inside_area=1.28, outside_area=1.9,
    ...                        inside_film=7, outside_film=9), 4)
    0.6163
    """
    return 1 / (
        1 / (conductivity * shape_factor)
        + 1 / (inside_film * inside_area)
        + 1 / (outside_film * outside_area)
    )


@equation("steady-conduction:flat wall")
def flat_wall_resistance(
    *, wall: Metres, conductivity: WattsPerMetreKelvin, area: SquareMetres
) -> KelvinsPerWatt:
    """Resistance of a flat wall, edges left out.

    >>> round(flat_wall_resistance(wall=0.03, conductivity=0.033, area=0.5708), 4)
    1.5927
    """
    return wall / (conductivity * area)


@equation("steady-conduction:film")
def film_resistance(film: WattsPerSquareMetreKelvin, area: SquareMetres) -> KelvinsPerWatt:
    """Resistance of the film of air on a face.

    >>> round(film_resistance(film=18, area=0.74), 5)
    0.07508
    """
    return 1 / (film * area)


@equation("steady-conduction:heat flow")
def heat_over(*, resistance: KelvinsPerWatt, warm: Kelvins, cold: Kelvins) -> Watts:
    """Heat that flows over a resistance.

    >>> heat_over(resistance=1.6, warm=301, cold=273)
    17.5
    """
    return (warm - cold) / resistance


@equation("geometry", uncited=True)
def gasket_length(one_side: Metres, other_side: Metres) -> Metres:
    """Length of the gasket round a lid or a door, from the inside of the opening.

    >>> gasket_length(one_side=0.6, other_side=0.4)
    2.0
    """
    return 2 * (one_side + other_side)


@equation("gasket-review:heat through door gaskets, by length", uncited=True)
def gasket_conductance(loss: WattsPerMetreKelvin, length: Metres) -> WattsPerKelvin:
    """Heat let in per degree past the gasket.

    >>> round(gasket_conductance(loss=0.035, length=2.0), 6)
    0.07
    """
    return loss * length


@equation("steady-conduction:heat flow", uncited=True)
def heat_through(*, conductance: WattsPerKelvin, outside: Kelvins, inside: Kelvins) -> Watts:
    """Heat let in through walls or past a gasket.

    >>> round(heat_through(conductance=0.684, outside=308.15, inside=276.15), 3)
    21.888
    """
    return conductance * (outside - inside)


@equation("geometry", uncited=True)
def face_share(face: SquareMetres, area: SquareMetres) -> Number:
    """Share of a face in the inside area of the box; edges and corners are shared out with it.

    >>> face_share(face=0.24, area=0.96)
    0.25
    """
    return face / area


@equation("geometry", uncited=True)
def face_area(one_side: Metres, other_side: Metres) -> SquareMetres:
    """Inside area of one face.

    >>> round(face_area(one_side=0.6, other_side=0.4), 6)
    0.24
    """
    return one_side * other_side


@equation("steady-conduction:heat flow", uncited=True)
def heat_through_warm_face(
    *, conductance: WattsPerKelvin, share: Number, warmer_by: TemperatureDifference
) -> Watts:
    """Heat let in on top through a face that something hot stands against.

    >>> round(heat_through_warm_face(conductance=0.7, share=0.25, warmer_by=10), 6)
    1.75
    """
    return conductance * share * warmer_by


@equation("steady-conduction:heat flow", uncited=True)
def heat_through_sunny_face(
    *, conductance: WattsPerKelvin, share: Number, sol_air: Kelvins, surroundings: Kelvins
) -> Watts:
    """Heat let in on top through a face in the sun, which sees its sol-air temperature instead of the air's.

    >>> round(heat_through_sunny_face(conductance=0.7, share=0.25, sol_air=354.15, surroundings=308.15), 6)
    8.05
    """
    return conductance * share * (sol_air - surroundings)


@equation("trade-practice:liner and the inner part of the foam", uncited=True)
def box_heat_capacity(
    *, area: SquareMetres, per_area: JoulesPerSquareMetreKelvin, contents: JoulesPerKelvin
) -> JoulesPerKelvin:
    """Heat that warms the box with what is in it by a degree.

    >>> box_heat_capacity(area=1.25, per_area=2400, contents=34000)
    37000.0
    """
    return area * per_area + contents


@equation("steady-conduction:heat flow", uncited=True)
def heat_at_hour(
    *, conductance: WattsPerKelvin, surroundings: Kelvins, inside: Kelvins, serving: Watts, served: Number,
    steady: Watts,
) -> Watts:  # fmt: skip
    """Heat let in at an hour: through walls and gasket, by what goes on while serving, by what always does.

    ``served`` is the share of the hour in serving time.

    >>> round(heat_at_hour(conductance=0.7, surroundings=308, inside=276, serving=6, served=0.5, steady=2), 6)
    27.4
    """
    return conductance * (surroundings - inside) + serving * served + steady
