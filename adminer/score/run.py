"""One run of scoring: ours and the two readers alone, on the same pages against the same truth."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from adminer.errors import UsageError
from adminer.records import Note
from adminer.score.baselines import BASELINES, TITLES, found_by_baseline
from adminer.score.confirmed import kept_readings, truth_of_confirmed
from adminer.score.database import found_in_database
from adminer.score.floors import check_floors, corpus_digest, pin_floors, read_floors, write_floors
from adminer.score.found import FoundPage
from adminer.score.measure import Score, score_found, score_pages
from adminer.score.straight import PageWork, baseline_straight, find_pictures, lines_of, parse_all, read_all
from adminer.score.truth import TruePage, read_truth
from adminer.store.journal import read_journal

OURS: Final = "adminer"
READING: Final = "its reading with a naive pattern"


@dataclass(frozen=True, slots=True)
class ScoreWish:
    """Hold what is to be scored and how."""

    folder: Path
    truth: Path
    cache: Path
    baselines: bool = True
    fresh: bool = False
    straight: bool = False
    parsing: bool = True
    workers: int = 1


def score_folder(wish: ScoreWish, told: Callable[[str], None]) -> dict[str, Score]:
    """Score a folder and, where wished, the baselines; `told` hears what is going on.

    Raises FolderError where truth, pictures or database are missing.
    """
    truth = read_truth(wish.truth)
    works = find_pictures(wish.folder, (page.file for page in truth if page.readable))
    scores = _straight(wish, works, truth) if wish.straight else {OURS: score_found(_digitised(wish.folder), truth)}
    if wish.baselines:
        for reader in BASELINES:
            told(f"Reading {len(works)} scans with {TITLES[reader]} (kept readings are used unless --fresh).")
            pages = baseline_straight(works, reader, wish.cache / "baselines", fresh=wish.fresh, workers=wish.workers)
            found = (found_by_baseline(page.file, page.leaf, page.lines) for page in pages)
            scores[TITLES[reader]] = score_found(found, truth)
    return scores


def score_confirmed(folder: Path) -> Score:
    """Score the reading of a folder as it came from the readers against what persons confirmed and corrected in it.

    Raises FolderError where it is no clippings folder, UsageError where nobody has confirmed anything yet.
    """
    from adminer.engine.folder import open_folder  # noqa: PLC0415 -- only a clippings folder has a journal

    home = open_folder(folder)
    parsed = tuple(parse_all(kept_readings(home.readings, home.scans), home.names, notes_by_file(home.notes)))
    truth = truth_of_confirmed(parsed, read_journal(home.journal))
    if not truth:
        raise UsageError(
            "nothing is confirmed yet",
            file=str(folder),
            remedy="confirm some offers with adminer desk, or give --truth",
        )
    asked = {(page.file, page.leaf) for page in truth}
    return score_pages((page for page in parsed if (page.clipping.file, page.clipping.leaf) in asked), truth)


def apply_floors(wish: ScoreWish, score: Score, path: Path, corpus: str, *, pin: bool, reason: str | None) -> str:
    """Check a score against the floors of a corpus in a file, or pin them there; returns one line about it.

    Raises QualityError where the score is below them, UsageError where pinning would lower one without a reason.
    """
    works = find_pictures(wish.folder, (page.file for page in read_truth(wish.truth)))
    digest = corpus_digest(wish.truth, (work.path for work in works))
    every = read_floors(path)
    old = every.get(corpus)
    if pin:
        write_floors(path, {**every, corpus: pin_floors(score, old, digest, reason)})
        return f"Floors of {corpus} pinned in {path}."
    if old is None:
        raise UsageError(f"there are no floors of {corpus} yet", file=str(path), remedy="pin them with --pin")
    check_floors(score, old, digest)
    return f"Above every floor of {corpus} in {path}."


def _digitised(folder: Path) -> tuple[FoundPage, ...]:
    from adminer.engine.folder import open_folder  # noqa: PLC0415 -- only a clippings folder has a database

    return found_in_database(open_folder(folder).existing_database())


def _straight(wish: ScoreWish, works: tuple[PageWork, ...], truth: tuple[TruePage, ...]) -> dict[str, Score]:
    """Score what the stages make of the pictures, and what the naive pattern makes of the same reading."""
    readings = read_all(works, wish.cache / "straight", wish.workers)
    plain = (found_by_baseline(clipping.file, clipping.leaf, lines_of(reading)) for clipping, reading in readings)
    reading_alone = {READING: score_found(plain, truth)}
    if not wish.parsing:
        return reading_alone
    names = wish.folder / "names"
    parsed = parse_all(readings, names if names.is_dir() else None, notes_by_file(wish.folder / "notes.csv"))
    return {OURS: score_pages(parsed, truth), **reading_alone}


def notes_by_file(path: Path) -> dict[str, tuple[Note, ...]]:
    """Return the notes of each file of a notes.csv; none where there is no such file."""
    from adminer.intake.notes import read_notes  # noqa: PLC0415 -- not needed with a database

    by_file: dict[str, list[Note]] = defaultdict(list)
    if path.is_file():
        for note in read_notes(path).notes:
            by_file[note.file].append(note)
    return {file: tuple(notes) for file, notes in by_file.items()}
