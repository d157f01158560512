"""The whole way from the reading of a page to its adverts with their offers, on one screen."""

from __future__ import annotations

from datetime import date
from functools import lru_cache
from itertools import pairwise
from typing import Final

import numpy as np

from adminer.names.authority import Authorities
from adminer.names.repairs import repair_words
from adminer.parsing.conditions.dates import PageDating, date_page, ends_of_coupons, find_dates, validity_of
from adminer.parsing.conditions.statements import clause_around, condition_texts, without_terms
from adminer.parsing.conditions.trade_clauses import find_clauses, without_sums
from adminer.parsing.house.house import find_house
from adminer.parsing.house.page_towns import towns_of_head
from adminer.parsing.items.asides import without_asides
from adminer.parsing.items.assign import pair_items
from adminer.parsing.items.catalogue import order_marks, weight_columns
from adminer.parsing.items.costs import costs_of
from adminer.parsing.items.leaning import with_goods_before
from adminer.parsing.items.reconsider import reconsidered
from adminer.parsing.items.subjects import with_subjects
from adminer.parsing.items.titles import with_titles
from adminer.parsing.items.topic import with_topic
from adminer.parsing.money.foreign import speaks_sterling
from adminer.parsing.money.shilling_columns import join_shilling_columns
from adminer.parsing.offers.groups import group_prices
from adminer.parsing.offers.offers import known_bonus, make_offers
from adminer.parsing.offers.unknown import find_unknown_names
from adminer.parsing.offers.unknown_makers import find_unknown_makers
from adminer.parsing.prices.bare_heads import find_bare_heads
from adminer.parsing.prices.colour import colour_prices
from adminer.parsing.prices.payment_columns import read_payment_columns
from adminer.parsing.prices.payments import name_payments
from adminer.parsing.prices.prices import Found, find_prices
from adminer.parsing.segments.items import cut_segments
from adminer.parsing.segments.postage import with_postage
from adminer.parsing.sets.listings import find_listings, named_pieces
from adminer.parsing.sets.sets import join_sets, tell_goods
from adminer.parsing.tables.price_lists import read_price_list
from adminer.parsing.tables.programme import tell_features
from adminer.parsing.tables.schedule import find_schedule, spans_without_prices
from adminer.parsing.tables.thresholds import without_thresholds
from adminer.parsing.terms.pipeline import Grammar, build_grammar, terms_of
from adminer.parsing.terms.terms import Term, find_labels, find_terms
from adminer.parsing.text.cells import cells_of
from adminer.parsing.text.regions import words_by_region
from adminer.parsing.text.text import AdvertText, text_of
from adminer.records import Advert, Box, Note, PageReading, Region

_LABEL_WORDS: Final = 5
_ONE_SIZE: Final = 1.7  # between lines of very different type no term runs on
_WRAPPED_WORDS: Final = 4
_SAME_TYPE: Final = 1.34
_LEADING: Final = 3.0  # capital heights from line to line of one text


class _Key:
    """Compare authorities by identity, so that the pipeline is built once for them."""

    def __init__(self, authorities: Authorities) -> None:
        self.authorities = authorities

    def __hash__(self) -> int:
        return id(self.authorities)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Key) and other.authorities is self.authorities


@lru_cache(maxsize=4)
def _grammar(key: _Key) -> Grammar:
    return build_grammar(key.authorities)


def parse_page(reading: PageReading, authorities: Authorities, notes: tuple[Note, ...] = ()) -> tuple[Advert, ...]:
    """Read the adverts of a page from its words: who offers what at which price on which terms, and when.

    Pure: the same reading, authority files and notes give the same adverts. Boxes are in pixels of the scan.
    """
    grammar = _grammar(_Key(authorities))
    reading = repair_words(reading, authorities.repairs)
    parted = words_by_region(reading)
    regions = reading.regions or (Region(Box(0, 0, reading.width, reading.height), "advert", 0.5),)
    texts = {i: text_of(join_shilling_columns(parted.get(i, ()))) for i in range(len(regions))}
    dating = date_page(notes, [(region, texts[i]) for i, region in enumerate(regions)], reading.height)
    towns = frozenset(note.city for note in notes if note.city)
    of_page = towns_of_head(texts.values(), reading.height) if len(regions) > 1 else frozenset()
    sterling = any(speaks_sterling(text.text) for text in texts.values())
    adverts: list[Advert] = []
    for i, region in enumerate(regions):
        if not texts[i].words or (region.kind != "advert" and len(regions) > 1):
            continue
        advert_id = f"{reading.clipping_id}-a{len(adverts) + 1}"
        adverts.append(_parse_advert(grammar, reading, region, texts[i], advert_id, dating, (towns, of_page), sterling))
    return tuple(adverts)


