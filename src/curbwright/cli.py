"""The command: one subcommand per public verb, no logic. Heavy imports wait until a command runs."""

from __future__ import annotations

import difflib
import json
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any

import click

if TYPE_CHECKING:
    from curbwright.build.cart import Build

STYLES: dict[str, dict[str, Any]] = {
    "head": {"bold": True}, "fail": {"fg": "red"}, "unsure": {"fg": "yellow"}, "pass": {},
    "quiet": {"dim": True}, "plain": {},
}  # fmt: skip

LONG = 60
"""Lines; a longer answer goes through the pager where there is somebody to page."""


class _Commands(click.Group):
    """A group that suggests the nearest command."""

    def resolve_command(self, ctx: click.Context, args: list[str]) -> Any:
        try:
            return super().resolve_command(ctx, args)
        except click.UsageError as error:
            near = difflib.get_close_matches(args[0], self.commands, n=1) if args else []
            if not near or near[0] in error.message:
                raise
            raise click.UsageError(f"{error.message} Did you mean '{near[0]}'?", ctx) from None

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(self.commands)


@click.group(
    cls=_Commands, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100}
)
@click.version_option(package_name="curbwright", message="curbwright %(version)s")
def main() -> None:
    """Will this food cart fit, tow, run all day, feed people safely and pass plan review?

    Everything is read from one build file. Start with:  curbwright new my-cart
    """


FILE = click.argument("file")
JSON = click.option("--json", "as_json", is_flag=True, help="Print one JSON object instead; values are SI.")


@main.command(short_help="Start a build file from an example.")
@click.argument("folder")
@click.option("--like", default="flatbread", show_default=True, help="The example to start from.")
def new(folder: str, like: str) -> None:
    """Start a build file in FOLDER from an example, comments included."""
    from curbwright.build.examples import start

    with _said():
        path = start(folder, like)
        click.echo(f"Wrote {path}, a copy of the example '{like}'. Change it to your own cart, then run:")
        click.echo(f"  curbwright check {path}")


@main.command(short_help="Work a cart out and judge it.")
@FILE
@click.option("--all", "everything", is_flag=True, help="List every requirement, not one screen of them.")
@JSON
def check(file: str, everything: bool, as_json: bool) -> None:
    """Work out the cart in FILE: what fails, what cannot be told, what is tight.

    Exit code: 0 nothing failed, 1 something failed, 2 the file cannot be read.
    """
    build = _read(file, as_json)
    from curbwright.documents.screen import check_lines
    from curbwright.documents.twin import check_json
    from curbwright.requirements import judge
    from curbwright.sheets import work

    sheets = work(build)
    findings = judge(sheets)
    if as_json:
        click.echo(json.dumps(check_json(sheets, findings), ensure_ascii=False, allow_nan=False))
    else:
        for text, style in check_lines(sheets, findings, file, everything=everything):
            click.secho(text, **STYLES[style])
    sys.exit(1 if any(finding.verdict == "fail" for finding in findings) else 0)


@main.command(short_help="Show the working of one figure.")
@FILE
@click.argument("id")
@click.option("--steps", type=click.IntRange(min=0), help="Stop after so many steps down.")
def show(file: str, id: str, steps: int | None) -> None:
    """Show the working of one figure of FILE, down to its roots. ID is as printed by check."""
    build = _read(file, False)
    from curbwright.documents.working import find, working_lines
    from curbwright.sheets import work

    with _said():
        lines = list(working_lines(find(work(build), id), build.cart.units, steps))
    if sys.stdout.isatty() and len(lines) > LONG:
        click.echo_via_pager("\n".join(lines))
    else:
        click.echo("\n".join(lines))


@main.command(short_help="Draw the cart to scale, as SVG and DXF.")
@FILE
@click.option("-o", "--out", "folder", required=True, help="The folder to write to; made if need be.")
def draw(file: str, folder: str) -> None:
    """Draw the cart in FILE: floor plan and curb-side elevation to scale, gas isometric, as SVG and DXF."""
    build = _read(file, False)
    from curbwright.drawings.drawing_set import draw as drawn
    from curbwright.sheets import work

    with _said():
        for path in drawn(work(build), folder):
            click.echo(str(path))


@main.command(short_help="List typical equipment.")
@click.argument("words", nargs=-1)
def catalogue(words: tuple[str, ...]) -> None:
    """List typical equipment whose name or kind holds all the WORDS; `like = "..."` in an item uses one."""
    from curbwright.documents.listing import catalogue_lines

    for line in catalogue_lines(words):
        click.echo(line)


def _read(file: str, as_json: bool) -> Build:
    """Read a build file, or print everything that is wrong with it and leave with 2."""
    from curbwright.build.file import read
    from curbwright.build.problems import report
    from curbwright.errors import BuildFileProblem

    try:
        return read(file)
    except BuildFileProblem as problem:
        if as_json:
            from curbwright.documents.twin import problems_json

            click.echo(json.dumps(problems_json(problem.problems), ensure_ascii=False))
        else:
            click.secho(f"{file} cannot be used yet:", bold=True, err=True)
            click.echo(report(problem.problems), err=True)
        sys.exit(2)


@contextmanager
def _said() -> Iterator[None]:
    """Say our own errors and the file system's in one line, and leave with 2."""
    from curbwright.errors import CurbwrightError

    try:
        yield
    except FileExistsError as error:
        raise _Failed(
            f"{error.filename} is already there; nothing was written. Choose another folder."
        ) from None
    except (CurbwrightError, OSError) as error:
        raise _Failed(str(error)) from None


class _Failed(click.ClickException):
    exit_code = 2
