"""The whole way of a folder: scans to readings in worker processes, readings to adverts, adverts to the database."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Final

from adminer.engine.built import built_state, digests_of_texts, write_built_state
from adminer.engine.folder import ClippingsFolder, open_folder
from adminer.engine.lock import folder_lock
from adminer.engine.parse_pages import ReadPage
from adminer.engine.pool import Pool, default_workers
from adminer.engine.progress import Silence, Watcher
from adminer.engine.read_leaf import WORDLESS, WORDLESS_REMEDY, ReadTask, Receipt, load_models, read_leaf
from adminer.engine.sources import Source, find_sources
from adminer.engine.version import (
    PARSING_ROOMS,
    READING_ROOMS,
    STORE_ROOMS,
    files_digest,
    folder_digest,
    rooms_digest,
    text_digest,
)
from adminer.errors import FolderError, MachineError, machine_error
from adminer.intake.identity import clipping_id_of
from adminer.intake.notes import read_notes
from adminer.records import Note
from adminer.shipped import shipped
from adminer.store.readings import (
    is_sound,
    is_unread,
    is_wordless,
    kept_path,
    load_reading,
    older_reading,
    remove_leavings,
)

if TYPE_CHECKING:  # the database library loads slowly, and a run with nothing new does not need it
    from adminer.store.load import LoadedCounts

ReadLeaf = Callable[[ReadTask], Receipt]
_REPORT: Final = "please report it with the scan; the other pages are not touched by it"


@dataclass(frozen=True, slots=True)
class Unread:
    """Hold one page that could not be read, why, and what to do about it."""

    file: str
    leaf: int
    reason: str
    remedy: str | None


@dataclass(frozen=True, slots=True)
class DigitiseSummary:
    """Hold what a run found, read, could not read, and built."""

    files: int
    pages: int
    read_now: int
    kept: int
    unread: tuple[Unread, ...]
    problems: tuple[str, ...]  # about notes, recipes and journal, in sentences
    guesses: tuple[tuple[str, str, str], ...]  # file, recipe, why: pages read now without a recipe asked for
    counts: LoadedCounts | None  # None where the database was up to date
    seconds: float
    doubles: int = 0  # files that show a picture another file shows as well


def digitise(
    root: Path,
    *,
    workers: int | None = None,
    watch: Watcher | None = None,
    again: bool = False,
    keep_older: bool = False,
    reader: ReadLeaf = read_leaf,
    start: Callable[[], object] | None = load_models,
) -> DigitiseSummary:
    """Read what is new in a clippings folder and bring its database up to date.

    `again` reads every page afresh; `keep_older` is content with readings of an earlier version of the program.
    Stopped at any point it loses the pages in hand, no more, and goes on from there next time. Raises FolderError
    for a folder or file of it that cannot be understood or is in use, MachineError where the machine refuses.
    """
    began = time.monotonic()
    watch = watch or Silence()
    folder = open_folder(root)
    try:
        folder.readings.mkdir(exist_ok=True)
        with folder_lock(folder.readings / "lock"):
            remove_leavings(folder.readings)
            notes = read_notes(folder.notes)
            sources, lost_notes = find_sources(folder, notes.notes)
            recipes, recipe_problems = _recipes(folder, notes.notes)
            tasks = tuple(_tasks(folder, sources, recipes))
            kept = {} if again else _kept(folder, tasks, keep_older)
            new = [task for task in tasks if task not in kept]
            workers = workers or folder.settings.workers
            crashes, guesses = _read(new, workers, watch, reader, start)
            pages, unread = _sort_out(folder, sources, tasks, kept, crashes)
            counts, faults = _bring_up_to_date(folder, sources, pages, unread, workers, watch)
    except OSError as fault:
        raise machine_error(fault, folder.root) from None
    return DigitiseSummary(
        files=sum(len(source.files) for source in sources),
        pages=len(tasks),
        read_now=len(new),
        kept=len(kept),
        unread=tuple(unread),
        problems=(*notes.problems, *lost_notes, *recipe_problems, *faults),
        guesses=tuple(guesses),
        counts=counts,
        seconds=time.monotonic() - began,
        doubles=sum(len(source.files) - 1 for source in sources),
    )


def _recipes(folder: ClippingsFolder, notes: Iterable[Note]) -> tuple[dict[str, str], tuple[str, ...]]:
    """Return the recipe asked for by file, and a sentence for each note that asks for one that does not exist."""
    known = sorted(path.stem for path in shipped("pipelines").glob("*.toml"))
    listed = ", ".join(known)
    default = _recipe_named(folder.settings.recipe, known)
    if folder.settings.recipe and default is None:
        raise FolderError(
            f"asks for the recipe '{folder.settings.recipe}'",
            file=str(folder.root / "clippings.toml"),
            why="there is no such recipe",
            remedy=f"write one of {listed}, or take the line out to have each scan measured",
        )
    asked = {"": default} if default else {}
    problems = []
    for note in notes:
        name = _recipe_named(note.recipe, known)
        if name is not None:
            asked[note.file] = name
        elif note.recipe:
            problems.append(
                f"notes.csv ({note.file}): there is no recipe '{note.recipe}', so the scan is measured; "
                f"write one of {listed}."
            )
    return asked, tuple(problems)


def _recipe_named(text: str | None, known: Iterable[str]) -> str | None:
    """Return the recipe meant by a person, who may write spaces or only the first word ("phone", "magazine")."""
    name = (text or "").strip().lower().replace(" ", "_").replace("-", "_")
    return next((recipe for recipe in known if name in (recipe, recipe.split("_")[0])), None)


def _tasks(folder: ClippingsFolder, sources: Iterable[Source], recipes: dict[str, str]) -> Iterator[ReadTask]:
    version = rooms_digest(READING_ROOMS) + folder_digest(shipped("pipelines"))
    for source in sources:
        asked = next((recipes[note.file] for note in source.notes if note.file in recipes), recipes.get(""))
        key = text_digest(version, asked or "measured")[:12]
        for leaf in range(1, source.leaves + 1):
            path = str(folder.scans / source.files[0])
            yield ReadTask(path, source.files[0], source.sha256, leaf, asked, key, str(folder.readings))


def _kept(folder: ClippingsFolder, tasks: Iterable[ReadTask], keep_older: bool) -> dict[ReadTask, Path]:
    """Return where the outcome of each page lies that was read before under the same recipe and reader."""
    trusted = built_state(folder).get("readings", {})
    kept = {}
    for task in tasks:
        clipping_id = clipping_id_of(task.sha256, task.leaf)
        path = kept_path(folder.readings, clipping_id, task.key)
        if path is None and keep_older:
            path = older_reading(folder.readings, clipping_id)
        if path is not None and (trusted.get(path.name) == path.stat().st_mtime_ns or is_sound(path)):
            kept[task] = path
    return kept


def _read(
    tasks: list[ReadTask],
    workers: int | None,
    watch: Watcher,
    reader: ReadLeaf,
    start: Callable[[], object] | None,
) -> tuple[dict[ReadTask, str], list[tuple[str, str, str]]]:
    """Read the new pages; returns how workers failed by page, and the recipes that were guessed."""
    crashes: dict[ReadTask, str] = {}
    guesses: list[tuple[str, str, str]] = []
    if not tasks:
        return crashes, guesses
    pool: Pool[ReadTask, Receipt] = Pool(reader, start, max(1, min(workers or default_workers(), len(tasks))))
    watch.begin(len(tasks), "Reading pages")
    try:
        for outcome in pool.results(tasks):
            if isinstance(outcome.fault, MachineError):
                raise outcome.fault
            problem = outcome.crash or (str(outcome.fault) if outcome.fault else None)
            if problem:
                crashes[outcome.task] = problem
            receipt = outcome.result
            if receipt is not None and receipt.recipe and outcome.task.recipe is None:
                guesses.append((outcome.task.name, receipt.recipe, receipt.recipe_why))
            watch.step(outcome.task.name, problem or (receipt.problem if receipt else None))
    finally:
        watch.end()
    return crashes, sorted(guesses)


def _sort_out(
    folder: ClippingsFolder,
    sources: Iterable[Source],
    tasks: Iterable[ReadTask],
    kept: Mapping[ReadTask, Path],
    crashes: Mapping[ReadTask, str],
) -> tuple[list[ReadPage], list[Unread]]:
    """Part the pages that have a reading from those that have a reason instead."""
    notes = {source.sha256: source.notes for source in sources}
    pages: list[ReadPage] = []
    unread = [Unread(s.files[0], 1, s.problem, s.remedy) for s in sources if s.problem]
    for task in tasks:
        place = kept.get(task) or kept_path(folder.readings, clipping_id_of(task.sha256, task.leaf), task.key)
        if task in crashes or place is None:
            unread.append(Unread(task.file, task.leaf, crashes.get(task, "was not read"), _REPORT))
        elif is_unread(place):
            reason = load_reading(place)
            if reason is not None:
                unread.append(Unread(task.file, task.leaf, reason.problem or "was not read", reason.remedy))
        else:
            pages.append(ReadPage(task.file, task.sha256, task.leaf, notes[task.sha256], place))
            if is_wordless(place):  # it stays a clipping, to which a person can add at the desk what the machine missed
                unread.append(Unread(task.file, task.leaf, WORDLESS, WORDLESS_REMEDY))
    return pages, sorted(unread, key=lambda item: (item.file, item.leaf))


def _bring_up_to_date(
    folder: ClippingsFolder,
    sources: tuple[Source, ...],
    pages: list[ReadPage],
    unread: list[Unread],
    workers: int | None,
    watch: Watcher,
) -> tuple[LoadedCounts | None, tuple[str, ...]]:
    """Build the database unless it stands for exactly this input; returns its counts and what was wrong on the way."""
    readings = {page.reading.name: page.reading.stat().st_mtime_ns for page in pages}
    state = text_digest(
        rooms_digest(PARSING_ROOMS + STORE_ROOMS),
        files_digest((*folder.files_by_hand, folder.journal)),
        [(source.sha256, source.files) for source in sources],
        readings,
        unread,
    )
    before = built_state(folder)
    if before.get("state") == state and folder.database.is_file():
        return None, tuple(before.get("faults", ()))
    from adminer.engine.assemble import assemble  # noqa: PLC0415 - a run with nothing new needs no parser

    watch.say("Building the database.")
    texts = digests_of_texts(folder)
    rows = [{"file": u.file, "leaf": u.leaf, "reason": u.reason, "remedy": u.remedy} for u in unread]
    counts, faults = assemble(folder, sources, pages, rows, workers=workers, watch=watch)
    scans = {file: source.sha256 for source in sources for file in source.files}
    built = {"state": state, "faults": faults, "readings": readings, "texts": texts, "scans": scans}
    write_built_state(folder, built)
    return counts, faults
