"""Names that sign an advert within its last lines of text; invented names, common practice, no source."""

from __future__ import annotations

import pytest

from tests.parsing.house.test_signatures import retailer_of
from tests.parsing.pages import Line, parse

PLACE: Line = (20, 64, 15, "Corbelle, Osterby Center, Ohio.")


def signed(*closing: str) -> str | None:
    text = ("Grow your own in cellar or", "shed. Full directions with", "every order, postpaid 65c.")
    lines: list[Line] = [(20, 20 + 20 * i, 15, line) for i, line in enumerate((*text, *closing))]
    return retailer_of(lines)


@pytest.mark.parametrize(
    ("closing", "name"),
    [
        (("Agents wanted. THE BRACKEN MOP", "COMPANY, Box 17, Osterby, Ohio."), "THE BRACKEN MOP COMPANY"),
        (("Book free. NEMORA HIDE & ROBE TANNERY,", "Route 4, Osterby, Kans."), "NEMORA HIDE & ROBE TANNERY"),
        (("$8.50. Chain 30 cts. more. Silas", "Corbelle, Osterby Center, Ohio."), "Silas Corbelle"),
        (("Two for $2.00. Corbelle Pocket-Lamp", "Works, Dept. K, Osterby, Pa."), "Corbelle Pocket-Lamp Works"),
        (("Write today. Mrs. A. J. Corbelle, Box", "9, Osterby, Ohio."), "Mrs. A. J. Corbelle"),
        (("Book of 48 pages. Wendover Poultry", "Works, Dept. K, Osterby, Ind."), "Wendover Poultry Works"),
    ],
)
def test_a_name_after_the_last_sentence_goes_on_to_its_address(closing: tuple[str, ...], name: str) -> None:
    assert signed(*closing) == name


def test_the_offer_on_the_line_where_the_name_begins_is_none_of_the_name() -> None:
    advert = parse((20, 20, 15, "Ferrets, $4.25 each, and"), (20, 42, 15, "chain with collar 30 cts. Silas"), PLACE)
    assert advert.retailer is not None
    assert advert.retailer.box.x > 200
    assert [offer.item for offer in advert.offers][-1] == "chain with collar"


def test_a_running_name_is_no_goods_for_the_price_before_it() -> None:
    lines: list[Line] = [
        (20, 20, 15, "Our steady lamp, postpaid, $1.15. Registered mail"),
        (20, 42, 15, "8c more. Two for $2.00. CORBELLE POCKET-LAMP"),
    ]
    advert = parse(*lines, (20, 64, 15, "WORKS, Dept. K, Osterby, Pa."))
    assert advert.retailer is not None
    assert not any("CORBELLE" in offer.item for offer in advert.offers)


def test_a_sentence_with_no_address_behind_it_signs_nothing() -> None:
    assert signed("Agents wanted. Best Brass Works", "Inside, and a bell that rings.") is None
    assert signed("Write today. Heron Bldg., 9 Mill St.", "Osterby, Ohio.") is None


@pytest.mark.parametrize(
    ("closing", "name"),
    [
        (("Post free.—J. CORBELLE, Seedsman,", "Mill Row, Osterby."), "J. CORBELLE"),
        (("Carriage paid.-", "MRS. DALE. Weir Farm, Osterby."), "MRS. DALE"),
        (("List free.--Corbelle & Son, 18,", "Mill Row, Osterby."), "Corbelle & Son"),
        (("State size.—THE OSTERBY SLIPPER", "DEPOT, 33, Haven Parade, Wenning, W."), "THE OSTERBY SLIPPER DEPOT"),
    ],
)
def test_a_name_behind_a_dash_signs_with_the_last_address(closing: tuple[str, ...], name: str) -> None:
    assert signed(*closing) == name


@pytest.mark.parametrize(
    "closing", [("Fine lace—Ladies like it, and", "Cheap."), ("All-Wool, 5s. the pair, Post free",)]
)
def test_a_dash_in_a_sentence_signs_nothing(closing: tuple[str, ...]) -> None:
    assert signed(*closing) is None
