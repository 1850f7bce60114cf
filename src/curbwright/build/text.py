"""From a file to plain tables, with a list of problems instead of an exception from below."""

from __future__ import annotations

import os
import stat
import tomllib
from difflib import get_close_matches
from pathlib import Path
from typing import Any

from curbwright.build.lines import dotted, line_of
from curbwright.build.problems import Problem
from curbwright.build.syntax import syntax_problems
from curbwright.build.written import FieldPath, Written, written
from curbwright.errors import BuildFileProblem

MOST_BYTES = 1024 * 1024
"""The largest build file that is read; a long one written by hand has some tens of thousands."""

DEEPEST = 12
"""The most keys and list positions from the top of the file to a value."""

_MOST_LINES_TOLD = 20
_LARGEST = 2**63  # TOML promises whole numbers of 64 bits with a sign, and no longer ones


def read_text(path: str | os.PathLike[str]) -> str:
    """The text of a build file, its line ends as they are, without a byte-order mark.

    Raises BuildFileProblem if it is missing, not a file, larger than 1 MiB, or not UTF-8 text.
    """
    name = _shown(path)
    try:
        data = _bytes(Path(path), name)
    except FileNotFoundError:
        raise _problem(f"there is no file {name}", _nearest_file(Path(path))) from None
    except PermissionError:
        raise _problem(f"{name} may not be read", "Check who is allowed to open it.") from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise _problem(f"{name} cannot be opened: {reason}") from None
    return _decoded(data, name)


def parse(text: str) -> dict[str, Any]:
    """The tables of a build file's text; raises BuildFileProblem with everything that is unreadable.

    >>> parse('[items.griddle]\\nmass = "62 lb"')
    {'items': {'griddle': {'mass': '62 lb'}}}
    """
    text = text.removeprefix("\ufeff")
    _refuse(_unfit_characters(text))
    seen = written(text)
    _refuse(_too_deep(seen))
    try:
        data = tomllib.loads(text)
    except tomllib.TOMLDecodeError:
        raise BuildFileProblem(syntax_problems(text)) from None
    except RecursionError:
        raise _problem("brackets are nested too deep to be read", f"{DEEPEST} levels are enough.") from None
    except (ValueError, OverflowError):
        raise BuildFileProblem(_endless_numbers(text)) from None
    _refuse(_too_long_numbers(data, seen))
    return data


def _bytes(path: Path, name: str) -> bytes:
    kind = path.stat()
    if stat.S_ISDIR(kind.st_mode):
        inside = sorted(path.glob("*.toml"))
        raise _problem(f"{name} is a folder", f"Name the file: {inside[0]}" if inside else "Name a file.")
    if not stat.S_ISREG(kind.st_mode):
        raise _problem(f"{name} is not an ordinary file", "Save the text as a file and name that.")
    with path.open("rb") as file:
        data = file.read(MOST_BYTES + 1)
    if len(data) > MOST_BYTES:
        raise _problem(f"{name} is larger than 1 MiB", "Check that it is a build file.")
    return data


def _decoded(data: bytes, name: str) -> str:
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise _problem(f"{name} is saved as UTF-16", "Save it as UTF-8 in the editor.")
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise BuildFileProblem(_wrong_bytes(data)) from None
    _refuse(_unfit_characters(text))
    return text


def _wrong_bytes(data: bytes) -> tuple[Problem, ...]:
    """One problem for each line that is not UTF-8; no character of UTF-8 spans two lines."""
    problems: list[Problem] = []
    start = 0
    for number, line in enumerate(data.split(b"\n"), start=1):
        try:
            line.decode("utf-8")
        except UnicodeDecodeError as error:
            byte = line[error.start]
            what = f"byte {start + error.start + 1} of the file (0x{byte:02X}) is not UTF-8 text"
            problems.append(Problem(number, "", what, try_this=_save_again(byte)))
        start += len(line) + 1
    more = len(problems) - _MOST_LINES_TOLD
    if more > 0:
        problems[_MOST_LINES_TOLD:] = [Problem(None, "", f"{more} more lines are not UTF-8 text")]
    return tuple(problems)


def _save_again(byte: int) -> str:
    meant = bytes([byte]).decode("cp1252", errors="replace")
    seems = f', where the mark "{meant}" will be kept' if meant.isprintable() and meant != "\ufffd" else ""
    return f"Save the file as UTF-8 in the editor{seems}."


def _unfit_characters(text: str) -> list[Problem]:
    if len(text) > MOST_BYTES:
        return [Problem(None, "", "the text is longer than 1 MiB", try_this="Check that it is a build file.")]
    if "\0" in text:
        line = text.count("\n", 0, text.index("\0")) + 1
        what = f"a NUL character stands here (the text has {text.count(chr(0))})"
        return [Problem(line, "", what, try_this="Save the file as UTF-8 in the editor, or delete them.")]
    try:
        text.encode("utf-8")
    except UnicodeEncodeError as error:
        line = text.count("\n", 0, error.start) + 1
        return [Problem(line, "", "there is half a character here", try_this="Delete it and type it again.")]
    return []


def _too_deep(seen: Written) -> list[Problem]:
    deep = [(line, path) for path, line in seen.lines.items() if len(path) > DEEPEST]
    if not deep:
        return []
    line, path = min(deep, key=lambda one: one[0])
    what = f"is nested more than {DEEPEST} levels deep"
    return [Problem(line, dotted(path[:DEEPEST]), what, try_this="Bring it nearer to the top of the file.")]


def _endless_numbers(text: str) -> tuple[Problem, ...]:
    """Numbers of so many digits that Python refuses to read them."""
    lines: list[int | None] = [
        number for number, line in enumerate(text.split("\n"), 1) if _most_digits(line) > 4000
    ]
    what = "there is a number of thousands of digits here"
    return tuple(Problem(line, "", what, try_this="Write a shorter number.") for line in lines or [None])


def _most_digits(line: str) -> int:
    digits = "".join(mark if mark.isdigit() or mark == "_" else " " for mark in line)
    return max((len(run) for run in digits.split()), default=0)


def _too_long_numbers(data: dict[str, Any], seen: Written) -> list[Problem]:
    problems: list[Problem] = []
    waiting: list[tuple[FieldPath, Any]] = [((), data)]
    while waiting:
        path, value = waiting.pop()
        if isinstance(value, dict):
            waiting += [((*path, key), inner) for key, inner in value.items()]
        elif isinstance(value, list):
            waiting += [((*path, index), inner) for index, inner in enumerate(value)]
        elif isinstance(value, int) and not -_LARGEST <= value < _LARGEST:
            what = "is a number too long to be meant"
            problems.append(
                Problem(line_of(seen.lines, path), dotted(path), what, try_this="Write a shorter one.")
            )
    return problems


def _nearest_file(path: Path) -> str:
    try:
        stems = [one.stem for one in path.parent.iterdir() if one.suffix == path.suffix]
    except (OSError, ValueError):
        return "Check the folder's name."
    near = get_close_matches(path.stem, stems, n=1)
    return f'Did you mean "{near[0]}{path.suffix}"?' if near else "Check the name and the folder."


def _shown(path: str | os.PathLike[str]) -> str:
    return os.fspath(path).encode("utf-8", "backslashreplace").decode("utf-8")


def _problem(what: str, try_this: str = "") -> BuildFileProblem:
    return BuildFileProblem((Problem(None, "", what, try_this=try_this),))


def _refuse(problems: list[Problem]) -> None:
    if problems:
        raise BuildFileProblem(tuple(sorted(problems, key=lambda one: one.line or 0)))
