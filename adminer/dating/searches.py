"""The search log: which issues of which paper were looked through, by whom, for what, and whether it was found.

searches.csv in a clippings folder, one row a search:

    paper       the newspaper or magazine, spelt as in notes.csv
    issues      EDTF: one day (1951-05-03) or a span of days or months, all of whose issues were looked through
    every       how often it appeared: week (the default) or day; a chain advertised once a week, so the issues of a
                daily paper of one week count as one search
    line        id or name of the line sought; empty for all lines
    retailer    id or name of the retailer sought; empty for all
    found       yes or no; in a span, the issues found are those with a sighting
    who, remark free text

Weeks searched in vain are evidence. A sighting in a searched week counts as found there.
"""

from __future__ import annotations

import csv
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path
from typing import Final

from adminer.dating.edtf import bounds_of
from adminer.errors import FolderError

FILE_NAME: Final = "searches.csv"
COLUMNS: Final = ("paper", "issues", "every", "line", "retailer", "found", "who", "remark")
_YES: Final = frozenset({"yes", "y", "true", "1", "found", "x"})
_LONGEST: Final = timedelta(days=366 * 30)


@dataclass(frozen=True, slots=True)
class Search:
    """Hold one search: a span of days of a paper, what was sought in it, by whom, and the outcome."""

    paper: str
    first: date
    last: date
    line: str | None = None
    retailer: str | None = None
    found: bool = False
    who: str | None = None

    def concerns(self, names: Iterable[str | None], retailers: Iterable[str | None]) -> bool:
        """Say whether this search would have met a line (by id or names) at a retailer (likewise)."""
        return _same(self.line, names) and _same(self.retailer, retailers)


@dataclass(frozen=True, slots=True)
class SearchesResult:
    """Hold the searches that could be read, and a sentence for each row that could not."""

    searches: tuple[Search, ...]
    problems: tuple[str, ...] = ()


def read_searches(folder: Path) -> SearchesResult:
    """Read searches.csv of a clippings folder; a missing file is no searches, a broken row is reported and left out.

    Raises FolderError where the file as a whole cannot be understood.
    """
    path = folder / FILE_NAME
    if not path.is_file():
        return SearchesResult(())
    raw = path.read_bytes()
    try:
        text = raw.decode("utf-16" if raw.startswith((b"\xff\xfe", b"\xfe\xff")) else "utf-8-sig")
    except UnicodeDecodeError:
        text = raw.decode("cp1252", errors="replace")
    return parse_searches(text)


def parse_searches(text: str) -> SearchesResult:
    """Return the searches of a CSV text with comma, semicolon or tab between its cells."""
    lines = text.splitlines()
    if not lines:
        return SearchesResult(())
    separator = max(",;\t", key=lines[0].count)
    reader = csv.DictReader(lines, delimiter=separator)
    header = [(name or "").strip().lower() for name in reader.fieldnames or ()]
    reader.fieldnames = header
    if not {"paper", "issues"} <= set(header):
        raise FolderError(
            "has no columns 'paper' and 'issues'",
            file=FILE_NAME,
            remedy=f"write the column names in the first row: {', '.join(COLUMNS)}",
        )
    searches: list[Search] = []
    problems: list[str] = []
    for row in reader:
        cells = {k: v.strip() for k, v in row.items() if isinstance(k, str) and isinstance(v, str) and v.strip()}
        if not cells:
            continue
        try:
            searches.append(search_of(cells))
        except (ValueError, FolderError) as fault:
            problems.append(f"{FILE_NAME}, line {reader.line_num}: {fault}; this row is left out, the others are used.")
    return SearchesResult(tuple(searches), tuple(problems))


def search_of(cells: Mapping[str, str]) -> Search:
    """Return the search of a row, by column name. Raises ValueError or FolderError, which say what is wrong."""
    if "issues" not in cells:
        raise ValueError("the cell 'issues' is empty")
    bounds = bounds_of(cells["issues"])
    if bounds.earliest is None or bounds.latest is None:
        raise ValueError(f"'{cells['issues']}' has no end, so no issues can be counted")
    if bounds.latest - bounds.earliest > _LONGEST:
        raise ValueError(f"'{cells['issues']}' is longer than thirty years")
    every = cells.get("every", "week").lower()
    if every not in ("week", "weekly", "day", "daily"):
        raise ValueError(f"'{every}' is neither week nor day")
    return Search(
        cells.get("paper", "?"),
        bounds.earliest,
        bounds.latest,
        cells.get("line"),
        cells.get("retailer"),
        cells.get("found", "no").lower() in _YES,
        cells.get("who"),
    )


def _same(sought: str | None, names: Iterable[str | None]) -> bool:
    if sought is None:
        return True
    wanted = sought.casefold()
    return any(name is not None and name.casefold() == wanted for name in names)
