"""Times of the steps that food goes through."""

from curbwright.figures import equation
from curbwright.quantities import Number, Seconds


@equation("convention", uncited=True)
def step_time(time: Seconds, counts: Number) -> Seconds:
    """Time of a step that counts towards a limit: all of it, or none where its temperature is safe.

    >>> step_time(1800, 1)
    1800
    """
    return time * counts


@equation("convention", uncited=True)
def time_after(whole: Seconds, first: Seconds) -> Seconds:
    """What is left of a time after its first part.

    >>> time_after(21600, 7200)
    14400
    """
    return whole - first
