"""Ask a kept question of the newest snapshot, within a time limit, and tie each row of the answer to its scan."""

from __future__ import annotations

import threading
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

import duckdb

from adminer.desk.shelf import Row, Shelf
from adminer.errors import QueryError
from adminer.store.queries import Question, bind, typed_sql

MOST_ROWS: Final = 500  # on a page; a download has all
MOST_SECONDS: Final = 60.0
_TYPES: Final = {
    "text": "VARCHAR",
    "integer": "BIGINT",
    "number": "DECIMAL(18, 6)",
    "date": "DATE",
    "yes_no": "BOOLEAN",
}


@dataclass(frozen=True, slots=True)
class Answer:
    """Hold the rows of an answer as a page shows them, each with the address of its scan where it has one."""

    columns: tuple[str, ...]
    rows: tuple[Row, ...]
    links: tuple[str | None, ...]
    whole: int


def arrow_answer(shelf: Shelf, question: Question, given: Mapping[str, str | None]) -> Any:
    """Return the whole answer as an Arrow table.

    Raises UsageError for a value of the wrong kind, QueryError where the question fails or takes too long.
    """
    values = bind(question, given)
    with shelf.cursor() as cursor:
        timer = threading.Timer(MOST_SECONDS, cursor.interrupt)
        timer.start()
        try:
            for param in question.params:
                cursor.execute(
                    f"SET VARIABLE {param.name} = CAST($value AS {_TYPES[param.kind]})", {"value": values[param.name]}
                )
            return cursor.sql(typed_sql(question)).to_arrow_table()
        except duckdb.InterruptException:
            raise QueryError(
                f"the question '{question.name}' was stopped",
                why=f"it took longer than {MOST_SECONDS:.0f} seconds",
                remedy="narrow it with its parameters",
            ) from None
        except duckdb.Error as fault:
            raise QueryError(
                f"the question '{question.name}' failed",
                why=str(fault).splitlines()[0],
                remedy="read the scans once more on the page In, then ask again",
            ) from None
        finally:
            timer.cancel()


def answer_of(shelf: Shelf, table: Any) -> Answer:
    """Return the first rows of an Arrow table with the way from each to its scan."""
    rows: tuple[Row, ...] = tuple(table.slice(0, MOST_ROWS).to_pylist())
    return Answer(tuple(table.column_names), rows, links_of(shelf, rows), table.num_rows)


def links_of(shelf: Shelf, rows: Sequence[Row]) -> tuple[str | None, ...]:
    """Return for each row the address of the clipping it comes from, at the very fact where the row names it."""
    by_file: dict[str, str] = {}
    files = sorted({file for row in rows if not _clipping(row) and (file := _cited(row)[0])})
    if files:
        found = shelf.rows(
            "SELECT file, min(clipping_id) AS clipping_id FROM clippings WHERE list_contains(?, file) GROUP BY file",
            [files],
        )
        by_file = {row["file"]: row["clipping_id"] for row in found}
    return tuple(_link(row, by_file) for row in rows)


def _link(row: Row, by_file: Mapping[str, str]) -> str | None:
    file, box = _cited(row)
    clipping = _clipping(row) or by_file.get(file)
    if not clipping:
        return None
    if box and not row.get("offer_id"):
        return f"/check/{clipping}?box={box}"
    fact = row.get("offer_id") or row.get("advert_id")
    return f"/check/{clipping}?fact={fact}" if fact else f"/check/{clipping}"


def _cited(row: Row) -> tuple[str, str]:
    """Return the file and box a row cites: its own columns, or the first of "file @ x,y,w,h" or "file, file"."""
    if row.get("file"):
        return str(row["file"]), str(row.get("box") or "")
    file, _, box = str(row.get("cited") or "").partition(" @ ")
    return (file, box) if box else (file.split(", ")[0], "")


def _clipping(row: Row) -> str | None:
    for name in ("clipping_id", "offer_id", "advert_id"):
        if row.get(name):
            parts = str(row[name]).split("-")
            leaf = f"-{parts[1]}" if len(parts) > 1 and parts[1].isdecimal() else ""
            return parts[0] + leaf
    return None
