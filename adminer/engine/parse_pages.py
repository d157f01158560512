"""Kept readings to parsed pages, one after another, sparing those whose reading, notes and names are as they were."""

from __future__ import annotations

import gzip
import zlib
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any, Final

from pydantic import TypeAdapter, ValidationError

from adminer.engine.version import text_digest
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


@dataclass(frozen=True, slots=True)
class _Kept:
    key: str
    adverts: tuple[Advert, ...]


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
        key = text_digest(version, kept.key, page.notes)
        place = folder / f"{kept.clipping_id}{SUFFIX}"
        adverts = _load(place, key)
        if adverts is None:
            try:
                adverts = parse(reading, authorities, page.notes)
            # the boundary between one page and all others: whatever went wrong with it stops only itself
            except Exception as fault:  # noqa: BLE001
                problems.append(Unparsed(page.file, page.leaf, f"{type(fault).__name__}: {fault}"))
                adverts = ()
            else:
                write_whole(place, gzip.compress(_adapter().dump_json(_Kept(key, adverts)), compresslevel=1, mtime=0))
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


def _load(path: Path, key: str) -> tuple[Advert, ...] | None:
    try:
        kept = _adapter().validate_json(gzip.decompress(path.read_bytes()))
    except (OSError, EOFError, zlib.error, ValidationError):
        return None
    return kept.adverts if kept.key == key else None


@lru_cache(maxsize=1)
def _adapter() -> TypeAdapter[_Kept]:
    return TypeAdapter(_Kept)
