"""Write docs/reference from the program itself: ``python -m scripts.reference``.

A test makes the pages again and compares them, so that they can never lag behind.
"""

from __future__ import annotations

from collections.abc import Callable
from importlib import import_module
from pathlib import Path
from pkgutil import iter_modules

from click.testing import CliRunner

from curbwright import equations, sources
from curbwright.build import kinds
from curbwright.cli import main as command
from curbwright.figures import EQUATIONS, Card
from curbwright.figures.printing import words
from scripts import fields
from scripts.fields import head, row

FOLDER = Path(__file__).parents[1] / "docs" / "reference"
MADE = "\n<!-- Written by scripts/reference.py; change the program, then run: make reference -->\n"


def help_text(*words: str) -> str:
    """Return what a command prints for ``--help`` on a terminal of 100 columns."""
    ran = CliRunner().invoke(command, [*words, "--help"], prog_name="curbwright", terminal_width=100)
    if ran.exit_code:
        raise RuntimeError(f"curbwright {' '.join(words)} --help left with {ran.exit_code}: {ran.output}")
    return ran.output.rstrip("\n")


def _commands() -> str:
    text = f"# The command\n\n```\n{help_text()}\n```\n"
    for name in command.commands:
        text += f"\n## `curbwright {name}`\n\n```\n{help_text(name)}\n```\n"
    return text


def _kinds() -> str:
    text = "# Kinds of thing\n\nWhat `kind` in `[items.NAME]` may be, and what that tells the program.\n\n"
    text += head("kind", "what it is", "flags")
    for kind in kinds.all_kinds().values():
        in_order = [flag for flag in kinds.flags() if flag in kind.flags]
        text += row(f"`{kind.name}`", kind.says, ", ".join(in_order))
    text += "\n## Flags\n\n" + head("flag", "meaning")
    return text + "".join(row(flag, says) for flag, says in kinds.flags().items())


def _equations() -> str:
    text = "# Equations\n\nEvery equation of the calculation sheets, as it is computed, with its source.\n"
    for trade in trades():
        import_module(f"{equations.__name__}.{trade}")
        text += f"\n## {trade.replace('_', ' ').capitalize()}\n\n"
        text += head("name", "what it gives", "expression", "source")
        text += "".join(_equation(card) for card in EQUATIONS.values() if card.trade == trade)
    return text


def trades() -> list[str]:
    """Return the trades that have equations, by name."""
    return sorted(module.name for module in iter_modules(equations.__path__))


def _equation(card: Card) -> str:
    expression = "a method, not one expression" if card.procedure else words(card)
    marks = ["no published case at hand"] * card.uncited + ["holds in these units only"] * card.empirical
    source = "; ".join([sources.look_up(card.source).cited, *marks])
    return row(f"`{card.name}`", card.says, expression, source)


PAGES: dict[str, Callable[[], str]] = {
    "build-file.md": fields.page,
    "commands.md": _commands,
    "kinds.md": _kinds,
    "equations.md": _equations,
}


def page(name: str) -> str:
    """Return the text of a page as it ought to stand in its file."""
    return PAGES[name]().rstrip("\n") + "\n" + MADE


def main() -> None:
    """Write every page, and say which changed."""
    FOLDER.mkdir(parents=True, exist_ok=True)
    for name in PAGES:
        path, text = FOLDER / name, page(name)
        same = path.is_file() and path.read_text(encoding="utf-8") == text
        if not same:
            path.write_text(text, encoding="utf-8")
        print(f"{path.relative_to(FOLDER.parents[1])}: {'as it was' if same else 'written'}")


if __name__ == "__main__":
    main()
