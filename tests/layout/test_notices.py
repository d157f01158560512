"""Columns of readers: the small notices of many shops."""

from __future__ import annotations

from adminer.layout.adverts import find_adverts
from adminer.layout.notices import notices
from adminer.layout.rules import Rect, RuleWork
from adminer.layout.type_lines import TypeLine

SAID = (
    ("LINOLEUM. Six rolls of the marbled", "left, $1.45 a yard, cut to fit.--Thorne", "& Daughter."),
    ("DRESSED geese, 40c a pound, ready", "any Friday.—Harkwell Lockers."),
    ("WANTED-Your worn tires. We allow", "$3 on any of them.-Corbelle Garage."),
    ("SEED oats, $2.10 a sack, and the", "sack is yours.--Quarry Lane Mill."),
    ("FOR RENT-A floor polisher, $2 a", "day, wax at cost.--Thorne Lumber."),
)


def column(*said: tuple[str, ...], left: float = 20, top: float = 60) -> list[TypeLine]:
    found: list[TypeLine] = []
    for notice in said:
        for n, text in enumerate(notice):
            start = left + (12 if n == 0 else 0)
            found.append(TypeLine((start, top, left + 300, top + 12), 12, text))
            top += 16
    return found


HEAD = TypeLine((90, 20, 250, 40), 20, "BUSINESS LOCALS")


def test_each_notice_of_a_column_of_readers_is_an_advert_of_its_own() -> None:
    rates = [TypeLine((20, 260, 320, 272), 12, "Readers in this column, 2c a word")]
    rule: Rect = (20, 250, 320, 252)
    lines = [HEAD, *column(*SAID), *rates]
    found = find_adverts(RuleWork((rule,), (), ()), lines, 340, 300)
    assert [(part.rect[1], part.rect[3]) for part in found] == [
        (60, 108),
        (108, 140),
        (140, 172),
        (172, 204),
        (204, 232),
    ]
    assert {part.kind for part in found} == {"advert"}


def test_notices_without_firms_or_prices_and_a_few_alone_are_no_such_column() -> None:
    assert notices(column(*SAID[:3]), ()) == []
    private = [tuple(text.replace(".-", ", ask ").replace(".—", ", ask ") for text in one) for one in SAID]
    assert notices(column(*private), ()) == []
    news = [tuple(text.replace("$", "").replace("40c", "forty") for text in one) for one in SAID]
    assert notices(column(*news), ()) == []
    prose = [tuple(text.lower() for text in one) for one in SAID]
    assert notices(column(*prose), ()) == []


def test_a_column_of_readers_on_the_page_of_a_paper_is_parted_too() -> None:
    dateline = TypeLine((30, 10, 880, 26), 16, "The Ferncliff Echo, Thursday, March 3, 1949")
    news = [
        TypeLine((left, 60 + 14 * n, left + 250, 70 + 14 * n), 10, "words of a report")
        for left in (30, 630)
        for n in range(40)
    ]
    parts = find_adverts(RuleWork((), (), ()), [dateline, *news, *column(*SAID, left=305)], 900, 1000)
    assert sum(part.kind == "advert" for part in parts) == len(SAID)
