"""The adverts of a page chosen among all rectangles its rules draw, and what those rectangles are."""

from __future__ import annotations

from dataclasses import replace

import pytest

from adminer.layout.column_grid import ColumnGrid
from adminer.layout.drawn import Strokes, drawn_rects
from adminer.layout.paper import Paper
from adminer.layout.rules import Rect, RuleWork
from adminer.layout.type_lines import TypeLine
from adminer.layout.weighed import heaviest, weighed_frames

WHOLE: Rect = (0, 0, 900, 1000)
# columns of 270 with 30 between them, from 15
NEWS = [
    TypeLine((left, 60 + 14 * n, left + 270, 70 + 14 * n), 10, "words of a report in the paper")
    for left in (30, 330, 630)
    for n in range(20)
]


def level(y: float, left: float, right: float) -> Rect:
    return (left, y - 1, right, y + 1)


def upright(x: float, top: float, bottom: float) -> Rect:
    return (x - 1, top, x + 1, bottom)


def advert(left: float, top: float, name: str, count: int = 5) -> list[TypeLine]:
    head = TypeLine((left, top, left + 200, top + 26), 26, name)
    goods = [
        TypeLine((left, top + 40 + 22 * n, left + 180, top + 52 + 22 * n), 12, f"Bowls {n}5c each")
        for n in range(count)
    ]
    return [head, *goods, TypeLine((left, top + 46 + 22 * count, left + 190, top + 58 + 22 * count), 12, "12 Elm St.")]


def found(lines: list[TypeLine], *rules: Rect, closed: tuple[Rect, ...] = ()) -> list[tuple[int, ...]]:
    frames = weighed_frames(RuleWork(rules, (), ()), closed, [*NEWS, *lines], WHOLE)
    return sorted(tuple(round(side, -1) for side in map(int, frame)) for frame in frames)


ACROSS = (level(500, 15, 615), level(760, 15, 615))
SHARED = (*ACROSS, *(upright(x, 500, 760) for x in (15, 315, 615)))


def test_adverts_that_share_their_rules_are_found_though_no_face_closes_around_one() -> None:
    lines = [*advert(40, 520, "CORBELLE'S"), *advert(340, 520, "THORNE'S")]
    assert found(lines, *SHARED) == [(20, 500, 320, 760), (320, 500, 620, 760)]


def test_a_frame_around_several_adverts_gives_way_to_them() -> None:
    lines = [*advert(40, 520, "CORBELLE'S"), *advert(340, 520, "THORNE'S")]
    assert len(found(lines, *SHARED, closed=((15, 500, 615, 760),))) == 2


def test_panels_within_a_column_give_way_to_the_advert_around_them() -> None:
    rules = (*ACROSS, upright(15, 500, 760), upright(615, 500, 760), level(600, 15, 615), level(730, 15, 615))
    panels = [upright(x, 600, 730) for x in (165, 465)]
    lines = [TypeLine((100, 520, 500, 560), 40, "CORBELLE'S"), TypeLine((100, 570, 400, 582), 12, "12 Elm St.")]
    lines += [
        TypeLine((left, 610 + 22 * n, left + 90, 622 + 22 * n), 12, f"Bowls {n}5c each")
        for left in (40, 200, 480)
        for n in range(5)
    ]
    assert found(lines, *rules, *panels) == [(20, 500, 620, 760)]


def test_what_cuts_lines_of_type_or_holds_the_running_head_is_no_advert() -> None:
    rules = (*ACROSS, upright(15, 500, 760), upright(615, 500, 760))
    lines = [*advert(40, 520, "CORBELLE'S"), TypeLine((420, 640, 590, 652), 12, "Open late")]
    assert found(lines, *rules) == [(20, 500, 620, 760)]
    head = [TypeLine((40, 505, 200, 517), 12, "PAGE SIX")]
    work = RuleWork(rules, (), ())
    assert weighed_frames(work, (), [*NEWS, *lines, *head], WHOLE, head) == []
    wide = [TypeLine((500, 520 + 20 * n, 800, 532 + 20 * n), 12, f"Cups {n}5c each, of all sizes") for n in range(11)]
    assert found([*lines, *wide], *rules) == []


def test_a_card_in_a_column_is_drawn_between_two_rules_that_end_alike() -> None:
    lines = advert(40, 520, "CORBELLE'S", 3)
    strokes = Strokes.of(RuleWork((level(505, 20, 300), level(655, 22, 302)), (), ()), lines, 1000)
    assert drawn_rects(strokes, lines, WHOLE) == [(20, 504, 302, 656)]
    apart = Strokes.of(RuleWork((level(505, 20, 300), level(655, 120, 420)), (), ()), lines, 1000)
    assert drawn_rects(apart, lines, WHOLE) == []


def test_strokes_that_are_letters_are_no_rules() -> None:
    lines = [TypeLine((100, 100 + 20 * n, 300, 116 + 20 * n), 16, "HEMSTITCHING") for n in range(6)]
    letters = (level(108, 110, 210), upright(200, 100, 216))
    assert Strokes.of(RuleWork(letters, (), ()), lines, 1000).level == ()
    assert Strokes.of(RuleWork(letters, (), ()), lines, 1000).upright == ()
    rules = Strokes.of(RuleWork((level(118, 100, 300), upright(90, 100, 216)), (), ()), lines, 1000)
    assert (len(rules.level), len(rules.upright)) == (1, 1)


