"""Sets without a price in money, and sets of as many of one kind. Common practice of the trade, no source."""

from __future__ import annotations

import pytest

from adminer.parsing.sets.composition import list_pieces, set_of, stated_pieces
from adminer.parsing.sets.sets_alone import WHY
from adminer.records import Advert
from tests.parsing.pages import Line, parse, some_names


def _stated(advert: Advert) -> list[int]:
    return sorted(o.composition.stated or 0 for o in advert.offers if o.composition)


def test_a_set_for_books_of_stamps_is_an_offer_with_its_books() -> None:
    advert = parse(
        (40, 40, 16, "16-pc. Starter Set. Stoneware, four each of dinner plates,"),
        (40, 62, 16, "cups, saucers and bread & butters"),
        (40, 84, 16, "2½ BOOKS"),
        (560, 40, 16, "45-pc. Dinner Service, Tansy Morn"),
        (560, 62, 16, "6 BOOKS"),
        names=some_names(),
    )
    sets = {o.composition.stated or 0: o for o in advert.offers if o.composition}
    assert sorted(sets) == [16, 45]
    assert all(o.prices == () and o.why == WHY for o in sets.values())
    assert [c.kind for c in sets[16].conditions] == ["stamps"] == [c.kind for c in sets[45].conditions]
    assert [c.value for c in sets[16].conditions] == ["2.5"]
    assert sets[16].composition
    assert {(p.piece, p.count) for p in sets[16].composition.listed} >= {("dinner_plate", 4), ("saucer", 4)}
    assert sets[45].line and sets[45].line.entry_id == "tansy_morn"


def test_a_set_given_free_is_an_offer_with_what_it_is_given_for() -> None:
    advert = parse(
        (40, 40, 24, "Walnut Dining Suite"),
        (40, 80, 40, "$118.50"),
        (40, 300, 20, "FREE with every purchase of $50.00"),
        (40, 330, 16, "A 31-piece Dinner Set in gold and white"),
    )
    (given,) = [o for o in advert.offers if not o.prices]
    assert given.composition and given.composition.stated == 31
    assert {c.kind for c in given.conditions} == {"free", "with_purchase"}


def test_a_piece_given_free_is_an_offer_with_its_line() -> None:
    advert = parse(
        (40, 40, 14, "Granulated Sugar 52c"),
        (40, 140, 14, "FREE - A Green Silverthaw Cup with each $1.00 order"),
        names=some_names(),
    )
    (given,) = [o for o in advert.offers if not o.prices]
    assert given.item == "Green Silverthaw Cup"
    assert given.line and given.line.entry_id == "silverthaw"
    assert {c.kind for c in given.conditions} == {"free", "with_purchase"}


def test_a_piece_named_without_gift_or_price_is_no_offer() -> None:
    advert = parse(
        (40, 40, 14, "Granulated Sugar 52c"), (40, 240, 14, "See the Silverthaw Cup in our window"), names=some_names()
    )
    assert all(o.prices for o in advert.offers)


def test_a_set_said_again_is_one_set() -> None:
    advert = parse(
        (40, 40, 20, "Silverthaw, the 45-piece service for eight"),
        (40, 300, 20, "45-piece set"),
        (40, 330, 40, "$29.95"),
    )
    assert _stated(advert) == [45]
    assert all(o.prices for o in advert.offers)


@pytest.mark.parametrize(
    "lines",
    [
        ((40, 40, 20, "Tumblers"), (40, 64, 14, "16-oz. amber glass, set of 8"), (40, 90, 40, "$1.33")),
        ((40, 40, 14, "Refrigerator Dishes, set of eight, with covers 49c"),),
    ],
)
def test_set_of_so_many_states_them_before_or_after_the_thing(lines: tuple[Line, ...]) -> None:
    assert _stated(parse(*lines)) == [8]


@pytest.mark.parametrize("text", ["Soup Bowls, set of 2 98c", "Per set of six of each 54c", "Set of dishes $1.98"])
def test_what_states_no_set(text: str) -> None:
    assert _stated(parse((40, 40, 14, text))) == []


def test_a_set_of_pairs_is_not_that_many_pieces() -> None:
    (offer,) = parse((40, 40, 14, "Set of 4 cups and saucers 98c")).offers
    assert offer.composition is None or offer.composition.stated is None


@pytest.mark.parametrize(("text", "pieces"), [("21 picces", 21), ("a 56-picce set", 56), ("20-pc. set", 20)])
def test_pieces_are_read_through_slips(text: str, pieces: int) -> None:
    found = stated_pieces(text)
    assert found and found[0] == pieces


def test_set_of_each_counts_no_pieces() -> None:
    assert set_of("set of six of each") is None
    assert set_of("sets of six") == 6


def test_a_figure_between_two_single_pieces_is_a_price_without_its_sign() -> None:
    text = "Cup 65 Saucer 45 Soup Bowl 80"
    found = list_pieces(text, [(0, 3, "cup"), (7, 13, "saucer"), (17, 26, "soup_plate")])
    assert [(p.piece, p.count) for p in found] == [("cup", 1), ("saucer", 1), ("soup_plate", 1)]
    several = list_pieces("1 Platter, 8 Soup Bowls", [(2, 9, "platter"), (13, 23, "soup_plate")])
    assert several[1].count == 8


def test_a_list_with_handles_goes_on_beside_the_payments_of_its_price() -> None:
    advert = parse(
        (40, 40, 22, "30-PIECE SERVICE FOR EIGHT"),
        (40, 80, 13, "8 Hollow-Handle Knives • 8 Forks • 8 Teaspoons"),
        (40, 101, 13, "2 Tablespoons • 4 Soup Spoons"),
        (540, 40, 60, "$9.75"),
        (540, 100, 16, "$1.00 DOWN"),
    )
    (offer,) = [o for o in advert.offers if o.composition]
    assert offer.composition
    assert [p.count for p in offer.composition.listed] == [8, 8, 8, 2, 4]
    assert offer.composition.closes in {"both", "trade"}


@pytest.mark.parametrize(
    ("text", "number"),
    [("One hundred and twelve pieces, gold lined", 112), ("A HUNDRED-PIECE dinner service", 100)],
)
def test_pieces_past_a_hundred_are_counted_in_words(text: str, number: int) -> None:
    found = stated_pieces(text)
    assert found is not None
    assert found[0] == number
