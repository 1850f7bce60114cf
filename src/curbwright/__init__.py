"""curbwright: will this food cart fit, tow, run all day, feed people safely and pass plan review?

The public verbs, in the order a build file travels:

- ``read(path)`` and ``read_text(text)`` → Build, or BuildFileProblem with everything that is wrong
- ``work(build)`` → Worksheets: every number with its working
- ``judge(sheets)`` → findings: each requirement held against the figures
- ``draw(sheets, folder)`` → the drawings, as SVG and DXF files
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from curbwright.errors import BuildFileProblem, CurbwrightError

if TYPE_CHECKING:
    from curbwright.build.cart import Build
    from curbwright.build.file import load_text as read_text
    from curbwright.build.file import read
    from curbwright.drawings.drawing_set import draw
    from curbwright.requirements.judge import judge
    from curbwright.sheets import work

__version__ = "0.1.0"
__all__ = ["Build", "BuildFileProblem", "CurbwrightError", "draw", "judge", "read", "read_text", "work"]

_WHERE = {
    "Build": ("curbwright.build.cart", "Build"),
    "read": ("curbwright.build.file", "read"),
    "read_text": ("curbwright.build.file", "load_text"),
    "work": ("curbwright.sheets", "work"),
    "judge": ("curbwright.requirements", "judge"),
    "draw": ("curbwright.drawings.drawing_set", "draw"),
}


def __getattr__(name: str) -> Any:
    """Import a verb when it is first used, so that the command starts fast."""
    if name not in _WHERE:
        raise AttributeError(f"module 'curbwright' has no attribute {name!r}")
    from importlib import import_module

    module, attribute = _WHERE[name]
    return getattr(import_module(module), attribute)
