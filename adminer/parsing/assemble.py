"""The whole way from the reading of a page to its adverts with their offers, on one screen."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import lru_cache

import numpy as np
from spacy.tokens import Doc

from adminer.names.authority import Authorities
from adminer.names.repairs import repair_words
from adminer.parsing.conditions.dates import PageDating, date_page, ends_of_coupons, find_dates, validity_of
from adminer.parsing.conditions.statements import clause_around, condition_texts, without_terms
from adminer.parsing.conditions.trade_clauses import find_clauses, without_sums
from adminer.parsing.house.house import find_house
from adminer.parsing.house.page_towns import towns_of_head
from adminer.parsing.items.asides import without_asides
from adminer.parsing.items.assign import Pairing, pair_items
from adminer.parsing.items.brands import with_brands
from adminer.parsing.items.catalogue import order_marks, weight_columns
from adminer.parsing.items.costs import costs_of
from adminer.parsing.items.leaning import with_goods_before
from adminer.parsing.items.list_rows import with_list_rows
from adminer.parsing.items.patterns import with_patterns
from adminer.parsing.items.reconsider import reconsidered
from adminer.parsing.items.subjects import with_subjects
from adminer.parsing.items.titles import with_title_heads, with_titles
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
from adminer.parsing.segments.items import Segment, cut_segments
from adminer.parsing.segments.postage import with_postage
from adminer.parsing.sets.listings import Listing, NamedPiece, find_listings, named_pieces
from adminer.parsing.sets.sets import join_sets, tell_goods
from adminer.parsing.tables.price_lists import PriceList, read_price_list
from adminer.parsing.tables.programme import tell_features
from adminer.parsing.tables.schedule import Schedule, find_schedule, spans_without_prices
from adminer.parsing.tables.thresholds import without_thresholds
from adminer.parsing.terms.lines import all_terms
from adminer.parsing.terms.pipeline import Grammar, build_grammar, terms_of
from adminer.parsing.terms.terms import Term
from adminer.parsing.text.cells import Cell, cells_of
from adminer.parsing.text.printed_rules import printed_rules
from adminer.parsing.text.regions import words_by_region
from adminer.parsing.text.text import AdvertText, text_of
from adminer.records import Advert, Box, ConditionText, Note, PageReading, Region

Span = tuple[int, int]  # first character and the one after the last


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
    reading = replace(reading, rules=printed_rules(reading))
    parted = words_by_region(reading)
    regions = reading.regions or (Region(Box(0, 0, reading.width, reading.height), "advert", 0.5),)
    texts = {i: text_of(join_shilling_columns(parted.get(i, ())), reading.rules) for i in range(len(regions))}
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


@dataclass(frozen=True, slots=True)
class _Said:
    """Hold the terms and prices of an advert, and what tells several prices at once."""

    terms: list[Term]  # those of bare heads last
    stated: int  # of them are conditions by themselves: a bare head only colours its prices
    used: set[int]  # the numbers of terms that prices tell
    clauses: list[Term]
    prices: list[Found]
    groups: list[list[Found]]
    table: PriceList | None
    schedule: Schedule | None
    weights: list[Span]  # of the cells that tell what an article weighs
    cells: list[Cell]


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
    said = _read_prices(grammar, doc, text, reading.rules, sterling_page=sterling_page)
    house = find_house(text, region.box, grammar.retailers, grammar.towns | towns[0], towns[1])
    dates = find_dates(text, dating.reference)
    own = [fact for fact, _ in dates]
    of_page = [fact for fact in dating.date_lines if all(fact.box.overlap(other.box) == 0 for other in own)]
    valid_from, valid_to, dated_by = validity_of(
        [*own, *of_page] if dating.by_page else own,
        dating.reference,
        is_coupon=_is_coupon(said.prices),
        of_coupons=ends_of_coupons(text, dates),
    )
    pieces = named_pieces(doc, text.text, grammar)
    listings = find_listings(text, _single_pieces(grammar, pieces, said.schedule), said.prices)
    others = [span for _, span in dates] + list(house.spans)
    segments = _cut_items(grammar, text, said, pieces, listings, others)
    offers, conditions = make_offers(
        grammar,
        doc,
        text,
        advert_id,
        said.groups,
        with_patterns(text, said.groups, _pair(grammar, doc, text, said, segments, reading.rules), segments, pieces),
        _statements(text, said),
        segments,
        pieces,
        listings,
        _years(valid_from, valid_to, dating.reference),
    )
    named = [(p.start, p.end) for p in said.prices] + others
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
        schedule=said.schedule.weeks if said.schedule else (),
        unknown_names=(*find_unknown_names(doc, text, named, said.table), *find_unknown_makers(doc, text)),
    )


def _read_prices(grammar: Grammar, doc: Doc, text: AdvertText, rules: tuple[Box, ...], *, sterling_page: bool) -> _Said:
    """Read the terms of an advert and its prices on them, those that belong together in groups."""
    terms = all_terms(text, terms_of(doc))
    cells = cells_of(text)
    prices = without_thresholds(text, find_prices(text, terms, sterling_page=sterling_page), cells)
    prices = read_payment_columns(text, name_payments(text, prices))
    clauses = find_clauses(text, terms, prices)
    stated = len(terms)
    terms += find_bare_heads(text, prices, terms)
    prices, used = colour_prices(text, prices, terms)
    weights = weight_columns(text)
    table, prices = read_price_list(text, prices, cells, grammar.proper, weights)
    schedule = find_schedule(text, grammar.piece_names)
    prices = tell_features(text, schedule, prices) if schedule else prices
    groups = group_prices(text, prices, rules)
    groups = table.join_rows(groups) if table else groups
    return _Said(terms, stated, used, clauses, prices, groups, table, schedule, weights, cells)


def _single_pieces(grammar: Grammar, pieces: Sequence[NamedPiece], schedule: Schedule | None) -> list[NamedPiece]:
    """Return the pieces named that may be listed as parts of a set: no groups of pieces, nor those of a schedule."""
    weeks = schedule.spans if schedule else ()
    return [
        n
        for n in pieces
        if grammar.authorities.pieces.kind_of(n.piece) != "group"
        and not any(a < n.end and n.start < b for a, b in weeks)
    ]


def _cut_items(
    grammar: Grammar,
    text: AdvertText,
    said: _Said,
    pieces: list[NamedPiece],
    listings: list[Listing],
    others: list[Span],
) -> list[Segment]:
    """Return the texts that may name what a price is for; `others` are the characters of dates, shop and address."""
    prices, schedule, table = said.prices, said.schedule, said.table
    taken = sorted(
        [(p.start, p.end) for p in prices]
        + [(t.start, t.end) for t in said.terms if t.scope == "price" or _is_whole_clause(text, t)]
        + others
        + (spans_without_prices(schedule, text, prices, pieces) if schedule else [])
        + order_marks(text.text)
        + said.weights
    )
    segments = tell_goods(without_asides(cut_segments(text, taken, prices, grammar.proper)), pieces)
    segments = without_terms(segments, [*said.terms, *without_sums(text.text, said.clauses, prices)])
    segments = join_sets(text, segments, listings, prices)
    segments = table.replace_segments(segments) if table else segments
    return with_postage(text, said.groups, segments)


def _pair(
    grammar: Grammar, doc: Doc, text: AdvertText, said: _Said, segments: list[Segment], rules: tuple[Box, ...]
) -> list[Pairing]:
    """Return what each group of prices is for: chosen by costs, then by rule after rule, then weighed again."""
    groups = said.groups
    bonus = np.array([known_bonus(grammar, doc, segment) for segment in segments])
    costs = costs_of(text, groups, segments, rules, bonus, said.table)
    pairings = pair_items(text, groups, segments, rules, costs, said.table)
    pairings = with_list_rows(text, groups, pairings, segments, said.cells)
    pairings = with_titles(text, groups, pairings, segments)
    pairings = with_subjects(text, groups, with_topic(text, pairings, segments))
    pairings = with_goods_before(text, groups, pairings, segments, rules)
    pairings = reconsidered(text, groups, pairings, segments, costs, rules)
    pairings = with_title_heads(text, groups, pairings, segments)
    return with_brands(text, groups, pairings, segments)


def _statements(text: AdvertText, said: _Said) -> list[ConditionText]:
    """Return the conditions of an advert that its prices do not tell, with its schedule."""
    statements = condition_texts(
        text, said.terms[: said.stated], {t for t in said.used if t < said.stated}, said.prices
    )
    statements += condition_texts(text, said.clauses, set(), said.prices)
    if said.schedule is None:
        return statements
    printed = said.schedule.condition
    return [*(c for c in statements if c.box.overlap(printed.box) < 0.5 * c.box.area), printed]
