"""Findings for the screen: each requirement once, with every case that it fails or passes in."""

from __future__ import annotations

import re
from collections.abc import Iterator
from textwrap import wrap

from curbwright.figures import Figure, Worked, Worksheet, roots
from curbwright.figures.printing import DIGITS
from curbwright.requirements import Finding, Requirement
from curbwright.sheets import Worksheets
from curbwright.units import show, shown_number

WIDTH = 100
MOST_CASES = 6
"""How many cases of one requirement are listed: the worst."""
LONG = 2.54
"""Metres: longer things print in feet and inches, shorter ones in inches, as they are built."""
CLOSE = 1e-9
MARKS = {"fail": "FAIL", "cannot tell": "  ? ", "pass": "  ok"}
INDENT = " " * 6
ASKS = {">=": "at least", "<=": "at most", "==": "exactly"}
KNOWN = {"memory": "recalled, not read: look it up", "practice": "common practice"}

Line = tuple[str, str]


class Verdicts:
    """Prints findings in the units of one cart."""

    def __init__(self, sheets: Worksheets) -> None:
        self.system = sheets.build.cart.units
        self.titles = {part.id: part.title for part in _sections(sheets)}

    def full(self, findings: list[Finding], style: str) -> Iterator[Line]:
        """Yield each requirement with its cases, why it is asked, who asks it, and where the working is."""
        for held in by_requirement(findings):
            row = held[0].requirement
            yield from self._headed(held[0], style)
            if held[0].verdict == "cannot tell":
                yield from self._unsettled(held)
                continue
            yield from self._cases(held)
            yield from _told(row.why, INDENT)
            yield from _told(f"{_authority(row)}Working: show {_figure_id(held[0])}", INDENT)

    def brief(self, findings: list[Finding], most: int, style: str) -> Iterator[Line]:
        """Yield each requirement with its tightest case only, the tightest requirements first."""
        for held in by_requirement(findings)[:most]:
            yield from self._headed(held[0], style)
            yield from self._cases(held[:1])

    def _headed(self, finding: Finding, style: str) -> Iterator[Line]:
        mark = MARKS[finding.verdict]
        lines = wrap(f"{mark.strip()} {finding.requirement.says}", WIDTH - 4, subsequent_indent="  ")
        first = lines[0].removeprefix(mark.strip()).strip()
        yield f"{mark}  {first}", style
        yield from ((f"{INDENT}{line.strip()}", style) for line in lines[1:])

    def _cases(self, held: list[Finding]) -> Iterator[Line]:
        """The worst cases in columns; a name too long for its column stands on a line of its own."""
        listed = held[:MOST_CASES]
        names = self._names(listed)
        numbers = [self._numbers(finding) for finding in listed]
        values = max(len(value) for value, _ in numbers)
        room = WIDTH - len(INDENT) - values - 4 - max(len(rest) for _, rest in numbers)
        column = max((len(name) for name in names if len(name) <= room), default=2)
        for name, (value, rest) in zip(names, numbers, strict=True):
            if len(name) > room:
                yield from _told(name, INDENT, "plain")
                name = ""
            yield from _told(f"{name:<{column}}  {value:>{values}}  {rest}", INDENT, "plain")
        if len(held) > len(listed):
            yield f"{INDENT}and {len(held) - len(listed)} more", "plain"

    def _names(self, held: list[Finding]) -> list[str]:
        """What was held: the figure's name, and the case or thing where the name does not say it."""
        pairs = [self._name(finding) for finding in held]
        if len(pairs) > 1 and len({name for name, _ in pairs}) == 1 and all(title for _, title in pairs):
            return [title for _, title in pairs]
        return [f"{name}, {title}" if title else name for name, title in pairs]

    def _name(self, finding: Finding) -> tuple[str, str]:
        assert finding.provided is not None  # noqa: S101 - a verdict has both sides
        name = _sides(finding)[0].name
        if finding.id == finding.requirement.id:
            return name, ""
        title = self.titles.get(finding.provided.id.rpartition(".")[0], "")
        return name, "" if _says(name, title) else title

    def _numbers(self, finding: Finding) -> tuple[str, str]:
        """The value, then what is asked and the difference, all in one unit."""
        value, comparator, asked = _sides(finding)
        unit = self._unit(value, asked)
        rest = f"({ASKS[comparator]} {self._shown(asked, unit)})  {self._difference(finding, unit)}"
        return self._shown(value, unit), rest.rstrip()

    def _difference(self, finding: Finding, unit: str | None) -> str:
        value, comparator, asked = _sides(finding)
        if comparator == "==" and finding.verdict == "pass":
            return ""
        word = (
            "to spare"
            if finding.verdict == "pass"
            else {">=": "short", "<=": "over", "==": "off"}[comparator]
        )
        off = abs(float(value) - float(asked))
        if off <= CLOSE * abs(float(asked)):
            return f"nothing {word}"
        kind, kept = ("delta_degC", None) if value.unit == "K" else (value.unit, unit)
        text = show(off, kind, system=self.system, shown=kept, digits=2 if value.unit == "1" else 3)
        return f"{text.replace(' %', ' point' if text == '1 %' else ' points')} {word}"

    def _unit(self, value: Figure, asked: Figure) -> str | None:
        """The unit both sides print in: the figure's own, inches for short lengths, else the value's."""
        if value.shown or value.unit == "K":
            return value.shown
        if value.unit == "m":
            short = max(abs(float(value)), abs(float(asked))) < LONG
            return "in" if short and self.system == "us" else None
        return shown_number(float(value) or float(asked), value.unit, system=self.system)[1] or None

    def _shown(self, figure: Figure, unit: str | None) -> str:
        return show(float(figure), figure.unit, system=self.system, shown=unit, digits=DIGITS)

    def _unsettled(self, held: list[Finding]) -> Iterator[Line]:
        """Why it cannot be told, and the fields that would settle it."""
        fields = list(dict.fromkeys(field for one in held for field in one.missing))
        reasons = list(dict.fromkeys(one.reason for one in held if one.reason))
        more = f", and {len(reasons) - 2} more" if len(reasons) > 2 else ""
        yield from _told(f"{'; '.join(reasons[:2])}{more}", INDENT)
        if any(field not in reason for field in fields for reason in reasons):
            some = ", ".join(fields[:4]) + (f" and {len(fields) - 4} more" if len(fields) > 4 else "")
            yield from _told(f"Settled by: {some}", INDENT)


