"""The exceptions curbwright raises, and nothing else.

CurbwrightError
├── UnitProblem            a text that is not a quantity of the kind asked for
├── BuildFileProblem       everything that is wrong with one build file
├── EditProblem            a change to a build file that cannot be made
├── UnknownName            a catalogue item, source or figure that does not exist
└── SheetError             a mistake of the programmer, not of the builder
    ├── UntracedNumber     a bare number was put on a sheet
    ├── WrongUnit          a figure in another unit than the equation declares
    └── NotAnEquation      a function that cannot be filed as an equation
MissingInput (control flow inside sheets): a field the builder has not filled in
"""

from __future__ import annotations

from typing import Any


class CurbwrightError(Exception):
    """The root of every error that curbwright raises on purpose."""


class UnitProblem(CurbwrightError):
    """A text that is not a quantity of the kind asked for.

    ``what`` says what is wrong in a builder's words, ``try_this`` what to write instead.
    """

    def __init__(self, what: str, try_this: str = "") -> None:
        super().__init__(f"{what}. {try_this}".rstrip(". ") + ".")
        self.what = what
        self.try_this = try_this

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self), (self.what, self.try_this)


class BuildFileProblem(CurbwrightError):
    """Everything that is wrong with one build file, together.

    ``problems`` holds ``curbwright.build.problems.Problem`` objects in the order of their lines.
    """

    def __init__(self, problems: tuple[Any, ...]) -> None:
        super().__init__("\n".join(str(problem) for problem in problems))
        self.problems = problems


class EditProblem(CurbwrightError):
    """A change to a build file that cannot be made."""


class UnknownName(CurbwrightError):
    """A name that is not on the list it was looked up in."""


class SheetError(CurbwrightError):
    """A calculation sheet was written wrongly: the programmer's mistake."""


class UntracedNumber(SheetError, TypeError):
    """A bare number was put on a sheet."""


class WrongUnit(SheetError, TypeError):
    """A figure is in another unit than the equation declares."""


class NotAnEquation(SheetError, TypeError):
    """A function that cannot be filed as an equation."""


class MissingInput(CurbwrightError):
    """A field that a calculation needs and the build file leaves out; the sheet records it as a gap."""

    def __init__(self, path: str, says: str) -> None:
        super().__init__(f"{path}: {says}")
        self.path = path
        self.says = says
