"""What was confirmed and corrected becomes the truth that the raw reading is measured against."""

from __future__ import annotations

from adminer.score.confirmed import truth_of_confirmed
from adminer.score.measure import score_pages
from adminer.score.tally import one_to_one
from adminer.store.facts import offer_fields
from adminer.store.journal import Act
from tests.desk.pages import CLIPPING, offer, page

CUP, PLATE = offer(1, "cup", "0.25", y=100), offer(2, "dinner plate", "0.39", y=300)
PAGE = page((CUP, PLATE))


def act(number: int, kind: str, of: object, new: dict[str, object] | None = None) -> Act:
    fields = offer_fields(of)  # type: ignore[arg-type]  # the two offers above
    return Act(f"a{number}", "1955-03-01T10:00:00Z", "tester", kind, "offer", CLIPPING, of.box, {}, new or {}, fields)  # type: ignore[attr-defined]


def test_nothing_judged_is_no_truth() -> None:
    assert truth_of_confirmed([PAGE], ()) == ()


def test_a_page_half_judged_asks_only_for_what_was_judged() -> None:
    truth = truth_of_confirmed([PAGE], (act(1, "confirm", CUP),))
    assert score_pages([PAGE], truth).fields["prices, dollars"] == one_to_one(1, 1, 1)


def test_a_correction_makes_the_reading_wrong_there() -> None:
    prices = offer_fields(PLATE)["prices"]
    right = [{**prices[0], "amount": "0.89", "text": "89¢"}]
    truth = truth_of_confirmed([PAGE], (act(1, "confirm", CUP), act(2, "correct", PLATE, {"prices": right})))
    assert score_pages([PAGE], truth).fields["prices, dollars"] == one_to_one(1, 2, 2)


def test_a_rejected_offer_is_an_extra_price_on_a_page_judged_whole() -> None:
    truth = truth_of_confirmed([PAGE], (act(1, "confirm", CUP), act(2, "reject", PLATE)))
    assert score_pages([PAGE], truth).fields["prices, dollars"] == one_to_one(1, 2, 1)
