"""The page of the build file: every field of every section, told by its own declaration."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Literal, get_args, get_origin

from annotated_types import Ge, Le
from pydantic.fields import FieldInfo

from curbwright import sources
from curbwright.build.cart import Build
from curbwright.build.part import Part, Reads, ReadsRows
from curbwright.units import KINDS, Measure

INTRODUCTION = """\
A build file is TOML: sections in square brackets, one `field = value` a line, remarks after `#`. Start from
an example with `curbwright new my-cart`. Every problem in a file is reported at once, with its line.

**Quantities are text with their unit**, the way you would say them: `"5 ft 6 in"`, `"1 1/2 in"`, `"62 lb"`,
`"15,000 BTU/h"`. A bare number where a unit is due is a problem, never a guess. [The units](#units) stand
below, and every form that is read is told in [quantities](../units.md).

**Where things stand.** *Back* is from the front edge of the deck to the front edge of the thing; negative is
ahead of the deck, on the drawbar. *Curb side* is the right-hand side seen from behind, *street side* the
left. *Above* is from the top of the deck to the bottom of the thing. What `kind` an item may be is listed in
[kinds of thing](kinds.md).

**Left out.** Where a typical value or a convention stands in, it is named, and a sheet that uses a typical
value says so. A dash means that nothing stands in: what needs the field says "cannot tell". In an item, what
`like` names in the catalogue fills in size, mass and ratings first. What you write always wins.
"""
HOW = {
    "": "", "convention": "by convention", "read": "read", "computed": "computed",
    "memory": "from memory: look it up", "practice": "common practice",
}  # fmt: skip
COLUMNS = ("field", "how to write it", "what it says", "left out", "how that is known", "source")
Section = tuple[str, type[Part], bool]
"""Path, class, and whether a build file must have it."""


def page() -> str:
    """Return the page of the build file."""
    every = list(sections())
    text = f"# The build file\n\n{INTRODUCTION}\n## Sections\n\n{head('section', 'what it holds', 'needed')}"
    for path, part, needed in every:
        text += row(f"[`[{path}]`](#{_anchor(path)})", _about(part)[0], "yes" if needed else "")
    for path, part, _ in every:
        text += f"\n## `[{path}]`\n\n" + "".join(f"{line}\n\n" for line in _about(part)) + head(*COLUMNS)
        text += "".join(_row(part, field) for field in part.model_fields if not below(part, field))
    return f"{text}\n{_units(every)}"


def head(*columns: str) -> str:
    """Return the two first lines of a table."""
    return f"| {' | '.join(columns)} |\n{'|---' * len(columns)}|\n"


def row(*cells: str) -> str:
    """Return one line of a table."""
    return "| " + " | ".join(cell.replace("|", "\\|").replace("\n", " ") for cell in cells) + " |\n"


def sections(part: type[Part] = Build, path: str = "", needed: bool = True) -> Iterator[Section]:
    """Yield every section in the order of the build file, each followed by those below it."""
    if path:
        yield path, part, needed
    for field, info in part.model_fields.items():
        inner = below(part, field)
        if inner is not None:
            named = ".NAME" if _is_table(info.annotation) else ""
            at = f"{path}.{field}" if path else field
            yield from sections(inner, at + named, info.is_required())


def below(part: type[Part], field: str) -> type[Part] | None:
    """Return the class of the section that a field holds, or of each of its named sections."""
    types = [part.model_fields[field].annotation]
    while types:
        one = types.pop()
        if isinstance(one, type) and issubclass(one, Part):
            return one
        types.extend(get_args(one))
    return None


def _is_table(annotation: Any) -> bool:
    return get_origin(annotation) is dict or any(_is_table(one) for one in get_args(annotation))


def _is_list(annotation: Any) -> bool:
    return get_origin(annotation) is list or any(_is_list(one) for one in get_args(annotation))


def _about(part: type[Part]) -> list[str]:
    """The paragraphs of a section's docstring, without its own path."""
    first, *more = (" ".join(text.split()) for text in (part.__doc__ or "").split("\n\n"))
    first = first.partition("`: ")[2] or "as its fields say."
    return [first[0].upper() + first[1:], *more]


def _row(part: type[Part], field: str) -> str:
    info, extra = part.model_fields[field], part.declared(field)
    says, _, otherwise = str(extra["says"]).partition("; left out: ")
    if extra.get("note"):
        says += f" ({extra['note']})"
    source = sources.look_up(str(extra["source"])).cited if extra["source"] else ""
    known = HOW[str(extra["how"])]
    return row(f"`{field}`", _written(part, field), says, otherwise or _left_out(info), known, source)


def _left_out(info: FieldInfo) -> str:
    if info.is_required():
        return "**needed**"
    return "—" if info.default is None else _as_toml(info.default)


def _as_toml(value: Any) -> str:
    if isinstance(value, list):
        return ", ".join(map(_as_toml, value)) or "none"
    if isinstance(value, bool):
        return f"`{str(value).lower()}`"
    if isinstance(value, Measure):
        return f'`"{value.text}"`'
    return f"`{value}`" if isinstance(value, int) else f'`"{value}"`'


def _written(part: type[Part], field: str) -> str:
    """How a field is written: the kind of quantity with an example and its band, or the choices."""
    info = part.model_fields[field]
    kind = part.kind_of(field)
    if kind:
        if part.declared(field)["shown"]:
            return f"{KINDS[kind].says}, in {part.declared(field)['shown']}{_band(info)}"
        example = info.default if isinstance(info.default, str) else KINDS[kind].example
        return f'{KINDS[kind].says}: `"{example}"`{_band(info)}'
    rows = next((mark for mark in _marks(info) if isinstance(mark, ReadsRows)), None)
    if rows is not None:
        return f"a list of up to {rows.most} rows: `[{rows.example}, ...]`"
    choices = list(_choices(info.annotation))
    if choices:
        listed = ", ".join(f'`"{word}"`' for word in choices)
        return f"a list of {listed}" if get_origin(info.annotation) is list else listed
    plain = {one for one in (info.annotation, *_marks(info)) if one in (bool, int)}
    if bool in plain:
        return "`true` or `false`"
    if int in plain:
        return f"a whole number{_band(info)}"
    return "a list of words in quotes" if _is_list(info.annotation) else "words in quotes"


def _band(info: FieldInfo) -> str:
    least: Any = None
    most: Any = None
    for mark in _marks(info):
        if isinstance(mark, Reads):
            least, most = (None if one is None else one.text for one in (mark.least, mark.most))
        least = mark.ge if isinstance(mark, Ge) else least
        most = mark.le if isinstance(mark, Le) else most
    if least is None:
        return "" if most is None else f", up to {most}"
    return f", from {least}" if most is None else f", from {least} to {most}"


def _marks(mark: Any) -> Iterator[Any]:
    """Yield every annotation of a field, however deep pydantic and the typing module have put it."""
    yield mark
    for inner in (*getattr(mark, "metadata", ()), *getattr(mark, "__metadata__", ()), *get_args(mark)):
        yield from _marks(inner)
    if isinstance(mark, FieldInfo) and mark.annotation is not None:
        yield from _marks(mark.annotation)


def _choices(annotation: Any) -> Iterator[str]:
    if get_origin(annotation) is Literal:
        yield from (str(word) for word in get_args(annotation))
    else:
        for inner in get_args(annotation):
            yield from _choices(inner)


def _units(every: list[Section]) -> str:
    used = {part.kind_of(field) for _, part, _ in every for field in part.model_fields} - {""}
    text = "## Units\n\nThe commonest units of each kind of quantity; many more are read.\n\n"
    text += head("kind of quantity", "units", "example")
    for name, kind in KINDS.items():
        if name in used:
            text += row(kind.says, kind.choices, f'`"{kind.example}"`')
    return text


def _anchor(path: str) -> str:
    """The anchor a heading gets: lower case, without brackets, dots and ticks."""
    return path.lower().replace(".", "")
