"""Recurring misreadings: learned from corrections on several clippings, applied to what the parser sees."""

from __future__ import annotations

from pathlib import Path

import pytest

from adminer.errors import FolderError
from adminer.names.repairs import load_repairs, misreadings, recurring, repair_words
from tests.desk.pages import offer, page


def test_a_misreading_is_a_word_changed_by_letters_and_not_by_meaning() -> None:
    assert misreadings("Cup and sauter", "Cup and saucer") == [("sauter", "saucer")]
    assert misreadings("cup", "saucer") == []
    assert misreadings("dinner plate", "dinner plate, large") == []


def test_only_what_recurs_on_other_clippings_and_has_one_meaning_is_learned() -> None:
    changes = [("c1", "sauter", "saucer"), ("c1", "sauter", "saucer"), ("c2", "a sauter", "a saucer")]
    assert recurring(changes[:2], []) == {}
    assert recurring(changes, []) == {"sauter": ("saucer", 2)}
    assert recurring([*changes, ("c3", "sauter", "saute")], []) == {}
    assert recurring(changes, ["sauter"]) == {}


def test_words_are_put_right_in_the_case_they_were_printed_in() -> None:
    read = page((offer(1, "SAUTER Sauter, sauter sauters", "0.69", y=100),)).reading
    texts = [word.text for word in repair_words(read, {"sauter": "saucer"}).words]
    assert texts == ["SAUCER", "Saucer,", "saucer", "sauters"]
    assert repair_words(read, {}) is read


def test_a_broken_list_is_named_with_its_remedy(tmp_path: Path) -> None:
    assert load_repairs(tmp_path) == {}
    (tmp_path / "repairs.toml").write_text('[[repair]]\nread = "Sauter"\nis = "saucer"\n')
    assert load_repairs(tmp_path) == {"sauter": "saucer"}
    (tmp_path / "repairs.toml").write_text("[[repair]]\nread = 1\n")
    with pytest.raises(FolderError, match=r"repairs\.toml.*'is'"):
        load_repairs(tmp_path)