def _is_whole_clause(text: AdvertText, term: Term) -> bool:
    """Say whether a term is most of the clause it stands in, so that the clause names no item."""
    start, end = clause_around(text, term.start, term.end)
    return term.end - term.start > 0.5 * (end - start)


def _is_coupon(prices: list[Found]) -> bool:
    """Say whether an advert is a coupon and nothing else: every price is the coupon's or the one without it."""
    return any(p.condition == "coupon" for p in prices) and all(
        p.condition == "coupon" or "without" in (p.condition_text or "").lower() for p in prices
    )


def _years(
    valid_from: date | None, valid_to: date | None, reference: tuple[date, date] | None
) -> tuple[int | None, int | None]:
    """Return the earliest and latest year the advert may be of, by its printed days, else by its paper."""
    first = valid_from or valid_to or (reference[0] if reference else None)
    last = valid_to or valid_from or (reference[1] if reference else None)
    return first.year if first else None, last.year if last else None


def _with_wrapped(text: AdvertText, found: list[Term]) -> list[Term]:
    """Add terms broken over lines that no sentence seems to join ("FREIGHT / PAID", "on receipt of HALF / CASH").

    One that holds a term of its kind already found is the whole of it; any other must touch none.
    """
    kept = list(found)
    unbroken = _unbroken(text)
    if unbroken == text.joined:
        return kept
    for term in find_terms(unbroken):
        if "\n" not in text.joined[term.start : term.end]:
            continue
        touched = [f for f in kept if term.start < f.end and f.start < term.end]
        if all(f.kind == term.kind and term.start <= f.start and f.scope == "offer" for f in touched):
            kept = [f for f in kept if f not in touched] + [term]
    return sorted(kept, key=lambda t: t.start)


def _unbroken(text: AdvertText) -> str:
    """Return the text with a space for the newline between short lines and between lines of one column and type."""
    characters = list(text.joined)
    for above, below in pairwise(text.lines):
        ratio = above.type_px / max(below.type_px, 1.0)
        short = len(above.words) <= _WRAPPED_WORDS and len(below.words) <= _WRAPPED_WORDS
        short = short and 1 / _ONE_SIZE < ratio < _ONE_SIZE
        alike = 0.75 < ratio < _SAME_TYPE
        step = below.flat.centre[1] - above.flat.centre[1]
        if short or (alike and above.block == below.block and 0 < step < _LEADING * above.type_px):
            characters[above.end] = " "
    return "".join(characters)


def _short_lines(text: AdvertText) -> list[tuple[int, int, str]]:
    """Return short lines, and each two under each other in one narrow column, as they may hold a label."""
    found = [(line.start, line.end, text.printed(line)) for line in text.lines]
    for one, two in pairwise(text.lines):
        if two.flat.y >= one.flat.centre[1] and one.flat.across(two.flat) > 0:
            found.append((one.start, two.end, text.text[one.start : two.end].replace("\n", " ")))
    for one, two, three in zip(text.lines, text.lines[1:], text.lines[2:], strict=False):
        if (
            one.flat.y < two.flat.y < three.flat.y
            and len(one.words) + len(two.words) + len(three.words) <= _LABEL_WORDS
        ):
            found.append((one.start, three.end, text.text[one.start : three.end].replace("\n", " ")))
    return found


