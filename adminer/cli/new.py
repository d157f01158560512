"""`adminer new`: make a clippings folder."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from adminer.engine.folder import create_folder, list_scans


def register(app: typer.Typer) -> None:
    """Add the command."""
    app.command("new")(new)


def new(
    folder: Annotated[Path, typer.Argument(help="The folder to make.")],
    title: Annotated[str | None, typer.Option(help="What the file of clippings is called.")] = None,
    scans: Annotated[
        list[Path] | None, typer.Option(help="A scan, or a folder whose pictures to copy into it; may be given again.")
    ] = None,
) -> None:
    """Make a clippings folder: settings, notes, names, and a place for the scans."""
    made = create_folder(folder, title, scans or ())
    count = len(list_scans(made))
    typer.echo(f"Made {made.root} with {count} scan{'' if count == 1 else 's'}.")
    if count == 0:
        typer.echo(f"Put scans into {made.scans}.")
    typer.echo(f"Then read them: adminer digitise {folder}")
