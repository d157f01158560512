"""Bare cents in columns headed by measures, as seed lists print them (common practice, no source). Texts invented."""

from __future__ import annotations

from adminer.records import Advert
from tests.parsing.pages import Line, parse

HEADS: tuple[Line, ...] = ((300, 40, 14, "Pkt. Oz."), (420, 40, 14, "1/4 lb."), (520, 40, 14, "Lb."))
ROWS: tuple[tuple[str, ...], ...] = (
    ("Beet, Dusky Globe", "5", "8", "20", ".65"),
    ("Cabbage, Stone Pate", "5", "18", "55", "$1.90"),
    ("Carrot, Half Moon", "4", "9", "24", ".75"),
)


def table(rows: tuple[tuple[str, ...], ...], *, heads: tuple[Line, ...] = HEADS) -> Advert:
    lines: list[Line] = list(heads)
    for n, (name, *cells) in enumerate(rows):
        y = 64 + 22 * n
        lines.append((20, y, 14, name))
        lines += [(x, y, 14, cell) for x, cell in zip((306, 345, 440, 520), cells, strict=True) if cell]
    return parse(*lines)


def prices(advert: Advert) -> dict[str, set[str]]:
    found: dict[str, set[str]] = {}
    for offer in advert.offers:
        found.setdefault(offer.item, set()).update(
            f"{p.amount} for {p.per_quantity} {p.per_unit}" for p in offer.prices
        )
    return found


def test_bare_figures_under_measures_are_cents_of_the_article_of_their_row() -> None:
    assert prices(table(ROWS)) == {
        "Beet, Dusky Globe": {"0.05 for 1 pkg", "0.08 for 1 oz", "0.2 for 0.25 lb", "0.65 for 1 lb"},
        "Cabbage, Stone Pate": {"0.05 for 1 pkg", "0.18 for 1 oz", "0.55 for 0.25 lb", "1.9 for 1 lb"},
        "Carrot, Half Moon": {"0.04 for 1 pkg", "0.09 for 1 oz", "0.24 for 0.25 lb", "0.75 for 1 lb"},
    }


def amounts(advert: Advert) -> set[str]:
    return {str(p.amount) for o in advert.offers for p in o.prices}


def test_without_a_sum_beside_them_figures_under_measures_may_count_anything() -> None:
    assert amounts(table(tuple((*row[:4], "") for row in ROWS))) == set()


def test_words_that_are_no_measures_head_no_cents() -> None:
    heads: tuple[Line, ...] = ((300, 40, 14, "Row Hill"), (420, 40, 14, "Days"), (520, 40, 14, "Lb."))
    assert amounts(table(ROWS, heads=heads)) <= {"0.65", "1.9", "1.90", "0.75"}


def test_in_a_column_whose_cents_have_points_a_bare_figure_is_none() -> None:
    assert "0.07" not in amounts(table((*ROWS, ("Onion, Amber Moon", "5", "9", "30", "7"))))


def test_one_measure_heads_no_table() -> None:
    assert not {"0.05", "0.04"} & amounts(table(ROWS, heads=((300, 40, 14, "Pkt."),)))


def test_a_gap_ends_the_table() -> None:
    rows = (*ROWS, *((("", "", "", "", ""),) * 4), ("Page of the annual", "12", "", "", ""))
    assert "0.12" not in amounts(table(rows))
