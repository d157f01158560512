"""The pictures say what the rows say, frames stand where the facts are, and no text of a scan becomes markup."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date
from decimal import Decimal
from io import BytesIO
from typing import Any

import numpy as np
import pytest
from PIL import Image

from adminer.publish.charts import TwoPrices, WeekOffer, money, two_prices, weeks_of_a_promotion
from adminer.publish.charts_dating import spans_of_months, stored_posterior
from adminer.publish.charts_runs import timeline_of_all
from adminer.publish.facts_picture import INKS, Fact, draw_facts
from adminer.publish.look import png_of, svg_of
from adminer.publish.page import CAUTIONS, Picture, page_of
from adminer.publish.promotion import promotion_page
from adminer.records import Box

HOSTILE = "<script>alert(1)</script>"


@pytest.mark.parametrize(
    ("amount", "printed"),
    [("0.09", "9¢"), ("0.125", "12.5¢"), ("0.50", "50¢"), ("1.39", "$1.39"), ("1250", "$1,250.00")],
)
def test_money_is_written_as_an_advert_would(amount: str, printed: str) -> None:
    assert money(Decimal(amount)) == printed


def test_charts_carry_their_figures_and_draw_without_a_browser() -> None:
    weeks = [WeekOffer(date(1953, 1, 15), "saucer", Decimal("0.09"), "a.png")]
    drawn = svg_of(weeks_of_a_promotion(weeks, "A line", "With the card"))
    assert "9¢" in drawn
    assert "15 Jan 1953" in drawn
    prices = two_prices([TwoPrices("place setting", Decimal("1.39"), Decimal("2.50"))], "A line", "Dollars")
    assert "$2.50" in svg_of(prices)
    assert png_of(prices).startswith(b"\x89PNG")


def test_a_frame_stands_where_its_fact_is() -> None:
    paper = np.full((400, 600), 255, np.uint8)
    drawn = draw_facts(paper, Box(0, 0, 600, 400), [Fact("price", "9¢", Box(200, 100, 60, 30))], longest=600)
    picture = np.asarray(Image.open(BytesIO(drawn)).convert("RGB"))
    ink = tuple(int(INKS["price"][i : i + 2], 16) for i in (1, 3, 5))
    rows, columns = np.nonzero((picture == ink).all(axis=2))
    assert abs(int(columns.max()) - 262) <= 2  # the right side of the frame; the number stands left of it
    assert abs(int(rows.min()) - 98) <= 2
    assert abs(int(rows.max()) - 132) <= 2


def test_a_crop_beyond_the_scan_is_cut_to_it() -> None:
    drawn = draw_facts(np.zeros((50, 80, 3), np.uint8), Box(-20, -20, 500, 500), [], longest=80)
    assert Image.open(BytesIO(drawn)).size == (80, 50)


def test_a_page_escapes_what_scans_say_and_carries_the_cautions() -> None:
    page = page_of(HOSTILE, HOSTILE, [Picture(HOSTILE, HOSTILE, "<svg/>", HOSTILE)])
    assert HOSTILE not in page
    assert "<svg/>" in page
    assert all(caution.split(":")[0] in page for caution in CAUTIONS)
    assert "http" not in page.replace("http://www.w3.org", "")


def _answers(name: str, _values: Mapping[str, str | None]) -> Sequence[Mapping[str, Any]]:
    box = {"x": 10, "y": 10, "w": 40, "h": 20, "advert_id": "c-a1"}
    week = {
        "retailer": "Penhallow Stores",
        "line": "Tansy Morn",
        "piece": "saucer",
        "file": "a.png",
        "offer_id": "c-a1-o1",
    }
    answers: dict[str, Sequence[Mapping[str, Any]]] = {
        "promotion-weeks": [
            week | {"week": date(1953, 1, 15), "cardholder_price": Decimal("0.09")},
            week | {"week": date(1953, 1, 22), "cardholder_price": None},
        ],
        "card-and-without": [
            {"piece": "saucer", "cardholder_price": Decimal("0.09"), "price_without_card": Decimal("0.29")}
        ],
        "clipping-facts": [
            box | {"kind": "retailer", "says": "Penhallow Stores", "offer_id": None, "w": 300, "h": 200},
            box | {"kind": "price", "says": "Saucer: 9¢, with the card", "offer_id": "c-a1-o1"},
        ],
    }
    return answers[name]


def test_a_promotion_becomes_a_page_with_its_proof() -> None:
    page = promotion_page(_answers, lambda _file: np.full((300, 400), 200, np.uint8), "A promotion")
    assert page is not None
    assert "1 offer with a cardholder price in 1 week," in page.html
    assert "Saucer: 9¢, with the card" in page.html
    assert set(page.pictures) == {"weeks.png", "two-prices.png", "facts.png"}


def test_without_a_promotion_there_is_no_page() -> None:
    def nothing(_name: str, _values: Mapping[str, str | None]) -> Sequence[Mapping[str, Any]]:
        return []

    assert promotion_page(nothing, lambda _file: np.zeros((1, 1), np.uint8), "A promotion") is None


def test_a_stored_posterior_is_drawn_with_its_sets_and_a_strange_one_is_not() -> None:
    sets = {"50 % set": "1951-03", "90 % set": "[1951-03,1952-01..1952-04]"}
    drawn = stored_posterior('{"1951-03": 0.6, "1952-02": 0.4}', sets, "When the advert appeared")
    assert drawn is not None
    svg = svg_of(drawn)
    assert "50 % set" in svg
    assert "90 % set" in svg
    assert spans_of_months(sets["90 % set"]) == [
        (date(1951, 3, 1), date(1951, 3, 31)),
        (date(1952, 1, 1), date(1952, 4, 30)),
    ]
    assert spans_of_months("[1904..1906]") == [(date(1904, 1, 1), date(1906, 12, 31))]
    for strange in (None, "", "{", "[]", '{"March": 1}'):
        assert stored_posterior(strange, {}, "x") is None


def test_the_timeline_of_all_has_a_row_for_a_line_and_for_each_of_several_shops() -> None:
    def run(line: str, shop: str | None, first: date, last: date) -> dict[str, Any]:
        return {"line": line, "retailer": shop, "city": None, "first_seen": first, "last_seen": last,
                "start_earliest": None, "end_latest": date(1990, 1, 1)}  # fmt: skip

    seen = [
        {"line": "Tansy Morn", "retailer": shop, "seen_from": day, "seen_to": day}
        for shop, day in (("Penhallow Stores", date(1953, 1, 15)), ("Tidewell Markets", date(1954, 1, 15)))
    ]
    runs = [
        run("Tansy Morn", None, date(1953, 1, 15), date(1954, 1, 15)),
        run("Tansy Morn", "Penhallow Stores", date(1953, 1, 15), date(1953, 1, 15)),
        run("Tansy Morn", "Tidewell Markets", date(1954, 1, 15), date(1954, 1, 15)),
        run("Silverthaw", None, date(1955, 1, 1), date(1955, 1, 1)),
        run("Silverthaw", "Tidewell Markets", date(1955, 1, 1), date(1955, 1, 1)),
    ]
    drawn = timeline_of_all(runs, seen, "All lines")
    assert drawn is not None
    svg = svg_of(drawn)
    rows = ("Tansy Morn, all shops", "Tansy Morn, Penhallow Stores", "Silverthaw, Tidewell Markets")
    assert all(row in svg for row in rows)
    assert "Silverthaw, all shops" not in svg
    assert "1988" not in svg  # what a run may have reached does not stretch the axis
    assert timeline_of_all([], [], "Nothing") is None


def test_the_labels_of_two_close_prices_stand_away_from_each_other() -> None:
    drawn = two_prices([TwoPrices("cup", Decimal("0.25"), Decimal("0.39"))], "Tansy Morn", "Dollars").to_dict()
    texts = [layer["mark"] for layer in drawn["layer"][-1]["layer"]]
    assert [(mark["align"], mark["dx"] > 0) for mark in texts] == [("right", True), ("left", False)]
