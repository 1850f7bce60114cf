"""Filing a plain function as an equation: what prints is what ran.

The decorator returns the function itself, unchanged, and files a card that says what a sheet needs in order
to print it: the expression (read from the body), the units (read from the annotations), the source.
"""

from __future__ import annotations

import ast
import inspect
import textwrap
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from typing import Any, TypeVar, get_type_hints

from curbwright.errors import NotAnEquation

PRINTED = (
    ast.BinOp, ast.UnaryOp, ast.Add, ast.Sub, ast.Mult, ast.Div, ast.Pow, ast.USub, ast.Name, ast.Constant,
    ast.Load,
)  # fmt: skip
"""What an expression may be made of besides calls."""

F = TypeVar("F", bound=Callable[..., Any])

ALLOWED_CALLS = frozenset(
    {
        "minimum",
        "maximum",
        "exp",
        "log",
        "log10",
        "sqrt",
        "sin",
        "cos",
        "tan",
        "arctan",
        "arcsin",
        "abs",
        "tanh",
    }
)
CONSTANTS = {"pi": "π"}
"""Names an expression may use that are not its arguments, and how they print."""


@dataclass(frozen=True, eq=False)
class Card:
    """What a sheet needs to print about one equation or procedure.

    ``source`` is a key of data/sources.csv, a place in it after a colon. ``uncited`` says that no published
    worked case is at hand. ``empirical`` says that its constants hold only in the declared units.
    ``procedure`` says that the body is more than one expression and prints as a sentence instead.
    """

    function: Callable[..., Any]
    source: str
    uncited: bool = False
    empirical: bool = False
    procedure: bool = False

    def __reduce__(self) -> tuple[Any, ...]:
        return card_of, (self.function,)

    @property
    def name(self) -> str:
        """The function's name."""
        return self.function.__name__

    @property
    def trade(self) -> str:
        """The module of equations/ that the function lives in, or the folder where a trade has one."""
        return self.function.__module__.removeprefix("curbwright.equations.").partition(".")[0]

    @property
    def says(self) -> str:
        """The first sentence of the docstring."""
        return (inspect.getdoc(self.function) or "").split("\n\n")[0].replace("\n", " ")

    @cached_property
    def units(self) -> dict[str, str]:
        """Argument name to unit; the result stands under ``return``."""
        hints = get_type_hints(self.function, include_extras=True)
        units = {name: getattr(hint, "__metadata__", ("",))[0] for name, hint in hints.items()}
        missing = [
            name for name in (*inspect.signature(self.function).parameters, "return") if not units.get(name)
        ]
        if missing:
            raise NotAnEquation(f"{self.name}: no unit on {', '.join(missing)}")
        return units

    @cached_property
    def expression(self) -> ast.expr:
        """The one returned expression, read from the body."""
        return _only_expression(self.function)


EQUATIONS: dict[Callable[..., Any], Card] = {}
"""Every equation and procedure, filed once at import; tests walk it."""


def equation(source: str, *, uncited: bool = False, empirical: bool = False) -> Callable[[F], F]:
    """File a function whose body is one return expression; the function is returned unchanged."""

    def file(function: F) -> F:
        EQUATIONS[function] = Card(function, source, uncited=uncited, empirical=empirical)
        return function

    return file


def procedure(source: str, *, uncited: bool = False, empirical: bool = False) -> Callable[[F], F]:
    """File a function that no single expression can say, such as the least damped root of a matrix.

    It prints as the first sentence of its docstring with its inputs, so that sentence must say the method.
    """

    def file(function: F) -> F:
        EQUATIONS[function] = Card(function, source, uncited=uncited, empirical=empirical, procedure=True)
        return function

    return file


def card_of(function: Callable[..., Any]) -> Card:
    """Return the card of a filed function.

    Raises NotAnEquation for a function that was never filed.
    """
    try:
        return EQUATIONS[function]
    except KeyError:
        raise NotAnEquation(
            f"{getattr(function, '__name__', function)} is not filed as an equation"
        ) from None


def _only_expression(function: Callable[..., Any]) -> ast.expr:
    """Return the single return expression of a function, or say why there is none."""
    definition = ast.parse(textwrap.dedent(inspect.getsource(function))).body[0]
    name = function.__name__
    if not isinstance(definition, ast.FunctionDef):
        raise NotAnEquation(f"{name}: not a plain function")
    steps = definition.body[1:] if ast.get_docstring(definition) is not None else definition.body
    if len(steps) != 1 or not isinstance(steps[0], ast.Return) or steps[0].value is None:
        raise NotAnEquation(f"{name}: an equation is one return expression")
    arguments = frozenset(inspect.signature(function).parameters) | frozenset(CONSTANTS)
    calls = [node.func for node in ast.walk(steps[0].value) if isinstance(node, ast.Call)]
    for node in ast.walk(steps[0].value):
        _refuse(node, name)
        if isinstance(node, ast.Name) and node.id not in arguments and node not in calls:
            raise NotAnEquation(f"{name}: {node.id} is neither an argument nor a constant that prints")
    return steps[0].value


def _refuse(node: ast.AST, name: str) -> None:
    """Raise for anything in an expression that could not be printed as arithmetic."""
    if isinstance(node, ast.IfExp | ast.BoolOp | ast.Compare):
        raise NotAnEquation(f"{name}: make the choice in the sheet, not in the equation")
    if isinstance(node, ast.Call):
        called = node.func
        if not isinstance(called, ast.Name) or called.id not in ALLOWED_CALLS or node.keywords:
            raise NotAnEquation(f"{name}: {ast.unparse(called)} has no printed form")
    elif not isinstance(node, PRINTED):
        raise NotAnEquation(f"{name}: {type(node).__name__} has no printed form")
