"""A page's date, an advert's validity and the owner's note: who wins, and that the loser is shown."""

from __future__ import annotations

from datetime import date

from adminer.dating.agree import settle
from adminer.dating.edtf import bounds_of
from adminer.records import Box, DateFact

HERE = Box(0, 0, 10, 10)


def fact(kind: str, first: str, last: str | None = None) -> DateFact:
    return DateFact(
        kind,  # type: ignore[arg-type]  # the tests pass one of the four kinds
        f"{kind} {first}",
        None,
        date.fromisoformat(first),
        date.fromisoformat(last or first),
        HERE,
        0.9,
    )


def test_printed_sale_days_come_before_the_papers_date() -> None:
    settled = settle([fact("validity", "1953-03-12", "1953-03-14")], bounds_of("1953-03-11"))
    assert (settled.valid_from, settled.valid_to) == (date(1953, 3, 12), date(1953, 3, 14))
    assert (settled.dated_by, settled.disagreements) == ("printed", ())


def test_sale_days_that_do_not_fit_the_paper_are_shown_and_not_used() -> None:
    settled = settle([fact("validity", "1958-03-12", "1958-03-14")], bounds_of("1953-03-11"))
    assert (settled.valid_from, settled.dated_by) == (date(1953, 3, 11), "note")
    assert "does not fit" in settled.disagreements[0]


def test_a_note_against_the_printed_dateline_wins_and_is_shown() -> None:
    settled = settle([fact("dateline", "1953-03-12")], bounds_of("1954-03-12"))
    assert settled.valid_from == date(1954, 3, 12)
    assert "the note is kept" in settled.disagreements[0]


def test_a_vague_note_is_no_disagreement() -> None:
    assert settle([fact("dateline", "1953-03-12")], bounds_of("195X")).disagreements == ()


def test_a_printed_dateline_dates_an_advert_without_note() -> None:
    settled = settle([fact("dateline", "1953-03-12")], None)
    assert (settled.valid_from, settled.dated_by) == (date(1953, 3, 12), "printed")


def test_a_coupons_expiry_alone_dates_nothing() -> None:
    assert settle([fact("expiry", "1953-03-12")], None).dated_by is None


def test_two_sale_weeks_on_one_advert_are_shown() -> None:
    settled = settle([fact("validity", "1953-03-12"), fact("validity", "1953-04-09")], bounds_of("1953-03-11"))
    assert settled.valid_from == date(1953, 3, 12)
    assert "both printed" in settled.disagreements[0]


def test_the_page_s_date_line_is_compared_with_the_note_and_with_the_days_of_the_offer() -> None:
    facts = [fact("dateline", "1953-03-12"), fact("validity", "1953-03-12", "1953-03-14")]
    assert len(settle(facts, bounds_of("1953-03")).agreements) == 2
    against = settle(facts, bounds_of("1953-04-02"))
    assert len(against.disagreements) == 1 and len(against.agreements) == 1
    late = [fact("dateline", "1953-01-02"), fact("validity", "1953-03-30", "1953-03-31")]
    assert any("date line" in said for said in settle(late, bounds_of("1953-03")).disagreements)
