"""`adminer status`: what a folder holds, what could not be read, what changed since."""

from __future__ import annotations

import typer

from adminer.cli.place import Folder, FolderOption, place_of
from adminer.engine.status import folder_status
from adminer.store.plain import clean


def register(app: typer.Typer) -> None:
    """Add the command."""
    app.command("status")(status)


def status(folder: Folder = None, option: FolderOption = None) -> None:
    """Say what a folder holds, what could not be read and why, and what changed since the last run."""
    for line in folder_status(place_of(folder, option)):
        typer.echo(clean(line))
