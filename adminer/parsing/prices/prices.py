"""From amounts to prices: which amounts of an advert are prices, of what role, on which terms.

What is no price at all is told by `no_prices`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Final

from adminer.parsing.money.amounts import UNIT, Amount, find_amounts, unit_of
from adminer.parsing.money.foreign import counts_in_piastres, find_foreign, speaks_sterling, sterling_currency
from adminer.parsing.money.likely_halves import restore_halves
from adminer.parsing.money.money_words import with_money_words
from adminer.parsing.money.no_prices import no_prices
from adminer.parsing.money.points import restore_points
from adminer.parsing.money.spoken_sums import find_spoken_sums
from adminer.parsing.money.sterling_columns import read_columns
from adminer.parsing.prices.column_cells import find_column_cells
from adminer.parsing.prices.column_points import restore_column_points
from adminer.parsing.prices.confidence import price_confidence
from adminer.parsing.prices.count_columns import in_count_column
from adminer.parsing.prices.likely_cents import find_likely_cents
from adminer.parsing.prices.likely_dollars import find_split_sums, restore_dollar_signs
from adminer.parsing.prices.measure_columns import read_measure_columns
from adminer.parsing.prices.told_sums import find_told_sums, told_piastres
from adminer.parsing.prices.unsigned import find_column_piastres, find_unsigned
from adminer.parsing.terms.terms import Term
from adminer.parsing.text.stretches import is_taken
from adminer.parsing.text.text import AdvertText
from adminer.records import Box, Condition, PriceRole


@dataclass(frozen=True, slots=True)
class Found:
    """Hold one price of an advert before it has an item: its amount, role, terms and place."""

    amount: Amount
    text: str  # as printed
    role: PriceRole
    condition: Condition
    condition_text: str | None
    start: int  # characters taken up with unit and role words, for cutting the item text
    end: int
    box: Box  # in pixels of the scan
    place: Box  # the same with the slope of the type taken out
    type_px: float
    line: int
    confidence: float


_UNIT_AFTER: Final = re.compile(
    rf",?[ \n]?(?:(?:a|per|the|an|for a|by the|/)[ \n]?)?(?P<unit>{UNIT})(?: of (?:yards|pieces|cans|"
    r"pairs))?(?![\w'’])",
    re.IGNORECASE,
)
_UNIT_BEFORE: Final = re.compile(
    r"(?:(?<=\s)|(?<=^)|(?<=[,.…]))(?:(?:(?:per|a|the) )?(?P<unit>ea(?:ch)?\.?|[l1i]bs?\.?|doz(?:en|\.)?|pair|pkg\.?|"
    r"yd\.?|qt\.?|pt\.?|bunch|can)|per (?P<per>dozen|doz\.?|pair|set|gross|hundred|100|yard)[,.:;]? (?:net )?price)"
    r"[ ,.…:—-]*$",
    re.IGNORECASE,
)
# "Macaroni ..... 4 pkgs. 25c": after leaders, or by itself in its line, a count and a package belong to the price;
# of leaders a reader may leave one point (" .4 pkgs.") or none at all ("Macaroni4 pkgs.")
_COUNT_BEFORE: Final = re.compile(
    r"(?:(?<![^\n])[._·…]? ?|(?<=[¢c] )|[._·…]{2} ?|[._·…] [._·…] ?|(?<= )[._·…]|(?<=[a-z]{3}))(?P<q>\d{1,2})"
    r"(?P<hyphen>-)? ?(?P<unit>pkgs?|bars?|"
    r"[l1Ii|]bs?|cans?|tins?|bchs?|bunches|boxes|btls?|bottles|jars?|qts?|pts?|rolls?|cakes?|doz|heads?|loaves|bags?|prs?)\b\.?"
    r"(?: (?:bag|sack|can|pkg|box|jar)\.?)? *$",
    re.IGNORECASE,
)
_DISPLAY_COUNT: Final = re.compile(r"(?<![^\n])(?P<q>[2-9]|1[0-2]) [a-z]{2,4}\.? $")  # "4 lbs. 19c", the unit misread
_DISPLAY: Final = 1.8  # body sizes

_RANGE: Final = re.compile(r"[.,]?\s*(?:to|and up to|up to|[-–—])\s*", re.IGNORECASE)
_FROM: Final = re.compile(
    r"(?:\bfrom|\bas low as|\bstarting at|\bas little as|\bfrom only|\bprices? from)[ \n:]*$", re.IGNORECASE
)
_UP_AFTER: Final = re.compile(
    r"[ \n,.]*(?:(?:each|per pair|per \w+|pair|doz\.?|a pair)[ \n,]*)?(?:and up(?!\w)|& up|up\b|or more\b|and "
    r"higher|upwards?)",
    re.IGNORECASE,
)
_UP_TO: Final = re.compile(r"(?:\bup to|\bas high as|\bas much as)[ \n:]*$", re.IGNORECASE)
_DOWN_AFTER: Final = re.compile(
    r"[ \n,.]*(?:down\b|cash\b(?![ \n]?(?:(?:and|&) carry|down|in full|price))|deposit|first payment|with order|"
    r"(?:sets|puts|places|brings|delivers|buys)[ \n](?:it|this|these|any|one|your)\b(?![ \n]down))",
    re.IGNORECASE,
)
_DOWN_BEFORE: Final = re.compile(
    r"(?:first payment(?: of)?|down payment(?: of)?|cash[ \n]down|pay only|deposit of|send(?: only| us)?)[ \n:]*$",
    re.IGNORECASE,
)
_PERIOD_AFTER: Final = re.compile(
    r"[ ,.]*\n?(?:a|per|each|every|the|/)[ \n]?(?:w[eo][ea]k|month|wk\.|mo\.)|[ \n,.]*(?:weekly|monthly)\b",
    re.IGNORECASE,
)
_POSTAGE_BEFORE: Final = re.compile(
    r"(?:\bpostage(?: abroad| extra|,| is| of)?|\bpostage and packing|\benclose|\bshipping|\bhandling|"
    r"\bmailing)[ \n:,]*(?:only )?$",
    re.IGNORECASE,
)
_POSTAGE_AFTER: Final = re.compile(
    r"[ \n.,]*(?:for |in |to cover (?:the )?)?(?:postage|mailing|shipping|handling|stamps? (?:for|to)|two-cent|"
    r"packing)",
    re.IGNORECASE,
)
_SAVING_BEFORE: Final = re.compile(
    r"(?:\bsaves?(?: you)?(?: up to)?|\ba saving of|\bsavings? of|\byou save|\bdiscount of)[ \n:]*$", re.IGNORECASE
)
_SAVING_AFTER: Final = re.compile(r"[ \n]*(?:off\b|less than|saved\b|savings?\b|discount)", re.IGNORECASE)
_REFERENCE_BEFORE: Final = re.compile(
    r"(?:\bcapital(?: and surplus)?|\bsurplus|\bdeposits?|\bcapital stock(?: of)?|\breward(?: of)?|\bprizes?(?: "
    r"of)?|\binsured for|\baverage(?: of)?|\bincome of|\bearn(?:ed|ing|s)?|\bsalary(?: of)?|\bfine(?: of)?|"
    r"\bresources(?: of)?|\bbonds?)[ \n:,]*$",
    re.IGNORECASE,
)
_REFERENCE_AFTER: Final = re.compile(
    r"[ \n]*(?:reward|prize|in prizes|in cash prizes|capital|deposits\b|contest|million|a year\b|per annum)",
    re.IGNORECASE,
)
# among shillings and piastres a figure with a cent sign is misread, and one with only a point before it has leaders
_NO_SHILLINGS: Final = frozenset({"bare", "cents_sign", "raised_cent_sign", "fraction"})
_EXTRA: Final = re.compile(r"(?:extra|bonus|(?:[A-Z]\w+ ){0,2}(?:stamps|points))\b", re.IGNORECASE)
_POINT_ONLY: Final = re.compile(r"\.\d\d[½¼¾]?")

# what follows a sum and no count of things: "$1 25 each", "$6 75;"
_SUM_ENDS: Final = re.compile(r"[.;](?![\d\w])|[.,]?[ \n](?:each|apiece|(?:a|the|per) (?:pair|doz|set|yard|piece))\b")


def find_prices(advert: AdvertText, terms: list[Term], *, sterling_page: bool = False) -> list[Found]:
    """Return the prices of an advert, left to right; `sterling_page` says that its page counts in shillings."""
    text = with_money_words(advert.text)
    sterling = speaks_sterling(text, page_does=sterling_page)
    foreign = _foreign(advert, text, sterling=sterling)
    plain = find_amounts(text)
    piastres = told_piastres(text) or counts_in_piastres(text, foreign)
    worn = [] if sterling else find_likely_cents(advert, plain)
    amounts = worn + [
        a
        for a in plain
        if not is_taken(a.start, a.end, (*foreign, *worn))
        and not ((sterling or piastres) and (a.form in _NO_SHILLINGS or _POINT_ONLY.fullmatch(text, a.start, a.end)))
    ]
    amounts = [_settle_spaced(advert, a) for a in amounts]
    amounts = restore_dollar_signs(text, restore_points(text, amounts)) + foreign
    amounts += find_column_piastres(advert, amounts)
    if not sterling:
        amounts += find_spoken_sums(text, amounts)
        amounts += find_told_sums(advert, amounts)
        amounts += find_split_sums(advert, amounts)
        amounts += find_unsigned(advert, amounts, terms)
        amounts = read_measure_columns(advert, amounts)
        amounts += restore_column_points(advert, amounts)
    amounts += find_column_cells(advert, amounts, sterling_currency(text) if sterling else "USD")
    amounts = sorted(restore_halves(text, amounts), key=lambda a: a.start)
    requirements = [(t.start, t.end) for t in terms if t.kind in {"with_purchase", "stamps"}]
    none = no_prices(text, amounts)
    found: list[Found] = []
    for i, amount in enumerate(amounts):
        if i in none or any(s <= amount.start and amount.end <= e for s, e in requirements):
            continue
        after = amounts[i + 1] if i + 1 < len(amounts) else None
        before = amounts[i - 1] if i else None
        price = make_price(advert, amount, before, after)
        if not price.text.isdigit() or not (
            _counts_extra(advert, price) or in_count_column(advert, price.place, price.type_px)
        ):
            found.append(price)
    return found


def _counts_extra(advert: AdvertText, price: Found) -> bool:
    """Say whether a figure without a sign counts what the words at its right give on top: "100 / EXTRA STAMPS"."""
    place, reach = price.place, price.type_px
    return any(
        0 <= other.flat.x - place.right < reach
        and place.y - 0.5 * reach < other.flat.centre[1] < place.bottom
        and _EXTRA.match(advert.printed(other))
        for other in advert.lines
    )


def _foreign(advert: AdvertText, text: str, *, sterling: bool) -> list[Amount]:
    """Return the amounts in piastres, and where the advert counts in them those in shillings, in columns too."""
    found = find_foreign(text, sterling=sterling)
    if not sterling:
        return found
    columns = read_columns(advert, sterling_currency(advert.text))
    taken = [*columns.heads, *((a.start, a.end) for a in columns.amounts)]
    return [f for f in found if not any(f.start < end and start < f.end for start, end in taken)] + list(
        columns.amounts
    )


def _settle_spaced(advert: AdvertText, amount: Amount) -> Amount:
    """Keep the cents of "$7 55" only where they are smaller, raised, or marked so by the reader of the numerals."""
    if not amount.spaced:
        return amount
    words = advert.words_of(amount.start, amount.end)
    first, last = words[0], words[-1]
    raised = last.type_px < 0.8 * first.type_px or last.box.bottom < first.box.bottom - 0.2 * first.box.h
    if raised or last.form == "raised_cents" or first.form == "raised_cents":
        return replace(amount, trust=0.9)
    if _SUM_ENDS.match(advert.text, amount.end):
        return replace(amount, trust=0.6)
    gap = last.box.x - words[-2].box.right if len(words) > 1 else 0
    if gap < 0.6 * first.type_px:
        return replace(amount, trust=0.6)
    return replace(
        amount,
        end=amount.end - 3,
        amount=amount.amount.to_integral_value(rounding="ROUND_FLOOR"),
        form="dollars_whole",
        spaced=False,
        trust=0.8,
    )


def make_price(advert: AdvertText, amount: Amount, before: Amount | None = None, after: Amount | None = None) -> Found:
    """Return the price of an amount with its unit, role and place; the amounts around it tell a range."""
    text = advert.text
    start, end, unit = amount.start, amount.end, amount.unit
    m = _UNIT_AFTER.match(text, end)
    if m and "\n" in m[0] and m.end() < advert.line_at(m.end() - 1).end - 1:
        m = None  # the next line only begins with such a word
    if m and (found := unit_of(m["unit"])):
        unit, end = unit if unit and found == "each" else found, m.end()
    count = _COUNT_BEFORE.search(text, advert.line_at(start).start, start) if amount.quantity == 1 else None
    m = _UNIT_BEFORE.search(text, max(0, start - 24), start) if count is None and end == amount.end else None
    if m and _is_at(advert, (m.start(), m.end()), (amount.start, amount.end)):
        unit = unit or unit_of(m["unit"] or m["per"])
        start = m.start()
    if count is None and amount.quantity == 1 and advert.type_px_of(start, end) > _DISPLAY * advert.body_px:
        large = _DISPLAY_COUNT.search(text, advert.line_at(start).start, start)
        if large is not None:
            amount, start = replace(amount, quantity=Decimal(large["q"]), form="multiple"), large.start("q")
    if count:
        start = count.start("q")
        if count["hyphen"] is None and int(count["q"]) > 1:
            amount = replace(amount, quantity=Decimal(count["q"]), form="multiple")
            unit = unit or unit_of(count["unit"])
    role = _role(text, amount, end, before, after)
    words = advert.words_of(amount.start, amount.end)
    form = next((w.form for w in words if w.form), amount.form) if amount.quantity == 1 else amount.form
    box = advert.box_of(amount.start, amount.end)
    return Found(
        amount=replace(amount, unit=unit, form=form),
        text=" ".join(text[amount.start : amount.end].split()),
        role=role,
        condition="everyone",
        condition_text=None,
        start=start,
        end=end,
        box=box,
        place=advert.flat(box),
        type_px=advert.type_px_of(amount.start, amount.end),
        line=advert.line_at(amount.start).number,
        confidence=price_confidence(amount.trust * advert.confidence_of(amount.start, amount.end), form),
    )


def _is_at(advert: AdvertText, unit: tuple[int, int], price: tuple[int, int]) -> bool:
    """Say whether a unit in the line before a price stands over it or beside it, and not over another column."""
    if advert.line_at(unit[0]).number == advert.line_at(price[0]).number:
        return True
    one, other = (advert.flat(advert.box_of(*span)) for span in (unit, price))
    level = min(one.bottom, other.bottom) - max(one.y, other.y)
    return one.across(other) > 0 or level > 0.5 * min(one.h, other.h)


def _role(text: str, amount: Amount, end: int, before: Amount | None, after: Amount | None) -> PriceRole:
    start = amount.start
    left = max(0, start - 28)
    if after is not None and _RANGE.fullmatch(text, amount.end, after.start):
        return "range_low"
    if before is not None and _RANGE.fullmatch(text, before.end, start):
        return "range_high"
    if _SAVING_BEFORE.search(text, left, start) or _SAVING_AFTER.match(text, amount.end):
        return "saving"
    if _PERIOD_AFTER.match(text, amount.end):
        return "instalment"
    if _DOWN_AFTER.match(text, amount.end):
        return "down_payment"
    told = after is not None and _POSTAGE_BEFORE.search(text, amount.end, after.start) is not None
    if _POSTAGE_BEFORE.search(text, left, start) or (_POSTAGE_AFTER.match(text, amount.end) and not told):
        return "postage"  # in "Price 65c. Postage 3c" the word speaks of the price after it
    if _REFERENCE_BEFORE.search(text, left, start) or _REFERENCE_AFTER.match(text, amount.end):
        return "reference"
    if _DOWN_BEFORE.search(text, left, start):
        return "down_payment"
    if _UP_TO.search(text, left, start):
        return "up_to"
    if _FROM.search(text, left, start) or _UP_AFTER.match(text, amount.end):
        return "from"
    if end != amount.end and _UP_AFTER.match(text, end):
        return "from"
    return "price"
