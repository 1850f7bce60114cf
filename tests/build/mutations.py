"""Build files gone wrong in every way: one mutation a number, the same on every machine.

``mutant(n)`` names the ways and gives the bytes. A file is an example, often thinned to fewer things so that
many can be tried; then it suffers one grave or several gentle changes.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable
from functools import cache
from pathlib import Path

from curbwright.build import catalogue, examples, kinds
from curbwright.units import KINDS

Lines = list[str]
Way = Callable[[random.Random, Lines], Lines]

_FIELD = re.compile(r"^(\s*)([\w.-]+)(\s*=\s*)([^#]*?)(\s*(?:#.*)?)$")
_NUMBER = re.compile(r"-?\d[\d,]*(?:\.\d+)?")
_TOKEN = re.compile(r'"[^"\n]*"|[\w.-]+|[\[\]{}=#,]|\s+|.')


def _pool(name: str) -> tuple[str, ...]:
    """The lines of a list beside this file."""
    path = Path(__file__).parent / f"mutation_{name}.txt"
    return tuple(path.read_text(encoding="utf-8").splitlines())


UNITS = tuple(
    dict.fromkeys((*(unit for kind in KINDS.values() for unit in kind.units), "furlong", "stone", "F"))
)
VALUES = (
    *_pool("values"), "", "'''\n12 in'''",
    f'"{"9" * 400} in"', "9" * 5000, f'"{"(" * 300}1"', f'"{"1+" * 500}1 in"',
    f'"{"x" * 3000}"',
)  # fmt: skip
WORDS = _pool("words")
HEADS = (*_pool("heads"), f"[{'a.' * 40}b]", f"[items.{'n' * 90}]")
MARKS = "\"'[]{}=#,.\\\n\r\t\0\ufeff\u2028\u00a0é中🍞\x1b\x7f½′″–"


def mutant(number: int) -> tuple[str, bytes]:
    """Return the names of what was done, and the bytes of the file."""
    chance = random.Random(f"a build file gone wrong, number {number}")
    lines = thinned(chance, examples.text(chance.choice(examples.names())).split("\n"))
    if chance.random() < 0.38:
        done = chance.choices(list(GENTLE), k=chance.choice((1, 1, 2, 3, 6)))
    else:
        done = chance.choices(list(GRAVE), k=chance.choice((1, 1, 1, 2)))
    for name in done:
        lines = (GENTLE.get(name) or GRAVE[name])(chance, lines)
    data = "\n".join(lines).encode("utf-8", "surrogatepass")
    if chance.random() < 0.06:
        done.append("bytes")
        data = broken(chance, data)
    return "+".join(done), data


def thinned(chance: random.Random, lines: Lines) -> Lines:
    """Keep only some of the items, most of the time, and nothing that names the others, nearly always."""
    keep = chance.choice((1.0, 0.4, 0.25, 0.15, 0.15, 0.0))
    if keep == 1.0:
        return lines
    blocks = _blocks(lines)
    gone = {_key(block) for block in blocks if block[0].startswith("[items.") and chance.random() >= keep}
    kept = [block for block in blocks if not (block[0].startswith("[items.") and _key(block) in gone)]
    if chance.random() < 0.95:
        kept = _without(kept, gone)
    return [line for block in kept for line in block]


def _blocks(lines: Lines) -> list[Lines]:
    """The lines, a heading and what is below it together."""
    blocks: list[Lines] = [[""]]
    for line in lines:
        if line.startswith("["):
            blocks.append([])
        blocks[-1].append(line)
    return blocks


def _key(block: Lines) -> str:
    """The last word of a block's heading."""
    return block[0].strip("[] ").rpartition(".")[2]


def _without(blocks: list[Lines], gone: set[str]) -> list[Lines]:
    """Leave out what names something that is gone, and what names that in turn."""
    while True:
        named = re.compile(
            "|".join(rf'"(?:items\.)?{re.escape(name)}",? ?' for name in sorted(gone)) or "(?!)"
        )
        kept: list[Lines] = []
        lost: set[str] = set()
        for block in blocks:
            if block[0].startswith(("[items.", "[shell", "[trailer")):
                kept.append(block)
                continue
            lines = [named.sub("", line) if "= [" in line else line for line in block]
            orphans = [
                n for n, line in enumerate(lines) if n and (named.search(line) or line.endswith("= []"))
            ]
            if orphans and block[0].count(".") > 0:
                lost.add(_key(block))
            else:
                kept.append([line for n, line in enumerate(lines) if n not in orphans])
        if not lost - gone:
            return kept
        blocks, gone = kept, gone | lost


