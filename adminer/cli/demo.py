"""`adminer demo`: read the invented clippings file that comes with the program, and answer from it."""

from __future__ import annotations

import shutil
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Annotated, Any, Final

import numpy as np
import typer
from numpy.typing import NDArray

from adminer.cli.digitise import print_summary
from adminer.cli.place import FolderOption, place_of
from adminer.engine.digitise import digitise
from adminer.engine.progress import watcher
from adminer.errors import FolderError
from adminer.intake.scans import open_scan
from adminer.publish.promotion import promotion_page
from adminer.shipped import shipped
from adminer.store.output import as_table, wide_console
from adminer.store.queries import load_questions, run_question

_PARTS: Final = ("clippings.toml", "notes.csv", "objects.csv", "searches.csv", "truth.jsonl", "names", "scans")
# the question, what it is asked of, and the columns that fit a terminal; adminer ask shows them all
_QUESTIONS: Final[tuple[tuple[str, dict[str, str], tuple[str, ...]], ...]] = (
    (
        "set-prices",
        {"line": "Tansy Morn"},
        ("retailer", "line", "piece_or_set", "price", "cardholder_price", "price_without_card", "first_seen"),
    ),
    (
        "card-saving",
        {},
        ("retailer", "line", "piece_or_set", "cardholder_price", "price_without_card", "saving_percent"),
    ),
    ("adverts-without-a-date", {}, ("file", "retailer", "city", "estimate")),
)
_ROWS_SHOWN: Final = 12
PAGE: Final = Path("pictures") / "promotion.html"


def register(app: typer.Typer) -> None:
    """Add the command to the application."""
    app.command("demo")(demo)


def demo(
    place: Annotated[
        Path | None, typer.Argument(metavar="[FOLDER]", help="Where to lay the demo; demo-clippings by default.")
    ] = None,
    workers: Annotated[int | None, typer.Option(help="Worker processes; one a core if left out.")] = None,
    option: FolderOption = None,
) -> None:
    """Read the demo's adverts, answer three questions from them, and draw one page of pictures."""
    folder = place_of(place, option, otherwise=Path("demo-clippings"))
    lay_out_demo(folder)
    print_summary(digitise(folder, workers=workers, watch=watcher()))
    database = folder / "clippings.duckdb"
    questions = load_questions()
    console = wide_console()

    def ask(name: str, values: Mapping[str, str | None]) -> Sequence[Mapping[str, Any]]:
        rows: list[dict[str, Any]] = run_question(database, questions[name], values).to_pylist()
        return rows

    for name, values, columns in _QUESTIONS:
        answer = run_question(database, questions[name], values)
        asked = "".join(f' --{option} "{value}"' for option, value in values.items())
        console.print(f"\n[bold]{questions[name].question}[/bold]  (adminer ask {name}{asked} {folder})")
        console.print(as_table(answer.select(list(columns)).slice(0, _ROWS_SHOWN)))
        if answer.num_rows > _ROWS_SHOWN:
            console.print(f"{answer.num_rows - _ROWS_SHOWN} more rows", style="dim", highlight=False)
    page = promotion_page(ask, lambda file: pixels_of(folder, file), "A promotion, week by week")
    if page is not None:
        path = folder / PAGE
        path.parent.mkdir(exist_ok=True)
        path.write_text(page.html, encoding="utf-8")
        for name, picture in page.pictures.items():
            (path.parent / name).write_bytes(picture)
        console.print("\nThe same in pictures, with the scans that prove it:")
        print(path.resolve())  # noqa: T201 - a path must not be wrapped or coloured


def lay_out_demo(folder: Path) -> None:
    """Copy the demo's scans, notes and names to a folder, leaving alone what is there already.

    Raises FolderError where the folder holds something else.
    """
    if folder.exists() and any(folder.iterdir()) and not (folder / "clippings.toml").exists():
        raise FolderError(
            "holds something else than a clippings folder",
            file=str(folder),
            remedy="name an empty or a new folder after the command",
        )
    source = shipped("corpus_demo")
    folder.mkdir(parents=True, exist_ok=True)
    for part in _PARTS:
        origin, target = source / part, folder / part
        if target.exists():
            continue
        if origin.is_dir():
            shutil.copytree(origin, target)
        elif origin.exists():
            shutil.copy2(origin, target)


def pixels_of(folder: Path, file: str) -> NDArray[np.uint8]:
    """Return the first leaf of a scan of a clippings folder, upright, in original pixels."""
    return next(iter(open_scan(folder / "scans" / file, file))).pixels
