"""Labels under a price that make it a payment: "cash down", "a month"."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from adminer.parsing.prices import Found
from adminer.parsing.text import AdvertText, TextLine
from adminer.records import Box, PriceRole

_LABEL_WORDS: Final = 6
_PAYMENT_LABELS: Final[dict[str, PriceRole]] = {
    "down": "down_payment",
    "cash down": "down_payment",
    "down payment": "down_payment",
    "with order": "down_payment",
    "a month": "instalment",
    "per month": "instalment",
    "monthly": "instalment",
    "a week": "instalment",
    "per week": "instalment",
    "weekly": "instalment",
}


def name_payments(advert: AdvertText, prices: list[Found]) -> list[Found]:
    """Give the prices that stand over a label like "cash down" or "a month" the role it names."""
    made = []
    for price in prices:
        role = price.role
        for line in advert.lines if role == "price" else ():
            own = any(other.line == line.number for other in prices)  # then its words speak of that price
            if own or not _is_under(line.flat, price.place, advert.body_px):
                continue
            for place, words in _short_runs(advert, line):
                label = _PAYMENT_LABELS.get(words)
                if label and _is_under(place, price.place, advert.body_px):
                    role = label
        made.append(replace(price, role=role))
    return made


def _short_runs(advert: AdvertText, line: TextLine) -> list[tuple[Box, str]]:
    """Return each word of a line and each two side by side, lower case, with their places."""
    runs = []
    for i, word in enumerate(line.words[:_LABEL_WORDS]):
        for run in (line.words[i : i + 1], line.words[i : i + 2]):
            box = word.box.joined(run[-1].box)
            runs.append((advert.flat(box), " ".join(w.text for w in run).lower().strip(" .,")))
    return runs


def _is_under(label: Box, price: Box, body: float) -> bool:
    gap = label.y - price.bottom
    across = min(label.right, price.right) - max(label.x, price.x)
    return -0.3 * label.h < gap < 7 * body and across > 0.3 * min(label.w, price.w)
