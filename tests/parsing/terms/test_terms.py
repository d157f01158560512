"""Printed terms: wordings of the trade, readers' slips in them, and statements.

Wordings: ../shared/trade.md E.2 (usage, from memory), otherwise common practice of stores, no source.
"""

from __future__ import annotations

from decimal import Decimal

import pytest

from adminer.parsing.terms.term_words import mend
from adminer.parsing.terms.terms import _data, find_labels, find_terms
from adminer.records import CONDITION_KINDS
from tests.parsing.pages import parse

WORDINGS = [
    ("Not more than an ounce to one garden", "limit"),
    ("not more than half a pound to a family", "limit"),
    ("Patterns cannot be sent during the Sale", "limit"),
    ("In the far West these prices are slightly higher", "limit"),
    ("continues for THREE WEEKS", "expiry"),
    ("For one month only", "expiry"),
    ("subject to change without notice", "expiry"),
    ("Coupon good the. Sat., Oct. 14", "expiry"),
    ("for 4c. in stamps", "mail_order"),
    ("add eight cents for the registry", "mail_order"),
    ("Every price on this page includes delivery to your station", "postage"),
    ("Called for and delivered", "postage"),
    ("Sacks free.", "postage"),
    ("All prices plus transportation", "postage"),
    ("Any old wringer counts with us for $15", "trade_in"),
    ("Old wringer taken as $5.00", "trade_in"),
    ("Your old suite makes the down payment", "trade_in"),
    ("Bring us your old percolator", "trade_in"),
    ("Third down, balance in 12 months", "deposit"),
    ("Take 18 months on the balance", "instalments"),
    ("No money until FALL", "instalments"),
    ("30 Days' Use Before You Decide", "guarantee"),
    ("Try it for ten nights", "guarantee"),
    ("a week's trial", "guarantee"),
    ("We ship upon approval", "guarantee"),
    ("return it at our expense", "guarantee"),
    ("may be returned at our expense", "guarantee"),
    ("we return the whole sum", "guarantee"),
    ("return it for full refund", "guarantee"),
    ("Water or no pay.", "guarantee"),
    ("Every one warranted", "guarantee"),
    ("lamp, with suite only", "combination"),
    ("Buy one at the price—the second for a penny", "combination"),
    ("Buy one, get the next for a penny", "combination"),
    ("COMPLETER PIECES -on sale every week", "open_stock"),
    ("on sale at all times", "open_stock"),
    ("A silk tie given with each suit", "free"),
    ("a tube of cream is thrown in", "free"),
    ("free in every kettle", "free"),
    ("Our booklet, “Ink and Paper,” is free", "free"),
    ("Alterations are free", "free"),
    ("our free colour leaflet", "free"),
    ("sell twenty-four cards of our buttons at 10c. apiece", "free"),
    ("with 100 disks free", "free"),
    ("You may deduct one tenth", "cash"),
    ("If you pay within thirty days take off $3.40", "cash"),
    ("subtract $1.50 if the money comes with the order", "cash"),
    ("When the card is full our cashier", "punch_card"),
    ("no card", "without_card"),
    ("Mail and phone orders filled", "mail_order"),
    ("C.O.D.'s accepted", "mail_order"),
    ("We prepay freight within 300 miles", "postage"),
    ("Saucer by mail, 10c extra", "postage"),
    ("$5 down delivers any suite", "instalments"),
    ("Charge accounts invited", "instalments"),
    ("Use our convenient lay-away plan", "instalments"),
    ("A small deposit holds any set", "deposit"),
    ("Liberal trade-in allowance", "trade_in"),
    ("$1 for your old percolator", "trade_in"),
    ("Quantity rights reserved", "limit"),
    ("None sold to dealers", "limit"),
    ("Six to a buyer", "limit"),
    ("While 200 last", "while_they_last"),
    ("Limited supply", "while_they_last"),
    ("Save our register tapes", "stamps"),
    ("and $10 in register tapes", "with_purchase"),
    ("WITH TAPES", "with_purchase"),
    ("Double stamps Wednesday", "stamps"),
    ("for card holders", "cardholder"),
    ("with two box tops", "coupon"),
    ("Not sold separately", "combination"),
    ("never sold below the price named here", "fixed_price"),
    ("Satisfaction guaranteed or money refunded", "guarantee"),
    ("plus 10% Federal tax", "tax"),
    ("Red Lantern Stamps every Tuesday", "stamps"),
    ("Easy payments on orders of $10", "instalments"),
    ("Final week of our 15-week offer", "schedule"),
    ("Next week: cup 9c", "schedule"),
    ("Saturday only", "expiry"),
    ("Coupon good thru Sat., July 18", "expiry"),
    ("Void without a purchase of $2.50 or more", "with_purchase"),
    ("without a coupon", "everyone"),
    ("usualy 3/10", "former"),
    ("Rec. price £9.50", "comparison"),
    ("R.R.P. 45p", "comparison"),
    ("elsewhere £4.75", "comparison"),
    ("if perf. 79c", "comparison"),
    ("OPA ceiling *$11", "comparison"),
    ("the sort sold at P.T. 45", "former"),
    ("Bring this bill", "coupon"),
    ("Slight irregulars of our $7", "comparison"),
    ("sold in fine shops up to $15", "comparison"),
    ("$10 DOWN", "deposit"),
    ("First payment $2", "deposit"),
    ("Low down payment", "deposit"),
    ("$1 will hold any suite", "deposit"),
    ("50c A WEEK", "instalments"),
    ("as little as $1.25 weekly", "instalments"),
    ("a dollar a week", "instalments"),
    ("$5 per mo.", "instalments"),
    ("Up to 78 weeks to pay", "instalments"),
    ("Buy now, pay later", "instalments"),
    ("Nothing to pay till October", "instalments"),
    ("on the installment plan", "instalments"),
    ("Hire purchase terms", "instalments"),
    ("Just say “Charge it!”", "instalments"),
    ("Chromed kettle, fully guaranteed", "guarantee"),
    ("Lifetime guarantee", "guarantee"),
    ("5-year warranty", "guarantee"),
    ("Safe arrival is guaranteed", "guarantee"),
    ("replaced free if broken", "guarantee"),
    ("breakage made good", "guarantee"),
    ("your money back if you are not pleased", "guarantee"),
    ("a set of jars thrown in free", "free"),
    ("FREE", "free"),
    ("Buy one get one free", "free"),
    ("Retails everywhere at", "comparison"),
    ("You would expect to pay", "comparison"),
    ("Others ask", "comparison"),
    ("Mfr's list price", "comparison"),
    ("Our Reg.", "former"),
    ("All prices include Federal tax", "tax"),
    ("No orders accepted for less than one package", "limit"),
    ("Minimum order one barrel", "limit"),
    ("Sold only by the dozen", "limit"),
    ("We reserve the nght to limit quantities", "limit"),
    ("before Sat., March 31, 1954", "expiry"),
    ("Good only Thursday", "expiry"),
    ("Terms: 2 per cent. ten days, thirty net", "cash"),
    ("2/10, n/30", "cash"),
    ("Nett Cash", "cash"),
    ("Send cash with order", "cash"),
    ("5 per cent for cash", "cash"),
    ("Packages charged at cost", "postage"),
    ("Carriage forward", "postage"),
    ("plus shipping and handling", "postage"),
    ("We ship anywhere", "postage"),
    ("for 2½ books", "stamps"),
    ("plus 250 points", "stamps"),
    ("two boxtops", "coupon"),
    ("send 25c and two labels", "coupon"),
    ("Bring this page", "coupon"),
    ("with each paid admission", "with_purchase"),
    ("One with $5, two with $10", "with_purchase"),
    ("with every sack of flour", "with_purchase"),
    ("with every 10 gallons", "with_purchase"),
    ("7th week of 15", "schedule"),
    ("City jewelers ask $5", "comparison"),
    ("Sold in most stores at 98c", "comparison"),
    ("Your grocer's price, 35c", "comparison"),
    ("You would be asked 12/6", "comparison"),
    ("They would cost you fully $4", "comparison"),
    ("OPA ceiling $3", "comparison"),
    ("Open-stock value", "comparison"),
    ("the $2 grade", "comparison"),
    ("instead of $3.50", "former"),
    ("ticketed at $40", "former"),
    ("Sold until Friday for $9", "former"),
    ("Heretofore $1.50", "former"),
    ("Our everyday 49c", "former"),
    ("Not over five yards to a customer", "limit"),
    ("No odd pairs sent on approval", "limit"),
    ("None sold to children", "limit"),
    ("Two plates per punched card", "limit"),
    ("Cash must accompany all orders", "mail_order"),
    ("Send $2 with order", "mail_order"),
    ("Send 50c and we will mail", "mail_order"),
    ("C.O.D. orders require a deposit", "mail_order"),
    ("Booklet for a two-cent stamp", "mail_order"),
    ("Country orders promptly filled", "mail_order"),
    ("Parcels over 10/- in value sent post free", "postage"),
    ("We pay rail", "postage"),
    ("Express extra", "postage"),
    ("£2 deposit and 12 weekly payments of 5/-", "instalments"),
    ("No interest charged", "instalments"),
    ("State tax not included", "tax"),
    ("Ohio residents add 3%", "tax"),
    ("Prices do not include sales tax", "tax"),
    ("yours free of all cost", "free"),
    ("Our truck delivers free", "free"),
    ("Free installation", "free"),
    ("and a large bowl free", "free"),
    ("FREE: one tumbler", "free"),
    ("With any sale of $20 or over", "with_purchase"),
    ("if bought with a tea set", "with_purchase"),
    ("with your old mattress", "trade_in"),
]


