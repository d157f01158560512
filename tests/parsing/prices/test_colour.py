"""Which term colours which price, by the ways of setting that stores used (common practice, no source)."""

from __future__ import annotations

from tests.parsing.pages import Line, parse


def _terms(*lines: Line) -> dict[str, str]:
    return {p.text: p.condition for o in parse(*lines).offers for p in o.prices}


def test_a_former_price_on_its_own_line_is_not_the_big_price_under_it() -> None:
    said = _terms(
        (40, 40, 16, "Chrome Dinette"), (60, 70, 14, "Reg. $79.95"), (40, 100, 60, "$59.88"),
        (340, 40, 16, "Mattress"), (360, 70, 14, "Reg. $39.50"), (340, 100, 60, "$24.88"),
        (40, 260, 14, "Both from our own floor and as good as they look."),
    )  # fmt: skip
    assert said == {"$79.95": "former", "$59.88": "everyone", "$39.50": "former", "$24.88": "everyone"}


def test_a_label_under_a_big_price_does_not_head_the_small_one_below() -> None:
    said = _terms(
        (40, 40, 16, "Dinner plate"), (40, 70, 70, "33¢"), (60, 150, 14, "with card"),
        (40, 175, 14, "regular price 55¢"), (40, 700, 14, "Graceful shapes in every piece"), (40, 230, 14, "Cup 19¢"),
    )  # fmt: skip
    assert (said["33¢"], said["55¢"], said["19¢"]) == ("cardholder", "without_card", "everyone")


def test_a_label_under_a_row_of_big_prices_is_for_them_all_and_not_for_the_list_below() -> None:
    said = _terms(
        (40, 40, 16, "Teaspoon"), (260, 40, 16, "Fork"), (480, 40, 16, "Knife"),
        (40, 70, 70, "29¢"), (260, 70, 70, "39¢"), (480, 70, 70, "49¢"),
        (240, 160, 14, "with each $5 purchase"),
        (40, 300, 14, "no purchase needed"),
        (40, 330, 14, "Gravy Ladle 79¢"), (40, 360, 14, "Pie Server $1.09"), (40, 390, 14, "Serving Spoon 99¢"),
    )  # fmt: skip
    assert {said[p] for p in ("29¢", "39¢", "49¢")} == {"with_purchase"}
    assert {said[p] for p in ("79¢", "$1.09", "99¢")} == {"everyone"}


def test_what_is_said_in_one_breath_stays_together() -> None:
    said = _terms((40, 40, 14, "Soup Bowl 49¢ with every $3 purchase"), (40, 70, 14, "Canister Set reg. $14.99 $9.99"))
    assert said == {"49¢": "with_purchase", "$14.99": "former", "$9.99": "everyone"}


def test_the_card_s_price_is_known_by_the_one_without_it_where_its_label_is_lost() -> None:
    said = _terms(
        (300, 40, 12, "PetrLalow"), (400, 40, 12, "without card"),
        (40, 70, 14, "Dinner plate"), (310, 70, 14, "39¢"), (420, 70, 14, "65¢"),
        (40, 100, 14, "Saucer"), (310, 100, 14, "19¢"), (420, 100, 14, "29¢"),
    )  # fmt: skip
    assert said == {"39¢": "cardholder", "65¢": "without_card", "19¢": "cardholder", "29¢": "without_card"}


def test_coffee_drip_or_regular_has_no_former_price() -> None:
    assert _terms((40, 40, 14, "Coffee, drip or regular lb. 75c")) == {"75c": "everyone"}


def test_ration_stamps_are_no_premium_stamps() -> None:
    said = _terms((40, 40, 14, "Tomato Juice, 46-oz."), (40, 70, 14, "Blue Stamps U, V, W 23¢"))
    assert set(said.values()) == {"everyone"}


def test_a_purchase_asked_for_beside_a_coupon_leaves_the_coupon_its_price() -> None:
    said = _terms(
        (40, 40, 16, "Detergent"),
        (40, 70, 70, "49¢"),
        (40, 150, 14, "With This Coupon"),
        (40, 175, 14, "and $5.00 Purchase"),
    )
    assert said["49¢"] == "coupon"


