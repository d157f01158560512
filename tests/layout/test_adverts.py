"""Rules, frames, panels, and the cut of a page into adverts and editorial matter."""

from __future__ import annotations

from dataclasses import replace

import cv2
import numpy as np
import pytest
from numpy.typing import NDArray

from adminer.layout.adverts import find_adverts
from adminer.layout.rules import Rect, RuleWork, find_rules, shared
from adminer.layout.type_lines import TypeLine


def paper(width: int = 800, height: int = 1000) -> NDArray[np.uint8]:
    return np.full((height, width), 245, np.uint8)


def rows(left: float, top: float, count: int, width: float = 200, height: float = 10) -> list[TypeLine]:
    return [
        TypeLine((left, top + 14 * k, left + width, top + 14 * k + height), height, "a line of running words")
        for k in range(count)
    ]


def priced(left: float, top: float, count: int) -> list[TypeLine]:
    return [replace(line, text=f"Bowls, blue, each {n}5c") for n, line in enumerate(rows(left, top, count))]


def near(a: Rect, b: Rect) -> bool:
    return all(abs(x - y) < 12 for x, y in zip(a, b, strict=True))


def test_a_printed_frame_and_a_rule_are_found() -> None:
    page = paper()
    cv2.rectangle(page, (100, 150), (700, 800), 0, 4)
    cv2.line(page, (150, 400), (650, 400), 0, 3)
    work = find_rules(page)
    assert any(near(frame, (100, 150, 700, 800)) for frame in work.frames)
    assert any(near(rule, (150, 400, 650, 402)) for rule in work.rules)


def test_a_frame_with_a_gap_is_still_a_frame() -> None:
    page = paper()
    cv2.rectangle(page, (100, 150), (700, 800), 0, 4)
    page[140:160, 300:340] = 245
    assert any(near(frame, (100, 150, 700, 800)) for frame in find_rules(page).frames)


def test_a_dark_panel_with_letters_cut_out_is_a_panel() -> None:
    page = paper()
    page[300:420, 100:500] = 10
    for x in range(140, 460, 30):
        page[340:380, x : x + 12] = 245
    panels = find_rules(page).panels
    assert any(shared(panel, (100, 300, 500, 420)) > 0.9 * 400 * 120 for panel in panels)


def test_the_black_around_a_frame_of_film_joins_no_panel_beside_it() -> None:
    page = paper()
    page[:, -40:] = page[:40] = 10
    page[300:620, 480 : page.shape[1] - 52] = 10
    wanted: Rect = (480, 300, page.shape[1] - 52, 620)
    assert any(near(panel, wanted) for panel in find_rules(page).panels)


def test_type_is_no_rule() -> None:
    page = paper()
    for y in range(100, 900, 30):
        for x in range(100, 700, 16):
            page[y : y + 14, x : x + 10] = 0
    assert find_rules(page).rules == ()


def test_one_framed_advert_is_its_frame() -> None:
    frame: Rect = (40, 40, 760, 960)
    parts = find_adverts(RuleWork((), (frame,), ()), rows(100, 100, 30), 800, 1000)
    assert [(part.rect, part.kind) for part in parts] == [(frame, "advert")]


def test_two_frames_side_by_side_are_two_adverts() -> None:
    left, right = (20.0, 20.0, 390.0, 980.0), (410.0, 20.0, 780.0, 980.0)
    lines = rows(60, 100, 30) + rows(450, 100, 30)
    work = RuleWork((), (left, right), ())
    assert len(find_adverts(work, lines, 800, 1000)) == 1  # columns of a catalogue: neither says whose it is
    lines.append(TypeLine((450, 900, 700, 920), 20, "Corbelle & Sons"))
    assert sorted(part.rect for part in find_adverts(work, lines, 800, 1000)) == [left, right]


