"""The labels that head a column of prices: "With card" over a dozen figures colours them all."""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.prices.prices import Found
from adminer.parsing.terms.terms import Term
from adminer.parsing.text.text import AdvertText
from adminer.records import Box

DISPLAY: Final = 1.6  # times the body type
_HEAD_WORDS: Final = 3
_HEAD_LINE: Final = 4  # words of a line of a head in two lines
_PROSE_LINE: Final = 7  # words of a line beside those of a term that is a piece of its sentence
_UNDER: Final = 1.5  # body types between a price in display type and the label under it
_ALIKE: Final = (0.6, 1.7)  # type sizes of the prices of one column
_ILL_MEASURED: Final = 2.5  # times the type of its column that one price among its like may seem to have
_EDGE: Final = 0.7  # type sizes between the right edges of figures set under each other
_FREE: Final = re.compile(r"FR[EÉ]{2}[.*]?", re.IGNORECASE)
BEFORE_ONLY: Final = re.compile(
    r"^(?:(?:our )?(?:was|were|formerly|reg|regular|usual|orig)|comp|if perfect|made to|list|worth|would|should|"
    r"retails?|sells?|values? to|values? up|(?:in stores )?you(?:['’]d| would)|retail value of|"
    r"others|(?:other|most) stores|elsewhere|priced|mfr|manufacturer|suggested)",
    re.IGNORECASE,
)


def column_heads(
    advert: AdvertText, prices: list[Found], terms: list[Term], boxes: dict[int, Box]
) -> dict[int, list[int]]:
    """Find the labels that head a column of prices: nearer to the price below than to one above, two or more below.

    A label close under a price in display type is that price's, and a phrase like "you would pay up to" the next one's.
    """
    heads: dict[int, Box] = {}
    for t, box in boxes.items():
        below = [p.place.y - box.bottom for p in prices if p.place.y > box.centre[1] and _in_column(box, p.place)]
        over = [p for p in prices if p.place.centre[1] < box.y and _in_column(box, p.place)]
        above = [box.y - p.place.bottom for p in over]
        if len(terms[t].words.split()) > _HEAD_WORDS and BEFORE_ONLY.match(terms[t].words):
            continue
        if _runs_over(advert, terms[t]):
            continue
        if any(
            p.type_px >= DISPLAY * advert.body_px and box.y - p.place.bottom < _UNDER * advert.body_px for p in over
        ):
            continue
        if len(below) >= 2 and min(below) < min(above, default=1e9) and _is_near(advert, box, min(below)):
            heads[t] = box
    columns: dict[int, list[int]] = {t: [] for t in heads}
    for p, price in enumerate(prices):
        headed = [t for t, box in heads.items() if box.centre[1] < price.place.y and _in_column(box, price.place)]
        if headed:
            nearest = min(
                headed, key=lambda t: (price.place.y - heads[t].y, abs(heads[t].centre[0] - price.place.centre[0]))
            )
            columns[nearest].append(p)
    for p, price in enumerate(prices):
        if not any(p in members for members in columns.values()):
            for t, members in columns.items():
                if members and _ends_with(price, [prices[m] for m in members], heads[t]):
                    members.append(p)
                    break
    whole = {t: _unbroken(prices, members, advert.body_px) for t, members in columns.items() if members}
    return {t: members for t, members in whole.items() if len(members) >= 2}


def _is_near(advert: AdvertText, head: Box, gap: float) -> bool:
    """Say whether the first price under a head is near it, or near the foot of what stands between them as "FREE"."""
    near = 4 * advert.body_px
    return gap < near or gap - _given_free(advert, head) < near


def _given_free(advert: AdvertText, head: Box) -> float:
    """Return how far down under a head its column only says "FREE", in pixels: nought where it begins with a price."""
    foot = head.bottom
    for word in sorted(advert.words, key=lambda w: w.box.y):
        under = advert.flat(word.box)
        if _FREE.fullmatch(word.text) and _in_column(head, under) and 0 < under.y - foot < 4 * advert.body_px:
            foot = under.bottom
    return foot - head.bottom


def _runs_over(advert: AdvertText, term: Term) -> bool:
    """Say whether a term stands in running text: goes on into the next line, or is but a piece of a long one."""
    first, last = advert.line_at(term.start), advert.line_at(term.end - 1)
    if first is not last:
        return max(len(first.words), len(last.words)) > _HEAD_LINE
    return len(first.words) - len(term.words.split()) > _PROSE_LINE


def _unbroken(prices: list[Found], members: list[int], body: float) -> list[int]:
    """Keep the prices of a column down to the first gap of more than six lines or the first of another size of type.

    Two prices side by side are no column; none of theirs is kept.
    """
    ordered = sorted(members, key=lambda p: prices[p].place.y)
    kept = ordered[:1]
    for i, p in enumerate(ordered[1:], 2):
        after = ordered[i] if i < len(ordered) else None
        if shares_row(prices[p].place, prices[kept[-1]].place):
            return kept[:-1]
        alike = _is_of_size(prices[p], prices[ordered[0]])
        near = prices[p].type_px < _ILL_MEASURED * prices[ordered[0]].type_px
        ill_measured = near and after is not None and _is_of_size(prices[after], prices[ordered[0]])
        if prices[p].place.y - prices[kept[-1]].place.bottom > 6 * body or not (alike or ill_measured):
            break
        kept.append(p)
    return kept


def _is_of_size(price: Found, other: Found) -> bool:
    return _ALIKE[0] < price.type_px / max(other.type_px, 1.0) < _ALIKE[1]


def _ends_with(price: Found, members: list[Found], head: Box) -> bool:
    """Say whether a price under a head ends where most figures of its column end, however far from their middle.

    Figures are set to the right edge of a wide column: ".99" stands further from the middle of its head than "12.50".
    """
    alike = [abs(m.place.right - price.place.right) < _EDGE * price.type_px for m in members]
    return price.place.y > head.centre[1] and len(members) > 1 and 2 * sum(alike) > len(alike)


def _in_column(head: Box, price: Box) -> bool:
    return abs(head.centre[0] - price.centre[0]) < 0.6 * max(head.w, price.w)


def shares_row(one: Box, other: Box) -> bool:
    """Say whether two boxes stand in one row: they share more than 0.4 of the lower one's height."""
    return one.beside(other) > 0.4 * min(one.h, other.h)
