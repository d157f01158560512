"""Lost points come back only where the other prices of the advert leave no doubt; invented adverts."""

from __future__ import annotations

from decimal import Decimal

import pytest

from adminer.parsing.money.amounts import find_amounts
from adminer.parsing.money.points import restore_points


def amounts(text: str) -> list[Decimal]:
    return [a.amount for a in restore_points(text, find_amounts(text))]


def test_a_saucer_among_cents_does_not_cost_a_hundred_dollars() -> None:
    assert amounts("Cup 39¢\nSaucer 19¢\nPlatter $119\nCreamer $1.49") == [
        Decimal("0.39"),
        Decimal("0.19"),
        Decimal("1.19"),
        Decimal("1.49"),
    ]


def test_four_figures_lost_a_point_in_prose_too() -> None:
    text = "Jugs $1.90\nBowls $2.25\nLamps $5.49\nChicks, straight run, $1190 per hundred, this week"
    assert amounts(text)[-1] == Decimal("11.90")


@pytest.mark.parametrize("printed", ["$25S", "$2SS", "$L13"])
def test_a_letter_among_the_figures_is_a_figure_and_tells_of_small_cents(printed: str) -> None:
    text = f"Gallon $1.69\nQuart 79¢\nHalf pint 27¢\nIn large cans of our make {printed} a gallon"
    assert amounts(text)[-1] == (Decimal("1.13") if "L" in printed else Decimal("2.55"))


def test_one_restored_price_speaks_for_the_next() -> None:
    assert amounts("Plate 33¢\nSoup 37¢\nCup 29¢\nDish $129\nTray $219\nSet $777")[-1] == Decimal("7.77")


@pytest.mark.parametrize(
    "text",
    [
        "Lamp $95.00\nChair $29.50\nTable $49.75\nRange $119",  # as it stands it is no stranger
        "Cup 39¢\nSaucer 19¢\nRange $119",  # two prices are too few to speak
        "Cup 9¢\nSaucer 5¢\nDish 9¢\nStove $119",  # a hundredth of it is a stranger, too
        "Cup 39¢\nSaucer 19¢\nCreamer $1.49\nSet $12",  # two figures: whole dollars
        "Cup 39¢\nSaucer 19¢\nCreamer $1.49\nBay mare, six years, sound, $185",  # prose has no small cents
    ],
)
def test_whole_dollars_stay_where_there_is_doubt(text: str) -> None:
    assert amounts(text)[-1] == Decimal(text.rsplit("$", 1)[1])
