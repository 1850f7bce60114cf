"""Working a published case: its steps, then its answers, each compared with what was published."""

from __future__ import annotations

import importlib
import math
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass
from functools import cache
from typing import Any

from curbwright import data, units
from curbwright.errors import CurbwrightError, UnitProblem
from curbwright.figures import Card, Figure, card_of
from tests.published.cases import Case, CaseError

EXACT = 1e-9
"""What a stated tolerance of nothing is compared to: a float's worth of rounding."""


@dataclass(frozen=True)
class Number:
    """A value in SI and the spelling of its unit."""

    value: float
    unit: str


@dataclass(frozen=True)
class Verdict:
    """What became of one expected value: ``agreed``, ``differs``, ``fault`` or ``not answered``."""

    case: Case
    name: str
    word: str
    says: str


def work(case: Case) -> list[Verdict]:
    """Work one case; an answer that cannot be found is a fault that says why."""
    try:
        bench = _Bench(case)
    except (CaseError, CurbwrightError, ArithmeticError) as fault:
        return [Verdict(case, name, "fault", one_line(fault)) for name in case.expected]
    return [_verdict(case, name, bench) for name in case.expected]


def _verdict(case: Case, name: str, bench: _Bench) -> Verdict:
    way = case.answers[name]
    if isinstance(way, dict) and "not_answered" in way:
        return Verdict(case, name, "not answered", str(way["not_answered"]))
    try:
        answer = bench.answer(way)
        printed = case.expected[name]
        if isinstance(printed["value"], bool):
            agrees = answer.unit == "bool" and bool(answer.value) is printed["value"]
            return Verdict(case, name, "agreed" if agrees else "differs", f"{bool(answer.value)}")
        wanted, scale = in_unit(printed, answer.unit)
    except (CaseError, CurbwrightError, ArithmeticError) as fault:
        return Verdict(case, name, "fault", one_line(fault))
    off = abs(answer.value - wanted)
    rel_tol, abs_tol = printed.get("rel_tol", case.rel_tol), printed.get("abs_tol", case.abs_tol)
    allowed = max(rel_tol * abs(wanted), abs_tol * scale, EXACT * abs(wanted))
    here = f"{answer.value / scale:.6g} {printed['unit']} for {printed['value']:g}"
    return Verdict(
        case, name, "agreed" if off <= allowed else "differs", f"{here}, off {_share(off, wanted)}"
    )


def one_line(fault: Exception) -> str:
    """Return what a fault says on one line; a build file's problems come on several."""
    return "; ".join(str(fault).splitlines())


def _share(off: float, wanted: float) -> str:
    return f"{off / abs(wanted):.2g}" if wanted else f"{off:.2g} from zero"


class _Bench:
    """The inputs and the finished steps of one case."""

    def __init__(self, case: Case) -> None:
        self.case = case
        self.steps: dict[str, Number] = {}
        for step in case.steps:
            self.steps[step["name"]] = self.answer(step)

    def answer(self, way: Any) -> Number:
        """Return the number that an answer or a step asks for."""
        if isinstance(way, str):
            return self._named(way, None)
        if "step" in way:
            return self._named(way["step"], None)
        if "equation" in way:
            return self._equation(way["equation"], way.get("with", {}))
        if "schedule" in way:
            return self._schedule(way)
        if "sum" in way:
            terms = [self.number(term, way["unit"]) for each in way["sum"] for term in self._cells(each)]
            return Number(math.fsum(term.value for term in terms), way["unit"])
        if "quotient" in way:
            above, below = (self.number(each, way["unit"]) for each in way["quotient"])
            return Number(above.value / below.value, "1")
        if "at_least" in way:
            one, limit = (self.number(each, way["unit"]) for each in way["at_least"])
            return Number(float(one.value >= limit.value), "bool")
        if "table" in way:
            return self._table(way)
        if "figure" in way:
            return figure(self.case, way["build"], way["figure"])
        raise CaseError(f"no way to answer {way}")

    def number(self, operand: Any, unit: str | None) -> Number:
        """Return an operand in an SI unit: the name of an input or a step, or a number with its unit."""
        if isinstance(operand, str):
            return self._named(operand, unit)
        if isinstance(operand, dict) and {"value", "unit"} <= set(operand):
            return Number(in_unit(operand, unit)[0], unit or si_unit(operand))
        if isinstance(operand, dict) and {"equation", "table"} & set(operand):
            found = self.answer(operand)
            if unit is not None and found.unit != unit:
                raise CaseError(f"{operand} is in {found.unit}, not {unit}")
            return found
        raise CaseError(f"{operand!r} is not an input, a step or a number with its unit")

    def _named(self, name: str, unit: str | None) -> Number:
        if name in self.steps:
            found = self.steps[name]
            if unit is not None and found.unit != unit:
                raise CaseError(f"step {name} is in {found.unit}, not {unit}")
            return found
        if name not in self.case.inputs:
            raise CaseError(f"{name} is neither an input nor an earlier step")
        given = self.case.inputs[name]
        return Number(in_unit(given, unit)[0], unit or si_unit(given))

    def _equation(self, name: str, wiring: Mapping[str, Any]) -> Number:
        card = equation_called(name)
        _same_arguments(card, wiring)
        arguments = {word: self.number(operand, card.units[word]).value for word, operand in wiring.items()}
        result = card.function(**arguments)
        if isinstance(result, complex):
            raise CaseError(f"{card.name} gives no real number")
        return Number(float(result), card.units["return"])

    def _schedule(self, way: Mapping[str, Any]) -> Number:
        """Sum one equation over the rows of a tabular input; a column's name wires that column."""
        card = equation_called(way["schedule"])
        _same_arguments(card, way["with"])
        terms = [
            self._equation(
                way["schedule"], {word: _wired(operand, row) for word, operand in way["with"].items()}
            )
            for row in self._rows(way["over"])
        ]
        return Number(math.fsum(term.value for term in terms), card.units["return"])

    def _rows(self, name: str) -> list[dict[str, Any]]:
        """Return the rows of a tabular input, each cell with its column's unit."""
        table = self.case.inputs.get(name)
        if not isinstance(table, dict) or "rows" not in table:
            raise CaseError(f"{name} is not an input with rows")
        columns: dict[str, str] = table["columns"]
        for label, cells in table["rows"].items():
            if len(cells) != len(columns):
                raise CaseError(f"row {label} has {len(cells)} cells for {len(columns)} columns")
        return [
            {
                column: {"value": cell, "unit": unit}
                for (column, unit), cell in zip(columns.items(), cells, strict=True)
            }
            for cells in table["rows"].values()
        ]

    def _cells(self, operand: Any) -> list[Any]:
        """Return the cells of a column named as input.column; anything else stands for itself."""
        table, dot, column = operand.partition(".") if isinstance(operand, str) else ("", "", "")
        if not dot:
            return [operand]
        rows = self._rows(table)
        if column not in rows[0]:
            raise CaseError(f"{table} has no column {column}")
        return [row[column] for row in rows]

    def _table(self, way: Mapping[str, Any]) -> Number:
        row = self._row(way)
        if way["column"] not in row:
            raise CaseError(f"{way['table']} has no column {way['column']}")
        text = row[way["column"]]
        found = units.read(text, way["kind"])
        unit = unit_of(way["kind"])
        return Number(float(found), unit)

    def _row(self, way: Mapping[str, Any]) -> Mapping[str, str]:
        """Return the one row with the wanted cells, or the first whose ``up_to`` cell is not passed."""
        rows = [
            one
            for one in data.table(way["table"])
            if all(one.get(key) == cell for key, cell in way.get("row", {}).items())
        ]
        for column, rule in way.get("up_to", {}).items():
            unit = unit_of(rule["kind"])
            asked = self.number(rule["of"], unit).value
            rows = [one for one in rows if float(units.read(one[column], rule["kind"])) >= asked][:1]
        if len(rows) != 1:
            raise CaseError(f"{way['table']} has {len(rows)} rows for {way.get('row') or way.get('up_to')}")
        return rows[0]


