"""The command `adminer`: one typer application, one module a command, one place for exit codes."""

from __future__ import annotations

import importlib
import sys
from collections.abc import Sequence
from typing import Final

import typer
from rich.console import Console

from adminer.errors import INTERRUPTED, AdminerError, exit_code_of
from adminer.store.plain import clean

COMMANDS: Final[tuple[str, ...]] = (  # modules of this folder, in the order of the help page
    "demo",
    "new",
    "digitise",
    "ask",
    "names",
    "sql",
    "show",
    "status",
    "date",
    "runs",
    "money",
    "desk",
    "score",
    "doctor",
)

app = typer.Typer(
    help="Read old grocery and department-store adverts into a database of dated, cited offers.",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
)


EXIT_CODES: Final = (
    "Exit codes: 0 all done; 2 wrong use; 3 some scans could not be read, the rest is done; 4 the folder or a file of "
    "it is not as expected; 5 the disk is full or may not be written, or a program is missing; 6 quality below the "
    "pinned floors; 7 a query was refused or failed; 130 stopped by Ctrl-C."
)


@app.callback(epilog=EXIT_CODES)
def adminer() -> None:
    """Read old grocery and department-store adverts into a database of dated, cited offers."""


def build(names: Sequence[str] = COMMANDS) -> typer.Typer:
    """Register command modules; each has a function `register(app)` and is named as its command."""
    if not app.registered_commands and not app.registered_groups:
        for name in names:
            importlib.import_module(f"adminer.cli.{name}").register(app)
    return app


def run() -> None:
    """Run the command line and turn errors into a message and an exit code."""
    try:
        # the modules of the other commands would load libraries that this one does not need
        named = sys.argv[1:2]
        build(named if set(named) & set(COMMANDS) else COMMANDS)(standalone_mode=True)
    except AdminerError as error:
        Console(stderr=True, soft_wrap=True, highlight=False).print(clean(str(error)), style="red", markup=False)
        sys.exit(exit_code_of(error))
    except (KeyboardInterrupt, SystemExit) as stop:
        # typer itself turns Ctrl-C into an exit with this code, without a word
        if isinstance(stop, SystemExit) and stop.code != INTERRUPTED:
            raise
        Console(stderr=True).print("Stopped. What was read is kept; the same command goes on from here.")
        sys.exit(INTERRUPTED)


if __name__ == "__main__":
    run()
