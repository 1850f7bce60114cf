"""How a figure is printed: the words of its equation, the numbers put in, the result, the source."""

from __future__ import annotations

import ast
from collections.abc import Callable

from curbwright import units
from curbwright.figures.cards import CONSTANTS, Card
from curbwright.figures.figure import Figure, walk
from curbwright.figures.origins import Given, Governing, Scheduled, Solved, Summed, Tabled, Worked

DIGITS = 4
"""Significant digits of a printed number: enough that a line can be reworked by hand from what is printed."""

LABEL = 34
"""The longest label of a row of a schedule."""

_SIGNS: dict[type[ast.operator], str] = {
    ast.Add: " + ", ast.Sub: " − ", ast.Mult: " × ", ast.Div: " / ",
}  # fmt: skip
_BINDS: dict[type[ast.operator], int] = {ast.Add: 1, ast.Sub: 1, ast.Mult: 2, ast.Div: 2, ast.Pow: 4}
_POWERS = {2.0: "²", 3.0: "³", 4.0: "⁴"}
_CALLS = {
    "minimum": "the smaller of",
    "maximum": "the larger of",
    "sqrt": "√",
    "arctan": "atan",
    "arcsin": "asin",
}


def shown(figure: Figure, system: str = "us", digits: int = DIGITS) -> str:
    """Return a figure's value with its unit, as printed."""
    return units.show(float(figure), figure.unit, system=system, shown=figure.shown, digits=digits)


def words(card: Card) -> str:
    """Return an equation's expression in words.

    >>> from curbwright.figures.cards import card_of
    >>> from curbwright.equations.balance import axle_load
    >>> words(card_of(axle_load))
    'gross × centre / axle'
    """
    return _write(card.expression, lambda name: name.replace("_", " "))


def line(figure: Figure, system: str = "us") -> list[str]:
    """Return the printed lines of one figure: what it is, how it is worked, what comes out."""
    result = shown(figure, system)
    match figure.origin:
        case Given(path, typed, how, assumed, source):
            known = f", {how}" if how else ""
            if assumed:
                stands_in = f"assumed ({source or 'typical'}{known}); set {path} to your own"
                return [f"{figure.name} = {result}   {stands_in}"]
            written = f" as typed: {typed}" if typed and typed != result else ""
            return [f"{figure.name} = {result}   [{path}{written}{known}]"]
        case Tabled(source, row):
            return [f"{figure.name} = {result}   [{source}{', ' + row if row else ''}]"]
        case Worked(card, inputs):
            return [
                f"{figure.name} = {_formula(card)}",
                *_numbers(card, inputs, system),
                f"  = {result}   [{card.source}]",
            ]
        case Summed(terms):
            rows = [f"    {shown(term, system):>14}  {term.name}" for term in terms]
            return [f"{figure.name}, the sum of", *rows, f"  = {result}"]
        case Scheduled(card, rows_):
            return [
                f"{figure.name}, the sum over rows of {_formula(card)}",
                *_schedule(figure, card, rows_, system),
                f"  = {result}   [{card.source}]",
            ]
        case Solved(card, unknown, inputs):
            asked = unknown.replace("_", " ")
            back = dict(inputs) | {unknown: figure}
            put_in = [each.replace("  = ", "  put back: 0 ≈ ", 1) for each in _numbers(card, back, system)]
            return [
                f"{figure.name}: the {asked} for which {_formula(card)} = 0",
                f"  = {result}   [{card.source}]",
                *put_in,
            ]
        case Governing(rule, cases, chosen):
            rows = [
                f"    {shown(case, system):>14}  {label}{'  <' if label == chosen else ''}"
                for label, case in cases.items()
            ]
            return [f"{figure.name}, the {rule} of", *rows, f"  = {result}   ({chosen})"]


def working(figure: Figure, system: str = "us") -> str:
    """Return a figure's whole working as text, from the build file down to the result."""
    return "\n".join(
        text for one in walk(figure) for text in (f"{one.id}", *(f"  {each}" for each in line(one, system)))
    )


def _formula(card: Card) -> str:
    return card.says if card.procedure else words(card)


