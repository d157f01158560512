"""Free SQL reads one snapshot, once, within bounds; everything else is refused with a reason."""

from __future__ import annotations

import time
from pathlib import Path

import pytest

from adminer.errors import QueryError
from adminer.store.limited import Limits, run_limited
from tests.store.story import build


@pytest.fixture(scope="module")
def database(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a database of 40 adverts."""
    return build(tmp_path_factory.mktemp("store") / "clippings.duckdb", 40)


def test_a_select_answers(database: Path) -> None:
    answer = run_limited(database, "WITH a AS (FROM offers) SELECT count(*) AS n, min(item) AS item FROM a")
    assert answer.table.to_pylist() == [{"n": 40, "item": "16-Piece Starter Set"}]
    assert not answer.cut


@pytest.mark.parametrize(
    ("sql", "why"),
    [
        ("DROP TABLE offers", "no SELECT but DROP"),
        ("DELETE FROM offers", "no SELECT but DELETE"),
        ("SELECT 1; SELECT 2", "it has 2 statements"),
        ("SELECT 1; DROP TABLE offers", "it has 2 statements"),
        ("", "it has 0 statements"),
        ("COPY offers TO 'offers.csv'", "no SELECT but COPY"),
        ("ATTACH 'other.duckdb'", "no SELECT but ATTACH"),
        ("SET memory_limit = '10GB'", "no SELECT but"),
        ("INSTALL httpfs", "no SELECT but LOAD"),
        ("PRAGMA database_list", "no SELECT but"),
        ("SELECT * FROM read_text('/etc/hostname')", "disabled by configuration"),
        ("SELECT * FROM '/etc/hostname.csv'", "disabled by configuration"),
        ("SELECT * FROM glob('/*')", "disabled by configuration"),
        ("SELECT nothing FROM offers", "nothing"),
        ("SELEKT 1", "syntax error"),
    ],
)
def test_anything_else_is_refused_with_the_reason(database: Path, sql: str, why: str) -> None:
    before = database.read_bytes()
    with pytest.raises(QueryError) as refused:
        run_limited(database, sql)
    assert why in str(refused.value)
    assert database.read_bytes() == before


def test_rows_beyond_the_limit_are_cut_and_said(database: Path) -> None:
    answer = run_limited(database, "SELECT * FROM range(100000)", Limits(rows=10))
    assert (answer.table.num_rows, answer.cut) == (10, True)
    assert not run_limited(database, "SELECT * FROM range(10)", Limits(rows=10)).cut


def test_a_query_without_end_is_stopped(database: Path) -> None:
    began = time.monotonic()
    with pytest.raises(QueryError, match="the query was stopped"):
        run_limited(
            database, "SELECT sum(a.range * b.range) FROM range(10000000) a, range(10000000) b", Limits(seconds=1)
        )
    assert time.monotonic() - began < 30


def test_a_value_of_three_gigabytes_is_stopped(database: Path) -> None:
    # the size at which the database's own memory limit was measured not to hold
    with pytest.raises(QueryError, match=r"memory|MB"):
        run_limited(database, "SELECT length(repeat('x', 3000000000))", Limits(megabytes=1024))
