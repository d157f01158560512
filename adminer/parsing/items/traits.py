"""What speaks for and against a text as the item of a price, as named traits: its wording, its type, where it stands.

Half of them are of the text alone, half of the text and the price; `custom.py` adds how the other offers of the advert
are set. None of them knows what the words mean beyond whether they are goods.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Final

from adminer.parsing.items.costs import Costs
from adminer.parsing.items.panels import ends_line, opens_line, stands_left, stands_right, unit_between
from adminer.parsing.items.rivals import Rivals
from adminer.parsing.prices.prices import Found
from adminer.parsing.segments.items import Segment
from adminer.parsing.text.item_words import WORD
from adminer.parsing.text.naming import is_sentence
from adminer.parsing.text.text import AdvertText

Traits = dict[str, float]
LARGER: Final = 1.12  # times the type of another text: what stands out from it
_STAIR: Final = 0.12  # of a logarithm of two type sizes: the lower one is set smaller
_HUGE: Final = 3.0  # body sizes
_LONG: Final = 8  # words
_ON_AXIS: Final = 0.2  # of the wider of two boxes, between their middles
_MOSTLY: Final = 0.7  # of the words of a text
# traits that say more, or other things, together than each alone
_TOGETHER: Final = (
    ("goods", "opens line"),
    ("goods", "sentence"),
    ("goods", "one word"),
    ("goods", "huge"),
    ("goods", "describes"),
    ("goods", "described"),
    ("goods", "first since"),
    ("goods", "last since"),
    ("goods", "largest since"),
    ("goods", "right on its row"),
    ("goods", "left on its row"),
    ("goods", "in its line"),
    ("goods", "stands above"),
    ("goods", "claimed"),
    ("claimed", "least cost"),
    ("stands above", "whole lines"),
    ("stands above", "set in capitals"),
    ("stands above", "set in words"),
    ("stands above", "sentence"),
    ("before", "opens small"),
    ("larger than next line", "goods"),
    ("larger than next line", "since"),
    ("larger than next line", "stands above"),
)
# traits that say other things where an advert speaks of few offers at length
_OF_FEW: Final = (
    "chosen",
    "goods",
    "none instead of goods",
    "goods instead of none",
    "before",
    "stands above",
    "larger than chosen",
    "first since",
    "over body",
    "cost",
)
_OWN: Final = 2  # characters from a text to its own price


def case_of(text: str) -> str:
    """Return how a text is set: in capitals, with Capitals At Its Words, with one in front, or without."""
    letters = [c for c in text if c.isalpha()]
    if not letters:
        return "figures"
    if text.isupper():
        return "capitals"
    words = WORD.findall(text) or [text]
    heads = sum(word[0].isupper() for word in words) / len(words)
    if heads >= _MOSTLY and len(words) > 1:
        return "words"
    return "front" if words[0][0].isupper() else "small"


def traits_of_text(advert: AdvertText, segment: Segment, costs: Costs) -> Traits:
    """Return the traits of a text, whatever price it may belong to."""
    lines, text = advert.lines, segment.text
    line = lines[segment.first_line]
    opens, ends = opens_line(advert, segment), ends_line(advert, segment)
    made: Traits = {
        "goods": segment.goods,
        "bare": segment.bare,
        "talks": segment.talks,
        "prose": min(segment.prose, 4),
        "one word": segment.content <= 1,
        "no word": segment.content == 0,
        "long": segment.content > _LONG,
        "sentence": is_sentence(text),
        "running": segment.running,
        f"set in {case_of(text)}": 1,
        "opens small": text[:1].islower(),
        "opens with figure": text[:1].isdigit(),
        "letters": sum(c.isalpha() for c in text) / max(len(text), 1),
        "opens line": opens,
        "ends line": ends,
        "whole lines": opens and ends,
        "lines": min(segment.last_line - segment.first_line, 5),
        "opens block": line.number == 0 or lines[line.number - 1].block != line.block,
        "over body": _stairs(segment.type_px, advert.body_px),
        "huge": segment.type_px > _HUGE * advert.body_px,
        "describes": any(segment.start == told.start for one in costs.described for told in one.texts),
        "described": any(segment.start == one.name.start for one in costs.described),
    }
    if segment.last_line + 1 < len(lines):
        step = _stairs(segment.type_px, lines[segment.last_line + 1].type_px)
        made["over next line"] = step
        made["larger than next line"] = step > _STAIR
    if segment.first_line > 0:
        made["over line before"] = _stairs(segment.type_px, lines[segment.first_line - 1].type_px)
    return made


def traits_at_price(
    advert: AdvertText,
    group: Sequence[Found],
    segment: Segment,
    others: Sequence[tuple[int, int]],
    cost: tuple[float, float, str],
) -> Traits:
    """Return the traits of a text at a group of prices; `others` are the characters of all other prices.

    `cost` is what the text costs there, the least that any text does, and why it would be the item.
    """
    first = min(group, key=lambda f: f.start)
    place, line = first.place, advert.lines[first.line]
    much = min(cost[0], 8.0)
    why = cost[2] or "no place"
    unit = unit_between(segment, first, advert.body_px)
    above = segment.last.centre[1] < place.centre[1]
    gap = (place.y - segment.last.bottom if above else segment.first.y - place.bottom) / unit
    aside = -place.across(segment.flat) / unit
    gap = max(-2.0, min(gap, 15.0))
    size = _stairs(segment.type_px, first.type_px)
    made: Traits = {
        "cost": much,
        "cost over least": min(cost[0] - cost[1], 8.0),
        "least cost": cost[0] <= cost[1],
        why: 1,
        f"{why}, cost": much,
        f"{why}, goods": segment.goods,
        "over price": size,
        "stands above": above,
        "away": gap,
        "away above": gap if above else 0.0,
        "aside": max(-3.0, min(aside, 15.0)),
        "over or under": aside < 0,
        "on its axis": abs(place.centre[0] - segment.flat.centre[0]) < _ON_AXIS * max(place.w, segment.flat.w),
        "at its edge": abs(place.x - segment.flat.x) < unit,
        "left on its row": stands_left(segment.last, place),
        "right on its row": stands_right(segment.first, place),
        "in its block": segment.block == line.block,
        "in its line": segment.last_line == first.line,
        "in its line, of its size": segment.last_line == first.line and abs(size) < _STAIR,
    }
    return {**made, **_traits_in_order(advert, first, segment, others)}


def _traits_in_order(advert: AdvertText, price: Found, segment: Segment, others: Sequence[tuple[int, int]]) -> Traits:
    """Return the traits of a text before or after a price in reading order, none of one that holds the price."""
    if segment.end <= price.start:
        return {
            "before": 1,
            "prices between": min(sum(segment.end <= s and e <= price.start for s, e in others), 3),
            "lines between": min(price.line - segment.last_line, 12),
            "words between": math.log1p(len(advert.text[segment.end : price.start].split())),
        }
    if segment.start >= price.end:
        return {
            "prices between, after": min(sum(price.end <= s and e <= segment.start for s, e in others), 3),
            "words between, after": math.log1p(len(advert.text[price.end : segment.start].split())),
            "has its own price, after": any(0 <= s - segment.end <= _OWN for s, _ in others),
        }
    return {}


def traits_in_stretch(rivals: Rivals, s: int, segments: Sequence[Segment]) -> Traits:
    """Return the traits of a text among those since the price before, empty where it is none of them."""
    if s not in rivals.since:
        return {}
    segment, count = segments[s], len(rivals.since)
    k = rivals.since.index(s)
    goods = next((n for n in rivals.since if segments[n].goods), None)
    larger = sum(segment.type_px > LARGER * segments[n].type_px for n in rivals.since) / count
    most = k == 0 and larger > 0.5
    return {
        "since": 1,
        "first since": k == 0,
        "last since": k == count - 1,
        "only since": count == 1,
        "place since": min(k, 6),
        "texts since": min(count, 8),
        "first goods since": s == goods,
        "no goods, others since": goods is not None and not segment.goods,
        "largest since": segment.type_px >= max(segments[n].type_px for n in rivals.since) - 0.01,
        "larger since": larger,
        "first and larger since": most,
        "first since, in capitals": k == 0 and segment.text.isupper(),
        "larger than most since": larger > 0.5 and count > 1 and segment.content > 0,
    }


def together(traits: Traits, *, few: bool) -> Traits:
    """Return the traits with those that say more together, and those that say other things where offers are `few`."""
    made = dict(traits)
    for one, other in _TOGETHER:
        if traits.get(one) and traits.get(other):
            made[f"{one} & {other}"] = 1
    if few:
        made.update({f"{name}, of few offers": traits[name] for name in _OF_FEW if traits.get(name)})
    return made


def weigh(traits: Mapping[str, float], weights: Mapping[str, float]) -> float:
    """Return the sum of the traits, each times its weight."""
    return sum(weights.get(name, 0.0) * value for name, value in traits.items())


def _stairs(one: float, other: float) -> float:
    """Return how much larger one type size is than another, as a logarithm between -1 and 1."""
    return max(-1.0, min(math.log(max(one, 1.0) / max(other, 1.0)), 1.0))
