"""Small notices: the words in capitals that run into the line name what the prices after them are for."""

from __future__ import annotations

from adminer.parsing import parse_page
from adminer.parsing.text.notices import lead_in, name_of_notice, notices
from tests.parsing.pages import NO_NAMES, Line, advert_text, reading_of

NOTICES: list[Line] = [
    (20, 100, 16, "OAK CHURN, four gallons, giving good"),
    (20, 122, 16, "service for years, sound lid, $3.50. Milking"),
    (20, 144, 16, "stool, 75c. Enquire at the mill after 5 p. m."),
    (20, 170, 16, "BABY CHICKS every Tuesday. Early"),
    (20, 192, 16, "Duns, $7.95; Grays, $6.95. Custom hatching."),
    (20, 218, 16, "1929 COACH, new paint, four good tires,"),
    (20, 240, 16, "heater, $135. Call at noon."),
    (20, 266, 16, "ROOM, furnished, steam heat,"),
    (20, 288, 16, "gentleman, $2.50; with two meals, $6."),
]


def test_the_words_in_capitals_name_what_a_notice_offers() -> None:
    (advert,) = parse_page(reading_of(NOTICES), NO_NAMES)
    assert [(o.prices[0].text, o.item) for o in advert.offers] == [
        ("$3.50", "OAK CHURN"),
        ("75c", "Milking stool"),
        ("$7.95", "BABY CHICKS"),
        ("$6.95", "BABY CHICKS Grays"),
        ("$135", "1929 COACH"),
        ("$2.50", "ROOM, furnished"),
        ("$6", "ROOM, furnished two meals"),
    ]


def test_what_a_notice_is_for_is_no_name() -> None:
    assert lead_in("FOR SALE—Oak churn, sound lid") == ""
    assert lead_in("WANTED, a boy to split wood") == ""
    assert lead_in("OAK CHURNS AND STOOLS") == ""
    assert lead_in("I will sell the churn") == ""
    assert lead_in("42-PC. SET of china") == "42-PC. SET"


def test_a_name_of_one_word_takes_in_what_tells_of_it() -> None:
    assert name_of_notice("ROOM, furnished, steam heat") == "ROOM, furnished"
    assert name_of_notice("OAK CHURN, four gallons") == "OAK CHURN"


def test_two_such_lines_make_no_custom() -> None:
    assert notices(advert_text(*NOTICES[:5])) == frozenset()
    assert len(notices(advert_text(*NOTICES))) == 4


def test_the_letter_of_a_picture_opens_an_entry_of_a_catalogue() -> None:
    lines: list[Line] = [
        (20, 100, 16, "(E) BREAD BOX. Roll-top steel, baked"),
        (20, 122, 16, "white enamel, decal of fruit, 17 in."),
        (20, 144, 16, "wide"),
        (20, 166, 16, "82 K 2230—Wt. 7 lbs."),
        (280, 166, 16, "$4.45"),
        (20, 200, 16, "(F) COOK BOOK RACK. Maple finish, with"),
        (20, 222, 16, "a glass shield that swings up."),
        (20, 244, 16, "82 K 2231—Wt. 2 lbs."),
        (280, 244, 16, "$1.69"),
        (20, 278, 16, "(G) SKILLET. Copper core, to match (E)"),
        (20, 300, 16, "82 K 2232—Wt. 4 lbs."),
        (280, 300, 16, "$7.50"),
    ]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert [o.item for o in advert.offers] == ["BREAD BOX", "COOK BOOK RACK", "SKILLET Copper core"]


def test_the_rows_of_a_list_under_such_a_line_are_told_by_their_own_words() -> None:
    lines: list[Line] = []
    for i, (head, row) in enumerate((("TABLE WARE of steel", "Soup ladle"), ("WARE of glass", "Pitcher"))):
        lines += [(20, 100 + 70 * i, 16, head), (20, 126 + 70 * i, 16, row), (400, 126 + 70 * i, 16, f"{i + 3}5c.")]
    lines += [(20, 240, 16, "OAK CHURN, sound lid"), (400, 240, 16, "$3.50")]
    (advert,) = parse_page(reading_of(lines), NO_NAMES)
    assert [o.item.split()[-1] for o in advert.offers][:2] == ["ladle", "Pitcher"]
