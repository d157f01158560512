"""The short name of what a price is for, cut from the text that stands with it."""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.text.goods import find_nouns, grades, has_goods, phrase_around, praise, talk, trade_words
from adminer.parsing.text.item_words import FUNCTION_WORDS, PROSE, WORD, clean_item
from adminer.parsing.text.lexicon import word_list

_SIZE: Final = re.compile(
    r"service for|(?:No\. ?)?\d+(?: ?[½¼¾])?(?:-| ?)(?:x|×|in\b|inch|oz|ft|qt|pt|lb|gal|doz|piece|pc)", re.IGNORECASE
)
_COUNT: Final = re.compile(r"(?:two|three|four|six|eight|twelve|\d+) (?:pairs|pieces|yards)\b", re.IGNORECASE)
_HEADING_WORDS: Final = 4
_SHORT: Final = 6
_SALES: Final = frozenset({"bargain", "bargains", "special", "specials", "sale", "value", "values"})
_LONG: Final = 9
_SLOGANS: Final = word_list("slogan")
# "see it on your own table": what a preposition leads to is where or how, not what the price is for
_GOVERNED: Final = re.compile(
    r"\b(?:in|on|upon|at|to|by|from|into|over|under|with|through)\s+"
    r"(?:(?:the|an?|your|our|its|his|her|my|their|this|that|each|every|any)\s+)?(?:[a-z]+\s+){0,2}$",
)
_USED_GOODS: Final = re.compile(r"(?i:used|rebuilt|mixed|assorted) [A-Za-z]+(?:,|$)")  # no past tense of a sentence
_BREAK: Final = re.compile(r"[,;:]\s|\s\(|\)\s|\s[-–—]\s?|[“”\"]\s")
_QUOTED: Final = re.compile(r"[“”\"](?:\w+ ){0,2}\w+[”\"] (?=[a-z])")  # a brand or pattern before its goods
_CLAUSE_WORDS: Final = re.compile(
    r"\b(?:"
    + "|".join(sorted(PROSE))
    + r"|we|also|have|in|at|for|by|from|and|to|as|all|now|get|buy|use|made|make|give|put|puts)\b",
    re.IGNORECASE,
)


def first_clause(text: str) -> str:
    """Return the clause that a text begins with, itself where it has but one."""
    return next(iter(_clauses(text)), text)


def name_of(text: str, *, last: bool = False) -> str:
    """Return the short name in a long item text: its first clause, or the phrase of the goods it names.

    "Under skirts, very full, some lace trimmed" is "Under skirts"; of a sentence that names no goods the capitalised
    run is kept. `last` takes the last goods of a sentence, for a price that follows right after it.
    """
    told = is_sentence(text) and not _USED_GOODS.match(text)
    if len(text.split()) <= _SHORT and not told:
        return _without_praise(text)
    clauses = _clauses(text)
    if not clauses:
        return text
    first = clauses[0]
    if len(clauses) > 1 and (_SIZE.match(clauses[1]) or _COUNT.match(clauses[1])) and _is_plain_name(first):
        return _with_more(clauses)
    phrase = goods_phrase(text, last=last and opens_with_talk(text))
    branded = _QUOTED.match(first) is not None and bool(find_nouns(first))
    better = has_goods(phrase) and not has_goods(first) and not branded
    if phrase and (better or is_sentence(first) or (len(first.split()) > _LONG and not branded)):
        return phrase
    if _content(first) and not _prose(first) and len(first.split()) <= _LONG:
        return _with_more(clauses)
    runs = [r for clause in clauses for r in (clean_item(x) for x in _CLAUSE_WORDS.split(clause)) if _content(r)]
    if not runs:
        return first
    best = max(runs, key=lambda r: (_likeness(r), -text.find(r)))
    return " ".join(best.split()[:_LONG])


def _is_plain_name(clause: str) -> bool:
    """Say whether a clause before a size is a name, known or not: short, in a capital, and no sentence."""
    return clause[:1].isupper() and len(clause.split()) <= _HEADING_WORDS and not is_sentence(clause)


def _clauses(text: str) -> list[str]:
    brand = _QUOTED.match(text)
    first, *more = _BREAK.split(text[brand.end() :] if brand else text)
    front = f"{brand[0]}{first}" if brand else first
    return [c for c in (clean_item(part) for part in (front, *more)) if c]


