"""What to tell a builder about a text that is not TOML: in words, with the line as it should read."""

from __future__ import annotations

import re
import tomllib
import unicodedata
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from curbwright.build.lines import dotted, line_of
from curbwright.build.spelling import as_typed
from curbwright.build.written import FieldPath, Statement

_CURLY = re.compile("[\u2018\u2019\u201a\u201b\u201c\u201d\u201e\u201f\u00ab\u00bb\u2032\u2033]")
_KEY_AND_VALUE = re.compile(r"""((?:[^\s="'\[\]#:]|"[^"]*"|'[^']*')+)[ \t]*[=:][ \t]*(.*)""")
_REMARK_AFTER = re.compile(r"""((?:"[^"]*"|'[^']*'|[^"'#])*?)[ \t]*(?:#.*)?""")
_LONGEST_SHOWN = 40

STAND_IN = "heading-that-cannot-be-read-"
"""Begins the name put in place of a heading, so that what follows it can still be read."""


class Advice(NamedTuple):
    """What is wrong, what to try, and the line if it is not the one where reading stopped."""

    what: str
    try_this: str = ""
    line: int | None = None


@dataclass(frozen=True)
class Fault:
    """A place where reading stopped: ``says`` is the reader's message, ``begins`` the statement's line."""

    src: str
    says: str
    offset: int
    line: int
    begins: int
    statement: Statement | None
    lines_before: Mapping[FieldPath, int]

    @property
    def text(self) -> str:
        """The faulty statement's first line, without its remark."""
        start = self.statement.start if self.statement else self._line_start
        return _without_remark(self.src[start:].partition("\n")[0].strip())

    @property
    def rest(self) -> str:
        """What stands on the line from where reading stopped."""
        rest, line_end, _ = self.src[self.offset :].partition("\n")
        return rest.removesuffix("\r") if line_end else rest

    @property
    def key(self) -> str:
        """The key of the statement as typed, or nothing."""
        found = _KEY_AND_VALUE.fullmatch(self.text)
        return found[1] if found else ""

    @property
    def value(self) -> str:
        """The value of the statement as typed on its first line, or nothing."""
        found = _KEY_AND_VALUE.fullmatch(self.text)
        return found[2] if found else ""

    @property
    def path(self) -> FieldPath:
        """The field at fault, as far as it is known."""
        path = self.statement.path if self.statement else ()
        if self.statement and self.statement.kind == "element":
            path = path[:-1]
        return path[1:] if path and str(path[0]).startswith(STAND_IN) else path

    @property
    def is_twice(self) -> bool:
        """Whether the statement is readable but says again what is already said."""
        return self.says.startswith(("Cannot", "Duplicate"))

    @property
    def _line_start(self) -> int:
        return self.src.rfind("\n", 0, self.offset) + 1


def advice(fault: Fault) -> Advice:
    """Find the words for a fault."""
    if hidden := _hidden_mark(fault.rest[:1]):
        return Advice(f"{hidden} stands here", "Delete it, and type a plain space if one is needed.")
    for begins, words in _WORDS:
        if fault.says.startswith(begins):
            return words(fault)
    return Advice(f"this cannot be read: {fault.says}", "Compare the line with one that works.")


def _hidden_mark(mark: str) -> str:
    if mark in ("", "\n", "\t", " ") or (mark.isprintable() and not mark.isspace()):
        return ""
    if mark == "\r":
        return "a line end of an old kind (carriage return alone)"
    name = unicodedata.name(mark, "").lower()
    return f"an invisible character ({name})" if name else f"a control character (U+{ord(mark):04X})"


