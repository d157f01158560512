"""Pages of a paper whose adverts no frame closes: cut by column, cut-off rule, and run of type."""

from __future__ import annotations

from dataclasses import replace

from adminer.layout.adverts import find_adverts
from adminer.layout.rules import Rect, RuleWork
from adminer.layout.type_lines import Part, TypeLine

WIDTH, HEIGHT = 900, 1000
LEFTS = (30, 330, 630)


def text(left: float, top: float, count: int) -> list[TypeLine]:
    return [
        TypeLine((left, top + 14 * n, left + 250, top + 14 * n + 10), 10, "words of a report") for n in range(count)
    ]


def moved(rect: Rect, right: float) -> Rect:
    return rect[0] + right, rect[1], rect[2] + right, rect[3]


def offer(left: float, top: float, *prices: str) -> list[TypeLine]:
    lines = [TypeLine((left + 40, top, left + 200, top + 24), 24, "TABLE SALE")]
    for n, price in enumerate(prices):
        y = top + 50 + 30 * n
        lines += [TypeLine((left, y, left + 90, y + 12), 12, "Dinner plates")]
        lines += [TypeLine((left + 210, y, left + 250, y + 12), 12, price)]
    return lines


HEAD = [TypeLine((30, 10, 200, 26), 16, "PAGE SIX"), TypeLine((600, 10, 880, 26), 16, "Thursday, March 12, 1953")]
FOLIO: Rect = (20, 32, 880, 35)


def cut(lines: list[TypeLine], *rules: Rect) -> list[Part]:
    return find_adverts(RuleWork((FOLIO, *rules), (), ()), [*HEAD, *lines], WIDTH, HEIGHT)


def adverts(parts: list[Part]) -> list[tuple[int, ...]]:
    return sorted(tuple(round(v) for v in part.rect) for part in parts if part.kind == "advert")


def test_adverts_under_cut_off_rules_are_told_from_the_columns_of_text() -> None:
    lines = text(30, 60, 30) + text(330, 60, 12) + offer(330, 260, "59c", "89c") + text(330, 420, 12)
    lines += offer(630, 60, "$1.98", "$2.49", "$3") + text(630, 300, 12)
    found = adverts(cut(lines, (325, 240, 585, 243), (325, 400, 585, 403), (625, 260, 885, 263)))
    assert len(found) == 2
    assert found[0][1] == 240
    assert found[0][3] == 403  # from rule to rule
    assert found[1][0] == 630
    assert found[1][3] == 263


def test_a_run_of_prices_between_paragraphs_is_an_advert_without_any_rule() -> None:
    lines = (
        text(30, 60, 30) + text(630, 60, 30) + text(330, 60, 12) + offer(330, 260, "59c", "89c") + text(330, 420, 12)
    )
    (found,) = adverts(cut(lines))
    assert found[1] == 260
    assert found[3] < 420


def test_a_headline_belongs_to_its_article() -> None:
    lines = text(30, 60, 30) + text(630, 60, 30) + text(330, 60, 12)
    lines += [TypeLine((340, 260, 560, 284), 24, "Council to meet"), *text(330, 300, 12)]
    assert adverts(cut(lines)) == []


def test_columns_of_prose_without_the_dateline_of_a_paper_are_one_advert() -> None:
    lines = [line for left in LEFTS for line in text(left, 60, 30)]
    parts = find_adverts(RuleWork((FOLIO,), (), ()), lines, WIDTH, HEIGHT)
    assert [part.kind for part in parts] == ["advert"]


def test_a_dateline_whose_month_is_misread_is_one() -> None:
    lines = [line for left in LEFTS for line in text(left, 60, 30)]
    head = replace(HEAD[1], text="Thursday, Nas 12. 1953")
    parts = find_adverts(RuleWork((FOLIO,), (), ()), [HEAD[0], head, *lines], WIDTH, HEIGHT)
    assert adverts(parts) == []


def test_columns_that_lean_are_parted_though_no_upright_line_runs_between_them() -> None:
    rules: list[Rect] = [(325, 500, 600, 503), (325, 640, 600, 643)]
    lines = (
        text(30, 60, 60) + text(300, 60, 30) + offer(300, 520, "59c", "89c") + text(300, 660, 15) + text(570, 60, 60)
    )
    leaning = [replace(n, rect=moved(n.rect, 0.012 * n.rect[1])) for n in lines]
    (found,) = adverts(cut(leaning, *rules))
    assert found[0] > 290
    assert (found[1], found[3]) == (500, 643)


