"""``python -m curbwright`` is the command."""

from curbwright.cli import main

main()
