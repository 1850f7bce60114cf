"""The example carts, and starting a build file from one."""

from __future__ import annotations

import difflib
from importlib.resources import files
from pathlib import Path

from curbwright.build.edit import create
from curbwright.errors import UnknownName

FILE_NAME = "cart.toml"


def names() -> list[str]:
    """Return the names of the examples."""
    place = files("curbwright").joinpath("data", "examples")
    return sorted(one.name for one in place.iterdir() if one.is_dir() and one.joinpath(FILE_NAME).is_file())


def text(name: str) -> str:
    """Return the text of an example; raises UnknownName."""
    known = names()
    if name not in known:
        near = difflib.get_close_matches(name, known, n=1)
        hint = f" Did you mean {near[0]}?" if near else ""
        raise UnknownName(f"There is no example {name!r}; there are {', '.join(known)}.{hint}")
    return files("curbwright").joinpath("data", "examples", name, FILE_NAME).read_text(encoding="utf-8")


def start(folder: str | Path, like: str) -> Path:
    """Write an example's build file into a folder, made if need be; never over an existing file.

    Raises UnknownName for an unknown example and FileExistsError where a build file is already there.
    """
    content = text(like)
    place = Path(folder)
    place.mkdir(parents=True, exist_ok=True)
    path = place / FILE_NAME
    create(path, content)
    return path
