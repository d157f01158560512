"""The row of title, date and page number over the page of a paper."""

from __future__ import annotations

import pytest

from adminer.layout.running_head import DATELINE, running_head
from adminer.layout.type_lines import TypeLine

WHOLE = (0.0, 0.0, 900.0, 1000.0)
BODY = [TypeLine((30, 80 + 14 * n, 280, 90 + 14 * n), 10, "words of a report") for n in range(20)]


def row(*said: str) -> list[TypeLine]:
    return [TypeLine((30 + 300 * n, 20, 200 + 300 * n, 32), 12, text) for n, text in enumerate(said)]


@pytest.mark.parametrize(
    "said",
    [
        ("THE OSTERBY COURIER", "Friday, May 6, 1938", "SEVENTEEN"),
        ("Page 5", "The Osterby Weekly Democrat"),
        ("3-B", "OSTERBY DAILY PRESS Thursday, June 8"),
        ("Tuesday, 21 May, 1907", "2"),
    ],
)
def test_two_of_title_date_and_number_in_the_first_row_are_a_running_head(said: tuple[str, ...]) -> None:
    head = row(*said)
    assert running_head([*head, *BODY], WHOLE) == head


@pytest.mark.parametrize("said", [("GARDEN SALE", "Friday, May 6, 1938"), ("THE LEADER", "Dry Goods"), ("12",)])
def test_one_of_them_alone_is_none(said: tuple[str, ...]) -> None:
    assert running_head([*row(*said), *BODY], WHOLE) == []


def test_a_row_further_down_is_none() -> None:
    low = [TypeLine((30, 300, 200, 312), 12, "The Osterby Courier"), TypeLine((500, 300, 600, 312), 12, "Page 5")]
    assert running_head([*BODY, *low], WHOLE) == []


def test_a_day_before_its_month_makes_a_dateline_too() -> None:
    assert DATELINE.search("Tuesday, 21 May, 1907")
    assert not DATELINE.search("21 May be the last")