def test_columns_repeat_over_the_page_and_end_where_no_text_runs_too() -> None:
    grid = ColumnGrid.of(NEWS[:40], Paper(frozenset(map(id, NEWS)), 10), 900)
    assert grid is not None
    assert max(grid.off(at) for at in (15, 315, 615, 915)) < 0.03
    assert grid.off(165) < 0.03  # half a column
    assert grid.off(90) > 0.2
    assert ColumnGrid.of(NEWS[:5], Paper(frozenset(map(id, NEWS)), 10), 900) is None


@pytest.mark.filterwarnings("error")
def test_lines_of_two_widths_with_none_between_show_no_columns_and_no_warning() -> None:
    short = [replace(line, rect=(30, line.rect[1], 90, line.rect[3])) for line in NEWS[:20]]
    lines = [*short, *NEWS[:20]]
    assert ColumnGrid.of(lines, Paper(frozenset(map(id, lines)), 10), 900) is None


CARD = (level(500, 15, 315), level(640, 15, 315))
SIDES = (upright(15, 500, 640), upright(315, 500, 640))
HELD: Rect = (15, 499, 315, 641)


def goods(count: int = 5) -> list[TypeLine]:
    return [TypeLine((40, 510 + 22 * n, 220, 522 + 22 * n), 12, f"Bowls {n}5c each") for n in range(count)]


def test_each_sign_of_an_advert_counts_where_others_lack() -> None:
    unsigned, signed = goods(), [*goods(), TypeLine((40, 622, 230, 634), 12, "12 Elm St.")]
    assert len(found(signed, *CARD)) == 1  # rules at top and foot alone
    assert found(unsigned, *CARD) == []
    assert len(found(unsigned, *CARD, *SIDES)) == 1
    bare = RuleWork((), (HELD,), ())  # a face whose rules were not found
    assert weighed_frames(bare, (), [*NEWS, *signed], WHOLE) == []
    assert weighed_frames(bare, (HELD,), [*NEWS, *signed], WHOLE) == [HELD]
    prose = [TypeLine((30, 510 + 14 * n, 300, 520 + 14 * n), 10, "the savings of the town are in it") for n in range(8)]
    assert weighed_frames(bare, (HELD,), [*NEWS, *prose], WHOLE) == [HELD]


def test_the_frame_of_an_advert_outweighs_two_panels_that_say_no_more() -> None:
    lines = [*goods(), *(TypeLine((340, *n.rect[1:2], 520, n.rect[3]), n.height, n.text) for n in goods())]
    assert len(found(lines, *SHARED)) == 2
    assert found(lines, *SHARED, closed=((15, 499, 615, 761),)) == [(20, 500, 620, 760)]


def test_what_stands_off_the_columns_or_cuts_lines_or_holds_much_running_text_is_less_of_an_advert() -> None:
    aside = (upright(55, 500, 640), upright(270, 500, 640))
    moved = [TypeLine((n.rect[0] + 30, *n.rect[1:]), n.height, n.text) for n in goods()]
    assert found(moved, *CARD, *aside) == []
    reaching = [TypeLine((30, 622, 420, 634), 12, "Cups 25c and saucers 35c each, all sizes")]
    assert found([*goods(), *reaching], *CARD, *SIDES) == []
    told = [TypeLine((30, 566 + 14 * n, 300, 576 + 14 * n), 10, "fresh goods best quality you save") for n in range(5)]
    assert found([*goods(2), *told], *CARD, *SIDES) == []


def test_panels_have_less_weight_the_more_adverts_may_hold_them() -> None:
    sides = (upright(15, 545, 640), upright(315, 545, 640))
    assert len(found(goods(), *CARD, *sides)) == 1
    prose = [TypeLine((100, 650 + 9 * n, 220, 656 + 9 * n), 6, "that it was in the house of his") for n in range(40)]
    low = [level(645 + 18 * n, 15, 315) for n in range(12)]
    assert found([*goods(), *prose], *CARD, *sides, *low) == []


def test_the_heaviest_together_are_chosen_not_the_heaviest_first() -> None:
    around, left, right = (0.0, 0.0, 100.0, 50.0), (0.0, 0.0, 50.0, 50.0), (50.0, 0.0, 100.0, 50.0)
    assert sorted(heaviest([around, left, right], [3.0, 2.0, 2.0])) == [1, 2]
    assert heaviest([around, left, right], [5.0, 2.0, 2.0]) == [0]
    assert heaviest([around], [-1.0]) == []


def test_a_rectangle_that_cuts_many_lines_is_not_drawn() -> None:
    wide = [TypeLine((200, 520 + 20 * n, 420, 532 + 20 * n), 12, f"Cups {n}5c each") for n in range(5)]
    work = RuleWork((*CARD, *SIDES), (), ())
    assert drawn_rects(Strokes.of(work, wide, 1000), [*goods(), *wide], WHOLE) == []
    assert len(drawn_rects(Strokes.of(work, goods(), 1000), goods(), WHOLE)) == 1
