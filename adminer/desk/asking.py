"""Ask a kept question of the newest snapshot, within a time limit, and tie each row of the answer to its scan."""

from __future__ import annotations

import threading
from collections import OrderedDict
from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, field
from typing import Any, Final

import duckdb
import pyarrow as pa

from adminer.desk.shelf import Row, Shelf
from adminer.errors import AdminerError, QueryError
from adminer.store.queries import Question, bind, load_questions, typed_sql

MOST_ROWS: Final = 500  # on a page; a download has all
HEAD_ROWS: Final = 3000  # of an answer, kept for its page and its picture
_KEPT: Final = 32  # answers
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


@dataclass(frozen=True, slots=True)
class Head:
    """Hold the first rows of an answer as an Arrow table, and how many it has."""

    table: Any
    whole: int


@dataclass(slots=True)
class Heads:
    """Keep the heads of the answers last given from the newest snapshot: a picture asks what its page has asked."""

    shelf: Shelf
    _stamp: tuple[int, int] = (-1, -1)
    _kept: OrderedDict[tuple[Any, ...], Head] = field(default_factory=OrderedDict)
    _lock: threading.Lock = field(default_factory=threading.Lock)

    def of(self, question: Question, given: Mapping[str, str | None]) -> Head:
        """Return the head of an answer. Raises as `arrow_answer`."""
        stamp, key = self.shelf.stamp(), (question.sql, *sorted(given.items()))
        with self._lock:
            if stamp != self._stamp:
                self._kept.clear()
                self._stamp = stamp
            if key in self._kept:
                self._kept.move_to_end(key)
                return self._kept[key]
        table = arrow_answer(self.shelf, question, given)
        # taken, not sliced: a slice would hold the whole answer in memory
        head = Head(table.take(pa.array(range(min(HEAD_ROWS, table.num_rows)), pa.int64())), table.num_rows)
        with self._lock:
            if stamp == self._stamp:
                self._kept[key] = head
                while len(self._kept) > _KEPT:
                    self._kept.popitem(last=False)
        return head

    def make_ahead(self) -> None:
        """Ask each question that comes with the program without parameters, as its page does when first opened."""
        for question in load_questions().values():
            with suppress(AdminerError):
                self.of(question, {})


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


def answer_of(shelf: Shelf, head: Head) -> Answer:
    """Return the first rows of an answer with the way from each to its scan."""
    rows: tuple[Row, ...] = tuple(head.table.slice(0, MOST_ROWS).to_pylist())
    return Answer(tuple(head.table.column_names), rows, links_of(shelf, rows), head.whole)


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