def broken(chance: random.Random, data: bytes) -> bytes:
    """Flip, insert, drop or repeat bytes anywhere."""
    spoiled = bytearray(data)
    for _ in range(chance.choice((1, 1, 3, 20))):
        at = chance.randrange(len(spoiled) + 1)
        match chance.randrange(5):
            case 0:
                spoiled[at : at + 1] = bytes([chance.randrange(256)])
            case 1:
                spoiled[at:at] = chance.randbytes(chance.choice((1, 2, 8)))
            case 2:
                del spoiled[at : at + chance.choice((1, 4, 200))]
            case 3:
                spoiled[at:at] = spoiled[at : at + chance.choice((1, 40, 400))]
            case _:
                spoiled[at : at + 1] = chance.choice((b"\xff", b"\xc3\x28", b"\xed\xa0\x80", b"\x00", b"\r"))
    return bytes(spoiled)


def _fields(lines: Lines) -> list[int]:
    return [n for n, line in enumerate(lines) if _FIELD.match(line)]


def _with_value(chance: random.Random, lines: Lines, new: Callable[[str], str]) -> Lines:
    """Replace the value of one field by what ``new`` makes of it."""
    places = _fields(lines)
    if not places:
        return lines
    at = chance.choice(places)
    match = _FIELD.match(lines[at])
    assert match is not None
    before, key, sign, value, after = match.groups()
    return [*lines[:at], f"{before}{key}{sign}{new(value)}{after}", *lines[at + 1 :]]


def _scaled(chance: random.Random, lines: Lines) -> Lines:
    """Another number in the same words, from nothing to a thousandfold."""
    times = chance.choice((0.0, -1.0, 1e-9, 0.01, 0.5, 0.9, 1.1, 1.5, 2.0, 3.0, 10.0, 1000.0, 1e12))

    def new(value: str) -> str:
        found = _NUMBER.search(value)
        if not found:
            return value
        number = float(found[0].replace(",", "")) * times
        return (
            value[: found.start()] + (f"{number:.6f}".rstrip("0").rstrip(".") or "0") + value[found.end() :]
        )

    return _with_value(chance, lines, new)


def _other_unit(chance: random.Random, lines: Lines) -> Lines:
    unit = chance.choice(UNITS)
    return _with_value(chance, lines, lambda value: re.sub(r"(\d) ?[A-Za-z%][\w/%]*", rf"\1 {unit}", value))


def _other_word(chance: random.Random, lines: Lines) -> Lines:
    """Another choice, kind or catalogue item, where a field holds a word."""
    places = [n for n in _fields(lines) if re.search(r'= *"[A-Za-z]', lines[n])]
    if not places:
        return lines
    at = chance.choice(places)
    key = lines[at].split("=")[0].strip()
    pool = {"like": _catalogue(), "kind": (*kinds.names(), *WORDS)}.get(key, WORDS)
    return [*lines[:at], f'{key} = "{chance.choice(pool)}"', *lines[at + 1 :]]


@cache
def _catalogue() -> tuple[str, ...]:
    return catalogue.ids()


def _line_gone(chance: random.Random, lines: Lines) -> Lines:
    places = _fields(lines)
    if not places:
        return lines
    at = chance.choice(places)
    return [*lines[:at], *lines[at + 1 :]]


def _field_added(chance: random.Random, lines: Lines) -> Lines:
    """A line of one section written into another."""
    places = _fields(lines)
    if not places:
        return lines
    at = chance.choice(places)
    return [*lines[:at], lines[chance.choice(places)], *lines[at:]]


def _section_gone(chance: random.Random, lines: Lines) -> Lines:
    heads = [n for n, line in enumerate(lines) if line.startswith("[")]
    if not heads:
        return lines
    at = chance.choice(heads)
    end = next((n for n in heads if n > at), len(lines))
    return [*lines[:at], *lines[end:]]


def _nasty_value(chance: random.Random, lines: Lines) -> Lines:
    new = chance.choice(VALUES)
    return _with_value(chance, lines, lambda value: new)


def _bare_value(chance: random.Random, lines: Lines) -> Lines:
    """The quotes or the unit forgotten, or a closing quote."""
    how = chance.randrange(4)
    return _with_value(
        chance, lines,
        lambda value: (value.strip('"'), value[:-1], re.sub(r" ?[A-Za-z%/]+", "", value), f"[{value}]")[how],
    )  # fmt: skip


