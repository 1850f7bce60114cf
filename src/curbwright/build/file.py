"""Reads a build file: text → checked, frozen Build, or one report of everything that is wrong."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from pydantic import ValidationError

from curbwright.build import contradictions
from curbwright.build.cart import Build, assign_paths
from curbwright.build.lines import line_map, line_of
from curbwright.build.problems import Problem
from curbwright.build.syntax import readable_rest
from curbwright.build.syntax_advice import STAND_IN
from curbwright.build.text import parse, read_text
from curbwright.build.typical import fill
from curbwright.build.wording import MISSING, NO_ITEM, problem, without_echoes
from curbwright.errors import BuildFileProblem


def read(path: str | Path) -> Build:
    """Read and check a build file.

    Raises BuildFileProblem with every problem at once.
    """
    build = load_text(read_text(Path(path)))
    build._folder = Path(path).absolute().parent
    return build


def load_text(text: str) -> Build:
    """Check the text of a build file.

    Raises BuildFileProblem with every problem at once.
    """
    try:
        data = parse(text)
    except BuildFileProblem as unreadable:
        more = _in_the_rest(text, unreadable.problems)
        raise BuildFileProblem(tuple(sorted((*unreadable.problems, *more), key=_place))) from None
    where = line_map(text)
    full, filled, problems = fill(data)
    problems += contradictions.in_writing(data)
    try:
        build = Build.model_validate(full)
    except ValidationError as invalid:
        problems += without_echoes([problem(error) for error in invalid.errors(include_url=False)])
        raise _report(problems, where) from None
    assign_paths(build)
    parts = {part.path: part for part in build.all_parts()} if filled else {}
    for path, fields in filled.items():
        parts[path]._filled.update(fields)
    problems += contradictions.in_numbers(build)
    if problems:
        raise _report(problems, where)
    return build


def _in_the_rest(text: str, told: tuple[Problem, ...]) -> list[Problem]:
    """What is wrong with the statements that can be read, beside those that cannot.

    What may only seem wrong because a statement beside it was left out is not told: what is missing, a thing
    that does not exist, anything in a section with a faulty statement.
    """
    rest = readable_rest(text)
    if rest is None or rest == text:
        return []
    try:
        load_text(rest)
    except BuildFileProblem as also:
        faulty = {tuple(one.path.split(".")[:2]) for one in told}
        return [
            one for one in also.problems
            if not one.what.startswith((MISSING, NO_ITEM)) and not one.path.startswith(STAND_IN)
            and tuple(one.path.split(".")[:2]) not in faulty
        ]  # fmt: skip
    return []


def _place(problem: Problem) -> tuple[int, str]:
    return problem.line or 0, problem.path


def _report(problems: list[Problem], where: Mapping[tuple[str | int, ...], int]) -> BuildFileProblem:
    placed = [
        Problem(
            line_of(where, tuple(one.path.split("."))) if one.line is None and one.path else one.line,
            one.path, one.what, one.allowed, one.try_this, one.severity,
        )
        for one in dict.fromkeys(problems)
    ]  # fmt: skip
    return BuildFileProblem(tuple(sorted(placed, key=_place)))
