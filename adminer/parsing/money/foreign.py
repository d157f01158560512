"""Shillings and pence, new pence, and piastres: amounts that must not be read as dollars.

A slash between small figures is a fraction, a date or "2/25¢" far more often than shillings and pence, so
sterling is looked for only where the advert shows its signs ("/-", "d.", "£") and no dollar or cent sign.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from decimal import Decimal
from typing import Final

from adminer.parsing.money.amounts import (
    FRACTION,
    NUMBER_WORDS,
    Amount,
    find_amounts,
    fraction_of,
    in_pounds,
    number_of,
)
from adminer.parsing.money.decimal_pence import as_new_pence, counts_decimally, decimal_amounts, pence_signs
from adminer.parsing.money.sterling_columns import HEAD
from adminer.parsing.money.sterling_words import WORDS, spelled_amounts
from adminer.parsing.money.worn_sterling import worn_amounts, worn_pounds, worn_shillings
from adminer.parsing.text.stretches import is_taken

_PENCE_SIGN: Final = r"d(?![a-z'’])\.?"
_POUNDS: Final = re.compile(
    r"£ ?(?P<l>\d{1,3}(?:,\d{3})*)(?:(?P<part>[½¼¾])(?!\d)|"
    r"(?: ?[.·:] )(?P<spaced>\d{1,2})(?: ?[.·:] )(?P<dspaced>\d{1,2})(?!\d)|"  # "£9. 2. 6", "£22 . 10 . 0"
    r"(?:[ :/.\-]| \.)(?P<s>\d{1,2})(?:s\.?)?(?:[ :/.\-](?P<d>\d{1,2})(?P<frac>[½¼¾])?(?!\d)d?\.?)?)?",
    re.IGNORECASE,
)
# after one point a figure is the rest of a number, after two, or one that stands alone, leaders
_START: Final = r"(?:(?<![\d/.])|(?<=[.…]{2})|(?<=\s[.·]))"
_SLASH: Final = re.compile(
    rf"{_START}(?P<s>\d{{1,3}}|(?<!\d )[1-9] 0) ?/ ?"
    rf"(?:(?P<d>1[01]|\d)(?:(?P<frac> ?[½¼¾])|(?P<worn>%|[Vl](?![A-Za-z])))?(?![\d/])|(?P<dash>[-–—=]))"
)  # "3/10 3/4" are two sums: a fraction of pence is set small
# "47/-" in worn type: the stroke read as a 1 or a bracket, the dash or the stroke lost
_WORN_SHILLINGS: Final = re.compile(r"(?<!\S)(?P<s>\d{1,2})(?:[1Il|)\]}][-–—]|[-–—]|/)(?=[ \n.,]|$)")
_FEW_SIGNS: Final = 2  # prices with "/-" that must be read well before a worn one is believed
_WORN_TRUST: Final = 0.5
_SHILLINGS_TO_POUND: Final = 20
_SPELLED_TRUST: Final = 0.8
_SHILLINGS: Final = re.compile(
    rf"{_START}(?P<s>\d{{1,3}}) ?s[.,] ?(?:(?P<d>1[01]|\d)(?:(?P<frac> ?{FRACTION})?(?P<worn>%|(?<=½)[iIl|])?) ?d\.)?"
)
_PENCE: Final = re.compile(
    # a half read as a percent sign, or its stroke alone left: no pence are a share or shillings
    rf"{_START}(?<!\d[A-Za-z])(?P<d>1[01]|\d)(?:(?P<frac> ?{FRACTION})|(?P<worn>%|/\.?(?=d)))? ?{_PENCE_SIGN}|"
    rf"(?<![\d/.\w])(?P<only>[½¼¾]) ?{_PENCE_SIGN}",
    re.IGNORECASE,
)
_STERLING_SIGNS: Final = re.compile(r"£ ?\d|\d ?/ ?[-–—](?!\d)|\d[½¼¾%]? ?d\.|\b\d{1,2} ?s\. ?\d|\d[½¼¾]d\b|\d{1,2}d\b")
_SLASH_SIGNS: Final = re.compile(r"(?<![\d/])\d{1,3}/(?:\d|1[01])(?![\d/])")
_DOLLAR_SIGNS: Final = re.compile(r"\$ ?\.?\d|\d ?¢|\d ?(?:c|cts?|cents)\b\.?", re.IGNORECASE)
_DECIMAL: Final = re.compile(r"\d?\.\d\d(?!\d)")
_FRACTION_SIGN: Final = re.compile(r"[1357]/(?:2|4|8)|[12]/3")
_FEW_SUMS: Final = 3
_AUSTRALIAN: Final = re.compile(
    r"\b(?:Australia|N\.? ?S\.? ?W|New South Wales|Sydney|Melbourne|Brisbane|Adelaide|Perth|Hobart|Victoria|"
    r"Queensland|Tasmania)\b"
)

_NUMBER: Final = r"[1-9][Oo](?![A-Za-z])|\d{1,4}(?:[.,]\d)?"  # the nought of "20" read as an O
_PART: Final = rf" ?{FRACTION}|[V%](?![A-Za-z])"  # a worn half read as a V or a percent sign
_FIGURE: Final = rf"(?:{_NUMBER})(?:{_PART})?"
_PT: Final = r"(?:P ?\. ?['’]?T(?: ?\.|r?\.)?|PTs?\.?|P\.? T[.:]|P[,;:] ?T[.,]?|P\.T:)"
_LINK: Final = r"\s?(?:[,.;¢]\s?)?(?:(?:and|&|or|to)\s?)?"  # what stands between the figures of a list
_PIASTRES_AFTER: Final = re.compile(
    # a sign at the head of the next line belongs to the figure behind it there
    rf"(?:(?<![\d.])|(?<=\s\.))(?P<list>{_FIGURE}(?:(?!\d){_LINK}(?<!\d){_FIGURE}){{0,6}})"
    rf"(?: ?[.-]?(?: ?{_PT}|\n{_PT}(?! ?\.? ?\d))(?![A-Za-z])|\s?[.-]?piast(?:er|re)s?\b)",
    re.IGNORECASE,
)
_PIASTRES_BEFORE: Final = re.compile(
    rf"(?<![A-Za-z]){_PT} ?(?P<list>{_FIGURE}(?:(?:, ?{_FIGURE})*,? (?:and|or|&) {_FIGURE}"
    r"(?= ?(?:[,;:\n]|\.(?! ?[A-Z\d]\b))))?)(?![\d%])",
    re.IGNORECASE,
)
_PIASTRES_SPELLED: Final = re.compile(
    rf"(?<!-)\b(?!dozen)(?P<number>{'|'.join(NUMBER_WORDS)})[ \n](?:piast(?:er|re)s?\b|{_PT}(?![A-Za-z]))",
    re.IGNORECASE,
)
_EGYPTIAN_POUNDS: Final = re.compile(r"(?<![A-Za-z])(?:L\. ?E\.|£ ?E\.?) ?(?P<pounds>\d{1,3}(?:[.,]\d{1,3})?)(?![\d/])")
# the P worn to a 2 or an F, where the advert has a whole P.T. elsewhere
_PIASTRES_WORN: Final = re.compile(rf"(?<!\S)(?:[2FRB]\. ?T\.|P\.(?= ?\d)) ?(?P<list>{_FIGURE})(?![\d%])")
_WHOLE_PT: Final = re.compile(rf"(?<![A-Za-z]){_PT}(?![A-Za-z])")
_PINT: Final = re.compile(r"(?<![A-Za-z])pt", re.IGNORECASE)  # "2 PT. BOTTLE 19c" where the money is dollars
_FIGURE_RE: Final = re.compile(rf"(?P<n>{_NUMBER})(?P<frac>{_PART})?")


def speaks_sterling(text: str, *, page_does: bool = False) -> bool:
    """Say whether an advert's text counts in shillings and pence rather than dollars.

    An advert with no sign of either does where its slashes part no fractions: several of them, or one on a page whose
    other adverts count in shillings.
    """
    signs = sum(len(pattern.findall(text)) for pattern in (_STERLING_SIGNS, HEAD, WORDS))
    signs += pence_signs(text) if counts_decimally(text) else 0
    slashes = len(_SLASH_SIGNS.findall(text))
    dollars = len(_DOLLAR_SIGNS.findall(text))
    if signs > 0:
        return signs + slashes / 2 > dollars
    if dollars or _DECIMAL.search(text):
        return False
    sums = sum(_FRACTION_SIGN.fullmatch(m[0]) is None for m in _SLASH_SIGNS.finditer(text))
    return sums >= (1 if page_does else _FEW_SUMS)


def find_foreign(text: str, *, sterling: bool) -> list[Amount]:
    """Return piastre amounts, and sterling ones where the advert counts in them, left to right."""
    found: list[Amount] = []
    for amount in _candidates(text, sterling=sterling):
        if not is_taken(amount.start, amount.end, found):
            found.append(amount)
    return sorted(found, key=lambda a: a.start)


def counts_in_piastres(text: str, foreign: Sequence[Amount]) -> bool:
    """Say whether an advert counts in piastres and shows no dollar or cent sign; given are its amounts in others."""
    several = sum(a.currency == "EGP-piastre" for a in foreign) >= _FEW_SIGNS
    return several and _DOLLAR_SIGNS.search(text) is None


def sterling_currency(text: str) -> str:
    """Return AUP where the text names an Australian place, else GBP."""
    return "AUP" if _AUSTRALIAN.search(text) else "GBP"


def _candidates(text: str, *, sterling: bool) -> Iterator[Amount]:
    dollars = _DOLLAR_SIGNS.search(text) is not None
    for pattern in (_PIASTRES_AFTER, _PIASTRES_BEFORE):
        for m in pattern.finditer(text):
            if not (dollars and _PINT.search(m[0])):
                yield from _piastre_list(m)
    for m in _PIASTRES_SPELLED.finditer(text):
        yield Amount(m.start(), m.end(), Decimal(number_of(m["number"])), "EGP-piastre", "words", _SPELLED_TRUST)
    for m in _EGYPTIAN_POUNDS.finditer(text):
        piastres = Decimal(m["pounds"].replace(",", ".")) * 100
        yield Amount(m.start(), m.end(), piastres, "EGP-piastre", "piastres", _SPELLED_TRUST)
    if _WHOLE_PT.search(text):
        for m in _PIASTRES_WORN.finditer(text):
            yield from (replace(amount, trust=_WORN_TRUST) for amount in _piastre_list(m))
    if not sterling:
        return
    currency = sterling_currency(text)
    decimal = counts_decimally(text)
    if decimal:
        yield from decimal_amounts(text, currency)
    yield from worn_pounds(text, currency)
    for m in _POUNDS.finditer(text):
        if int(m["s"] or 0) >= _SHILLINGS_TO_POUND:
            continue
        pounds = Decimal(m["l"].replace(",", "")) + fraction_of(m["part"])
        yield _sterling(m, pounds, m["s"] or m["spaced"], m["d"] or m["dspaced"], fraction_of(m["frac"]), currency)
    for m in _SLASH.finditer(text):
        if m["dash"] is None and int(m["s"]) == 0:
            continue
        part = "½" if m["worn"] else m["frac"]
        amount = _sterling(m, Decimal(0), m["s"].replace(" ", ""), m["d"], fraction_of(part), currency)
        yield replace(amount, trust=_WORN_TRUST) if m["worn"] else amount
    if sum(m["dash"] is not None for m in _SLASH.finditer(text)) >= _FEW_SIGNS:
        for m in _WORN_SHILLINGS.finditer(text):
            yield replace(_sterling(m, Decimal(0), m["s"], None, Decimal(0), currency), trust=_WORN_TRUST)
    for m in _SHILLINGS.finditer(text):
        yield _sterling(m, Decimal(0), m["s"], m["d"], fraction_of("½" if m["worn"] else m["frac"]), currency)
    yield from worn_shillings(text, currency)
    for m in _PENCE.finditer(text):
        part = "½" if m["worn"] else m["frac"] or m["only"]
        pence = _sterling(m, Decimal(0), None, m["d"], fraction_of(part), currency)
        yield replace(pence, trust=_WORN_TRUST) if m["worn"] else pence
    yield from spelled_amounts(text, currency)
    yield from worn_amounts(text, currency)
    if decimal:
        yield from as_new_pence(find_amounts(text), currency)


def _sterling(
    m: re.Match[str], pounds: Decimal, shillings: str | None, pence: str | None, part: Decimal, currency: str
) -> Amount:
    """Turn pounds, shillings and pence into pounds: 20 shillings to the pound, 12 pence to the shilling."""
    total = pounds + Decimal(shillings or 0) / 20 + (Decimal(pence or 0) + part) / 240
    return Amount(m.start(), m.end(), in_pounds(total), currency, "sterling", 0.85)


def _piastre_list(m: re.Match[str]) -> Iterator[Amount]:
    """Yield every figure of "9, 18, 25, 30 P.T."; "7.10 and 11" is a list whose comma was read as a point."""
    base = m.start("list")
    listed = m["list"]
    if "," in listed or " and " in listed or "&" in listed:
        listed = re.sub(r"(?<=\d)\.(?=\d)", ",", listed)
        listed = re.sub(r"(?<=\d),(?=\d)", ";", listed)
    figures = list(_FIGURE_RE.finditer(listed))
    for i, f in enumerate(figures):
        last = i == len(figures) - 1
        value = Decimal(re.sub("[Oo]", "0", f["n"]).replace(",", "."))
        value += fraction_of("½" if f["frac"] in {"V", "%"} else f["frac"])
        start = m.start() if i == 0 else base + f.start()
        end = m.end() if last else base + f.end()
        yield Amount(start, end, value, "EGP-piastre", "piastres", 0.85, listed=not last)
