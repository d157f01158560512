"""`adminer show`: one clipping or offer with its crop, its words, its prices and the rule that made it."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from adminer.engine.folder import open_folder
from adminer.engine.show import describe, write_crop


def register(app: typer.Typer) -> None:
    """Add the command."""
    app.command("show")(show)


def show(
    what: Annotated[str, typer.Argument(help="A clipping id, advert id, offer id, or the file name of a scan.")],
    folder: Annotated[Path, typer.Option(help="The clippings folder.")] = Path(),
    out: Annotated[Path | None, typer.Option(help="Where to write the picture; here by default.")] = None,
    picture: Annotated[bool, typer.Option("--picture/--no-picture", help="Whether to write the crop.")] = True,
) -> None:
    """Show one clipping or offer: what was read, where on the scan, and why."""
    opened = open_folder(folder)
    found = describe(opened.existing_database(), what)
    for line in found.lines:
        typer.echo(line)
    if picture:
        typer.echo(f"Picture: {write_crop(opened, found, out)}")
