"""Pieces in the hand: objects.csv, what a collector has seen, as evidence beside the adverts.

A date code of a mark is an earliest date for the decoration on the piece, not its date: decal and glaze came later.
Old glazes, decals and gold trim may give off lead or cadmium; a dating says nothing about use with food.
"""

from __future__ import annotations

import csv
import re
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from adminer.errors import FolderError

FILE_NAME: Final = "objects.csv"
COLUMNS: Final = (
    "object_id",
    "what",
    "mark",
    "date_code",
    "maker",
    "shape",
    "line",
    "trim",
    "where_seen",
    "picture",
    "remark",
)
_YEAR: Final = re.compile(r"(?<!\d)(1[89]\d\d)(?!\d)")


@dataclass(frozen=True, slots=True)
class SeenObject:
    """Hold one piece in the hand; `earliest_year` comes from the date code, None where it names no year."""

    object_id: str
    what: str
    mark: str | None = None
    date_code: str | None = None
    earliest_year: int | None = None
    maker: str | None = None
    shape: str | None = None
    line: str | None = None
    trim: str | None = None
    where_seen: str | None = None
    picture: str | None = None
    remark: str | None = None


@dataclass(frozen=True, slots=True)
class ObjectsResult:
    """Hold the objects of a file and the rows that could not be taken, in plain words."""

    objects: tuple[SeenObject, ...]
    problems: tuple[str, ...]


def read_objects(path: Path) -> ObjectsResult:
    """Read objects.csv (comma, semicolon or tab; UTF-8); no file is no objects, a broken row stops only itself."""
    try:
        text = path.read_text(encoding="utf-8-sig")
    except FileNotFoundError:
        return ObjectsResult((), ())
    except UnicodeDecodeError as error:
        raise FolderError(
            "the list of objects cannot be read", file=path.name, why=str(error), remedy="save it as UTF-8"
        ) from error
    head = text.partition("\n")[0]
    separator = max(",;\t", key=head.count)
    rows = csv.DictReader(text.splitlines(), delimiter=separator)
    names = {_column(name): name for name in rows.fieldnames or ()}
    if "what" not in names:
        raise FolderError(
            "the list of objects has no column 'what'",
            file=path.name,
            remedy=f"its first line names the columns: {', '.join(COLUMNS)}",
        )
    objects, problems = [], []
    for number, row in enumerate(rows, 2):
        values = {key: (row.get(name) or "").strip() or None for key, name in names.items() if key in COLUMNS}
        if None in row or not values.get("what"):
            problems.append(f"{path.name}, line {number}: does not say what the object is, or has too many columns")
            continue
        code = values.get("date_code")
        year = _YEAR.search(code) if code else None
        objects.append(
            SeenObject(
                object_id=values.get("object_id") or f"object-{number - 1}",
                what=values["what"] or "",
                earliest_year=int(year[1]) if year else None,
                **{k: v for k, v in values.items() if k not in {"object_id", "what"}},
            )
        )
    return ObjectsResult(tuple(objects), tuple(problems))


def _column(name: str) -> str:
    return re.sub(r"[^a-z]+", "_", name.lower()).strip("_")
