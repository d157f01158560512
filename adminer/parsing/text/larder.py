"""Food that goes by the name of a piece: "Cane Sugar", "Tomato Soup", "sugar 5-lb. bag" are nothing to set on a table.

Asked only of names that are common words as well ("sugar", "cream", "soup", "fruit"); the words that make them food
are data (data/words.toml), from knowledge of the grocery trade, no source.
"""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.text.lexicon import word_list

_BEFORE: Final = re.compile(r"([A-Za-z'’-]+)[ ,.]{1,2}(?:([A-Za-z'’-]+) )?$")
_AFTER: Final = re.compile(r"^ ?(?:[^\w\n]{1,2} ?)?([\w'’½¼¾/.-]+)(?:[ -]([A-Za-z.]+))?(?:[ ,.-]+([A-Za-z.]+))?")
_MEASURE: Final = re.compile(r"^[\d½¼¾/]+-?(?:lb|pound|ib|1b)s?\.?$", re.IGNORECASE)


def is_food(text: str, start: int, end: int) -> bool:
    """Say whether the name of a piece at start to end stands with a word or measure that makes it food."""
    line = text[text.rfind("\n", 0, start) + 1 : start]
    stop = text.find("\n", end)
    rest = text[end : stop if stop >= 0 else len(text)]
    before, after = _BEFORE.search(line), _AFTER.match(rest)
    near = [w for w in (before[1], before[2]) if w] if before else []
    follow = [w for w in (after[1], after[2], after[3]) if w] if after else []
    if any(_bare(word) in word_list("food") for word in near):
        return True
    return any(_bare(word) in word_list("food_packed") or bool(_MEASURE.match(word)) for word in follow)


def _bare(word: str) -> str:
    return word.lower().strip(".,'’-")
