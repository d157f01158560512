"""What single steps of reading are worth: scores with all of them and without each asked for, in one run.

    python -m tests.benchmarks.steps FOLDER
    python -m tests.benchmarks.steps FOLDER --without again

FOLDER holds pictures and their truth.jsonl. Every page is read once with all steps and once without each; the table
gives the F1 of prices and items, the character errors and the CPU seconds of reading. A step that adds nothing on real
scans has no place in the program.
"""

from __future__ import annotations

import argparse
import time
from collections.abc import Callable, Sequence
from contextlib import AbstractContextManager, nullcontext
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory
from unittest.mock import patch

from rich.console import Console
from rich.table import Table

from adminer.layout.clean import Gray
from adminer.reading import first, numerals, sight
from adminer.reading.models import Network
from adminer.reading.placed import PlacedWord
from adminer.reading.seen import Seen
from adminer.score.measure import score_pages
from adminer.score.straight import Readings, find_pictures, parse_all, read_all
from adminer.score.truth import TruePage, read_truth


def _unsettled(_gray: Gray, word: PlacedWord, *, sterling: bool = False) -> PlacedWord:
    return word


def _once(_gray: Gray, seen: Sequence[Seen], _threads: int) -> list[Seen]:
    return list(seen)


def _full() -> Network:
    return "rec"


WITHOUT: dict[str, Callable[[], AbstractContextManager[object]]] = {
    "fractions": partial(patch.object, numerals, "settle_tail", _unsettled),  # the learned reader of fractions
    "quick": partial(patch.object, first, "first_reader", _full),  # the quick network, for the first reading
    "again": partial(patch.object, sight, "second_try", _once),  # the second look at what is unsure
}


def read(folder: Path, truth: Sequence[TruePage]) -> Readings:
    """Read every page of a folder afresh, in this process, where a step may be left out."""
    pictures = find_pictures(folder, [page.file for page in truth if page.readable])
    with TemporaryDirectory() as kept:
        return read_all(pictures, Path(kept))


def main() -> None:
    """Print the table."""
    wishes = argparse.ArgumentParser(description="Scores with every step of reading and without each asked for.")
    wishes.add_argument("folder", type=Path)
    wishes.add_argument("--without", action="append", choices=sorted(WITHOUT), help="all of them when not given")
    asked = wishes.parse_args()
    truth = read_truth(asked.folder / "truth.jsonl")
    table = Table("step", title=f"{len(truth)} pages")
    scores = {}
    for name in ("", *(asked.without or WITHOUT)):
        with WITHOUT.get(name, nullcontext)():
            start = time.process_time()
            pages = read(asked.folder, truth)
            spent = time.process_time() - start
        scores[name] = (score_pages(list(parse_all(pages, None, {})), truth), spent)
    whole, _ = scores[""]
    fields = [name for name, field in whole.fields.items() if "price" in name and field.f1 is not None]
    for heading in (*fields, "character errors", "CPU s"):
        table.add_column(heading, justify="right")
    for name, (score, spent) in scores.items():
        told = [f"{score.fields[field].f1 or 0:.3f}" for field in fields]
        table.add_row(f"without {name}" if name else "all", *told, f"{score.error_rate or 0:.4f}", f"{spent:.0f}")
    Console(width=140).print(table)


if __name__ == "__main__":
    main()
