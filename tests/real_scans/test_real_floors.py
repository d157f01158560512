"""The real scans beside the repository are read as well as their pinned floors say; skipped where they are absent."""

from __future__ import annotations

from pathlib import Path

import pytest

from adminer.score.floors import check_floors, corpus_digest, read_floors
from adminer.score.run import OURS, ScoreWish, score_folder
from adminer.score.straight import find_pictures
from adminer.score.truth import read_truth

ROOT = Path(__file__).resolve().parents[2]
SCANS = ROOT.parent / "shared" / "scans"


@pytest.mark.real_scans
@pytest.mark.slow
@pytest.mark.skipif(not (SCANS / "truth.jsonl").is_file(), reason="../shared/scans is not here")
def test_the_real_scans_are_read_as_well_as_their_floors_say(tmp_path: Path) -> None:
    truth = SCANS / "truth.jsonl"
    score = score_folder(ScoreWish(SCANS, truth, tmp_path, baselines=False, straight=True), told=lambda _: None)[OURS]
    pictures = [work.path for work in find_pictures(SCANS, (page.file for page in read_truth(truth)))]
    check_floors(score, read_floors(ROOT / "tests" / "floors.toml")["real_scans"], corpus_digest(truth, pictures))
