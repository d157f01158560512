"""Figures that lost their cent sign: "39", "194" and "58" among cells and numerals that kept theirs.

A worn ¢ is read as a figure ("194", "656") or not at all. Where the other cells of its column, or the other large
numerals of the advert, are cents, the two figures before it are too. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from adminer.parsing.money.amounts import FRACTION, UNIT, Amount, fraction_of, named_fraction
from adminer.parsing.money.no_prices import MONTH
from adminer.parsing.terms.terms import Term
from adminer.parsing.text.item_words import WORD
from adminer.parsing.text.stretches import is_taken
from adminer.parsing.text.text import AdvertText, TextLine
from adminer.records import Box, PriceForm, Word

_CELL: Final = re.compile(r"(?:(?P<q>[2-9])/)?(?P<cents>[1-9]\d)(?P<tail>[01456eftlij<(&]|sc)?[.,]?")
_GLUED: Final = re.compile(r"\S*?[._·…-]{3,}(?=\d\S*$)")  # the label and its leaders read as one word with the cell
_SPLIT_SIGN: Final = re.compile(r" [oOeG]$")  # a worn ¢ read as a letter of its own
_DOLLAR_LOT: Final = re.compile(r"(?P<q>[2-9])/1")  # "3/$1", its sign lost: no fraction, and no date stands so large
_NUMERAL: Final = re.compile(r"(?P<dollars>[1-9])?(?P<cents>\d\d)[.:]?")  # a raised ¢ may leave a point
_UNIT_ONLY: Final = re.compile(rf"[ ,]*(?:{UNIT})?[ .,]*", re.IGNORECASE)
_CLAUSE_END: Final = re.compile(rf"[ ,]*(?:{UNIT})?(?:[.;]|$)", re.IGNORECASE)  # "Without coupon 79. One to a family"
_LEADERS: Final = re.compile(r"(?:[._·…-] ?){2,}$")
_PIASTRES: Final = re.compile(rf"[:.·… ]{{0,3}}(?P<n>\d{{1,4}}(?:[.,]5)?)(?P<frac> ?{FRACTION})?[.,]?")
_WORN_FRACTION: Final = re.compile(r"(?P<whole>\d{1,2})(?:(?P<half>12)|(?P<quarter>14)|(?P<three>34))")
_MUCH: Final = 5  # times the dearest other sum of its column
_HEAD: Final = re.compile(r"P\. ?T(?:r?\.|\b)", re.IGNORECASE)
_FAR: Final = 6.0  # type sizes that a figure stands under one with a sign, beside a price or under a head
_NEXT_ROW: Final = 3.5  # the same from row to row of a column that stands under its sign
_FIRST_WORDS: Final = 2  # a cell that opens its line is followed by a unit at most ("324 doz")
_ODD: Final = (0.55, 1.8)  # the same where small fractions stand beside some figures of a column
_ALIKE: Final = (0.7, 1.43)  # type sizes of cells of one column
_LARGE: Final = 1.8  # body sizes from which a figure alone in its line is a numeral of display type
_FEWEST: Final = 2  # cells or numerals with their sign that must speak
_FEWEST_BARE: Final = 3  # the same for a figure with neither a sign nor leaders before it
_LAST_DAY: Final = 31  # "5/28" may be a day of May
_ENDS: Final = 1.5  # type sizes between the ends of figures that leaders carry to one edge
_TRUST: Final = 0.55
_CENTS: Final = frozenset({"cents_sign", "raised_cent_sign"})
_PRICE_TERMS: Final = frozenset({"cardholder", "without_card", "former", "comparison", "coupon", "everyone"})


@dataclass(frozen=True, slots=True)
class _Cell:
    """Hold one price that kept its sign: its place without the slope of the type, and its type size in pixels."""

    place: Box
    type_px: float


def find_unsigned(advert: AdvertText, amounts: Sequence[Amount], terms: Sequence[Term]) -> list[Amount]:
    """Return the prices whose sign was lost, judged by the prices of the advert that kept theirs."""
    cents = [_cell_of(advert, a) for a in amounts if a.form in _CENTS or _is_lot_in_cents(advert, a)]
    pointed = [_cell_of(advert, a) for a in amounts if _is_pointed(advert, a)]
    whole = [_cell_of(advert, a) for a in amounts if a.currency == "USD" and a.amount > 1 and a.amount % 1]
    labels = {t.end for t in terms if t.kind in _PRICE_TERMS}
    found: list[Amount] = []
    display = [_cell_of(advert, a) for a in amounts if a.currency == "USD"]
    for line in advert.lines:
        at = line.start
        for i, word in enumerate(line.words):
            start, at = at, at + len(word.text) + 1
            end = start + len(word.text)
            if is_taken(start, end, amounts):
                continue
            if len(line.words) == 1 and word.type_px >= _LARGE * advert.body_px:
                found += _numeral(word, start, cents, display)
            elif i or len(line.words) <= _FIRST_WORDS:
                found += _cell(advert, line, word, (start, end), (cents, pointed, whole), labels)
    return found


def _is_lot_in_cents(advert: AdvertText, amount: Amount) -> bool:
    """Say whether an amount is several pieces for cents with their sign ("2 for 75¢")."""
    return amount.form == "multiple" and advert.text[amount.start : amount.end].endswith(("¢", "c"))


def _is_pointed(advert: AdvertText, amount: Amount) -> bool:
    """Say whether an amount has a point and no sign ("1.05", ".33"): a point that opens it is lost in leaders."""
    return amount.currency == "USD" and re.fullmatch(r"\d*\.\d\d", advert.text[amount.start : amount.end]) is not None


def _cell_of(advert: AdvertText, amount: Amount) -> _Cell:
    return _Cell(advert.flat(advert.box_of(amount.start, amount.end)), advert.type_px_of(amount.start, amount.end))


def _numeral(word: Word, start: int, cents: Sequence[_Cell], display: Sequence[_Cell]) -> list[Amount]:
    """Read a figure alone in large type: two figures among numerals in cents, three among prices of any form."""
    lot = _DOLLAR_LOT.fullmatch(word.text)
    if lot is not None and sum(_alike(c.type_px, word.type_px) for c in display) >= _FEWEST:
        end = start + len(word.text)
        return [Amount(start, end, Decimal(1), "USD", "multiple", _TRUST, quantity=Decimal(lot["q"]))]
    m = _NUMERAL.fullmatch(word.text)
    if m is None or (m["dollars"] is None and m["cents"][0] == "0"):
        return []
    others = [c for c in (display if m["dollars"] else cents) if _alike(c.type_px, word.type_px)]
    if len(others) < _FEWEST:
        return []
    form: PriceForm = "raised_cents_bare" if m["dollars"] else "raised_cent_sign"
    return [Amount(start, start + len(word.text), Decimal(word.text.rstrip(".:")) / 100, "USD", form, _TRUST)]


def _cell(
    advert: AdvertText,
    line: TextLine,
    word: Word,
    span: tuple[int, int],
    signed: tuple[Sequence[_Cell], Sequence[_Cell], Sequence[_Cell]],
    labels: set[int],
) -> list[Amount]:
    """Read a figure that ends its line, but for a unit, in a column of cents or right after a label of a price."""
    (start, end), (cents, pointed, whole) = span, signed
    glued = _GLUED.match(word.text)
    start += glued.end() if glued else 0
    m = _CELL.fullmatch(advert.text, start, end)
    if m is None:
        return []
    if m["tail"] is None and MONTH.search(advert.text, line.start, start):
        return []  # "Prices good Mar. 12, 13 and 14"
    if m["tail"] == "0" and start - 1 not in labels:
        return []  # a worn sign, or a round number
    split = _SPLIT_SIGN.fullmatch(advert.text, end, line.end) is not None
    labelled = start - 1 in labels
    ends = labelled and (m[0].endswith(".") or _CLAUSE_END.match(advert.text, end, line.end) is not None)
    if not (split or ends or _UNIT_ONLY.fullmatch(advert.text, end, line.end)):
        return []
    if m["q"] and not m["tail"]:
        alone = len(line.words) == 1 and int(m["cents"]) > _LAST_DAY and len(cents) >= _FEWEST_BARE
        lot = Amount(start, end, Decimal(m["cents"]) / 100, "USD", "multiple", _TRUST, quantity=Decimal(m["q"]))
        return [lot] if alone else []
    alike = [c for c in cents if _alike(c.type_px, word.type_px)]
    place = advert.flat(word.box)
    column = [c for c in alike if _one_column(c.place, place, word.type_px)]
    led = glued is not None or bool(_LEADERS.search(advert.text[line.start : start].rstrip() or ""))
    told = labelled and len(cents) >= _FEWEST
    if m["tail"] or split or ends:
        sure = len(column) >= _FEWEST or told
    else:
        sure = start > line.start and len(column) >= (_FEWEST if led or labelled else _FEWEST_BARE)
        sure = sure or (len(line.words) == 1 and len(column) >= _FEWEST_BARE)
        sure = sure or (led and sum(_ends_alike(c, place, word.type_px) for c in pointed) >= _FEWEST)
    if not sure:
        return []
    over = [c for c in whole if _alike(c.type_px, word.type_px) and _one_column(c.place, place, word.type_px)]
    if m["tail"] == "5" and not m["q"] and (over or len(whole) > len(cents)):
        # dollars and cents that lost their point: sums end in a 5, and a worn sign is any figure
        value = Decimal(m["cents"] + m["tail"]) / 100
        return [Amount(start, end, value, "USD", "raised_cents_bare", _TRUST)]
    form: PriceForm = "multiple" if m["q"] else "cents_sign"
    quantity = Decimal(m["q"] or 1)
    return [Amount(start, end, Decimal(m["cents"]) / 100, "USD", form, _TRUST, quantity=quantity)]


def _alike(one: float, other: float) -> bool:
    return _ALIKE[0] <= one / max(other, 1.0) <= _ALIKE[1]


def _ends_alike(cell: _Cell, place: Box, type_px: float) -> bool:
    return _alike(cell.type_px, type_px) and abs(cell.place.right - place.right) < _ENDS * type_px


def _one_column(one: Box, other: Box, type_px: float) -> bool:
    reach = 0.8 * type_px
    return abs(one.x - other.x) < reach or abs(one.right - other.right) < reach


def find_column_piastres(advert: AdvertText, amounts: Sequence[Amount]) -> list[Amount]:
    """Return figures alone in a column of piastres whose sign is printed once, at its head or over ditto marks.

    Such a figure stands on the row of another price and under one in piastres ("35/- per case or P.T. 170.5" and under
    it "40/6 ,, ,, 197.5"), or on the row of a name, right under the figure before.
    """
    signed = [_cell_of(advert, a) for a in amounts if a.form == "piastres"]
    heads = [line for line in advert.lines if _HEAD.fullmatch(advert.text, line.start, line.end)]
    head_cells = [_Cell(line.flat, line.type_px) for line in heads]
    signed += head_cells
    others = [_cell_of(advert, a) for a in amounts if a.form == "sterling"]
    found: list[Amount] = []
    for line in sorted(advert.lines, key=lambda line: line.flat.y):
        m = _PIASTRES.fullmatch(advert.text, line.start, line.end)
        if m is None or is_taken(line.start, line.end, amounts):
            continue
        over = [line.flat.y - c.place.y for c in signed if _ends_below(c, line)]
        step = min((s for s in over if s > 0), default=_FAR * line.type_px)
        row = any(abs(c.place.centre[1] - line.flat.centre[1]) < 0.7 * line.type_px for c in others)
        near = _FAR if any(_ends_below(head, line) for head in head_cells) else _NEXT_ROW
        named = step < near * line.type_px and _has_label(advert, line, head_cells)
        if (row and step < _FAR * line.type_px) or named:
            column = [
                a.amount for a in (*amounts, *found) if a.form == "piastres" and _ends_below(_cell_of(advert, a), line)
            ]
            value = _piastres(m, max(column, default=Decimal(0)))
            found.append(Amount(line.start, line.end, value, "EGP-piastre", "piastres", _TRUST))
            signed.append(_Cell(line.flat, line.type_px))
    return found


def _piastres(m: re.Match[str], dearest: Decimal) -> Decimal:
    """Return the value of a figure; "812" far over the dearest of its column is 8½, its fraction read as figures."""
    value = Decimal(m["n"].replace(",", ".")) + fraction_of(m["frac"])
    worn = _WORN_FRACTION.fullmatch(m["n"])
    if worn is None or m["frac"] or not 0 < _MUCH * dearest < value:
        return value
    return Decimal(worn["whole"]) + named_fraction(worn)


def _ends_below(cell: _Cell, line: TextLine) -> bool:
    """Say whether a line ends where a cell does; the half beside a figure makes its line as much as half higher."""
    return (
        abs(cell.place.right - line.flat.right) < 2 * line.type_px
        and _ODD[0] <= cell.type_px / max(line.type_px, 1.0) <= _ODD[1]
    )


def _has_label(advert: AdvertText, line: TextLine, heads: Sequence[_Cell]) -> bool:
    """Say whether words stand left of a line, on its row or half a row over or under it, but no other figure.

    A figure of another column with a head of its own does no harm.
    """
    left = [
        other
        for other in advert.lines
        if other.flat.right <= line.flat.x and abs(other.flat.centre[1] - line.flat.centre[1]) < line.type_px
    ]
    return any(WORD.search(advert.printed(other)) for other in left) and not any(
        _PIASTRES.fullmatch(advert.printed(other)) and not any(_ends_below(head, other) for head in heads)
        for other in left
    )
