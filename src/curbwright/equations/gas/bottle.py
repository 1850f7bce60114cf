"""A bottle: what it may hold, how much heat reaches its liquid, what it can give without cooling too far."""

from numpy import maximum, minimum, pi

from curbwright.figures import equation
from curbwright.quantities import (
    CubicMetres,
    Joules,
    JoulesPerKelvin,
    JoulesPerKilogram,
    JoulesPerKilogramKelvin,
    Kelvins,
    KelvinsPerSecond,
    Kilograms,
    KilogramsPerCubicMetre,
    KilogramsPerSecond,
    Metres,
    Number,
    Seconds,
    SquareMetres,
    Watts,
    WattsPerKelvin,
    WattsPerSquareMetre,
    WattsPerSquareMetreKelvin,
)


@equation("cfr-29-1910-110:(b)(19), by weight")
def largest_charge(water_capacity: Kilograms, filling: Number) -> Kilograms:
    """Most propane that a bottle may be filled with, from the mass of water it holds.

    >>> largest_charge(water_capacity=20.0, filling=0.42)
    8.4
    """
    return water_capacity * filling


@equation("cfr-29-1910-110:(b)(19)(v), by volume")
def largest_liquid_volume(
    *, water_volume: CubicMetres, filling: Number, gravity: Number, correction: Number
) -> CubicMetres:
    """Most liquid that a container may hold, from its water volume and the liquid's gravity at 60 °F.

    >>> round(largest_liquid_volume(water_volume=0.1, filling=0.42, gravity=0.5, correction=1.05), 4)
    0.08
    """
    return water_volume * filling / (gravity * correction)


@equation("steady-flow:volume of a mass")
def liquid_volume(mass: Kilograms, density: KilogramsPerCubicMetre) -> CubicMetres:
    """Volume of the liquid in a bottle.

    >>> liquid_volume(mass=10.0, density=500.0)
    0.02
    """
    return mass / density


@equation("bottle-heat-balance:elliptical lower head below a cylinder")
def wetted_area(volume: CubicMetres, diameter: Metres) -> SquareMetres:
    """Wall of an upright bottle that its liquid wets: the lower head, then the side up to the level.

    >>> round(float(wetted_area(volume=0.018, diameter=0.31)), 4)
    0.286
    """
    return (
        1.084 * diameter**2 * minimum(1, volume / (pi * diameter**3 / 24)) ** 0.6
        + 4 * maximum(0, volume - pi * diameter**3 / 24) / diameter
    )


@equation("bottle-heat-balance:film outside governs")
def heat_in(
    *, film: WattsPerSquareMetreKelvin, area: SquareMetres, ambient: Kelvins, liquid: Kelvins
) -> Watts:
    """Heat from the air into the liquid of a bottle.

    >>> heat_in(film=10.0, area=0.3, ambient=290.0, liquid=250.0)
    120.0
    """
    return film * area * (ambient - liquid)


@equation("bottle-heat-balance:steady")
def steady_draw(heat: Watts, latent: JoulesPerKilogram) -> KilogramsPerSecond:
    """Vapour that a flow of heat gives for ever.

    >>> steady_draw(heat=100.0, latent=400000.0)
    0.00025
    """
    return heat / latent


@equation("energy:heat of burning")
def load_of(draw: KilogramsPerSecond, heat: JoulesPerKilogram) -> Watts:
    """Burners that a draw of gas can feed.

    >>> load_of(draw=0.0002, heat=50e6)
    10000.0
    """
    return draw * heat


@equation("energy:heat of burning")
def draw_of(load: Watts, heat: JoulesPerKilogram) -> KilogramsPerSecond:
    """Gas that burners draw.

    >>> draw_of(load=10000.0, heat=50e6)
    0.0002
    """
    return load / heat


@equation("energy:heat of burning")
def energy_of(mass: Kilograms, heat: JoulesPerKilogram) -> Joules:
    """Heat in the gas of a bottle.

    >>> energy_of(mass=9.0, heat=50e6)
    450000000.0
    """
    return mass * heat


@equation("energy:power over time")
def lasts(energy: Joules, load: Watts) -> Seconds:
    """Time that an amount of gas feeds a load, were it never too cold.

    >>> lasts(energy=450e6, load=25000.0)
    18000.0
    """
    return energy / load


@equation("bottle-heat-balance:what has to cool", uncited=True)
def heat_capacity(
    *, mass: Kilograms, specific_heat: JoulesPerKilogramKelvin, shell: Kilograms,
    shell_specific_heat: JoulesPerKilogramKelvin, wetted: Number,
) -> JoulesPerKelvin:  # fmt: skip
    """Heat that a bottle gives up for a degree: its liquid and the wetted share of its shell.

    >>> heat_capacity(mass=9.0, specific_heat=2500.0, shell=8.0, shell_specific_heat=480.0, wetted=0.5)
    24420.0
    """
    return mass * specific_heat + wetted * shell * shell_specific_heat