@pytest.mark.parametrize(("text", "kind"), WORDINGS)
def test_a_wording_of_the_trade_is_found_with_its_kind(text: str, kind: str) -> None:
    assert [t.kind for t in find_terms(text)] == [kind]


@pytest.mark.parametrize(
    "text",
    [
        "Free parking behind the store",
        "Whipping Cream 33c",
        "a finish free from flaws",
        "we shall see you next week.",
        "Easter Values",
        "Prices effective thru Saturday, April 11",  # the days of the advert, told by its dates
        "The Osterby Free Press",
        "he would buy for cash from owners",
        "goose down $5.00 a pound",
        "10 down pillows",
        "the loan is guaranteed by the city",
        "guaranteed bonds",
        "3 books 10c",
        "one book of stories",
        "14 points",  # ration points are the law's, no premium of the shop
        "See it at our store this week",
        "Spring is in the air before breakfast",
        "gummed labels",
        "the Osterby credit union",
        "warranty deed",
        "This week",
        "Piece of the week",
        "six-room house $4,500",
        "$5 worth for $4",
        "24 buttons to a card",
        "the stores close at six",
        "No waiting. Your gold card",
        "PENHALLOW LIMITED 302 Garnet Avenue",
    ],
)
def test_what_is_no_term_is_none(text: str) -> None:
    assert find_terms(text) == []


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("CATALOG F R E E, ON REGUEST", "CATALOG FREE, ON REQUEST"),
        ("guarantee satis-\nfaction", "guarantee satisfaction"),
        ("16 cents postpald", "16 cents postpaid"),
        ("cammot be sold below the price", "cannot be sold below the price"),
        ("Limft two to a customer", "Limit two to a customer"),
        ("withPenhallow card", "with Penhallow card"),
    ],
)
def test_a_slip_of_the_reader_is_mended_and_its_place_kept(text: str, words: str) -> None:
    (term,) = find_terms(text)
    assert term.words.lower() == words.lower()
    assert (term.start, term.end) == (0, len(text))