def _wired(operand: Any, row: Mapping[str, Any]) -> Any:
    """Return an operand with the names of columns replaced by a row's cells, inside nested equations too."""
    if isinstance(operand, str):
        return row.get(operand, operand)
    if isinstance(operand, dict) and "with" in operand:
        return operand | {"with": {word: _wired(each, row) for word, each in operand["with"].items()}}
    return operand


def _same_arguments(card: Card, wiring: Mapping[str, Any]) -> None:
    takes = set(card.units) - {"return"}
    if missing := sorted(takes - set(wiring)):
        raise CaseError(f"{card.name} also takes {', '.join(missing)}")
    if unknown := sorted(set(wiring) - takes):
        raise CaseError(f"{card.name} does not take {', '.join(unknown)}")


@cache
def equation_called(name: str) -> Card:
    """Return the card of an equation named as trade.function."""
    trade, _, function = name.partition(".")
    try:
        module = importlib.import_module(f"curbwright.equations.{trade}")
    except ImportError:
        raise CaseError(f"there is no trade {trade} among the equations") from None
    found: Callable[..., Any] | None = getattr(module, function, None)
    if found is None:
        raise CaseError(f"{trade} has no equation {function}")
    return card_of(found)


def unit_of(kind: str) -> str:
    """Return the SI unit of a kind of quantity."""
    if kind not in units.KINDS:
        raise CaseError(f"{kind} is not a kind of quantity")
    return units.KINDS[kind].unit


def si_unit(given: Mapping[str, Any]) -> str:
    """Return the SI unit of an input that says no more than its own."""
    return units.factor(given["unit"])[0]


def in_unit(given: Mapping[str, Any], unit: str | None) -> tuple[float, float]:
    """Return a given number in an SI unit, and what one of its own unit is in it.

    The unit wanted says whether pounds are a mass or a force.
    """
    if isinstance(given.get("value"), bool) or not isinstance(given.get("value"), int | float):
        raise CaseError(f"{given.get('value')!r} is not a number")
    kinds = [name for name, kind in units.KINDS.items() if kind.unit == unit] or [None]
    for kind in kinds:
        with suppress(UnitProblem):
            si, factor, offset = units.factor(given["unit"], kind)
            if unit in (None, si):
                return float(given["value"]) * factor + offset, factor
    raise CaseError(f"{given['unit']} is not a unit of {unit or 'anything'}")


def figure(case: Case, build: str, id: str) -> Number:
    """Return a figure of a build file, given as a file beside the case or as TOML text."""
    try:
        figures = _figures(build if "\n" in build else (case.folder / build).read_text(encoding="utf-8"))
    except OSError as error:
        raise CaseError(f"{build} cannot be opened: {error.strerror}") from None
    if id not in figures:
        raise CaseError(f"the build has no figure {id}")
    return Number(float(figures[id]), figures[id].unit)


@cache
def _figures(text: str) -> dict[str, Figure]:
    import curbwright

    return dict(curbwright.work(curbwright.read_text(text)).figures)
