"""The print shop's counter: fonts, fractions, items, print, quick, story, numerals."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Annotated

import typer

from adminer.parsing.items.reconsider import WEIGHTS as ITEM_WEIGHTS
from adminer.reading.fraction_model.answer import WEIGHTS
from adminer.reading.models import QUICK

from . import fonts, item_training
from .browser import press_browser
from .corpus import write_folder
from .demo import scans
from .fraction_training import train
from .sampler import print_numerals
from .story import make_story
from .text_only import write_text_only
from .world import names_files

app = typer.Typer(add_completion=False, no_args_is_help=True)
HERE = Path(__file__).resolve().parents[1]
Out = Annotated[Path, typer.Option(help="Folder to write into.")]
Seed = Annotated[int, typer.Option(help="The same seed gives the same result.")]


@app.command("fonts")
def install_fonts() -> None:
    """Install the faces with npm (a development step)."""
    fonts.install()
    absent = fonts.missing()
    if absent:
        sys.exit(f"not installed: {', '.join(absent)}")


@app.command("fractions")
def train_fractions(
    seed: Seed = 1,
    count: Annotated[int, typer.Option(help="How many strikes to train on.")] = 96_000,
    out: Annotated[Path, typer.Option(help="File of the weights.")] = WEIGHTS,
) -> None:
    """Train the learned reader of fractions; takes minutes."""
    _need_fonts()
    train(seed, count, out)


@app.command("items")
def train_items(
    seed: Seed = 3,
    count: Annotated[int, typer.Option(help="How many sheets to print, read and learn from.")] = 560,
    out: Annotated[Path, typer.Option(help="File of the weights.")] = ITEM_WEIGHTS,
) -> None:
    """Learn the weights by which items are chosen again; takes minutes."""
    _need_fonts()
    judged = item_training.train(seed, count, out)
    typer.echo(f"{len(judged)} groups of prices")


@app.command("quick")
def make_quick_network(
    seed: Seed = 1,
    count: Annotated[int, typer.Option(help="How many lines of the demo's scans to make it on.")] = 220,
    out: Annotated[Path, typer.Option(help="File of the network.")] = QUICK,
) -> None:
    """Make the quick network of the first reading from the full one; takes a minute or two."""
    from .quick_training import train  # noqa: PLC0415 -- its tool is no package that printing needs

    train(HERE / "scans", seed, count, out)


@app.command("print")
def print_demo(
    out: Out = HERE, only: Annotated[str, typer.Option(help="Only files whose name holds this.")] = ""
) -> None:
    """Print the demo corpus; with --only, truth and notes of the chosen files alone."""
    _need_fonts()
    chosen = [spec for spec in scans() if only in (spec.leaf_of or spec.file)]
    with press_browser() as browser:
        write_folder(browser, chosen, out)


@app.command()
def story(
    out: Out,
    seed: Seed = 1,
    scans: Annotated[int, typer.Option(help="How many scans.")] = 10,
    text_only: Annotated[bool, typer.Option(help="Readings and truth without pictures.")] = False,
    hide_dates: Annotated[
        bool, typer.Option(help="No year in notes or print; the truth alone keeps the date.")
    ] = False,
    misread: Annotated[float, typer.Option(help="Chance of a wrong letter (text only).")] = 0.0,
) -> None:
    """Print a held-out random story: other names, other lines, other pages."""
    out.mkdir(parents=True, exist_ok=True)
    (out / "clippings.toml").write_text('title = "A held-out story"\nyears = [1938, 1964]\n', encoding="utf-8")
    if text_only:
        write_text_only(seed, scans, out, hide_dates=hide_dates, misread=misread)
        return
    _need_fonts()
    world, specs = make_story(seed, scans, hide_dates=hide_dates)
    (out / "names").mkdir(exist_ok=True)
    for name, text in names_files(world).items():
        (out / "names" / name).write_text(text, encoding="utf-8")
    with press_browser() as browser:
        write_folder(browser, specs, out)


@app.command()
def numerals(out: Out, seed: Seed = 1, count: Annotated[int, typer.Option(help="How many crops.")] = 1000) -> None:
    """Print labelled crops of price numerals in every form, worn like the scans."""
    _need_fonts()
    with press_browser() as browser:
        print_numerals(browser, seed, count, out)


def _need_fonts() -> None:
    if fonts.missing():
        sys.exit("The faces are not installed: run python -m corpus_demo.press fonts")


if __name__ == "__main__":
    app()
