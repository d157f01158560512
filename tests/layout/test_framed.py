"""The frames of adverts on the page of a paper, told from the rules around its columns and from scratches."""

from __future__ import annotations

from adminer.layout.framed import frames_of_paper
from adminer.layout.rules import Rect, RuleWork
from adminer.layout.type_lines import TypeLine

WHOLE: Rect = (0, 0, 900, 1000)


def text(left: float, top: float, count: int) -> list[TypeLine]:
    return [
        TypeLine((left, top + 14 * n, left + 250, top + 14 * n + 10), 10, "words of a report") for n in range(count)
    ]


def goods(left: float, top: float, count: int, right: float = 120) -> list[TypeLine]:
    return [TypeLine((left, top + 40 * n, left + right, top + 40 * n + 12), 12, f"Bowls {n}5c") for n in range(count)]


NEWS = [line for left in (30, 330, 630) for line in text(left, 60, 30)]


def frames(lines: list[TypeLine], *found: Rect, rules: tuple[Rect, ...] = ()) -> list[Rect]:
    return sorted(frames_of_paper(RuleWork(rules, found, ()), [*NEWS, *lines], WHOLE))


def test_rules_close_around_a_column_are_no_frame_of_an_advert() -> None:
    column: Rect = (322, 50, 588, 490)
    card: Rect = (30, 600, 200, 760)
    assert frames(goods(40, 610, 4), column, card) == [card]


def test_a_frame_with_white_around_its_prose_is_an_advert() -> None:
    frame: Rect = (300, 520, 620, 800)
    assert frames(text(335, 540, 15), frame) == [frame]


def test_a_scratch_through_the_page_cuts_no_frame_and_makes_none() -> None:
    scratch: Rect = (448, 40, 452, 990)
    left, right = (100.0, 600.0, 449.0, 900.0), (451.0, 640.0, 800.0, 900.0)
    lines = goods(120, 620, 6) + goods(470, 660, 5)
    assert frames(lines, left, right, rules=(scratch,)) == [(100.0, 600.0, 800.0, 900.0)]
    assert frames(lines, left, right) == sorted([left, right])
    assert frames(lines, left, rules=(scratch,)) == []


def test_a_name_in_a_frame_of_its_own_heads_the_frame_under_it() -> None:
    head, under = (100.0, 540.0, 500.0, 590.0), (100.0, 612.0, 500.0, 900.0)
    name = TypeLine((180, 550, 420, 580), 30, "CORBELLE'S")
    assert frames([name, *goods(120, 620, 6)], head, under) == [(100.0, 540.0, 500.0, 900.0)]


def test_framed_adverts_under_each_other_stay_two_where_each_has_its_head() -> None:
    one, two = (100.0, 520.0, 500.0, 700.0), (100.0, 704.0, 500.0, 960.0)
    heads = [TypeLine((180, y, 420, y + 30), 30, name) for y, name in ((525, "CORBELLE'S"), (710, "THORNE'S"))]
    assert frames([*heads, *goods(120, 565, 4), *goods(120, 750, 5)], one, two) == [one, two]