def test_panels_of_one_advert_are_not_adverts() -> None:
    panels = tuple((50.0 + 350 * k, 500.0, 350.0 + 350 * k, 700.0) for k in range(2))
    headline = [TypeLine((60, 100, 740, 200), 100, "FOOD VALUES"), TypeLine((60, 220, 740, 300), 80, "All week")]
    lines = headline + rows(80, 510, 5) + rows(430, 510, 5)
    parts = find_adverts(RuleWork((), panels, ()), lines, 800, 1000)
    assert len(parts) == 1
    assert parts[0].rect[1] <= 100


def test_a_panel_from_side_to_side_does_not_cut_its_advert_in_three() -> None:
    advert = [(50.0, 60.0, 450.0, 250.0), (58.0, 251.0, 442.0, 400.0), (50.0, 401.0, 450.0, 560.0)]
    below = (50.0, 570.0, 450.0, 900.0)
    lines = [line for f in (*advert, below) for line in priced(f[0] + 20, f[1] + 20, 4)]
    lines += [line for x in (480, 580, 690) for line in rows(x, 60, 40, width=90)]
    parts = [p.rect for p in find_adverts(RuleWork((), (*advert, below), ()), lines, 800, 1000) if p.kind == "advert"]
    assert sorted(parts) == [(50.0, 60.0, 450.0, 560.0), below]


def test_columns_of_a_paper_are_editorial_and_its_title_a_masthead() -> None:
    frame: Rect = (420, 300, 780, 900)
    title = TypeLine((200, 30, 600, 90), 60, "The Ferncliff Echo")
    dateline = TypeLine((250, 100, 550, 116), 16, "Thursday, March 3, 1949")
    lines = [title, dateline, *rows(40, 150, 50), *priced(450, 320, 30)]
    parts = find_adverts(RuleWork((), (frame,), ()), lines, 800, 1000)
    kinds = [part.kind for part in parts]
    assert kinds.count("advert") == 1
    assert kinds.count("masthead") == 1
    assert kinds.count("editorial") == 1
    assert next(part.rect for part in parts if part.kind == "advert") == frame


def test_a_long_winded_advert_with_a_coupon_is_one_advert() -> None:
    coupon: Rect = (420, 300, 780, 900)
    headline = TypeLine((200, 30, 600, 90), 60, "Carpets at mill prices")
    parts = find_adverts(RuleWork((), (coupon,), ()), [headline, *rows(40, 150, 50), *rows(450, 320, 30)], 800, 1000)
    assert [part.kind for part in parts] == ["advert"]


def test_running_text_without_any_frame_is_an_advert() -> None:
    headline = TypeLine((200, 30, 600, 90), 60, "Why corns come back")
    lines = [headline, *rows(40, 150, 40), *rows(300, 150, 40), *rows(560, 150, 40)]
    assert [part.kind for part in find_adverts(RuleWork((), (), ()), lines, 800, 1000)] == ["advert"]


def test_columns_of_a_paper_that_are_half_illegible_are_still_editorial() -> None:
    frame: Rect = (40, 600, 380, 980)
    torn = [TypeLine((x, 150.0 + 20 * n, x + 60, 158.0 + 20 * n), 8, "tra") for x in (40, 300, 560) for n in range(20)]
    body = [*rows(40, 150, 20), *rows(300, 150, 20), *rows(560, 150, 30)]
    parts = find_adverts(RuleWork((), (frame,), ()), [*body, *torn, *priced(60, 620, 15)], 800, 1000)
    assert sorted({part.kind for part in parts}) == ["advert", "editorial"]
    assert [part.rect for part in parts if part.kind == "advert"] == [frame]


def test_an_advert_beside_a_framed_one_of_full_height_is_another_where_it_has_a_head_of_its_own() -> None:
    frame: Rect = (20, 20, 390, 480)
    held = [TypeLine((60, 40, 340, 80), 40, "Keep's Glass"), *rows(40, 120, 20)]
    head = TypeLine((460, 30, 740, 60), 30, "Tidewell Furniture")
    body = rows(450, 100, 20)
    parts = find_adverts(RuleWork((), (frame,), ()), [*held, head, *body], 800, 500)
    assert [part.kind for part in parts] == ["advert", "advert"]
    assert parts[0].rect == frame
    assert parts[1].rect[0] > 390