def test_value_under_a_price_compares_and_over_it_praises() -> None:
    said = _terms(
        (40, 40, 16, "Terrific Value"), (40, 70, 60, "$1.98"), (40, 150, 16, "Cake plate"),
        (440, 40, 16, "Console set"), (440, 70, 60, "$3.98"), (440, 150, 14, "$5.50 value"),
    )  # fmt: skip
    assert said == {"$1.98": "everyone", "$3.98": "everyone", "$5.50": "comparison"}


def test_a_label_with_others_beside_it_is_no_foot_of_the_row() -> None:
    said = _terms(
        (40, 70, 70, "19¢"), (260, 70, 70, "38¢"), (480, 70, 70, "49¢"),
        (40, 150, 14, "with your card"), (260, 150, 14, "with your card"), (480, 150, 14, "with your card"),
        (40, 175, 14, "without card 29¢"), (260, 175, 14, "without card 59"), (480, 175, 14, "without card 69¢"),
        (40, 300, 14, "Begin with one setting and add to it as your budget allows."),
    )  # fmt: skip
    assert {said[p] for p in ("19¢", "38¢", "49¢")} == {"cardholder"}
    assert (said["29¢"], said["69¢"]) == ("without_card", "without_card")


def test_figures_set_to_the_right_edge_of_a_wide_column_are_all_under_its_head() -> None:
    said = _terms(
        (40, 40, 14, "Piece"), (342, 40, 14, "Card price"),
        (40, 66, 14, "Platter"), (400, 66, 14, "$1.99"), (40, 92, 14, "Sugar"), (406, 92, 14, "1.59"),
        (40, 118, 14, "Teapot"), (406, 118, 14, "2.59"), (40, 144, 14, "Cream Pitcher"), (414, 144, 14, ".99"),
    )  # fmt: skip
    assert set(said.values()) == {"cardholder"}


def test_a_label_before_a_row_of_figures_is_for_them_all() -> None:
    said = _terms(
        (200, 40, 14, "63 x 99"), (320, 40, 14, "72 x 99"), (440, 40, 14, "81 x 99"),
        (40, 70, 14, "FORMERLY 1.59 1.79 1.98"), (40, 100, 14, "NOW 1.19 1.29 1.49"),
    )  # fmt: skip
    assert [p for p, condition in said.items() if condition == "former"] == ["1.59", "1.79", "1.98"]


def test_two_former_prices_stand_together() -> None:
    said = _terms((40, 40, 14, "Winter Coats, formerly $29.50 and $35.00, now $18"))
    assert said == {"$29.50": "former", "$35.00": "former", "$18": "everyone"}
    said = _terms((40, 40, 14, "Winter Coats, reduced from $29.50 to $18.00"))
    assert said["$18.00"] == "everyone"


def test_a_price_that_names_goods_compares_where_a_lower_one_follows() -> None:
    said = _terms((40, 40, 14, "Tooth Powder, 50c size 33c"), (40, 70, 14, "Face Powder, 75c size"))
    assert said == {"50c": "comparison", "33c": "everyone", "75c": "everyone"}
    said = _terms(
        (40, 40, 14, "Sheets, hemmed and torn. Our regular"), (40, 60, 14, "$1.00 quality"), (40, 90, 40, "79c")
    )
    assert said["$1.00"] == "former"
    told = _terms((40, 40, 14, "The $29.00 grade, 75c down and 50c a week"))
    assert told["$29.00"] == "everyone"


def test_what_stands_right_before_a_price_is_said_of_it_alone() -> None:
    said = _terms(
        (40, 40, 14, "Tea set for four is $6.95 here. Would be"),
        (40, 60, 14, "$11.50 in any shop, and sold singly too."),
    )
    assert said == {"$6.95": "everyone", "$11.50": "comparison"}
    said = _terms((40, 40, 14, "Lawn jackets, were"), (260, 56, 14, "59c, at"), (380, 42, 14, "25c"))
    assert said == {"59c": "former", "25c": "everyone"}
    said = _terms(
        (40, 40, 14, "Crepe dresses, OPA"), (40, 60, 14, "ceiling $7.45, here"), (40, 80, 14, "$5.95; hose"),
        (40, 100, 14, "$1.35 the pair"),
    )  # fmt: skip
    assert said == {"$7.45": "comparison", "$5.95": "everyone", "$1.35": "everyone"}
    said = _terms((40, 40, 14, "Iced tea glasses, 59c; if bought with a tea set, 39c"))
    assert said == {"59c": "everyone", "39c": "with_purchase"}


