"""Names no authority file knows: where the trade prints them, and what only looks like one (no source)."""

from __future__ import annotations

import pytest

from adminer.names.authority import Authorities, LineEntry, MakerEntry
from adminer.names.proposals import NameSighting, propose
from adminer.records import Box
from tests.parsing.pages import Line, parse


def _names(*lines: Line, kind: str = "line") -> list[str]:
    return [n.name for n in parse(*lines).unknown_names if n.kind == kind]


SAUCER = (60, 400, 14, "Cup and saucer 45¢")


@pytest.mark.parametrize(
    ("lines", "name"),
    [
        (((60, 40, 14, "Decorations: Bryony Wreath, Larch Cone and Pine Shadow"),), "Larch Cone"),
        (((60, 40, 14, "Soup plate — Quince Arbor"),), "Quince Arbor"),
        (((60, 40, 14, "Quince Arbor dinner plate 39¢"),), "Quince Arbor"),
        (((60, 40, 24, "Dunvale"), (60, 80, 14, "26-piece flatware set $9.95")), "Dunvale"),
        (((60, 40, 50, "Quince"), (60, 110, 46, "Arbor"), (60, 170, 14, "made by Undine China Works")), "Quince Arbor"),
        (((60, 40, 14, "32-Piece Dinner Set. Hollyberry. Sprays of leaf"),), "Hollyberry"),
        (((60, 40, 14, "Larch Cone Stoneware, a plate at a time"),), "Larch Cone"),
    ],
)
def test_a_name_is_found_where_the_trade_prints_it(lines: tuple[Line, ...], name: str) -> None:
    assert name in _names(*lines, SAUCER)


def test_the_designs_of_a_trade_list_are_names() -> None:
    found = _names(
        (60, 40, 18, "No."), (160, 40, 18, "Design"), (360, 40, 18, "Size"), (560, 40, 18, "per 100"),
        (60, 80, 16, "2209"), (160, 80, 16, "Quince Bough"), (360, 80, 16, "3 in. spray"), (560, 80, 16, "3.75"),
        (60, 110, 16, "2214"), (160, 110, 16, "Sorrel & Berry"), (360, 110, 16, "2 in. sprig"), (560, 110, 16, "2.10"),
    )  # fmt: skip
    assert found == ["Quince Bough", "Sorrel & Berry"]


@pytest.mark.parametrize(
    "line",
    [
        (60, 40, 40, "Pantry Shelf"),
        (60, 40, 40, "Dairy Case"),
        (60, 40, 40, "Hallam-Reeve"),
        (60, 40, 14, "Tlie pattern is new"),
        (60, 40, 14, "Bavarian china at last"),
        (60, 40, 14, "the “Esker” shape"),
        (60, 40, 14, "fresh from the oven — Chuck Roast"),
    ],
)
def test_what_only_looks_like_a_name_is_none(line: Line) -> None:
    assert _names(line, SAUCER) == []


@pytest.mark.parametrize(
    ("text", "maker"),
    [
        ("by Undine China Works", "Undine China Works"),
        ("now made by the Hallam & Reeve Pottery Co.", "Hallam & Reeve Pottery Co."),
        ("a product of Corbelle Glass Company", "Corbelle Glass Company"),
        ("Marrowstone Pottery", "Marrowstone Pottery"),
    ],
)
def test_an_unknown_maker_is_proposed(text: str, maker: str) -> None:
    assert _names((60, 20, 48, "Quince Arbor"), (60, 80, 16, text), SAUCER, kind="maker") == [maker]


@pytest.mark.parametrize("text", ["by the dozen", "New China Works wonders", "Open by Saturday"])
def test_other_words_after_by_are_no_maker(text: str) -> None:
    assert _names((60, 20, 48, "Quince Arbor"), (60, 80, 16, text), SAUCER, kind="maker") == []


def test_spellings_of_one_maker_are_one_proposal_and_a_known_one_is_none() -> None:
    seen = [
        NameSighting(f"a{i}", name, Box(0, 0, 10, 10), 0.7, "by", "maker")
        for i, name in enumerate(("Undina China Works", "Undine China Works", "Undine China", "Marrowstone Pottery"))
    ]
    known = Authorities(
        lines=(LineEntry(id="undine", name="Undine China Works"),),  # a line of that name is another thing
        makers=(MakerEntry(id="marrowstone", name="Marrowstone Pottery"),),
    )
    assert [(p.kind, len(p.sightings)) for p in propose(seen, known)] == [("maker", 3)]
