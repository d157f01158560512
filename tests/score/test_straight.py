"""The readers alone, in one process or in several; pages drawn here."""

from __future__ import annotations

from pathlib import Path

from PIL import Image

from adminer.score.straight import PageWork, baseline_straight
from tests.reading.drawing import Setting, draw

NAMES = ("kettle", "lantern", "bucket", "thimble")


def test_several_processes_read_in_the_order_given(tmp_path: Path) -> None:
    works = []
    for name in NAMES:
        path = tmp_path / f"{name}.png"
        Image.fromarray(draw(300, 80, Setting(name, 20, 50, 30))).save(path)
        works.append(PageWork(path, path.name))
    pages = baseline_straight(works, "tesseract", tmp_path / "kept", workers=2)
    assert [page.file for page in pages] == [f"{name}.png" for name in NAMES]
    assert [page.lines[0].text for page in pages] == list(NAMES)
    assert baseline_straight(works, "tesseract", tmp_path / "other") == pages
