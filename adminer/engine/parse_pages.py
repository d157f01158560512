"""Kept readings to parsed pages, one after another, sparing those whose reading, notes and names are as they were."""

from __future__ import annotations

import gzip
import hashlib
import zlib
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any, Final

from pydantic import TypeAdapter, ValidationError

from adminer.engine.version import text_digest
from adminer.intake.identity import clipping_id_of
from adminer.records import Advert, Box, Clipping, Note, PageReading, ParsedPage
from adminer.store.readings import load_reading, write_whole

Parser = Callable[[PageReading, Any, tuple[Note, ...]], tuple[Advert, ...]]
SUFFIX: Final = ".parsed.json.gz"


@dataclass(frozen=True, slots=True)
class ReadPage:
    """Hold one page that was read: its place in the file and where its reading lies."""

    file: str
    sha256: str
    leaf: int
    notes: tuple[Note, ...]
    reading: Path


@dataclass(frozen=True, slots=True)
class Unparsed:
    """Hold a page whose words could not be turned into adverts, through a fault of the program."""

    file: str
    leaf: int
    reason: str


def parsed_pages(
    pages: Iterable[ReadPage],
    authorities: Any,
    parse: Parser,
    *,
    version: str,
    problems: list[Unparsed],
    folder: Path,
) -> Iterator[ParsedPage]:
    """Parse page by page; what cannot be parsed is added to `problems` and stays in the database with its words.

    `version` stands for the parser and the authority files; adverts parsed under the same version, from the same
    reading and notes, are taken from `folder`.
    """
    for page in pages:
        kept = load_reading(page.reading)
        if kept is None or kept.reading is None:
            continue
        reading = kept.reading
        place = parsed_path(page, version, folder)
        adverts = _load(place)
        if adverts is None:
            try:
                adverts = parse(reading, authorities, page.notes)
            # the boundary between one page and all others: whatever went wrong with it stops only itself
            except Exception as fault:  # noqa: BLE001
                problems.append(Unparsed(page.file, page.leaf, f"{type(fault).__name__}: {fault}"))
                adverts = ()
            else:
                _save(place, adverts)
        clipping = Clipping(
            kept.clipping_id,
            page.file,
            page.sha256,
            page.leaf,
            reading.width,
            reading.height,
            reading.recipe,
            page.notes,
        )
        yield ParsedPage(clipping, reading, adverts, _advert_of_words(reading, adverts))


def _advert_of_words(reading: PageReading, adverts: tuple[Advert, ...]) -> tuple[str | None, ...]:
    """Name for each word the smallest advert around its middle."""
    by_size: list[tuple[Box, str]] = sorted(
        ((advert.box, advert.advert_id) for advert in adverts), key=lambda pair: pair[0].area
    )
    return tuple(next((name for box, name in by_size if box.holds(*word.box.centre)), None) for word in reading.words)


def parsed_path(page: ReadPage, version: str, folder: Path) -> Path:
    """Return where the adverts of a page lie that were parsed from this very reading, notes and version."""
    reading = hashlib.sha256(page.reading.read_bytes()).hexdigest()
    key = text_digest(version, reading, page.notes)[:12]
    return folder / f"{clipping_id_of(page.sha256, page.leaf)}.{key}{SUFFIX}"


def _save(place: Path, adverts: tuple[Advert, ...]) -> None:
    clipping_id = place.name.split(".", 1)[0]
    outdated = [path for path in place.parent.glob(f"{clipping_id}.*{SUFFIX}") if path != place]
    write_whole(place, gzip.compress(_adapter().dump_json(adverts), compresslevel=1, mtime=0))
    for path in outdated:
        path.unlink(missing_ok=True)


def _load(path: Path) -> tuple[Advert, ...] | None:
    try:
        return _adapter().validate_json(gzip.decompress(path.read_bytes()))
    except (OSError, EOFError, zlib.error, ValidationError):
        return None


@lru_cache(maxsize=1)
def _adapter() -> TypeAdapter[tuple[Advert, ...]]:
    return TypeAdapter(tuple[Advert, ...])
