"""The page of makers who sell by mail, cut at the addresses their adverts end with."""

from __future__ import annotations

from dataclasses import replace

from adminer.layout.adverts import find_adverts
from adminer.layout.rules import Rect, RuleWork
from adminer.layout.type_lines import Part, TypeLine

LEFTS = (30, 330)
TITLE = TypeLine((30, 10, 570, 40), 30, "The Hearthside Counter")
FOLIO: Rect = (25, 50, 575, 53)


def maker(left: float, top: float, foot: str) -> list[TypeLine]:
    said = ["Oak stool", "Sanded by hand, seat of", "woven rush, $6.50 postpaid", "or two for $12.", foot]
    return [TypeLine((left, top + 20 * n, left + 230, top + 20 * n + 12), 12, text) for n, text in enumerate(said)]


def rule(left: float, top: float) -> Rect:
    return (left, top, left + 240, top + 2)


def cut(*feet: str, worn: bool = False) -> list[Part]:
    lines = [TITLE]
    for n, foot in enumerate(feet):
        lines += maker(LEFTS[n % 2], 80 + 200 * (n // 2), foot)
    rules = [rule(left, 240 + 200 * n) for left in LEFTS for n in range(len(feet) // 2 - 1)]
    if worn:
        rules = [
            half
            for left, y, right, foot in rules
            for half in ((left, y, left + 110, foot), (left + 120, y, right, foot))
        ]
    return find_adverts(RuleWork((FOLIO, *rules), (), ()), lines, 600, 700)


def test_each_maker_with_an_address_of_its_own_has_an_advert() -> None:
    parts = cut("CORBELLE, Osterby, Vt.", "Penhallow, Minster 12, N. Y.", "Thorne, Velby, L. I.", "Vale, Anytown, Ohio")
    assert [part.kind for part in parts] == ["masthead", *["advert"] * 4]
    assert [(part.rect[0] < 300, part.rect[1]) for part in parts[1:]] == [
        (True, 51.5),
        (True, 241),
        (False, 51.5),
        (False, 241),
    ]


def test_a_rule_with_a_worn_gap_parts_two_adverts_though_one_ends_with_no_address() -> None:
    feet = ("CORBELLE, Osterby, Vt.", "Penhallow, Minster, N. Y.", "Thorne, Velby, L. I.", "Vale, Anytown, Ohio")
    assert cut(*feet, worn=True) == cut(*feet)


def test_a_head_without_an_address_goes_with_the_advert_under_its_rule() -> None:
    feet = ("CORBELLE, Osterby, Vt.", "Penhallow, Minster, N. Y.", "Thorne, Velby, Iowa", "Vale, Anytown, Ohio")
    lines = [TITLE, TypeLine((330, 240, 560, 252), 12, "TO AGENTS ONLY")]
    for n, foot in enumerate(feet):
        lines += maker(LEFTS[n % 2], 80 + 200 * (n // 2), foot)
    rules = (rule(30, 230), rule(330, 230), rule(330, 260))
    assert len([p for p in find_adverts(RuleWork((FOLIO, *rules), (), ()), lines, 600, 700) if p.kind == "advert"]) == 4


def test_a_stretch_with_its_own_price_is_an_advert_though_its_address_names_no_state() -> None:
    feet = ("CORBELLE, Osterby, Vt.", "Penhallow, Minster, N. Y.", "Thorne, Denver.", "Vale, Anytown, Ohio")
    parts = cut(*feet, "Thorne, Velby, Iowa", "Moss, Eastby, Maine")
    assert len([part for part in parts if part.kind == "advert"]) == 6


def test_the_line_that_asks_to_name_the_paper_is_no_advert() -> None:
    feet = ("CORBELLE, Osterby, Vt.", "Penhallow, Minster, N. Y.", "Thorne, Velby, Iowa", "Vale, Anytown, Ohio")
    lines = [TITLE, TypeLine((30, 460, 260, 472), 12, "Please mention The Hearthside")]
    for n, foot in enumerate(feet):
        lines += maker(LEFTS[n % 2], 80 + 200 * (n // 2), foot)
    rules = (rule(30, 230), rule(330, 230), rule(30, 440))
    parts = find_adverts(RuleWork((FOLIO, *rules), (), ()), lines, 600, 700)
    assert [part.kind for part in parts].count("advert") == 4
    assert [part.kind for part in parts].count("editorial") == 1


def test_a_page_of_a_catalogue_is_no_page_of_makers() -> None:
    feet = (
        "For Alberta add 5c.",
        "G. Wash Basins, large",
        "K — With lid, 4.85. State size.",
        "L — Plain, 1.95. Say which.",
    )
    assert [part.kind for part in cut(*feet)] == ["advert"]


def test_an_address_in_a_city_signs_an_advert() -> None:
    feet = ("CORBELLE, Osterby, Vt.", "Moss, New York City", "Thorne, Velby, L. I.", "Vale, Anytown, Ohio, U. S. A.")
    assert len(cut(*feet)) == 5


def test_panels_of_one_house_are_no_page_of_makers() -> None:
    parts = cut(*["Corbelle Mills, Osterby, Vt."] * 4)
    assert [part.kind for part in parts] == ["advert"]


def notice(left: float, top: float, goods: str, foot: str) -> list[TypeLine]:
    said = [
        f"{goods}, pure wool, all",
        "colours, 3/6 the pair. Patterns",
        "on approval, carriage free.",
        *foot.split("/"),
    ]
    return [TypeLine((left, top + 20 * n, left + 230, top + 20 * n + 12), 12, text) for n, text in enumerate(said)]


def cut_notices(*feet: str) -> list[Part]:
    lines = [TITLE]
    for n, foot in enumerate(feet):
        lines += notice(LEFTS[n % 2], 80 + 160 * (n // 2), ("BLANKETS", "SHAWLS", "SOCKS")[n % 3], foot)
    rules = [FOLIO, *(rule(left, 190 + 160 * n) for left in LEFTS for n in range(len(feet) // 2 - 1))]
    return find_adverts(RuleWork(tuple(rules), (), ()), lines, 600, 700)


BRITISH = (
    "—CORBELLE & SON, 18, Mill/Row, Osterby.",
    "--MRS. VALE. Weir Farm,/Wenning.",
    "-J. THORNE, Draper,/Minster Harbour.",
    "—THE SHAWL DEPOT, 33, Haven/Parade, Velby.",
)


def test_notices_that_end_with_a_name_behind_a_dash_are_adverts() -> None:
    assert len([part for part in cut_notices(*BRITISH) if part.kind == "advert"]) == 4


def test_a_notice_run_on_is_one_though_the_name_over_it_was_not_read() -> None:
    feet = (*BRITISH, "Il. M rr Osterby", "—PENHALLOW, Corn Hill,/Osterby.", "—MOSS & Co., Eastby.", "—DALE, Tern.")
    assert len([part for part in cut_notices(*feet) if part.kind == "advert"]) == 8


def test_a_rule_that_runs_on_past_the_address_it_touches_parts_two_adverts() -> None:
    feet = ("CORBELLE, Osterby, Vt.", "Penhallow, Minster, N. Y.", "Thorne, Velby, L. I.", "Vale, Anytown, Ohio")
    parts = cut(*feet)
    lines = [TITLE]
    for n, foot in enumerate(feet):
        *said, last = maker(LEFTS[n % 2], 80 + 200 * (n // 2), foot)
        lines += [*said, replace(last, rect=(last.rect[0] + 40, last.rect[1], last.rect[2] - 40, last.rect[3]))]
    touching = (rule(30, 165), rule(330, 165))  # the first addresses stand from 160 to 172
    found = find_adverts(RuleWork((FOLIO, *touching), (), ()), lines, 600, 700)
    assert [part.kind for part in found] == [part.kind for part in parts]
