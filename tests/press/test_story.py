"""Random stories: a seed repeats, names are not the demo's, text-only readings agree with their truth."""

from __future__ import annotations

import itertools
import json
import tomllib
from datetime import date, timedelta
from pathlib import Path
from random import Random

import pytest

from adminer.names.authority import load_authorities
from corpus_demo.press.demo import scans
from corpus_demo.press.era import Town, addresses, remarks
from corpus_demo.press.plain import read_plain
from corpus_demo.press.story import make_story
from corpus_demo.press.text_only import load_readings, write_text_only
from corpus_demo.press.world import names_files

DEMO_NAMES = Path(__file__).resolve().parents[2] / "corpus_demo" / "names"


def test_a_seed_gives_the_same_story_and_another_seed_another() -> None:
    assert make_story(5, 12) == make_story(5, 12)
    assert make_story(5, 12)[1] != make_story(6, 12)[1]


def test_a_story_shares_no_name_with_the_demo(tmp_path: Path) -> None:
    demo = load_authorities(DEMO_NAMES)
    ours = {line.name for line in demo.lines} | {shop.name for shop in demo.retailers} | {m.name for m in demo.makers}
    for seed in range(8):
        world, _ = make_story(seed, 40)
        files = names_files(world)
        theirs = {entry["name"] for text in files.values() for kind in tomllib.loads(text).values() for entry in kind}
        assert theirs and not theirs & ours


def test_text_only_writes_what_the_program_can_load(tmp_path: Path) -> None:
    write_text_only(3, 6, tmp_path, hide_dates=False, misread=0.0)
    readings = list(load_readings(tmp_path / "readings.jsonl"))
    truths = [json.loads(line) for line in (tmp_path / "truth.jsonl").read_text(encoding="utf-8").splitlines()]
    assert len(readings) == len(truths) == 6
    assert load_authorities(tmp_path / "names").lines
    for reading, truth, spec in zip(readings, truths, make_story(3, 6)[1], strict=True):
        assert reading == read_plain(spec)[0]
        for price in truth["prices"]:
            x, y, w, _h = price["box"]
            inside = [word for word in reading.words if word.box.x >= x and word.box.right <= x + w and word.box.y == y]
            printed = "".join(word.text for word in inside)
            assert printed == price["text_as_printed"].replace(
                " ", "." if price["form"].startswith("raised_cents") else ""
            )


def test_hidden_dates_leave_no_year_but_in_the_truth() -> None:
    _, specs = make_story(11, 60, hide_dates=True)
    for spec in specs:
        reading, truth = read_plain(spec)
        assert truth["undated"] and truth["true_date"]
        words = " ".join(word.text for word in reading.words)
        assert truth["true_date"][:4] not in words


def test_misreading_moves_nothing_and_spares_neither_words_nor_figures() -> None:
    spec = make_story(4, 5)[1][2]
    clean, _ = read_plain(spec)
    smudged, _ = read_plain(spec, misread=0.3)
    assert [w.box for w in clean.words] == [w.box for w in smudged.words]
    pairs = [(a.text, b.text) for a, b in zip(clean.words, smudged.words, strict=True)]
    assert any(a != b for a, b in pairs if a.isalpha())
    assert any(a != b for a, b in pairs if any(c.isdigit() for c in a))
    assert all(len(a) == len(b) for a, b in pairs)


@pytest.mark.parametrize(
    ("day", "words"),
    [
        # postal zones from 1 May 1943, ZIP from 1 July 1963: coxsackie.com/reference/btc.htm
        (date(1943, 4, 30), ()),
        (date(1943, 5, 1), ("zone",)),
        (date(1963, 6, 30), ("zone",)),
        (date(1963, 7, 1), ("zone", "zip")),
    ],
)
def test_addresses_keep_to_their_time(day: date, words: tuple[str, ...]) -> None:
    town = Town("Netherholt", True, "48210")
    found = set()
    for seed in range(300):
        tail = addresses(town, day, Random(seed))[0].rsplit(", ", 1)[1].removeprefix("Netherholt").strip()
        if tail:
            found.add("zip" if len(tail) == 5 else "zone")
    assert found == set(words)


def test_rationing_is_spoken_of_only_while_it_lasted() -> None:
    """Red points ended 23 Nov 1945 (burnpit.us), ceilings in Nov 1946; second control Jan. 1951 to March 1953."""
    for weeks in range(0, 27 * 52, 3):
        day = date(1938, 1, 6) + timedelta(7 * weeks)
        for seed in range(6):
            for term in remarks(day, Random(f"{weeks} {seed}"), food=True, plate=False):
                second = "ceiling" in term.text.lower() and date(1951, 1, 26) <= day <= date(1953, 3, 31)
                if "point" in term.text.lower() or ("ceiling" in term.text.lower() and not second):
                    assert date(1942, 5, 1) <= day <= date(1946, 11, 30), (day, term)
                if "War" in term.text:
                    assert date(1941, 12, 7) <= day <= date(1945, 12, 31), (day, term)


def test_no_advert_of_the_demo_is_printed_twice_and_leaves_follow_their_file() -> None:
    specs = scans()
    assert len({spec.file for spec in specs}) == len(specs)
    for before, after in itertools.pairwise(specs):
        if after.leaf_of:
            assert after.leaf_of in (before.file, before.leaf_of)
