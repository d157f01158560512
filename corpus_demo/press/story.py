"""A held-out story: other names, other pages, other prices, drawn by a seed."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date, timedelta
from decimal import Decimal
from random import Random

from .demo.common import days
from .era import Town, addresses, holiday, remarks
from .facts import AdvertSpec, Item, ScanSpec, Source, Tag, Term, Wear, When
from .offers import PIECES, set_item, single, store_item
from .staples import basket
from .story_words import FOOD_HEADS, FORMS, HEADS, LABELS, STORE_HEADS, SUFFIX, WHERE, WIDTHS
from .world import Line, Programme, Shop, World, make_world

MISPRINT = 0.01  # adverts whose weekday and day disagree, in stories to be dated; common practice, no source


@dataclass(slots=True)
class _Draw:
    """Hold the state of drawing one story."""

    world: World
    rng: Random
    years: bool  # whether printed dates may carry their year

    def when(self, start: date, end: date) -> When:
        form = self.rng.choice((*FORMS, "year", "numeric") if self.years else FORMS)
        written = days(start, end, form)
        if self.years or self.rng.random() >= MISPRINT:
            return written
        # the wrong column of the calendar: the day of the month is one off, the weekday right
        return replace(written, text=re.sub(r"\d+", lambda found: str(max(1, int(found[0]) - 1)), written.text))

    def published(self, start: date) -> date:
        """Return the paper's day: that of the offer, or of an evening before; common practice, no source."""
        return start if self.years else start - timedelta(self.rng.choice((0, 0, 0, 1, 1, 2)))

    def thursday(self) -> date:
        day = date(1938, 1, 6) + timedelta(7 * self.rng.randint(0, 27 * 52 - 2))
        return day if self.rng.random() < 0.8 else day + timedelta(self.rng.choice((-3, -1, 1)))


def _programme_advert(draw: _Draw) -> tuple[AdvertSpec, date]:
    rng = draw.rng
    plan: Programme = rng.choice(draw.world.programmes)
    week = rng.randint(1, plan.weeks)
    start = plan.start + timedelta(7 * (week - 1))
    town = rng.choice(plan.shop.towns)
    pieces = rng.sample(PIECES, rng.randint(3, 9))
    items = [single(piece, plan, start.year, rng) for piece in pieces]
    if rng.random() < 0.55:
        items.insert(0, set_item(rng.choice((4, 5, 5, 16, 20, 45)), plan, start.year, rng))
    head = rng.choice(HEADS)
    if rng.random() < 0.2:
        head = "Final Week!" if week == plan.weeks else f"Week {week} of {plan.weeks}"
    limit = rng.randint(1, 6)
    purchase = rng.choice(("2.50", "3.00", "5.00", "10.00"))
    terms = rng.sample(
        (
            Term("with_purchase", f"with each ${purchase} purchase", purchase), Term("limit", f"Limit {limit} to a customer", str(limit)),
            Term("punch_card", f"Card punched with each ${purchase} purchase", purchase), Term("open_stock", "Open stock always on hand"),
            Term("while_they_last", "While they last"), Term("rain_check", "Rain checks given"),
        ), rng.randint(0, 3),
    )  # fmt: skip
    name = plan.line.other_name if plan.line.other_name and rng.random() < 0.3 else plan.line.name
    maker = dict(draw.world.makers)[plan.line.maker]
    spec = _advert(draw, rng.choice(("tower", "spread", "burst", "grid")), plan.shop, town, start, tuple(items), head)
    spec = replace(
        spec, line=plan.line.id, line_text=name, motif=plan.line.motif, maker_text=f"by {maker}" if rng.random() < 0.4 else "", terms=(*terms, *spec.terms), kicker=rng.choice(("", "this week", "for card holders")),
    )  # fmt: skip
    return spec, start


