"""Who advertises, told from signature line and display type alone. Names invented."""

from __future__ import annotations

from adminer.records import Advert
from tests.parsing.pages import parse

BODY = tuple((40, 300 + 18 * i, 14, "Everything for the table is sold at our lowest figures") for i in range(12))


def retailer_of(advert: Advert) -> str | None:
    return advert.retailer.name if advert.retailer else None


def test_partners_keep_every_name_though_a_comma_parts_them() -> None:
    assert retailer_of(parse(*BODY, (40, 900, 60, "Varley, Thornaby & Quill"))) == "Varley, Thornaby & Quill"


def test_a_street_corner_after_a_firm_is_no_partner() -> None:
    assert retailer_of(parse(*BODY, (40, 900, 30, "Varley Shoe Co., Ninth & Thornaby"))) == "Varley Shoe Co"


def test_a_pair_of_plain_words_is_no_firm() -> None:
    assert retailer_of(parse(*BODY, (40, 900, 22, "Sample and Booklet"))) is None
    assert retailer_of(parse((40, 40, 30, "Black & Tan"), *BODY)) is None


def test_a_name_in_display_type_over_a_line_of_its_trade_is_the_house() -> None:
    advert = parse((40, 40, 60, "Aubrietia"), (60, 110, 18, "General drapery establishment"), *BODY)
    assert retailer_of(advert) == "Aubrietia"


def test_a_headline_of_plain_words_gives_way_to_the_signature() -> None:
    advert = parse((40, 40, 60, "Quality Groceries"), *BODY, (40, 900, 24, "J. S. VARLEY, LTD."))
    assert retailer_of(advert) == "J. S. VARLEY, LTD"


def test_capitals_run_together_are_parted() -> None:
    assert retailer_of(parse(*BODY, (40, 900, 14, "THEVARLEY & THORNABYCO., Box37"))) == "THE VARLEY & THORNABY CO"
