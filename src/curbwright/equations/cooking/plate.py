"""A plate as one lump of steel: heating up, losing heat from its top, giving it to cold food, recovering.

Steel evens out through its thickness within a minute, so that one temperature will do; `through_difference`
and `soaking_time` say how far from it the two faces are. Across its width it does not: zones differ.
"""

from numpy import sqrt

from curbwright.figures import equation, procedure
from curbwright.quantities import (
    Joules,
    JoulesPerKelvin,
    JoulesPerKilogramKelvin,
    Kelvins,
    Kilograms,
    KilogramsPerCubicMetre,
    Metres,
    Number,
    Seconds,
    SquareMetres,
    TemperatureDifference,
    Watts,
    WattsPerMetreKelvin,
    WattsPerSquareMetre,
    WattsPerSquareMetreKelvin,
)

STEPS = 200
"""Intervals of the integral over temperature: far finer than a plate's heat is known."""


@equation("lumped-plate:area", uncited=True)
def area(width: Metres, depth: Metres) -> SquareMetres:
    """Area of a plate or of an open pan.

    >>> area(0.75, 0.5)
    0.375
    """
    return width * depth


@equation("lumped-plate:mass", uncited=True)
def plate_mass(area: SquareMetres, *, thickness: Metres, density: KilogramsPerCubicMetre) -> Kilograms:
    """Mass of a plate.

    >>> plate_mass(0.5, thickness=0.02, density=7850)
    78.5
    """
    return area * thickness * density


@equation("lumped-plate:mass", uncited=True)
def heated_mass(plate: Kilograms, sides: Number) -> Kilograms:
    """Steel that heats up: the plate, and its sides, trough and frame as a share of it.

    >>> heated_mass(80, 0.25)
    100.0
    """
    return plate * (1 + sides)


@equation("lumped-plate:burners")
def heat_to_plate(input: Watts, share: Number) -> Watts:
    """Heat that reaches the steel with every burner on.

    >>> heat_to_plate(20000, 0.45)
    9000.0
    """
    return input * share


@equation("lumped-plate:top loss", empirical=True)
def plate_loss(
    *, area: SquareMetres, film: WattsPerSquareMetreKelvin, emissivity: Number, plate: Kelvins, air: Kelvins
) -> Watts:
    """Heat that the bare top of a plate loses to the air and by radiation.

    >>> round(plate_loss(area=0.5574, film=8.5, emissivity=0.8, plate=463.7, air=294.3))
    1782
    """
    return area * (film * (plate - air) + emissivity * 5.670374419e-8 * (plate**4 - air**4))


@equation("lumped-plate:balance", uncited=True)
def plate_heat(heat: Watts, loss: Watts) -> Watts:
    """Heat left over, with every burner on, at a temperature of the plate.

    >>> plate_heat(9000, 1800)
    7200
    """
    return heat - loss


@procedure("lumped-plate:heat-up", empirical=True)
def heat_up_time(
    *, capacity: JoulesPerKelvin, heat: Watts, area: SquareMetres, film: WattsPerSquareMetreKelvin,
    emissivity: Number, air: Kelvins, start: Kelvins, end: Kelvins,
) -> Seconds:  # fmt: skip
    """Time to heat a plate: heat capacity over heat less top loss, summed over temperature by Simpson.

    ``end`` has to be below the temperature at which the loss takes all the heat.

    >>> round(heat_up_time(capacity=40138, heat=11870, area=0.5574, film=8.52, emissivity=0.8, air=294.26,
    ...                    start=294.26, end=463.71) / 60, 1)
    10.2
    """
    step = (end - start) / STEPS
    total = 0.0
    for number in range(STEPS + 1):
        weight = 1 if number in (0, STEPS) else 4 if number % 2 else 2
        plate = start + number * step
        loss = plate_loss(area=area, film=film, emissivity=emissivity, plate=plate, air=air)
        total += weight * capacity / (heat - loss)
    return total * step / 3


@equation("lumped-plate:gas")
def fuel_burned(input: Watts, time: Seconds) -> Joules:
    """Gas burned with every burner on for a time.

    >>> fuel_burned(20000, 600)
    12000000
    """
    return input * time


@equation("femp-griddle:idle rate")
def idle_input(area: SquareMetres, rate: WattsPerSquareMetre) -> Watts:
    """Gas that a hot plate burns on average with nothing on it.

    >>> idle_input(0.5, 8000)
    4000.0
    """
    return area * rate


@equation("lumped-plate:recovery", uncited=True)
def load_drop(heat: Joules, capacity: JoulesPerKelvin) -> TemperatureDifference:
    """How far plate or oil falls when it gives all that a full load takes and no burner helps.

    >>> load_drop(800000, 40000)
    20.0
    """
    return heat / capacity


@equation("lumped-plate:recovery", uncited=True)
def after_load(hot: Kelvins, drop: TemperatureDifference) -> Kelvins:
    """Temperature of the plate when a full load has taken its heat and no burner helped.

    >>> after_load(463.0, 20.0)
    443.0
    """
    return hot - drop


@equation("lumped-plate:recovery", uncited=True)
def recovery_time(heat: Joules, spare: Watts) -> Seconds:
    """Time the burners take to put back what a full load took, the top's loss met.

    >>> recovery_time(700000, 7000)
    100.0
    """
    return heat / spare


@equation("contact-temperature")
def contact_temperature(
    *, plate: Kelvins, food: Kelvins, plate_conductivity: WattsPerMetreKelvin,
    plate_density: KilogramsPerCubicMetre, plate_specific_heat: JoulesPerKilogramKelvin,
    food_conductivity: WattsPerMetreKelvin, food_density: KilogramsPerCubicMetre,
    food_specific_heat: JoulesPerKilogramKelvin,
) -> Kelvins:  # fmt: skip
    """Temperature where cold food meets the plate, at the first moment and with nothing between them.

    >>> round(float(contact_temperature(plate=463.15, food=277.15, plate_conductivity=50, plate_density=7850,
    ...     plate_specific_heat=480, food_conductivity=0.45, food_density=1050,
    ...     food_specific_heat=3500)) - 273.15, 1)
    174.1
    """
    return (
        plate * sqrt(plate_conductivity * plate_density * plate_specific_heat)
        + food * sqrt(food_conductivity * food_density * food_specific_heat)
    ) / (
        sqrt(plate_conductivity * plate_density * plate_specific_heat)
        + sqrt(food_conductivity * food_density * food_specific_heat)
    )


@equation("lumped-plate:through", uncited=True)
def through_difference(
    *, heat: Watts, area: SquareMetres, thickness: Metres, conductivity: WattsPerMetreKelvin
) -> TemperatureDifference:
    """How much hotter a plate's underside is than its top while it heats up evenly.

    >>> round(through_difference(heat=9000, area=0.5, thickness=0.02, conductivity=50), 2)
    3.6
    """
    return heat * thickness / (2 * area * conductivity)


@equation("lumped-plate:through", uncited=True)
def soaking_time(
    *, thickness: Metres, conductivity: WattsPerMetreKelvin, density: KilogramsPerCubicMetre,
    specific_heat: JoulesPerKilogramKelvin,
) -> Seconds:  # fmt: skip
    """Time in which heat gets through a plate, from its conductivity.

    >>> round(soaking_time(thickness=0.019, conductivity=50, density=7850, specific_heat=480), 1)
    27.2
    """
    return thickness**2 * density * specific_heat / conductivity
