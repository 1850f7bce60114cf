"""How a number shows its working: equations, figures, worksheets."""

from curbwright.figures.cards import EQUATIONS, Card, card_of, equation, procedure
from curbwright.figures.figure import Figure, inputs_of, origin_tree, roots, sources, walk
from curbwright.figures.origins import Given, Governing, Origin, Scheduled, Solved, Summed, Tabled, Worked
from curbwright.figures.worksheet import Entry, Gap, Worksheet

__all__ = [
    "EQUATIONS", "Card", "Entry", "Figure", "Gap", "Given", "Governing", "Origin", "Scheduled", "Solved",
    "Summed", "Tabled", "Worked", "Worksheet", "card_of", "equation", "inputs_of", "origin_tree", "procedure",
    "roots", "sources", "walk",
]  # fmt: skip