def _value(fault: Fault) -> Advice:
    key, value = fault.key, fault.value
    if fault.statement and fault.statement.kind != "key":
        return Advice("a heading stands alone on its line", "Move the rest to the next line.")
    if value.startswith(("[", "{")):
        return _inside_brackets(fault)
    if not value:
        return Advice(
            "has no value after the =", 'Write one, in quotes if it has a unit ("62 lb"), or delete the line.'
        )
    if re.match(r"\S+\s+[\w.-]+\s*=", value):
        return Advice("two keys stand on one line", "Give each key its own line.")
    if value.startswith("="):
        return Advice("there are two = signs", f"Try {key} = {as_typed(value[1:])}")
    if value[-1] in ";," and _is_readable(value[:-1]):
        return Advice(f"a line does not end with {value[-1]}", f"Try {key} = {value[:-1]}")
    correct = f"Try {key} = {as_typed(value)}"
    if _CURLY.search(value[:1] + value[-1:]):
        return Advice("has curly quotes, which do not count as quotes here", correct)
    if value[0] in "\"'":
        return Advice("a quote mark ends the text too early", correct)
    if re.fullmatch(r"(?i)true|yes|on|false|no|off", value):
        return Advice(f"{value} is not a word known here (true or false is)", correct)
    if re.fullmatch(r"[+-]?[\d,.]+", value):
        return Advice(f"{_short(value)} is not a number written plainly", correct)
    return Advice(f"{_short(value)} is not in quotes", correct)


def _inside_brackets(fault: Fault) -> Advice:
    start = max(fault.src.rfind(mark, 0, fault.offset) for mark in "[{,=\n") + 1
    found = re.compile(r"[^,\]}\n#]*").match(fault.src, start)
    entry = found.group().strip() if found else ""
    if entry and not re.search(r"""["'=\[{]""", entry) and not all(map(_is_readable, entry.split())):
        return Advice(f"{_short(entry)} is not in quotes", f"Try {as_typed(entry)}")
    return _unclosed(fault)


def _unclosed(fault: Fault) -> Advice:
    if _CURLY.search(fault.rest[:1]):
        return Advice("curly quotes do not count as quotes here", 'Type straight ones: "')
    open_mark, close_mark = (
        ("{", "}") if "inline" in fault.says or fault.value.startswith("{") else ("[", "]")
    )
    return Advice(
        f"the {open_mark} is not closed by a {close_mark}, or a comma is missing between two entries",
        f"Put a comma between entries and a {close_mark} at the end",
        fault.begins,
    )


def _no_equals(fault: Fault) -> Advice:
    line = fault.text
    if line.startswith("- "):
        return Advice("a list is not written with dashes", 'Try key = ["first", "second"]')
    if fault.statement and "{" in fault.src[fault.statement.start : fault.offset]:
        return Advice("an entry inside { } has no =", "Write each entry as key = value, with commas between")
    if colon := re.fullmatch(r"([\w.-]+)\s*:\s*(.+)", line):
        return Advice("has a : where the = belongs", f"Try {colon[1]} = {as_typed(colon[2])}")
    if spaced := re.fullmatch(r"([\w-]+(?: +[\w-]+)+) *=\s*(.*)", line):
        joined = re.sub(" +", "_", spaced[1])
        if joined.isascii():
            return Advice("a key has no spaces in it", f"Try {joined} = {as_typed(spaced[2])}")
    if not line.isascii() and "=" in line and not _CURLY.search(line):
        name, _, value = line.partition("=")
        quoted_name = f'"{name.strip()}"'
        return Advice(
            "a key has only plain letters, digits, - and _", f"Try {quoted_name} = {as_typed(value)}"
        )
    if "=" not in line:
        return Advice(
            f"{_short(line)} has no = and no value",
            "Begin the line with # if it is a remark; else give it a value.",
        )
    return Advice("has no = after the key", 'Write the line as key = "value".')


def _statement(fault: Fault) -> Advice:
    line = fault.text
    if line.startswith("="):
        return Advice("there is no key before the =", "Write the line as key = value")
    if line.startswith(("//", ";", "--", "/*", "*", "%", "!")):
        return Advice("this is neither a key nor a heading", "Begin a remark with #")
    if _CURLY.match(line):
        return Advice("curly quotes do not count as quotes here", 'Type straight ones: "')
    if line[:1].isalpha():
        return _no_equals(fault)
    return Advice(f"{_short(line)} is neither a field nor a heading", "Write key = value, or [heading]")


