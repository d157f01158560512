"""The pages of runs: all lines in one picture, one run with its bounds, gaps, next issues and scans."""

from __future__ import annotations

import html
import re
from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import duckdb
import pytest

from adminer.dating.runs import compute_runs
from adminer.desk.rendering import edtf_words
from adminer.records import Box, Link
from adminer.store.dating_rows import read_sightings
from tests.desk.desks import SmallDesk, small_desk
from tests.desk.pages import offer, page


@pytest.fixture
def small(tmp_path: Path) -> Iterator[SmallDesk]:
    line = Link("tansy_morn", "Tansy Morn", "Tansy Morn", Box(1, 1, 9, 9), 0.9, "as printed")
    shop = Link("penhallow", "Penhallow Stores", "Penhallow", Box(1, 1, 9, 9), 0.9, "as printed")
    pages = []
    for week in (0, 1, 3, 4):
        name = f"c{week}"
        read = page((replace(offer(1, "cup", "0.69", y=90, clipping_id=name), line=line),), name)
        begun = date(1953, 1, 15) + timedelta(weeks=week)
        advert = replace(
            read.adverts[0], retailer=shop, city="Osterby", valid_from=begun, valid_to=begun + timedelta(2)
        )
        pages.append(replace(read, adverts=(advert,)))
    made = small_desk(tmp_path, pages)
    with duckdb.connect(str(made.desk.folder.database)) as connection:
        runs = [run for run in compute_runs(read_sightings(connection)) if run.city is None]
        connection.executemany(
            "INSERT INTO runs BY NAME SELECT ? AS run_id, ? AS line_id, ? AS line, ? AS retailer, ? AS sightings, "
            "? AS first_seen, ? AS last_seen, ? AS method",
            [[r.run_id, r.line_id, r.line, r.retailer, r.sightings, r.first_seen, r.last_seen, r.method] for r in runs],
        )
    yield made
    made.desk.journal.close()


def test_all_runs_are_listed_and_drawn(small: SmallDesk) -> None:
    client = small.client()
    text = client.get("/look/runs").text
    assert "Penhallow Stores" in text
    assert "/look/run?line=tansy_morn&amp;retailer=Penhallow+Stores" in text
    drawn = client.get("/look/runs.svg")
    assert drawn.headers["content-type"] == "image/svg+xml"
    # one shop alone had it: one row, and a dot for each advert
    assert "Tansy Morn, Penhallow Stores" in drawn.text
    assert "all shops" not in drawn.text


def test_one_run_shows_its_bounds_gaps_next_issues_and_scans(small: SmallDesk) -> None:
    client = small.client()
    text = client.get("/look/run?line=Tansy+Morn").text
    assert "4 adverts, seen from 1953-01-15 to 1953-02-14" in text
    assert "1953-01-26 to 1953-02-01, 1 week: never looked at" in text
    assert "Issues to look at next" in text
    assert all(f"{name}.png</bdi>" in text for name in ("c0", "c1", "c3", "c4"))
    drawn = client.get("/look/run.svg?line=Tansy+Morn").text
    assert "the run" in drawn
    assert "Penhallow Stores, Osterby" in drawn


def test_a_search_written_down_from_a_run_counts_there_at_once(small: SmallDesk) -> None:
    client, run = small.client(), "/look/run?line=Tansy+Morn"
    link = re.search(r'never looked at<span class="on-screen">; <a href="([^"]*)"', client.get(run).text)
    assert link is not None
    form = client.get(html.unescape(link[1])).text
    typed = dict(re.findall(r'<input[^>]* name="(\w+)"[^>]* value="([^"]*)"', form))
    assert typed["issues"] == "1953-01-26 to 1953-02-01"
    assert '<option value="tansy_morn" selected>' in form
    typed |= {"back": html.unescape(re.findall(r'name="back" value="([^"]*)"', form)[0]), "paper": "The Osterby Ledger"}
    answer = client.post("/look/searches", data={**typed, "line": "tansy_morn", "retailer": "penhallow"})
    assert str(answer.url).endswith(run)
    assert "Saved: the search is written down." in answer.text
    assert "1953-01-26 to 1953-02-01, 1 week: 1 issue searched in vain" in answer.text
    assert "searches.csv" in answer.text  # newer than the answers of the other pages, which are being built
    elsewhere = client.post("/look/searches", data={**typed, "back": "//elsewhere.example"}, follow_redirects=False)
    assert elsewhere.headers["location"] == "/look/searches"


def test_evidence_that_cannot_be_taken_stays_in_the_form(small: SmallDesk) -> None:
    path = "/look/dates/c0-a1"
    answer = small.client().post(f"{path}/add", data={"dates": "when it was new", "reason": "the letterhead"})
    assert answer.status_code == 422
    assert "“when it was new” is no date" in answer.text
    assert 'value="the letterhead"' in answer.text
    assert small.client().post(f"{path}/add", data={"dates": "1953"}).status_code == 422
    assert not (small.desk.folder.root / "evidence.toml").exists()


def test_a_line_never_seen_and_no_line_at_all(small: SmallDesk) -> None:
    client = small.client()
    assert client.get("/look/run?line=Silverthaw").status_code == 422
    assert "which line is meant" in client.get("/look/run").text


@pytest.mark.parametrize(
    ("edtf", "words"),
    [
        (None, ""),
        ("1959-04", "1959-04"),
        ("[1959-04,1960-04]", "1959-04 or 1960-04"),
        ("[1939-06,1944-06..1945-06]", "1939-06 or between 1944-06 and 1945-06"),
        ("1954?", "1954?"),
    ],
)
def test_sets_of_dates_are_said_in_words(edtf: str | None, words: str) -> None:
    assert edtf_words(edtf) == words
