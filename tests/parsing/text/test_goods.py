"""The nouns of the trade, the phrases they stand in, and slips of a reader in them. Wordings invented."""

from __future__ import annotations

import pytest

from adminer.parsing.text.goods import find_nouns, has_goods, heads_of, phrase_around
from adminer.parsing.text.naming import goods_phrase, name_of
from adminer.parsing.text.slips import is_word, mend_text, mended
from tests.parsing.pages import parse


@pytest.mark.parametrize(
    ("text", "nouns"),
    [
        ("Vacuum cleaner with hose", ["Vacuum cleaner", "hose"]),
        ("Art-Rugs and oxblood loaves", ["Art-Rugs", "loaves"]),
        ("a lovely petti-\ncoat", ["petti-\ncoat"]),
        ("Folding Go-Carts, one roll-away bed", ["Go-Carts", "roll-away bed"]),
        ("everybody does", []),
    ],
)
def test_nouns_are_found_in_any_number_over_hyphens_and_line_ends(text: str, nouns: list[str]) -> None:
    assert [text[n.start : n.end] for n in find_nouns(text)] == nouns


def test_a_measure_names_nothing_by_itself() -> None:
    by_text = {"set": False, "dozen": False, "rocker": True}
    assert {t: find_nouns(t)[0].strong for t in by_text} == by_text


def test_the_head_of_a_name_is_its_last_word_in_the_singular() -> None:
    assert heads_of("Vacuum cleaners, a pair of Lamps") == {"cleaner", "lamp"}


@pytest.mark.parametrize(
    ("text", "phrase"),
    [
        ("Beautiful cottage design porch swing, weathered finish", "cottage design porch swing"),
        ("We also have a fine assortment of Solid Silver Garter Buckles, in many", "Solid Silver Garter Buckles"),
        ("Gents' Suits & Raincoats", "Gents' Suits & Raincoats"),
        ("PUTS THIS WALNUT DINING SET IN YOUR HOME", "WALNUT DINING SET"),
    ],
)
def test_a_phrase_keeps_what_qualifies_and_leaves_out_praise_and_talk(text: str, phrase: str) -> None:
    start, end = phrase_around(text, next(n for n in find_nouns(text) if n.strong))
    assert text[start:end] == phrase


def test_a_sentence_is_named_by_its_goods_and_a_label_stays_as_printed() -> None:
    assert name_of("Ask for the Lindow Tooth Brush") == "Lindow Tooth Brush"
    assert name_of("go to your dealer and purchase a 6oz. bottle", last=True) == "6oz. bottle"
    assert name_of("Best Green Coffee") == "Best Green Coffee"
    assert name_of("World's Champion 90-Egg Incubator") == "90-Egg Incubator"
    assert goods_phrase("guaranteed six months in every way") == ""


@pytest.mark.parametrize(
    ("read", "meant"),
    [("loa!", "loaf"), ("Tomalo", "Tomato"), ("piate,", "plate,"), ("SOLLD", "SOLID"), ("saucor", "saucer")],
)
def test_one_mistaken_shape_is_mended_in_the_case_it_was_printed_in(read: str, meant: str) -> None:
    assert mended(read) == meant


@pytest.mark.parametrize("printed", ["store", "fine", "coal", "12½", "39c", "Wenning", "zzyzx", "tbe"])
def test_words_figures_and_strange_names_are_left_alone(printed: str) -> None:
    assert mended(printed) == printed


def test_words_of_names_are_never_mended() -> None:
    assert mend_text("Tansy Bowi", frozenset({"bowi"})) == "Tansy Bowi"
    assert mend_text("Tansy Bowi") == "Tansy Bowl"
    assert not is_word("bowi")


def test_an_offer_tells_what_was_read_where_its_item_was_mended() -> None:
    advert = parse((20, 20, 14, "Tomalo Soup ........ 12c"), (20, 44, 14, "Rice .......... 9c"))
    mended_offer, plain = advert.offers
    assert mended_offer.item == "Tomato Soup"
    assert "read as “Tomalo Soup”" in mended_offer.why
    assert "read as" not in plain.why


def test_shapes_alike_only_in_capitals_are_mended_only_in_capitals() -> None:
    assert mended("RARGAIN") == "BARGAIN"
    assert mended("rargain") == "rargain"


def test_a_word_that_close_setting_ran_on_to_a_name_is_parted() -> None:
    assert mended("chairsalone") == "chairs alone"
    assert mended("abalone") == "abalone"


def test_goods_seldom_advertised_name_an_article_but_no_slip_is_mended_to_them() -> None:
    assert has_goods("Rat traps") and has_goods("A spading fork")
    assert is_word("hasps") and mended("hasps") == "hasps"
    assert mended("secateurc") == "secateurc"
    assert mended("kettlec") == "kettles"


def test_a_brand_in_quotation_marks_stays_with_its_goods_and_a_boast_goes() -> None:
    assert name_of('"Larchwood" muslin, 144 threads to the inch after washing, four-year wear') == '"Larchwood" muslin'
    assert name_of("Fibre Rugs, 9x12, greatest") == "Fibre Rugs, 9x12"
    assert name_of("Coffee, best") == "Coffee, best"  # a grade


def test_a_name_before_its_size_and_used_goods_keep_all_their_words() -> None:
    assert (
        name_of("Thorne Silk, 27 in., in forty shades, including black and cream") == "Thorne Silk, 27 in, forty shades"
    )
    assert name_of("USED TIRES, all sizes") == "USED TIRES, all sizes"
    assert name_of("Wool Hose, six pairs, guaranteed six months without holes") == "Wool Hose, six pairs"
