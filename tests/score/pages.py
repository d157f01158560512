"""Small made-up pages for the tests of scoring; invented data, no check values."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from adminer.records import Box
from adminer.score.found import FoundPage, FoundPrice
from adminer.score.truth import TruePage

HERE, THERE = Box(10, 10, 40, 20), Box(300, 10, 40, 20)


def price(amount: str, box: Box = HERE, item: str = "", **more: Any) -> FoundPrice:
    return FoundPrice(
        Decimal(amount), more.pop("currency", "USD"), box, 0.9, item, more.pop("text", amount), "bare", **more
    )


def truth(*prices: dict[str, Any], **more: Any) -> TruePage:
    return TruePage.model_validate({"file": "a.png", "prices": [*prices], **more})


def true_price(amount: float, item: str = "", text: str = "", **more: Any) -> dict[str, Any]:
    return {"text_as_printed": text or f"${amount:.2f}", "amount": amount, "currency": "USD", "item_text": item} | more


def page(*prices: FoundPrice, text: str = "", **more: Any) -> FoundPage:
    return FoundPage("a.png", 1, text, prices=prices, **more)
