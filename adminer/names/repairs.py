"""The repair list of a folder: words the reader misread more than once, and what a person said they are.

The file names/repairs.toml, kept by the desk and open to any editor::

    [[repair]]
    read = "sauter"
    is = "saucer"
    seen = 3

A repair changes what the parser sees, never what is kept as read: the words of the database stay as printed.
"""

from __future__ import annotations

import difflib
import re
import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Final

from rapidfuzz import fuzz

from adminer.errors import FolderError
from adminer.records import PageReading

FILE_NAME: Final = "repairs.toml"
LEAST_ALIKE: Final = 60.0  # a misreading keeps most letters; cup for saucer is a change of mind, not a repair
SHORTEST: Final = 3
_EDGES: Final = re.compile(r"^(\W*)(.*?)(\W*)$", re.DOTALL)


def load_repairs(folder: Path) -> dict[str, str]:
    """Return the repairs of a names/ folder: the right word by the misread one in lower case; none without a file.

    Raises FolderError where the file cannot be understood.
    """
    path = folder / FILE_NAME
    try:
        rows = tomllib.loads(path.read_text(encoding="utf-8-sig")).get("repair", [])
        return {str(row["read"]).lower(): str(row["is"]) for row in rows}
    except FileNotFoundError:
        return {}
    except (tomllib.TOMLDecodeError, UnicodeDecodeError, KeyError, TypeError, AttributeError) as error:
        raise FolderError(
            "the list of repairs cannot be read",
            file=f"{folder.name}/{FILE_NAME}",
            why=str(error),
            remedy="give each [[repair]] the keys 'read' and 'is', or delete the file",
        ) from error


def repair_words(reading: PageReading, repairs: Mapping[str, str]) -> PageReading:
    """Return the reading with its misread words put right, each in the case it was printed in."""
    if not repairs:
        return reading
    return replace(reading, words=tuple(replace(word, text=_repaired(word.text, repairs)) for word in reading.words))


def misreadings(read: str, said: str) -> list[tuple[str, str]]:
    """Return the words of an item that a person changed letter by letter: (misread, right), both in lower case."""
    before, after = _words(read), _words(said)
    found = []
    for tag, start, end, other, stop in difflib.SequenceMatcher(None, before, after, autojunk=False).get_opcodes():
        if tag == "replace" and end - start == stop - other:
            found += list(zip(before[start:end], after[other:stop], strict=True))
    return [
        (wrong, right)
        for wrong, right in found
        if min(len(wrong), len(right)) >= SHORTEST and fuzz.ratio(wrong, right) >= LEAST_ALIKE
    ]


def recurring(
    changes: Iterable[tuple[str, str, str]], known_words: Iterable[str], least: int = 2
) -> dict[str, tuple[str, int]]:
    """Return misreadings seen on several clippings: right word and how many clippings, by the misread word.

    `changes` are (clipping id, read item, said item). A word of the vocabulary is never repaired, and neither is one
    that persons have read in two ways.
    """
    vocabulary = {word.lower() for word in known_words}
    seen: dict[tuple[str, str], set[str]] = {}
    for clipping_id, read, said in changes:
        for pair in misreadings(read, said):
            seen.setdefault(pair, set()).add(clipping_id)
    readings: dict[str, set[str]] = {}
    for wrong, right in seen:
        readings.setdefault(wrong, set()).add(right)
    return {
        wrong: (right, len(clippings))
        for (wrong, right), clippings in sorted(seen.items())
        if len(clippings) >= least and len(readings[wrong]) == 1 and wrong not in vocabulary
    }


def _repaired(text: str, repairs: Mapping[str, str]) -> str:
    parts = _EDGES.match(text)
    if parts is None or parts[2].lower() not in repairs:
        return text
    right = repairs[parts[2].lower()]
    if parts[2].isupper():
        right = right.upper()
    elif parts[2][:1].isupper():
        right = right[:1].upper() + right[1:]
    return f"{parts[1]}{right}{parts[3]}"


def _words(text: str) -> list[str]:
    return [word for word in (_EDGES.sub(r"\2", each).lower() for each in text.split()) if word]
