"""Cleaning: the light is evened, the skew found, and every point finds its way back to the scan."""

from __future__ import annotations

import cv2
import numpy as np
import pytest
from numpy.typing import NDArray

from adminer.layout.clean import even_light, ground_of, lift_faint, skew_of
from adminer.layout.page import lay_out
from adminer.layout.recipe import Recipe

PLAIN = Recipe(name="plain", about="test")


def lines_of_dashes(angle: float) -> NDArray[np.uint8]:
    page = np.full((600, 500), 255, np.uint8)
    for y in range(60, 560, 24):
        for x in range(60, 430, 14):
            page[y : y + 9, x : x + 9] = 0
    turn = cv2.getRotationMatrix2D((250, 300), -angle, 1.0)
    return np.asarray(cv2.warpAffine(page, turn, (500, 600), borderValue=255), np.uint8)


@pytest.mark.parametrize("angle", [-4.0, -1.5, 0.0, 2.0, 5.0])
def test_skew_is_measured_within_a_fifth_of_a_degree(angle: float) -> None:
    assert skew_of(lines_of_dashes(angle)) == pytest.approx(angle, abs=0.2)


def test_shadow_goes_and_ink_stays() -> None:
    page = np.full((300, 300), 250, np.float32)
    page[100:200:12, 40:260] = 30
    shadow = np.linspace(0.55, 1.0, 300, dtype=np.float32)[None, :]
    evened = even_light((page * shadow).astype(np.uint8))
    paper = evened[20:80]
    assert int(paper.max()) - int(paper.min()) < 40
    assert evened[100, 150] < 90


def test_a_dark_panel_stays_dark() -> None:
    page = np.full((400, 400), 240, np.uint8)
    page[100:300, 50:350] = 15
    assert even_light(page)[200, 200] < 60


def test_faint_type_is_lifted_more_than_bold_type() -> None:
    page = np.full((300, 300), 240, np.uint8)
    page[50:60, 50:250:8] = 190
    page[200:210, 50:250:8] = 10
    lifted = lift_faint(ground_of(page))
    faint = int(lifted[40, 50]) - int(lifted[55, 50])
    assert faint > 80


@pytest.mark.parametrize("angle", [-3.0, 2.0])
def test_a_point_of_the_straightened_picture_finds_its_place_on_the_scan(angle: float) -> None:
    page = lines_of_dashes(angle)
    page[:] = np.where(page < 128, 200, page)
    cv2.circle(page, (120, 480), 6, 0, -1)
    layout = lay_out(page, PLAIN)
    y, x = np.unravel_index(int(cv2.GaussianBlur(layout.gray, (0, 0), 3).argmin()), layout.gray.shape)
    box = layout.way_back.box(float(x) - 1, float(y) - 1, float(x) + 1, float(y) + 1)
    assert abs(box.centre[0] - 120) < 4
    assert abs(box.centre[1] - 480) < 4


def test_boxes_never_leave_the_scan() -> None:
    layout = lay_out(np.full((50, 40), 255, np.uint8), PLAIN)
    box = layout.way_back.box(-20, -20, 400, 400)
    assert (box.x, box.y, box.right, box.bottom) == (0, 0, 40, 50)