def test_right_words_are_left_alone() -> None:
    text = "price includes a whole place setting in simple white"
    assert mend(text) == (text, list(range(len(text) + 1)))


def test_a_stock_sentence_is_known_whatever_a_letter_of_it() -> None:
    text = "Whle quantibes last"
    (term,) = find_labels([(0, len(text), text)], [])
    assert (term.kind, term.scope, term.words) == ("while_they_last", "offer", text)


def test_a_term_broken_over_capital_lines_is_one_statement() -> None:
    advert = parse((40, 40, 20, "SOUP TUREEN $4.95"), (40, 90, 14, "MAIL ORDERS"), (40, 110, 14, "PROMPTLY FILLED"))
    assert [(c.kind, c.text) for c in advert.conditions] == [("mail_order", "MAIL ORDERS PROMPTLY FILLED")]


def test_terms_that_their_prices_tell_are_no_statements_of_their_own() -> None:
    advert = parse(
        (40, 40, 12, "Dinner set $24.50. Terms $1 down and $2 a month."),
        (40, 240, 12, "Tea set $12.50. Terms $1 down and $1 a month."),
        (40, 440, 12, "Every set is packed with care and sent from our own store room in town."),
    )
    assert [c for c in advert.conditions if c.kind == "instalments"] == []
    assert {p.role for o in advert.offers for p in o.prices} == {"price", "down_payment", "instalment"}


def test_the_last_day_of_ration_stamps_is_no_condition() -> None:
    advert = parse((40, 40, 14, "Tomato Juice 23¢"), (40, 240, 14, "Blue Stamps U, V, W good thru Oct. 20"))
    assert advert.conditions == ()


def test_a_claim_made_twice_in_the_same_words_is_one_condition() -> None:
    advert = parse((40, 40, 14, "This plate positively free today"), (40, 90, 14, "yes, it is positively free"))
    assert [c.kind for c in advert.conditions] == ["free"]


def test_the_value_of_a_condition_is_its_figure() -> None:
    advert = parse((40, 40, 20, "CUP 9c"), (40, 90, 12, "Limit two cups to a customer"))
    assert [(c.kind, c.value) for c in (*advert.conditions, *advert.offers[0].conditions)] == [("limit", "2")]
    assert advert.offers[0].prices[0].amount == Decimal("0.09")


def test_an_expiry_ends_with_its_day() -> None:
    (term,) = find_terms("Offer ends Friday, May 9 19-inch mower")
    assert term.words == "Offer ends Friday, May 9"
    (term,) = find_terms("Coupon expires April 29, 1950 Cup")
    assert term.words == "Coupon expires April 29, 1950"


def test_every_kind_of_the_wordings_is_a_known_kind() -> None:
    assert {row["kind"] for row in _data()["term"]} <= CONDITION_KINDS
