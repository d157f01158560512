"""Shillings and pence in columns under "s. d.", as lists of grocers set them."""

from __future__ import annotations

from decimal import Decimal

from adminer.parsing import parse_page
from adminer.parsing.money.shilling_columns import join_shilling_columns
from tests.parsing.pages import NO_NAMES, Line, reading_of, words_of

HEAD: tuple[Line, ...] = ((300, 20, 16, "s."), (345, 20, 16, "d."))


def row(y: int, name: str, shillings: str, pence: str) -> list[Line]:
    figures = ((300, y, 16, shillings), (345, y, 16, pence))
    return [(20, y, 16, name), *(figure for figure in figures if figure[3])]


def sums(*lines: Line, head: tuple[Line, ...] = HEAD) -> list[str]:
    joined = join_shilling_columns(words_of([*head, *lines]))
    return [word.text for word in joined if any(c.isdigit() for c in word.text)]


TEA, RICE, SOAP = row(50, "Tea", "1", "10"), row(75, "Rice", "", "3½"), row(100, "Soap", "9", "–")


def test_figures_are_put_together_by_the_column_they_stand_in() -> None:
    assert sums(*TEA, *RICE, *SOAP) == ["1/10", "3½d.", "9/-"]


def test_a_slash_under_pence_is_a_worn_half_and_a_misread_sign_still_heads() -> None:
    head = ((300, 20, 16, "3."), (345, 20, 16, "d."))
    assert sums(*TEA, *RICE, *row(100, "Peel", "", "7/2"), head=head)[1:] == ["1/10", "3½d.", "7½d."]


def test_no_head_or_too_few_rows_leave_the_figures() -> None:
    assert sums(*TEA, *RICE, *SOAP, head=()) == ["1", "10", "3½", "9"]
    assert sums(*TEA, *RICE) == ["1", "10", "3½"]


def test_a_sign_of_pounds_far_to_the_left_heads_a_column_too_and_names_what_a_worn_sign_beside_it_is() -> None:
    desk = [(20, 125, 16, "Desk"), (262, 125, 16, "2"), (300, 125, 16, "12"), (345, 125, 16, "6½")]
    head = ((260, 20, 16, "£"), (300, 20, 16, "8n"), HEAD[1])
    lamp = [(20, 150, 16, "Lamp"), (262, 150, 16, "1"), (300, 150, 16, "1"), (345, 150, 16, "–")]
    assert sums(*TEA, *RICE, *SOAP, *desk, *lamp, head=head)[1:] == ["1/10", "3½d.", "9/-", "£2.12.6½", "£1.1.0"]


def test_a_column_ends_at_the_next_head_and_a_nought_of_shillings_leaves_pence() -> None:
    again = ((300, 125, 16, "8."), (345, 125, 16, "d."))
    figs, peel, lime = row(150, "Figs", "0", "915"), row(175, "Peel", "1", "0"), row(200, "Lime", "2", "6")
    assert sums(*TEA, *RICE, *SOAP, *again, *figs, *peel, *lime) == ["1/10", "3½d.", "9/-", "8.", "9½d.", "1/0", "2/6"]


def shifted(y: int, name: str, shillings: str, pence: str) -> list[Line]:
    return [(20, y, 16, name), *((x, y, 16, text) for x, text in ((335, shillings), (378, pence)) if text)]


def test_figures_set_to_the_right_of_their_signs_are_told_by_the_rows_that_have_both() -> None:
    rows = [*shifted(50, "Tea", "1", "9"), *shifted(75, "Rice", "0", "4½"), *shifted(100, "Soap", "", "8")]
    assert sums(*rows, *shifted(125, "Figs", "2", "65")) == ["1/9", "4½d.", "8d.", "2/6½"]


def test_a_head_over_enough_rows_speaks_for_one_beside_it_over_few() -> None:
    beside: list[Line] = [(500, 20, 16, "s."), (545, 20, 16, "d."), (500, 50, 16, "45"), (545, 50, 16, "0")]
    assert sums(*TEA, *RICE, *SOAP, *beside) == ["1/10", "3½d.", "9/-", "45/0"]


def test_more_than_eleven_pence_and_the_count_of_a_later_head_make_no_sum() -> None:
    assert sums(*TEA, *RICE, *SOAP, *row(125, "Figs", "1", "14"))[-2:] == ["1", "14"]
    assert sums(*TEA, *RICE, *SOAP, (300, 125, 16, "6 for"))[-1] == "6"


def test_a_column_ends_at_a_wide_gap() -> None:
    assert sums(*TEA, *RICE, *SOAP, *row(300, "Lot", "2", "6"))[-2:] == ["2", "6"]


def test_the_sums_are_prices_of_the_goods_on_their_rows() -> None:
    adverts = parse_page(reading_of([*HEAD, *TEA, *RICE, *SOAP]), NO_NAMES)
    found = {offer.item: offer.prices[0].amount for advert in adverts for offer in advert.offers}
    assert found == {"Tea": Decimal("0.091667"), "Rice": Decimal("0.014583"), "Soap": Decimal("0.45")}
