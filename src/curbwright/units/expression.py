"""Reads a unit text such as lb/ft2 or BTU/(h·ft2·°F) and works it down to SI."""

from __future__ import annotations

from functools import cache

from curbwright.units.text import Token, tokens
from curbwright.units.unit import (
    BASE,
    NOTHING,
    STANDARD_GRAVITY,
    Dimension,
    Row,
    Unit,
    named,
    number,
    product,
)

_ONE = Unit("", NOTHING, 1.0)
_GRAVITY = Unit("", (1, 0, -2, 0, 0, 0, 0, 0), STANDARD_GRAVITY)
_BEFORE = {"sq": 2, "square": 2, "cu": 3, "cubic": 3}
_AFTER = {"squared": 2, "cubed": 3}
_LONGEST_NAME = 4
"""Words in the longest name of a unit inside an expression."""
_HIGHEST_POWER = 4


class NotAUnitError(Exception):
    """A unit text that cannot be read; ``word`` is the unknown word, empty where the grammar is wrong."""

    def __init__(self, word: str = "") -> None:
        super().__init__(word)
        self.word = word


def readings(text: str) -> list[tuple[Unit, str]]:
    """Return what a plain unit text may mean, best first, each with the mark of its row.

    Pounds are a mass first and the weight of that mass second; a/b*c is a/b times c first and a/(b*c)
    second; a spelling that two rows share gives both. Raises NotAUnitError.

    >>> [unit.factor for unit, mark in readings("lb")]
    [0.45359237, 4.4482216152605]
    """
    rows = whole(text)
    ways = [(weight, under) for weight in (False, True) for under in (False, True)]
    if rows:
        found = [(work(row, weight), row.mark) for row in rows for weight in (False, True)]
    else:
        found = [(_Expression(text, weight, under).read(), "") for weight, under in ways]
    return list(dict.fromkeys(found))


def whole(text: str) -> tuple[Row, ...]:
    """Return the rows that a unit text names as a whole: in WC, fl oz, ft-lb, W/m2K.

    >>> whole("in. w.c.")[0].name
    'in WC'
    """
    written = _unmarked(text).replace("^", "")
    if text.endswith("^"):
        return ()
    for spelling in (written, written.replace(".", ""), written.replace(".", " ")):
        rows = named(" ".join(spelling.split()))
        if rows:
            return rows
    return ()


@cache
def work(row: Row, weight: bool) -> Unit:
    """Return a row of the table worked down to SI; with ``weight``, pounds count as the force they weigh."""
    size, _, of = row.of.partition(" ")
    made = _Expression(of, weight).read() if of else _ONE._replace(dimension=_base(row))
    if weight and row.mark == "weight":
        made = product(made, _GRAVITY, 1)
    return Unit(
        row.name,
        made.dimension,
        number(size or "1") * made.factor,
        number(row.offset) if row.offset else 0.0,
        made.works or row.mark == "energy",
        row.mark == "difference",
    )


def _base(row: Row) -> Dimension:
    powers: Dimension = tuple(int(not row.of and row.name == name) for name in BASE)  # type: ignore[assignment]
    return powers


def _unmarked(text: str) -> str:
    return text.replace('"', " in ").replace("'", " ft ").strip()


class _Expression:
    """One pass over the tokens of a unit text; ``under`` puts all that follows a slash below it."""

    def __init__(self, text: str, weight: bool, under: bool = False) -> None:
        self.text = _unmarked(text)
        self.found = tokens(self.text)
        self.at = 0
        self.weight, self.under = weight, under

    def read(self) -> Unit:
        """Return the unit of the whole text; raises NotAUnitError."""
        if not self.found:
            raise NotAUnitError
        try:
            made = self._product()
        except (OverflowError, ZeroDivisionError):
            raise NotAUnitError from None
        if self.at < len(self.found):
            raise NotAUnitError(self.found[self.at].text)
        return made

    def _peek(self, ahead: int = 0) -> Token | None:
        place = self.at + ahead
        return self.found[place] if place < len(self.found) else None

    def _take(self, *texts: str) -> bool:
        token = self._peek()
        if token is None or token.text not in texts:
            return False
        self.at += 1
        return True

    def _product(self) -> Unit:
        """Read factors joined by signs, spaces or hyphens, up to the end or a closing bracket."""
        if self._take("/", "per"):
            self.at -= 1
            made = _ONE
        elif self._take("1"):
            made = _ONE
        else:
            made = self._factor()
        slashed = False
        while (token := self._peek()) is not None and token.text != ")":
            if self._take("/", "per"):
                slashed = True
                made = product(made, self._factor(), -1)
            elif self._abbreviated():
                self.at += 1
            else:
                self._take("*", "-", ".")
                made = product(made, self._factor(), -1 if slashed and self.under else 1)
        return made

    def _abbreviated(self) -> bool:
        """True at a full stop that ends a word (lb. or in.) and joins nothing."""
        stop, after = self._peek(), self._peek(1)
        if stop is None or stop.text != ".":
            return False
        return after is None or after.kind != "word" or after.start > stop.end

    def _factor(self) -> Unit:
        if self._take("("):
            made = self._product()
            if not self._take(")"):
                raise NotAUnitError
            return made
        token = self._peek()
        before = _BEFORE.get(token.text.casefold()) if token and self._peek(1) else None
        if before is not None:
            self.at += 1
        row = self._name()
        power = self._power() if before is None else before
        return product(_ONE, work(row, self.weight), power)

    def _name(self) -> Row:
        """Read the longest name that the words ahead make."""
        token = self._peek()
        if token is None or token.kind != "word":
            raise NotAUnitError(token.text if token else "")
        for count in range(_LONGEST_NAME, 0, -1):
            ahead = self.found[self.at : self.at + 2 * count - 1]
            last = self._last_of(ahead, count)
            if last is None:
                continue
            rows = named(self.text[token.start : ahead[last].end])
            if rows:
                self.at += last + 1
                return rows[0]
        raise NotAUnitError(token.text)

    @staticmethod
    def _last_of(ahead: list[Token], count: int) -> int | None:
        """Return the place of the last of ``count`` words parted by single spaces or hyphens, if there."""
        words = 0
        for place, token in enumerate(ahead):
            if token.kind == "word":
                words += 1
                if words == count:
                    return place
            elif token.text != "-" or words == 0:
                return None
        return None

    def _power(self) -> int:
        """Read the power after a name: ft2, ft^2, ft squared, s^-1."""
        token = self._peek()
        if token is not None and token.text.casefold() in _AFTER:
            self.at += 1
            return _AFTER[token.text.casefold()]
        raised = self._take("^")
        below = raised and self._take("-")
        token = self._peek()
        joined = token is not None and token.start == self.found[self.at - 1].end
        if token is None or not (token.kind == "number" and (raised or joined)):
            if raised:
                raise NotAUnitError
            return 1
        if not token.text.isdecimal() or len(token.text) > 1 or int(token.text) > _HIGHEST_POWER:
            raise NotAUnitError(token.text)
        self.at += 1
        return -int(token.text) if below else int(token.text)
