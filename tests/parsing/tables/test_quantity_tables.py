"""Price lists by the quantity: the kind of goods stands left of the quantities, over its sorts."""

from __future__ import annotations

from adminer.parsing import parse_page
from adminer.parsing.prices.prices import find_prices
from adminer.parsing.tables.quantity_tables import quantity_rows
from adminer.parsing.text.cells import cells_of
from tests.parsing.pages import NO_NAMES, Line, advert_text, reading_of

HEADS = ("Pkt.", "Oz.", "¼ lb.", "Lb.")
PLACES = (420, 500, 590, 690)


def table(y: int, kind: str, *rows: tuple[str, ...]) -> list[Line]:
    """Return the lines of a kind: its heads, then each row, a name in two lines over its prices."""
    lines: list[Line] = [(20, y, 16, kind), *((x, y, 16, head) for x, head in zip(PLACES, HEADS, strict=True))]
    for name, *cells in rows:
        *above, last = name.split("/")
        for part in (*above, last):
            y += 24
            lines.append((24 if part == name.split("/")[0] else 36, y, 16, part))
        lines += [(x, y, 16, cell) for x, cell in zip(PLACES, cells, strict=False)]
    return lines


CABBAGE = table(
    100,
    "CABBAGE",
    ("Early Hollow. The first to head", "5c", "20c", "60c", "$2.00"),
    ("Stone Ridge. Keeps well, and/ships anywhere", "5c", "18c", "55c", "1.80"),
)
BEET = table(230, "Other Beet—New crop", ("Ember Globe", "5c", "10c", "30c"), ("Long Dusk", "5c", "12c", "35c"))


def test_the_kind_beside_the_quantities_names_the_sorts_under_it() -> None:
    text = advert_text(*CABBAGE, *BEET)
    found, _ = quantity_rows(text, cells_of(text), find_prices(text, []))
    assert [segment.text for segment, _ in found] == [
        "CABBAGE, Early Hollow", "CABBAGE, Stone Ridge", "Beet, Ember Globe", "Beet, Long Dusk"
    ]  # fmt: skip
    assert [len(starts) for _, starts in found] == [4, 4, 3, 3]


def test_an_offer_of_such_a_list_has_the_whole_name_and_all_quantities() -> None:
    (advert,) = parse_page(reading_of([*CABBAGE, *BEET]), NO_NAMES)
    assert [(o.item, len(o.prices)) for o in advert.offers] == [
        ("CABBAGE, Early Hollow", 4), ("CABBAGE, Stone Ridge", 4), ("Beet, Ember Globe", 3), ("Beet, Long Dusk", 3)
    ]  # fmt: skip


def test_under_two_kinds_at_once_the_row_tells_which() -> None:
    text = advert_text(*table(100, "BEET AND CABBAGE", ("Ember Globe beet", "5c", "9c"), ("Dusk cabbage", "5c", "8c")))
    found, _ = quantity_rows(text, cells_of(text), find_prices(text, []))
    assert [segment.text for segment, _ in found] == ["Ember Globe beet", "Dusk cabbage"]


def test_a_line_of_text_after_the_rows_is_none_of_them() -> None:
    plants: list[Line] = [
        (20, 174, 16, "Potted plants ready in May:"),
        (20, 198, 16, "either sort by express only, packed in moss, for 40c per 100"),
    ]
    text = advert_text(*table(100, "BEET", ("Ember Globe", "5c", "9c"), ("Long Dusk", "5c", "8c")), *plants)
    found, _ = quantity_rows(text, cells_of(text), find_prices(text, []))
    assert [segment.text for segment, _ in found] == ["BEET, Ember Globe", "BEET, Long Dusk"]
