"""The database as the desk reads it: kept rows follow the newest snapshot, and the flat table is what the view is."""

from __future__ import annotations

import time
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from adminer.desk import look_data, shelf
from adminer.records import Link, Offer, OfferStatus
from tests.desk.desks import SmallDesk, build, small_desk
from tests.desk.pages import CLIPPING, offer, page, price

CONDITIONS = ("everyone", "cardholder", "without_card", "coupon", "stamps", "former", "comparison")
STATUSES: tuple[OfferStatus, ...] = ("read", "confirmed", "corrected", "rejected")


def priced(number: int, status: OfferStatus) -> Offer:
    cup = offer(number, "cup", "0.69", y=100 * number)
    prices = tuple(
        replace(price(f"{number}.{10 + n}", 380, 100 * number + n, condition), condition_text=f"terms {n % 3}")
        for n, condition in enumerate(CONDITIONS[number % 3 :])
    )
    line = Link("tansy_morn", "Tansy Morn", "Tansy Morn", cup.box, 0.9, "as printed")
    return replace(cup, status=status, piece_or_set="cup" if number % 2 else None, prices=prices, line=line)


@pytest.fixture
def small(tmp_path: Path) -> Iterator[SmallDesk]:
    bare = replace(offer(5, "saucer", "0.29", y=500), prices=())
    read = page((*(priced(n, status) for n, status in enumerate(STATUSES, 1)), bare))
    dated = replace(read.adverts[0], valid_from=date(1953, 1, 15), valid_to=date(1953, 1, 17))
    made = small_desk(tmp_path, [replace(read, adverts=(dated,))])
    yield made
    made.desk.journal.close()


def test_the_flat_table_of_a_large_file_is_what_the_view_says(
    small: SmallDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    wanted = "SELECT * FROM shelf.main.priced_offers ORDER BY offer_id"
    view = small.desk.shelf.rows(wanted)
    assert len(view) == len(STATUSES)  # all but the rejected one, and the one without a price
    monkeypatch.setattr(shelf, "LARGE", 0)
    large = shelf.Shelf(small.desk.folder.database)
    made: list[int] = []
    large.ahead.append(lambda: made.append(1))
    for _ in range(400):
        large.rows("SELECT 1")
        if large.settled:
            break
        time.sleep(0.05)
    assert made == [1]
    flat = large.rows(wanted.replace("shelf.main.", "memory.main."))
    assert flat == view
    assert list(flat[0]) == list(view[0])  # the columns in their order


def test_kept_rows_are_those_of_the_newest_snapshot_and_belong_to_who_asked(small: SmallDesk) -> None:
    desk, count = small.desk, "SELECT count(*) AS n FROM offers WHERE status = $status"
    first = desk.shelf.kept_rows(count, {"status": "read"})
    assert first == [{"n": 2}]
    first[0]["n"] = 99  # a page writes into its rows
    assert desk.shelf.kept_rows(count, {"status": "read"}) == [{"n": 2}]
    build(desk.folder.database, [page((offer(1, "cup", "0.69", y=90),))], desk.folder.journal)
    assert desk.shelf.kept_rows(count, {"status": "read"}) == [{"n": 1}]


def test_long_lists_of_prices_come_in_pages(small: SmallDesk, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(look_data, "PRICES_PAGE", 2)
    client = small.client()
    first = client.get("/look/prices?line=Tansy+Morn").text
    assert "1 to 2 shown" in first
    assert 'href="/look/prices?page=2&amp;line=Tansy+Morn"' in first
    assert first.count(f"/check/{CLIPPING}?fact=") == 2
    assert client.get("/look/prices?line=Tansy+Morn&page=2").text.count(f"/check/{CLIPPING}?fact=") == 1
