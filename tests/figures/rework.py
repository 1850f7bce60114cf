"""Reworks printed lines from their rounded printed numbers, as a reviewer with a pocket calculator would.

Each input of a line may be off by half a unit in its last printed place. Moving every input by that much, one
at a time, gives the most that rounding can explain; a result further off means that the line does not say
what was worked. A line whose rounding explains more than 2 % of its result cannot be checked by hand: a fault
too, except where the result is what is left of two larger terms, which is reported.
"""

from __future__ import annotations

import ast
import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from curbwright import units
from curbwright.figures import Card, Figure, Governing, Scheduled, Solved, Summed, Worked, Worksheet
from curbwright.figures.printing import DIGITS

COARSEST = 0.02
"""Share of a result that the rounding of its inputs may explain."""
CANCELS = 3.0
"""From here on, terms so many times their sum leave a result that carries few of their digits."""


FINEST, FINEST_DEGREE = 12, 3
"""Decimals past which nothing prints, and past which no temperature does."""


@dataclass(frozen=True)
class Reading:
    """A number as printed, in SI, and half a unit of its last printed place."""

    value: float
    half: float


@dataclass
class Report:
    """What reworking found, by the ids of lines; faults and cancellations say what and how much."""

    reworked: list[str] = field(default_factory=list)
    faults: list[str] = field(default_factory=list)
    cancelled: list[str] = field(default_factory=list)
    procedures: list[str] = field(default_factory=list)


@dataclass(frozen=True)
class _Printer:
    """How numbers are printed."""

    system: str
    digits: int

    def read(self, value: float, unit: str, shown: str | None) -> Reading:
        number, name, factor = units.shown_number(
            value, unit, system=self.system, shown=shown, digits=self.digits
        )
        offset = units.factor(name, "temperature")[2] if unit == "K" else 0.0
        printed = number * factor + offset
        if math.isclose(printed, value, rel_tol=1e-12, abs_tol=1e-15):
            return Reading(printed, 0.0)
        if unit == "USD":
            return Reading(printed, 0.005)
        if shown == "clock":
            return Reading(printed, 30.0)
        power = int(f"{number:.{self.digits - 1}e}".partition("e")[2])
        place = max(power - self.digits + 1, -FINEST_DEGREE if unit == "K" else -FINEST)
        return Reading(printed, 0.5 * 10.0**place * factor)

    def figure(self, one: Figure) -> Reading:
        return self.read(float(one), one.unit, one.shown)


def rework(sheet: Worksheet, *, system: str = "us", digits: int = DIGITS) -> Report:
    """Rework every line of a worksheet and its sections from what it prints."""
    report = Report()
    printer = _Printer(system, digits)
    for one in sheet.figures().values():
        _line(one, printer, report)
    return report


def _line(one: Figure, printer: _Printer, report: Report) -> None:
    result = printer.figure(one)
    match one.origin:
        case Worked(card, inputs) if card.procedure:
            report.procedures.append(one.id)
            again = float(card.function(**inputs))
            if again != float(one):
                report.faults.append(f"{one.id}: the procedure gives {again:g}, the sheet {float(one):g}")
        case Worked(card, inputs):
            _judge(
                one.id, card, {word: printer.figure(each) for word, each in inputs.items()}, result, report
            )
        case Summed(terms):
            _add_up(one.id, [printer.figure(term) for term in terms], result, report)
        case Scheduled(card, rows):
            products = []
            for label, row in rows.items():
                product = printer.read(float(card.function(**row)), one.unit, one.shown)
                products.append(product)
                _judge(
                    f"{one.id}: {label}",
                    card,
                    {word: printer.figure(each) for word, each in row.items()},
                    product,
                    report,
                )
            _add_up(one.id, products, result, report)
        case Solved(card, unknown, inputs):
            back = {word: printer.figure(each) for word, each in inputs.items()} | {unknown: result}
            _judge(one.id, card, back, Reading(0.0, 0.0), report)
        case Governing(rule, cases, chosen):
            best = (max if rule == "largest" else min)(float(case) for case in cases.values())
            if float(one) != best or float(cases[chosen]) != best:
                report.faults.append(f"{one.id}: {chosen} is not the {rule}")
            else:
                report.reworked.append(one.id)
        case _:
            report.reworked.append(one.id)


