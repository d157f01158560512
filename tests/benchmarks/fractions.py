"""What the learned reader of fractions adds to the rules: scores with it and without it, in one run.

    python -m tests.benchmarks.fractions FOLDER

FOLDER holds pictures and their truth.jsonl. Every page is read twice; the table gives the F1 of prices and items.
"""

from __future__ import annotations

import argparse
from collections.abc import Callable, Sequence
from pathlib import Path
from unittest.mock import patch

from rich.console import Console
from rich.table import Table

from adminer.layout.clean import Gray
from adminer.layout.recipe import guess_recipe, load_recipes
from adminer.reading import numerals, read_page
from adminer.reading.placed import PlacedWord
from adminer.reading.tails import settle_tail
from adminer.records import Clipping, PageReading
from adminer.score.measure import score_pages
from adminer.score.straight import find_pictures, open_pages, parse_all
from adminer.score.truth import TruePage, read_truth

Settle = Callable[..., PlacedWord]


def by_rules(_gray: Gray, word: PlacedWord, *, sterling: bool = False) -> PlacedWord:
    """Return the word as it is: what the pipeline did before the learned reader."""
    return word


def readings(folder: Path, truth: Sequence[TruePage], settle: Settle) -> list[tuple[Clipping, PageReading]]:
    """Read every page of a folder with one way to settle the ends of numerals."""
    recipes, pages = load_recipes(), []
    for work in find_pictures(folder, [page.file for page in truth if page.readable]):
        for image in open_pages(work):
            height, width = image.pixels.shape[:2]
            name = guess_recipe(image.pixels)[0]
            with patch.object(numerals, "settle_tail", settle):
                reading = read_page(image.pixels, recipes[name], image.clipping_id, image.dpi)
            clipping = Clipping(image.clipping_id, image.file, image.sha256, image.leaf, width, height, name)
            pages.append((clipping, reading))
    return pages


def main() -> None:
    """Print the table."""
    wishes = argparse.ArgumentParser(description=__doc__)
    wishes.add_argument("folder", type=Path)
    folder = wishes.parse_args().folder
    truth = read_truth(folder / "truth.jsonl")
    table = Table(title=f"F1 on {len(truth)} pages")
    table.add_column("field")
    contestants: dict[str, Settle] = {"rules alone": by_rules, "with the learned reader": settle_tail}
    columns = []
    for name, settle in contestants.items():
        table.add_column(name, justify="right")
        columns.append(score_pages(list(parse_all(readings(folder, truth, settle), None, {})), truth))
    for field in columns[0].fields:
        if "price" in field:
            table.add_row(field, *(f"{column.fields[field].f1 or 0:.3f}" for column in columns))
    Console(width=100).print(table)


if __name__ == "__main__":
    main()
