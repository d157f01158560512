"""Questions as files: headers are read, values typed, every shipped question answers with the columns it promises."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from adminer.errors import QueryError, UsageError
from adminer.store.queries import bind, load_questions, read_question, run_question
from tests.store.story import build

NAMES = sorted(load_questions())


@pytest.fixture(scope="module")
def database(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a database of 40 adverts."""
    return build(tmp_path_factory.mktemp("store") / "clippings.duckdb", 40)


@pytest.mark.parametrize("name", NAMES)
def test_every_question_answers_with_the_columns_of_its_header(database: Path, name: str) -> None:
    question = load_questions()[name]
    answer = run_question(database, question)
    assert answer.column_names == [column.name for column in question.columns]
    assert question.question.endswith("?")


@pytest.mark.parametrize("name", NAMES)
def test_every_question_gives_the_same_order_each_time(database: Path, name: str) -> None:
    question = load_questions()[name]
    assert run_question(database, question).equals(run_question(database, question))


def test_the_questions_of_the_trade_are_all_there() -> None:
    assert {
        "set-prices",
        "line-history",
        "card-saving",
        "retailer-adverts",
        "line-sightings",
        "adverts-without-a-date",
        "unpriced-pieces",
        "doubtful-facts",
        "clipping-facts",
    } <= set(NAMES)


def test_values_narrow_the_answer(database: Path) -> None:
    question = load_questions()["set-prices"]
    every = run_question(database, question).num_rows
    one = run_question(database, question, {"retailer": "Penhallow"}).to_pylist()
    assert 0 < len(one) < every
    assert {row["retailer"] for row in one} == {"Penhallow Stores"}
    assert run_question(database, question, {"from_year": "1960"}).num_rows == 0


def test_a_value_is_data_and_never_sql(database: Path) -> None:
    hostile = "x' OR 1=1; DROP TABLE offers; --"
    assert run_question(database, load_questions()["line-history"], {"line": hostile}).num_rows == 0


def write(path: Path, text: str) -> Path:
    path.write_text(text)
    return path


def test_a_header_is_read_whole(tmp_path: Path) -> None:
    question = read_question(
        write(
            tmp_path / "my_question.sql",
            "-- question: How many?\n-- note: Rough.\n-- param: least number 0.5  at least\n"
            '-- param: town text "New Town"  where\n'
            "-- param: day date none  when\n-- param: all yes_no no  all of them\n"
            "-- column: n  how many\nSELECT count(*) AS n FROM offers\n"
            "WHERE confidence >= $least AND ($town <> '' OR $day IS NULL OR $all)\n",
        )
    )
    assert (question.name, question.question, question.note) == ("my-question", "How many?", "Rough.")
    assert bind(question, {}) == {"least": Decimal("0.5"), "town": "New Town", "day": None, "all": False}
    assert bind(question, {"day": "1952-03-14", "all": "yes"})["day"] == date(1952, 3, 14)


@pytest.mark.parametrize(
    ("header", "why"),
    [
        ("SELECT 1", "it has no line '-- question: ...'"),
        ("-- question: What?\n-- param: least number\nSELECT $least", "needs name, type, default and what it is"),
        ("-- question: What?\n-- param: least float 1  at least\nSELECT $least", "needs name, type, default"),
        ("-- question: What?\n-- param: least number 1  at least\nSELECT 1", "does not use the parameter $least"),
        ("-- question: What?\n-- column: n\nSELECT 1 AS n", "needs a name and what it is"),
    ],
)
def test_a_broken_header_is_refused_with_the_reason(tmp_path: Path, header: str, why: str) -> None:
    with pytest.raises(QueryError) as refused:
        read_question(write(tmp_path / "mine.sql", header))
    assert why in str(refused.value)
    assert str(refused.value).startswith("mine.sql: ")


@pytest.mark.parametrize(("name", "value"), [("from_year", "later"), ("to_year", "1952.5")])
def test_a_value_of_the_wrong_kind_is_refused(database: Path, name: str, value: str) -> None:
    with pytest.raises(UsageError, match=f"'{value}' will not do for {name}.*whole number"):
        run_question(database, load_questions()["set-prices"], {name: value})


def test_an_unknown_parameter_is_refused_with_the_known_ones(database: Path) -> None:
    with pytest.raises(UsageError, match=r"has no parameter 'chain'.*from_year, line, retailer, to_year"):
        run_question(database, load_questions()["set-prices"], {"chain": "x"})


def test_a_question_that_fails_says_which(tmp_path: Path, database: Path) -> None:
    question = read_question(write(tmp_path / "mine.sql", "-- question: What?\nSELECT nothing FROM nowhere"))
    with pytest.raises(QueryError, match="the question 'mine' failed"):
        run_question(database, question)