def test_a_line_read_across_two_columns_does_not_join_them() -> None:
    lines = text(30, 60, 60) + text(330, 60, 30) + offer(330, 520, "59c", "89c") + text(630, 60, 60)
    joined = [n for n in lines if not (n.rect[0] < 340 and n.rect[1] == 200)]
    joined.append(TypeLine((30, 200, 580, 210), 10, "words of a report and words of another report"))
    (found,) = adverts(cut(joined, (325, 500, 585, 503)))
    assert found[0] == 330


def test_an_article_that_tells_a_sum_is_no_advert() -> None:
    told = [TypeLine((330, 228, 580, 238), 10, "sold the farm and stock for $950 in cash")]
    told += [TypeLine((330, 242 + 14 * n, 580, 252 + 14 * n), 10, "of $4.200 in all") for n in range(3)]
    lines = text(30, 60, 30) + text(630, 60, 30) + text(330, 60, 12) + told + text(330, 326, 4)
    assert adverts(cut(lines)) == []


def test_a_rule_in_an_advert_cuts_it_no_more_than_its_signature_is_parted_from_it() -> None:
    table = offer(330, 260, "59c")
    rest = [TypeLine((330, 380 + 30 * n, 420, 392 + 30 * n), 12, f"Saucers {n}5c") for n in range(1, 5)]
    lines = text(30, 60, 40) + text(630, 60, 40) + text(330, 60, 12) + table + rest
    over, inner = (325.0, 240.0, 585.0, 243.0), (325.0, 350.0, 585.0, 353.0)
    assert len(adverts(cut(lines, over, inner))) == 1
    signed = [*lines, TypeLine((340, 325, 560, 340), 15, "CORBELLE & SON")]
    assert len(adverts(cut(signed, over, inner))) == 2


def test_columns_are_parted_where_many_lines_were_read_across_the_white_between_them() -> None:
    lines = text(30, 60, 60) + text(290, 60, 30) + offer(290, 520, "59c", "89c") + text(630, 60, 60)
    across = [n.rect[1] for n in text(30, 60, 30)][::4]
    joined = [n for n in lines if not (n.rect[0] < 300 and n.rect[1] in across)]
    joined += [TypeLine((30, y, 540, y + 10), 10, "words of a report and words of another report") for y in across]
    (found,) = adverts(cut(joined, (285, 500, 545, 503)))
    assert found[0] == 290


def test_offers_set_like_the_paragraphs_over_them_are_an_advert_between_rules() -> None:
    told = (
        "Gloves of a good weight, 25c a pair",
        "and better ones, in black or tan, 40c",
        "Hose, 15c; others 20c and 25c",
    )
    prose = [TypeLine((330, 260 + 14 * n, 580, 270 + 14 * n), 10, said) for n, said in enumerate(told)]
    led = [TypeLine((330, 310 + 14 * n, 580, 320 + 14 * n), 10, "Lard, by the pail. . . . . .") for n in range(5)]
    signed = [TypeLine((340, 400, 560, 424), 24, "CORBELLE")]
    lines = text(30, 60, 30) + text(630, 60, 30) + text(330, 60, 12) + prose + led + signed
    assert len(adverts(cut(lines, (325, 240, 585, 243), (325, 440, 585, 443)))) == 1
    assert len(adverts(cut([*lines[:-1]], (325, 240, 585, 243), (325, 440, 585, 443)))) == 1


def test_prices_that_stand_close_in_lines_like_the_text_over_them_are_an_advert() -> None:
    told = [
        TypeLine((330, 260 + 14 * n, 580, 270 + 14 * n), 10, said)
        for n, said in enumerate(("Gloves of good weight, now 25c", "others, black or tan, now 40c") * 4)
    ]
    lines = text(30, 60, 30) + text(630, 60, 30) + text(330, 60, 12) + told
    assert len(adverts(cut(lines, (325, 240, 585, 243)))) == 1


def test_an_advert_with_a_few_lines_of_prose_between_its_name_and_its_call_is_one() -> None:
    names = [TypeLine((340, y, 560, y + 30), 30, said) for y, said in ((260, "CORBELLE"), (300, "BANK"), (500, "Save"))]
    rest = [TypeLine((340, 550 + 30 * n, 460, 564 + 30 * n), 14, "Come in, or call") for n in range(5)]
    prose = [replace(line, text="Your money, safe with us") for line in text(330, 360, 4)]
    lines = text(30, 60, 50) + text(630, 60, 50) + text(330, 60, 12) + names + prose + rest
    (found,) = adverts(cut(lines, (325, 240, 585, 243), (325, 720, 585, 723)))
    assert (found[1], found[3]) == (240, 720) or found[3] > 680


def test_lines_read_aslant_over_two_columns_are_no_display_type() -> None:
    aslant = [
        TypeLine((330, 260 + 14 * n, 580, 284 + 14 * n), 24, "words of a report that go on over the column")
        for n in range(6)
    ]
    lines = text(30, 60, 30) + text(630, 60, 30) + text(330, 60, 12) + aslant
    assert adverts(cut(lines, (325, 240, 585, 243))) == []