def _sections(sheets: Worksheets) -> Iterator[Worksheet]:
    """Every section of every sheet, however deep."""
    waiting = list(sheets.sheets)
    while waiting:
        part = waiting.pop()
        waiting.extend(part.sections)
        yield from part.sections


def by_requirement(findings: list[Finding]) -> list[list[Finding]]:
    """Findings of one requirement together, in the order in which the first of each comes."""
    groups: dict[str, list[Finding]] = {}
    for finding in findings:
        groups.setdefault(finding.requirement.id, []).append(finding)
    return list(groups.values())


def _sides(finding: Finding) -> tuple[Figure, str, Figure]:
    """What is there, the comparator and what is asked.

    Of a margin held against nothing it is the two that the margin was worked from; where what there is comes
    from a table (how far people reach), the other one is what the builder can change.
    """
    assert finding.provided is not None  # noqa: S101
    assert finding.required is not None  # noqa: S101
    origin = finding.provided.origin
    if (
        float(finding.required) != 0
        or not isinstance(origin, Worked)
        or set(origin.inputs) != {"clear", "asked"}
    ):
        return finding.provided, finding.requirement.comparator, finding.required
    clear, asked = origin.inputs["clear"], origin.inputs["asked"]
    return (clear, ">=", asked) if roots(clear) else (asked, "<=", clear)


def _says(name: str, title: str) -> bool:
    """Whether a name already holds what a title is about, or most of its words."""
    words = [word for word in re.findall(r"\w+", title.casefold()) if len(word) > 2]
    said = [word for word in words if word in name.casefold()]
    return title.partition(":")[0].casefold() in name.casefold() or 2 * len(said) >= len(words)


def _authority(row: Requirement) -> str:
    """Who asks it, as the start of a line; nothing where nobody in particular does."""
    clause, known = f"{row.clause}, {row.edition}".strip(", "), KNOWN.get(row.how, "")
    if known and known not in clause.casefold():
        clause = f"{clause} ({known})" if clause else known
    return f"{_capital(clause)}. " if clause else ""


def _figure_id(finding: Finding) -> str:
    return finding.provided.id if finding.provided is not None else finding.requirement.quantity


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _told(text: str, indent: str, style: str = "quiet") -> Iterator[Line]:
    """Wrap a text, spaces at its start kept; a word longer than the line is cut."""
    start = text[: len(text) - len(text.lstrip())]
    for line in wrap(text.lstrip(), WIDTH, initial_indent=indent + start, subsequent_indent=indent):
        yield line, style
