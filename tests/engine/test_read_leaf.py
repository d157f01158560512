"""What a worker says of a page that the real reader has read."""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image

from adminer.engine.read_leaf import ReadTask, Receipt, load_models, read_leaf
from tests.intake.pictures import card, save

WORDS = "Every Thursday a dinner plate\nof the first quality 25c with each\npurchase of five dollars or more"


def receipt_for(folder: Path, picture: Image.Image) -> Receipt:
    load_models()
    path = save(picture, folder / "week.png")
    return read_leaf(ReadTask(str(path), path.name, "0" * 64, 1, None, "key", str(folder)))


@pytest.mark.parametrize(
    ("turn", "lies", "remedy"),
    [
        (Image.Transpose.ROTATE_90, "lies on its side", "turn it a quarter to the right"),
        (Image.Transpose.ROTATE_180, "stands on its head", "turn it half around"),
        (Image.Transpose.ROTATE_270, "lies on its side", "turn it a quarter to the left"),
    ],
)
def test_a_scan_that_does_not_stand_upright_is_told_with_its_remedy(
    tmp_path: Path, turn: Image.Transpose, lies: str, remedy: str
) -> None:
    receipt = receipt_for(tmp_path, card(900, 500, WORDS).transpose(turn))
    assert receipt.problem == lies
    assert remedy in (receipt.remedy or "")


def test_an_upright_scan_has_no_problem(tmp_path: Path) -> None:
    assert receipt_for(tmp_path, card(900, 500, WORDS)).problem is None