@equation("bottle-heat-balance:stored", uncited=True)
def stored_heat(*, capacity: JoulesPerKelvin, ambient: Kelvins, liquid: Kelvins) -> Joules:
    """Heat that a bottle gives up in cooling from the air's temperature.

    >>> stored_heat(capacity=25000.0, ambient=290.0, liquid=250.0)
    1000000.0
    """
    return capacity * (ambient - liquid)


@equation("bottle-heat-balance:evaporation", uncited=True)
def evaporation_heat(draw: KilogramsPerSecond, latent: JoulesPerKilogram) -> Watts:
    """Heat that evaporating a draw of gas takes from the liquid and the air.

    >>> evaporation_heat(draw=0.0005, latent=400000.0)
    200.0
    """
    return draw * latent


@equation("bottle-heat-balance:rate", uncited=True)
def cooling_rate(
    *, heat: Watts, draw: KilogramsPerSecond, latent: JoulesPerKilogram, capacity: JoulesPerKelvin
) -> KelvinsPerSecond:
    """How fast the liquid of a bottle warms while it is drawn from: less than nothing while it cools.

    >>> cooling_rate(heat=100.0, draw=0.0005, latent=400000.0, capacity=25000.0)
    -0.004
    """
    return (heat - draw * latent) / capacity


@equation("bottle-heat-balance:what is drawn is gone")
def left_after(*, contents: Kilograms, draw: KilogramsPerSecond, time: Seconds) -> Kilograms:
    """Gas left in a bottle after a time of steady draw.

    >>> left_after(contents=9.0, draw=0.0005, time=3600.0)
    7.2
    """
    return contents - draw * time


@equation("propane-vaporisation-table:fitted by three numbers, 1.7 % off on average, 7 % at worst")
def table_draw(
    *, empty: WattsPerKelvin, each: WattsPerKelvin, step: Kilograms, mass: Kilograms, ambient: Kelvins,
    coldest: Kelvins,
) -> Watts:  # fmt: skip
    """Draw of a bottle of nominal 100 lb by the published table, whose liquid may cool to no pressure at all.

    ``each`` is what the draw per degree grows by for every ``step`` of liquid. ``coldest`` comes out of the
    fit as the boiling point, so the table is an upper limit that no regulator can work at.

    >>> table_draw(empty=190.0, each=11.0, step=0.5, mass=20.0, ambient=280.0, coldest=230.0)
    31500.0
    """
    return (empty + each * mass / step) * (ambient - coldest)


@equation("generator-gas-appendix:vessel rule")
def vessel_draw(*, diameter: Metres, length: Metres, factor: WattsPerSquareMetre) -> Watts:
    """Draw of a fixed tank at 0 °F by the old rule, whose factor goes with how full it is.

    >>> vessel_draw(diameter=0.6, length=1.5, factor=30000.0)
    27000.0
    """
    return diameter * length * factor


@equation("statistics:relative error")
def square_of_miss(stated: Watts, worked: Watts) -> Number:
    """Square of how far a worked draw is from a stated one, as a share of it.

    >>> round(square_of_miss(stated=100.0, worked=110.0), 6)
    0.01
    """
    return (worked / stated - 1) ** 2


@equation("cfr-29-1910-110:(b)(19), by weight", uncited=True)
def filling_of(charge: Kilograms, water_capacity: Kilograms) -> Number:
    """Propane in a full bottle over the water it holds, by mass.

    >>> filling_of(charge=8.0, water_capacity=20.0)
    0.4
    """
    return charge / water_capacity


@equation("bottle-heat-balance:open together, each gives by its wetted wall", uncited=True)
def part_of_draw(
    *, draw: KilogramsPerSecond, area: SquareMetres, all_areas: SquareMetres
) -> KilogramsPerSecond:
    """Gas drawn from one of several bottles that stand open together.

    >>> part_of_draw(draw=0.0006, area=0.2, all_areas=0.6)
    0.0002
    """
    return draw * area / all_areas


@equation("trade-practice:wind, rain and frost change it by so much", uncited=True)
def film_times(film: WattsPerSquareMetreKelvin, times: Number) -> WattsPerSquareMetreKelvin:
    """Heat that the air brings for an area and a degree, at one end of what is seen.

    >>> film_times(film=10.0, times=1.5)
    15.0
    """
    return film * times


@equation("trade-practice:a bottle may begin the day part full", uncited=True)
def part_filled(charge: Kilograms, filled: Number) -> Kilograms:
    """Gas in a bottle when the day begins.

    >>> part_filled(charge=9.0, filled=0.5)
    4.5
    """
    return charge * filled


@equation("propane-vaporisation-table:scaled by wetted wall", uncited=True)
def scaled_by_wall(*, draw: Watts, area: SquareMetres, of_area: SquareMetres) -> Watts:
    """Draw of one bottle from that of another, by the walls that their liquids wet.

    >>> scaled_by_wall(draw=30000.0, area=0.3, of_area=0.9)
    10000.0
    """
    return draw * area / of_area
