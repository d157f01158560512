"""The words around an item's name that are no part of it: "only", "each", "our price"."""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.text.lexicon import word_list

WORD: Final = re.compile(r"[A-Za-zÀ-ÿ][A-Za-zÀ-ÿ'’&-]{1,}")
_SPACED: Final = re.compile(r"\b(?:[A-Z] ){2,}[A-Z]\b|\b(?:[A-Z] )+[A-Z]{2}\b")  # the last two may be read as one word
_TWO_SPACED: Final = re.compile(r"[A-Z] [A-Z]")
FUNCTION_WORDS: Final = word_list("function")
PROSE: Final = word_list("prose")
# what leads up to a price: a word of it, an r of "reg." worn to a t, or leaders
LEADS_TO_PRICE: Final = r"\b(?:now|only|[rt]eg|regular(?:ly)?|formerly|was|were|each|ea|price)[.,:]?[ \n]|[._·…]{3,} ?"
_LEAD: Final = re.compile(
    r"^(?:(?:only|just|now|at|for|from|and|or|the|a|an|our|your|price|prices|priced|each|per|special|sale|of|up|"
    r"to|in|by|on|is|are|"
    r"cost|costs|with|these|this|while|but|then|too|down|cash|month|week|also|plus|as|low|these|here|are|buy|"
    r"get|value|values|yours)(?![\w'’-])|[^\w(½¼¾“\"‘])[\s,.:]*",
    re.IGNORECASE,
)
_TAIL: Final = re.compile(
    r"(?:[\s,.:;(\[“\"‘—–=*_-]|(?<![\w'’-])(?:only|just|now|at|for|from|and|or|the|(?-i:an?)|our|your|price|prices|"
    r"priced|each|per|special|sale|of|up|to|"
    r"by|on|is|are|cost|costs|with|was|choice|reg|regular|value|values|ea|lb|lbs|doz|sells|sell|sold|as|low|worth|than|"
    r"less|be|will|about|"
    r"then|are as follows|formerly|list|comp|regularly|usually|retail|were|we|you|pay|send|\$)\.?)$",
    re.IGNORECASE,
)


def without_tail(text: str, start: int, end: int) -> int:
    """Return where a stretch of text ends without the words of the offer at its end."""
    while end > start and (m := _TAIL.search(text, start, end)):
        end = m.start()
    return end


def unbroken(text: str) -> str:
    """Return a text with the words broken over its lines made whole."""
    return re.sub(r"(?<=[a-z])-\s*\n\s*(?=[a-z])", "", text)


def closed_up(text: str) -> str:
    """Return a text with letterspaced capitals as one word ("S A L E"); two letters only where nothing else stands."""
    if _TWO_SPACED.fullmatch(text.strip()):
        return text.replace(" ", "")
    return _SPACED.sub(lambda m: m[0].replace(" ", ""), text)


def clean_item(text: str) -> str:
    """Return an item text without leading and trailing words of the offer ("only", "each"), on one line."""
    text = " ".join(unbroken(text).split())
    text = re.sub(r"(?: ?[._·…]){3,}$", "", text)
    before = None
    while before != text:
        before = text
        text = _LEAD.sub("", text, count=1)
    before = None
    while before != text:
        before = text
        text = _TAIL.sub("", text, count=1)
    return text
