"""Score everything that is no price: conditions, sets, lines, retailers, towns, dates, adverts on the page."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from datetime import date
from typing import Final

import numpy as np
from scipy.optimize import linear_sum_assignment

from adminer.records import CONDITION_KINDS, Box
from adminer.score.alike import ALIKE, same_name, same_terms, similarity
from adminer.score.found import FoundAdvert, FoundPage, FoundSet, FoundText
from adminer.score.prices import same_place
from adminer.score.tally import Tally, one_to_one
from adminer.score.truth import TrueAdvert, TruePage, TruePrice, TrueSet, TrueText

_DAYS_OF_SALE: Final = frozenset({"validity", "expiry"})  # kinds of printed dates that bind what is offered
REGION_IOU: Final = 0.7  # issue 3: "advert regions on whole pages (IoU 0.7)"


def kinds_not_of(truth: Iterable[TruePage]) -> frozenset[str]:
    """Return our kinds of conditions that the writer of a truth does not sort by: none where all his are ours.

    A writer with names of his own ("credit", "sale_end") who never says "postage" has filed freight under another.
    """
    used = {one.kind for page in truth for one in page.conditions or ()}
    return CONDITION_KINDS - used if used - CONDITION_KINDS else frozenset()


def score_conditions(page: TruePage, found: FoundPage, unused: frozenset[str] = frozenset()) -> Tally:
    """Count printed conditions: the words right, and kind and place where the truth states them.

    One found condition may answer several true ones and the other way round, since a sentence may hold two terms.
    Kinds cannot be compared where a truth sorts a condition under a name that is none of our kinds, or one is found as
    a kind that the truth never uses (`unused`, see kinds_not_of): there the words must agree, the same place is not
    enough. Days of a sale under another name are met by a printed date, which is how they are found. A label ("reg.")
    that the truth states with its price and not in its list is judged there (terms of prices): it is not counted here,
    and one with neither in the truth is wrong.
    """
    got = list({(c.kind, c.text, c.box): c for c in found.conditions if c.kind != "everyone"}.values())
    if page.conditions is None:
        hits = [[same_terms(true, one.text) for one in got] for true in page.offers_with_conditions]
        dated = [False] * len(hits)
    else:
        hits = [[_answers(true, one, unused) for one in got] for true in page.conditions]
        got_dates = [date for date in found.dates if date.kind in _DAYS_OF_SALE]
        dated = [
            true.kind not in CONDITION_KINDS and any(same_terms(true.text, one.text) for one in got_dates)
            for true in page.conditions
        ]
    right = [any(row[j] for row in hits) for j in range(len(got))]
    met = [any(row) or by_date for row, by_date in zip(hits, dated, strict=True)]
    judged = [hit or not _with_its_price(page.prices, one) for hit, one in zip(right, got, strict=True)]
    return Tally(sum(right), sum(judged), sum(met), len(hits))


def _answers(true: TrueText, found: FoundText, unused: frozenset[str]) -> bool:
    same = same_terms(true.text, found.text)
    if true.kind not in CONDITION_KINDS or found.kind in unused:
        return same
    return true.kind == found.kind and (same or _meets(true.box, found.box))


def _with_its_price(prices: tuple[TruePrice, ...], found: FoundText) -> bool:
    """Say whether the truth states the condition of a found label at a price: in its place, else in its words."""
    return any(
        price.condition == found.kind
        and (_meets(price.box, found.box) if price.box else same_terms(price.condition_text or "", found.text))
        for price in prices
    )


def _meets(true: Box | None, found: Box) -> bool:
    return true is not None and same_place(true, found)


def _best_pairs(worth: np.ndarray[tuple[int, int], np.dtype[np.float64]]) -> list[tuple[int, int]]:
    rows, columns = linear_sum_assignment(worth, maximize=True)
    return [(int(i), int(j)) for i, j in zip(rows, columns, strict=True) if worth[i, j] > 0]


def score_sets(page: TruePage, found: FoundPage) -> tuple[Tally, Tally]:
    """Count sets whose stated number is right, and sets whose listed pieces are all right with their counts."""
    true, got = page.sets or (), found.sets
    worth = np.array([[_set_worth(t, f) for f in got] for t in true]).reshape(len(true), len(got))
    pairs = _best_pairs(worth)
    stated = sum(true[i].stated == got[j].stated for i, j in pairs if true[i].stated is not None)
    listed = sum(Counter(true[i].listed) == Counter(got[j].listed) for i, j in pairs if true[i].listed)
    # A found set that no true one answers is wrong for whatever it claims.
    return (
        one_to_one(stated, sum(f.stated is not None for f in got), sum(t.stated is not None for t in true)),
        one_to_one(listed, sum(bool(f.listed) for f in got), sum(bool(t.listed) for t in true)),
    )


def _set_worth(true: TrueSet, found: FoundSet) -> float:
    if not (_meets(true.box, found.box) or similarity(true.text, found.text) >= ALIKE):
        return 0.0
    return 1.0 + (true.stated == found.stated) + (Counter(true.listed) == Counter(found.listed))


def score_lines(page: TruePage, found: FoundPage) -> Tally:
    """Count line names linked on the page to the right authority entry; a name without an entry must stay unlinked."""
    true = {name.line_id for name in page.lines or () if name.line_id}
    got = {name.kind for name in found.lines if name.kind}
    return one_to_one(len(true & got), len(got), len(true))


def pair_adverts(
    true: tuple[TrueAdvert, ...], found: tuple[FoundAdvert, ...], least: float
) -> list[tuple[TrueAdvert, FoundAdvert]]:
    """Pair true and found adverts of a page by intersection over union of at least `least`, as well as can be."""
    worth = np.array([[t.box.iou(f.box) for f in found] for t in true]).reshape(len(true), len(found))
    worth[worth < least] = 0
    return [(true[i], found[j]) for i, j in _best_pairs(worth)]


def score_regions(page: TruePage, found: FoundPage) -> Tally:
    """Count adverts whose region is right to an intersection over union of 0.7."""
    true = page.adverts or ()
    return one_to_one(len(pair_adverts(true, found.adverts, REGION_IOU)), len(found.adverts), len(true))


def score_who_and_where(page: TruePage, found: FoundPage) -> tuple[Tally, Tally]:
    """Count retailers and towns, of each advert where the truth tells adverts apart, else of the page."""
    if page.adverts is None:
        if page.ad_type.startswith("whole"):
            return Tally(), Tally()
        true = [(page.retailer, page.city)]
        names = [f.retailer for f in found.adverts if f.retailer]
        towns = [f.city for f in found.adverts if f.city]
        pairs = [(_best(page.retailer, names), _best(_town(page.city), towns))]
    else:
        matched = {id(t): f for t, f in pair_adverts(page.adverts, found.adverts, 0.01)}
        true = [(t.retailer, t.city) for t in page.adverts]
        pairs = [(f.retailer, f.city) if (f := matched.get(id(t))) else (None, None) for t in page.adverts]
    who = where = Tally()
    for (retailer, city), (name, town) in zip(true, pairs, strict=True):
        who += _one_name(retailer, name, judge_extra=page.adverts is not None)
        where += _one_name(_town(city), town, judge_extra=page.adverts is not None)
    return who, where


def _town(city: str | None) -> str | None:
    return city.split(",")[0] if city else None


def _best(wanted: str | None, names: list[str]) -> str | None:
    if not names:
        return None
    return max(names, key=lambda name: similarity(wanted or "", name))


def _one_name(true: str | None, found: str | None, *, judge_extra: bool) -> Tally:
    if true is None:
        return Tally(0, int(found is not None and judge_extra), 0, 0)
    return one_to_one(int(found is not None and same_name(found, true)), int(found is not None), 1)


def score_dates(page: TruePage, found: FoundPage) -> Tally:
    """Count adverts with the right validity, where the truth has one, and else the printed dates of the page."""
    if page.adverts is not None and any(advert.valid for advert in page.adverts):
        matched = {id(t): f for t, f in pair_adverts(page.adverts, found.adverts, 0.01)}
        tally = Tally()
        for true in page.adverts:
            wanted, got = _bounds(true), matched.get(id(true))
            if page.undated and _span(got) != wanted:
                wanted = None  # its year stands nowhere: not to know it is no miss, to claim a wrong one is an error
            span = _span(got)
            tally += one_to_one(
                int(wanted is not None and wanted == span), int(span is not None), int(wanted is not None)
            )
        return tally
    if page.dates is not None:
        true_forms = {one.edtf for one in page.dates if one.edtf}
        forms = {one.value for one in found.dates if one.value}
        return one_to_one(len(true_forms & forms), len(forms), len(true_forms))
    if page.printed_date and page.date_iso_or_null:
        day = date.fromisoformat(page.date_iso_or_null)
        known = [one for one in found.dates if one.earliest and one.latest]
        hit = any(one.earliest == day == one.latest for one in known)
        return one_to_one(int(hit), int(bool(known)), 1)
    return Tally()


def _span(advert: FoundAdvert | None) -> tuple[date | None, date | None] | None:
    return (advert.valid_from, advert.valid_to) if advert and (advert.valid_from or advert.valid_to) else None


def _bounds(advert: TrueAdvert) -> tuple[date | None, date | None] | None:
    if not advert.valid or not any(advert.valid.values()):
        return None
    return advert.valid.get("from"), advert.valid.get("to")
