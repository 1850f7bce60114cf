"""Where everything in a build file is written: each statement, key and value, to the character.

The reader of the standard library gives the values of a TOML text but not their places. This one
gives the places and leaves the values alone. It walks the text once, without recursion, and expects
valid TOML: on anything else it stops and returns what it has seen.
"""

from __future__ import annotations

import contextlib
import re
import tomllib
from dataclasses import dataclass, field
from typing import Literal

FieldPath = tuple[str | int, ...]

_SPACE = re.compile(r"[ \t]*+")
_BLANK = re.compile(r"[ \t\r\n]*+(?:#[^\n]*+[ \t\r\n]*+)*+")
_BLANK_OR_COMMA = re.compile(r"[ \t\r\n,]*+(?:#[^\n]*+[ \t\r\n,]*+)*+")
_QUOTED = r'"[^"\\\n]*+(?:\\.[^"\\\n]*+)*+"|' + r"'[^'\n]*+'"
_KEY = re.compile(rf"[A-Za-z0-9_-]++|{_QUOTED}")
_LONG_STRING = re.compile(
    r'"""(?:[^"\\]++|\\.|"{1,2}(?!"))*+"{3,5}|' + r"'''(?:[^']++|'{1,2}(?!'))*+'{3,5}", re.DOTALL
)
_STRING = re.compile(_QUOTED)
_PLAIN_VALUE = re.compile(r"[^,\]}#\r\n]++")

# Each path holds every step to it, so a text nested thousands deep would need far more memory than itself.
_DEEPEST = 200


@dataclass(slots=True)
class Statement:
    """One ``[table]`` heading, one ``[[element]]`` heading, or one ``key = value``.

    ``base`` is the table the statement stands in (for a heading, the table it opens), ``path`` what it
    writes. ``start`` and ``end`` are offsets in the text; ``end`` is -1 if the end was not found.
    """

    kind: Literal["table", "element", "key"]
    base: FieldPath
    path: FieldPath
    start: int
    end: int = -1


@dataclass(slots=True)
class Written:
    """The places of everything in one text; all offsets count characters from 0."""

    lines: dict[FieldPath, int] = field(default_factory=dict)
    """The line, from 1, of each key and array element."""
    statements: list[Statement] = field(default_factory=list)
    """In the order of the text."""
    values: dict[FieldPath, tuple[int, int]] = field(default_factory=dict)
    """Start and end of each value written after ``=`` or inside brackets."""
    entries: dict[FieldPath, int] = field(default_factory=dict)
    """Start of each entry inside ``{ }`` or ``[ ]``: of its key, or of the element."""
    counts: dict[FieldPath, int] = field(default_factory=dict)
    """How many elements each array of ``[[tables]]`` has."""
    whole: bool = False
    """Whether the text was read to its end."""


def written(text: str) -> Written:
    """Find the place of everything in ``text``. Never raises on text of any kind."""
    pen = _Pen(text)
    with contextlib.suppress(_UnreadableError):
        pen.follow()
    return pen.seen


class _UnreadableError(Exception):
    """The text is not TOML from here on."""


@dataclass(slots=True)
class _Bracket:
    path: FieldPath
    start: int
    close: str
    count: int = 0


