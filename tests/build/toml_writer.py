"""Writes nested data as TOML in every style the language allows, and knows the line of each thing it wrote.

Only for tests. It shares nothing with the reader under test: it counts the lines of what it puts down.
"""

from __future__ import annotations

import re
from datetime import date, datetime, time, timedelta, timezone
from random import Random
from typing import Any

from hypothesis import strategies as st

Path = tuple[str | int, ...]

REMARKS = ["", " 62 lb", ' "', " '''", " [x]", " a = 1", " ]", " é°", '"""', " }, {"]
ESCAPES = {"\\": "\\\\", '"': '\\"', "\n": "\\n", "\t": "\\t", "\r": "\\r", "\x7f": "\\u007F"}

keys = st.one_of(
    st.sampled_from(["a", "b", "mass", "items", "griddle", "1", "2x4", "front-wall"]),
    st.text(alphabet="ab.\"'\\ #=[]\n\té", max_size=4),
)
strings = st.text(alphabet="ab \"'\\#=[]{},.\n\té°", max_size=12)
moments = st.datetimes(min_value=datetime(1, 1, 2), max_value=datetime(9999, 12, 30))
zones = st.one_of(
    st.none(), st.integers(-23 * 60, 23 * 60).map(lambda minutes: timezone(timedelta(minutes=minutes)))
)
scalars = st.one_of(
    st.integers(-(2**63), 2**63 - 1),
    st.booleans(),
    st.floats(allow_nan=False),
    strings,
    st.dates(),
    st.times().map(lambda moment: moment.replace(fold=0)),
    st.builds(lambda moment, zone: moment.replace(tzinfo=zone, fold=0), moments, zones),
)
values = st.recursive(
    scalars,
    lambda inner: st.one_of(
        st.lists(inner, max_size=4),
        st.dictionaries(keys, inner, max_size=4),
        st.lists(st.dictionaries(keys, inner, max_size=3), min_size=1, max_size=3),
    ),
    max_leaves=18,
)
tables = st.dictionaries(keys, values, max_size=5)
styles = st.integers(0, 2**32 - 1).map(Random)


def write(data: dict[str, Any], style: Random) -> tuple[str, dict[Path, int]]:
    """The text, and the line of every key and array element in it."""
    pen = _Pen(style)
    pen.section((), data, heading=None)
    if style.random() < 0.3:
        pen.put("# the end" if style.random() < 0.5 else "")
    elif pen.text.endswith(pen.end) and style.random() < 0.2:
        pen.text = pen.text[: -len(pen.end)]
    return pen.text, pen.lines