def test_the_head_of_an_advert_runs_over_its_columns_though_one_of_them_is_prose() -> None:
    name = TypeLine((340, 260, 860, 296), 36, "CORBELLE BAZAAR")
    call = TypeLine((380, 312, 820, 330), 18, "WHITE SALE OPENS FRIDAY")
    goods = [TypeLine((330, 350 + 40 * n, 420, 362 + 40 * n), 12, "Dinner plates") for n in range(8)]
    goods += [TypeLine((585, 350 + 40 * n, 622, 362 + 40 * n), 12, f"{n + 1}5c") for n in range(8)]
    lines = text(30, 60, 60) + text(330, 60, 11) + text(630, 60, 11) + [name, call, *goods]
    lines += [replace(line, text="Linen from Harkwell looms") for line in text(630, 360, 9)]
    rules: list[Rect] = [(325, 240, 885, 243), (325, 302, 885, 305), (325, 336, 885, 339)]
    (found,) = adverts(cut(lines, *rules))
    assert found[0] <= 330
    assert found[2] >= 880
    assert found[1] <= 260


def test_a_headline_over_several_columns_makes_none_of_them_an_advert() -> None:
    headline = TypeLine((60, 60, 860, 92), 32, "Voters to Decide on Bridge")
    sums = [
        TypeLine((330, 110 + 14 * n, 622, 120 + 14 * n), 10, f"{n}8 of 31, or 4{n}, for 192{n % 9}") for n in range(12)
    ]
    lines = [headline, *text(72, 110, 40), *sums, *text(630, 110, 40)]
    assert adverts(cut(lines)) == []


def test_lines_with_figures_and_last_lines_of_paragraphs_do_not_end_an_article() -> None:
    said = ("words of a report", "words of a report", "bonds of 86,000 for 1950", "and so on")
    told = [TypeLine((330, 104 + 14 * n, 580 - 200 * (n % 4 == 3), 114 + 14 * n), 10, said[n % 4]) for n in range(16)]
    headline = [TypeLine((340, 60, 560, 84), 24, "Bridge Vote Set")]
    lines = text(30, 60, 30) + text(630, 60, 30) + headline + told
    assert adverts(cut(lines)) == []


def test_one_sum_in_an_article_over_a_large_headline_is_no_offer() -> None:
    told = [TypeLine((330, 102, 500, 112), 10, "calves reached $31.50")]
    headline = [TypeLine((340, 190, 560, 206), 16, "Band Plans Supper")]
    short = [TypeLine((330, 116 + 14 * n, 380, 126 + 14 * n), 10, "heavy") for n in range(2)]
    lines = text(30, 60, 40) + text(630, 60, 40) + text(330, 144, 4) + told + short + headline
    assert adverts(cut(lines, (325, 212, 585, 215))) == []


def test_prices_of_other_countries_are_prices() -> None:
    goods = [TypeLine((340, 260 + 14 * n, 560, 270 + 14 * n), 10, f"Pyjama suits, 2{n} P.T. a piece") for n in range(5)]
    name = TypeLine((340, 230, 560, 246), 16, "CORBELLE & VALE")
    lines = text(30, 60, 30) + text(630, 60, 30) + text(330, 60, 10) + [name, *goods]
    assert len(adverts(cut(lines, (325, 215, 585, 218), (325, 340, 585, 343)))) == 1


def test_two_sums_of_one_sentence_make_no_advert_of_an_article() -> None:
    article = text(30, 60, 10)
    article[3] = replace(article[3], text="sell no less than $3 worth")
    article[6] = replace(article[6], text="nor more than $8 to a car")
    frame: Rect = (320, 60, 880, 900)
    rows = [TypeLine((340, 80 + 40 * n, 700, 92 + 40 * n), 12, f"Bowls {n}5c") for n in range(12)]
    parts = find_adverts(RuleWork((FOLIO,), (frame,), ()), [*HEAD, *article, *rows], WIDTH, HEIGHT)
    assert [part.kind for part in parts] == ["masthead", "advert", "editorial"]


def test_a_short_article_beside_adverts_is_editorial_though_another_advert_has_no_frame() -> None:
    frame: Rect = (320, 60, 880, 600)
    rows = [TypeLine((340, 80 + 40 * n, 700, 92 + 40 * n), 12, f"Bowls {n}5c") for n in range(12)]
    lines = [*HEAD, *text(30, 60, 8), *rows, *offer(330, 650, "45c", "60c", "75c")]
    parts = find_adverts(RuleWork((FOLIO,), (frame,), ()), lines, WIDTH, HEIGHT)
    assert [part.kind for part in parts] == ["masthead", "advert", "editorial", "advert"]


