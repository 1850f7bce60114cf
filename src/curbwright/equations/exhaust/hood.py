"""How much air a hood takes: by the code, and by what rises from the appliances."""

from curbwright.figures import equation
from curbwright.quantities import (
    CubicMetresPerSecond,
    JoulesPerKilogramKelvin,
    KilogramsPerCubicMetre,
    Metres,
    MetresPerSecond,
    Number,
    SquareMetres,
    SquareMetresPerSecond,
    TemperatureDifference,
    Watts,
)


@equation("imc-hood-rates:net rate for each foot of hood")
def rate_by_length(length: Metres, rate: SquareMetresPerSecond) -> CubicMetresPerSecond:
    """Exhaust of an unlisted hood from its length and the code's rate for its style and duty.

    >>> rate_by_length(length=1.5, rate=0.4)
    0.6000000000000001
    """
    return length * rate


@equation("flow-is-area-times-speed")
def flow_through(area: SquareMetres, speed: MetresPerSecond) -> CubicMetresPerSecond:
    """Flow through a face at a mean speed: a hood's opening, a filter, the top of an appliance.

    >>> flow_through(area=2.0, speed=0.25)
    0.5
    """
    return area * speed


@equation("geometry:rectangle", uncited=True)
def face(long: Metres, wide: Metres) -> SquareMetres:
    """Area of a rectangle: a hood from above, an appliance, a duct, an opening.

    >>> face(long=1.5, wide=2.0)
    3.0
    """
    return long * wide


@equation("kitchen-plume-notes:width of the source")
def hydraulic_diameter(long: Metres, wide: Metres) -> Metres:
    """Width that stands for a rectangle: four times its area over its perimeter.

    >>> hydraulic_diameter(long=1.0, wide=1.0)
    1.0
    """
    return 2 * long * wide / (long + wide)


@equation("kitchen-plume-notes:heat that rises", uncited=True)
def plume_heat(*, load: Watts, busy: Number, share: Number) -> Watts:
    """Heat that rises from an appliance: of its input, what it burns while busy, and the part that rises.

    >>> plume_heat(load=20000.0, busy=0.5, share=0.4)
    4000.0
    """
    return load * busy * share


@equation("kitchen-plume-notes:flow of the plume", empirical=True)
def plume_flow(*, heat: Watts, height: Metres, diameter: Metres, share: Number) -> CubicMetresPerSecond:
    """Air that a warm plume has drawn in when it reaches the hood.

    ``share`` is 1 for a thing that stands free and less against a wall, where the plume has one side less.

    >>> round(plume_flow(heat=4000.0, height=0.9, diameter=0.73, share=1.0), 3)
    0.282
    """
    return 18 / 3600 * heat ** (1 / 3) * (height + 1.7 * diameter) ** (5 / 3) * share


@equation("convention:a factor on a flow", uncited=True)
def times(flow: CubicMetresPerSecond, factor: Number) -> CubicMetresPerSecond:
    """A flow with a factor for what disturbs it.

    >>> times(flow=0.5, factor=1.5)
    0.75
    """
    return flow * factor


@equation("trade-practice:air drawn in over the open sides", uncited=True)
def capture_flow(
    *, long: Metres, wide: Metres, height: Metres, speed: MetresPerSecond
) -> CubicMetresPerSecond:
    """Air that keeps smoke in: drawn in at a speed over the front and both ends below the hood's lip.

    >>> capture_flow(long=1.0, wide=0.5, height=0.5, speed=0.25)
    0.25
    """
    return (long + 2 * wide) * height * speed


@equation("steady-flow:warmed air", uncited=True)
def flow_for_rise(
    *,
    heat: Watts,
    rise: TemperatureDifference,
    density: KilogramsPerCubicMetre,
    specific_heat: JoulesPerKilogramKelvin,
) -> CubicMetresPerSecond:
    """Air that carries heat off when it may warm by so much.

    >>> flow_for_rise(heat=2400.0, rise=10.0, density=1.2, specific_heat=1000.0)
    0.2
    """
    return heat / (density * specific_heat * rise)


@equation("convention:room to spare", uncited=True)
def height_between(lower: Metres, upper: Metres) -> Metres:
    """Height of one thing over another.

    >>> height_between(lower=0.9, upper=1.5)
    0.6
    """
    return upper - lower
