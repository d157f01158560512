"""The frames of adverts on the page of a paper, told from the rules around its columns and from scratches."""

from __future__ import annotations

from dataclasses import replace

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


def test_prose_in_a_frame_is_an_advert_where_it_speaks_to_its_reader_or_a_name_in_large_type_ends_it() -> None:
    frame: Rect = (300, 520, 620, 800)
    assert frames(text(335, 540, 15), frame) == []
    asked = [replace(line, text="We ask you to open an account") for line in text(335, 540, 15)]
    assert frames(asked, frame) == [frame]
    told = [replace(line, text="Strength, care, forty friendly years") for line in text(335, 540, 15)]
    assert frames(told, frame) == []
    assert frames([*told, TypeLine((340, 770, 560, 790), 20, "Corbelle Bank")], frame) == [frame]


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


def test_frames_with_white_between_them_are_adverts_though_rules_close_around_both() -> None:
    one, two = (100.0, 520.0, 500.0, 700.0), (100.0, 708.0, 500.0, 860.0)
    lines = [*goods(120, 540, 4), *goods(120, 720, 3)]
    around = (97.0, 517.0, 503.0, 863.0)
    assert frames(lines, one, two, around) == [one, two]
    close = (100.0, 702.0, 500.0, 860.0)  # one rule between two panels of an advert
    assert len(frames(lines, one, close, around)) == 1


COLUMN_RULES: tuple[Rect, ...] = ((318, 520, 322, 990), (588, 520, 592, 990))


def test_a_cell_between_the_rules_of_columns_is_an_article_though_a_notice_stands_under_it() -> None:
    cell: Rect = (320, 550, 590, 800)
    notice = [TypeLine((330, 660, 580, 674), 14, "HEMSTITCHING WHILE YOU WAIT")]
    notice += [TypeLine((330, 690 + 18 * n, 580, 702 + 18 * n), 12, f"Pleating {n}c a yard") for n in range(6)]
    article = [TypeLine((340, 556, 560, 566), 10, "PLANKING RENEWED"), *text(330, 570, 6)]
    assert frames([*article, *notice], cell, rules=COLUMN_RULES) == []
    assert frames([*article, *notice], cell) == [cell]


def test_a_list_of_prices_between_the_rules_of_columns_is_no_article() -> None:
    cell: Rect = (320, 550, 590, 800)
    name = TypeLine((340, 554, 560, 574), 20, "The Remnant Room")
    rows = [replace(line, text="Drip-dry cotton in a yard") for line in text(330, 580, 12)]
    prices = [TypeLine((584, 580 + 14 * n, 589, 590 + 14 * n), 10, "$1.39") for n in range(12)]
    assert frames([name, *rows, *prices], cell, rules=COLUMN_RULES) == [cell]
    assert frames([name, *rows], cell, rules=COLUMN_RULES) == []


def test_columns_that_fill_the_width_under_a_frame_are_a_list_of_its_advert() -> None:
    over = (100.0, 520.0, 520.0, 700.0)
    columns = [(100.0, 702.0, 239.0, 960.0), (241.0, 702.0, 380.0, 960.0), (382.0, 702.0, 520.0, 960.0)]
    name = TypeLine((180, 530, 420, 560), 30, "CORBELLE'S")
    lines = [name, *goods(120, 570, 3), *(line for c in columns for line in goods(c[0] + 5, 710, 6))]
    assert frames(lines, over, *columns) == [(100.0, 520.0, 520.0, 960.0)]
    assert frames(lines, over, *columns[:2]) == sorted([over, *columns[:2]])


def test_a_cell_between_the_rules_of_columns_without_a_head_is_part_of_what_stands_over_it() -> None:
    cell: Rect = (320, 550, 590, 800)
    assert frames(goods(335, 560, 6), cell, rules=COLUMN_RULES) == []
    head = TypeLine((340, 556, 560, 570), 14, "CORBELLE")
    assert frames([head, *goods(335, 580, 5)], cell, rules=COLUMN_RULES) == [cell]


