"""Columns of small notices under heads of their own, each column one advert, beside what is framed and what is not."""

from __future__ import annotations

from adminer.layout.adverts import find_adverts
from adminer.layout.classified import is_classified
from adminer.layout.rules import Rect, RuleWork
from adminer.layout.type_lines import Part, TypeLine

WIDTH, HEIGHT = 900, 1000
HEAD = [TypeLine((30, 10, 200, 22), 12, "PAGE SIX"), TypeLine((600, 10, 880, 22), 12, "Thursday, March 12, 1953")]
TOPICS = ("ROOMS AND BOARD", "HOUSES FOR RENT", "LIVE STOCK", "LOST")


def notices(left: float) -> list[TypeLine]:
    lines = []
    for k, topic in enumerate(TOPICS):
        top = 60 + 200 * k
        lines.append(TypeLine((left + 70, top, left + 180, top + 14), 14, topic))
        for n in range(4):
            y = top + 30 + 40 * n
            lines += [
                TypeLine((left, y, left + 250, y + 10), 10, "PLEASANT front room near the mill"),
                TypeLine((left + 10, y + 14, left + 120, y + 24), 10, f"$2.{n}5 week"),
            ]
    return lines


def under_rules(left: float) -> list[Rect]:
    return [(left, 54.0 + 200 * k + d, left + 250, 57.0 + 200 * k + d) for k in range(len(TOPICS)) for d in (0, 24)]


def adverts(parts: list[Part]) -> list[tuple[int, ...]]:
    return sorted(tuple(round(v) for v in part.rect) for part in parts if part.kind == "advert")


def test_heads_of_notices_tell_their_column() -> None:
    assert is_classified(notices(30))
    assert not is_classified([n for n in notices(30) if n.text not in TOPICS[2:]])
    plain = [TypeLine((30, 60 + 20 * n, 280, 70 + 20 * n), 10, "FOR SALE") for n in range(5)]
    assert not is_classified(plain)


def test_each_column_of_notices_is_one_advert_and_what_stands_beside_it_is_another() -> None:
    shop = [
        TypeLine((620, 60, 860, 90), 30, "CORBELLE'S"),
        *(TypeLine((610, 140 + 60 * n, 700, 154 + 60 * n), 14, "Dinner plates") for n in range(8)),
        *(TypeLine((820, 140 + 60 * n, 870, 154 + 60 * n), 14, f"{n + 1}5c") for n in range(8)),
    ]
    between: list[Rect] = [(292, 40, 295, 900), (592, 40, 595, 900)]
    work = RuleWork((*between, *under_rules(30), *under_rules(310)), (), ())
    parts = find_adverts(work, [*HEAD, *notices(30), *notices(310), *shop], WIDTH, HEIGHT)
    assert [part.kind for part in parts].count("masthead") == 1
    found = adverts(parts)
    assert [one[0] for one in found] == [30, 310, 610]
    assert all(one[3] - one[1] > 480 for one in found)


def test_a_column_of_news_with_notices_in_it_is_parted_before_their_title_and_under_them() -> None:
    def news(top: float, head: str, count: int) -> list[TypeLine]:
        lines = [TypeLine((90, top, 220, top + 12), 12, head)]
        for n in range(count):
            y = top + 20 + 14 * n
            lines.append(TypeLine((30, y, 280, y + 10), 10, "words of a report told at length"))
        return lines

    title = TypeLine((60, 300, 250, 324), 24, "LEDGER LINERS")
    small = [
        TypeLine((r[0], r[1] / 2 + 310, r[2], r[1] / 2 + 310 + n.height), n.height, n.text)
        for n in notices(30)
        for r in (n.rect,)
    ]
    column = [*news(60, "BRIDGE OPENS", 14), title, *small, *news(760, "WHEAT IS UP", 8)]
    other = [
        TypeLine((n.rect[0] + 300, n.rect[1], n.rect[2] + 300, n.rect[3]), n.height, n.text)
        for n in news(60, "ROAD TO BE LAID", 50)
    ]
    parts = find_adverts(RuleWork(((292, 40, 295, 900),), (), ()), [*HEAD, *column, *other], WIDTH, HEIGHT)
    (found,) = adverts(parts)
    assert found[1] == 300
    assert found[3] < 760
