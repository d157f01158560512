"""Pounds and new pence beside the old money; invented adverts."""

from __future__ import annotations

from decimal import Decimal

import pytest

from adminer.parsing.money.decimal_pence import counts_decimally
from adminer.parsing.money.foreign import find_foreign, speaks_sterling
from tests.parsing.pages import parse


def amounts(text: str) -> list[Decimal]:
    assert speaks_sterling(text)
    return [found.amount for found in find_foreign(text, sterling=True)]


@pytest.mark.parametrize(
    ("text", "sums"),
    [
        ("Kettle £3.25, toaster £11.10", ["3.25", "11.10"]),
        ("Kettle £3·25 Lid £0.45p Spoon £.50", ["3.25", "0.45", "0.50"]),
        ("Beans 7½p Soup........9p Tea 22p", ["0.075", "0.09", "0.22"]),
        ("Wool 12½p ball, £1.10 the pack", ["0.125", "1.10"]),
        ("Socks 29>sp Vest 45p Coat £5", ["0.295", "0.45", "5"]),
        ("Tray £2.05. Lamp E4.75. Rug £9.99", ["2.05", "4.75", "9.99"]),
        ("Mugs 9 new pence, jugs 35 new pence, £1 a set", ["0.09", "0.35", "1"]),
        ("Mugs 2s. 11d. (14½p)", ["0.145833", "0.145"]),
        ("Pears 151/2p Rec. price 9/½p Rec. price 12%/p", ["0.155", "0.095", "0.125"]),
    ],
)
def test_new_pence_are_hundredths_of_a_pound(text: str, sums: list[str]) -> None:
    assert amounts(text) == [Decimal(s) for s in sums]


def test_a_lot_in_new_pence_is_one_sum() -> None:
    (lot, _) = find_foreign("Cloths 3 for 50p, £1.75 a dozen", sterling=True)
    assert (lot.amount, lot.quantity) == (Decimal("0.5"), Decimal(3))


def test_a_point_parts_shillings_where_nothing_counts_in_hundreds() -> None:
    assert amounts("Suite £9.10, chair £2.5.0, rug £1/15/-") == [Decimal("9.5"), Decimal("2.25"), Decimal("1.75")]
    assert amounts("Suite £17½, chair 39/6") == [Decimal("17.5"), Decimal("1.975")]


@pytest.mark.parametrize("text", ["Open 8 a.m. to 6 p.m., 7p.m. Saturday", "pp. 12p, $3.95", "Cups 5c, 48 p. book"])
def test_hours_and_pages_are_no_pence(text: str) -> None:
    assert not counts_decimally(text)
    assert not speaks_sterling(text)


def test_cents_among_new_pence_are_pence_whose_small_sign_was_read_so() -> None:
    advert = parse(
        (20, 40, 16, "Plum Jam"), (20, 60, 12, "Rec. price 33p"), (140, 90, 48, "26¢"), (20, 180, 12, "Tea 9p")
    )
    assert [str(p.amount) for o in advert.offers for p in o.prices] == ["0.330000", "0.260000", "0.090000"]
    assert {p.currency for o in advert.offers for p in o.prices} == {"GBP"}
