"""What reads as an advert and what as an article."""

from __future__ import annotations

from adminer.layout.appeal import appeal, is_signed
from adminer.layout.type_lines import TypeLine


def lines(*said: str, heights: tuple[float, ...] = ()) -> list[TypeLine]:
    sizes = heights or (10.0,) * len(said)
    return [
        TypeLine((0, 20.0 * n, 200, 20.0 * n + size), size, text)
        for n, (text, size) in enumerate(zip(said, sizes, strict=True))
    ]


ARTICLE = lines(
    "Bridge to be Painted",
    "The trustees of the township met at",
    "the hall on Monday and let the work",
    "on the lower bridge for the sum of $480",
    "to a man who has been at it before.",
)


def test_an_article_that_tells_a_sum_is_no_advert() -> None:
    assert appeal(ARTICLE) < 0


def test_prices_line_by_line_are_an_advert_in_each_money() -> None:
    for sums in (("9c", "$1.25", "2 for 25¢"), ("4½d.", "12s. 6d.", "2/11"), ("P.Tr. 12", "6½ P.T.", "65 piastres")):
        assert appeal(lines(*(f"Bowls {one}" for one in sums))) > 0


def test_words_of_trade_and_a_firm_that_says_where_it_is_make_an_advert_without_a_price() -> None:
    said = ("Your watch repaired", "Best work, prompt delivery", "Thorne & Daughters, Quarry Lane")
    assert appeal(lines(*said)) > 0
    assert appeal(lines("A watch was found", "near the work on the bridge", "by Thorne, it is said")) < 0


def test_a_firm_that_says_where_it_is_speaks_for_an_advert() -> None:
    assert appeal(lines("Watches mended", "Thorne")) < 0 < appeal(lines("Watches mended", "Thorne, 14 Quarry Street"))


def test_a_name_in_large_type_at_the_foot_speaks_for_an_advert() -> None:
    said = ("Strength and care", "forty friendly years", "Corbelle Bank")
    assert appeal(lines(*said)) < 0 < appeal(lines(*said, heights=(10, 10, 24)))


def test_nothing_is_no_advert() -> None:
    assert appeal([]) < 0


def test_a_firm_is_known_by_its_style_its_street_or_its_telephone_at_either_end() -> None:
    for said in ("Thorne & Sons", "Harkwell Hardware Co.", "14 Quarry St.", "Phone 88", "opposite the depot"):
        assert is_signed(lines(said))
    body = ("Bowls",) * 10
    assert not is_signed(lines(*body, "Thorne & Sons", *body))


def test_what_a_theatre_asks_at_its_door_makes_an_advert() -> None:
    said = ("Cartoon and News", "Adults 40c, children 12c", "Dish night Monday", "a cup to every lady")
    assert appeal(lines("Friday and Saturday, 6:45 and 9", "The Ferry Girl", *said)) > 0


def test_a_round_sum_that_a_sentence_tells_is_no_price() -> None:
    told = ("The winner of the race took a $25", "bond home, and the drive cleared $112", "for no more than $10")
    assert appeal(lines(*told)) < 0
    assert appeal(lines(*(line.replace("$", "Bowls, $") for line in told))) > appeal(lines(*told))
