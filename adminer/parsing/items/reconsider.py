"""Take each choice of an item again, against its rivals, by weights learned from adverts whose truth is known.

The rules before choose by goods, places and order, one reason at a time. Here all that speaks for a text is weighed
together: its wording, its type, where it stands, how the other offers of the advert are set, and how often the rule
that chose is right. The chance of a text among its rivals is a softmax over the weighed sums (D. McFadden, "Conditional
logit analysis of qualitative choice behavior", 1974); `python -m corpus_demo.press items` learns the weights.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Final

from adminer.parsing.items.assign import Pairing
from adminer.parsing.items.costs import Costs
from adminer.parsing.items.custom import Custom, custom_of, traits_by_claims, traits_by_custom
from adminer.parsing.items.entries import BEHIND, CAPTION, NOTICE, NUMBERED, is_adjectival
from adminer.parsing.items.flow import AFTER
from adminer.parsing.items.leaning import leans
from adminer.parsing.items.list_rows import LIST_ROW
from adminer.parsing.items.panels import hang_below, over_each_other
from adminer.parsing.items.rivals import Rivals, rivals_of
from adminer.parsing.items.rule_lines import rule_between, rules_that_part
from adminer.parsing.items.subjects import GOES_ON, KIND_OF
from adminer.parsing.items.titles import TITLE
from adminer.parsing.items.topic import TOPIC
from adminer.parsing.items.traits import (
    LARGER,
    Traits,
    together,
    traits_at_price,
    traits_in_stretch,
    traits_of_text,
    weigh,
)
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.segments.postage import POSTAGE
from adminer.parsing.tables.price_lists import ON_ROW as ON_TABLE_ROW
from adminer.parsing.text.text import AdvertText
from adminer.records import Box

WEIGHTS: Final = Path(__file__).parent.with_name("data") / "item_weights.toml"
AGAIN: Final = "weighed against the texts near it: "
_NEXT: Final = re.compile(r"\.\s+[A-Z]")  # right after a price: what follows is told of the next
_IN_ORDER: Final = "near the price in reading order"
_SURE: Final = frozenset(
    {POSTAGE, ON_TABLE_ROW, TITLE, GOES_ON, KIND_OF, NUMBERED, BEHIND, LIST_ROW, NOTICE, CAPTION, TOPIC}
)
_NAME: Final = 8  # words; a longer text is a name only where a rule says so
_MORE: Final = 1.0  # must speak for another text than for the one chosen, in log odds
_FEW: Final = 4  # offers up to which an advert speaks of each at length


@dataclass(frozen=True, slots=True)
class Choice:
    """Hold what may name what a group of prices is for: the number of a text, None for what the rules chose.

    Where the rules chose a bare size, a text may name what it is a size of.
    """

    text: int | None
    traits: Traits
    size: Segment | None = None


@dataclass(frozen=True, slots=True)
class _Case:
    """Hold an advert with what the rules chose for its groups of prices, and what may be chosen instead."""

    advert: AdvertText
    groups: Sequence[Sequence[Found]]
    segments: Sequence[Segment]
    costs: Costs
    rivals: Sequence[Rivals]
    chosen: Mapping[int, int]  # the number of the text chosen for a group, where one was
    custom: Mapping[int, Custom]  # how that text is set
    claims: Mapping[int, Sequence[int]]  # the groups that a text was chosen for


def reconsidered(
    advert: AdvertText,
    groups: Sequence[Sequence[Found]],
    pairings: Sequence[Pairing],
    segments: Sequence[Segment],
    costs: Costs,
    rules: tuple[Box, ...] = (),
) -> list[Pairing]:
    """Return the pairings, those given another text for which more speaks than for the one chosen."""
    made = list(pairings)
    weights = item_weights()
    for g, choices in choices_of(advert, groups, pairings, segments, costs, rules).items():
        best = choices[best_of([choice.traits for choice in choices], weights)]
        if best.text is not None:
            made[g] = paired(best.text, best.size, g, segments, costs)
    return made


def paired(text: int, size: Segment | None, g: int, segments: Sequence[Segment], costs: Costs) -> Pairing:
    """Return the pairing of a group of prices with another text than the rules chose, at its cost."""
    cost = min(max(float(costs.table[g, text]), -1.0), 3.0)
    why = AGAIN + (costs.whys.get((g, text)) or _IN_ORDER)
    if size is None:
        return Pairing(segments[text], cost, why)
    return Pairing(size, cost, why, heading=segments[text])


def best_of(choices: Sequence[Traits], weights: Mapping[str, float]) -> int:
    """Return which choice to make: the first, which the rules made, unless far more speaks for another."""
    sums = [weigh(traits, weights) - (_MORE if i else 0.0) for i, traits in enumerate(choices)]
    return max(range(len(sums)), key=sums.__getitem__)


def choices_of(
    advert: AdvertText,
    groups: Sequence[Sequence[Found]],
    pairings: Sequence[Pairing],
    segments: Sequence[Segment],
    costs: Costs,
    rules: tuple[Box, ...] = (),
) -> dict[int, list[Choice]]:
    """Return what may name what each group of prices is for, what the rules chose first; none where they are sure."""
    if not groups or not segments or hang_below(groups, segments):
        return {}
    case = _case_of(advert, groups, pairings, segments, costs)
    own = cache(lambda s: traits_of_text(advert, segments[s], costs))  # a text may be a rival for several groups
    made: dict[int, list[Choice]] = {}
    for g, pairing in enumerate(pairings):
        first = min(groups[g], key=lambda found: found.start)
        if pairing.why in _SURE or (pairing.why == AFTER and is_adjectival(advert, first)):
            continue
        now = case.chosen.get(g)
        names = [
            s
            for s in case.rivals[g].texts
            if s == now or _may_replace(advert, first, pairing, segments[s], costs, rules)
        ]
        choices = [] if now is not None else [Choice(None, _traits_of_none(pairing))]
        for s in dict.fromkeys([now, *names] if now is not None else names):
            told = _traits_of_chosen(pairing) if s == now else _traits_instead(advert, pairing, segments[s])
            told["parted"] = _is_parted(advert, segments[s], first, rules)
            traits = together({**own(s), **_traits_for(case, g, s), **told}, few=len(groups) <= _FEW)
            choices.append(Choice(None, traits) if s == now else Choice(s, traits, _size_of(pairing, segments[s])))
        made[g] = choices
    return made


def _case_of(
    advert: AdvertText,
    groups: Sequence[Sequence[Found]],
    pairings: Sequence[Pairing],
    segments: Sequence[Segment],
    costs: Costs,
) -> _Case:
    numbers = {segment.start: s for s, segment in enumerate(segments)}
    rivals = rivals_of(groups, segments, costs)
    starts = {g: pairing.segment.start for g, pairing in enumerate(pairings) if pairing.segment is not None}
    chosen = {g: numbers[start] for g, start in starts.items() if start in numbers}
    custom = {g: custom_of(advert, groups[g], rivals[g], s, segments) for g, s in chosen.items()}
    claims: dict[int, list[int]] = {}
    for g, s in chosen.items():
        claims.setdefault(s, []).append(g)
    return _Case(advert, groups, segments, costs, rivals, chosen, custom, claims)


def _traits_for(case: _Case, g: int, s: int) -> Traits:
    """Return the traits of a text as what a group of prices is for."""
    advert, groups, segments, costs, rivals = case.advert, case.groups, case.segments, case.costs, case.rivals[g]
    least = float(costs.table[g, : len(segments)].min())
    spans = [(f.start, f.end) for o, group in enumerate(groups) if o != g for f in group]
    cost = (float(costs.table[g, s]), least, costs.whys.get((g, s), ""))
    mine = custom_of(advert, groups[g], rivals, s, segments)
    return {
        **traits_at_price(advert, groups[g], segments[s], spans, cost),
        **traits_in_stretch(rivals, s, segments),
        **traits_by_custom(mine, [other for o, other in case.custom.items() if o != g]),
        **traits_by_claims(g, s, case.claims, groups, costs),
    }


def _may_replace(
    advert: AdvertText, found: Found, pairing: Pairing, segment: Segment, costs: Costs, rules: tuple[Box, ...]
) -> bool:
    """Say whether a text may stand instead of the one chosen.

    No long one may, none that names nothing or only tells of it, none that a rule or the end of a sentence parts.
    """
    was = pairing.segment
    if segment.content > _NAME or segment is pairing.heading or leans(segment.text):
        return False
    if segment.start >= found.end and _NEXT.match(advert.text, found.end):
        return False
    if was is not None and any(
        one.name.start == was.start and any(text.start == segment.start for text in one.texts)
        for one in costs.described
    ):
        return False
    return not _is_parted(advert, segment, found, rules) or was is None or _is_parted(advert, was, found, rules)


def _size_of(pairing: Pairing, name: Segment) -> Segment | None:
    """Return the bare size that was chosen where a text before it names what it is a size of."""
    size = pairing.segment
    if size is None or not size.bare or size.content == 0 or size.text.isdigit():
        return None
    return size if not name.bare and name.end <= size.start else None


def _is_parted(advert: AdvertText, segment: Segment, found: Found, rules: tuple[Box, ...]) -> bool:
    return rule_between(segment.box, found.box, rules_that_part(advert, segment, found, rules))


@cache
def item_weights() -> Mapping[str, float]:
    """Read the weights of the traits that `python -m corpus_demo.press items` learned."""
    table: dict[str, float] = tomllib.loads(WEIGHTS.read_text(encoding="utf-8"))["weights"]
    return table


def _rule_of(pairing: Pairing) -> str:
    return pairing.why.split(":")[0]


def _traits_of_none(pairing: Pairing) -> Traits:
    return {"chosen": 1, "nothing chosen": 1, f"chosen: {_rule_of(pairing)}": 1}


def _traits_of_chosen(pairing: Pairing) -> Traits:
    segment, rule = pairing.segment, f"chosen: {_rule_of(pairing)}"
    goods = segment is not None and segment.goods
    return {
        "chosen": 1,
        rule: 1,
        f"{rule}, goods": goods,
        "chosen with heading": pairing.heading is not None,
        "chosen, cost": max(-1.0, min(pairing.cost, 5.0)),
    }


def _traits_instead(advert: AdvertText, pairing: Pairing, segment: Segment) -> Traits:
    """Return the traits of a text beside the one chosen, which it would stand instead of."""
    was, rule = pairing.segment, f"instead of: {_rule_of(pairing)}"
    if was is None:
        return {"instead of nothing": 1}
    right_over = segment.last_line == was.first_line - 1 and over_each_other(segment.last, was.first)
    larger = segment.type_px > LARGER * was.type_px
    before = segment.end <= was.start
    return {
        f"{rule}, goods": segment.goods,
        f"{rule}, before": before,
        f"{rule}, larger": larger,
        "larger than chosen": larger,
        "smaller than chosen": was.type_px > LARGER * segment.type_px,
        "goods instead of none": segment.goods and not was.goods,
        "none instead of goods": was.goods and not segment.goods,
        "right over chosen": right_over,
        "right over chosen, larger": right_over and larger,
        "right over chosen, capitals": right_over and segment.text.isupper() and not was.text.isupper(),
        "in line of chosen": segment.last_line == was.first_line or segment.first_line == was.last_line,
        "before chosen, in block": before and segment.block == was.block,
        "before chosen": before,
        "heads chosen": pairing.heading is not None and pairing.heading.start == segment.start,
    }
