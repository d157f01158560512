"""Learn how much each trait of a text says of what a price is for.

Each group of prices chooses one text among its rivals by a softmax over weighed traits; the weights are those of
greatest likelihood with a ridge penalty. What they are learned from is printed: `python -m corpus_demo.press items`.
Never learn from real scans: what the weights are measured by must not come from them.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final
from unittest import mock

import numpy as np
from scipy.optimize import minimize

from adminer.parsing import assemble
from adminer.parsing.items.assign import Pairing
from adminer.parsing.items.costs import Costs
from adminer.parsing.items.descriptions import size_under
from adminer.parsing.items.headings import headed
from adminer.parsing.items.reconsider import Choice, choices_of, paired
from adminer.parsing.items.traits import Traits
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.text.naming import name_of
from adminer.parsing.text.text import AdvertText
from adminer.records import Box, ParsedPage
from adminer.score.alike import ALIKE, similarity
from adminer.score.found import found_in_parsed
from adminer.score.prices import MONIES, match_prices
from adminer.score.truth import TruePage

_RIDGE: Final = 40.0  # strong: what holds for the adverts of one press must not be trusted far in those of others
_SELDOM: Final = 25  # texts that must have a trait before it says anything
_LEAST: Final = 0.0005
_Key = tuple[object, str]


@dataclass(frozen=True, slots=True)
class Judged:
    """Hold the texts among which a group of prices chose, the share of its prices each is right for, and its weight."""

    traits: tuple[Traits, ...]
    right: tuple[float, ...]
    weight: float


@dataclass(frozen=True, slots=True)
class Seen:
    """Hold one advert as it came to be reconsidered."""

    advert: AdvertText
    groups: Sequence[Sequence[Found]]
    segments: Sequence[Segment]
    costs: Costs
    choices: Mapping[int, Sequence[Choice]]


def judge(pages: Iterable[ParsedPage], truth: Iterable[TruePage], seen: list[Seen]) -> list[Judged]:
    """Say of every text that might name a true price of the pages whether it does; `seen` fills as pages are parsed."""
    by_page = {(page.file, page.leaf): page for page in truth}
    judged: list[Judged] = []
    for parsed in pages:
        found = found_in_parsed(parsed)
        true = by_page.get((found.file, found.leaf))
        items: dict[_Key, tuple[str, str]] = {}
        for money in MONIES if true is not None else ():
            pairs = match_prices(true, found.prices, money).pairs if true is not None else ()
            items.update({(pair.found.box, pair.found.text): (pair.true.item_text, pair.found.item) for pair in pairs})
        for one in seen:
            judged += _judge_advert(one, items)
        seen.clear()
    return judged


def fit(judged: Sequence[Judged]) -> dict[str, float]:
    """Fit the weights of the traits by maximum likelihood, with a ridge penalty on the wider traits scaled to one."""
    counts = Counter(name for one in judged for traits in one.traits for name, value in traits.items() if value)
    names = sorted(name for name, count in counts.items() if count >= _SELDOM)
    at = {name: i for i, name in enumerate(names)}
    table = np.zeros((sum(len(one.traits) for one in judged), len(names)))
    for row, traits in enumerate(traits for one in judged for traits in one.traits):
        for name, value in traits.items():
            if name in at:
                table[row, at[name]] = value
    scale = np.maximum(table.std(axis=0), 1.0)
    table = (table - table.mean(axis=0)) / scale
    right = np.array([share for one in judged for share in one.right])
    group = np.repeat(np.arange(len(judged)), [len(one.traits) for one in judged])
    starts = np.searchsorted(group, np.arange(len(judged)))
    weight = np.where(np.maximum.reduceat(right, starts) > 0, [one.weight for one in judged], 0.0)

    def loss(weights: np.ndarray) -> tuple[float, np.ndarray]:
        sums = table @ weights
        odds = np.exp(sums - np.maximum.reduceat(sums, starts)[group])
        whole, part = np.add.reduceat(odds, starts), np.add.reduceat(odds * right, starts)
        part = np.maximum(part, 1e-300)
        slope = odds / whole[group] - odds * right / part[group]
        value = -float((weight * np.log(np.minimum(part / whole, 1.0))).sum()) + _RIDGE * float(weights @ weights)
        return value, table.T @ (weight[group] * slope) + 2 * _RIDGE * weights

    best = minimize(loss, np.zeros(len(names)), jac=True, method="L-BFGS-B", options={"maxiter": 100}).x / scale
    return {name: round(float(w), 3) for name, w in zip(names, best, strict=True) if abs(w) >= _LEAST}


def write(weights: Mapping[str, float], path: Path, groups: int) -> None:
    """Write the weights as TOML."""
    lines = [f"# Written by python -m corpus_demo.press items from {groups} groups of prices; read by reconsider.py"]
    lines += ["[weights]", *(f'"{name}" = {weight}' for name, weight in sorted(weights.items()))]
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")


def recorder(seen: list[Seen]) -> mock._patch[object]:
    """Return a patch under which parsing leaves what the rules chose and notes what else might have been chosen."""

    def note(
        advert: AdvertText,
        groups: Sequence[Sequence[Found]],
        pairings: Sequence[Pairing],
        segments: Sequence[Segment],
        costs: Costs,
        rules: tuple[Box, ...],
    ) -> list[Pairing]:
        choices = choices_of(advert, groups, pairings, segments, costs, rules)
        seen.append(Seen(advert, groups, segments, costs, choices))
        return list(pairings)

    return mock.patch.object(assemble, "reconsidered", note)


def _judge_advert(one: Seen, items: Mapping[_Key, tuple[str, str]]) -> list[Judged]:
    """Judge the texts of an advert; of one with many offers each counts for less, as they are set alike."""
    made: list[Judged] = []
    for g, choices in one.choices.items():
        told = [items[(f.box, f.text)] for f in one.groups[g] if (f.box, f.text) in items]
        told = [(true, found) for true, found in told if true]
        if not told:
            continue
        right = []
        for choice in choices:
            names = [found if choice.text is None else _name(one, g, choice.text, choice.size) for _, found in told]
            alike = [similarity(true, name) >= ALIKE for (true, _), name in zip(told, names, strict=True)]
            right.append(sum(alike) / len(told))
        made.append(Judged(tuple(choice.traits for choice in choices), tuple(right), len(told)))
    share = len(made) ** -0.5 if made else 1.0
    return [Judged(j.traits, j.right, j.weight * share) for j in made]


def _name(one: Seen, g: int, text: int, size: Segment | None) -> str:
    """Return the item that an offer would have by another text than the rules chose."""
    segments, pairing = list(one.segments), paired(text, size, g, one.segments, one.costs)
    segment = size or segments[text]
    name = name_of(segment.text, last="right before" in pairing.why)
    prices = [found for group in one.groups for found in group]
    told = size_under(one.advert, segment, one.groups[g][0], segments, prices)
    return f"{headed(one.advert, name, pairing, segment, segments, one.groups[g][0].place)} {told}".strip()
