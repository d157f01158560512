"""Set compositions against published lists; each row names its source."""

from __future__ import annotations

import pytest

from adminer.names.pieces import load_vocabulary
from adminer.parsing.composition import compose, list_pieces, service_for, stated_pieces, sums
from adminer.records import PieceCount

PIECES = load_vocabulary()


def listing(text: str) -> tuple[PieceCount, ...]:
    """Turn "12 dinner_plate, 1 covered_sugar" into counted pieces."""
    pairs = [part.split() for part in text.split(", ")]
    return tuple(PieceCount(piece, int(count), piece) for count, piece in pairs)


# stated count, pieces, trade sum, resale sum, which closes, source
ENUMERATED = [
    (77, "12 dinner_plate, 12 salad_plate, 24 cereal_dish, 12 cup, 12 saucer, 1 platter, 1 vegetable_dish, 1 covered_sugar, 1 creamer",
     77, 76, "trade", "customs ruling NY 813612 (1995): 'Large Sugar W/Cover 2 PC.'"),
    (77, "12 dinner_plate, 12 soup_plate, 12 fruit_dish, 12 bread_and_butter, 12 cup_and_saucer, 1 platter, 1 salad_bowl, 1 covered_sugar, 1 creamer",
     77, 76, "trade", "customs ruling HQ 955838 (1994)"),
    (12, "4 dinner_plate, 4 soup_plate, 4 cereal_dish", 12, 12, "both", "customs ruling NY N297065 (2018)"),
    (5, "1 dinner_plate, 1 salad_plate, 1 soup_plate, 1 mug, 1 saucer", 5, 5, "both", "customs ruling NY A83492 (1996)"),
    (59, "8 luncheon_plate, 8 salad_plate, 8 mug, 8 cup, 8 saucer, 8 fruit_dish, 1 coffee_pot, 1 sugar_and_creamer, 1 salt_and_pepper, 1 platter, 1 vegetable_dish, 4 fruit_dish",
     61, 59, "resale", "a pottery's fifty-nine piece luncheon set, about 1951: modernism.com"),
    (92, "36 dinner_plate, 14 cup, 14 saucer, 13 fruit_dish, 5 coupe_soup, 3 baker, 1 vegetable_dish, 1 teapot, 1 creamer, 1 covered_sugar, 1 gravy_boat, 2 platter",
     94, 92, "resale", "auction lot: archivedauctions.com"),
    (29, "8 dinner_plate, 8 salad_plate, 7 bread_and_butter, 1 creamer, 1 covered_sugar, 1 gravy_boat, 2 vegetable_dish, 1 platter",
     30, 29, "resale", "a resale listing of 29 pieces"),
    (48, "40 dinner_plate, 2 vegetable_dish, 1 platter, 1 gravy_boat, 1 creamer, 1 butter_dish, 1 covered_sugar, 1 salt_and_pepper",
     51, 48, "resale", "a resale listing of 48 pieces, salt and pepper counted as one"),
    (66, "2 platter, 16 dinner_plate, 17 bread_and_butter, 2 vegetable_dish, 7 cereal_dish, 14 cup, 8 saucer",
     66, 66, "both", "melamine lot: vamptvintagedesign.com"),
    (90, "84 dinner_plate, 4 platter, 1 covered_sugar, 1 creamer", 91, 90, "resale", "import porcelain: useyourantiques.wordpress.com"),
    (85, "84 dinner_plate, 2 platter, 1 vegetable_dish, 1 covered_vegetable, 1 creamer, 1 sugar",
     91, 90, "neither", "'Eighty-five pieces' that do not add up: willowhomestead.blogspot.com"),
    (60, "12 dinner_plate, 12 soup_plate, 12 cup, 12 saucer, 12 salad_bowl", 60, 60, "both", "60 piece set for 12: biddingforgood.com"),
    (20, "4 dinner_plate, 4 salad_plate, 4 soup_plate, 4 cup, 4 saucer", 20, 20, "both", "20 piece set, 5 pieces for 4: noritakechinaset.org"),
    (57, "8 knife, 8 soup_spoon, 1 butter_knife, 8 fork, 8 salad_fork, 1 sugar_spoon, 16 teaspoon, 1 tablespoon, 1 tablespoon",
     52, 52, "neither", "Decatur Daily Democrat, 1 Apr 1954, p. 9 (OCR text): newspapers.library.in.gov DCDD19540401.1.9"),
]  # fmt: skip


@pytest.mark.parametrize(("stated", "pieces", "trade", "resale", "closes", "source"), ENUMERATED)
def test_listed_pieces_add_up_as_published(
    stated: int, pieces: str, trade: int, resale: int, closes: str, source: str
) -> None:
    listed = listing(pieces)
    by_trade, by_resale = sums(listed, PIECES)
    assert trade in by_trade, source
    assert resale in by_resale, source
    assert compose(stated, None, listed, PIECES).closes == closes, source


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


CLOSING = [  # standard compositions that close by arithmetic (trade.md D.2)
    (32, "6 dinner_plate, 6 bread_and_butter, 6 cup, 6 saucer, 6 fruit_dish, 1 platter, 1 vegetable_dish"),
    (35, "6 dinner_plate, 6 bread_and_butter, 6 cup, 6 saucer, 6 fruit_dish, 1 platter, 1 vegetable_dish, 1 creamer, 1 covered_sugar"),
    (45, "8 dinner_plate, 8 bread_and_butter, 8 cup, 8 saucer, 8 fruit_dish, 1 platter, 1 vegetable_dish, 1 creamer, 1 covered_sugar"),
    (53, "8 dinner_plate, 8 bread_and_butter, 8 fruit_dish, 8 soup_plate, 8 cup, 8 saucer, 1 platter, 1 vegetable_dish, 1 creamer, 1 covered_sugar"),
    (66, "60 dinner_plate, 2 platter, 1 vegetable_dish, 1 creamer, 1 covered_sugar"),
]  # fmt: skip


@pytest.mark.parametrize(("stated", "pieces"), CLOSING)
def test_standard_sets_close_by_the_trade_count(stated: int, pieces: str) -> None:
    assert compose(stated, None, listing(pieces), PIECES).closes in {"trade", "both"}


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
