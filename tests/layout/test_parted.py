"""Adverts that share a border, parted by the rule between them, told from the panels of one advert."""

from __future__ import annotations

import pytest

from adminer.layout.parted import parted, sides_as_rules
from adminer.layout.rules import Rect, RuleWork
from adminer.layout.type_lines import TypeLine

FRAME: Rect = (100, 100, 500, 500)
UPRIGHT: Rect = (298, 104, 302, 496)
LEVEL: Rect = (104, 298, 496, 302)


def advert(left: float, top: float, head: str = "CORBELLE", foot: str = "12 Quarry St.") -> list[TypeLine]:
    goods = [f"Bowls, each {n}5c" for n in range(1, 5)]
    sizes = [(head, 24.0), *((text, 12.0) for text in [*goods, foot])]
    return [
        TypeLine((left, top + 28 * n, left + 140, top + 28 * n + size), size, text)
        for n, (text, size) in enumerate(sizes)
    ]


def test_a_rule_from_head_to_foot_parts_adverts_side_by_side() -> None:
    both = [*advert(120, 120), *advert(320, 120, "HARKWELL")]
    assert parted(FRAME, both, [UPRIGHT]) == [(100, 100, 300, 500), (300, 100, 500, 500)]
    assert parted(FRAME, both, []) == [FRAME]


def test_a_rule_parts_no_advert_whose_head_runs_over_it_or_one_side_of_which_has_no_head() -> None:
    both = [*advert(120, 120), *advert(320, 120, "HARKWELL")]
    common = TypeLine((150, 105, 450, 118), 13, "Everything for the kitchen")
    assert parted(FRAME, [common, *both], [UPRIGHT]) == [FRAME]
    assert parted(FRAME, [*advert(120, 120), *advert(320, 120)[1:]], [UPRIGHT]) == [FRAME]


def test_two_rules_beside_each_other_are_borders_of_two_adverts_though_one_has_no_head() -> None:
    both = [*advert(120, 120), *advert(320, 120)[1:]]
    borders: list[Rect] = [(292, 104, 295, 496), (304, 104, 307, 496)]
    assert len(parted(FRAME, both, borders)) == 2


def test_a_rule_that_runs_on_past_a_frame_is_a_scratch() -> None:
    both = [*advert(120, 120), *advert(320, 120, "HARKWELL")]
    assert parted(FRAME, both, [(298, 20, 302, 900)]) == [FRAME]


@pytest.mark.parametrize("foot", ["12 Quarry St.", "Hwy. 9 North", "Phone 418", "Harkwell Bros.", "Main at Fourth"])
def test_a_rule_across_parts_adverts_that_both_have_head_offers_and_address(foot: str) -> None:
    both = [*advert(120, 110), *advert(120, 310, "HARKWELL", foot)]
    assert parted(FRAME, both, [LEVEL]) == [(100, 100, 500, 300), (100, 300, 500, 500)]


def test_a_rule_across_parts_no_advert_with_one_address_or_with_no_offer_under_it() -> None:
    assert parted(FRAME, [*advert(120, 110), *advert(120, 310, "LINENS", "Towels")], [LEVEL]) == [FRAME]
    plain = [TypeLine(n.rect, n.height, "Open evenings" if "c" in n.text else n.text) for n in advert(120, 310)]
    assert parted(FRAME, [*advert(120, 110), *plain], [LEVEL]) == [FRAME]


def test_no_advert_is_a_lone_line_or_lacks_a_head() -> None:
    borders: list[Rect] = [(292, 104, 295, 496), (304, 104, 307, 496)]
    assert parted(FRAME, [*advert(120, 120), TypeLine((320, 120, 460, 132), 12, "Bowls")], borders) == [FRAME]
    below = [TypeLine(n.rect, 12, n.text) for n in advert(120, 310)]
    assert parted(FRAME, [*advert(120, 110), *below], [LEVEL]) == [FRAME]


def test_the_sides_of_dark_panels_part_as_rules_do() -> None:
    panel: Rect = (300, 104, 496, 496)
    both = [*advert(120, 120), *advert(320, 120, "HARKWELL")]
    assert len(parted(FRAME, both, sides_as_rules(RuleWork((), (), (panel,))))) == 2


def test_cells_with_borders_of_their_own_under_one_head_are_panels_of_one_advert() -> None:
    both = [*advert(120, 150), *advert(320, 150)[1:]]
    borders: list[Rect] = [(292, 104, 295, 496), (304, 104, 307, 496)]
    assert len(parted(FRAME, both, borders)) == 2
    assert parted(FRAME, both, [*borders, (102, 138, 498, 140)]) == [FRAME]


def test_two_rules_across_with_white_between_are_borders_of_adverts_that_each_have_a_head_and_some_text() -> None:
    over, under = advert(120, 110), advert(120, 330, "HARKWELL", "Open evenings")
    borders: list[Rect] = [(104, 296, 496, 299), (104, 310, 496, 313)]
    assert len(parted(FRAME, [*over, *under], borders)) == 2
    assert parted(FRAME, [*over, *under], borders[:1]) == [FRAME]
    assert parted(FRAME, [*over, *under[:5]], borders) == [FRAME]
    assert parted(FRAME, [*over, *under[1:]], borders) == [FRAME]
