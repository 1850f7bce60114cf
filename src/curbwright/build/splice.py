"""Puts a value into a build file's text, or takes one out, leaving every other character alone.

The paths given here are known to fit the text: ``edit.py`` checks them, and checks the outcome too.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from curbwright.build.spelling import spelled, spelled_key
from curbwright.build.written import FieldPath, Statement, Written, written
from curbwright.errors import EditProblem

_REMARKS = re.compile(r"(?:[ \t]*#[^\n]*(?:\n|\Z))+")
_BLANK_LINES = re.compile(r"(?:[ \t\r]*\n)+")
_TO_COMMA = re.compile(r"[ \t\r\n]*+(?:#[^\n]*+[ \t\r\n]*+)*+,")
_ONLY_REMARK = re.compile(r"[ \t]*(?:#[^\n]*)?\r?(?:\n|\Z)")
_LONGEST_INLINE = 72

ONLY_TABLES = "a list of tables written with [[ ]] takes only tables"


def replace(text: str, path: FieldPath, value: object) -> str:
    """Write another value in the place of one that stands after = or inside brackets."""
    start, end = written(text).values[path]
    return text[:start] + _with_ends(spelled(value), text) + text[end:]


def insert(text: str, path: FieldPath, value: object) -> str:
    """Write a value that is not there yet, with any tables missing around it."""
    return _Inserting(text).at(path, value)


def delete(text: str, path: FieldPath) -> str:
    """Take out everything of a path: its lines, or its part of a line.

    Remarks above it stay; remarks after it on its lines, and between the lines of a table, go with it.
    """
    seen = written(text)
    holder = _holder(seen, path)
    if holder is not None:
        is_list = text[seen.values[holder][0]] == "["
        for entry in reversed([one for one in seen.entries if _within(one, path)]):
            if _holder(seen, entry) == holder:
                text = _without_entry(text, seen.entries[entry], seen.values[entry][1], is_list)
        return text
    for first, last in reversed(_runs(seen.statements, path)):
        start, end = _line_start(text, first.start), _line_end(text, last.end)
        if first.kind != "key":
            start, end = _with_gap(text, start, end)
        text = text[:start] + text[end:]
    return text


def _holder(seen: Written, path: FieldPath) -> FieldPath | None:
    """The innermost { } or [ ] around a path."""
    return next((path[:n] for n in range(len(path) - 1, 0, -1) if path[:n] in seen.values), None)


def _within(path: FieldPath, around: FieldPath) -> bool:
    return path[: len(around)] == around


def _nested(keys: FieldPath, value: object) -> object:
    for key in reversed(keys):
        value = {key: value}
    return value


def _line_start(text: str, offset: int) -> int:
    return text.rfind("\n", 0, offset) + 1


def _line_end(text: str, offset: int) -> int:
    """The offset after the line's end."""
    return text.find("\n", offset) + 1 or len(text)


def _end_mark(text: str) -> str:
    first = text.find("\n")
    return "\r\n" if first > 0 and text[first - 1] == "\r" else "\n"


def _with_ends(lines: str, text: str) -> str:
    return lines.replace("\n", _end_mark(text))


def _indent(text: str, offset: int) -> str:
    start = _line_start(text, offset)
    margin = text[start:offset]
    return margin if not margin.strip(" \t") else ""


def _runs(statements: list[Statement], path: FieldPath) -> list[tuple[Statement, Statement]]:
    """First and last statement of each stretch to take out: a table in one piece, keys one by one."""
    runs: list[tuple[Statement, Statement]] = []
    heading: Statement | None = None
    for one in statements:
        if not _within(one.path, path):
            heading = None
        elif heading is not None:
            runs[-1] = (heading, one)
        else:
            heading = one if one.kind != "key" else None
            runs.append((one, one))
    return runs


def _with_gap(text: str, start: int, end: int) -> tuple[int, int]:
    """Widen a stretch of lines by the blank lines that would else stand double, or last."""
    above = text[:start]
    blank_above = not above or _is_blank(text[_line_start(text, max(start - 1, 0)) : start])
    below = _BLANK_LINES.match(text, end)
    if below and blank_above:
        return start, below.end()
    if end == len(text) and above:
        return len(above.rstrip()) + len(_line_rest(text, len(above.rstrip()))), end
    return start, end


def _line_rest(text: str, offset: int) -> str:
    return text[offset : _line_end(text, offset)]


def _is_blank(line: str) -> bool:
    return not line.strip()


def _without_entry(text: str, start: int, end: int, is_list: bool) -> str:
    comma = _TO_COMMA.match(text, end)
    stop = comma.end() if comma else end
    line = _line_start(text, start)
    alone = is_list and _is_blank(text[line:start]) and (rest := _ONLY_REMARK.match(text, stop)) is not None
    if alone and line > 0:
        assert rest is not None
        return text[:line] + text[rest.end() :]
    before = text[:start].rstrip(" \t")
    if comma:
        after = text[stop:].lstrip(" \t")
        return (before if after.startswith("]") and before.endswith(",") else text[:start]) + after
    return before[:-1] + text[end:] if before.endswith(",") else text[:start] + text[end:]


