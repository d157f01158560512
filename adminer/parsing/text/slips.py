"""Put right single slips of a reader in words of the trade: "loa!" is "loaf", "Tomalo" is "Tomato".

A word is repaired only where it is no word itself and exactly one word of the trade (data/goods.toml) differs from it
by one shape that type confuses. Figures are never touched, and the words of the database stay as read. Which shapes
are confused is common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache, lru_cache
from typing import Final

from adminer.parsing.text.goods import english, find_nouns, trade_words

_ALIKE: Final = ("iltfj!|1", "ecoas", "nurhvm", "hbk", "gqyp", "dtl", "bhd", "vyw", "mnw")
_CAPITALS: Final = ("brpek", "ef", "cgoq", "hnmk", "iltj1", "vyw", "uvd", "pf")  # shapes alike in capitals
_GLUED: Final = ("alone", "with", "from", "only", "each", "complete")  # words that close setting runs on to a name
_PAIRS: Final = (("m", "rn"), ("w", "vv"), ("d", "cl"), ("h", "li"), ("n", "ri"), ("u", "li"), ("k", "lc"))
_WORD: Final = re.compile(r"^(?P<before>[^\w!|]*)(?P<core>[A-Za-z!|1]+)(?P<after>[^\w!|]*)$")
_PRINTED: Final = re.compile(r"\S+")
_NOT_LETTERS: Final = re.compile(r"[^A-Za-zÀ-ÿ]+")
_SHORTEST: Final = 4


def mend_text(text: str, names: frozenset[str] = frozenset()) -> str:
    """Return a text with slips in words of the trade put right; `names` are words of names (lower case) to leave."""
    return _PRINTED.sub(lambda m: m[0] if _plain(m[0]) in names else mended(m[0]), text)


def _plain(printed: str) -> str:
    return _NOT_LETTERS.sub("", printed).lower()


@lru_cache(maxsize=65536)
def mended(printed: str) -> str:
    """Return a word as it was most likely printed; itself where nothing speaks for a slip."""
    m = _WORD.match(printed)
    if m is None or sum(c.isalpha() for c in m["core"]) < _SHORTEST - 1 or len(m["core"]) < _SHORTEST:
        return printed
    core = m["core"].lower()
    if is_word(core):
        return printed
    for tail in _GLUED:
        if core.endswith(tail) and core.removesuffix(tail) in trade_words():
            cut = len(m["before"]) + len(core) - len(tail)
            return f"{printed[:cut]} {printed[cut:]}"
    near = {other for other in slips_of(core, capitals=m["core"].isupper()) if other in trade_words()}
    if len(near) != 1:
        return printed
    return m["before"] + _in_case(near.pop(), m["core"]) + m["after"]


def is_word(word: str) -> bool:
    """Say whether a lower-case word is one of the trade or of the language, with or without its punctuation."""
    plain = word.strip("!|")
    return any(w in trade_words() or w in english() or find_nouns(w) for w in {word, plain})


def slips_of(word: str, *, capitals: bool = False) -> Iterator[str]:
    """Yield every word that a reader turns into this one (lower case) by mistaking one shape, of capitals if so set."""
    for i, letter in enumerate(word):
        for other in _shapes(_CAPITALS if capitals else _ALIKE).get(letter, ""):
            yield word[:i] + other + word[i + 1 :]
    for one, two in _PAIRS:
        for wrong, right in ((one, two), (two, one)):
            at = word.find(wrong)
            while at >= 0:
                yield word[:at] + right + word[at + len(wrong) :]
                at = word.find(wrong, at + 1)


@cache
def _shapes(groups: tuple[str, ...]) -> dict[str, str]:
    shapes: dict[str, set[str]] = {}
    for group in groups:
        for letter in group:
            shapes.setdefault(letter, set()).update(c for c in group if c.isalpha() and c != letter)
    return {letter: "".join(sorted(others)) for letter, others in shapes.items()}


def _in_case(word: str, printed: str) -> str:
    letters = [c for c in printed if c.isalpha()]
    if len(letters) > 1 and all(c.isupper() for c in letters):
        return word.upper()
    return word.capitalize() if printed[0].isupper() else word
