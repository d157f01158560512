"""`adminer status`: what a folder holds, what could not be read, what changed since."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from adminer.engine.status import folder_status
from adminer.store.plain import clean


def register(app: typer.Typer) -> None:
    """Add the command."""
    app.command("status")(status)


def status(folder: Annotated[Path, typer.Argument(help="The clippings folder.")] = Path()) -> None:
    """Say what a folder holds, what could not be read and why, and what changed since the last run."""
    for line in folder_status(folder):
        typer.echo(clean(line))
