"""Floors hold, are raised, and sink only with a reason that is kept."""

from __future__ import annotations

from pathlib import Path

import pytest

from adminer.errors import FolderError, QualityError, UsageError
from adminer.score.floors import breaches, check_floors, corpus_digest, pin_floors, reached, read_floors, write_floors
from adminer.score.measure import Score, score_found
from tests.score.pages import page, price, true_price, truth


def score_with(right: int) -> Score:
    true = truth(*(true_price(n) for n in range(1, 21)), transcript_lines=["Penhallow"])
    return score_found([page(*(price(str(n)) for n in range(1, right + 1)), text="Penhallow")], [true])


def test_a_score_passes_its_own_floors_even_with_one_fact_fewer_and_not_with_two() -> None:
    floors = pin_floors(score_with(15), None, "d", None)
    check_floors(score_with(15), floors, "d")
    assert not [b for b in breaches(score_with(14), floors) if b.field == "prices, dollars"]
    with pytest.raises(QualityError, match="prices, dollars"):
        check_floors(score_with(12), floors, "d")


def test_another_corpus_is_told() -> None:
    with pytest.raises(QualityError, match="another corpus"):
        check_floors(score_with(15), pin_floors(score_with(15), None, "old", None), "new")


def test_pinning_raises_by_itself_and_sinks_only_with_a_reason_that_stays() -> None:
    low = pin_floors(score_with(12), None, "d", None)
    high = pin_floors(score_with(18), low, "d", None)
    assert high.at_least["prices, dollars"] > low.at_least["prices, dollars"]
    with pytest.raises(UsageError, match="lower-floor"):
        pin_floors(score_with(12), high, "d", None)
    sunk = pin_floors(score_with(12), high, "d", "the truth was wrong")
    assert sunk.at_least == low.at_least
    assert "the truth was wrong" in sunk.lowered[0]
    assert pin_floors(score_with(18), sunk, "d", None).lowered == sunk.lowered


def test_a_field_that_vanishes_breaks_its_floor() -> None:
    floors = pin_floors(score_with(15), None, "d", None)
    assert breaches(score_found([], []), floors)


def test_floors_come_back_from_their_file_as_written(tmp_path: Path) -> None:
    path = tmp_path / "floors.toml"
    assert read_floors(path) == {}
    every = {"demo": pin_floors(score_with(15), None, "d", None), "real": reached(score_with(3))}
    write_floors(path, every)
    assert read_floors(path) == every
    path.write_text("[demo]\nat_least = 3\n", encoding="utf-8")
    with pytest.raises(FolderError, match="floors"):
        read_floors(path)


def test_the_digest_changes_with_truth_and_pictures(tmp_path: Path) -> None:
    truth_file, picture = tmp_path / "truth.jsonl", tmp_path / "a.png"
    truth_file.write_bytes(b"{}")
    picture.write_bytes(b"one")
    first = corpus_digest(truth_file, [picture])
    assert first == corpus_digest(truth_file, [picture])
    picture.write_bytes(b"two")
    second = corpus_digest(truth_file, [picture])
    truth_file.write_bytes(b"{ }")
    assert len({first, second, corpus_digest(truth_file, [picture])}) == 3
