"""The check on one screen: what fails, what cannot be told, what is tight, and where to look next."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from textwrap import wrap

from curbwright.build.cart import Build
from curbwright.documents.verdicts import WIDTH, Line, Verdicts, by_requirement
from curbwright.figures import Figure, Given, roots
from curbwright.figures.printing import shown
from curbwright.requirements import Finding
from curbwright.sheets import Worksheets
from curbwright.units import shown_number

IN_FULL, IN_BRIEF, UNTOLD, TIGHT = 4, 8, 3, 10
"""Requirements on one screen: failures with the reason, failures without, untold, tightest passes."""
MOST_NAMED = 5
"""How many assumed values, and how many things, are named."""
CAUTION = (
    "These are a builder's calculations, not an approval. Gas, mains power, batteries, towing and fire can"
    " kill: local codes and licensed practice decide, and the authority that licenses the cart has the last"
    " word."
)
HEADLINE = "balance.tongue_share"
"""The figure whose working is offered where nothing fails."""
COLUMNS = ("gross", "axle_load", "tongue_load", "tongue_share")


def check_lines(
    sheets: Worksheets, findings: list[Finding], file: str, *, everything: bool = False
) -> Iterator[Line]:
    """Yield the lines of the screen, each with a style: head, fail, unsure, pass, quiet or plain.

    ``everything`` leaves nothing out, however many screens it takes.
    """
    verdicts = Verdicts(sheets)
    told = ("fail", "cannot tell", "pass")
    kept = {verdict: [one for one in findings if one.verdict == verdict] for verdict in told}
    yield from _heading(sheets.build)
    yield from _load_cases(sheets)
    full, brief, untold, tight = (len(findings),) * 4 if everything else (IN_FULL, IN_BRIEF, UNTOLD, TIGHT)
    if kept["fail"]:
        yield from _part("Fails", _failing(verdicts, kept["fail"], full, brief, file))
        tight = tight if everything else TIGHT // 3
    if kept["cannot tell"]:
        yield from _part("Cannot be told yet", _untold(verdicts, kept["cannot tell"], untold, file))
    yield from _passing(verdicts, kept, tight)
    yield from _assumed(sheets, findings, len(findings) if everything else MOST_NAMED)
    yield from ((line, "quiet") for line in wrap(CAUTION, WIDTH))
    yield "", "plain"
    yield _count(kept), "head"
    yield from ((line, "quiet") for line in _next(findings, file))


def _count(kept: dict[str, list[Finding]]) -> str:
    """How many requirements there are, and how they stand; one counts by its worst case."""
    seen: set[str] = set()
    counts = []
    for verdict in ("fail", "cannot tell", "pass"):
        ids = {one.requirement.id for one in kept[verdict]} - seen
        seen |= ids
        counts.append(len(ids))
    return "Of {} requirements {} fail, {} cannot be told, {} pass.".format(sum(counts), *counts)


def _failing(verdicts: Verdicts, failed: list[Finding], full: int, brief: int, file: str) -> Iterator[Line]:
    """The worst with their reasons, the next without, and how many more there are."""
    groups = by_requirement(failed)
    yield from verdicts.full([one for held in groups[:full] for one in held], "fail")
    yield from verdicts.brief([one for held in groups[full:] for one in held], brief, "fail")
    yield from _more(len(groups) - full - brief, file)


def _untold(verdicts: Verdicts, untold: list[Finding], most: int, file: str) -> Iterator[Line]:
    groups = by_requirement(untold)
    yield from verdicts.full([one for held in groups[:most] for one in held], "unsure")
    yield from _more(len(groups) - most, file)
    missing = Counter(field for held in groups for field in {each for one in held for each in one.missing})
    if len(groups) > 1 and missing:
        most_wanted = sorted(missing.items(), key=lambda one: (-one[1], one[0]))[:MOST_NAMED]
        some = ", ".join(f"{field} ({count})" for field, count in most_wanted)
        text = f"To fill in next, with how many of these {len(groups)} each stands in the way of: {some}"
        yield from (
            (line, "plain") for line in wrap(text, WIDTH, initial_indent=" " * 6, subsequent_indent=" " * 6)
        )


def _passing(verdicts: Verdicts, kept: dict[str, list[Finding]], most: int) -> Iterator[Line]:
    """The tightest of the requirements that hold in every case; one that must be exact has no margin."""
    failed = {one.requirement.id for one in kept["fail"]}
    held = [
        one for one in kept["pass"] if one.requirement.id not in failed and one.requirement.comparator != "=="
    ]
    if held:
        passed = len(by_requirement(held))
        title = f"Passes: the tightest {most} of {passed} requirements" if passed > most else "Passes"
        yield from _part(title, verdicts.brief(held, most, "pass"))


def _more(left: int, file: str) -> Iterator[Line]:
    if left > 0:
        yield f"      and {left} more; all of them: curbwright check --all {file}", "quiet"


def _heading(build: Build) -> Iterator[Line]:
    yield build.cart.name, "head"
    place = build.place
    where = [text for text in (place.name, place.state and f"road rules: {place.state}") if text]
    yield from ((line, "quiet") for line in wrap("; ".join(where), WIDTH))
    yield "", "plain"


def _part(title: str, lines: Iterator[Line]) -> Iterator[Line]:
    yield title, "head"
    yield from lines
    yield "", "plain"


def _load_cases(sheets: Worksheets) -> Iterator[Line]:
    """The load cases in one table."""
    system = sheets.build.cart.units
    table = [["Load case", "gross", "axle", "tongue", "share, 2 spreads"]]
    for section in sheets.sheet("balance").sections:
        found = {figure.id.removeprefix(f"{section.id}."): figure for figure in section.lines}
        if "share_spread" in found and all(column in found for column in COLUMNS):
            masses = [_whole(found[column], system) for column in ("gross", "axle_load", "tongue_load")]
            share, two = 100 * float(found["tongue_share"]), 200 * float(found["share_spread"])
            table.append([section.title, *masses, f"{share:.1f} ± {two:.1f} %"])
    if len(table) == 1:
        return
    widths = [max(len(row[column]) for row in table) for column in range(len(table[0]))]
    for n, row in enumerate(table):
        first, *rest = zip(row, widths, strict=True)
        cells = [first[0].ljust(first[1]), *(cell.rjust(width) for cell, width in rest)]
        yield "  ".join(cells), "quiet" if n == 0 else "plain"
    yield "", "plain"


def _whole(figure: Figure, system: str) -> str:
    """A mass to the pound or kilogram, so that a column can be compared."""
    number, unit, _ = shown_number(float(figure), figure.unit, system=system, digits=9)
    return f"{number:,.0f} {unit}"


def _assumed(sheets: Worksheets, findings: list[Finding], most: int) -> Iterator[Line]:
    """Typical values that a verdict leans on, so that nobody takes them for their own."""
    told = (one for one in findings if one.verdict in ("pass", "fail"))
    leaned = roots(*(side for one in told for side in (one.provided, one.required) if side is not None))
    stand_in = [
        figure for field in sorted(leaned)
        if (figure := sheets.figures.get(field)) is not None
        and isinstance(figure.origin, Given) and figure.origin.assumed
    ]  # fmt: skip
    typical = [one for one in stand_in if _source(one).startswith("catalogue")]
    assumed = [one for one in stand_in if one not in typical]
    system = sheets.build.cart.units
    if assumed:
        said = list(dict.fromkeys(f"{one.name} {shown(one, system)}" for one in assumed))
        more = f"; and {len(said) - most} more" if len(said) > most else ""
        text = f"Assumed, as the build file does not say: {'; '.join(said[:most])}{more}."
        yield from ((line, "quiet") for line in wrap(text, WIDTH))
        yield "", "plain"
    if typical:
        masses = sorted((one for one in typical if one.id.endswith(".mass")), key=lambda one: -float(one))
        heavy = "; ".join(f"{_thing(one)} {shown(one, system)}" for one in masses[:most])
        things = len({one.id.rpartition(".")[0] for one in typical})
        text = (
            f"From the catalogue of typical equipment: {len(typical)} sizes, masses and ratings"
            f" of {things} things. Read their plates or weigh them"
            f"{f', the heaviest first: {heavy}' if heavy else ''}."
        )
        yield from ((line, "quiet") for line in wrap(text, WIDTH))
        yield "", "plain"


def _source(figure: Figure) -> str:
    return figure.origin.source if isinstance(figure.origin, Given) else ""


def _thing(figure: Figure) -> str:
    return figure.name.partition(":")[0]


def _next(findings: list[Finding], file: str) -> Iterator[str]:
    worst = next((one.provided.id for one in findings if one.verdict == "fail" and one.provided), HEADLINE)
    yield f"Working of any figure:  curbwright show {file} {worst}"
    yield f"Drawings to scale:      curbwright draw {file} -o drawings"