class _Pen:
    def __init__(self, style: Random) -> None:
        self.style = style
        self.end = "\r\n" if style.random() < 0.3 else "\n"
        self.text = ""
        self.line = 1
        self.lines: dict[Path, int] = {}

    def put(self, text: str) -> None:
        self.text += text
        self.line += text.count("\n")

    def note(self, path: Path) -> None:
        self.lines.setdefault(path, self.line)

    def space(self) -> str:
        return self.style.choice(["", " ", " ", "  ", "\t"])

    def filler(self) -> None:
        while self.style.random() < 0.3:
            remark = "#" + self.style.choice(REMARKS) if self.style.random() < 0.6 else ""
            self.put(self.space() + remark + self.end)

    def end_line(self) -> None:
        remark = "#" + self.style.choice(REMARKS) if self.style.random() < 0.3 else ""
        self.put(self.space() + remark + self.end)

    # --- keys

    def key(self, key: str) -> str:
        forms = ['"' + "".join(ESCAPES.get(mark, mark) for mark in key) + '"']
        if re.fullmatch(r"[A-Za-z0-9_-]+", key):
            forms += [key] * 5
        if not re.search(r"['\n\r\x7f]", key):
            forms.append(f"'{key}'")
        return self.style.choice(forms)

    def dotted(self, base: Path, keys: tuple[str, ...], *, note: bool = True) -> None:
        for place, key in enumerate(keys):
            if place:
                self.put(self.space() + "." + self.space())
            if note:
                self.note((*base, *keys[: place + 1]))
            self.put(self.key(key))

    # --- sections

    def section(self, path: Path, table: dict[str, Any], *, heading: str | None) -> None:
        """``heading`` is None for the root, else "[" or "[["."""
        body: list[tuple[tuple[str, ...], Any]] = []
        below: list[tuple[str, Any]] = []
        for key, value in table.items():
            if (isinstance(value, dict) or _all_tables(value)) and self.style.random() < 0.65:
                below.append((key, value))
            elif isinstance(value, dict) and value and self.style.random() < 0.6:
                body += [((key, *inner), leaf) for inner, leaf in self.flat(value)]
            else:
                body.append(((key,), value))
        self.style.shuffle(body)
        self.style.shuffle(below)
        late = heading == "[" and bool(below) and self.style.random() < 0.3
        silent = heading == "[" and bool(below) and not body and self.style.random() < 0.5
        if not late and not silent:
            self.heading(path, heading)
        if not late:
            self.body(path, body)
        for key, value in below:
            self.below((*path, key), value)
        if late and not silent:
            self.heading(path, heading)
            self.body(path, body)

    def below(self, path: Path, value: Any) -> None:
        if isinstance(value, dict):
            self.section(path, value, heading="[")
            return
        for index, element in enumerate(value):
            self.section((*path, index), element, heading="[[")

    def heading(self, path: Path, heading: str | None) -> None:
        if heading is None:
            return
        self.filler()
        self.put(self.space() + heading + self.space())
        for length in range(1, len(path) + 1):
            self.note(path[:length])
        self.lines[path] = self.line
        self.dotted((), tuple(part for part in path if isinstance(part, str)), note=False)
        self.put(self.space() + heading.replace("[", "]"))
        self.end_line()

    def flat(self, table: dict[str, Any]) -> list[tuple[tuple[str, ...], Any]]:
        found: list[tuple[tuple[str, ...], Any]] = []
        for key, value in table.items():
            if isinstance(value, dict) and value and self.style.random() < 0.7:
                found += [((key, *inner), leaf) for inner, leaf in self.flat(value)]
            else:
                found.append(((key,), value))
        return found

    def body(self, path: Path, body: list[tuple[tuple[str, ...], Any]]) -> None:
        for keys, value in body:
            self.filler()
            self.put(self.space())
            self.pair(path, keys, value)
            self.end_line()

    def pair(self, base: Path, keys: tuple[str, ...], value: Any) -> None:
        self.dotted(base, keys)
        self.put(self.space() + "=" + self.space())
        self.value((*base, *keys), value)

    # --- values

    def value(self, path: Path, value: Any) -> None:
        if isinstance(value, dict):
            self.braces(path, value)
        elif isinstance(value, list):
            self.brackets(path, value)
        elif isinstance(value, str):
            self.put(self.string(value))
        else:
            self.put(self.scalar(value))

    def braces(self, path: Path, table: dict[str, Any]) -> None:
        plain = [((key,), value) for key, value in table.items()]
        body = self.flat(table) if self.style.random() < 0.5 else plain
        self.put("{" + self.space())
        for place, (keys, value) in enumerate(body):
            if place:
                self.put(self.space() + "," + self.space())
            self.pair(path, keys, value)
        self.put(self.space() + "}")

    def brackets(self, path: Path, items: list[Any]) -> None:
        spread = self.style.random() < 0.4
        self.put("[")
        for index, item in enumerate(items):
            self.gap(spread)
            self.note((*path, index))
            self.value((*path, index), item)
            self.gap(spread and self.style.random() < 0.2)
            if index < len(items) - 1 or self.style.random() < 0.3:
                self.put(",")
        self.gap(spread)
        self.put("]")

    def gap(self, spread: bool) -> None:
        if spread:
            self.end_line()
            self.filler()
        self.put(self.space())

    def scalar(self, value: Any) -> str:
        if isinstance(value, bool):
            return "true" if value else "false"
        if isinstance(value, int):
            return self.style.choice([str(value), f"{value:_}", f"{value:+d}"] + [hex(value)] * (value >= 0))
        if isinstance(value, float):
            return repr(value)
        if isinstance(value, datetime):
            return value.isoformat(sep=self.style.choice("T ")).ljust(19, "0")
        assert isinstance(value, date | time)
        return value.isoformat()

    def string(self, value: str) -> str:
        raw = value.replace("\n", self.end)
        escaped = "".join(ESCAPES.get(mark, mark) for mark in value)
        spread = escaped.replace("\\n", self.end)
        forms = [f'"{escaped}"', f'"""{escaped}"""', f'"""{self.end}{spread}"""']
        if re.fullmatch(r"[ab]+", value):
            forms.append(f'"""\\{self.end}   {self.end} {value}"""')
        if "\\" not in value and '"""' not in value:
            forms.append(f'"""{self.end}{raw}"""')
        if not re.search(r"['\n]", value):
            forms.append(f"'{value}'")
        if "'''" not in value:
            forms.append(f"'''{self.end}{raw}'''")
        return self.style.choice(forms)


def _all_tables(value: Any) -> bool:
    return isinstance(value, list) and bool(value) and all(isinstance(item, dict) for item in value)
