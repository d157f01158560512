"""The digitised demo stays above its pinned floors; `make test` digitises it before the tests run."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from adminer.score.floors import check_floors, corpus_digest, read_floors
from adminer.score.run import OURS, ScoreWish, score_folder
from adminer.score.straight import find_pictures
from adminer.score.truth import read_truth

ROOT = Path(__file__).resolve().parents[2]
DEMO = os.environ.get("ADMINER_DEMO_FOLDER")
FLOORS = read_floors(ROOT / "tests" / "floors.toml")


@pytest.mark.skipif(DEMO is None, reason="ADMINER_DEMO_FOLDER names no digitised demo; make test sets it")
def test_the_demo_is_read_as_well_as_its_floors_say(tmp_path: Path) -> None:
    truth = ROOT / "corpus_demo" / "truth.jsonl"
    wish = ScoreWish(Path(DEMO or ""), truth, tmp_path, baselines=False)
    score = score_folder(wish, told=lambda _: None)[OURS]
    pictures = [work.path for work in find_pictures(ROOT / "corpus_demo", (page.file for page in read_truth(truth)))]
    check_floors(score, FLOORS["corpus_demo"], corpus_digest(truth, pictures))
