"""Small parsed pages for the tests of journal and desk, in the invented country of the demo."""

from __future__ import annotations

from decimal import Decimal

from adminer.records import Advert, Block, Box, Clipping, Offer, PageReading, ParsedPage, Price, Region, Word

CLIPPING = "c1ab5bed00000001"


def price(amount: str, x: int, y: int, condition: str = "everyone") -> Price:
    return Price(
        Decimal(amount),
        "USD",
        Box(x, y, 60, 24),
        0.9,
        f"${amount}",
        "dollars_point",
        condition=condition,  # type: ignore[arg-type]  # the tests pass the literals by hand
    )


def offer(number: int, item: str, amount: str, *, y: int, clipping_id: str = CLIPPING, conf: float = 0.8) -> Offer:
    return Offer(
        f"{clipping_id}-a1-o{number}",
        f"{clipping_id}-a1",
        item,
        Box(40, y, 400, 40),
        conf,
        (price(amount, 380, y + 8),),
    )


def page(offers: tuple[Offer, ...], clipping_id: str = CLIPPING, *, height: int = 1200) -> ParsedPage:
    words = tuple(
        Word(text, Box(40 + 90 * n, o.box.y, 80, 20), 16, 0.9, "display", line=i)
        for i, o in enumerate(offers)
        for n, text in enumerate(o.item.split())
    )
    box = Box(20, 20, 560, height - 40)
    advert = Advert(f"{clipping_id}-a1", clipping_id, box, 0.9, offers=offers)
    reading = PageReading(
        clipping_id,
        600,
        height,
        "microfilm_print",
        (Region(box, "advert", 0.9),),
        (Block(box, "text", 16),),
        words,
    )
    clipping = Clipping(clipping_id, f"{clipping_id}.png", clipping_id * 4, 1, 600, height, "microfilm_print")
    return ParsedPage(clipping, reading, (advert,), tuple(advert.advert_id for _ in words))
