"""The database as the desk reads it: the snapshot last published, opened anew when a newer one is put in place."""

from __future__ import annotations

import threading
from collections import OrderedDict
from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final, TypeVar

import duckdb

from adminer.errors import AdminerError

Row = dict[str, Any]
T = TypeVar("T")
_MOST_KEPT: Final = 96  # answers and pictures
LARGE: Final = 20_000  # offers from which the flat view is worth keeping as a table


@dataclass(slots=True)
class Shelf:
    """Read one database file that others replace; safe to use from several threads."""

    path: Path
    _lock: threading.Lock = field(default_factory=threading.Lock)
    _open: tuple[tuple[int, int], duckdb.DuckDBPyConnection] | None = None
    # what is worth making ahead for every new snapshot of a large file, so that no page waits for it
    ahead: list[Callable[[], object]] = field(default_factory=list)
    _flat: tuple[int, int] | None = None  # the snapshot whose view priced_offers lies in memory as a table
    _kept: OrderedDict[tuple[Hashable, ...], Any] = field(default_factory=OrderedDict)  # rows, pictures, studies
    _kept_of: tuple[int, int] | None = None  # the snapshot they are of
    _settled: tuple[int, int] | None = None  # the snapshot for which all that is made ahead is made

    @property
    def exists(self) -> bool:
        """Say whether a database was built yet."""
        return self.path.is_file()

    @property
    def settled(self) -> bool:
        """Say whether all that is made ahead for the newest snapshot is made; for a small file it never is."""
        return self._settled == self.stamp()

    def stamp(self) -> tuple[int, int]:
        """Return what changes with every new snapshot: inode and time of the file; zeros where there is none."""
        try:
            status = self.path.stat()
        except FileNotFoundError:
            return (0, 0)
        return (status.st_ino, status.st_mtime_ns)

    @contextmanager
    def cursor(self) -> Iterator[duckdb.DuckDBPyConnection]:
        """Give a cursor on the newest snapshot; a query that runs keeps the snapshot it began with."""
        with self._lock:
            stamp = self.stamp()
            if self._open is None or self._open[0] != stamp:
                self._open = (stamp, self._attach())  # the old one closes when its last cursor is gone
                threading.Thread(target=self._make_ahead, args=self._open, daemon=True).start()
            cursor = self._open[1].cursor()
        try:
            cursor.execute("USE shelf")
            if self._flat == stamp:
                cursor.execute("SET search_path = 'memory.main,shelf.main'")
            yield cursor
        finally:
            cursor.close()

    def rows(self, sql: str, parameters: Sequence[Any] | dict[str, Any] = ()) -> list[Row]:
        """Return the rows of a query as dicts by column name."""
        with self.cursor() as cursor:
            result = cursor.execute(sql, parameters)
            names = [column[0] for column in result.description or ()]
            return [dict(zip(names, row, strict=True)) for row in result.fetchall()]

    def kept(self, key: tuple[Hashable, ...], make: Callable[[], T]) -> T:
        """Return what was made under a key for the newest snapshot, made now where it was not."""
        stamp = self.stamp()
        with self._lock:
            if self._kept_of != stamp:
                self._kept.clear()
                self._kept_of = stamp
            if key in self._kept:
                self._kept.move_to_end(key)
                found: T = self._kept[key]
                return found
        made = make()
        with self._lock:
            if self._kept_of == stamp:
                self._kept[key] = made
                while len(self._kept) > _MOST_KEPT:
                    self._kept.popitem(last=False)
        return made

    def kept_rows(self, sql: str, parameters: Mapping[str, Any] | None = None) -> list[Row]:
        """Return the rows of a query that many pages ask; each who asks gets rows to write into."""
        given = dict(parameters or {})
        rows = self.kept((sql, *sorted(given.items())), lambda: self.rows(sql, given))
        return [dict(row) for row in rows]

    def _attach(self) -> duckdb.DuckDBPyConnection:
        # a database in memory that attaches the file: a file opened directly is shared by its path within a
        # process, and a replaced one would go on to be the old one
        connection = duckdb.connect(":memory:")
        quoted = str(self.path).replace("'", "''")
        connection.execute(f"ATTACH '{quoted}' AS shelf (READ_ONLY)")
        connection.execute("SET enable_external_access = false")
        return connection

    def _make_ahead(self, stamp: tuple[int, int], connection: duckdb.DuckDBPyConnection) -> None:
        """Make for a large file what takes long there: the flat view, which groups all prices, then what pages ask."""
        if self._flatten(connection):
            self._flat = stamp
            for make in self.ahead:
                with suppress(AdminerError, duckdb.Error):  # the page that needs it says what is wrong
                    make()
            self._settled = stamp

    def _flatten(self, connection: duckdb.DuckDBPyConnection) -> bool:
        """Keep the flat view of a large file as a table; says whether it did."""
        cursor = connection.cursor()
        try:
            count = cursor.execute("SELECT count(*) FROM shelf.offers").fetchone()
            if not count or count[0] < LARGE:
                return False
            cursor.execute("USE shelf")
            cursor.execute("CREATE TABLE memory.main.priced_offers AS SELECT * FROM shelf.main.priced_offers")
        except duckdb.Error:
            return False  # a database of an older version lacks a table; each page says so where it matters
        finally:
            cursor.close()
        return True
