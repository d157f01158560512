"""Score a held-out random story: other names, other pages, other prices than the demo's.

    python -m tests.benchmarks.held_out_story --seed 21 --scans 150
    python -m tests.benchmarks.held_out_story --seed 21 --scans 12 --pictures

Without --pictures the words come as a perfect reader would hand them on, so the table judges parsing and names alone;
with it the story is printed by the press (Chromium and its faces needed), read and scored the whole way.
--empty-names starts without authority files. Every miss is listed with --each.
"""

from __future__ import annotations

import argparse
import tempfile
from pathlib import Path

from rich.console import Console

from adminer.intake.notes import read_notes
from adminer.records import Clipping, Note
from adminer.score.measure import Score, score_pages
from adminer.score.report import field_table, miss_lines
from adminer.score.straight import Readings, find_pictures, parse_all, read_all
from adminer.score.truth import read_truth


def write_story(folder: Path, seed: int, scans: int, *, pictures: bool) -> None:
    """Write a story into a folder, in print or as readings."""
    from corpus_demo.press.browser import press_browser  # the press is no part of the package
    from corpus_demo.press.corpus import write_folder
    from corpus_demo.press.story import make_story
    from corpus_demo.press.text_only import write_text_only

    write_text_only(seed, scans, folder, hide_dates=False, misread=0.0)
    if pictures:
        with press_browser() as browser:
            write_folder(browser, make_story(seed, scans)[1], folder)


def readings_of(folder: Path, *, pictures: bool) -> Readings:
    """Return what was read of a story: by the reader of the program, or as the press set it."""
    from corpus_demo.press.text_only import load_readings

    truth = read_truth(folder / "truth.jsonl")
    if pictures:
        works = find_pictures(folder / "scans", [row.file for row in truth])
        return read_all(works, folder / ".readings")
    pages = zip(load_readings(folder / "readings.jsonl"), truth, strict=True)
    return [(Clipping(r.clipping_id, t.file, "", 1, r.width, r.height, r.recipe), r) for r, t in pages]


def score_story(folder: Path, *, pictures: bool = False, empty_names: bool = False) -> Score:
    """Parse and score a story that was written into a folder."""
    notes: dict[str, tuple[Note, ...]] = {}
    for note in read_notes(folder / "notes.csv").notes:
        notes[note.file] = (*notes.get(note.file, ()), note)
    names = None if empty_names else folder / "names"
    parsed = parse_all(readings_of(folder, pictures=pictures), names, notes)
    return score_pages(parsed, read_truth(folder / "truth.jsonl"))


def main() -> None:
    """Write, parse, score, print."""
    parser = argparse.ArgumentParser(description="Score a held-out random story.")
    parser.add_argument("--seed", type=int, default=21)
    parser.add_argument("--scans", type=int, default=150)
    parser.add_argument("--pictures", action="store_true")
    parser.add_argument("--empty-names", action="store_true")
    parser.add_argument("--each", action="store_true")
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as place:
        write_story(Path(place), asked.seed, asked.scans, pictures=asked.pictures)
        score = score_story(Path(place), pictures=asked.pictures, empty_names=asked.empty_names)
    Console().print(field_table({f"story {asked.seed}, {asked.scans} scans": score}))
    if asked.each:
        print("\n".join(miss_lines(score.misses)))


if __name__ == "__main__":
    main()
