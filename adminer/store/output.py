"""Write an answer: as a table for the terminal, CSV, JSON, Parquet or Markdown."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date, datetime
from decimal import Decimal
from pathlib import Path
from typing import Any, Final, Literal, get_args

import pyarrow as pa
import pyarrow.parquet as pq
from rich.console import Console
from rich.table import Table
from rich.text import Text

from adminer.errors import UsageError, machine_error
from adminer.store.narrow import narrow_lines, natural_width
from adminer.store.plain import clean, shown

Format = Literal["table", "csv", "json", "parquet", "markdown"]
FORMATS: Final[tuple[str, ...]] = get_args(Format)
_PLAIN_WIDTH: Final = 240  # of a table that goes to a file or another program
_FORMULA_STARTS: Final = ("=", "+", "-", "@", "\t", "\r")


def write_answer(
    answer: Any, kind: str = "table", out: Path | None = None, *, raw: bool = False, console: Console | None = None
) -> None:
    """Write an Arrow table to a file, or to stdout where none is named.

    `raw` leaves CSV text as it is; otherwise text that a spreadsheet would run as a formula gets an apostrophe
    before it. Raises UsageError for an unknown format, or Parquet without a file; MachineError where the disk refuses.
    """
    if kind not in FORMATS:
        raise UsageError(f"there is no format '{kind}'", remedy=f"take one of {', '.join(FORMATS)}")
    if kind == "parquet":
        if out is None:
            raise UsageError("Parquet is no text", remedy="name a file with --out answer.parquet")
        with _refusals_of(out):
            pq.write_table(answer, out)
        return
    console = console or wide_console()
    if kind == "table" and out is None:
        print_table(answer, console)
        console.print(f"{answer.num_rows} row{'' if answer.num_rows == 1 else 's'}", style="dim", highlight=False)
        return
    text = {"csv": lambda: as_csv(answer, raw=raw), "json": lambda: as_json(answer)}.get(
        kind, lambda: as_markdown(answer)
    )()
    if out is not None:
        # a spreadsheet knows UTF-8 by its mark only; other formats have none
        with _refusals_of(out):
            out.write_text(text, encoding="utf-8-sig" if kind == "csv" and not raw else "utf-8", newline="")
    else:
        console.file.write(text)


def wide_console() -> Console:
    """Return a console for stdout; where that is no terminal, lines are long enough to keep a row on one of them."""
    console = Console()
    return console if console.is_terminal else Console(width=_PLAIN_WIDTH)


@contextmanager
def _refusals_of(out: Path) -> Iterator[None]:
    try:
        yield
    except OSError as fault:
        raise machine_error(fault, out) from None


def print_table(answer: Any, console: Console) -> None:
    """Print the answer as a table, or where the terminal is too narrow with some columns below each row."""
    names = [name.replace("_", " ") for name in answer.column_names]
    rows = [[clean(shown(value)) for value in row.values()] for row in answer.to_pylist()]
    if natural_width(names, rows) <= console.width:
        console.print(as_table(answer))
        return
    for line in narrow_lines(names, rows, [_is_number(item.type) for item in answer.schema], console.width):
        console.print(line)


def as_table(answer: Any) -> Table:
    """Return the answer as a terminal table; numbers stand right."""
    table = Table(show_header=True, header_style="bold", box=None, pad_edge=False)
    for item in answer.schema:
        justify: Literal["left", "right"] = "right" if _is_number(item.type) else "left"
        table.add_column(item.name.replace("_", " "), justify=justify, overflow="fold")
    for row in answer.to_pylist():
        table.add_row(*(Text(clean(shown(value))) for value in row.values()))
    return table


def _is_number(kind: Any) -> bool:
    return bool(pa.types.is_integer(kind) or pa.types.is_decimal(kind) or pa.types.is_floating(kind))


def as_csv(answer: Any, *, raw: bool = False) -> str:
    """Return the answer as CSV (RFC 4180: comma, CRLF, quotation marks doubled)."""
    stream = io.StringIO()
    writer = csv.writer(stream, lineterminator="\r\n")
    writer.writerow(answer.column_names)
    for row in answer.to_pylist():
        writer.writerow([_cell(value, raw) for value in row.values()])
    return stream.getvalue()


def as_json(answer: Any) -> str:
    """Return the answer as a JSON list of objects; amounts are strings, so that no cent is lost on the way."""
    rows = [{name: _json_value(value) for name, value in row.items()} for row in answer.to_pylist()]
    return json.dumps(rows, ensure_ascii=False, indent=1) + "\n"


def as_markdown(answer: Any) -> str:
    """Return the answer as a Markdown table."""
    lines = [_markdown_row(answer.column_names), _markdown_row(["---"] * answer.num_columns)]
    lines += [_markdown_row([clean(shown(value)) for value in row.values()]) for row in answer.to_pylist()]
    return "\n".join(lines) + "\n"


def _cell(value: Any, raw: bool) -> Any:
    if value is None:
        return ""
    if isinstance(value, str) and not raw and value.startswith(_FORMULA_STARTS):
        return "'" + value
    if isinstance(value, (list, tuple, dict)):
        return _cell(shown(value), raw)
    return value


def _json_value(value: Any) -> Any:
    if isinstance(value, Decimal):
        return f"{value:f}"
    if isinstance(value, (date, datetime)):
        return value.isoformat()
    if isinstance(value, (list, tuple)):
        return [_json_value(item) for item in value]
    return value


def _markdown_row(cells: list[str]) -> str:
    return "| " + " | ".join(cell.replace("\\", "\\\\").replace("|", "\\|") for cell in cells) + " |"
