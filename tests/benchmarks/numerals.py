"""Rules alone beside rules and numeral reader, in one run: on numerals of the press, and on the pages of a truth file.

`python -m tests.benchmarks.numerals --numerals FOLDER` takes a folder that `corpus_demo.press numerals` filled,
`--pages FOLDER` one with truth.jsonl and its pictures.
"""

from __future__ import annotations

import argparse
import json
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from unittest.mock import patch

import cv2
import numpy as np
from numpy.typing import NDArray
from rich.console import Console
from rich.table import Table

from adminer.layout import lay_out
from adminer.layout.recipe import guess_recipe, load_recipes
from adminer.reading import compose as composing
from adminer.reading.detect import Line
from adminer.reading.numeral_model.read import read_numerals
from adminer.reading.numeral_model.settle import take_second_look
from adminer.reading.numerals import settle_numerals
from adminer.reading.placed import PlacedWord, place
from adminer.reading.recognise import read_strips
from adminer.reading.sight import see
from adminer.reading.signs import restore_signs
from adminer.reading.words import split_words
from adminer.records import Clipping, PageReading
from adminer.score.measure import Score, score_pages
from adminer.score.run import notes_by_file
from adminer.score.straight import find_pictures, open_pages, parse_all
from adminer.score.truth import read_truth

Gray = NDArray[np.uint8]
CONSOLE = Console(width=130)


@dataclass(frozen=True, slots=True)
class Numeral:
    """Hold one crop of the press and what it says, spaces left out and raised cents after a point."""

    crop: Gray
    text: str
    form: str


def load_numerals(folder: Path) -> list[Numeral]:
    """Read the crops and labels that the press wrote."""
    found = []
    for line in (folder / "labels.jsonl").read_text(encoding="utf-8").splitlines():
        row = json.loads(line)
        crop = cv2.imread(str(folder / row["file"]), cv2.IMREAD_GRAYSCALE)
        text = row["text"].replace(" ", "." if row["form"].startswith("raised_cents") else "")
        found.append(Numeral(np.asarray(crop, np.uint8), text.replace("c", "¢"), row["form"]))
    return found


def read_by_rules(crops: Sequence[Gray]) -> list[list[PlacedWord]]:
    """Read crops as one strip each with the display reader, the rules for signs and those for raised figures."""
    result = []
    for crop, read in zip(crops, read_strips(crops), strict=True):
        height, width = crop.shape
        line = Line(np.array([[0, 0], [width, 0], [width, height], [0, height]], np.float32), 1.0)
        words = [place(word, line, 0, crop.shape) for word in split_words(crop, read)]
        result.append(settle_numerals(crop, restore_signs(words)))
    return result


def text_of(words: Sequence[PlacedWord]) -> str:
    """Return words as one string to compare: no spaces, one kind of cent sign, no comma of the thousands."""
    return "".join(w.text for w in words).replace("c", "¢").replace(" ", "").strip(".,;:'\"-")


def print_numerals(folder: Path) -> None:
    """Print the share of the press's numerals read right, by form."""
    numerals = load_numerals(folder)
    crops = [one.crop for one in numerals]
    rules = read_by_rules(crops)
    both = [take_second_look(crop, words) for crop, words in zip(crops, rules, strict=True)]
    alone = [r.text.replace("f", "for").replace("c", "¢") for r in read_numerals(crops)]
    alone = [t.replace("^", "" if t.endswith("¢") else ".") for t in alone]
    count, right = Counter[str](), Counter[tuple[str, str]]()
    for i, one in enumerate(numerals):
        for form in (one.form, "all"):
            count[form] += 1
            right[form, "rules"] += text_of(rules[i]) == one.text
            right[form, "both"] += text_of(both[i]) == one.text
            right[form, "network"] += alone[i].strip(".,-") == one.text
    table = Table("form", "numerals", "rules alone", "rules and network", "network alone on the whole crop")
    for form in sorted(count, key=lambda f: (f == "all", f)):
        shares = [f"{right[form, way] / count[form]:.3f}" for way in ("rules", "both", "network")]
        table.add_row(form, str(count[form]), *shares)
    CONSOLE.print(table)


def settle_twice(gray: Gray, words: Sequence[PlacedWord], threads: int = 1) -> list[PlacedWord]:
    """Settle numerals by the rules, then by the network."""
    return take_second_look(gray, settle_numerals(gray, words, threads), threads)


def print_pages(folder: Path) -> None:
    """Print the price fields of a folder without and with the network, each page seen once and composed twice."""
    truth = read_truth(folder / "truth.jsonl")
    recipes = load_recipes()
    without: list[tuple[Clipping, PageReading]] = []
    with_it: list[tuple[Clipping, PageReading]] = []
    for work in find_pictures(folder, (page.file for page in truth if page.readable)):
        for image in open_pages(work):
            name = guess_recipe(image.pixels)[0]
            layout = lay_out(image.pixels, recipes[name])
            seen = see(layout.gray)
            height, width = image.pixels.shape[:2]
            clipping = Clipping(image.clipping_id, image.file, image.sha256, image.leaf, width, height, name)
            without.append((clipping, composing.compose(layout, seen, name, image.clipping_id, image.dpi)))
            with patch.object(composing, "settle_numerals", settle_twice):
                with_it.append((clipping, composing.compose(layout, seen, name, image.clipping_id, image.dpi)))
    names = folder / "names"
    notes = notes_by_file(folder / "notes.csv")
    scores = [
        score_pages(parse_all(way, names if names.is_dir() else None, notes), truth) for way in (without, with_it)
    ]
    CONSOLE.print(page_table(*scores))


def page_table(without: Score, with_it: Score) -> Table:
    """Lay the two scores side by side."""
    table = Table("field", "rules alone F1", "with the network F1")
    for field, tally in without.fields.items():
        other = with_it.fields[field]
        if "price" in field and tally.f1 is not None and other.f1 is not None:
            table.add_row(field, f"{tally.f1:.3f}", f"{other.f1:.3f}")
    table.add_row("error of price confidence", f"{without.calibration or 0:.3f}", f"{with_it.calibration or 0:.3f}")
    return table


def main() -> None:
    """Read the options and print the tables."""
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--numerals", type=Path, help="folder of numerals of the press")
    options.add_argument("--pages", type=Path, help="folder with a truth file")
    asked = options.parse_args()
    if asked.numerals:
        print_numerals(asked.numerals)
    if asked.pages:
        print_pages(asked.pages)


if __name__ == "__main__":
    main()