class _Inserting:
    def __init__(self, text: str) -> None:
        self.text = text
        self.seen = written(text)
        self.end = _end_mark(text)

    def at(self, path: FieldPath, value: object) -> str:
        holder = _holder(self.seen, path)
        if holder is not None:
            return self._in_brackets(holder, path[len(holder) :], value)
        length = next(n for n in range(len(path) - 1, -1, -1) if n == 0 or path[:n] in self.seen.lines)
        known, rest = path[:length], path[length:]
        inside = [one for one in self.seen.statements if _within(one.path, known)]
        if known in self.seen.counts:
            return self._element(known, _nested(rest[1:], value), inside[-1])
        by_dots = [one for one in inside if len(one.base) < len(known) < len(one.path) and one.kind == "key"]
        if known and by_dots:
            last = by_dots[-1]
            return self._key_line((*known[len(last.base) :], *rest), value, last)
        if len(rest) > 1 or isinstance(value, Mapping):
            heading, body = (path, value) if isinstance(value, Mapping) else (path[:-1], {path[-1]: value})
            return self._block(f"[{_name(heading)}]", heading, body, inside[-1] if inside else None)
        return self._in_section(known, rest, value, inside)

    def _in_section(self, known: FieldPath, rest: FieldPath, value: object, inside: list[Statement]) -> str:
        """A key that belongs right under a heading, or above all headings."""
        keys = [one for one in inside if one.kind == "key" and one.base == known]
        headings = [one for one in inside if one.kind != "key" and one.path == known]
        if keys or headings:
            return self._key_line(rest, value, keys[-1] if keys else headings[0])
        line = self._line(rest, value) + self.end
        if not inside:
            return self._put(len(self.text), line)
        start = _line_start(self.text, inside[0].start)
        if known:
            line = f"[{_name(known)}]{self.end}" + line
        else:
            start = self._above_remarks(start)
        return self._put(start, line + self.end)

    def _above_remarks(self, start: int) -> int:
        """Where the remarks right above a heading begin, unless they are the head of the file."""
        above = start
        while above > 0 and self.text[_line_start(self.text, above - 1) : above].lstrip().startswith("#"):
            above = _line_start(self.text, above - 1)
        return above if above > 0 else start

    def _line(self, keys: FieldPath, value: object) -> str:
        return f"{spelled_key(*keys)} = {spelled(value)}".replace("\n", self.end)

    def _key_line(self, keys: FieldPath, value: object, after: Statement) -> str:
        line = _indent(self.text, after.start) + self._line(keys, value)
        return self._put(_line_end(self.text, after.end), line + self.end)

    def _put(self, offset: int, lines: str) -> str:
        before = self.text[:offset]
        if before and not before.endswith("\n"):
            before += self.end
        return before + lines + self.text[offset:]

    def _element(self, known: FieldPath, value: object, last: Statement) -> str:
        if not isinstance(value, Mapping):
            raise EditProblem(ONLY_TABLES)
        return self._block(f"[[{_name(known)}]]", known, value, last)

    def _block(
        self, heading: str, path: FieldPath, body: Mapping[Any, object], last: Statement | None
    ) -> str:
        """A heading with its keys, a blank line above and below, after the last related statement."""
        lines = self.end.join(_block_lines(heading, path, body, self.end)) + self.end
        offset = len(self.text)
        if last is not None and last is not self.seen.statements[-1]:
            offset = _line_end(self.text, last.end)
            remarks = _REMARKS.match(self.text, offset)
            if remarks and _is_blank(_line_rest(self.text, remarks.end())):
                offset = remarks.end()
        above, below = self.text[:offset], self.text[offset:]
        last_line = above[_line_start(above, max(len(above.rstrip("\r\n")), 0)) :] if above else ""
        ends_blank = not above or _is_blank(last_line) or above.endswith(self.end * 2)
        gap = "" if ends_blank else self.end
        return self._put(
            offset, gap + lines + (self.end if below and not _is_blank(_line_rest(below, 0)) else "")
        )

    def _in_brackets(self, holder: FieldPath, rest: FieldPath, value: object) -> str:
        start, end = self.seen.values[holder]
        is_list = self.text[start] == "["
        entry = spelled(_nested(rest[1:], value)) if is_list else self._line(rest, value)
        entry = entry.replace("\r\n", "\n").replace("\n", self.end)
        entries = [one for one in self.seen.entries if len(one) > len(holder) and _within(one, holder)]
        if not entries:
            line_end = self.text.find("\n", start, end) + 1
            if is_list and line_end:
                return self.text[:line_end] + f"    {entry}{self.end}" + self.text[line_end:]
            return self.text[:start] + (f"[{entry}]" if is_list else f"{{ {entry} }}") + self.text[end:]
        last = max(entries, key=lambda one: self.seen.values[one][1])
        return self._after_entry(self.seen.entries[last], self.seen.values[last][1], end - 1, entry)

    def _after_entry(self, start: int, stop: int, close: int, entry: str) -> str:
        comma = _TO_COMMA.match(self.text, stop)
        behind = comma.end() if comma else stop
        head = self.text[:behind] + ("" if comma else ",")
        line_end = self.text.find("\n", behind, close) + 1
        if not line_end:
            return head + f" {entry}" + self.text[behind:]
        line = (_indent(self.text, start) or "    ") + entry + ("," if comma else "") + self.end
        return head + self.text[behind:line_end] + line + self.text[line_end:]


def _name(path: FieldPath) -> str:
    return spelled_key(*(part for part in path if not isinstance(part, int)))


def _block_lines(heading: str, path: FieldPath, body: Mapping[Any, object], end: str) -> list[str]:
    """A heading, its values, then the tables below it that are too large for one line."""
    lines, below = [heading], list[str]()
    for key, value in body.items():
        line = f"{spelled_key(key)} = {spelled(value)}"
        if isinstance(value, Mapping) and len(line) > _LONGEST_INLINE:
            inner = (*path, key)
            below += ["", *_block_lines(f"[{_name(inner)}]", inner, value, end)]
        else:
            lines.append(line.replace("\n", end))
    return lines + below