def test_an_advert_whose_panels_touch_its_border_is_framed_by_that_border() -> None:
    panel: Rect = (106, 640, 494, 700)
    rules: tuple[Rect, ...] = (
        (100, 520, 500, 524),
        (100, 960, 500, 964),
        (100, 520, 104, 964),
        (496, 520, 500, 964),
    )
    name = TypeLine((180, 540, 420, 570), 30, "CORBELLE'S")
    assert frames([name, *goods(120, 646, 8)], panel, rules=rules) == [(100, 520, 500, 964)]


def test_a_frame_around_two_framed_adverts_is_no_advert() -> None:
    both, one, two = (100.0, 520.0, 500.0, 960.0), (102.0, 522.0, 290.0, 958.0), (305.0, 522.0, 498.0, 958.0)
    lines = [*goods(120, 540, 8), *goods(320, 540, 8)]
    assert frames(lines, both, one, two) == [one, two]


def test_no_advert_holds_the_running_head_of_the_paper() -> None:
    head = [TypeLine((40, 20, 200, 32), 12, "PAGE SIX"), TypeLine((600, 20, 850, 32), 12, "Monday, May 4, 1931")]
    page, card = (20.0, 15.0, 880.0, 960.0), (30.0, 600.0, 500.0, 900.0)
    lines = [*head, *goods(60, 80, 6), *goods(60, 620, 6)]
    assert frames_of_paper(RuleWork((), (page, card), ()), lines, WHOLE) == [page]
    assert frames_of_paper(RuleWork((), (page, card), ()), lines, WHOLE, head) == [card]
    left, top, right, foot = page  # the dark edge of the film, of which four rules make a border
    edge = ((left, top, right, top + 4), (left, foot - 4, right, foot), (left, top, left + 4, foot))
    rules = (*edge, (right - 4, top, right, foot))
    assert frames_of_paper(RuleWork(rules, (card,), ()), lines, WHOLE, head) == [card]


def test_a_dark_panel_that_letters_break_is_the_head_of_the_frame_under_it() -> None:
    frame, panel = (100.0, 600.0, 500.0, 900.0), (300.0, 560.0, 503.0, 602.0)
    lines = [*NEWS, TypeLine((120, 565, 300, 595), 30, "OPEN NOW"), *goods(120, 620, 6)]
    assert frames_of_paper(RuleWork((), (frame,), (panel,)), lines, WHOLE) == [(100.0, 560.0, 503.0, 900.0)]
    small = (450.0, 560.0, 503.0, 602.0)
    assert frames_of_paper(RuleWork((), (frame,), (small,)), lines, WHOLE) == [frame]


def test_a_frame_around_adverts_is_none_though_a_scratch_cuts_one_of_them_in_halves() -> None:
    scratch: Rect = (298, 560, 302, 900)
    around, over = (100.0, 550.0, 500.0, 980.0), (105.0, 555.0, 495.0, 700.0)
    left, right = (105.0, 715.0, 299.0, 975.0), (301.0, 715.0, 495.0, 975.0)
    lines = [*goods(120, 570, 4, right=300), *goods(120, 730, 6, right=300)]
    found = frames(lines, around, over, left, right, rules=(scratch,))
    assert found == sorted([over, (105.0, 715.0, 495.0, 975.0)])


def test_adverts_with_borders_of_their_own_and_white_between_are_two_without_a_head() -> None:
    over, under = (100.0, 540.0, 500.0, 700.0), (100.0, 715.0, 500.0, 960.0)
    assert frames([*goods(120, 550, 4), *goods(120, 725, 6)], over, under) == sorted([over, under])
    shared: Rect = (100.0, 703.0, 500.0, 960.0)
    assert frames([*goods(120, 550, 4), *goods(120, 725, 6)], over, shared) == [(100.0, 540.0, 500.0, 960.0)]


