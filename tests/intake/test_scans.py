"""Every usual kind of scan comes out upright, 8 bit, with a believable resolution or none."""

from __future__ import annotations

import hashlib
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from adminer.intake.decode import believable_dpi, to_eight_bit
from adminer.intake.identity import clipping_id_of, digest_of
from adminer.intake.scans import count_leaves, open_leaf, open_scan
from tests.intake.pictures import card, corner_is_dark, save


@pytest.mark.parametrize(
    ("name", "mode", "options"),
    [
        ("gray.png", "L", {}),
        ("colour.png", "RGB", {}),
        ("indexed.png", "P", {}),
        ("see-through.png", "RGBA", {}),
        ("two-tone.tif", "1", {"compression": "group4"}),
        ("packed.tif", "L", {"compression": "tiff_lzw"}),
        ("ink.tif", "CMYK", {}),
        ("ink.jpg", "CMYK", {}),
        ("colour.jpg", "RGB", {"quality": 90}),
        ("gray.webp", "L", {"lossless": True}),
        ("colour.bmp", "RGB", {}),
    ],
)
def test_each_kind_of_picture_keeps_its_size_its_corner_and_its_tones(
    tmp_path: Path, name: str, mode: str, options: dict[str, object]
) -> None:
    path = save(card().convert(mode), tmp_path / name, **options)
    (page,) = open_scan(path, name)
    assert page.pixels.dtype == np.uint8
    assert page.pixels.shape[:2] == (240, 360)
    assert corner_is_dark(page.pixels)
    assert page.leaf == 1
    assert page.remark is None


def test_sixteen_bits_come_down_to_eight_over_their_full_range(tmp_path: Path) -> None:
    deep = np.asarray(card(), dtype=np.uint16) * 257
    for name in ("deep.png", "deep.tif"):
        path = save(Image.fromarray(deep), tmp_path / name)
        (page,) = open_scan(path, name)
        assert np.abs(page.pixels.astype(int) - np.asarray(card()).astype(int)).max() <= 1


def test_twelve_bits_in_a_sixteen_bit_file_are_not_all_black() -> None:
    twelve = Image.fromarray(np.asarray(card(), dtype=np.uint16) * 16)
    assert to_eight_bit(twelve).max() > 230


def test_see_through_parts_are_paper() -> None:
    glass = Image.new("RGBA", (40, 40), (0, 0, 0, 0))
    assert to_eight_bit(glass).min() == 255


@pytest.mark.parametrize("turn", range(1, 9))
def test_a_photograph_stands_upright_whatever_its_exif_turn(tmp_path: Path, turn: int) -> None:
    # how a camera stores each of the eight orientations: the inverse of what a viewer must do (Exif 2.3, tag 274)
    stored = {
        1: None,
        2: Image.Transpose.FLIP_LEFT_RIGHT,
        3: Image.Transpose.ROTATE_180,
        4: Image.Transpose.FLIP_TOP_BOTTOM,
        5: Image.Transpose.TRANSPOSE,
        6: Image.Transpose.ROTATE_90,
        7: Image.Transpose.TRANSVERSE,
        8: Image.Transpose.ROTATE_270,
    }[turn]
    picture = card() if stored is None else card().transpose(stored)
    exif = Image.Exif()
    exif[274] = turn
    path = save(picture, tmp_path / "phone.jpg", exif=exif, quality=95)
    (page,) = open_scan(path, "phone.jpg")
    assert page.pixels.shape == (240, 360)
    assert corner_is_dark(page.pixels)


def test_a_file_of_several_pages_gives_each_its_id(tmp_path: Path) -> None:
    first, rest = card(words="ONE"), [card(words="TWO"), card(words="THREE")]
    for name in ("roll.tif", "roll.pdf"):
        path = save(first, tmp_path / name, save_all=True, append_images=rest)
        pages = list(open_scan(path, name))
        digest = hashlib.sha256(path.read_bytes()).hexdigest()
        assert [page.clipping_id for page in pages] == [digest[:16], f"{digest[:16]}-2", f"{digest[:16]}-3"]
        assert [page.leaf for page in pages] == [1, 2, 3]
        assert len({page.pixels.tobytes() for page in pages}) == 3
        assert count_leaves(path, name) == 3
        assert open_leaf(path, name, 2).pixels.tobytes() == pages[1].pixels.tobytes()


def test_a_pdf_keeps_the_pixels_of_the_scan_inside_it(tmp_path: Path) -> None:
    path = save(card(900, 600), tmp_path / "scan.pdf", resolution=300)
    (page,) = open_scan(path, "scan.pdf")
    assert page.pixels.shape[:2] == (600, 900)
    assert page.dpi == pytest.approx(300, abs=1)
    assert corner_is_dark(page.pixels)


def test_the_same_content_has_the_same_id_under_any_name(tmp_path: Path) -> None:
    one = save(card(), tmp_path / "one.png")
    two = tmp_path / "two.png"
    two.write_bytes(one.read_bytes())
    assert digest_of(one) == digest_of(two)
    assert clipping_id_of(digest_of(one), 1) == digest_of(two)[:16]


@pytest.mark.parametrize(
    ("stated", "believed"),
    [
        ((300, 300), 300.0),
        ((299.9994, 299.9994), 299.9994),
        ((0, 0), None),
        ((1, 1), None),
        ((72, 72), None),
        ((96, 96), None),
        ((300, 150), None),
        ((5000, 5000), None),
        (None, None),
        ((float("nan"), 300), None),
        ("300", None),
    ],
)
def test_a_resolution_is_believed_only_where_it_can_be_true(stated: object, believed: float | None) -> None:
    assert believable_dpi(stated, (1200, 1500)) == believed


def test_a_page_of_three_yards_is_not_believed() -> None:
    assert believable_dpi((100, 100), (11000, 2000)) is None


def test_a_jpeg_named_png_is_read_with_a_remark(tmp_path: Path) -> None:
    path = tmp_path / "wrong.png"
    card().save(path, format="JPEG")
    (page,) = open_scan(path, "wrong.png")
    assert page.remark == "its name says PNG, its content is JPEG; it was read as JPEG"