def _key_misspelt(chance: random.Random, lines: Lines) -> Lines:
    places = _fields(lines)
    if not places:
        return lines
    at = chance.choice(places)
    key, sign, rest = lines[at].partition("=")
    word = key.strip() or "key"
    spot = chance.randrange(len(word))
    letter = chance.choice("abcdefghijklmnopqrstuvwxyz_-. é\"'")
    wrong = chance.choice((word[:spot] + word[spot + 1 :], word[:spot] + letter + word[spot:], word.upper()))
    return [*lines[:at], f"{wrong} {sign}{rest}", *lines[at + 1 :]]


def _head_changed(chance: random.Random, lines: Lines) -> Lines:
    heads = [n for n, line in enumerate(lines) if line.startswith("[")]
    if not heads:
        return lines
    at = chance.choice(heads)
    other = lines[chance.choice(heads)]
    nested = lines[at].split("]")[0] + ".more]"
    new = chance.choice((chance.choice(HEADS), other, nested, f"[{lines[at]}]", lines[at].strip("[]"), ""))
    return [*lines[:at], new, *lines[at + 1 :]]


def _lines_moved(chance: random.Random, lines: Lines) -> Lines:
    """Lines swapped, repeated, joined, moved elsewhere, or cut off from somewhere on."""
    moved = list(lines)
    at, other = chance.randrange(len(moved)), chance.randrange(len(moved))
    run = chance.choice((1, 1, 5, 30))
    match chance.randrange(5):
        case 0:
            moved[at], moved[other] = moved[other], moved[at]
        case 1:
            moved[other:other] = moved[at : at + run]
        case 2:
            moved[at : at + 2] = [" ".join(moved[at : at + 2])]
        case 3:
            piece = moved[at : at + run]
            del moved[at : at + run]
            moved[other:other] = piece
        case _:
            del moved[at:]
    return moved or [""]


def _tokens(chance: random.Random, lines: Lines) -> Lines:
    """Tokens dropped, swapped, repeated or taken from elsewhere, in one line."""
    at = chance.randrange(len(lines))
    tokens = _TOKEN.findall(lines[at])
    if not tokens:
        return lines
    one, two = chance.randrange(len(tokens)), chance.randrange(len(tokens))
    match chance.randrange(4):
        case 0:
            del tokens[one]
        case 1:
            tokens[one], tokens[two] = tokens[two], tokens[one]
        case 2:
            tokens[one:one] = [tokens[two]] * chance.choice((1, 2, 50))
        case _:
            tokens[one] = chance.choice(_TOKEN.findall(lines[chance.randrange(len(lines))]) or [""])
    return [*lines[:at], "".join(tokens), *lines[at + 1 :]]


def _marks(chance: random.Random, lines: Lines) -> Lines:
    """A mark or an odd character put in anywhere."""
    at = chance.randrange(len(lines))
    spot = chance.randrange(len(lines[at]) + 1)
    text = lines[at][:spot] + chance.choice(MARKS) * chance.choice((1, 1, 1, 3)) + lines[at][spot:]
    return [*lines[:at], text, *lines[at + 1 :]]


def _deep(chance: random.Random, lines: Lines) -> Lines:
    """A value nested deep, or very many of a thing."""
    depth = chance.choice((5, 13, 200, 3000))
    piece = chance.choice((
        f"notes = {'[' * depth}{']' * depth}",
        f"x = {'{ a = ' * min(depth, 200)}1{' }' * min(depth, 200)}",
        "\n".join(f"[items.thing_{n}]" for n in range(depth)),
        "\n".join(f'[people.p{n}]\nback = "5 ft"' for n in range(min(depth, 200))),
        ".".join(["a"] * depth) + " = 1",
    ))  # fmt: skip
    at = chance.randrange(len(lines) + 1)
    return [*lines[:at], piece, *lines[at:]]


GENTLE: dict[str, Way] = {
    "scaled": _scaled, "other word": _other_word, "field gone": _line_gone, "section gone": _section_gone,
    "scaled again": _scaled, "other unit": _other_unit,
}  # fmt: skip
GRAVE: dict[str, Way] = {
    "nasty value": _nasty_value, "bare value": _bare_value, "field elsewhere": _field_added,
    "key misspelt": _key_misspelt, "head changed": _head_changed, "lines moved": _lines_moved,
    "tokens": _tokens, "marks": _marks, "deep": _deep,
}  # fmt: skip
