"""`adminer sql`: one free SELECT, read-only and limited."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Annotated

import typer

from adminer.cli.place import FolderOption, FolderWord, folder_and_name
from adminer.errors import UsageError
from adminer.store.limited import Limits, run_limited
from adminer.store.output import write_answer


def register(app: typer.Typer) -> None:
    """Add the command."""
    app.command("sql")(sql)


def sql(
    folder: FolderWord = None,
    query: Annotated[str | None, typer.Argument(help="One SELECT; - reads it from the input.")] = None,
    kind: Annotated[str, typer.Option("--format", help="table, csv, json, parquet or markdown.")] = "table",
    out: Annotated[Path | None, typer.Option(help="A file to write instead.")] = None,
    raw: Annotated[bool, typer.Option("--raw", help="CSV without the apostrophe that stops formulas.")] = False,
    rows: Annotated[int, typer.Option(min=1, max=10_000_000, help="The most rows.")] = 10_000,
    seconds: Annotated[float, typer.Option(min=0.1, max=3600, help="The most time.")] = 20.0,
    megabytes: Annotated[int, typer.Option(min=512, max=262_144, help="The most memory.")] = 2048,
    option: FolderOption = None,
) -> None:
    """Run one SELECT on the database; it can read nothing else and change nothing.

    SHOW TABLES lists the tables, DESCRIBE offers the columns of one.
    """
    opened, query = folder_and_name(folder, query, option)
    if query is None:
        raise UsageError("what is asked?", remedy='write one SELECT, for instance "SELECT count(*) FROM offers"')
    text = sys.stdin.read() if query == "-" else query
    answer = run_limited(opened.existing_database(), text, Limits(rows, seconds, megabytes))
    write_answer(answer.table, kind, out, raw=raw)
    if answer.cut:
        typer.echo(f"There are more than {rows} rows; --rows allows more.", err=True)
