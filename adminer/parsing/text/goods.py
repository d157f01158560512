"""The nouns of the shop: which words of an advert name goods, and the phrase that a noun stands in.

A cataloguer who asks what a price is for looks for a noun of the trade ("swing", "vacuum cleaner") and keeps the
words that qualify it ("mission design porch swing"), not those that praise it. The nouns are data/goods.toml.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files
from itertools import pairwise
from typing import Any, Final

_TOKEN: Final = re.compile(r"[A-Za-zÀ-ÿ]+(?:['’][A-Za-z]+)?")
_PRINTED: Final = re.compile(r"\S+")
_BREAK_AFTER: Final = re.compile(r"[,.;:!?)\]”\"*•—–]+$")
_BREAK_BEFORE: Final = re.compile(r"^[(\[“*•—–]")
_ABBREVIATION: Final = re.compile(r"^\d*(?:No|oz|lb|lbs|in|ft|doz|pkg|pc|qt|pt|gal|Dr|Mrs?|St)\.$", re.IGNORECASE)
_EDGES: Final = re.compile(r"^\W+|\W+$")
STRONG: Final = "strong"
_LONGEST: Final = 4  # words of a name in the list
_SHORT: Final = 3  # letters; shorter words are too like each other to be told apart
_BEFORE: Final = 5  # words that qualify a noun, at most
_AFTER: Final = 5  # words of "of Richardson silk", at most
_AND: Final = frozenset({"and", "&"})


@dataclass(frozen=True, slots=True)
class Noun:
    """Hold one noun of the trade in a text, by its characters.

    Weak kinds want more words to say what they are: measures ("pair"), crowds ("assortment"), materials ("silk").
    """

    start: int
    end: int
    kind: str

    @property
    def strong(self) -> bool:
        """Say whether the noun names an article by itself."""
        return self.kind == STRONG


def find_nouns(text: str) -> tuple[Noun, ...]:
    """Return the nouns of the trade in a text, left to right, the longest name at each place."""
    return _nouns(text)


def has_goods(text: str) -> bool:
    """Say whether a text names an article by a noun that needs no other words."""
    return any(noun.strong for noun in find_nouns(text))


def heads_of(text: str) -> frozenset[str]:
    """Return the head words of the articles that a text names, lower case, singular: "cleaner" of "vacuum cleaners"."""
    strong = (text[noun.start : noun.end] for noun in find_nouns(text) if noun.strong)
    return frozenset(min(singulars(name.lower().split()[-1]), key=len) for name in strong)


@lru_cache(maxsize=8192)
def _nouns(text: str) -> tuple[Noun, ...]:
    tokens = list(_tokens(text))
    found: list[Noun] = []
    at = 0
    while at < len(tokens):
        for count in range(min(_LONGEST, len(tokens) - at), 0, -1):
            run = tokens[at : at + count]
            if any(text[a[1] : b[0]] not in {" ", "\n", "-"} for a, b in pairwise(run)):
                continue
            kind = _kind([word for _, _, word in run])
            if kind is not None:
                found.append(Noun(run[0][0], run[-1][1], kind))
                at += count - 1
                break
        at += 1
    return tuple(found)


def _tokens(text: str) -> Iterator[tuple[int, int, str]]:
    """Yield the words of a text in lower case; one broken over two lines counts as one."""
    held: tuple[int, int, str] | None = None
    for m in _TOKEN.finditer(text):
        word = m[0].lower().replace("’", "'")
        if held and text[held[1] : m.start()] in {"-\n", "- "}:
            held = (held[0], m.end(), held[2] + word)
            continue
        if held:
            yield held
        held = (m.start(), m.end(), word)
    if held:
        yield held


def _kind(words: list[str]) -> str | None:
    """Return the kind of name that words are; None where they are no name of goods."""
    names = _names()
    front = " ".join(words[:-1])
    for last in singulars(words[-1]):
        name = f"{front} {last}" if front else last
        if name in names:
            return names[name]
    return None


def singulars(word: str) -> Iterator[str]:
    """Yield a word and what it may be the plural or possessive of."""
    word = word.removesuffix("'s").removesuffix("'")
    yield word
    if word.endswith("ies"):
        yield word[:-3] + "y"
    if word.endswith("ves"):
        yield word[:-3] + "f"
        yield word[:-3] + "fe"
    if word.endswith("es"):
        yield word[:-2]
    if word.endswith("s") and not word.endswith("ss"):
        yield word[:-1]


def phrase_around(text: str, noun: Noun) -> tuple[int, int]:
    """Return the characters of the phrase a noun stands in: its qualifiers before it, "of" and what follows it.

    Praise at its front is left out: "beautiful mission design porch swing" starts with "mission".
    """
    words = [(m.start(), m.end()) for m in _PRINTED.finditer(text)]
    first = next(i for i, (_, end) in enumerate(words) if end > noun.start)
    last = next(i for i, (_, end) in enumerate(words) if end >= noun.end)
    last = _with_more_nouns(text, words, last)
    low = first
    while low > 0 and first - low < _BEFORE and _qualifies(text, words, low - 1):
        low -= 1
    while low < first and _plain(text, words[low]) in praise():
        low += 1
    if noun.kind == "measures":
        last = _with_complement(text, words, last)
    start, end = words[low][0], words[last][1]
    m = _EDGES.search(text[start:end])
    if m and m.start() == 0:
        start += m.end()
    while end > start and not (text[end - 1].isalnum() or text[end - 1] in "½¼¾)"):
        end -= 1
    return start, end


def _plain(text: str, span: tuple[int, int]) -> str:
    return _EDGES.sub("", text[span[0] : span[1]]).lower().replace("’", "'")


def _qualifies(text: str, words: list[tuple[int, int]], at: int) -> bool:
    """Say whether a word belongs to the phrase that begins with the next one."""
    printed = text[words[at][0] : words[at][1]]
    following = text[words[at + 1][0] : words[at + 1][1]]
    if _BREAK_BEFORE.search(following) or (_BREAK_AFTER.search(printed) and not _ABBREVIATION.match(printed)):
        return False
    plain = _plain(text, words[at])
    if plain in _AND or printed == "&":
        return at > 0 and bool(find_nouns(text[words[at - 1][0] : words[at - 1][1]]))
    return bool(plain) and plain not in stops()


def _with_more_nouns(text: str, words: list[tuple[int, int]], last: int) -> int:
    """Take in nouns right after a noun ("garter buckles"), and a second one after "and" ("suits & raincoats")."""
    nouns = find_nouns(text)
    while last + 1 < len(words) and not _ends(text, words, last):
        linked = _plain(text, words[last + 1]) in _AND or text[slice(*words[last + 1])] == "&"
        at = last + 2 if linked else last + 1
        if at >= len(words):
            break
        start, end = words[at]
        noun = next((n for n in nouns if start <= n.start < end and (n.strong or not linked)), None)
        if noun is None:
            break
        last = next(i for i in range(at, len(words)) if words[i][1] >= noun.end)
    return last


def _with_complement(text: str, words: list[tuple[int, int]], last: int) -> int:
    """Take in "of six chairs" after a noun that alone says little."""
    if last + 2 >= len(words) or _ends(text, words, last) or _plain(text, words[last + 1]) != "of":
        return last
    at = last + 2
    while at < len(words) and at - last < _AFTER + 2:
        plain = _plain(text, words[at])
        if at > last + 2 and (plain in stops() or plain in praise()):
            break
        if _ends(text, words, at):
            return at
        at += 1
    return at - 1


def _ends(text: str, words: list[tuple[int, int]], at: int) -> bool:
    printed = text[words[at][0] : words[at][1]]
    if _BREAK_AFTER.search(printed) and not _ABBREVIATION.match(printed):
        return True
    return at + 1 < len(words) and bool(_BREAK_BEFORE.search(text[words[at + 1][0] : words[at + 1][1]]))


@cache
def _names() -> dict[str, str]:
    table = _table()
    strong = {name: STRONG for names in table["rarer"].values() for name in _listed(names)} | _common_names()
    return strong | {name: kind for kind, names in table["weak"].items() for name in _listed(names)}


def _common_names() -> dict[str, str]:
    return {name: STRONG for names in _table()["strong"].values() for name in _listed(names)}


def _listed(names: str) -> list[str]:
    return [" ".join(name.replace("-", " ").split()) for name in names.split(",") if name.strip()]


@cache
def praise() -> frozenset[str]:
    """Return the adjectives that only praise, lower case."""
    return frozenset(_table()["grammar"]["praise"].split())


@cache
def grades() -> frozenset[str]:
    """Return the words of praise that may be the grade of an article, lower case."""
    return frozenset(_table()["grammar"]["grades"].split())


@cache
def talk() -> frozenset[str]:
    """Return the pronouns and verbs that make a sentence rather than a name, lower case."""
    return frozenset(_table()["grammar"]["talk"].split())


@cache
def stops() -> frozenset[str]:
    """Return the words that no phrase of goods goes over, lower case."""
    return talk() | frozenset(_table()["grammar"]["joining"].split())


@cache
def qualifiers() -> frozenset[str]:
    """Return the words that stand before the nouns of the trade: states, cuts, kinds and materials, lower case."""
    return frozenset(_table()["words"]["qualifiers"].split())


@cache
def measures() -> frozenset[str]:
    """Return the measures and packages that goods are sold by, singular and plural, lower case."""
    return frozenset(w for name in _listed(_table()["weak"]["measures"]) for w in (name, *_plurals(name)))


@cache
def trade_words() -> frozenset[str]:
    """Return the single words of the common names of goods and of their qualifiers, singular and plural, lower case."""
    weak = [name for names in _table()["weak"].values() for name in _listed(names)]
    words = {word for name in [*_common_names(), *weak] for word in re.split(r"[ -]", name)}
    words |= qualifiers()
    return frozenset(w for word in words if len(word) > _SHORT for w in (word, *_plurals(word)))


def _plurals(word: str) -> tuple[str, ...]:
    if word.endswith("s"):
        return ()
    if word.endswith(("ch", "sh", "x", "o")):
        return (word + "es", word + "s")
    if word.endswith("y") and word[-2] not in "aeiou":
        return (word[:-1] + "ies",)
    if word.endswith("f"):
        return (word + "s", word[:-1] + "ves")
    return (word[:-2] + "ves",) if word.endswith("fe") else (word + "s",)


@cache
def english() -> frozenset[str]:
    """Return the words that are no slip although a letter away from a word of the trade, lower case."""
    return frozenset(_table()["words"]["english"].split()) | stops() | praise()


@cache
def _table() -> dict[str, Any]:
    return tomllib.loads(files("adminer.parsing").joinpath("data", "goods.toml").read_text(encoding="utf-8"))