def test_borders_whose_sides_run_on_into_each_other_are_no_cells_of_a_column() -> None:
    sides = ((99.0, 530.0, 102.0, 970.0), (498.0, 530.0, 501.0, 970.0))
    common, over, under = (96.0, 530.0, 504.0, 970.0), (100.0, 540.0, 500.0, 700.0), (100.0, 715.0, 500.0, 960.0)
    lines = [*goods(120, 550, 4), *goods(120, 725, 6)]
    assert frames(lines, common, over, under, rules=sides) == sorted([over, under])


def headed(left: float, top: float, count: int = 5) -> list[TypeLine]:
    return [TypeLine((left, top, left + 120, top + 24), 24, "CORBELLE"), *goods(left, top + 40, count)]


def test_a_border_around_adverts_and_an_article_is_none_of_an_advert() -> None:
    around, one, two = (60.0, 510.0, 880.0, 980.0), (62.0, 512.0, 290.0, 800.0), (580.0, 512.0, 878.0, 978.0)
    lines = [*headed(80, 520), *headed(600, 520, 10)]
    assert frames([*lines, *text(310, 530, 30)], around, one, two) == [one, two]
    headline = TypeLine((310, 515, 520, 527), 12, "MAYOR OPENS FAIR")
    assert frames([*lines, headline, *text(310, 530, 30)], around, one, two) == [one, two]
    assert frames(lines, around, one, two) == [one, two]
    assert frames([*lines, *headed(320, 620)], around, one, two) == [one, two]
    assert frames(headed(80, 520), around, one) == [around]
    assert frames([*goods(80, 520, 6), *goods(600, 520, 10)], around, one, two) == [around]
    # a head over all of them makes them panels, and so does a list of prices beside them
    head = TypeLine((320, 520, 560, 560), 40, "HARKWELL")
    assert frames([*lines, head], around, one, two) == [around]
    assert frames([*lines, head, *goods(310, 600, 6)], around, one, two) == [around]
    assert frames([*lines, *goods(310, 530, 10)], around, one, two) == [around]
    sums = [TypeLine((530, 530 + 28.0 * n, 560, 540 + 28.0 * n), 10, "25c") for n in range(8)]
    listed = [replace(line, text="Bowls and jugs, blue") for line in text(310, 530, 20)]
    assert frames([*lines, *listed, *sums], around, one, two) == [around]


def test_a_border_that_leans_is_an_adverts_where_it_holds_one_and_cuts_no_frame() -> None:
    leaning: tuple[Rect, ...] = (
        (100, 510, 500, 532),
        (100, 930, 500, 952),
        (100, 532, 110, 952),
        (490, 510, 500, 930),
    )
    border = (100.0, 510.0, 500.0, 952.0)
    assert frames(headed(120, 550), rules=leaning) == [border]
    assert frames(text(130, 550, 20), rules=leaning) == []
    other: Rect = (300, 540, 700, 940)
    assert border not in frames([*headed(120, 550), *headed(520, 550)], other, rules=leaning)


def test_adverts_that_share_a_border_are_parted_unless_a_scratch_runs_between() -> None:
    both: Rect = (100, 510, 500, 900)
    lines = [*headed(120, 530), *headed(320, 530)]
    assert len(frames(lines, both, rules=((298, 515, 302, 895),))) == 2


def test_a_cell_between_the_rules_of_columns_whose_name_stands_at_its_foot_is_an_advert() -> None:
    cell: Rect = (320, 550, 590, 800)
    foot = TypeLine((340, 770, 560, 790), 20, "Corbelle Shoes")
    assert frames([*goods(335, 560, 5), foot], cell, rules=COLUMN_RULES) == [cell]


def test_a_coupon_well_inside_the_sides_of_its_advert_does_not_cut_it() -> None:
    over, coupon, under = (100.0, 540.0, 300.0, 700.0), (112.0, 701.0, 289.0, 790.0), (100.0, 791.0, 300.0, 900.0)
    name = TypeLine((120, 545, 280, 575), 30, "CORBELLE'S")
    lines = [name, *goods(120, 585, 3), *goods(125, 705, 3), *goods(120, 800, 3)]
    lines = [replace(line, rect=(line.rect[0], line.rect[1], line.rect[0] + 120, line.rect[3])) for line in lines]
    assert frames(lines, over, coupon, under) == [(100.0, 540.0, 300.0, 900.0)]