def _parse_advert(
    grammar: Grammar,
    reading: PageReading,
    region: Region,
    text: AdvertText,
    advert_id: str,
    dating: PageDating,
    towns: tuple[frozenset[str], frozenset[str]],
    sterling_page: bool,
) -> Advert:
    doc = grammar.read(text.joined)
    terms = _with_wrapped(text, terms_of(doc))
    terms = sorted(terms + find_labels(_short_lines(text), terms), key=lambda t: t.start)
    cells = cells_of(text)
    prices = without_thresholds(text, find_prices(text, terms, sterling_page=sterling_page), cells)
    prices = name_payments(text, prices)
    prices = read_payment_columns(text, prices)
    clauses = find_clauses(text, terms, prices)
    said = len(terms)  # a bare head colours its prices and is no condition by itself
    terms += find_bare_heads(text, prices, terms)
    prices, used = colour_prices(text, prices, terms)
    weights = weight_columns(text)
    table, prices = read_price_list(text, prices, cells, grammar.proper, weights)
    schedule = find_schedule(text, grammar.piece_names)
    prices = tell_features(text, schedule, prices) if schedule else prices
    groups = group_prices(text, prices, reading.rules)
    groups = table.join_rows(groups) if table else groups
    house = find_house(text, region.box, grammar.retailers, grammar.towns | towns[0], towns[1])
    dates = find_dates(text, dating.reference)
    own = [fact for fact, _ in dates]
    of_page = [fact for fact in dating.date_lines if all(fact.box.overlap(other.box) == 0 for other in own)]
    named_parts = named_pieces(doc, text.text, grammar)
    taken = sorted(
        [(p.start, p.end) for p in prices]
        + [(t.start, t.end) for t in terms if t.scope == "price" or _is_whole_clause(text, t)]
        + [span for _, span in dates]
        + list(house.spans)
        + (spans_without_prices(schedule, text, prices, named_parts) if schedule else [])
        + order_marks(text.text)
        + weights
    )
    named = [(p.start, p.end) for p in prices] + [span for _, span in dates] + list(house.spans)
    weeks = schedule.spans if schedule else ()
    singly = [
        n
        for n in named_parts
        if grammar.authorities.pieces.kind_of(n.piece) != "group"
        and not any(a < n.end and n.start < b for a, b in weeks)
    ]
    listings = find_listings(text, singly, prices)
    segments = tell_goods(without_asides(cut_segments(text, taken, prices, grammar.proper)), named_parts)
    segments = without_terms(segments, [*terms, *without_sums(text.text, clauses, prices)])
    segments = join_sets(text, segments, listings, prices)
    segments = table.replace_segments(segments) if table else segments
    segments = with_postage(text, groups, segments)
    bonus = np.array([known_bonus(grammar, doc, segment) for segment in segments])
    costs = costs_of(text, groups, segments, reading.rules, bonus, table)
    pairings = with_titles(text, groups, pair_items(text, groups, segments, reading.rules, costs, table), segments)
    pairings = with_subjects(text, groups, with_topic(text, pairings, segments))
    pairings = with_goods_before(text, groups, pairings, segments, reading.rules)
    pairings = reconsidered(text, groups, pairings, segments, costs, reading.rules)
    valid_from, valid_to, dated_by = validity_of(
        [*own, *of_page] if dating.by_page else own,
        dating.reference,
        is_coupon=_is_coupon(prices),
        of_coupons=ends_of_coupons(text, dates),
    )
    years = _years(valid_from, valid_to, dating.reference)
    statements = condition_texts(text, terms[:said], {t for t in used if t < said}, prices)
    statements += condition_texts(text, clauses, set(), prices)
    if schedule is not None:
        statements = [c for c in statements if c.box.overlap(schedule.condition.box) < 0.5 * c.box.area]
        statements.append(schedule.condition)
    offers, conditions = make_offers(
        grammar,
        doc,
        text,
        advert_id,
        groups,
        pairings,
        statements,
        segments,
        named_parts,
        listings,
        years,
    )
    return Advert(
        advert_id=advert_id,
        clipping_id=reading.clipping_id,
        box=region.box,
        confidence=region.confidence,
        retailer=house.retailer,
        city=house.city,
        addresses=house.addresses,
        dates=(*own, *of_page),
        valid_from=valid_from,
        valid_to=valid_to,
        dated_by=dated_by,
        offers=offers,
        conditions=conditions,
        schedule=schedule.weeks if schedule else (),
        unknown_names=(*find_unknown_names(doc, text, named, table), *find_unknown_makers(doc, text)),
    )
