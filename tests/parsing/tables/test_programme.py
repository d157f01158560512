"""Terms of a programme: the feature's terms hold for the prices of its schedule. Common practice, no source."""

from __future__ import annotations

from adminer.records import Advert, Price
from tests.parsing.pages import Line, parse

_ROWS: list[Line] = [
    (40, 300, 14, "1st, 4th week"),
    (240, 300, 14, "Dinner Plate"),
    (440, 300, 14, "29c"),
    (40, 330, 14, "2nd, 5th week"),
    (240, 330, 14, "Saucer"),
    (440, 330, 14, "19c"),
    (40, 360, 14, "3rd, 6th week"),
    (240, 360, 14, "Cup"),
    (440, 360, 14, "25c"),
]


def _prices(advert: Advert) -> list[Price]:
    return [p for o in advert.offers for p in o.prices]


def test_prices_of_a_schedule_take_the_terms_of_its_feature() -> None:
    advert = parse((40, 60, 60, "29c"), (160, 80, 14, "with each $5 grocery purchase"), *_ROWS)
    found = _prices(advert)
    assert sorted(p.text for p in found) == ["19c", "25c", "29c", "29c"]
    assert {p.condition for p in found} == {"with_purchase"}
    assert len({p.condition_text for p in found}) == 1


def test_terms_of_another_price_are_not_the_schedules() -> None:
    advert = parse((40, 60, 60, "39c"), (160, 80, 14, "with each $5 grocery purchase"), *_ROWS)
    rows = [p for p in _prices(advert) if p.text != "39c"]
    assert len(rows) == 3
    assert {p.condition for p in rows} == {"everyone"}


def test_an_amount_off_with_a_coupon_is_the_coupons() -> None:
    advert = parse((40, 40, 20, "VALUABLE COUPON"), (60, 66, 40, "50c OFF"), (40, 116, 16, "Covered Sugar & Creamer"))
    (price,) = _prices(advert)
    assert (price.condition, price.condition_text) == ("coupon", "VALUABLE COUPON")
    assert price.role == "saving"
