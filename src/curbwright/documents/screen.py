"""The check on one screen: what fails, what cannot be told, what is tight, and where to look next."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap

from curbwright.build.cart import Build
from curbwright.figures import Figure
from curbwright.figures.printing import shown
from curbwright.requirements import Finding
from curbwright.sheets import Worksheets
from curbwright.units import show

WIDTH = 100
TIGHT = 10
"""How many passes are listed: the tightest."""
MARKS = {"fail": "FAIL", "cannot tell": "  ? ", "pass": "  ok"}
CAUTION = (
    "These are a builder's calculations, not an approval. Gas, mains power, batteries, towing and fire can"
    " kill: local codes and licensed practice decide, and the authority that licenses the cart has the last"
    " word."
)


def check_lines(sheets: Worksheets, findings: list[Finding], file: str) -> Iterator[tuple[str, str]]:
    """Yield the lines of the screen, each with a style: head, fail, unsure, pass, quiet or plain."""
    build = sheets.build
    yield build.cart.name, "head"
    yield from _place(build)
    yield from _cases(sheets)
    yield from _group("Fails", "fail", [one for one in findings if one.verdict == "fail"], build)
    yield from _group(
        "Cannot tell yet", "unsure", [one for one in findings if one.verdict == "cannot tell"], build
    )
    passes = [one for one in findings if one.verdict == "pass"]
    yield from _group(
        f"Passes, the tightest {min(TIGHT, len(passes))} of {len(passes)}", "pass", passes[:TIGHT], build
    )
    yield from _assumed(sheets, findings)
    yield "", "plain"
    yield from ((line, "quiet") for line in wrap(CAUTION, WIDTH))
    yield "", "plain"
    yield _verdict(findings), "head"
    yield from ((line, "quiet") for line in _next(findings, file))


def _place(build: Build) -> Iterator[tuple[str, str]]:
    where = [
        text for text in (build.place.name, build.place.state and f"road rules: {build.place.state}") if text
    ]
    if where:
        yield "; ".join(where), "quiet"
    yield "", "plain"


def _cases(sheets: Worksheets) -> Iterator[tuple[str, str]]:
    """The load cases in one table."""
    system = sheets.build.cart.units
    rows = []
    for section in sheets.sheet("balance").sections:
        found = {figure.id.removeprefix(f"{section.id}."): figure for figure in section.lines}
        if "tongue_share" in found and "share_spread" in found:
            two = show(2 * float(found["share_spread"]), "1", system=system, digits=2)
            rows.append(
                [
                    section.title,
                    *(
                        _brief(found[key], system)
                        for key in ("gross", "axle_load", "tongue_load", "tongue_share")
                    ),
                    f"± {two}",
                ]
            )
    if not rows:
        return
    table = [["Load case", "gross", "axle", "tongue", "share", "two spreads"], *rows]
    widths = [max(len(row[column]) for row in table) for column in range(len(table[0]))]
    for n, row in enumerate(table):
        cells = (
            cell.ljust(width) if column == 0 else cell.rjust(width)
            for column, (cell, width) in enumerate(zip(row, widths, strict=True))
        )
        yield "  ".join(cells), "quiet" if n == 0 else "plain"
    yield "", "plain"


def _brief(figure: Figure, system: str) -> str:
    return shown(figure, system, digits=3 if figure.unit == "1" else 4)


def _group(title: str, style: str, findings: list[Finding], build: Build) -> Iterator[tuple[str, str]]:
    if not findings:
        return
    yield f"{title}", "head"
    for finding in findings:
        yield from _finding(finding, style, build)
    yield "", "plain"


def _finding(finding: Finding, style: str, build: Build) -> Iterator[tuple[str, str]]:
    system, row = build.cart.units, finding.requirement
    mark = MARKS[finding.verdict]
    if finding.verdict == "cannot tell":
        yield f"{mark}  {row.says}", style
        settle = ", ".join(finding.missing[:3]) or finding.reason
        yield (
            f"        {finding.reason}; settled by {settle}"
            if finding.missing
            else f"        {finding.reason}",
            "quiet",
        )
        return
    assert finding.provided is not None  # noqa: S101 - a verdict has both sides
    assert finding.required is not None  # noqa: S101
    margin = f"{finding.margin:+.0%}" if finding.margin is not None and abs(finding.margin) < 10 else ""
    name = finding.provided.name
    case = _case(finding)
    says = f"{name}{f', {case}' if case else ''}"
    numbers = f"{shown(finding.provided, system)} ({_asks(finding, system)})"
    yield f"{mark}  {says:<52.52} {numbers:<34} {margin:>5}", style
    if finding.verdict == "fail":
        yield from ((f"        {line}", "quiet") for line in wrap(f"{row.says}. {row.why}", WIDTH - 8))
        known = {"memory": "from memory: look it up", "practice": "common practice"}.get(
            row.how, f"{row.clause} {row.edition}".strip()
        )
        yield f"        {known}; working: show {finding.provided.id}", "quiet"


def _case(finding: Finding) -> str:
    """The load case or item that a starred requirement speaks of."""
    extra = finding.id.removeprefix(finding.requirement.id).lstrip(".")
    return extra.replace("_", " ")


def _asks(finding: Finding, system: str) -> str:
    words = {">=": "at least", "<=": "at most", "==": "exactly"}
    assert finding.required is not None  # noqa: S101
    return f"{words[finding.requirement.comparator]} {shown(finding.required, system)}"


def _assumed(sheets: Worksheets, findings: list[Finding]) -> Iterator[tuple[str, str]]:
    """Typical values that a verdict leans on, so that nobody takes them for their own."""
    leaned = sorted({field for one in findings if one.verdict in ("pass", "fail") for field in one.fields})
    assumed = [
        field
        for field in leaned
        if (figure := sheets.figures.get(field)) is not None and getattr(figure.origin, "assumed", False)
    ]
    if assumed:
        some = ", ".join(assumed[:6]) + (f" and {len(assumed) - 6} more" if len(assumed) > 6 else "")
        yield from (
            (line, "quiet")
            for line in wrap(f"Assumed because the build file leaves them out: {some}.", WIDTH)
        )


def _verdict(findings: list[Finding]) -> str:
    count = {
        verdict: sum(one.verdict == verdict for one in findings)
        for verdict in ("fail", "cannot tell", "pass")
    }
    return f"{count['fail']} fail, {count['cannot tell']} cannot be told, {count['pass']} pass."


def _next(findings: list[Finding], file: str) -> Iterator[str]:
    worst = next((one for one in findings if one.verdict == "fail" and one.provided is not None), None)
    worst = worst or next((one for one in findings if one.provided is not None), None)
    if worst is not None and worst.provided is not None:
        yield f"Working of any number:  curbwright show {file} {worst.provided.id}"
    yield f"Drawings to scale:      curbwright draw {file} -o drawings"
