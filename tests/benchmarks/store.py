"""The store: loading by Arrow against row by row, a rebuild from kept readings, a second digitise with nothing new.

    python -m tests.benchmarks.store --pages 400

Ratios are against the slower way in the same run. Pages are invented; no scan is read.
"""

from __future__ import annotations

import argparse
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

import duckdb
from rich.console import Console
from rich.table import Table

from adminer.engine.digitise import digitise
from adminer.engine.folder import create_folder
from adminer.store.load import SCHEMA, build_database, insert_rows
from adminer.store.rows import page_rows
from tests.engine import fakes
from tests.intake.pictures import card, save
from tests.store.story import story


def seconds_of(work: Callable[[], object]) -> float:
    """Return how long a piece of work takes by the clock."""
    begun = time.perf_counter()
    work()
    return time.perf_counter() - begun


def by_row(rows: list[dict[str, object]]) -> None:
    """Load words one row at a time: the baseline."""
    with duckdb.connect() as connection:
        connection.execute(SCHEMA.read_text())
        names = list(rows[0])
        marks = ", ".join("?" for _name in names)
        sql = f"INSERT INTO words ({', '.join(names)}) VALUES ({marks})"
        connection.executemany(sql, [list(row.values()) for row in rows])


def by_arrow(rows: list[dict[str, object]]) -> None:
    """Load the same words in bulk, as the store does."""
    with duckdb.connect() as connection:
        connection.execute(SCHEMA.read_text())
        insert_rows(connection, "words", rows)


def loading(table: Table, pages: int, folder: Path) -> None:
    """Measure loading."""
    words = [row for page in story(pages) for row in page_rows(page)["words"]] * 5
    slow, fast = seconds_of(lambda: by_row(words)), seconds_of(lambda: by_arrow(words))
    table.add_row("load words row by row", f"{len(words) / slow:,.0f} rows/s", "1.0")
    table.add_row("load words by Arrow", f"{len(words) / fast:,.0f} rows/s", f"{slow / fast:.1f}")
    many = list(story(pages * 5))
    whole = seconds_of(lambda: build_database(folder / "many.duckdb", many))
    table.add_row("build a database", f"{len(many) / whole:,.0f} adverts/s", "")


def second_run(table: Table, pages: int, folder: Path) -> None:
    """Measure a run with nothing new, in a process of its own as a person starts it, against the first run."""
    made = create_folder(folder / "file")
    for number in range(pages):
        save(card(words=f"CUP {number}"), made.scans / f"{number:05}.png")
    first = seconds_of(lambda: digitise(made.root, reader=fakes.read, start=None))
    table.add_row(f"first digitise of {pages} pages, a reader that reads nothing", f"{first:.2f} s", "1.0")
    rebuilt = seconds_of(lambda: _rebuild(made.root))
    table.add_row("database rebuilt from what was kept", f"{rebuilt:.2f} s", f"{first / rebuilt:.1f}")
    command = [sys.executable, "-m", "adminer.cli.main", "digitise", str(made.root)]
    second = min(seconds_of(lambda: subprocess.run(command, check=True, capture_output=True)) for _time in range(3))
    table.add_row(
        "second digitise with nothing new, start of Python included", f"{second:.2f} s", f"{first / second:.1f}"
    )


def _rebuild(root: Path) -> None:
    (root / "clippings.duckdb").unlink()
    digitise(root, reader=fakes.read, start=None)


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--pages", type=int, default=400)
    pages = parser.parse_args().pages
    table = Table("what", "measured", "times faster", title=f"The store, {pages} pages")
    with tempfile.TemporaryDirectory() as folder:
        loading(table, pages, Path(folder))
        second_run(table, pages, Path(folder))
    Console().print(table)


if __name__ == "__main__":
    main()
