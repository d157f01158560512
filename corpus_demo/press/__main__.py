"""The print shop's counter: fonts, print."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Annotated

import typer

from . import fonts
from .browser import press_browser
from .corpus import write_folder
from .demo import scans

app = typer.Typer(add_completion=False, no_args_is_help=True)
HERE = Path(__file__).resolve().parents[1]


@app.command("fonts")
def install_fonts() -> None:
    """Install the faces with npm (a development step)."""
    fonts.install()
    absent = fonts.missing()
    if absent:
        sys.exit(f"not installed: {', '.join(absent)}")


@app.command("print")
def print_demo(
    out: Annotated[Path, typer.Option(help="folder to print into")] = HERE,
    only: Annotated[
        str, typer.Option(help="print only files whose name holds this; truth and notes of these alone")
    ] = "",
) -> None:
    """Print the demo corpus."""
    chosen = [spec for spec in scans() if only in (spec.leaf_of or spec.file)]
    with press_browser() as browser:
        write_folder(browser, chosen, out)


if __name__ == "__main__":
    app()
