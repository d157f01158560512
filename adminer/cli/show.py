"""`adminer show`: one clipping or offer with its crop, its words, its prices and the rule that made it."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from adminer.cli.place import FolderOption, FolderWord, folder_and_name
from adminer.engine.show import describe, write_crop
from adminer.errors import UsageError


def register(app: typer.Typer) -> None:
    """Add the command."""
    app.command("show")(show)


def show(
    folder: FolderWord = None,
    what: Annotated[
        str | None, typer.Argument(help="A clipping id, advert id, offer id, or the file name of a scan.")
    ] = None,
    out: Annotated[Path | None, typer.Option(help="Where to write the picture; here by default.")] = None,
    picture: Annotated[bool, typer.Option("--picture/--no-picture", help="Whether to write the crop.")] = True,
    option: FolderOption = None,
) -> None:
    """Show one clipping or offer: what was read, where on the scan, and why."""
    opened, what = folder_and_name(folder, what, option)
    if what is None:
        raise UsageError("what is to be shown?", remedy=f"name a scan, as in: adminer show {opened.root.name} scan.png")
    found = describe(opened.existing_database(), what)
    for line in found.lines:
        typer.echo(line)
    if picture:
        typer.echo(f"Picture: {write_crop(opened, found, out)}")
