"""A small invented file, built without pictures: two chains, one line, card prices, a set, a coupon."""

from __future__ import annotations

import random
from collections.abc import Iterator
from datetime import date, timedelta
from decimal import Decimal
from pathlib import Path

from adminer.records import (
    Advert,
    Block,
    Box,
    Clipping,
    Composition,
    Condition,
    ConditionText,
    DateFact,
    Link,
    Note,
    Offer,
    PageReading,
    ParsedPage,
    PieceCount,
    Price,
    Region,
    Word,
)
from adminer.store.load import DatabaseExtras, build_database

CHAINS = (("penhallow", "Penhallow Stores", "Osterby"), ("tidewell", "Tidewell Markets", "Ferncliff"))
PIECES = (("cup", "Cup", 1), ("dinner_plate", "Dinner Plate", 1), ("set:16", "16-Piece Starter Set", 16))
_WHOLE = Box(0, 0, 400, 600)


def price(amount: str, condition: Condition = "everyone", quantity: int = 1, unit: str | None = None) -> Price:
    """Return a printed price."""
    place = Box(200, 100, 60, 24)
    return Price(
        Decimal(amount), "USD", place, 0.9, f"${amount}", "dollars_point", Decimal(quantity), unit, condition, condition
    )


def page(number: int, prices: tuple[Price, ...], *, dated: bool = True, line: bool = True) -> ParsedPage:
    """Return one clipping with one advert and one offer; week `number` from Thursday 13 March 1952."""
    clipping_id = f"{number:016x}"
    retailer_id, retailer, city = CHAINS[number % 2]
    piece, item, pieces = PIECES[number % 3]
    begins = date(1952, 3, 13) + timedelta(weeks=number)
    name = Link("tansy-morn", "Tansy Morn", "TANSY MORN", Box(20, 60, 90, 20), 0.96, "printed so") if line else None
    parts = (PieceCount("cup", 8, "cups"), PieceCount("saucer", 8, "saucers")) if pieces == 16 else ()
    offer = Offer(
        f"{clipping_id}-a1-o1",
        f"{clipping_id}-a1",
        item,
        Box(20, 90, 260, 40),
        0.8 + 0.01 * (number % 10),
        prices,
        piece,
        pieces,
        Composition(16, 8, parts, 16, None, "trade") if parts else None,
        line=name,
        conditions=(ConditionText("limit", "limit one", Box(20, 140, 80, 16), 0.9, "1"),),
        why="item and price stand in one row",
    )
    advert = Advert(
        f"{clipping_id}-a1",
        clipping_id,
        _WHOLE,
        0.9,
        Link(retailer_id, retailer, retailer, Box(20, 10, 200, 40), 0.95, "printed so"),
        city,
        dates=(DateFact("validity", "Thurs. thru Sat.", None, begins, begins, Box(20, 560, 120, 16), 0.9),),
        valid_from=begins if dated else None,
        valid_to=begins + timedelta(days=2) if dated else None,
        dated_by="printed" if dated else None,
        offers=(offer,),
        schedule=((1, "cup"), (2, "saucer")),
    )
    words = tuple(Word(text, Box(20 + 70 * i, 90, 60, 20), 18.0, 0.9, "display") for i, text in enumerate(item.split()))
    reading = PageReading(
        clipping_id, 400, 600, "magazine_page", (Region(_WHOLE, "advert", 0.9),), (Block(_WHOLE, "text", 18.0),), words
    )
    note = Note(f"week-{number:03}.png", "The Osterby Ledger", begins.isoformat() if dated else None, city)
    clipping = Clipping(clipping_id, note.file, clipping_id * 4, 1, 400, 600, "magazine_page", (note,))
    return ParsedPage(clipping, reading, (advert,), tuple(advert.advert_id for _word in words))


def story(pages: int, seed: int = 1952) -> Iterator[ParsedPage]:
    """Yield pages with prices drawn from a seed: with and without card, for everyone, at a coupon, by the dozen."""
    draw = random.Random(seed)
    for number in range(pages):
        cents = draw.randrange(9, 4000)
        with_card = Decimal(cents).scaleb(-2)
        without = Decimal(draw.randrange(cents, 6000)).scaleb(-2)
        kinds: tuple[tuple[Price, ...], ...] = (
            (price(str(with_card), "cardholder"), price(str(without), "without_card")),
            (price(str(with_card)),),
            (price(str(with_card), "coupon"), price(str(without))),
            (price(str(with_card), quantity=3), price(str(without), "former")),
            (),
        )
        yield page(number, draw.choice(kinds), dated=number % 5 != 4, line=number % 7 != 6)


def build(path: Path, pages: int = 60) -> Path:
    """Build a database of the story."""
    lines = [{"line_id": "tansy-morn", "line": "Tansy Morn", "maker_id": "marrowstone"}]
    build_database(path, story(pages), DatabaseExtras({"lines": lines}))
    return path