def _no_key(fault: Fault) -> Advice:
    mark = fault.rest[:1]
    if fault.statement and fault.statement.kind != "key":
        return Advice("the name in the heading is not complete", "Write it as in [items.griddle]")
    if fault.value.startswith(("{", "[")) and mark == "}":
        return Advice("a comma stands before the }", "Delete that comma")
    if fault.value.startswith(("{", "[")) and mark in ("", "#"):
        return Advice(
            "what is inside { } must all stand on one line", "Put it on one line, or use a [heading]"
        )
    return Advice(f"a key cannot begin with {_short(mark or 'nothing')}", "Use letters, digits, - and _")


def _quote(fault: Fault) -> Advice:
    for mark in ('"""', "'''"):
        if mark in fault.src[fault.statement.start if fault.statement else 0 : fault.offset]:
            return Advice(
                f"the {mark} that opens here is never closed", f"Put {mark} at its end", fault.begins
            )
    if fault.value and fault.value[0] in "\"'":
        return Advice("the quote is not closed on its line", f"Try {fault.key} = {as_typed(fault.value)}")
    return Advice("a quote is not closed on its line", "Put the closing quote where the text ends")


def _backslash(fault: Fault) -> Advice:
    return Advice(
        'a \\ has a meaning of its own inside "..."',
        "Write it twice (\\\\), use a /, or put the text in '...'",
    )


def _heading(fault: Fault) -> Advice:
    line = fault.text
    name = re.sub(r"\s+", "_", line.strip("[] \t"))
    double = line.startswith("[[")
    if not re.fullmatch(r"[\w.-]+", name, re.ASCII):
        return Advice("the heading is not closed or has a mark in it that needs quotes", 'Try ["the name"]')
    return Advice(
        "the heading is not closed, or has a space in it", f"Try [[{name}]]" if double else f"Try [{name}]"
    )


def _twice(fault: Fault) -> Advice:
    statement = fault.statement
    if statement is None:
        return Advice("this is written twice", "Delete one of the two")
    inside = re.search(r"inline table key '(.*)'", fault.says)
    if inside:
        return Advice(f"{inside[1]} is written twice inside the {{ }}", "Delete one of the two")
    path = fault.path if statement.kind == "element" else statement.path
    if (first := fault.lines_before.get(path)) is not None:
        again = "Delete one of the two, or give it another name"
        return Advice(f"is already written on line {first}", again, fault.begins)
    first = line_of(fault.lines_before, path)
    around = next((path[:n] for n in range(len(path), 0, -1) if path[:n] in fault.lines_before), path[:1])
    return Advice(
        f"nothing can be added to {dotted(around)} here: it is complete on line {first}",
        "Write it there, or put everything of it under one [heading]",
        fault.begins,
    )


def _is_readable(value: str) -> bool:
    try:
        tomllib.loads(f"k = {value}")
    except ValueError:
        return False
    return True


def _without_remark(line: str) -> str:
    found = _REMARK_AFTER.fullmatch(line)
    return found[1].strip() if found else line


def _short(text: str) -> str:
    return text if len(text) <= _LONGEST_SHOWN else text[: _LONGEST_SHOWN - 3] + "..."


_WORDS: tuple[tuple[str, Callable[[Fault], Advice]], ...] = (
    ("Expected newline", _value),
    ("Invalid value", _value),
    ("Invalid date", _value),
    ("Expected '='", _no_equals),
    ("Invalid statement", _statement),
    ("Invalid initial character", _no_key),
    ("Unclosed", _inside_brackets),
    ("Illegal character", _quote),
    ("Found invalid character", _quote),
    ("Unterminated string", _quote),
    ('Expected "', _quote),
    ("Unescaped", _backslash),
    ("Invalid hex", _backslash),
    ("Escaped character", _backslash),
    ("Expected ']", _heading),
    ("Cannot", _twice),
    ("Duplicate", _twice),
)
