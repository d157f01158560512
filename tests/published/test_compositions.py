"""Set compositions against published lists; each row names its source."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from adminer.names.pieces import load_vocabulary
from adminer.parsing.sets.composition import compose, list_pieces, service_for, stated_pieces, sums
from adminer.records import PieceCount

PIECES = load_vocabulary()


def listing(text: str) -> tuple[PieceCount, ...]:
    """Turn "12 dinner_plate, 1 covered_sugar" into counted pieces."""
    pairs = [part.split() for part in text.split(", ")]
    return tuple(PieceCount(piece, int(count), piece) for count, piece in pairs)


PUBLISHED = tomllib.loads((Path(__file__).parent / "compositions.toml").read_text(encoding="utf-8"))


@pytest.mark.parametrize("row", PUBLISHED["enumerated"], ids=lambda row: f"{row['stated']} by {row['source'][:24]}")
def test_listed_pieces_add_up_as_published(row: dict[str, Any]) -> None:
    listed = listing(row["pieces"])
    by_trade, by_resale = sums(listed, PIECES)
    assert row["trade"] in by_trade, row["source"]
    assert row["resale"] in by_resale, row["source"]
    assert compose(row["stated"], None, listed, PIECES).closes == row["closes"], row["source"]


def test_sets_listed_without_a_count_are_only_added_up() -> None:
    # customs ruling NY L87187 (2005): 4 dinner, 4 salad, 4 soup, 4 mugs; a silver-plate chest: 75mpop.blogspot.com
    dishes = compose(None, None, listing("4 dinner_plate, 4 salad_plate, 4 soup_plate, 4 mug"), PIECES)
    chest = compose(
        None,
        None,
        listing("8 knife, 8 fork, 8 salad_fork, 8 teaspoon, 8 soup_spoon, 1 sugar_spoon, 1 butter_knife"),
        PIECES,
    )
    assert (dishes.listed_sum, dishes.closes) == (16, None)
    assert (chest.listed_sum, chest.closes) == (42, None)


@pytest.mark.parametrize(("setting", "pieces"), [(4, 32), (5, 40)])
def test_a_service_for_eight_is_eight_settings(setting: int, pieces: int) -> None:
    # "32 pieces (4-piece setting) or 40 pieces (5-piece)": visualfoodie.com
    assert compose(setting, 8, (), PIECES, setting).implied == pieces


def test_the_standard_service_for_eight_is_the_45_piece_set() -> None:
    # USITC Publication 766 (1976) prices earthen dinnerware "per 45-piece set"
    assert compose(45, 8, (), PIECES).implied == 45
    assert compose(None, 8, (), PIECES).implied == 45


@pytest.mark.parametrize("row", PUBLISHED["standard"], ids=lambda row: str(row["stated"]))
def test_standard_sets_close_by_the_trade_count(row: dict[str, Any]) -> None:
    assert compose(row["stated"], None, listing(row["pieces"]), PIECES).closes in {"trade", "both"}


def test_the_printed_advert_of_1954_is_read_and_its_misreading_named() -> None:
    # Decatur Daily Democrat, 1 Apr 1954, p. 9: OCR text of the library's site
    text = (
        "57 PIECE SERVICE FOR 8 8 KNIVES 8 SOUP SPOONS 1 BUTTER KNIFE 8 FORKS 8 SALAD FORKS 1 SUGAR SPOON "
        "16 TEASPOONS 1 TABLESPOON 1 PIERCED TABLESPOON"
    )
    names = ["KNIVES", "SOUP SPOONS", "BUTTER KNIFE", "FORKS", "SALAD FORKS", "SUGAR SPOON", "TEASPOONS", "TABLESPOON",
             "PIERCED TABLESPOON"]  # fmt: skip
    spans, at = [], 0
    for name in names:
        start = text.index(f" {name}", at) + 1
        at = start + len(name)
        spans.append((start, at, PIECES.find(name) or ""))
    listed = [PieceCount(x.piece, x.count, x.text) for x in list_pieces(text, spans)]
    stated = stated_pieces(text)
    assert stated is not None
    made = compose(stated[0], service_for(text), listed, PIECES)
    assert (made.stated, made.service_for, made.listed_sum, made.closes) == (57, 8, 52, "neither")
    assert made.likely == "claimed 57, listed 52: probable misreading of 52"


def test_one_odd_count_among_eights_is_named_as_the_misreading() -> None:
    listed = listing(
        "8 dinner_plate, 8 bread_and_butter, 8 fruit_dish, 8 soup_plate, 8 cup, 10 saucer, "
        "1 platter, 1 vegetable_dish, 1 creamer, 1 covered_sugar"
    )
    made = compose(53, 8, listed, PIECES)
    assert made.closes == "neither"
    assert made.listed_sum == 55
    assert made.likely == "claimed 53, listed 55: “saucer” probably reads 8"