def _advert(
    draw: _Draw,
    style: str,
    shop: Shop,
    town: Town,
    start: date,
    items: tuple[Item, ...],
    head: str,
    *,
    food: bool = False,
) -> AdvertSpec:
    rng = draw.rng
    end = start + timedelta(rng.choice((2, 2, 2, 6)))
    when = draw.when(start, end)
    if when.text.startswith("Week"):
        end = start + timedelta(6)
        when = replace(when, edtf=f"{start}/{end}")
    return AdvertSpec(
        style=style, retailer=shop.id, retailer_text=shop.name, items=items, headline=head, town=town.name, valid=(start, end), when=when,
        addresses=addresses(town, start, rng), terms=remarks(start, rng, food=food, plate=False),
    )  # fmt: skip


def _grocery(draw: _Draw) -> tuple[AdvertSpec, date]:
    rng = draw.rng
    shop = rng.choice([s for s in draw.world.shops if s.kind == "chain"])
    start = draw.thursday()
    broad = rng.random() < 0.5
    foods = basket(start.year, rng, rng.randint(4, 10), rng.randint(14, 32) if broad else rng.randint(3, 10))
    plans = [
        p for p in draw.world.programmes if p.shop == shop and p.start <= start <= p.start + timedelta(7 * p.weeks)
    ]
    wares: tuple[Item, ...] = ()
    if broad and plans:
        plan = plans[0]
        wares = tuple(
            replace(single(piece, plan, start.year, rng), department="housewares") for piece in rng.sample(PIECES, 3)
        )
    town = rng.choice(shop.towns)
    head = holiday(start, rng) or rng.choice(FOOD_HEADS)
    spec = _advert(draw, "grocery" if broad else "handbill", shop, town, start, (*foods, *wares), head, food=True)
    if wares:
        spec = replace(
            spec,
            line=plans[0].line.id,
            line_text=plans[0].line.name,
            motif=plans[0].line.motif,
            kicker="add to your set",
        )
    return spec, start


def _store(draw: _Draw) -> tuple[AdvertSpec, date]:
    rng = draw.rng
    shop = next(s for s in draw.world.shops if s.kind == "department_store")
    start = draw.thursday()
    # one sale in five has what is left of patterns no longer made ("discontinued", trade.md E.2); how often: no source
    left = 2 if rng.random() < 0.2 else 0
    made = [line for line in draw.world.lines if line.first_year <= start.year <= line.last_year + left]
    if not made:
        return _grocery(draw)
    words = rng.choice(LABELS)
    lines: list[Line] = [rng.choice(made) for _ in range(rng.randint(3, 6))]
    items = tuple(store_item(line, start.year, rng, words, rng.choice((None, None, 16, 32, 53))) for line in lines)
    spec = _advert(draw, rng.choice(("store", "clearance")), shop, shop.towns[0], start, items, rng.choice(STORE_HEADS))
    return replace(spec, motif=lines[0].motif, slogan="China and Glass, Fourth Floor"), start


def _coupon(draw: _Draw) -> tuple[AdvertSpec, date]:
    rng = draw.rng
    spec, start = _programme_advert(draw)
    feature = spec.items[0]
    low, high = feature.tags[:2]
    if rng.random() < 0.5:
        tags = (
            replace(low, condition="coupon", label="with this coupon"),
            replace(high, condition="everyone", label="without coupon"),
        )
        last = start + timedelta(9)
        expiry = When(f"Coupon expires {last:%B} {last.day}", str(last))
        return replace(
            spec, style="coupon", items=(replace(feature, tags=tags), *spec.items[1:3]), expiry=expiry
        ), start
    books = rng.randint(1, 4)
    tags = (
        replace(low, condition="stamps", label=f"and {books} filled books"),
        replace(high, condition="everyone", label="or in cash"),
    )
    return replace(spec, style="stamps", items=(replace(feature, tags=tags),)), start