def _judge(id: str, card: Card, inputs: Mapping[str, Reading], result: Reading, report: Report) -> None:
    """Work an expression from printed numbers and hold it against the printed result."""
    work = _calculator(card)
    values = {word: one.value for word, one in inputs.items()}
    try:
        again = work(**values)
        band = sum(
            max(abs(work(**values | {word: one.value + side * one.half}) - again) for side in (-1, 1))
            for word, one in inputs.items() if one.half
        )  # fmt: skip
    except (ArithmeticError, ValueError, TypeError) as nothing:
        report.faults.append(f"{id}: cannot be reworked from what it prints ({nothing})")
        return
    # Second-order effects of rounding are a few millionths of the first: allow for them and for floats.
    explained = band * 1.001 + result.half + 1e-12 * max(abs(again), abs(result.value))
    off = abs(again - result.value)
    if off > explained:
        report.faults.append(
            f"{id}: printed {result.value:g}, reworked {again:g}; rounding explains {explained:.2g}"
        )
    elif band <= COARSEST * abs(result.value) or (result.value == 0 and _small(card, values, band)):
        report.reworked.append(id)
    elif _cancellation(card, values) >= CANCELS:
        report.cancelled.append(f"{id}: {result.value:g} is known to {band:.2g} from its printed inputs")
    else:
        report.faults.append(
            f"{id}: rounding explains {band / abs(result.value or 1):.1%} of the result: print more digits"
        )


def _small(card: Card, values: Mapping[str, float], band: float) -> bool:
    """Whether a band around nothing is small against the terms that cancel."""
    return band <= COARSEST * max(_terms(card, values), default=0.0)


def _add_up(id: str, terms: list[Reading], total: Reading, report: Report) -> None:
    again = math.fsum(term.value for term in terms)
    band = math.fsum(term.half for term in terms)
    largest = max((abs(term.value) for term in terms), default=0.0)
    if abs(again - total.value) > band + total.half + 1e-12 * largest:
        report.faults.append(f"{id}: the printed terms add up to {again:g}, not {total.value:g}")
    elif band <= COARSEST * abs(total.value) or band == 0:
        report.reworked.append(id)
    elif largest >= CANCELS * abs(total.value):
        report.cancelled.append(f"{id}: {total.value:g} is known to {band:.2g} from its printed terms")
    else:
        report.faults.append(f"{id}: rounding explains {band:.2g} of {total.value:g}: print more digits")


def _calculator(card: Card) -> Callable[..., float]:
    """Return the printed expression as a function of its words, made from the card and not the equation."""
    code = compile(ast.Expression(card.expression), card.name, "eval")
    names = card.function.__globals__

    def work(**values: float) -> float:
        found = eval(code, names, dict(values))
        if isinstance(found, complex) or not math.isfinite(found):
            raise ArithmeticError("no finite number")
        return float(found)

    return work


def _terms(card: Card, values: Mapping[str, float]) -> list[float]:
    """Return the sizes of every sum's and difference's operands within an expression."""
    return [abs(side) for pair in _sums(card, values) for side in pair]


def _cancellation(card: Card, values: Mapping[str, float]) -> float:
    """Return how many times larger than what is left the terms of a sum or difference are, at worst."""
    worst = 1.0
    for left, right in _sums(card, values):
        rest = min(abs(left + right), abs(left - right))
        worst = max(worst, max(abs(left), abs(right)) / rest if rest else math.inf)
    return worst


def _sums(card: Card, values: Mapping[str, float]) -> list[tuple[float, float]]:
    names = card.function.__globals__
    nodes = [node for node in ast.walk(card.expression) if isinstance(node, ast.BinOp)]
    return [
        (_value(node.left, names, values), _value(node.right, names, values))
        for node in nodes
        if isinstance(node.op, ast.Add | ast.Sub)
    ]


def _value(node: ast.expr, names: dict[str, object], values: Mapping[str, float]) -> float:
    return float(eval(compile(ast.Expression(node), "term", "eval"), names, dict(values)))
