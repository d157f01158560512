"""One date line dates every advert of its page; invented pages."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from adminer.names.authority import Authorities
from adminer.parsing import parse_page
from adminer.records import Advert, Box, Note, PageReading, Region, RegionKind
from tests.parsing.pages import NO_NAMES, Line, reading_of, words_of

LEFT: list[Line] = [(40, 300, 30, "Dinner plate"), (40, 350, 30, "39c"), (40, 400, 14, "Sale ends Saturday")]
RIGHT: list[Line] = [(440, 300, 30, "Cup and saucer"), (440, 350, 30, "49c")]


def _page(head: list[Line], kind: RegionKind, names: Authorities = NO_NAMES, *notes: Note) -> tuple[Advert, ...]:
    parts: list[tuple[Box, RegionKind, list[Line]]] = [
        (Box(0, 0, 800, 200), kind, head),
        (Box(0, 250, 400, 750), "advert", LEFT),
        (Box(400, 250, 400, 750), "advert", RIGHT),
    ]
    words = tuple(
        replace(word, region=number, line=word.line + 100 * number)
        for number, (_, _, lines) in enumerate(parts)
        for word in words_of(lines)
    )
    regions = tuple(Region(box, region, 0.9) for box, region, _ in parts)
    reading: PageReading = replace(reading_of([]), regions=regions, words=words)
    return parse_page(reading, names, notes)


HEAD: list[Line] = [(40, 20, 40, "The Osterby Sentinel"), (40, 80, 12, "Thursday, March 12, 1953")]


def test_the_date_line_of_the_masthead_is_held_by_every_advert_with_its_place() -> None:
    adverts = _page(HEAD, "masthead")
    assert len(adverts) == 2
    for advert in adverts:
        (line,) = [fact for fact in advert.dates if fact.kind == "dateline"]
        assert (line.edtf, line.box.y) == ("1953-03-12", 80)
        assert advert.dated_by == "printed"
    # "Saturday" is seen from the paper's day
    assert adverts[0].valid_to == date(1953, 3, 14)
    assert (adverts[1].valid_from, adverts[1].valid_to) == (date(1953, 3, 12), date(1953, 3, 12))


def test_the_head_of_a_magazine_gives_its_month() -> None:
    head: list[Line] = [(40, 20, 40, "The Fireside Monthly"), (40, 80, 12, "MARCH 1957 page 31")]
    assert [fact.edtf for fact in _page(head, "masthead")[1].dates] == ["1957-03"]
    assert not _page(head, "editorial")[1].dates


def test_a_date_line_above_running_text_needs_its_weekday() -> None:
    assert all(advert.dates for advert in _page(HEAD, "editorial"))
    news: list[Line] = [(40, 20, 40, "The Osterby Sentinel"), (40, 80, 12, "He was born on March 12, 1903 and")]
    assert not any(f.kind == "dateline" for advert in _page(news, "editorial") for f in advert.dates)


def test_the_owner_s_day_comes_before_the_page_s_and_a_vague_note_after_it() -> None:
    day = _page(HEAD, "masthead", NO_NAMES, Note("a.png", published="1953-03-19"))
    assert day[1].dated_by == "note" and any(fact.kind == "dateline" for fact in day[1].dates)
    year = _page(HEAD, "masthead", NO_NAMES, Note("a.png", published="1953"))
    assert year[1].valid_from == date(1953, 3, 12)
    other = _page(HEAD, "masthead", NO_NAMES, Note("a.png", published="1954"))
    assert other[1].valid_from is None


def test_a_column_of_news_is_no_advert_and_dates_none() -> None:
    sums = ["The council voted the sum of $4.200 for the main,", "and holds that $4,200 is little. About $4,200 more",
            "was asked for; the next meeting falls on May 20, 1953."]  # fmt: skip
    news: list[Line] = [(40, 20 + 20 * i, 12, text) for i, text in enumerate(sums)]
    assert len(_page(news, "editorial")) == 2
