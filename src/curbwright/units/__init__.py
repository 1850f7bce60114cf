"""Quantities as a builder writes them, read into SI and printed back.

``read`` and ``show`` are the two ends; ``factor`` converts the units of published cases. Inside, the
package is read in this order: text, numbers, terms, unit, expression, kinds, refusals,
matching, reading, showing.
"""

from curbwright.units.converting import factor
from curbwright.units.kinds import KINDS, Kind
from curbwright.units.measure import Measure
from curbwright.units.reading import read
from curbwright.units.showing import show, shown_number

__all__ = ["KINDS", "Kind", "Measure", "factor", "read", "show", "shown_number"]
