"""The pages of a truth file read and parsed straight from their pictures, without a database: for measuring at work."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from typing import TypeVar

from adminer.engine.version import READING_ROOMS, folder_digest, rooms_digest, text_digest
from adminer.errors import FolderError, ScanError
from adminer.intake.scans import PageImage, open_scan
from adminer.records import Clipping, Note, PageReading, ParsedPage
from adminer.score.baselines import Baseline, TextLine, cached_baseline, line_of
from adminer.shipped import shipped
from adminer.store.readings import LeafReading, kept_path, load_reading, save_reading

Readings = list[tuple[Clipping, PageReading]]
Page = TypeVar("Page")


@dataclass(frozen=True, slots=True)
class PageWork:
    """Hold one page of one scan to be read: its picture file and its name in the truth."""

    path: Path
    file: str


@dataclass(frozen=True, slots=True)
class PlainPage:
    """Hold the lines that a reader alone gave for one leaf of a scan."""

    file: str
    leaf: int
    lines: tuple[TextLine, ...]


def find_pictures(folder: Path, files: Iterable[str]) -> tuple[PageWork, ...]:
    """Find the pictures of a truth file in folder/scans, folder/images or the folder itself.

    Raises FolderError when one is missing.
    """
    homes = [home for home in (folder / "scans", folder / "images", folder) if home.is_dir()]
    works = []
    for file in dict.fromkeys(files):
        path = next((home / file for home in homes if (home / file).is_file()), None)
        if path is None:
            raise FolderError(
                "the truth speaks of a picture that is not there",
                file=file,
                why=f"none of {', '.join(map(str, homes)) or folder} holds it",
                remedy="give the folder that holds the pictures of this truth",
            )
        works.append(PageWork(path, file))
    return tuple(works)


def open_pages(work: PageWork) -> Iterator[PageImage]:
    """Open every leaf of a scan; a scan that cannot be opened gives none."""
    try:
        yield from open_scan(work.path, work.file)
    except ScanError:
        return


def read_straight(work: PageWork, cache: Path, recipe: str | None = None) -> Readings:
    """Read every leaf of a scan, or take what the same code read before from `cache`."""
    from adminer.layout.recipe import guess_recipe, load_recipes  # noqa: PLC0415 -- heavy rooms, only in the worker
    from adminer.reading import read_page  # noqa: PLC0415

    recipes, pages = load_recipes(), []
    for image in open_pages(work):
        height, width = image.pixels.shape[:2]
        name = recipe or guess_recipe(image.pixels)[0]
        key = f"{name}.{reader_digest()}"
        path = kept_path(cache, image.clipping_id, key)
        kept = load_reading(path) if path else None
        reading = kept.reading if kept else None
        if reading is None:
            reading = read_page(image.pixels, recipes[name], image.clipping_id, image.dpi)
            cache.mkdir(parents=True, exist_ok=True)
            save_reading(cache, LeafReading(image.clipping_id, image.sha256, image.leaf, key, "", reading))
        clipping = Clipping(image.clipping_id, image.file, image.sha256, image.leaf, width, height, name)
        pages.append((clipping, reading))
    return pages


def reader_digest() -> str:
    """Return a digest of the code and recipes that decide a reading: a change there reads afresh."""
    return text_digest(rooms_digest(READING_ROOMS), folder_digest(shipped("pipelines")))


def read_all(works: Iterable[PageWork], cache: Path, workers: int = 1) -> Readings:
    """Read every leaf of every scan, in the order given, in this process or in several."""
    return _by_all(partial(read_straight, cache=cache), works, workers)


def parse_all(readings: Readings, names: Path | None, notes: dict[str, tuple[Note, ...]]) -> Iterator[ParsedPage]:
    """Parse readings; `names` is a folder of authority files, `notes` the notes of each file."""
    from adminer.names.authority import load_authorities  # noqa: PLC0415 -- heavy rooms, only where wanted
    from adminer.parsing import parse_page  # noqa: PLC0415

    authorities = load_authorities(names)
    for clipping, reading in readings:
        mine = notes.get(clipping.file, ())
        yield ParsedPage(replace(clipping, notes=mine), reading, parse_page(reading, authorities, mine))


def lines_of(reading: PageReading) -> tuple[TextLine, ...]:
    """Return a reading as plain lines, as if a reader had given them: what the naive pattern makes of it."""
    lines: dict[int, list[TextLine]] = {}
    for word in reading.words:
        lines.setdefault(word.line, []).append(TextLine(word.text, word.box, word.confidence))
    return tuple(line_of(words) for words in lines.values())


def read_baseline_straight(work: PageWork, reader: Baseline, cache: Path, *, fresh: bool = False) -> list[PlainPage]:
    """Read every leaf of a scan with one baseline, each whole and as it is."""
    return [
        PlainPage(image.file, image.leaf, cached_baseline(reader, image.pixels, image.clipping_id, cache, fresh=fresh))
        for image in open_pages(work)
    ]


def baseline_straight(
    works: Iterable[PageWork], reader: Baseline, cache: Path, *, fresh: bool = False, workers: int = 1
) -> list[PlainPage]:
    """Read scans with one baseline, in the order given, in this process or in several."""
    return _by_all(partial(read_baseline_straight, reader=reader, cache=cache, fresh=fresh), works, workers)


def _by_all(read: Callable[[PageWork], list[Page]], works: Iterable[PageWork], workers: int) -> list[Page]:
    if workers == 1:
        return [page for work in works for page in read(work)]
    with ProcessPoolExecutor(workers) as pool:
        return [page for pages in pool.map(read, works) for page in pages]
