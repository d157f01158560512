"""The database as the desk reads it: the snapshot last published, opened anew when a newer one is put in place."""

from __future__ import annotations

import threading
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import duckdb

Row = dict[str, Any]


@dataclass(slots=True)
class Shelf:
    """Read one database file that others replace; safe to use from several threads."""

    path: Path
    _lock: threading.Lock = field(default_factory=threading.Lock)
    _open: tuple[tuple[int, int], duckdb.DuckDBPyConnection] | None = None

    @property
    def exists(self) -> bool:
        """Say whether a database was built yet."""
        return self.path.is_file()

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
            cursor = self._open[1].cursor()
        try:
            cursor.execute("USE shelf")
            yield cursor
        finally:
            cursor.close()

    def rows(self, sql: str, parameters: Sequence[Any] | dict[str, Any] = ()) -> list[Row]:
        """Return the rows of a query as dicts by column name."""
        with self.cursor() as cursor:
            result = cursor.execute(sql, parameters)
            names = [column[0] for column in result.description or ()]
            return [dict(zip(names, row, strict=True)) for row in result.fetchall()]

    def _attach(self) -> duckdb.DuckDBPyConnection:
        # a database in memory that attaches the file: a file opened directly is shared by its path within a
        # process, and a replaced one would go on to be the old one
        connection = duckdb.connect(":memory:")
        quoted = str(self.path).replace("'", "''")
        connection.execute(f"ATTACH '{quoted}' AS shelf (READ_ONLY)")
        connection.execute("SET enable_external_access = false")
        connection.execute("SET lock_configuration = true")
        return connection