_ROWS: list[Line] = [
    (40, 60, 12, "Cup"), (300, 60, 12, ".85"), (400, 60, 12, ".57"),
    (40, 84, 12, "Saucer"), (300, 84, 24, ".45"), (400, 84, 12, ".30"),
    (40, 108, 12, "Fruit dish"), (300, 108, 12, ".55"), (400, 108, 12, ".37"),
    (40, 132, 12, "Oval platter"), (300, 132, 12, "3.25"), (400, 132, 12, "2.17"),
]  # fmt: skip


def test_a_word_over_a_column_of_prices_tells_what_they_were() -> None:
    said = _terms((40, 30, 12, "Piece"), (290, 30, 12, "Regular"), (400, 30, 12, "Sale"), *_ROWS)
    assert [said[text] for text in (".85", ".45", ".55", "3.25")] == ["former"] * 4
    assert [said[text] for text in (".57", ".30", ".37", "2.17")] == ["everyone"] * 4


def test_a_word_over_the_only_column_of_prices_tells_nothing() -> None:
    said = _terms((290, 30, 12, "List"), *[line for line in _ROWS if line[0] < 400])
    assert set(said.values()) == {"everyone"}


def test_a_head_of_a_column_is_no_condition_by_itself() -> None:
    advert = parse((40, 30, 12, "Piece"), (290, 30, 12, "List"), (400, 30, 12, "Ours"), *_ROWS)
    assert [c.text for c in advert.conditions] == []
    assert {p.text for o in advert.offers for p in o.prices if p.condition == "comparison"} == {
        ".85",
        ".45",
        ".55",
        "3.25",
    }


def test_now_tells_that_the_price_before_it_was_asked_once() -> None:
    said = _terms((40, 30, 14, "Cake stand, $5.95 now $3.88"), (40, 60, 14, "Tidbit tray, $4.50, now only $2.99"))
    assert said == {"$5.95": "former", "$3.88": "everyone", "$4.50": "former", "$2.99": "everyone"}


def test_a_higher_price_after_now_is_no_cut() -> None:
    said = _terms((40, 30, 14, "Cake stand, $2.95 now $3.88"))
    assert said == {"$2.95": "everyone", "$3.88": "everyone"}


def test_a_head_of_two_terms_tells_both_prices_of_every_pair_under_it() -> None:
    said = _terms(
        (40, 30, 14, "Coming up (with card / without card)"), (40, 54, 14, "Cup ... 19c / 49c"),
        (40, 78, 14, "Saucer ... 15c / 35c"), (40, 102, 14, "Lug soup ... 25c / 65c"),
    )  # fmt: skip
    assert [said[text] for text in ("19c", "15c", "25c")] == ["cardholder"] * 3
    assert [said[text] for text in ("49c", "35c", "65c")] == ["without_card"] * 3


def test_pairs_that_say_former_speak_for_a_pair_whose_word_is_worn() -> None:
    rows = ("Tea, usually 1/8 1/6", "Cheese, usually 3/10 3/4", "Prunes, sxl 2/9 2/3")
    said = _terms(*((40, 40 + 30 * i, 14, row) for i, row in enumerate(rows)))
    assert (said["2/9"], said["2/3"]) == ("former", "everyone")
    said = _terms(*((40, 40 + 30 * i, 14, row) for i, row in enumerate((rows[0], rows[2], "Figs 4d."))))
    assert said["2/9"] == "everyone"


def test_a_leaflet_asked_for_colours_its_price() -> None:
    said = _terms((40, 40, 14, "Paint, 5 pints"), (40, 70, 40, "99p"), (40, 120, 14, "with this leaflet"),
                  (40, 150, 14, "(otherwise £1.45)"))  # fmt: skip
    assert said == {"99p": "coupon", "£1.45": "everyone"}