class _Pen:
    """Moves along the text and notes what it passes."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 1 if text.startswith("\ufeff") else 0
        self.seen = Written()
        self._line = 1
        self._counted = 0

    def follow(self) -> None:
        """Read every statement to the end of the text."""
        base: FieldPath = ()
        while True:
            self._pass(_BLANK)
            if self.at >= len(self.text):
                self.seen.whole = True
                return
            if self.text[self.at] == "[":
                base = self._heading()
            else:
                self._key_and_value(base)

    def _heading(self) -> FieldPath:
        """Read ``[a.b]`` or ``[[a.b]]`` and return the table that the next keys belong to."""
        double = self.text.startswith("[[", self.at)
        this = Statement("element" if double else "table", (), (), self.at)
        self.seen.statements.append(this)
        line = self._line_at(self.at)
        self.at += 2 if double else 1
        self._pass(_SPACE)
        *outer, last = self._key()
        path: FieldPath = ()
        for part in outer:
            path += (part,)
            self._note(path, line)
            if path in self.seen.counts:
                path += (self.seen.counts[path] - 1,)
        path += (last,)
        if double:
            self._note(path, line)
            index = self.seen.counts.get(path, 0)
            self.seen.counts[path] = index + 1
            path += (index,)
        self._note(path, line, again=True)
        this.base = this.path = path
        self._expect("]]" if double else "]")
        this.end = self.at
        return path

    def _key_and_value(self, base: FieldPath) -> None:
        this = Statement("key", base, base, self.at)
        self.seen.statements.append(this)
        this.path = self._key_in(base)
        self._value(this.path)
        this.end = self.at

    def _value(self, path: FieldPath) -> None:
        """Read one value with everything inside it, the brackets still open kept in a list."""
        open_now: list[_Bracket] = []
        following: FieldPath | None = path
        while following is not None:
            start = self.at
            mark = self.text[start : start + 1]
            if mark in ("[", "{"):
                self.at += 1
                open_now.append(_Bracket(following, start, "]" if mark == "[" else "}"))
            else:
                self._plain_or_string(mark)
                self.seen.values[following] = (start, self.at)
            following = self._next_inside(open_now)

    def _next_inside(self, open_now: list[_Bracket]) -> FieldPath | None:
        """Close what ends here, and go on to the next entry of the innermost open bracket."""
        while open_now:
            inner = open_now[-1]
            self._pass(_BLANK_OR_COMMA)
            start = self.at
            if self.text.startswith(inner.close, start):
                self.at += 1
                self.seen.values[inner.path] = (inner.start, self.at)
                open_now.pop()
                continue
            if inner.close == "]":
                path = (*inner.path, inner.count)
                inner.count += 1
                self._note(path, self._line_at(start))
            else:
                path = self._key_in(inner.path)
            self.seen.entries[path] = start
            return path
        return None

    def _plain_or_string(self, mark: str) -> None:
        if mark not in ('"', "'", ""):
            found = _PLAIN_VALUE.match(self.text, self.at)
            length = len(found.group().rstrip(" \t")) if found else 0
        else:
            form = _LONG_STRING if self.text.startswith(mark * 3, self.at) else _STRING
            found = form.match(self.text, self.at)
            length = len(found.group()) if found else 0
        if not length:
            raise _UnreadableError
        self.at += length

    def _key_in(self, base: FieldPath) -> FieldPath:
        """Read ``a.b =`` inside the table ``base`` and note every part of it."""
        line = self._line_at(self.at)
        path = base
        for part in self._key():
            path += (part,)
            self._note(path, line)
        self._expect("=")
        self._pass(_SPACE)
        return path

    def _key(self) -> list[str]:
        parts: list[str] = []
        while True:
            found = _KEY.match(self.text, self.at)
            if not found:
                raise _UnreadableError
            parts.append(_unquoted(found.group()))
            self.at = found.end()
            self._pass(_SPACE)
            if not self.text.startswith(".", self.at):
                return parts
            self.at += 1
            self._pass(_SPACE)

    def _note(self, path: FieldPath, line: int, *, again: bool = False) -> None:
        if again:
            self.seen.lines[path] = line
        else:
            self.seen.lines.setdefault(path, line)
        if len(path) > _DEEPEST:
            raise _UnreadableError

    def _line_at(self, offset: int) -> int:
        """The line of an offset; offsets must come in the order of the text."""
        self._line += self.text.count("\n", self._counted, offset)
        self._counted = offset
        return self._line

    def _pass(self, blank: re.Pattern[str]) -> None:
        if found := blank.match(self.text, self.at):
            self.at = found.end()

    def _expect(self, mark: str) -> None:
        if not self.text.startswith(mark, self.at):
            raise _UnreadableError
        self.at += len(mark)


def _unquoted(key: str) -> str:
    if key[0] == "'" or (key[0] == '"' and "\\" not in key):
        return key[1:-1]
    if key[0] != '"':
        return key
    try:
        return str(tomllib.loads(f"k = {key}")["k"])
    except tomllib.TOMLDecodeError:
        raise _UnreadableError from None
