"""Answers leave as table, CSV, JSON, Parquet or Markdown, exact to the cent and harmless to what opens them."""

from __future__ import annotations

import csv
import io
import json
from datetime import date
from decimal import Decimal
from pathlib import Path

import polars as pl
import pyarrow as pa
import pytest
from rich.console import Console

from adminer.errors import UsageError
from adminer.store.output import as_csv, as_json, as_markdown, write_answer

ANSWER = pa.table(
    {
        "item": ["Cup, 9 oz.", '=HYPERLINK("x")', "a|b\x1b[31m", "[bold]Plate[/bold]"],
        "price": pa.array([Decimal("0.10"), Decimal("1.39"), None, Decimal("-2.50")], pa.decimal128(12, 2)),
        "seen": pa.array([date(1952, 3, 14), None, None, None]),
        "sure": [True, False, None, True],
    }
)


def test_csv_is_exact_and_text_that_is_a_formula_is_defused() -> None:
    rows = list(csv.reader(io.StringIO(as_csv(ANSWER), newline="")))
    assert rows[0] == ["item", "price", "seen", "sure"]
    assert rows[1][:3] == ["Cup, 9 oz.", "0.10", "1952-03-14"]
    assert rows[2][0] == '\'=HYPERLINK("x")'
    assert rows[4][1] == "-2.50"  # a number is no formula


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r"])
def test_every_start_of_a_formula_is_defused_unless_raw_is_asked_for(start: str) -> None:
    answer = pa.table({"text": [start + "1+1"]})
    assert next(csv.reader([as_csv(answer).split("\r\n", 1)[1]])) != [start + "1+1"]
    assert list(csv.reader(io.StringIO(as_csv(answer, raw=True), newline="")))[1] == [start + "1+1"]


def test_json_keeps_every_cent() -> None:
    rows = json.loads(as_json(ANSWER))
    assert rows[0] == {"item": "Cup, 9 oz.", "price": "0.10", "seen": "1952-03-14", "sure": True}
    assert rows[2]["price"] is None


def test_markdown_escapes_its_own_signs() -> None:
    assert "| a\\|b [31m |" in as_markdown(ANSWER)


def test_a_terminal_is_not_steered_by_the_text_of_a_scan() -> None:
    stream = io.StringIO()
    write_answer(ANSWER, console=Console(file=stream, width=120))
    assert "\x1b" not in stream.getvalue()
    assert "[bold]Plate[/bold]" in stream.getvalue()
    assert "4 rows" in stream.getvalue()


def test_parquet_is_read_by_another_engine(tmp_path: Path) -> None:
    write_answer(ANSWER, "parquet", tmp_path / "a.parquet")
    assert pl.read_parquet(tmp_path / "a.parquet")["price"].to_list()[1] == Decimal("1.39")


@pytest.mark.parametrize(("kind", "why"), [("xlsx", "there is no format 'xlsx'"), ("parquet", "Parquet is no text")])
def test_a_format_that_cannot_be_is_refused(kind: str, why: str) -> None:
    with pytest.raises(UsageError, match=why):
        write_answer(ANSWER, kind)


def test_a_csv_file_says_that_it_is_utf_8(tmp_path: Path) -> None:
    write_answer(ANSWER, "csv", tmp_path / "a.csv")
    assert (tmp_path / "a.csv").read_bytes().startswith(b"\xef\xbb\xbfitem,price")


def test_a_narrow_terminal_gets_the_rest_of_a_row_below_it() -> None:
    answer = pa.table({"item": ["Cup", "Plate"], "price": ["0.09", "12.00"], "cited": ["x" * 60, None]})
    stream = io.StringIO()
    write_answer(answer, console=Console(file=stream, width=50))
    assert stream.getvalue().split("\n")[:4] == [
        "item   price  cited",
        "Cup    0.09   " + "x" * 25 + "…",
        "    cited " + "x" * 40,
        "    " + "x" * 20,
    ]
    assert "Plate  12.00\n2 rows" in stream.getvalue()
    stream = io.StringIO()
    write_answer(answer, console=Console(file=stream, width=120))
    assert "0.09   " + "x" * 60 in stream.getvalue()