def test_type_beside_a_frame_without_a_head_or_under_a_common_one_is_one_advert() -> None:
    frame: Rect = (20, 120, 390, 480)
    held = rows(40, 140, 20)
    beside = [TypeLine((460, 130, 740, 160), 30, "All this week"), *rows(450, 180, 20)]
    over = TypeLine((60, 20, 740, 90), 70, "TIDEWELL MARKETS")
    (whole,) = find_adverts(RuleWork((), (frame,), ()), [over, *held, *beside], 800, 500)
    assert whole.rect[0] == 20
    tall: Rect = (20, 20, 390, 480)
    (plain,) = find_adverts(RuleWork((), (tall,), ()), [*rows(40, 60, 25), *rows(450, 30, 25)], 800, 500)
    assert plain.rect[2] == 650


def goods(left: float, top: float, width: float = 120) -> list[TypeLine]:
    head = TypeLine((left, top, left + width, top + 30), 30, "Corbelle")
    return [
        head,
        *(TypeLine((left, top + 20 * n, left + width, top + 20 * n + 10), 10, f"Bowls {n}5c") for n in range(2, 7)),
    ]


def test_articles_beside_framed_adverts_are_a_page_of_a_paper_though_its_head_is_cut_off() -> None:
    one, two = (420.0, 20.0, 780.0, 480.0), (420.0, 520.0, 780.0, 980.0)
    lines = [*rows(20, 20, 30, 180), *rows(220, 20, 30, 180), *goods(450, 40), *goods(450, 540)]
    parts = find_adverts(RuleWork((), (one, two), ()), lines, 800, 1000)
    assert [part.rect for part in parts if part.kind == "advert"] == [one, two]
    assert [part.kind for part in parts].count("editorial") == 2
    long = find_adverts(RuleWork((), (one, two), ()), [*rows(20, 20, 50, 180), *lines[60:]], 800, 1000)
    assert [part.rect for part in long if part.kind == "advert"] == [one, two]


def test_two_columns_of_prose_beside_one_frame_are_an_advert_with_its_coupon() -> None:
    coupon: Rect = (420, 20, 780, 480)
    lines = [*rows(20, 20, 30, 180), *rows(220, 20, 30, 180), *goods(450, 40)]
    assert [part.kind for part in find_adverts(RuleWork((), (coupon,), ()), lines, 800, 1000)] == ["advert"]


def test_many_columns_of_articles_are_a_page_of_a_paper_without_a_frame() -> None:
    lines = [line for left in range(20, 1000, 200) for line in rows(left, 20, 30, 170)]
    parts = find_adverts(RuleWork((), (), ()), [*lines, *goods(20, 520, 170)], 1000, 800)
    assert [part.kind for part in parts].count("editorial") >= 4
    assert [part.kind for part in parts].count("advert") == 1
    few = [*rows(20, 20, 30, 170), *rows(220, 20, 30, 170), *goods(20, 520, 170)]
    assert [part.kind for part in find_adverts(RuleWork((), (), ()), few, 420, 800)] == ["advert"]


def test_a_scratch_across_the_page_cuts_no_article() -> None:
    frame: Rect = (620, 20, 980, 980)
    columns = [line for left in (20, 220, 420) for line in rows(left, 20, 40, 180)]
    scratch: Rect = (0, 318, 1000, 320)
    dateline = TypeLine((20, 2, 300, 14), 12, "Thursday, March 3, 1949")
    parts = find_adverts(RuleWork((scratch,), (frame,), ()), [dateline, *columns, *goods(650, 40)], 1000, 1000)
    assert sorted(part.rect[0] for part in parts if part.kind == "editorial" and part.rect[3] > 300) == [20, 220, 420]


