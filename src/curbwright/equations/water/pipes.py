"""Pipes: how fast water runs in them, what pressure that costs by two published ways, and surges."""

from numpy import exp, pi

from curbwright.figures import equation, procedure
from curbwright.quantities import (
    CubicMetres,
    CubicMetresPerSecond,
    Kelvins,
    KilogramsPerCubicMetre,
    Metres,
    MetresPerSecond,
    MetresPerSecondSquared,
    Number,
    Pascals,
    SquareMetresPerSecond,
)

LAMINAR, TURBULENT = 2000.0, 4000.0
"""Reynolds numbers below which flow is laminar, and above which Colebrook's equation holds."""


@equation("water-properties:density", empirical=True, uncited=True)
def density(temperature: Kelvins) -> KilogramsPerCubicMetre:
    """Density of water at ordinary pressure; within one part in 2,000 from freezing to 140 °F.

    >>> round(density(temperature=293.15), 1)
    998.2
    """
    return 1000 * (
        1 - (temperature + 15.7914) * (temperature - 277.1363) ** 2 / (508929.2 * (temperature - 205.02037))
    )


@equation("water-properties:viscosity", empirical=True, uncited=True)
def viscosity(temperature: Kelvins, density: KilogramsPerCubicMetre) -> SquareMetresPerSecond:
    """Kinematic viscosity of water; within 1 % from 60 to 140 °F, 3 % too thin near freezing.

    >>> round(float(viscosity(temperature=293.15, density=998.2)) * 1e6, 3)
    1.003
    """
    return exp(578.919 / (temperature - 137.546) - 3.7188) / (1000 * density)


@equation("steady-flow:flow over area", uncited=True)
def velocity(flow: CubicMetresPerSecond, bore: Metres) -> MetresPerSecond:
    """Speed of water in a pipe.

    >>> round(float(velocity(flow=0.0001, bore=0.012)), 3)
    0.884
    """
    return flow / (pi * bore**2 / 4)


@equation("pipe-friction:Reynolds number", uncited=True)
def reynolds(*, velocity: MetresPerSecond, bore: Metres, viscosity: SquareMetresPerSecond) -> Number:
    """Reynolds number of water in a pipe.

    >>> round(reynolds(velocity=0.9, bore=0.012, viscosity=1.004e-6))
    10757
    """
    return velocity * bore / viscosity


@procedure("pipe-friction:64 / Re, Colebrook, and a straight line between", uncited=True)
def friction_factor(reynolds: Number, roughness: Number) -> Number:
    """Darcy friction factor: 64 / Re below 2,000, Colebrook's root above 4,000, a straight line between.

    ``roughness`` is relative to the bore.

    >>> round(friction_factor(reynolds=20000.0, roughness=1e-4), 5)
    0.0261
    """
    from fluids.friction import friction_factor as colebrook

    if reynolds <= LAMINAR:
        return 64.0 / reynolds
    if reynolds >= TURBULENT:
        return float(colebrook(Re=reynolds, eD=roughness))
    share = (reynolds - LAMINAR) / (TURBULENT - LAMINAR)
    high = float(colebrook(Re=TURBULENT, eD=roughness))
    return 64.0 / LAMINAR * (1 - share) + high * share


@equation("pipe-friction:relative roughness", uncited=True)
def relative_roughness(roughness: Metres, bore: Metres) -> Number:
    """Roughness of a pipe's wall against its bore.

    >>> relative_roughness(roughness=1.5e-6, bore=0.012)
    0.000125
    """
    return roughness / bore


@equation("pipe-friction:Darcy and Weisbach", uncited=True)
def friction_loss(
    *, friction: Number, length: Metres, bore: Metres, density: KilogramsPerCubicMetre,
    velocity: MetresPerSecond,
) -> Pascals:  # fmt: skip
    """Pressure that friction takes along a pipe.

    >>> round(friction_loss(friction=0.03, length=3.0, bore=0.012, density=998.0, velocity=0.9))
    3031
    """
    return friction * length / bore * density * velocity**2 / 2