def _mail_order(draw: _Draw) -> tuple[AdvertSpec, date]:
    rng = draw.rng
    shop = next(s for s in draw.world.shops if s.kind == "mail_order")
    start = draw.thursday()
    plan = replace(rng.choice(draw.world.programmes), labels=("", ""))
    items = []
    for stated in (32, 45, None, None, None):
        item = set_item(stated, plan, start.year, rng) if stated else single(rng.choice(PIECES), plan, start.year, rng)
        tags: list[Tag] = [Tag(item.tags[1].amount)]
        if stated and rng.random() < 0.6:
            tags += [
                Tag(Decimal(rng.choice((1, 2, 3))), 1, None, "everyone", "Cash down", "down_payment"),
                Tag(Decimal("1.50"), 1, "month", "everyone", "then", "instalment"),
            ]
        items.append(
            replace(
                item,
                tags=tuple(tags),
                number=f"{rng.randint(10, 60)} K {rng.randint(1000, 9000)}",
                shipping=f"Shpg. wt. {rng.randint(2, 60)} lbs",
            )
        )
    spec = _advert(draw, "mailorder", shop, shop.towns[0], start, tuple(items), "China by Mail")
    spring = start.month < 7
    season, edtf = ("Spring and Summer", "{0}-21/{0}-22") if spring else ("Fall and Winter", "{0}-23/{0}-24")
    when = When(f"{season} {start.year}", edtf.format(start.year)) if draw.years else None
    return replace(
        spec,
        valid=None,
        when=when,
        motif=plan.line.motif,
        terms=(Term("postage", "Postage extra"), Term("mail_order", "Mail orders filled the day they come")),
    ), start


MAKERS: tuple[tuple[Callable[[_Draw], tuple[AdvertSpec, date]], float], ...] = (
    (_programme_advert, 8), (_grocery, 7), (_store, 2), (_coupon, 2), (_mail_order, 1),
)  # fmt: skip


def worn(source: Source, rng: Random) -> Wear:
    """Draw what happened to a sheet between the press and the scanner."""
    phone = source == "phone"
    return Wear(
        source, skew=rng.gauss(0, 0.9), curl=rng.choice((0, 0, 0, 10, -8)) if source != "photocopy" else 0, fold=rng.choice((None, None, rng.uniform(0.3, 0.7))), tear=rng.random() < 0.1,
        spread=rng.uniform(0.2, 0.6), show_through=rng.uniform(0, 0.14) if source == "newsprint" else 0, light=rng.uniform(0.05, 0.28), grain=rng.uniform(0.03, 0.07),
        perspective=rng.uniform(0.015, 0.04) if phone else 0,
    )  # fmt: skip


def _grocery_bill(draw: _Draw, day: date) -> AdvertSpec:
    """Draw a small grocer's bill to stand beside another shop's advert of the same day."""
    rng = draw.rng
    shop = rng.choice([s for s in draw.world.shops if s.kind == "chain"])
    foods = basket(day.year, rng, rng.randint(4, 7), rng.randint(3, 8))
    return _advert(draw, "handbill", shop, rng.choice(shop.towns), day, foods, rng.choice(FOOD_HEADS), food=True)


def make_story(seed: int, scans: int, *, hide_dates: bool = False) -> tuple[World, tuple[ScanSpec, ...]]:
    """Draw a story; with `hide_dates` no note and no print gives a year, and the truth alone keeps the date."""
    world = make_world(seed, scans)
    specs = []
    for k in range(scans):
        rng = Random(f"story {seed} {k}")
        draw = _Draw(world, rng, years=not hide_dates)
        make = rng.choices([m for m, _ in MAKERS], [weight for _, weight in MAKERS])[0]
        advert, day = make(draw)
        source = rng.choices([s for s, _ in WHERE], [weight for _, weight in WHERE])[0]
        base = rng.uniform(17.5, 21)
        pair: tuple[AdvertSpec, ...] = (advert,)
        if rng.random() < 0.08:
            pair = (advert, _grocery_bill(draw, day))
        specs.append(
            ScanSpec(
                file=f"story-{k + 1:04d}{SUFFIX[source]}", adverts=pair, seed=seed * 10007 + k, width=round(base * sum(WIDTHS[a.style] for a in pair) * rng.uniform(0.92, 1.1)), sheet="two_up" if len(pair) > 1 else "single", base=round(base, 1), wear=worn(source, rng),
                published=draw.published(day), publication=world.papers.get(advert.town or "", ""), city=advert.town, page=str(rng.randint(2, 24)), noted=not hide_dates and rng.random() < 0.75,
                ad_type="grocery" if advert.style in ("grocery", "handbill") else "dinnerware promotion", recipe="phone_photo" if source == "phone" else "",
            )
        )  # fmt: skip
    return world, tuple(specs)