def test_prose_in_a_frame_over_a_name_larger_than_the_papers_text_is_an_advert() -> None:
    frame: Rect = (300, 520, 620, 800)
    told = [replace(line, height=12) for line in text(335, 540, 15)]
    assert frames([*told, TypeLine((340, 770, 560, 787), 17, "Corbelle Bank")], frame) == [frame]
    assert frames([*told, TypeLine((340, 770, 560, 787), 17, "down.")], frame) == []


def test_a_scratch_elsewhere_on_the_page_neither_joins_frames_nor_takes_one_away() -> None:
    above: Rect = (446, 40, 454, 480)
    left, right = (100.0, 600.0, 449.0, 900.0), (451.0, 640.0, 800.0, 900.0)
    lines = goods(120, 620, 6) + goods(470, 660, 5)
    assert frames(lines, left, right, rules=(above,)) == sorted([left, right])


def test_a_level_scratch_takes_no_frame_away() -> None:
    scratch: Rect = (20, 665, 880, 667)
    frame: Rect = (100, 600, 449, 900)
    beside = [TypeLine((left, 660, left + 160, 672), 12, "words of a report") for left in (460, 660)]
    assert frames([*goods(120, 620, 6), *beside], frame, rules=(scratch,)) == [frame]


def test_a_card_in_a_border_of_its_own_is_an_advert_though_it_tells_no_price() -> None:
    frame: Rect = (300, 520, 620, 700)
    said = ("Quarry Lane Silver Band", "plays Saturday at eight", "in the hall of the school")
    card = [TypeLine((340, 540 + 40 * n, 580, 540 + 40 * n + 12), 12, text) for n, text in enumerate(said)]
    head = TypeLine((340, 540, 580, 562), 22, said[0])
    assert frames(card, frame) == []
    assert frames([head, *card[1:]], frame) == [frame]
    assert frames([head, *text(335, 570, 8)], frame) == []


def test_a_firm_and_what_it_says_of_itself_make_a_card_of_two_lines() -> None:
    frame: Rect = (300, 520, 620, 600)
    under = TypeLine((340, 565, 580, 577), 12, "Strong since the flood")
    firm, poem = (TypeLine((340, 540, 580, 562), 22, said) for said in ("Corbelle & Sons", "Evening Thoughts"))
    assert frames([firm, under], frame) == [frame]
    assert frames([poem, under], frame) == []


def test_prose_in_a_frame_is_an_advert_where_a_name_in_capitals_ends_it_with_or_without_where_it_is() -> None:
    snug: Rect = (325, 520, 597, 800)
    told = [replace(line, text="the words of a report that he told") for line in text(335, 540, 15)]
    for name in ("CORBELLE BANK", "CORBELLE BANK, Quarry Lane"):
        assert frames([*told, TypeLine((340, 770, 560, 780), 10, name)], snug) == [snug]
    assert frames([*told, TypeLine((340, 770, 560, 780), 10, "It is said in Quarry Lane")], snug) == []


def test_a_dark_panel_in_no_frame_is_an_advert_where_it_has_a_head_and_tells_whose_it_is() -> None:
    panel: Rect = (300, 520, 620, 700)
    said = ("COKE", "broken small, $8.25 the ton", "$4.25 the half ton", "Corbelle & Sons, Quarry Lane")
    sizes = (30, 12, 12, 12)

    def dark(*heights: int) -> list[Rect]:
        lines = [
            TypeLine((340, 540 + 40 * n, 580, 540 + 40 * n + size), size, text)
            for n, (text, size) in enumerate(zip(said, heights, strict=True))
        ]
        return frames_of_paper(RuleWork((), (), (panel,)), [*NEWS, *lines], WHOLE)

    assert dark(*sizes) == [panel]
    assert dark(12, 30, 12, 12) == []  # the foot of an advert, and a line of it
