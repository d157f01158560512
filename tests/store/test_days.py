"""The days of an advert in answers: its own days are a pair, a last day alone is no sighting, none runs backwards."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from itertools import product
from pathlib import Path
from typing import Any

import duckdb
import pytest

from adminer.store.load import DatabaseExtras, build_database
from adminer.store.queries import load_questions, run_question
from tests.store.story import page, price

QUESTIONS = load_questions()
LINES: dict[str, list[dict[str, Any]]] = {"lines": [{"line_id": "tansy-morn", "line": "Tansy Morn"}]}
LEAF, NOTE, LATER = date(1955, 1, 3), "1951-03-01", date(1958, 2, 28)
PAIRS = (("seen_from", "seen_to"), ("first_seen", "last_seen"), ("first_used", "last_used"))


def built(path: Path, first: date | None, last: date | None, published: str | None) -> Path:
    """Build a file of one advert with these days of its own and this note."""
    one = page(0, (price("0.39", "cardholder"), price("0.65", "without_card")))
    advert = replace(one.adverts[0], valid_from=first, valid_to=last, dated_by="printed" if first or last else None)
    note = replace(one.clipping.notes[0], published=published)
    clipping = replace(one.clipping, notes=(note,))
    build_database(path, iter([replace(one, clipping=clipping, adverts=(advert,))]), DatabaseExtras(LINES))
    return path


@pytest.mark.parametrize(
    ("first", "last", "published", "seen"),
    [
        # a later leaf of a file whose note gives the first leaf's date
        (LEAF, None, NOTE, (LEAF, LEAF)),
        (LEAF, None, "1955", (LEAF, date(1955, 12, 31))),
        (LEAF, None, None, (LEAF, LEAF)),
        # good until a day: that day is no sighting
        (None, LATER, None, (None, LATER)),
        (None, LATER, "1958", (date(1958, 1, 1), LATER)),
        (None, LATER, "1951", (date(1951, 1, 1), date(1951, 12, 31))),
        (None, LEAF, "1958", (None, LEAF)),
        (LEAF, LATER, NOTE, (LEAF, LATER)),
        (None, None, NOTE, (date(1951, 3, 1), date(1951, 3, 1))),
        (None, None, None, (None, None)),
    ],
)
def test_an_advert_is_seen_in_its_own_days_and_the_note_only_widens_or_cuts(
    tmp_path: Path, first: date | None, last: date | None, published: str | None, seen: tuple[date | None, date | None]
) -> None:
    database = built(tmp_path / "c.duckdb", first, last, published)
    with duckdb.connect(str(database), read_only=True) as connection:
        assert connection.execute("SELECT seen_from, seen_to FROM sightings").fetchall() == [seen]
    (row,) = run_question(database, QUESTIONS["line-history"]).to_pylist()
    assert (row["seen_from"], row["seen_to"]) == seen


@pytest.mark.parametrize("days", list(product((None, LEAF), (None, LATER), (None, NOTE, "1955", "1960-05"))))
def test_no_answer_ends_before_it_begins(tmp_path: Path, days: tuple[date | None, date | None, str | None]) -> None:
    database = built(tmp_path / "c.duckdb", *days)
    checked = 0
    for question in QUESTIONS.values():
        for row in run_question(database, question).to_pylist():
            for first, last in PAIRS:
                if row.get(first) is not None and row.get(last) is not None:
                    assert row[first] <= row[last], (question.name, row)
                    checked += 1
    assert checked or days[0] is None