def _with_more(clauses: list[str]) -> str:
    """Return the first clause with those after it that still make a short name, or tell its size.

    "Mixing Bowls, yellow ware, nest of five": what tells one article from the next stands right after its name.
    """
    name = clauses[0]
    for clause in clauses[1:]:
        if count := _COUNT.match(clause):
            return f"{name}, {count[0]}"
        short = len(name.split()) + len(clause.split()) <= _SHORT and not _prose(clause)
        if not (short or (name == clauses[0] and (len(name.split()) == 1 or _SIZE.match(clause)))):
            break
        name = f"{name}, {clause}"
    return name


def qualifies(text: str) -> bool:
    """Say whether a heading only tells what the goods under it are made of ("Solid Gold"); "Dairy Case" tells where."""
    words = text.lower().split()
    told = len(words) <= _HEADING_WORDS and all(word in trade_words() or word in praise() for word in words)
    return told and all(noun.kind == "materials" for noun in find_nouns(text))


def goods_phrase(text: str, *, last: bool = False) -> str:
    """Return the phrase of the first (or last) noun of the trade in a text, empty where it names no goods.

    A measure before it comes along ("set of six chairs"); a measure alone counts only where no goods are named.
    """
    nouns = [noun for noun in find_nouns(text) if noun.strong] or [n for n in find_nouns(text) if n.kind == "measures"]
    if not nouns:
        return ""
    nouns = [noun for noun in nouns if not _GOVERNED.search(text, 0, noun.start)] or nouns
    wanted = nouns[-1] if last else nouns[0]
    measures = [noun for noun in find_nouns(text) if noun.kind == "measures" and noun.start < wanted.start]
    for noun in [*measures, wanted]:
        start, end = phrase_around(text, noun)
        if start <= wanted.start < end:
            return clean_item(text[start:end])
    return ""


def _without_praise(text: str) -> str:
    """Return a name without praise at its front or "bargain" at its end, as long as goods are left.

    "World's Champion 140-egg incubator" loses two words; one word alone that may be a grade stays ("Best Green
    Coffee").
    """
    words = text.split()
    first = next((i for i, word in enumerate(words) if word.lower().strip(",") not in praise()), 0)
    mere = first == 1 and words[0].lower().strip(",") not in grades()
    if (first > 1 and has_goods(" ".join(words[first:]))) or (mere and find_nouns(" ".join(words[first:]))):
        words = words[first:]
    while len(words) > 1 and _is_boast(words) and has_goods(" ".join(words[:-1])):
        words = words[:-1]
    return " ".join(words).rstrip(",")


def _is_boast(words: list[str]) -> bool:
    """Say whether the last word of a name says how good a bargain it is ("rugs, greatest", of "greatest value")."""
    last = words[-1].lower().strip(".,!")
    return last in _SALES or (last in praise() and last not in grades() and words[-2].endswith(","))


def is_slogan(text: str) -> bool:
    """Say whether a text has only words of slogans and of the parts of a shop ("Pantry Shelf")."""
    return all(word.lower() in _SLOGANS for word in WORD.findall(text))


def has_slogan(text: str) -> bool:
    """Say whether a word of slogans or of a part of a shop stands in a text."""
    return any(word.lower() in _SLOGANS for word in WORD.findall(text))


def is_sentence(text: str) -> bool:
    """Say whether a text talks: opens with a pronoun or verb, or has two of them, or is long and has one."""
    words = [word.lower().replace("’", "'") in talk() for word in WORD.findall(text)]
    return bool(words) and (words[0] or sum(words) >= (1 if len(words) > _SHORT else 2))


def opens_with_talk(text: str) -> bool:
    """Say whether a sentence talks before it comes to its first goods ("go to your dealer and purchase a bottle")."""
    nouns = find_nouns(text)
    return bool(nouns) and any(w.lower() in talk() for w in WORD.findall(text[: nouns[0].start]))


def _content(text: str) -> int:
    return sum(w.lower() not in FUNCTION_WORDS for w in WORD.findall(text))


def _prose(text: str) -> int:
    return sum(w.lower() in PROSE for w in WORD.findall(text))


def _likeness(text: str) -> float:
    """Return how much a run of words looks like a name: capitals, two to five words."""
    words = WORD.findall(text)
    capitals = sum(w[0].isupper() for w in words) / max(len(words), 1)
    return float(capitals) + 0.15 * min(_content(text), 5) - 0.1 * max(len(words) - 6, 0)
