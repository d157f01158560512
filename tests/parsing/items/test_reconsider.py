"""Choices of an item weighed again: which texts may be weighed, what speaks for them, and what outweighs. Invented."""

from __future__ import annotations

import pytest

from adminer.parsing import assemble
from adminer.parsing.items import reconsider
from adminer.parsing.items.custom import Custom, traits_by_custom
from adminer.parsing.items.reconsider import AGAIN, Choice, choices_of, item_weights, reconsidered
from adminer.parsing.items.traits import case_of, together, weigh
from adminer.records import Advert
from tests.parsing.pages import Line, parse

STACK: list[Line] = [
    (20, 20, 18, "Whatnot Shelves"),
    (20, 50, 12, "Ready for your brush."),
    (20, 70, 14, "$4.45"),
    (20, 130, 18, "Corner Cupboard"),
    (20, 160, 12, "Ready for your brush."),
    (20, 180, 14, "$9.45"),
]


def items(advert: Advert) -> dict[str, str]:
    return {p.text: o.item for o in advert.offers for p in o.prices}


def whys(advert: Advert) -> dict[str, str]:
    return {p.text: o.why for o in advert.offers for p in o.prices}


@pytest.fixture
def seen(monkeypatch: pytest.MonkeyPatch) -> dict[str, dict[str, Choice]]:
    """Note what may be chosen for each price as an advert is parsed, by the text's first words."""
    noted: dict[str, dict[str, Choice]] = {}

    def note(advert, groups, pairings, segments, costs, rules):  # type: ignore[no-untyped-def]
        for g, choices in choices_of(advert, groups, pairings, segments, costs, rules).items():
            chosen = pairings[g].segment
            texts = [segments[c.text] if c.text is not None else chosen for c in choices]
            noted[groups[g][0].text] = {s.text if s else "": c for s, c in zip(texts, choices, strict=True)}
        return reconsidered(advert, groups, pairings, segments, costs, rules)

    monkeypatch.setattr(assemble, "reconsidered", note)
    return noted


def test_a_text_is_chosen_for_which_more_speaks(monkeypatch: pytest.MonkeyPatch) -> None:
    was = items(parse(*STACK))
    assert was["$9.45"] == "Corner Cupboard"
    monkeypatch.setattr(reconsider, "item_weights", lambda: {"right before the price": 0.0, "set in front": 5.0})
    advert = parse(*STACK)
    assert items(advert)["$9.45"] == "Whatnot Shelves Ready for your brush"  # under its title
    assert whys(advert)["$9.45"].startswith(AGAIN)


def test_what_the_rules_chose_stays_where_little_more_speaks_for_another(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(reconsider, "item_weights", lambda: {"set in front": 0.5})
    assert items(parse(*STACK))["$9.45"] == "Corner Cupboard"


def test_the_texts_since_the_price_before_and_the_one_before_it_are_weighed(seen: dict[str, dict[str, Choice]]) -> None:
    parse(*STACK)
    assert {"Corner Cupboard", "Ready for your brush"} <= set(seen["$9.45"])
    assert seen["$9.45"]["Corner Cupboard"].text is None
    assert seen["$9.45"]["Corner Cupboard"].traits["first since"]
    assert "first since" not in seen["$4.45"]["Corner Cupboard"].traits


def test_a_long_text_is_weighed_only_where_a_rule_chose_it(seen: dict[str, dict[str, Choice]]) -> None:
    told = "Turned oak posts and five broad waxed shelves with brass corners and castors throughout"
    parse((20, 20, 14, told), (20, 80, 14, "Reading Lamp"), (20, 130, 30, "$4.45"))
    assert any("Reading Lamp" in text for text in seen["$4.45"])
    assert not any(text.startswith("Turned oak") for text in seen["$4.45"])


def test_how_the_others_are_set_speaks_for_a_text_set_alike() -> None:
    others = [Custom("before, over", 18.0, "capitals", True)] * 3 + [Custom("before, left", 12.0, "front", True)]
    alike = traits_by_custom(Custom("before, over", 18.5, "capitals", True), others)
    other = traits_by_custom(Custom("after, under", 12.0, "small", True), others)
    assert alike["share set so"] == alike["share that stand so"] == 0.75
    assert other["share set so"] == other["share that stand so"] == 0.0
    assert alike["set as others"] > other["set as others"]
    assert "no custom" in traits_by_custom(others[0], others[:1])


def test_the_weights_learned_follow_the_custom_of_an_advert() -> None:
    weights = item_weights()
    assert weights["set as others"] > 0
    assert weights["cost over least"] < 0
    assert weights["chosen"] > 0


@pytest.mark.parametrize(
    ("text", "case"),
    [
        ("GARDEN HOSE", "capitals"),
        ("Garden Hose", "words"),
        ("Garden hose of rubber", "front"),
        ("hose", "small"),
        ("14 x 20", "figures"),
    ],
)
def test_how_a_text_is_set(text: str, case: str) -> None:
    if case == "figures":
        text = text.replace("x", "×")
    assert case_of(text) == case


def test_traits_that_say_more_together_are_named_together() -> None:
    made = together({"goods": 1, "first since": 1, "chosen": 1}, few=True)
    assert made["goods & first since"] == 1
    assert made["chosen, of few offers"] == 1
    assert weigh(made, {"goods & first since": 2.0, "chosen": 1.0, "never seen": 9.0}) == 3.0
    assert "chosen, of few offers" not in together({"chosen": 1}, few=False)


def test_the_heading_that_a_size_has_already_stands_for_nothing_more(seen: dict[str, dict[str, Choice]]) -> None:
    advert = parse((20, 20, 18, "Garden Hose"), (20, 50, 12, "25 feet, $2.00"), (20, 70, 12, "50 feet, $3.75"))
    assert items(advert)["$3.75"].startswith("Garden Hose")
    assert "Garden Hose" not in seen["$3.75"]


@pytest.mark.parametrize(
    "text", ["Try our 5c toilet papers", "Library table of oak, was $9.00. While they last they go for $6.75."]
)
def test_what_grammar_decides_is_not_weighed(text: str, seen: dict[str, dict[str, Choice]]) -> None:
    parse((20, 20, 14, "Step in and see the new goods"), (20, 42, 14, text))
    assert not {"5c", "$6.75"} & set(seen)


def test_a_text_before_a_bare_size_names_what_it_is_a_size_of(monkeypatch: pytest.MonkeyPatch) -> None:
    lines: list[Line] = [
        (60, 20, 16, "MOORSIDE PLUMS"),
        (64, 44, 13, "Whole or halved, heavy syrup"),
        (60, 70, 26, "No. 2½ cans"),
        (60, 110, 60, "89¢"),
    ]
    monkeypatch.setattr(reconsider, "item_weights", lambda: {"set in capitals": 9.0})
    assert items(parse(*lines))["89¢"] == "MOORSIDE PLUMS No. 2½ cans"


def test_the_article_that_an_advert_is_about_is_not_weighed(seen: dict[str, dict[str, Choice]]) -> None:
    lines: list[Line] = [
        (20, 20, 44, "Lindow Refrigerator"),
        (20, 100, 14, "Nobody who has tried it denies that it will keep"),
        (20, 118, 14, "food without ice. It is most thorough."),
        (60, 300, 14, "shelves slide out"),
        (60, 330, 14, "36 x 20 x 44"),
        (60, 360, 14, "Price $31"),
    ]
    assert items(parse(*lines))["$31"] == "Lindow Refrigerator"
    assert "$31" not in seen
