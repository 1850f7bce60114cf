"""Measure: a quantity as the builder typed it, with its value in SI."""

from __future__ import annotations


class Measure(float):
    """A float in the SI unit of its kind that keeps the text it was read from.

    ``kind`` is a name in KINDS. ``note`` says what a table or formula put in place of a gauge, and how that
    is known; it is empty for plain quantities. Arithmetic gives a bare float.

    >>> Measure(1.6764, "5 ft 6 in", "length").text
    '5 ft 6 in'
    """

    __slots__ = ("kind", "note", "text")

    text: str
    kind: str
    note: str

    def __new__(cls, value: float, text: str, kind: str, note: str = "") -> Measure:
        """Make a measure; nothing is checked here, ``read`` does that."""
        self = super().__new__(cls, value)
        self.text, self.kind, self.note = text, kind, note
        return self

    def __getnewargs__(self) -> tuple[float, str, str, str]:  # type: ignore[override]
        return float(self), self.text, self.kind, self.note

    def __repr__(self) -> str:
        return f"Measure({float(self)!r}, {self.text!r}, {self.kind!r})"

    def __str__(self) -> str:
        return float.__repr__(self)
