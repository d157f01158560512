"""`adminer money`: an old price in dollars of a later year, by the consumer price index."""

from __future__ import annotations

from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import Annotated

import pyarrow as pa
import typer

from adminer.dating.edtf import bounds_of, middle_of
from adminer.dating.money import NO_APPRAISAL, SOURCE, in_dollars_of, latest_year
from adminer.errors import FolderError, UsageError
from adminer.store.output import wide_console, write_answer


def register(app: typer.Typer) -> None:
    """Add the command."""
    app.command("money")(money)


def money(
    amount: Annotated[str, typer.Argument(help="The old price in dollars, for instance 1.39.")],
    then: Annotated[str, typer.Argument(help="When it was asked, in EDTF: 1951-05-03, 1951-05 or 1951.")],
    year: Annotated[int | None, typer.Option(help="Dollars of which year; the latest of the table by default.")] = None,
    kind: Annotated[str, typer.Option("--format", help="table, csv, json, parquet or markdown.")] = "table",
    out: Annotated[Path | None, typer.Option(help="A file to write instead.")] = None,
) -> None:
    """Restate an old price in dollars of a later year. This is no appraisal."""
    try:
        dollars = Decimal(amount.strip().removeprefix("$"))
    except InvalidOperation:
        raise UsageError(f"'{amount}' is no amount", remedy="write dollars with a point, for instance 1.39") from None
    try:
        day = middle_of(bounds_of(then))
    except FolderError as fault:
        raise UsageError(fault.what, remedy=fault.remedy) from None
    if day is None:
        raise UsageError(f"'{then}' has no end", remedy="write a day, a month or a year")
    found = in_dollars_of(dollars, day, year or latest_year())
    row = {
        "amount": dollars,
        "then": then,
        "amount_later": found.amount,
        "in_dollars_of": found.in_dollars_of,
        "index_then": f"{found.index_then:.1f}",
        "index_later": f"{found.index_later:.1f}",
        "source": SOURCE,
    }
    write_answer(pa.Table.from_pylist([row]), kind, out)
    if kind == "table" and out is None:
        wide_console().print(NO_APPRAISAL, style="dim", highlight=False)
