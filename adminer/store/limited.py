"""Free SQL, kept in bounds: one SELECT, in a process of its own with limits of memory, time and rows.

Measured: the database's own memory limit did not stop a single value of 1 GB; the limit of the process did.
Run as a module this file is that process: a request as JSON on stdin, the answer as Arrow on stdout, a fault
as JSON on stderr.
"""

from __future__ import annotations

import json
import resource
import subprocess
import sys
from contextlib import suppress
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any, Final

import duckdb
import pyarrow as pa

from adminer.errors import QueryError

_REFUSED: Final = 7


@dataclass(frozen=True, slots=True)
class Limits:
    """Hold what a free query may use."""

    rows: int = 10_000
    seconds: float = 20.0
    megabytes: int = 2048


@dataclass(frozen=True, slots=True)
class LimitedAnswer:
    """Hold the rows, and whether there were more than the limit."""

    table: Any
    cut: bool


def run_limited(database: Path, sql: str, limits: Limits | None = None) -> LimitedAnswer:
    """Run exactly one SELECT on a database, for reading only and without reach to any other file.

    Raises QueryError where it is refused, fails, or meets a limit.
    """
    limits = limits or Limits()
    request = json.dumps({"database": str(database), "sql": sql, **asdict(limits)})
    try:
        done = subprocess.run(
            [sys.executable, "-I", "-m", "adminer.store.limited"],
            input=request.encode(),
            capture_output=True,
            timeout=limits.seconds + 5,
            check=False,
        )
    except subprocess.TimeoutExpired:
        raise QueryError(
            "the query was stopped",
            why=f"it took longer than {limits.seconds:g} seconds",
            remedy="ask for less, or allow more with --seconds",
        ) from None
    if done.returncode == _REFUSED:
        what, why, remedy = json.loads(done.stderr.decode().splitlines()[-1])
        raise QueryError(what, why=why, remedy=remedy)
    if done.returncode != 0:
        raise QueryError(
            "the query was stopped",
            why=f"it needed more than {limits.megabytes} MB or its time was up",
            remedy="ask for less, or allow more with --megabytes",
        )
    with pa.ipc.open_stream(done.stdout) as stream:
        table = stream.read_all()
    return LimitedAnswer(table.slice(0, limits.rows), table.num_rows > limits.rows)


def _serve() -> int:
    request = json.load(sys.stdin)
    limit = request["megabytes"] * 1024 * 1024
    with suppress(ValueError, OSError):  # macOS does not know this limit; the database's own stays
        resource.setrlimit(resource.RLIMIT_AS, (limit, limit))
    seconds = max(1, int(request["seconds"] * 2))  # of all threads together; the parent's clock ends it before
    resource.setrlimit(resource.RLIMIT_CPU, (seconds, seconds + 1))
    resource.setrlimit(resource.RLIMIT_FSIZE, (0, 0))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
    try:
        table = _answer(request)
    except QueryError as fault:
        return _refuse(fault.what, fault.why, fault.remedy)
    except MemoryError:
        return _refuse("the query was stopped", f"it needed more than {request['megabytes']} MB", "ask for less")
    except duckdb.Error as fault:
        if isinstance(fault, duckdb.OutOfMemoryException):
            return _refuse("the query was stopped", f"it needed more than {request['megabytes']} MB", "ask for less")
        return _refuse("the query failed", str(fault).strip().splitlines()[0], "correct it and ask again")
    with pa.ipc.new_stream(sys.stdout.buffer, table.schema) as stream:
        stream.write_table(table)
    return 0


def _answer(request: dict[str, Any]) -> Any:
    megabytes = max(64, request["megabytes"] // 2)
    with duckdb.connect(
        request["database"],
        read_only=True,
        config={"enable_external_access": "false", "memory_limit": f"{megabytes}MB", "threads": "2"},
    ) as connection:
        connection.execute("SET lock_configuration = true")
        statements = connection.extract_statements(request["sql"])
        if len(statements) != 1:
            raise QueryError(
                "the query was refused",
                why=f"it has {len(statements)} statements",
                remedy="give exactly one SELECT",
            )
        kind = statements[0].type
        if kind != duckdb.StatementType.SELECT:
            raise QueryError(
                "the query was refused", why=f"it is no SELECT but {kind.name}", remedy="give exactly one SELECT"
            )
        reader = connection.sql(statements[0]).to_arrow_reader(4096)
        batches, rows = [], 0
        for batch in reader:
            batches.append(batch)
            rows += batch.num_rows
            if rows > request["rows"]:
                break
        return pa.Table.from_batches(batches, reader.schema).slice(0, request["rows"] + 1)


def _refuse(what: str, why: str | None, remedy: str | None) -> int:
    sys.stderr.write(json.dumps([what, why, remedy]) + "\n")
    return _REFUSED


if __name__ == "__main__":
    sys.exit(_serve())
