"""The lists a researcher keeps at the desk, searches and pieces in the hand: their fields, and what those take."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

from adminer.dating.searches import read_searches, search_of
from adminer.desk.desk import Desk
from adminer.desk.forms import FormError, text_of
from adminer.desk.row_files import ROW_FILES, RowFile
from adminer.desk.shelf import Row
from adminer.desk.table_edit import Cells
from adminer.desk.typed_dates import edtf_of
from adminer.errors import FolderError
from adminer.names.objects import read_objects

_MOST_KNOWN: Final = 500
_NO_TEXT: Final = re.compile("[\x00-\x1f\x7f]")
_SLASH: Final = re.compile(r"(?<=[\d?~%])/(?=\d)")
_PAPERS: Final = "SELECT DISTINCT publication FROM clippings WHERE publication IS NOT NULL ORDER BY ALL LIMIT ?"
# what was seen goes by its id, and by its name where it has no entry
_SEEN: Final = """
    SELECT DISTINCT coalesce({what}_id, {what}) AS id, {what} AS name FROM sightings WHERE {what} <> ''
    ORDER BY ALL LIMIT ?
"""
_FOUND: Final = (("no", "no, in vain"), ("yes", "yes"))


@dataclass(frozen=True, slots=True)
class Field:
    """Hold one field of a form: its column, its label, and what it offers; choices are values with their words."""

    name: str
    label: str
    required: bool = False
    choices: tuple[tuple[str, str], ...] = ()
    known: tuple[str, ...] = ()  # offered while typing, anything else may be typed too
    long: bool = False
    title: str = ""  # of its column, where that is not the column's name


@dataclass(frozen=True, slots=True)
class KeptList:
    """Hold one list: the act that changes it, its address, its words, and how it is checked."""

    act: str  # of the journal
    address: str
    heading: str
    lead: str
    one: str  # what a row is
    adding: str
    about: tuple[str, ...]  # the columns that tell one row from another
    fields: Callable[[Desk], tuple[Field, ...]]
    check: Callable[[Cells], None]  # raises FormError
    problems: Callable[[Desk], tuple[str, ...]]

    @property
    def where(self) -> RowFile:
        """Return the file of the list."""
        return ROW_FILES[self.act]

    def told(self, cells: Cells) -> str:
        """Return which row is meant, in words."""
        return ", ".join(cells[name] for name in self.about if name in cells)


def cells_from(form: Mapping[str, object], kept: KeptList, fields: tuple[Field, ...], before: Cells) -> Cells:
    """Return a row as its form has it; columns without a field stay as they were.

    Raises FormError.
    """
    cells = {name: value for name, value in before.items() if name not in {field.name for field in fields}}
    for field in fields:
        typed = text_of(form, field.name)
        if _NO_TEXT.search(typed):
            raise FormError(f"{field.label}: there is a character in it that is no text")
        if field.required and not typed:
            raise FormError(f"{field.label}: this must be filled in")
        if field.choices and typed not in ("", before.get(field.name), *(value for value, _ in field.choices)):
            raise FormError(f"{field.label}: choose one of those offered")
        if typed:
            cells[field.name] = typed
    if cells.get("issues"):
        cells["issues"] = edtf_of(cells["issues"])
    kept.check(cells)
    return {name: cells[name] for name in (*kept.where.columns, *before) if name in cells}


def span_words(issues: str) -> str:
    """Return issues as people write them: 1953-01-08 to 1953-02-28; `cells_from` takes it back."""
    return _SLASH.sub(" to ", issues)


def _search_fields(desk: Desk) -> tuple[Field, ...]:
    names = desk.authorities()
    papers = tuple(row["publication"] for row in _rows(desk, _PAPERS))
    lines, shops = (
        {row["id"]: row["name"] for row in _rows(desk, _SEEN.format(what=what))} | {e.id: e.name for e in entries}
        for what, entries in (("line", names.lines), ("retailer", names.retailers))
    )
    return (
        Field("paper", "Paper or magazine", required=True, known=papers),
        Field(
            "issues",
            "Issues: a day (1953-01-08), a month, or a span (1953-01-08 to 1953-02-28)",
            required=True,
            long=True,
        ),
        Field("every", "It appeared", choices=(("week", "weekly"), ("day", "daily"))),
        Field("line", "Line sought", choices=(("", "any line"), *_by_name(lines))),
        Field("retailer", "Shop sought", choices=(("", "any shop"), *_by_name(shops)), title="Shop"),
        Field("found", "Found", choices=_FOUND),
        Field("who", "Who looked"),
        Field("remark", "Remark", long=True),
    )


def _object_fields(desk: Desk) -> tuple[Field, ...]:
    names = desk.authorities()
    return (
        Field("what", "What it is", required=True, known=tuple(sorted(names.pieces.pieces))),
        Field("line", "Line", choices=(("", "not known"), *((line.id, line.name) for line in names.lines))),
        Field("maker", "Maker", choices=(("", "not known"), *((maker.id, maker.name) for maker in names.makers))),
        Field("shape", "Shape"),
        Field("mark", "Mark, as it reads", long=True),
        Field("date_code", "Date code of the mark"),
        Field("trim", "Trim"),
        Field("where_seen", "Where it was seen"),
        Field("picture", "Picture of it, by file name"),
        Field("remark", "Remark", long=True),
        Field("object_id", "Your number of it"),
    )


def _check_search(cells: Cells) -> None:
    try:
        search_of(cells)
    except ValueError as error:
        raise FormError(str(error)) from error
    except FolderError as error:
        raise FormError(
            f"“{cells['issues']}” is no date; write 1953-01-08, 1953-01, or 1953-01-08 to 1953-02-28"
        ) from error


def _check_object(cells: Cells) -> None:
    """Take any piece that says what it is."""


def _rows(desk: Desk, sql: str) -> list[Row]:
    return desk.shelf.rows(sql, [_MOST_KNOWN]) if desk.shelf.exists else []


def _by_name(names: Mapping[str, str]) -> list[tuple[str, str]]:
    return sorted(names.items(), key=lambda item: item[1].casefold())


SEARCHES: Final = KeptList(
    act="search",
    address="/look/searches",
    heading="Issues looked through",
    lead="Which issues of which paper were looked through, for what, and whether it was there. A search in vain bounds "
    "a run as a sighting does.",
    one="search",
    adding="Write a search down",
    about=("paper", "issues"),
    fields=_search_fields,
    check=_check_search,
    problems=lambda desk: read_searches(desk.folder.root).problems,
)
OBJECTS: Final = KeptList(
    act="object",
    address="/look/objects",
    heading="Pieces in the hand",
    lead="What you have seen yourself. A date code tells the earliest year of the decoration, not its date. Old "
    "glazes, decals and gold trim may give off lead or cadmium; a dating says nothing about use with food.",
    one="piece",
    adding="Write a piece down",
    about=("what", "mark"),
    fields=_object_fields,
    check=_check_object,
    problems=lambda desk: read_objects(desk.folder.root / ROW_FILES["object"].file).problems,
)
