"""Whole adverts set in type: what each price is for, on which terms. Layouts invented, wordings common practice."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

from adminer.names.authority import Authorities, LineEntry
from adminer.parsing import parse_page
from adminer.records import Advert, Box, Note, Offer
from tests.parsing.pages import NO_NAMES, Line, parse, reading_of, some_names


def offer_of(advert: Advert, item: str) -> Offer:
    found = [o for o in advert.offers if item.lower() in o.item.lower()]
    assert len(found) == 1, [(o.item, [p.text for p in o.prices]) for o in advert.offers]
    return found[0]


def priced(advert: Advert) -> dict[str, list[tuple[str, str]]]:
    return {o.item: [(p.condition, str(p.amount)) for p in o.prices] for o in advert.offers}


def test_a_row_gives_the_item_left_of_its_price() -> None:
    advert = parse(
        (20, 20, 14, "Sugar, 5 lbs. ........ 49c"),
        (20, 44, 14, "Rice .................. 15c"),
        (20, 68, 14, "Fancy Peaches, No. 2½ can"),
        (300, 68, 14, "2 for 45c"),
    )
    assert [o.prices[0].amount for o in advert.offers] == [Decimal("0.49"), Decimal("0.15"), Decimal("0.45")]
    assert [o.item.split(",")[0] for o in advert.offers] == ["Sugar", "Rice", "Fancy Peaches"]
    assert advert.offers[2].prices[0].per_quantity == 2


def test_prices_set_in_a_column_of_their_own_find_their_rows() -> None:
    advert = parse(
        (20, 20, 14, "Dinner plate"),
        (20, 44, 14, "Cup"),
        (20, 68, 14, "Best Green"),
        (30, 92, 14, "Glass Pitcher"),
        (300, 20, 14, "39c"),
        (300, 44, 14, "25c"),
        (300, 92, 14, "98c"),
    )
    assert priced(advert) == {
        "Dinner plate": [("everyone", "0.39")],
        "Cup": [("everyone", "0.25")],
        "Best Green Glass Pitcher": [("everyone", "0.98")],
    }


def test_two_columns_of_prices_take_their_terms_from_the_heads() -> None:
    advert = parse(
        (300, 10, 12, "with card"),
        (400, 10, 12, "without card"),
        (20, 40, 14, "Dinner plate"),
        (305, 40, 14, "39c"),
        (415, 40, 14, "65c"),
        (20, 64, 14, "Salad plate"),
        (305, 64, 14, "29c"),
        (415, 64, 14, "49c"),
    )
    assert priced(advert) == {
        "Dinner plate": [("cardholder", "0.39"), ("without_card", "0.65")],
        "Salad plate": [("cardholder", "0.29"), ("without_card", "0.49")],
    }


def test_a_sloping_table_keeps_its_rows() -> None:
    rows = [
        ("Saucer", "19c", "29c"),
        ("Fruit dish", "21c", "31c"),
        ("Creamer", "69c", "98c"),
        ("Platter", "$1.19", "$1.79"),
    ]
    lines = [(20, y, 14, "Begin your set of this lovely china today and add to it") for y in (20, 40, 60)]
    for i, (item, *amounts) in enumerate(rows):
        lines.append((20, 100 + 24 * i, 14, item))
        lines += [(500 + 100 * j, 100 + 24 * i, 14, amount) for j, amount in enumerate(amounts)]
    (advert,) = parse_page(reading_of(lines, slope=0.04), NO_NAMES)
    assert {o.item: [p.text for p in o.prices] for o in advert.offers} == {item: prices for item, *prices in rows}


def test_a_place_setting_with_and_without_the_card_is_one_offer() -> None:
    # a place setting at $1.39 with the card and $2.50 without saves 44.4 %: common practice, no source
    advert = parse(
        (60, 40, 48, "Tansy Morn"),
        (70, 100, 14, "by Marrowstone Pottery"),
        (60, 160, 30, "5-pc. place setting"),
        (60, 200, 14, "dinner plate, salad plate, fruit dish, cup, saucer"),
        (60, 240, 80, "$1.39"),
        (70, 330, 14, "with your Penhallow card"),
        (420, 280, 40, "$2.50"),
        (420, 330, 14, "without card"),
        (60, 420, 40, "Penhallow Stores"),
        (60, 470, 14, "114 Harbor Street, Ferncliff"),
        names=some_names(),
    )
    (offer,) = advert.offers
    by_condition = {p.condition: p.amount for p in offer.prices}
    assert by_condition == {"cardholder": Decimal("1.39"), "without_card": Decimal("2.50")}
    saving = 100 * (1 - by_condition["cardholder"] / by_condition["without_card"])
    assert round(saving, 1) == Decimal("44.4")
    assert offer.piece_or_set == "place_setting"
    assert offer.composition is not None
    assert offer.composition.stated == 5
    assert offer.composition.closes == "both"
    assert offer.line is not None
    assert offer.line.entry_id == "tansy_morn"
    assert offer.maker is not None
    assert offer.maker.entry_id == "marrowstone"
    assert advert.retailer is not None
    assert (advert.retailer.entry_id, advert.city) == ("penhallow", "Ferncliff")


def test_a_regular_price_beside_card_prices_is_the_price_without_the_card() -> None:
    advert = parse(
        (20, 20, 20, "Dinner plate"),
        (20, 50, 60, "33¢"),
        (20, 118, 12, "with card"),
        (200, 80, 24, "55¢"),
        (200, 110, 12, "regular price"),
    )
    (offer,) = advert.offers
    assert [(p.condition, p.amount) for p in offer.prices] == [
        ("cardholder", Decimal("0.33")),
        ("without_card", Decimal("0.55")),
    ]


def test_a_former_price_belongs_to_the_sale_price() -> None:
    advert = parse((20, 20, 16, "Linen tablecloth, reg. $5.98, now $3.99"), (20, 60, 16, "Stemware goblet 39¢"))
    offer = offer_of(advert, "tablecloth")
    assert sorted((p.condition, str(p.amount)) for p in offer.prices) == [("everyone", "3.99"), ("former", "5.98")]
    assert offer.prices[0].condition_text or offer.prices[1].condition_text


def test_ranges_lists_and_limits_keep_their_roles() -> None:
    advert = parse(
        (20, 20, 14, "Fixtures, 25c. to $1.00"),
        (20, 50, 14, "Glass bowls 59¢ & 79¢"),
        (20, 80, 14, "Other rings from $3.00 up"),
        (20, 110, 14, "Goblets up to $2.00"),
    )
    roles = {p.text: p.role for o in advert.offers for p in o.prices}
    assert roles == {
        "25c": "range_low",
        "$1.00": "range_high",
        "59¢": "price",
        "79¢": "price",
        "$3.00": "from",
        "$2.00": "up_to",
    }
    assert len(offer_of(advert, "bowls").prices) == 2


def test_instalments_belong_to_the_article_they_pay_for() -> None:
    advert = parse(
        (20, 20, 14, "Porch swing $2.95"),
        (20, 40, 14, "50c cash and 50c per month"),
        (20, 90, 14, "Refrigerator $12.65"),
        (20, 110, 14, "$1 cash and $1 per month"),
    )
    assert {o.item: sorted(p.role for p in o.prices) for o in advert.offers} == {
        "Porch swing": ["down_payment", "instalment", "price"],
        "Refrigerator": ["down_payment", "instalment", "price"],
    }


def test_the_purchase_a_price_asks_for_is_no_price() -> None:
    advert = parse((20, 20, 30, "Saucer 9¢"), (20, 60, 14, "with each $5.00 purchase"))
    (offer,) = advert.offers
    assert [p.amount for p in offer.prices] == [Decimal("0.09")]
    assert offer.prices[0].condition == "with_purchase"
    assert offer.prices[0].condition_text == "with each $5.00 purchase"


def test_terms_keep_their_printed_words_and_value() -> None:
    advert = parse(
        (20, 20, 30, "Dinner plate 25¢"),
        (20, 90, 14, "Limit two per customer. While they last."),
        (20, 110, 14, "Mail orders filled. Plus tax."),
        (20, 130, 14, "Rain checks given if we sell out"),
    )
    terms = {c.kind: (c.text, c.value) for c in advert.conditions}
    assert terms["limit"] == ("Limit two per customer.", "2")
    assert terms["while_they_last"] == ("While they last.", None)
    assert terms["mail_order"] == ("Mail orders filled.", None)
    assert terms["tax"] == ("Plus tax.", None)
    assert terms["rain_check"][0] == "Rain checks given if we sell out"


def test_a_rule_between_keeps_text_and_price_apart() -> None:
    lines = [(20, 20, 16, "Sherbet glass"), (20, 60, 16, "19¢"), (20, 100, 16, "Water tumbler")]
    apart = parse_page(reading_of(lines, rules=(Box(0, 48, 400, 2),)), NO_NAMES)[0]
    assert apart.offers[0].item == "Water tumbler"


def test_the_printed_days_give_the_validity_with_the_year_of_the_note() -> None:
    advert = parse(
        (20, 20, 30, "Cup 25¢"),
        (20, 70, 14, "Thurs., Fri., Sat., March 12-13-14"),
        notes=(Note("a.png", published="1953-03-12"),),
    )
    assert (advert.valid_from, advert.valid_to, advert.dated_by) == (date(1953, 3, 12), date(1953, 3, 14), "printed")


def test_a_line_older_than_its_introduction_is_linked_with_a_warning() -> None:
    names = Authorities(lines=(LineEntry(id="silverthaw", name="Silverthaw", first_year=1955),))
    advert = parse(
        (20, 20, 40, "Silverthaw"),
        (20, 80, 20, "Dinner plate 39¢"),
        names=names,
        notes=(Note("a.png", published="1949-06-02"),),
    )
    link = advert.offers[0].line
    assert link is not None
    assert link.entry_id == "silverthaw"
    assert link.warning == "not introduced before 1955, but the advert is of 1949 at the latest"


def test_an_unknown_name_in_display_type_is_proposed_and_not_linked() -> None:
    advert = parse(
        (60, 20, 48, "Quince Arbor"),
        (60, 80, 16, "Fine China by Undine China Works"),
        (60, 120, 16, "Dinner plate 39¢"),
        (60, 150, 16, "Cup and saucer 45¢"),
    )
    assert [(n.name, n.kind) for n in advert.unknown_names] == [
        ("Quince Arbor", "line"),
        ("Undine China Works", "maker"),
    ]
    assert all(o.line is None for o in advert.offers)


def test_parsing_is_pure() -> None:
    lines = ((20, 20, 30, "Saucer 9¢"), (20, 60, 14, "with each $5.00 purchase"))
    assert parse(*lines) == parse(*lines)


def test_a_row_of_a_schedule_with_its_own_price_is_an_offer_too() -> None:
    lines: list[Line] = [(20, 60, 30, "Tansy Morn")]
    rows = (("1st week", "Dinner Plate", "29¢"), ("2nd week", "Dessert Dish", "19¢"), ("3rd week", "Saucer", "9¢"))
    for i, (week, piece, price) in enumerate(rows):
        y = 140 + 30 * i
        again = f"{i + 6}th and {i + 11}th weeks"
        lines += [(20, y, 16, week), (200, y, 16, piece), (400, y, 16, price), (520, y, 16, again)]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert [(o.item, [str(p.amount) for p in o.prices]) for o in advert.offers] == [
        ("Dinner Plate", ["0.29"]), ("Dessert Dish", ["0.19"]), ("Saucer", ["0.09"])
    ]  # fmt: skip
    assert [c.kind for c in advert.conditions] == ["schedule"]
