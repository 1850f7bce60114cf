"""The shortest deck: the least length on which today's things fit in their rows, in any order."""

from __future__ import annotations

from curbwright import units
from curbwright.equations import fit as eq
from curbwright.errors import MissingInput
from curbwright.figures import Figure, Gap, Worksheet
from curbwright.sheets.fit.boxes import TOUCH
from curbwright.sheets.fit.clearances import burning_walls
from curbwright.sheets.fit.packing import Packed, Row, pack
from curbwright.sheets.fit.row import ROWS, Member, conflict, gap_between, lost, members, unknown
from curbwright.sheets.fit.space import Space


def shortest(space: Space, sheet: Worksheet) -> None:
    """Write the length each row needs, the deck that takes the longest, and how much it is too short."""
    rows = {side: found for side in ROWS if (found := members(space, side))}
    missing = [*lost(space), *(one for found in rows.values() for one in unknown(space, found))]
    if not rows:
        _give_up(sheet, missing)
        sheet.note("Nothing stands in a row inside")
        return
    cases = {f"{side} row": _row(space, sheet, side, found) for side, found in rows.items()}
    longest = sheet.largest("row", "length that the longest row needs", cases)
    front, rear = space.room.front, space.room.rear
    room = sheet.work("room", "length inside from end to end", eq.gap, near=front, far=rear)
    if float(longest) <= float(room) + TOUCH:
        _give_up(sheet, missing)
    deck = sheet.given(space.build.trailer["deck_length"])
    name = "shortest deck on which the rows fit"
    needed = sheet.work("shortest", name, eq.deck_needed, deck=deck, row=longest, room=room)
    short = sheet.work("short_by", "how much the deck is too short", eq.gap, near=deck, far=needed)
    if float(short) > TOUCH:
        governing = max(cases, key=lambda label: float(cases[label]))
        least = f"{'at least ' if missing else ''}{units.show(float(short), 'm')}"
        sheet.note(f"The deck is too short by {least}: the {governing} is the longest")


def _give_up(sheet: Worksheet, missing: list[MissingInput]) -> None:
    """Raise what is missing: with it the rows may be longer, so that nothing can be said while they fit."""
    sheet.gaps.extend(Gap(sheet.id, one.path, one.says) for one in missing[1:])
    if missing:
        raise missing[0]


def _row(space: Space, sheet: Worksheet, side: str, row: list[Member]) -> Figure:
    """Pack one row and write the chain of lengths and gaps that makes it as long as it is."""
    walls = bool(burning_walls(space))
    ends = [one.clearance if walls else 0.0 for one in row]
    sizes = [float(one.length.value or 0.0) for one in row]

    def after(i: int, j: int) -> float | None:
        return sizes[i] + gap_between(row[i], row[j])[0] if conflict(row[i], row[j]) else None

    first = frozenset(i for i, one in enumerate(row) if one.side == "front")
    last = frozenset(i for i, one in enumerate(row) if one.side == "rear")
    start = sorted(range(len(row)), key=lambda i: row[i].start)
    packed = pack(Row(sizes, after, ends, ends, first, last), start)
    _say(sheet, side, row, packed)
    terms = _terms(sheet, [row[i] for i in packed.chain], [ends[i] for i in packed.chain])
    return sheet.total(f"{side}_row", f"length that the {side} row needs", terms)


def _say(sheet: Worksheet, side: str, row: list[Member], packed: Packed) -> None:
    if packed.present > packed.length + TOUCH:
        sheet.note(f"{side} row, shortest in the order {', '.join(row[i].name for i in packed.order)}")
    if not packed.proven:
        least = units.show(packed.bound, "m")
        sheet.note(f"{side} row: the best order found; none can be shorter than {least}")


def _terms(sheet: Worksheet, chain: list[Member], ends: list[float]) -> list[Figure]:
    """The lengths and the gaps of a chain, from the front wall to the rear."""
    entries = [chain[0].clear if ends[0] > 0 else None]
    for one, after in zip(chain, [*chain[1:], None], strict=True):
        entries.append(one.length)
        if after is not None:
            entries.append(gap_between(one, after)[1])
    entries.append(chain[-1].clear if ends[-1] > 0 else None)
    return [sheet.given(entry) for entry in entries if entry is not None]