def _numbers(card: Card, inputs: dict[str, Figure], system: str) -> list[str]:
    if card.procedure:
        return [f"    {word.replace('_', ' ')}: {shown(one, system)}" for word, one in inputs.items()]
    return [f"  = {_write(card.expression, lambda name: _in_place(shown(inputs[name], system)))}"]


def _in_place(text: str) -> str:
    """A printed number inside a formula: in brackets where its sign or its spaces could mislead."""
    return f"({text})" if " " in text or text.startswith(("-", "−")) else text


def _schedule(total: Figure, card: Card, rows: dict[str, dict[str, Figure]], system: str) -> list[str]:
    """The rows of a schedule as a table: the label, each input, the product in the unit of the total.

    An input that is the same in every row is said once, above; a column has one unit, named in its head.
    """
    heads = [word for word in card.units if word != "return"]
    first = next(iter(rows.values()), {})
    same = [head for head in heads if len(rows) > 1 and len({float(row[head]) for row in rows.values()}) == 1]
    columns = [
        _column(head, [row[head] for row in rows.values()], system) for head in heads if head not in same
    ]
    gives = [
        Figure(card.function(**row), id="", name="", unit=total.unit, origin=total.origin, shown=total.shown)
        for row in rows.values()
    ]
    labels = [label if len(label) <= LABEL else f"{label[: LABEL - 1]}…" for label in rows]
    table = [["", "", *labels], *columns, _column("gives", gives, system)]
    widths = [max(map(len, column)) for column in table]
    lines = [
        "    " + "  ".join(cell.ljust(width) if n == 0 else cell.rjust(width)
                           for n, (cell, width) in enumerate(zip(cells, widths, strict=True)))
        for cells in zip(*table, strict=True) if any(cells)
    ]  # fmt: skip
    once = ", ".join(f"{head.replace('_', ' ')} {shown(first[head], system)}" for head in same)
    return [f"  in every row: {once}", *lines] if once else lines


def _column(head: str, figures: list[Figure], system: str) -> list[str]:
    """A column of a schedule: its head on two lines, with the unit of its largest figure, and the figures."""
    largest = max(figures, key=lambda one: abs(float(one)), default=None)
    above, _, title = head.replace("_", " ").rpartition(" ")
    if largest is None or largest.unit in ("K", "USD") or largest.shown == "clock":
        return [above, title, *(shown(one, system) for one in figures)]
    unit = units.shown_number(
        float(largest), largest.unit, system=system, shown=largest.shown, digits=DIGITS
    )[1]
    cells = [
        units.show(float(one), one.unit, system=system, shown=unit or None, digits=DIGITS) for one in figures
    ]
    if unit:
        above, title = (above, f"{title}, {unit}") if above else (title, unit)
    return [above, title, *(cell.removesuffix(f" {unit}") for cell in cells)]


def _write(node: ast.expr, name: Callable[[str], str], binding: int = 0) -> str:
    """Return an expression as a person writes it; ``binding`` is how tightly the surroundings hold it."""
    match node:
        case ast.Name(id=word):
            return CONSTANTS.get(word) or name(word)
        case ast.Constant(value=value):
            return f"{value:.12g}" if isinstance(value, float) else str(value)
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            text = f"−{_write(operand, name, 3)}"
            return f"({text})" if binding > 3 else text
        case ast.Call(func=ast.Name(id=called), args=args):
            inside = ", ".join(_write(each, name) for each in args)
            return f"{_CALLS.get(called, called)}({inside})"
        case ast.BinOp(left=base, op=ast.Pow(), right=power):
            return _power(base, power, name)
        case ast.BinOp(left=left, op=op, right=right):
            binds = _BINDS[type(op)]
            tighter = 1 if isinstance(op, ast.Sub | ast.Div) else 0
            text = _write(left, name, binds) + _SIGNS[type(op)] + _write(right, name, binds + tighter)
            return f"({text})" if binds < binding else text
        case _:
            return ast.unparse(node)


def _power(base: ast.expr, power: ast.expr, name: Callable[[str], str]) -> str:
    match power:
        case ast.Constant(value=0.5):
            return f"√({_write(base, name)})"
        case ast.Constant(value=int() | float() as value) if float(value) in _POWERS:
            return _write(base, name, 5) + _POWERS[float(value)]
        case _:
            return f"{_write(base, name, 5)}^({_write(power, name)})"