def test_text_that_was_read_aslant_from_top_to_foot_is_no_display_type() -> None:
    aslant = [replace(n, rect=(330, n.rect[1], 580, n.rect[3]), height=19 - n.rect[1] % 3) for n in text(330, 60, 24)]
    parts = cut([*text(30, 60, 40), *aslant, *text(630, 60, 40)])
    assert {part.kind for part in parts} == {"masthead", "editorial"}


def test_sentences_too_few_for_a_paragraph_part_the_column_beside_them() -> None:
    rule: Rect = (325, 400, 885, 403)
    stub = [replace(line, height=7 + 9.0 * (n % 2)) for n, line in enumerate(text(330, 240, 8))]
    lines = text(30, 60, 60) + text(330, 60, 11) + text(630, 60, 11) + stub + text(330, 420, 20) + text(630, 420, 20)
    lines += offer(630, 240, "59c", "89c", "95c")
    (found,) = adverts(cut(lines, (325, 225, 885, 228), rule))
    assert found[0] >= 600


def test_a_head_beside_small_lines_is_not_cut_from_its_advert_by_the_rule_under_it() -> None:
    head = [TypeLine((340, 260, 460, 310), 50, "CORBELLE"), TypeLine((340, 312, 460, 330), 18, "BAZAAR")]
    head += [TypeLine((500, 262 + 14 * n, 580, 274 + 14 * n), 12, "Till Monday") for n in range(4)]
    rules: list[Rect] = [(325, 240, 585, 243), (325, 336, 585, 339), (325, 520, 585, 523)]
    lines = text(30, 60, 60) + text(630, 60, 60) + text(330, 60, 11) + head + offer(330, 350, "59c", "89c", "95c")
    (found,) = adverts(cut([*lines, *text(330, 540, 20)], *rules))
    assert found[1] <= 260
    assert found[3] > 450


def test_an_article_under_a_large_headline_is_none_of_an_advert_though_its_paragraphs_were_not_seen() -> None:
    worn = [replace(line, height=7 + 9.0 * (n % 2)) for n, line in enumerate(text(330, 300, 8))]
    lines = text(30, 60, 40) + text(630, 60, 40) + text(330, 60, 11)
    lines += [TypeLine((340, 250, 560, 290), 40, "Council to meet"), *worn]
    assert adverts(cut(lines, (325, 240, 585, 243), (325, 430, 585, 433))) == []


def test_prose_over_the_large_name_of_a_bank_is_an_advert_between_rules() -> None:
    told = [TypeLine((330, 250 + 24 * n, 580, 262 + 24 * n), 12, "the days of it are over") for n in range(6)]
    name = TypeLine((340, 400, 560, 417), 17, "Corbelle Bank")
    lines = text(30, 60, 40) + text(630, 60, 40) + text(330, 60, 11) + [*told, name]
    assert len(adverts(cut(lines, (325, 240, 585, 243), (325, 430, 585, 433)))) == 1


def test_a_column_of_prices_is_parted_from_no_names_on_its_rows() -> None:
    names = ["Hutch of maple", "Rocker, oak frame", "Lamp in brass", "Table, four chairs"]
    lines = [TypeLine((330, 250, 470, 270), 20, "Last of the kind")]
    lines += [TypeLine((330, 290 + 24 * n, 470, 302 + 24 * n), 12, name) for n, name in enumerate(names)]
    lines += [TypeLine((540, 290 + 24 * n, 585, 302 + 24 * n), 12, f"${n + 3}.95") for n in range(len(names))]
    page = text(30, 60, 60) + text(630, 60, 60) + text(330, 60, 11) + lines + text(330, 420, 30)
    (found,) = adverts(cut(page, (325, 240, 585, 243), (325, 400, 585, 403)))
    assert (found[0], found[2]) == (330, 585)


def test_the_row_of_number_date_and_cost_under_a_title_is_no_advert() -> None:
    title = TypeLine((200, 4, 700, 60), 56, "THE OSTERBY ARGUS")
    row = [
        TypeLine((30, 80, 200, 92), 12, "TENTH YEAR, NO. 12"),
        TypeLine((350, 80, 560, 92), 12, "OSTERBY, FRIDAY, MAY 7, 1909"),
        TypeLine((800, 80, 880, 92), 12, "$1.50 A YEAR"),
    ]
    columns = [line for left in LEFTS for line in text(left, 120, 40)]
    rules: tuple[Rect, ...] = ((20, 70, 880, 72), (20, 100, 880, 102))
    parts = find_adverts(RuleWork(rules, (), ()), [title, *row, *columns], WIDTH, HEIGHT)
    assert adverts(parts) == []