@equation("epanet-manual:minor losses", uncited=True)
def fitting_loss(
    *, fittings: Number, density: KilogramsPerCubicMetre, velocity: MetresPerSecond
) -> Pascals:  # fmt: skip
    """Pressure that fittings, valves and a strainer take; ``fittings`` is the sum of their coefficients.

    >>> round(fitting_loss(fittings=3.0, density=998.0, velocity=0.9))
    1213
    """
    return fittings * density * velocity**2 / 2


@equation("pipe-friction:loss in the narrow bore, told by the speed in the wide one", uncited=True)
def narrowed(*, coefficient: Number, bore: Metres, insert: Metres) -> Number:
    """Coefficient of a fitting that is pushed into the pipe and so has a narrower bore.

    >>> round(narrowed(coefficient=0.9, bore=0.012, insert=0.009), 3)
    2.844
    """
    return coefficient * (bore / insert) ** 4


@equation("convention:so many alike", uncited=True)
def alike(number: Number, each: Number) -> Number:
    """Coefficient of so many fittings of one kind.

    >>> alike(number=3, each=0.9)
    2.7
    """
    return number * each


@equation("hazen-williams", empirical=True)
def hazen_williams(
    *, flow: CubicMetresPerSecond, bore: Metres, length: Metres, smoothness: Number
) -> Pascals:
    """Pressure lost in a pipe by the formula of Hazen and Williams, in gpm, inches and feet of water.

    ``smoothness`` is its C, 150 for plastic. It reads low in pipes as narrow as a cart's.

    >>> round(hazen_williams(flow=0.0001, bore=0.012, length=3.0, smoothness=150))
    2607
    """
    return (
        0.2083
        * (100 / smoothness) ** 1.852
        * (flow / 0.0000630901964) ** 1.852
        / (bore / 0.0254) ** 4.8655
        * (length / 30.48)
        * 2989.06692
    )


@equation("geometry")
def pipe_volume(bore: Metres, length: Metres) -> CubicMetres:
    """Water held by a run of pipe.

    >>> round(float(pipe_volume(bore=0.012, length=3.0)), 6)
    0.000339
    """
    return pi * bore**2 / 4 * length


@equation("statics:weight of a column of water")
def static_pressure(
    *, density: KilogramsPerCubicMetre, gravity: MetresPerSecondSquared, height: Metres
) -> Pascals:  # fmt: skip
    """Pressure of a column of water; less than nothing where it has to be pushed down to.

    >>> round(static_pressure(density=998.0, gravity=9.80665, height=1.0))
    9787
    """
    return density * gravity * height


@equation("elastic-pipe:speed of a pressure wave")
def wave_speed(
    *, bulk: Pascals, density: KilogramsPerCubicMetre, modulus: Pascals, bore: Metres, wall: Metres
) -> MetresPerSecond:  # fmt: skip
    """Speed of a pressure wave in a pipe whose wall gives way.

    >>> round(wave_speed(bulk=2.15e9, density=998.0, modulus=8e8, bore=0.012, wall=0.002))
    355
    """
    return (bulk / density / (1 + bulk * bore / (modulus * wall))) ** 0.5


@equation("elastic-pipe:Joukowsky")
def surge(*, density: KilogramsPerCubicMetre, wave: MetresPerSecond, velocity: MetresPerSecond) -> Pascals:
    """Pressure on top when a tap shuts faster than the wave comes back.

    >>> surge(density=1000.0, wave=350.0, velocity=1.0)
    350000.0
    """
    return density * wave * velocity


@equation("geometry", uncited=True)
def rise_between(high: Metres, low: Metres) -> Metres:
    """Height of one place over another; less than nothing where it is lower.

    >>> round(rise_between(high=1.1, low=0.2), 6)
    0.9
    """
    return high - low
