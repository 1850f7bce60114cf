"""Part: the base of every section of the build file, and how one field of it is declared.

A field's declaration is the one place for its kind of quantity, meaning, typical value and how that is
known. The checks, the sheets, the reference page and the desk's forms all read it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, Any

from pydantic import BaseModel, ConfigDict, Field, GetCoreSchemaHandler, PrivateAttr
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from curbwright import units
from curbwright.errors import UnitProblem
from curbwright.figures import Entry
from curbwright.units import KINDS, Measure


class Reads:
    """Marks a field as a quantity of one kind, with the band that makes sense for it."""

    def __init__(self, kind: str, *, least: str | None = None, most: str | None = None) -> None:
        self.kind = kind
        self.least = units.read(least, kind) if least is not None else None
        self.most = units.read(most, kind) if most is not None else None

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(self._read)

    def _read(self, text: object) -> Measure:
        if isinstance(text, Measure) and text.kind == self.kind:
            return text
        try:
            value = units.read(text, self.kind)
        except UnitProblem as problem:
            raise _custom(problem.what, problem.try_this) from None
        if self.least is not None and value < self.least:
            raise _custom(
                f"{value.text} is less than {self.least.text}",
                f"The least that makes sense is {self.least.text}",
            )
        if self.most is not None and value > self.most:
            raise _custom(f"{value.text} is more than {self.most.text}", "Check the number and its unit")
        return value


class ReadsRows:
    """Marks a field as a small table: a list of rows, each a list of quantities of these kinds in turn."""

    def __init__(self, *kinds: str, most: int) -> None:
        self.kinds = kinds
        self.most = most

    @property
    def example(self) -> str:
        """One row as a builder writes it."""
        return f"[{', '.join(chr(34) + KINDS[kind].example + chr(34) for kind in self.kinds)}]"

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(self._read)

    def _read(self, rows: object) -> tuple[tuple[Measure, ...], ...]:
        if isinstance(rows, tuple):
            return rows
        says = f"a list of rows like {self.example}"
        if not isinstance(rows, list) or not all(isinstance(row, list) for row in rows):
            raise _custom(f"needs {says}", f"Write it like [{self.example}, {self.example}]")
        if len(rows) > self.most:
            raise _custom(f"has {len(rows)} rows, and {self.most} are the most", "Leave some out")
        return tuple(self._row(number, row) for number, row in enumerate(rows, 1))

    def _row(self, number: int, row: list[object]) -> tuple[Measure, ...]:
        if len(row) != len(self.kinds):
            what = f"row {number} has {len(row)} entries, and {len(self.kinds)} are due"
            raise _custom(what, f"Write each row like {self.example}")
        read = []
        for text, kind in zip(row, self.kinds, strict=True):
            try:
                read.append(units.read(text, kind))
            except UnitProblem as problem:
                raise _custom(f"row {number}: {problem.what}", problem.try_this) from None
        return tuple(read)


Rows = tuple[tuple[Measure, ...], ...]
"""A table of quantities, as a field marked with ReadsRows holds it."""


def _custom(what: str, try_this: str) -> PydanticCustomError:
    return PydanticCustomError("quantity", "{what}", {"what": what, "try_this": try_this})


Length = Annotated[Measure, Reads("length", most="60 ft")]
Position = Annotated[Measure, Reads("position", least="-20 ft", most="60 ft")]
Thickness = Annotated[Measure, Reads("thickness", most="12 in")]
Mass = Annotated[Measure, Reads("mass", most="20000 lb")]
ArealMass = Annotated[Measure, Reads("areal_mass", most="100 lb/ft2")]
Volume = Annotated[Measure, Reads("volume", most="2000 gal")]
Pressure = Annotated[Measure, Reads("pressure", most="500 psi")]
Share = Annotated[Measure, Reads("share", most="100 %")]
Speed = Annotated[Measure, Reads("speed", most="250 mph")]
Angle = Annotated[Measure, Reads("angle", most="180 deg")]
Temperature = Annotated[Measure, Reads("temperature", least="-60 °F", most="700 °F")]
TemperatureDifference = Annotated[Measure, Reads("temperature_difference", least="0 °F", most="200 °F")]
Latitude = Annotated[Measure, Reads("angle", least="-90 deg", most="90 deg")]
Longitude = Annotated[Measure, Reads("angle", least="-180 deg", most="180 deg")]
Altitude = Annotated[Measure, Reads("position", least="-1500 ft", most="20000 ft")]
Date = Annotated[Measure, Reads("date")]
Stiffness = Annotated[Measure, Reads("stiffness", most="20000 lb/in")]
CorneringStiffness = Annotated[Measure, Reads("axle_stiffness", most="1000000 N/rad")]
Clock = Annotated[Measure, Reads("clock")]
Duration = Annotated[Measure, Reads("time", most="48 h")]
Power = Annotated[Measure, Reads("power", most="1000000 BTU/h")]
Count = Annotated[int, Field(strict=True, ge=0, le=10000)]


def asks(
    says: str, *, default: Any = None, required: bool = False, how: str = "", source: str = "",
    note: str = "", shown: str = "",
) -> Any:  # fmt: skip
    """Declare a field of the build file.

    ``says`` names it in the trade's words. ``default`` is the typical value that stands in when the field is
    left out, as text, with ``how`` it is known and its ``source``; without one, a calculation that needs the
    field says "cannot tell". ``shown`` names the unit it prints in where the trade has its own.
    """
    extra = {"says": says, "how": how, "source": source, "note": note, "shown": shown, "assumes": default}
    given: dict[str, Any] = {} if required else {"default": default}
    return Field(description=says, json_schema_extra=extra, **given)


class Part(BaseModel):
    """A section of the build file: checked, closed, frozen; it knows its own path."""

    model_config = ConfigDict(
        extra="forbid", frozen=True, validate_default=True, arbitrary_types_allowed=True, str_max_length=2000,
    )  # fmt: skip

    _path: str = PrivateAttr(default="")
    _filled: dict[str, tuple[str, str]] = PrivateAttr(default_factory=dict)

    @property
    def path(self) -> str:
        """Where the section stands in the build file."""
        return self._path

    def __getitem__(self, field: str) -> Entry:
        """Return a field as a sheet takes it: value, name, unit, path, and how it is known.

        Raises KeyError for a field that the section does not have.
        """
        extra = self.declared(field)
        value = getattr(self, field)
        path = f"{self._path}.{field}" if self._path else field
        kind = self.kind_of(field)
        unit = KINDS[kind].unit if kind else "1"
        says = _in_short(str(extra["says"]))
        if self._label():
            says = f"{self._label()}: {says}"
        shown = str(extra["shown"]) or ("%" if kind == "share" else None)
        if value is None:
            return Entry(None, says, unit, path)
        typed = value.text if isinstance(value, Measure) else str(value)
        if field in self._filled:
            how, source = self._filled[field]
            return Entry(float(value), says, unit, path, typed, how, True, source, shown)
        if field not in self.model_fields_set and extra["how"] == "convention":
            return Entry(float(value), says, unit, path, "left out", "", False, "", shown)
        if field not in self.model_fields_set:
            return Entry(
                float(value), says, unit, path, typed, str(extra["how"]), True, str(extra["source"]), shown
            )
        return Entry(float(value), says, unit, path, typed, self._known(field), False, "", shown)

    def cell(self, field: str, row: int, column: int, says: str) -> Entry:
        """Return one cell of a field that holds rows, as a sheet takes it; rows and columns count from 0."""
        value: Measure = getattr(self, field)[row][column]
        path = f"{self._path}.{field}.{row}.{column}" if self._path else f"{field}.{row}.{column}"
        name = f"{self._label()}: {says}" if self._label() else says
        shown = "%" if value.kind == "share" else KINDS[value.kind].shown
        how, source = self._filled.get(field, ("", ""))
        assumed = field in self._filled
        unit = KINDS[value.kind].unit
        return Entry(float(value), name, unit, path, value.text, how, assumed, source, shown)

    def _label(self) -> str:
        """What a line about this section starts with; nothing for sections that exist once."""
        return ""

    def _known(self, field: str) -> str:
        """How a value that stands in the build file is known, where the builder says so beside it."""
        how = getattr(self, f"{field}_how", None)
        return str(how) if how else ""

    @classmethod
    def declared(cls, field: str) -> Mapping[str, Any]:
        """Return what a field's declaration says; raises KeyError for an unknown field."""
        extra = cls.model_fields[field].json_schema_extra
        return extra if isinstance(extra, dict) else {"says": field, "how": "", "source": "", "shown": ""}

    @classmethod
    def kind_of(cls, field: str) -> str:
        """Return the kind of quantity a field holds, or nothing for words, counts and tables."""
        info = cls.model_fields[field]
        marks = [*info.metadata, *_marks(info.annotation)]
        return next((mark.kind for mark in marks if isinstance(mark, Reads)), "")

    def parts(self) -> Iterator[tuple[str, Part]]:
        """Yield the sections directly below, with their keys; named sections as ``items.griddle``."""
        for field in type(self).model_fields:
            value = getattr(self, field)
            if isinstance(value, Part):
                yield field, value
            elif isinstance(value, dict):
                yield from ((f"{field}.{key}", one) for key, one in value.items() if isinstance(one, Part))


def _in_short(says: str) -> str:
    """What a field is, without the directions that follow a semicolon or stand in brackets."""
    short = says.partition(";")[0]
    return short.rpartition(" (")[0] if short.endswith(")") else short


def _marks(annotation: Any) -> Iterator[Any]:
    """Yield the annotations hidden inside an optional type."""
    yield from getattr(annotation, "__metadata__", ())
    for inner in getattr(annotation, "__args__", ()):
        yield from _marks(inner)
