"""`adminer score`: how good the reading of a folder is, measured against a truth and beside the readers alone."""

from __future__ import annotations

import tempfile
from pathlib import Path
from typing import Annotated

import typer
from rich.console import Console

from adminer.cli.place import FolderOption, place_of
from adminer.engine.pool import default_workers
from adminer.score.report import cause_table, curve_table, field_table, miss_lines
from adminer.score.run import OURS, ScoreWish, apply_floors, score_confirmed, score_folder


def register(app: typer.Typer) -> None:
    """Add the command."""
    app.command(name="score")(score)


def score(
    folder: Annotated[
        Path | None, typer.Argument(help="A digitised clippings folder (or, with --straight, any of pictures).")
    ] = None,
    *,
    truth: Annotated[Path | None, typer.Option(help="The truth file; by default truth.jsonl of the folder.")] = None,
    causes: Annotated[bool, typer.Option("--causes", help="Say why prices were missed, by typographic form.")] = False,
    each: Annotated[bool, typer.Option("--each", help="List every miss.")] = False,
    curve: Annotated[bool, typer.Option("--curve", help="Show the reliability curve of price confidence.")] = False,
    baselines: Annotated[bool, typer.Option(help="Measure the two readers alone in the same run.")] = True,
    fresh: Annotated[
        bool, typer.Option("--fresh", help="Run the readers alone anew instead of from the cache.")
    ] = False,
    confirmed: Annotated[
        bool, typer.Option("--confirmed", help="Take what you confirmed at the desk as the truth.")
    ] = False,
    straight: Annotated[
        bool, typer.Option("--straight", help="Read and parse the pictures now, without the database.")
    ] = False,
    floors: Annotated[
        Path | None, typer.Option(help="Check against the floors of this file (tests/floors.toml).")
    ] = None,
    corpus: Annotated[
        str | None, typer.Option(help="Which corpus of the floors; by default the folder's name.")
    ] = None,
    pin: Annotated[bool, typer.Option("--pin", help="Raise the floors of --floors to what was reached.")] = False,
    lower_floor: Annotated[str | None, typer.Option(help="Let --pin lower floors, for this reason.")] = None,
    parsing: Annotated[bool, typer.Option(help="With --straight: parse, or only measure the reading.")] = True,
    cache: Annotated[
        Path | None,
        typer.Option(help="Where readings are kept; by default .readings of a clippings folder, else temporary files."),
    ] = None,
    workers: Annotated[int | None, typer.Option(min=1, help="Processes that read; one a core if left out.")] = None,
    option: FolderOption = None,
) -> None:
    """Score a digitised folder against a truth file, beside plain Tesseract and the display reader alone."""
    root = place_of(folder, option)
    wish = ScoreWish(
        folder=root,
        truth=truth or root / "truth.jsonl",
        baselines=baselines,
        fresh=fresh,
        straight=straight,
        parsing=parsing,
        cache=cache or _cache_of(root),
        workers=workers or default_workers(),
    )
    console = Console(width=None if Console().is_terminal else 160)
    if confirmed:
        scores = {OURS: score_confirmed(root)}
    else:
        scores = score_folder(wish, told=Console(stderr=True, soft_wrap=True).print)
    ours = next(iter(scores.values()))
    console.print(field_table(scores))
    if ours.missing:
        console.print(f"Not read or not in the database: {', '.join(ours.missing)}", markup=False)
    if curve:
        console.print(curve_table(ours))
    if causes:
        console.print(cause_table(ours.misses))
    if each:
        console.print("\n".join(miss_lines(ours.misses)), markup=False, highlight=False, soft_wrap=True)
    if floors:
        name = corpus or root.resolve().name
        console.print(apply_floors(wish, ours, floors, name, pin=pin, reason=lower_floor), markup=False)


def _cache_of(folder: Path) -> Path:
    """Return the folder's own place for readings, or one among temporary files where the folder takes none."""
    if (folder / "clippings.toml").is_file():
        return folder / ".readings"
    return Path(tempfile.gettempdir()) / "adminer-score" / folder.resolve().name