HEAD = TypeLine((30, 10, 780, 26), 16, "The Ferncliff Echo, Thursday, March 3, 1949")
NEWS = [line for left in (20, 240) for line in rows(left, 60, 60)]


def adverts_on_page(lines: list[TypeLine], *frames: Rect, rules: tuple[Rect, ...] = ()) -> list[Rect]:
    parts = find_adverts(RuleWork(rules, frames, ()), [HEAD, *NEWS, *lines], 800, 1000)
    return [part.rect for part in parts if part.kind == "advert"]


def test_a_panel_in_an_advert_that_does_not_say_whose_it_is_is_part_of_it() -> None:
    name = TypeLine((470, 70, 770, 110), 40, "CORBELLE'S")
    panel: Rect = (470, 130, 700, 230)
    inside = priced(480, 140, 4)
    around = [name, *priced(470, 260, 10), TypeLine((480, 420, 760, 440), 20, "Corbelle & Sons")]
    (found,) = adverts_on_page([*around, *inside], panel)
    assert shared(found, panel) > 0.9 * 230 * 100
    wider: Rect = (438, 130, 700, 230)  # the edge of its advert was found where its type begins
    (grown,) = adverts_on_page([*around, *inside], wider)
    assert grown[0] == 438
    signed = TypeLine((480, 210, 600, 222), 12, "Thorne & Co.")
    assert len(adverts_on_page([*around, *inside, signed], panel)) == 2


def test_the_name_of_a_firm_that_a_rule_cut_from_its_advert_is_part_of_it() -> None:
    frame: Rect = (460, 60, 780, 300)
    name = TypeLine((500, 310, 740, 340), 30, "Harkwell Range Co.")
    (found,) = adverts_on_page([*priced(480, 80, 12), name], frame)
    assert found[3] >= 340
    far = TypeLine((500, 400, 740, 430), 30, "Harkwell Range Co.")
    assert all(rect[3] < 400 for rect in adverts_on_page([*priced(480, 80, 12), far], frame) if rect[1] < 300)


def test_a_name_in_large_type_right_over_an_advert_is_part_of_it_though_it_tells_no_place() -> None:
    frame: Rect = (460, 100, 780, 300)
    name = TypeLine((500, 60, 740, 90), 30, "HERON THEATRE")
    (found,) = adverts_on_page([*priced(480, 120, 12), name], frame, rules=((460, 94, 780, 96),))
    assert found[1] <= 60


def test_lines_on_the_edges_of_a_frame_are_no_article_in_its_advert() -> None:
    frame: Rect = (460, 60, 780, 600)
    edges = [TypeLine((480, y, 760, y + 10), 10, "words of a report") for y in (56, 595)]
    parts = find_adverts(RuleWork((), (frame,), ()), [HEAD, *NEWS, *priced(480, 80, 12), *edges], 800, 1000)
    assert not any(part.kind == "editorial" and part.rect[0] > 450 for part in parts)


@pytest.mark.filterwarnings("error")
def test_a_blank_page_is_one_part_and_no_warning() -> None:
    (part,) = find_adverts(RuleWork((), (), ()), [], 800, 1000)
    assert part.kind == "advert"


def test_the_picture_over_the_type_belongs_to_an_advert_and_the_edge_of_the_film_does_not() -> None:
    lines = priced(100, 400, 20)
    picture, edge, ring = (60.0, 40.0, 740.0, 360.0), (0.0, 0.0, 90.0, 1000.0), (0.0, 0.0, 800.0, 1000.0)
    (plain,) = find_adverts(RuleWork((), (), (edge, ring)), lines, 800, 1000)
    (drawn,) = find_adverts(RuleWork((), (), (picture,)), lines, 800, 1000)
    assert [plain.rect, drawn.rect] == [(100, 400, 300, 676), (60, 40, 740, 676)]
