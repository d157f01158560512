"""What makes a price a payment: a label under it ("cash down"), or the payment it is told with ("50c and 50c monthly").

Terms stand in pairs, a sum down and a sum a month, after the price they pay: where the word of one is not read, the
other tells what it is.
"""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import pairwise
from typing import Final

from adminer.parsing.prices.prices import Found
from adminer.parsing.text.text import AdvertText, TextLine
from adminer.records import Box, PriceRole

_LABEL_WORDS: Final = 6
PAID_DOWN: Final = ("down", "cash down", "down payment")
BY_TIME: Final = ("a month", "per month", "monthly", "a week", "per week", "weekly")
_PAYMENT_LABELS: Final[dict[str, PriceRole]] = {
    **dict.fromkeys((*PAID_DOWN, "with order"), "down_payment"),
    **dict.fromkeys(BY_TIME, "instalment"),
}
_AND: Final = re.compile(r"[ \n.,]*(?:[a-z]+[ \n,]+)?(?:and|&|then)[ \n]+(?:only |just )?", re.IGNORECASE)
_SENTENCE_END: Final = re.compile(r"[ \n]*[A-Za-z]*[ \n]*(?:[.;]|$)")
_NEAR_WORDS: Final = 6  # between a price and the sum down on it
_LARGER: Final = 4  # times the payment: the price paid
_ALIKE: Final = 4  # times one payment: the other


def name_payments(advert: AdvertText, prices: list[Found]) -> list[Found]:
    """Give the prices that stand over a label like "cash down" or "a month" the role it names."""
    priced = {price.line for price in prices}  # the words of these lines speak of the price in them
    labels: list[tuple[Box, list[tuple[Box, PriceRole]]]] = []
    for line in advert.lines:
        if len(line.words) > _LABEL_WORDS or line.number in priced:
            continue  # a sentence: "Keep it a month"
        runs = _short_runs(advert, line)
        if told := [(at, _PAYMENT_LABELS[words]) for at, words in runs if words in _PAYMENT_LABELS]:
            labels.append((line.flat, told))
    made = []
    for price in prices:
        role = price.role
        for line_at, told in labels if role == "price" else ():
            if _is_under(line_at, price.place, advert.body_px):
                role = next((r for at, r in reversed(told) if _is_under(at, price.place, advert.body_px)), role)
        made.append(replace(price, role=role))
    return _told_by_pairs(advert, made)


def _told_by_pairs(advert: AdvertText, prices: list[Found]) -> list[Found]:
    """Give a price the role that the payment beside it leaves, where both follow a price many times their sum."""
    made = list(prices)
    for i, (one, two) in enumerate(pairwise(prices)):
        if not (_AND.fullmatch(advert.text, one.end, two.start) and _pays(advert, prices[:i], one)):
            continue
        if max(one.amount.amount, two.amount.amount) > _ALIKE * min(one.amount.amount, two.amount.amount):
            continue
        if one.role == "price" and two.role == "instalment":
            made[i] = replace(one, role="down_payment")
        elif one.role == "down_payment" and two.role == "price" and _SENTENCE_END.match(advert.text, two.end):
            made[i + 1] = replace(two, role="instalment")
    return made


def _pays(advert: AdvertText, before: list[Found], payment: Found) -> bool:
    """Say whether a payment follows, within a few words, a price many times its sum."""
    if not before or before[-1].amount.currency != payment.amount.currency:
        return False
    words = len(advert.text[before[-1].end : payment.start].split())
    return words <= _NEAR_WORDS and before[-1].amount.amount >= _LARGER * payment.amount.amount


def _short_runs(advert: AdvertText, line: TextLine) -> list[tuple[Box, str]]:
    """Return each word of a line and each two side by side, lower case, with their places."""
    runs = []
    for i, word in enumerate(line.words):
        for run in (line.words[i : i + 1], line.words[i : i + 2]):
            box = word.box.joined(run[-1].box)
            runs.append((advert.flat(box), " ".join(w.text for w in run).lower().strip(" .,")))
    return runs


def _is_under(label: Box, price: Box, body: float) -> bool:
    gap = label.y - price.bottom
    across = label.across(price)
    return -0.3 * label.h < gap < 7 * body and across > 0.3 * min(label.w, price.w)
